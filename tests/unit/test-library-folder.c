/* test-library-folder.c: the user's own lamps go over those of the program, the scene's over both
 */
#include "library-place.h"

static void
test_missing (Place *place, gconstpointer unused)
{
  g_autofree char *nowhere = path_in (place, "nowhere");
  g_autoptr (SqLibrary) library = sq_library_with_folder (place->base, nowhere, place->remarks);
  g_assert_true (library == place->base);
  g_assert_cmpuint (place->remarks->len, ==, 0);
}

static void
test_empty (Place *place, gconstpointer unused)
{
  read_folder (place);
  g_assert_cmpuint (place->remarks->len, ==, 0);
  g_assert_cmpuint (sq_library_classes (place->library)->len, ==,
                    sq_library_classes (place->base)->len);
  g_assert_null (sq_library_unread (place->library));
}

static guint
index_of (const GPtrArray *things, const char *id)
{
  guint i = 0;
  while (!g_str_equal (sq_thing_id (g_ptr_array_index (things, i)), id))
    i++;
  return i;
}

/* A known id stands where it stood, a new one at the end; what others hold does not change. */
static void
test_over_compiled_in (Place *place, gconstpointer unused)
{
  put_file (place, "mine.json",
            "{'classes': [" CLASS ("candle", "7") ", " CLASS (
              "my-lamp", "8") "],"
                              " 'materials': [{'id': 'single-net', 'for': 'net', 'direct': 0.6}],"
                              " 'stands': [{'id': 'my-stand', 'load_kg': 12}]}");
  read_folder (place);
  g_assert_cmpuint (place->remarks->len, ==, 0);
  g_assert_cmpfloat (peak_of (place->library, "candle"), ==, 7.0);
  g_assert_cmpfloat (peak_of (place->library, "my-lamp"), ==, 8.0);
  g_assert_cmpfloat (sq_library_material (place->library, "single-net")->direct, ==, 0.6);
  g_assert_cmpfloat (sq_library_stand (place->library, "my-stand")->load_kg, ==, 12.0);

  const GPtrArray *before = sq_library_classes (place->base);
  const GPtrArray *after = sq_library_classes (place->library);
  g_assert_cmpuint (after->len, ==, before->len + 1);
  g_assert_cmpuint (index_of (after, "candle"), ==, index_of (before, "candle"));
  g_assert_cmpuint (index_of (after, "my-lamp"), ==, before->len);
  g_assert_cmpuint (sq_library_class (place->base, "candle")->beams->len, ==, 0);
  g_assert_null (sq_library_class (place->base, "my-lamp"));
}

/* As bytes, capitals come before small letters and "10" before "9". */
static void
test_byte_order (Place *place, gconstpointer unused)
{
  put_file (place, "9.json", FILE_OF (CLASS ("numbers", "9")));
  put_file (place, "10.json", FILE_OF (CLASS ("numbers", "10")));
  put_file (place, "a.json", FILE_OF (CLASS ("letters", "97")));
  put_file (place, "B.json", FILE_OF (CLASS ("letters", "66")));
  read_folder (place);
  g_assert_cmpuint (place->remarks->len, ==, 0);
  g_assert_cmpfloat (peak_of (place->library, "numbers"), ==, 9.0);
  g_assert_cmpfloat (peak_of (place->library, "letters"), ==, 97.0);
}

static void
test_which_files (Place *place, gconstpointer unused)
{
  static const char *const others[] = { ".hidden.json", "mine.json~", "json",
                                        "mine.JSON",    "notes.txt",  "mine.json.bak" };
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    put_file (place, others[i], "no JSON at all");
  put_file (place, "a lamp, Ω.json", FILE_OF (CLASS ("my-lamp", "8")));
  read_folder (place);
  g_assert_cmpuint (place->remarks->len, ==, 0);
  g_assert_cmpfloat (peak_of (place->library, "my-lamp"), ==, 8.0);
}

static void
test_three_levels (Place *place, gconstpointer unused)
{
  static const char id[] = "par-can-narrow";
  g_autoptr (GError) error = NULL;
  put_file (place, "mine.json", FILE_OF (CLASS ("par-can-narrow", "200")));
  read_folder (place);
  g_autoptr (SqScene) plain = scene_with (place->base, id, "", &error);
  g_autoptr (SqScene) users = scene_with (place->library, id, "", &error);
  g_autoptr (SqScene) own =
    scene_with (place->library, id, CLASS ("par-can-narrow", "300"), &error);
  g_assert_no_error (error);
  /* 330000: the published figure of the lamp that is compiled in. */
  g_assert_cmpfloat (SQ_AT (SqBeam, sq_scene_class (plain, id)->beams, 0)->peak_cd, ==, 330000.0);
  g_assert_cmpfloat (SQ_AT (SqBeam, sq_scene_class (users, id)->beams, 0)->peak_cd, ==, 200.0);
  g_assert_cmpfloat (SQ_AT (SqBeam, sq_scene_class (own, id)->beams, 0)->peak_cd, ==, 300.0);
}

/* The files of the program, put into the folder, are right there too and change nothing. */
static void
test_own_files (Place *place, gconstpointer unused)
{
  static const char *const names[] = { "classes.json", "materials.json", "stands.json" };
  for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autofree char *path = g_build_filename (SQ_SOURCE_DIR, "core/scene/library", names[i], NULL);
    g_autofree char *text = NULL;
    g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
    put_bytes (place, names[i], text, -1);
  }
  read_folder (place);
  g_assert_cmpuint (place->remarks->len, ==, 0);
  const GPtrArray *before = sq_library_classes (place->base);
  const GPtrArray *after = sq_library_classes (place->library);
  g_assert_cmpuint (after->len, ==, before->len);
  for (guint i = 0; i < before->len; i++) {
    g_autoptr (JsonNode) one = sq_thing_write (g_ptr_array_index (before, i), FALSE);
    g_autoptr (JsonNode) other = sq_thing_write (g_ptr_array_index (after, i), FALSE);
    g_assert_true (json_node_equal (one, other));
  }
}

/* What the page about the library shows as an example is one. */
static void
test_example (Place *place, gconstpointer unused)
{
  static const char begin[] = "```json\n", end[] = "```\n";
  g_autofree char *path = g_build_filename (SQ_SOURCE_DIR, "core/scene/library", "README.md", NULL);
  g_autofree char *page = NULL;
  g_assert_true (g_file_get_contents (path, &page, NULL, NULL));
  const char *from = strstr (page, begin);
  g_assert_nonnull (from);
  from += strlen (begin);
  const char *to = strstr (from, end);
  g_assert_nonnull (to);
  put_bytes (place, "example.json", from, to - from);
  read_folder (place);
  g_assert_cmpuint (place->remarks->len, ==, 0);
  g_assert_cmpuint (sq_library_classes (place->library)->len, ==,
                    sq_library_classes (place->base)->len + 1);
}

static gpointer
parse_often (gpointer library)
{
  for (guint i = 0; i < 50; i++) {
    g_autoptr (SqLibrary) held = sq_library_ref (library);
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) scene = scene_with (held, "my-lamp", "", &error);
    g_assert_no_error (error);
    g_assert_cmpfloat (peak_of (scene->library, "my-lamp"), ==, 8.0);
  }
  return NULL;
}

/* Several threads hold one library, and whoever lets go of it last frees it. */
static void
test_threads (Place *place, gconstpointer unused)
{
  GThread *threads[4];
  put_file (place, "mine.json", FILE_OF (CLASS ("my-lamp", "8")));
  read_folder (place);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("parse", parse_often, place->library);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_thread_join (threads[i]);
}

/* Where it is, below the folder in which programs keep a user's data. */
static void
test_of_user (Place *place, gconstpointer unused)
{
  g_autofree char *data = g_dir_make_tmp ("squarelaw-test-XXXXXX", NULL);
  g_autofree char *program = g_build_filename (data, "squarelaw", NULL);
  g_autofree char *folder = g_build_filename (program, "library", NULL);
  g_autofree char *file = g_build_filename (folder, "mine.json", NULL);
  g_autofree char *text = json_text (FILE_OF (CLASS ("my-lamp", "8")));
  g_assert_cmpint (g_mkdir_with_parents (folder, 0755), ==, 0);
  g_assert_true (g_file_set_contents (file, text, -1, NULL));
  g_autoptr (SqLibrary) library = sq_library_of_user (data, place->remarks);
  g_assert_cmpuint (place->remarks->len, ==, 0);
  g_assert_cmpfloat (peak_of (library, "my-lamp"), ==, 8.0);
  g_assert_nonnull (sq_library_class (library, "candle"));
  g_assert_cmpint (g_remove (file), ==, 0);
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  g_assert_cmpint (g_rmdir (program), ==, 0);
  g_assert_cmpint (g_rmdir (data), ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_test ("/library folder/missing: as compiled in", test_missing);
  add_test ("/library folder/empty: as compiled in", test_empty);
  add_test ("/library folder/goes over what is compiled in", test_over_compiled_in);
  add_test ("/library folder/the later file wins, in byte order", test_byte_order);
  add_test ("/library folder/other files are not looked at", test_which_files);
  add_test ("/library folder/the scene's own goes over all", test_three_levels);
  add_test ("/library folder/takes the program's own files", test_own_files);
  add_test ("/library folder/takes the example of its page", test_example);
  add_test ("/library folder/is shared by threads", test_threads);
  add_test ("/library folder/stands below the user's data", test_of_user);
  return g_test_run ();
}
