/* legend-marks.c: one mark a function, as it looks at 1:100 */
#include "paper/legend-marks.h"

#include "draw/lamp-parts.h"
#include "draw/panel-symbol.h"
#include "draw/shadow.h"
#include "draw/supply-symbol.h"
#include "draw/tag.h"
#include "draw/throw.h"

double
sq_legend_fit_lamp (SqLamp *lamp, SqView *view)
{
  const double most_mm = SQ_LEGEND_MARK_MM - 0.6; /* its pen reaches out of its outline */
  SqTurnedBox box = sq_lamp_outline (view, lamp);
  gboolean is_turned = 2.0 * box.half_width_mm > SQ_LEGEND_ROW_MM;
  if (is_turned)
    lamp->azimuth_deg = 90.0;
  double long_mm = 2.0 * (is_turned ? box.half_width_mm : box.half_length_mm);
  view->mm_per_m *= MIN (1.0, most_mm / long_mm);
  box = sq_lamp_outline (view, lamp);
  return 2.0 * (is_turned ? box.half_length_mm : box.half_width_mm);
}

void
sq_legend_draw_lamp (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  SqLamp lamp = { .lamp_class = item->lamp_class, .at = middle };
  SqView view = *drawing->view;
  SqDrawing smaller = *drawing;
  smaller.view = &view;
  sq_legend_fit_lamp (&lamp, &view);
  /* The lamp's point is its face: move it so that the whole of it stands in the middle. */
  SqTurnedBox box = sq_lamp_outline (&view, &lamp);
  lamp.at.x_mm -= box.middle.x_mm - middle.x_mm;
  lamp.at.y_mm -= box.middle.y_mm - middle.y_mm;
  sq_draw_lamp (&smaller, &lamp);
}

void
sq_legend_draw_upright (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  const double ring_mm = 1.15;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  sq_draw_circle_path (drawing, middle, ring_mm);
  sq_draw_stroke (drawing, SQ_PEN_35, ink);
  if (item->value > 0) {
    sq_draw_dot (drawing, middle, 0.4, ink);
    return;
  }
  double d = ring_mm * G_SQRT2 / 2.0;
  for (int side = -1; side <= 1; side += 2)
    sq_draw_line (drawing, (SqPaperPoint){ middle.x_mm - d, middle.y_mm - side * d },
                  (SqPaperPoint){ middle.x_mm + d, middle.y_mm + side * d }, SQ_PEN_35, ink);
}

void
sq_legend_draw_grip (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  SqPanelMark mark = {
    .kind = item->value, .at = middle, .facing_deg = 90.0, .width_m = 1.0, .rise_m = 1.0
  };
  sq_draw_panel (drawing, &mark);
}

void
sq_legend_draw_modifier (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  const double face_mm = 3.2, gel_up_mm = 0.8; /* its diamond hangs on one side */
  SqModifier modifier = { .kind = item->value,
                          .stops = 1.0,
                          .part = SQ_PART_FULL,
                          .cutoff_deg = 30.0,
                          .leaves_deg = { 40.0, 40.0, 40.0, 40.0 },
                          .width_m = 0.4,
                          .height_m = 0.4,
                          .depth_m = 0.2 };
  g_autoptr (GPtrArray) modifiers = g_ptr_array_new ();
  g_ptr_array_add (modifiers, &modifier);
  SqFixture bare = { .modifiers = modifiers, .on = TRUE, .level = 1.0 };
  double up_mm = item->value == SQ_MODIFIER_GEL ? gel_up_mm : 0.0;
  sq_draw_enter (drawing, (SqPaperPoint){ middle.x_mm - 2.4, middle.y_mm - up_mm }, 0.0);
  sq_draw_line (drawing, (SqPaperPoint){ 0.0, -face_mm / 2.0 },
                (SqPaperPoint){ 0.0, face_mm / 2.0 }, SQ_PEN_70, sq_ink (drawing->view, SQ_INK));
  sq_draw_lamp_modifiers (drawing, &bare, face_mm, 0.0);
  sq_draw_leave (drawing);
}

void
sq_legend_draw_mount (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  sq_draw_mount_glyph (drawing, (SqPaperPoint){ middle.x_mm - 0.85, middle.y_mm + 0.85 }, 1.7,
                       (SqMountGlyph)item->value);
}

void
sq_legend_draw_role (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  const SqRoleLine *line = &sq_role_lines[item->value];
  cairo_move_to (drawing->cairo, middle.x_mm - SQ_LEGEND_MARK_MM / 2.0, middle.y_mm);
  cairo_line_to (drawing->cairo, middle.x_mm + SQ_LEGEND_MARK_MM / 2.0, middle.y_mm);
  sq_draw_stroke_dashed (drawing, SQ_PEN_70, sq_role_colour (drawing->view, item->value),
                         line->dash_mm, line->n_dashes);
}

/* Closer and closer to the lamp the light gains a stop over less way. */
void
sq_legend_draw_ticks (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  const double at_mm[] = { -3.6, -1.4, 1.6, 5.4 }, axis_to_mm = 4.4;
  sq_draw_line (drawing, (SqPaperPoint){ middle.x_mm - SQ_LEGEND_MARK_MM / 2.0, middle.y_mm },
                (SqPaperPoint){ middle.x_mm + axis_to_mm, middle.y_mm }, SQ_PEN_35,
                sq_role_colour (drawing->view, SQ_ROLE_KEY));
  for (guint k = 0; k < G_N_ELEMENTS (at_mm); k++)
    sq_draw_tick (drawing, (SqPaperPoint){ middle.x_mm + at_mm[k], middle.y_mm }, 0.0,
                  k + 1 == G_N_ELEMENTS (at_mm));
}

void
sq_legend_draw_beams (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  const double apart_mm = 0.7, half_mm = SQ_LEGEND_MARK_MM / 2.0;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  for (int k = 0; k < 2; k++) {
    double y_mm = middle.y_mm + (k == 0 ? -apart_mm : apart_mm);
    sq_draw_beam_edge (
      drawing, (SqPaperLine){ { middle.x_mm - half_mm, y_mm }, { middle.x_mm + half_mm, y_mm } },
      k == 1, ink);
  }
}

void
sq_legend_draw_wedge (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  sq_draw_wedge (drawing, (SqPaperPoint){ middle.x_mm + SQ_WEDGE_MM / 2.0, middle.y_mm }, FALSE);
}

void
sq_legend_draw_off (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  const double half_mm = 3.7, half_high_mm = 1.9; /* a row is lower than a tag */
  sq_draw_pill (drawing, sq_paper_box_round (middle, half_mm, half_high_mm), FALSE);
}

void
sq_legend_draw_supply (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  sq_draw_supply (drawing, middle, item->value, -G_PI_2);
}

void
sq_legend_draw_cable (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  SqColour mid = sq_ink (drawing->view, SQ_MID);
  sq_draw_line (drawing, (SqPaperPoint){ middle.x_mm - SQ_LEGEND_MARK_MM / 2.0, middle.y_mm },
                (SqPaperPoint){ middle.x_mm + SQ_LEGEND_MARK_MM / 2.0, middle.y_mm }, SQ_PEN_25,
                mid);
  for (int k = -1; k <= 1; k += 2)
    sq_draw_dot (drawing, (SqPaperPoint){ middle.x_mm + k * 0.3 * SQ_LEGEND_MARK_MM, middle.y_mm },
                 0.42, mid);
}

/* As on the plan: from the feet on the left, where it is darkest, wider and wider. */
void
sq_legend_draw_shadow (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  const double half_mm = SQ_LEGEND_MARK_MM / 2.0, foot_mm = 0.7, end_mm = 1.3, soft_mm = 1.9;
  SqShadow shadow = { .any = TRUE, .foot = { middle.x_mm - half_mm, middle.y_mm } };
  double left_mm = middle.x_mm - half_mm, right_mm = middle.x_mm + half_mm;
  for (int i = 0; i < SQ_SHADOW_RAYS; i++)
    shadow.end[i] =
      (SqPaperPoint){ right_mm, middle.y_mm + end_mm * (2.0 * i / (SQ_SHADOW_RAYS - 1) - 1.0) };
  for (int side = 0; side < 2; side++) {
    double way = side == 0 ? -1.0 : 1.0;
    shadow.edge[side] = (SqPaperLine){ { left_mm, middle.y_mm + way * foot_mm },
                                       { right_mm, middle.y_mm + way * end_mm } };
    shadow.penumbra[side] = (SqPaperPoint){ right_mm, middle.y_mm + way * soft_mm };
  }
  sq_draw_shadow (drawing, &shadow);
}
