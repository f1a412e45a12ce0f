/* test-safe-file.c: files read and saved whole, and clear words where they cannot be */
#include "safe-place.h"

#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <sys/stat.h>
#include <sys/time.h>

static const uid_t nobody = 65534; /* who has no rights on any system that we know of */

static char *
in_place (const Place *place, const char *name)
{
  return g_build_filename (place->folder, name, NULL);
}

static void
assert_load_fails (const char *path, const char *shown, const char *wrong)
{
  g_autofree char *start = g_strdup_printf ("%s: %s, expected ", shown, wrong);
  g_autoptr (GError) error = NULL;

  g_assert_null (sq_file_load (path, NULL, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_FILE);
  if (!g_str_has_prefix (error->message, start))
    g_error ("“%s” instead of %s", error->message, start);
  g_assert_null (strchr (error->message, '\n'));
}

static void
give_up_rights (void)
{
  if (geteuid () == 0)
    g_assert_cmpint (setuid (nobody), ==, 0);
}

static void
test_load (Place *place, gconstpointer unused)
{
  static const char data[] = "a\0b\nc";
  g_autofree char *loaded = NULL;
  g_autofree char *empty = NULL;
  gsize length;
  g_autoptr (GError) error = NULL;

  g_assert_true (sq_file_save (place->path, data, sizeof data, &error));
  g_assert_no_error (error);
  assert_holds (place->path, data, sizeof data);
  loaded = sq_file_load (place->path, &length, &error);
  g_assert_no_error (error);
  g_assert_cmpmem (loaded, length, data, sizeof data);
  g_assert_cmpint (loaded[length], ==, '\0');

  g_assert_true (sq_file_save (place->path, NULL, 0, &error));
  empty = sq_file_load (place->path, &length, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (length, ==, 0);
  g_assert_cmpstr (empty, ==, "");
}

static void
load_without_rights (const Place *place, gconstpointer unused)
{
  give_up_rights ();
  assert_load_fails (place->path, place->path, "is read-protected");
}

static void
test_load_refusals (Place *place, gconstpointer unused)
{
  g_autofree char *missing = in_place (place, "missing");
  g_autofree char *under = g_build_filename (place->path, "file", NULL);
  g_autofree char *two_lines = in_place (place, "two\nlines");
  g_autofree char *one_line = in_place (place, "two?lines");

  put (place->path, "{}");
  assert_load_fails (missing, missing, "does not exist");
  assert_load_fails (place->folder, place->folder, "is a folder");
  assert_load_fails (under, under, "stands under a file");
  assert_load_fails (two_lines, one_line, "does not exist");
  assert_load_fails ("", "no name", "does not exist");
  g_assert_cmpint (g_chmod (place->path, 0), ==, 0);
  in_child (load_without_rights, place, NULL);
}

static void
test_load_limit (Place *place, gconstpointer unused)
{
  const gsize most = (gsize)64 * 1024 * 1024;
  g_autofree char *loaded = NULL;
  gsize length;

  put (place->path, "");
  g_assert_cmpint (truncate (place->path, (off_t)most), ==, 0);
  loaded = sq_file_load (place->path, &length, NULL);
  g_assert_nonnull (loaded);
  g_assert_cmpuint (length, ==, most);
  g_assert_cmpint (truncate (place->path, (off_t)most + 1), ==, 0);
  assert_load_fails (place->path, place->path, "is larger than 64 MiB");
  assert_load_fails ("/dev/zero", "/dev/zero", "is larger than 64 MiB");
}

static void
test_load_pipe (Place *place, gconstpointer unused)
{
  g_autofree char *loaded = NULL;
  g_autofree char *large = filled ('p');
  gsize length;
  pid_t child;

  g_assert_cmpint (mkfifo (place->path, 0600), ==, 0);
  child = fork ();
  if (child == 0) {
    FILE *pipe = fopen (place->path, "w");
    _exit (pipe != NULL && fwrite (large, 1, LARGE, pipe) == LARGE && fclose (pipe) == 0 ? 0 : 1);
  }
  loaded = sq_file_load (place->path, &length, NULL);
  g_assert_cmpmem (loaded, length, large, LARGE);
  g_assert_cmpint (waitpid (child, NULL, 0), ==, child);
}

static void
use_standard_streams (const Place *place, gconstpointer unused)
{
  g_autofree char *out = in_place (place, "out");
  g_autofree char *loaded = NULL;
  gsize length;
  g_autoptr (GError) error = NULL;

  put (place->path, "from a file");
  g_assert_nonnull (freopen (place->path, "r", stdin));
  g_assert_nonnull (freopen (out, "w", stdout));
  loaded = sq_file_load ("-", &length, &error);
  g_assert_no_error (error);
  g_assert_cmpmem (loaded, length, "from a file", 11);
  g_assert_cmpint (fputs ("printed, ", stdout), >=, 0);
  assert_saves ("-", "then saved");
  assert_saves ("/dev/stdout", ", twice");
  assert_holds (out, "printed, then saved, twice", 26);

  g_assert_nonnull (freopen (place->folder, "r", stdin));
  assert_load_fails ("-", "standard input", "is a folder");
  g_assert_nonnull (freopen ("/dev/full", "w", stdout));
  assert_save_fails ("-", "standard output", "the disk is full");
}

static void
test_standard_streams (Place *place, gconstpointer unused)
{
  in_child (use_standard_streams, place, NULL);
}

static void
test_links (Place *place, gconstpointer unused)
{
  g_autofree char *link = in_place (place, "link");
  g_autofree char *chain = in_place (place, "chain");
  g_autofree char *dangling = in_place (place, "dangling");
  g_autofree char *later = in_place (place, "later");
  g_autofree char *loose = in_place (place, "loose");
  g_autofree char *circle = in_place (place, "circle");
  g_autofree char *target = NULL;

  put (place->path, "old");
  g_assert_cmpint (symlink ("plan.squarelaw", link), ==, 0);
  g_assert_cmpint (symlink (link, chain), ==, 0);
  g_assert_cmpint (symlink ("later", dangling), ==, 0);
  g_assert_cmpint (symlink ("no-folder/file", loose), ==, 0);
  g_assert_cmpint (symlink ("circle", circle), ==, 0);

  assert_saves (chain, "new");
  assert_holds (place->path, "new", 3);
  target = g_file_read_link (link, NULL);
  g_assert_cmpstr (target, ==, "plan.squarelaw");
  g_assert_true (g_file_test (chain, G_FILE_TEST_IS_SYMLINK));

  assert_saves (dangling, "made");
  g_assert_true (g_file_test (dangling, G_FILE_TEST_IS_SYMLINK));
  g_assert_false (g_file_test (later, G_FILE_TEST_IS_SYMLINK));
  assert_holds (later, "made", 4);

  assert_save_fails (loose, loose, "its folder does not exist");
  assert_save_fails (circle, circle, g_strerror (ELOOP));
  g_assert_cmpuint (files_in (place), ==, 7);
}

static mode_t
mode_of (const char *path)
{
  struct stat status;
  g_assert_cmpint (stat (path, &status), ==, 0);
  return status.st_mode & 07777;
}

static void
test_permissions (Place *place, gconstpointer unused)
{
  static const mode_t modes[] = { 0600, 0640, 0644, 0660, 0666, 0755, 0604 };
  const mode_t before = umask (0027);
  struct stat status;

  assert_saves (place->path, "new");
  g_assert_cmphex (mode_of (place->path), ==, 0640);
  for (gsize i = 0; i < G_N_ELEMENTS (modes); i++) {
    g_assert_cmpint (g_chmod (place->path, modes[i]), ==, 0);
    assert_saves (place->path, "newer");
    g_assert_cmphex (mode_of (place->path), ==, modes[i]);
  }
  umask (before);
  if (geteuid () == 0) {
    g_assert_cmpint (chown (place->path, nobody, nobody), ==, 0);
    assert_saves (place->path, "newest");
    g_assert_cmpint (stat (place->path, &status), ==, 0);
    g_assert_cmpuint (status.st_uid, ==, nobody);
    g_assert_cmpuint (status.st_gid, ==, nobody);
  }
}

static void
save_without_rights (const Place *place, gconstpointer wrong)
{
  give_up_rights ();
  assert_save_fails (place->path, place->path, wrong);
}

static void
test_save_refusals (Place *place, gconstpointer unused)
{
  g_autofree char *under = g_build_filename (place->path, "file", NULL);
  g_autofree char *deeper = in_place (place, "no-folder/file");
  g_autofree char *slash = g_strconcat (place->path, "/", NULL);

  put (place->path, "old");
  assert_save_fails (place->folder, place->folder, "is a folder");
  assert_save_fails (under, under, "stands under a file");
  assert_save_fails (slash, slash, "stands under a file");
  assert_save_fails (deeper, deeper, "its folder does not exist");
  assert_save_fails ("", "no name", "its folder does not exist");

  g_assert_cmpint (g_chmod (place->path, 0666), ==, 0);
  g_assert_cmpint (g_chmod (place->folder, 0555), ==, 0);
  in_child (save_without_rights, place, "is write-protected");
  g_assert_cmpint (g_chmod (place->path, 0444), ==, 0);
  g_assert_cmpint (g_chmod (place->folder, 0777), ==, 0);
  in_child (save_without_rights, place, "is write-protected");

  assert_holds (place->path, "old", 3);
  g_assert_cmpuint (files_in (place), ==, 1);
}

static void
test_full_device (Place *place, gconstpointer unused)
{
  g_autofree char *link = in_place (place, "link");
  struct stat status;

  assert_save_fails ("/dev/full", "/dev/full", "the disk is full");
  g_assert_cmpint (symlink ("/dev/full", link), ==, 0);
  assert_save_fails (link, link, "the disk is full");
  assert_saves ("/dev/null", "gone");
  g_assert_cmpint (stat ("/dev/full", &status), ==, 0);
  g_assert_true (S_ISCHR (status.st_mode));
  g_assert_cmpint (stat ("/dev/null", &status), ==, 0);
  g_assert_true (S_ISCHR (status.st_mode));
}

static void
interrupted (int number)
{
}

static void
save_to_pipe (const Place *place, gconstpointer data)
{
  struct sigaction action = { .sa_handler = interrupted }; /* without SA_RESTART */
  struct itimerval often = { { 0, 500 }, { 0, 500 } };
  g_autoptr (GError) error = NULL;

  g_assert_cmpint (sigaction (SIGALRM, &action, NULL), ==, 0);
  g_assert_cmpint (setitimer (ITIMER_REAL, &often, NULL), ==, 0);
  g_assert_true (sq_file_save (place->path, data, LARGE, &error));
}

/* A reader that is slow, and a clock that breaks into every write: short writes and EINTR. */
static void
test_save_pipe (Place *place, gconstpointer unused)
{
  g_autofree char *large = filled ('s');
  g_autoptr (GString) read_back = g_string_new (NULL);
  char buffer[4000];
  struct stat kind;
  int fd, status;
  gssize got;
  pid_t child;

  for (gsize i = 0; i < LARGE; i++)
    large[i] = (char)('a' + i / 7 % 26);
  g_assert_cmpint (mkfifo (place->path, 0600), ==, 0);
  child = fork ();
  if (child == 0) {
    save_to_pipe (place, large);
    _exit (0);
  }
  fd = open (place->path, O_RDONLY);
  while ((got = read (fd, buffer, sizeof buffer)) > 0) {
    g_string_append_len (read_back, buffer, got);
    g_usleep (1000);
  }
  close (fd);
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_cmpint (status, ==, 0);
  g_assert_cmpmem (read_back->str, read_back->len, large, LARGE);
  g_assert_cmpint (stat (place->path, &kind), ==, 0);
  g_assert_true (S_ISFIFO (kind.st_mode));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add_test ("/safe file/load/what was saved", test_load);
  add_test ("/safe file/load/refusals are one clear line", test_load_refusals);
  add_test ("/safe file/load/64 MiB and no more", test_load_limit);
  add_test ("/safe file/load/a pipe to its end", test_load_pipe);
  add_test ("/safe file/standard input and output", test_standard_streams);
  add_test ("/safe file/save/through links", test_links);
  add_test ("/safe file/save/permissions stay", test_permissions);
  add_test ("/safe file/save/refusals leave the old file", test_save_refusals);
  add_test ("/safe file/save/a full device", test_full_device);
  add_test ("/safe file/save/a slow pipe and many signals", test_save_pipe);
  return g_test_run ();
}
