/* test-scene.c: scene files read and written back, unknown keys kept where they stood */
#include "scene-files.h"
#include "scene-text.h"

#include <locale.h>

/* Where the strangers of the second file stand. */
static const char *const places[] = {
  "a_first",
  "title.zeroth",
  "title.colour",
  "future",
  "room.smell",
  "walls[0].paper",
  "walls[0].openings[0].blind",
  "walls[0].openings[0].glass",
  "walls[0].openings[0].x",
  "marks[0].actor",
  "fixtures[0].0",
  "fixtures[0].lens",
  "fixtures[0].modifiers[0].material",
  "fixtures[0].modifiers[0].cutoff_deg",
  "fixtures[0].modifiers[1].old",
  "fixtures[0].modifiers[1].new",
  "fixtures[0].modifiers[2].rust",
  "fixtures[0].last",
  "looks[0].mood",
  "looks[0].fixtures.f1.first",
  "looks[0].fixtures.f1.middle",
  "looks[0].fixtures.f1.last",
  "looks[0].marks.m1.actor",
  "looks[0].sound",
  "pages[0].staple",
  "z_last",
};

/* With ' for ", but \' for ' itself. */
static char *
file_text (const char *text)
{
  g_autoptr (GString) file = g_string_new (NULL);
  for (const char *c = text; *c != '\0'; c++) {
    if (c[0] == '\\' && c[1] == '\'') {
      g_string_append_c (file, *++c);
      continue;
    }
    g_string_append_c (file, *c == '\'' ? '"' : *c);
  }
  return g_string_free (g_steal_pointer (&file), FALSE);
}

static SqScene *
parse (const char *text, GPtrArray *warnings)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GError) error = NULL;
  SqScene *scene = sq_scene_parse (text, strlen (text), library, warnings, &error);
  g_assert_no_error (error);
  return scene;
}

static void
test_byte_for_byte (void)
{
  static const char *const files[] = { empty, strangers, night_interior };
  for (guint i = 0; i < G_N_ELEMENTS (files); i++) {
    g_autofree char *text = file_text (files[i]);
    g_autoptr (SqScene) scene = parse (text, NULL);
    g_autofree char *written = sq_scene_write (scene);
    same_text (written, text);
  }
}

static void
test_unknown_keys_warned_of (void)
{
  g_autoptr (GPtrArray) warnings = g_ptr_array_new_with_free_func (g_free);
  g_autofree char *text = file_text (strangers);
  g_autoptr (SqScene) scene = parse (text, warnings);
  g_assert_cmpuint (scene->fixtures->len, ==, 1);
  for (guint i = 0; i < MIN (warnings->len, G_N_ELEMENTS (places)); i++) {
    g_autofree char *expected = g_strdup_printf ("%s: unknown key, kept as it is", places[i]);
    g_assert_cmpstr (g_ptr_array_index (warnings, i), ==, expected);
  }
  g_assert_cmpuint (warnings->len, ==, G_N_ELEMENTS (places));
}

/* They stay when something else is changed. */
static void
test_unknown_keys_survive_changes (void)
{
  g_autofree char *text = file_text (strangers);
  g_autoptr (SqScene) scene = parse (text, NULL);
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) changed = sq_scene_set (scene, "f1.level", "0.75", &error);
  g_assert_no_error (error);
  g_autoptr (GString) expected = g_string_new (text);
  g_string_replace (expected, "\"level\": 0.5,", "\"level\": 0.75,", 1);
  g_autofree char *written = sq_scene_write (changed);
  same_text (written, expected->str);
}

/* The same number is written one way: whole ones as such. */
static JsonNode *
same_numbers (JsonNode *node)
{
  if (JSON_NODE_HOLDS_ARRAY (node)) {
    g_autoptr (JsonArray) array = json_array_new ();
    for (guint i = 0; i < json_array_get_length (json_node_get_array (node)); i++)
      json_array_add_element (
        array, same_numbers (json_array_get_element (json_node_get_array (node), i)));
    return json_node_init_array (json_node_alloc (), array);
  }
  if (JSON_NODE_HOLDS_OBJECT (node)) {
    g_autoptr (JsonObject) object = json_object_new ();
    g_autoptr (GList) keys = json_object_get_members (json_node_get_object (node));
    for (GList *key = keys; key != NULL; key = key->next)
      json_object_set_member (
        object, key->data,
        same_numbers (json_object_get_member (json_node_get_object (node), key->data)));
    return json_node_init_object (json_node_alloc (), object);
  }
  if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_INT64)
    return json_node_init_double (json_node_alloc (), (double)json_node_get_int (node));
  return json_node_copy (node);
}

/* Both texts by the JSON library's own reader. */
static void
check_says_the_same (const char *written, const char *given)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) a = json_from_string (written, &error);
  g_assert_no_error (error);
  g_autoptr (JsonNode) b = json_from_string (given, &error);
  g_assert_no_error (error);
  g_autoptr (JsonNode) ours = same_numbers (a), theirs = same_numbers (b);
  if (!json_node_equal (ours, theirs))
    g_error ("%s says otherwise than %s", written, given);
}

static void
test_by_hand (void)
{
  g_autofree char *text = file_text (by_hand);
  g_autoptr (SqScene) scene = parse (text, NULL);
  g_autofree char *written = sq_scene_write (scene);
  check_says_the_same (written, text);
  g_autoptr (SqScene) again = parse (written, NULL);
  g_autofree char *rewritten = sq_scene_write (again);
  same_text (rewritten, written);
}

/* What is as it is anyway is left out; all else stays. */
static void
test_defaults_left_out (void)
{
  g_autofree char *text = file_text (
    "{'format': 1, 'title': {}, 'units': 'metric', 'north': 90, 'daylight': null, 'pages': [],"
    " 'room': {'bounce': true, 'ceiling_height': null, 'floor_reflectance': 0.25},"
    " 'marks': [{'id': 'm1', 'at': [0, -0.0], 'stature': 1.7, 'path': [], 'label': ''}],"
    " 'looks': [{'id': 'l1', 'haze': null, 'marks': {'m1': {'floor': 0}}}]}");
  g_autofree char *kept = file_text (
    "{'format': 1, 'room': {'floor_reflectance': 0.25}, 'marks': [{'id': 'm1', 'at': [0, 0]}],"
    " 'looks': [{'id': 'l1', 'marks': {'m1': {'floor': 0}}}]}");
  g_autoptr (SqScene) scene = parse (text, NULL);
  g_autofree char *written = sq_scene_write (scene);
  check_says_the_same (written, kept);
}

/* Numbers keep every digit. */
static void
test_numbers (void)
{
  static const char *const numbers[] = {
    "0.1",  "2.675",  "0.30000000000000004", "9999.999999999998",
    "1e-7", "-0.001", "123.456789012345",    "5e-324"
  };
  for (guint i = 0; i < G_N_ELEMENTS (numbers); i++) {
    g_autofree char *text = g_strdup_printf (
      "{\n  \"format\": 1,\n  \"marks\": [{ \"id\": \"m1\", \"at\": [%s, 0] }]\n}\n", numbers[i]);
    g_autoptr (SqScene) scene = parse (text, NULL);
    g_autofree char *written = sq_scene_write (scene);
    same_text (written, text);
  }
}

/* The largest plans are read; no time is asserted. */
static void
test_many_lamps (void)
{
  enum { LAMPS = 4000 };
  g_autoptr (GString) file = g_string_new ("{\n  \"format\": 1,\n  \"fixtures\": [\n");
  for (int i = 0; i < LAMPS; i++)
    g_string_append_printf (file,
                            "    { \"id\": \"f%d\", \"class\": \"" LAMP
                            "\", \"at\": [%d.5, 0, 2], \"aim\": \"f%d\" }%s\n",
                            i, i, (i + 1) % LAMPS, i + 1 < LAMPS ? "," : "");
  g_string_append (file, "  ]\n}\n");
  g_autoptr (SqScene) scene = parse (file->str, NULL);
  g_assert_cmpuint (scene->fixtures->len, ==, LAMPS);
  g_autofree char *written = sq_scene_write (scene);
  same_text (written, file->str);
  const SqThing *last = sq_scene_find (scene, "f3999");
  g_assert_true (last == g_ptr_array_index (scene->fixtures, LAMPS - 1));
}

/* A decimal comma in the locale changes nothing, nor in what is said. Where the system has no such
 * locale the same is asked of the one it has. */
static void
test_locale (void)
{
  g_autofree char *before = g_strdup (setlocale (LC_NUMERIC, NULL));
  g_test_message ("numbers as in %s", setlocale (LC_NUMERIC, "de_DE.UTF-8"));
  test_byte_for_byte ();
  test_numbers ();
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = read_scene (library, "'room': {'floor_reflectance': 1.25}", &error);
  g_assert_null (scene);
  check_line ("comma", error, SQ_ERROR_VALUE, "room.floor_reflectance", "1.25 is out of range");
  g_autoptr (SqScene) right = right_scene ("'haze': 0.25");
  g_assert_cmpfloat (right->haze_per_m, ==, 0.25);
  setlocale (LC_NUMERIC, before);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scene/what the program wrote is written back byte for byte",
                   test_byte_for_byte);
  g_test_add_func ("/scene/unknown keys are warned of, each with its place",
                   test_unknown_keys_warned_of);
  g_test_add_func ("/scene/unknown keys survive changes", test_unknown_keys_survive_changes);
  g_test_add_func ("/scene/a file by another hand keeps all it said", test_by_hand);
  g_test_add_func ("/scene/defaults are left out", test_defaults_left_out);
  g_test_add_func ("/scene/numbers keep every digit", test_numbers);
  g_test_add_func ("/scene/4000 lamps", test_many_lamps);
  g_test_add_func ("/scene/a decimal comma in the locale changes nothing", test_locale);
  return g_test_run ();
}
