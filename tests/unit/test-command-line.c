/* test-command-line.c: what the program answers a user who calls it rightly */
#include "run-program.h"

#define EXACT 1e-9 /* relative */

static JsonObject *
parse_answer (const Run *run, JsonParser *parser)
{
  g_autoptr (GError) error = NULL;
  json_parser_load_from_data (parser, run->out, -1, &error);
  g_assert_no_error (error);
  return json_node_get_object (json_parser_get_root (parser));
}

static double
probe_lux (Run *run, const char *options)
{
  g_autofree char *line = g_strdup_printf ("meter room.squarelaw --json %s", options);
  g_autoptr (JsonParser) parser = json_parser_new ();
  call (run, line);
  g_assert_cmpstr (run->err, ==, "");
  g_assert_cmpint (run->code, ==, 0);
  JsonObject *answer = parse_answer (run, parser);
  JsonObject *probe =
    json_array_get_object_element (json_object_get_array_member (answer, "probes"), 0);
  return json_object_get_double_member (probe, "lux");
}

static void
test_meter (Run *run, gconstpointer data)
{
  g_assert_cmpfloat_with_epsilon (probe_lux (run, ""), 100.0, 100.0 * EXACT);
  g_assert_cmpfloat_with_epsilon (probe_lux (run, "--look dim"), 25.0, 25.0 * EXACT);
  g_assert_cmpfloat_with_epsilon (probe_lux (run, "--set f1.level=50%"), 50.0, 50.0 * EXACT);
  g_assert_cmpfloat_with_epsilon (probe_lux (run, "--set 'f1.trim_stops=-1 stop'"), 50.0,
                                  50.0 * EXACT);
  g_assert_cmpfloat_with_epsilon (probe_lux (run, "--look dim --set f1.level=1"), 100.0,
                                  100.0 * EXACT);
  g_assert_cmpfloat_with_epsilon (probe_lux (run, "--set f1.at=[0,0,1.5]"), 400.0, 400.0 * EXACT);
}

/* Every key of the contract is there, and undefined values are null. */
static void
test_meter_keys (Run *run, gconstpointer data)
{
  static const char *const mark_keys[] = {
    "id",          "lux",        "lux_all",  "t_stop", "stops_from_exposure",
    "key_lux",     "fill_lux",   "back_lux", "ratio",  "ratio_stops",
    "key_to_fill", "back_stops", "cct_k",    "duv",    "by"
  };
  static const char *const row_keys[] = {
    "id", "role", "lux", "dome_lux", "azimuth_deg", "from_camera_deg", "elevation_deg", "distance_m"
  };
  g_autoptr (JsonParser) parser = json_parser_new ();
  call (run, "meter room.squarelaw --json");
  JsonObject *answer = parse_answer (run, parser);
  g_assert_cmpstr (json_object_get_string_member (answer, "look"), ==, "base");
  g_assert_true (
    json_object_has_member (json_object_get_object_member (answer, "daylight"), "sun_normal_lux"));
  JsonObject *mark =
    json_array_get_object_element (json_object_get_array_member (answer, "marks"), 0);
  for (guint i = 0; i < G_N_ELEMENTS (mark_keys); i++)
    g_assert_true (json_object_has_member (mark, mark_keys[i]));
  JsonObject *row = json_array_get_object_element (json_object_get_array_member (mark, "by"), 0);
  for (guint i = 0; i < G_N_ELEMENTS (row_keys); i++)
    g_assert_true (json_object_has_member (row, row_keys[i]));
  /* One key and no fill: no ratio. */
  g_assert_true (json_object_get_null_member (mark, "ratio"));
  g_assert_true (json_object_get_null_member (mark, "back_stops"));
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (row, "azimuth_deg"), 180.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (row, "from_camera_deg"), 90.0,
                                  1e-9);
}

static void
test_threads (Run *run, gconstpointer data)
{
  static const char *const lines[] = { "meter room.squarelaw --json", "meter room.squarelaw",
                                       "map room.squarelaw --csv --step 0.1",
                                       "plot room.squarelaw -o -" };
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++) {
    g_autofree char *one = g_strdup_printf ("%s --threads 1", lines[i]);
    g_autofree char *two = g_strdup_printf ("%s --threads 2", lines[i]);
    call (run, one);
    g_assert_cmpint (run->code, ==, 0);
    g_autofree char *first = g_steal_pointer (&run->out);
    call (run, two);
    g_assert_cmpint (run->code, ==, 0);
    g_assert_cmpstr (first, ==, run->out);
  }
}

/* From the bottom left, x fastest; under the lamp, at height 0, it is the 100 lx of the probe. */
static void
test_map_csv (Run *run, gconstpointer data)
{
  call (run, "map room.squarelaw -o map.csv --height 0 --normal up --step 0.5");
  g_assert_cmpint (run->code, ==, 0);
  g_autofree char *path = g_build_filename (run->folder, "map.csv", NULL);
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_auto (GStrv) lines = g_strsplit (text, "\r\n", -1);
  g_assert_cmpstr (lines[0], ==, "x,y,value");
  double last_x = -INFINITY, last_y = -INFINITY, nearest = INFINITY, there = 0.0;
  for (guint i = 1; lines[i][0] != '\0'; i++) {
    g_auto (GStrv) cells = g_strsplit (lines[i], ",", -1);
    g_assert_cmpuint (g_strv_length (cells), ==, 3);
    double x = g_ascii_strtod (cells[0], NULL), y = g_ascii_strtod (cells[1], NULL);
    g_assert_true (y > last_y || (y == last_y && x > last_x));
    last_x = x;
    last_y = y;
    if (hypot (x, y) < nearest && cells[2][0] != '\0') {
      nearest = hypot (x, y);
      there = g_ascii_strtod (cells[2], NULL);
    }
  }
  /* Off the axis by r: I(g) · cos g / d² with the profile of the class; within half a step of it
   * the light falls by less than a tenth. */
  g_assert_cmpfloat (nearest, <, 0.36);
  g_assert_cmpfloat (there, <=, 100.0 * (1 + EXACT));
  g_assert_cmpfloat (there, >, 90.0);
}

static void
test_pictures (Run *run, gconstpointer data)
{
  static const struct {
    const char *line, *file, *begins;
  } rows[] = {
    { "map room.squarelaw -o map.png", "map.png", "\x89PNG\r\n" },
    { "plot room.squarelaw -o plot.pdf", "plot.pdf", "%PDF-" },
    { "plot room.squarelaw -o plot.svg --sheet A3", "plot.svg", "<?xml" },
    { "plot room.squarelaw -o plot.png --sheet A3 --dpi 60", "plot.png", "\x89PNG\r\n" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *path = g_build_filename (run->folder, rows[i].file, NULL), *text = NULL;
    gsize length;
    call (run, rows[i].line);
    g_assert_cmpint (run->code, ==, 0);
    g_assert_true (g_file_get_contents (path, &text, &length, NULL));
    g_assert_true (length > 1000 && g_str_has_prefix (text, rows[i].begins));
  }
}

/* The canonical text, with the change in it, and a second time the same bytes. */
static void
test_check_writes (Run *run, gconstpointer data)
{
  g_autofree char *path = g_build_filename (run->folder, "new.squarelaw", NULL);
  g_autofree char *first = NULL, *second = NULL;
  call (run, "check room.squarelaw -o new.squarelaw --set 'm1.stature=6 ft'");
  g_assert_cmpint (run->code, ==, 0);
  g_assert_true (g_file_get_contents (path, &first, NULL, NULL));
  g_assert_nonnull (strstr (first, "\"stature\": 1.8288")); /* 6 · 0.3048 */
  call (run, "check new.squarelaw -o new.squarelaw");
  g_assert_true (g_file_get_contents (path, &second, NULL, NULL));
  g_assert_cmpstr (first, ==, second);
}

static void
test_standard_streams (Run *run, gconstpointer data)
{
  call (run, "check room.squarelaw -o -");
  g_assert_cmpint (run->code, ==, 0);
  g_assert_true (g_str_has_prefix (run->out, "{\n  \"format\": 1,"));
  g_autofree char *out = NULL, *in_folder = g_strdup_printf ("cd %s && ", run->folder);
  g_autofree char *command =
    g_strdup_printf ("sh -c '%s%s check - < room.squarelaw'", in_folder, SQ_PROGRAM);
  int status;
  g_assert_true (g_spawn_command_line_sync (command, &out, NULL, &status, NULL));
  g_assert_cmpint (status, ==, 0);
  g_assert_nonnull (strstr (out, "sound"));
}

/* Killed at any moment, the program leaves the old file or the new one, whole. */
static void
test_killed (Run *run, gconstpointer data)
{
  enum { KILLS = 200, LAMPS = 400 };
  g_autofree char *path = g_build_filename (run->folder, "scene", NULL),
                  *lamps = many_lamps (LAMPS);
  g_autofree char *one = NULL, *two = NULL;
  g_autoptr (GRand) random = g_rand_new_with_seed (20261125);
  guint kills = 0, ones = 0, twos = 0;
  g_assert_true (g_file_set_contents (path, lamps, -1, NULL));
  call (run, "check scene -o scene");
  g_assert_cmpint (run->code, ==, 0);
  g_assert_true (g_file_get_contents (path, &one, NULL, NULL));
  call (run, "check scene -o two --set units=imperial");
  g_autofree char *other = g_build_filename (run->folder, "two", NULL);
  g_assert_true (g_file_get_contents (other, &two, NULL, NULL));

  /* How long a run takes on this machine, so that the kills fall all over it. */
  gint64 before = g_get_monotonic_time ();
  call (run, "check scene -o third");
  double whole_us = (double)(g_get_monotonic_time () - before);
  for (guint i = 0; i < KILLS; i++) {
    g_autofree char *set = g_strdup_printf ("units=%s", i % 2 ? "imperial" : "metric");
    char *words[] = { (char *)SQ_PROGRAM,
                      (char *)"check",
                      (char *)"scene",
                      (char *)"-o",
                      (char *)"scene",
                      (char *)"--set",
                      set,
                      NULL };
    g_autofree char *text = NULL;
    GPid child;
    g_assert_true (g_spawn_async (run->folder, words, NULL,
                                  G_SPAWN_DO_NOT_REAP_CHILD | G_SPAWN_STDERR_TO_DEV_NULL, NULL,
                                  NULL, &child, NULL));
    g_usleep ((gulong)(g_rand_double (random) * 1.2 * whole_us));
    kills += kill (child, SIGKILL) == 0;
    int status;
    waitpid (child, &status, 0);
    g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
    g_assert_true (g_str_equal (text, one) || g_str_equal (text, two));
    ones += g_str_equal (text, one);
    twos += g_str_equal (text, two);
  }
  g_test_message ("%u kills, %u times the one, %u times the other", kills, ones, twos);
  g_assert_cmpuint (kills, ==, KILLS);
  /* Both came about: some runs were allowed to finish, so some were killed near their end. */
  g_assert_cmpuint (ones, >, 0);
  g_assert_cmpuint (twos, >, 0);
}

static void
test_help (Run *run, gconstpointer data)
{
  static const char *const lines[] = { "--help", "check --help", "meter --help", "map --help",
                                       "plot --help" };
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++) {
    call (run, lines[i]);
    g_assert_cmpint (run->code, ==, 0);
    g_assert_cmpstr (run->err, ==, "");
    g_assert_nonnull (strstr (run->out, "squarelaw"));
  }
  call (run, "plot --help");
  g_assert_nonnull (strstr (run->out, "squarelaw plot"));
  g_assert_nonnull (strstr (run->out, "--sheet"));
}

/* Unknown keys are warned of, kept, and no reason to refuse. */
static void
test_warnings (Run *run, gconstpointer data)
{
  g_assert_true (g_file_set_contents (run->scene, "{\"format\": 1, \"mood\": \"late\"}", -1, NULL));
  call (run, "check room.squarelaw");
  g_assert_cmpint (run->code, ==, 0);
  assert_one_line (run, "check room.squarelaw");
  g_assert_nonnull (strstr (run->err, "mood"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define CASE(name, function) g_test_add (name, Run, NULL, setup, function, teardown)
  CASE ("/command line/meter: a point lamp, a look, --set", test_meter);
  CASE ("/command line/meter --json has every key, undefined is null", test_meter_keys);
  CASE ("/command line/the same bytes with one thread and two", test_threads);
  CASE ("/command line/map in CSV", test_map_csv);
  CASE ("/command line/pictures of every kind", test_pictures);
  CASE ("/command line/check -o writes the scene anew", test_check_writes);
  CASE ("/command line/standard input and output", test_standard_streams);
  CASE ("/command line/killed while writing: the old or the new file", test_killed);
  CASE ("/command line/help", test_help);
  CASE ("/command line/unknown keys are warned of", test_warnings);
  return g_test_run ();
}
