/* wall-outline.h: what is seen of the edges of walls that touch and cross */
#pragma once

#include "draw/view.h"
#include "draw/wall-shape.h"

G_BEGIN_DECLS

/* Closer than this two points are one (a tenth of a millimetre in the set). */
#define SQ_WALL_SAME_M 1e-4

/* A piece of an edge with wall on its left only. */
typedef struct {
  SqPlace from, to;
} SqWallStretch;

/* TRUE for wall that a plan cuts through: no opening, and not wild. */
gboolean sq_wall_block_is_cut (const SqWallBlock *block);

/* The outline of all of @blocks (SqWallBlock) that are cut: every piece goes counter-clockwise
 * round its wall, so each ends where the next one starts, but they come in no order that matters.
 * Returns: (transfer full): of SqWallStretch */
GArray *sq_wall_outline (const GArray *blocks);

G_END_DECLS
