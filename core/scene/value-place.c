/* value-place.c: values that are places, points, directions and paths */
#include "scene/scene.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>

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
  return sq_place_given (*place) ? sq_write_numbers (numbers, 2) : sq_null_node ();
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
  .clear = sq_clear_nothing,
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
    return sq_null_node ();
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
  .clear = sq_clear_nothing,
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
  .clear = sq_clear_nothing,
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
  if (!sq_check_count (reading, length, error))
    return FALSE;
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
  return sq_array_node (array);
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
