/* row-scratch.h: what a thread needs to light rows, used over and over */
#pragma once

#include "light/region.h"
#include "light/sight.h"
#include "light/turned-face.h"

G_BEGIN_DECLS

/* A row of receivers in single precision, counted from the grid's first point. */
typedef struct {
  float *x, *y, *z, *nx, *ny, *nz, *share;
} SqQuickRow;

/* What a solid hides of a row: some of the lamp, and all of it. */
typedef struct {
  SqSpan some, all;
  guint number; /* of the shade */
  const SqObstacle *obstacle;
} SqRowShade;

typedef struct {
  SqSight sight;
  guint n_shades, n_columns; /* what there is room for */
  SqSpan *some, *all;        /* n_shades × SQ_BLOCK_ROWS */
  SqSpan lit[SQ_BLOCK_ROWS];
  /* Of the row: those that reach into it, by where they begin, and which comes next; those that the
   * last stretch had; n_shades. */
  SqRowShade *coming, *here;
  guint n_coming, next, n_here;
  gboolean *whole;                  /* n_shades */
  guint *which;                     /* n_shades */
  const void **shadows;             /* n_shades */
  const SqObstacle **between;       /* n_shades */
  double *x, *y, *z, *nx, *ny, *nz; /* n_columns each */
  SqQuickRow quick;
  SqSpan *dimmed; /* n_columns: columns of the row that quick.share is for */
  guint n_dimmed;
  SqTurnedFace *turned; /* of the tiles that the row is in */
  guint n_turned;
} SqRowScratch;

SqRowScratch *sq_row_scratch_new (void);
void sq_row_scratch_free (SqRowScratch *scratch);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqRowScratch, sq_row_scratch_free)

/* Makes room for @n_shades and @n_columns, at least. */
void sq_row_scratch_fit (SqRowScratch *scratch, guint n_shades, guint n_columns);

G_END_DECLS
