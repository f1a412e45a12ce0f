/* plan-extent.c: how much room a plan takes in the set, for choosing its scale */
#include "draw/plan.h"
#include "draw/wall-shape.h"

typedef struct {
  SqPlace least, most;
  gboolean any;
} Extent;

static void
take_in (Extent *extent, double x_m, double y_m, double round_m)
{
  if (isnan (x_m) || isnan (y_m))
    return;
  if (!extent->any)
    *extent = (Extent){ { x_m, y_m }, { x_m, y_m }, TRUE };
  extent->least.x_m = MIN (extent->least.x_m, x_m - round_m);
  extent->least.y_m = MIN (extent->least.y_m, y_m - round_m);
  extent->most.x_m = MAX (extent->most.x_m, x_m + round_m);
  extent->most.y_m = MAX (extent->most.y_m, y_m + round_m);
}

static void
take_in_set (Extent *extent, const SqScene *scene)
{
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  for (guint i = 0; i < blocks->len; i++)
    for (int corner = 0; corner < 4; corner++) {
      SqPlace at = sq_wall_block_at (blocks, i)->corner[corner];
      take_in (extent, at.x_m, at.y_m, 0.0);
    }
  for (guint i = 0; i < scene->pieces->len; i++) {
    const SqPiece *piece = SQ_AT (SqPiece, scene->pieces, i);
    if (piece->common.hidden)
      continue;
    if (piece->disc != NULL)
      take_in (extent, piece->disc->at.x_m, piece->disc->at.y_m, piece->disc->radius_m);
    for (guint j = 0; j < piece->outline->len; j++)
      take_in (extent, sq_path_at (piece->outline, j).x_m, sq_path_at (piece->outline, j).y_m, 0.0);
  }
  for (guint i = 0; i < scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
    if (mark->common.hidden)
      continue;
    take_in (extent, mark->at.x_m, mark->at.y_m, 0.3);
    for (guint j = 0; j < mark->path->len; j++)
      take_in (extent, sq_path_at (mark->path, j).x_m, sq_path_at (mark->path, j).y_m, 0.3);
  }
}

static void
take_in_lights (Extent *extent, const SqScene *scene)
{
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    SqPoint aim;
    if (fixture->common.hidden)
      continue;
    take_in (extent, fixture->at.x_m, fixture->at.y_m, 0.5);
    /* Where no walls say how large the set is, what is lit does. */
    if (scene->walls->len == 0 && fixture->on && sq_scene_aim_point (scene, &fixture->aim, &aim))
      take_in (extent, aim.x_m, aim.y_m, 0.3);
  }
  for (guint i = 0; i < scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, scene->panels, i);
    if (!panel->common.hidden && panel->set)
      take_in (extent, panel->at.x_m, panel->at.y_m, panel->width_m / 2);
  }
}

/* With its offset: a dimension cut by the border would measure nothing. */
static void
take_in_dimension (Extent *extent, const SqDimensionLine *line)
{
  double length_m = sq_place_distance_m (line->from, line->to);
  double off_x_m = 0.0, off_y_m = 0.0;
  if (length_m > 0.0) {
    off_x_m = -(line->to.y_m - line->from.y_m) / length_m * line->offset_m;
    off_y_m = (line->to.x_m - line->from.x_m) / length_m * line->offset_m;
  }
  take_in (extent, line->from.x_m, line->from.y_m, 0.0);
  take_in (extent, line->to.x_m, line->to.y_m, 0.0);
  take_in (extent, line->from.x_m + off_x_m, line->from.y_m + off_y_m, 0.0);
  take_in (extent, line->to.x_m + off_x_m, line->to.y_m + off_y_m, 0.0);
}

gboolean
sq_plan_extent_m (const SqScene *scene, SqPlace *least, SqPlace *most)
{
  Extent extent = { .any = FALSE };

  take_in_set (&extent, scene);
  take_in_lights (&extent, scene);
  for (guint i = 0; i < scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, scene->cameras, i);
    if (!camera->common.hidden)
      take_in (&extent, camera->at.x_m, camera->at.y_m, 0.5);
  }
  for (guint i = 0; i < scene->dimensions->len; i++) {
    const SqDimensionLine *line = SQ_AT (SqDimensionLine, scene->dimensions, i);
    if (!line->common.hidden)
      take_in_dimension (&extent, line);
  }
  for (guint i = 0; i < scene->probes->len; i++) {
    const SqProbe *probe = SQ_AT (SqProbe, scene->probes, i);
    if (!probe->common.hidden)
      take_in (&extent, probe->at.x_m, probe->at.y_m, 0.1);
  }
  if (!extent.any)
    return FALSE;
  *least = extent.least;
  *most = extent.most;
  return TRUE;
}
