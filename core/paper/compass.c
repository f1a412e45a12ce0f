/* compass.c: a two-tone needle in a ring, and a sun with its arrow */
#include "paper/compass.h"

#include <math.h>

#define TICK_EACH_DEG 30

void
sq_draw_compass (SqDrawing *drawing, SqPaperPoint middle, double radius_mm, double north_deg)
{
  double ring = radius_mm, tick_mm = 0.17 * ring, needle = 1.25 * ring, half_mm = 0.27 * ring;
  cairo_t *cairo = drawing->cairo;
  SqColour ink = sq_ink (drawing->view, SQ_INK), paper = sq_ink (drawing->view, SQ_PAPER);
  double north = sq_view_angle_rad (north_deg);

  cairo_save (cairo);
  cairo_translate (cairo, middle.x_mm, middle.y_mm);
  cairo_rotate (cairo, north); /* x now points north */
  cairo_arc (cairo, 0.0, 0.0, ring, 0.0, 2.0 * G_PI);
  sq_draw_stroke (drawing, SQ_PEN_25, ink);
  for (int deg = 0; deg < 360; deg += TICK_EACH_DEG) {
    double c = cos (SQ_RADIANS (deg)), s = sin (SQ_RADIANS (deg));
    SqPaperPoint outer = { ring * c, ring * s };
    SqPaperPoint inner = { (ring - tick_mm) * c, (ring - tick_mm) * s };
    sq_draw_line (drawing, inner, outer, SQ_PEN_18, ink);
  }
  /* The half to the right of north is dark. */
  for (int side = -1; side <= 1; side += 2) {
    cairo_move_to (cairo, needle, 0.0);
    cairo_line_to (cairo, 0.0, side * half_mm);
    cairo_line_to (cairo, -0.45 * ring, 0.0);
    cairo_close_path (cairo);
    sq_draw_fill (drawing, side > 0 ? ink : paper, 1.0);
  }
  cairo_move_to (cairo, needle, 0.0);
  cairo_line_to (cairo, 0.0, half_mm);
  cairo_line_to (cairo, -0.45 * ring, 0.0);
  cairo_line_to (cairo, 0.0, -half_mm);
  cairo_close_path (cairo);
  sq_draw_stroke (drawing, SQ_PEN_25, ink);
  cairo_restore (cairo);

  gboolean small = radius_mm < SQ_COMPASS_RADIUS_MM;
  SqType type = { .cap_mm = small ? SQ_TYPE_SMALL : SQ_TYPE_HEAD,
                  .weight = 700,
                  .align = SQ_ALIGN_CENTRE,
                  .colour = ink };
  double out = needle + 0.5 * type.cap_mm + (small ? 0.4 : 1.0);
  SqPaperPoint at = { middle.x_mm + out * cos (north),
                      middle.y_mm + out * sin (north) + type.cap_mm / 2.0 };
  sq_draw_text (drawing, at, "N", &type);
}

void
sq_draw_sun (SqDrawing *drawing, SqPaperPoint middle, double reach_mm, double toward_deg)
{
  /* At its usual size the disc has a radius of 2.2 and the arrow runs past the middle. */
  const double usual_reach_mm = 13.0, least_size = 0.45;
  const double size = MAX (reach_mm / usual_reach_mm, least_size);
  const double disc_mm = 2.2 * size, ray_from = 3.0 * size, ray_to = 4.2 * size;
  const double apart_mm = 8.8 * size, arrow_mm = 16.0 * size;
  const double dash_mm[] = { 3.0 * size, 1.0 * size }, head_mm = 2.4 * sqrt (size);
  const double pen_mm = size < 0.8 ? SQ_PEN_25 : SQ_PEN_35;
  const int rays = 8;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double toward = sq_view_angle_rad (toward_deg);
  SqPaperPoint sun = sq_paper_along (middle, toward, apart_mm);

  sq_draw_circle_path (drawing, sun, disc_mm);
  sq_draw_stroke (drawing, pen_mm, ink);
  for (int k = 0; k < rays; k++) {
    double angle = 2.0 * G_PI * k / rays;
    sq_draw_line (drawing, sq_paper_along (sun, angle, ray_from),
                  sq_paper_along (sun, angle, ray_to), pen_mm, ink);
  }
  SqPaperPoint from = sq_paper_along (sun, toward + G_PI, ray_to + size);
  SqPaperPoint to = sq_paper_along (from, toward + G_PI, arrow_mm);
  sq_draw_arrow (drawing, from, to, size < 0.8 ? SQ_PEN_35 : SQ_PEN_50, ink, dash_mm,
                 G_N_ELEMENTS (dash_mm), head_mm);
}
