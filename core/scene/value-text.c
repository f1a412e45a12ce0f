/* value-text.c: values that are one text: words of people, ids, dates and times
 */
#include "scene/scene.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
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
  const char *given = sq_node_text (node);
  if (given != NULL) {
    text = g_strdup (given);
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
  return text != NULL ? json_node_init_string (json_node_alloc (), text) : sq_null_node ();
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

/* Ids and references: the same letters. A reference may be null; an id that may
 * not is required. */

static gboolean
id_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  if (JSON_NODE_HOLDS_NULL (node) && (field->flags & SQ_MAY_BE_NULL)) {
    text_clear (field, value);
    return TRUE;
  }
  const char *text = sq_node_text (node);
  if (text == NULL)
    return sq_expected_error (field, reading, node, error);
  if (!sq_check_id (reading, text, error))
    return FALSE;
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
  const char *text = sq_node_text (node);
  if (text == NULL)
    return sq_expected_error (field, reading, node, error);
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
