/* solid.h: convex solids */
#pragma once

#include "base/geometry.h"

G_BEGIN_DECLS

/* Closer than this, things touch. */
#define SQ_TOUCH_M 1e-9

typedef struct {
  SqVector normal; /* unit length, outward */
  double offset_m; /* normal · any point of it */
} SqPlane;

/* How far @point lies outside. */
static inline double
sq_plane_height_m (const SqPlane *plane, SqPoint point)
{
  return plane->normal.x * point.x_m + plane->normal.y * point.y_m + plane->normal.z * point.z_m -
         plane->offset_m;
}

/* A point of the plane. */
static inline SqPoint
sq_plane_point (const SqPlane *plane)
{
  return sq_point (plane->normal.x * plane->offset_m, plane->normal.y * plane->offset_m,
                   plane->normal.z * plane->offset_m);
}

/* Indices: of its ends, and of the faces left and right of it, looking from outside. */
typedef struct {
  guint32 from, to, left, right;
} SqEdge;

/* A convex body, or with no depth a flat convex sheet, which has two faces and no inside. */
typedef struct {
  SqPoint *corners;
  SqPlane *faces;
  SqEdge *edges;
  guint n_corners, n_faces, n_edges;
  gboolean flat;
  SqPoint centre; /* of a ball that holds it */
  double radius_m;
} SqSolid;

/* An upright prism. @outline: convex, counter-clockwise from above, at least 3 corners. */
void sq_solid_init_prism (
  SqSolid *solid, const SqPlace *outline, guint n, double base_m, double top_m);

/* A flat rectangle about @middle, spanned by two half sides at right angles. */
void sq_solid_init_sheet (SqSolid *solid, SqPoint middle, SqVector half_across, SqVector half_up);

void sq_solid_clear (SqSolid *solid);

/* TRUE if the solid, that can be told cheaply, hides nothing of a ball from @from. */
gboolean sq_solid_is_clear (const SqSolid *solid,
                            SqPoint from,
                            SqPoint ball_centre,
                            double ball_radius_m);

/* TRUE if @point is inside, not merely on the surface. */
gboolean sq_solid_holds (const SqSolid *solid, SqPoint point);

/* Where a ray meets the solid from outside. Returns: the distance in lengths of @direction, 0 if
 * it starts inside, NAN if it misses; @face: (out): the index of the face met. */
double sq_solid_hit (const SqSolid *solid, SqPoint from, SqVector direction, guint *face);

G_END_DECLS
