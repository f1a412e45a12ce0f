/* lamp-rows-quick.c: one lamp's light over rows of a receiver grid, for the eye
 *
 * All of the lamp's light, by fewer places and in single precision, times the share of its face
 * that is open: along lines over the face that it shows. Edges of a lamp that is small against the
 * grid's step are slopes over a cell and a half, so that sharp shadows come out smooth. */
#include "light/face-light.h"
#include "light/open-share.h"
#include "light/row-stretches.h"

#include <float.h>

/* Places about a point, a side. */
#define SIDE 4
/* A lamp that turns to whoever looks is turned anew after so many columns, and past so many solids
 * the others are not asked. */
#define TURNED_COLUMNS 16
#define MOST_SHADOWS 32
/* So few columns, dark or open, do not end a run of others. */
#define SHORT_GAP 8
/* Solids that the lines are asked about together. */
#define MOST_TOGETHER 8

/* What all rows of a block have in common: all but y, where receivers look up. */
static void
set_columns (const SqLampRows *rows, SqQuickRow *quick)
{
  const SqReceiverGrid *grid = &rows->receivers->grid;
  for (int column = 0; column < grid->columns; column++) {
    quick->x[column] = (float)(column * grid->step_m);
    quick->z[column] = quick->nx[column] = quick->ny[column] = 0.0f;
    quick->nz[column] = 1.0f;
  }
}

static void
set_row (const SqLampRows *rows, int row, SqSpan columns, SqQuickRow *quick)
{
  const SqReceiverGrid *grid = &rows->receivers->grid;
  float y = (float)(row * grid->step_m);
  for (int column = columns.from; column < columns.to; column++)
    quick->y[column] = y;
  if (rows->receivers->normal == SQ_NORMAL_UP)
    return;
  for (int column = columns.from; column < columns.to; column++) {
    SqVector normal = sq_row_normal (rows, sq_receiver_point (grid, column, row));
    quick->nx[column] = (float)normal.x;
    quick->ny[column] = (float)normal.y;
    quick->nz[column] = (float)normal.z;
  }
}

/* How far a point is past the region's nearest border, in steps; less than 0: inside. */
static double
past_border (const SqRegion *region, int row, int column)
{
  double most = -INFINITY;
  for (guint k = 0; k < region->n_planes; k++) {
    const SqHalfPlane *plane = &region->planes[k];
    most = MAX (most, plane->constant + plane->by_row * row + plane->by_column * column);
  }
  return most;
}

/* What a solid leaves of a small lamp at a point near its shadow's edge: from all to nothing over
 * the cell and a half by which its regions are on the safe side. */
static double
share_at_edge (const SqShade *shade, double passes, int row, int column)
{
  double open = MAX (-past_border (&shade->some, row, column), 0.0);
  double hidden = 1.0 - passes;
  if (sq_region_is_empty (&shade->all)) /* the shadow is smaller than that */
    return 1.0 - hidden * MIN (open / (2.0 * SQ_SAFE_SMALL), 1.0);
  double dark = MAX (past_border (&shade->all, row, column), 0.0);
  return 1.0 - hidden * open / MAX (dark + open, FLT_MIN);
}

/* Shadows of several solids mostly join: what they hide adds up. */
static float
share_at_edges (const SqLampRows *rows, int row, int column, guint n, const SqRowScratch *scratch)
{
  double share = 1.0;
  for (guint i = 0; i < n; i++) {
    const SqShade *shade = &g_array_index (rows->shades, SqShade, scratch->which[i]);
    double passes = scratch->between[i]->passes;
    if (passes > 0.0)
      share *= share_at_edge (shade, passes, row, column);
    else
      share -= 1.0 - share_at_edge (shade, 0.0, row, column);
  }
  return (float)MAX (share, 0.0);
}

static void
share_of_lines (const SqLampRows *rows,
                const SqFaceLines *lines,
                const SqFastShadow *const *shadows,
                guint n,
                int row,
                SqSpan columns,
                SqQuickRow *quick)
{
  int from = columns.from;
  gboolean up = rows->receivers->normal == SQ_NORMAL_UP;
  const SqRowReads reads = {
    .normal = { 0.0, 0.0, 1.0 },
    .normal_x = up ? NULL : quick->nx + from,
    .normal_y = up ? NULL : quick->ny + from,
    .normal_z = up ? NULL : quick->nz + from,
  };
  sq_open_shares (lines, shadows, n, &rows->receivers->grid, &reads, row, from, columns.to,
                  quick->share + from);
}

/* A ball or a tube: the face that it turns to the column @middle, for all of @columns. Returns:
 * FALSE if none is turned there: that point is in the lamp */
static gboolean
share_of_turned (const SqLampRows *rows,
                 const SqStretch *stretch,
                 int row,
                 int middle,
                 SqSpan columns,
                 SqRowScratch *scratch)
{
  const SqReceiverGrid *grid = &rows->receivers->grid;
  SqFacePlane face;
  SqFaceLines lines;
  SqFastShadow shadows[MOST_SHADOWS];
  const SqFastShadow *list[MOST_SHADOWS];
  guint n = MIN (stretch->n_between, MOST_SHADOWS);
  if (!sq_lamp_face_toward (rows->lamp, sq_receiver_point (grid, middle, row), &face))
    return FALSE;
  sq_face_lines_init (&lines, face.middle, sq_vector_scale (face.right, face.half_right_m),
                      sq_vector_scale (face.up, face.half_up_m), face.round);
  for (guint i = 0; i < n; i++) {
    const SqObstacle *obstacle = scratch->between[i];
    sq_fast_shadow_init (&shadows[i], &lines, &obstacle->solid, obstacle->passes, grid);
    list[i] = &shadows[i];
  }
  share_of_lines (rows, &lines, list, n, row, columns, &scratch->quick);
  for (guint i = 0; i < n; i++)
    sq_fast_shadow_clear (&shadows[i]);
  return TRUE;
}

/* Columns that are asked of the lines together: a call for a few columns costs as much as one for
 * many, so stretches with different solids before them go together, and short ones with none. */
typedef struct {
  SqSpan columns;
  guint n;
  guint which[MOST_TOGETHER];
  const SqFastShadow *shadows[MOST_TOGETHER];
} Together;

static void
ask_lines (const SqLampRows *rows, Together *together, int row, SqQuickRow *quick)
{
  if (together->columns.from < together->columns.to)
    share_of_lines (rows, rows->lines, together->shadows, together->n, row, together->columns,
                    quick);
  *together = (Together){ 0 };
}

/* Returns: FALSE if there is no room for all that stands before this stretch */
static gboolean
join (const SqLampRows *rows, Together *together, const SqStretch *stretch, const guint *which)
{
  guint before = together->n;
  for (guint i = 0; i < stretch->n_between; i++) {
    guint k = 0;
    while (k < together->n && together->which[k] != which[i])
      k++;
    if (k < together->n)
      continue;
    if (k == MOST_TOGETHER) {
      together->n = before;
      return FALSE;
    }
    together->which[k] = which[i];
    together->shadows[k] = &g_array_index (rows->shadows, SqFastShadow, which[i]);
    together->n++;
  }
  if (together->columns.from >= together->columns.to)
    together->columns.from = stretch->columns.from;
  together->columns.to = stretch->columns.to;
  return TRUE;
}

static void
share_past_many (const SqLampRows *rows, const SqStretch *stretch, int row, SqRowScratch *scratch)
{
  for (guint i = 0; i < stretch->n_between; i++)
    scratch->shadows[i] = &g_array_index (rows->shadows, SqFastShadow, scratch->which[i]);
  share_of_lines (rows, rows->lines, (const SqFastShadow *const *)scratch->shadows,
                  stretch->n_between, row, stretch->columns, &scratch->quick);
}

static void
share_alike (const SqStretch *stretch, SqRowScratch *scratch)
{
  float passes = stretch->dark ? 0.0f : 1.0f;
  for (guint i = 0; i < stretch->n_between; i++)
    passes *= (float)scratch->between[i]->passes;
  for (int i = stretch->columns.from; i < stretch->columns.to; i++)
    scratch->quick.share[i] = passes;
}

static void
share_without_lines (const SqLampRows *rows,
                     const SqStretch *stretch,
                     int row,
                     SqRowScratch *scratch)
{
  int from = stretch->columns.from, to = stretch->columns.to;
  if (rows->small) {
    for (int i = from; i < to; i++)
      scratch->quick.share[i] = share_at_edges (rows, row, i, stretch->n_between, scratch);
    return;
  }
  for (int i = from, end; i < to; i = end) {
    /* Which columns go together does not depend on the stretch. */
    int group = i / TURNED_COLUMNS * TURNED_COLUMNS;
    end = MIN (group + TURNED_COLUMNS, to);
    if (share_of_turned (rows, stretch, row, group + TURNED_COLUMNS / 2, (SqSpan){ i, end },
                         scratch))
      continue;
    for (int column = i; column < end; column++)
      if (!share_of_turned (rows, stretch, row, column, (SqSpan){ column, column + 1 }, scratch))
        scratch->quick.share[column] = 0.0f;
  }
}

/* How much of the lamp is open from each point of a row. @line: of the row within its block */
static void
find_shares (const SqLampRows *rows, int line, int row, SqSpan lit, SqRowScratch *scratch)
{
  Together together = { 0 };
  while (lit.from < lit.to) {
    SqStretch stretch = sq_stretch_at (rows, line, lit, scratch);
    gboolean nothing = !stretch.some && !stretch.dark && stretch.n_between == 0;
    lit.from = stretch.columns.to;
    if (stretch.some && rows->lines) {
      if (!join (rows, &together, &stretch, scratch->which)) {
        ask_lines (rows, &together, row, &scratch->quick);
        if (!join (rows, &together, &stretch, scratch->which))
          share_past_many (rows, &stretch, row, scratch);
      }
      continue;
    }
    gboolean is_short = stretch.columns.to - stretch.columns.from <= SHORT_GAP;
    if (nothing && is_short && together.n > 0) {
      together.columns.to = stretch.columns.to;
      continue;
    }
    ask_lines (rows, &together, row, &scratch->quick);
    if (stretch.some)
      share_without_lines (rows, &stretch, row, scratch);
    else
      share_alike (&stretch, scratch);
  }
  ask_lines (rows, &together, row, &scratch->quick);
}

/* All of the lamp's light times what is open of it: over runs of columns, so that few calls do
 * much; short dark gaps are not worth a call more. */
static void
light (const SqLampRows *rows, SqSpan lit, SqQuickRow *quick, float *lux)
{
  for (int from = lit.from; from < lit.to;) {
    int to = from, last = from;
    for (; to < lit.to && to - last <= SHORT_GAP; to++)
      last = quick->share[to] > 0.0f ? to + 1 : last;
    const SqQuickReceptors receptors = {
      .x_m = quick->x + from,
      .y_m = quick->y + from,
      .z_m = quick->z + from,
      .nx = quick->nx + from,
      .ny = quick->ny + from,
      .nz = quick->nz + from,
    };
    if (last > from)
      sq_whole_face_find_quick (rows->whole, sq_quick_face_kernel_best (), &receptors,
                                (gsize)(last - from), lux + from);
    for (int i = from; i < last; i++)
      lux[i] *= quick->share[i];
    for (int i = last; i < to; i++)
      lux[i] = 0.0f;
    from = to;
  }
}

static void
darken (float *lux, int from, int to)
{
  for (int i = from; i < to; i++)
    lux[i] = 0.0f;
}

void
sq_lamp_rows_quick (const SqLampRows *rows,
                    int first_row,
                    int n_rows,
                    const SqSpan *only,
                    SqRowScratch *scratch,
                    float *lux)
{
  int columns = rows->receivers->grid.columns;
  sq_stretches_of_block (rows, first_row, n_rows, scratch);
  set_columns (rows, &scratch->quick);
  for (int line = 0; line < n_rows; line++, lux += columns) {
    SqSpan wanted = only ? only[line] : (SqSpan){ 0, columns };
    if (wanted.from >= wanted.to)
      continue;
    SqSpan lit = sq_stretches_of_row (rows, line, wanted, scratch);
    darken (lux, wanted.from, lit.from);
    darken (lux, lit.to, wanted.to);
    set_row (rows, first_row + line, lit, &scratch->quick);
    find_shares (rows, line, first_row + line, lit, scratch);
    light (rows, lit, &scratch->quick, lux);
  }
}
