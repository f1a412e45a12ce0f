/* open-spans.h: where the lines of a face are in a solid's shadow; for open-share-kernel.c alone */
#pragma once

#include "light/open-share-kernel.h"

G_BEGIN_DECLS

/* Past every face. */
#define SQ_FAR 1e9f
/* A plane that runs along the lines crosses them far away, but not nowhere. */
#define SQ_LEAST_SLOPE 1e-18f

static inline float
sq_more (float a, float b)
{
  return a > b ? a : b;
}

static inline float
sq_less (float a, float b)
{
  return a < b ? a : b;
}

/* In one row, what may be hidden: where middle + along · u + up · height is at most 0. */
typedef struct {
  double middle, middle_by_column, along, along_by_column, up, up_by_column;
} SqHalf;

/* The first of a block's columns, and those of them that count: from … to - 1. */
typedef struct {
  int first, from, to;
} SqSome;

/* lo rises to, or hi falls to, start + climb · height. */
static inline void
sq_raise (SqColumns *restrict lo,
          const float *restrict height,
          const float *restrict start,
          const float *restrict climb)
{
  for (int l = 0; l < SQ_LINES; l++)
    for (int c = 0; c < SQ_COLUMNS; c++)
      lo[l][c] = sq_more (lo[l][c], start[c] + climb[c] * height[l]);
}

static inline void
sq_lower (SqColumns *restrict hi,
          const float *restrict height,
          const float *restrict start,
          const float *restrict climb)
{
  for (int l = 0; l < SQ_LINES; l++)
    for (int c = 0; c < SQ_COLUMNS; c++)
      hi[l][c] = sq_less (hi[l][c], start[c] + climb[c] * height[l]);
}

/* Where not all columns count, or the plane turns over on the way. */
static inline void
sq_cut_mixed (SqOpenSpans *restrict spans,
              const float *restrict height,
              const float *restrict start,
              const float *restrict climb,
              const float *restrict crossing,
              SqSome some)
{
  SqColumns lo_start, lo_climb, hi_start, hi_climb;
  for (int c = 0; c < SQ_COLUMNS; c++) {
    int counts = (c >= some.from) & (c < some.to);
    int rises = counts & (crossing[c] > 0.0f), falls = counts & (crossing[c] <= 0.0f);
    lo_start[c] = rises ? start[c] : -SQ_FAR;
    lo_climb[c] = rises ? climb[c] : 0.0f;
    hi_start[c] = falls ? start[c] : SQ_FAR;
    hi_climb[c] = falls ? climb[c] : 0.0f;
  }
  sq_raise (spans->lo, height, lo_start, lo_climb);
  sq_lower (spans->hi, height, hi_start, hi_climb);
}

static inline void
sq_cut_block (SqOpenSpans *restrict spans,
              const float *restrict height,
              const SqHalf *half,
              SqSome some)
{
  SqColumns start, climb, crossing;
  for (int c = 0; c < SQ_COLUMNS; c++) {
    double column = some.first + c;
    float middle = (float)(half->middle + half->middle_by_column * column);
    float along = (float)(half->along + half->along_by_column * column);
    float up = (float)(half->up + half->up_by_column * column);
    float x = -1.0f / (fabsf (along) > SQ_LEAST_SLOPE ? along : SQ_LEAST_SLOPE);
    start[c] = middle * x;
    climb[c] = up * x;
    crossing[c] = x;
  }
  /* Affine in the column: if both ends of the block rise, or fall, so does all between. */
  gboolean rises = crossing[0] > 0.0f, whole = some.from == 0 && some.to == SQ_COLUMNS;
  if (!whole || rises != (crossing[SQ_COLUMNS - 1] > 0.0f))
    sq_cut_mixed (spans, height, start, climb, crossing, some);
  else if (rises)
    sq_raise (spans->lo, height, start, climb);
  else
    sq_lower (spans->hi, height, start, climb);
}

/* A run of columns, the first of them at the start of @spans' first block. */
typedef struct {
  SqOpenSpans *spans;
  const float *height;
  int row, first;
} SqRun;

static inline void
sq_cut_run (const SqRun *run, const SqHalf *half, int from, int to)
{
  for (int block = (from - run->first) / SQ_COLUMNS; run->first + block * SQ_COLUMNS < to;
       block++) {
    int first = run->first + block * SQ_COLUMNS;
    const SqSome some = { first, MAX (from - first, 0), MIN (to - first, SQ_COLUMNS) };
    sq_cut_block (&run->spans[block], run->height, half, some);
  }
}

static inline gboolean
sq_sees (const SqFaceForm *face, int row, int column)
{
  double height_m = sq_grid_form_at_row (&face->height_m, row) + face->height_m.by_column * column;
  return height_m > -SQ_TOUCH_M;
}

/* Up to which column the same faces of the solid are seen as from @column. */
static inline int
sq_same_outline_to (const SqFastShadow *shadow, int row, int column, int to)
{
  for (guint i = 0; i < shadow->n_faces; i++) {
    const SqFaceForm *face = &shadow->faces[i];
    gboolean seen = sq_sees (face, row, column);
    if (sq_sees (face, row, to - 1) != seen)
      for (to = column + 1; sq_sees (face, row, to) == seen;)
        to++;
  }
  return to;
}

typedef enum {
  SQ_HIDES_NOTHING,
  SQ_HIDES_PART,
  SQ_HIDES_ALL,
} SqHides;

static inline SqHides
sq_what_is_hidden (const SqFastShadow *shadow, int row, int column)
{
  guint n_seen = 0, n_before = 0;
  for (guint i = 0; i < shadow->n_faces; i++)
    if (sq_sees (&shadow->faces[i], row, column)) {
      n_seen++;
      n_before += shadow->faces[i].side == SQ_FACE_IS_BEFORE;
    }
  if (n_seen == 0)
    return SQ_HIDES_ALL;
  return n_before > 0 || (shadow->flat && n_seen == 2) ? SQ_HIDES_NOTHING : SQ_HIDES_PART;
}

/* Columns from … to - 1 see the same outline. */
static inline void
sq_cut_outline (const SqRun *run, const SqFastShadow *shadow, int from, int to)
{
  int row = run->row;
  for (guint i = 0; i < shadow->n_faces; i++) {
    const SqFaceForm *face = &shadow->faces[i];
    if (face->side != SQ_FACE_CUTS || !sq_sees (face, row, from))
      continue;
    const SqHalf half = { .middle = face->middle, .along = face->along, .up = face->up };
    sq_cut_run (run, &half, from, to);
  }
  for (guint i = 0; i < shadow->n_edges; i++) {
    const SqEdgeForm *edge = &shadow->edges[i];
    gboolean left = sq_sees (&shadow->faces[edge->left], row, from);
    if (left == sq_sees (&shadow->faces[edge->right], row, from))
      continue;
    double sign = left ? 1.0 : -1.0;
    const SqHalf half = {
      .middle = sign * sq_grid_form_at_row (&edge->middle, row),
      .middle_by_column = sign * edge->middle.by_column,
      .along = sign * sq_grid_form_at_row (&edge->along, row),
      .along_by_column = sign * edge->along.by_column,
      .up = sign * sq_grid_form_at_row (&edge->up, row),
      .up_by_column = sign * edge->up.by_column,
    };
    sq_cut_run (run, &half, from, to);
  }
}

/* Fills run->spans; its last block may reach past the grid. */
static inline void
sq_find_spans (const SqRun *run, const SqFastShadow *shadow, int n_blocks)
{
  for (int block = 0; block < n_blocks; block++)
    for (int l = 0; l < SQ_LINES; l++)
      for (int c = 0; c < SQ_COLUMNS; c++) {
        run->spans[block].lo[l][c] = -SQ_FAR;
        run->spans[block].hi[l][c] = SQ_FAR;
      }
  for (int from = run->first, last = from + n_blocks * SQ_COLUMNS, to; from < last; from = to) {
    to = sq_same_outline_to (shadow, run->row, from, last);
    SqHides hides = sq_what_is_hidden (shadow, run->row, from);
    /* All is at most 0 where the constant is less, and nothing where it is more. */
    const SqHalf none = { .middle = 1.0 };
    if (hides == SQ_HIDES_NOTHING)
      sq_cut_run (run, &none, from, to);
    else if (hides == SQ_HIDES_PART)
      sq_cut_outline (run, shadow, from, to);
  }
}

G_END_DECLS
