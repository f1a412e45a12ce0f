/* value.c: what the value types share: saying where and what was expected */
#include "scene/value.h"

#include "scene/scene.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define MOST_SHOWN 70 /* characters of what somebody wrote, in a message */

char *
sq_shown_text (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  for (char *c = valid; *c != '\0'; c++) {
    if (g_ascii_iscntrl (*c))
      *c = ' ';
  }
  if (g_utf8_strlen (valid, -1) <= MOST_SHOWN)
    return g_steal_pointer (&valid);
  g_autofree char *start = g_utf8_substring (valid, 0, MOST_SHOWN);
  return g_strconcat (start, "…", NULL);
}

char *
sq_where_text (const SqWhere *where)
{
  GString *text = g_string_new (NULL);
  for (; where != NULL; where = where->up) {
    g_autofree char *step =
      where->key != NULL ? sq_shown_text (where->key) : g_strdup_printf ("[%u]", where->index);
    /* A dot stands before a key that follows something; never before an index. */
    if (text->len > 0 && text->str[0] != '[')
      g_string_prepend_c (text, '.');
    g_string_prepend (text, step);
  }
  if (text->len == 0)
    g_string_assign (text, _ ("the file"));
  return g_string_free (text, FALSE);
}

gboolean
sq_reading_error (const SqReading *reading, SqError code, GError **error, const char *what, ...)
{
  va_list arguments;
  va_start (arguments, what);
  g_autofree char *message = g_strdup_vprintf (what, arguments);
  va_end (arguments);
  g_autofree char *place = sq_where_text (reading->where);
  g_set_error (error, SQ_ERROR, code, "%s: %s", place, message);
  return FALSE;
}

char *
sq_number_text (double number)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  return g_strdup (g_ascii_formatd (text, sizeof text, "%.10g", number));
}

char *
sq_field_range (const SqField *field)
{
  g_autofree char *low = sq_number_text (field->min), *high = sq_number_text (field->max);
  if (field->min == 0.0 && field->max == 0.0)
    return g_strdup ("");
  if (field->min == field->max)
    return g_steal_pointer (&low);
  if ((field->flags & SQ_ABOVE_MIN) && (field->flags & SQ_BELOW_MAX))
    return g_strdup_printf (_ ("above %s and below %s"), low, high);
  if (field->flags & SQ_ABOVE_MIN)
    return g_strdup_printf (_ ("above %s up to %s"), low, high);
  if (field->flags & SQ_BELOW_MAX)
    return g_strdup_printf (_ ("from %s to below %s"), low, high);
  return g_strdup_printf (_ ("from %s to %s"), low, high);
}

static void
append_range (GString *text, const SqField *field)
{
  g_autofree char *range = sq_field_range (field);
  const char *unit = sq_dimension_unit (field->dimension);
  if (*range != '\0')
    g_string_append_printf (text, " %s", range);
  if (*unit != '\0')
    g_string_append_printf (text, " (%s)", unit);
}

char *
sq_field_expected (const SqField *field)
{
  const SqValueType *type = field->type;
  GString *text = g_string_new (NULL);
  if (type == &sq_value_word) {
    g_autofree char *words = g_strjoinv (", ", (char **)field->words);
    g_string_append_printf (text, _ ("one of %s"), words);
  } else {
    g_string_append (text, _ (type->name));
    if (type == &sq_value_numbers)
      g_string_append_printf (text, " (%u)", field->count);
    if (type == &sq_value_number || type == &sq_value_count || type == &sq_value_numbers ||
        type == &sq_value_spread)
      append_range (text, field);
  }
  if (field->flags & SQ_MAY_BE_NULL)
    g_string_append (text, _ (", or null"));
  return g_string_free (text, FALSE);
}

static const char *
found_as (JsonNode *node)
{
  if (JSON_NODE_HOLDS_NULL (node))
    return _ ("null");
  if (JSON_NODE_HOLDS_OBJECT (node))
    return _ ("an object");
  if (JSON_NODE_HOLDS_ARRAY (node))
    return _ ("a list");
  switch (json_node_get_value_type (node)) {
  case G_TYPE_STRING:
    return _ ("text");
  case G_TYPE_BOOLEAN:
    return _ ("true or false");
  default:
    return _ ("a number");
  }
}

gboolean
sq_found_error (const SqReading *reading, JsonNode *found, const char *expected, GError **error)
{
  return sq_reading_error (reading, SQ_ERROR_VALUE, error, _ ("is %s, expected %s"),
                           found_as (found), expected);
}

gboolean
sq_expected_error (const SqField *field, const SqReading *reading, JsonNode *found, GError **error)
{
  g_autofree char *expected = sq_field_expected (field);
  return sq_found_error (reading, found, expected, error);
}

static gboolean
out_of_range (const SqField *field, double number)
{
  if (field->min == 0.0 && field->max == 0.0)
    return FALSE;
  if (number < field->min || number > field->max)
    return TRUE;
  return ((field->flags & SQ_ABOVE_MIN) && number == field->min) ||
         ((field->flags & SQ_BELOW_MAX) && number == field->max);
}

gboolean
sq_read_number (
  const SqField *field, const SqReading *reading, JsonNode *node, double *number, GError **error)
{
  GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;
  double value;
  /* The library's getters turn text into 0 and true into 1: look at the type first. */
  if (type == G_TYPE_INT64)
    value = (double)json_node_get_int (node);
  else if (type == G_TYPE_DOUBLE)
    value = json_node_get_double (node);
  else
    return sq_expected_error (field, reading, node, error);
  if (!isfinite (value) || out_of_range (field, value)) {
    g_autofree char *text = sq_number_text (value);
    g_autofree char *expected = sq_field_expected (field);
    return sq_reading_error (reading, SQ_ERROR_VALUE, error, _ ("%s is out of range, expected %s"),
                             text, expected);
  }
  *number = value == 0.0 ? 0.0 : value; /* no minus zero: it would not be written back */
  return TRUE;
}

gboolean
sq_read_numbers (const SqField *field,
                 const SqReading *reading,
                 JsonNode *node,
                 guint count,
                 double *numbers,
                 GError **error)
{
  if (JSON_NODE_HOLDS_NULL (node) && (field->flags & SQ_MAY_BE_NULL)) {
    for (guint i = 0; i < count; i++)
      numbers[i] = NAN;
    return TRUE;
  }
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return sq_expected_error (field, reading, node, error);
  JsonArray *array = json_node_get_array (node);
  if (json_array_get_length (array) != count) {
    g_autofree char *expected = sq_field_expected (field);
    return sq_reading_error (reading, SQ_ERROR_VALUE, error, _ ("has %u members, expected %s"),
                             json_array_get_length (array), expected);
  }
  double read[4];
  g_assert (count <= G_N_ELEMENTS (read));
  SqField one = *field; /* so that a wrong member is told what a number must be */
  one.type = &sq_value_number;
  one.flags &= ~SQ_MAY_BE_NULL;
  for (guint i = 0; i < count; i++) {
    SqWhere where = { .up = reading->where, .index = i };
    SqReading member = *reading;
    member.where = &where;
    if (!sq_read_number (&one, &member, json_array_get_element (array, i), &read[i], error))
      return FALSE;
  }
  memcpy (numbers, read, count * sizeof *numbers);
  return TRUE;
}

const char *
sq_node_text (JsonNode *node)
{
  gboolean is_text =
    JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING;
  return is_text ? json_node_get_string (node) : NULL;
}

JsonNode *
sq_null_node (void)
{
  return json_node_init_null (json_node_alloc ());
}

JsonNode *
sq_array_node (JsonArray *array)
{
  JsonNode *node = json_node_init_array (json_node_alloc (), array);
  json_array_unref (array);
  return node;
}

JsonNode *
sq_object_node (JsonObject *object)
{
  JsonNode *node = json_node_init_object (json_node_alloc (), object);
  json_object_unref (object);
  return node;
}

JsonNode *
sq_write_number (double number)
{
  if (isnan (number))
    return sq_null_node ();
  if (number == floor (number) && fabs (number) < 9007199254740992.0)
    return json_node_init_int (json_node_alloc (), (gint64)number);
  return json_node_init_double (json_node_alloc (), number);
}

JsonNode *
sq_write_numbers (const double *numbers, guint count)
{
  JsonArray *array = json_array_sized_new (count);
  for (guint i = 0; i < count; i++)
    json_array_add_element (array, sq_write_number (numbers[i]));
  return sq_array_node (array);
}

gboolean
sq_check_id (const SqReading *reading, const char *text, GError **error)
{
  gsize length = strspn (text, "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789_-");
  if (text[length] == '\0' && length >= 1 && length <= 64)
    return TRUE;
  g_autofree char *shown = sq_shown_text (text);
  return sq_reading_error (reading, SQ_ERROR_VALUE, error,
                           _ ("\"%s\" is no id, expected 1 to 64 of A-Z a-z 0-9 _ -"), shown);
}

gboolean
sq_check_count (const SqReading *reading, guint count, GError **error)
{
  if (count <= SQ_MOST_MEMBERS)
    return TRUE;
  return sq_reading_error (reading, SQ_ERROR_LIMIT, error,
                           _ ("has %u members, expected at most %d"), count, SQ_MOST_MEMBERS);
}

void
sq_clear_nothing (const SqField *field, void *value)
{
}
