/* shadow-choice.c: which shadows are worth drawing: deep enough, and in the picture */
#include "draw/shadow.h"

#include "draw/beam-angles.h"

/* What @row's light at the face gives to the level floor at the figure's feet. */
static double
floor_lux (const SqMarkReading *reading, const SqReadingRow *row)
{
  double level_m = row->distance_m * cos (SQ_RADIANS (row->elevation_deg));
  double up_m = row->distance_m * sin (SQ_RADIANS (row->elevation_deg)) + reading->face.z_m -
                reading->mark->floor_m;
  /* From below the floor gets nothing; the sun has no distance. */
  if (!isfinite (row->distance_m))
    return row->lux * MAX (sin (SQ_RADIANS (row->elevation_deg)), 0.0);
  return up_m > 0.0 ? row->lux * up_m / hypot (level_m, up_m) : 0.0;
}

double
sq_shadow_stops (const SqMarkReading *reading, const SqFixture *fixture)
{
  double all = 0.0, own = 0.0;
  for (guint i = 0; i < reading->rows->len; i++) {
    const SqReadingRow *row = &g_array_index (reading->rows, SqReadingRow, i);
    double lux = floor_lux (reading, row);
    all += lux;
    if (g_str_equal (row->id, fixture->id))
      own += lux;
  }
  return own > 0.0 ? log2 (all / (all - own)) : 0.0;
}

static const SqMarkReading *
reading_of (const SqReadings *readings, const SqMark *mark)
{
  for (guint i = 0; readings != NULL && i < readings->marks->len; i++) {
    const SqMarkReading *reading = g_ptr_array_index (readings->marks, i);
    if (g_str_equal (reading->mark->id, mark->id))
      return reading;
  }
  return NULL;
}

/* Half of the beam's peak or more reaches the face. */
static gboolean
beams_at (const SqScene *scene, const SqFixture *fixture, SqPoint face)
{
  double half_deg, tenth_deg;
  if (!sq_fixture_is_hard (scene, fixture) ||
      !sq_fixture_beam_deg (scene, fixture, &half_deg, &tenth_deg))
    return FALSE;
  SqVector way = sq_vector_between (fixture->at, face);
  double along =
    sq_vector_dot (way, sq_fixture_frame (scene, fixture).forward) / sq_vector_length (way);
  return SQ_DEGREES (acos (CLAMP (along, -1.0, 1.0))) <= half_deg / 2;
}

gboolean
sq_shadow_counts (const SqScene *scene,
                  const SqReadings *readings,
                  const SqFixture *fixture,
                  const SqMark *mark)
{
  const SqMarkReading *reading = reading_of (readings, mark);
  if (reading != NULL)
    return sq_shadow_stops (reading, fixture) >= SQ_SHADOW_LEAST_STOPS;
  SqRole role = sq_fixture_role_at (fixture, mark->id);
  return (role == SQ_ROLE_KEY || role == SQ_ROLE_BACK) &&
         beams_at (scene, fixture, sq_mark_face (mark));
}

static gboolean
sees (const SqView *view,
      const SqScene *scene,
      const GArray *blocks,
      const SqCamera *camera,
      const SqCameraField *field,
      SqPaperPoint point)
{
  const double touched_m = 0.02; /* a shadow ends on the face of the wall itself */
  double dx = point.x_mm - field->pupil.x_mm, dy = point.y_mm - field->pupil.y_mm;
  double along = dx * cos (field->angle_rad) + dy * sin (field->angle_rad);
  double across = -dx * sin (field->angle_rad) + dy * cos (field->angle_rad);
  if (along <= 0.0 || fabs (across) > along * tan (field->half_rad))
    return FALSE;
  SqPlace place = sq_view_place (view, point);
  SqVector way = { place.x_m - camera->at.x_m, place.y_m - camera->at.y_m, 0.0 };
  double distance_m = sq_vector_length (way);
  return sq_ray_cut_m (scene, blocks, camera->at, way, distance_m) >= distance_m - touched_m;
}

gboolean
sq_camera_sees_shadow (const SqView *view,
                       const SqScene *scene,
                       const GArray *blocks,
                       const SqCamera *camera,
                       const SqCameraField *field,
                       const SqShadow *shadow)
{
  const int steps = 8;
  SqPaperPoint end = shadow->end[SQ_SHADOW_RAYS / 2];
  for (int i = 0; i <= steps; i++) {
    double t = (double)i / steps;
    SqPaperPoint at = { shadow->foot.x_mm + t * (end.x_mm - shadow->foot.x_mm),
                        shadow->foot.y_mm + t * (end.y_mm - shadow->foot.y_mm) };
    if (sees (view, scene, blocks, camera, field, at))
      return TRUE;
  }
  return FALSE;
}
