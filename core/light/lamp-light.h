/* lamp-light.h: what of a lamp is seen from a point, and how that adds up to a reading */
#pragma once

#include "light/lamp.h"
#include "light/sight.h"

G_BEGIN_DECLS

/* TRUE if the lamp is dark, or all of it is below the receptor's horizon, or it faces away. */
gboolean sq_lamp_is_out_of_sight (const SqLamp *lamp, const SqReceptor *receptor);

/* sq_lamp_see:
 * @between: all that may stand between, the lamp's doors first, then the scene's; what hides
 *   nothing may be left out, to the same bits
 * @own: (nullable): whoever stands at @from and does not shade the own meter
 *
 * What @from sees of the lamp, into @sight: see sq_sight_see(). */
void sq_lamp_see (const SqLamp *lamp,
                  SqPoint from,
                  const SqObstacle *const *between,
                  guint n_between,
                  const SqThing *own,
                  SqSight *sight);

/* The same past the lamp's own doors and all of @obstacles (element-type SqObstacle). */
void sq_lamp_see_past_all (
  const SqLamp *lamp, SqPoint from, const GArray *obstacles, const SqThing *own, SqSight *sight);

/* The lux that the receptor reads of what is in @sight, which was seen from where it stands.
 *
 * E = sum of level · 2^trim · T · I · cos / d² · V. Where all of the lamp is seen, as
 * sq_whole_face_lux() has it. Else even faces, balls and tubes by the contour formula, exactly;
 * other faces in cells (light/cells.h), each sending its share of the lamp's candela. On the lamp,
 * inside it and behind its face nothing is read. @sight's scratch is used. */
double sq_lamp_lux (const SqLamp *lamp, const SqReceptor *receptor, SqSight *sight);

/* The same at an output of 1: sq_lamp_lux() is this times lamp->output. */
double sq_lamp_unit_lux (const SqLamp *lamp, const SqReceptor *receptor, SqSight *sight);

G_END_DECLS
