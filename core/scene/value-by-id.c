/* value-by-id.c: values that are objects with ids for keys: roles by mark, changes by thing */
#include "scene/value.h"

#include <glib/gi18n-lib.h>

static gboolean
array_is_empty (const SqField *field, const void *value)
{
  return (*(GPtrArray *const *)value)->len == 0;
}

static void
array_share (const SqField *field, void *to, const void *from)
{
  *(GPtrArray **)to = g_ptr_array_ref (*(GPtrArray *const *)from);
}

static void
array_clear (const SqField *field, void *value)
{
  g_clear_pointer ((GPtrArray **)value, g_ptr_array_unref);
}

/* Makes what a list holds of one member. Returns: (transfer full): or NULL with an error */
typedef gpointer (*EntryReader) (
  const SqField *field, const SqReading *reading, const char *id, JsonNode *member, GError **error);

/* Reads an object member by member into a new list, which replaces @value's only if all went well.
 */
static gboolean
read_entries (const SqField *field,
              const SqReading *reading,
              JsonNode *node,
              void *value,
              EntryReader read_entry,
              GDestroyNotify entry_free,
              GError **error)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return sq_expected_error (field, reading, node, error);
  if (!sq_check_count (reading, json_object_get_size (json_node_get_object (node)), error))
    return FALSE;
  g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func (entry_free);
  JsonObjectIter iter;
  const char *key;
  JsonNode *member;
  json_object_iter_init_ordered (&iter, json_node_get_object (node));
  while (json_object_iter_next_ordered (&iter, &key, &member)) {
    SqWhere where = { .up = reading->where, .key = key };
    SqReading inner = *reading;
    inner.where = &where;
    if (!sq_check_id (&inner, key, error))
      return FALSE;
    gpointer entry = read_entry (field, &inner, key, member, error);
    if (entry == NULL)
      return FALSE;
    g_ptr_array_add (entries, entry);
  }
  g_ptr_array_unref (*(GPtrArray **)value);
  *(GPtrArray **)value = g_steal_pointer (&entries);
  return TRUE;
}

/* Roles by mark: {"m1": "fill"}. */

static void
role_at_free (gpointer data)
{
  SqRoleAt *entry = data;
  g_free (entry->mark);
  g_free (entry);
}

static void
role_at_reset (const SqField *field, void *value)
{
  *(GPtrArray **)value = g_ptr_array_new_with_free_func (role_at_free);
}

static gpointer
role_entry (
  const SqField *field, const SqReading *reading, const char *id, JsonNode *member, GError **error)
{
  SqField one = *field;
  int role = 0;
  one.type = &sq_value_word; /* so that a wrong member is told the words */
  if (!sq_value_word.read (&one, reading, member, &role, error))
    return NULL;
  SqRoleAt *entry = g_new (SqRoleAt, 1);
  *entry = (SqRoleAt){ .mark = g_strdup (id), .role = role };
  return entry;
}

static gboolean
role_at_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  return read_entries (field, reading, node, value, role_entry, role_at_free, error);
}

static JsonNode *
role_at_write (const SqField *field, const void *value)
{
  const GPtrArray *entries = *(GPtrArray *const *)value;
  JsonObject *object = json_object_new ();
  for (guint i = 0; i < entries->len; i++) {
    const SqRoleAt *entry = g_ptr_array_index (entries, i);
    json_object_set_string_member (object, entry->mark, field->words[entry->role]);
  }
  return sq_object_node (object);
}

const SqValueType sq_value_role_at = {
  .name = N_ ("an object {mark: role}"),
  .size = sizeof (GPtrArray *),
  .reset = role_at_reset,
  .read = role_at_read,
  .write = role_at_write,
  .is_default = array_is_empty,
  .copy = array_share,
  .clear = array_clear,
};

/* What a look changes, thing by thing: {"f1": {"level": 0.5}}. */

static void
changes_free (gpointer data)
{
  SqPartial *partial = data;
  g_free (partial->id);
  sq_thing_unref (partial->changes);
  g_free (partial);
}

static void
partials_reset (const SqField *field, void *value)
{
  *(GPtrArray **)value = g_ptr_array_new_with_free_func (changes_free);
}

static gpointer
changes_entry (
  const SqField *field, const SqReading *reading, const char *id, JsonNode *member, GError **error)
{
  SqReading inner = *reading;
  inner.partial = TRUE;
  SqThing *changes = sq_thing_read (field->of, &inner, member, error);
  if (changes == NULL)
    return NULL;
  SqPartial *entry = g_new (SqPartial, 1);
  *entry = (SqPartial){ .id = g_strdup (id), .changes = changes };
  return entry;
}

static gboolean
partials_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  return read_entries (field, reading, node, value, changes_entry, changes_free, error);
}

static JsonNode *
partials_write (const SqField *field, const void *value)
{
  const GPtrArray *partials = *(GPtrArray *const *)value;
  JsonObject *object = json_object_new ();
  for (guint i = 0; i < partials->len; i++) {
    const SqPartial *partial = g_ptr_array_index (partials, i);
    json_object_set_member (object, partial->id, sq_thing_write (partial->changes, TRUE));
  }
  return sq_object_node (object);
}

const SqValueType sq_value_partials = {
  .name = N_ ("an object {id: changes}"),
  .size = sizeof (GPtrArray *),
  .reset = partials_reset,
  .read = partials_read,
  .write = partials_write,
  .is_default = array_is_empty,
  .copy = array_share,
  .clear = array_clear,
};
