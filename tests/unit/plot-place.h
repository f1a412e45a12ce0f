/* plot-place.h: scenes to plot, a folder to plot into, and what other programs see in the files */
#pragma once

#include "light-scene.h"
#include "paper/plot.h"

#include <glib/gstdio.h>

/* A wall of exactly 8 m, standing free. */
#define WALL                                                                                       \
  "'room': {'bounce': false},"                                                                     \
  "'walls': [{'id': 'w', 'path': [[0, 0], [8, 0]], 'thickness': 0.3, 'height': 3}]"

#define WHOLE                                                                                      \
  "'title': {'production': 'Salt and Iron', 'title': 'Net loft, night', 'date': '2026-03-09',"     \
  " 'drawn_by': 'O. Brandt', 'revisions': [{'number': 'A', 'date': '1 Mar', 'what': 'issued'}]},"  \
  "'room': {'bounce': false},"                                                                     \
  "'walls': [{'id': 'w', 'path': [[0, 0], [8, 0], [8, 6], [0, 6]], 'closed': true,"                \
  " 'height': 3, 'thickness': 0.1}],"                                                              \
  "'marks': [{'id': 'm', 'label': 'A', 'at': [4, 3], 'facing': -90}],"                             \
  "'cameras': [{'id': 'c', 'label': '1', 'at': [4, 0.6, 1.5], 'aim': 'm', 't_stop': 4}],"          \
  "'fixtures': ["                                                                                  \
  "{'id': 'f1', 'number': '17', 'class': 'tungsten-fresnel-2000', 'at': [1, 1, 2.4],"              \
  " 'aim': 'm', 'role': 'key', 'mount': 'stand'},"                                                 \
  "{'id': 'f2', 'number': '23', 'class': 'led-panel-60x30', 'at': [7, 1, 2], 'aim': 'm',"          \
  " 'role': 'fill', 'mount': 'pipe', 'level': 0.3}],"                                              \
  "'notes': [{'id': 'n', 'text': 'Nets stay up.', 'at': [2, 5]}]"

/* A folder for what is exported. */
typedef struct {
  char *folder;
} Place;

static G_GNUC_UNUSED void
make_place (Place *place, gconstpointer unused)
{
  place->folder = g_dir_make_tmp ("squarelaw-plot-XXXXXX", NULL);
  g_assert_nonnull (place->folder);
}

static G_GNUC_UNUSED void
remove_place (Place *place, gconstpointer unused)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (place->folder, name, NULL);
    g_remove (path);
  }
  g_rmdir (place->folder);
  g_free (place->folder);
}

static G_GNUC_UNUSED char *
in_place (const Place *place, const char *name)
{
  return g_build_filename (place->folder, name, NULL);
}

static G_GNUC_UNUSED SqPlot *
plot_of (const SqScene *scene, const char *sheet, double denominator, int overlay)
{
  g_autoptr (GError) error = NULL;
  SqPlotRequest request = SQ_PLOT_REQUEST;
  request.sheet = sheet;
  request.denominator = denominator;
  request.overlay = overlay;
  SqPlot *plot = sq_plot_new (scene, &request, 1, NULL, &error);
  g_assert_no_error (error);
  return plot;
}

static G_GNUC_UNUSED void
export_to (const SqPlot *plot, const char *path, SqPlotFormat format)
{
  g_autoptr (GError) error = NULL;
  sq_plot_export (plot, path, format, &error);
  g_assert_no_error (error);
}

/* Runs @command, which must be installed and go well (`tests/run` installs what tests call). */
static G_GNUC_UNUSED void
run_command (const char *const *command)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) process = g_subprocess_newv (command, G_SUBPROCESS_FLAGS_NONE, &error);
  g_assert_no_error (error);
  g_subprocess_wait_check (process, NULL, &error);
  g_assert_no_error (error);
}

/* What @command prints, with a NUL behind it. */
static G_GNUC_UNUSED char *
output_of_command (const char *const *command, gsize *length)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocess) process =
    g_subprocess_newv (command, G_SUBPROCESS_FLAGS_STDOUT_PIPE, &error);
  g_assert_no_error (error);
  g_autoptr (GBytes) output = NULL;
  g_subprocess_communicate (process, NULL, NULL, &output, NULL, &error);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_get_successful (process));
  gsize size;
  const char *data = g_bytes_get_data (output, &size);
  if (length != NULL)
    *length = size;
  char *copy = g_malloc (size + 1);
  if (size > 0)
    memcpy (copy, data, size);
  copy[size] = '\0';
  return copy;
}

static G_GNUC_UNUSED char *
output_of (
  const char *program, const char *a, const char *b, const char *c, const char *d, gsize *length)
{
  const char *const command[] = { program, a, b, c, d, NULL };
  return output_of_command (command, length);
}

/* All of @text but blanks and line ends. */
static G_GNUC_UNUSED char *
without_blanks (char *text)
{
  char *to = text;
  for (const char *from = text; *from != '\0'; from++)
    if (strchr (" \n", *from) == NULL)
      *to++ = *from;
  *to = '\0';
  return text;
}

/* The words of a PDF. Blanks are left out: how wide one is lies in the eye of the extractor. */
static G_GNUC_UNUSED char *
text_of (const char *pdf)
{
  return without_blanks (output_of ("pdftotext", pdf, "-", NULL, NULL, NULL));
}

static G_GNUC_UNUSED gboolean
says (const char *text, const char *words)
{
  g_auto (GStrv) parts = g_strsplit (words, " ", -1);
  g_autofree char *joined = g_strjoinv ("", parts);
  return strstr (text, joined) != NULL;
}

/* Whether @bytes, which may hold NUL, hold @text. */
static G_GNUC_UNUSED gboolean
holds (const char *bytes, gsize length, const char *text)
{
  gsize n = strlen (text);
  for (gsize k = 0; k + n <= length; k++)
    if (memcmp (bytes + k, text, n) == 0)
      return TRUE;
  return FALSE;
}

#define ADD_IN_PLACE(path, test) g_test_add (path, Place, NULL, make_place, test, remove_place)
