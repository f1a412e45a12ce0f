/* face-shadow.h: what a solid hides of a lamp's face */
#pragma once

#include "light/face-parts.h"
#include "light/solid.h"

G_BEGIN_DECLS

/* A lamp's face as it is seen from some point. */
typedef struct {
  SqPoint middle;
  SqVector right, up;             /* unit length, at right angles */
  double half_right_m, half_up_m; /* how far it reaches; 0: a point */
  gboolean round;                 /* a polygon of SQ_FACE_SIDES that reaches so far; else four */
} SqFacePlane;

#define SQ_FACE_SIDES 32

/* A regular polygon that reaches so many times as far as the ellipse it stands for has its area:
 * sqrt (step / sin step), step = 2π/32. */
#define SQ_ROUND_REACH 1.0032220804984128

/* The corners of the whole face, 4 or SQ_FACE_SIDES, counter-clockwise. Returns: how many */
guint sq_face_outline (const SqFacePlane *face, SqFaceSpot *corners);

/* What sq_face_shadow() returns beside a number of lines. */
#define SQ_HIDES_ALL 0
#define SQ_HIDES_NOTHING (-1)

/* sq_face_shadow:
 * @from: the point that looks
 * @lines: (out): room for n_faces + n_edges lines
 *
 * What the solid hides of the face is convex: all that lies within every one of @lines, which are
 * where the planes through @from and the outline it sees cross the plane of the face, and those of
 * the faces it sees: what is before those is not hidden. Lines that have all of the face within
 * them are left out. Where the face lies past one, nothing is hidden; that it never lies past one
 * does not say that something is.
 *
 * Whoever is inside sees nothing; whoever stands on a face sees nothing through it; whoever stands
 * in a sheet's plane sees past it. A face of the solid hides only what is deeper than a skin of
 * 1e-8 m behind it, so that lamps may sit on a wall; not so in its own plane, along which two
 * solids may meet. A point on the shadow's edge is in it, so that no light slips through there.
 *
 * Returns: how many lines; or SQ_HIDES_ALL; or SQ_HIDES_NOTHING */
int sq_face_shadow (const SqFacePlane *face, const SqSolid *solid, SqPoint from, SqFaceLine *lines);

G_END_DECLS
