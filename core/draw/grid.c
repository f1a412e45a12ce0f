/* grid.c: a level grid of numbers: made, copied, smoothed, grown over its holes */
#include "draw/contour.h"

#include <string.h>

SqGrid *
sq_grid_new (int columns, int rows, SqPlace first, double step_m)
{
  SqGrid *grid = g_new0 (SqGrid, 1);
  *grid = (SqGrid){ .columns = columns, .rows = rows, .first = first, .step_m = step_m };
  grid->value = g_new0 (double, (gsize)columns *rows);
  return grid;
}

SqGrid *
sq_grid_copy (const SqGrid *grid)
{
  SqGrid *copy = sq_grid_new (grid->columns, grid->rows, grid->first, grid->step_m);
  memcpy (copy->value, grid->value, (gsize)grid->columns * grid->rows * sizeof (double));
  return copy;
}

void
sq_grid_free (SqGrid *grid)
{
  g_free (grid->value);
  g_free (grid);
}

/* Smooths @count values that lie @stride apart. */
static void
smooth_line (double *value, gsize stride, int count, const double *weights, int reach, double *line)
{
  for (int k = 0; k < count; k++)
    line[k] = value[k * stride];
  for (int k = 0; k < count; k++) {
    if (isnan (line[k]))
      continue;
    double sum = weights[0] * line[k], weight = weights[0];
    for (int side = -1; side <= 1; side += 2)
      for (int d = 1; d <= reach; d++) {
        int at = k + side * d;
        if (at < 0 || at >= count || isnan (line[at]))
          break;
        sum += weights[d] * line[at];
        weight += weights[d];
      }
    value[k * stride] = sum / weight;
  }
}

void
sq_grid_smooth (SqGrid *grid, double sigma_steps)
{
  if (!(sigma_steps > 0.0))
    return;
  int reach = (int)ceil (3.0 * sigma_steps); /* beyond three sigma lie 0.3 % */
  g_autofree double *weights = g_new (double, reach + 1);
  for (int d = 0; d <= reach; d++)
    weights[d] = exp (-0.5 * d * d / (sigma_steps * sigma_steps));
  g_autofree double *line = g_new (double, MAX (grid->columns, grid->rows));
  for (int j = 0; j < grid->rows; j++)
    smooth_line (sq_grid_at (grid, 0, j), 1, grid->columns, weights, reach, line);
  for (int i = 0; i < grid->columns; i++)
    smooth_line (sq_grid_at (grid, i, 0), grid->columns, grid->rows, weights, reach, line);
}

void
sq_grid_grow (SqGrid *grid)
{
  g_autoptr (SqGrid) before = sq_grid_copy (grid);
  for (int j = 0; j < grid->rows; j++)
    for (int i = 0; i < grid->columns; i++) {
      if (!isnan (*sq_grid_at (before, i, j)))
        continue;
      double sum = 0.0;
      int found = 0;
      for (int v = MAX (j - 1, 0); v <= MIN (j + 1, grid->rows - 1); v++)
        for (int u = MAX (i - 1, 0); u <= MIN (i + 1, grid->columns - 1); u++)
          if (!isnan (*sq_grid_at (before, u, v))) {
            sum += *sq_grid_at (before, u, v);
            found++;
          }
      if (found > 0)
        *sq_grid_at (grid, i, j) = sum / found;
    }
}
