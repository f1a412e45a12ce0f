/* lamp-rows-exact.c: one lamp's light over rows of a receiver grid, in double precision
 *
 * Nothing to do where all of the lamp is hidden, nobody to ask where none of it is. */
#include "light/lamp-light.h"
#include "light/row-stretches.h"

static void
set_receptors (const SqLampRows *rows, int row, SqSpan columns, SqRowScratch *scratch)
{
  for (int column = columns.from; column < columns.to; column++) {
    SqPoint at = sq_receiver_point (&rows->receivers->grid, column, row);
    SqVector normal = sq_row_normal (rows, at);
    scratch->x[column] = at.x_m;
    scratch->y[column] = at.y_m;
    scratch->z[column] = at.z_m;
    scratch->nx[column] = normal.x;
    scratch->ny[column] = normal.y;
    scratch->nz[column] = normal.z;
  }
}

static void
light_whole (const SqLampRows *rows, const SqStretch *stretch, SqRowScratch *scratch, double *lux)
{
  int from = stretch->columns.from, n = stretch->columns.to - from;
  const SqReceptors receptors = {
    .x_m = scratch->x + from,
    .y_m = scratch->y + from,
    .z_m = scratch->z + from,
    .nx = scratch->nx + from,
    .ny = scratch->ny + from,
    .nz = scratch->nz + from,
  };
  double passes = 1.0;
  for (guint i = 0; i < stretch->n_between; i++)
    passes *= scratch->between[i]->passes;
  sq_whole_face_find (rows->whole, sq_face_kernel_best (), &receptors, (gsize)n, lux + from);
  for (int i = from; i < stretch->columns.to && stretch->n_between > 0; i++)
    lux[i] *= passes;
}

static void
light_in_part (const SqLampRows *rows, const SqStretch *stretch, SqRowScratch *scratch, double *lux)
{
  for (int i = stretch->columns.from; i < stretch->columns.to; i++) {
    const SqReceptor receptor = {
      .at = { scratch->x[i], scratch->y[i], scratch->z[i] },
      .normal = { scratch->nx[i], scratch->ny[i], scratch->nz[i] },
    };
    sq_lamp_see (rows->lamp, receptor.at, scratch->between, stretch->n_between, NULL,
                 &scratch->sight);
    lux[i] = sq_lamp_unit_lux (rows->lamp, &receptor, &scratch->sight);
  }
}

static void
darken (double *lux, int from, int to)
{
  for (int i = from; i < to; i++)
    lux[i] = 0.0;
}

void
sq_lamp_rows_exact (const SqLampRows *rows,
                    int first_row,
                    int n_rows,
                    const SqSpan *only,
                    SqRowScratch *scratch,
                    double *lux)
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
      SqStretch stretch = sq_stretch_at (lit, scratch);
      if (stretch.dark)
        darken (lux, stretch.columns.from, stretch.columns.to);
      else if (stretch.some)
        light_in_part (rows, &stretch, scratch, lux);
      else
        light_whole (rows, &stretch, scratch, lux);
      lit.from = stretch.columns.to;
    }
  }
}
