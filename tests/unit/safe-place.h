/* safe-place.h: a folder and a file for tests that save, and what must be true of them */
#pragma once

#include "base/error.h"
#include "base/safe-file.h"

#include <glib/gstdio.h>
#include <stdio.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

#define LARGE 300000 /* bytes: many times what one write to a pipe takes */

/* A folder of its own for each test, gone afterwards. */
typedef struct {
  char *folder;
  char *path; /* a file in it */
} Place;

static inline void
make_place (Place *place, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  place->folder = g_dir_make_tmp ("squarelaw-test-XXXXXX", &error);
  g_assert_no_error (error);
  g_assert_cmpint (g_chmod (place->folder, 0755), ==, 0);
  place->path = g_build_filename (place->folder, "plan.squarelaw", NULL);
}

static inline void
remove_place (Place *place, gconstpointer unused)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (place->folder, name, NULL);
    g_assert_cmpint (g_remove (path), ==, 0);
  }
  g_assert_cmpint (g_rmdir (place->folder), ==, 0);
  g_free (place->folder);
  g_free (place->path);
}

static inline guint
files_in (const Place *place)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  guint count = 0;

  while (g_dir_read_name (dir) != NULL)
    count++;
  return count;
}

/* By the C library's own road, so that nothing under test vouches for itself. */
static inline void
put (const char *path, const char *text)
{
  FILE *file = fopen (path, "w");
  g_assert_nonnull (file);
  g_assert_cmpint (fputs (text, file), >=, 0);
  g_assert_cmpint (fclose (file), ==, 0);
}

static inline void
assert_holds (const char *path, const char *data, gsize length)
{
  g_autofree char *held = g_malloc (length + 1);
  FILE *file = fopen (path, "r");

  g_assert_nonnull (file);
  g_assert_cmpuint (fread (held, 1, length + 1, file), ==, length);
  g_assert_cmpint (fclose (file), ==, 0);
  g_assert_cmpmem (held, length, data, length);
}

static inline char *
filled (char letter)
{
  char *data = g_malloc (LARGE);
  memset (data, letter, LARGE);
  return data;
}

static inline void
assert_save_fails (const char *path, const char *shown, const char *wrong)
{
  g_autofree char *data = filled ('n');
  g_autofree char *start = g_strdup_printf ("%s: %s, expected ", shown, wrong);
  g_autoptr (GError) error = NULL;

  g_assert_false (sq_file_save (path, data, LARGE, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_FILE);
  if (!g_str_has_prefix (error->message, start))
    g_error ("“%s” instead of %s", error->message, start);
  g_assert_null (strchr (error->message, '\n'));
}

static inline void
assert_saves (const char *path, const char *text)
{
  g_autoptr (GError) error = NULL;
  gboolean saved = sq_file_save (path, text, strlen (text), &error);
  g_assert_no_error (error);
  g_assert_true (saved);
}

/* Runs @body in a process of its own, where it may give up rights; an assertion that fails there
 * ends it, and is seen here. */
static inline void
in_child (void (*body) (const Place *place, gconstpointer data),
          const Place *place,
          gconstpointer data)
{
  int status;
  pid_t child = fork ();

  g_assert_cmpint (child, >=, 0);
  if (child == 0) {
    body (place, data);
    _exit (0);
  }
  g_assert_cmpint (waitpid (child, &status, 0), ==, child);
  g_assert_true (WIFEXITED (status));
  g_assert_cmpint (WEXITSTATUS (status), ==, 0);
}

/* In place of g_test_add_func(): each test with a folder of its own. */
static inline void
add_test (const char *name, void (*test) (Place *, gconstpointer))
{
  g_test_add (name, Place, NULL, make_place, test, remove_place);
}
