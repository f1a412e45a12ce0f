/* face-places.h: places that stand for the whole of a flat face, few or many */
#pragma once

#include "base/geometry.h"

G_BEGIN_DECLS

typedef struct {
  SqPoint at;
  double share; /* of the face's area; all of them make 1 */
} SqFacePlace;

/* The face halved so many times, each part being four places that have its area, its centre and
 * its second moments. */
typedef struct {
  SqFacePlace *places;
  guint n;
  double size_m; /* of the largest part: the longest side, if it were a rectangle */
} SqFaceLevel;

typedef struct {
  gatomicrefcount references;
  guint n_levels;
  SqFaceLevel *levels; /* coarse to fine */
} SqFacePlaces;

/* sq_face_places_new:
 * @middle: from which corners are counted
 * @right, @up: the face's plane, unit length
 * @right_m, @up_m, @n: its corners, convex, counter-clockwise seen from the bright side
 * @finest_m: parts need not be smaller than this
 *
 * Each part is halved across its long axis through its centre, at most SQ_FACE_HALVINGS times.
 *
 * Returns: (transfer full) */
#define SQ_FACE_HALVINGS 8
SqFacePlaces *sq_face_places_new (SqPoint middle,
                                  SqVector right,
                                  SqVector up,
                                  const double *right_m,
                                  const double *up_m,
                                  guint n,
                                  double finest_m);
SqFacePlaces *sq_face_places_ref (SqFacePlaces *places);
void sq_face_places_unref (SqFacePlaces *places);

G_END_DECLS
