/* open-share.c: how much of a lamp's face is open past what stands before it, for the eye */
#include "light/open-share-kernel.h"

/* Up to so many solids need no memory but the stack. */
#define USUAL 8

static void
run (const SqOpenJob *job)
{
#ifdef SQ_HAVE_AVX2
  if (__builtin_cpu_supports ("avx2")) {
    sq_open_shares_avx2 (job);
    return;
  }
#endif
  sq_open_shares_baseline (job);
}

void
sq_open_shares (const SqFaceLines *face,
                const SqFastShadow *const *shadows,
                guint n,
                const SqReceiverGrid *grid,
                const SqRowReads *reads,
                int row,
                int from,
                int to,
                float *share)
{
  SqOpenJob job = {
    .face = face,
    .shadows = shadows,
    .n = n,
    .grid = grid,
    .reads = reads,
    .row = row,
    .from = from,
    .to = to,
    .share = share,
  };
  if (n <= USUAL) {
    SqOpenSpans spans[USUAL * SQ_BLOCKS];
    SqOpenSorted solids[USUAL], nets[2 * USUAL];
    guint touched[USUAL];
    job.spans = spans;
    job.touched = touched;
    job.solids = solids;
    job.nets = nets;
    run (&job);
    return;
  }
  g_autofree SqOpenSpans *spans = g_new (SqOpenSpans, (gsize)n * SQ_BLOCKS);
  g_autofree SqOpenSorted *solids = g_new (SqOpenSorted, n), *nets = g_new (SqOpenSorted, 2 * n);
  g_autofree guint *touched = g_new (guint, n);
  job.spans = spans;
  job.touched = touched;
  job.solids = solids;
  job.nets = nets;
  run (&job);
}
