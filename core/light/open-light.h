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
  SqColumns cosine, cosine_u, cosine_v, square_u, square_v, own;
  gboolean dome;
  gboolean risen; /* for some column part of the face is below the horizon */
} SqReads;

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
  int risen = 0;
  double dome = by->dome ? 1.0 : 0.0;
  for (int c = 0; c < SQ_COLUMNS; c++) {
    double way_x = way.x - job->grid->step_m * (first + c);
    double square = way_x * way_x + (way.y * way.y + way.z * way.z);
    double own = 1.0 / (square > 1e-12 ? square : 1e-12);
    /* Only a dome needs the cosine itself, not what is proportional to it. */
    double scale = dome > 0.0 ? sqrt (own) : own;
    float cosine = (float)((x[c] * way_x + y[c] * way.y + z[c] * way.z) * scale);
    float cosine_u = (float)((x[c] * a.x + y[c] * a.y + z[c] * a.z) * scale);
    float cosine_v = (float)((x[c] * b.x + y[c] * b.y + z[c] * b.z) * scale);
    reads->cosine[c] = cosine;
    reads->cosine_u[c] = cosine_u;
    reads->cosine_v[c] = cosine_v;
    reads->square_u[c] = (float)((way_x * a.x + way.y * a.y + way.z * a.z) * 2.0 * own);
    reads->square_v[c] = (float)((way_x * b.x + way.y * b.y + way.z * b.z) * 2.0 * own);
    reads->own[c] = (float)own;
    risen |= cosine < fabsf (cosine_u) + fabsf (cosine_v);
  }
  reads->dome = by->dome;
  reads->risen = risen && !by->dome;
}

/* A line's light from its middle to u, in s = u - middle: s (c1 + s (c2 + s c3)). */
typedef struct {
  SqColumns from, to, middle, c1, c2, c3;
} SqLight;

/* Only what is above the receptor's horizon counts. */
static inline void
sq_light_rise (SqLight *restrict light, const SqReads *restrict reads, float height)
{
  const float slope = (float)SQ_LINES_SLOPE;
  for (int c = 0; c < SQ_COLUMNS; c++) {
    float climb = reads->cosine_u[c] + slope * reads->cosine_v[c];
    float crossing = -1.0f / (fabsf (climb) > SQ_LEAST_SLOPE ? climb : SQ_LEAST_SLOPE);
    float at = (reads->cosine[c] + reads->cosine_v[c] * height) * crossing;
    float lo = crossing < 0.0f ? at : -SQ_FAR, hi = crossing < 0.0f ? SQ_FAR : at;
    float from = sq_less (sq_more (light->from[c], lo), light->to[c]);
    light->to[c] = sq_more (sq_less (light->to[c], hi), from);
    light->from[c] = from;
  }
}

/* ---- Near the face: each line has a parabola through its light at start, middle and end ---- */

typedef struct {
  SqColumns u, v, own_m2;
} SqNode;

static inline float
sq_square_at (const SqReads *reads, const SqNode *node, int c)
{
  float square = (1.0f + reads->square_u[c] * node->u[c]) +
                 (reads->square_v[c] * node->v[c] + reads->own[c] * node->own_m2[c]);
  return sq_more (square, SQ_LEAST_SQUARE);
}

static inline float
sq_cosine_at (const SqReads *reads, const SqNode *node, int c)
{
  return reads->cosine[c] + (reads->cosine_u[c] * node->u[c] + reads->cosine_v[c] * node->v[c]);
}

static inline void
sq_weigh (const SqReads *restrict reads, const SqNode *restrict node, float *restrict weight)
{
  if (reads->dome)
    for (int c = 0; c < SQ_COLUMNS; c++) {
      float square = sq_square_at (reads, node, c);
      weight[c] = (sq_cosine_at (reads, node, c) + sqrtf (square)) / (square * square);
    }
  else
    for (int c = 0; c < SQ_COLUMNS; c++) {
      float square = sq_square_at (reads, node, c);
      weight[c] = sq_cosine_at (reads, node, c) / (square * square);
    }
}

static inline void
sq_light_near (SqLight *restrict light,
               const SqReads *restrict reads,
               const SqFaceLines *restrict face,
               int l)
{
  SqNode nodes[SQ_LINE_NODES];
  SqColumns per_half, weight[SQ_LINE_NODES];
  for (int c = 0; c < SQ_COLUMNS; c++) {
    light->from[c] = face->from[l];
    light->to[c] = face->to[l];
    light->middle[c] = face->middle_u[l];
    per_half[c] = face->per_half[l];
  }
  for (int k = 0; k < SQ_LINE_NODES; k++)
    for (int c = 0; c < SQ_COLUMNS; c++) {
      nodes[k].u[c] = face->node_u[k][l];
      nodes[k].v[c] = face->node_v[k][l];
      nodes[k].own_m2[c] = face->node_square_m2[k][l];
    }
  if (reads->risen) {
    float uu = (float)sq_vector_dot (face->half_across, face->half_across);
    float vv = (float)sq_vector_dot (face->half_up, face->half_up);
    float uv = 2.0f * (float)sq_vector_dot (face->half_across, face->half_up);
    sq_light_rise (light, reads, face->height[l]);
    for (int c = 0; c < SQ_COLUMNS; c++) {
      light->middle[c] = 0.5f * (light->from[c] + light->to[c]);
      per_half[c] = 2.0f / sq_more (light->to[c] - light->from[c], 1e-6f);
      nodes[0].u[c] = light->from[c];
      nodes[1].u[c] = light->middle[c];
      nodes[2].u[c] = light->to[c];
    }
    for (int k = 0; k < SQ_LINE_NODES; k++)
      for (int c = 0; c < SQ_COLUMNS; c++) {
        float u = nodes[k].u[c], v = face->height[l] + (float)SQ_LINES_SLOPE * u;
        nodes[k].v[c] = v;
        nodes[k].own_m2[c] = u * u * uu + u * v * uv + v * v * vv;
      }
  }
  for (int k = 0; k < SQ_LINE_NODES; k++)
    sq_weigh (reads, &nodes[k], weight[k]);
  for (int c = 0; c < SQ_COLUMNS; c++) {
    float start = weight[0][c], middle = weight[1][c], end = weight[2][c], p = per_half[c];
    light->c1[c] = middle;
    light->c2[c] = (end - start) * (0.25f * p);
    light->c3[c] = (start + end - 2.0f * middle) * (p * p * (1.0f / 6.0f));
  }
}

/* ---- Farther away: one polynomial of second degree for the whole face ---- */

/* On the line of height h the light is a + h ah + h² ahh + u (b + h bh) + u² c. */
typedef struct {
  SqColumns a, ah, ahh, b, bh, c;
} SqFarLight;

/* The projection on Legendre's polynomials, by Gauss's three nodes each way. */
static inline void
sq_far_light_init (SqFarLight *restrict far, const SqReads *restrict reads, const SqFaceLines *face)
{
  static const float places[3] = { -0.77459667f, 0.0f, 0.77459667f };
  static const float shares[3] = { 5.0f / 18.0f, 8.0f / 18.0f, 5.0f / 18.0f };
  const float slope = (float)SQ_LINES_SLOPE;
  SqColumns one = { 0 }, u1 = { 0 }, v1 = { 0 }, uv = { 0 }, u2 = { 0 }, v2 = { 0 };
  for (int k = 0; k < 9; k++) {
    float u = places[k % 3], v = places[k / 3], share = shares[k % 3] * shares[k / 3];
    SqVector way =
      sq_vector_sum (sq_vector_scale (face->half_across, u), sq_vector_scale (face->half_up, v));
    float own = (float)sq_vector_dot (way, way);
    float of_u = 3.0f * u, of_v = 3.0f * v, of_uv = 9.0f * u * v;
    float of_u2 = 7.5f * u * u - 2.5f, of_v2 = 7.5f * v * v - 2.5f;
    SqNode node;
    SqColumns weight;
    for (int c = 0; c < SQ_COLUMNS; c++) {
      node.u[c] = u;
      node.v[c] = v;
      node.own_m2[c] = own;
    }
    sq_weigh (reads, &node, weight);
    for (int c = 0; c < SQ_COLUMNS; c++) {
      float w = weight[c] * share;
      one[c] += w;
      u1[c] += w * of_u;
      v1[c] += w * of_v;
      uv[c] += w * of_uv;
      u2[c] += w * of_u2;
      v2[c] += w * of_v2;
    }
  }
  for (int c = 0; c < SQ_COLUMNS; c++) {
    float uu = 1.5f * u2[c], vv = 1.5f * v2[c];
    far->a[c] = one[c] - 0.5f * (u2[c] + v2[c]);
    far->ah[c] = v1[c];
    far->ahh[c] = vv;
    far->b[c] = u1[c] + slope * v1[c];
    far->bh[c] = uv[c] + 2.0f * slope * vv;
    far->c[c] = uu + slope * (uv[c] + slope * vv);
  }
}

static inline void
sq_light_far (SqLight *restrict light,
              const SqReads *restrict reads,
              const SqFarLight *restrict far,
              const SqFaceLines *restrict face,
              int l)
{
  float h = face->height[l];
  for (int c = 0; c < SQ_COLUMNS; c++) {
    light->from[c] = face->from[l];
    light->to[c] = face->to[l];
    light->middle[c] = 0.0f;
    light->c1[c] = far->a[c] + h * (far->ah[c] + h * far->ahh[c]);
    light->c2[c] = 0.5f * (far->b[c] + h * far->bh[c]);
    light->c3[c] = (1.0f / 3.0f) * far->c[c];
  }
  if (reads->risen)
    sq_light_rise (light, reads, h);
}

/* The sum over all lines, where none is cut by the horizon. */
static inline void
sq_far_light_sum (const SqFarLight *restrict far,
                  const SqFaceLines *restrict face,
                  float *restrict whole)
{
  for (int c = 0; c < SQ_COLUMNS; c++)
    whole[c] = far->a[c] * face->all + far->ahh[c] * face->all_height_height +
               (far->bh[c] * face->all_height_u + far->c[c] * face->all_u_u);
}

static inline float
sq_light_to (const SqLight *light, int c, float u)
{
  float s = u - light->middle[c];
  return s * (light->c1[c] + s * (light->c2[c] + s * light->c3[c]));
}

G_END_DECLS
