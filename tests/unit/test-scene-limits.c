/* test-scene-limits.c: texts that are no scene of ours, and scenes past the stated limits */
#include "scene-text.h"

#define FIXTURE "'class': '" LAMP "', 'at': [0, 0, 2]"

/* Whole texts: what is no scene at all. */

static const struct {
  const char *name, *text;
  SqError code;
  const char *place, *words;
} texts[] = {
  { "nothing", "", SQ_ERROR_SYNTAX, "line 1, column 1", "" },
  { "blanks", "  \n ", SQ_ERROR_SYNTAX, "line 2, column 2", "" },
  { "cut short", "{'format': 1, 'marks': [{'id'", SQ_ERROR_SYNTAX, "line 1, column 30", "" },
  { "cut short in a number", "{'format': 1", SQ_ERROR_SYNTAX, "line 1, column 13", "" },
  { "more after it", "{'format': 1} {", SQ_ERROR_SYNTAX, "line 1, column 15", "" },
  { "a key twice", "{'format': 1, 'format': 1}", SQ_ERROR_SYNTAX, "line 1, column 15", "format" },
  { "not a number", "{'format': 1, 'haze': NaN}", SQ_ERROR_SYNTAX, "line 1, column 23", "" },
  { "infinite", "{'format': 1, 'haze': 1e999}", SQ_ERROR_LIMIT, "line 1, column 23", "" },
  { "an escaped NUL", "{'format': 1, 'title': {'set': 'a\\u0000'}}", SQ_ERROR_SYNTAX,
    "line 1, column 34", "" },
  { "a list", "[1]", SQ_ERROR_VALUE, "the file", "object" },
  { "text", "'format'", SQ_ERROR_VALUE, "the file", "object" },
  { "null", "null", SQ_ERROR_VALUE, "the file", "object" },
  { "no format", "{}", SQ_ERROR_VALUE, "format", "missing|1" },
  { "format 0", "{'format': 0}", SQ_ERROR_VALUE, "format", "0 is out of range|1" },
  { "format 1.5", "{'format': 1.5}", SQ_ERROR_NEWER, "format", "1.5 is newer|1" },
  { "format as text", "{'format': '1'}", SQ_ERROR_VALUE, "format", "is text|whole number" },
  { "format null", "{'format': null}", SQ_ERROR_VALUE, "format", "is null|whole number" },
  { "a newer one", "{'format': 2}", SQ_ERROR_NEWER, "format", "2 is newer|at most 1" },
  { "a newer one with a point", "{'format': 2.0}", SQ_ERROR_NEWER, "format", "2 is newer|1" },
  { "a newer one that we do not know otherwise", "{'format': 3, 'walls': {}}", SQ_ERROR_NEWER,
    "format", "3 is newer|1" },
};

static void
test_texts (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_autofree char *text = json_text (texts[i].text);
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) scene = sq_scene_parse (text, strlen (text), library, NULL, &error);
    if (scene != NULL)
      g_error ("%s: is read", texts[i].name);
    check_line (texts[i].name, error, texts[i].code, texts[i].place, texts[i].words);
  }
}

static void
test_nul_byte (void)
{
  static const char text[] = "{\"format\": 1\0}";
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = sq_scene_parse (text, sizeof text - 1, library, NULL, &error);
  g_assert_null (scene);
  check_line ("a NUL", error, SQ_ERROR_SYNTAX, "line 1, column 13", "");
}

/* Limits. */

static void
test_too_many (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GString) text = g_string_new ("'fixtures': [");
  for (int i = 0; i < 10000; i++)
    g_string_append_printf (text, "%s{'id': 'f%d', " FIXTURE "}", i > 0 ? ", " : "", i);
  g_string_append_c (text, ']');
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = read_scene (library, text->str, &error);
  g_assert_null (scene);
  check_line ("lamps", error, SQ_ERROR_LIMIT, "fixtures", "10000|at most 5000");
}

static void
test_too_long_path (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GString) text = g_string_new ("'walls': [{'path': [[0, 0]");
  for (int i = 1; i <= SQ_MOST_MEMBERS; i++)
    g_string_append_printf (text, ", [%d, 0]", i);
  g_string_append (text, "]}]");
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = read_scene (library, text->str, &error);
  g_assert_null (scene);
  check_line ("points", error, SQ_ERROR_LIMIT, "walls[0].path", "5001|at most 5000");
}

static void
check_too_many_keys (const char *before, const char *after, const char *place)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GString) text = g_string_new (before);
  for (int i = 0; i <= SQ_MOST_MEMBERS; i++)
    g_string_append_printf (text, "%s'm%d': %s", i > 0 ? ", " : "", i,
                            strstr (before, "role_at") != NULL ? "'key'" : "{}");
  g_string_append (text, after);
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = read_scene (library, text->str, &error);
  g_assert_null (scene);
  check_line (place, error, SQ_ERROR_LIMIT, place, "5001|at most 5000");
}

static void
test_too_many_keys (void)
{
  check_too_many_keys ("'fixtures': [{'id': 'f1', " FIXTURE ", 'role_at': {", "}}]",
                       "fixtures[0].role_at");
  check_too_many_keys ("'looks': [{'id': 'l1', 'marks': {", "}}]", "looks[0].marks");
}

static void
test_too_long_text (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autofree char *long_text = g_strnfill (SQ_MOST_TEXT + 1, 'x');
  g_autofree char *text = g_strdup_printf ("'title': {'set': '%s'}", long_text);
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = read_scene (library, text, &error);
  g_assert_null (scene);
  check_line ("text", error, SQ_ERROR_LIMIT, "title.set", "too long|33554432");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scene limits/texts that are no scene", test_texts);
  g_test_add_func ("/scene limits/a NUL byte", test_nul_byte);
  g_test_add_func ("/scene limits/more lamps than are read", test_too_many);
  g_test_add_func ("/scene limits/a longer path than is read", test_too_long_path);
  g_test_add_func ("/scene limits/more keys than are read", test_too_many_keys);
  g_test_add_func ("/scene limits/a longer text than is read", test_too_long_text);
  return g_test_run ();
}
