/* row-stretches.c: columns of a row over which the same solids hide some of a lamp, or all of it */
#include "light/row-stretches.h"

static const SqObstacle *
obstacle_of (const SqLampRows *rows, guint k)
{
  const SqShade *shade = &g_array_index (rows->shades, SqShade, k);
  const GArray *list = k < rows->n_doors ? rows->lamp->doors : rows->obstacles;
  return &g_array_index (list, SqObstacle, shade->index);
}

static gboolean
holds (const SqSpan *span, int column)
{
  return column >= span->from && column < span->to;
}

/* The next of the four borders past @column, at most @next. */
static int
border_after (const SqSpan *some, const SqSpan *all, int column, int next)
{
  const int borders[] = { some->from, some->to, all->from, all->to };
  for (gsize i = 0; i < G_N_ELEMENTS (borders); i++)
    if (borders[i] > column && borders[i] < next)
      next = borders[i];
  return next;
}

SqStretch
sq_stretch_at (const SqLampRows *rows, int line, SqSpan columns, SqRowScratch *scratch)
{
  SqStretch stretch = { .columns = columns };
  int column = columns.from;
  for (guint a = 0; a < scratch->n_active; a++) {
    guint k = scratch->active[a];
    const SqSpan *some = &scratch->some[k * SQ_BLOCK_ROWS + line];
    const SqSpan *all = &scratch->all[k * SQ_BLOCK_ROWS + line];
    stretch.columns.to = border_after (some, all, column, stretch.columns.to);
    if (!holds (some, column))
      continue;
    const SqObstacle *obstacle = obstacle_of (rows, k);
    gboolean whole = holds (all, column);
    if (whole && obstacle->passes <= 0.0)
      return (SqStretch){ .columns = { column, MIN (all->to, columns.to) }, .dark = TRUE };
    scratch->which[stretch.n_between] = k;
    scratch->between[stretch.n_between++] = obstacle;
    stretch.some = stretch.some || !whole;
  }
  return stretch;
}

/* Of the shades, those that reach into @columns in this row. */
static void
find_active (guint n_shades, int line, SqSpan columns, SqRowScratch *scratch)
{
  scratch->n_active = 0;
  for (guint k = 0; k < n_shades; k++) {
    const SqSpan *some = &scratch->some[k * SQ_BLOCK_ROWS + line];
    if (some->from < some->to && some->from < columns.to && some->to > columns.from)
      scratch->active[scratch->n_active++] = k;
  }
}

void
sq_stretches_of_block (const SqLampRows *rows, int first_row, int n_rows, SqRowScratch *scratch)
{
  const SqReceiverGrid *grid = &rows->receivers->grid;
  sq_row_scratch_fit (scratch, rows->shades->len, (guint)grid->columns);
  for (guint k = 0; k < rows->shades->len; k++) {
    const SqShade *shade = &g_array_index (rows->shades, SqShade, k);
    SqSpan *some = scratch->some + k * SQ_BLOCK_ROWS, *all = scratch->all + k * SQ_BLOCK_ROWS;
    if (sq_region_spans (&shade->some, grid, first_row, n_rows, some))
      sq_region_spans (&shade->all, grid, first_row, n_rows, all);
  }
  sq_region_spans (&rows->lit, grid, first_row, n_rows, scratch->lit);
}

SqSpan
sq_stretches_of_row (const SqLampRows *rows, int line, SqSpan wanted, SqRowScratch *scratch)
{
  SqSpan lit = { CLAMP (scratch->lit[line].from, wanted.from, wanted.to),
                 CLAMP (scratch->lit[line].to, wanted.from, wanted.to) };
  if (lit.from >= lit.to)
    return (SqSpan){ wanted.to, wanted.to };
  find_active (rows->shades->len, line, lit, scratch);
  return lit;
}

SqVector
sq_row_normal (const SqLampRows *rows, SqPoint at)
{
  switch (rows->receivers->normal) {
  case SQ_NORMAL_SQUARE:
    return sq_vector_unit (sq_vector_between (at, rows->lamp->fixture->at));
  case SQ_NORMAL_CAMERA:
    if (!sq_point_given (rows->receivers->camera))
      return sq_vector (0, -1, 0);
    return sq_vector_unit (sq_vector_between (at, rows->receivers->camera));
  case SQ_NORMAL_UP:
  default:
    return sq_vector (0, 0, 1);
  }
}
