/* value-whole.c: values that are one whole number in the struct: flags, words and counts */
#include "scene/value.h"

#include <glib/gi18n-lib.h>
#include <math.h>

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
  const char *text = sq_node_text (node);
  if (text == NULL)
    return sq_expected_error (field, reading, node, error);
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
  return word >= 0 ? json_node_init_string (json_node_alloc (), field->words[word])
                   : sq_null_node ();
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
    .clear = sq_clear_nothing,                                                                     \
  }

G_STATIC_ASSERT (sizeof (gboolean) == sizeof (int));
INT_TYPE (sq_value_flag, N_ ("true or false"), flag_read, flag_write);
INT_TYPE (sq_value_word, N_ ("a word"), word_read, word_write);
INT_TYPE (sq_value_count, N_ ("a whole number"), count_read, count_write);
