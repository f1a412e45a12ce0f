/* steady-math.h: exp2, log2, angles and the like that give the same bits everywhere */
#pragma once

#include <float.h>
#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

/* The C library's functions differ in their last digit from machine to machine, and cannot be
 * called for several numbers at once. These are made of + - * / sqrt and whole-number operations
 * alone, in a fixed order and without branches: they give the same bits with every compiler and
 * instruction set (given -ffp-contract=off), and a compiler can turn a plain loop over them into
 * vector instructions. Rounding is to nearest.
 *
 * Polynomials: our own, through the Chebyshev nodes of the function divided by its leading term,
 * in 60 digits, then rounded. Errors below are the greatest that the tests allow, in units of the
 * last place of the result (2.2e-16 and 1.2e-7 relative at worst). NaN is not passed on. */

static inline guint64
sq_steady_bits (double x)
{
  union {
    double x;
    guint64 bits;
  } both = { x };
  return both.bits;
}

static inline double
sq_steady_of_bits (guint64 bits)
{
  union {
    guint64 bits;
    double x;
  } both = { bits };
  return both.x;
}

static inline guint32
sq_steady_bitsf (float x)
{
  union {
    float x;
    guint32 bits;
  } both = { x };
  return both.bits;
}

static inline float
sq_steady_of_bitsf (guint32 bits)
{
  union {
    guint32 bits;
    float x;
  } both = { bits };
  return both.x;
}

/* Adding these rounds to a whole number, which then stands in the lowest bits. */
#define SQ_STEADY_ROUNDER 0x1.8p52
#define SQ_STEADY_ROUNDERF 0x1.8p23f

/* 2^x, within 2 units. 0 below -1022, 2^1023 from 1023 up. */
static inline double
sq_steady_exp2 (double x)
{
  double within = x > -1022.0 ? x : -1022.0;
  within = within < 1023.0 ? within : 1023.0;
  double rounded = within + SQ_STEADY_ROUNDER;
  double f = within - (rounded - SQ_STEADY_ROUNDER); /* -1/2 to 1/2 */
  double ff = f * f;
  double even = 0x1.e9d3fe3952179p-32;
  double odd = 0x1.e6063f7217bc6p-28;
  even = even * ff + 0x1.b524fae627834p-24;
  odd = odd * ff + 0x1.62bfd47773353p-20;
  even = even * ff + 0x1.ffcbfc670dcd4p-17;
  odd = odd * ff + 0x1.430913096fd9fp-13;
  even = even * ff + 0x1.5d87fe78a5276p-10;
  odd = odd * ff + 0x1.3b2ab6fba1ddap-7;
  even = even * ff + 0x1.c6b08d704a0c2p-5;
  odd = odd * ff + 0x1.ebfbdff82c598p-3;
  even = even * ff + 0x1.62e42fefa39efp-1;
  double p = even + odd * f;
  double scaled =
    sq_steady_of_bits (sq_steady_bits (1.0 + p * f) + (sq_steady_bits (rounded) << 52));
  return x >= -1022.0 ? scaled : 0.0;
}

/* Within 2 units. 0 below -126, 2^127 from 127 up. */
static inline float
sq_steady_exp2f (float x)
{
  float within = x > -126.0f ? x : -126.0f;
  within = within < 127.0f ? within : 127.0f;
  float rounded = within + SQ_STEADY_ROUNDERF;
  float f = within - (rounded - SQ_STEADY_ROUNDERF);
  float p = 0x1.44138ap-13f;
  p = p * f + 0x1.5f0890p-10f;
  p = p * f + 0x1.3b2a54p-7f;
  p = p * f + 0x1.c6af6cp-5f;
  p = p * f + 0x1.ebfbe0p-3f;
  p = p * f + 0x1.62e430p-1f;
  float scaled =
    sq_steady_of_bitsf (sq_steady_bitsf (1.0f + p * f) + (sq_steady_bitsf (rounded) << 23));
  return x >= -126.0f ? scaled : 0.0f;
}

/* The base-2 logarithm, within 3 units. Whatever is less than DBL_MIN gives -1022. */
static inline double
sq_steady_log2 (double x)
{
  /* x = m · 2^k, m from sqrt 1/2 to sqrt 2: the exponent is counted from there. */
  const guint64 root_half = G_GUINT64_CONSTANT (0x3fe6a09e667f3bcd);
  const guint64 one = G_GUINT64_CONSTANT (0x3ff0000000000000);
  guint64 bits = sq_steady_bits (x > DBL_MIN ? x : DBL_MIN);
  guint64 exponent = (bits + (one - root_half)) >> 52;
  double k = sq_steady_of_bits (exponent | sq_steady_bits (0x1p52)) - (0x1p52 + 1023.0);
  double m = sq_steady_of_bits (bits - (exponent << 52) + one);
  double s = (m - 1.0) / (m + 1.0), w = s * s; /* log m = 2 atanh s */
  double ww = w * w;
  double even = 0x1.880b4408a2f65p-3;
  double odd = 0x1.82aab217db0bep-3;
  even = even * ww + 0x1.0c9a6ec3ee6a0p-2;
  odd = odd * ww + 0x1.c69ba0c733d1cp-3;
  even = even * ww + 0x1.a61762a7863ffp-2;
  odd = odd * ww + 0x1.484b1401c7f94p-2;
  even = even * ww + 0x1.ec709dc3a03fdp-1;
  odd = odd * ww + 0x1.2776c50ef9c71p-1;
  double p = even + odd * w;
  return k + (s * 0x1.71547652b82fep+1 + s * w * p);
}

/* Within 3 units. Whatever is less than FLT_MIN gives -126. */
static inline float
sq_steady_log2f (float x)
{
  const guint32 root_half = 0x3f3504f3, one = 0x3f800000;
  guint32 bits = sq_steady_bitsf (x > FLT_MIN ? x : FLT_MIN);
  guint32 exponent = (bits + (one - root_half)) >> 23;
  float k = sq_steady_of_bitsf (exponent | sq_steady_bitsf (0x1p23f)) - (0x1p23f + 127.0f);
  float m = sq_steady_of_bitsf (bits - (exponent << 23) + one);
  float s = (m - 1.0f) / (m + 1.0f), w = s * s;
  float p = 0x1.b4fdf0p-2f;
  p = p * w + 0x1.27618cp-1f;
  p = p * w + 0x1.ec70a6p-1f;
  return k + (s * 0x1.715476p+1f + s * w * p);
}

/* @base^@power for a @base that is greater than 0. What log2 is off counts @power times. */
static inline double
sq_steady_pow (double base, double power)
{
  return sq_steady_exp2 (power * sq_steady_log2 (base));
}

static inline float
sq_steady_powf (float base, float power)
{
  return sq_steady_exp2f (power * sq_steady_log2f (base));
}

/* The angle of (x, y) from the x axis, -π to π, within 4 units. 0 for no length; zeros have no
 * sign here. Neither may be so great or small that x + y or y / x overflows. */
static inline double
sq_steady_atan2 (double y, double x)
{
  double ax = fabs (x), ay = fabs (y);
  double less = ay > ax ? ax : ay, more = ay > ax ? ay : ax;
  /* atan r = π/4 + atan ((r - 1) / (r + 1)) where r is past tan π/8. */
  double past = less - 0x1.a827999fcef32p-2 * more;
  double down = past > 0.0 ? less + more : more;
  double u = (past > 0.0 ? less - more : less) / (down > 0.0 ? down : 1.0), w = u * u;
  double ww = w * w;
  double even = -0x1.1b311bb48c215p-5;
  double odd = 0x1.0acd9e91a5a35p-6;
  even = even * ww - 0x1.ac7a5a79b3f26p-5;
  odd = odd * ww + 0x1.74dccfb93fff0p-5;
  even = even * ww - 0x1.110e87b4357d2p-4;
  odd = odd * ww + 0x1.e19a0bfa3eef9p-5;
  even = even * ww - 0x1.745d165dc9713p-4;
  odd = odd * ww + 0x1.3b1392d519db1p-4;
  even = even * ww - 0x1.249249248d7dcp-3;
  odd = odd * ww + 0x1.c71c71c303dbbp-4;
  even = even * ww - 0x1.5555555555555p-2;
  odd = odd * ww + 0x1.9999999999953p-3;
  double p = even + odd * w;
  double angle = u + u * w * p;
  angle = past > 0.0 ? G_PI_4 + angle : angle;
  angle = ay > ax ? G_PI_2 - angle : angle;
  angle = x < 0.0 ? G_PI - angle : angle;
  return y < 0.0 ? -angle : angle;
}

static inline float
sq_steady_atan2f (float y, float x)
{
  float ax = fabsf (x), ay = fabsf (y);
  float less = ay > ax ? ax : ay, more = ay > ax ? ay : ax;
  float past = less - 0x1.a8279ap-2f * more;
  float down = past > 0.0f ? less + more : more;
  float u = (past > 0.0f ? less - more : less) / (down > 0.0f ? down : 1.0f), w = u * u;
  float p = 0x1.5cfd96p-4f;
  p = p * w - 0x1.1f36a8p-3f;
  p = p * w + 0x1.996ba6p-3f;
  p = p * w - 0x1.555536p-2f;
  float angle = u + u * w * p;
  angle = past > 0.0f ? (float)G_PI_4 + angle : angle;
  angle = ay > ax ? (float)G_PI_2 - angle : angle;
  angle = x < 0.0f ? (float)G_PI - angle : angle;
  return y < 0.0f ? -angle : angle;
}

/* Angles of sines and cosines from -1 to 1; what is past is taken as the end. Within 5 units. */
static inline double
sq_steady_asin (double sine)
{
  double square = (1.0 - sine) * (1.0 + sine);
  return sq_steady_atan2 (sine, sqrt (square > 0.0 ? square : 0.0));
}

static inline float
sq_steady_asinf (float sine)
{
  float square = (1.0f - sine) * (1.0f + sine);
  return sq_steady_atan2f (sine, sqrtf (square > 0.0f ? square : 0.0f));
}

static inline double
sq_steady_acos (double cosine)
{
  double square = (1.0 - cosine) * (1.0 + cosine);
  return sq_steady_atan2 (sqrt (square > 0.0 ? square : 0.0), cosine);
}

static inline float
sq_steady_acosf (float cosine)
{
  float square = (1.0f - cosine) * (1.0f + cosine);
  return sq_steady_atan2f (sqrtf (square > 0.0f ? square : 0.0f), cosine);
}

/* The square of an angle from 0 to π/2, given as @h = 1 - its cosine. It is smooth where the angle
 * is 0, which the angle itself is not. Within 3 units. */
static inline double
sq_steady_angle_square (double h)
{
  double hh = h * h;
  double even = -0x1.8e9c6c8350946p-15;
  double odd = 0x1.667f59753704ep-18;
  even = even * hh - 0x1.16c6754cb33a4p-11;
  odd = odd * hh + 0x1.a5e91abc46996p-13;
  even = even * hh - 0x1.5c61e403724e4p-10;
  odd = odd * hh + 0x1.00ca4e91b22b1p-10;
  even = even * hh - 0x1.20b614204c74bp-10;
  odd = odd * hh + 0x1.68722d3e45d8ap-10;
  even = even * hh - 0x1.61896acf29ae0p-12;
  odd = odd * hh + 0x1.6ef482c498f97p-11;
  even = even * hh + 0x1.84e9ae42c4ee4p-18;
  odd = odd * hh + 0x1.49fa1b2b5fbddp-13;
  even = even * hh + 0x1.0ea939cb19a6bp-12;
  odd = odd * hh + 0x1.fbaa69886f138p-14;
  even = even * hh + 0x1.8f0d21b55d7e5p-10;
  odd = odd * hh + 0x1.4609786891378p-11;
  even = even * hh + 0x1.4ce19ab1752bap-7;
  odd = odd * hh + 0x1.f85da67210886p-9;
  even = even * hh + 0x1.6c16c16c15f72p-4;
  odd = odd * hh + 0x1.d41d41d4e69e4p-6;
  even = even * hh + 2.0;
  odd = odd * hh + 0x1.555555555555ap-2;
  double p = even + odd * h;
  return h * p;
}

static inline float
sq_steady_angle_squaref (float h)
{
  float p = 0x1.75212ap-9f;
  p = p * h - 0x1.9c4352p-8f;
  p = p * h + 0x1.424192p-7f;
  p = p * h - 0x1.9e74d2p-10f;
  p = p * h + 0x1.8ea8c2p-7f;
  p = p * h + 0x1.cd7028p-6f;
  p = p * h + 0x1.6c4182p-4f;
  p = p * h + 0x1.5554eep-2f;
  p = p * h + 2.0f;
  return h * p;
}

/* Sine (quarter 0) and cosine (quarter 1) of an angle up to 1e5 either way: within 2 units, or
 * 1e-16 near their zeros. For making things ready; not meant for loops. */
static inline double
sq_steady_quarter_sin (double angle_rad, guint quarter)
{
  double rounded = angle_rad * 0x1.45f306dc9c883p-1 + SQ_STEADY_ROUNDER;
  double k = rounded - SQ_STEADY_ROUNDER; /* quarter turns */
  /* π/2 in three parts, the first two short enough that k times them is exact. */
  double r = angle_rad - k * 0x1.921fb544p+0 - k * 0x1.0b4611a6p-34 - k * 0x1.3198a2e037073p-69;
  double w = r * r;
  double p = -0x1.ab16f5caa198ap-41;
  p = p * w + 0x1.61217d9252c03p-33;
  p = p * w - 0x1.ae645410e937bp-26;
  p = p * w + 0x1.71de3a545f836p-19;
  p = p * w - 0x1.a01a01a01992fp-13;
  p = p * w + 0x1.1111111111110p-7;
  p = p * w - 0x1.5555555555555p-3;
  double q = 0x1.ab779550c8d9bp-45;
  q = q * w - 0x1.9394b8bd50ae1p-37;
  q = q * w + 0x1.1eed8deac3dfep-29;
  q = q * w - 0x1.27e4fb77125c5p-22;
  q = q * w + 0x1.a01a01a019d06p-16;
  q = q * w - 0x1.6c16c16c16c16p-10;
  q = q * w + 0x1.5555555555555p-5;
  guint64 turned = sq_steady_bits (rounded) + quarter;
  double value = turned & 1 ? 1.0 - w / 2.0 + w * w * q : r + r * w * p;
  return turned & 2 ? -value : value;
}

static inline double
sq_steady_sin (double angle_rad)
{
  return sq_steady_quarter_sin (angle_rad, 0);
}

static inline double
sq_steady_cos (double angle_rad)
{
  return sq_steady_quarter_sin (angle_rad, 1);
}

static inline double
sq_steady_tan (double angle_rad)
{
  return sq_steady_sin (angle_rad) / sq_steady_cos (angle_rad);
}

G_END_DECLS
