/* test-steady-math.c: our own functions against the C library's, over their whole domains */
#include "light/steady-math.h"

#define ROUNDS 400000

/* How far @value is from @truth, in units of the last place of @truth. */
static double
units_off (double value, long double truth)
{
  int exponent;
  frexp ((double)truth, &exponent);
  exponent = MAX (exponent, DBL_MIN_EXP);
  return (double)fabsl ((long double)value - truth) / ldexp (1.0, exponent - DBL_MANT_DIG);
}

static double
units_offf (float value, double truth)
{
  int exponent;
  frexp (truth, &exponent);
  exponent = MAX (exponent, FLT_MIN_EXP);
  return fabs ((double)value - truth) / ldexp (1.0, exponent - FLT_MANT_DIG);
}

#define WITHIN(limit, off, what, ...)                                                              \
  if (!((off) <= (limit)))                                                                         \
  g_error ("%g units off at " what, (off), __VA_ARGS__)

static void
test_exp2 (void)
{
  for (int i = 0; i < ROUNDS; i++) {
    double x = i % 2 ? g_test_rand_double_range (-1022.0, 1023.0) //
                     : g_test_rand_double_range (-2.0, 2.0);
    WITHIN (2.0, units_off (sq_steady_exp2 (x), exp2l (x)), "%a", x);
    float y = (float)(i % 2 ? x / 8.2 : x);
    WITHIN (2.0, units_offf (sq_steady_exp2f (y), exp2 ((double)y)), "%a", y);
  }
  for (int k = -1022; k <= 1023; k++)
    g_assert_cmpfloat (sq_steady_exp2 (k), ==, ldexp (1.0, k));
  for (int k = -126; k <= 127; k++)
    g_assert_cmpfloat (sq_steady_exp2f (k), ==, ldexpf (1.0f, k));
}

static void
test_exp2_ends (void)
{
  static const double below[] = { -1022.0001, -5000.0, -1e300, -INFINITY };
  static const double above[] = { 1023.0, 1024.0, 1e300, INFINITY };
  for (gsize i = 0; i < G_N_ELEMENTS (below); i++) {
    g_assert_cmpfloat (sq_steady_exp2 (below[i]), ==, 0.0);
    g_assert_cmpfloat (sq_steady_exp2f ((float)MAX (below[i], -FLT_MAX)), ==, 0.0f);
    g_assert_cmpfloat (sq_steady_exp2 (above[i]), ==, 0x1p1023);
    g_assert_cmpfloat (sq_steady_exp2f ((float)MIN (above[i], FLT_MAX)), ==, 0x1p127f);
  }
}

static void
test_log2 (void)
{
  for (int i = 0; i < ROUNDS; i++) {
    double x = i % 2 ? exp2 (g_test_rand_double_range (-1022.0, 1024.0))
                     : g_test_rand_double_range (0.5, 2.0);
    WITHIN (3.0, units_off (sq_steady_log2 (x), log2l (x)), "%a", x);
    float y = (float)(i % 2 ? exp2 (g_test_rand_double_range (-126.0, 127.9)) : x);
    WITHIN (3.0, units_offf (sq_steady_log2f (y), log2 ((double)y)), "%a", y);
  }
  for (int k = -1022; k <= 1023; k++)
    g_assert_cmpfloat (sq_steady_log2 (ldexp (1.0, k)), ==, k);
  for (int k = -126; k <= 127; k++)
    g_assert_cmpfloat (sq_steady_log2f (ldexpf (1.0f, k)), ==, k);
  g_assert_cmpfloat (sq_steady_log2 (0.0), ==, -1022.0);
  g_assert_cmpfloat (sq_steady_log2 (-1.0), ==, -1022.0);
  g_assert_cmpfloat (sq_steady_log2f (0.0f), ==, -126.0f);
  g_assert_cmpfloat (sq_steady_log2 (DBL_MAX), ==, 1024.0);
}

/* pow is only used where its result is of everyday size. */
static void
test_pow (void)
{
  for (int i = 0; i < ROUNDS; i++) {
    double base = g_test_rand_double_range (0.01, 30.0), power = g_test_rand_double_range (0.1, 12);
    double off = fabs (sq_steady_pow (base, power) / pow (base, power) - 1.0);
    WITHIN (4e-14, off, "%a ^ %a", base, power);
    float b = (float)base, p = (float)power / 4.0f;
    double offf = fabs ((double)sq_steady_powf (b, p) / pow ((double)b, (double)p) - 1.0);
    WITHIN (6e-6, offf, "%a ^ %a", b, p);
  }
}

static void
test_atan2 (void)
{
  for (int i = 0; i < ROUNDS; i++) {
    double reach = exp2 (g_test_rand_double_range (-60.0, 60.0));
    double x = g_test_rand_double_range (-1.0, 1.0), y = g_test_rand_double_range (-1.0, 1.0);
    if (i % 2)
      y *= reach;
    WITHIN (4.0, units_off (sq_steady_atan2 (y, x), atan2l (y, x)), "%a, %a", y, x);
    float xf = (float)x, yf = (float)y;
    double truth = atan2 ((double)yf, (double)xf);
    WITHIN (4.0, units_offf (sq_steady_atan2f (yf, xf), truth), "%a, %a", yf, xf);
  }
  static const double rows[][2] = { { 0, 1 },  { 0, -1 }, { 1, 0 },   { -1, 0 },     { 1, 1 },
                                    { 1, -1 }, { -1, 1 }, { -1, -1 }, { 1e-300, 1 }, { 0, 0 } };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    double y = rows[i][0], x = rows[i][1];
    WITHIN (1.0, units_off (sq_steady_atan2 (y, x), atan2l (y, x)), "%g, %g", y, x);
    float yf = (float)y, xf = (float)x;
    WITHIN (1.0, units_offf (sq_steady_atan2f (yf, xf), atan2 ((double)yf, (double)xf)), "%g, %g",
            y, x);
  }
}

static void
test_asin_acos (void)
{
  for (int i = 0; i < ROUNDS; i++) {
    double x = g_test_rand_double_range (-1.0, 1.0);
    if (i % 3 == 0)
      x = copysign (1.0 - exp2 (g_test_rand_double_range (-52.0, 0.0)), x);
    WITHIN (5.0, units_off (sq_steady_asin (x), asinl (x)), "%a", x);
    WITHIN (5.0, units_off (sq_steady_acos (x), acosl (x)), "%a", x);
    float y = (float)x;
    WITHIN (5.0, units_offf (sq_steady_asinf (y), asin ((double)y)), "%a", y);
    WITHIN (5.0, units_offf (sq_steady_acosf (y), acos ((double)y)), "%a", y);
  }
  g_assert_cmpfloat (sq_steady_asin (1.5), ==, G_PI_2);
  g_assert_cmpfloat (sq_steady_acos (1.0), ==, 0.0);
  g_assert_cmpfloat (sq_steady_acos (-1.5), ==, G_PI);
}

/* 1 - cos g = 2 sin² (g / 2), in the C library's long doubles. */
static void
test_angle_square (void)
{
  for (int i = 0; i < ROUNDS; i++) {
    double h =
      i % 2 ? g_test_rand_double_range (0.0, 1.0) : exp2 (g_test_rand_double_range (-60.0, 0.0));
    long double g = 2.0L * asinl (sqrtl (h / 2.0L));
    WITHIN (3.0, units_off (sq_steady_angle_square (h), g * g), "%a", h);
    float hf = (float)h;
    double gf = 2.0 * asin (sqrt ((double)hf / 2.0));
    WITHIN (3.0, units_offf (sq_steady_angle_squaref (hf), gf * gf), "%a", hf);
  }
  g_assert_cmpfloat (sq_steady_angle_square (0.0), ==, 0.0);
}

static void
test_sin_cos_tan (void)
{
  for (int i = 0; i < ROUNDS; i++) {
    double x = i % 2 ? g_test_rand_double_range (-1e5, 1e5) : g_test_rand_double_range (-4.0, 4.0);
    g_assert_cmpfloat_with_epsilon (sq_steady_sin (x), sinl (x), 2.3e-16);
    g_assert_cmpfloat_with_epsilon (sq_steady_cos (x), cosl (x), 2.3e-16);
    double small = g_test_rand_double_range (0.0, 1.5);
    g_assert_cmpfloat_with_epsilon (sq_steady_tan (small) / tan (small), 1.0, 1e-15);
  }
  g_assert_cmpfloat (sq_steady_sin (0.0), ==, 0.0);
  g_assert_cmpfloat (sq_steady_cos (0.0), ==, 1.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/steady math/exp2", test_exp2);
  g_test_add_func ("/steady math/exp2 past its ends", test_exp2_ends);
  g_test_add_func ("/steady math/log2", test_log2);
  g_test_add_func ("/steady math/pow", test_pow);
  g_test_add_func ("/steady math/atan2", test_atan2);
  g_test_add_func ("/steady math/asin and acos", test_asin_acos);
  g_test_add_func ("/steady math/square of an angle", test_angle_square);
  g_test_add_func ("/steady math/sin, cos and tan", test_sin_cos_tan);
  return g_test_run ();
}
