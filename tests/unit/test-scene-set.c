/* test-scene-set.c: values set by name as on the command line, and what is said when they cannot be
 */
#include "scene-text.h"

#define SCENE                                                                                      \
  "'units': 'imperial', 'title': {'set': 'Kitchen'},"                                              \
  "'walls': [{'id': 'w1', 'path': [[0, 0], [6, 0]], 'openings': [{'id': 'o1', 'width': 1}]}],"     \
  "'pieces': [{'id': 't1', 'disc': {'at': [1, 1], 'radius': 0.5}}],"                               \
  "'marks': [{'id': 'm1', 'at': [3, 2]}],"                                                         \
  "'cameras': [{'id': 'c1', 'at': [3, -2, 1.5], 'aim': 'm1'}],"                                    \
  "'fixtures': [{'id': 'f1', 'class': '" LAMP "', 'at': [0, 0, 2], 'aim': 'm1', 'level': 0.25,"    \
  "    'tint': [0.3, 0.3], 'role_at': {'m1': 'back'}}],"                                           \
  "'daylight': {'latitude': 52.5, 'longitude': 13.4, 'date': '2024-06-20'},"                       \
  "'looks': [{'id': 'night', 'daylight': {'time': '22:00'}}]"

/* The place is read from the written scene: a member of the scene, of a list's first thing, or of
 * an object, as JSON; "" where it is not written. */
static char *
written_at (const SqScene *scene, const char *list, const char *key)
{
  g_autofree char *text = sq_scene_write (scene);
  g_autoptr (JsonNode) root = json_from_string (text, NULL);
  JsonObject *object = json_node_get_object (root);
  JsonNode *node = list != NULL ? json_object_get_member (object, list) : root;
  if (node != NULL && JSON_NODE_HOLDS_ARRAY (node))
    node = json_array_get_element (json_node_get_array (node), 0);
  node = node != NULL ? json_object_get_member (json_node_get_object (node), key) : NULL;
  return node != NULL ? json_to_string (node, FALSE) : g_strdup ("");
}

/* clang-format off */
static const struct {
  const char *path, *text, *list, *key;
  const char *written; /* with ' for " */
} changes[] = {
  /* JSON */
  { "f1.level",            "0.5",             "fixtures", "level",     "0.5" },
  { "f1.on",               "false",           "fixtures", "on",        "false" },
  { "f1.at",               "[1, 2.5, 3]",     "fixtures", "at",        "[1,2.5,3]" },
  { "f1.tint",             "[0.5, 0.25]",     "fixtures", "tint",      "[0.5,0.25]" },
  { "f1.tint",             "null",            "fixtures", "tint",      "" },
  { "f1.aim",              "[1, 1, 0]",       "fixtures", "aim",       "[1,1,0]" },
  { "f1.aim",              "null",            "fixtures", "aim",       "" },
  { "f1.aim",              "\"c1\"",          "fixtures", "aim",       "'c1'" },
  { "f1.modifiers",        "[{\"kind\": \"scrim\", \"part\": \"top\"}]", "fixtures", "modifiers", "[{'kind':'scrim','part':'top'}]" },
  { "f1.modifiers",        "[]",              "fixtures", "modifiers", "" },
  { "f1.role_at",          "{}",              "fixtures", "role_at",   "" },
  { "f1.role_at",          "{\"m1\": \"key\"}", "fixtures", "role_at", "{'m1':'key'}" },
  { "f1.number",           "\"7\"",           "fixtures", "number",    "'7'" },
  { "f1.number",           "null",            "fixtures", "number",    "" },
  { "t1.disc",             "{\"at\": [0, 0], \"radius\": 2}", "pieces", "disc", "{'at':[0,0],'radius':2}" },
  { "map",                 "{\"height\": 2}", NULL,       "map",       "{'height':2}" },
  { "marks",               "[{\"id\": \"m1\", \"at\": [0, 1]}]", NULL, "marks", "[{'id':'m1','at':[0,1]}]" },
  /* metric, though the scene is shown in feet: JSON is what a file says */
  { "room.ceiling_height", "3",               "room",     "ceiling_height", "3" },
  /* text: a unit number, a gauge, a word, an id, a time, a date */
  { "f1.number",           "7",               "fixtures", "number",    "'7'" },
  { "f1.number",           "12A",             "fixtures", "number",    "'12A'" },
  { "f1.number",           "true",            "fixtures", "number",    "'true'" },
  { "f1.motive_text",      "a street, far off", "fixtures", "motive_text", "'a street, far off'" },
  { "f1.role",             "background",      "fixtures", "role",      "'background'" },
  { "f1.aim",              "c1",              "fixtures", "aim",       "'c1'" },
  { "f1.motive",           "sun",             "fixtures", "motive",    "'sun'" },
  { "units",               "metric",          NULL,       "units",     "" },
  { "title.set",           "Hall",            "title",    "set",       "'Hall'" },
  { "title.gaffer",        "7",               "title",    "gaffer",    "'7'" },
  { "daylight.time",       "17:30",           "daylight", "time",      "'17:30'" },
  { "daylight.date",       "2024-12-21",      "daylight", "date",      "'2024-12-21'" },
  /* quantities; a bare one is in feet here */
  { "f1.level",            "50%",             "fixtures", "level",     "0.5" },
  { "f1.level",            "1/2",             "fixtures", "level",     "0.5" },
  { "f1.trim_stops",       "-1/2 stop",       "fixtures", "trim_stops", "-0.5" },
  { "f1.cct",              "4300K",           "fixtures", "cct",       "4300" },
  { "f1.channel",          "3 * 7",           "fixtures", "channel",   "21" },
  { "room.ceiling_height", "10'",             "room",     "ceiling_height", "3.048" },
  { "room.ceiling_height", "10 + 0",          "room",     "ceiling_height", "3.048" },
  { "room.ceiling_height", "350 cm",          "room",     "ceiling_height", "3.5" },
  { "t1.disc.radius",      "75 cm",           NULL,       "pieces",    "[{'id':'t1','disc':{'at':[1,1],'radius':0.75}}]" },
  { "c1.t_stop",           "T4",              "cameras",  "t_stop",    "4" },
  /* relative to what it is */
  { "f1.level",            "x2",              "fixtures", "level",     "0.5" },
  { "f1.level",            "/2",              "fixtures", "level",     "0.125" },
  { "f1.level",            "+1 stop",         "fixtures", "level",     "0.5" },
  { "f1.level",            "-2 stops",        "fixtures", "level",     "0.0625" },
  { "c1.focal_mm",         "x2",              "cameras",  "focal_mm",  "70" },
  { "m1.stature",          "+=0.3 m",         "marks",    "stature",   "2" },
  /* in a wall, by its own id */
  { "o1.width",            "2.5",             NULL,       "walls",     "[{'id':'w1','path':[[0,0],[6,0]],'openings':[{'id':'o1','width':2.5}]}]" },
};

static const struct {
  const char *path, *text;
  SqError code;
  const char *place, *words;
} wrong[] = {
  { "f9.level",      "1",        SQ_ERROR_REFERENCE, "f9.level",       "\"f9\" does not exist" },
  { LAMP ".cct",     "3200",     SQ_ERROR_REFERENCE, LAMP ".cct",      "does not exist" },
  { "",              "1",        SQ_ERROR_REFERENCE, "set",            "names nothing|ID.FIELD" },
  { ".",             "1",        SQ_ERROR_REFERENCE, ".",              "does not exist" },
  { "f1",            "1",        SQ_ERROR_VALUE,     "f1",             "no field|fixture" },
  { "f1.",           "1",        SQ_ERROR_VALUE,     "f1",             "no field|fixture|level, " },
  { "f1.lvl",        "1",        SQ_ERROR_VALUE,     "f1.lvl",         "no field|fixture" },
  { "f1.level.up",   "1",        SQ_ERROR_VALUE,     "f1.level",       "no fields of its own" },
  { "f1.modifiers.0", "1",       SQ_ERROR_VALUE,     "f1.modifiers",   "no fields of its own" },
  { ".level",        "1",        SQ_ERROR_REFERENCE, ".level",         "does not exist" },
  { "room.lvl",      "1",        SQ_ERROR_VALUE,     "room.lvl",       "no field|room" },
  { "underlay.scale", "1",       SQ_ERROR_VALUE,     "underlay",       "no fields of its own" },
  { "f1.level",      "1.4",      SQ_ERROR_VALUE,     "f1.level",       "1.4 is out of range|from 0 to 1" },
  { "f1.level",      "x5",       SQ_ERROR_VALUE,     "f1.level",       "1.25 is out of range|from 0 to 1" },
  { "f1.level",      "half",     SQ_ERROR_VALUE,     "f1.level",       "half" },
  { "f1.level",      "",         SQ_ERROR_VALUE,     "f1.level",       "" },
  { "f1.level",      "\"0.5\"",  SQ_ERROR_VALUE,     "f1.level",       "is text|a number" },
  { "f1.level",      "3 m",      SQ_ERROR_VALUE,     "f1.level",       "3 m" },
  { "f1.level",      "null",     SQ_ERROR_VALUE,     "f1.level",       "is null|a number" },
  { "f1.cct",        "x2",       SQ_ERROR_VALUE,     "f1.cct",         "x2" },
  { "f1.channel",    "1/2",      SQ_ERROR_VALUE,     "f1.channel",     "not whole" },
  { "f1.on",         "yes",      SQ_ERROR_VALUE,     "f1.on",          "true or false" },
  { "f1.on",         "1",        SQ_ERROR_VALUE,     "f1.on",          "is a number|true or false" },
  { "f1.role",       "hero",     SQ_ERROR_VALUE,     "f1.role",        "\"hero\" is unknown|key, fill" },
  { "f1.at",         "[1, 2]",   SQ_ERROR_VALUE,     "f1.at",          "2 members|[x, y, z]" },
  { "f1.at",         "here",     SQ_ERROR_VALUE,     "f1.at",          "no JSON|[x, y, z]" },
  { "f1.at",         "[1, 2, 3", SQ_ERROR_VALUE,     "f1.at",          "no JSON|[x, y, z]" },
  { "f1.modifiers",  "[{\"kind\": \"gel\"}]", SQ_ERROR_VALUE, "f1.modifiers[0].material", "missing" },
  { "f1.number",     "[7]",      SQ_ERROR_VALUE,     "f1.number",      "is a list|text" },
  { "f1.number",     "\xff",     SQ_ERROR_VALUE,     "f1.number",      "UTF-8" },
  { "f1.number.a\nb", "7",        SQ_ERROR_VALUE,     "f1.number",      "no fields of its own" },
  { "f1.a\nb",       "7",        SQ_ERROR_VALUE,     "f1.a b",         "no field" },
  { "a\nb.level",    "7",        SQ_ERROR_REFERENCE, "a b.level",      "\"a b\" does not exist" },
  { "f1.role",       "a\nb",     SQ_ERROR_VALUE,     "f1.role",        "\"a b\" is unknown" },
  { "f1.aim",        "a\tb",     SQ_ERROR_VALUE,     "f1.aim",         "\"a b\" is no id" },
  { "f1.level",      "a\nb",     SQ_ERROR_VALUE,     "f1.level",       "expected a fraction" },
  { "daylight.time", "25:00",    SQ_ERROR_VALUE,     "daylight.time",  "25:00|HH:MM" },
  { "f1.id",         "a b",      SQ_ERROR_VALUE,     "f1.id",          "\"a b\" is no id" },
  { "f1.id",         "m1",       SQ_ERROR_REFERENCE, "fixtures[0].id", "\"m1\" is taken" },
  { "m1.id",         "m2",       SQ_ERROR_REFERENCE, "cameras[0].aim", "\"m1\" does not exist" },
  { "f1.aim",        "nobody",   SQ_ERROR_REFERENCE, "fixtures[0].aim", "\"nobody\" does not exist" },
  { "f1.aim",        "f1",       SQ_ERROR_GEOMETRY,  "fixtures[0].aim", "is the lamp itself" },
  { "o1.width",      "7",        SQ_ERROR_GEOMETRY,  "walls[0].openings[0]", "7 m|edge of 6 m" },
  { "room.ceiling_height", "0.8", SQ_ERROR_GEOMETRY, "walls[0].openings[0]", "sill at 0.9 m|head at 0.8 m" },
  { "daylight",      "null",     SQ_ERROR_REFERENCE, "looks[0].daylight", "the scene has not" },
  { "fixtures",      "{}",       SQ_ERROR_VALUE,     "fixtures",       "is an object|a list" },
  { "format",        "2",        SQ_ERROR_VALUE,     "format",         "2 is out of range" },
  { "library",       "1",        SQ_ERROR_REFERENCE, "library",        "does not exist" },
};
/* clang-format on */

static void
test_changes (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autofree char *before = sq_scene_write (scene);
  for (guint i = 0; i < G_N_ELEMENTS (changes); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) changed = sq_scene_set (scene, changes[i].path, changes[i].text, &error);
    g_assert_no_error (error);
    g_autofree char *got = written_at (changed, changes[i].list, changes[i].key);
    g_autofree char *expected = json_text (changes[i].written);
    if (!g_str_equal (got, expected))
      g_error ("%s=%s is %s, expected %s", changes[i].path, changes[i].text, got, expected);
  }
  g_autofree char *after = sq_scene_write (scene);
  g_assert_cmpstr (after, ==, before);
}

static void
test_wrong (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) changed = sq_scene_set (scene, wrong[i].path, wrong[i].text, &error);
    if (changed != NULL)
      g_error ("%s=%s is taken", wrong[i].path, wrong[i].text);
    check_line (wrong[i].path, error, wrong[i].code, wrong[i].place, wrong[i].words);
  }
}

/* One after the other, as --set may be repeated; only the way down to a thing is copied. */
static void
test_one_after_the_other (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) first = sq_scene_set (scene, "f1.level", "x2", &error);
  g_assert_no_error (error);
  g_autoptr (SqScene) second = sq_scene_set (first, "f1.level", "+1 stop", &error);
  g_assert_no_error (error);
  g_assert_cmpfloat (((const SqFixture *)sq_scene_find (second, "f1"))->level, ==, 1.0);
  g_assert_true (sq_scene_find (second, "m1") == sq_scene_find (scene, "m1"));
  g_assert_true (second->walls == scene->walls);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/set/JSON, text, quantities and relative forms", test_changes);
  g_test_add_func ("/set/what cannot be set is told in one line", test_wrong);
  g_test_add_func ("/set/one after the other", test_one_after_the_other);
  return g_test_run ();
}
