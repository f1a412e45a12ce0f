/* quantity.c: what can be measured, and the units people use for it */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "base/quantity-private.h"

/* clang-format off */
static const struct {
  const char *file, *metric, *imperial; /* in files, and shown in either system */
} units_of[SQ_DIMENSIONS] = {
  [SQ_PLAIN]        = { "",      "",      "" },
  [SQ_LENGTH]       = { "m",     "m",     "ft" },
  [SQ_MILLIMETRES]  = { "mm",    "mm",    "mm" },
  [SQ_SECTION]      = { "mm²",   "mm²",   "mm²" },
  [SQ_ANGLE]        = { "°",     "°",     "°" },
  [SQ_ILLUMINANCE]  = { "lx",    "lx",    "fc" },
  [SQ_LUMINANCE]    = { "cd/m²", "cd/m²", "cd/m²" },
  [SQ_INTENSITY]    = { "cd",    "cd",    "cd" },
  [SQ_FLUX]         = { "lm",    "lm",    "lm" },
  [SQ_TEMPERATURE]  = { "K",     "K",     "K" },
  [SQ_CELSIUS]      = { "°C",    "°C",    "°C" },
  [SQ_MIRED]        = { "mired", "mired", "mired" },
  [SQ_POWER]        = { "W",     "W",     "W" },
  [SQ_VOLTAGE]      = { "V",     "V",     "V" },
  [SQ_CURRENT]      = { "A",     "A",     "A" },
  [SQ_FREQUENCY]    = { "Hz",    "Hz",    "Hz" },
  [SQ_FRACTION]     = { "",      "%",     "%" },
  [SQ_STOPS]        = { "stops", "stops", "stops" },
  [SQ_MASS]         = { "kg",    "kg",    "lb" },
  [SQ_HOURS]        = { "h",     "h",     "h" },
  [SQ_FRAME_RATE]   = { "fps",   "fps",   "fps" },
  [SQ_PER_METRE]    = { "1/m",   "/m",    "/ft" },
  [SQ_T_STOP]       = { "T",     "",      "" },
};

static const struct {
  const char *noun, *examples;
} words_for[SQ_DIMENSIONS] = {
  [SQ_PLAIN]        = { N_("a plain number"),       N_("1.5, 3/4 or x2") },
  [SQ_LENGTH]       = { N_("a length"),             N_("2.1 m, 210 cm or 6'6\"") },
  [SQ_MILLIMETRES]  = { N_("a length"),             N_("35 mm, 2.5 cm or 1 in") },
  [SQ_SECTION]      = { N_("a cross-section"),      N_("2.5 mm² or 4 mm2") },
  [SQ_ANGLE]        = { N_("an angle"),             N_("45°, 45 deg or 52° 30'") },
  [SQ_ILLUMINANCE]  = { N_("an illuminance"),       N_("127 lx, 12 fc or -1 stop") },
  [SQ_LUMINANCE]    = { N_("a luminance"),          N_("40 cd/m², 12 fL or -1 stop") },
  [SQ_INTENSITY]    = { N_("a luminous intensity"), N_("25000 cd, 25 kcd or -1 stop") },
  [SQ_FLUX]         = { N_("a luminous flux"),      N_("800 lm, 1.2 klm or -1 stop") },
  [SQ_TEMPERATURE]  = { N_("a colour temperature"), N_("3200 K or 5.6 kK") },
  [SQ_CELSIUS]      = { N_("a temperature"),        N_("70 °C or 70 C") },
  [SQ_MIRED]        = { N_("a mired shift"),        N_("159 mired or -137") },
  [SQ_POWER]        = { N_("a power"),              N_("650 W or 1.2 kW") },
  [SQ_VOLTAGE]      = { N_("a voltage"),            N_("230 V or 0.4 kV") },
  [SQ_CURRENT]      = { N_("a current"),            N_("16 A or 350 mA") },
  [SQ_FREQUENCY]    = { N_("a frequency"),          N_("50 Hz or 1 kHz") },
  [SQ_FRACTION]     = { N_("a fraction"),           N_("50 %, 0.5, x2 or -1 stop") },
  [SQ_STOPS]        = { N_("a number of stops"),    N_("1/2 stop, ⅓ or -1.5") },
  [SQ_MASS]         = { N_("a mass"),               N_("18 kg, 40 lb or 2 lb 8 oz") },
  [SQ_HOURS]        = { N_("a time"),               N_("1.5 h, 90 min or 1:30") },
  [SQ_FRAME_RATE]   = { N_("a frame rate"),         N_("24 fps or 23.976") },
  [SQ_PER_METRE]    = { N_("a share per length"),   N_("0.02/m or 0.006/ft") },
  [SQ_T_STOP]       = { N_("a T-stop"),             N_("T2.8 or 2.8") },
};

/* The foot is 0.3048 m and the pound 0.45359237 kg, exactly (1959 agreement). Both parts of each
 * ratio are whole where they can be, so that a conversion rounds as late as it can. Of two rows
 * with one name, the first is taken where neither measures what is wanted. */
#define FOOT_2 9290304.0 /* 0.3048² × 10⁸ */

static const SqUnitRow unit_rows[] = {
  { "m",            SQ_LENGTH,      1, 1,         'm' },
  { "metre",        SQ_LENGTH,      1, 1,         'm' },
  { "metres",       SQ_LENGTH,      1, 1,         'm' },
  { "meter",        SQ_LENGTH,      1, 1,         'm' },
  { "meters",       SQ_LENGTH,      1, 1,         'm' },
  { "cm",           SQ_LENGTH,      1, 100,       'm' },
  { "mm",           SQ_LENGTH,      1, 1000,      'm' },
  { "km",           SQ_LENGTH,      1000, 1,      'm' },
  { "ft",           SQ_LENGTH,      3048, 10000,  'f' },
  { "foot",         SQ_LENGTH,      3048, 10000,  'f' },
  { "feet",         SQ_LENGTH,      3048, 10000,  'f' },
  { "'",            SQ_LENGTH,      3048, 10000,  'f' },
  { "′",            SQ_LENGTH,      3048, 10000,  'f' },
  { "’",            SQ_LENGTH,      3048, 10000,  'f' },
  { "in",           SQ_LENGTH,      254, 10000,   'f' },
  { "inch",         SQ_LENGTH,      254, 10000,   'f' },
  { "inches",       SQ_LENGTH,      254, 10000,   'f' },
  { "\"",           SQ_LENGTH,      254, 10000,   'f' },
  { "″",            SQ_LENGTH,      254, 10000,   'f' },
  { "”",            SQ_LENGTH,      254, 10000,   'f' },
  { "''",           SQ_LENGTH,      254, 10000,   'f' },
  { "yd",           SQ_LENGTH,      9144, 10000,  'f' },
  { "yard",         SQ_LENGTH,      9144, 10000,  'f' },
  { "yards",        SQ_LENGTH,      9144, 10000,  'f' },
  { "mm²",          SQ_SECTION,     1, 1,         0 },
  { "mm2",          SQ_SECTION,     1, 1,         0 },
  { "mm^2",         SQ_SECTION,     1, 1,         0 },
  { "°",            SQ_ANGLE,       1, 1,         'd' },
  { "deg",          SQ_ANGLE,       1, 1,         'd' },
  { "degree",       SQ_ANGLE,       1, 1,         'd' },
  { "degrees",      SQ_ANGLE,       1, 1,         'd' },
  { "'",            SQ_ANGLE,       1, 60,        'd' },
  { "′",            SQ_ANGLE,       1, 60,        'd' },
  { "’",            SQ_ANGLE,       1, 60,        'd' },
  { "\"",           SQ_ANGLE,       1, 3600,      'd' },
  { "″",            SQ_ANGLE,       1, 3600,      'd' },
  { "”",            SQ_ANGLE,       1, 3600,      'd' },
  { "rad",          SQ_ANGLE,       180, G_PI,    0 },
  { "lx",           SQ_ILLUMINANCE, 1, 1,         0 },
  { "lux",          SQ_ILLUMINANCE, 1, 1,         0 },
  { "klx",          SQ_ILLUMINANCE, 1000, 1,      0 },
  { "klux",         SQ_ILLUMINANCE, 1000, 1,      0 },
  { "fc",           SQ_ILLUMINANCE, 1e8, FOOT_2,  0 },
  { "footcandle",   SQ_ILLUMINANCE, 1e8, FOOT_2,  0 },
  { "footcandles",  SQ_ILLUMINANCE, 1e8, FOOT_2,  0 },
  { "cd/m²",        SQ_LUMINANCE,   1, 1,         0 },
  { "cd/m2",        SQ_LUMINANCE,   1, 1,         0 },
  { "cd/m^2",       SQ_LUMINANCE,   1, 1,         0 },
  { "nit",          SQ_LUMINANCE,   1, 1,         0 },
  { "nits",         SQ_LUMINANCE,   1, 1,         0 },
  { "fL",           SQ_LUMINANCE,   1e8, FOOT_2 * G_PI, 0 },
  { "footlambert",  SQ_LUMINANCE,   1e8, FOOT_2 * G_PI, 0 },
  { "footlamberts", SQ_LUMINANCE,   1e8, FOOT_2 * G_PI, 0 },
  { "cd",           SQ_INTENSITY,   1, 1,         0 },
  { "kcd",          SQ_INTENSITY,   1000, 1,      0 },
  { "candela",      SQ_INTENSITY,   1, 1,         0 },
  { "lm",           SQ_FLUX,        1, 1,         0 },
  { "klm",          SQ_FLUX,        1000, 1,      0 },
  { "lumen",        SQ_FLUX,        1, 1,         0 },
  { "lumens",       SQ_FLUX,        1, 1,         0 },
  { "K",            SQ_TEMPERATURE, 1, 1,         0 },
  { "kK",           SQ_TEMPERATURE, 1000, 1,      0 },
  { "kelvin",       SQ_TEMPERATURE, 1, 1,         0 },
  { "°C",           SQ_CELSIUS,     1, 1,         0 },
  { "C",            SQ_CELSIUS,     1, 1,         0 },
  { "mired",        SQ_MIRED,       1, 1,         0 },
  { "mireds",       SQ_MIRED,       1, 1,         0 },
  { "W",            SQ_POWER,       1, 1,         0 },
  { "watt",         SQ_POWER,       1, 1,         0 },
  { "watts",        SQ_POWER,       1, 1,         0 },
  { "kW",           SQ_POWER,       1000, 1,      0 },
  { "k",            SQ_POWER,       1000, 1,      0 }, /* 'a 10K', said of lamps */
  { "V",            SQ_VOLTAGE,     1, 1,         0 },
  { "volt",         SQ_VOLTAGE,     1, 1,         0 },
  { "volts",        SQ_VOLTAGE,     1, 1,         0 },
  { "kV",           SQ_VOLTAGE,     1000, 1,      0 },
  { "A",            SQ_CURRENT,     1, 1,         0 },
  { "amp",          SQ_CURRENT,     1, 1,         0 },
  { "amps",         SQ_CURRENT,     1, 1,         0 },
  { "mA",           SQ_CURRENT,     1, 1000,      0 },
  { "Hz",           SQ_FREQUENCY,   1, 1,         0 },
  { "kHz",          SQ_FREQUENCY,   1000, 1,      0 },
  { "%",            SQ_FRACTION,    1, 100,       0 },
  { "percent",      SQ_FRACTION,    1, 100,       0 },
  { "per cent",     SQ_FRACTION,    1, 100,       0 },
  { "stop",         SQ_STOPS,       1, 1,         0 },
  { "stops",        SQ_STOPS,       1, 1,         0 },
  { "kg",           SQ_MASS,        1, 1,         'k' },
  { "g",            SQ_MASS,        1, 1000,      'k' },
  { "lb",           SQ_MASS,        45359237, 1e8, 'l' },
  { "lbs",          SQ_MASS,        45359237, 1e8, 'l' },
  { "oz",           SQ_MASS,        45359237, 16e8, 'l' },
  { "h",            SQ_HOURS,       1, 1,         'h' },
  { "hour",         SQ_HOURS,       1, 1,         'h' },
  { "hours",        SQ_HOURS,       1, 1,         'h' },
  { "min",          SQ_HOURS,       1, 60,        'h' },
  { "fps",          SQ_FRAME_RATE,  1, 1,         0 },
  { "/m",           SQ_PER_METRE,   1, 1,         0 },
  { "1/m",          SQ_PER_METRE,   1, 1,         0 },
  { "/ft",          SQ_PER_METRE,   10000, 3048,  0 },
  { "1/ft",         SQ_PER_METRE,   10000, 3048,  0 },
};
/* clang-format on */

const char *
sq_dimension_unit (SqDimension dimension)
{
  return (unsigned)dimension < SQ_DIMENSIONS ? units_of[dimension].file : "";
}

const char *
sq_dimension_noun (SqDimension dimension)
{
  return _ (words_for[dimension].noun);
}

const char *
sq_dimension_examples (SqDimension dimension)
{
  return _ (words_for[dimension].examples);
}

const char *
sq_stops_word (gulong count)
{
  /* Translators: of exposure; a number with fractions and a no-break space stand before it. The
   * count is rounded up: ½ takes the form for 1, 1½ the form for 2. */
  return g_dngettext (GETTEXT_PACKAGE, "stop", "stops", count);
}

/* Whether a name that ends at @end really ends there: "m" does not end in "mm", "mm2" not in
 * "mm25", but "ft" does in "ft6". */
static gboolean
ends_there (const char *end)
{
  char last = end[-1];
  if (g_ascii_isdigit (last))
    return !g_ascii_isdigit (*end);
  return !g_ascii_isalpha (last) || !g_unichar_isalpha (g_utf8_get_char (end));
}

/* Shown words must be understood in the language that they are shown in. */
static gsize
stops_word_length (const char *text)
{
  const gulong counts[] = { 1, 2, 5 }; /* one, few and many, where a language tells these apart */
  gsize longest = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (counts); i++) {
    const char *word = sq_stops_word (counts[i]);
    gsize size = strlen (word);
    if (size > longest && g_str_has_prefix (text, word) &&
        !g_unichar_isalpha (g_utf8_get_char (text + size)))
      longest = size;
  }
  return longest;
}

static const SqUnitRow *
unit_named (const char *name, SqDimension measures)
{
  for (gsize i = 0; i < G_N_ELEMENTS (unit_rows); i++)
    if (unit_rows[i].measures == measures && strcmp (unit_rows[i].name, name) == 0)
      return &unit_rows[i];
  return NULL;
}

const SqUnitRow *
sq_unit_match (const char *text, SqDimension wanted, gsize *length)
{
  const SqUnitRow *best = NULL;
  gsize longest = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (unit_rows); i++) {
    const SqUnitRow *unit = &unit_rows[i];
    gsize size = strlen (unit->name);
    gboolean better = size > longest || (size == longest && unit->measures == wanted);
    if (better && g_ascii_strncasecmp (text, unit->name, size) == 0 && ends_there (text + size)) {
      best = unit;
      longest = size;
    }
  }
  gsize stops_length = stops_word_length (text);
  if (stops_length > longest) {
    best = unit_named ("stops", SQ_STOPS);
    longest = stops_length;
  }
  *length = longest;
  return best;
}

const SqUnitRow *
sq_unit_inch (void)
{
  return unit_named ("in", SQ_LENGTH);
}

const SqUnitRow *
sq_unit_shown (SqDimension dimension, SqUnits units)
{
  const char *name =
    units == SQ_IMPERIAL ? units_of[dimension].imperial : units_of[dimension].metric;
  return unit_named (name, sq_dimension_kind (dimension));
}

static double
ratio (double number, double times, double over)
{
  if (fmod (times, over) == 0)
    return number * (times / over);
  return number * times / over;
}

static double
per_file_unit (SqDimension dimension)
{
  return dimension == SQ_MILLIMETRES ? 1000 : 1;
}

double
sq_unit_to_file (const SqUnitRow *unit, double number, SqDimension dimension)
{
  return unit ? ratio (number, unit->times * per_file_unit (dimension), unit->over) : number;
}

double
sq_unit_from_file (const SqUnitRow *unit, double value, SqDimension dimension)
{
  return unit ? ratio (value, unit->over, unit->times * per_file_unit (dimension)) : value;
}
