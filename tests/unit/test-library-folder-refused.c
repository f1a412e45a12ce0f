/* test-library-folder-refused.c: what is wrong in the user's folder is said, and nothing else lost
 */
#include "library-place.h"

#include <fcntl.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

/* One that is wrong beside one that is right. @id: what a scene cannot have then; NULL: no id is
 * known. */
static const struct {
  const char *wrong;
  const char *words; /* of the only line, apart by | */
  const char *id;
} members[] = {
  { CLASS ("x", "-5"), "classes[1].beams[0].peak_cd|-5|above 0", "x" },
  { CLASS ("x", "'bright'"), "classes[1].beams[0].peak_cd|text|a number", "x" },
  { "{'id': 'x'}", "classes[1]|0 kinds of light|one of beams, emits, photometry", "x" },
  { "{'id': 'x', 'emits': 'ring', 'lumens': 5}", "classes[1].emits|ring|lambert", "x" },
  { "{'id': 'x', 'emits': 'sphere'}", "classes[1]|no lumens|above 0", "x" },
  { "{'emits': 'sphere', 'lumens': 5}", "classes[1].id|missing|expected", NULL },
  { "{'id': 5, 'emits': 'sphere', 'lumens': 5}", "classes[1].id|expected", NULL },
  { CLASS ("two words", "5"), "classes[1].id|no id|A-Z", NULL },
  { CLASS ("sun", "5"), "classes[1].id|sun|reserved", NULL },
  { CLASS ("fixtures", "5"), "classes[1].id|fixtures|reserved", NULL },
  { "7", "classes[1]|expected an object", NULL },
  { "null", "classes[1]|null|expected an object", NULL },
  { CLASS ("x", "5") ", " CLASS ("x", "6"), "classes[2].id|x|twice|of its own", "x" },
};

static void
test_members (Place *place, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (members); i++) {
    g_autofree char *text =
      g_strdup_printf (FILE_OF (CLASS ("right", "9") ", %s"), members[i].wrong);
    put_file (place, "mine.json", text);
    read_folder (place);
    assert_says (place, "mine.json", members[i].words);
    g_assert_cmpfloat (peak_of (place->library, "right"), ==, 9.0);
    g_assert_null (sq_library_class (place->library, "x"));
    if (members[i].id != NULL)
      g_assert_cmpstr (sq_library_spoilt (place->library, SQ_NAMES_CLASS, members[i].id), ==,
                       g_ptr_array_index (place->remarks, 0));
    g_assert_null (sq_library_unread (place->library));
  }
}

static void
test_other_shelves (Place *place, gconstpointer unused)
{
  static const struct {
    const char *text, *words;
    SqNames names;
  } rows[] = {
    { "{'materials': [{'id': 'x', 'for': 'net', 'direct': 0.7, 'reflect': 0.7}]}",
      "materials[0]|together|at most 1", SQ_NAMES_MATERIAL },
    { "{'materials': [{'id': 'x', 'direct': 0.7}]}", "materials[0].for|missing|expected",
      SQ_NAMES_MATERIAL },
    { "{'stands': [{'id': 'x', 'min_height': 3, 'max_height': 2}]}",
      "stands[0]|max_height|expected it above", SQ_NAMES_STAND },
    { "{'stands': [{'id': 'x', 'spigot': [28, 16]}]}", "stands[0]|spigot|expected",
      SQ_NAMES_STAND },
    { "{'stands': [{'id': 'x', 'load_kg': -1}]}", "stands[0].load_kg|-1|expected", SQ_NAMES_STAND },
    /* One namespace: neither is had. */
    { "{'stands': [{'id': 'x'}], 'materials': [{'id': 'x', 'for': 'gel', 'direct': 1}]}",
      "materials[0].id|x|twice", SQ_NAMES_STAND | SQ_NAMES_MATERIAL },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    put_file (place, "mine.json", rows[i].text);
    read_folder (place);
    assert_says (place, "mine.json", rows[i].words);
    g_assert_nonnull (sq_library_spoilt (place->library, rows[i].names, "x"));
    g_assert_null (sq_library_spoilt (place->library, SQ_NAMES_CLASS, "x"));
    g_assert_null (sq_library_stand (place->library, "x"));
    g_assert_null (sq_library_material (place->library, "x"));
  }
}

/* Nobody reads them, and somebody may have misspelt them; what else there is holds. */
static void
test_unknown_keys (Place *place, gconstpointer unused)
{
  put_file (place, "mine.json", "{'mood': 'late', 'classes': [" CLASS ("right", "9") "]}");
  read_folder (place);
  assert_says (place, "mine.json", "mood|unknown key|classes, materials or stands");
  g_assert_cmpfloat (peak_of (place->library, "right"), ==, 9.0);
  put_file (place, "mine.json",
            FILE_OF ("{'id': 'right', 'lamp_v': 3, 'emits': 'sphere', 'lumens': 5}"));
  read_folder (place);
  assert_says (place, "mine.json", "classes[0].lamp_v|unknown key");
  g_assert_cmpfloat (sq_library_class (place->library, "right")->lumens, ==, 5.0);
}

/* A file that cannot be read at all: the others count, and who misses an id is told of it. */
static void
assert_unread (Place *place, const char *name, const char *words)
{
  g_autoptr (GError) error = NULL;
  put_file (place, "right.json", FILE_OF (CLASS ("right", "9")));
  read_folder (place);
  assert_says (place, name, words);
  const char *line = g_ptr_array_index (place->remarks, 0);
  g_assert_cmpstr (sq_library_unread (place->library), ==, line);
  g_assert_cmpfloat (peak_of (place->library, "right"), ==, 9.0);
  g_autoptr (SqScene) right = scene_with (place->library, "right", "", &error);
  g_assert_no_error (error);
  g_assert_nonnull (right);
  g_autoptr (SqScene) wrong = scene_with (place->library, "my-lamp", "", &error);
  g_assert_null (wrong);
  check_line (name, error, SQ_ERROR_REFERENCE, "fixtures[0].class", "my-lamp|does not exist");
  g_assert_nonnull (strstr (error->message, line));
}

static void
test_bad_text (Place *place, gconstpointer unused)
{
  g_autofree char *deep = g_strnfill (100000, '[');
  g_autofree char *many = g_strnfill (2 * 5001, '0');
  for (guint i = 1; i < 2 * 5001; i += 2)
    many[i] = i + 2 > 2 * 5001 ? '\0' : ',';
  g_autofree char *list = g_strdup_printf ("{\"classes\": [%s]}", many);
  const struct {
    const char *text;
    gssize length;
    const char *words;
  } rows[] = {
    { "", 0, "line 1, column 1|expected" },
    { "{\"classes\": []}\0", 16, "line 1, column 16|expected" },
    { "{\"classes\": [\"\0\"]}", 19, "line 1, column 15|expected" },
    { "{\"classes\": [}", -1, "line 1, column 14|expected" },
    { "{\"classes\": [], \"classes\": []}", -1, "classes|twice" },
    { "\xef\xbb\xbf{}", -1, "byte-order mark|expected" },
    { "{\"classes\": [\"\xff\"]}", -1, "line 1|UTF-8" },
    { "[]", -1, "the file|a list|an object with classes" },
    { "null", -1, "the file|null|an object with classes" },
    { "{\"classes\": {}}", -1, "classes|an object|a list" },
    { "{\"stands\": null}", -1, "stands|null|a list" },
    { deep, -1, "64" },
    { list, -1, "classes|5001 members|at most 5000" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    put_bytes (place, "mine.json", rows[i].text, rows[i].length);
    assert_unread (place, "mine.json", rows[i].words);
  }
}

static void
put_link (Place *place, const char *name, const char *target)
{
  g_autofree char *path = path_in (place, name);
  g_assert_cmpint (symlink (target, path), ==, 0);
}

/* One at a time: it is made, said and taken away. */
static void
test_no_files (Place *place, gconstpointer unused)
{
  g_autofree char *path = path_in (place, "x.json");
  g_assert_cmpint (g_mkdir (path, 0755), ==, 0);
  assert_unread (place, "x.json", "is a folder|expected a file");
  g_assert_cmpint (g_rmdir (path), ==, 0);
  put_link (place, "x.json", "nowhere");
  assert_unread (place, "x.json", "does not exist|expected a file");
  g_assert_cmpint (g_remove (path), ==, 0);
  put_link (place, "x.json", "x.json");
  assert_unread (place, "x.json", "expected a file");
  g_assert_cmpint (g_remove (path), ==, 0);
  put_link (place, "x.json", "/dev/zero");
  assert_unread (place, "x.json", "pipe or device|expected a file");
  g_assert_cmpint (g_remove (path), ==, 0);
  /* Nobody writes into it: who opened it would wait for ever. */
  g_assert_cmpint (mkfifo (path, 0644), ==, 0);
  assert_unread (place, "x.json", "pipe or device|expected a file");
}

static void
put_hole (Place *place, const char *name, goffset bytes)
{
  g_autofree char *path = path_in (place, name);
  int file = g_creat (path, 0644);
  g_assert_cmpint (file, >=, 0);
  g_assert_cmpint (ftruncate (file, bytes), ==, 0);
  g_assert_true (g_close (file, NULL));
}

static void
test_large_file (Place *place, gconstpointer unused)
{
  put_hole (place, "x.json", (goffset)1 << 30);
  assert_unread (place, "x.json", "is larger than 64 MiB|expected less");
}

/* Two that are within the limit each, and a third that nobody comes to. */
static void
test_large_folder (Place *place, gconstpointer unused)
{
  gsize length = SQ_LIBRARY_BYTES_MAX / 2 + 1;
  g_autofree char *blank = g_strnfill (length, ' ');
  blank[0] = '{', blank[1] = '}';
  put_bytes (place, "1.json", blank, (gssize)length);
  put_bytes (place, "2.json", blank, (gssize)length);
  put_file (place, "3.json", FILE_OF (CLASS ("my-lamp", "8")));
  read_folder (place);
  assert_says (place, "2.json", "more than 64 MiB|expected less|not read");
  g_assert_null (sq_library_class (place->library, "my-lamp"));
  g_assert_nonnull (sq_library_unread (place->library));
}

static void
test_many_files (Place *place, gconstpointer unused)
{
  for (guint i = 0; i <= SQ_LIBRARY_FILES_MAX; i++) {
    g_autofree char *name = g_strdup_printf ("%05u.json", i);
    put_file (place, name, i < SQ_LIBRARY_FILES_MAX ? "{}" : FILE_OF (CLASS ("my-lamp", "8")));
  }
  read_folder (place);
  assert_says (place, "01000.json", "1000 other files|expected no more|not read");
  g_assert_null (sq_library_class (place->library, "my-lamp"));
}

/* A link that leads nowhere is no missing folder: something was meant by it. */
static void
test_bad_folder (Place *place, gconstpointer unused)
{
  g_autofree char *file = path_in (place, "file"), *link = path_in (place, "link");
  put_file (place, "file", "{}");
  g_autoptr (SqLibrary) one = sq_library_with_folder (place->base, file, place->remarks);
  assert_says (place, "file", "is no folder|expected one");
  g_assert_nonnull (sq_library_class (one, "candle"));
  g_ptr_array_set_size (place->remarks, 0);
  put_link (place, "link", "nowhere");
  g_autoptr (SqLibrary) other = sq_library_with_folder (place->base, link, place->remarks);
  assert_says (place, "link", "expected a folder");
  g_assert_nonnull (sq_library_unread (other));
}

/* In a process of its own, which gives up the rights of root. */
static void
test_no_rights (Place *place, gconstpointer unused)
{
  const uid_t nobody = 65534;
  g_autofree char *path = path_in (place, "x.json"), *folder = path_in (place, "folder");
  int status;
  put_file (place, "x.json", "{}");
  put_file (place, "right.json", FILE_OF (CLASS ("right", "9")));
  g_assert_cmpint (g_mkdir (folder, 0), ==, 0);
  g_assert_cmpint (g_chmod (path, 0), ==, 0);
  pid_t child = fork ();
  g_assert_cmpint (child, >=, 0);
  if (child == 0) {
    if (geteuid () == 0)
      g_assert_cmpint (setuid (nobody), ==, 0);
    read_folder (place);
    assert_says (place, "x.json", "is read-protected|expected a file that you may read");
    g_assert_cmpfloat (peak_of (place->library, "right"), ==, 9.0);
    g_ptr_array_set_size (place->remarks, 0);
    sq_library_unref (sq_library_with_folder (place->base, folder, place->remarks));
    assert_says (place, "folder", "is read-protected|expected a folder that you may read");
    _exit (0);
  }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFEXITED (status) && WEXITSTATUS (status) == 0);
}

/* Never something else in its place: not the lamp of that name that is compiled in, unless the
 * scene brings its own. */
static void
test_scene_that_needs_it (Place *place, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  put_file (place, "mine.json", FILE_OF (CLASS ("candle", "-1")));
  read_folder (place);
  const char *line = g_ptr_array_index (place->remarks, 0);
  g_autoptr (SqScene) needs = scene_with (place->library, "candle", "", &error);
  g_assert_null (needs);
  check_line ("spoilt", error, SQ_ERROR_REFERENCE, "fixtures[0].class", "candle|cannot be used");
  g_assert_nonnull (strstr (error->message, line));
  g_clear_error (&error);
  g_autoptr (SqScene) does_not = scene_with (place->library, "space-light-6000", "", &error);
  g_assert_no_error (error);
  g_autoptr (SqScene) own = scene_with (place->library, "candle", CLASS ("candle", "3"), &error);
  g_assert_no_error (error);
  g_assert_nonnull (own);
  /* Nor can it be brought in afterwards. */
  g_autoptr (SqScene) changed = sq_scene_set (does_not, "f1.class", "candle", &error);
  g_assert_null (changed);
  g_assert_nonnull (strstr (error->message, line));
}

/* The last word on an id counts, whether it is right or wrong. */
static void
test_last_word (Place *place, gconstpointer unused)
{
  put_file (place, "1.json", FILE_OF (CLASS ("x", "-1") ", " CLASS ("y", "5")));
  put_file (place, "2.json", FILE_OF (CLASS ("x", "6") ", " CLASS ("z", "7")));
  read_folder (place);
  g_assert_cmpuint (place->remarks->len, ==, 1);
  g_assert_cmpfloat (peak_of (place->library, "x"), ==, 6.0);
  g_assert_null (sq_library_spoilt (place->library, SQ_NAMES_CLASS, "x"));
  put_file (place, "3.json", FILE_OF (CLASS ("y", "-1")));
  read_folder (place);
  g_assert_cmpuint (place->remarks->len, ==, 2);
  g_assert_null (sq_library_class (place->library, "y"));
  g_assert_cmpfloat (peak_of (place->library, "z"), ==, 7.0);
  /* Over a folder another one, as over what is compiled in. */
  g_autoptr (SqLibrary) twice =
    sq_library_with_folder (place->library, place->folder, place->remarks);
  g_assert_null (sq_library_class (twice, "y"));
  g_assert_nonnull (sq_library_spoilt (twice, SQ_NAMES_CLASS, "y"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_test ("/library folder/wrong/a class among right ones", test_members);
  add_test ("/library folder/wrong/materials and stands", test_other_shelves);
  add_test ("/library folder/wrong/unknown keys are said", test_unknown_keys);
  add_test ("/library folder/wrong/no JSON, or not what is expected", test_bad_text);
  add_test ("/library folder/wrong/folders, links, pipes and devices", test_no_files);
  add_test ("/library folder/wrong/a file too large", test_large_file);
  add_test ("/library folder/wrong/files too large together", test_large_folder);
  add_test ("/library folder/wrong/too many files", test_many_files);
  add_test ("/library folder/wrong/no folder", test_bad_folder);
  add_test ("/library folder/wrong/nothing that one may read", test_no_rights);
  add_test ("/library folder/wrong/a scene that needs it is refused", test_scene_that_needs_it);
  add_test ("/library folder/wrong/the last word counts", test_last_word);
  return g_test_run ();
}
