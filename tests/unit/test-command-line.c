/* test-command-line.c: the program as a user calls it: exit codes, one clear line, nothing lost */
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <json-glib/json-glib.h>
#include <math.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/wait.h>

/* A room with one lamp over one mark and a probe under it: a point of 900 cd at 3 m is 100 lx
 * (E = I / d²). */
#define ROOM                                                                                       \
  "{\"format\": 1,\n"                                                                              \
  " \"walls\": [{\"id\": \"w1\", \"path\": [[-3, -3], [5, -3], [5, 3], [-3, 3]], \"closed\": "     \
  "true}],\n"                                                                                      \
  " \"marks\": [{\"id\": \"m1\", \"at\": [2, 0]}],\n"                                              \
  " \"cameras\": [{\"id\": \"c1\", \"at\": [2, -2.5, 1.5], \"aim\": \"m1\"}],\n"                   \
  " \"fixtures\": [{\"id\": \"f1\", \"class\": \"spot\", \"at\": [0, 0, 3], \"aim\": [0, 0, "      \
  "0]}],\n"                                                                                        \
  " \"probes\": [{\"id\": \"p1\", \"at\": [0, 0, 0]}],\n"                                          \
  " \"looks\": [{\"id\": \"dim\", \"fixtures\": {\"f1\": {\"level\": 0.25}}}],\n"                  \
  " \"classes\": [{\"id\": \"spot\", \"beams\": [{\"beam_deg\": 60, \"field_deg\": 90, "           \
  "\"peak_cd\": 900}]}]}\n"
#define EXACT 1e-9 /* relative */

typedef struct {
  char *folder, *scene;
  char *out, *err;
  int code;
} Run;

static void
setup (Run *run, gconstpointer data)
{
  run->folder = g_dir_make_tmp ("squarelaw-test-XXXXXX", NULL);
  run->scene = g_build_filename (run->folder, "room.squarelaw", NULL);
  g_assert_true (g_file_set_contents (run->scene, ROOM, -1, NULL));
}

static void
remove_all (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);
    if (g_file_test (path, G_FILE_TEST_IS_DIR) && !g_file_test (path, G_FILE_TEST_IS_SYMLINK))
      remove_all (path);
    else
      g_unlink (path);
  }
  g_rmdir (folder);
}

static void
teardown (Run *run, gconstpointer data)
{
  remove_all (run->folder);
  g_free (run->folder);
  g_free (run->scene);
  g_free (run->out);
  g_free (run->err);
}

static void
limit_files (gpointer bytes)
{
  struct rlimit limit = { (rlim_t)GPOINTER_TO_SIZE (bytes), (rlim_t)GPOINTER_TO_SIZE (bytes) };
  setrlimit (RLIMIT_FSIZE, &limit);
}

/* Runs the program in the test's folder with the words of @line, quoted as in a shell. */
static void
call_limited (Run *run, gsize most_bytes, const char *line)
{
  g_auto (GStrv) words = NULL;
  g_autofree char *whole = g_strconcat (SQ_PROGRAM, " ", line, NULL);
  g_autoptr (GError) error = NULL;
  int status;
  g_assert_true (g_shell_parse_argv (whole, NULL, &words, &error));
  g_clear_pointer (&run->out, g_free);
  g_clear_pointer (&run->err, g_free);
  g_spawn_sync (run->folder, words, NULL, G_SPAWN_DEFAULT, most_bytes > 0 ? limit_files : NULL,
                GSIZE_TO_POINTER (most_bytes), &run->out, &run->err, &status, &error);
  g_assert_no_error (error);
  g_assert_true (WIFEXITED (status)); /* no crash, no signal */
  run->code = WEXITSTATUS (status);
}

static void
call (Run *run, const char *line)
{
  call_limited (run, 0, line);
}

static void
assert_one_line (const Run *run, const char *line)
{
  const char *end = strchr (run->err, '\n');
  g_test_message ("%s → %s", line, run->err);
  g_assert_nonnull (end);
  g_assert_cmpstr (end, ==, "\n");
  g_assert_true (g_str_has_prefix (run->err, "squarelaw: "));
}

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
    g_assert_cmpstr (run->err, ==, "");
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

/* One clear line that holds @says, and the exit code. Nothing may be written. */
typedef struct {
  const char *line;
  int code;
  const char *says;
} Refused;

static const Refused refused[] = {
  { "check nothing.squarelaw", 1, "nothing.squarelaw" },
  { "check .", 1, "folder" },
  { "check room.squarelaw/inside", 1, "room.squarelaw" },
  { "check room.squarelaw -o room.squarelaw/inside", 1, "room.squarelaw" },
  { "check room.squarelaw -o .", 1, "folder" },
  { "check room.squarelaw -o /dev/full", 1, "full" },
  { "plot room.squarelaw -o /dev/full", 2, ".pdf" },
  { "map room.squarelaw --csv -o /dev/full", 1, "full" },
  { "check room.squarelaw --look nobody", 1, "nobody" },
  { "check room.squarelaw --set f9.level=1", 1, "f9" },
  { "check room.squarelaw --set f1.levl=1", 1, "levl" },
  { "check room.squarelaw --set f1.level=150%", 1, "level" },
  { "check room.squarelaw --set f1.level", 1, "=" },
  { "check room.squarelaw --set 'f1.level=3 m'", 1, "level" },
  { "check room.squarelaw --set f1.at=[0,0]", 1, "f1.at" },
  { "check room.squarelaw --set f1.aim=f1", 1, "aim" },
  { "check", 2, "scene" },
  { "check a b", 2, "one too many" },
  { "check room.squarelaw --nonsense", 2, "nonsense" },
  { "check room.squarelaw --threads 0", 2, "threads" },
  { "check room.squarelaw --threads 99999999999999999999", 2, "99999999999999999999" },
  { "meter room.squarelaw --json --csv", 2, "exclude" },
  { "map room.squarelaw -o map.gif", 2, "map.gif" },
  { "map room.squarelaw -o map.png --quantity watts", 2, "watts" },
  { "map room.squarelaw -o map.png --step 0", 2, "step" },
  { "map room.squarelaw -o map.png --step '1 lx'", 2, "step" },
  { "map room.squarelaw -o map.png --height two", 2, "height" },
  { "plot room.squarelaw", 2, "-o" },
  { "plot room.squarelaw -o plot.doc", 2, "plot.doc" },
  { "plot room.squarelaw -o plot.pdf --sheet A9", 2, "A9" },
  { "plot room.squarelaw -o plot.pdf --scale 1:x", 2, "1:x" },
  { "plot room.squarelaw -o plot.pdf --scale 1:2", 1, "1:2" },
  { "plot room.squarelaw -o plot.pdf --overlay heat", 2, "heat" },
  { "plot room.squarelaw -o plot.pdf --overlay colour", 1, "colour" },
  { "plot room.squarelaw -o plot.pdf --dpi 1e9", 2, "dpi" },
  { "plot room.squarelaw -o plot.pdf --pages ratio", 2, "ratio" },
  { "nonsense", 2, "nonsense" },
  { "--nonsense", 2, "nonsense" },
};

static guint
files_in (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint count = 0;
  while (g_dir_read_name (dir) != NULL)
    count++;
  return count;
}

static void
test_refused (Run *run, gconstpointer data)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++) {
    g_autofree char *after = NULL;
    call (run, refused[i].line);
    assert_one_line (run, refused[i].line);
    g_assert_cmpint (run->code, ==, refused[i].code);
    g_assert_nonnull (strstr (run->err, refused[i].says));
    g_assert_cmpstr (run->out, ==, "");
    g_assert_cmpuint (files_in (run->folder), ==, 1);
    g_assert_true (g_file_get_contents (run->scene, &after, NULL, NULL));
    g_assert_cmpstr (after, ==, ROOM);
  }
}

/* The file that was there stays when the new one does not fit. */
static void
test_size_limit (Run *run, gconstpointer data)
{
  static const char *const lines[] = { "check room.squarelaw -o old",
                                       "plot room.squarelaw -o old.pdf",
                                       "map room.squarelaw -o old.csv",
                                       "map room.squarelaw -o old.png" };
  static const char *const names[] = { "old", "old.pdf", "old.csv", "old.png" };
  for (guint i = 0; i < G_N_ELEMENTS (lines); i++) {
    g_autofree char *path = g_build_filename (run->folder, names[i], NULL), *text = NULL;
    g_assert_true (g_file_set_contents (path, "as it was", -1, NULL));
    call_limited (run, 100, lines[i]);
    assert_one_line (run, lines[i]);
    g_assert_cmpint (run->code, ==, 1);
    g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
    g_assert_cmpstr (text, ==, "as it was");
  }
}

static char *
bracket_text (const char *one, guint count)
{
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < count; i++)
    g_string_append (text, one);
  return g_string_free (text, FALSE);
}

static char *
many_lamps (guint count)
{
  GString *text = g_string_new ("{\"format\": 1, \"fixtures\": [");
  for (guint i = 0; i < count; i++)
    g_string_append_printf (text, "%s{\"id\": \"f%u\", \"class\": \"candle\", \"at\": [%u, 0, 1]}",
                            i > 0 ? ", " : "", i, i % 100);
  g_string_append (text, "]}");
  return g_string_free (text, FALSE);
}

/* Files that are no scenes: every verb says so in one line and writes nothing. */
static void
test_bad_files (Run *run, gconstpointer data)
{
  g_autofree char *brackets = bracket_text ("[", 256000), *lamps = many_lamps (10000);
  const struct {
    const char *text;
    gssize length;
    const char *says;
  } rows[] = {
    { "", 0, "line 1, column 1" },
    { "{\"format\": 1", -1, "line 1" },
    { brackets, -1, "64" },
    { "{\"format\": 1, \"format\": 1}", -1, "format" },
    { "{\"format\": 1, \"north\": NaN}", -1, "line 1, column 24" },
    { "{\"format\": 1, \"north\": 1e999}", -1, "line 1" },
    { "{\"format\": 1}\0", 14, "line 1, column 14" },
    { "{\"format\": 2}", -1, "newer" },
    { "{\"format\": 1, \"fixtures\": [{\"id\": \"f1\", \"class\": \"candle\", \"at\": [0, 0, 1], "
      "\"aim\": \"m9\"}]}",
      -1, "fixtures[0].aim: \"m9\" does not exist" },
    { lamps, -1, "10000" },
  };
  static const char *const verbs[] = { "check bad", "meter bad --json", "map bad -o out.csv",
                                       "plot bad -o out.pdf" };
  g_autofree char *path = g_build_filename (run->folder, "bad", NULL);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_assert_true (g_file_set_contents (path, rows[i].text, rows[i].length, NULL));
    for (guint k = 0; k < G_N_ELEMENTS (verbs); k++) {
      call (run, verbs[k]);
      assert_one_line (run, verbs[k]);
      g_assert_cmpint (run->code, ==, 1);
      g_assert_nonnull (strstr (run->err, rows[i].says));
      g_assert_true (g_str_has_prefix (run->err, "squarelaw: bad: "));
      g_assert_cmpstr (run->out, ==, "");
      g_assert_cmpuint (files_in (run->folder), ==, 2);
    }
  }
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
  CASE ("/command line/wrong usage and wrong input: one clear line", test_refused);
  CASE ("/command line/a size limit leaves the old file", test_size_limit);
  CASE ("/command line/files that are no scenes", test_bad_files);
  CASE ("/command line/killed while writing: the old or the new file", test_killed);
  CASE ("/command line/help", test_help);
  CASE ("/command line/unknown keys are warned of", test_warnings);
  return g_test_run ();
}
