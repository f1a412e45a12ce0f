/* face-lines.c: a flat lamp face as a few lines drawn over it, along which shadows are measured */
#include "light/face-lines.h"

#define SLOPE SQ_LINES_SLOPE

/* Where a line of height @height at u = 0 is within the rectangle. */
static void
cross_rectangle (double height, double *from, double *to)
{
  *from = MAX (-1.0, (-1.0 - height) / SLOPE);
  *to = MIN (1.0, (1.0 - height) / SLOPE);
}

/* And within the disc: u² + (height + slope · u)² = 1. */
static void
cross_disc (double height, double *from, double *to)
{
  double square = 1.0 + SLOPE * SLOPE, half = height * SLOPE / square;
  double reach = sqrt (MAX (half * half - (height * height - 1.0) / square, 0.0));
  *from = -half - reach;
  *to = -half + reach;
}

void
sq_face_lines_init (
  SqFaceLines *face, SqPoint middle, SqVector half_across, SqVector half_up, gboolean disc)
{
  *face = (SqFaceLines){
    .middle = middle,
    .half_across = half_across,
    .half_up = half_up,
    .along = sq_vector_sum (half_across, sq_vector_scale (half_up, SLOPE)),
  };
  double highest = disc ? sqrt (1.0 + SLOPE * SLOPE) : 1.0 + SLOPE;
  for (int l = 0; l < SQ_LINES; l++) {
    double height = highest * (2.0 * l + 1.0 - SQ_LINES) / SQ_LINES, from, to;
    if (disc)
      cross_disc (height, &from, &to);
    else
      cross_rectangle (height, &from, &to);
    face->height[l] = (float)height;
    face->from[l] = (float)from;
    face->to[l] = (float)to;
    face->middle_u[l] = (float)((from + to) / 2.0);
    face->per_half[l] = (float)(2.0 / (to - from));
    const double nodes[SQ_LINE_NODES] = { from, (from + to) / 2.0, to };
    for (int k = 0; k < SQ_LINE_NODES; k++) {
      double u = nodes[k], v = height + SLOPE * u;
      SqVector way = sq_vector_sum (sq_vector_scale (half_across, u), sq_vector_scale (half_up, v));
      face->node_u[k][l] = (float)u;
      face->node_v[k][l] = (float)v;
      face->node_square_m2[k][l] = (float)sq_vector_dot (way, way);
    }
  }
}
