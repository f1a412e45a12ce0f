/* area.h: light from a flat, evenly bright, Lambertian polygon, by closed forms */
#pragma once

#include "base/geometry.h"

G_BEGIN_DECLS

/* A polygon of more corners cannot be asked for. */
#define SQ_AREA_MOST_CORNERS 256

/* Both are per unit of luminance: lux for 1 cd/m². @toward: the polygon's corners as they lie from
 * the point that is lit, in any frame of right angles, right- or left-handed; it is convex, either
 * way round, and is seen from its bright side. The same bits on every machine. */

/* sq_area_flat:
 * What a flat receptor reads, looking along the unit vector @normal: the contour formula
 * E = L/2 · sum of β · (n · Γ) over the polygon's edges, β the angle that an edge spans at the
 * point and Γ the unit normal of the plane through it (Lambert 1760). What lies behind the
 * receptor's horizon is cut off. */
double sq_area_flat (const SqVector *toward, guint n, SqVector normal);

/* sq_area_dome:
 * What a dome, (1 + cosine) / 2 over the whole sphere, reads with its axis along @axis:
 * L/2 · (solid angle + axis · unclipped vector illuminance); the solid angle by triangles, Van
 * Oosterom and Strackee 1983. */
double sq_area_dome (const SqVector *toward, guint n, SqVector axis);

/* What of a ball of radius @radius_m round @centre a flat receptor may see is nothing if this is
 * TRUE: the ball lies behind the receptor's horizon. */
static inline gboolean
sq_area_is_below (SqPoint centre, double radius_m, SqPoint at, SqVector normal)
{
  return sq_vector_dot (normal, sq_vector_between (at, centre)) <= -radius_m;
}

G_END_DECLS
