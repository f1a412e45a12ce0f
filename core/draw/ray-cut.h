/* ray-cut.h: how far a straight ray of light gets on the plan before the set stops it */
#pragma once

#include "draw/wall-shape.h"

G_BEGIN_DECLS

/* What lets less than this through counts as shut. */
#define SQ_SHUT_TRANSMITTANCE 0.01

/* sq_ray_cut_m:
 * @blocks: the walls (draw/wall-shape.h)
 * @toward: the ray's direction, any length but 0
 * @most_m: look no further
 *
 * What stops it: walls over their height but for open openings, flags and bounces in place, floor
 * and ceiling. For drawing lines only: the light itself is computed elsewhere. Returns: the length
 * of the ray, at most @most_m */
double sq_ray_cut_m (
  const SqScene *scene, const GArray *blocks, SqPoint from, SqVector toward, double most_m);

/* sq_sight_cut_m:
 * @indoors_m: up to here open windows and doors let it pass, from here on they end it as walls do
 *
 * How far a line of sight, level with the lens, is followed: as sq_ray_cut_m(), but what somebody
 * looks at stands indoors, and past it a view out of the window is of no use on a plan.
 * Returns: the length of the ray, at most @most_m */
double sq_sight_cut_m (const SqScene *scene,
                       const GArray *blocks,
                       SqPoint from,
                       SqVector toward,
                       double indoors_m,
                       double most_m);

/* TRUE for a panel that ends a ray whatever its cloth: flags and bounces; light goes on from
 * others.
 */
gboolean sq_panel_ends_light (const SqPanel *panel);

/* How far along the ray it passes through @panel; NAN where it misses. */
double sq_ray_meets_panel_m (const SqPanel *panel, SqPoint from, SqVector toward);

/* The last diffusion frame on @way, which ends where the light is aimed: from there on that is the
 * source. Returns: (nullable): */
const SqPanel *sq_frame_on_the_way (const SqScene *scene, SqPoint from, SqVector way);

/* How far along @way that frame stands. 0: there is none. */
double sq_frame_on_the_way_m (const SqScene *scene, SqPoint from, SqVector way);

G_END_DECLS
