/* shadow.h: the shadow that somebody throws on the floor: outline, direction, penumbra */
#pragma once

#include "draw/camera-symbol.h"
#include "draw/ray-cut.h"
#include "light/readings.h"

G_BEGIN_DECLS

/* Half as wide as somebody's shoulders: what the light passes by. */
#define SQ_FIGURE_RADIUS_M 0.20

/* A shadow less deep than this, against the light beside it, is not worth drawing: the third of a
 * stop at which two shadows of one person begin to count as a double shadow. */
#define SQ_SHADOW_LEAST_STOPS (1.0 / 3.0)

/* What throws a shadow's edge: a lamp's face, its soft box, or the last frame on the way. */
typedef struct {
  SqPoint at;
  double width_m; /* level, across the light's way */
} SqShadowSource;

/* Rays that find out where the shadow ends, from edge to edge. */
#define SQ_SHADOW_RAYS 33

typedef struct {
  gboolean any;
  SqPaperPoint foot;                /* of the figure */
  SqPaperLine edge[2];              /* from where the light touches the figure to the end */
  SqPaperPoint end[SQ_SHADOW_RAYS]; /* from edge[0].to to edge[1].to */
  gboolean climbs[SQ_SHADOW_RAYS];  /* ends at a wall there, and goes up */
  SqPaperPoint penumbra[2];         /* where the half-shadow's outer edges end */
} SqShadow;

SqShadowSource sq_shadow_source (const SqScene *scene,
                                 const SqFixture *fixture,
                                 const SqMark *mark);

/* sq_penumbra_m:
 * @source_m: how wide the source is; @before_m: from it to what stops the light; @behind_m: from
 *   there to where the shadow falls
 *
 * Similar triangles: source · behind / before. Half of it lies outside the edge that a point in the
 * source's middle would throw, half inside. */
double sq_penumbra_m (double source_m, double before_m, double behind_m);

/* How far behind a figure the full shadow reaches, its core: where the penumbra is as wide as the
 * shadow. INFINITY where the source is narrower than the figure. */
double sq_shadow_core_m (double source_m, double before_m);

/* The shadow of the figure at @mark in the light of @fixture, on the mark's floor: as long as its
 * height throws it, but no longer than its core, and cut at walls. None where the lamp is off or
 * its way to the face is blocked; nor where the figure lies, or stands right under the lamp. */
SqShadow sq_shadow (const SqView *view,
                    const SqScene *scene,
                    const GArray *blocks,
                    const SqFixture *fixture,
                    const SqMark *mark);

/* sq_shadow_stops:
 * @reading: of the mark
 *
 * How deep the shadow in the light of @fixture is against the floor beside it, in stops:
 * log2 (all / all but this lamp), each lamp's light at the face taken down to the level floor.
 * From what the meter reads at the face: for choosing, not for figures.
 * Returns: 0 where the lamp gives nothing, INFINITY where there is no other */
double sq_shadow_stops (const SqMarkReading *reading, const SqFixture *fixture);

/* TRUE if a shadow of @mark by @fixture is worth drawing: deep enough by @readings; with none
 * (NULL), if the lamp is a key or back light that has a beam and turns half of its peak or more on
 * the face. */
gboolean sq_shadow_counts (const SqScene *scene,
                           const SqReadings *readings,
                           const SqFixture *fixture,
                           const SqMark *mark);

/* TRUE if some of the shadow lies within the camera's field on the plan with no wall between. What
 * the frame cuts off above and below is not looked at. */
gboolean sq_camera_sees_shadow (const SqView *view,
                                const SqScene *scene,
                                const GArray *blocks,
                                const SqCamera *camera,
                                const SqCameraField *field,
                                const SqShadow *shadow);

void sq_draw_shadow (SqDrawing *drawing, const SqShadow *shadow);

G_END_DECLS
