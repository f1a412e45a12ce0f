/* cells.h: sums over a flat face whose light is not Lambertian, in cells that are fine enough */
#pragma once

#include "base/geometry.h"

G_BEGIN_DECLS

/* What one place of the face gives, per square metre of it. */
typedef double (*SqCellFunc) (SqPoint place, gconstpointer data);

/* sq_cells_sum:
 * @corners, @n: a convex polygon
 * @at: the point that looks
 * @detail_rad: the angle at @at over which what @func gives changes much
 *
 * The integral of @func over the polygon: it is halved until a part looks small from @at (under a
 * third of its distance, and half of @detail_rad), and each part is summed at four places that have
 * the part's own area, centre and second moments. Good to a few thousandths where @func is smooth.
 */
double sq_cells_sum (const SqPoint *corners,
                     guint n,
                     SqPoint at,
                     double detail_rad,
                     SqCellFunc func,
                     gconstpointer data);

G_END_DECLS
