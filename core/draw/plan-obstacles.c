/* plan-obstacles.c: what the labels of a plan keep clear of */
#include "draw/dimension-line.h"
#include "draw/person.h"
#include "draw/piece-symbol.h"
#include "draw/plan-parts.h"
#include "draw/point-symbols.h"

/* Labels keep this clear of the field's border. */
#define FIELD_INSET_MM 1.5

/* A face with its nose, in radii of the head. */
#define FACE 1.6

/* The edges of a view without a frame are taken to be so long. */
#define EDGE_WITHOUT_FRAME_MM 40.0

gboolean
sq_plan_shows (const SqPlanParts *parts, SqPaperPoint at)
{
  return sq_paper_box_within ((SqPaperBox){ at.x_mm, at.y_mm, 0, 0 }, parts->drawing->view->clip);
}

/* Even-odd rule on the paths of closed walls; a set of open walls has no inside that we know. */
static gboolean
is_outside (SqPaperPoint at, gconstpointer data)
{
  const SqPlanParts *parts = data;
  SqPlace place = sq_view_place (parts->drawing->view, at);
  gboolean any = FALSE;

  for (guint i = 0; i < parts->scene->walls->len; i++) {
    const SqWall *wall = SQ_AT (SqWall, parts->scene->walls, i);
    gboolean inside = FALSE;
    if (!wall->closed)
      continue;
    any = TRUE;
    for (guint edge = 0; edge < sq_wall_n_edges (wall); edge++) {
      SqPlace a, b;
      sq_wall_edge (wall, edge, &a, &b);
      if ((a.y_m > place.y_m) != (b.y_m > place.y_m) &&
          place.x_m < a.x_m + (place.y_m - a.y_m) / (b.y_m - a.y_m) * (b.x_m - a.x_m))
        inside = !inside;
    }
    if (inside)
      return FALSE;
  }
  return any;
}

static void
add_walls (const SqPlanParts *parts, SqLabelObstacles *obstacles)
{
  for (guint i = 0; i < parts->blocks->len; i++) {
    const SqWallBlock *block = sq_wall_block_at (parts->blocks, i);
    const SqView *view = parts->drawing->view;
    SqPaperPoint a = sq_view_paper (view, block->corner[0]);
    SqPaperPoint b = sq_view_paper (view, block->corner[1]);
    SqPaperPoint c = sq_view_paper (view, block->corner[2]);
    SqPaperPoint d = sq_view_paper (view, block->corner[3]);
    SqTurnedBox box = { .middle = { (a.x_mm + b.x_mm + c.x_mm + d.x_mm) / 4,
                                    (a.y_mm + b.y_mm + c.y_mm + d.y_mm) / 4 },
                        .angle_rad = atan2 (b.y_mm - a.y_mm, b.x_mm - a.x_mm),
                        .half_length_mm = sq_paper_distance_mm (a, b) / 2,
                        .half_width_mm = sq_paper_distance_mm (a, d) / 2 };
    if (block->opening != NULL && block->opening->kind == SQ_OPENING_DOOR) {
      /* the leaf, hinged to the face that it opens to, and its swing */
      gboolean right = block->opening->open_deg < 0.0;
      SqPaperPoint hinge = right ? a : d, latch = right ? b : c;
      double shut = atan2 (latch.y_mm - hinge.y_mm, latch.x_mm - hinge.x_mm);
      SqPaperPoint end = sq_paper_along (hinge, shut + sq_view_angle_rad (block->opening->open_deg),
                                         sq_paper_distance_mm (hinge, latch));
      sq_label_obstacles_add_line (obstacles, (SqPaperLine){ hinge, end }, SQ_COST_AXIS);
      sq_label_obstacles_add_line (obstacles, (SqPaperLine){ end, latch }, SQ_COST_EDGE);
    }
    sq_label_obstacles_add_turned (obstacles, box, SQ_COST_WALL, NULL);
  }
}

static void
add_people (const SqPlanParts *parts, SqLabelObstacles *obstacles)
{
  const SqView *view = parts->drawing->view;
  for (guint i = 0; i < parts->scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, parts->scene->marks, i);
    if (mark->common.hidden)
      continue;
    SqPaperPoint at = sq_view_paper (view, mark->at), from = at;
    double face_mm = FACE * SQ_HEAD_RADIUS_M * sq_person_mm_per_m (view);
    SqTurnedBox body[SQ_PERSON_PARTS];
    guint n = sq_person_outline (view, at, mark->facing_deg, mark->posture, body);
    sq_label_obstacles_add_box (obstacles, sq_paper_box_round (at, face_mm, face_mm), SQ_COST_LABEL,
                                mark);
    for (guint j = 0; j < n; j++)
      sq_label_obstacles_add_turned (obstacles, body[j], SQ_COST_BODY, mark);
    for (guint j = 0; j < mark->path->len; j++) {
      SqPaperPoint to = sq_view_paper (view, sq_path_at (mark->path, j));
      sq_label_obstacles_add_line (obstacles, (SqPaperLine){ from, to }, SQ_COST_AXIS);
      from = to;
    }
  }
}

static void
add_lights (const SqPlanParts *parts, SqLabelObstacles *obstacles)
{
  const SqView *view = parts->drawing->view;
  for (guint i = 0; i < parts->scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, parts->scene->fixtures, i);
    const SqThrow *way = &g_array_index (parts->throws, SqThrow, i);
    if (fixture->common.hidden)
      continue;
    SqLamp lamp = sq_lamp_of_fixture (parts->scene, fixture, view);
    sq_label_obstacles_add_turned (obstacles, sq_lamp_outline (view, &lamp), SQ_COST_BODY, fixture);
    if (!way->any)
      continue;
    sq_label_obstacles_add_line (obstacles, way->axis, SQ_COST_AXIS);
    for (int side = 0; way->hard && side < 2; side++) {
      sq_label_obstacles_add_line (obstacles, way->half[side], SQ_COST_EDGE);
      if (way->with_tenth)
        sq_label_obstacles_add_line (obstacles, way->tenth[side], SQ_COST_EDGE);
    }
  }
  for (guint i = 0; i < parts->scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, parts->scene->panels, i);
    if (panel->common.hidden || !panel->set)
      continue;
    SqPanelMark mark = sq_panel_mark (view, panel);
    sq_label_obstacles_add_turned (obstacles, sq_panel_outline (view, &mark), SQ_COST_PANEL, panel);
  }
}

static void
add_cameras (const SqPlanParts *parts, SqLabelObstacles *obstacles)
{
  const SqView *view = parts->drawing->view;
  const SqCamera *active = sq_scene_camera (parts->scene);
  for (guint i = 0; i < parts->scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, parts->scene->cameras, i);
    const SqCameraField *field = &g_array_index (parts->fields, SqCameraField, i);
    if (camera->common.hidden)
      continue;
    double azimuth = sq_vector_azimuth_deg (sq_camera_direction (parts->scene, camera));
    sq_label_obstacles_add_turned (obstacles, sq_camera_outline (view, field->pupil, azimuth),
                                   SQ_COST_BODY, camera);
    for (int edge = 0; edge < 2; edge++) {
      double to_mm = field->frame_mm > 0.0 ? field->frame_mm : EDGE_WITHOUT_FRAME_MM;
      SqPaperPoint at = sq_camera_edge_at (field, edge, to_mm);
      sq_label_obstacles_add_line (obstacles, (SqPaperLine){ field->pupil, at }, SQ_COST_AXIS);
      if (camera != active || field->frame_mm <= 0.0)
        continue;
      double on_mm = field->reach_mm[edge] - sq_paper_distance_mm (field->pupil, at);
      double angle_rad = atan2 (at.y_mm - field->pupil.y_mm, at.x_mm - field->pupil.x_mm);
      if (on_mm > 0.0)
        sq_label_obstacles_add_line (
          obstacles, (SqPaperLine){ at, sq_paper_along (at, angle_rad, on_mm) }, SQ_COST_EDGE);
    }
  }
}

static void
add_rest (const SqPlanParts *parts, SqLabelObstacles *obstacles)
{
  const SqView *view = parts->drawing->view;
  for (guint i = 0; i < parts->scene->supplies->len; i++) {
    const SqSupply *supply = SQ_AT (SqSupply, parts->scene->supplies, i);
    if (!supply->common.hidden && sq_place_given (supply->at))
      sq_label_obstacles_add_turned (
        obstacles, sq_supply_outline (sq_view_paper (view, supply->at), supply->kind), SQ_COST_BODY,
        supply);
  }
  for (guint i = 0; i < parts->runs->len; i++) {
    const SqCableRun *run = &g_array_index (parts->runs, SqCableRun, i);
    for (guint j = 1; j < run->n_points; j++)
      sq_label_obstacles_add_line (obstacles, (SqPaperLine){ run->points[j - 1], run->points[j] },
                                   SQ_COST_EDGE);
  }
  for (guint i = 0; i < parts->scene->probes->len; i++) {
    const SqProbe *probe = SQ_AT (SqProbe, parts->scene->probes, i);
    SqPaperPoint at = sq_view_paper (view, (SqPlace){ probe->at.x_m, probe->at.y_m });
    if (!probe->common.hidden)
      sq_label_obstacles_add_box (obstacles,
                                  sq_paper_box_round (at, SQ_PROBE_RADIUS_MM, SQ_PROBE_RADIUS_MM),
                                  SQ_COST_BODY, probe);
  }
  for (guint i = 0; i < parts->scene->dimensions->len; i++) {
    const SqDimensionLine *line = SQ_AT (SqDimensionLine, parts->scene->dimensions, i);
    SqPaperLine drawn[3];
    sq_dimension_lines (view, line, drawn);
    for (int j = 0; j < 3; j++)
      sq_label_obstacles_add_line (obstacles, drawn[j], 2 * SQ_COST_AXIS);
  }
}

/* Columns are as solid as walls; furniture may lie under words, its edges had better not. */
static void
add_pieces (const SqPlanParts *parts, SqLabelObstacles *obstacles)
{
  const SqView *view = parts->drawing->view;
  for (guint i = 0; i < parts->scene->pieces->len; i++) {
    const SqPiece *piece = SQ_AT (SqPiece, parts->scene->pieces, i);
    if (piece->common.hidden)
      continue;
    if (sq_piece_is_column (piece))
      sq_label_obstacles_add_box (obstacles, sq_piece_box (view, piece), 2 * SQ_COST_WALL, NULL);
    guint n = piece->disc == NULL ? piece->outline->len : 0;
    for (guint j = 0; j < n; j++)
      sq_label_obstacles_add_line (
        obstacles,
        (SqPaperLine){ sq_view_paper (view, sq_path_at (piece->outline, j)),
                       sq_view_paper (view, sq_path_at (piece->outline, (j + 1) % n)) },
        SQ_COST_PIECE);
  }
}

/* A word across the joint of two sheets is whole on neither. */
static void
add_seams (const SqPlanParts *parts, SqLabelObstacles *obstacles)
{
  const GArray *seams = parts->request->seams;
  for (guint i = 0; seams != NULL && i < seams->len; i++) {
    SqPaperLine seam = g_array_index (seams, SqPaperLine, i);
    SqPaperBox box = { MIN (seam.from.x_mm, seam.to.x_mm), MIN (seam.from.y_mm, seam.to.y_mm),
                       fabs (seam.to.x_mm - seam.from.x_mm), fabs (seam.to.y_mm - seam.from.y_mm) };
    sq_label_obstacles_add_box (obstacles, sq_paper_box_grown (box, SQ_PLAN_SEAM_HALF_MM),
                                SQ_COST_BODY, NULL);
  }
}

SqLabelObstacles *
sq_plan_obstacles (const SqPlanParts *parts)
{
  SqPaperBox field = sq_paper_box_grown (parts->drawing->view->clip, -FIELD_INSET_MM);
  SqLabelObstacles *obstacles = sq_label_obstacles_new (field);
  obstacles->is_outside = is_outside;
  obstacles->outside_data = parts;
  add_walls (parts, obstacles);
  add_pieces (parts, obstacles);
  add_people (parts, obstacles);
  add_lights (parts, obstacles);
  add_cameras (parts, obstacles);
  add_rest (parts, obstacles);
  add_seams (parts, obstacles);
  return obstacles;
}
