/* sight.h: what of a lamp's face is seen from a point, past everything that stands between */
#pragma once

#include "light/obstacles.h"

G_BEGIN_DECLS

/* A convex part of the face; a lamp without size has one part of one corner. */
typedef struct {
  guint first, n; /* its corners in SqSight.corners */
  double passes;  /* share of its light that comes through: 1, or less behind nets and panes */
} SqSeen;

/* Scratch space, one for each thread, used over and over. */
typedef struct {
  GArray *corners; /* SqPoint */
  GArray *seen;    /* SqSeen */
  GArray *next_corners, *next_seen, *rest, *inside, *planes;
} SqSight;

void sq_sight_init (SqSight *sight);
void sq_sight_clear (SqSight *sight);

/* Nothing is seen. */
void sq_sight_reset (SqSight *sight);

/* sq_sight_see:
 * @corners, @n: a convex polygon, or one point
 * @obstacles, @doors: (element-type SqObstacle): what stands between; @doors may be NULL
 * @own: (nullable): whoever stands at @from and does not shade the own meter
 *
 * Fills @sight with what @from sees of the polygon: each solid's shadow is taken away from it, or
 * kept and weighed where the solid lets light through. Exact, but for the stated limit: past a
 * thousand parts the polygon is cut in 32 × 32 cells, each seen if its middle is. */
void sq_sight_see (SqSight *sight,
                   const SqPoint *corners,
                   guint n,
                   SqPoint from,
                   const GArray *obstacles,
                   const GArray *doors,
                   const SqThing *own);

/* What comes through from @at to @from: 1 with nothing between. */
double sq_sight_clearness (SqSight *sight,
                           SqPoint at,
                           SqPoint from,
                           const GArray *obstacles,
                           const GArray *doors,
                           const SqThing *own);

/* Cuts a convex polygon: what is within the plane, and what is past it, each appended to its array
 * of SqPoint. What only touches goes to both; a part of less than 3 corners is none. */
void sq_polygon_cut (
  const SqPoint *corners, guint n, const SqPlane *plane, GArray *within, GArray *past);

static inline const SqPoint *
sq_sight_corners (const SqSight *sight, const SqSeen *seen)
{
  return &g_array_index (sight->corners, SqPoint, seen->first);
}

G_END_DECLS
