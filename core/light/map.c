/* map.c: light over the plan: one value a point on a level grid, the exact way */
#include "light/map.h"
#include "base/error.h"
#include "light/exposure.h"
#include "light/lamp.h"
#include "light/left-out.h"
#include "light/rows.h"

#include <glib/gi18n-lib.h>

/* Beyond everything in the set, where the request names no field. */
#define MARGIN_M 1.0

typedef struct {
  SqLightMap *map;
  const GArray *lamps, *obstacles;
  SqPoint camera; /* not given: none */
} Job;

SqMapRequest
sq_map_request (const SqScene *scene, double step_m)
{
  return (SqMapRequest){
    .quantity = scene->map->quantity,
    .height_m = scene->map->height_m,
    .normal = scene->map->normal,
    .step_m = step_m,
    .from = SQ_NO_PLACE,
    .to = SQ_NO_PLACE,
  };
}

/* Which way the receptor looks at @at, when @lamp is read. */
static SqVector
normal_at (const Job *job, SqPoint at, const SqLamp *lamp)
{
  SqVector normal = sq_vector (0, 0, 1);
  if (job->map->request.normal == SQ_NORMAL_SQUARE)
    normal = sq_vector_between (at, lamp->fixture->at);
  else if (job->map->request.normal == SQ_NORMAL_CAMERA)
    normal =
      sq_point_given (job->camera) ? sq_vector_between (at, job->camera) : sq_vector (0, -1, 0);
  return sq_vector_unit (normal);
}

static double
lux_at (const Job *job, SqPoint at, SqSight *sight)
{
  if (sq_obstacles_hold (job->obstacles, at))
    return NAN;
  double lux = 0.0;
  for (guint i = 0; i < job->lamps->len; i++) {
    const SqLamp *lamp = &g_array_index (job->lamps, SqLamp, i);
    const SqReceptor receptor = { .at = at, .normal = normal_at (job, at, lamp) };
    if (sq_lamp_is_out_of_sight (lamp, &receptor))
      continue;
    sq_lamp_see (lamp, at, job->obstacles, NULL, sight);
    lux += sq_lamp_lux (lamp, &receptor, sight);
  }
  return lux;
}

static void
do_row (guint row, SqSight *sight, gpointer data)
{
  const Job *job = data;
  SqLightMap *map = job->map;
  for (int column = 0; column < map->columns; column++) {
    SqPoint at = sq_point (map->first.x_m + column * map->step_m,
                           map->first.y_m + row * map->step_m, map->request.height_m);
    map->lux[(gsize)row * map->columns + column] = lux_at (job, at, sight);
  }
}

/* How many points a side of the field has; 0 for one that is turned round or too long to count. */
static int
points_along (double from_m, double to_m, double step_m)
{
  double n = floor ((to_m - from_m) / step_m + 1e-9) + 1.0;
  return n >= 1.0 && n <= SQ_MOST_MAP_POINTS ? (int)n : 0;
}

static SqLightMap *
empty_map (const SqScene *scene, const SqMapRequest *request, GError **error)
{
  SqLightMap made = { .request = *request, .step_m = request->step_m };
  if (!(request->step_m > 0.0) || !isfinite (request->step_m)) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_VALUE, _ ("map: step is %g m, expected more than 0"),
                 request->step_m);
    return NULL;
  }
  if (!sq_place_given (request->from) || !sq_place_given (request->to)) {
    made.request.from = (SqPlace){ -MARGIN_M, -MARGIN_M };
    made.request.to = (SqPlace){ MARGIN_M, MARGIN_M };
    sq_scene_extent (scene, MARGIN_M, &made.request.from, &made.request.to);
  }
  made.first = made.request.from;
  made.columns = points_along (made.request.from.x_m, made.request.to.x_m, made.step_m);
  made.rows = points_along (made.request.from.y_m, made.request.to.y_m, made.step_m);
  gint64 points = (gint64)made.columns * made.rows;
  if (points == 0 || points > SQ_MOST_MAP_POINTS) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_LIMIT,
                 _ ("map: a step of %g m does not fit the field, expected 1 to %d points"),
                 request->step_m, SQ_MOST_MAP_POINTS);
    return NULL;
  }
  const SqExposure exposure = sq_exposure_of (sq_scene_camera (scene));
  made.set_lux = sq_exposure_set_light (&exposure, scene->meter->flat_c);
  made.lux = g_new (double, (gsize)points);
  made.not_counted = sq_light_left_out (scene);
  return g_memdup2 (&made, sizeof made);
}

SqLightMap *
sq_light_map (const SqScene *scene,
              const SqMapRequest *request,
              int threads,
              GCancellable *cancellable,
              GError **error)
{
  g_autoptr (SqLightMap) map = empty_map (scene, request, error);
  if (!map)
    return NULL;
  g_autoptr (GArray) lamps = sq_lamps_new (scene);
  g_autoptr (GArray) obstacles = sq_obstacles_new (scene);
  const SqCamera *camera = sq_scene_camera (scene);
  Job job = { map, lamps, obstacles, camera ? camera->at : SQ_NO_POINT };
  const SqRows rows = { (guint)map->rows, do_row, &job };
  if (!sq_rows_do (&rows, threads, cancellable, error))
    return NULL;
  return g_steal_pointer (&map);
}

void
sq_light_map_free (SqLightMap *map)
{
  if (!map)
    return;
  g_free (map->lux);
  g_clear_pointer (&map->not_counted, g_ptr_array_unref);
  g_free (map);
}
