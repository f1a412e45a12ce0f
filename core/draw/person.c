/* person.c: people seen from above */
#include "draw/person.h"

/* Where the figure would be too small to read, it is drawn as if the scale were this. */
#define LEAST_MM_PER_M 10.0

/* Seen from above, from the middle of the shoulders, in metres: the thighs of one who sits, the
 * blanket of one who lies (common practice). */
#define THIGH_FROM_M 0.02
#define THIGH_LONG_M 0.44
#define THIGH_WIDE_M 0.15
#define THIGH_ASIDE_M 0.11
#define BLANKET_FROM_M (-1.2)
#define BLANKET_LONG_M 1.15
#define BLANKET_WIDE_M 0.4

/* A walk starts so far from where one stands. */
#define CLEAR_OF_BODY_M 0.3

/* The head as shares of its radius. */
#define NOSE 1.55
#define CHEEK_FORWARD 0.8
#define CHEEK_ASIDE 0.6

double
sq_person_mm_per_m (const SqView *view)
{
  return MAX (view->mm_per_m, LEAST_MM_PER_M);
}

static SqTurnedBox
part (SqPaperPoint at, double angle_rad, double from_mm, double long_mm, double wide_mm)
{
  return (SqTurnedBox){ .middle = sq_paper_along (at, angle_rad, from_mm + long_mm / 2),
                        .angle_rad = angle_rad,
                        .half_length_mm = long_mm / 2,
                        .half_width_mm = wide_mm / 2 };
}

guint
sq_person_outline (const SqView *view,
                   SqPaperPoint at,
                   double facing_deg,
                   int posture,
                   SqTurnedBox parts[SQ_PERSON_PARTS])
{
  double k = sq_person_mm_per_m (view), angle = sq_view_angle_rad (facing_deg);
  parts[0] = part (at, angle, -SQ_SHOULDERS_DEEP_M / 2 * k, SQ_SHOULDERS_DEEP_M * k,
                   SQ_SHOULDERS_WIDE_M * k);
  if (posture == SQ_POSTURE_SIT)
    parts[1] =
      part (at, angle, THIGH_FROM_M * k, THIGH_LONG_M * k, (2 * THIGH_ASIDE_M + THIGH_WIDE_M) * k);
  else if (posture == SQ_POSTURE_LIE)
    parts[1] = part (at, angle, BLANKET_FROM_M * k, BLANKET_LONG_M * k, BLANKET_WIDE_M * k);
  else
    return 1;
  return SQ_PERSON_PARTS;
}

void
sq_draw_person (SqDrawing *drawing, SqPaperPoint at, double facing_deg, int posture)
{
  cairo_t *cr = drawing->cairo;
  double k = sq_person_mm_per_m (drawing->view), head = SQ_HEAD_RADIUS_M * k;
  const double cheek = atan2 (CHEEK_ASIDE, CHEEK_FORWARD);

  sq_draw_enter (drawing, at, sq_view_angle_rad (facing_deg));
  if (posture == SQ_POSTURE_SIT)
    for (int side = -1; side <= 1; side += 2) {
      SqPaperBox thigh = { THIGH_FROM_M * k, (side * THIGH_ASIDE_M - THIGH_WIDE_M / 2) * k,
                           THIGH_LONG_M * k, THIGH_WIDE_M * k };
      sq_draw_box_path (drawing, thigh, THIGH_WIDE_M / 2 * k);
      sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_35);
    }
  if (posture == SQ_POSTURE_LIE) {
    SqPaperBox blanket = { BLANKET_FROM_M * k, -BLANKET_WIDE_M / 2 * k, BLANKET_LONG_M * k,
                           BLANKET_WIDE_M * k };
    sq_draw_box_path (drawing, blanket, BLANKET_WIDE_M / 4 * k);
    sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_35);
  }

  cairo_save (cr);
  cairo_scale (cr, SQ_SHOULDERS_DEEP_M / 2 * k, SQ_SHOULDERS_WIDE_M / 2 * k);
  sq_draw_circle_path (drawing, (SqPaperPoint){ 0, 0 }, 1.0);
  cairo_restore (cr);
  sq_draw_outlined (drawing, SQ_BODY, SQ_PEN_35);

  cairo_move_to (cr, NOSE * head, 0);
  cairo_line_to (cr, CHEEK_FORWARD * head, -CHEEK_ASIDE * head);
  cairo_arc_negative (cr, 0, 0, head, -cheek, cheek);
  cairo_close_path (cr);
  sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_35);
  sq_draw_leave (drawing);
}

/* A look may have moved somebody along the walk: points up to the one that is reached lie behind.
 */
static guint
first_ahead (const SqMark *mark)
{
  const double there_m = 0.05;
  guint first = 0;
  for (guint i = 0; i < mark->path->len; i++)
    if (sq_place_distance_m (mark->at, sq_path_at (mark->path, i)) < there_m)
      first = i + 1;
  return first;
}

void
sq_draw_walk (SqDrawing *drawing, const SqMark *mark)
{
  static const double dash[] = { 2.2, 1.1 };
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double k = drawing->view->mm_per_m;
  guint first = first_ahead (mark), n = mark->path->len;

  SqPaperPoint from = sq_view_paper (drawing->view, mark->at);
  for (guint i = first; i < n; i++) {
    SqPaperPoint to = sq_view_paper (drawing->view, sq_path_at (mark->path, i));
    if (i == first) { /* starts clear of the shoulders */
      double angle = atan2 (to.y_mm - from.y_mm, to.x_mm - from.x_mm);
      from = sq_paper_along (from, angle,
                             MIN (CLEAR_OF_BODY_M * k, 0.5 * sq_paper_distance_mm (from, to)));
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
