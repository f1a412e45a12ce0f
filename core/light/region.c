/* region.c: convex regions of a receiver grid: half-planes, and one interval of columns a row */
#include "light/region.h"

#include <string.h>

void
sq_region_clear (SqRegion *region)
{
  g_clear_pointer (&region->planes, g_free);
  region->n_planes = 0;
}

SqHalfPlane
sq_half_plane (const SqReceiverGrid *grid, SqPoint through, SqVector normal, double slack_m)
{
  SqPoint first = sq_receiver_point (grid, 0, 0);
  return (SqHalfPlane){
    .constant = sq_vector_dot (normal, sq_vector_between (through, first)) -
                slack_m * sq_vector_length (normal),
    .by_column = normal.x * grid->step_m,
    .by_row = normal.y * grid->step_m,
  };
}

/* A little more than the grid, so that no point lies on the border. */
void
sq_region_cut_begin (SqRegionCut *cut, const SqReceiverGrid *grid)
{
  double right = grid->columns - 0.5, top = grid->rows - 0.5;
  const double corners[4][2] = { { -0.5, -0.5 }, { right, -0.5 }, { right, top }, { -0.5, top } };
  for (int i = 0; i < 4; i++) {
    cut->corners[i].column = corners[i][0];
    cut->corners[i].row = corners[i][1];
    cut->corners[i].plane = -1;
  }
  cut->n_corners = 4;
  cut->n_planes = 0;
}

void
sq_region_cut_begin_within (SqRegionCut *cut, const SqRegionCut *within)
{
  for (int i = 0; i < within->n_corners; i++)
    cut->corners[i] = (SqRegionCorner){ within->corners[i].column, within->corners[i].row, -1 };
  cut->n_corners = within->n_corners;
  cut->n_planes = 0;
}

/* Less than twice round. */
static inline int
wrapped (int i, int n)
{
  return i >= n ? i - n : i;
}

/* On the way from @a to @b, along @a's plane. */
static SqRegionCorner
between (const SqRegionCorner *a, const SqRegionCorner *b, double t)
{
  return (SqRegionCorner){ a->column + t * (b->column - a->column), a->row + t * (b->row - a->row),
                           a->plane };
}

gboolean
sq_region_cut_by (SqRegionCut *cut, SqHalfPlane plane)
{
  double past[SQ_REGION_CORNERS];
  int n = cut->n_corners, n_past = 0;
  for (int i = 0; i < n; i++) {
    past[i] = plane.constant + cut->corners[i].column * plane.by_column +
              cut->corners[i].row * plane.by_row;
    n_past += past[i] > 0.0;
  }
  if (n_past == 0)
    return TRUE;
  if (n_past == n) {
    cut->n_corners = 0;
    return TRUE;
  }
  if (n == SQ_REGION_CORNERS || cut->n_planes == SQ_REGION_CORNERS)
    return FALSE;

  /* The corners past the plane follow each other; two on the plane take their place. */
  int before = n - 1, first_past = 0;
  while (past[first_past] <= 0.0 || past[before] > 0.0)
    before = first_past++;
  int last_past = wrapped (first_past + n_past - 1, n), after = wrapped (last_past + 1, n);
  const SqRegionCorner enter = between (&cut->corners[before], &cut->corners[first_past],
                                        past[before] / (past[before] - past[first_past]));
  const SqRegionCorner leave = between (&cut->corners[last_past], &cut->corners[after],
                                        past[last_past] / (past[last_past] - past[after]));
  SqRegionCorner kept[SQ_REGION_CORNERS];
  int n_kept = n - n_past;
  for (int i = 0; i < n_kept; i++)
    kept[i] = cut->corners[wrapped (after + i, n)];
  memcpy (cut->corners, kept, (gsize)n_kept * sizeof *kept);
  cut->corners[n_kept] = (SqRegionCorner){ enter.column, enter.row, cut->n_planes };
  cut->corners[n_kept + 1] = leave;
  cut->n_corners = n_kept + 2;
  cut->planes[cut->n_planes++] = plane;
  return TRUE;
}

/* Its values are distances, in steps of the grid. */
static SqHalfPlane
unit (SqHalfPlane plane)
{
  double length = sqrt (plane.by_column * plane.by_column + plane.by_row * plane.by_row);
  return length > 0.0 ? (SqHalfPlane){ plane.constant / length, plane.by_column / length,
                                       plane.by_row / length }
                      : plane;
}

SqRegion
sq_region_cut_end (const SqRegionCut *cut, const SqReceiverGrid *grid)
{
  SqRegion region = { .first_row = grid->rows, .last_row = -1 };
  double low = grid->rows, high = -1.0;
  int n_planes = 0;
  for (int i = 0; i < cut->n_corners; i++) {
    low = MIN (low, cut->corners[i].row);
    high = MAX (high, cut->corners[i].row);
    n_planes += cut->corners[i].plane >= 0;
  }
  region.first_row = (int)ceil (MAX (low, 0.0));
  region.last_row = (int)floor (MIN (high, grid->rows - 1.0));
  if (sq_region_is_empty (&region))
    return region;
  region.planes = g_new (SqHalfPlane, MAX (n_planes, 1));
  for (int i = 0; i < cut->n_corners; i++)
    if (cut->corners[i].plane >= 0)
      region.planes[region.n_planes++] = unit (cut->planes[cut->corners[i].plane]);
  return region;
}

/* Narrows [from, to] of each row to what is within one plane. */
static void
narrow (SqHalfPlane plane, int first_row, int n_rows, double *from, double *to)
{
  double begin = plane.constant + plane.by_row * first_row;
  double at = -begin / plane.by_column, slope = -plane.by_row / plane.by_column;
  if (!(fabs (plane.by_column) > 0.0) || !isfinite (at) || !isfinite (slope)) {
    for (int i = 0; i < n_rows; i++)
      to[i] = begin + plane.by_row * i > 0.0 ? -1.0 : to[i];
  } else if (plane.by_column > 0.0) {
    for (int i = 0; i < n_rows; i++)
      to[i] = MIN (to[i], at + slope * i);
  } else {
    for (int i = 0; i < n_rows; i++)
      from[i] = MAX (from[i], at + slope * i);
  }
}

gboolean
sq_region_spans (
  const SqRegion *region, const SqReceiverGrid *grid, int first_row, int n_rows, SqSpan *spans)
{
  double from[SQ_BLOCK_ROWS], to[SQ_BLOCK_ROWS], last = grid->columns - 1;
  int begin = MAX (region->first_row - first_row, 0);
  int end = MIN (region->last_row + 1 - first_row, n_rows);
  for (int i = 0; i < n_rows; i++)
    spans[i] = (SqSpan){ 0 };
  if (begin >= end)
    return FALSE;
  for (int i = begin; i < end; i++) {
    from[i] = 0.0;
    to[i] = last;
  }
  for (guint k = 0; k < region->n_planes; k++)
    narrow (region->planes[k], first_row + begin, end - begin, from + begin, to + begin);
  for (int i = begin; i < end; i++) {
    /* Both are within a column of the grid, and neither is less than what a cast rounds up. */
    double low = MIN (from[i], last + 1.0), high = MAX (to[i], -1.0);
    int column = (int)low;
    spans[i] = (SqSpan){ column + (column < low), (int)(high + 1.0) };
  }
  return TRUE;
}
