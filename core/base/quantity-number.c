/* quantity-number.c: decimals and fractions in text, with a point or a comma, in any locale */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "base/quantity-private.h"

const char *
sq_skip_spaces (const char *text)
{
  static const char *const spaces[] = { " ", "\t", "\u00a0", "\u2007", "\u2009", "\u202f" };
  for (gsize i = 0; i < G_N_ELEMENTS (spaces); i++)
    if (g_str_has_prefix (text, spaces[i]))
      return sq_skip_spaces (text + strlen (spaces[i]));
  return text;
}

/* Returns: 0 if no glyph of a fraction stands there */
static double
take_glyph (const char **text)
{
  static const struct {
    const char *glyph;
    int over, under;
  } glyphs[] = {
    { "½", 1, 2 }, { "⅓", 1, 3 }, { "⅔", 2, 3 }, { "¼", 1, 4 }, { "¾", 3, 4 },
    { "⅕", 1, 5 }, { "⅖", 2, 5 }, { "⅗", 3, 5 }, { "⅘", 4, 5 }, { "⅙", 1, 6 },
    { "⅚", 5, 6 }, { "⅛", 1, 8 }, { "⅜", 3, 8 }, { "⅝", 5, 8 }, { "⅞", 7, 8 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (glyphs); i++)
    if (g_str_has_prefix (*text, glyphs[i].glyph)) {
      *text += strlen (glyphs[i].glyph);
      return (double)glyphs[i].over / glyphs[i].under;
    }
  return 0;
}

static gsize
count_digits (const char *text)
{
  gsize count = 0;
  while (g_ascii_isdigit (text[count]))
    count++;
  return count;
}

static gboolean
is_mark (char c)
{
  return c == '.' || c == ',';
}

gboolean
sq_number_starts (const char *text)
{
  return g_ascii_isdigit (*text) || (is_mark (*text) && g_ascii_isdigit (text[1])) ||
         take_glyph (&text) > 0;
}

/* The bytes of a decimal and of the digits before its mark; the exponent is not in it. */
static gsize
mantissa_length (const char *text, gsize before)
{
  if (!is_mark (text[before]))
    return before;
  gsize after = count_digits (text + before + 1);
  if (text[before] == ',' && after == 0)
    return before; /* a comma at the end is no decimal comma */
  return before + 1 + after;
}

static gsize
exponent_length (const char *text)
{
  if (g_ascii_tolower (*text) != 'e')
    return 0;
  gsize sign = text[1] == '+' || text[1] == '-';
  gsize digits = count_digits (text + 1 + sign);
  return digits > 0 ? 1 + sign + digits : 0;
}

/* Two marks, or a comma before three digits that could as well group thousands */
static gboolean
reads_two_ways (const char *text, gsize before, gsize mantissa)
{
  gboolean marked_twice = is_mark (text[mantissa]) && g_ascii_isdigit (text[mantissa + 1]);
  gboolean grouped =
    text[before] == ',' && mantissa - before == 1 + 3 && before >= 1 && before <= 3 && *text != '0';
  return marked_twice || grouped;
}

/* @whole is set to whether it was typed with digits only. */
static double
read_decimal (const char **text, gboolean *whole, char **wrong)
{
  const char *start = *text;
  gsize before = count_digits (start);
  gsize mantissa = mantissa_length (start, before);
  if (reads_two_ways (start, before, mantissa)) {
    gsize end = mantissa;
    while (end < 20 && (is_mark (start[end]) || g_ascii_isdigit (start[end])))
      end++;
    g_autofree char *piece = g_strndup (start, MIN (end, 20));
    sq_term_fail (wrong, _ ("“%s” could be two numbers: write one point and no grouping"), piece);
    return 0;
  }
  gsize size = mantissa + exponent_length (start + mantissa);
  g_autofree char *pointed = g_strdelimit (g_strndup (start, size), ",", '.');
  double number = g_ascii_strtod (pointed, NULL);
  if (!isfinite (number)) {
    sq_term_fail (wrong, _ ("the number is too large"));
    return 0;
  }
  *text = start + size;
  *whole = size == before;
  return number;
}

/* "1/2" after an integer and spaces; nothing is taken unless it is a proper fraction. */
static double
take_written_fraction (const char **text)
{
  const char *over = *text;
  gsize over_digits = count_digits (over);
  if (over_digits == 0 || over[over_digits] != '/')
    return 0;
  const char *under = over + over_digits + 1;
  gsize under_digits = count_digits (under);
  if (under_digits == 0 || is_mark (under[under_digits]))
    return 0;
  double part = g_ascii_strtod (over, NULL);
  double whole = g_ascii_strtod (under, NULL);
  if (!(part > 0 && part < whole))
    return 0;
  *text = under + under_digits;
  return part / whole;
}

double
sq_number_read (const char **text, gboolean fractions, char **wrong)
{
  double fraction = fractions ? take_glyph (text) : 0;
  if (fraction > 0)
    return fraction;
  gboolean whole = FALSE;
  double number = read_decimal (text, &whole, wrong);
  if (!whole || !fractions)
    return number;
  const char *next = sq_skip_spaces (*text);
  gboolean apart = next > *text;
  fraction = take_glyph (&next);
  if (fraction == 0 && apart)
    fraction = take_written_fraction (&next);
  if (fraction > 0)
    *text = next;
  return number + fraction;
}
