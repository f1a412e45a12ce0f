/* open-share-kernel.c: the loops behind sq_open_shares(), once for each set of instructions
 *
 * Plain loops over the columns of a block, in an order that leaves the compiler nothing to choose
 * but the width of its registers. */
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
    for (int c = 0; c < SQ_COLUMNS; c++) {
      float a_at = a->at[c], b_at = b->at[c], a_with = a->with[c], b_with = b->with[c];
      a->at[c] = b_at < a_at ? b_at : a_at;
      a->with[c] = b_at < a_at ? b_with : a_with;
      b->at[c] = b_at < a_at ? a_at : b_at;
      b->with[c] = b_at < a_at ? a_with : b_with;
    }
  }
}

/* A line's light from @from to @to, of which @part is left after nets: adds what is lost of it
 * behind solids, which start at .at and end at .with, and behind nets to @lost, and sets @seen
 * where any of it comes past the solids. */
static inline void
add_lost (const SqLight *restrict light,
          const SqOpenSorted *restrict solids,
          guint n,
          const float *restrict from,
          const float *restrict to,
          const float *restrict part,
          float *restrict lost,
          int *restrict seen)
{
  SqColumns here, hidden;
  for (int c = 0; c < SQ_COLUMNS; c++) {
    here[c] = from[c];
    hidden[c] = 0.0f;
  }
  for (guint k = 0; k < n; k++)
    for (int c = 0; c < SQ_COLUMNS; c++) {
      float lo = sq_less (sq_more (solids[k].at[c], here[c]), to[c]);
      float hi = sq_less (sq_more (solids[k].with[c], lo), to[c]);
      seen[c] |= lo > here[c];
      hidden[c] += sq_light_to (light, c, hi) - sq_light_to (light, c, lo);
      here[c] = hi;
    }
  for (int c = 0; c < SQ_COLUMNS; c++) {
    float all = sq_light_to (light, c, to[c]) - sq_light_to (light, c, from[c]);
    seen[c] |= to[c] > here[c];
    lost[c] += part[c] * hidden[c] + (1.0f - part[c]) * all;
  }
}

/* Nets, each an event where it starts and one where it ends; between events all is dimmed alike. */
static void
add_lost_past_nets (const SqLight *restrict light,
                    const SqOpenSorted *restrict solids,
                    guint n_solids,
                    const SqOpenSorted *restrict nets,
                    guint n_events,
                    float *restrict lost,
                    int *restrict seen)
{
  SqColumns passes;
  const float *from = light->from;
  for (int c = 0; c < SQ_COLUMNS; c++)
    passes[c] = 1.0f;
  for (guint k = 0; k < n_events; k++) {
    add_lost (light, solids, n_solids, from, nets[k].at, passes, lost, seen);
    for (int c = 0; c < SQ_COLUMNS; c++)
      passes[c] *= nets[k].with[c];
    from = nets[k].at;
  }
  add_lost (light, solids, n_solids, from, light->to, passes, lost, seen);
}

/* The usual case, one solid: the same sums as add_lost() makes. */
static inline void
add_lost_behind_one (const SqLight *restrict light,
                     const float *restrict starts,
                     const float *restrict ends,
                     float *restrict lost,
                     int *restrict seen)
{
  for (int c = 0; c < SQ_COLUMNS; c++) {
    float lo = sq_less (sq_more (starts[c], light->from[c]), light->to[c]);
    float hi = sq_less (sq_more (ends[c], lo), light->to[c]);
    seen[c] |= (lo > light->from[c]) | (hi < light->to[c]);
    lost[c] += sq_light_to (light, c, hi) - sq_light_to (light, c, lo);
  }
}

/* Which of the solids hide some of some line from some column of the block, into job->touched. */
static guint
find_touched (const SqOpenJob *job, int block)
{
  const SqFaceLines *face = job->face;
  guint n = 0;
  for (guint i = 0; i < job->n; i++) {
    const SqOpenSpans *restrict spans = &job->spans[i * SQ_BLOCKS + block];
    int touched[SQ_COLUMNS] = { 0 }, any = 0;
    for (int l = 0; l < SQ_LINES; l++)
      for (int c = 0; c < SQ_COLUMNS; c++)
        touched[c] |=
          sq_more (spans->lo[l][c], face->from[l]) < sq_less (spans->hi[l][c], face->to[l]);
    for (int c = 0; c < SQ_COLUMNS; c++)
      any |= touched[c];
    if (any)
      job->touched[n++] = i;
  }
  return n;
}

/* The solids and nets of one line, in order. */
static inline void
line_up (const SqOpenJob *job,
         const SqLight *restrict light,
         guint n_touched,
         int block,
         int l,
         guint *n_solids,
         guint *n_events)
{
  *n_solids = *n_events = 0;
  for (guint i = 0; i < n_touched; i++) {
    const SqOpenSpans *spans = &job->spans[job->touched[i] * SQ_BLOCKS + block];
    float passes = job->shadows[job->touched[i]]->passes;
    if (passes <= 0.0f) {
      SqOpenSorted *restrict solid = &job->solids[(*n_solids)++];
      for (int c = 0; c < SQ_COLUMNS; c++) {
        solid->at[c] = spans->lo[l][c];
        solid->with[c] = spans->hi[l][c];
      }
      sort_in (job->solids, *n_solids);
      continue;
    }
    for (int end = 0; end < 2; end++) {
      SqOpenSorted *restrict event = &job->nets[(*n_events)++];
      for (int c = 0; c < SQ_COLUMNS; c++) {
        float from = sq_less (sq_more (spans->lo[l][c], light->from[c]), light->to[c]);
        float to = sq_more (sq_less (spans->hi[l][c], light->to[c]), from);
        event->at[c] = end ? to : from;
        event->with[c] = end ? 1.0f / passes : passes;
      }
      sort_in (job->nets, *n_events);
    }
  }
}

/* Nearer than this many of the face's diagonals, its light is weighed line by line. By the row, so
 * that a point's share does not depend on its neighbours. */
#define NEAR_DIAGONALS 1.5

static gboolean
row_is_near (const SqOpenJob *job)
{
  const SqFaceLines *face = job->face;
  SqVector way = sq_vector_between (sq_receiver_point (job->grid, 0, job->row), face->middle);
  double square = 4.0 * (sq_vector_dot (face->half_across, face->half_across) +
                         sq_vector_dot (face->half_up, face->half_up));
  return way.y * way.y + way.z * way.z < NEAR_DIAGONALS * NEAR_DIAGONALS * square;
}

/* @i: of the block's first column in the job */
static void
share_block (const SqOpenJob *job, int block, int i, gboolean near, float *restrict share)
{
  int seen[SQ_COLUMNS] = { 0 };
  SqColumns lost = { 0 }, whole = { 0 };
  for (int c = 0; c < SQ_COLUMNS; c++)
    share[c] = 1.0f;
  guint n_touched = find_touched (job, block);
  if (n_touched == 0)
    return;
  const SqFastShadow *first = job->shadows[job->touched[0]];
  const SqOpenSpans *spans = &job->spans[job->touched[0] * SQ_BLOCKS + block];
  gboolean one = n_touched == 1 && first->passes <= 0.0f;
  SqReads reads;
  SqFarLight far;
  sq_reads_init (&reads, job, i);
  if (!near) {
    sq_far_light_init (&far, &reads, job->face);
    sq_far_light_sum (&far, job->face, whole);
  }
  if (near || reads.risen)
    for (int c = 0; c < SQ_COLUMNS; c++)
      whole[c] = 0.0f;
  for (int l = 0; l < SQ_LINES; l++) {
    SqLight light;
    if (near)
      sq_light_near (&light, &reads, job->face, l);
    else
      sq_light_far (&light, &reads, &far, job->face, l);
    if (near || reads.risen)
      for (int c = 0; c < SQ_COLUMNS; c++)
        whole[c] += sq_light_to (&light, c, light.to[c]) - sq_light_to (&light, c, light.from[c]);
    if (one) {
      add_lost_behind_one (&light, spans->lo[l], spans->hi[l], lost, seen);
      continue;
    }
    guint n_solids, n_events;
    line_up (job, &light, n_touched, block, l, &n_solids, &n_events);
    add_lost_past_nets (&light, job->solids, n_solids, job->nets, n_events, lost, seen);
  }
  for (int c = 0; c < SQ_COLUMNS; c++) {
    float part = 1.0f - lost[c] / (whole[c] > 0.0f ? whole[c] : 1.0f);
    part = sq_less (sq_more (part, 0.0f), 1.0f);
    /* Without any light nothing is taken away. */
    share[c] = whole[c] <= 0.0f ? 1.0f : seen[c] ? part : 0.0f;
  }
}

void
SQ_KERNEL (sq_open_shares) (const SqOpenJob *job)
{
  gboolean near = row_is_near (job);
  for (int first = job->from; first < job->to; first += SQ_COLUMNS * SQ_BLOCKS) {
    int n_blocks = MIN (SQ_BLOCKS, (job->to - first + SQ_COLUMNS - 1) / SQ_COLUMNS);
    for (guint i = 0; i < job->n; i++) {
      const SqRun run = { &job->spans[i * SQ_BLOCKS], job->face->height, job->row, first };
      sq_find_spans (&run, job->shadows[i], n_blocks);
    }
    for (int block = 0; block < n_blocks; block++) {
      int i = first + block * SQ_COLUMNS - job->from;
      SqColumns share;
      share_block (job, block, i, near, share);
      for (int c = 0; c < SQ_COLUMNS && i + c < job->to - job->from; c++)
        job->share[i + c] = share[c];
    }
  }
}
