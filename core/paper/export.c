/* export.c: pages as files: PDF, SVG, PNG; drawn into memory first, then saved whole */
#include "paper/plot-private.h"

#include "base/error.h"
#include "base/safe-file.h"
#include "paper/png-size.h"
#include "paper/title-block.h"
#include "paper/words.h"

#include <cairo-pdf.h>
#include <cairo-svg.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#define POINTS_PER_INCH 72.0
#define MOST_PIXELS 250e6 /* 1 GB of memory */
#define DATE_WITHOUT_TITLE "2000-01-01"

static cairo_status_t
append (void *bytes, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (bytes, data, length);
  return CAIRO_STATUS_SUCCESS;
}

/* Paper is white, also in a viewer whose own ground is dark. */
static void
paint_paper (cairo_surface_t *surface)
{
  cairo_t *cairo = cairo_create (surface);
  cairo_set_source_rgb (cairo, 1.0, 1.0, 1.0);
  cairo_paint (cairo);
  cairo_destroy (cairo);
}

/* Draws @page over @surface, whose unit is @units_per_mm of a millimetre. */
static void
draw_page (const SqPlot *plot, cairo_surface_t *surface, int page, double units_per_mm)
{
  cairo_t *cairo = cairo_create (surface);
  cairo_scale (cairo, units_per_mm, units_per_mm);
  sq_plot_draw (plot, cairo, page);
  cairo_destroy (cairo);
}

/* Ends @surface. Returns: FALSE with an error if anything failed on the way */
static gboolean
finish (cairo_surface_t *surface, GError **error)
{
  cairo_surface_finish (surface);
  cairo_status_t status = cairo_surface_status (surface);
  cairo_surface_destroy (surface);
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error (error, SQ_ERROR, SQ_ERROR_LIMIT, _ ("plot: cannot be drawn: %s"),
               cairo_status_to_string (status));
  return FALSE;
}

static gboolean
is_date (const char *text)
{
  return text != NULL && g_regex_match_simple ("^\\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\\d|3[01])$",
                                               text, G_REGEX_DOLLAR_ENDONLY, 0);
}

/* Both dates are fixed, so that the same input gives the same bytes. */
static void
set_metadata (const SqPlot *plot, cairo_surface_t *pdf)
{
  const SqTitle *title = plot->scene->title;
  const char *name = *sq_said (title->title) != '\0' ? title->title : _ ("Lighting plan");
  g_autofree char *whole = *sq_said (title->production) != '\0'
                             ? g_strdup_printf ("%s: %s", title->production, name)
                             : g_strdup (name);
  g_autofree char *scale = sq_plot_scale_text (plot);
  g_autofree char *subject = g_strdup_printf (_ ("Lighting plan, %s, %s, %s"),
                                              sq_look_name (plot->scene), scale, plot->sheet->name);
  g_autofree char *date =
    g_strdup_printf ("%sT00:00:00Z", is_date (title->date) ? title->date : DATE_WITHOUT_TITLE);
  const char *author =
    *sq_said (title->drawn_by) != '\0' ? title->drawn_by : sq_said (title->gaffer);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_TITLE, whole);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_AUTHOR, author);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_SUBJECT, subject);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_KEYWORDS,
                                  _ ("lighting plan, lighting plot, set lighting"));
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_CREATOR, "Squarelaw");
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_CREATE_DATE, date);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_MOD_DATE, date);
}

static gboolean
export_pdf (const SqPlot *plot, const char *path, GError **error)
{
  const double points_per_mm = POINTS_PER_INCH / SQ_INCH_MM;
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  double width_mm, height_mm;
  sq_plot_page_size_mm (plot, 0, &width_mm, &height_mm);
  cairo_surface_t *pdf = cairo_pdf_surface_create_for_stream (
    append, bytes, width_mm * points_per_mm, height_mm * points_per_mm);
  set_metadata (plot, pdf);
  for (int page = 0; page < plot->n_pages; page++) {
    sq_plot_page_size_mm (plot, page, &width_mm, &height_mm);
    cairo_pdf_surface_set_size (pdf, width_mm * points_per_mm, height_mm * points_per_mm);
    g_autofree char *label = g_strdup_printf ("%d", page + 1);
    cairo_pdf_surface_set_page_label (pdf, label);
    g_autofree char *target = g_strdup_printf ("page=%d pos=[0 0]", page + 1);
    g_autofree char *name =
      page == 0 ? g_strdup (_ ("Plan")) : g_strdup_printf (_ ("Figures, legend, notes %d"), page);
    cairo_pdf_surface_add_outline (pdf, CAIRO_PDF_OUTLINE_ROOT, name, target,
                                   CAIRO_PDF_OUTLINE_FLAG_OPEN);
    draw_page (plot, pdf, page, points_per_mm);
    cairo_surface_show_page (pdf);
  }
  return finish (pdf, error) && sq_file_save (path, bytes->data, bytes->len, error);
}

static gboolean
draw_svg (const SqPlot *plot, int page, GByteArray *bytes, GError **error)
{
  double width_mm, height_mm;
  sq_plot_page_size_mm (plot, page, &width_mm, &height_mm);
  cairo_surface_t *svg = cairo_svg_surface_create_for_stream (append, bytes, width_mm, height_mm);
  cairo_svg_surface_set_document_unit (svg, CAIRO_SVG_UNIT_MM);
  paint_paper (svg);
  draw_page (plot, svg, page, 1.0);
  return finish (svg, error);
}

static gboolean
draw_png (const SqPlot *plot, int page, GByteArray *bytes, GError **error)
{
  double width_mm, height_mm, pixels_per_mm = plot->dpi / SQ_INCH_MM;
  sq_plot_page_size_mm (plot, page, &width_mm, &height_mm);
  double columns = round (width_mm * pixels_per_mm), rows = round (height_mm * pixels_per_mm);
  if (columns * rows > MOST_PIXELS) {
    g_set_error (
      error, SQ_ERROR, SQ_ERROR_LIMIT,
      _ ("dpi: %s at %.0f would be %.0f × %.0f pixels, expected no more than 250 million"),
      plot->sheet->name, plot->dpi, columns, rows);
    return FALSE;
  }
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)columns, (int)rows);
  paint_paper (image);
  draw_page (plot, image, page, pixels_per_mm);
  cairo_status_t status = cairo_surface_status (image);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (image, append, bytes);
  cairo_surface_destroy (image);
  if (status != CAIRO_STATUS_SUCCESS) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_LIMIT, _ ("plot: cannot be drawn: %s"),
                 cairo_status_to_string (status));
    return FALSE;
  }
  sq_png_set_size (bytes, plot->dpi);
  return TRUE;
}

/* F.png and page 0 of several: F-1.png. */
static char *
page_path (const char *path, int page, int n_pages)
{
  if (n_pages == 1)
    return g_strdup (path);
  const char *slash = strrchr (path, G_DIR_SEPARATOR), *dot = strrchr (path, '.');
  const char *name = slash != NULL ? slash + 1 : path;
  gsize stem = dot != NULL && dot > name ? (gsize)(dot - path) : strlen (path);
  return g_strdup_printf ("%.*s-%d%s", (int)stem, path, page + 1, path + stem);
}

static gboolean
export_pages (const SqPlot *plot, const char *path, SqPlotFormat format, GError **error)
{
  if (strcmp (path, "-") == 0 && plot->n_pages > 1) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
                 _ ("-: %d pages do not go into one %s, expected a file name or PDF"),
                 plot->n_pages, format == SQ_PLOT_SVG ? "SVG" : "PNG");
    return FALSE;
  }
  for (int page = 0; page < plot->n_pages; page++) {
    g_autoptr (GByteArray) bytes = g_byte_array_new ();
    g_autofree char *to = page_path (path, page, plot->n_pages);
    gboolean drawn = format == SQ_PLOT_SVG ? draw_svg (plot, page, bytes, error)
                                           : draw_png (plot, page, bytes, error);
    if (!drawn || !sq_file_save (to, bytes->data, bytes->len, error))
      return FALSE;
  }
  return TRUE;
}

gboolean
sq_plot_export (const SqPlot *plot, const char *path, SqPlotFormat format, GError **error)
{
  return format == SQ_PLOT_PDF ? export_pdf (plot, path, error)
                               : export_pages (plot, path, format, error);
}
