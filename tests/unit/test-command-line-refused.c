/* test-command-line-refused.c: wrong usage and wrong input: one clear line, and nothing is lost */
#include "run-program.h"

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
  { "check room.squarelaw --set f1.level", 2, "=" },
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
  { "map room.squarelaw -o map.png --csv", 2, "exclude" },
  { "map room.squarelaw -o map.png --quantity colour", 1, "colour" },
  { "map room.squarelaw -o map.csv --set map.quantity=colour", 1, "colour" },
  { "list room.squarelaw", 2, "not built yet" },
  { "map room.squarelaw -o map.png --quantity watts", 2, "watts" },
  { "map room.squarelaw -o map.png --step 0", 2, "step" },
  { "map room.squarelaw -o map.png --step '1 lx'", 2, "step" },
  { "map room.squarelaw -o map.png --height two", 2, "height" },
  { "plot room.squarelaw", 2, "-o" },
  { "plot room.squarelaw -o plot.doc", 2, "plot.doc" },
  { "plot room.squarelaw -o plot.pdf --sheet A9", 2, "A9" },
  { "plot room.squarelaw -o plot.pdf --scale 1:x", 2, "1:x" },
  { "plot room.squarelaw -o plot.pdf --sheet A4 --scale 1:2", 1, "1:2" },
  { "plot room.squarelaw -o plot.pdf --portrait --landscape", 2, "portrait" },
  { "plot room.squarelaw -o plot.pdf --overlay heat", 2,
    "heat\" is unknown, expected lux, stops or none" },
  { "plot room.squarelaw -o plot.pdf --overlay colour", 1, "colour" },
  { "plot room.squarelaw -o plot.pdf --dpi 1e9", 2, "dpi" },
  { "plot room.squarelaw -o plot.pdf --pages ratio", 2, "ratio" },
  { "plot room.squarelaw -o plot.pdf --pages plan,poster", 2, "poster" },
  { "plot room.squarelaw -o plot.pdf --pages section --light nobody", 1, "nobody" },
  { "plot room.squarelaw -o plot.pdf --light key", 1, "--pages section" },
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

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define CASE(name, function) g_test_add (name, Run, NULL, setup, function, teardown)
  CASE ("/refused/wrong usage and wrong input: one clear line", test_refused);
  CASE ("/refused/a size limit leaves the old file", test_size_limit);
  CASE ("/refused/files that are no scenes", test_bad_files);
  return g_test_run ();
}
