/* tiles.c: windows of a plan that overlap, and the lines where they meet */
#include "paper/tiles.h"

static double
step_x_mm (const SqTiling *tiling)
{
  return tiling->width_mm - SQ_TILE_OVERLAP_MM;
}

static double
step_y_mm (const SqTiling *tiling)
{
  return tiling->height_mm - SQ_TILE_OVERLAP_MM;
}

SqPaperBox
sq_tiling_whole (const SqTiling *tiling)
{
  return (SqPaperBox){ 0.0, 0.0, (tiling->columns - 1) * step_x_mm (tiling) + tiling->width_mm,
                       (tiling->rows - 1) * step_y_mm (tiling) + tiling->height_mm };
}

guint
sq_tiling_sheets (const SqTiling *tiling)
{
  return sq_tiling_rank (tiling, sq_tiling_count (tiling));
}

guint
sq_tiling_nth (const SqTiling *tiling, guint k)
{
  guint n = 0;
  while (n < sq_tiling_count (tiling) && !(sq_tiling_has (tiling, n) && k-- == 0))
    n++;
  return n;
}

guint
sq_tiling_rank (const SqTiling *tiling, guint n)
{
  guint rank = 0;
  for (guint k = 0; k < n; k++)
    rank += sq_tiling_has (tiling, k);
  return rank;
}

SqPaperBox
sq_tiling_window (const SqTiling *tiling, guint n)
{
  guint column = n % tiling->columns, row = n / tiling->columns;
  return (SqPaperBox){ column * step_x_mm (tiling), row * step_y_mm (tiling), tiling->width_mm,
                       tiling->height_mm };
}

SqPaperBox
sq_tiling_own (const SqTiling *tiling, guint n)
{
  const double half_mm = SQ_TILE_OVERLAP_MM / 2.0;
  SqPaperBox box = sq_tiling_window (tiling, n);
  if (sq_tiling_neighbour (tiling, n, -1, 0) >= 0) {
    box.x_mm += half_mm;
    box.width_mm -= half_mm;
  }
  if (sq_tiling_neighbour (tiling, n, 1, 0) >= 0)
    box.width_mm -= half_mm;
  if (sq_tiling_neighbour (tiling, n, 0, -1) >= 0) {
    box.y_mm += half_mm;
    box.height_mm -= half_mm;
  }
  if (sq_tiling_neighbour (tiling, n, 0, 1) >= 0)
    box.height_mm -= half_mm;
  return box;
}

GArray *
sq_tiling_match_lines (const SqTiling *tiling)
{
  const double half_mm = SQ_TILE_OVERLAP_MM / 2.0;
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (SqPaperLine));
  SqPaperBox whole = sq_tiling_whole (tiling);
  for (guint k = 1; k < tiling->columns; k++) {
    double x_mm = k * step_x_mm (tiling) + half_mm;
    SqPaperLine line = { { x_mm, 0.0 }, { x_mm, whole.height_mm } };
    g_array_append_val (lines, line);
  }
  for (guint k = 1; k < tiling->rows; k++) {
    double y_mm = k * step_y_mm (tiling) + half_mm;
    SqPaperLine line = { { 0.0, y_mm }, { whole.width_mm, y_mm } };
    g_array_append_val (lines, line);
  }
  return lines;
}

int
sq_tiling_neighbour (const SqTiling *tiling, guint n, int right, int down)
{
  int column = (int)(n % tiling->columns) + right, row = (int)(n / tiling->columns) + down;
  if (column < 0 || row < 0 || column >= (int)tiling->columns || row >= (int)tiling->rows)
    return -1;
  int beside = row * (int)tiling->columns + column;
  return sq_tiling_has (tiling, (guint)beside) ? beside : -1;
}
