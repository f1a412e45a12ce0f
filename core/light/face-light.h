/* face-light.h: what a receptor reads of parts of a lamp's face */
#pragma once

#include "light/face-shadow.h"
#include "light/lamp.h"

G_BEGIN_DECLS

/* sq_lamp_face_toward:
 * @face: (out)
 *
 * The face that a lamp shows to @from: a flat one; the disc on which lines of sight touch a ball;
 * the ribbon through a tube's axis; with a reach of 0 for a lamp without size. Returns: FALSE if
 * nothing is seen: on the lamp, in it, behind its face */
gboolean sq_lamp_face_toward (const SqLamp *lamp, SqPoint from, SqFacePlane *face);

/* sq_face_parts_lux:
 * @face: what the lamp shows to the receptor, and not a point
 * @parts: of it
 * @scratch: (not @parts): is overwritten
 *
 * The lux that the receptor reads of the parts, at unit output: even faces, balls and tubes by the
 * contour formula, exactly; other faces in cells (light/cells.h), each sending its share of the
 * lamp's candela. */
double sq_face_parts_lux (const SqLamp *lamp,
                          const SqReceptor *receptor,
                          const SqFacePlane *face,
                          const SqFaceParts *parts,
                          SqFaceParts *scratch);

/* The same of all that the lamp shows, also if that is a point. */
double sq_face_whole_lux (const SqLamp *lamp, const SqReceptor *receptor);

G_END_DECLS
