/* export-pdf.c: all pages as one PDF: true to scale, fonts within, with outline and metadata */
#include "paper/export-private.h"

#include "draw/plain-words.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

#define POINTS_PER_INCH 72.0
#define DATE_WITHOUT_TITLE "2000-01-01"

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
  const char *said = plot->scene->title->date;
  g_autofree char *title = sq_export_title (plot), *subject = sq_export_subject (plot);
  g_autofree char *author = sq_export_author (plot);
  g_autofree char *date =
    g_strdup_printf ("%sT00:00:00Z", is_date (said) ? said : DATE_WITHOUT_TITLE);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_TITLE, title);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_AUTHOR, author);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_SUBJECT, subject);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_KEYWORDS,
                                  _ ("lighting plan, lighting plot, set lighting"));
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_CREATOR, "Squarelaw");
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_CREATE_DATE, date);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_MOD_DATE, date);
}

static void
add_to_outline (const SqPlot *plot, cairo_surface_t *pdf, int page)
{
  g_autofree char *label = g_strdup_printf ("%d", page + 1);
  g_autofree char *target = g_strdup_printf ("page=%d pos=[0 0]", page + 1);
  cairo_pdf_surface_set_page_label (pdf, label);
  g_autofree char *name = sq_plain_words (sq_plot_page_name (plot, page));
  cairo_pdf_surface_add_outline (pdf, CAIRO_PDF_OUTLINE_ROOT, name, target,
                                 CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

gboolean
sq_export_pdf (const SqPlot *plot, GByteArray *bytes, GError **error)
{
  const double points_per_mm = POINTS_PER_INCH / SQ_INCH_MM;
  double width_mm, height_mm;
  sq_plot_page_size_mm (plot, 0, &width_mm, &height_mm);
  cairo_surface_t *pdf = cairo_pdf_surface_create_for_stream (
    sq_export_append, bytes, width_mm * points_per_mm, height_mm * points_per_mm);
  set_metadata (plot, pdf);
  for (int page = 0; page < plot->n_pages; page++) {
    sq_plot_page_size_mm (plot, page, &width_mm, &height_mm);
    cairo_pdf_surface_set_size (pdf, width_mm * points_per_mm, height_mm * points_per_mm);
    add_to_outline (plot, pdf, page);
    sq_export_draw (plot, pdf, page, points_per_mm);
    cairo_surface_show_page (pdf);
  }
  cairo_surface_finish (pdf);
  cairo_status_t status = cairo_surface_status (pdf);
  cairo_surface_destroy (pdf);
  return sq_export_check (status, error);
}
