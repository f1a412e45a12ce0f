/* quantity-term.c: arithmetic with numbers that know what they measure */
#include <glib/gi18n-lib.h>
#include <math.h>

#include "base/quantity-private.h"

SqDimension
sq_dimension_kind (SqDimension dimension)
{
  return dimension == SQ_MILLIMETRES ? SQ_LENGTH : dimension;
}

gboolean
sq_kind_counts_light (SqDimension kind)
{
  return kind == SQ_FRACTION || kind == SQ_ILLUMINANCE || kind == SQ_LUMINANCE ||
         kind == SQ_INTENSITY || kind == SQ_FLUX;
}

const char *
sq_kind_noun (SqDimension kind)
{
  return sq_dimension_noun (kind == SQ_BARE ? SQ_PLAIN : kind);
}

SqTerm
sq_term_fail (char **wrong, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  if (!*wrong)
    *wrong = g_strdup_vprintf (format, arguments);
  va_end (arguments);
  return (SqTerm){ 0, SQ_BARE };
}

static gboolean
is_number (SqTerm term)
{
  return term.kind == SQ_BARE || term.kind == SQ_PLAIN;
}

static SqTerm
finite_term (double value, SqDimension kind, char **wrong)
{
  if (!isfinite (value))
    return sq_term_fail (wrong, _ ("the result is not finite"));
  return (SqTerm){ value, kind };
}

/* The dimension whose unit of files terms of a kind are in */
static SqDimension
dimension_of (const SqReading *reading, SqDimension kind)
{
  gboolean wanted = kind == sq_dimension_kind (reading->wanted);
  return wanted ? reading->wanted : kind;
}

SqTerm
sq_term_with_unit (const SqReading *reading, double number, const SqUnitRow *unit)
{
  double value = sq_unit_to_file (unit, number, dimension_of (reading, unit->measures));
  return (SqTerm){ value, unit->measures, unit, number };
}

SqTerm
sq_term_in_shown_unit (const SqReading *reading, SqTerm bare, SqDimension kind)
{
  SqDimension dimension = dimension_of (reading, kind);
  const SqUnitRow *unit = sq_unit_shown (dimension, reading->units);
  return (SqTerm){ sq_unit_to_file (unit, bare.value, dimension), kind };
}

SqTerm
sq_term_add (const SqReading *reading, SqTerm a, SqTerm b, double sign, char **wrong)
{
  if (sq_kind_counts_light (a.kind) && b.kind == SQ_STOPS)
    return finite_term (a.value * exp2 (sign * b.value), a.kind, wrong);
  gboolean with_bare = (a.kind == SQ_BARE) != (b.kind == SQ_BARE);
  gboolean with_stops = a.kind == SQ_STOPS || b.kind == SQ_STOPS;
  if (with_bare && with_stops && sq_kind_counts_light (reading->wanted))
    return sq_term_fail (wrong, _ ("the number beside stops needs a unit"));
  if (with_bare && a.kind == SQ_BARE)
    a = sq_term_in_shown_unit (reading, a, b.kind);
  else if (with_bare)
    b = sq_term_in_shown_unit (reading, b, a.kind);
  if (a.kind != b.kind)
    return sq_term_fail (wrong, _ ("%s and %s do not add up"), sq_kind_noun (a.kind),
                         sq_kind_noun (b.kind));
  return finite_term (a.value + sign * b.value, a.kind, wrong);
}

SqTerm
sq_term_multiply (SqTerm a, SqTerm b, char **wrong)
{
  double value = a.value * b.value;
  if (is_number (b) && a.kind != SQ_BARE)
    return finite_term (value, a.kind, wrong);
  if (is_number (a) || a.kind == SQ_FRACTION)
    return finite_term (value, b.kind, wrong);
  if (b.kind == SQ_FRACTION)
    return finite_term (value, a.kind, wrong);
  return sq_term_fail (wrong, _ ("%s times %s is not understood"), sq_kind_noun (a.kind),
                       sq_kind_noun (b.kind));
}

SqTerm
sq_term_divide (const SqReading *reading, SqTerm a, SqTerm b, char **wrong)
{
  if (b.value == 0)
    return sq_term_fail (wrong, _ ("division by zero"));
  if (a.kind == SQ_BARE && b.unit) { /* 1/2 m */
    SqTerm share = sq_term_with_unit (reading, a.value / b.number, b.unit);
    return finite_term (share.value, share.kind, wrong);
  }
  double value = a.value / b.value;
  if (is_number (b))
    return finite_term (value, a.kind == SQ_BARE ? b.kind : a.kind, wrong);
  if (a.kind == b.kind)
    return finite_term (value, SQ_PLAIN, wrong);
  if (b.kind == SQ_FRACTION)
    return finite_term (value, a.kind == SQ_BARE ? SQ_PLAIN : a.kind, wrong);
  return sq_term_fail (wrong, _ ("%s over %s is not understood"), sq_kind_noun (a.kind),
                       sq_kind_noun (b.kind));
}

SqTerm
sq_term_conclude (
  const SqReading *reading, SqTerm term, gboolean signed_text, const SqTerm *now, char **wrong)
{
  SqDimension kind = sq_dimension_kind (reading->wanted);
  gboolean fraction = kind == SQ_FRACTION;
  if (fraction && (term.kind == SQ_PLAIN || (term.kind == SQ_BARE && fabs (term.value) <= 1)))
    term.kind = SQ_FRACTION;
  else if (term.kind == SQ_BARE)
    term = sq_term_in_shown_unit (reading, term, kind);
  else if (term.kind == SQ_STOPS && sq_kind_counts_light (kind)) {
    if (!signed_text)
      return sq_term_fail (wrong, _ ("a change by stops needs a sign before it"));
    if (!now)
      return sq_term_fail (wrong, _ ("there is no value yet to change"));
    term = sq_term_add (reading, *now, term, 1, wrong);
  }
  if (term.kind != kind && !*wrong)
    return sq_term_fail (wrong, _ ("this is %s"), sq_kind_noun (term.kind));
  return finite_term (term.value + 0.0, kind, wrong); /* + 0.0 leaves no negative zero */
}
