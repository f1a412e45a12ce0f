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
holds (SqSpan span, int column)
{
  return column >= span.from && column < span.to;
}

/* Shades that begin at or before @column come in, in the order of their numbers; those that end
 * there go. */
static void
step_to (SqRowScratch *scratch, int column)
{
  guint n = 0;
  for (guint i = 0; i < scratch->n_here; i++)
    if (scratch->here[i].some.to > column)
      scratch->here[n++] = scratch->here[i];
  for (; scratch->next < scratch->n_coming; scratch->next++) {
    const SqRowShade *shade = &scratch->coming[scratch->next];
    guint at = n;
    if (shade->some.from > column)
      break;
    if (shade->some.to <= column)
      continue;
    for (; at > 0 && scratch->here[at - 1].number > shade->number; at--)
      scratch->here[at] = scratch->here[at - 1];
    scratch->here[at] = *shade;
    n++;
  }
  scratch->n_here = n;
}

/* The first border past @column, at most @to. */
static int
next_border (const SqRowScratch *scratch, int column, int to)
{
  if (scratch->next < scratch->n_coming)
    to = MIN (to, scratch->coming[scratch->next].some.from);
  for (guint i = 0; i < scratch->n_here; i++) {
    const SqRowShade *shade = &scratch->here[i];
    to = MIN (to, shade->some.to);
    if (shade->all.from > column)
      to = MIN (to, shade->all.from);
    else if (shade->all.to > column)
      to = MIN (to, shade->all.to);
  }
  return to;
}

SqStretch
sq_stretch_at (SqSpan columns, SqRowScratch *scratch)
{
  int column = columns.from;
  step_to (scratch, column);
  SqStretch stretch = { .columns = { column, next_border (scratch, column, columns.to) } };
  for (guint i = 0; i < scratch->n_here; i++) {
    const SqRowShade *shade = &scratch->here[i];
    gboolean whole = holds (shade->all, column);
    if (whole && shade->obstacle->passes <= 0.0)
      return (SqStretch){ .columns = { column, MIN (shade->all.to, columns.to) }, .dark = TRUE };
    scratch->which[stretch.n_between] = shade->number;
    scratch->whole[stretch.n_between] = whole;
    scratch->between[stretch.n_between++] = shade->obstacle;
    stretch.some = stretch.some || !whole;
  }
  return stretch;
}

/* Those that reach into @columns in this row, in the order in which they begin. */
static void
find_coming (const SqLampRows *rows, int line, SqSpan columns, SqRowScratch *scratch)
{
  scratch->n_coming = scratch->next = scratch->n_here = 0;
  for (guint k = 0; k < rows->shades->len; k++) {
    SqSpan some = scratch->some[k * SQ_BLOCK_ROWS + line];
    if (some.from >= some.to || some.from >= columns.to || some.to <= columns.from)
      continue;
    guint at = scratch->n_coming++;
    for (; at > 0 && scratch->coming[at - 1].some.from > some.from; at--)
      scratch->coming[at] = scratch->coming[at - 1];
    scratch->coming[at] =
      (SqRowShade){ some, scratch->all[k * SQ_BLOCK_ROWS + line], k, obstacle_of (rows, k) };
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
  find_coming (rows, line, lit, scratch);
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
