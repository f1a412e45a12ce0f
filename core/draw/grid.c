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

static double
value_or_nan (const SqGrid *grid, int i, int j)
{
  if (i < 0 || j < 0 || i >= grid->columns || j >= grid->rows)
    return NAN;
  return *sq_grid_at (grid, i, j);
}

/* The mean of what the four directions say that have two values in line: on as before, so that
 * lines keep their course; no further than one step. NAN where none has. */
static double
carried_on (const SqGrid *grid, int i, int j)
{
  static const int ways[4][2] = { { 1, 0 }, { -1, 0 }, { 0, 1 }, { 0, -1 } };
  const double most_step = 1.0;
  double sum = 0.0;
  int found = 0;
  for (int way = 0; way < 4; way++) {
    int di = ways[way][0], dj = ways[way][1];
    double near = value_or_nan (grid, i + di, j + dj);
    double far = value_or_nan (grid, i + 2 * di, j + 2 * dj);
    if (isnan (near) || isnan (far))
      continue;
    sum += near + CLAMP (near - far, -most_step, most_step);
    found++;
  }
  return found > 0 ? sum / found : NAN;
}

static double
mean_around (const SqGrid *grid, int i, int j)
{
  double sum = 0.0;
  int found = 0;
  for (int v = j - 1; v <= j + 1; v++)
    for (int u = i - 1; u <= i + 1; u++)
      if (!isnan (value_or_nan (grid, u, v))) {
        sum += value_or_nan (grid, u, v);
        found++;
      }
  return found > 0 ? sum / found : NAN;
}

void
sq_grid_grow (SqGrid *grid)
{
  g_autoptr (SqGrid) before = sq_grid_copy (grid);
  for (int j = 0; j < grid->rows; j++)
    for (int i = 0; i < grid->columns; i++) {
      if (!isnan (*sq_grid_at (before, i, j)))
        continue;
      double value = carried_on (before, i, j);
      *sq_grid_at (grid, i, j) = isnan (value) ? mean_around (before, i, j) : value;
    }
}
