/* export-png.c: a page as a picture of so many pixels to the inch */
#include "paper/export-private.h"

#include "base/error.h"
#include "paper/png-size.h"

#include <glib/gi18n-lib.h>

#define MOST_PIXELS 250e6 /* 1 GB of memory */

static void
paint_paper (cairo_surface_t *surface)
{
  cairo_t *cairo = cairo_create (surface);
  cairo_set_source_rgb (cairo, 1.0, 1.0, 1.0);
  cairo_paint (cairo);
  cairo_destroy (cairo);
}

gboolean
sq_export_png (const SqPlot *plot, int page, GByteArray *bytes, GError **error)
{
  double width_mm, height_mm, pixels_per_mm = plot->dpi / SQ_INCH_MM;
  sq_plot_page_size_mm (plot, page, &width_mm, &height_mm);
  double columns = round (width_mm * pixels_per_mm), rows = round (height_mm * pixels_per_mm);
  if (columns * rows > MOST_PIXELS) {
    g_set_error (
      error, SQ_ERROR, SQ_ERROR_LIMIT,
      _ ("dpi: %s at %.0f would be %.0f × %.0f pixels, expected no more than 250 million"),
      sq_plot_page (plot, page)->sheet->name, plot->dpi, columns, rows);
    return FALSE;
  }
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)columns, (int)rows);
  paint_paper (image);
  sq_export_draw (plot, image, page, pixels_per_mm);
  cairo_status_t status = cairo_surface_status (image);
  if (status == CAIRO_STATUS_SUCCESS)
    status = cairo_surface_write_to_png_stream (image, sq_export_append, bytes);
  cairo_surface_destroy (image);
  if (!sq_export_check (status, error))
    return FALSE;
  sq_png_set_size (bytes, plot->dpi);
  return TRUE;
}
