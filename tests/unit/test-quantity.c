/* test-quantity.c: numbers with units read as people type them */
#include <glib.h>
#include <locale.h>
#include <math.h>

#include "base/quantity.h"

/* International yard and pound agreement, 1959: both exact. */
#define FT 0.3048
#define IN (FT / 12)
#define LB 0.45359237
#define FC (1 / (FT * FT)) /* lm/ft² in lm/m² = 10.763910416709722 */

#define ROUNDING 1e-14 /* relative: a few roundings of double */
#define M SQ_METRIC
#define I SQ_IMPERIAL
#define NEVER 12345.0 /* what a failed parse must leave alone */

typedef struct {
  const char *text;
  SqDimension dimension;
  SqUnits units;
  double now;
  double expected;
} Row;

static void
check (const Row *row)
{
  double value = NEVER;
  g_autoptr (GError) error = NULL;
  gboolean read =
    sq_quantity_parse (row->text, row->dimension, row->units, row->now, &value, &error);
  if (!read)
    g_error ("%s: %s", row->text, error->message);
  g_assert_no_error (error);
  if (!(fabs (value - row->expected) <= ROUNDING * fabs (row->expected)))
    g_error ("%s gave %.17g, not %.17g", row->text, value, row->expected);
  g_assert_false (signbit (value) && value == 0);
}

#define CHECK_ALL(rows)                                                                            \
  for (gsize row_ = 0; row_ < G_N_ELEMENTS (rows); row_++)                                         \
  check (&rows[row_])

/* clang-format off */
static void
test_lengths (void)
{
  const Row rows[] = {
    { "2.1", SQ_LENGTH, M, NAN, 2.1 },
    { "2.1", SQ_LENGTH, I, NAN, 2.1 * FT },
    { "2.1 m", SQ_LENGTH, I, NAN, 2.1 },
    { "210cm", SQ_LENGTH, M, NAN, 2.1 },
    { "2100 mm", SQ_LENGTH, M, NAN, 2.1 },
    { "0.0021 km", SQ_LENGTH, M, NAN, 2.1 },
    { "2 m 10 cm", SQ_LENGTH, M, NAN, 2.1 },
    { "2m10cm5mm", SQ_LENGTH, M, NAN, 2.105 },
    { "2.1 METRES", SQ_LENGTH, M, NAN, 2.1 },
    { "1e-1 m", SQ_LENGTH, M, NAN, 0.1 },
    { ".5 m", SQ_LENGTH, M, NAN, 0.5 },
    { "5. m", SQ_LENGTH, M, NAN, 5 },
    { "-2.1 m", SQ_LENGTH, M, 7, -2.1 },
    { "+2.1 m", SQ_LENGTH, M, 7, 2.1 },
    { "−2.1 m", SQ_LENGTH, M, NAN, -2.1 },
    { "-0", SQ_LENGTH, M, NAN, 0 },
    { "\xc2\xa0" "2.1\xe2\x80\xaf" "m\t ", SQ_LENGTH, M, NAN, 2.1 },
    { "3 yd", SQ_LENGTH, M, NAN, 9 * FT },
    { "35 mm", SQ_MILLIMETRES, M, NAN, 35 },
    { "35", SQ_MILLIMETRES, I, NAN, 35 },
    { "1 in", SQ_MILLIMETRES, M, NAN, 25.4 },
    { "2.5 cm", SQ_MILLIMETRES, M, NAN, 25 },
    { "0.5 m", SQ_MILLIMETRES, M, NAN, 500 },
    { "2 cm + 1", SQ_MILLIMETRES, I, NAN, 21 },
  };
  CHECK_ALL (rows);
}

static void
test_feet_and_inches (void)
{
  const Row rows[] = {
    { "6'6\"", SQ_LENGTH, M, NAN, 78 * IN },
    { "6' 6\"", SQ_LENGTH, M, NAN, 78 * IN },
    { "6′6″", SQ_LENGTH, M, NAN, 78 * IN },
    { "6’6”", SQ_LENGTH, M, NAN, 78 * IN },
    { "6'6''", SQ_LENGTH, M, NAN, 78 * IN },
    { "6ft6in", SQ_LENGTH, M, NAN, 78 * IN },
    { "6 ft 6 in", SQ_LENGTH, M, NAN, 78 * IN },
    { "6 Feet 6 Inches", SQ_LENGTH, M, NAN, 78 * IN },
    { "6 ft 6 1/2 in", SQ_LENGTH, M, NAN, 78.5 * IN },
    { "6' 6 1/2\"", SQ_LENGTH, M, NAN, 78.5 * IN },
    { "6'6½\"", SQ_LENGTH, M, NAN, 78.5 * IN },
    { "6'½\"", SQ_LENGTH, M, NAN, 72.5 * IN },
    { "-6'6\"", SQ_LENGTH, M, NAN, -78 * IN },
    { "6.5'", SQ_LENGTH, M, NAN, 78 * IN },
    { "6 1/2'", SQ_LENGTH, M, NAN, 78 * IN },
    { "6½'", SQ_LENGTH, M, NAN, 78 * IN },
    { "78\"", SQ_LENGTH, M, NAN, 78 * IN },
    { "6'6", SQ_LENGTH, M, NAN, 78 * IN },
    { "6' 6 1/2", SQ_LENGTH, M, NAN, 78.5 * IN },
    { "6'-6\"", SQ_LENGTH, M, NAN, 78 * IN }, /* as on drawings */
    { "6'-6 1/2\"", SQ_LENGTH, M, NAN, 78.5 * IN },
    { "6' - 6\"", SQ_LENGTH, M, NAN, 66 * IN },
    { "6' -6\"", SQ_LENGTH, M, NAN, 66 * IN },
    { "6'-2'", SQ_LENGTH, M, NAN, 4 * FT },
    { "6'-2", SQ_LENGTH, I, NAN, 4 * FT },
    { "6'0\"", SQ_LENGTH, M, NAN, 6 * FT },
    { "1 yd 1 ft 1 in", SQ_LENGTH, M, NAN, 49 * IN },
  };
  CHECK_ALL (rows);
}

static void
test_other_units (void)
{
  const Row rows[] = {
    { "12 fc", SQ_ILLUMINANCE, M, NAN, 12 * FC },
    { "12", SQ_ILLUMINANCE, I, NAN, 12 * FC },
    { "127 lx", SQ_ILLUMINANCE, I, NAN, 127 },
    { "127", SQ_ILLUMINANCE, M, NAN, 127 },
    { "1.2 klx", SQ_ILLUMINANCE, M, NAN, 1200 },
    { "40 cd/m²", SQ_LUMINANCE, M, NAN, 40 },
    { "40 cd/m2", SQ_LUMINANCE, I, NAN, 40 },
    { "40 nits", SQ_LUMINANCE, M, NAN, 40 },
    { "1 fL", SQ_LUMINANCE, M, NAN, FC / G_PI }, /* 1/π cd/ft², by its definition */
    { "25 kcd", SQ_INTENSITY, M, NAN, 25000 },
    { "800 lm", SQ_FLUX, M, NAN, 800 },
    { "3200K", SQ_TEMPERATURE, M, NAN, 3200 },
    { "5.6 kK", SQ_TEMPERATURE, M, NAN, 5600 },
    { "70 °C", SQ_CELSIUS, M, NAN, 70 },
    { "70c", SQ_CELSIUS, M, NAN, 70 },
    { "−137 mired", SQ_MIRED, M, NAN, -137 },
    { "650 W", SQ_POWER, M, NAN, 650 },
    { "1.2 kW", SQ_POWER, M, NAN, 1200 },
    { "10K", SQ_POWER, M, NAN, 10000 },
    { "16 A", SQ_CURRENT, M, NAN, 16 },
    { "350 mA", SQ_CURRENT, M, NAN, 0.35 },
    { "230 V", SQ_VOLTAGE, M, NAN, 230 },
    { "50 Hz", SQ_FREQUENCY, M, NAN, 50 },
    { "45°", SQ_ANGLE, M, NAN, 45 },
    { "45 deg", SQ_ANGLE, M, NAN, 45 },
    { "52° 30' 36\"", SQ_ANGLE, M, NAN, 52.51 },
    { "1 rad", SQ_ANGLE, M, NAN, 180 / G_PI },
    { "18 kg", SQ_MASS, I, NAN, 18 },
    { "18", SQ_MASS, M, NAN, 18 },
    { "40 lb", SQ_MASS, M, NAN, 40 * LB },
    { "40", SQ_MASS, I, NAN, 40 * LB },
    { "2 lb 8 oz", SQ_MASS, M, NAN, 2.5 * LB },
    { "T2.8", SQ_T_STOP, M, NAN, 2.8 },
    { "T 2.8", SQ_T_STOP, M, NAN, 2.8 },
    { "t2,8", SQ_T_STOP, M, NAN, 2.8 },
    { "2.8", SQ_T_STOP, M, NAN, 2.8 },
    { "24 fps", SQ_FRAME_RATE, M, NAN, 24 },
    { "4 mm²", SQ_SECTION, I, NAN, 4 },
    { "4 mm2", SQ_SECTION, M, NAN, 4 },
    { "4", SQ_SECTION, I, NAN, 4 },
    { "0.05/m", SQ_PER_METRE, I, NAN, 0.05 },
    { "1/m", SQ_PER_METRE, I, NAN, 1 },
    { "0.05 1/m", SQ_PER_METRE, M, NAN, 0.05 },
    { "0.05", SQ_PER_METRE, I, NAN, 0.05 / FT },
    { "90 min", SQ_HOURS, M, NAN, 1.5 },
    { "1 h 30 min", SQ_HOURS, M, NAN, 1.5 },
    { "1:30", SQ_HOURS, M, NAN, 1.5 },
    { "-3:30", SQ_HOURS, M, NAN, -3.5 },
  };
  CHECK_ALL (rows);
}

static void
test_fractions (void)
{
  const Row rows[] = {
    { "50%", SQ_FRACTION, M, NAN, 0.5 },
    { "50 %", SQ_FRACTION, M, NAN, 0.5 },
    { "50 per cent", SQ_FRACTION, M, NAN, 0.5 },
    { "0.5", SQ_FRACTION, M, NAN, 0.5 },
    { "1", SQ_FRACTION, M, NAN, 1 },
    { "75", SQ_FRACTION, M, NAN, 0.75 },
    { "1.5", SQ_FRACTION, M, NAN, 0.015 },
    { "1/4", SQ_FRACTION, M, NAN, 0.25 },
    { "50% + 10", SQ_FRACTION, M, NAN, 0.6 },
    { "1 m / 4 m", SQ_FRACTION, M, NAN, 0.25 },
    { "1/2 stop", SQ_STOPS, M, NAN, 0.5 },
    { "½ stop", SQ_STOPS, M, NAN, 0.5 },
    { "½", SQ_STOPS, M, NAN, 0.5 },
    { "⅔", SQ_STOPS, M, NAN, 2 / 3.0 },
    { "1⅓ stops", SQ_STOPS, M, NAN, 4 / 3.0 },
    { "1 1/3 stops", SQ_STOPS, M, NAN, 4 / 3.0 },
    { "+1/3 stop", SQ_STOPS, M, 5, 1 / 3.0 },
    { "-1 stop", SQ_STOPS, M, 5, -1 },
    { "−1 stop", SQ_STOPS, M, 5, -1 },
    { "2 stops", SQ_STOPS, M, NAN, 2 },
    { "1/2", SQ_PLAIN, M, NAN, 0.5 },
    { "2.39", SQ_PLAIN, I, NAN, 2.39 },
  };
  CHECK_ALL (rows);
}

static void
test_glyphs (void)
{
  const Row rows[] = {
    { "¼", SQ_PLAIN, M, NAN, 1 / 4.0 }, { "½", SQ_PLAIN, M, NAN, 1 / 2.0 },
    { "¾", SQ_PLAIN, M, NAN, 3 / 4.0 }, { "⅓", SQ_PLAIN, M, NAN, 1 / 3.0 },
    { "⅔", SQ_PLAIN, M, NAN, 2 / 3.0 }, { "⅕", SQ_PLAIN, M, NAN, 1 / 5.0 },
    { "⅖", SQ_PLAIN, M, NAN, 2 / 5.0 }, { "⅗", SQ_PLAIN, M, NAN, 3 / 5.0 },
    { "⅘", SQ_PLAIN, M, NAN, 4 / 5.0 }, { "⅙", SQ_PLAIN, M, NAN, 1 / 6.0 },
    { "⅚", SQ_PLAIN, M, NAN, 5 / 6.0 }, { "⅛", SQ_PLAIN, M, NAN, 1 / 8.0 },
    { "⅜", SQ_PLAIN, M, NAN, 3 / 8.0 }, { "⅝", SQ_PLAIN, M, NAN, 5 / 8.0 },
    { "⅞", SQ_PLAIN, M, NAN, 7 / 8.0 }, { "3 ⅞", SQ_PLAIN, M, NAN, 31 / 8.0 },
  };
  CHECK_ALL (rows);
}

static void
test_arithmetic (void)
{
  const Row rows[] = {
    { "2.1 m + 30cm", SQ_LENGTH, M, NAN, 2.4 },
    { "(2+1)*0.5 m", SQ_LENGTH, M, NAN, 1.5 },
    { "(2+1) m", SQ_LENGTH, I, NAN, 3 },
    { "8'/2", SQ_LENGTH, M, NAN, 4 * FT },
    { "8'6\"/2", SQ_LENGTH, M, NAN, 51 * IN },
    { "2 m + 1", SQ_LENGTH, M, NAN, 3 },
    { "2 m + 1", SQ_LENGTH, I, NAN, 2 + FT },
    { "1 + 2 m", SQ_LENGTH, I, NAN, 2 + FT },
    { "1/2 m", SQ_LENGTH, M, NAN, 0.5 },
    { "1/-2 m", SQ_LENGTH, M, NAN, -0.5 },
    { "10 m/2/5", SQ_LENGTH, M, NAN, 1 },
    { "2 m - 1 m - 0.5 m", SQ_LENGTH, M, NAN, 0.5 },
    { "2 + 3 * 4", SQ_PLAIN, M, NAN, 14 },
    { "-2 * -(3 - 5)", SQ_PLAIN, M, NAN, -4 },
    { "2 × 3 · 4 ÷ 6", SQ_PLAIN, M, NAN, 4 },
    { "2x3 m", SQ_LENGTH, M, NAN, 6 },
    { "4 m * (1 m / 2 m)", SQ_LENGTH, M, NAN, 2 },
    { "4 m * 50%", SQ_LENGTH, M, NAN, 2 },
    { "50% * 4 m", SQ_LENGTH, M, NAN, 2 },
    { "4 m / 50%", SQ_LENGTH, M, NAN, 8 },
    { "1 m / 4 m", SQ_PLAIN, M, NAN, 0.25 },
    { "2 / (1 m / 4 m)", SQ_PLAIN, M, NAN, 8 },
    { "100 lx + 1 stop", SQ_ILLUMINANCE, M, NAN, 200 },
    { "100 lx - 1/2 stop", SQ_ILLUMINANCE, M, NAN, 100 / G_SQRT2 },
    { "T4/2", SQ_T_STOP, M, NAN, 2 },
  };
  CHECK_ALL (rows);
}

static void
test_relative (void)
{
  const Row rows[] = {
    { "x2", SQ_LENGTH, M, 1.5, 3 },
    { "×2", SQ_LENGTH, M, 1.5, 3 },
    { "*2", SQ_LENGTH, I, 1.5, 3 },
    { " X 2 ", SQ_MILLIMETRES, I, 35, 70 },
    { "/2", SQ_LENGTH, M, 3, 1.5 },
    { "/2 + 1 m", SQ_LENGTH, M, 3, 2.5 },
    { "x50%", SQ_LENGTH, M, 3, 1.5 },
    { "x2", SQ_FRACTION, M, 0.25, 0.5 },
    { "x2", SQ_STOPS, M, -1, -2 },
    { "+=0.5 m", SQ_LENGTH, M, 2, 2.5 },
    { "+=6\"", SQ_LENGTH, M, FT, 1.5 * FT },
    { "+=1", SQ_LENGTH, I, 2, 2 + FT },
    { "-=0.5 m", SQ_LENGTH, M, 2, 1.5 },
    { "−=0.5 m + 0.5 m", SQ_LENGTH, M, 2, 1 },
    { "+=10", SQ_FRACTION, M, 0.5, 0.6 },
    { "+=1/3 stop", SQ_STOPS, M, 1, 4 / 3.0 },
    { "+=1", SQ_PLAIN, M, 4, 5 },
    { "+1 stop", SQ_FRACTION, M, 0.25, 0.5 },
    { "-1 stop", SQ_ILLUMINANCE, I, 100, 50 },
    { "−1 stop", SQ_LUMINANCE, M, 100, 50 },
    { "+2 stops", SQ_INTENSITY, M, 100, 400 },
    { "-½ stop", SQ_FLUX, M, 100, 100 / G_SQRT2 },
    { "+1 stop - 2 stops", SQ_FLUX, M, 100, 50 },
    { "-=1 stop", SQ_FLUX, M, 100, 50 },
    { "-(1 stop + 1 stop)", SQ_FLUX, M, 100, 25 },
  };
  CHECK_ALL (rows);
}

static void
test_decimal_comma (void)
{
  const Row rows[] = {
    { "2,1 m", SQ_LENGTH, M, NAN, 2.1 },
    { "2,15", SQ_LENGTH, M, NAN, 2.15 },
    { "0,125 m", SQ_LENGTH, M, NAN, 0.125 },
    { ",5 m", SQ_LENGTH, M, NAN, 0.5 },
    { "1,2345", SQ_PLAIN, M, NAN, 1.2345 },
    { "1234,567", SQ_PLAIN, M, NAN, 1234.567 },
    { "2,5e3", SQ_PLAIN, M, NAN, 2500 },
  };
  CHECK_ALL (rows);
}
/* clang-format on */

static void
test_file_units (void)
{
  g_assert_cmpstr (sq_dimension_unit (SQ_LENGTH), ==, "m");
  g_assert_cmpstr (sq_dimension_unit (SQ_ILLUMINANCE), ==, "lx");
  g_assert_cmpstr (sq_dimension_unit (SQ_PLAIN), ==, "");
  g_assert_cmpstr (sq_dimension_unit (SQ_DIMENSIONS), ==, "");
  for (int d = 0; d < SQ_DIMENSIONS; d++) {
    const char *unit = sq_dimension_unit ((SqDimension)d);
    gboolean before = d == SQ_T_STOP;
    g_autofree char *text = g_strconcat (before ? unit : "", "0.3 ", before ? "" : unit, NULL);
    Row row = { text, (SqDimension)d, I, NAN, 0.3 };
    check (&row);
  }
}

/* Whole millimetres and centimetres must reach the file as the shortest decimals that they are. */
static void
test_nearest_double (void)
{
  for (int n = 1; n <= 5000; n++) {
    double value = 0;
    g_autofree char *mm = g_strdup_printf ("%d mm", n);
    g_autofree char *cm = g_strdup_printf ("%d cm", n);
    g_assert_true (sq_quantity_parse (mm, SQ_MILLIMETRES, M, NAN, &value, NULL));
    g_assert_cmpfloat (value, ==, n);
    g_assert_true (sq_quantity_parse (mm, SQ_LENGTH, M, NAN, &value, NULL));
    g_assert_cmpfloat (value, ==, n / 1000.0);
    g_assert_true (sq_quantity_parse (cm, SQ_LENGTH, M, NAN, &value, NULL));
    g_assert_cmpfloat (value, ==, n / 100.0);
  }
}

int
main (int argc, char *argv[])
{
  setlocale (LC_CTYPE, "");
  setlocale (LC_NUMERIC, ""); /* messages stay as written here */
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity/parse/lengths", test_lengths);
  g_test_add_func ("/quantity/parse/feet and inches", test_feet_and_inches);
  g_test_add_func ("/quantity/parse/other units", test_other_units);
  g_test_add_func ("/quantity/parse/fractions and stops", test_fractions);
  g_test_add_func ("/quantity/parse/glyphs of fractions", test_glyphs);
  g_test_add_func ("/quantity/parse/arithmetic", test_arithmetic);
  g_test_add_func ("/quantity/parse/relative to the value now", test_relative);
  g_test_add_func ("/quantity/parse/decimal comma", test_decimal_comma);
  g_test_add_func ("/quantity/parse/units of files are understood", test_file_units);
  g_test_add_func ("/quantity/parse/metric lengths are the nearest double", test_nearest_double);
  return g_test_run ();
}
