/* scene-file.c: from the text of a scene file to a checked scene, and back */
#include "base/json-text.h"
#include "base/json-write.h"
#include "scene/check.h"
#include "scene/edit.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>

/* A file of a later version may be right and still not be ours to read. */
static gboolean
format_is_ours (JsonNode *root, GError **error)
{
  if (!JSON_NODE_HOLDS_OBJECT (root))
    return TRUE; /* said better by the reader */
  JsonNode *node = json_object_get_member (json_node_get_object (root), "format");
  GType type =
    node != NULL && JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;
  if (type != G_TYPE_INT64 && type != G_TYPE_DOUBLE)
    return TRUE;
  double format = json_node_get_double (node); /* 2.0 is newer, too */
  if (format <= SQ_FORMAT)
    return TRUE;
  g_autofree char *text = sq_number_text (format);
  g_set_error (error, SQ_ERROR, SQ_ERROR_NEWER,
               _ ("format: %s is newer than this program, expected at most %d"), text, SQ_FORMAT);
  return FALSE;
}

gboolean
sq_scene_finish (SqScene *scene, GError **error)
{
  if (!sq_scene_index (scene, error) || !sq_scene_check_geometry (scene, error))
    return FALSE;
  for (guint i = 0; scene->look == NULL && i < scene->looks->len; i++) {
    const SqLook *look = SQ_AT (SqLook, scene->looks, i);
    SqWhere list = { .key = "looks" }, where = { .up = &list, .index = i };
    if (look->daylight != NULL && scene->daylight == NULL) {
      SqWhere member = { .up = &where, .key = "daylight" };
      SqReading reading = { .where = &member };
      return sq_reading_error (&reading, SQ_ERROR_REFERENCE, error,
                               _ ("changes a daylight that the scene has not, expected one there"));
    }
    g_autoptr (SqScene) as_shot = sq_scene_in_look (scene, look->id, error);
    if (as_shot == NULL || !sq_aims_check (as_shot, &where, error))
      return FALSE;
  }
  return TRUE;
}

SqScene *
sq_scene_parse (
  const char *text, gsize length, SqLibrary *library, GPtrArray *warnings, GError **error)
{
  g_autoptr (JsonNode) root = sq_json_parse (text, length, error);
  if (root == NULL || !format_is_ours (root, error))
    return NULL;
  SqReading reading = { .warnings = warnings };
  g_autoptr (SqScene) scene = (SqScene *)sq_thing_read (&sq_scene_kind, &reading, root, error);
  if (scene == NULL)
    return NULL;
  scene->library = sq_library_ref (library);
  if (!sq_scene_finish (scene, error))
    return NULL;
  return g_steal_pointer (&scene);
}

char *
sq_scene_write (const SqScene *scene)
{
  g_autoptr (JsonNode) root = sq_thing_write (&scene->thing, FALSE);
  return sq_json_write (root);
}
