/* outline.h: outlines on plan cut into convex ones */
#pragma once

#include "base/geometry.h"

G_BEGIN_DECLS

/* sq_outline_split:
 * @corners, @n: in order, either way round; may be concave
 *
 * By clipping ears, then joining what can be joined across a shared diagonal and stay convex
 * (Hertel and Mehlhorn 1983: at most four times as many as need be).
 *
 * Returns: (transfer full) (element-type GArray): SqPlace arrays, convex and counter-clockwise;
 * NULL if the outline crosses itself or has no area */
GPtrArray *sq_outline_split (const SqPlace *corners, guint n);

/* Twice the signed area: positive counter-clockwise. */
double sq_outline_twice_area_m2 (const SqPlace *corners, guint n);

G_END_DECLS
