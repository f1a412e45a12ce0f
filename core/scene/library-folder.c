/* library-folder.c: the user's own lamps, materials and stands, from a folder of JSON files */
#include "base/json-text.h"
#include "base/safe-file.h"
#include "scene/check.h"
#include "scene/library-shelf.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>

typedef struct {
  SqLibrary *draft;
  GPtrArray *remarks;
  gsize bytes; /* of the files that were read */
} Filling;

/* One file while it is read. */
typedef struct {
  Filling *filling;
  char *shown;     /* its path, as people read it */
  GHashTable *ids; /* id → the shelf on which this file has it, from 1 */
} File;

static const char *
remark (Filling *filling, const char *shown_path, const char *text)
{
  char *line = g_strdup_printf ("%s: %s", shown_path, text);
  g_ptr_array_add (filling->remarks, line);
  return line;
}

/* Nobody knows which ids would have been in it. */
static void
remark_unread (Filling *filling, const char *shown_path, const char *text)
{
  sq_library_set_unread (filling->draft, remark (filling, shown_path, text));
}

/* The id that a member says, even if nothing else in it is right. */
static const char *
id_of (JsonNode *node)
{
  JsonNode *id = JSON_NODE_HOLDS_OBJECT (node)
                   ? json_object_get_member (json_node_get_object (node), "id")
                   : NULL;
  return id != NULL ? sq_node_text (id) : NULL;
}

/* That a member of the file may have this id: not one that scenes reserve, and none that the file
 * has already. Of two we cannot tell which is meant, so neither counts. */
static gboolean
claim_id (File *file, SqShelfName shelf, const char *id, const SqReading *reading, GError **error)
{
  SqWhere where = { .up = reading->where, .key = "id" };
  SqReading at_id = { .where = &where };
  if (sq_id_is_reserved (id))
    return sq_reading_error (&at_id, SQ_ERROR_REFERENCE, error,
                             _ ("\"%s\" is reserved, expected another id"), id);
  guint other = GPOINTER_TO_UINT (g_hash_table_lookup (file->ids, id));
  if (other == 0) {
    g_hash_table_insert (file->ids, g_strdup (id), GUINT_TO_POINTER (shelf + 1));
    return TRUE;
  }
  g_autofree char *shown = sq_shown_text (id);
  sq_reading_error (&at_id, SQ_ERROR_REFERENCE, error,
                    _ ("\"%s\" stands twice in this file, expected an id of its own"), shown);
  g_autofree char *why = g_strdup_printf ("%s: %s", file->shown, (*error)->message);
  sq_library_spoil (file->filling->draft, other - 1, id, why);
  return FALSE;
}

static void
read_member (File *file, SqShelfName shelf, const SqReading *reading, JsonNode *node)
{
  g_autoptr (GError) error = NULL;
  const char *id = id_of (node);
  g_autoptr (SqThing) thing = NULL;
  if (id == NULL || claim_id (file, shelf, id, reading, &error))
    thing = sq_shelf_read (shelf, reading, node, &error);
  if (thing != NULL) {
    sq_library_put (file->filling->draft, g_steal_pointer (&thing));
    return;
  }
  const char *line = remark (file->filling, file->shown, error->message);
  if (id != NULL)
    sq_library_spoil (file->filling->draft, shelf, id, line);
}

static void
read_list (File *file, SqShelfName shelf, const char *key, JsonNode *node)
{
  g_autoptr (GPtrArray) unknown = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  SqWhere list = { .key = key };
  SqReading reading = { .where = &list };
  if (!JSON_NODE_HOLDS_ARRAY (node))
    sq_found_error (&reading, node, _ ("a list"), &error);
  else
    sq_check_count (&reading, json_array_get_length (json_node_get_array (node)), &error);
  if (error != NULL) {
    remark_unread (file->filling, file->shown, error->message);
    return;
  }
  JsonArray *array = json_node_get_array (node);
  for (guint i = 0; i < json_array_get_length (array); i++) {
    SqWhere where = { .up = &list, .index = i };
    SqReading member = { .where = &where, .warnings = unknown };
    read_member (file, shelf, &member, json_array_get_element (array, i));
  }
  for (guint i = 0; i < unknown->len; i++)
    remark (file->filling, file->shown, g_ptr_array_index (unknown, i));
}

static void
read_root (File *file, JsonNode *root)
{
  if (!JSON_NODE_HOLDS_OBJECT (root)) {
    g_autoptr (GError) error = NULL;
    SqReading reading = { .where = NULL };
    sq_found_error (&reading, root, _ ("an object with classes, materials or stands"), &error);
    remark_unread (file->filling, file->shown, error->message);
    return;
  }
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;
  json_object_iter_init_ordered (&iter, json_node_get_object (root));
  while (json_object_iter_next_ordered (&iter, &key, &node)) {
    int shelf = sq_shelf_named (key);
    if (shelf >= 0) {
      read_list (file, shelf, key, node);
      continue;
    }
    g_autofree char *shown = sq_shown_text (key);
    g_autofree char *text =
      g_strdup_printf (_ ("%s: unknown key, expected classes, materials or stands"), shown);
    remark (file->filling, file->shown, text);
  }
}

/* A pipe or a device may have no end. */
static gboolean
is_plain (const char *path)
{
  return g_file_test (path, G_FILE_TEST_IS_REGULAR) || g_file_test (path, G_FILE_TEST_IS_DIR) ||
         !g_file_test (path, G_FILE_TEST_EXISTS);
}

/* Returns: FALSE if no more shall be read */
static gboolean
read_file (Filling *filling, const char *path)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *shown = sq_file_shown_path (path), *text = NULL;
  gsize length;
  if (!is_plain (path)) {
    remark_unread (filling, shown, _ ("is a pipe or device, expected a file"));
    return TRUE;
  }
  text = sq_file_load (path, &length, &error);
  if (text == NULL) {
    g_ptr_array_add (filling->remarks, g_strdup (error->message)); /* it names the file itself */
    sq_library_set_unread (filling->draft, error->message);
    return TRUE;
  }
  filling->bytes += length;
  if (filling->bytes > SQ_LIBRARY_BYTES_MAX) {
    g_autofree char *wrong =
      g_strdup_printf (_ ("with it the folder holds more than %u MiB, expected less; this file and "
                          "those after it are not read"),
                       (guint)(SQ_LIBRARY_BYTES_MAX >> 20));
    remark_unread (filling, shown, wrong);
    return FALSE;
  }
  g_autoptr (JsonNode) root = sq_json_parse (text, length, &error);
  if (root == NULL) {
    remark_unread (filling, shown, error->message);
    return TRUE;
  }
  g_autoptr (GHashTable) ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  File file = { .filling = filling, .shown = shown, .ids = ids };
  read_root (&file, root);
  return TRUE;
}

static int
by_bytes (gconstpointer one, gconstpointer other)
{
  return strcmp (*(const char *const *)one, *(const char *const *)other);
}

/* Hidden files are what editors leave while they work. */
static gboolean
is_ours (const char *name)
{
  return name[0] != '.' && g_str_has_suffix (name, ".json");
}

static void
say_folder (Filling *filling, const char *folder, const GError *problem)
{
  g_autofree char *shown = sq_file_shown_path (folder);
  if (g_error_matches (problem, G_FILE_ERROR, G_FILE_ERROR_NOTDIR))
    remark_unread (filling, shown, _ ("is no folder, expected one of .json files"));
  else if (g_error_matches (problem, G_FILE_ERROR, G_FILE_ERROR_ACCES))
    remark_unread (filling, shown, _ ("is read-protected, expected a folder that you may read"));
  else
    remark_unread (filling, shown, _ ("cannot be opened, expected a folder of .json files"));
}

SqLibrary *
sq_library_with_folder (SqLibrary *base, const char *folder, GPtrArray *remarks)
{
  g_autoptr (GError) problem = NULL;
  g_autoptr (GDir) dir = g_dir_open (folder, 0, &problem);
  /* A link that leads nowhere is there, and something was meant by it. */
  if (g_error_matches (problem, G_FILE_ERROR, G_FILE_ERROR_NOENT) &&
      !g_file_test (folder, G_FILE_TEST_IS_SYMLINK))
    return sq_library_ref (base);
  Filling filling = { .draft = sq_library_draft (base), .remarks = remarks };
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  const char *name;
  if (dir == NULL)
    say_folder (&filling, folder, problem);
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    if (is_ours (name))
      g_ptr_array_add (names, g_strdup (name));
  }
  g_ptr_array_sort (names, by_bytes);
  for (guint i = 0; i < names->len; i++) {
    g_autofree char *path = g_build_filename (folder, g_ptr_array_index (names, i), NULL);
    if (i == SQ_LIBRARY_FILES_MAX) {
      g_autofree char *shown = sq_file_shown_path (path);
      g_autofree char *wrong =
        g_strdup_printf (_ ("stands behind %d other files, expected no more in one folder; this "
                            "file and those after it are not read"),
                         SQ_LIBRARY_FILES_MAX);
      remark_unread (&filling, shown, wrong);
      break;
    }
    if (!read_file (&filling, path))
      break;
  }
  sq_library_settle (filling.draft);
  return filling.draft;
}

SqLibrary *
sq_library_of_user (const char *data_dir, GPtrArray *remarks)
{
  g_autofree char *folder = g_build_filename (data_dir, "squarelaw", "library", NULL);
  g_autoptr (SqLibrary) compiled_in = sq_library_new ();
  return sq_library_with_folder (compiled_in, folder, remarks);
}
