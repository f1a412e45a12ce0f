/* face-contour.h: even faces by what their outline spans; for face-kernel.c alone */
#pragma once

#include "light/face-vectors.h"

G_BEGIN_DECLS

/* An edge of a polygon as it lies from each receptor: the angle that it spans, as its sine and
 * cosine times a length, and n · Γ: how its plane's normal stands to the receptor's. */
typedef struct {
  SqReal sine[SQ_FACE_BLOCK], cosine[SQ_FACE_BLOCK], facing[SQ_FACE_BLOCK];
} SqContourEdge;

static inline void
sq_contour_edge (SqContourEdge *edge, gsize i, SqTriple a, SqTriple b, SqTriple normal)
{
  SqTriple plane = sq_triple_cross (a, b);
  SqReal length = sq_real_sqrt (sq_triple_dot (plane, plane));
  edge->sine[i] = length;
  edge->cosine[i] = sq_triple_dot (a, b);
  edge->facing[i] = sq_triple_dot (plane, normal) / (length > 0 ? length : 1);
}

/* + β · (n · Γ) */
static inline void
sq_contour_add (const SqContourEdge *edge, gsize n, SqReal *restrict sum)
{
  for (gsize i = 0; i < n; i++)
    sum[i] += sq_real_atan2 (edge->sine[i], edge->cosine[i]) * edge->facing[i];
}

/* E = L/2 · | sum of β · (n · Γ) |, see light/area.h. */
static inline void
sq_sum_contour (const SqFaceSums *sums, const SqRealReceptors *block, gsize n, SqReal *restrict lux)
{
  const SqReal half = (SqReal)(sums->luminance_cd_m2 / 2.0);
  SqContourEdge edge;
  SqReal sum[SQ_FACE_BLOCK] = { 0 };
  for (guint k = 0; k < sums->n_corners; k++) {
    const SqTriple from = sq_triple_from_origin (sums, sums->corners[k]);
    const SqTriple to =
      sq_triple_from_origin (sums, sums->corners[k + 1 < sums->n_corners ? k + 1 : 0]);
    for (gsize i = 0; i < n; i++) {
      SqTriple at = sq_stands_at (block, i);
      sq_contour_edge (&edge, i, sq_triple_minus (from, at), sq_triple_minus (to, at),
                       sq_looks_along (block, i));
    }
    sq_contour_add (&edge, n, sum);
  }
  for (gsize i = 0; i < n; i++)
    lux[i] = sq_real_abs (sum[i]) * half;
}

/* The point of the line from a to b on the horizon, their heights over it being @high and @low. */
static inline SqTriple
sq_contour_crossing (SqTriple a, SqTriple b, SqReal high, SqReal low)
{
  SqReal apart = high - low;
  return sq_triple_plus (a,
                         sq_triple_times (sq_triple_minus (b, a), high / (apart != 0 ? apart : 1)));
}

static inline SqTriple
sq_triple_choose (gboolean first, SqTriple a, SqTriple b)
{
  return (SqTriple){ first ? a.x : b.x, first ? a.y : b.y, first ? a.z : b.z };
}

/* The same of what is above the receptor's horizon: edges end there, and one more goes along it
 * from where the outline leaves to where it comes back. */
static inline void
sq_sum_cut_contour (const SqFaceSums *sums,
                    const SqRealReceptors *block,
                    gsize n,
                    SqReal *restrict lux)
{
  const SqReal half = (SqReal)(sums->luminance_cd_m2 / 2.0);
  const SqTriple first = sq_triple_from_origin (sums, sums->corners[0]);
  SqContourEdge edge;
  SqTriple leaves[SQ_FACE_BLOCK], enters[SQ_FACE_BLOCK];
  SqReal sum[SQ_FACE_BLOCK] = { 0 };
  for (gsize i = 0; i < n; i++)
    leaves[i] = enters[i] = sq_triple_minus (first, sq_stands_at (block, i));
  for (guint k = 0; k < sums->n_corners; k++) {
    const SqTriple from = sq_triple_from_origin (sums, sums->corners[k]);
    const SqTriple to =
      sq_triple_from_origin (sums, sums->corners[k + 1 < sums->n_corners ? k + 1 : 0]);
    for (gsize i = 0; i < n; i++) {
      SqTriple at = sq_stands_at (block, i), normal = sq_looks_along (block, i);
      SqTriple a = sq_triple_minus (from, at), b = sq_triple_minus (to, at);
      SqReal a_high = sq_triple_dot (a, normal), b_high = sq_triple_dot (b, normal);
      SqTriple crossing = sq_contour_crossing (a, b, a_high, b_high);
      gboolean down = (a_high >= 0) & (b_high < 0), up = (a_high < 0) & (b_high >= 0);
      leaves[i] = sq_triple_choose (down, crossing, leaves[i]);
      enters[i] = sq_triple_choose (up, crossing, enters[i]);
      /* Below at both ends, an edge shrinks to a point. */
      gboolean below = (a_high < 0) & (b_high < 0);
      a = sq_triple_choose (up, crossing, a);
      b = sq_triple_choose (down, crossing, sq_triple_choose (below, a, b));
      sq_contour_edge (&edge, i, a, b, normal);
    }
    sq_contour_add (&edge, n, sum);
  }
  for (gsize i = 0; i < n; i++)
    sq_contour_edge (&edge, i, leaves[i], enters[i], sq_looks_along (block, i));
  sq_contour_add (&edge, n, sum);
  for (gsize i = 0; i < n; i++)
    lux[i] = sq_real_abs (sum[i]) * half;
}

/* The corners of the ribbon go round: (-1, -1), (1, -1), (1, 1), (-1, 1). */
static inline void
sq_sum_ribbon (const SqFaceSums *sums, const SqRealReceptors *block, gsize n, SqReal *restrict lux)
{
  const SqTriple at = sq_triple_from_origin (sums, sums->at),
                 axis = sq_triple_of (sums->frame.right);
  const SqTriple along = sq_triple_times (axis, (SqReal)(sums->length_m / 2.0));
  const SqReal wide = (SqReal)(sums->across_m / 2.0), half = (SqReal)(sums->luminance_cd_m2 / 2.0);
  SqContourEdge edge;
  SqReal sum[SQ_FACE_BLOCK] = { 0 };
  for (int k = 0; k < 4; k++) {
    const SqReal from_along = k == 0 || k == 3 ? -1 : 1, from_across = k < 2 ? -1 : 1;
    const SqReal to_along = k < 2 ? 1 : -1, to_across = k == 0 || k == 3 ? -1 : 1;
    for (gsize i = 0; i < n; i++) {
      SqTriple middle = sq_triple_minus (at, sq_stands_at (block, i));
      SqTriple aside =
        sq_triple_minus (middle, sq_triple_times (axis, sq_triple_dot (middle, axis)));
      SqReal square = sq_triple_dot (aside, aside);
      SqTriple across = sq_triple_times (sq_triple_cross (axis, aside),
                                         wide / sq_real_sqrt (square > 0 ? square : 1));
      SqTriple from =
        sq_triple_plus (middle, sq_triple_plus (sq_triple_times (along, from_along),
                                                sq_triple_times (across, from_across)));
      SqTriple to = sq_triple_plus (middle, sq_triple_plus (sq_triple_times (along, to_along),
                                                            sq_triple_times (across, to_across)));
      sq_contour_edge (&edge, i, from, to, sq_looks_along (block, i));
    }
    sq_contour_add (&edge, n, sum);
  }
  for (gsize i = 0; i < n; i++)
    lux[i] = sq_real_abs (sum[i]) * half;
}

/* I / (2 D²) · ((2 - 2 √(1 - s²)) / s² + cosine), s the radius over the distance D: the solid angle
 * and the vector of an even ball, as sq_area_dome() adds them. */
static inline void
sq_sum_ball_dome (const SqFaceSums *sums,
                  const SqRealReceptors *block,
                  gsize n,
                  SqReal *restrict lux)
{
  const SqTriple at = sq_triple_from_origin (sums, sums->at);
  const SqReal candela = (SqReal)(sums->intensity->peak_cd * sums->passing->factor);
  const SqReal radius_square = (SqReal)(sums->radius_m * sums->radius_m);
  for (gsize i = 0; i < n; i++) {
    SqTriple way = sq_triple_minus (at, sq_stands_at (block, i));
    SqReal square = sq_real_max (sq_triple_dot (way, way), radius_square);
    SqReal cosine = sq_triple_dot (way, sq_looks_along (block, i)) / sq_real_sqrt (square);
    SqReal spread = 2 / (1 + sq_real_sqrt (1 - radius_square / square));
    lux[i] = candela * (spread + cosine) / (2 * square);
  }
}

G_END_DECLS
