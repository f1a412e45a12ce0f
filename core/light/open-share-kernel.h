/* open-share-kernel.h: the loops behind sq_open_shares(), once for each set of instructions */
#pragma once

#include "light/open-share.h"

G_BEGIN_DECLS

/* Columns whose planes go through the registers together, and that are looked at in one go. */
#define SQ_COLUMNS 8
#define SQ_GO_COLUMNS (4 * SQ_COLUMNS)

/* A number for each column; a number for each line. */
typedef float SqOfColumns[SQ_COLUMNS];
typedef float SqOfLines[SQ_LINES];

/* Where each line is in one solid's shadow, as seen from one column. */
typedef struct {
  SqOfLines lo, hi;
} SqOpenSpans;

/* Where a shadow begins or ends on the lines, as seen from each column: start + climb · height. */
typedef struct {
  SqOfColumns start, climb;
} SqBound;

/* Places, one on each line, with a number, that are put in ascending order. */
typedef struct {
  SqOfLines at, with;
} SqOpenSorted;

typedef struct {
  const SqFaceLines *face;
  const SqFastShadow *const *shadows;
  guint n;
  const SqReceiverGrid *grid;
  const SqRowReads *reads;
  int row, from, to;
  float *share;
  /* Scratch: room for n × SQ_GO_COLUMNS; n; n; the most faces that a solid has; and the most
   * faces and edges, twice. */
  SqOpenSpans *spans;
  guint *touched;
  SqOpenSorted *solids;
  guint8 *seen;
  SqBound *bounds[2];
} SqOpenJob;

void sq_open_shares_baseline (const SqOpenJob *job);
#ifdef SQ_HAVE_AVX2
void sq_open_shares_avx2 (const SqOpenJob *job);
#endif

G_END_DECLS
