/* edit.c: changed copies of a scene: one field set by name */
#include "scene/edit.h"

#include "base/json-text.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>
#include <string.h>

SqScene *
sq_scene_copy (const SqScene *scene)
{
  SqScene *copy = (SqScene *)sq_thing_copy (&scene->thing);
  copy->library = sq_library_ref (scene->library);
  copy->look = g_strdup (scene->look);
  copy->look_camera = g_strdup (scene->look_camera);
  return copy;
}

static GPtrArray *
list_with (const GPtrArray *list, guint index, SqThing *now)
{
  GPtrArray *copy = g_ptr_array_new_full (list->len, (GDestroyNotify)sq_thing_unref);
  for (guint i = 0; i < list->len; i++)
    g_ptr_array_add (copy, sq_thing_ref (i == index ? now : g_ptr_array_index (list, i)));
  return copy;
}

static void
put_list (SqThing *owner, const SqField *field, GPtrArray *list)
{
  GPtrArray **slot = sq_thing_value (owner, field);
  g_ptr_array_unref (*slot);
  *slot = list;
}

SqThing *
sq_thing_replace (const SqThing *owner, const SqThing *old, SqThing *now)
{
  if (owner == old)
    return sq_thing_ref (now);
  SQ_EACH_FIELD (field, owner->kind) {
    gpointer value = sq_thing_value (owner, field);
    if (field->type == &sq_value_object && *(SqThing **)value != NULL) {
      g_autoptr (SqThing) inner = sq_thing_replace (*(SqThing **)value, old, now);
      if (inner != NULL) {
        SqThing *copy = sq_thing_copy (owner);
        sq_thing_put (copy, field, inner);
        return copy;
      }
    } else if (field->type == &sq_value_list) {
      const GPtrArray *list = *(GPtrArray **)value;
      for (guint k = 0; k < list->len; k++) {
        g_autoptr (SqThing) inner = sq_thing_replace (g_ptr_array_index (list, k), old, now);
        if (inner != NULL) {
          SqThing *copy = sq_thing_copy (owner);
          put_list (copy, field, list_with (list, k, inner));
          return copy;
        }
      }
    }
  }
  return NULL;
}

/* The scene with @now in place of @old; its index is not made yet. */
static SqScene *
scene_with (const SqScene *scene, const SqThing *old, SqThing *now)
{
  SqScene *result = (SqScene *)sq_thing_replace (&scene->thing, old, now);
  g_assert (result != NULL);
  result->library = sq_library_ref (scene->library);
  result->look = g_strdup (scene->look);
  result->look_camera = g_strdup (scene->look_camera);
  return result;
}

/* What a text given for @field stands for, as the JSON that a file would have. */

static gboolean
takes_bare_text (const SqField *field)
{
  const SqValueType *type = field->type;
  return type == &sq_value_id || type == &sq_value_text || type == &sq_value_word ||
         type == &sq_value_reference || type == &sq_value_date || type == &sq_value_time ||
         type == &sq_value_aim;
}

static double
number_now (const SqField *field, const SqThing *thing)
{
  gconstpointer value = sq_thing_value (thing, field);
  if (field->type == &sq_value_count)
    return *(const int *)value;
  if (field->type == &sq_value_spread)
    return ((const SqSpread *)value)->across;
  return *(const double *)value;
}

static JsonNode *
node_from_text (const SqField *field,
                const SqThing *thing,
                SqUnits units,
                const char *text,
                const SqReading *reading,
                GError **error)
{
  JsonNode *json = sq_json_parse (text, strlen (text), NULL);
  gboolean bare = takes_bare_text (field);
  if (json != NULL) {
    /* 7 as a unit number, 12 as a gauge: text, though it is JSON too. */
    gboolean is_text =
      JSON_NODE_HOLDS_VALUE (json) && json_node_get_value_type (json) == G_TYPE_STRING;
    if (!bare || is_text || !JSON_NODE_HOLDS_VALUE (json))
      return json;
    json_node_unref (json);
  }
  if (bare && !g_utf8_validate (text, -1, NULL)) {
    sq_reading_error (reading, SQ_ERROR_VALUE, error, _ ("is not in UTF-8, expected text that is"));
    return NULL;
  }
  if (bare)
    return json_node_init_string (json_node_alloc (), text);
  if (field->type == &sq_value_number || field->type == &sq_value_count ||
      field->type == &sq_value_spread) {
    double number;
    g_autoptr (GError) inner = NULL;
    if (sq_quantity_parse (text, field->dimension, units, number_now (field, thing), &number,
                           &inner))
      return sq_write_number (number);
    sq_reading_error (reading, SQ_ERROR_VALUE, error, "%s", inner->message);
    return NULL;
  }
  g_autofree char *expected = sq_field_expected (field);
  sq_reading_error (reading, SQ_ERROR_VALUE, error, _ ("is no JSON, expected %s"), expected);
  return NULL;
}

/* @thing with the field at the end of @path set: a changed copy. */
static SqThing *
set_in (const SqThing *thing,
        char **path,
        const char *text,
        SqUnits units,
        const SqReading *reading,
        GError **error)
{
  SqWhere where = { .up = reading->where, .key = path[0] };
  SqReading member = { .where = &where };
  const SqField *field = path[0] != NULL ? sq_kind_field (thing->kind, path[0]) : NULL;
  if (field == NULL || !sq_field_applies (field, thing)) {
    g_autofree char *keys = sq_kind_keys (thing->kind, 0);
    sq_reading_error (path[0] != NULL ? &member : reading, SQ_ERROR_VALUE, error,
                      _ ("is no field of its own (%s), expected one of %s"), _ (thing->kind->name),
                      keys);
    return NULL;
  }
  g_autoptr (SqThing) copy = sq_thing_copy (thing);
  if (path[1] == NULL) {
    g_autoptr (JsonNode) node = node_from_text (field, thing, units, text, &member, error);
    if (node == NULL || !sq_thing_set (copy, field, &member, node, error))
      return NULL;
    return g_steal_pointer (&copy);
  }
  const SqThing *inner =
    field->type == &sq_value_object ? *(SqThing **)sq_thing_value (thing, field) : NULL;
  if (inner == NULL) {
    sq_reading_error (&member, SQ_ERROR_VALUE, error,
                      _ ("has no fields of its own here, expected a value for it as a whole"));
    return NULL;
  }
  g_autoptr (SqThing) changed = set_in (inner, path + 1, text, units, &member, error);
  if (changed == NULL)
    return NULL;
  sq_thing_put (copy, field, changed);
  return g_steal_pointer (&copy);
}

SqScene *
sq_scene_set (const SqScene *scene, const char *path, const char *text, GError **error)
{
  g_auto (GStrv) steps = g_strsplit (path, ".", -1);
  const SqThing *target = steps[0] != NULL ? sq_scene_find (scene, steps[0]) : NULL;

  if (*path == '\0') {
    g_set_error (error, SQ_ERROR, SQ_ERROR_REFERENCE,
                 _ ("set: names nothing, expected ID.FIELD or a key of the file"));
    return NULL;
  }
  if (target == NULL && sq_kind_field (&sq_scene_kind, steps[0]) == NULL) {
    g_autofree char *place = sq_shown_text (path), *name = sq_shown_text (steps[0]);
    g_set_error (error, SQ_ERROR, SQ_ERROR_REFERENCE,
                 _ ("%s: \"%s\" does not exist, expected the id of a thing or a key of the file"),
                 place, name);
    return NULL;
  }
  if (target == NULL)
    target = &scene->thing;
  SqWhere where = { .key = steps[0] };
  gboolean whole = target == &scene->thing;
  SqReading reading = { .where = whole ? NULL : &where };
  g_autoptr (SqThing) changed =
    set_in (target, whole ? steps : steps + 1, text, (SqUnits)scene->units, &reading, error);
  if (changed == NULL)
    return NULL;
  g_autoptr (SqScene) result = scene_with (scene, target, changed);
  if (!sq_scene_finish (result, error))
    return NULL;
  return g_steal_pointer (&result);
}
