/* panel-symbol.c: flags, nets, frames and bounces seen from above */
#include "draw/panel-symbol.h"

#include <glib/gi18n-lib.h>

/* A panel that leans so far that its two edges stand this far apart on paper is drawn as an area.
 */
#define LEAST_AREA_MM 3.5

const char *
sq_panel_kind_word (int kind)
{
  static const char *const words[] = { N_ ("Flag"), N_ ("Net"), N_ ("Frame"), N_ ("Bounce") };
  return words[kind];
}

SqPanelMark
sq_panel_mark (const SqView *view, const SqPanel *panel)
{
  double c = fabs (cos (SQ_RADIANS (panel->roll_deg)));
  double s = fabs (sin (SQ_RADIANS (panel->roll_deg)));
  return (SqPanelMark){
    .kind = panel->kind,
    .at = sq_view_paper (view, (SqPlace){ panel->at.x_m, panel->at.y_m }),
    .facing_deg = panel->facing_deg,
    .tilt_deg = panel->tilt_deg,
    .width_m = panel->width_m * c + panel->height_m * s,
    .rise_m = panel->height_m * c + panel->width_m * s,
  };
}

static double
length_mm (const SqView *view, const SqPanelMark *mark)
{
  return MAX (mark->width_m * view->mm_per_m, SQ_PANEL_LEAST_MM);
}

/* How far apart its upper and lower edge are on the plan; 0 where that would not be seen. */
static double
lean_mm (const SqView *view, const SqPanelMark *mark)
{
  double lean = fabs (mark->rise_m * sin (SQ_RADIANS (mark->tilt_deg))) * view->mm_per_m;
  return lean >= LEAST_AREA_MM ? lean : 0.0;
}

SqTurnedBox
sq_panel_outline (const SqView *view, const SqPanelMark *mark)
{
  return (SqTurnedBox){ .middle = mark->at,
                        .angle_rad = sq_view_angle_rad (mark->facing_deg),
                        .half_length_mm = MAX (1.3, lean_mm (view, mark) / 2 + 1.0),
                        .half_width_mm = length_mm (view, mark) / 2 };
}

static void
draw_flag (SqDrawing *drawing, double length)
{
  cairo_rectangle (drawing->cairo, -0.5, -length / 2, 1.0, length);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_INK), 1.0);
}

static void
draw_net (SqDrawing *drawing, double length)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  int n = MAX (4, (int)(length / 1.2));

  cairo_rectangle (drawing->cairo, -0.5, -length / 2, 1.0, length);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
  for (int side = -1; side <= 1; side += 2)
    sq_draw_line (drawing, (SqPaperPoint){ side * 0.5, -length / 2 },
                  (SqPaperPoint){ side * 0.5, length / 2 }, SQ_PEN_35, ink);
  for (int i = 1; i < n; i++) {
    double y = -length / 2 + length * i / n;
    cairo_move_to (drawing->cairo, -0.5, y - 0.35);
    cairo_line_to (drawing->cairo, 0.5, y + 0.35);
    cairo_move_to (drawing->cairo, -0.5, y + 0.35);
    cairo_line_to (drawing->cairo, 0.5, y - 0.35);
  }
  sq_draw_stroke (drawing, SQ_PEN_18, ink);
}

static void
draw_frame (SqDrawing *drawing, double length)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  for (int pass = 0; pass < 2; pass++) {
    cairo_rectangle (drawing->cairo, -0.85, -length / 2, 1.7, length);
    if (pass == 0)
      sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
    else
      sq_draw_stroke (drawing, SQ_PEN_25, ink);
  }
  sq_draw_dots (drawing, (SqPaperPoint){ 0, -length / 2 + 0.9 },
                (SqPaperPoint){ 0, length / 2 - 0.9 }, 1.5, 0.38, ink);
}

static void
draw_bounce (SqDrawing *drawing, double length)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  int n = MAX (4, (int)(length / 1.3));

  for (int pass = 0; pass < 2; pass++) {
    cairo_rectangle (drawing->cairo, -0.2, -length / 2, 0.7, length);
    if (pass == 0)
      sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
    else
      sq_draw_stroke (drawing, SQ_PEN_35, ink);
  }
  for (int i = 0; i < n; i++) { /* the dead side */
    double y = -length / 2 + length * (i + 0.2) / n;
    cairo_move_to (drawing->cairo, -0.2, y);
    cairo_line_to (drawing->cairo, -1.3, y + 0.75);
  }
  sq_draw_stroke (drawing, SQ_PEN_25, ink);
}

static void
draw_edge (SqDrawing *drawing, int kind, double x, double length)
{
  static void (*const draw[]) (SqDrawing *, double) = { draw_flag, draw_net, draw_frame,
                                                        draw_bounce };

  sq_draw_enter (drawing, (SqPaperPoint){ x, 0 }, 0.0);
  draw[kind](drawing, length);
  for (int side = -1; side <= 1; side += 2) /* posts */
    sq_draw_line (drawing, (SqPaperPoint){ -1.3, side * length / 2 },
                  (SqPaperPoint){ 1.3, side * length / 2 }, SQ_PEN_50,
                  sq_ink (drawing->view, SQ_INK));
  sq_draw_leave (drawing);
}

void
sq_draw_panel (SqDrawing *drawing, const SqPanelMark *mark)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double length = length_mm (drawing->view, mark), lean = lean_mm (drawing->view, mark);

  sq_draw_enter (drawing, mark->at, sq_view_angle_rad (mark->facing_deg));
  if (lean > 0.0) {
    for (int side = -1; side <= 1; side += 2)
      sq_draw_line (drawing, (SqPaperPoint){ -lean / 2, side * length / 2 },
                    (SqPaperPoint){ lean / 2, side * length / 2 }, SQ_PEN_25, ink);
    draw_edge (drawing, mark->kind, -lean / 2, length);
    draw_edge (drawing, mark->kind, lean / 2, length);
  } else {
    draw_edge (drawing, mark->kind, 0.0, length);
  }
  if (fabs (mark->tilt_deg) > 10.0 && fabs (mark->tilt_deg) < 80.0)
    sq_draw_arrow (drawing, (SqPaperPoint){ lean / 2 + 1.2, 0 },
                   (SqPaperPoint){ lean / 2 + 3.9, 0 }, SQ_PEN_25, ink, NULL, 0, 1.2);
  sq_draw_leave (drawing);
}
