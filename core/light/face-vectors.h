/* face-vectors.h: points and directions in the precision of a kernel; for face-kernel.c alone */
#pragma once

#include "light/face-kernel.h"

G_BEGIN_DECLS

#ifdef SQ_REAL_IS_FLOAT
typedef SqQuickReceptors SqRealReceptors;
typedef SqQuickFaceKernel SqRealKernel;
#else
typedef SqReceptors SqRealReceptors;
typedef SqFaceKernel SqRealKernel;
#endif

/* Points are taken so many at a time: what is kept of them between loops stays near. */
#define SQ_FACE_BLOCK 64

/* Nearer than this to a place is on it. */
#define SQ_ON_IT_M 1e-9

typedef struct {
  SqReal x, y, z;
} SqTriple;

static inline SqTriple
sq_triple_of (SqVector v)
{
  return (SqTriple){ (SqReal)v.x, (SqReal)v.y, (SqReal)v.z };
}

/* Counted from the origin; the difference is taken in double precision. */
static inline SqTriple
sq_triple_from_origin (const SqFaceSums *sums, SqPoint place)
{
  return sq_triple_of (sq_vector_between (sums->origin, place));
}

static inline SqReal
sq_triple_dot (SqTriple a, SqTriple b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline SqTriple
sq_triple_minus (SqTriple a, SqTriple b)
{
  return (SqTriple){ a.x - b.x, a.y - b.y, a.z - b.z };
}

static inline SqTriple
sq_triple_plus (SqTriple a, SqTriple b)
{
  return (SqTriple){ a.x + b.x, a.y + b.y, a.z + b.z };
}

static inline SqTriple
sq_triple_cross (SqTriple a, SqTriple b)
{
  return (SqTriple){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}

static inline SqTriple
sq_triple_times (SqTriple a, SqReal by)
{
  return (SqTriple){ a.x * by, a.y * by, a.z * by };
}

static inline SqTriple
sq_stands_at (const SqRealReceptors *receptors, gsize i)
{
  return (SqTriple){ receptors->x_m[i], receptors->y_m[i], receptors->z_m[i] };
}

static inline SqTriple
sq_looks_along (const SqRealReceptors *receptors, gsize i)
{
  return (SqTriple){ receptors->nx[i], receptors->ny[i], receptors->nz[i] };
}

G_END_DECLS
