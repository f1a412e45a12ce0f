/* map.c: light over the plan: one value a point on a level grid */
#include "light/map.h"
#include "base/error.h"
#include "light/crew.h"
#include "light/exposure.h"
#include "light/field-sum.h"
#include "light/inside.h"
#include "light/lamp-rows.h"
#include "light/left-out.h"
#include "light/lit-scene.h"

#include <glib/gi18n-lib.h>

/* Beyond everything in the set, where the request names no field. */
#define MARGIN_M 1.0

typedef struct {
  SqLightMap *map;
  const SqLitScene *lit;
  SqReceivers receivers;
  SqLampRows *lamps; /* of lit->lamps, made where they burn */
  SqInside inside;
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

/* How many points a side of the field has; 0 for one that is turned round or too long to count. */
static int
points_along (double from_m, double to_m, double step_m)
{
  double n = floor ((to_m - from_m) / step_m + 1e-9) + 1.0;
  return n >= 1.0 && n <= SQ_MOST_MAP_POINTS ? (int)n : 0;
}

SqLightMap *
sq_light_map_new (const SqScene *scene, const SqMapRequest *request, GError **error)
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
  return g_memdup2 (&made, sizeof made);
}

SqReceivers
sq_light_map_receivers (const SqLightMap *map, const SqScene *scene)
{
  const SqCamera *camera = sq_scene_camera (scene);
  return (SqReceivers){
    .grid = { map->first, map->step_m, map->request.height_m, map->columns, map->rows },
    .normal = map->request.normal,
    .camera = camera ? camera->at : SQ_NO_POINT,
  };
}

/* Of the lamp's hull and all solids, once for the whole map. */
static void
prepare_lamp (guint index, SqRowScratch *scratch, gpointer data)
{
  Job *job = data;
  const SqLamp *lamp = &g_array_index (job->lit->lamps, SqLamp, index);
  if (sq_lamp_burns (lamp))
    sq_lamp_rows_init (&job->lamps[index], lamp, job->lit->obstacles, &job->receivers,
                       job->map->request.way);
}

static void
light_block (guint block, SqRowScratch *scratch, gpointer data)
{
  Job *job = data;
  SqLightMap *map = job->map;
  int first = (int)block * SQ_BLOCK_ROWS, n_rows = MIN (SQ_BLOCK_ROWS, map->rows - first);
  gsize n = (gsize)n_rows * (gsize)map->columns;
  double *total = map->lux + (gsize)first * (gsize)map->columns;
  g_autofree double *exact = g_new (double, n);
  g_autofree float *quick = map->request.way == SQ_WAY_QUICK ? g_new (float, n) : NULL;
  for (gsize i = 0; i < n; i++)
    total[i] = 0.0;
  for (guint k = 0; k < job->lit->lamps->len; k++) {
    const SqLamp *lamp = &g_array_index (job->lit->lamps, SqLamp, k);
    if (!job->lamps[k].lamp)
      continue;
    if (quick) {
      sq_lamp_rows_quick (&job->lamps[k], first, n_rows, NULL, scratch, quick);
      for (gsize i = 0; i < n; i++)
        exact[i] = quick[i];
    } else {
      sq_lamp_rows_exact (&job->lamps[k], first, n_rows, NULL, scratch, exact);
    }
    sq_field_add (total, exact, lamp->output, n);
  }
  sq_inside_mark (&job->inside, first, n_rows, total);
}

SqLightMap *
sq_light_map (const SqScene *scene,
              const SqMapRequest *request,
              int threads,
              GCancellable *cancellable,
              GError **error)
{
  g_autoptr (SqLightMap) map = sq_light_map_new (scene, request, error);
  if (!map)
    return NULL;
  g_autoptr (SqLitScene) lit = sq_lit_scene_new (scene, NULL);
  map->not_counted = sq_light_left_out (scene, lit->obstacles);
  Job job = { .map = map, .lit = lit, .receivers = sq_light_map_receivers (map, scene) };
  job.lamps = g_new0 (SqLampRows, lit->lamps->len);
  sq_inside_init (&job.inside, lit->obstacles, &job.receivers.grid);
  const SqRows lamps = { lit->lamps->len, prepare_lamp, &job };
  const SqRows blocks = { ((guint)map->rows + SQ_BLOCK_ROWS - 1) / SQ_BLOCK_ROWS, light_block,
                          &job };
  g_autoptr (SqCrew) crew = sq_crew_new (threads);
  gboolean done =
    sq_crew_do (crew, &lamps, cancellable, error) && sq_crew_do (crew, &blocks, cancellable, error);
  for (guint k = 0; k < lit->lamps->len; k++)
    sq_lamp_rows_clear (&job.lamps[k]);
  g_free (job.lamps);
  sq_inside_clear (&job.inside);
  return done ? g_steal_pointer (&map) : NULL;
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
