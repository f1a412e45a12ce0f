/* plan.c: the plan, layer by layer */
#include "draw/plan.h"

#include "draw/dimension-line.h"
#include "draw/person.h"
#include "draw/piece-symbol.h"
#include "draw/plan-parts.h"
#include "draw/point-symbols.h"
#include "draw/shadow.h"
#include "draw/wall-drawing.h"

/* With more hard lamps than this, edges at a tenth are drawn for the important ones alone. */
#define MANY_HARD 8

SqPlanReport *
sq_plan_report_new (void)
{
  SqPlanReport *report = g_new0 (SqPlanReport, 1);
  report->labels = g_array_new (FALSE, FALSE, sizeof (SqLabel));
  report->solid = g_array_new (FALSE, FALSE, sizeof (SqPaperBox));
  report->lines = g_array_new (FALSE, FALSE, sizeof (SqPaperLine));
  report->notes = g_ptr_array_new ();
  report->crowded = g_ptr_array_new ();
  return report;
}

void
sq_plan_report_free (SqPlanReport *report)
{
  if (report == NULL)
    return;
  g_array_unref (report->labels);
  g_array_unref (report->solid);
  g_array_unref (report->lines);
  g_ptr_array_unref (report->notes);
  g_ptr_array_unref (report->crowded);
  sq_plan_use_clear (&report->use);
  sq_plan_labels_free (report->placed);
  g_free (report);
}

static void
fill_report (SqPlanReport *report, const SqScene *scene, const SqPlanLabels *labels)
{
  g_array_set_size (report->labels, 0);
  g_array_set_size (report->solid, 0);
  g_array_set_size (report->lines, 0);
  g_ptr_array_set_size (report->notes, 0);
  g_ptr_array_set_size (report->crowded, 0);
  sq_plan_use_clear (&report->use);
  sq_plan_use_init (&report->use, scene);
  for (guint i = 0; i < scene->notes->len; i++)
    if (!SQ_AT (SqNote, scene->notes, i)->common.hidden)
      g_ptr_array_add (report->notes, g_ptr_array_index (scene->notes, i));
  sq_plan_labels_report (labels, report);
}

static guint
hard_lamps (const SqScene *scene)
{
  guint n = 0;
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    if (fixture->on && !fixture->common.hidden && sq_fixture_is_hard (scene, fixture))
      n++;
  }
  return n;
}

static void
work_out_throws (SqPlanParts *parts)
{
  gboolean many = hard_lamps (parts->scene) > MANY_HARD;
  const char *alone = parts->request->light_id;
  for (guint i = 0; i < parts->scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, parts->scene->fixtures, i);
    SqThrow way = { 0 };
    if (!fixture->common.hidden && !parts->request->without_throws &&
        (alone == NULL || g_str_equal (alone, fixture->id)))
      way = sq_throw (parts->drawing->view, parts->scene, parts->blocks, fixture, many);
    g_array_append_val (parts->throws, way);
  }
}

/* Where the room is, seen from its windows: about the people, else about the lamps' aims. */
static SqPlace
room_middle (const SqScene *scene, const GArray *blocks)
{
  SqPlace sum = { 0, 0 };
  guint n = 0;
  for (; n < scene->marks->len; n++) {
    sum.x_m += SQ_AT (SqMark, scene->marks, n)->at.x_m;
    sum.y_m += SQ_AT (SqMark, scene->marks, n)->at.y_m;
  }
  for (guint i = 0; scene->marks->len == 0 && i < blocks->len; i++, n++) {
    sum.x_m += sq_wall_block_at (blocks, i)->corner[0].x_m;
    sum.y_m += sq_wall_block_at (blocks, i)->corner[0].y_m;
  }
  return (SqPlace){ sum.x_m / MAX (n, 1), sum.y_m / MAX (n, 1) };
}

static void
work_out (SqPlanParts *parts, SqDrawing *drawing, const SqPlanRequest *request)
{
  const SqScene *scene = request->scene;
  *parts = (SqPlanParts){ .request = request,
                          .scene = scene,
                          .drawing = drawing,
                          .blocks = sq_wall_blocks (scene),
                          .throws = g_array_new (FALSE, FALSE, sizeof (SqThrow)),
                          .fields = g_array_new (FALSE, FALSE, sizeof (SqCameraField)),
                          .runs = g_array_new (FALSE, FALSE, sizeof (SqCableRun)) };
  parts->room = room_middle (scene, parts->blocks);
  work_out_throws (parts);
  for (guint i = 0; i < scene->cameras->len; i++) {
    SqCameraField field =
      sq_camera_field (drawing->view, scene, parts->blocks, SQ_AT (SqCamera, scene->cameras, i));
    g_array_append_val (parts->fields, field);
  }
  for (guint i = 0; i < scene->cables->len; i++) {
    SqCableRun run = sq_cable_run (drawing->view, scene, SQ_AT (SqCable, scene->cables, i));
    g_array_append_val (parts->runs, run);
  }
}

static void
clear_parts (SqPlanParts *parts)
{
  for (guint i = 0; i < parts->runs->len; i++)
    sq_cable_run_clear (&g_array_index (parts->runs, SqCableRun, i));
  g_array_unref (parts->blocks);
  g_array_unref (parts->throws);
  g_array_unref (parts->fields);
  g_array_unref (parts->runs);
}

static void
draw_set (const SqPlanParts *parts)
{
  for (guint i = 0; i < parts->scene->pieces->len; i++)
    if (!SQ_AT (SqPiece, parts->scene->pieces, i)->common.hidden)
      sq_draw_piece (parts->drawing, SQ_AT (SqPiece, parts->scene->pieces, i));
  sq_draw_walls (parts->drawing, parts->blocks);
  for (guint i = 0; i < parts->blocks->len; i++)
    if (sq_wall_block_at (parts->blocks, i)->opening != NULL)
      sq_draw_opening (parts->drawing, sq_wall_block_at (parts->blocks, i));
}

static void
draw_light_and_sight (const SqPlanParts *parts)
{
  const SqCamera *active = sq_scene_camera (parts->scene);
  sq_draw_layer (parts->drawing, SQ_LAYER_THROWS);
  for (guint i = 0; i < parts->throws->len; i++)
    sq_draw_throw (parts->drawing, &g_array_index (parts->throws, SqThrow, i));
  sq_draw_layer (parts->drawing, SQ_LAYER_SIGHT);
  for (guint i = 0; i < parts->fields->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, parts->scene->cameras, i);
    if (!camera->common.hidden)
      sq_draw_camera_field (parts->drawing, &g_array_index (parts->fields, SqCameraField, i),
                            camera == active);
  }
}

/* Those of a light that throws a deep one: all of a mark that is pinned, else what the active
 * camera sees. Over an overlay the light itself shows them. Returns: whether there were any */
static gboolean
draw_shadows (const SqPlanParts *parts)
{
  const SqScene *scene = parts->scene;
  const SqView *view = parts->drawing->view;
  const SqCamera *active = sq_scene_camera (scene);
  const SqCameraField *field = NULL;
  gboolean any = FALSE;

  for (guint i = 0; i < scene->cameras->len; i++)
    if (SQ_AT (SqCamera, scene->cameras, i) == active)
      field = &g_array_index (parts->fields, SqCameraField, i);
  for (guint i = 0; i < scene->marks->len; i++)
    for (guint j = 0; j < scene->fixtures->len; j++) {
      const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
      const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, j);
      if (mark->common.hidden || !sq_shadow_counts (scene, parts->request->readings, fixture, mark))
        continue;
      SqShadow shadow = sq_shadow (view, scene, parts->blocks, fixture, mark);
      if (shadow.any && (mark->shadow_pinned ||
                         (field != NULL && sq_camera_sees_shadow (view, scene, parts->blocks,
                                                                  active, field, &shadow)))) {
        sq_draw_shadow (parts->drawing, &shadow);
        any = TRUE;
      }
    }
  return any;
}

static void
draw_people (const SqPlanParts *parts)
{
  for (guint i = 0; i < parts->scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, parts->scene->marks, i);
    if (mark->common.hidden)
      continue;
    sq_draw_walk (parts->drawing, mark);
    sq_draw_person (parts->drawing, sq_view_paper (parts->drawing->view, mark->at),
                    mark->facing_deg, mark->posture);
  }
}

static void
draw_bodies (const SqPlanParts *parts)
{
  const SqScene *scene = parts->scene;
  const SqView *view = parts->drawing->view;

  sq_draw_layer (parts->drawing, SQ_LAYER_LAMPS);
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    SqLamp lamp = sq_lamp_of_fixture (scene, fixture, view);
    if (!fixture->common.hidden)
      sq_draw_lamp (parts->drawing, &lamp);
  }
  sq_draw_layer (parts->drawing, SQ_LAYER_CAMERAS);
  for (guint i = 0; i < scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, scene->cameras, i);
    if (!camera->common.hidden)
      sq_draw_camera (parts->drawing,
                      sq_view_paper (view, (SqPlace){ camera->at.x_m, camera->at.y_m }),
                      sq_vector_azimuth_deg (sq_camera_direction (scene, camera)),
                      sq_label_or_id (camera->label, camera->id));
  }
}

static double
probe_azimuth_deg (const SqScene *scene, const SqProbe *probe)
{
  SqVector normal = probe->normal;
  const SqThing *toward = probe->toward != NULL ? sq_scene_find (scene, probe->toward) : NULL;
  if (toward != NULL) {
    SqAim aim = { .id = probe->toward };
    SqPoint point;
    if (sq_scene_aim_point (scene, &aim, &point))
      normal = sq_vector_between (probe->at, point);
  }
  if (hypot (normal.x, normal.y) < 0.1 * sq_vector_length (normal))
    return NAN;
  return sq_vector_azimuth_deg (normal);
}

static void
draw_power_and_points (const SqPlanParts *parts)
{
  const SqScene *scene = parts->scene;
  const SqView *view = parts->drawing->view;

  sq_draw_layer (parts->drawing, SQ_LAYER_POWER);
  for (guint i = 0; i < parts->runs->len; i++)
    if (!SQ_AT (SqCable, scene->cables, i)->common.hidden)
      sq_draw_cable (parts->drawing, &g_array_index (parts->runs, SqCableRun, i));
  for (guint i = 0; i < scene->supplies->len; i++) {
    const SqSupply *supply = SQ_AT (SqSupply, scene->supplies, i);
    if (!supply->common.hidden && sq_place_given (supply->at))
      sq_draw_supply (parts->drawing, sq_view_paper (view, supply->at), supply->kind,
                      sq_supply_angle_rad (parts->blocks, supply->at));
  }
  sq_draw_layer (parts->drawing, SQ_LAYER_DIMENSIONS);
  for (guint i = 0; i < scene->dimensions->len; i++)
    if (!SQ_AT (SqDimensionLine, scene->dimensions, i)->common.hidden)
      sq_draw_dimension (parts->drawing, SQ_AT (SqDimensionLine, scene->dimensions, i));
  for (guint i = 0; i < scene->probes->len; i++) {
    const SqProbe *probe = SQ_AT (SqProbe, scene->probes, i);
    if (!probe->common.hidden)
      sq_draw_probe (parts->drawing,
                     sq_view_paper (view, (SqPlace){ probe->at.x_m, probe->at.y_m }),
                     probe_azimuth_deg (scene, probe));
  }
}

void
sq_draw_plan (SqDrawing *drawing, const SqPlanRequest *request)
{
  const SqScene *scene = request->scene;
  SqPaperBox clip = drawing->view->clip;
  cairo_t *cr = drawing->cairo;
  SqPlanParts parts;

  work_out (&parts, drawing, request);
  g_autoptr (SqPlanLabels) made = NULL;
  const SqPlanLabels *labels = request->as_before != NULL ? request->as_before->placed : NULL;
  if (labels == NULL)
    labels = made = sq_plan_labels_new (&parts);
  if (request->report != NULL) {
    fill_report (request->report, scene, labels);
    g_clear_pointer (&request->report->placed, sq_plan_labels_free);
    request->report->placed = g_steal_pointer (&made);
  }

  sq_draw_clip_to (drawing, clip);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);

  if (request->underlay != NULL) {
    cairo_save (cr);
    sq_draw_layer (drawing, SQ_LAYER_OVERLAY);
    request->underlay (drawing, request->underlay_data);
    cairo_restore (cr);
  }
  sq_draw_layer (drawing, SQ_LAYER_SET);
  draw_set (&parts);
  draw_light_and_sight (&parts);
  sq_draw_layer (drawing, SQ_LAYER_SHADOWS);
  if (!drawing->view->has_overlay && !request->without_throws) {
    gboolean any = draw_shadows (&parts);
    if (request->report != NULL)
      request->report->use.shadows = any;
  }
  sq_draw_layer (drawing, SQ_LAYER_GRIP);
  for (guint i = 0; i < scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, scene->panels, i);
    SqPanelMark mark = sq_panel_mark (drawing->view, panel);
    if (!panel->common.hidden && panel->set)
      sq_draw_panel (drawing, &mark);
  }
  sq_draw_layer (drawing, SQ_LAYER_PEOPLE);
  draw_people (&parts);
  draw_bodies (&parts);
  draw_power_and_points (&parts);
  sq_draw_layer (drawing, SQ_LAYER_LEADERS);
  sq_plan_labels_draw_leaders (labels, &parts);
  sq_plan_labels_draw (labels, &parts);
  sq_draw_unclip (drawing);
  clear_parts (&parts);
}
