/* drawing.c: strokes, fills and text of a page */
#include "draw/drawing.h"

/* How far letters hang below the baseline, as a share of their cap height. */
#define DESCENT_PER_CAP 0.30

SqDrawing *
sq_drawing_new (cairo_t *cairo, const SqView *view)
{
  SqDrawing *drawing = g_new0 (SqDrawing, 1);
  cairo_font_options_t *options = cairo_font_options_create ();

  drawing->cairo = cairo;
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
  cairo_set_line_width (cr, sq_view_pen_mm (drawing->view, pen_mm));
  cairo_set_dash (cr, dash_mm, n_dashes, 0.0);
  cairo_set_source_rgb (cr, colour.red, colour.green, colour.blue);
  cairo_stroke (cr);
}

void
sq_draw_fill (SqDrawing *drawing, SqColour colour, double alpha)
{
  cairo_set_source_rgba (drawing->cairo, colour.red, colour.green, colour.blue, alpha);
  cairo_fill (drawing->cairo);
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

static double
width_mm (PangoLayout *layout)
{
  int width;
  pango_layout_get_size (layout, &width, NULL);
  return (double)width / PANGO_SCALE;
}

static PangoLayout *
lay_out (SqDrawing *drawing, const char *text, const SqType *type)
{
  static const PangoAlignment alignments[] = { PANGO_ALIGN_LEFT, PANGO_ALIGN_CENTER,
                                               PANGO_ALIGN_RIGHT };
  PangoLayout *layout = pango_layout_new (drawing->text);
  PangoFontDescription *font = pango_font_description_from_string ("Inter,Sans");
  PangoAttrList *attributes = pango_attr_list_new ();
  double em_mm = type->cap_mm / SQ_CAP_PER_EM;

  pango_font_description_set_weight (font, type->weight > 0 ? (PangoWeight)type->weight
                                                            : PANGO_WEIGHT_NORMAL);
  pango_font_description_set_absolute_size (font, em_mm * PANGO_SCALE);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);

  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  if (type->tracking_em != 0.0)
    pango_attr_list_insert (
      attributes, pango_attr_letter_spacing_new ((int)(type->tracking_em * em_mm * PANGO_SCALE)));
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);

  pango_layout_set_text (layout, text, -1);
  pango_layout_set_alignment (layout, alignments[type->align]);
  pango_layout_set_single_paragraph_mode (layout, type->one_line);
  /* Where one line fits, it stands by our own alignment: within a set width a script that runs from
   * right to left would be moved to the other side. */
  if (type->width_mm > 0.0 && !(type->one_line && width_mm (layout) <= type->width_mm)) {
    pango_layout_set_width (layout, (int)(type->width_mm * PANGO_SCALE));
    pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
    if (type->one_line)
      pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
  }
  return layout;
}

/* From the first baseline to the last. */
static double
lines_mm (PangoLayout *layout)
{
  PangoLayoutIter *iter = pango_layout_get_iter (layout);
  int first = pango_layout_iter_get_baseline (iter), last;
  while (pango_layout_iter_next_line (iter))
    ;
  last = pango_layout_iter_get_baseline (iter);
  pango_layout_iter_free (iter);
  return (double)(last - first) / PANGO_SCALE;
}

/* Of what the layout aligns within: the width that was set, else its own. */
static double
set_width_mm (PangoLayout *layout)
{
  int set = pango_layout_get_width (layout);
  return set >= 0 ? (double)set / PANGO_SCALE : width_mm (layout);
}

/* Left edge of the layout relative to its point. */
static double
left_mm (PangoLayout *layout, const SqType *type)
{
  double width = set_width_mm (layout);
  return type->align == SQ_ALIGN_LEFT ? 0.0 : type->align == SQ_ALIGN_CENTRE ? -width / 2 : -width;
}

double
sq_draw_text (SqDrawing *drawing, SqPaperPoint at, const char *text, const SqType *type)
{
  g_autoptr (PangoLayout) layout = lay_out (drawing, text, type);
  cairo_t *cr = drawing->cairo;
  double left = left_mm (layout, type);
  double top = -(double)pango_layout_get_baseline (layout) / PANGO_SCALE;

  sq_draw_enter (drawing, at, type->turn_rad);
  if (type->halo) {
    SqColour ground = sq_ink (drawing->view, SQ_PAPER);
    cairo_new_path (cr);
    cairo_move_to (cr, left, top);
    pango_cairo_layout_path (cr, layout);
    cairo_set_source_rgba (cr, ground.red, ground.green, ground.blue, 0.92);
    cairo_set_line_width (cr, type->cap_mm * 0.55);
    cairo_set_line_join (cr, CAIRO_LINE_JOIN_ROUND);
    cairo_set_dash (cr, NULL, 0, 0.0);
    cairo_stroke (cr);
  }
  cairo_set_source_rgb (cr, type->colour.red, type->colour.green, type->colour.blue);
  cairo_move_to (cr, left, top);
  pango_cairo_show_layout (cr, layout);
  cairo_new_path (cr); /* showing a layout leaves a current point behind */
  sq_draw_leave (drawing);
  return lines_mm (layout);
}

SqPaperBox
sq_text_box (SqDrawing *drawing, const char *text, const SqType *type)
{
  g_autoptr (PangoLayout) layout = lay_out (drawing, text, type);
  double width = width_mm (layout), set = set_width_mm (layout);
  double left = left_mm (layout, type) + (type->align == SQ_ALIGN_LEFT     ? 0.0
                                          : type->align == SQ_ALIGN_CENTRE ? (set - width) / 2
                                                                           : set - width);
  return (SqPaperBox){ left, -type->cap_mm, width,
                       type->cap_mm * (1.0 + DESCENT_PER_CAP) + lines_mm (layout) };
}

double
sq_text_width_mm (SqDrawing *drawing, const char *text, const SqType *type)
{
  g_autoptr (PangoLayout) layout = lay_out (drawing, text, type);
  return width_mm (layout);
}
