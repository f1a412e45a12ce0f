/* value-number.c: values that are one number or a few */
#include "scene/value.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Numbers. */

static gboolean
same_number (double a, double b)
{
  return a == b || (isnan (a) && isnan (b));
}

static void
number_reset (const SqField *field, void *value)
{
  *(double *)value = field->initial;
}

static gboolean
number_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  if (JSON_NODE_HOLDS_NULL (node) && (field->flags & SQ_MAY_BE_NULL)) {
    *(double *)value = NAN;
    return TRUE;
  }
  return sq_read_number (field, reading, node, value, error);
}

static JsonNode *
number_write (const SqField *field, const void *value)
{
  return sq_write_number (*(const double *)value);
}

static gboolean
number_is_default (const SqField *field, const void *value)
{
  return same_number (*(const double *)value, field->initial);
}

static void
number_copy (const SqField *field, void *to, const void *from)
{
  *(double *)to = *(const double *)from;
}

const SqValueType sq_value_number = {
  .name = N_ ("a number"),
  .size = sizeof (double),
  .reset = number_reset,
  .read = number_read,
  .write = number_write,
  .is_default = number_is_default,
  .copy = number_copy,
  .clear = sq_clear_nothing,
};

/* A fixed count of numbers; the default is text in the table: [24.89, 18.66]. */

static void
initial_numbers (const SqField *field, double *numbers)
{
  const char *text = field->initial_json;
  for (guint i = 0; i < field->count; i++) {
    char *end = NULL;
    numbers[i] = text != NULL ? g_ascii_strtod (text + 1, &end) : NAN;
    text = end;
  }
}

static void
numbers_reset (const SqField *field, void *value)
{
  initial_numbers (field, value);
}

static gboolean
numbers_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  return sq_read_numbers (field, reading, node, field->count, value, error);
}

static JsonNode *
numbers_write (const SqField *field, const void *value)
{
  const double *numbers = value;
  return isnan (numbers[0]) ? sq_null_node () : sq_write_numbers (numbers, field->count);
}

static gboolean
numbers_is_default (const SqField *field, const void *value)
{
  const double *numbers = value;
  double initial[4];
  initial_numbers (field, initial);
  for (guint i = 0; i < field->count; i++) {
    if (!same_number (numbers[i], initial[i]))
      return FALSE;
  }
  return TRUE;
}

static void
numbers_copy (const SqField *field, void *to, const void *from)
{
  memcpy (to, from, field->count * sizeof (double));
}

const SqValueType sq_value_numbers = {
  .name = N_ ("a list of numbers"),
  .size = sizeof (double), /* of each */
  .reset = numbers_reset,
  .read = numbers_read,
  .write = numbers_write,
  .is_default = numbers_is_default,
  .copy = numbers_copy,
  .clear = sq_clear_nothing,
};

/* One number, or [across, up]. */

static void
spread_reset (const SqField *field, void *value)
{
  *(SqSpread *)value = (SqSpread){ field->initial, field->initial };
}

static gboolean
spread_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  double numbers[2];
  if (JSON_NODE_HOLDS_ARRAY (node)) {
    if (!sq_read_numbers (field, reading, node, 2, numbers, error))
      return FALSE;
  } else {
    if (!sq_read_number (field, reading, node, &numbers[0], error))
      return FALSE;
    numbers[1] = numbers[0];
  }
  *(SqSpread *)value = (SqSpread){ numbers[0], numbers[1] };
  return TRUE;
}

static JsonNode *
spread_write (const SqField *field, const void *value)
{
  const SqSpread *spread = value;
  double numbers[2] = { spread->across, spread->up };
  return spread->across == spread->up ? sq_write_number (spread->across)
                                      : sq_write_numbers (numbers, 2);
}

static gboolean
spread_is_default (const SqField *field, const void *value)
{
  const SqSpread *spread = value;
  return spread->across == field->initial && spread->up == field->initial;
}

static void
spread_copy (const SqField *field, void *to, const void *from)
{
  *(SqSpread *)to = *(const SqSpread *)from;
}

const SqValueType sq_value_spread = {
  .name = N_ ("a number or [across, up]"),
  .size = sizeof (SqSpread),
  .reset = spread_reset,
  .read = spread_read,
  .write = spread_write,
  .is_default = spread_is_default,
  .copy = spread_copy,
  .clear = sq_clear_nothing,
};
