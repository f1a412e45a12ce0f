/* test-plot.c: printed plans are true to scale, say what they must, and repeat byte for byte */
#include "paper/plot.h"

#include "base/error.h"
#include "light-scene.h"
#include "paper/scale.h"

#include <glib/gstdio.h>

/* A wall of exactly 8 m, standing free. */
#define WALL                                                                                       \
  "'room': {'bounce': false},"                                                                    \
  "'walls': [{'id': 'w', 'path': [[0, 0], [8, 0]], 'thickness': 0.3, 'height': 3}]"

#define WHOLE                                                                                      \
  "'title': {'production': 'Salt and Iron', 'title': 'Net loft, night', 'date': '2026-03-09',"    \
  " 'drawn_by': 'O. Brandt', 'revisions': [{'number': 'A', 'date': '1 Mar', 'what': 'issued'}]},"  \
  "'room': {'bounce': false},"                                                                    \
  "'walls': [{'id': 'w', 'path': [[0, 0], [8, 0], [8, 6], [0, 6]], 'closed': true,"               \
  " 'height': 3, 'thickness': 0.1}],"                                                             \
  "'marks': [{'id': 'm', 'label': 'A', 'at': [4, 3], 'facing': -90}],"                            \
  "'cameras': [{'id': 'c', 'label': '1', 'at': [4, 0.6, 1.5], 'aim': 'm', 't_stop': 4}],"         \
  "'fixtures': ["                                                                                 \
  "{'id': 'f1', 'number': '17', 'class': 'tungsten-fresnel-2000', 'at': [1, 1, 2.4],"             \
  " 'aim': 'm', 'role': 'key', 'mount': 'stand'},"                                                \
  "{'id': 'f2', 'number': '23', 'class': 'led-panel-60x30', 'at': [7, 1, 2], 'aim': 'm',"         \
  " 'role': 'fill', 'mount': 'pipe', 'level': 0.3}],"                                             \
  "'notes': [{'id': 'n', 'text': 'Nets stay up.', 'at': [2, 5]}]"

/* A folder for what is exported. */
typedef struct {
  char *folder;
} Place;

static void
make_place (Place *place, gconstpointer unused)
{
  place->folder = g_dir_make_tmp ("squarelaw-plot-XXXXXX", NULL);
  g_assert_nonnull (place->folder);
}

static void
remove_place (Place *place, gconstpointer unused)
{
  g_autoptr (GDir) dir = g_dir_open (place->folder, 0, NULL);
  const char *name;
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (place->folder, name, NULL);
      g_remove (path);
    }
  g_rmdir (place->folder);
  g_free (place->folder);
}

static char *
in_place (const Place *place, const char *name)
{
  return g_build_filename (place->folder, name, NULL);
}

static SqPlot *
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

static void
export_to (const SqPlot *plot, const char *path, SqPlotFormat format)
{
  g_autoptr (GError) error = NULL;
  sq_plot_export (plot, path, format, &error);
  g_assert_no_error (error);
}

/* What @program prints; NULL, with the test skipped, where it is not installed. */
static char *
output_of (const char *program, const char *a, const char *b, const char *c, const char *d, gsize *length)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_find_program_in_path (program);
  if (path == NULL)
    {
      g_test_skip (program);
      return NULL;
    }
  const char *const command[] = { path, a, b, c, d, NULL };
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

/* The words of a PDF. Blanks are left out: how wide one is lies in the eye of the extractor. */
static char *
text_of (const char *pdf)
{
  char *text = output_of ("pdftotext", pdf, "-", NULL, NULL, NULL);
  char *to = text;
  for (const char *from = text; from != NULL && *from != '\0'; from++)
    if (strchr (" \n", *from) == NULL)
      *to++ = *from;
  if (to != NULL)
    *to = '\0';
  return text;
}

static gboolean
says (const char *text, const char *words)
{
  g_auto (GStrv) parts = g_strsplit (words, " ", -1);
  g_autofree char *joined = g_strjoinv ("", parts);
  return strstr (text, joined) != NULL;
}

/* Whether @bytes, which may hold NUL, hold @text. */
static gboolean
holds (const char *bytes, gsize length, const char *text)
{
  gsize n = strlen (text);
  for (gsize k = 0; k + n <= length; k++)
    if (memcmp (bytes + k, text, n) == 0)
      return TRUE;
  return FALSE;
}

/* At 254 dots to the inch a millimetre is ten pixels, so 8 m at 1:50 are 1600: from the middle of
 * the black line at one end to the middle of that at the other. */
static void
test_true_scale (Place *place, gconstpointer unused)
{
  static const struct {
    const char *sheet;
    double denominator, pixels;
  } rows[] = { { "A3", 50, 1600 }, { "A4", 100, 800 }, { "tabloid", 48, 8000.0 / 4.8 } };
  const double tolerance_px = 1.0; /* 0.1 mm */
  const int black = 100; /* darker: ink; walls are filled with a light grey */
  g_autoptr (SqScene) scene = scene_of ("%s", WALL);
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
    {
      g_autoptr (SqPlot) plot =
          plot_of (scene, rows[k].sheet, rows[k].denominator, SQ_OVERLAY_NONE);
      g_autofree char *path = in_place (place, "wall.pdf");
      export_to (plot, path, SQ_PLOT_PDF);
      gsize length;
      g_autofree char *picture = output_of ("pdftoppm", "-r", "254", "-gray", path, &length);
      if (picture == NULL)
        return;
      int columns, rows_px, most, header;
      g_assert_cmpint (sscanf (picture, "P5 %d %d %d%n", &columns, &rows_px, &most, &header), ==, 3);
      const guint8 *pixel = (const guint8 *)picture + header + 1;

      /* The row through the middle of the field, where the wall lies. */
      SqSheetLayout layout;
      sq_sheet_lay_out (sq_plot_sheet (plot), &layout);
      int row = (int)(10.0 * (layout.field.y_mm + layout.field.height_mm / 2.0));
      double left_px = 10.0 * (layout.field.x_mm + layout.field.width_mm / 2.0);
      const guint8 *line = pixel + (gsize)row * (gsize)columns;
      double runs[2] = { NAN, NAN };
      for (int side = 0; side < 2; side++)
        {
          /* From the middle of the wall outward to its end. */
          int step = side == 0 ? -1 : 1, x = (int)left_px;
          while (line[x] > black)
            x += step;
          int from = x;
          while (line[x] <= black)
            x += step;
          runs[side] = (from + x - step) / 2.0;
        }
      g_assert_cmpfloat_with_epsilon (runs[1] - runs[0], rows[k].pixels, tolerance_px);
    }
}

static void
test_says (Place *place, gconstpointer unused)
{
  static const char *const words[] = {
    "Salt and Iron", "Net loft, night", "2026-03-09", "O. Brandt", "1:50", "A3", "17",    "23",
    "KEY",           "FILL",            "Figures",    "Legend",    "T4",   "340 dome",   "250 flat",
    "(key + fill) : fill", "Caution", "licensed person", "Nets stay up.", "Revisions", "issued",
    "1 / 1", "The bar is 100 mm long", "On the day", "Light, lux", "256",
  };
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 50, SQ_OVERLAY_LUX);
  g_autofree char *path = in_place (place, "whole.pdf");
  export_to (plot, path, SQ_PLOT_PDF);
  g_autofree char *text = text_of (path);
  if (text == NULL)
    return;
  for (guint k = 0; k < G_N_ELEMENTS (words); k++)
    if (!says (text, words[k]))
      g_error ("%s is not on the page", words[k]);

  g_autofree char *info = output_of ("pdfinfo", path, NULL, NULL, NULL, NULL);
  if (info == NULL)
    return;
  g_assert_nonnull (strstr (info, "Salt and Iron: Net loft, night"));
  g_assert_nonnull (strstr (info, "O. Brandt"));
  g_assert_nonnull (strstr (info, "Squarelaw"));
  g_assert_nonnull (strstr (info, "1190.55 x 841.89 pts (A3)"));
  g_autofree char *bytes = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_true (holds (bytes, length, "(20260309000000Z)"));
}

static void
assert_same_files (const char *a, const char *b)
{
  g_autofree char *first = NULL, *second = NULL;
  gsize n_first, n_second;
  g_assert_true (g_file_get_contents (a, &first, &n_first, NULL));
  g_assert_true (g_file_get_contents (b, &second, &n_second, NULL));
  g_assert_cmpmem (first, n_first, second, n_second);
}

static const char *self; /* this program */

/* `--export FOLDER`: what another process would make of the same scene. */
static void
export_all (const char *folder)
{
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 50, SQ_OVERLAY_LUX);
  g_autofree char *svg = g_build_filename (folder, "plot.svg", NULL);
  g_autofree char *pdf = g_build_filename (folder, "plot.pdf", NULL);
  g_autofree char *png = g_build_filename (folder, "plot.png", NULL);
  export_to (plot, svg, SQ_PLOT_SVG);
  export_to (plot, pdf, SQ_PLOT_PDF);
  export_to (plot, png, SQ_PLOT_PNG);
}

static void
test_repeats (Place *place, gconstpointer unused)
{
  static const char *const names[] = { "plot.svg", "plot.pdf", "plot.png" };
  g_autofree char *first = in_place (place, "first"), *second = in_place (place, "second");
  char *folders[] = { first, second };
  for (int k = 0; k < 2; k++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_cmpint (g_mkdir (folders[k], 0700), ==, 0);
      g_autoptr (GSubprocess) process = g_subprocess_new (
          G_SUBPROCESS_FLAGS_NONE, &error, self, "--export", folders[k], NULL);
      g_assert_no_error (error);
      g_assert_true (g_subprocess_wait_check (process, NULL, &error));
    }
  for (guint k = 0; k < G_N_ELEMENTS (names); k++)
    {
      g_autofree char *a = g_build_filename (first, names[k], NULL);
      g_autofree char *b = g_build_filename (second, names[k], NULL);
      assert_same_files (a, b);
      g_remove (a);
      g_remove (b);
    }
  g_rmdir (first);
  g_rmdir (second);
}

/* In one process too, and whatever the number of threads. */
static void
test_repeats_here (Place *place, gconstpointer unused)
{
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autofree char *one = in_place (place, "one.pdf"), *two = in_place (place, "two.pdf");
  SqPlotRequest request = SQ_PLOT_REQUEST;
  g_autoptr (SqPlot) a = sq_plot_new (scene, &request, 1, NULL, NULL);
  g_autoptr (SqPlot) b = sq_plot_new (scene, &request, 3, NULL, NULL);
  export_to (a, one, SQ_PLOT_PDF);
  export_to (a, two, SQ_PLOT_PDF);
  assert_same_files (one, two);
  export_to (b, two, SQ_PLOT_PDF);
  assert_same_files (one, two);
}

static void
test_svg (Place *place, gconstpointer unused)
{
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 50, SQ_OVERLAY_STOPS);
  g_autofree char *path = in_place (place, "plot.svg"), *svg = NULL;
  export_to (plot, path, SQ_PLOT_SVG);
  g_assert_true (g_file_get_contents (path, &svg, NULL, NULL));
  g_assert_nonnull (strstr (svg, "width=\"420mm\""));
  g_assert_nonnull (strstr (svg, "height=\"297mm\""));
  g_assert_nonnull (strstr (svg, "viewBox=\"0 0 420 297\""));
  g_autofree char *output = output_of ("xmllint", "--noout", "--nonet", path, NULL, NULL);
  if (output != NULL)
    g_assert_cmpstr (output, ==, "");
}

static guint32
big_endian (const char *at)
{
  guint32 value;
  memcpy (&value, at, sizeof value);
  return GUINT32_FROM_BE (value);
}

/* A3 is 420 × 297 mm; the header stands at byte 16, the next chunk at byte 33. */
static void
test_png (Place *place, gconstpointer unused)
{
  static const struct {
    double dpi;
    guint columns, rows, per_metre; /* 39.3701 inches to the metre */
  } rows[] = { { 150, 2480, 1754, 5906 }, { 96, 1587, 1123, 3780 }, { 25.4, 420, 297, 1000 } };
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
    {
      SqPlotRequest request = SQ_PLOT_REQUEST;
      request.sheet = "A3";
      request.overlay = SQ_OVERLAY_NONE;
      request.dpi = rows[k].dpi;
      g_autoptr (SqPlot) plot = sq_plot_new (scene, &request, 1, NULL, NULL);
      g_autofree char *path = in_place (place, "plot.png"), *png = NULL;
      gsize length;
      export_to (plot, path, SQ_PLOT_PNG);
      g_assert_true (g_file_get_contents (path, &png, &length, NULL));
      g_assert_cmpmem (png, 8, "\x89PNG\r\n\x1a\n", 8);
      g_assert_cmpuint (big_endian (png + 16), ==, rows[k].columns);
      g_assert_cmpuint (big_endian (png + 20), ==, rows[k].rows);
      g_assert_cmpuint (big_endian (png + 33), ==, 9);
      g_assert_cmpmem (png + 37, 4, "pHYs", 4);
      g_assert_cmpuint (big_endian (png + 41), ==, rows[k].per_metre);
      g_assert_cmpuint (big_endian (png + 45), ==, rows[k].per_metre);
      g_assert_cmpint (png[49], ==, 1);
      g_assert_cmpmem (png + length - 8, 4, "IEND", 4);
      /* cairo checks each chunk's CRC when it reads the file back. */
      cairo_surface_t *image = cairo_image_surface_create_from_png (path);
      g_assert_cmpint (cairo_surface_status (image), ==, CAIRO_STATUS_SUCCESS);
      cairo_surface_destroy (image);
    }
}

/* A4 has no side column: figures, legend and notes follow on a page of their own. */
static void
test_pages (Place *place, gconstpointer unused)
{
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 0, SQ_OVERLAY_LUX);
  g_assert_cmpint (sq_plot_n_pages (plot), ==, 2);
  g_autofree char *path = in_place (place, "plot.v2.png");
  g_autofree char *one = in_place (place, "plot.v2-1.png"), *two = in_place (place, "plot.v2-2.png");
  export_to (plot, path, SQ_PLOT_PNG);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_test (one, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_test (two, G_FILE_TEST_EXISTS));

  g_autoptr (GError) error = NULL;
  g_assert_false (sq_plot_export (plot, "-", SQ_PLOT_SVG, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_USAGE);
  g_assert_cmpstr (
      error->message, ==, "-: 2 pages do not go into one SVG, expected a file name or PDF");

  g_autofree char *pdf = in_place (place, "plot.pdf");
  export_to (plot, pdf, SQ_PLOT_PDF);
  g_autofree char *text = text_of (pdf);
  if (text == NULL)
    return;
  const char *second = strchr (text, '\f');
  g_assert_nonnull (second);
  g_assert_nonnull (strstr (second, "Figures"));
  g_assert_nonnull (strstr (second, "Caution"));
  g_assert_true (says (second, "2 / 2"));
  g_assert_null (g_strstr_len (text, second - text, "Caution"));
}

static void
test_refused (void)
{
  static const struct {
    const char *sheet;
    double denominator, dpi;
    int overlay;
    const char *message;
  } rows[] = {
    /* The field of A3 is 306 × 241 mm, 5 mm each side are kept for words. */
    { "A3", 20, 150, SQ_OVERLAY_NONE,
      "sheet: the set is 8.30 m × 1.00 m, A3 at 1:20 holds 5.92 m × 4.62 m, "
      "expected 1:50 or sheet A2" },
    { NULL, 5, 150, SQ_OVERLAY_NONE,
      "sheet: the set is 8.30 m × 1.00 m, A0 at 1:5 holds 4.91 m × 3.88 m, expected 1:10" },
    { "B5", 0, 150, SQ_OVERLAY_NONE,
      "sheet: B5 is no sheet, expected one of A4, A3, A2, A1, A0, letter, arch-a, tabloid, "
      "arch-b, arch-c, arch-d, arch-e" },
    { NULL, 0, 150, SQ_OVERLAY_COLOUR,
      "overlay: colour is not computed yet, expected lux, stops or none" },
    { NULL, 0, 5, SQ_OVERLAY_NONE, "dpi: 5 is outside 20 to 1200" },
    { NULL, 0, NAN, SQ_OVERLAY_NONE, "dpi: – is outside 20 to 1200" },
  };
  g_autoptr (SqScene) scene = scene_of (
      "'walls': [{'id': 'w', 'path': [[0, 0], [8, 0]], 'thickness': 0.3, 'height': 3}]");
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
    {
      g_autoptr (GError) error = NULL;
      SqPlotRequest request = { .sheet = rows[k].sheet,
                                .denominator = rows[k].denominator,
                                .overlay = rows[k].overlay,
                                .dpi = rows[k].dpi };
      g_assert_null (sq_plot_new (scene, &request, 1, NULL, &error));
      g_assert_error (error, SQ_ERROR, SQ_ERROR_USAGE);
      g_assert_cmpstr (error->message, ==, rows[k].message);
    }
}

/* Where nothing is asked for: the smallest sheet that holds the set at 1:50 or 1/4" = 1'. */
static void
test_chosen (void)
{
  static const struct {
    const char *units;
    double side_m;
    const char *sheet;
    double denominator;
  } rows[] = {
    { "metric", 4, "A4", 50 },        { "metric", 8, "A3", 50 },
    { "metric", 15, "A2", 50 },       { "metric", 400, "A4", 0 },
    { "imperial", 4, "letter", 48 },  { "imperial", 8, "tabloid", 48 },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
    {
      char side[G_ASCII_DTOSTR_BUF_SIZE];
      g_ascii_dtostr (side, sizeof side, rows[k].side_m);
      g_autoptr (SqScene) scene = scene_of (
          "'units': '%s', 'pieces': [{'id': 'p', 'outline': [[0, 0], [%s, 0], [%s, %s], [0, %s]],"
          " 'base': 0, 'top': 1}]",
          rows[k].units, side, side, side, side);
      g_autoptr (SqPlot) plot = plot_of (scene, NULL, 0, SQ_OVERLAY_NONE);
      if (rows[k].denominator > 0.0)
        {
          g_assert_cmpstr (sq_plot_sheet (plot)->id, ==, rows[k].sheet);
          g_assert_cmpfloat (sq_plot_denominator (plot), <=, rows[k].denominator);
        }
      /* It does fit, whatever was chosen. */
      SqSheetLayout layout;
      sq_sheet_lay_out (sq_plot_sheet (plot), &layout);
      g_assert_cmpfloat (
          rows[k].side_m * 1000.0 / sq_plot_denominator (plot), <=, layout.field.height_mm);
    }
}

/* Scenes that lack something still give a page that says so. */
static void
test_empty (Place *place, gconstpointer unused)
{
  static const struct {
    const char *scene, *says;
  } rows[] = {
    { "'marks': []", "Nothing stands on this plan yet" },
    { WALL, "No lamps yet" },
    { "'fixtures': [{'id': 'f', 'number': '1', 'class': 'open-face-800', 'at': [0, 0, 2]}]",
      "No set drawn yet" },
    { "'marks': [{'id': 'm', 'label': 'A', 'at': [0, 0]}]", "No set and no lamps yet" },
    { WALL ", 'fixtures': [{'id': 'f', 'number': '1', 'class': 'open-face-800', 'at': [2, 2, 2]}]",
      "No marks yet" },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
    {
      g_autoptr (SqScene) scene = scene_of ("%s", rows[k].scene);
      g_autoptr (SqPlot) plot = plot_of (scene, "A3", 0, SQ_OVERLAY_LUX);
      g_autofree char *path = in_place (place, "empty.pdf");
      export_to (plot, path, SQ_PLOT_PDF);
      g_autofree char *text = text_of (path);
      if (text == NULL)
        return;
      g_assert_true (says (text, rows[k].says));
      g_assert_nonnull (strstr (text, "Caution"));
      g_assert_nonnull (strstr (text, "Mains"));
    }
}

/* Words without end are cut where they would leave their place; nothing breaks. */
static void
test_long_words (Place *place, gconstpointer unused)
{
  g_autofree char *letters = g_strnfill (10000, 'w');
  g_autoptr (GString) notes = g_string_new (NULL);
  for (int k = 0; k < 400; k++)
    g_string_append_printf (
        notes, "%s{'id': 'n%d', 'text': 'Note %d.', 'at': [1, 1]}", k > 0 ? "," : "", k, k + 1);
  g_autoptr (SqScene) scene = scene_of (
      "'title': {'production': '%s', 'title': '%s', 'director': '%s', 'date': '%s',"
      " 'revisions': [{'number': '%s', 'date': '%s', 'what': '%s'}]},"
      "'marks': [{'id': 'm', 'label': 'A', 'at': [0, 0]}, {'id': 'q', 'label': '%s', 'at': [3, 3]}],"
      "'notes': [{'id': 'x', 'text': '%s', 'at': [0, 0]}, %s]",
      letters, letters, letters, "9 March", letters, letters, letters, letters, letters, notes->str);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 0, SQ_OVERLAY_NONE);
  g_assert_cmpint (sq_plot_n_pages (plot), >, 1);
  g_autofree char *path = in_place (place, "long.pdf");
  export_to (plot, path, SQ_PLOT_PDF);
  g_autofree char *text = text_of (path);
  if (text != NULL)
    {
      /* The last note came to a page, and no line of it runs over the edge of one. */
      g_assert_true (says (text, "Note 400."));
      g_autofree char *run = g_strnfill (1000, 'w');
      g_assert_null (strstr (text, run));
    }
  g_autofree char *bytes = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_true (holds (bytes, length, "(20000101000000Z)")); /* 9 March is no date */
}

static void
test_cancelled (void)
{
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  SqPlotRequest request = SQ_PLOT_REQUEST;
  g_cancellable_cancel (cancellable);
  g_assert_null (sq_plot_new (scene, &request, 1, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

static void
test_unwritable (void)
{
  g_autoptr (SqScene) scene = scene_of ("%s", WALL);
  g_autoptr (SqPlot) plot = plot_of (scene, NULL, 0, SQ_OVERLAY_NONE);
  g_autoptr (GError) error = NULL;
  g_assert_false (sq_plot_export (plot, "/no/such/folder/plot.pdf", SQ_PLOT_PDF, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_FILE);
}

int
main (int argc, char *argv[])
{
  if (argc == 3 && g_str_equal (argv[1], "--export"))
    {
      export_all (argv[2]);
      return 0;
    }
  self = argv[0];
  g_test_init (&argc, &argv, NULL);
#define ADD(path, test) g_test_add (path, Place, NULL, make_place, test, remove_place)
  ADD ("/plot/a wall of 8 m is 160 mm at 1:50", test_true_scale);
  ADD ("/plot/the page says what it must", test_says);
  ADD ("/plot/two processes give the same bytes", test_repeats);
  ADD ("/plot/one process gives the same bytes again", test_repeats_here);
  ADD ("/plot/SVG is well formed and in millimetres", test_svg);
  ADD ("/plot/PNG knows its size on paper", test_png);
  ADD ("/plot/small sheets go on to a second page", test_pages);
  ADD ("/plot/what lacks something says so", test_empty);
  ADD ("/plot/words without end", test_long_words);
  g_test_add_func ("/plot/refused in one line", test_refused);
  g_test_add_func ("/plot/sheet and scale by themselves", test_chosen);
  g_test_add_func ("/plot/cancelled", test_cancelled);
  g_test_add_func ("/plot/a folder that is not there", test_unwritable);
  return g_test_run ();
}
