/* value-place.c: values that are places, points, directions, paths and aims */
#include "scene/scene.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static void
nothing_to_clear (const SqField *field, void *value)
{
}

static JsonNode *
null_node (void)
{
  return json_node_init_null (json_node_alloc ());
}

/* A place on the plan. */

static void
place_reset (const SqField *field, void *value)
{
  *(SqPlace *)value = field->initial_json != NULL ? (SqPlace){ 0.0, 0.0 } : SQ_NO_PLACE;
}

static gboolean
place_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  double numbers[2];
  if (!sq_read_numbers (field, reading, node, 2, numbers, error))
    return FALSE;
  *(SqPlace *)value = (SqPlace){ numbers[0], numbers[1] };
  return TRUE;
}

static JsonNode *
place_write (const SqField *field, const void *value)
{
  const SqPlace *place = value;
  double numbers[2] = { place->x_m, place->y_m };
  return sq_place_given (*place) ? sq_write_numbers (numbers, 2) : null_node ();
}

static gboolean
place_is_default (const SqField *field, const void *value)
{
  const SqPlace *place = value;
  return field->initial_json != NULL ? place->x_m == 0.0 && place->y_m == 0.0
                                     : !sq_place_given (*place);
}

static void
place_copy (const SqField *field, void *to, const void *from)
{
  *(SqPlace *)to = *(const SqPlace *)from;
}

const SqValueType sq_value_place = {
  .name = N_ ("a place [x, y] in m"),
  .size = sizeof (SqPlace),
  .reset = place_reset,
  .read = place_read,
  .write = place_write,
  .is_default = place_is_default,
  .copy = place_copy,
  .clear = nothing_to_clear,
};

/* A point in the room. */

static void
point_reset (const SqField *field, void *value)
{
  *(SqPoint *)value = SQ_NO_POINT;
}

static gboolean
point_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  double numbers[3] = { NAN, NAN, NAN };
  guint count = 3;
  if ((field->flags & SQ_WITHOUT_Z) && JSON_NODE_HOLDS_ARRAY (node) &&
      json_array_get_length (json_node_get_array (node)) == 2)
    count = 2;
  if (!sq_read_numbers (field, reading, node, count, numbers, error))
    return FALSE;
  *(SqPoint *)value = sq_point (numbers[0], numbers[1], numbers[2]);
  return TRUE;
}

static JsonNode *
point_write (const SqField *field, const void *value)
{
  const SqPoint *point = value;
  double numbers[3] = { point->x_m, point->y_m, point->z_m };
  if (!sq_point_given (*point))
    return null_node ();
  return sq_write_numbers (numbers, isnan (point->z_m) ? 2 : 3);
}

static gboolean
point_is_default (const SqField *field, const void *value)
{
  return !sq_point_given (*(const SqPoint *)value);
}

static void
point_copy (const SqField *field, void *to, const void *from)
{
  *(SqPoint *)to = *(const SqPoint *)from;
}

const SqValueType sq_value_point = {
  .name = N_ ("a point [x, y, z] in m"),
  .size = sizeof (SqPoint),
  .reset = point_reset,
  .read = point_read,
  .write = point_write,
  .is_default = point_is_default,
  .copy = point_copy,
  .clear = nothing_to_clear,
};

/* A direction: up unless said. */

static void
direction_reset (const SqField *field, void *value)
{
  *(SqVector *)value = sq_vector (0, 0, 1);
}

static gboolean
direction_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  double numbers[3];
  if (!sq_read_numbers (field, reading, node, 3, numbers, error))
    return FALSE;
  if (sq_vector_length (sq_vector (numbers[0], numbers[1], numbers[2])) < 1e-9)
    return sq_reading_error (reading, SQ_ERROR_GEOMETRY, error,
                             _ ("has no length, expected a direction [x, y, z]"));
  *(SqVector *)value = sq_vector (numbers[0], numbers[1], numbers[2]);
  return TRUE;
}

static JsonNode *
direction_write (const SqField *field, const void *value)
{
  const SqVector *v = value;
  return sq_write_numbers ((double[]){ v->x, v->y, v->z }, 3);
}

static gboolean
direction_is_default (const SqField *field, const void *value)
{
  const SqVector *v = value;
  return v->x == 0.0 && v->y == 0.0 && v->z == 1.0;
}

static void
direction_copy (const SqField *field, void *to, const void *from)
{
  *(SqVector *)to = *(const SqVector *)from;
}

const SqValueType sq_value_direction = {
  .name = N_ ("a direction [x, y, z]"),
  .size = sizeof (SqVector),
  .reset = direction_reset,
  .read = direction_read,
  .write = direction_write,
  .is_default = direction_is_default,
  .copy = direction_copy,
  .clear = nothing_to_clear,
};

/* A path: places one after the other. */

static void
path_reset (const SqField *field, void *value)
{
  *(GArray **)value = g_array_new (FALSE, FALSE, sizeof (SqPlace));
}

static gboolean
path_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return sq_expected_error (field, reading, node, error);
  JsonArray *array = json_node_get_array (node);
  guint length = json_array_get_length (array);
  if (length < field->least)
    return sq_reading_error (reading, SQ_ERROR_GEOMETRY, error,
                             g_dngettext (GETTEXT_PACKAGE, "has %u point, expected at least %u",
                                          "has %u points, expected at least %u", length),
                             length, field->least);
  if (length > SQ_MOST_MEMBERS)
    return sq_reading_error (reading, SQ_ERROR_LIMIT, error,
                             _ ("has %u points, expected at most %d"), length, SQ_MOST_MEMBERS);
  g_autoptr (GArray) path = g_array_sized_new (FALSE, FALSE, sizeof (SqPlace), length);
  for (guint i = 0; i < length; i++) {
    SqWhere where = { .up = reading->where, .index = i };
    SqReading member = *reading;
    member.where = &where;
    SqField one = *field;
    one.type = &sq_value_place; /* so that a wrong member is told what a place looks like */
    one.flags &= ~SQ_MAY_BE_NULL;
    SqPlace place;
    if (!place_read (&one, &member, json_array_get_element (array, i), &place, error))
      return FALSE;
    g_array_append_val (path, place);
  }
  g_array_unref (*(GArray **)value);
  *(GArray **)value = g_steal_pointer (&path);
  return TRUE;
}

static JsonNode *
path_write (const SqField *field, const void *value)
{
  const GArray *path = *(GArray *const *)value;
  JsonArray *array = json_array_sized_new (path->len);
  for (guint i = 0; i < path->len; i++) {
    SqPlace place = sq_path_at (path, i);
    json_array_add_element (array, sq_write_numbers ((double[]){ place.x_m, place.y_m }, 2));
  }
  JsonNode *node = json_node_init_array (json_node_alloc (), array);
  json_array_unref (array);
  return node;
}

static gboolean
path_is_default (const SqField *field, const void *value)
{
  return (*(GArray *const *)value)->len == 0;
}

static void
path_copy (const SqField *field, void *to, const void *from)
{
  *(GArray **)to = g_array_ref (*(GArray *const *)from);
}

static void
path_clear (const SqField *field, void *value)
{
  g_clear_pointer ((GArray **)value, g_array_unref);
}

const SqValueType sq_value_path = {
  .name = N_ ("a list of places [[x, y], …] in m"),
  .size = sizeof (GArray *),
  .reset = path_reset,
  .read = path_read,
  .write = path_write,
  .is_default = path_is_default,
  .copy = path_copy,
  .clear = path_clear,
};

/* An aim: a point or an id. */

static void
aim_reset (const SqField *field, void *value)
{
  *(SqAim *)value = (SqAim){ .at = SQ_NO_POINT };
}

static gboolean
aim_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  SqAim aim = { .at = SQ_NO_POINT };
  if (JSON_NODE_HOLDS_VALUE (node)) {
    if (!sq_value_reference.read (field, reading, node, &aim.id, error))
      return FALSE;
  } else if (!point_read (field, reading, node, &aim.at, error)) {
    return FALSE;
  }
  g_free (((SqAim *)value)->id);
  *(SqAim *)value = aim;
  return TRUE;
}

static JsonNode *
aim_write (const SqField *field, const void *value)
{
  const SqAim *aim = value;
  return aim->id != NULL ? json_node_init_string (json_node_alloc (), aim->id)
                         : point_write (field, &aim->at);
}

static gboolean
aim_is_default (const SqField *field, const void *value)
{
  const SqAim *aim = value;
  return aim->id == NULL && !sq_point_given (aim->at);
}

static void
aim_copy (const SqField *field, void *to, const void *from)
{
  const SqAim *aim = from;
  *(SqAim *)to = (SqAim){ .id = g_strdup (aim->id), .at = aim->at };
}

static void
aim_clear (const SqField *field, void *value)
{
  g_clear_pointer (&((SqAim *)value)->id, g_free);
}

const SqValueType sq_value_aim = {
  .name = N_ ("a point [x, y, z] in m or an id that exists"),
  .size = sizeof (SqAim),
  .reset = aim_reset,
  .read = aim_read,
  .write = aim_write,
  .is_default = aim_is_default,
  .copy = aim_copy,
  .clear = aim_clear,
};

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

static gboolean
role_at_read (
  const SqField *field, const SqReading *reading, JsonNode *node, void *value, GError **error)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return sq_expected_error (field, reading, node, error);
  if (json_object_get_size (json_node_get_object (node)) > SQ_MOST_MEMBERS)
    return sq_reading_error (reading, SQ_ERROR_LIMIT, error,
                             _ ("has %u members, expected at most %d"),
                             json_object_get_size (json_node_get_object (node)), SQ_MOST_MEMBERS);
  g_autoptr (GPtrArray) entries = g_ptr_array_new_with_free_func (role_at_free);
  JsonObjectIter iter;
  const char *key;
  JsonNode *member;
  json_object_iter_init_ordered (&iter, json_node_get_object (node));
  while (json_object_iter_next_ordered (&iter, &key, &member)) {
    SqWhere where = { .up = reading->where, .key = key };
    SqReading inner = *reading;
    inner.where = &where;
    SqField one = *field;
    one.type = &sq_value_word;
    int role = 0;
    if (!sq_is_id (key))
      return sq_reading_error (&inner, SQ_ERROR_VALUE, error,
                               _ ("is no id, expected 1 to 64 of A-Z a-z 0-9 _ -"));
    if (!sq_value_word.read (&one, &inner, member, &role, error))
      return FALSE;
    SqRoleAt *entry = g_new (SqRoleAt, 1);
    *entry = (SqRoleAt){ .mark = g_strdup (key), .role = role };
    g_ptr_array_add (entries, entry);
  }
  g_ptr_array_unref (*(GPtrArray **)value);
  *(GPtrArray **)value = g_steal_pointer (&entries);
  return TRUE;
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
  JsonNode *node = json_node_init_object (json_node_alloc (), object);
  json_object_unref (object);
  return node;
}

static gboolean
role_at_is_default (const SqField *field, const void *value)
{
  return (*(GPtrArray *const *)value)->len == 0;
}

static void
role_at_copy (const SqField *field, void *to, const void *from)
{
  *(GPtrArray **)to = g_ptr_array_ref (*(GPtrArray *const *)from);
}

static void
role_at_clear (const SqField *field, void *value)
{
  g_clear_pointer ((GPtrArray **)value, g_ptr_array_unref);
}

const SqValueType sq_value_role_at = {
  .name = N_ ("an object {mark: role}"),
  .size = sizeof (GPtrArray *),
  .reset = role_at_reset,
  .read = role_at_read,
  .write = role_at_write,
  .is_default = role_at_is_default,
  .copy = role_at_copy,
  .clear = role_at_clear,
};
