/* region.h: convex regions of a receiver grid: half-planes, and one interval of columns a row */
#pragma once

#include "light/receivers.h"

G_BEGIN_DECLS

/* What lies within where constant + column · by_column + row · by_row ≤ 0. */
typedef struct {
  double constant, by_column, by_row;
} SqHalfPlane;

/* All of the grid that lies within every one of the half-planes, none of which could be left out,
 * and whose values are distances in steps of the grid; nothing where last_row < first_row. */
typedef struct {
  SqHalfPlane *planes;
  guint n_planes;
  int first_row, last_row; /* others have nothing of it */
} SqRegion;

/* Columns from … to - 1; none where to ≤ from. */
typedef struct {
  int from, to;
} SqSpan;

/* The grid's rows are looked at in blocks of so many at most. */
#define SQ_BLOCK_ROWS 32

void sq_region_clear (SqRegion *region);

static inline gboolean
sq_region_is_empty (const SqRegion *region)
{
  return region->last_row < region->first_row;
}

/* @spans: (out): for @n_rows rows, at most SQ_BLOCK_ROWS, from @first_row. Returns: FALSE, and no
 * spans, if there is nothing in any */
gboolean sq_region_spans (
  const SqRegion *region, const SqReceiverGrid *grid, int first_row, int n_rows, SqSpan *spans);

typedef struct {
  double column, row;
  int plane; /* along which it goes from here to the next corner; -1: the grid's border */
} SqRegionCorner;

/* A region in the making: the grid's rectangle, cut and cut again. */
#define SQ_REGION_CORNERS 64
typedef struct {
  SqRegionCorner corners[SQ_REGION_CORNERS];
  SqHalfPlane planes[SQ_REGION_CORNERS];
  int n_corners, n_planes; /* no corners: nothing is left */
} SqRegionCut;

void sq_region_cut_begin (SqRegionCut *cut, const SqReceiverGrid *grid);

/* Begins with what is left of another, as if the grid ended there: its planes will not be the new
 * region's. */
void sq_region_cut_begin_within (SqRegionCut *cut, const SqRegionCut *within);

/* Keeps what is within @plane. Returns: FALSE if it cuts, and there is no room for another plane:
 * nothing has changed then */
gboolean sq_region_cut_by (SqRegionCut *cut, SqHalfPlane plane);

/* The half-plane that the half-space (point - through) · normal ≤ @slack_m · |normal| cuts from the
 * grid. */
SqHalfPlane sq_half_plane (const SqReceiverGrid *grid,
                           SqPoint through,
                           SqVector normal,
                           double slack_m);

/* What is left. */
SqRegion sq_region_cut_end (const SqRegionCut *cut, const SqReceiverGrid *grid);

G_END_DECLS
