/* supply-symbol.c: where power comes from */
#include "draw/supply-symbol.h"

#define NEAR_WALL_M 0.4

static void
draw_generator (SqDrawing *drawing)
{
  cairo_t *cr = drawing->cairo;
  SqColour ink = sq_ink (drawing->view, SQ_INK);

  sq_draw_circle_path (drawing, (SqPaperPoint){ 0, 0 }, 3.0);
  sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_50);
  sq_draw_text (
    drawing, (SqPaperPoint){ 0, 0.5 }, "G",
    &(SqType){
      .cap_mm = SQ_TYPE_SMALL + 0.2, .weight = 700, .align = SQ_ALIGN_CENTRE, .colour = ink });
  cairo_move_to (cr, -1.3, 1.7);
  cairo_curve_to (cr, -0.8, 0.9, -0.4, 0.9, 0, 1.7);
  cairo_curve_to (cr, 0.4, 2.5, 0.8, 2.5, 1.3, 1.7);
  sq_draw_stroke (drawing, 0.3, ink);
}

static void
draw_distribution (SqDrawing *drawing)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  cairo_rectangle (drawing->cairo, -3, -2.2, 6, 4.4);
  sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_50);
  sq_draw_line (drawing, (SqPaperPoint){ -1, -2.2 }, (SqPaperPoint){ -1, 2.2 }, SQ_PEN_35, ink);
  for (int i = -1; i <= 1; i++)
    sq_draw_dot (drawing, (SqPaperPoint){ 1, 1.2 * i }, 0.38, ink);
}

/* Half a disc, its flat side on the wall, x away from it. */
static void
draw_outlet (SqDrawing *drawing)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  cairo_new_sub_path (drawing->cairo);
  cairo_arc (drawing->cairo, 0, 0, 2.0, -G_PI / 2, G_PI / 2);
  cairo_close_path (drawing->cairo);
  sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_50);
  sq_draw_dot (drawing, (SqPaperPoint){ 0.75, -0.75 }, 0.35, ink);
  sq_draw_dot (drawing, (SqPaperPoint){ 0.75, 0.75 }, 0.35, ink);
  sq_draw_line (drawing, (SqPaperPoint){ 0, -2.6 }, (SqPaperPoint){ 0, 2.6 }, SQ_PEN_70, ink);
}

void
sq_draw_supply (SqDrawing *drawing, SqPaperPoint at, int kind, double angle_rad)
{
  sq_draw_enter (drawing, at, kind == SQ_SUPPLY_HOUSE ? angle_rad : 0.0);
  if (kind == SQ_SUPPLY_GENERATOR)
    draw_generator (drawing);
  else if (kind == SQ_SUPPLY_DISTRIBUTION)
    draw_distribution (drawing);
  else
    draw_outlet (drawing);
  sq_draw_leave (drawing);
}

SqTurnedBox
sq_supply_outline (SqPaperPoint at, int kind)
{
  static const double half[][2] = { { 2.6, 2.6 }, { 3.0, 2.2 }, { 3.0, 3.0 } };
  return (
    SqTurnedBox){ .middle = at, .half_length_mm = half[kind][0], .half_width_mm = half[kind][1] };
}

double
sq_supply_angle_rad (const GArray *blocks, SqPlace place)
{
  double best = NEAR_WALL_M, angle = -G_PI / 2;
  for (guint i = 0; i < blocks->len; i++)
    for (int side = 0; side < 4; side += 2) { /* the two faces */
      const SqWallBlock *block = sq_wall_block_at (blocks, i);
      SqPlace a = block->corner[side], b = block->corner[side + 1];
      double length = sq_place_distance_m (a, b);
      if (length <= 0.0)
        continue;
      double ux = (b.x_m - a.x_m) / length, uy = (b.y_m - a.y_m) / length;
      double along = (place.x_m - a.x_m) * ux + (place.y_m - a.y_m) * uy;
      double off = (place.x_m - a.x_m) * uy - (place.y_m - a.y_m) * ux; /* outward */
      if (along < 0.0 || along > length || fabs (off) >= best)
        continue;
      best = fabs (off);
      angle = -atan2 (-ux, uy);
    }
  return angle;
}
