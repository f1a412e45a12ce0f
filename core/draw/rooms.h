/* rooms.h: which part of the plan is indoors: the rooms that people are in */
#pragma once

#include "draw/contour.h"
#include "scene/scene.h"

G_BEGIN_DECLS

/* sq_rooms_keep:
 * @grid: values over the plan; those out of doors become NAN
 *
 * Where walls (openings and pulled walls count as shut) enclose rooms and every mark stands in one,
 * only rooms keep their values, and what lies within the walls' thickness, such as door openings.
 * With a mark in the open, or with nothing enclosed (a set of three walls), all is kept.
 * Returns: TRUE if there was something out of doors */
gboolean sq_rooms_keep (SqGrid *grid, const SqScene *scene);

/* sq_dark_keep:
 * @grid: values over the plan; all become NAN but those under @least that belong to what is lit:
 *   dark ground that light borders on and that no darkness joins to the border of the plan
 *
 * Beyond the last light out of doors nobody wants to know how dark it is. */
void sq_dark_keep (SqGrid *grid, double least);

G_END_DECLS
