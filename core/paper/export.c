/* export.c: pages as files: drawn into memory first, then saved whole */
#include "paper/export-private.h"

#include "base/error.h"
#include "base/safe-file.h"
#include "draw/plain-words.h"
#include "paper/title-block.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>
#include <string.h>

cairo_status_t
sq_export_append (void *bytes, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (bytes, data, length);
  return CAIRO_STATUS_SUCCESS;
}

gboolean
sq_export_check (cairo_status_t status, GError **error)
{
  if (status == CAIRO_STATUS_SUCCESS)
    return TRUE;
  g_set_error (error, SQ_ERROR, SQ_ERROR_LIMIT, _ ("plot: cannot be drawn: %s"),
               cairo_status_to_string (status));
  return FALSE;
}

void
sq_export_draw (const SqPlot *plot, cairo_surface_t *surface, int page, double units_per_mm)
{
  cairo_t *cairo = cairo_create (surface);
  cairo_scale (cairo, units_per_mm, units_per_mm);
  sq_plot_draw (plot, cairo, page);
  cairo_destroy (cairo);
}

char *
sq_export_title (const SqPlot *plot)
{
  const SqTitle *title = plot->scene->title;
  const char *name = *sq_said (title->title) != '\0' ? title->title : _ ("Lighting plan");
  g_autofree char *whole = *sq_said (title->production) != '\0'
                             ? g_strdup_printf ("%s: %s", title->production, name)
                             : g_strdup (name);
  return sq_plain_words (whole);
}

char *
sq_export_subject (const SqPlot *plot)
{
  g_autofree char *scale = sq_plot_scale_text (plot);
  g_autofree char *subject = g_strdup_printf (_ ("Lighting plan, %s, %s, %s"),
                                              sq_look_name (plot->scene), scale, plot->sheet->name);
  return sq_plain_words (subject);
}

char *
sq_export_author (const SqPlot *plot)
{
  const SqTitle *title = plot->scene->title;
  return sq_plain_words (*sq_said (title->drawn_by) != '\0' ? title->drawn_by
                                                            : sq_said (title->gaffer));
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
    gboolean drawn = format == SQ_PLOT_SVG ? sq_export_svg (plot, page, bytes, error)
                                           : sq_export_png (plot, page, bytes, error);
    if (!drawn || !sq_file_save (to, bytes->data, bytes->len, error))
      return FALSE;
  }
  return TRUE;
}

gboolean
sq_plot_export (const SqPlot *plot, const char *path, SqPlotFormat format, GError **error)
{
  if (format != SQ_PLOT_PDF)
    return export_pages (plot, path, format, error);
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  return sq_export_pdf (plot, bytes, error) && sq_file_save (path, bytes->data, bytes->len, error);
}
