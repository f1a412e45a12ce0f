/* lamp-rows-quick.c: one lamp's light over rows of a receiver grid, for the eye
 *
 * All of the lamp's light, by fewer places and in single precision, times the share of its face
 * that is open: along lines over the face that it shows. Edges of a lamp that is small against the
 * grid's step are slopes over a cell and a half, so that sharp shadows come out smooth. */
#include "light/open-share.h"
#include "light/row-stretches.h"

#include <float.h>

/* Places about a point, a side. */
#define SIDE 4
/* So few dark columns do not end a run of others. */
#define SHORT_GAP 8

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

/* A ball or a tube, by the face that it turns towards @columns. Returns: FALSE if none is turned
 * there */
static gboolean
share_of_turned (const SqLampRows *rows,
                 SqTurnedFace *face,
                 const SqStretch *stretch,
                 int row,
                 SqSpan columns,
                 SqRowScratch *scratch)
{
  if (!face->is_there)
    return FALSE;
  for (guint i = 0; i < stretch->n_between; i++)
    scratch->shadows[i] =
      sq_turned_face_shadow (face, scratch->which[i], scratch->between[i], &rows->receivers->grid);
  share_of_lines (rows, &face->lines, (const SqFastShadow *const *)scratch->shadows,
                  stretch->n_between, row, columns, &scratch->quick);
  return TRUE;
}

/* Right beside the lamp, where the middle of the tile is in it. */
static void
share_of_turned_alone (
  const SqLampRows *rows, const SqStretch *stretch, int row, int column, SqRowScratch *scratch)
{
  SqTurnedFace face = { 0 };
  sq_turned_face_make (&face, rows->lamp, &rows->receivers->grid, column, row, rows->shades->len);
  if (!share_of_turned (rows, &face, stretch, row, (SqSpan){ column, column + 1 }, scratch))
    scratch->quick.share[column] = 0.0f;
  sq_turned_face_clear (&face);
}

static void
share_past_lines (const SqLampRows *rows, const SqStretch *stretch, int row, SqRowScratch *scratch)
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
    int tile = i / SQ_TURNED_TILE;
    SqTurnedFace *face = &scratch->turned[tile];
    end = MIN ((tile + 1) * SQ_TURNED_TILE, to);
    if (!face->made)
      sq_turned_face_make (
        face, rows->lamp, &rows->receivers->grid, tile * SQ_TURNED_TILE + SQ_TURNED_TILE / 2,
        row / SQ_TURNED_TILE * SQ_TURNED_TILE + SQ_TURNED_TILE / 2, rows->shades->len);
    if (share_of_turned (rows, face, stretch, row, (SqSpan){ i, end }, scratch))
      continue;
    for (int column = i; column < end; column++)
      share_of_turned_alone (rows, stretch, row, column, scratch);
  }
}

/* Takes nets that are before all of the lamp out of @stretch. Returns: what comes through them */
static float
take_out_whole (SqStretch *stretch, SqRowScratch *scratch)
{
  float passes = 1.0f;
  guint n = 0;
  for (guint i = 0; i < stretch->n_between; i++) {
    if (scratch->whole[i]) {
      passes *= (float)scratch->between[i]->passes;
      continue;
    }
    scratch->which[n] = scratch->which[i];
    scratch->between[n++] = scratch->between[i];
  }
  stretch->n_between = n;
  return passes;
}

static void
find_share (const SqLampRows *rows, SqStretch *stretch, int row, SqRowScratch *scratch)
{
  if (!stretch->some) {
    share_alike (stretch, scratch);
    return;
  }
  float passes = take_out_whole (stretch, scratch);
  if (rows->lines)
    share_past_lines (rows, stretch, row, scratch);
  else
    share_without_lines (rows, stretch, row, scratch);
  for (int i = stretch->columns.from; passes < 1.0f && i < stretch->columns.to; i++)
    scratch->quick.share[i] *= passes;
}

/* All of the lamp's light, then what is open of it where it is not all. */
static void
light_run (const SqLampRows *rows, SqSpan run, SqRowScratch *scratch, float *lux)
{
  const SqQuickRow *quick = &scratch->quick;
  const SqQuickReceptors receptors = {
    .x_m = quick->x + run.from,
    .y_m = quick->y + run.from,
    .z_m = quick->z + run.from,
    .nx = quick->nx + run.from,
    .ny = quick->ny + run.from,
    .nz = quick->nz + run.from,
  };
  if (run.from < run.to)
    sq_whole_face_find_quick (rows->whole, sq_quick_face_kernel_best (), &receptors,
                              (gsize)(run.to - run.from), lux + run.from);
  for (guint k = 0; k < scratch->n_dimmed; k++)
    for (int i = scratch->dimmed[k].from; i < scratch->dimmed[k].to; i++)
      lux[i] *= quick->share[i];
  scratch->n_dimmed = 0;
}

static void
darken (float *lux, int from, int to)
{
  for (int i = from; i < to; i++)
    lux[i] = 0.0f;
}

/* A few columns in the dark are lit with the others, for nothing: fewer calls do more. */
static void
light_row (const SqLampRows *rows, int row, SqSpan lit, SqRowScratch *scratch, float *lux)
{
  SqSpan run = { lit.from, lit.from };
  while (lit.from < lit.to) {
    SqStretch stretch = sq_stretch_at (lit, scratch);
    SqSpan columns = stretch.columns;
    lit.from = columns.to;
    if (stretch.dark && columns.to - columns.from > SHORT_GAP) {
      light_run (rows, run, scratch, lux);
      darken (lux, columns.from, columns.to);
      run = (SqSpan){ columns.to, columns.to };
      continue;
    }
    run.to = columns.to;
    if (stretch.dark || stretch.n_between > 0) {
      find_share (rows, &stretch, row, scratch);
      scratch->dimmed[scratch->n_dimmed++] = columns;
    }
  }
  light_run (rows, run, scratch, lux);
}

static void
forget_turned (SqRowScratch *scratch)
{
  for (guint i = 0; i < scratch->n_turned; i++)
    sq_turned_face_forget (&scratch->turned[i]);
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
  forget_turned (scratch);
  for (int line = 0; line < n_rows; line++, lux += columns) {
    SqSpan wanted = only ? only[line] : (SqSpan){ 0, columns };
    if ((first_row + line) % SQ_TURNED_TILE == 0) /* of a row that nobody wants too */
      forget_turned (scratch);
    if (wanted.from >= wanted.to)
      continue;
    SqSpan lit = sq_stretches_of_row (rows, line, wanted, scratch);
    darken (lux, wanted.from, lit.from);
    darken (lux, lit.to, wanted.to);
    set_row (rows, first_row + line, lit, &scratch->quick);
    light_row (rows, first_row + line, lit, scratch, lux);
  }
}
