/* open-share.c: how much of a lamp's face is open past what stands before it, for the eye */
#include "light/open-share-kernel.h"

/* Up to so many solids, of so many faces and edges, need no memory but the stack. */
#define USUAL 8
#define USUAL_BOUNDS 64

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
  guint n_faces = 0, n_bounds = 0;
  for (guint i = 0; i < n; i++) {
    n_faces = MAX (n_faces, shadows[i]->n_faces);
    n_bounds = MAX (n_bounds, shadows[i]->n_faces + shadows[i]->n_edges);
  }
  if (n <= USUAL && n_bounds <= USUAL_BOUNDS) {
    SqOpenSpans spans[USUAL * SQ_GO_COLUMNS];
    SqOpenSorted solids[USUAL];
    guint touched[USUAL];
    guint8 seen[USUAL_BOUNDS];
    SqBound lo[USUAL_BOUNDS], hi[USUAL_BOUNDS];
    job.spans = spans;
    job.touched = touched;
    job.solids = solids;
    job.seen = seen;
    job.bounds[0] = lo;
    job.bounds[1] = hi;
    run (&job);
    return;
  }
  g_autofree SqOpenSpans *spans = g_new (SqOpenSpans, (gsize)n * SQ_GO_COLUMNS);
  g_autofree SqOpenSorted *solids = g_new (SqOpenSorted, n);
  g_autofree guint *touched = g_new (guint, n);
  g_autofree guint8 *seen = g_new (guint8, n_faces);
  g_autofree SqBound *lo = g_new (SqBound, n_bounds), *hi = g_new (SqBound, n_bounds);
  job.spans = spans;
  job.touched = touched;
  job.solids = solids;
  job.seen = seen;
  job.bounds[0] = lo;
  job.bounds[1] = hi;
  run (&job);
}
