/* test-plot-files.c: PDF, SVG and PNG are sound and the same every time */
#include "plot-place.h"

#include "base/error.h"

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
  for (int k = 0; k < 2; k++) {
    g_autoptr (GError) error = NULL;
    g_assert_cmpint (g_mkdir (folders[k], 0700), ==, 0);
    g_autoptr (GSubprocess) process =
      g_subprocess_new (G_SUBPROCESS_FLAGS_NONE, &error, self, "--export", folders[k], NULL);
    g_assert_no_error (error);
    g_assert_true (g_subprocess_wait_check (process, NULL, &error));
  }
  for (guint k = 0; k < G_N_ELEMENTS (names); k++) {
    g_autofree char *a = g_build_filename (first, names[k], NULL);
    g_autofree char *b = g_build_filename (second, names[k], NULL);
    assert_same_files (a, b);
    g_remove (a);
    g_remove (b);
  }
  g_rmdir (first);
  g_rmdir (second);
}

/* In one process too, in any order, and whatever the number of threads. */
static void
test_repeats_here (Place *place, gconstpointer unused)
{
  static const SqPlotFormat order[] = { SQ_PLOT_SVG, SQ_PLOT_PDF, SQ_PLOT_PNG, SQ_PLOT_PDF,
                                        SQ_PLOT_SVG, SQ_PLOT_SVG, SQ_PLOT_PNG };
  static const char *const endings[] = { "pdf", "svg", "png" };
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  SqPlotRequest request = SQ_PLOT_REQUEST;
  g_autoptr (SqPlot) one = sq_plot_new (scene, &request, 1, NULL, NULL);
  g_autoptr (SqPlot) other = sq_plot_new (scene, &request, 3, NULL, NULL);
  gboolean made[G_N_ELEMENTS (endings)] = { FALSE };
  for (guint k = 0; k < G_N_ELEMENTS (order); k++) {
    const char *ending = endings[order[k]];
    g_autofree char *first_name = g_strconcat ("first.", ending, NULL);
    g_autofree char *again_name = g_strconcat ("again.", ending, NULL);
    g_autofree char *first = in_place (place, first_name), *again = in_place (place, again_name);
    if (!made[order[k]]) {
      export_to (one, first, order[k]);
      made[order[k]] = TRUE;
      continue;
    }
    export_to (one, again, order[k]);
    assert_same_files (first, again);
    export_to (other, again, order[k]);
    assert_same_files (first, again);
  }
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
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
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
  if (argc == 3 && g_str_equal (argv[1], "--export")) {
    export_all (argv[2]);
    return 0;
  }
  self = argv[0];
  g_test_init (&argc, &argv, NULL);
  ADD_IN_PLACE ("/plot file/two processes give the same bytes", test_repeats);
  ADD_IN_PLACE ("/plot file/one process gives the same bytes again", test_repeats_here);
  ADD_IN_PLACE ("/plot file/SVG is well formed and in millimetres", test_svg);
  ADD_IN_PLACE ("/plot file/PNG knows its size on paper", test_png);
  g_test_add_func ("/plot file/a folder that is not there", test_unwritable);
  return g_test_run ();
}
