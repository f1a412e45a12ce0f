/* quantity-parse.c: reads a number with unit, and arithmetic, as people type it */
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "base/error.h"
#include "base/quantity-private.h"

/* By recursive descent, about one function for each line of this grammar; spaces may stand
 * anywhere but inside numbers and words:
 *
 *   text     = ( "+=" | "-=" ) sum | relative | sum
 *   relative = a sum whose first factor is left out: it is the value now
 *   sum      = product { ( "+" | "-" ) product }
 *   product  = factor { ( times | over ) factor }
 *   factor   = { "+" | "-" } ( "(" sum ")" [ unit ] | "T" decimal | measure )
 *   measure  = number [ unit { number unit } ]
 *   number   = decimal | integer fraction | fraction
 *
 * The first thing that goes wrong is kept, and everything returns quickly from then on. */
typedef struct {
  const char *at;
  SqReading reading;
  SqTerm now;
  gboolean has_now;
  int depth;
  char *wrong;
} Reader;

static const char *const plus_signs[] = { "+", NULL };
static const char *const minus_signs[] = { "-", "−", NULL };
static const char *const times_signs[] = { "*", "x", "X", "×", "·", NULL };
static const char *const over_signs[] = { "/", "÷", NULL };
static const char *const closing[] = { ")", NULL };

static SqTerm read_sum (Reader *r);

static void
skip_spaces (Reader *r)
{
  r->at = sq_skip_spaces (r->at);
}

static gboolean
take (Reader *r, const char *const *spellings)
{
  for (; *spellings; spellings++)
    if (g_str_has_prefix (r->at, *spellings)) {
      r->at += strlen (*spellings);
      return TRUE;
    }
  return FALSE;
}

/* At most @most characters on one line, whatever is in them */
static char *
shortened (const char *text, gsize bytes, int most)
{
  g_autofree char *valid = g_utf8_make_valid (text, (gssize)bytes);
  GString *line = g_string_new (NULL);
  const char *p = valid;
  for (int count = 0; *p && count < most; p = g_utf8_next_char (p), count++) {
    gunichar c = g_utf8_get_char (p);
    gboolean space = g_unichar_isspace (c);
    g_string_append_unichar (line, space ? ' ' : g_unichar_isprint (c) ? c : 0xfffd);
  }
  if (*p)
    g_string_append (line, "…");
  return g_string_free (line, FALSE);
}

/* Says what stands where something else should. */
static SqTerm
fail_here (Reader *r)
{
  if (!*r->at)
    return sq_term_fail (&r->wrong, _ ("a bracket is not closed"));
  if (*r->at == ')')
    return sq_term_fail (&r->wrong, _ ("a bracket is closed that was not opened"));
  if (sq_number_starts (r->at) || *r->at == '(')
    return sq_term_fail (&r->wrong, _ ("two numbers without an operator between them"));
  const char *end = r->at;
  do
    end = g_utf8_next_char (end);
  while (g_unichar_isalpha (g_utf8_get_char (end)));
  g_autofree char *piece = shortened (r->at, (gsize)(end - r->at), 12);
  return sq_term_fail (&r->wrong, _ ("“%s” is neither a unit nor an operator"), piece);
}

static const SqUnitRow *
take_unit (Reader *r)
{
  gsize length = 0;
  const char *start = sq_skip_spaces (r->at);
  const SqUnitRow *unit = sq_unit_match (start, r->reading.wanted, &length);
  if (unit)
    r->at = start + length;
  return unit;
}

static double
read_number (Reader *r)
{
  gboolean fractions = r->reading.wanted != SQ_T_STOP;
  return sq_number_read (&r->at, fractions, &r->wrong);
}

/* How many of @small make up one @large */
static double
units_in (const SqUnitRow *large, const SqUnitRow *small)
{
  return large->times * small->over / (large->over * small->times);
}

/* The next smaller part of a measure, such as the inches after feet, or nothing is taken. A part
 * that fills one of the unit before (6'12") rather lacks an operator. */
static gboolean
take_part (Reader *r, double *number, const SqUnitRow **unit)
{
  gboolean feet = (*unit)->joins == 'f' && (*unit)->times == 3048;
  gboolean hyphen = feet && *r->at == '-' && g_ascii_isdigit (r->at[1]);
  Reader ahead = *r;
  ahead.at = hyphen ? r->at + 1 : sq_skip_spaces (r->at);
  if (!(*unit)->joins || !sq_number_starts (ahead.at))
    return FALSE;
  double part = read_number (&ahead);
  const SqUnitRow *small = take_unit (&ahead);
  if (!small && feet && !hyphen)
    small = sq_unit_inch ();
  g_autofree char *wrong = g_steal_pointer (&ahead.wrong);
  if (wrong || !small || small->joins != (*unit)->joins || part >= units_in (*unit, small))
    return FALSE;
  *number = *number * units_in (*unit, small) + part;
  *unit = small;
  *r = ahead;
  return TRUE;
}

/* "1:30" is hours and minutes, where hours are wanted. */
static gboolean
take_clock (Reader *r, SqTerm *term)
{
  const char *end = r->at;
  while (g_ascii_isdigit (*end))
    end++;
  if (r->reading.wanted != SQ_HOURS || end == r->at || *end != ':' || end[1] < '0' ||
      end[1] > '5' || !g_ascii_isdigit (end[2]) || g_ascii_isdigit (end[3]))
    return FALSE;
  double minutes = g_ascii_digit_value (end[1]) * 10 + g_ascii_digit_value (end[2]);
  *term = (SqTerm){ g_ascii_strtod (r->at, NULL) + minutes / 60, SQ_HOURS };
  r->at = end + 3;
  return TRUE;
}

static SqTerm
read_measure (Reader *r)
{
  SqTerm term;
  if (take_clock (r, &term))
    return term;
  double number = read_number (r);
  const SqUnitRow *unit = r->wrong ? NULL : take_unit (r);
  if (!unit)
    return (SqTerm){ number, SQ_BARE };
  gboolean parts = FALSE;
  while (take_part (r, &number, &unit))
    parts = TRUE;
  term = sq_term_with_unit (&r->reading, number, unit);
  if (parts)
    term.unit = NULL;
  return term;
}

static SqTerm
read_bracket (Reader *r)
{
  if (++r->depth > SQ_QUANTITY_MOST_BRACKETS)
    return sq_term_fail (&r->wrong, _ ("more than %d brackets inside each other"),
                         SQ_QUANTITY_MOST_BRACKETS);
  SqTerm term = read_sum (r);
  r->depth--;
  if (r->wrong)
    return term;
  if (*r->at != ')')
    return fail_here (r);
  r->at++;
  const SqUnitRow *unit = term.kind == SQ_BARE ? take_unit (r) : NULL;
  if (unit)
    term = sq_term_with_unit (&r->reading, term.value, unit);
  term.unit = NULL; /* so that 1/(2 m) is not half a metre */
  return term;
}

static SqTerm
read_unsigned_factor (Reader *r)
{
  if (*r->at == '(') {
    r->at++;
    return read_bracket (r);
  }
  if (sq_number_starts (r->at))
    return read_measure (r);
  if (g_ascii_tolower (*r->at) == 't') {
    const char *number = sq_skip_spaces (r->at + 1);
    if (g_ascii_isdigit (*number)) {
      r->at = number;
      return (SqTerm){ sq_number_read (&r->at, FALSE, &r->wrong), SQ_T_STOP };
    }
  }
  if (!*r->at)
    return sq_term_fail (&r->wrong, _ ("a number is missing at the end"));
  const char *start = r->at;
  if (take (r, closing) || take_unit (r)) {
    g_autofree char *piece = g_strndup (start, (gsize)(r->at - start));
    return sq_term_fail (&r->wrong, _ ("a number is missing before “%s”"), piece);
  }
  return fail_here (r);
}

static SqTerm
read_factor (Reader *r)
{
  double sign = 1;
  for (skip_spaces (r);; skip_spaces (r)) {
    if (take (r, minus_signs))
      sign = -sign;
    else if (!take (r, plus_signs))
      break;
  }
  SqTerm term = read_unsigned_factor (r);
  term.value *= sign;
  term.number *= sign;
  skip_spaces (r);
  return term;
}

static SqTerm
go_on_product (Reader *r, SqTerm term)
{
  while (!r->wrong) {
    if (take (r, times_signs))
      term = sq_term_multiply (term, read_factor (r), &r->wrong);
    else if (take (r, over_signs))
      term = sq_term_divide (&r->reading, term, read_factor (r), &r->wrong);
    else
      break;
  }
  return term;
}

static SqTerm
go_on_sum (Reader *r, SqTerm term)
{
  while (!r->wrong) {
    gboolean minus = take (r, minus_signs);
    if (!minus && !take (r, plus_signs))
      break;
    SqTerm next = go_on_product (r, read_factor (r));
    term = sq_term_add (&r->reading, term, next, minus ? -1 : 1, &r->wrong);
  }
  return term;
}

static SqTerm
read_sum (Reader *r)
{
  return go_on_sum (r, go_on_product (r, read_factor (r)));
}

/* A text that starts from the value now: "x2", "+=0.5 m" */
static SqTerm
read_relative (Reader *r, double sign)
{
  if (!r->has_now)
    return sq_term_fail (&r->wrong, _ ("there is no value yet to change"));
  if (sign == 0)
    return go_on_sum (r, go_on_product (r, r->now));
  return sq_term_add (&r->reading, r->now, read_sum (r), sign, &r->wrong);
}

static SqTerm
read_text (Reader *r)
{
  skip_spaces (r);
  if (!*r->at)
    return sq_term_fail (&r->wrong, _ ("nothing is written"));
  const char *start = r->at;
  gboolean minus = take (r, minus_signs);
  gboolean signed_text = minus || take (r, plus_signs);
  gboolean assigned = signed_text && *r->at == '=';
  gboolean scaled = !signed_text && (take (r, times_signs) || take (r, over_signs));
  r->at = assigned ? r->at + 1 : start;
  SqTerm term = assigned ? read_relative (r, minus ? -1 : 1)
                : scaled ? read_relative (r, 0)
                         : read_sum (r);
  if (!r->wrong && *r->at)
    return fail_here (r);
  if (r->wrong)
    return term;
  return sq_term_conclude (&r->reading, term, signed_text, r->has_now ? &r->now : NULL, &r->wrong);
}

gboolean
sq_quantity_parse (
  const char *text, SqDimension dimension, SqUnits units, double now, double *value, GError **error)
{
  g_return_val_if_fail (text && value && (unsigned)dimension < SQ_DIMENSIONS, FALSE);
  gsize bytes = strnlen (text, SQ_QUANTITY_MOST_BYTES + 1);
  Reader r = { .at = text,
               .reading = { dimension, units },
               .now = { now, sq_dimension_kind (dimension) },
               .has_now = isfinite (now) };
  SqTerm term = { 0, SQ_BARE };
  if (bytes > SQ_QUANTITY_MOST_BYTES)
    sq_term_fail (&r.wrong, _ ("longer than %d bytes"), SQ_QUANTITY_MOST_BYTES);
  else if (!g_utf8_validate (text, (gssize)bytes, NULL))
    sq_term_fail (&r.wrong, _ ("not UTF-8"));
  else
    term = read_text (&r);
  g_autofree char *wrong = r.wrong;
  if (!wrong) {
    *value = term.value;
    return TRUE;
  }
  g_autofree char *piece = shortened (text, bytes, 40);
  /* Translators: the text typed, what is wrong with it, a noun with its article, examples */
  g_set_error (error, SQ_ERROR, SQ_ERROR_VALUE, _ ("“%s”: %s; expected %s, such as %s"), piece,
               wrong, sq_dimension_noun (dimension), sq_dimension_examples (dimension));
  return FALSE;
}
