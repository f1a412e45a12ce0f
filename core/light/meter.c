/* meter.c: what the meter says at every probe and mark, light by light */
#include "light/crew.h"
#include "light/exposure.h"
#include "light/lamp-light.h"
#include "light/left-out.h"
#include "light/look-along.h"
#include "light/readings.h"

/* A direction that rises so steeply has no azimuth. */
#define OVERHEAD_M 1e-9

typedef struct {
  SqReadings *readings;
  SqExposure exposure;
  const GArray *lamps, *obstacles;
} Job;

/* From @at to the active camera; with none, to the page's bottom. */
static SqVector
toward_camera (const Job *job, SqPoint at)
{
  SqVector way = sq_vector (0, -1, 0);
  if (job->readings->camera)
    way = sq_vector_between (at, job->readings->camera->at);
  return sq_vector_length (way) > 0.0 ? sq_vector_unit (way) : sq_vector (0, -1, 0);
}

/* The angle on plan between two directions; NAN where one has none. */
static double
angle_on_plan_deg (SqVector a, SqVector b)
{
  if (hypot (a.x, a.y) < OVERHEAD_M || hypot (b.x, b.y) < OVERHEAD_M)
    return NAN;
  return SQ_DEGREES (fabs (atan2 (a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y)));
}

static SqReadingRow
row_of (const Job *job, const SqLamp *lamp, SqPoint at, SqRole role)
{
  SqVector way = sq_vector_between (at, lamp->fixture->at);
  return (SqReadingRow){
    .id = g_intern_string (lamp->fixture->id),
    .role = role,
    .azimuth_deg = sq_vector_azimuth_deg (way),
    .from_camera_deg = angle_on_plan_deg (way, toward_camera (job, at)),
    .elevation_deg = sq_vector_elevation_deg (way),
    .distance_m = sq_vector_length (way),
  };
}

static void
sum_roles (SqMarkReading *reading, const SqReadingRow *row)
{
  reading->lux += row->dome_lux;
  reading->lux_all += row->dome_all_lux;
  if (row->role == SQ_ROLE_KEY)
    reading->key_lux += row->lux;
  else if (row->role == SQ_ROLE_FILL)
    reading->fill_lux += row->lux;
  else if (row->role == SQ_ROLE_BACK)
    reading->back_lux += row->lux;
}

/* Any back light has its stops against any key, so that a program that finds the one finds the
 * other. People are told of neither where it is dark. */
static double
stops_between (double light, double reference)
{
  return light > 0.0 && reference > 0.0 ? log2 (light) - log2 (reference) : NAN;
}

static void
finish_mark (const Job *job, SqMarkReading *reading)
{
  const SqMeterSettings *meter = job->readings->scene->meter;
  double key = reading->key_lux, fill = reading->fill_lux;
  reading->t_stop = sq_exposure_t_stop (&job->exposure, meter->dome_c, reading->lux);
  reading->stops_from_exposure = sq_stops_over (reading->lux, job->readings->set_lux);
  reading->key_to_fill = sq_ratio (key, fill);
  reading->ratio = sq_ratio (key + fill, fill);
  reading->shown_ratio = meter->ratio == SQ_RATIO_PLAIN ? reading->key_to_fill : reading->ratio;
  reading->ratio_stops = sq_stops_over (reading->ratio, 1.0);
  reading->back_stops = stops_between (reading->back_lux, key);
}

static void
read_mark (const Job *job, SqMarkReading *reading, SqSight *sight)
{
  SqPoint face = reading->face;
  const SqReceptor dome = { face, toward_camera (job, face), TRUE };
  for (guint i = 0; i < job->lamps->len; i++) {
    const SqLamp *lamp = &g_array_index (job->lamps, SqLamp, i);
    SqReadingRow row =
      row_of (job, lamp, face, sq_fixture_role_at (lamp->fixture, reading->mark->id));
    SqVector way = sq_vector_between (face, lamp->fixture->at);
    const SqReceptor flat = { face, sq_vector_unit (way), FALSE };
    sq_lamp_see_past_all (lamp, face, job->obstacles, &reading->mark->thing, sight);
    row.lux = sq_lamp_lux (lamp, &flat, sight);
    row.dome_all_lux = sq_lamp_lux (lamp, &dome, sight);
    row.dome_lux = row.role == SQ_ROLE_BACK ? 0.0 : row.dome_all_lux;
    sum_roles (reading, &row);
    g_array_append_val (reading->rows, row);
  }
  finish_mark (job, reading);
}

static SqVector
probe_normal (const SqScene *scene, const SqProbe *probe)
{
  SqAim toward = { .id = probe->toward, .at = SQ_NO_POINT };
  SqPoint target;
  SqVector normal = probe->normal;
  if (probe->toward && sq_scene_aim_point (scene, &toward, &target))
    normal = sq_vector_between (probe->at, target);
  return sq_vector_length (normal) > 0.0 ? sq_vector_unit (normal) : sq_vector (0, 0, 1);
}

static double
lux_from (const Job *job, const SqLamp *lamp, const SqReceptor *receptor, SqSight *sight)
{
  if (sq_lamp_is_out_of_sight (lamp, receptor))
    return 0.0;
  sq_lamp_see_past_all (lamp, receptor->at, job->obstacles, NULL, sight);
  return sq_lamp_lux (lamp, receptor, sight);
}

/* What @lamp makes of the surfaces that a spot meter looks at, cd/m². */
static double
luminance_from (const Job *job, const SqLamp *lamp, const GArray *surfaces, SqSight *sight)
{
  double luminance = 0.0;
  for (guint i = 0; i < surfaces->len; i++) {
    const SqSurface *surface = &g_array_index (surfaces, SqSurface, i);
    const SqReceptor lit = { surface->at, surface->normal, FALSE };
    luminance += surface->weight * lux_from (job, lamp, &lit, sight);
  }
  return luminance;
}

static void
finish_probe (const Job *job, SqProbeReading *reading, double sum)
{
  const SqMeterSettings *meter = job->readings->scene->meter;
  const double constants[] = {
    [SQ_RECEPTOR_FLAT] = meter->flat_c,
    [SQ_RECEPTOR_DOME] = meter->dome_c,
    [SQ_RECEPTOR_SPOT] = SQ_SPOT_K,
  };
  double constant = constants[reading->probe->receptor];
  gboolean spot = reading->probe->receptor == SQ_RECEPTOR_SPOT;
  reading->lux = spot ? NAN : sum;
  reading->cd_m2 = spot ? sum : NAN;
  reading->t_stop = sq_exposure_t_stop (&job->exposure, constant, sum);
  reading->stops = sq_stops_over (sum, sq_exposure_set_light (&job->exposure, constant));
}

static void
read_probe (const Job *job, SqProbeReading *reading, SqSight *sight)
{
  const SqScene *scene = job->readings->scene;
  const SqProbe *probe = reading->probe;
  const SqReceptor receptor = { probe->at, probe_normal (scene, probe),
                                probe->receptor == SQ_RECEPTOR_DOME };
  g_autoptr (GArray) surfaces = NULL;
  if (probe->receptor == SQ_RECEPTOR_SPOT)
    surfaces =
      sq_look_along (job->obstacles, scene->room->floor_reflectance, probe->at, receptor.normal);
  double sum = 0.0;
  for (guint i = 0; i < job->lamps->len; i++) {
    const SqLamp *lamp = &g_array_index (job->lamps, SqLamp, i);
    SqReadingRow row = row_of (job, lamp, probe->at, (SqRole)lamp->fixture->role);
    row.lux = surfaces ? luminance_from (job, lamp, surfaces, sight)
                       : lux_from (job, lamp, &receptor, sight);
    sum += row.lux;
    g_array_append_val (reading->rows, row);
  }
  finish_probe (job, reading, sum);
}

/* Probes first, then marks. */
static void
do_row (guint row, SqRowScratch *scratch, gpointer data)
{
  SqSight *sight = &scratch->sight;
  const Job *job = data;
  guint n_probes = job->readings->probes->len;
  if (row < n_probes)
    read_probe (job, g_ptr_array_index (job->readings->probes, row), sight);
  else
    read_mark (job, g_ptr_array_index (job->readings->marks, row - n_probes), sight);
}

static void
probe_reading_free (gpointer data)
{
  SqProbeReading *reading = data;
  g_array_unref (reading->rows);
  g_free (reading);
}

static void
mark_reading_free (gpointer data)
{
  SqMarkReading *reading = data;
  g_array_unref (reading->rows);
  g_free (reading);
}

static SqReadings *
empty_readings (const SqScene *scene, const GArray *obstacles, const SqExposure *exposure)
{
  SqReadings *readings = g_new (SqReadings, 1);
  *readings = (SqReadings){
    .scene = sq_scene_ref (scene),
    .camera = sq_scene_camera (scene),
    .set_t_stop = exposure->t_stop,
    .iso = exposure->iso,
    .exposure_s = exposure->exposure_s,
    .nd_stops = exposure->nd_stops,
    .set_lux = sq_exposure_set_light (exposure, scene->meter->dome_c),
    .probes = g_ptr_array_new_with_free_func (probe_reading_free),
    .marks = g_ptr_array_new_with_free_func (mark_reading_free),
    .not_counted = sq_light_left_out (scene, obstacles),
  };
  for (guint i = 0; i < scene->probes->len; i++) {
    SqProbeReading *reading = g_new0 (SqProbeReading, 1);
    reading->probe = SQ_AT (SqProbe, scene->probes, i);
    reading->rows = g_array_new (FALSE, FALSE, sizeof (SqReadingRow));
    g_ptr_array_add (readings->probes, reading);
  }
  for (guint i = 0; i < scene->marks->len; i++) {
    SqMarkReading *reading = g_new0 (SqMarkReading, 1);
    reading->mark = SQ_AT (SqMark, scene->marks, i);
    reading->face = sq_mark_face (reading->mark);
    reading->rows = g_array_new (FALSE, FALSE, sizeof (SqReadingRow));
    g_ptr_array_add (readings->marks, reading);
  }
  return readings;
}

SqReadings *
sq_read_meter (const SqScene *scene, int threads, GCancellable *cancellable, GError **error)
{
  const SqExposure exposure = sq_exposure_of (sq_scene_camera (scene));
  g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
  g_autoptr (GArray) obstacles = sq_obstacles_new (scene);
  g_autoptr (SqReadings) readings = empty_readings (scene, obstacles, &exposure);
  Job job = { readings, exposure, lamps, obstacles };
  const SqRows rows = { readings->probes->len + readings->marks->len, do_row, &job };
  g_autoptr (SqCrew) crew = sq_crew_new (MIN (threads, (int)rows.n_rows));
  if (!sq_crew_do (crew, &rows, cancellable, error))
    return NULL;
  return g_steal_pointer (&readings);
}

void
sq_readings_free (SqReadings *readings)
{
  if (!readings)
    return;
  sq_scene_unref ((SqScene *)readings->scene);
  g_ptr_array_unref (readings->probes);
  g_ptr_array_unref (readings->marks);
  g_ptr_array_unref (readings->not_counted);
  g_free (readings);
}

gboolean
sq_reading_burns (const SqReadings *readings, const SqReadingRow *row)
{
  const SqThing *thing = sq_scene_find (readings->scene, row->id);
  if (thing == NULL || thing->kind != &sq_fixture_kind)
    return TRUE;
  const SqFixture *fixture = (const SqFixture *)thing;
  return fixture->on && fixture->level > 0.0;
}
