/* view.c: boxes, lines and pens in millimetres of a page */
#include "draw/view.h"

double
sq_view_pen_mm (const SqView *view, double pen_mm)
{
  if (view->ground == SQ_GROUND_PAPER)
    return pen_mm;
  double half_pixels = round (pen_mm * SQ_SCREEN_PX_PER_MM * 2.0);
  return MAX (half_pixels / 2.0, 1.0) / SQ_SCREEN_PX_PER_MM;
}

double
sq_view_small_mm (const SqView *view)
{
  const double screen_em_px = 12.0;
  return view->ground == SQ_GROUND_PAPER ? SQ_TYPE_SMALL
                                         : screen_em_px / SQ_SCREEN_PX_PER_MM * SQ_CAP_PER_EM;
}

gboolean
sq_paper_boxes_overlap (SqPaperBox a, SqPaperBox b)
{
  return a.x_mm < b.x_mm + b.width_mm && b.x_mm < a.x_mm + a.width_mm &&
         a.y_mm < b.y_mm + b.height_mm && b.y_mm < a.y_mm + a.height_mm;
}

double
sq_paper_overlap_mm2 (SqPaperBox a, SqPaperBox b)
{
  double width = MIN (a.x_mm + a.width_mm, b.x_mm + b.width_mm) - MAX (a.x_mm, b.x_mm);
  double height = MIN (a.y_mm + a.height_mm, b.y_mm + b.height_mm) - MAX (a.y_mm, b.y_mm);
  return width > 0.0 && height > 0.0 ? width * height : 0.0;
}

SqPaperBox
sq_paper_box_union (SqPaperBox a, SqPaperBox b)
{
  double right = MAX (a.x_mm + a.width_mm, b.x_mm + b.width_mm);
  double bottom = MAX (a.y_mm + a.height_mm, b.y_mm + b.height_mm);
  double left = MIN (a.x_mm, b.x_mm), top = MIN (a.y_mm, b.y_mm);
  return (SqPaperBox){ left, top, right - left, bottom - top };
}

SqPaperBox
sq_paper_box_grown (SqPaperBox box, double by_mm)
{
  return (SqPaperBox){ box.x_mm - by_mm, box.y_mm - by_mm, box.width_mm + 2.0 * by_mm,
                       box.height_mm + 2.0 * by_mm };
}

SqPaperBox
sq_paper_box_round (SqPaperPoint middle, double half_width_mm, double half_height_mm)
{
  return (SqPaperBox){ middle.x_mm - half_width_mm, middle.y_mm - half_height_mm,
                       2.0 * half_width_mm, 2.0 * half_height_mm };
}

SqPaperPoint
sq_paper_box_middle (SqPaperBox box)
{
  return (SqPaperPoint){ box.x_mm + box.width_mm / 2, box.y_mm + box.height_mm / 2 };
}

SqPaperBox
sq_paper_box_moved_within (SqPaperBox box, SqPaperBox outer)
{
  box.x_mm = CLAMP (box.x_mm, outer.x_mm, outer.x_mm + outer.width_mm - box.width_mm);
  box.y_mm = CLAMP (box.y_mm, outer.y_mm, outer.y_mm + outer.height_mm - box.height_mm);
  return box;
}

gboolean
sq_paper_box_within (SqPaperBox inner, SqPaperBox outer)
{
  return inner.x_mm >= outer.x_mm && inner.y_mm >= outer.y_mm &&
         inner.x_mm + inner.width_mm <= outer.x_mm + outer.width_mm &&
         inner.y_mm + inner.height_mm <= outer.y_mm + outer.height_mm;
}

gboolean
sq_paper_clip_line (
  SqPaperBox box, SqPaperPoint from, SqPaperPoint to, double *enter, double *leave)
{
  double dx = to.x_mm - from.x_mm, dy = to.y_mm - from.y_mm;
  /* For each side: how fast the line goes out through it, and how far inside it starts. */
  const double out[] = { -dx, dx, -dy, dy };
  const double room[] = { from.x_mm - box.x_mm, box.x_mm + box.width_mm - from.x_mm,
                          from.y_mm - box.y_mm, box.y_mm + box.height_mm - from.y_mm };
  double first = 0.0, last = 1.0;

  for (int side = 0; side < 4; side++) {
    if (out[side] == 0.0) {
      if (room[side] < 0.0)
        return FALSE;
    } else if (out[side] < 0.0) {
      first = MAX (first, room[side] / out[side]);
    } else {
      last = MIN (last, room[side] / out[side]);
    }
  }
  if (first > last)
    return FALSE;
  if (enter != NULL)
    *enter = first;
  if (leave != NULL)
    *leave = last;
  return TRUE;
}

gboolean
sq_paper_line_hits (SqPaperLine line, SqPaperBox box)
{
  return sq_paper_clip_line (box, line.from, line.to, NULL, NULL);
}

/* Twice the signed area of the triangle: on which side of a → b the point c lies. */
static double
turn (SqPaperPoint a, SqPaperPoint b, SqPaperPoint c)
{
  return (b.x_mm - a.x_mm) * (c.y_mm - a.y_mm) - (b.y_mm - a.y_mm) * (c.x_mm - a.x_mm);
}

gboolean
sq_paper_lines_cross (SqPaperPoint a, SqPaperPoint b, SqPaperPoint c, SqPaperPoint d)
{
  double ab_c = turn (a, b, c), ab_d = turn (a, b, d);
  double cd_a = turn (c, d, a), cd_b = turn (c, d, b);
  if (ab_c == 0.0 && ab_d == 0.0) /* on one line: never a crossing that a reader would see */
    return FALSE;
  return ab_c * ab_d <= 0.0 && cd_a * cd_b <= 0.0;
}

double
sq_turned_box_reach_mm (SqTurnedBox box, double angle_rad)
{
  double c = fabs (cos (angle_rad - box.angle_rad)), s = fabs (sin (angle_rad - box.angle_rad));
  double length = c > 1e-9 ? box.half_length_mm / c : G_MAXDOUBLE;
  double width = s > 1e-9 ? box.half_width_mm / s : G_MAXDOUBLE;
  return MIN (length, width);
}

/* Half of what a turned box takes up along a direction. */
static double
support_mm (SqTurnedBox box, double angle_rad)
{
  double off_rad = angle_rad - box.angle_rad;
  return fabs (cos (off_rad)) * box.half_length_mm + fabs (sin (off_rad)) * box.half_width_mm;
}

double
sq_turned_boxes_apart_mm (SqTurnedBox a, SqTurnedBox b, double angle_rad, double gap_mm)
{
  const double axes[] = { a.angle_rad, a.angle_rad + G_PI / 2, b.angle_rad,
                          b.angle_rad + G_PI / 2 };
  double least = G_MAXDOUBLE;
  for (guint i = 0; i < G_N_ELEMENTS (axes); i++) {
    double share = fabs (cos (angle_rad - axes[i]));
    if (share > 1e-6)
      least = MIN (least, (support_mm (a, axes[i]) + support_mm (b, axes[i]) + gap_mm) / share);
  }
  return least;
}
