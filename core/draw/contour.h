/* contour.h: lines of equal value and the areas above them, over a level grid of numbers */
#pragma once

#include "base/geometry.h"

G_BEGIN_DECLS

/* Values on a grid; NAN where there are none. */
typedef struct {
  int columns, rows;
  SqPlace first; /* the lower left point */
  double step_m; /* both ways */
  double *value; /* (array): rows × columns from the bottom left, x fastest */
} SqGrid;

SqGrid *sq_grid_new (int columns, int rows, SqPlace first, double step_m);
SqGrid *sq_grid_copy (const SqGrid *grid);
void sq_grid_free (SqGrid *grid);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqGrid, sq_grid_free)

/* At column @i and row @j. */
static inline double *
sq_grid_at (const SqGrid *grid, int i, int j)
{
  return &grid->value[(gsize)j * grid->columns + i];
}

/* sq_grid_smooth:
 * @sigma_steps: of the Gaussian, in steps of the grid
 *
 * Smooths along x, then along y. A kernel ends at the first NAN it meets, so that nothing bleeds
 * through a wall; points that are NAN stay so. */
void sq_grid_smooth (SqGrid *grid, double sigma_steps);

/* Gives every NAN that touches a value, also by a corner, one too: what two values in line with it
 * lead to (by 1 at most), else the mean of the values around it. */
void sq_grid_grow (SqGrid *grid);

typedef struct {
  gboolean closed;
  GArray *points; /* SqPlace; of a closed line the last is not the first again */
} SqContour;

void sq_contour_free (SqContour *contour);
double sq_contour_length_m (const SqContour *contour);

/* sq_contours:
 * Marching squares with linear interpolation between grid points; a saddle is decided by the mean
 * of its four corners. Cells with a NAN at a corner have no line: lines end at their edge. A value
 * equal to @level counts as above it.
 *
 * Returns: (transfer full) (element-type SqContour): open lines first, in the order of the grid */
GPtrArray *sq_contours (const SqGrid *grid, double level);

/* sq_contour_areas:
 * The outlines of all that is @level or more, closed along the border of the grid; filled by the
 * even-odd rule they are that area. NAN counts as below everything: an area ends at the last point
 * that has a value.
 *
 * Returns: (transfer full) (element-type SqContour): closed lines */
GPtrArray *sq_contour_areas (const SqGrid *grid, double level);

/* sq_contour_cells:
 * Returns: (transfer full) (element-type SqContour): outlines of all cells that have a value at a
 *   corner, cut across at their outer corners; by the even-odd rule */
GPtrArray *sq_contour_cells (const SqGrid *grid);

G_END_DECLS
