/* test-quantity-format.c: numbers with units written for people, and read back */
#include <glib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "base/quantity.h"

/* International yard and pound agreement, 1959: both exact. */
#define FT 0.3048
#define IN (FT / 12)
#define LB 0.45359237
#define FC (1 / (FT * FT)) /* lm/ft² in lm/m² = 10.763910416709722 */

#define M SQ_METRIC
#define I SQ_IMPERIAL
#define GAP "\u00a0"
#define MINUS "\u2212"

static void
check_text (double value, SqDimension dimension, SqUnits units, const char *expected)
{
  g_autofree char *text = sq_quantity_format (value, dimension, units);
  if (strcmp (text, expected) != 0)
    g_error ("%.17g was written “%s”, not “%s”", value, text, expected);
}

/* clang-format off */
static void
test_written (void)
{
  const struct {
    double value;
    SqDimension dimension;
    SqUnits units;
    const char *expected;
  } rows[] = {
    { 2.1, SQ_LENGTH, M, "2.10" GAP "m" },
    { 12.346, SQ_LENGTH, M, "12.35" GAP "m" },
    { -0.5, SQ_LENGTH, M, MINUS "0.50" GAP "m" },
    { -0.001, SQ_LENGTH, M, "0.00" GAP "m" },
    { 9.999, SQ_LENGTH, M, "10.00" GAP "m" },
    { 82.75 * IN, SQ_LENGTH, I, "6'10¾\"" },
    { 78 * IN, SQ_LENGTH, I, "6'6\"" },
    { 6 * FT, SQ_LENGTH, I, "6'0\"" },
    { 72.25 * IN, SQ_LENGTH, I, "6'0¼\"" },
    { 71.9 * IN, SQ_LENGTH, I, "6'0\"" },
    { -78.5 * IN, SQ_LENGTH, I, MINUS "6'6½\"" },
    { 10.75 * IN, SQ_LENGTH, I, "10¾\"" },
    { 0.5 * IN, SQ_LENGTH, I, "½\"" },
    { 0, SQ_LENGTH, I, "0\"" },
    { -0.1 * IN, SQ_LENGTH, I, "0\"" },
    { 35, SQ_MILLIMETRES, I, "35" GAP "mm" },
    { 24.892, SQ_MILLIMETRES, M, "24.89" GAP "mm" },
    { 2.5, SQ_SECTION, I, "2.5" GAP "mm²" },
    { 172.8, SQ_ANGLE, M, "172.8°" },
    { -45, SQ_ANGLE, I, MINUS "45°" },
    { 127, SQ_ILLUMINANCE, M, "127" GAP "lx" },
    { 127, SQ_ILLUMINANCE, I, "11.8" GAP "fc" }, /* 127 / 10.7639 = 11.799 */
    { 12 * FC, SQ_ILLUMINANCE, I, "12" GAP "fc" },
    { 1250, SQ_ILLUMINANCE, M, "1250" GAP "lx" },
    { 1250 * FC, SQ_ILLUMINANCE, I, "1250" GAP "fc" },
    { 123456.4, SQ_ILLUMINANCE, M, "123456" GAP "lx" },
    { 999.7, SQ_ILLUMINANCE, M, "1000" GAP "lx" },
    { 99.96, SQ_ILLUMINANCE, M, "100" GAP "lx" },
    { 12.34, SQ_ILLUMINANCE, M, "12.3" GAP "lx" },
    { 1.234, SQ_ILLUMINANCE, M, "1.23" GAP "lx" },
    { 0.2346, SQ_ILLUMINANCE, M, "0.235" GAP "lx" },
    { 0.0123, SQ_ILLUMINANCE, M, "0.012" GAP "lx" },
    { 1e-9, SQ_ILLUMINANCE, M, "0" GAP "lx" },
    { 40, SQ_LUMINANCE, I, "40" GAP "cd/m²" },
    { 25000, SQ_INTENSITY, I, "25000" GAP "cd" },
    { 806, SQ_FLUX, I, "806" GAP "lm" },
    { 3200.4, SQ_TEMPERATURE, M, "3200" GAP "K" },
    { 70, SQ_CELSIUS, I, "70" GAP "°C" },
    { -137, SQ_MIRED, M, MINUS "137" GAP "mired" },
    { 4.5, SQ_POWER, M, "4.5" GAP "W" },
    { 650, SQ_POWER, M, "650" GAP "W" },
    { 999.4, SQ_POWER, M, "999" GAP "W" },
    { 999.6, SQ_POWER, M, "1" GAP "kW" },
    { 1200, SQ_POWER, M, "1.2" GAP "kW" },
    { 18000, SQ_POWER, I, "18" GAP "kW" },
    { 12345, SQ_POWER, M, "12.3" GAP "kW" },
    { 230, SQ_VOLTAGE, M, "230" GAP "V" },
    { 5.42, SQ_CURRENT, M, "5.4" GAP "A" },
    { 59.94, SQ_FREQUENCY, M, "59.94" GAP "Hz" },
    { 0.5, SQ_FRACTION, M, "50" GAP "%" },
    { 1, SQ_FRACTION, I, "100" GAP "%" },
    { 0.0254, SQ_FRACTION, M, "2.5" GAP "%" },
    { 0.0999, SQ_FRACTION, M, "10" GAP "%" },
    { 0.354, SQ_FRACTION, M, "35" GAP "%" },
    { 6.4, SQ_MASS, M, "6.4" GAP "kg" },
    { 40 * LB, SQ_MASS, I, "40" GAP "lb" },
    { 1.5, SQ_HOURS, M, "1.5" GAP "h" },
    { 24000 / 1001.0, SQ_FRAME_RATE, M, "23.976" GAP "fps" }, /* SMPTE ST 2036: 24/1.001 */
    { 0.05, SQ_PER_METRE, M, "0.05" GAP "/m" },
    { 0.05 / FT, SQ_PER_METRE, I, "0.05" GAP "/ft" },
    { 2.391, SQ_PLAIN, M, "2.391" },
    { 4, SQ_PLAIN, I, "4" },
    { -0.0001, SQ_PLAIN, I, "0" },
    { NAN, SQ_LENGTH, I, "–" },
    { NAN, SQ_T_STOP, M, "–" },
    { INFINITY, SQ_LENGTH, M, "∞" },
    { -INFINITY, SQ_STOPS, M, MINUS "∞" },
    { 1.2345e20, SQ_LENGTH, M, "1.234e+20" GAP "m" }, /* the double is below 1.2345e20 */
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    check_text (rows[i].value, rows[i].dimension, rows[i].units, rows[i].expected);
}

static void
test_stops (void)
{
  const struct {
    double value;
    const char *expected;
  } rows[] = {
    { 0, "0" GAP "stops" },
    { -0.16, "0" GAP "stops" },
    { 0.17, "⅓" GAP "stop" },
    { 0.41, "⅓" GAP "stop" },
    { 0.42, "½" GAP "stop" },
    { 0.58, "½" GAP "stop" },
    { 0.59, "⅔" GAP "stop" },
    { 0.83, "⅔" GAP "stop" },
    { 0.84, "1" GAP "stop" },
    { 0.999, "1" GAP "stop" },
    { 1.1, "1" GAP "stop" },
    { -1, MINUS "1" GAP "stop" },
    { -1.5, MINUS "1½" GAP "stops" },
    { -0.5, MINUS "½" GAP "stop" },
    { 1.999, "2" GAP "stops" },
    { 9 + 2 / 3.0, "9⅔" GAP "stops" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    check_text (rows[i].value, SQ_STOPS, M, rows[i].expected);
}

/* The series of lenses and meters: full 2^(k/2), half 2^(k/4) and third 2^(k/6) stops, as marked
 * (common practice, from memory) */
static void
test_t_stops (void)
{
  const char *const full[] = { "1", "1.4", "2", "2.8", "4", "5.6", "8", "11", "16", "22", "32" };
  const char *const half[] = { "1",   "1.2", "1.4", "1.7", "2",   "2.4", "2.8", "3.3", "4", "4.8",
                               "5.6", "6.7", "8",   "9.5", "11",  "13",  "16",  "19",  "22" };
  const char *const third[] = { "1",   "1.1", "1.2", "1.4", "1.6", "1.8", "2",  "2.2", "2.5",
                                "2.8", "3.2", "3.5", "4",   "4.5", "5",   "5.6", "6.3", "7.1",
                                "8",   "9",   "10",  "11",  "13",  "14",  "16", "18",  "20", "22" };
  const struct {
    const char *const *marks;
    gsize count;
    double per_stop;
  } series[] = {
    { full, G_N_ELEMENTS (full), 1 },
    { half, G_N_ELEMENTS (half), 2 },
    { third, G_N_ELEMENTS (third), 3 },
  };
  for (gsize s = 0; s < G_N_ELEMENTS (series); s++)
    for (gsize k = 0; k < series[s].count; k++) {
      g_autofree char *expected = g_strconcat ("T", series[s].marks[k], NULL);
      check_text (exp2 ((double)k / series[s].per_stop / 2), SQ_T_STOP, M, expected);
      check_text (g_ascii_strtod (series[s].marks[k], NULL), SQ_T_STOP, I, expected);
    }
  check_text (1.3, SQ_T_STOP, M, "T1.3");
  check_text (5.65, SQ_T_STOP, M, "T5.6");
  check_text (5.7, SQ_T_STOP, M, "T5.7");
  check_text (-0.001, SQ_T_STOP, M, "T0");
  check_text (0.95, SQ_T_STOP, M, "T0.95");
  check_text (9.96, SQ_T_STOP, M, "T10");
}
/* clang-format on */

/* Larger T-numbers never show a smaller mark. */
static void
test_t_stops_rise (void)
{
  double before = 0;
  for (double number = 0.5; number < 130; number *= 1.0005) {
    g_autofree char *text = sq_quantity_format (number, SQ_T_STOP, M);
    double shown = g_ascii_strtod (text + 1, NULL);
    g_assert_cmpfloat (shown, >=, before);
    before = shown;
  }
}

static void
test_inches_carry (void)
{
  for (int eighths = 0; eighths < 12 * 8 * 8; eighths++) {
    g_autofree char *text = sq_quantity_format (eighths * IN / 8 - 1e-9, SQ_LENGTH, I);
    const char *foot = strchr (text, '\'');
    const char *inches = foot ? foot + 1 : text;
    g_assert_cmpfloat (g_ascii_strtod (inches, NULL), <, 12);
    g_assert_true (g_str_has_suffix (text, "\""));
  }
}

/* The furthest that a value read back may be from the one written: half of what is rounded to, or
 * all of it where marks are engraved low. Written from the header, in the unit of files. */
static double
rounding_step (double value, SqDimension dimension, SqUnits units)
{
  gboolean imperial = units == SQ_IMPERIAL;
  double size = fabs (value);
  switch (dimension) {
  case SQ_LENGTH:
    return imperial ? IN / 8 : 0.005;
  case SQ_ILLUMINANCE:
    return MAX (MIN (size * 0.005, imperial ? FC / 2 : 0.5), imperial ? FC / 2000 : 0.0005);
  case SQ_LUMINANCE:
  case SQ_INTENSITY:
  case SQ_FLUX:
    return MAX (MIN (size * 0.005, 0.5), 0.0005);
  case SQ_PER_METRE:
    return MAX (size * 0.005, imperial ? 5e-6 / FT : 5e-6);
  case SQ_POWER:
    return MAX (size * 0.005, 0.05);
  case SQ_FRACTION:
    return size < 0.1 ? 0.0005 : 0.005;
  case SQ_STOPS:
    return 1 / 6.0;
  case SQ_T_STOP:
    return size < 10 ? 0.1 : 1;
  case SQ_MASS:
    return imperial ? 0.05 * LB : 0.05;
  case SQ_TEMPERATURE:
  case SQ_CELSIUS:
  case SQ_MIRED:
    return 0.5;
  case SQ_ANGLE:
  case SQ_VOLTAGE:
  case SQ_CURRENT:
    return 0.05;
  case SQ_MILLIMETRES:
  case SQ_SECTION:
  case SQ_FREQUENCY:
  case SQ_HOURS:
    return 0.005;
  case SQ_PLAIN:
  case SQ_FRAME_RATE:
    return 0.0005;
  case SQ_DIMENSIONS:
    break;
  }
  g_assert_not_reached ();
}

/* Values over eight decades, as negative as positive where that makes sense */
static double
random_value (GRand *random, SqDimension dimension)
{
  double size = pow (10, g_rand_double_range (random, -4, 4));
  if (dimension == SQ_T_STOP)
    return pow (2, g_rand_double_range (random, 0, 6));
  if (dimension == SQ_FRACTION)
    return g_rand_double (random);
  return g_rand_boolean (random) ? -size : size;
}

static void
check_round_trip (double value, SqDimension dimension, SqUnits units)
{
  const double slack = 1e-9; /* relative, for ties and conversions */
  g_autofree char *text = sq_quantity_format (value, dimension, units);
  double back = NAN;
  g_autoptr (GError) error = NULL;
  gboolean read = sq_quantity_parse (text, dimension, units, NAN, &back, &error);
  if (!read)
    g_error ("%.17g: %s", value, error->message);
  double step = rounding_step (value, dimension, units);
  if (!(fabs (back - value) <= step + slack * (1 + fabs (value))))
    g_error ("%.17g was written “%s” and read back %.17g", value, text, back);
}

static void
test_round_trip (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (1959);
  const int values = 1000;
  for (int d = 0; d < SQ_DIMENSIONS; d++)
    for (int units = SQ_METRIC; units <= SQ_IMPERIAL; units++)
      for (int i = 0; i < values; i++)
        check_round_trip (random_value (random, (SqDimension)d), (SqDimension)d, (SqUnits)units);
}

/* Beyond fixed decimals, too */
static void
test_round_trip_huge (void)
{
  for (int d = 0; d < SQ_DIMENSIONS; d++)
    for (int units = SQ_METRIC; units <= SQ_IMPERIAL; units++)
      for (double value = 1e14; value < 1e250; value *= 12.3) {
        g_autofree char *text = sq_quantity_format (value, (SqDimension)d, (SqUnits)units);
        double back = NAN;
        g_assert_true (sq_quantity_parse (text, (SqDimension)d, (SqUnits)units, NAN, &back, NULL));
        g_assert_cmpfloat (fabs (back / value - 1), <=, 0.005); /* three figures, of power */
      }
}

/* What is written is all there is to read: written again, it is the same. */
static void
test_written_twice (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (78);
  for (int i = 0; i < 20000; i++) {
    SqDimension dimension = (SqDimension)g_rand_int_range (random, 0, SQ_DIMENSIONS);
    SqUnits units = g_rand_boolean (random) ? SQ_IMPERIAL : SQ_METRIC;
    g_autofree char *first =
      sq_quantity_format (random_value (random, dimension), dimension, units);
    double back = NAN;
    g_assert_true (sq_quantity_parse (first, dimension, units, NAN, &back, NULL));
    check_text (back, dimension, units, first);
  }
}

/* Points and commas must not follow the locale. */
static void
check_locale_free (void)
{
  double value = 0;
  g_assert_true (sq_quantity_parse ("1234.5", SQ_PLAIN, M, NAN, &value, NULL));
  g_assert_cmpfloat (value, ==, 1234.5);
  g_assert_true (sq_quantity_parse ("1234,5", SQ_PLAIN, M, NAN, &value, NULL));
  g_assert_cmpfloat (value, ==, 1234.5);
  g_assert_true (sq_quantity_parse ("6' 6 1/2\"", SQ_LENGTH, M, NAN, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 78.5 * IN, 1e-15);
  check_text (1234.5, SQ_LENGTH, M, "1234.50" GAP "m");
  check_text (1234.5 * FT, SQ_LENGTH, I, "1234'6\"");
  check_text (1.25, SQ_ILLUMINANCE, M, "1.25" GAP "lx");
  check_text (1250, SQ_POWER, M, "1.25" GAP "kW");
  check_text (2.8, SQ_T_STOP, M, "T2.8");
}

static void
test_locale_here (void)
{
  check_locale_free ();
  g_assert_nonnull (setlocale (LC_NUMERIC, "C"));
  check_locale_free ();
}

static void
test_comma_locales (void)
{
  static const char *const names[] = {
    "de_DE.UTF-8", "de_DE.utf8",  "de_DE",       "fr_FR.UTF-8", "nb_NO.UTF-8",
    "nl_NL.UTF-8", "ru_RU.UTF-8", "pl_PL.UTF-8", "es_ES.UTF-8", "pt_BR.UTF-8",
  };
  int found = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++) {
    if (setlocale (LC_NUMERIC, names[i]) && *localeconv ()->decimal_point == ',') {
      found++;
      check_locale_free ();
    }
  }
  setlocale (LC_NUMERIC, "C");
  g_test_message ("%d locales with a decimal comma", found);
  if (found == 0)
    g_test_skip ("no locale with a decimal comma is installed, such as de_DE.UTF-8");
}

int
main (int argc, char *argv[])
{
  setlocale (LC_CTYPE, "");
  setlocale (LC_NUMERIC, ""); /* messages stay as written here */
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity/format/locale of the user", test_locale_here);
  g_test_add_func ("/quantity/format/locales with a decimal comma", test_comma_locales);
  g_test_add_func ("/quantity/format/as the trade reads it", test_written);
  g_test_add_func ("/quantity/format/stops", test_stops);
  g_test_add_func ("/quantity/format/T-stops as marked", test_t_stops);
  g_test_add_func ("/quantity/format/T-stops never step back", test_t_stops_rise);
  g_test_add_func ("/quantity/format/twelve inches carry", test_inches_carry);
  g_test_add_func ("/quantity/format/read back within the rounding", test_round_trip);
  g_test_add_func ("/quantity/format/huge values read back", test_round_trip_huge);
  g_test_add_func ("/quantity/format/what was read back is written the same", test_written_twice);
  return g_test_run ();
}
