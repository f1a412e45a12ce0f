/* open-share-kernel.h: the loops behind sq_open_shares(), once for each set of instructions */
#pragma once

#include "light/open-share.h"

G_BEGIN_DECLS

/* Columns that go through the registers together, and how many times that is done at once. */
#define SQ_COLUMNS 8
#define SQ_BLOCKS 4

/* A number for each column. */
typedef float SqColumns[SQ_COLUMNS];

/* Where each line is in one solid's shadow, for one block of columns. */
typedef struct {
  SqColumns lo[SQ_LINES], hi[SQ_LINES];
} SqOpenSpans;

/* Places on one line, each with a number, that are put in ascending order. */
typedef struct {
  SqColumns at, with;
} SqOpenSorted;

typedef struct {
  const SqFaceLines *face;
  const SqFastShadow *const *shadows;
  guint n;
  const SqReceiverGrid *grid;
  const SqRowReads *reads;
  int row, from, to;
  float *share;
  /* Scratch: room for n × SQ_BLOCKS; n; n; and 2 n. */
  SqOpenSpans *spans;
  guint *touched;
  SqOpenSorted *solids, *nets;
} SqOpenJob;

void sq_open_shares_baseline (const SqOpenJob *job);
#ifdef SQ_HAVE_AVX2
void sq_open_shares_avx2 (const SqOpenJob *job);
#endif

G_END_DECLS
