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

/* Columns of one row; @spans is of the first of them. */
typedef struct {
  SqOpenSpans *spans;
  const float *height;
  guint8 *seen;     /* for each face of the solid */
  SqBound *lo, *hi; /* room for the faces and edges of the solid, each */
  int row, first;
} SqGo;

/* Where a half begins or ends on the lines, for the columns from @first on. A half that turns over
 * on the way is a beginning for some columns and an end for others. */
static inline void
sq_bound (const SqGo *go, const SqHalf *half, int first, guint *n_lo, guint *n_hi)
{
  SqOfColumns start, climb, crossing;
  const float middle_0 = (float)(half->middle + half->middle_by_column * first);
  const float along_0 = (float)(half->along + half->along_by_column * first);
  const float up_0 = (float)(half->up + half->up_by_column * first);
  const float middle_1 = (float)half->middle_by_column, along_1 = (float)half->along_by_column,
              up_1 = (float)half->up_by_column;
  for (int c = 0; c < SQ_COLUMNS; c++) {
    float along = along_0 + along_1 * (float)c;
    float x = -1.0f / (fabsf (along) > SQ_LEAST_SLOPE ? along : SQ_LEAST_SLOPE);
    start[c] = (middle_0 + middle_1 * (float)c) * x;
    climb[c] = (up_0 + up_1 * (float)c) * x;
    crossing[c] = x;
  }
  /* Affine in the column: if both ends of the block rise, or fall, so does all between. */
  gboolean rises = crossing[0] > 0.0f, turns = rises != (crossing[SQ_COLUMNS - 1] > 0.0f);
  if (!turns) {
    SqBound *restrict bound = rises ? &go->lo[(*n_lo)++] : &go->hi[(*n_hi)++];
    for (int c = 0; c < SQ_COLUMNS; c++) {
      bound->start[c] = start[c];
      bound->climb[c] = climb[c];
    }
    return;
  }
  SqBound *restrict lo = &go->lo[(*n_lo)++], *restrict hi = &go->hi[(*n_hi)++];
  for (int c = 0; c < SQ_COLUMNS; c++) {
    gboolean up = crossing[c] > 0.0f;
    lo->start[c] = up ? start[c] : -SQ_FAR;
    lo->climb[c] = up ? climb[c] : 0.0f;
    hi->start[c] = up ? SQ_FAR : start[c];
    hi->climb[c] = up ? 0.0f : climb[c];
  }
}

/* From the last beginning to the first end. */
static inline void
sq_span_within (SqOpenSpans *restrict span, const SqGo *go, int c, guint n_lo, guint n_hi)
{
  SqOfLines lo, hi;
  for (int l = 0; l < SQ_LINES; l++) {
    lo[l] = -SQ_FAR;
    hi[l] = SQ_FAR;
  }
  for (guint k = 0; k < n_lo; k++)
    for (int l = 0; l < SQ_LINES; l++)
      lo[l] = sq_more (lo[l], go->lo[k].start[c] + go->lo[k].climb[c] * go->height[l]);
  for (guint k = 0; k < n_hi; k++)
    for (int l = 0; l < SQ_LINES; l++)
      hi[l] = sq_less (hi[l], go->hi[k].start[c] + go->hi[k].climb[c] * go->height[l]);
  for (int l = 0; l < SQ_LINES; l++) {
    span->lo[l] = lo[l];
    span->hi[l] = hi[l];
  }
}

static inline gboolean
sq_sees (const SqFaceForm *face, int row, int column)
{
  double height_m = sq_grid_form_at_row (&face->height_m, row) + face->height_m.by_column * column;
  return height_m > -SQ_TOUCH_M;
}

typedef enum {
  SQ_HIDES_NOTHING,
  SQ_HIDES_PART,
  SQ_HIDES_ALL,
} SqHides;

/* What the solid hides from @from. @to: up to where that is so, going in, at most; coming out, from
 * where other faces are seen. Fills go->seen. */
static inline SqHides
sq_look_at (const SqGo *go, const SqFastShadow *shadow, int from, int *to)
{
  guint n_seen = 0, n_before = 0;
  for (guint i = 0; i < shadow->n_faces; i++) {
    const SqFaceForm *face = &shadow->faces[i];
    gboolean seen = sq_sees (face, go->row, from);
    if (sq_sees (face, go->row, *to - 1) != seen)
      for (*to = from + 1; sq_sees (face, go->row, *to) == seen;)
        ++*to;
    go->seen[i] = (guint8)seen;
    n_seen += seen ? 1 : 0;
    n_before += seen && face->side == SQ_FACE_IS_BEFORE ? 1 : 0;
  }
  if (n_seen == 0)
    return SQ_HIDES_ALL;
  return n_before > 0 || (shadow->flat && n_seen == 2) ? SQ_HIDES_NOTHING : SQ_HIDES_PART;
}

/* What bounds the shadow that is seen from @column and those after it. */
static inline void
sq_bounds_of_outline (
  const SqGo *go, const SqFastShadow *shadow, int column, guint *n_lo, guint *n_hi)
{
  int row = go->row;
  *n_lo = *n_hi = 0;
  for (guint i = 0; i < shadow->n_faces; i++) {
    const SqFaceForm *face = &shadow->faces[i];
    if (face->side != SQ_FACE_CUTS || !go->seen[i])
      continue;
    const SqHalf half = { .middle = face->middle, .along = face->along, .up = face->up };
    sq_bound (go, &half, column, n_lo, n_hi);
  }
  for (guint i = 0; i < shadow->n_edges; i++) {
    const SqEdgeForm *edge = &shadow->edges[i];
    if (go->seen[edge->left] == go->seen[edge->right])
      continue;
    double sign = go->seen[edge->left] ? 1.0 : -1.0;
    const SqHalf half = {
      .middle = sign * sq_grid_form_at_row (&edge->middle, row),
      .middle_by_column = sign * edge->middle.by_column,
      .along = sign * sq_grid_form_at_row (&edge->along, row),
      .along_by_column = sign * edge->along.by_column,
      .up = sign * sq_grid_form_at_row (&edge->up, row),
      .up_by_column = sign * edge->up.by_column,
    };
    sq_bound (go, &half, column, n_lo, n_hi);
  }
}

/* Fills go->spans up to the column before @last. */
static inline void
sq_find_spans (const SqGo *go, const SqFastShadow *shadow, int last)
{
  for (int from = go->first, to; from < last; from = to) {
    to = last;
    SqHides hides = sq_look_at (go, shadow, from, &to);
    float hi = hides == SQ_HIDES_NOTHING ? -SQ_FAR : SQ_FAR;
    for (int column = from; hides != SQ_HIDES_PART && column < to; column++) {
      SqOpenSpans *restrict span = &go->spans[column - go->first];
      for (int l = 0; l < SQ_LINES; l++) {
        span->lo[l] = -SQ_FAR;
        span->hi[l] = hi;
      }
    }
    for (int block = from; hides == SQ_HIDES_PART && block < to; block += SQ_COLUMNS) {
      guint n_lo, n_hi;
      sq_bounds_of_outline (go, shadow, block, &n_lo, &n_hi);
      for (int c = 0; c < MIN (SQ_COLUMNS, to - block); c++)
        sq_span_within (&go->spans[block + c - go->first], go, c, n_lo, n_hi);
    }
  }
}

G_END_DECLS
