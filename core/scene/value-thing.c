/* value-thing.c: values that are things themselves: objects, lists, and JSON kept as it is */
#include "scene/value.h"

#include <glib/gi18n-lib.h>

/* One thing. */

static void
object_reset (const SqField *field, void *value)
{
  *(SqThing **)value = field->flags & SQ_MAY_BE_NULL ? NULL : sq_thing_new (field->of);
}

static gboolean
object_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  SqThing *thing = NULL;
  if (!(JSON_NODE_HOLDS_NULL (node) && (field->flags & SQ_MAY_BE_NULL))) {
    if (!JSON_NODE_HOLDS_OBJECT (node))
      return sq_expected_error (field, reading, node, error);
    thing = sq_thing_read (field->of, reading, node, error);
    if (thing == NULL)
      return FALSE;
  }
  g_clear_pointer ((SqThing **)value, sq_thing_unref);
  *(SqThing **)value = thing;
  return TRUE;
}

static JsonNode *
object_write (const SqField *field, const void *value)
{
  const SqThing *thing = *(SqThing *const *)value;
  return thing != NULL ? sq_thing_write (thing, FALSE) : sq_null_node ();
}

static gboolean
object_is_default (const SqField *field, const void *value)
{
  const SqThing *thing = *(SqThing *const *)value;
  if (field->flags & SQ_MAY_BE_NULL)
    return thing == NULL;
  return sq_thing_is_default (thing);
}

static void
object_copy (const SqField *field, void *to, const void *from)
{
  const SqThing *thing = *(SqThing *const *)from;
  *(SqThing **)to = thing != NULL ? sq_thing_ref (thing) : NULL;
}

static void
object_clear (const SqField *field, void *value)
{
  g_clear_pointer ((SqThing **)value, sq_thing_unref);
}

const SqValueType sq_value_object = {
  .name = N_ ("an object"),
  .size = sizeof (SqThing *),
  .reset = object_reset,
  .read = object_read,
  .write = object_write,
  .is_default = object_is_default,
  .copy = object_copy,
  .clear = object_clear,
};

/* What a look changes of the only thing of its kind. */

static void
partial_reset (const SqField *field, void *value)
{
  *(SqThing **)value = NULL;
}

static gboolean
partial_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return sq_expected_error (field, reading, node, error);
  SqReading inner = *reading;
  inner.partial = TRUE;
  SqThing *changes = sq_thing_read (field->of, &inner, node, error);
  if (changes == NULL)
    return FALSE;
  g_clear_pointer ((SqThing **)value, sq_thing_unref);
  *(SqThing **)value = changes;
  return TRUE;
}

static JsonNode *
partial_write (const SqField *field, const void *value)
{
  return sq_thing_write (*(SqThing *const *)value, TRUE);
}

static gboolean
partial_is_default (const SqField *field, const void *value)
{
  return *(SqThing *const *)value == NULL;
}

const SqValueType sq_value_partial = {
  .name = N_ ("an object of changes"),
  .size = sizeof (SqThing *),
  .reset = partial_reset,
  .read = partial_read,
  .write = partial_write,
  .is_default = partial_is_default,
  .copy = object_copy,
  .clear = object_clear,
};

/* Lists: reference-counted arrays, shared by copies. */

static void
thing_free (gpointer thing)
{
  sq_thing_unref (thing);
}

static void
list_reset (const SqField *field, void *value)
{
  *(GPtrArray **)value = g_ptr_array_new_with_free_func (thing_free);
}

static gboolean
list_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return sq_expected_error (field, reading, node, error);
  JsonArray *array = json_node_get_array (node);
  guint length = json_array_get_length (array);
  if (!sq_check_count (reading, length, error))
    return FALSE;
  g_autoptr (GPtrArray) list = g_ptr_array_new_full (length, thing_free);
  for (guint i = 0; i < length; i++) {
    SqWhere where = { .up = reading->where, .index = i };
    SqReading member = *reading;
    member.where = &where;
    member.partial = FALSE; /* a look replaces a list whole */
    SqThing *thing = sq_thing_read (field->of, &member, json_array_get_element (array, i), error);
    if (thing == NULL)
      return FALSE;
    g_ptr_array_add (list, thing);
  }
  g_ptr_array_unref (*(GPtrArray **)value);
  *(GPtrArray **)value = g_steal_pointer (&list);
  return TRUE;
}

static JsonNode *
list_write (const SqField *field, const void *value)
{
  const GPtrArray *list = *(GPtrArray *const *)value;
  JsonArray *array = json_array_sized_new (list->len);
  for (guint i = 0; i < list->len; i++)
    json_array_add_element (array, sq_thing_write (g_ptr_array_index (list, i), FALSE));
  return sq_array_node (array);
}

static gboolean
list_is_default (const SqField *field, const void *value)
{
  return (*(GPtrArray *const *)value)->len == 0;
}

static void
list_copy (const SqField *field, void *to, const void *from)
{
  *(GPtrArray **)to = g_ptr_array_ref (*(GPtrArray *const *)from);
}

static void
list_clear (const SqField *field, void *value)
{
  g_clear_pointer ((GPtrArray **)value, g_ptr_array_unref);
}

const SqValueType sq_value_list = {
  .name = N_ ("a list"),
  .size = sizeof (GPtrArray *),
  .reset = list_reset,
  .read = list_read,
  .write = list_write,
  .is_default = list_is_default,
  .copy = list_copy,
  .clear = list_clear,
};

/* JSON that later versions may understand: kept as it is. */

static void
json_reset (const SqField *field, void *value)
{
  *(JsonNode **)value = NULL;
}

static gboolean
json_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  g_clear_pointer ((JsonNode **)value, json_node_unref);
  *(JsonNode **)value = JSON_NODE_HOLDS_NULL (node) ? NULL : json_node_ref (node);
  return TRUE;
}

static JsonNode *
json_write (const SqField *field, const void *value)
{
  JsonNode *node = *(JsonNode *const *)value;
  return node != NULL ? json_node_ref (node) : sq_null_node ();
}

static gboolean
json_is_default (const SqField *field, const void *value)
{
  return *(JsonNode *const *)value == NULL;
}

static void
json_copy (const SqField *field, void *to, const void *from)
{
  JsonNode *node = *(JsonNode *const *)from;
  *(JsonNode **)to = node != NULL ? json_node_ref (node) : NULL;
}

static void
json_clear (const SqField *field, void *value)
{
  g_clear_pointer ((JsonNode **)value, json_node_unref);
}

const SqValueType sq_value_json = {
  .name = N_ ("JSON"),
  .size = sizeof (JsonNode *),
  .reset = json_reset,
  .read = json_read,
  .write = json_write,
  .is_default = json_is_default,
  .copy = json_copy,
  .clear = json_clear,
};
