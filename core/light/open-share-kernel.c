/* open-share-kernel.c: the loops behind sq_open_shares(), once for each set of instructions
 *
 * Plain loops over the lines of a face, in an order that leaves the compiler nothing to choose but
 * the width of its registers. */
#include "light/open-share-kernel.h"
#include "light/open-light.h"
#include "light/open-spans.h"

#ifndef SQ_KERNEL
#define SQ_KERNEL(name) name##_baseline
#endif

/* Sorts @sorted, that is in order but for its last. */
static inline void
sort_in (SqOpenSorted *sorted, guint n)
{
  for (guint k = n - 1; k > 0; k--) {
    SqOpenSorted *restrict a = &sorted[k - 1], *restrict b = &sorted[k];
    for (int l = 0; l < SQ_LINES; l++) {
      float a_at = a->at[l], b_at = b->at[l], a_with = a->with[l], b_with = b->with[l];
      a->at[l] = b_at < a_at ? b_at : a_at;
      a->with[l] = b_at < a_at ? b_with : a_with;
      b->at[l] = b_at < a_at ? a_at : b_at;
      b->with[l] = b_at < a_at ? a_with : b_with;
    }
  }
}

/* What solids leave of the lines' light. */
typedef struct {
  SqOfLines lost;
  int seen[SQ_LINES]; /* some of the line comes past */
} SqLeft;

/* What is lost between @at and @to, past which everything has been looked at before. Returns: in
 * @past, up to where it has now */
static inline void
add_lost (const SqLight *restrict light,
          const float *restrict at,
          const float *restrict to,
          float *restrict past,
          SqLeft *restrict left)
{
  for (int l = 0; l < SQ_LINES; l++) {
    float lo = sq_less (sq_more (at[l], past[l]), light->to[l]);
    float hi = sq_less (sq_more (to[l], lo), light->to[l]);
    left->seen[l] |= lo > past[l];
    left->lost[l] += sq_light_to (light, l, hi) - sq_light_to (light, l, lo);
    past[l] = hi;
  }
}

/* Solids, which start at .at and end at .with, in order; or one, as it is. */
static inline SqLeft
left_past (const SqLight *restrict light, const SqOpenSorted *restrict solids, guint n)
{
  SqLeft left = { 0 };
  SqOfLines past;
  for (int l = 0; l < SQ_LINES; l++)
    past[l] = light->from[l];
  for (guint k = 0; k < n; k++)
    add_lost (light, solids[k].at, solids[k].with, past, &left);
  for (int l = 0; l < SQ_LINES; l++)
    left.seen[l] |= past[l] < light->to[l];
  return left;
}

/* Which of the solids hide some of some line from a column, into job->touched. */
static guint
find_touched (const SqOpenJob *job, int column)
{
  const SqFaceLines *face = job->face;
  guint n = 0;
  for (guint i = 0; i < job->n; i++) {
    const SqOpenSpans *restrict span = &job->spans[i * SQ_GO_COLUMNS + column];
    int any = 0;
    for (int l = 0; l < SQ_LINES; l++)
      any |= sq_more (span->lo[l], face->from[l]) < sq_less (span->hi[l], face->to[l]);
    if (any)
      job->touched[n++] = i;
  }
  return n;
}

/* Lines are added up by halves, which is the same sum in all registers. */
static inline float
sum_of (const float *restrict of_lines)
{
  SqOfLines sum;
  for (int l = 0; l < SQ_LINES; l++)
    sum[l] = of_lines[l];
  for (int n = SQ_LINES / 2; n > 0; n /= 2)
    for (int l = 0; l < n; l++)
      sum[l] += sum[l + n];
  return sum[0];
}

static inline void
take (SqOpenSorted *restrict to, const SqOpenSpans *restrict span)
{
  for (int l = 0; l < SQ_LINES; l++) {
    to->at[l] = span->lo[l];
    to->with[l] = span->hi[l];
  }
}

/* What a net or a pane dims of each line, whatever else is in the way: on a line, what it covers
 * counts as if it were spread evenly. */
static inline void
dim_by_net (const SqLight *restrict light,
            const SqOpenSpans *restrict span,
            float passes,
            const float *restrict all,
            float *restrict dimmed)
{
  SqOpenSorted net;
  take (&net, span);
  SqLeft left = left_past (light, &net, 1);
  for (int l = 0; l < SQ_LINES; l++) {
    float covered = sq_less (left.lost[l] / (all[l] > 0.0f ? all[l] : 1.0f), 1.0f);
    dimmed[l] *= 1.0f - (1.0f - passes) * sq_more (covered, 0.0f);
  }
}

/* @column: of those that are looked at in one go */
static inline float
share_at (const SqOpenJob *job, const SqRead *restrict read, int column)
{
  guint n_touched = find_touched (job, column), n_solids = 0;
  if (n_touched == 0)
    return 1.0f;
  SqLight light;
  SqOfLines all, dimmed, part;
  sq_light_init (&light, read, job->face);
  for (int l = 0; l < SQ_LINES; l++) {
    all[l] = sq_light_to (&light, l, light.to[l]) - sq_light_to (&light, l, light.from[l]);
    dimmed[l] = 1.0f;
  }
  for (guint i = 0; i < n_touched; i++) {
    const SqOpenSpans *span = &job->spans[job->touched[i] * SQ_GO_COLUMNS + column];
    float passes = job->shadows[job->touched[i]]->passes;
    if (passes > 0.0f) {
      dim_by_net (&light, span, passes, all, dimmed);
    } else {
      take (&job->solids[n_solids++], span);
      sort_in (job->solids, n_solids);
    }
  }
  SqLeft left = left_past (&light, job->solids, n_solids);
  int seen = 0;
  for (int l = 0; l < SQ_LINES; l++) {
    part[l] = (all[l] - left.lost[l]) * dimmed[l];
    seen |= left.seen[l];
  }
  float whole = sum_of (all);
  if (whole <= 0.0f) /* without any light nothing is taken away */
    return 1.0f;
  return seen ? sq_less (sq_more (sum_of (part) / whole, 0.0f), 1.0f) : 0.0f;
}

void
SQ_KERNEL (sq_open_shares) (const SqOpenJob *job)
{
  for (int first = job->from; first < job->to; first += SQ_GO_COLUMNS) {
    int last = MIN (first + SQ_GO_COLUMNS, job->to);
    for (guint i = 0; i < job->n; i++) {
      const SqGo go = {
        .spans = &job->spans[i * SQ_GO_COLUMNS],
        .height = job->face->height,
        .seen = job->seen,
        .lo = job->bounds[0],
        .hi = job->bounds[1],
        .row = job->row,
        .first = first,
      };
      sq_find_spans (&go, job->shadows[i], last);
    }
    for (int block = first; block < last; block += SQ_COLUMNS) {
      SqReads reads;
      sq_reads_init (&reads, job, block - job->from);
      for (int column = block; column < MIN (block + SQ_COLUMNS, last); column++) {
        SqRead read = sq_read_of (&reads, job->reads->dome, column - block);
        job->share[column - job->from] = share_at (job, &read, column - first);
      }
    }
  }
}
