/* ray-cut.c: how far a straight ray gets before the set stops it */
#include "draw/ray-cut.h"

/* A lamp may touch a wall or hang in a doorway: what it stands in does not stop it. */
#define CLEAR_M 0.02

gboolean
sq_panel_ends_light (const SqPanel *panel)
{
  return panel->kind == SQ_PANEL_FLAG || panel->kind == SQ_PANEL_BOUNCE;
}

double
sq_ray_meets_panel_m (const SqPanel *panel, SqPoint from, SqVector toward)
{
  SqVector ray = sq_vector_unit (toward);
  SqFrame frame = sq_panel_frame (panel);
  SqVector gap = sq_vector_between (from, panel->at);
  double closing = sq_vector_dot (ray, frame.forward);
  if (fabs (closing) < 1e-9)
    return NAN;
  double t = sq_vector_dot (gap, frame.forward) / closing;
  if (t < CLEAR_M)
    return NAN;
  SqVector hit = sq_vector_between (panel->at, sq_point_along (from, ray, t));
  gboolean inside = fabs (sq_vector_dot (hit, frame.right)) <= panel->width_m / 2 &&
                    fabs (sq_vector_dot (hit, frame.up)) <= panel->height_m / 2;
  return inside ? t : NAN;
}

static gboolean
is_shut (const SqOpening *opening)
{
  if (opening->kind == SQ_OPENING_DOOR && opening->open_deg == 0.0)
    return TRUE;
  return sq_opening_transmittance (opening) < SQ_SHUT_TRANSMITTANCE;
}

static gboolean
is_solid_at (const SqWallBlock *block, double z_m)
{
  if (z_m < 0.0 || z_m > block->height_m)
    return FALSE;
  if (block->opening == NULL || is_shut (block->opening))
    return TRUE;
  return z_m < sq_opening_sill_m (block->opening) ||
         z_m > sq_opening_head_m (block->opening, block->height_m);
}

/* Where the ray enters the block on the plan; NAN where it misses or starts inside. */
static double
enters_m (const SqWallBlock *block, SqPoint from, SqVector ray)
{
  double first = -G_MAXDOUBLE, last = G_MAXDOUBLE;
  for (int i = 0; i < 4; i++) {
    SqPlace a = block->corner[i], b = block->corner[(i + 1) % 4];
    double nx = b.y_m - a.y_m, ny = -(b.x_m - a.x_m); /* outward */
    double out = nx * ray.x + ny * ray.y;
    double room = nx * (a.x_m - from.x_m) + ny * (a.y_m - from.y_m);
    if (fabs (out) < 1e-12) {
      if (room < 0.0)
        return NAN;
    } else if (out < 0.0) {
      first = MAX (first, room / out);
    } else {
      last = MIN (last, room / out);
    }
  }
  return first <= last && first > CLEAR_M ? first : NAN;
}

double
sq_sight_cut_m (const SqScene *scene,
                const GArray *blocks,
                SqPoint from,
                SqVector toward,
                double indoors_m,
                double most_m)
{
  SqVector ray = sq_vector_unit (toward);
  double cut = most_m;

  if (ray.z < -1e-9 && from.z_m > 0.0)
    cut = MIN (cut, from.z_m / -ray.z);
  if (ray.z > 1e-9 && scene->room->ceiling_height_m > from.z_m)
    cut = MIN (cut, (scene->room->ceiling_height_m - from.z_m) / ray.z);

  for (guint i = 0; i < blocks->len; i++) {
    const SqWallBlock *block = sq_wall_block_at (blocks, i);
    double t = enters_m (block, from, ray), z_m = from.z_m + t * ray.z;
    gboolean wall_there = z_m >= 0.0 && z_m <= block->height_m;
    if (t < cut && (is_solid_at (block, z_m) || (t >= indoors_m && wall_there)))
      cut = t;
  }
  for (guint i = 0; i < scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, scene->panels, i);
    double t =
      panel->set && sq_panel_ends_light (panel) ? sq_ray_meets_panel_m (panel, from, ray) : NAN;
    if (t < cut)
      cut = t;
  }
  return cut;
}

double
sq_ray_cut_m (
  const SqScene *scene, const GArray *blocks, SqPoint from, SqVector toward, double most_m)
{
  return sq_sight_cut_m (scene, blocks, from, toward, INFINITY, most_m);
}

const SqPanel *
sq_frame_on_the_way (const SqScene *scene, SqPoint from, SqVector way)
{
  const SqPanel *found = NULL;
  double farthest = 0.0, length = sq_vector_length (way);
  for (guint i = 0; i < scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, scene->panels, i);
    if (panel->kind != SQ_PANEL_DIFFUSION || !panel->set)
      continue;
    double t = sq_ray_meets_panel_m (panel, from, way);
    if (t < length && t > farthest) {
      farthest = t;
      found = panel;
    }
  }
  return found;
}

double
sq_frame_on_the_way_m (const SqScene *scene, SqPoint from, SqVector way)
{
  const SqPanel *frame = sq_frame_on_the_way (scene, from, way);
  return frame != NULL ? sq_ray_meets_panel_m (frame, from, way) : 0.0;
}
