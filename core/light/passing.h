/* passing.h: what the things hung on a lamp let through, direction by direction */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

typedef enum {
  SQ_PASSING_HALF_SCRIM,
  SQ_PASSING_EGG_CRATE,
  SQ_PASSING_SNOOT,
} SqPassingKind;

typedef struct {
  SqPassingKind kind;
  double passes;    /* half scrim: where it acts; egg crate: straight on */
  double side;      /* half scrim: 1 acts above, -1 below */
  double blend_rad; /* half scrim */
  double tangent;   /* egg crate, snoot: of the cut-off */
} SqPassingPart;

/* Doors are not in here: they are real leaves (light/lamp.h). */
typedef struct {
  double factor;     /* of what acts alike on every direction: full scrims, gels */
  GArray *parts;     /* SqPassingPart: half scrims, egg crates, snoots, which do not */
  double detail_rad; /* the angle over which the parts change much; infinite with none */
} SqPassing;

/* sq_passing_init:
 * @half_up_rad: half of the beam angle upward, by which the edge of a half scrim is blended
 *
 * Full scrims 2^-stops; gels by the material's `direct`. Cloth on the lamp passes
 * everything here. */
void sq_passing_init (SqPassing *passing,
                      const SqScene *scene,
                      const SqFixture *fixture,
                      double half_up_rad);
void sq_passing_clear (SqPassing *passing);

/* The share, 0 to 1, of what goes toward @direction (unit length; x right, y up, z forward).
 *
 * - a half scrim acts on its side of the level plane through the aim, its edge blended linearly
 *   over a quarter of @half_up_rad;
 * - an egg crate passes transmission · (1 - |tan a| / tan c)+ · (1 - |tan b| / tan c)+, a and b the
 *   angles across and up, c its cut-off: what is open of deep square cells;
 * - a snoot passes the overlap of its two round ends: s = tan g / tan c, (2/π)(acos s - s √(1-s²)).
 */
double sq_passing_share (const SqPassing *passing, SqVector direction);

G_END_DECLS
