/* section-cut.h: the upright plane through a lamp, and what of the set it cuts
 *
 * On a cut a place is (x: along it, from the lamp; y: height over the floor), in metres: the same
 * type as places on the plan, because one kind of view (draw/view.h) puts both on paper. */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* What gave the cut its direction. */
typedef enum {
  SQ_CUT_BY_AIM,  /* what the lamp points at */
  SQ_CUT_BY_MARK, /* straight up or down, or with no aim: the nearest mark */
  SQ_CUT_BY_PAGE, /* nor is there a mark: the page's x */
} SqCutBy;

typedef struct {
  SqPlace origin;    /* the lamp, on plan */
  SqVector along;    /* unit length, level: to the right on the cut */
  SqVector to_eye;   /* unit length, level: from the cut to who looks at it */
  SqCutBy by;        /* why it lies so */
  const SqThing *to; /* (nullable): what is aimed at, or the mark; borrowed from the scene */
} SqCutPlane;

/* A lamp whose aim is no farther than this on plan, or a mark, gives no direction. */
#define SQ_CUT_LEAST_M 0.05

SqCutPlane sq_cut_plane (const SqScene *scene, const SqFixture *fixture);

/* Where a point lies on the cut, seen square to it; and how far before it (behind: negative). */
SqPlace sq_cut_place (const SqCutPlane *plane, SqPoint point);
double sq_cut_off_m (const SqCutPlane *plane, SqPoint point);

/* The point of the room that lies on the cut at @place. */
SqPoint sq_cut_point (const SqCutPlane *plane, SqPlace place);

/* As seen on the cut: x along it, y up, z toward the eye. */
SqVector sq_cut_direction (const SqCutPlane *plane, SqVector direction);

/* Directions turned out of the cut further than this (its cosine) have none on it worth drawing. */
#define SQ_CUT_LEAST_COSINE 0.35

/* One solid where the plane goes through it: a convex outline, or the line of a flat sheet. */
#define SQ_CUT_CORNERS 8
typedef struct {
  const SqThing *owner; /* as of the obstacle */
  double passes;        /* of light, straight through */
  gboolean sheet;
  guint n; /* 2 of a sheet */
  SqPlace corner[SQ_CUT_CORNERS];
} SqCutPart;

/* sq_cut_parts:
 * @obstacles: of SqObstacle (light/obstacles.h)
 *
 * Sheets and faces that lie in the plane itself are not cut by it.
 * Returns: (transfer full) (element-type SqCutPart): in the order of @obstacles */
GArray *sq_cut_parts (const SqCutPlane *plane, const GArray *obstacles);

/* sq_cut_outline:
 * @n: at least 1
 * @corners: (out caller-allocates): room for @n + 1
 *
 * The convex outline of @n points (Andrew 1979), counter-clockwise.
 * Returns: how many corners it has */
guint sq_cut_outline (SqPlace *points, guint n, SqPlace *corners);

/* TRUE if @place lies in the outline or on it; a sheet holds nothing. */
gboolean sq_cut_holds (const SqCutPart *part, SqPlace place);

/* TRUE if the plane goes through any part of @owner. */
gboolean sq_cut_goes_through (const GArray *parts, const SqThing *owner);

/* TRUE for what ends a line of light: all that lets less than a hundredth straight through, such as
 * walls, shut doors, flags; nets and frames never, light goes on from them. */
gboolean sq_cut_stops (const SqThing *owner, double passes);

/* sq_cut_reach_m:
 * @toward: unit length
 * @not_of: (nullable): passed as if it were not there
 *
 * How far a ray gets before something solid, or the floor, stops it; at most @most_m. What it
 * starts in or touches does not stop it. For lines on drawings only. */
double sq_cut_reach_m (
  const GArray *obstacles, SqPoint from, SqVector toward, double most_m, const SqThing *not_of);

G_END_DECLS
