/* drawing.c: strokes and fills of a page */
#include "draw/drawing.h"

#include "draw/svg-writer.h"

SqDrawing *
sq_drawing_new (cairo_t *cairo, const SqView *view)
{
  SqDrawing *drawing = g_new0 (SqDrawing, 1);
  cairo_font_options_t *options = cairo_font_options_create ();

  drawing->cairo = cairo;
  drawing->svg = sq_svg_of (cairo);
  drawing->view = view;
  drawing->text = pango_cairo_create_context (cairo);
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  cairo_font_options_set_antialias (options, CAIRO_ANTIALIAS_GRAY);
  pango_cairo_context_set_font_options (drawing->text, options);
  pango_context_set_round_glyph_positions (drawing->text, FALSE);
  cairo_font_options_destroy (options);
  return drawing;
}

void
sq_drawing_free (SqDrawing *drawing)
{
  if (drawing == NULL)
    return;
  g_object_unref (drawing->text);
  g_free (drawing);
}

void
sq_draw_stroke (SqDrawing *drawing, double pen_mm, SqColour colour)
{
  sq_draw_stroke_dashed (drawing, pen_mm, colour, NULL, 0);
}

void
sq_draw_stroke_dashed (
  SqDrawing *drawing, double pen_mm, SqColour colour, const double *dash_mm, int n_dashes)
{
  cairo_t *cr = drawing->cairo;
  double width_mm = sq_view_pen_mm (drawing->view, pen_mm);
  if (drawing->svg != NULL) {
    sq_svg_stroke (drawing->svg, width_mm, colour, dash_mm, n_dashes);
    return;
  }
  cairo_set_line_width (cr, width_mm);
  cairo_set_dash (cr, dash_mm, n_dashes, 0.0);
  cairo_set_source_rgb (cr, colour.red, colour.green, colour.blue);
  cairo_stroke (cr);
}

void
sq_draw_fill (SqDrawing *drawing, SqColour colour, double alpha)
{
  if (drawing->svg != NULL) {
    sq_svg_fill (drawing->svg, colour, alpha);
    return;
  }
  cairo_set_source_rgba (drawing->cairo, colour.red, colour.green, colour.blue, alpha);
  cairo_fill (drawing->cairo);
}

void
sq_draw_fade (SqDrawing *drawing,
              SqColour colour,
              SqPaperPoint from,
              double from_alpha,
              SqPaperPoint to,
              double to_alpha)
{
  if (drawing->svg != NULL) {
    sq_svg_fade (drawing->svg, colour, from, from_alpha, to, to_alpha);
    return;
  }
  cairo_pattern_t *fade = cairo_pattern_create_linear (from.x_mm, from.y_mm, to.x_mm, to.y_mm);
  cairo_pattern_add_color_stop_rgba (fade, 0.0, colour.red, colour.green, colour.blue, from_alpha);
  cairo_pattern_add_color_stop_rgba (fade, 1.0, colour.red, colour.green, colour.blue, to_alpha);
  cairo_set_source (drawing->cairo, fade);
  cairo_fill (drawing->cairo);
  cairo_pattern_destroy (fade);
}

void
sq_draw_layer (SqDrawing *drawing, SqLayer layer)
{
  if (drawing->svg != NULL)
    sq_svg_layer (drawing->svg, layer);
}

void
sq_draw_clip (SqDrawing *drawing)
{
  cairo_save (drawing->cairo);
  if (drawing->svg != NULL)
    sq_svg_clip (drawing->svg);
  else
    cairo_clip (drawing->cairo);
}

void
sq_draw_clip_to (SqDrawing *drawing, SqPaperBox box)
{
  cairo_new_path (drawing->cairo);
  cairo_rectangle (drawing->cairo, box.x_mm, box.y_mm, box.width_mm, box.height_mm);
  sq_draw_clip (drawing);
}

void
sq_draw_unclip (SqDrawing *drawing)
{
  if (drawing->svg != NULL)
    sq_svg_leave (drawing->svg);
  cairo_restore (drawing->cairo);
}

void
sq_draw_pale (SqDrawing *drawing, double alpha)
{
  g_return_if_fail (drawing->pale_alpha == 0.0);
  drawing->pale_alpha = alpha;
  if (drawing->svg != NULL)
    sq_svg_pale (drawing->svg, alpha);
  else
    cairo_push_group (drawing->cairo);
}

void
sq_draw_unpale (SqDrawing *drawing)
{
  if (drawing->svg != NULL) {
    sq_svg_leave (drawing->svg);
  } else {
    cairo_pop_group_to_source (drawing->cairo);
    cairo_paint_with_alpha (drawing->cairo, drawing->pale_alpha);
  }
  drawing->pale_alpha = 0.0;
}

void
sq_draw_outlined (SqDrawing *drawing, SqInk fill, double pen_mm)
{
  cairo_path_t *path = cairo_copy_path (drawing->cairo);
  sq_draw_fill (drawing, sq_ink (drawing->view, fill), 1.0);
  cairo_append_path (drawing->cairo, path);
  cairo_path_destroy (path);
  sq_draw_stroke (drawing, pen_mm, sq_ink (drawing->view, SQ_INK));
}

void
sq_draw_line (SqDrawing *drawing, SqPaperPoint a, SqPaperPoint b, double pen_mm, SqColour colour)
{
  cairo_move_to (drawing->cairo, a.x_mm, a.y_mm);
  cairo_line_to (drawing->cairo, b.x_mm, b.y_mm);
  sq_draw_stroke (drawing, pen_mm, colour);
}

void
sq_draw_circle_path (SqDrawing *drawing, SqPaperPoint middle, double radius_mm)
{
  cairo_new_sub_path (drawing->cairo);
  cairo_arc (drawing->cairo, middle.x_mm, middle.y_mm, radius_mm, 0.0, 2.0 * G_PI);
  cairo_close_path (drawing->cairo);
}

void
sq_draw_dot (SqDrawing *drawing, SqPaperPoint at, double radius_mm, SqColour colour)
{
  sq_draw_circle_path (drawing, at, radius_mm);
  sq_draw_fill (drawing, colour, 1.0);
}

void
sq_draw_dots (SqDrawing *drawing,
              SqPaperPoint from,
              SqPaperPoint to,
              double step_mm,
              double radius_mm,
              SqColour colour)
{
  int n = MAX (1, (int)ceil (sq_paper_distance_mm (from, to) / step_mm - 1e-9));
  for (int i = 0; i <= n; i++) {
    double t = (double)i / n;
    SqPaperPoint at = { from.x_mm + t * (to.x_mm - from.x_mm),
                        from.y_mm + t * (to.y_mm - from.y_mm) };
    sq_draw_circle_path (drawing, at, radius_mm);
  }
  sq_draw_fill (drawing, colour, 1.0);
}

void
sq_draw_polyline (SqDrawing *drawing, const SqPaperPoint *points, guint n, gboolean closed)
{
  cairo_new_sub_path (drawing->cairo);
  for (guint i = 0; i < n; i++)
    cairo_line_to (drawing->cairo, points[i].x_mm, points[i].y_mm);
  if (closed)
    cairo_close_path (drawing->cairo);
}

void
sq_draw_arrow (SqDrawing *drawing,
               SqPaperPoint from,
               SqPaperPoint to,
               double pen_mm,
               SqColour colour,
               const double *dash_mm,
               int n_dashes,
               double head_mm)
{
  double angle = atan2 (to.y_mm - from.y_mm, to.x_mm - from.x_mm);
  SqPaperPoint neck = sq_paper_along (to, angle, -0.8 * head_mm);
  SqPaperPoint base = sq_paper_along (to, angle, -head_mm);
  const SqPaperPoint head[] = { to, sq_paper_along (base, angle + G_PI / 2, 0.32 * head_mm),
                                sq_paper_along (base, angle - G_PI / 2, 0.32 * head_mm) };

  if (sq_paper_distance_mm (from, to) > head_mm) {
    cairo_move_to (drawing->cairo, from.x_mm, from.y_mm);
    cairo_line_to (drawing->cairo, neck.x_mm, neck.y_mm);
    sq_draw_stroke_dashed (drawing, pen_mm, colour, dash_mm, n_dashes);
  }
  sq_draw_polyline (drawing, head, G_N_ELEMENTS (head), TRUE);
  sq_draw_fill (drawing, colour, 1.0);
}

void
sq_draw_box_path (SqDrawing *drawing, SqPaperBox box, double corner_mm)
{
  cairo_t *cr = drawing->cairo;
  double r = MIN (corner_mm, MIN (box.width_mm, box.height_mm) / 2.0);
  double left = box.x_mm, top = box.y_mm;
  double right = left + box.width_mm, bottom = top + box.height_mm;

  if (r <= 0.0) {
    cairo_rectangle (cr, left, top, box.width_mm, box.height_mm);
    return;
  }
  cairo_new_sub_path (cr);
  cairo_arc (cr, right - r, top + r, r, -G_PI / 2, 0.0);
  cairo_arc (cr, right - r, bottom - r, r, 0.0, G_PI / 2);
  cairo_arc (cr, left + r, bottom - r, r, G_PI / 2, G_PI);
  cairo_arc (cr, left + r, top + r, r, G_PI, 1.5 * G_PI);
  cairo_close_path (cr);
}

void
sq_draw_enter (SqDrawing *drawing, SqPaperPoint at, double angle_rad)
{
  cairo_save (drawing->cairo);
  cairo_translate (drawing->cairo, at.x_mm, at.y_mm);
  cairo_rotate (drawing->cairo, angle_rad);
}

void
sq_draw_leave (SqDrawing *drawing)
{
  cairo_restore (drawing->cairo);
}
