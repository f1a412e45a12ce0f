/* person.c: people seen from above */
#include "draw/person.h"

/* Where the figure would be too small to read, it is drawn as if the scale were this. */
#define LEAST_MM_PER_M 10.0

static void
fill_and_stroke (SqDrawing *drawing, SqInk fill)
{
  cairo_path_t *path = cairo_copy_path (drawing->cairo);
  sq_draw_fill (drawing, sq_ink (drawing->view, fill), 1.0);
  cairo_append_path (drawing->cairo, path);
  cairo_path_destroy (path);
  sq_draw_stroke (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK));
}

void
sq_draw_person (SqDrawing *drawing, SqPaperPoint at, double facing_deg, int posture)
{
  cairo_t *cr = drawing->cairo;
  double k = MAX (drawing->view->mm_per_m, LEAST_MM_PER_M);
  double head = SQ_HEAD_RADIUS_M * k;
  const double cheek = atan2 (0.6, 0.8);

  sq_draw_enter (drawing, at, sq_view_angle_rad (facing_deg));
  if (posture == SQ_POSTURE_SIT)
    for (int side = -1; side <= 1; side += 2) {
      SqPaperBox thigh = {0.02 * k, (side * 0.11 - 0.075) * k, 0.44 * k, 0.15 * k};
      sq_draw_box_path (drawing, thigh, 0.07 * k);
      fill_and_stroke (drawing, SQ_PAPER);
    }
  if (posture == SQ_POSTURE_LIE) {
    sq_draw_box_path (drawing, (SqPaperBox){-1.2 * k, -0.2 * k, 1.15 * k, 0.4 * k}, 0.1 * k);
    fill_and_stroke (drawing, SQ_PAPER);
  }

  cairo_save (cr);
  cairo_scale (cr, SQ_SHOULDERS_DEEP_M / 2 * k, SQ_SHOULDERS_WIDE_M / 2 * k);
  sq_draw_circle_path (drawing, (SqPaperPoint){0, 0}, 1.0);
  cairo_restore (cr);
  fill_and_stroke (drawing, SQ_BODY);

  cairo_move_to (cr, 1.55 * head, 0); /* the nose */
  cairo_line_to (cr, 0.8 * head, -0.6 * head);
  cairo_arc_negative (cr, 0, 0, head, -cheek, cheek);
  cairo_close_path (cr);
  fill_and_stroke (drawing, SQ_PAPER);
  sq_draw_leave (drawing);
}

void
sq_draw_walk (SqDrawing *drawing, const SqMark *mark)
{
  static const double dash[] = {2.2, 1.1};
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double k = drawing->view->mm_per_m;
  guint n = mark->path->len;

  if (n == 0)
    return;
  SqPaperPoint from = sq_view_paper (drawing->view, mark->at);
  for (guint i = 0; i < n; i++) {
    SqPaperPoint to = sq_view_paper (drawing->view, sq_path_at (mark->path, i));
    if (i == 0) { /* starts clear of the shoulders */
      double angle = atan2 (to.y_mm - from.y_mm, to.x_mm - from.x_mm);
      from = sq_paper_along (from, angle, MIN (0.3 * k, 0.5 * sq_paper_distance_mm (from, to)));
    }
    if (i + 1 == n) {
      sq_draw_arrow (drawing, from, to, SQ_PEN_35, ink, dash, G_N_ELEMENTS (dash), 2.2);
      return;
    }
    cairo_move_to (drawing->cairo, from.x_mm, from.y_mm);
    cairo_line_to (drawing->cairo, to.x_mm, to.y_mm);
    sq_draw_stroke_dashed (drawing, SQ_PEN_35, ink, dash, G_N_ELEMENTS (dash));
    from = to;
  }
}
