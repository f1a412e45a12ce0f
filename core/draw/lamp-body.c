/* lamp-body.c: the back of a lamp, by what makes the light; lamps that have no front */
#include "draw/lamp-parts.h"

/* A larger one hangs over half the set, which must show through. */
#define MOST_FILLED_BALL_MM 25.0

SqLampPens
sq_lamp_pens (gboolean on)
{
  if (on)
    return (SqLampPens){ SQ_PEN_50, SQ_PEN_70, 0.55, { 0 }, 0 };
  return (SqLampPens){ SQ_PEN_25, SQ_PEN_35, SQ_PEN_25, { 1.2, 0.8 }, 2 };
}

void
sq_lamp_back_path (SqDrawing *drawing, int source, double width_mm, double back_mm, double front_mm)
{
  cairo_t *cr = drawing->cairo;
  double half = width_mm / 2, depth = front_mm - back_mm;

  cairo_new_sub_path (cr);
  cairo_move_to (cr, front_mm, -half);
  switch (source) {
  case SQ_SOURCE_TUNGSTEN: {
    double rx = MIN (half, 0.6 * depth);
    cairo_line_to (cr, back_mm + rx, -half);
    cairo_save (cr);
    cairo_translate (cr, back_mm + rx, 0);
    cairo_scale (cr, rx, half);
    cairo_arc_negative (cr, 0, 0, 1, -G_PI / 2, G_PI / 2);
    cairo_restore (cr);
    break;
  }
  case SQ_SOURCE_DISCHARGE: {
    double shoulder = MIN (0.42 * width_mm, 0.5 * depth);
    cairo_line_to (cr, back_mm + shoulder, -half);
    cairo_line_to (cr, back_mm, 0);
    cairo_line_to (cr, back_mm + shoulder, half);
    break;
  }
  default:
    cairo_line_to (cr, back_mm, -half);
    cairo_line_to (cr, back_mm, half);
    break;
  }
  cairo_line_to (cr, front_mm, half);
}

/* A drop, its tip forward. */
static void
drop_path (SqDrawing *drawing, double width_mm)
{
  cairo_t *cr = drawing->cairo;
  double w = width_mm, r = 0.36 * w;

  cairo_move_to (cr, 0.62 * w, 0);
  cairo_curve_to (cr, 0.3 * w, -0.35 * r, 0.5 * r, -1.2 * r, -0.1 * w, -r);
  cairo_curve_to (cr, -0.62 * w, -0.8 * r, -0.62 * w, 0.8 * r, -0.1 * w, r);
  cairo_curve_to (cr, 0.5 * r, 1.2 * r, 0.3 * w, 0.35 * r, 0.62 * w, 0);
  cairo_close_path (cr);
}

void
sq_draw_lamp_flame_within (SqDrawing *drawing, double middle_mm)
{
  const double small_mm = 2.4;
  sq_draw_enter (drawing, (SqPaperPoint){ middle_mm, 0 }, 0.0);
  drop_path (drawing, small_mm);
  sq_draw_stroke (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK));
  sq_draw_leave (drawing);
}

static void
draw_flame (SqDrawing *drawing, const SqLampPens *pens, double width_mm)
{
  cairo_t *cr = drawing->cairo;
  double w = width_mm;

  drop_path (drawing, w);
  cairo_path_t *drop = cairo_copy_path (cr);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
  cairo_append_path (cr, drop);
  cairo_path_destroy (drop);
  sq_draw_stroke_dashed (drawing, pens->body_mm, sq_ink (drawing->view, SQ_INK), pens->dash_mm,
                         pens->n_dashes);
  sq_draw_dot (drawing, (SqPaperPoint){ -0.12 * w, 0 }, 0.55, sq_ink (drawing->view, SQ_INK));
}

/* A lamp that is seen in the picture: a ring with rays, its source small in the middle. */
static void
draw_practical (SqDrawing *drawing, const SqLamp *lamp, const SqLampPens *pens, double width_mm)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  const SqPaperPoint middle = { 0, 0 };
  double r = width_mm / 2, small = 0.36 * width_mm;
  int source = lamp->lamp_class->source;

  for (int i = 0; i < 4; i++) {
    double angle = G_PI / 4 + i * G_PI / 2;
    sq_draw_line (drawing, sq_paper_along (middle, angle, r),
                  sq_paper_along (middle, angle, r + 1.3), SQ_PEN_35, ink);
  }
  sq_draw_circle_path (drawing, middle, r);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
  sq_draw_circle_path (drawing, middle, r);
  sq_draw_stroke_dashed (drawing, pens->body_mm, ink, pens->dash_mm, pens->n_dashes);

  sq_lamp_back_path (drawing, source, small, -small / 2, small / 2);
  cairo_close_path (drawing->cairo);
  if (pens->n_dashes == 0)
    sq_draw_fill (drawing, ink, 1.0);
  else
    sq_draw_stroke (drawing, SQ_PEN_25, ink);
  if (source == SQ_SOURCE_FLUORESCENT)
    for (int side = -1; side <= 1; side += 2)
      sq_draw_line (drawing, (SqPaperPoint){ -small / 2 - 0.7, side * small / 4 },
                    (SqPaperPoint){ -small / 2, side * small / 4 }, SQ_PEN_35, ink);
}

/* Lanterns and balloons: a ring of dots. */
static void
draw_ball (SqDrawing *drawing, const SqLampPens *pens, double width_mm)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  const SqPaperPoint middle = { 0, 0 };
  double r = width_mm / 2;
  int n = MAX (8, (int)(G_PI * width_mm / 1.5));

  if (width_mm <= MOST_FILLED_BALL_MM) {
    sq_draw_circle_path (drawing, middle, r);
    sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
  }
  sq_draw_circle_path (drawing, middle, r);
  sq_draw_stroke_dashed (drawing, SQ_PEN_18, ink, pens->dash_mm, pens->n_dashes);
  if (pens->n_dashes == 0)
    for (int i = 0; i < n; i++)
      sq_draw_dot (drawing, sq_paper_along (middle, 2 * G_PI * i / n, r), 0.36, ink);
  sq_draw_dot (drawing, middle, 0.7, ink);
}

void
sq_draw_lamp_round (SqDrawing *drawing, const SqLamp *lamp, const SqLampSize *size)
{
  SqLampPens pens = sq_lamp_pens (lamp->fixture == NULL || lamp->fixture->on);
  if (lamp->lamp_class->source == SQ_SOURCE_FLAME)
    draw_flame (drawing, &pens, size->width_mm);
  else if (lamp->lamp_class->optics == SQ_OPTICS_BULB)
    draw_practical (drawing, lamp, &pens, size->width_mm);
  else
    draw_ball (drawing, &pens, size->width_mm);
}
