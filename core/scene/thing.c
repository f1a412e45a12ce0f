/* thing.c: making, sharing, reading and writing things of any kind, by their table of fields */
#include "scene/thing.h"

#include "scene/value.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static void
extra_free (gpointer data)
{
  SqExtra *extra = data;
  g_free (extra->key);
  json_node_unref (extra->value);
  g_free (extra);
}

static SqThing *
thing_alloc (const SqKind *kind)
{
  SqThing *thing = g_malloc0 (kind->size);
  thing->kind = kind;
  g_atomic_ref_count_init (&thing->references);
  return thing;
}

SqThing *
sq_thing_new (const SqKind *kind)
{
  SqThing *thing = thing_alloc (kind);
  SQ_EACH_FIELD (field, kind)
    field->type->reset (field, sq_thing_value (thing, field));
  return thing;
}

SqThing *
sq_thing_ref (const SqThing *thing)
{
  /* Counting is no change that anybody can see. */
  SqThing *counted = (SqThing *)thing;
  g_atomic_ref_count_inc (&counted->references);
  return counted;
}

void
sq_thing_unref (SqThing *thing)
{
  if (!g_atomic_ref_count_dec (&thing->references))
    return;
  if (thing->kind->finalize != NULL)
    thing->kind->finalize (thing);
  SQ_EACH_FIELD (field, thing->kind)
    field->type->clear (field, sq_thing_value (thing, field));
  g_clear_pointer (&thing->extras, g_ptr_array_unref);
  g_free (thing);
}

SqThing *
sq_thing_copy (const SqThing *thing)
{
  SqThing *copy = thing_alloc (thing->kind);
  copy->said = thing->said;
  copy->extras = thing->extras != NULL ? g_ptr_array_ref (thing->extras) : NULL;
  SQ_EACH_FIELD (field, thing->kind)
    field->type->copy (field, sq_thing_value (copy, field), sq_thing_value (thing, field));
  return copy;
}

const SqField *
sq_kind_field (const SqKind *kind, const char *key)
{
  SQ_EACH_FIELD (field, kind) {
    if (g_str_equal (field->key, key))
      return field;
  }
  return NULL;
}

char *
sq_kind_keys (const SqKind *kind, guint flags)
{
  g_autoptr (GPtrArray) keys = g_ptr_array_new ();
  SQ_EACH_FIELD (field, kind) {
    if ((field->flags & flags) == flags)
      g_ptr_array_add (keys, (gpointer)field->key);
  }
  g_ptr_array_add (keys, NULL);
  return g_strjoinv (", ", (char **)keys->pdata);
}

static const SqField *
variant_field (const SqKind *kind)
{
  SQ_EACH_FIELD (field, kind) {
    if (field->flags & SQ_SAYS_VARIANT)
      return field;
  }
  return NULL;
}

gboolean
sq_field_applies (const SqField *field, const SqThing *thing)
{
  if (field->variants == 0)
    return TRUE;
  const SqField *decides = variant_field (thing->kind);
  int word = *(const int *)sq_thing_value (thing, decides);
  return word >= 0 && (field->variants & (1u << word)) != 0;
}

static guint
field_index (const SqThing *thing, const SqField *field)
{
  return (guint)(field - thing->kind->fields);
}

static gboolean
is_said (const SqThing *thing, const SqField *field)
{
  return (thing->said & (G_GUINT64_CONSTANT (1) << field_index (thing, field))) != 0;
}

gboolean
sq_thing_set (
  SqThing *thing, const SqField *field, const SqReading *reading, JsonNode *node, GError **error)
{
  if (!field->type->read (field, reading, node, sq_thing_value (thing, field), error))
    return FALSE;
  thing->said |= G_GUINT64_CONSTANT (1) << field_index (thing, field);
  return TRUE;
}

void
sq_thing_put (SqThing *owner, const SqField *field, SqThing *member)
{
  SqThing **slot = sq_thing_value (owner, field);
  sq_thing_ref (member);
  g_clear_pointer (slot, sq_thing_unref);
  *slot = member;
}

static void
keep_extra (SqThing *thing, int after, const char *key, JsonNode *value, const SqReading *reading)
{
  SqExtra *extra = g_new (SqExtra, 1);
  *extra = (SqExtra){ .after = after, .key = g_strdup (key), .value = json_node_ref (value) };
  if (thing->extras == NULL)
    thing->extras = g_ptr_array_new_with_free_func (extra_free);
  g_ptr_array_add (thing->extras, extra);
  if (reading->warnings != NULL) {
    SqWhere where = { .up = reading->where, .key = key };
    g_autofree char *place = sq_where_text (&where);
    g_ptr_array_add (reading->warnings,
                     g_strdup_printf (_ ("%s: unknown key, kept as it is"), place));
  }
}

static gboolean
read_member (
  SqThing *thing, const SqField *field, const SqReading *reading, JsonNode *node, GError **error)
{
  SqWhere where = { .up = reading->where, .key = field->key };
  SqReading member = *reading;
  member.where = &where;
  if (reading->partial && !(field->flags & SQ_PER_LOOK)) {
    g_autofree char *expected = sq_kind_keys (thing->kind, SQ_PER_LOOK);
    return sq_reading_error (&member, SQ_ERROR_VALUE, error,
                             _ ("cannot be changed by a look, expected one of %s"), expected);
  }
  return sq_thing_set (thing, field, &member, node, error);
}

/* Every row that must be there and is not. */
static gboolean
all_required (const SqThing *thing, const SqReading *reading, GError **error)
{
  SQ_EACH_FIELD (field, thing->kind) {
    if (!(field->flags & SQ_REQUIRED) || is_said (thing, field) || !sq_field_applies (field, thing))
      continue;
    SqWhere where = { .up = reading->where, .key = field->key };
    SqReading member = *reading;
    member.where = &where;
    g_autofree char *expected = sq_field_expected (field);
    return sq_reading_error (&member, SQ_ERROR_VALUE, error, _ ("is missing, expected %s"),
                             expected);
  }
  return TRUE;
}

SqThing *
sq_thing_read (const SqKind *kind, const SqReading *reading, JsonNode *node, GError **error)
{
  if (!JSON_NODE_HOLDS_OBJECT (node)) {
    g_autofree char *expected = g_strdup_printf (_ ("an object (%s)"), _ (kind->name));
    sq_found_error (reading, node, expected, error);
    return NULL;
  }
  g_autoptr (SqThing) thing = sq_thing_new (kind);
  JsonObject *object = json_node_get_object (node);

  /* What kind of modifier it is decides which other keys are known: read that first. */
  const SqField *decides = variant_field (kind);
  if (decides != NULL && json_object_has_member (object, decides->key) &&
      !read_member (thing, decides, reading, json_object_get_member (object, decides->key), error))
    return NULL;

  JsonObjectIter iter;
  const char *key;
  JsonNode *member;
  int after = -1;
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &member)) {
    const SqField *field = sq_kind_field (kind, key);
    if (field == NULL || !sq_field_applies (field, thing)) {
      keep_extra (thing, after, key, member, reading);
      continue;
    }
    after = (int)field_index (thing, field);
    if (field != decides && !read_member (thing, field, reading, member, error))
      return NULL;
  }
  if (!reading->partial && !all_required (thing, reading, error))
    return NULL;
  return g_steal_pointer (&thing);
}

static void
write_extras (const SqThing *thing, int after, JsonObject *object)
{
  for (guint i = 0; thing->extras != NULL && i < thing->extras->len; i++) {
    const SqExtra *extra = g_ptr_array_index (thing->extras, i);
    if (extra->after == after)
      json_object_set_member (object, extra->key, json_node_ref (extra->value));
  }
}

JsonNode *
sq_thing_write (const SqThing *thing, gboolean partial)
{
  JsonObject *object = json_object_new ();
  write_extras (thing, -1, object);
  SQ_EACH_FIELD (field, thing->kind) {
    gconstpointer value = sq_thing_value (thing, field);
    gboolean wanted;
    if (partial)
      wanted = is_said (thing, field);
    else
      wanted = sq_field_applies (field, thing) &&
               ((field->flags & SQ_REQUIRED) || !field->type->is_default (field, value));
    if (wanted)
      json_object_set_member (object, field->key, field->type->write (field, value));
    write_extras (thing, (int)field_index (thing, field), object);
  }
  return sq_object_node (object);
}

SqThing *
sq_thing_overlay (const SqThing *base, const SqThing *changes)
{
  SqThing *result = sq_thing_copy (base);
  SQ_EACH_FIELD (field, base->kind) {
    if (!is_said (changes, field))
      continue;
    field->type->clear (field, sq_thing_value (result, field));
    field->type->copy (field, sq_thing_value (result, field), sq_thing_value (changes, field));
    result->said |= G_GUINT64_CONSTANT (1) << field_index (result, field);
  }
  return result;
}

gboolean
sq_thing_is_default (const SqThing *thing)
{
  if (thing->extras != NULL)
    return FALSE;
  SQ_EACH_FIELD (field, thing->kind) {
    if (!field->type->is_default (field, sq_thing_value (thing, field)))
      return FALSE;
  }
  return TRUE;
}

const char *
sq_thing_id (const SqThing *thing)
{
  const SqField *field = sq_kind_field (thing->kind, "id");
  return field != NULL ? *(char **)sq_thing_value (thing, field) : NULL;
}
