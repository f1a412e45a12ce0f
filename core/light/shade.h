/* shade.h: where on a receiver grid a solid hides some of a lamp, and where all of it */
#pragma once

#include "light/lamp.h"
#include "light/region.h"

G_BEGIN_DECLS

/* Corners of a convex body that holds all of a lamp that gives light: a point, a rectangle round a
 * face, or a box. */
#define SQ_HULL_CORNERS 8

typedef struct {
  SqPoint corners[SQ_HULL_CORNERS];
  guint n_corners;
  guint8 edges[12][2];
  guint n_edges;
  SqVector forward; /* of what sends light to one side only; else of no length */
} SqLampHull;

void sq_lamp_hull_init (SqLampHull *hull, const SqLamp *lamp);

/* Both are on the safe side: @some reaches too far, @all not far enough. */
typedef struct {
  guint index;   /* of the obstacle in the list it comes from */
  SqRegion some; /* outside of it nothing is hidden */
  SqRegion all;  /* inside of it everything is */
} SqShade;

/* @within: what of the grid matters; regions may end, or not, where it does
 * @safe_m: how far regions are on the safe side
 *
 * Returns: FALSE, with nothing to clear, if @solid hides nothing of the lamp anywhere in there */
gboolean sq_shade_init (SqShade *shade,
                        const SqLampHull *hull,
                        const SqSolid *solid,
                        const SqReceiverGrid *grid,
                        const SqRegionCut *within,
                        double safe_m);
void sq_shade_clear (SqShade *shade);

G_END_DECLS
