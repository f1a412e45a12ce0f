/* cable-run.c: how power gets to where it is used */
#include "draw/cable-run.h"

#include "draw/label.h"
#include "draw/supply-symbol.h"

#include <glib/gi18n-lib.h>

#define BEAD_STEP_MM 7.0
/* A run that leaves ends this far inside the field. */
#define BORDER_MM 3.0

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

/* @way_m: NAN where it goes nobody knows how far */
static char *
run_text (const SqView *view, const SqCable *cable, double way_m, const SqThing *leads_to)
{
  double length_m = isnan (cable->length_m) ? way_m : cable->length_m;
  g_autofree char *section = section_text (cable);
  g_autofree char *length =
    isnan (length_m) ? g_strdup ("") : cable_length_text (length_m, view->units);
  const char *gap = *length != '\0' && *section != '\0' ? "   " : "";
  g_autofree char *what = g_strconcat (length, gap, section, NULL);
  if (leads_to == NULL)
    return g_steal_pointer (&what);
  const char *label =
    leads_to->kind == &sq_supply_kind ? ((const SqSupply *)leads_to)->label : NULL;
  const char *name = sq_label_or_id (label, sq_thing_id (leads_to));
  if (*what == '\0')
    return g_strdup_printf (_ ("to %s"), name);
  return g_strdup_printf (_ ("to %s\n%s"), name, what);
}

static SqPlace
place_of (const SqThing *thing)
{
  SqPoint middle = sq_thing_middle (thing);
  return (SqPlace){ middle.x_m, middle.y_m };
}

static gboolean
is_on_field (const SqView *view, SqPlace place)
{
  SqPaperPoint at = sq_view_paper (view, place);
  return sq_paper_box_within ((SqPaperBox){ at.x_mm, at.y_mm, 0, 0 }, view->clip);
}

/* Straight out over the nearest side of the field. */
static SqPlace
way_out (const SqView *view, SqPlace from)
{
  const double beyond_mm = 1.0;
  SqPaperBox field = view->clip;
  SqPaperPoint at = sq_view_paper (view, from);
  const double to_side[] = { at.x_mm - field.x_mm, field.x_mm + field.width_mm - at.x_mm,
                             at.y_mm - field.y_mm, field.y_mm + field.height_mm - at.y_mm };
  static const int out[][2] = { { -1, 0 }, { 1, 0 }, { 0, -1 }, { 0, 1 } };
  int nearest = 0;
  for (int side = 1; side < 4; side++)
    if (to_side[side] < to_side[nearest])
      nearest = side;
  double reach = MAX (to_side[nearest], 0.0) + beyond_mm;
  at.x_mm += out[nearest][0] * reach;
  at.y_mm += out[nearest][1] * reach;
  return sq_view_place (view, at);
}

/* From the end that stands on this field, @starts_at, to the other one. One that stands nowhere is
 * beyond the field. */
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
  gboolean to_is_there = sq_place_given (place_of (to));
  gboolean from_is_there = sq_place_given (place_of (from));
  if (!to_is_there && !from_is_there)
    return FALSE;
  gboolean turn = !to_is_there || (from_is_there && !is_on_field (view, place_of (to)));
  *starts_at = turn ? from : to;
  *leads_to = turn ? to : from;
  SqPlace start = place_of (*starts_at), end = place_of (*leads_to);
  guint n = cable->via->len;

  g_array_append_val (way, start);
  for (guint i = 0; i < n; i++)
    g_array_append_val (way, g_array_index (cable->via, SqPlace, turn ? i : n - 1 - i));
  if (!sq_place_given (end))
    end = way_out (view, sq_path_at (way, way->len - 1));
  g_array_append_val (way, end);
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

/* So far inside the field that words about it have room: about 1.4 mm a letter at their height. */
static SqPaperPoint
room_for_words (const SqView *view, SqPaperPoint at, const char *text)
{
  const double letter_mm = 1.4, half_high_mm = 4.0;
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  glong letters = 0;
  for (guint k = 0; lines[k] != NULL; k++)
    letters = MAX (letters, g_utf8_strlen (lines[k], -1));
  SqPaperBox field = view->clip;
  double half_mm = MIN (letters * letter_mm, field.width_mm) / 2.0;
  at.x_mm = CLAMP (at.x_mm, field.x_mm + half_mm, field.x_mm + field.width_mm - half_mm);
  at.y_mm = CLAMP (at.y_mm, field.y_mm + half_high_mm, field.y_mm + field.height_mm - half_high_mm);
  return at;
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
  /* How far it is to a supply that stands nowhere is not known. */
  if (!sq_place_given (place_of (leads_to)))
    length_m = NAN;
  run.text = run_text (view, cable, length_m, run.leads_to);
  if (run.leaves)
    run.label_at = room_for_words (view, run.label_at, run.text);
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
