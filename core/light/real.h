/* real.h: the number that a file calculates with, so that one formula serves two precisions */
#pragma once

#include "light/steady-math.h"

G_BEGIN_DECLS

/* Double, but for files that are compiled once more with SQ_REAL_IS_FLOAT. In formulas that are
 * written for both, constants are whole numbers or cast, lest a float become a double. */
#ifdef SQ_REAL_IS_FLOAT
typedef float SqReal;
#else
typedef double SqReal;
#endif

#define sq_real_exp2(x) _Generic((x), float : sq_steady_exp2f, double : sq_steady_exp2) (x)
#define sq_real_log2(x) _Generic((x), float : sq_steady_log2f, double : sq_steady_log2) (x)
#define sq_real_asin(x) _Generic((x), float : sq_steady_asinf, double : sq_steady_asin) (x)
#define sq_real_acos(x) _Generic((x), float : sq_steady_acosf, double : sq_steady_acos) (x)
#define sq_real_sqrt(x) _Generic((x), float : sqrtf, double : sqrt) (x)
#define sq_real_abs(x) _Generic((x), float : fabsf, double : fabs) (x)
#define sq_real_atan2(y, x) _Generic((y), float : sq_steady_atan2f, double : sq_steady_atan2) (y, x)
#define sq_real_angle_square(h)                                                                    \
  _Generic((h), float : sq_steady_angle_squaref, double : sq_steady_angle_square) (h)

/* These are selects, not calls: they become one instruction each. */
static inline SqReal
sq_real_max (SqReal a, SqReal b)
{
  return a > b ? a : b;
}

static inline SqReal
sq_real_min (SqReal a, SqReal b)
{
  return a < b ? a : b;
}

G_END_DECLS
