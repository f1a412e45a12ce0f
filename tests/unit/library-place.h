/* library-place.h: a folder of the user's own lamps, for tests that fill it with right and wrong */
#pragma once

#include "base/safe-file.h"
#include "scene-text.h"
#include "scene/library.h"

#include <gio/gio.h>
#include <glib/gstdio.h>

/* A class that can be told by its peak. */
#define CLASS(id, peak)                                                                            \
  "{'id': '" id "', 'beams': [{'beam_deg': 20, 'field_deg': 30, 'peak_cd': " peak "}]}"
#define FILE_OF(classes) "{'classes': [" classes "]}"

typedef struct {
  char *folder;
  SqLibrary *base;
  SqLibrary *library; /* what read_folder() made of it */
  GPtrArray *remarks;
} Place;

static inline void
make_place (Place *place, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  place->folder = g_dir_make_tmp ("squarelaw-test-XXXXXX", &error);
  g_assert_no_error (error);
  g_assert_cmpint (g_chmod (place->folder, 0755), ==, 0);
  place->base = sq_library_new ();
  place->remarks = g_ptr_array_new_with_free_func (g_free);
}

static inline void
remove_place (Place *place, gconstpointer unused)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (place->folder, name, NULL);
    g_assert_cmpint (g_remove (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_free (place->folder);
  g_clear_pointer (&place->library, sq_library_unref);
  sq_library_unref (place->base);
  g_ptr_array_unref (place->remarks);
}

static inline char *
path_in (const Place *place, const char *name)
{
  return g_build_filename (place->folder, name, NULL);
}

/* @length: of @bytes; -1: to their NUL */
static inline void
put_bytes (const Place *place, const char *name, const char *bytes, gssize length)
{
  g_autofree char *path = path_in (place, name);
  g_assert_true (g_file_set_contents (path, bytes, length, NULL));
}

/* @text: with ' for " */
static inline void
put_file (const Place *place, const char *name, const char *text)
{
  g_autofree char *json = json_text (text);
  put_bytes (place, name, json, -1);
}

/* What the folder makes of what is compiled in, and what is said of it. */
static inline void
read_folder (Place *place)
{
  g_clear_pointer (&place->library, sq_library_unref);
  g_ptr_array_set_size (place->remarks, 0);
  place->library = sq_library_with_folder (place->base, place->folder, place->remarks);
  for (guint i = 0; i < place->remarks->len; i++)
    g_test_message ("%s", (const char *)g_ptr_array_index (place->remarks, i));
}

/* NAN: there is no such class. */
static inline double
peak_of (const SqLibrary *library, const char *id)
{
  const SqClass *class = sq_library_class (library, id);
  return class != NULL ? SQ_AT (SqBeam, class->beams, 0)->peak_cd : NAN;
}

/* That the only thing said is one line about the file @name, with @words (apart by |). */
static inline void
assert_says (const Place *place, const char *name, const char *words)
{
  g_autofree char *path = path_in (place, name), *start = g_strconcat (path, ": ", NULL);
  g_auto (GStrv) all = g_strsplit (words, "|", -1);
  g_assert_cmpuint (place->remarks->len, ==, 1);
  const char *line = g_ptr_array_index (place->remarks, 0);
  g_assert_true (g_str_has_prefix (line, start));
  g_assert_null (strchr (line, '\n'));
  for (guint i = 0; all[i] != NULL; i++) {
    if (strstr (line, all[i]) == NULL)
      g_error ("\"%s\" has no \"%s\"", line, all[i]);
  }
}

/* A scene with one lamp of this class, and over it whatever classes it brings along. */
static inline SqScene *
scene_with (SqLibrary *library, const char *class, const char *own_classes, GError **error)
{
  g_autofree char *text =
    g_strdup_printf ("'fixtures': [{'id': 'f1', 'class': '%s', 'at': [0, 0, 2]}], 'classes': [%s]",
                     class, own_classes);
  return read_scene (library, text, error);
}

/* In place of g_test_add_func(): each test with a folder of its own. */
static inline void
add_test (const char *name, void (*test) (Place *, gconstpointer))
{
  g_test_add (name, Place, NULL, make_place, test, remove_place);
}
