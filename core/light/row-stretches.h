/* row-stretches.h: columns of a row over which the same solids hide some of a lamp, or all of it */
#pragma once

#include "light/lamp-rows.h"

G_BEGIN_DECLS

typedef struct {
  SqSpan columns;
  /* What hides some of the lamp, or all of it and lets light through: in scratch->between, as
   * numbers of shades in scratch->which, and which of the two in scratch->whole. */
  guint n_between;
  gboolean some; /* something hides some of it */
  gboolean dark; /* something hides all of it */
} SqStretch;

/* A block of rows is begun. */
void sq_stretches_of_block (const SqLampRows *rows,
                            int first_row,
                            int n_rows,
                            SqRowScratch *scratch);

/* A row of it, number @line, is begun. Returns: of the columns @wanted, those that may get light at
 * all; none are the last ones */
SqSpan sq_stretches_of_row (const SqLampRows *rows, int line, SqSpan wanted, SqRowScratch *scratch);

/* The stretch of the row that begins at @columns.from, within @columns; each farther on than the
 * one before. */
SqStretch sq_stretch_at (SqSpan columns, SqRowScratch *scratch);

/* Which way a receiver at @at looks when the lamp is read. */
SqVector sq_row_normal (const SqLampRows *rows, SqPoint at);

G_END_DECLS
