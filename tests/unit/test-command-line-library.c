/* test-command-line-library.c: the program with the user's own lamps, right and wrong ones */
#include "run-program.h"

/* A ball of 13 lm shines 13 / 4π cd; 3 m above the probe. The ball has a size, so the law of the
 * square holds to about its radius over the distance, squared. */
#define CANDLE_LUX (13.0 / (4.0 * G_PI) / 9.0)
#define CANDLE_WITHIN 1e-3
#define EXACT 1e-9 /* relative; of a point */

/* The scene of run-program.h, lit by what it calls a candle. */
#define NEEDS_CANDLE "--set f1.class=candle"

static void
put_library (Run *run, const char *name, const char *text)
{
  g_autofree char *folder = g_build_filename (run->folder, DATA_DIR, "squarelaw", "library", NULL);
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *json = g_strdelimit (g_strdup (text), "'", '"');
  g_assert_cmpint (g_mkdir_with_parents (folder, 0755), ==, 0);
  g_assert_true (g_file_set_contents (path, json, -1, NULL));
}

#define CANDLE_OF(peak)                                                                            \
  "{'classes': [{'id': 'candle', 'beams': [{'beam_deg': 60, 'field_deg': 90, 'peak_cd': " peak     \
  "}]}]}"

static double
candle_lux (Run *run)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  call (run, "meter room.squarelaw --json " NEEDS_CANDLE);
  g_assert_cmpstr (run->err, ==, "");
  g_assert_cmpint (run->code, ==, 0);
  g_assert_true (json_parser_load_from_data (parser, run->out, -1, NULL));
  JsonObject *answer = json_node_get_object (json_parser_get_root (parser));
  JsonObject *probe =
    json_array_get_object_element (json_object_get_array_member (answer, "probes"), 0);
  return json_object_get_double_member (probe, "lux");
}

/* A point of so many candela gives a ninth of them as lux at 3 m. */
static void
test_three_levels (Run *run, gconstpointer data)
{
  g_assert_cmpfloat_with_epsilon (candle_lux (run), CANDLE_LUX, CANDLE_LUX * CANDLE_WITHIN);
  put_library (run, "a.json", CANDLE_OF ("1800"));
  g_assert_cmpfloat_with_epsilon (candle_lux (run), 200.0, 200.0 * EXACT);
  put_library (run, "b.json", CANDLE_OF ("2700"));
  g_assert_cmpfloat_with_epsilon (candle_lux (run), 300.0, 300.0 * EXACT);
  g_autoptr (GString) own = g_string_new (ROOM);
  g_assert_cmpuint (g_string_replace (own, "\"id\": \"spot\"", "\"id\": \"candle\"", 0), ==, 1);
  g_assert_cmpuint (g_string_replace (own, "\"class\": \"spot\"", "\"class\": \"candle\"", 0), ==,
                    1);
  g_assert_true (g_file_set_contents (run->scene, own->str, -1, NULL));
  g_assert_cmpfloat_with_epsilon (candle_lux (run), 100.0, 100.0 * EXACT);
}

static const char *const verbs[] = { "check room.squarelaw", "meter room.squarelaw",
                                     "map room.squarelaw -o map.csv --step 1",
                                     "plot room.squarelaw -o plot.svg" };

static guint
lines_that_say (const char *text, const char *words)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  guint count = 0;
  for (guint i = 0; lines[i] != NULL; i++)
    count += strstr (lines[i], words) != NULL;
  return count;
}

/* What the scene does not need is said and stops nothing. */
static void
test_not_needed (Run *run, gconstpointer data)
{
  put_library (run, "a.json", CANDLE_OF ("-1"));
  put_library (run, "b.json", "{'classes': [");
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++) {
    call (run, verbs[i]);
    g_test_message ("%s → %s", verbs[i], run->err);
    g_assert_cmpint (run->code, ==, 0);
    g_assert_true (g_str_has_prefix (run->err, "squarelaw: warning: "));
    g_assert_cmpuint (lines_that_say (run->err, "library/a.json: classes[0].beams[0].peak_cd: -1"),
                      ==, 1);
    g_assert_cmpuint (lines_that_say (run->err, "library/b.json: line 1, column 14"), ==, 1);
  }
}

static void
assert_refused (Run *run, const char *set, const char *says, const char *too)
{
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++) {
    g_autofree char *line = g_strdup_printf ("%s %s", verbs[i], set);
    g_autofree char *map = g_build_filename (run->folder, "map.csv", NULL);
    g_autofree char *plot = g_build_filename (run->folder, "plot.svg", NULL);
    call (run, line);
    assert_one_line (run, line);
    g_assert_cmpint (run->code, ==, 1);
    g_assert_cmpstr (run->out, ==, "");
    g_assert_nonnull (strstr (run->err, says));
    g_assert_nonnull (strstr (run->err, too));
    g_assert_false (g_file_test (map, G_FILE_TEST_EXISTS));
    g_assert_false (g_file_test (plot, G_FILE_TEST_EXISTS));
  }
}

/* What it does need is the input at fault: one line that names both files' places. */
static void
test_needed (Run *run, gconstpointer data)
{
  put_library (run, "a.json", CANDLE_OF ("-1"));
  assert_refused (run, NEEDS_CANDLE, "fixtures[0].class: \"candle\" cannot be used",
                  "library/a.json: classes[0].beams[0].peak_cd: -1 is out of range, expected");
  put_library (run, "a.json", "{'classes': [");
  assert_refused (run, "--set f1.class=my-lamp", "fixtures[0].class: \"my-lamp\" does not exist",
                  "library/a.json: line 1, column 14");
}

/* Names of files may be anything but a slash and NUL; what is said of them stays one line. */
static void
test_file_names (Run *run, gconstpointer data)
{
  put_library (run, "two\nlines \xff.json", "");
  call (run, "check room.squarelaw");
  assert_one_line (run, "check room.squarelaw");
  g_assert_cmpint (run->code, ==, 0);
  g_assert_true (g_utf8_validate (run->err, -1, NULL));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define CASE(name, function) g_test_add (name, Run, NULL, setup, function, teardown)
  CASE ("/command line/library/compiled in, the user's, the scene's", test_three_levels);
  CASE ("/command line/library/what is wrong and not needed is said", test_not_needed);
  CASE ("/command line/library/what is wrong and needed is refused", test_needed);
  CASE ("/command line/library/names of files in one line", test_file_names);
  return g_test_run ();
}
