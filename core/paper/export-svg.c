/* export-svg.c: a page as SVG, on white paper, its layers in groups, its text as text */
#include "paper/export-private.h"

#include "draw/svg-writer.h"

gboolean
sq_export_svg (const SqPlot *plot, int page, GByteArray *bytes, GError **error)
{
  const SqColour white = { 1.0, 1.0, 1.0 }; /* also in a viewer whose own ground is dark */
  double width_mm, height_mm;
  gsize length;
  sq_plot_page_size_mm (plot, page, &width_mm, &height_mm);
  g_autoptr (SqSvg) svg = sq_svg_new (width_mm, height_mm);
  cairo_t *cairo = sq_svg_cairo (svg);

  sq_svg_layer (svg, SQ_LAYER_PAPER);
  cairo_rectangle (cairo, 0.0, 0.0, width_mm, height_mm);
  sq_svg_fill (svg, white, 1.0);
  sq_svg_layer (svg, SQ_LAYER_SHEET);
  sq_plot_draw (plot, cairo, page);
  if (!sq_export_check (cairo_status (cairo), error))
    return FALSE;

  g_autofree char *title = sq_export_title (plot), *subject = sq_export_subject (plot);
  g_autofree char *text = sq_svg_end (svg, title, subject, &length);
  g_byte_array_append (bytes, (const guint8 *)text, (guint)length);
  return TRUE;
}
