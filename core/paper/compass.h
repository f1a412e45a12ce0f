/* compass.h: true north, and where the sun stands */
#pragma once

#include "draw/drawing.h"

G_BEGIN_DECLS

#define SQ_COMPASS_RADIUS_MM 7.0
#define SQ_COMPASS_SMALL_MM 2.2 /* in a low foot */

/* A ring of @radius_mm with a tick each 30 degrees and a needle to @north_deg, a page azimuth. */
void sq_draw_compass (SqDrawing *drawing, SqPaperPoint middle, double radius_mm, double north_deg);

/* sq_draw_sun:
 * @reach_mm: how far from @middle it goes
 * @toward_deg: page azimuth of the sun, as seen from the set
 *
 * A disc with rays, on that side of @middle, and an arrow the way its light travels. */
void sq_draw_sun (SqDrawing *drawing, SqPaperPoint middle, double reach_mm, double toward_deg);

G_END_DECLS
