/* quantity-format.c: writes a number with its unit, rounded to what people read off it */
#include <math.h>
#include <string.h>

#include "base/quantity-private.h"

#define MINUS "\u2212"
#define NO_BREAK_SPACE "\u00a0"

/* From here up neighbouring doubles are further apart than the decimals and quarters shown. */
#define FIXED_BELOW 1e15

typedef enum {
  DECIMALS,       /* at most this many */
  FIXED_DECIMALS, /* exactly this many */
  FIGURES,        /* three figures, with at most this many decimals */
} Rounding;

/* clang-format off */
static const struct {
  Rounding rounding;
  int decimals;
} styles[SQ_DIMENSIONS] = {
  [SQ_PLAIN]       = { DECIMALS, 3 },
  [SQ_LENGTH]      = { FIXED_DECIMALS, 2 },
  [SQ_MILLIMETRES] = { DECIMALS, 2 },
  [SQ_SECTION]     = { DECIMALS, 2 },
  [SQ_ANGLE]       = { DECIMALS, 1 },
  [SQ_ILLUMINANCE] = { FIGURES, 3 },
  [SQ_LUMINANCE]   = { FIGURES, 3 },
  [SQ_INTENSITY]   = { FIGURES, 3 },
  [SQ_FLUX]        = { FIGURES, 3 },
  [SQ_TEMPERATURE] = { DECIMALS, 0 },
  [SQ_CELSIUS]     = { DECIMALS, 0 },
  [SQ_MIRED]       = { DECIMALS, 0 },
  [SQ_POWER]       = { FIGURES, 1 },
  [SQ_VOLTAGE]     = { DECIMALS, 1 },
  [SQ_CURRENT]     = { DECIMALS, 1 },
  [SQ_FREQUENCY]   = { DECIMALS, 2 },
  [SQ_FRACTION]    = { DECIMALS, 1 },
  [SQ_STOPS]       = { DECIMALS, 2 },
  [SQ_MASS]        = { DECIMALS, 1 },
  [SQ_HOURS]       = { DECIMALS, 2 },
  [SQ_FRAME_RATE]  = { DECIMALS, 3 },
  [SQ_PER_METRE]   = { FIGURES, 5 },
  [SQ_T_STOP]      = { DECIMALS, 1 },
};
/* clang-format on */

/* In all below, @size is the magnitude of the value: finite, in the unit shown. */

static char *
rounded (double size, int decimals, gboolean keep_zeros)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  if (size >= FIXED_BELOW)
    return g_strdup (g_ascii_formatd (digits, sizeof digits, "%.4g", size));
  char format[] = "%.0f";
  format[2] = (char)('0' + decimals);
  g_ascii_formatd (digits, sizeof digits, format, size);
  if (strchr (digits, '.') && !keep_zeros) {
    gsize end = strlen (digits);
    while (digits[end - 1] == '0')
      end--;
    digits[digits[end - 1] == '.' ? end - 1 : end] = 0;
  }
  return g_strdup (digits);
}

/* The decimals that leave three figures */
static int
decimals_of_figures (double size, int most)
{
  int decimals = 0;
  for (double edge = 100; size < edge && decimals < most; edge /= 10)
    decimals++;
  return decimals;
}

static char *
styled (double size, SqDimension dimension)
{
  Rounding rounding = styles[dimension].rounding;
  int decimals = styles[dimension].decimals;
  if (rounding == FIGURES)
    decimals = decimals_of_figures (size, decimals);
  return rounded (size, decimals, rounding == FIXED_DECIMALS);
}

static char *
with_unit (const char *number, const SqUnitRow *unit)
{
  const char *gap = unit->measures == SQ_ANGLE ? "" : NO_BREAK_SPACE;
  return g_strconcat (number, gap, unit->name, NULL);
}

/* In whole quarters of an inch from the start, so that twelve inches always are a foot */
static char *
feet_and_inches (double feet)
{
  static const char *const quarter_glyphs[] = { "", "¼", "½", "¾" };
  double quarters = round (feet * 48);
  double whole_feet = floor (quarters / 48);
  int rest = (int)(quarters - whole_feet * 48);
  const char *glyph = quarter_glyphs[rest % 4];
  g_autofree char *feet_number = rounded (whole_feet, 0, FALSE);
  if (whole_feet > 0)
    return g_strdup_printf ("%s'%d%s\"", feet_number, rest / 4, glyph);
  if (rest > 0 && rest < 4)
    return g_strdup_printf ("%s\"", glyph);
  return g_strdup_printf ("%d%s\"", rest / 4, glyph);
}

static char *
stops (double size)
{
  static const struct {
    double below;
    const char *glyph;
  } parts[] = {
    { (0 + 1 / 3.0) / 2, "" },
    { (1 / 3.0 + 1 / 2.0) / 2, "⅓" },
    { (1 / 2.0 + 2 / 3.0) / 2, "½" },
    { (2 / 3.0 + 1) / 2, "⅔" },
  };
  double whole = floor (size);
  gsize i = 0;
  while (i < G_N_ELEMENTS (parts) && size - whole >= parts[i].below)
    i++;
  if (i == G_N_ELEMENTS (parts))
    whole++;
  const char *glyph = i < G_N_ELEMENTS (parts) ? parts[i].glyph : "";
  gboolean glyph_alone = whole == 0 && *glyph;
  g_autofree char *number = rounded (whole, 0, FALSE);
  gulong count = (gulong)MIN (whole, 1e6) + (*glyph ? 1 : 0);
  return g_strconcat (glyph_alone ? "" : number, glyph, NO_BREAK_SPACE, sq_stops_word (count),
                      NULL);
}

/* The marks engraved lower than the nearest decimal of what they are, 2^(stops/2) exactly: common
 * practice of halves and thirds. A value from a mark up to what it stands for is that mark. */
static char *
t_stop (double number)
{
  static const struct {
    double mark, stops;
  } engraved[] = {
    { 1.2, 2 / 3.0 }, { 3.3, 7 / 2.0 }, { 3.5, 11 / 3.0 }, { 5.6, 5 }, { 22, 9 }, { 90, 13 },
  };
  const double slack_stops = 0.01; /* of numbers worked out */
  for (gsize i = 0; i < G_N_ELEMENTS (engraved); i++)
    if (number >= engraved[i].mark && number <= exp2 ((engraved[i].stops + slack_stops) / 2))
      number = engraved[i].mark;
  int decimals = number < 1 ? 2 : number < 10 ? 1 : 0;
  g_autofree char *digits = rounded (number, decimals, FALSE);
  return g_strconcat ("T", digits, NULL);
}

static char *
power (double watts, const SqUnitRow *unit)
{
  gboolean kilo = watts >= 999.5; /* what would round to 1000 W */
  g_autofree char *number = kilo
                              ? rounded (watts / 1000, decimals_of_figures (watts / 1000, 2), FALSE)
                              : styled (watts, SQ_POWER);
  return kilo ? g_strconcat (number, NO_BREAK_SPACE, "kW", NULL) : with_unit (number, unit);
}

static char *
per_cent (double size, const SqUnitRow *unit)
{
  g_autofree char *number = size < 10 ? styled (size, SQ_FRACTION) : rounded (size, 0, FALSE);
  return with_unit (number, unit);
}

static char *
magnitude (double size, SqDimension dimension, const SqUnitRow *unit, SqUnits units)
{
  if (dimension == SQ_LENGTH && units == SQ_IMPERIAL && size < FIXED_BELOW)
    return feet_and_inches (size);
  if (dimension == SQ_STOPS)
    return stops (size);
  if (dimension == SQ_T_STOP)
    return t_stop (size);
  if (dimension == SQ_POWER)
    return power (size, unit);
  if (dimension == SQ_FRACTION)
    return per_cent (size, unit);
  g_autofree char *number = styled (size, dimension);
  return unit ? with_unit (number, unit) : g_steal_pointer (&number);
}

/* Whether a text shows nothing but zero: "0.00 m", "0\"", but not "0.05 m" */
static gboolean
is_zero (const char *text)
{
  const char *number = *text == 'T' ? text + 1 : text;
  gsize zeros = strspn (number, "0.");
  return zeros > 0 && !g_ascii_isdigit (number[zeros]);
}

char *
sq_quantity_format (double value, SqDimension dimension, SqUnits units)
{
  g_return_val_if_fail ((unsigned)dimension < SQ_DIMENSIONS, g_strdup (""));
  const SqUnitRow *unit = sq_unit_shown (dimension, units);
  double size = sq_unit_from_file (unit, fabs (value), dimension);
  if (isnan (value))
    return g_strdup ("–");
  if (isinf (size))
    return g_strdup (value < 0 ? MINUS "∞" : "∞");
  g_autofree char *text = magnitude (size, dimension, unit, units);
  return value < 0 && !is_zero (text) ? g_strconcat (MINUS, text, NULL) : g_steal_pointer (&text);
}
