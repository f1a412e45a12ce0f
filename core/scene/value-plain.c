/* value-plain.c: values that are one text, one word, one flag or a few numbers */
#include "scene/scene.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* Text: a default in initial_json is a JSON string without escapes. */

static char *
initial_text (const SqField *field)
{
  if (field->initial_json == NULL)
    return NULL;
  return g_strndup (field->initial_json + 1, strlen (field->initial_json) - 2);
}

static void
text_reset (const SqField *field, void *value)
{
  *(char **)value = initial_text (field);
}

static gboolean
text_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  g_autofree char *text = NULL;
  if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING) {
    text = g_strdup (json_node_get_string (node));
    if (strlen (text) > SQ_MOST_TEXT)
      return sq_reading_error (reading, SQ_ERROR_LIMIT, error,
                               _ ("is too long, expected at most %d bytes"), SQ_MOST_TEXT);
    if (*text == '\0')
      g_clear_pointer (&text, g_free); /* no text and empty text are the same */
  } else if (!JSON_NODE_HOLDS_NULL (node)) {
    return sq_expected_error (field, reading, node, error);
  }
  if (text == NULL && (field->flags & SQ_REQUIRED))
    return sq_reading_error (reading, SQ_ERROR_VALUE, error, _ ("is empty, expected text"));
  g_free (*(char **)value);
  *(char **)value = g_steal_pointer (&text);
  return TRUE;
}

static JsonNode *
text_write (const SqField *field, const void *value)
{
  const char *text = *(char *const *)value;
  JsonNode *node = json_node_alloc ();
  return text != NULL ? json_node_init_string (node, text) : json_node_init_null (node);
}

static gboolean
text_is_default (const SqField *field, const void *value)
{
  g_autofree char *initial = initial_text (field);
  return g_strcmp0 (*(char *const *)value, initial) == 0;
}

static void
text_copy (const SqField *field, void *to, const void *from)
{
  *(char **)to = g_strdup (*(char *const *)from);
}

static void
text_clear (const SqField *field, void *value)
{
  g_clear_pointer ((char **)value, g_free);
}

#define TEXT_TYPE(symbol, said, reader)                                                            \
  const SqValueType symbol = {                                                                     \
    .name = said,                                                                                  \
    .size = sizeof (char *),                                                                       \
    .reset = text_reset,                                                                           \
    .read = reader,                                                                                \
    .write = text_write,                                                                           \
    .is_default = text_is_default,                                                                 \
    .copy = text_copy,                                                                             \
    .clear = text_clear,                                                                           \
  }

/* Ids and references: the same letters. A reference may be null; an id that may not is required. */

static gboolean
id_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  if (JSON_NODE_HOLDS_NULL (node) && (field->flags & SQ_MAY_BE_NULL)) {
    text_clear (field, value);
    return TRUE;
  }
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return sq_expected_error (field, reading, node, error);
  const char *text = json_node_get_string (node);
  if (!sq_is_id (text)) {
    g_autofree char *shown = sq_shown_text (text);
    return sq_reading_error (reading, SQ_ERROR_VALUE, error,
                             _ ("\"%s\" is no id, expected 1 to 64 of A-Z a-z 0-9 _ -"), shown);
  }
  g_free (*(char **)value);
  *(char **)value = g_strdup (text);
  return TRUE;
}

/* Dates and times: text that is checked. */

static gboolean
digits (const char *text, int count, int least, int most)
{
  int number = 0;
  for (int i = 0; i < count; i++) {
    if (!g_ascii_isdigit (text[i]))
      return FALSE;
    number = number * 10 + g_ascii_digit_value (text[i]);
  }
  return number >= least && number <= most;
}

static gboolean
is_date (const char *text)
{
  if (strlen (text) != 10 || text[4] != '-' || text[7] != '-' || !digits (text, 4, 1, 9999) ||
      !digits (text + 5, 2, 1, 12) || !digits (text + 8, 2, 1, 31))
    return FALSE;
  return g_date_valid_dmy ((GDateDay)atoi (text + 8), (GDateMonth)atoi (text + 5),
                           (GDateYear)atoi (text));
}

static gboolean
is_time (const char *text)
{
  return strlen (text) == 5 && text[2] == ':' && digits (text, 2, 0, 23) &&
         digits (text + 3, 2, 0, 59);
}

static gboolean
clock_read (const SqField *field,
            const SqReading *reading,
            JsonNode *node,
            void *value,
            gboolean (*is_right) (const char *),
            GError **error)
{
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return sq_expected_error (field, reading, node, error);
  const char *text = json_node_get_string (node);
  if (!is_right (text)) {
    g_autofree char *expected = sq_field_expected (field);
    g_autofree char *shown = sq_shown_text (text);
    return sq_reading_error (reading, SQ_ERROR_VALUE, error, _ ("\"%s\", expected %s"), shown,
                             expected);
  }
  g_free (*(char **)value);
  *(char **)value = g_strdup (text);
  return TRUE;
}

static gboolean
date_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  return clock_read (field, reading, node, value, is_date, error);
}

static gboolean
time_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  return clock_read (field, reading, node, value, is_time, error);
}

TEXT_TYPE (sq_value_text, N_ ("text"), text_read);
TEXT_TYPE (sq_value_id, N_ ("an id"), id_read);
TEXT_TYPE (sq_value_reference, N_ ("an id that exists"), id_read);
TEXT_TYPE (sq_value_date, N_ ("a date, YYYY-MM-DD"), date_read);
TEXT_TYPE (sq_value_time, N_ ("a time, HH:MM"), time_read);

/* Whole numbers in an int: flags, words, counts. */

static void
int_reset (const SqField *field, void *value)
{
  *(int *)value = (int)field->initial;
}

static gboolean
int_is_default (const SqField *field, const void *value)
{
  return *(const int *)value == (int)field->initial;
}

static void
int_copy (const SqField *field, void *to, const void *from)
{
  *(int *)to = *(const int *)from;
}

static void
nothing_to_clear (const SqField *field, void *value)
{
}

static gboolean
flag_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    return sq_expected_error (field, reading, node, error);
  *(gboolean *)value = json_node_get_boolean (node);
  return TRUE;
}

static JsonNode *
flag_write (const SqField *field, const void *value)
{
  return json_node_init_boolean (json_node_alloc (), *(const gboolean *)value);
}

static gboolean
word_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  if (JSON_NODE_HOLDS_NULL (node) && (field->flags & SQ_MAY_BE_NULL)) {
    *(int *)value = -1;
    return TRUE;
  }
  if (!JSON_NODE_HOLDS_VALUE (node) || json_node_get_value_type (node) != G_TYPE_STRING)
    return sq_expected_error (field, reading, node, error);
  const char *text = json_node_get_string (node);
  for (int i = 0; field->words[i] != NULL; i++) {
    if (g_str_equal (field->words[i], text)) {
      *(int *)value = i;
      return TRUE;
    }
  }
  g_autofree char *expected = sq_field_expected (field);
  g_autofree char *shown = sq_shown_text (text);
  return sq_reading_error (reading, SQ_ERROR_VALUE, error, _ ("\"%s\" is unknown, expected %s"),
                           shown, expected);
}

static JsonNode *
word_write (const SqField *field, const void *value)
{
  int word = *(const int *)value;
  JsonNode *node = json_node_alloc ();
  return word >= 0 ? json_node_init_string (node, field->words[word]) : json_node_init_null (node);
}

static gboolean
count_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  double number;
  if (!sq_read_number (field, reading, node, &number, error))
    return FALSE;
  if (number != floor (number)) {
    g_autofree char *expected = sq_field_expected (field);
    return sq_reading_error (reading, SQ_ERROR_VALUE, error, _ ("is not whole, expected %s"),
                             expected);
  }
  *(int *)value = (int)number;
  return TRUE;
}

static JsonNode *
count_write (const SqField *field, const void *value)
{
  return json_node_init_int (json_node_alloc (), *(const int *)value);
}

#define INT_TYPE(symbol, said, reader, writer)                                                     \
  const SqValueType symbol = {                                                                     \
    .name = said,                                                                                  \
    .size = sizeof (int),                                                                          \
    .reset = int_reset,                                                                            \
    .read = reader,                                                                                \
    .write = writer,                                                                               \
    .is_default = int_is_default,                                                                  \
    .copy = int_copy,                                                                              \
    .clear = nothing_to_clear,                                                                     \
  }

G_STATIC_ASSERT (sizeof (gboolean) == sizeof (int));
INT_TYPE (sq_value_flag, N_ ("true or false"), flag_read, flag_write);
INT_TYPE (sq_value_word, N_ ("a word"), word_read, word_write);
INT_TYPE (sq_value_count, N_ ("a whole number"), count_read, count_write);

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
  .clear = nothing_to_clear,
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
  return isnan (numbers[0]) ? json_node_init_null (json_node_alloc ())
                            : sq_write_numbers (numbers, field->count);
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
  .clear = nothing_to_clear,
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
  .clear = nothing_to_clear,
};
