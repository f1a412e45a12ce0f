/* run-program.h: the program called as a user calls it, in a folder of its own with one scene */
#pragma once

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

typedef struct {
  char *folder, *scene;
  char *out, *err;
  int code;
} Run;

static inline void
setup (Run *run, gconstpointer data)
{
  run->folder = g_dir_make_tmp ("squarelaw-test-XXXXXX", NULL);
  run->scene = g_build_filename (run->folder, "room.squarelaw", NULL);
  g_assert_true (g_file_set_contents (run->scene, ROOM, -1, NULL));
}

static inline void
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

static inline void
teardown (Run *run, gconstpointer data)
{
  remove_all (run->folder);
  g_free (run->folder);
  g_free (run->scene);
  g_free (run->out);
  g_free (run->err);
}

static inline void
limit_files (gpointer bytes)
{
  struct rlimit limit = { (rlim_t)GPOINTER_TO_SIZE (bytes), (rlim_t)GPOINTER_TO_SIZE (bytes) };
  setrlimit (RLIMIT_FSIZE, &limit);
}

/* Where the program looks for the user's own data: in the test's folder, not at whoever tests. */
#define DATA_DIR "data"

/* Runs the program in the test's folder with the words of @line, quoted as in a shell. */
static inline void
call_limited (Run *run, gsize most_bytes, const char *line)
{
  g_auto (GStrv) words = NULL;
  g_autofree char *whole = g_strconcat (SQ_PROGRAM, " ", line, NULL);
  g_autofree char *data_dir = g_build_filename (run->folder, DATA_DIR, NULL);
  g_auto (GStrv) environment = g_environ_setenv (g_get_environ (), "XDG_DATA_HOME", data_dir, TRUE);
  g_autoptr (GError) error = NULL;
  int status;
  g_assert_true (g_shell_parse_argv (whole, NULL, &words, &error));
  g_clear_pointer (&run->out, g_free);
  g_clear_pointer (&run->err, g_free);
  g_spawn_sync (run->folder, words, environment, G_SPAWN_DEFAULT,
                most_bytes > 0 ? limit_files : NULL, GSIZE_TO_POINTER (most_bytes), &run->out,
                &run->err, &status, &error);
  g_assert_no_error (error);
  g_assert_true (WIFEXITED (status)); /* no crash, no signal */
  run->code = WEXITSTATUS (status);
}

static inline void
call (Run *run, const char *line)
{
  call_limited (run, 0, line);
}

static inline void
assert_one_line (const Run *run, const char *line)
{
  const char *end = strchr (run->err, '\n');
  g_test_message ("%s → %s", line, run->err);
  g_assert_nonnull (end);
  g_assert_cmpstr (end, ==, "\n");
  g_assert_true (g_str_has_prefix (run->err, "squarelaw: "));
}

static inline char *
many_lamps (guint count)
{
  GString *text = g_string_new ("{\"format\": 1, \"fixtures\": [");
  for (guint i = 0; i < count; i++)
    g_string_append_printf (text, "%s{\"id\": \"f%u\", \"class\": \"candle\", \"at\": [%u, 0, 1]}",
                            i > 0 ? ", " : "", i, i % 100);
  g_string_append (text, "]}");
  return g_string_free (text, FALSE);
}
