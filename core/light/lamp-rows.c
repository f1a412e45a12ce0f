/* lamp-rows.c: a lamp, and what stands in its way, made ready for a receiver grid */
#include "light/lamp-rows.h"

/* Of the step: how far regions are on the safe side. */
#define SAFE 0.01

/* Smaller than this share of the step, half a face is no more than a point to the eye. */
#define SMALL 0.5

static void
clear_shade (gpointer shade)
{
  sq_shade_clear (shade);
}

static const SqShade *
add_shade (SqLampRows *rows, const SqObstacle *obstacle, guint index)
{
  SqShade shade;
  const SqReceiverGrid *grid = &rows->receivers->grid;
  if (sq_region_is_empty (&rows->lit) || obstacle->passes >= 1.0 ||
      !sq_shade_init (&shade, &rows->hull, &obstacle->solid, grid, rows->ground,
                      grid->step_m * (rows->small ? SQ_SAFE_SMALL : SAFE)))
    return NULL;
  shade.index = index;
  g_array_append_val (rows->shades, shade);
  if (rows->lines) {
    SqFastShadow shadow;
    sq_fast_shadow_init (&shadow, rows->lines, &obstacle->solid, obstacle->passes, grid);
    g_array_append_val (rows->shadows, shadow);
  }
  return &g_array_index (rows->shades, SqShade, rows->shades->len - 1);
}

/* Planes that touch the cone of its light. */
#define CONE_SIDES 16
/* Wider than this there is no cone to speak of. */
#define WIDEST_RAD 1.5

/* What of the grid may get light at all. The cone of light begins so far behind the lamp that it
 * holds the cones of all places of the face. */
static void
cut_lit (SqRegionCut *lit, const SqLamp *lamp, const SqReceiverGrid *grid, SqWay way)
{
  SqPoint at = lamp->fixture->at;
  const SqFrame *frame = &lamp->frame;
  double reach =
    sq_lamp_reach_rad (lamp, way == SQ_WAY_EXACT ? exp2 (-SQ_BEAM_STEPS) : SQ_DIM_QUICK);
  sq_region_cut_begin (lit, grid);
  if (lamp->shaped == SQ_SHAPED_NOT)
    lit->n_corners = 0;
  if (lamp->shaped == SQ_SHAPED_FLAT)
    sq_region_cut_by (
      lit, sq_half_plane (grid, at, sq_vector_scale (frame->forward, -1.0), grid->step_m));
  if (reach < WIDEST_RAD) {
    SqPoint apex = sq_point_along (at, frame->forward, -lamp->radius_m / sin (reach));
    SqVector back = sq_vector_scale (frame->forward, -sin (reach));
    for (int i = 0; i < CONE_SIDES; i++) {
      double turn = 2.0 * G_PI * i / CONE_SIDES;
      SqVector out = sq_vector_sum (sq_vector_scale (frame->right, cos (turn) * cos (reach)),
                                    sq_vector_scale (frame->up, sin (turn) * cos (reach)));
      sq_region_cut_by (lit, sq_half_plane (grid, apex, sq_vector_sum (out, back), grid->step_m));
    }
  }
}

static void
clear_shadow (gpointer shadow)
{
  sq_fast_shadow_clear (shadow);
}

static void
make_lines (SqLampRows *rows)
{
  const SqLamp *lamp = rows->lamp;
  rows->small = lamp->radius_m < SMALL * rows->receivers->grid.step_m && !lamp->doors;
  if (rows->small || lamp->shaped != SQ_SHAPED_FLAT)
    return;
  rows->lines = g_new (SqFaceLines, 1);
  sq_face_lines_init (
    rows->lines, lamp->fixture->at, sq_vector_scale (lamp->frame.right, lamp->width_m / 2.0),
    sq_vector_scale (lamp->frame.up, lamp->height_m / 2.0), lamp->n_face == SQ_DISC_SIDES);
  rows->shadows = g_array_new (FALSE, FALSE, sizeof (SqFastShadow));
  g_array_set_clear_func (rows->shadows, clear_shadow);
}

void
sq_lamp_rows_point_at (SqLampRows *rows, const SqLamp *lamp, const GArray *obstacles, SqWay way)
{
  rows->lamp = lamp;
  rows->obstacles = obstacles;
  if (way == SQ_WAY_EXACT)
    sq_whole_face_init (rows->whole, lamp, FALSE);
  else
    sq_whole_face_init_quick (rows->whole, lamp, sq_receiver_point (&rows->receivers->grid, 0, 0),
                              rows->receivers->normal == SQ_NORMAL_UP);
}

void
sq_lamp_rows_init_bare (SqLampRows *rows,
                        const SqLamp *lamp,
                        const GArray *obstacles,
                        const SqReceivers *receivers,
                        SqWay way)
{
  const SqReceiverGrid *grid = &receivers->grid;
  *rows = (SqLampRows){
    .lamp = lamp,
    .receivers = receivers,
    .shades = g_array_new (FALSE, FALSE, sizeof (SqShade)),
    .obstacles = obstacles,
  };
  g_array_set_clear_func (rows->shades, clear_shade);
  sq_lamp_hull_init (&rows->hull, lamp);
  rows->ground = g_new (SqRegionCut, 1);
  cut_lit (rows->ground, lamp, grid, way);
  rows->lit = sq_region_cut_end (rows->ground, grid);
  rows->whole = g_new (SqWholeFace, 1);
  sq_lamp_rows_point_at (rows, lamp, obstacles, way);
  if (way == SQ_WAY_QUICK)
    make_lines (rows);
  for (guint i = 0; lamp->doors && i < lamp->doors->len; i++)
    add_shade (rows, &g_array_index (lamp->doors, SqObstacle, i), i);
  rows->n_doors = rows->shades->len;
}

const SqShade *
sq_lamp_rows_add (SqLampRows *rows, guint index)
{
  return add_shade (rows, &g_array_index (rows->obstacles, SqObstacle, index), index);
}

void
sq_lamp_rows_take (SqLampRows *rows, SqLampRows *other, guint k, guint index)
{
  SqShade *shade = &g_array_index (other->shades, SqShade, k);
  SqShade taken = *shade;
  taken.index = index;
  *shade = (SqShade){ .index = shade->index };
  g_array_append_val (rows->shades, taken);
  if (rows->lines) {
    SqFastShadow *shadow = &g_array_index (other->shadows, SqFastShadow, k);
    g_array_append_val (rows->shadows, *shadow);
    *shadow = (SqFastShadow){ 0 };
  }
}

void
sq_lamp_rows_init (SqLampRows *rows,
                   const SqLamp *lamp,
                   const GArray *obstacles,
                   const SqReceivers *receivers,
                   SqWay way)
{
  sq_lamp_rows_init_bare (rows, lamp, obstacles, receivers, way);
  for (guint i = 0; i < obstacles->len; i++)
    sq_lamp_rows_add (rows, i);
}

void
sq_lamp_rows_clear (SqLampRows *rows)
{
  g_clear_pointer (&rows->shades, g_array_unref);
  sq_region_clear (&rows->lit);
  g_clear_pointer (&rows->ground, g_free);
  g_clear_pointer (&rows->whole, g_free);
  g_clear_pointer (&rows->lines, g_free);
  g_clear_pointer (&rows->shadows, g_array_unref);
}
