/* lamp-light.c: what of a lamp is seen from a point, and how that adds up to a reading */
#include "light/lamp-light.h"
#include "light/area.h"
#include "light/face-light.h"
#include "light/whole-face.h"

/* Nearer to a face's plane than this is on it. */
#define ON_IT_M 1e-9

gboolean
sq_lamp_is_out_of_sight (const SqLamp *lamp, const SqReceptor *receptor)
{
  SqVector way = sq_vector_between (lamp->fixture->at, receptor->at);
  if (lamp->output <= 0.0 || lamp->shaped == SQ_SHAPED_NOT)
    return TRUE;
  if (lamp->shaped == SQ_SHAPED_FLAT && sq_vector_dot (way, lamp->frame.forward) <= ON_IT_M)
    return TRUE;
  return !receptor->dome &&
         sq_area_is_below (lamp->fixture->at, lamp->radius_m, receptor->at, receptor->normal);
}

void
sq_lamp_see (const SqLamp *lamp,
             SqPoint from,
             const SqObstacle *const *between,
             guint n_between,
             const SqThing *own,
             SqSight *sight)
{
  SqFacePlane face;
  if (sq_lamp_face_toward (lamp, from, &face))
    sq_sight_see (sight, &face, from, between, n_between, own);
  else
    sq_sight_reset (sight);
}

void
sq_lamp_see_past_all (
  const SqLamp *lamp, SqPoint from, const GArray *obstacles, const SqThing *own, SqSight *sight)
{
  SqFacePlane face;
  if (sq_lamp_face_toward (lamp, from, &face))
    sq_sight_see_past_all (sight, &face, from, lamp->doors, obstacles, own);
  else
    sq_sight_reset (sight);
}

double
sq_lamp_unit_lux (const SqLamp *lamp, const SqReceptor *receptor, SqSight *sight)
{
  if (sight->whole) {
    const SqReceptors receptors = {
      .x_m = &receptor->at.x_m,
      .y_m = &receptor->at.y_m,
      .z_m = &receptor->at.z_m,
      .nx = &receptor->normal.x,
      .ny = &receptor->normal.y,
      .nz = &receptor->normal.z,
      .dome = receptor->dome,
    };
    double lux;
    sq_whole_face_lux (lamp, &receptors, 1, &lux);
    return lux * sight->passes;
  }
  if (sight->parts.n_parts == 0)
    return 0.0;
  return sq_face_parts_lux (lamp, receptor, &sight->face, &sight->parts, &sight->next);
}

double
sq_lamp_lux (const SqLamp *lamp, const SqReceptor *receptor, SqSight *sight)
{
  return sq_lamp_unit_lux (lamp, receptor, sight) * lamp->output;
}
