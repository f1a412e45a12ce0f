/* test-plot-pictures.c: what other programs make of SVG and PDF is one picture */
#include "plot-place.h"

#include <cairo.h>

/* Two programs smooth edges each in its own way, and one of them moves thin lines to whole pixels:
 * what is compared are squares of half a millimetre, of four pixels each way. */
#define DRAWN_DPI "200"
#define BLOCK 4

/* Mean brightness, 0 … 1, of the block of pixels at @column and @row. */
static double
block_mean (cairo_surface_t *image, int column, int row)
{
  const guint8 *bytes = cairo_image_surface_get_data (image);
  int stride = cairo_image_surface_get_stride (image), sum = 0;
  for (int y = row * BLOCK; y < (row + 1) * BLOCK; y++)
    for (int x = column * BLOCK; x < (column + 1) * BLOCK; x++)
      for (int channel = 0; channel < 3; channel++)
        sum += bytes[(gsize)y * (gsize)stride + (gsize)x * 4 + (gsize)channel];
  return sum / (255.0 * 3 * BLOCK * BLOCK);
}

/* Opens a picture whose pixels are four bytes, the last of them no colour. */
static cairo_surface_t *
open_picture (const char *path)
{
  cairo_surface_t *image = cairo_image_surface_create_from_png (path);
  g_assert_cmpint (cairo_surface_status (image), ==, CAIRO_STATUS_SUCCESS);
  cairo_format_t format = cairo_image_surface_get_format (image);
  g_assert_true (format == CAIRO_FORMAT_RGB24 || format == CAIRO_FORMAT_ARGB32);
  cairo_surface_flush (image);
  return image;
}

/* How far two pictures are apart, of all from black to white: on the mean of all blocks; and how
 * much more ink one has in the worst square of 20 blocks (10 mm), wherever in there it lies. */
static void
compare_pictures (const char *one, const char *other, double *mean, double *worst)
{
  const int tile = 20;
  cairo_surface_t *a = open_picture (one), *b = open_picture (other);
  int columns = cairo_image_surface_get_width (a) / BLOCK;
  int rows = cairo_image_surface_get_height (a) / BLOCK;
  g_assert_cmpint (cairo_image_surface_get_width (b), ==, cairo_image_surface_get_width (a));
  g_assert_cmpint (cairo_image_surface_get_height (b), ==, cairo_image_surface_get_height (a));
  int across = (columns + tile - 1) / tile, down = (rows + tile - 1) / tile;
  g_autofree double *tiles = g_new0 (double, across *down);
  *mean = *worst = 0.0;
  for (int row = 0; row < rows; row++)
    for (int column = 0; column < columns; column++) {
      double apart = block_mean (a, column, row) - block_mean (b, column, row);
      *mean += fabs (apart) / ((double)columns * rows);
      tiles[row / tile * across + column / tile] += apart / (tile * tile);
    }
  for (int k = 0; k < across * down; k++)
    *worst = MAX (*worst, fabs (tiles[k]));
  cairo_surface_destroy (a);
  cairo_surface_destroy (b);
}

/* Compares page @page, from 0, of the files that were made of @plot. */
static void
compare_page (const Place *place, const char *svg, const char *pdf, int page)
{
  const double most_mean = 0.01;
  const double most_in_a_tile = 0.03; /* one word of a tag that is missing is more */
  g_autofree char *from_svg = in_place (place, "svg.png"), *from_pdf = in_place (place, "pdf.png");
  g_autofree char *stem = in_place (place, "pdf"), *number = g_strdup_printf ("%d", page + 1);
  const char *const convert[] = { "rsvg-convert", "-d",     DRAWN_DPI, "-p", DRAWN_DPI,
                                  "-o",           from_svg, svg,       NULL };
  const char *const raster[] = { "pdftoppm", "-r",   DRAWN_DPI,     "-png", "-f", number,
                                 "-l",       number, "-singlefile", pdf,    stem, NULL };
  run_command (convert);
  run_command (raster);
  double mean, worst;
  compare_pictures (from_svg, from_pdf, &mean, &worst);
  g_test_message ("%s: apart by %.4f, in the worst tile by %.4f", svg, mean, worst);
  g_assert_cmpfloat (mean, <, most_mean);
  g_assert_cmpfloat (worst, <, most_in_a_tile);
}

static void
compare_pages (const Place *place, const SqPlot *plot)
{
  g_autofree char *svg = in_place (place, "plot.svg"), *pdf = in_place (place, "plot.pdf");
  int n_pages = sq_plot_n_pages (plot);
  export_to (plot, svg, SQ_PLOT_SVG);
  export_to (plot, pdf, SQ_PLOT_PDF);
  for (int page = 0; page < n_pages; page++) {
    g_autofree char *name = g_strdup_printf ("plot-%d.svg", page + 1);
    g_autofree char *of_page = in_place (place, name);
    compare_page (place, n_pages > 1 ? of_page : svg, pdf, page);
  }
}

static void
test_overlays (Place *place, gconstpointer unused)
{
  static const struct {
    int overlay;
    gboolean mono;
  } rows[] = { { SQ_OVERLAY_LUX, FALSE }, { SQ_OVERLAY_STOPS, TRUE }, { SQ_OVERLAY_NONE, FALSE } };
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    SqPlotRequest request = SQ_PLOT_REQUEST;
    request.sheet = "A3";
    request.overlay = rows[k].overlay;
    request.mono = rows[k].mono;
    g_autoptr (SqPlot) plot = sq_plot_new (scene, &request, 1, NULL, NULL);
    compare_pages (place, plot);
  }
}

/* Shadows are drawn where no overlay shows them. */
static void
test_shadows (Place *place, gconstpointer unused)
{
  g_autofree char *svg = in_place (place, "plot.svg"), *text = NULL;
  g_autoptr (SqScene) scene =
    scene_of ("'room': {'bounce': false},"
              "'marks': [{'id': 'm', 'label': 'A', 'at': [3, 2], 'shadow_pinned': true}],"
              "'fixtures': [{'id': 'f', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 3],"
              " 'aim': 'm', 'role': 'key'}]");
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 25, SQ_OVERLAY_NONE);
  compare_pages (place, plot);
  g_assert_true (g_file_get_contents (svg, &text, NULL, NULL));
  g_assert_nonnull (strstr (text, "<g id=\"shadows\">"));
  g_assert_nonnull (strstr (text, "fill=\"url(#fade-1)\""));
}

static void
test_samples (Place *place, gconstpointer unused)
{
  g_autofree char *folder = g_build_filename (SQ_SOURCE_DIR, "samples", NULL);
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;
  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL), *text = NULL;
    g_autoptr (GError) error = NULL;
    SqPlotRequest request;
    gsize length;
    if (!g_str_has_suffix (name, ".squarelaw"))
      continue;
    g_assert_true (g_file_get_contents (path, &text, &length, &error));
    g_autoptr (SqScene) scene = sq_scene_parse (text, length, library, NULL, &error);
    g_assert_no_error (error);
    sq_plot_request_of (scene, &request, &error);
    g_assert_no_error (error);
    g_autoptr (SqPlot) plot = sq_plot_new (scene, &request, 2, NULL, &error);
    g_assert_no_error (error);
    g_test_message ("%s", name);
    compare_pages (place, plot);
    n++;
  }
  g_assert_cmpuint (n, >, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD_IN_PLACE ("/plot picture/any overlay, and one ink", test_overlays);
  ADD_IN_PLACE ("/plot picture/shadows fade", test_shadows);
  ADD_IN_PLACE ("/plot picture/each sample", test_samples);
  return g_test_run ();
}
