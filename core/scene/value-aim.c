/* value-aim.c: what something points at: a point, an id, or nothing */
#include "scene/value.h"

#include <glib/gi18n-lib.h>

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
  } else if (!sq_value_point.read (field, reading, node, &aim.at, error)) {
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
                         : sq_value_point.write (field, &aim->at);
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
