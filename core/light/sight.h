/* sight.h: what of a lamp's face is seen from a point, past everything that stands between */
#pragma once

#include "light/face-shadow.h"
#include "light/obstacles.h"

G_BEGIN_DECLS

/* What was seen last, and scratch space: one for each thread, used over and over. */
typedef struct {
  SqPoint from;
  SqFacePlane face;
  gboolean whole;    /* all of the face is seen, alike */
  double passes;     /* if it is: the share of its light that comes through */
  SqFaceParts parts; /* what is seen of it otherwise; none: nothing is */

  SqFaceParts next; /* scratch from here on; @next is free once it is seen */
  SqFaceLine *lines;
  guint n_lines; /* what there is room for */
  const SqObstacle **between;
  guint n_between;
} SqSight;

void sq_sight_init (SqSight *sight);
void sq_sight_clear (SqSight *sight);

/* Nothing is seen. */
void sq_sight_reset (SqSight *sight);

/* sq_sight_see:
 * @between: what stands between; the same in another order gives the same but for rounding
 * @own: (nullable): whoever stands at @from and does not shade the own meter
 *
 * Fills @sight with what @from sees of the face: each solid's shadow is taken away from it, or kept
 * and weighed where the solid lets light through. Exact, but for the stated limit: past a thousand
 * parts, or a part of more than a hundred corners, the face is cut in 32 × 32 cells, each seen if
 * its middle is.
 *
 * What hides nothing of the face changes nothing, to the last bit, and what hides all of it leaves
 * nothing. */
void sq_sight_see (SqSight *sight,
                   const SqFacePlane *face,
                   SqPoint from,
                   const SqObstacle *const *between,
                   guint n_between,
                   const SqThing *own);

/* The same past all of both lists (element-type SqObstacle), @doors first; it may be NULL. */
void sq_sight_see_past_all (SqSight *sight,
                            const SqFacePlane *face,
                            SqPoint from,
                            const GArray *doors,
                            const GArray *obstacles,
                            const SqThing *own);

static inline gboolean
sq_sight_is_dark (const SqSight *sight)
{
  return !sight->whole && sight->parts.n_parts == 0;
}

G_END_DECLS
