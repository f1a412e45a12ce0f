/* open-light.h: how much light a stretch of a line gives; for open-share-kernel.c alone */
#pragma once

#include "light/open-spans.h"

G_BEGIN_DECLS

/* What a receptor makes of light from (u, v) on the face is, but for constant factors,
 *
 *   (cosine + u · cosine_u + v · cosine_v) / square²
 *   square = 1 + u · square_u + v · square_v + the place's own square · own
 *
 * in units of the distance to the face's middle: the cosine at the face has the same numerator all
 * over it. A dome has the distance added to its cosine. */
typedef struct {
  SqOfColumns cosine, cosine_u, cosine_v, square_u, square_v, own;
} SqReads;

/* The same for one column. */
typedef struct {
  float cosine, cosine_u, cosine_v, square_u, square_v, own;
  gboolean dome;
  gboolean risen; /* part of the face is below the horizon */
} SqRead;

/* Nearer than this part of the way to its middle, a place is on the face; squared. */
#define SQ_LEAST_SQUARE 1e-5f

typedef double SqWide[SQ_COLUMNS];

/* @i: of the block's first column in the job; those past its last are read as the last. */
static inline void
sq_reads_init (SqReads *restrict reads, const SqOpenJob *job, int i)
{
  const SqFaceLines *face = job->face;
  const SqRowReads *by = job->reads;
  const SqVector a = face->half_across, b = face->half_up;
  SqVector way = sq_vector_between (sq_receiver_point (job->grid, 0, job->row), face->middle);
  int first = job->from + i, last = job->to - 1;
  SqWide x, y, z;
  for (int c = 0; c < SQ_COLUMNS; c++) {
    x[c] = by->normal.x;
    y[c] = by->normal.y;
    z[c] = by->normal.z;
  }
  for (int c = 0; by->normal_x && c < SQ_COLUMNS; c++) {
    int k = MIN (first + c, last) - job->from;
    x[c] = by->normal_x[k];
    y[c] = by->normal_y[k];
    z[c] = by->normal_z[k];
  }
  for (int c = 0; c < SQ_COLUMNS; c++) {
    double way_x = way.x - job->grid->step_m * (first + c);
    double square = way_x * way_x + (way.y * way.y + way.z * way.z);
    double own = 1.0 / (square > 1e-12 ? square : 1e-12);
    /* Only a dome needs the cosine itself, not what is proportional to it. */
    double scale = by->dome ? sqrt (own) : own;
    reads->cosine[c] = (float)((x[c] * way_x + y[c] * way.y + z[c] * way.z) * scale);
    reads->cosine_u[c] = (float)((x[c] * a.x + y[c] * a.y + z[c] * a.z) * scale);
    reads->cosine_v[c] = (float)((x[c] * b.x + y[c] * b.y + z[c] * b.z) * scale);
    reads->square_u[c] = (float)((way_x * a.x + way.y * a.y + way.z * a.z) * 2.0 * own);
    reads->square_v[c] = (float)((way_x * b.x + way.y * b.y + way.z * b.z) * 2.0 * own);
    reads->own[c] = (float)own;
  }
}

static inline SqRead
sq_read_of (const SqReads *reads, gboolean dome, int c)
{
  SqRead read = {
    .cosine = reads->cosine[c],
    .cosine_u = reads->cosine_u[c],
    .cosine_v = reads->cosine_v[c],
    .square_u = reads->square_u[c],
    .square_v = reads->square_v[c],
    .own = reads->own[c],
    .dome = dome,
  };
  read.risen = !dome && read.cosine < fabsf (read.cosine_u) + fabsf (read.cosine_v);
  return read;
}

/* Each line's light from its middle to u, in s = u - middle: s (c1 + s (c2 + s c3)); a parabola
 * goes through what its start, its middle and its end send. */
typedef struct {
  SqOfLines from, to, middle, per_half, c1, c2, c3;
} SqLight;

typedef struct {
  SqOfLines u, v, own_m2;
} SqNodes;

static inline void
sq_weigh (const SqRead *restrict read, const SqNodes *restrict nodes, float *restrict weight)
{
  SqOfLines square, cosine;
  for (int l = 0; l < SQ_LINES; l++) {
    float at = (1.0f + read->square_u * nodes->u[l]) +
               (read->square_v * nodes->v[l] + read->own * nodes->own_m2[l]);
    square[l] = sq_more (at, SQ_LEAST_SQUARE);
    cosine[l] = read->cosine + (read->cosine_u * nodes->u[l] + read->cosine_v * nodes->v[l]);
  }
  if (read->dome)
    for (int l = 0; l < SQ_LINES; l++)
      cosine[l] += sqrtf (square[l]);
  for (int l = 0; l < SQ_LINES; l++)
    weight[l] = cosine[l] / (square[l] * square[l]);
}

/* Only what is above the receptor's horizon counts: the lines are cut there, and have their nodes
 * anew. */
static inline void
sq_light_rise (SqLight *restrict light,
               const SqRead *restrict read,
               const SqFaceLines *restrict face,
               SqNodes *restrict nodes)
{
  const float slope = (float)SQ_LINES_SLOPE;
  float uu = (float)sq_vector_dot (face->half_across, face->half_across);
  float vv = (float)sq_vector_dot (face->half_up, face->half_up);
  float uv = 2.0f * (float)sq_vector_dot (face->half_across, face->half_up);
  float climb = read->cosine_u + slope * read->cosine_v;
  float crossing = -1.0f / (fabsf (climb) > SQ_LEAST_SLOPE ? climb : SQ_LEAST_SLOPE);
  for (int l = 0; l < SQ_LINES; l++) {
    float at = (read->cosine + read->cosine_v * face->height[l]) * crossing;
    float lo = crossing < 0.0f ? at : -SQ_FAR, hi = crossing < 0.0f ? SQ_FAR : at;
    float from = sq_less (sq_more (light->from[l], lo), light->to[l]);
    float to = sq_more (sq_less (light->to[l], hi), from);
    light->from[l] = from;
    light->to[l] = to;
    light->middle[l] = 0.5f * (from + to);
    light->per_half[l] = 2.0f / sq_more (to - from, 1e-6f);
    nodes[0].u[l] = from;
    nodes[1].u[l] = light->middle[l];
    nodes[2].u[l] = to;
  }
  for (int k = 0; k < SQ_LINE_NODES; k++)
    for (int l = 0; l < SQ_LINES; l++) {
      float u = nodes[k].u[l], v = face->height[l] + slope * u;
      nodes[k].v[l] = v;
      nodes[k].own_m2[l] = u * u * uu + u * v * uv + v * v * vv;
    }
}

static inline void
sq_light_init (SqLight *restrict light,
               const SqRead *restrict read,
               const SqFaceLines *restrict face)
{
  SqNodes nodes[SQ_LINE_NODES];
  SqOfLines weight[SQ_LINE_NODES];
  for (int l = 0; l < SQ_LINES; l++) {
    light->from[l] = face->from[l];
    light->to[l] = face->to[l];
    light->middle[l] = face->middle_u[l];
    light->per_half[l] = face->per_half[l];
  }
  for (int k = 0; k < SQ_LINE_NODES; k++)
    for (int l = 0; l < SQ_LINES; l++) {
      nodes[k].u[l] = face->node_u[k][l];
      nodes[k].v[l] = face->node_v[k][l];
      nodes[k].own_m2[l] = face->node_square_m2[k][l];
    }
  if (read->risen)
    sq_light_rise (light, read, face, nodes);
  for (int k = 0; k < SQ_LINE_NODES; k++)
    sq_weigh (read, &nodes[k], weight[k]);
  for (int l = 0; l < SQ_LINES; l++) {
    float start = weight[0][l], middle = weight[1][l], end = weight[2][l];
    float p = light->per_half[l];
    light->c1[l] = middle;
    light->c2[l] = (end - start) * (0.25f * p);
    light->c3[l] = (start + end - 2.0f * middle) * (p * p * (1.0f / 6.0f));
  }
}

static inline float
sq_light_to (const SqLight *light, int l, float u)
{
  float s = u - light->middle[l];
  return s * (light->c1[l] + s * (light->c2[l] + s * light->c3[l]));
}

G_END_DECLS
