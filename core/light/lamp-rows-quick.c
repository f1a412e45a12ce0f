/* lamp-rows-quick.c: one lamp's light over rows of a receiver grid, for the eye
 *
 * All of the lamp's light, by fewer places and in single precision, times the share of its face
 * that is open: along lines over a flat face; of a lamp that is small against the grid's step, its
 * middle as seen from several places about the point, so that sharp edges come out smooth. What is
 * neither, or crowded, is done exactly. */
#include "light/lamp-light.h"
#include "light/open-share.h"
#include "light/row-stretches.h"

/* Places about a point, a side. */
#define SIDE 4
/* Solids before a face that its lines are asked about. */
#define MOST_SHADOWS 12

static void
set_receptors (const SqLampRows *rows, int row, SqSpan columns, SqRowScratch *scratch)
{
  const SqReceiverGrid *grid = &rows->receivers->grid;
  SqQuickRow *quick = &scratch->quick;
  for (int column = columns.from; column < columns.to; column++) {
    quick->x[column] = (float)(column * grid->step_m);
    quick->y[column] = (float)(row * grid->step_m);
    quick->z[column] = 0.0f;
  }
  if (rows->receivers->normal == SQ_NORMAL_UP) {
    for (int column = columns.from; column < columns.to; column++) {
      quick->nx[column] = quick->ny[column] = 0.0f;
      quick->nz[column] = 1.0f;
    }
    return;
  }
  for (int column = columns.from; column < columns.to; column++) {
    SqVector normal = sq_row_normal (rows, sq_receiver_point (grid, column, row));
    quick->nx[column] = (float)normal.x;
    quick->ny[column] = (float)normal.y;
    quick->nz[column] = (float)normal.z;
  }
}

/* How much of the lamp's middle is seen from about a point. */
static float
share_about (const SqLampRows *rows, SqPoint at, guint n_between, SqRowScratch *scratch)
{
  double step_m = rows->receivers->grid.step_m / SIDE, sum = 0.0;
  const SqFacePlane middle = {
    .middle = rows->lamp->fixture->at,
    .right = rows->lamp->frame.right,
    .up = rows->lamp->frame.up,
  };
  for (int i = 0; i < SIDE * SIDE; i++) {
    SqPoint from = sq_point (at.x_m + (i % SIDE - (SIDE - 1) / 2.0) * step_m,
                             at.y_m + (i / SIDE - (SIDE - 1) / 2.0) * step_m, at.z_m);
    sq_sight_see (&scratch->sight, &middle, from, scratch->between, n_between, NULL);
    sum += scratch->sight.whole ? scratch->sight.passes : 0.0;
  }
  return (float)(sum / (SIDE * SIDE));
}

static void
share_of_lines (
  const SqLampRows *rows, const SqStretch *stretch, int row, SqRowScratch *scratch, float *share)
{
  int from = stretch->columns.from;
  const SqQuickRow *quick = &scratch->quick;
  gboolean up = rows->receivers->normal == SQ_NORMAL_UP;
  const SqFastShadow *shadows[MOST_SHADOWS];
  const SqRowReads reads = {
    .normal = { 0.0, 0.0, 1.0 },
    .normal_x = up ? NULL : quick->nx + from,
    .normal_y = up ? NULL : quick->ny + from,
    .normal_z = up ? NULL : quick->nz + from,
  };
  for (guint i = 0; i < stretch->n_between; i++)
    shadows[i] = &g_array_index (rows->shadows, SqFastShadow, scratch->which[i]);
  sq_open_shares (rows->lines, shadows, stretch->n_between, &rows->receivers->grid, &reads, row,
                  from, stretch->columns.to, share + from);
}

static float
exact_lux (const SqLampRows *rows, int row, int column, guint n_between, SqRowScratch *scratch)
{
  SqReceptor receptor = { .at = sq_receiver_point (&rows->receivers->grid, column, row) };
  receptor.normal = sq_row_normal (rows, receptor.at);
  sq_lamp_see (rows->lamp, receptor.at, scratch->between, n_between, NULL, &scratch->sight);
  return (float)sq_lamp_unit_lux (rows->lamp, &receptor, &scratch->sight);
}

static void
light (const SqLampRows *rows, const SqStretch *stretch, int row, SqRowScratch *scratch, float *lux)
{
  int from = stretch->columns.from, to = stretch->columns.to;
  const SqQuickRow *quick = &scratch->quick;
  const SqQuickReceptors receptors = {
    .x_m = quick->x + from,
    .y_m = quick->y + from,
    .z_m = quick->z + from,
    .nx = quick->nx + from,
    .ny = quick->ny + from,
    .nz = quick->nz + from,
  };
  gboolean lines = rows->lines && stretch->n_between <= MOST_SHADOWS;
  if (stretch->some && !lines && !rows->small) {
    for (int i = from; i < to; i++)
      lux[i] = exact_lux (rows, row, i, stretch->n_between, scratch);
    return;
  }
  sq_whole_face_find_quick (rows->whole, sq_quick_face_kernel_best (), &receptors,
                            (gsize)(to - from), lux + from);
  if (!stretch->some) {
    float passes = 1.0f;
    for (guint i = 0; i < stretch->n_between; i++)
      passes *= (float)scratch->between[i]->passes;
    for (int i = from; i < to && stretch->n_between > 0; i++)
      lux[i] *= passes;
    return;
  }
  if (rows->small)
    for (int i = from; i < to; i++)
      quick->share[i] = share_about (rows, sq_receiver_point (&rows->receivers->grid, i, row),
                                     stretch->n_between, scratch);
  else
    share_of_lines (rows, stretch, row, scratch, quick->share);
  for (int i = from; i < to; i++)
    lux[i] *= quick->share[i];
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
  for (int line = 0; line < n_rows; line++, lux += columns) {
    SqSpan wanted = only ? only[line] : (SqSpan){ 0, columns };
    if (wanted.from >= wanted.to)
      continue;
    SqSpan lit = sq_stretches_of_row (rows, line, wanted, scratch);
    darken (lux, wanted.from, lit.from);
    darken (lux, lit.to, wanted.to);
    set_receptors (rows, first_row + line, lit, scratch);
    while (lit.from < lit.to) {
      SqStretch stretch = sq_stretch_at (rows, line, lit, scratch);
      if (stretch.dark)
        darken (lux, stretch.columns.from, stretch.columns.to);
      else
        light (rows, &stretch, first_row + line, scratch, lux);
      lit.from = stretch.columns.to;
    }
  }
}
