/* section-obstacles.c: what the words of a section keep clear of */
#include "draw/section-obstacles.h"

#include "draw/camera-symbol.h"
#include "draw/section-figure.h"
#include "draw/section-grip.h"
#include "draw/section-lamp.h"
#include "draw/section-light.h"

/* Words keep this clear of the field's border. */
#define FIELD_INSET_MM 1.5

/* And of the border of what is cut, whose line a tag's plate would wipe out. */
#define SHELL_AIR_MM 0.7

double
sq_section_camera_deg (const SqSection *section, const SqCamera *camera)
{
  SqVector sight = sq_cut_direction (&section->plane, sq_camera_direction (section->scene, camera));
  if (hypot (sight.x, sight.y) < SQ_CUT_LEAST_COSINE)
    return sight.x < 0.0 ? 180.0 : 0.0;
  return SQ_DEGREES (atan2 (sight.y, sight.x));
}

SqTurnedBox
sq_section_camera_outline (const SqView *view, const SqSection *section, const SqCamera *camera)
{
  return sq_camera_outline (view, sq_view_paper (view, sq_cut_place (&section->plane, camera->at)),
                            sq_section_camera_deg (section, camera));
}

static SqPaperBox
part_box (const SqView *view, const SqCutPart *part)
{
  SqPaperBox box = sq_paper_box_round (sq_view_paper (view, part->corner[0]), 0.0, 0.0);
  for (guint i = 1; i < part->n; i++)
    box = sq_paper_box_union (box,
                              sq_paper_box_round (sq_view_paper (view, part->corner[i]), 0.0, 0.0));
  return box;
}

static void
add_built (const SqView *view, const SqSection *section, SqLabelObstacles *obstacles)
{
  const SqSectionSet *set = &section->set;
  for (guint i = 0; i < section->parts->len; i++) {
    const SqCutPart *part = &g_array_index (section->parts, SqCutPart, i);
    gboolean shell = part->owner->kind == &sq_wall_kind || part->owner->kind == &sq_room_kind;
    if (shell && !part->sheet && sq_section_is_drawn (part->owner))
      sq_label_obstacles_add_box (obstacles,
                                  sq_paper_box_grown (part_box (view, part), SHELL_AIR_MM),
                                  2.0 * SQ_COST_WALL, NULL);
  }
  SqPaperPoint from = sq_view_paper (view, (SqPlace){ set->least.x_m, 0.0 });
  SqPaperPoint to = sq_view_paper (view, (SqPlace){ set->most.x_m, -SQ_SECTION_FLOOR_M });
  sq_label_obstacles_add_box (
    obstacles, (SqPaperBox){ from.x_mm, from.y_mm, to.x_mm - from.x_mm, to.y_mm - from.y_mm },
    2.0 * SQ_COST_WALL, NULL);
  SqPaperPoint top = sq_view_paper (view, set->most); /* the height scale */
  sq_label_obstacles_add_box (obstacles,
                              (SqPaperBox){ from.x_mm - SQ_SECTION_SCALE_MM, top.y_mm,
                                            SQ_SECTION_SCALE_MM - 1.0, to.y_mm - top.y_mm },
                              SQ_COST_BODY, NULL);
  for (guint i = 0; i < section->scene->pieces->len; i++) {
    SqPlace least, most;
    gboolean cut;
    if (!sq_section_piece (set, SQ_AT (SqPiece, section->scene->pieces, i), &least, &most, &cut))
      continue;
    SqPaperPoint a = sq_view_paper (view, least), b = sq_view_paper (view, most);
    const SqPaperPoint corner[] = { a, { b.x_mm, a.y_mm }, b, { a.x_mm, b.y_mm } };
    for (int k = 0; k < 4; k++)
      sq_label_obstacles_add_line (obstacles, (SqPaperLine){ corner[k], corner[(k + 1) % 4] },
                                   cut ? 2.0 * SQ_COST_AXIS : SQ_COST_EDGE);
  }
}

static void
add_people (const SqView *view, const SqSection *section, SqLabelObstacles *obstacles)
{
  for (guint i = 0; i < section->scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, section->scene->marks, i);
    SqPaperBox boxes[SQ_FIGURE_BOXES];
    if (!sq_section_shows_mark (section, mark))
      continue;
    guint n = sq_section_figure_boxes (view, &section->plane, mark, boxes);
    for (guint k = 0; k < n; k++)
      sq_label_obstacles_add_box (obstacles, boxes[k], k == 0 ? SQ_COST_LABEL : SQ_COST_BODY, mark);
  }
}

static void
add_stem (const SqView *view, SqPaperPoint top, SqLabelObstacles *obstacles)
{
  SqPaperPoint foot = { top.x_mm, sq_view_paper (view, (SqPlace){ 0.0, 0.0 }).y_mm };
  sq_label_obstacles_add_line (obstacles, (SqPaperLine){ top, foot }, SQ_COST_EDGE);
}

static void
add_lamps (const SqView *view, const SqSection *section, SqLabelObstacles *obstacles)
{
  for (guint i = 0; i < section->scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, section->scene->fixtures, i);
    if (!sq_section_shows_lamp (section, fixture))
      continue;
    g_autoptr (SqSideLamp) side = sq_side_lamp_new (view, section->scene, &section->plane, fixture);
    SqTurnedBox outline = sq_lamp_outline (view, &side->lamp);
    sq_label_obstacles_add_turned (obstacles, outline, SQ_COST_BODY, fixture);
    if (fixture->mount == SQ_MOUNT_STAND || fixture->mount == SQ_MOUNT_LIFT)
      add_stem (view, outline.middle, obstacles);
    double hang = sq_hang_height_m (section->scene, fixture);
    if (isnan (hang))
      continue;
    SqPaperPoint pipe = { outline.middle.x_mm, sq_view_paper (view, (SqPlace){ 0.0, hang }).y_mm };
    sq_label_obstacles_add_box (obstacles, sq_paper_box_round (pipe, 1.2, 1.2), SQ_COST_BODY,
                                fixture);
    sq_label_obstacles_add_line (obstacles, (SqPaperLine){ outline.middle, pipe }, SQ_COST_AXIS);
  }
}

static void
add_grip_and_cameras (const SqView *view, const SqSection *section, SqLabelObstacles *obstacles)
{
  for (guint i = 0; i < section->scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, section->scene->panels, i);
    SqSidePanel side;
    if (sq_side_panel (&section->set, panel, &side))
      sq_label_obstacles_add_box (obstacles, sq_side_panel_box (view, &side),
                                  side.edge_on ? SQ_COST_PANEL : SQ_COST_WALL, panel);
  }
  for (guint i = 0; i < section->scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, section->scene->cameras, i);
    if (sq_section_shows_camera (section, camera))
      sq_label_obstacles_add_turned (obstacles, sq_section_camera_outline (view, section, camera),
                                     SQ_COST_BODY, camera);
  }
}

static void
add_light (const SqView *view, const SqSection *section, SqLabelObstacles *obstacles)
{
  const SqSectionThrow *way = &section->way;
  SqPaperPoint from = sq_view_paper (view, way->from);
  if (way->aimed)
    sq_label_obstacles_add_line (obstacles, (SqPaperLine){ from, sq_view_paper (view, way->end) },
                                 SQ_COST_AXIS);
  for (int edge = 0; way->hard && edge < SQ_EDGES; edge++) {
    sq_label_obstacles_add_line (
      obstacles, (SqPaperLine){ from, sq_view_paper (view, way->half[edge]) }, SQ_COST_AXIS);
    sq_label_obstacles_add_line (
      obstacles, (SqPaperLine){ from, sq_view_paper (view, way->tenth[edge]) }, SQ_COST_EDGE);
  }
  for (guint i = 0; i < section->shadows->len; i++) {
    const SqSectionShadow *shadow = &g_array_index (section->shadows, SqSectionShadow, i);
    for (guint k = 0; k < shadow->stretches->len; k++) {
      const SqShadowStretch *stretch = &g_array_index (shadow->stretches, SqShadowStretch, k);
      sq_label_obstacles_add_line (
        obstacles,
        (SqPaperLine){ sq_view_paper (view, stretch->from), sq_view_paper (view, stretch->to) },
        2.0 * SQ_COST_AXIS);
    }
    if (shadow->ends)
      sq_label_obstacles_add_line (
        obstacles,
        (SqPaperLine){ sq_view_paper (view, shadow->crown), sq_view_paper (view, shadow->end) },
        SQ_COST_EDGE);
  }
}

SqLabelObstacles *
sq_section_obstacles (const SqView *view, const SqSection *section)
{
  SqLabelObstacles *obstacles =
    sq_label_obstacles_new (sq_paper_box_grown (view->clip, -FIELD_INSET_MM));
  add_built (view, section, obstacles);
  add_people (view, section, obstacles);
  add_lamps (view, section, obstacles);
  add_grip_and_cameras (view, section, obstacles);
  add_light (view, section, obstacles);
  return obstacles;
}
