/* supply-symbol.c: where power comes from and how it gets there */
#include "draw/supply-symbol.h"

#include "draw/label.h"

#include <glib/gi18n-lib.h>

#define NEAR_WALL_M 0.4
#define BEAD_STEP_MM 7.0
/* A run that leaves ends this far inside the field. */
#define BORDER_MM 3.0

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

static char *
section_text (const SqCable *cable)
{
  if (!isnan (cable->conductor_mm2))
    return sq_quantity_format (cable->conductor_mm2, SQ_SECTION, SQ_METRIC);
  if (cable->awg != NULL && *cable->awg != '\0')
    return g_strdup_printf (_ ("%s AWG"), cable->awg);
  return g_strdup ("");
}

/* Lengths of cable are read in whole metres or feet. */
static char *
cable_length_text (double length_m, SqUnits units)
{
  if (units == SQ_IMPERIAL)
    return g_strdup_printf (_ ("%.0f\u00a0ft"), length_m / SQ_FOOT_M);
  return g_strdup_printf (_ ("%.0f\u00a0m"), length_m);
}

static char *
run_text (const SqView *view, const SqCable *cable, double way_m, const SqThing *leads_to)
{
  g_autofree char *section = section_text (cable);
  g_autofree char *length =
    cable_length_text (isnan (cable->length_m) ? way_m : cable->length_m, view->units);
  g_autofree char *what =
    *section != '\0' ? g_strdup_printf ("%s   %s", length, section) : g_strdup (length);
  if (leads_to == NULL)
    return g_steal_pointer (&what);
  const char *label =
    leads_to->kind == &sq_supply_kind ? ((const SqSupply *)leads_to)->label : NULL;
  const char *name = sq_label_or_id (label, sq_thing_id (leads_to));
  return g_strdup_printf (_ ("to %s\n%s"), name, what);
}

/* From the end that stands on this field to the other one. */
static gboolean
ends_of_run (const SqScene *scene,
             const SqCable *cable,
             const SqView *view,
             GArray *way,
             const SqThing **starts_at,
             const SqThing **leads_to)
{
  const SqThing *from = sq_scene_find (scene, cable->from), *to = sq_scene_find (scene, cable->to);
  if (from == NULL || to == NULL)
    return FALSE;
  SqPoint a = sq_thing_middle (from), b = sq_thing_middle (to);
  SqPlace start = { b.x_m, b.y_m }, end = { a.x_m, a.y_m };
  if (isnan (start.x_m) || isnan (end.x_m)) /* a supply that stands nowhere */
    return FALSE;
  SqPaperPoint first = sq_view_paper (view, start);
  gboolean turn = !sq_paper_box_within ((SqPaperBox){ first.x_mm, first.y_mm, 0, 0 }, view->clip);

  *leads_to = turn ? to : from;
  *starts_at = turn ? from : to;
  g_array_append_val (way, start);
  for (guint i = cable->via->len; i > 0; i--)
    g_array_append_val (way, g_array_index (cable->via, SqPlace, i - 1));
  g_array_append_val (way, end);
  for (guint i = 0; turn && i < way->len / 2; i++) {
    SqPlace *one = &g_array_index (way, SqPlace, i);
    SqPlace *other = &g_array_index (way, SqPlace, way->len - 1 - i), kept = *one;
    *one = *other;
    *other = kept;
  }
  return TRUE;
}

/* A cable ends at what it feeds, not in it. */
static SqPaperPoint
at_the_edge (const SqView *view, const SqScene *scene, const SqThing *thing, SqPlace next)
{
  SqTurnedBox body;
  if (thing->kind == &sq_fixture_kind) {
    SqLamp lamp = sq_lamp_of_fixture (scene, (const SqFixture *)thing, view);
    body = sq_lamp_body (view, &lamp);
  } else {
    const SqSupply *supply = (const SqSupply *)thing;
    body = sq_supply_outline (sq_view_paper (view, supply->at), supply->kind);
  }
  SqPaperPoint to = sq_view_paper (view, next);
  double angle = atan2 (to.y_mm - body.middle.y_mm, to.x_mm - body.middle.x_mm);
  double reach = sq_turned_box_reach_mm (body, angle);
  return sq_paper_along (body.middle, angle, MIN (reach, sq_paper_distance_mm (body.middle, to)));
}

SqCableRun
sq_cable_run (const SqView *view, const SqScene *scene, const SqCable *cable)
{
  g_autoptr (GArray) way = g_array_new (FALSE, FALSE, sizeof (SqPlace));
  const SqThing *fed = NULL, *leads_to = NULL;
  SqCableRun run = { 0 };
  if (!ends_of_run (scene, cable, view, way, &fed, &leads_to))
    return run;

  double length_m = 0.0, longest = -1.0;
  SqPaperBox field = sq_paper_box_grown (view->clip, -BORDER_MM);
  run.points = g_new (SqPaperPoint, way->len);
  run.points[run.n_points++] = at_the_edge (view, scene, fed, sq_path_at (way, 1));
  for (guint i = 1; i < way->len; i++)
    length_m += sq_place_distance_m (sq_path_at (way, i - 1), sq_path_at (way, i));
  for (guint i = 1; i < way->len && !run.leaves; i++) {
    SqPaperPoint from = run.points[run.n_points - 1],
                 to = sq_view_paper (view, sq_path_at (way, i));
    double leave = 1.0;
    if (!sq_paper_clip_line (field, from, to, NULL, &leave))
      leave = 0.0;
    run.leaves = leave < 1.0;
    to.x_mm = from.x_mm + leave * (to.x_mm - from.x_mm);
    to.y_mm = from.y_mm + leave * (to.y_mm - from.y_mm);
    if (!run.leaves && i + 1 == way->len)
      to = at_the_edge (view, scene, leads_to, sq_path_at (way, i - 1));
    if (sq_paper_distance_mm (from, to) > longest) {
      longest = sq_paper_distance_mm (from, to);
      run.label_at = (SqPaperPoint){ (from.x_mm + to.x_mm) / 2, (from.y_mm + to.y_mm) / 2 };
    }
    run.points[run.n_points++] = to;
  }
  run.leads_to = run.leaves ? leads_to : NULL;
  if (run.leaves) {
    SqPaperPoint end = run.points[run.n_points - 1], last = run.points[run.n_points - 2];
    double back = MIN (14.0, sq_paper_distance_mm (last, end));
    run.label_at = sq_paper_along (end, atan2 (last.y_mm - end.y_mm, last.x_mm - end.x_mm), back);
  }
  run.text = run_text (view, cable, length_m, run.leads_to);
  return run;
}

void
sq_cable_run_clear (SqCableRun *run)
{
  g_clear_pointer (&run->points, g_free);
  g_clear_pointer (&run->text, g_free);
  run->n_points = 0;
}

void
sq_draw_cable (SqDrawing *drawing, const SqCableRun *run)
{
  SqColour colour = sq_ink (drawing->view, drawing->view->has_overlay ? SQ_INK : SQ_MID);
  double next = BEAD_STEP_MM / 2;

  if (run->n_points < 2)
    return;
  cairo_save (drawing->cairo);
  cairo_set_line_join (drawing->cairo, CAIRO_LINE_JOIN_ROUND);
  sq_draw_polyline (drawing, run->points, run->n_points - (run->leaves ? 1 : 0), FALSE);
  sq_draw_stroke (drawing, SQ_PEN_25, colour);
  cairo_restore (drawing->cairo);
  if (run->leaves)
    sq_draw_arrow (drawing, run->points[run->n_points - 2], run->points[run->n_points - 1],
                   SQ_PEN_25, colour, NULL, 0, 2.4);
  for (guint i = 1; i < run->n_points; i++) {
    SqPaperPoint from = run->points[i - 1], to = run->points[i];
    double length = sq_paper_distance_mm (from, to);
    double angle = atan2 (to.y_mm - from.y_mm, to.x_mm - from.x_mm);
    for (; next < length; next += BEAD_STEP_MM)
      sq_draw_dot (drawing, sq_paper_along (from, angle, next), 0.42, colour);
    next -= length;
  }
}
