/* section-grip.c: flags, nets, frames and bounces on the cut, at their true heights */
#include "draw/section-grip.h"

#include "draw/panel-symbol.h"
#include "draw/section-lamp.h"

/* An outline thinner than this is seen edge on. */
#define EDGE_ON_M 0.08

/* How much of the ink what is beside the cut keeps. */
#define NEAR_ALPHA 0.45

void
sq_draw_enter_near (SqDrawing *drawing)
{
  sq_draw_pale (drawing, NEAR_ALPHA);
}

void
sq_draw_leave_near (SqDrawing *drawing)
{
  sq_draw_unpale (drawing);
}

static void
order (SqSidePanel *side)
{
  if (side->to.y_m < side->from.y_m) {
    SqPlace low = side->to;
    side->to = side->from;
    side->from = low;
  }
}

static gboolean
is_cut (const SqSectionSet *set, const SqPanel *panel, SqSidePanel *side)
{
  for (guint i = 0; i < set->parts->len; i++) {
    const SqCutPart *part = &g_array_index (set->parts, SqCutPart, i);
    if (part->owner != &panel->thing)
      continue;
    *side =
      (SqSidePanel){ .cut = TRUE, .edge_on = TRUE, .from = part->corner[0], .to = part->corner[1] };
    order (side);
    return TRUE;
  }
  return FALSE;
}

static double
twice_area_m2 (const SqPlace *corners, guint n)
{
  double area = 0.0;
  for (guint i = 0; i < n; i++) {
    SqPlace a = corners[i], b = corners[(i + 1) % n];
    area += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return area;
}

gboolean
sq_side_panel (const SqSectionSet *set, const SqPanel *panel, SqSidePanel *side)
{
  if (!panel->set || panel->common.hidden)
    return FALSE;
  if (is_cut (set, panel, side))
    return (side->from.x_m + side->to.x_m) / 2 >= set->least.x_m &&
           (side->from.x_m + side->to.x_m) / 2 <= set->most.x_m;

  SqFrame frame = sq_panel_frame (panel);
  SqPlace corners[4];
  double nearest = G_MAXDOUBLE;
  *side = (SqSidePanel){ 0 };
  for (int i = 0; i < 4; i++) {
    SqPoint at = sq_point_along (panel->at, frame.right, (i & 1 ? 0.5 : -0.5) * panel->width_m);
    at = sq_point_along (at, frame.up, (i & 2 ? 0.5 : -0.5) * panel->height_m);
    nearest = MIN (nearest, fabs (sq_cut_off_m (set->plane, at)));
    corners[i] = sq_cut_place (set->plane, at);
  }
  if (nearest > set->near_m)
    return FALSE;
  side->n = sq_cut_outline (corners, 4, side->outline);
  double longest = 0.0;
  for (guint i = 0; i < side->n; i++)
    for (guint k = i + 1; k < side->n; k++)
      if (sq_place_distance_m (side->outline[i], side->outline[k]) > longest) {
        longest = sq_place_distance_m (side->outline[i], side->outline[k]);
        side->from = side->outline[i];
        side->to = side->outline[k];
      }
  order (side);
  side->edge_on = twice_area_m2 (side->outline, side->n) / 2 < EDGE_ON_M * longest;
  SqPlace middle = sq_cut_place (set->plane, panel->at);
  return middle.x_m >= set->least.x_m && middle.x_m <= set->most.x_m &&
         !sq_section_is_in_wall (set, middle);
}

SqPaperBox
sq_side_panel_box (const SqView *view, const SqSidePanel *side)
{
  SqPaperPoint a = sq_view_paper (view, side->from), b = sq_view_paper (view, side->to);
  SqPaperBox box =
    sq_paper_box_union (sq_paper_box_round (a, 1.0, 1.0), sq_paper_box_round (b, 1.0, 1.0));
  for (guint i = 0; !side->edge_on && i < side->n; i++)
    box =
      sq_paper_box_union (box, sq_paper_box_round (sq_view_paper (view, side->outline[i]), 0, 0));
  return box;
}

static void
draw_edge_on (SqDrawing *drawing,
              const SqSectionSet *set,
              const SqPanel *panel,
              const SqSidePanel *side)
{
  const SqView *view = drawing->view;
  SqVector facing = sq_cut_direction (set->plane, sq_panel_frame (panel).forward);
  double dx = side->to.x_m - side->from.x_m, dy = side->to.y_m - side->from.y_m;
  double sign = dy * facing.x - dx * facing.y < 0.0 ? -1.0 : 1.0;
  SqPanelMark mark = {
    .kind = panel->kind,
    .at = sq_view_paper (
      view, (SqPlace){ (side->from.x_m + side->to.x_m) / 2, (side->from.y_m + side->to.y_m) / 2 }),
    .facing_deg = SQ_DEGREES (atan2 (-sign * dx, sign * dy)),
    .width_m = hypot (dx, dy),
  };
  sq_draw_panel (drawing, &mark);
}

/* Seen as an area: its outline; a flag is dark, cloth has its dots or threads along the edge. */
static void
draw_area (SqDrawing *drawing, const SqPanel *panel, const SqSidePanel *side)
{
  const SqView *view = drawing->view;
  SqPaperPoint corners[5];
  SqColour ink = sq_ink (view, SQ_INK);
  for (guint i = 0; i < side->n; i++)
    corners[i] = sq_view_paper (view, side->outline[i]);
  sq_draw_polyline (drawing, corners, side->n, TRUE);
  sq_draw_fill (drawing, sq_ink (view, panel->kind == SQ_PANEL_FLAG ? SQ_INK : SQ_PAPER),
                panel->kind == SQ_PANEL_FLAG ? 0.35 : 0.8);
  sq_draw_polyline (drawing, corners, side->n, TRUE);
  sq_draw_stroke (drawing, SQ_PEN_35, ink);
  if (panel->kind == SQ_PANEL_DIFFUSION)
    for (guint i = 0; i < side->n; i++)
      sq_draw_dots (drawing, corners[i], corners[(i + 1) % side->n], 1.5, 0.38, ink);
}

static void
draw_panel (SqDrawing *drawing,
            const SqSectionSet *set,
            const SqPanel *panel,
            const SqSidePanel *side)
{
  const SqView *view = drawing->view;
  SqPaperPoint middle = sq_view_paper (view, sq_cut_place (set->plane, panel->at));
  double radius = sq_stand_radius_m (set->scene, panel->mount, panel->stand) * view->mm_per_m;
  if (radius > 0.0)
    sq_draw_side_stand (drawing, middle, sq_view_paper (view, (SqPlace){ 0, 0 }).y_mm, radius);
  if (side->edge_on)
    draw_edge_on (drawing, set, panel, side);
  else
    draw_area (drawing, panel, side);
}

void
sq_draw_section_grip (SqDrawing *drawing, const SqSectionSet *set)
{
  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < set->scene->panels->len; i++) {
      const SqPanel *panel = SQ_AT (SqPanel, set->scene->panels, i);
      SqSidePanel side;
      if (!sq_side_panel (set, panel, &side) || side.cut != (pass == 1))
        continue;
      if (!side.cut)
        sq_draw_enter_near (drawing);
      draw_panel (drawing, set, panel, &side);
      if (!side.cut)
        sq_draw_leave_near (drawing);
    }
}
