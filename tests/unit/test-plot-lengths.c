/* test-plot-lengths.c: lengths on paper, in PDF and SVG, in both systems of units */
#include "plot-place.h"
#include "svg-elements.h"

/* A length on paper is right to a tenth of a millimetre. */
#define PAPER_MM 0.1
/* As a file writes it, to three decimals. */
#define FILE_MM 0.001

#define MEASURED_DPI 1016 /* 40 pixels to the millimetre */
#define PIXELS_PER_MM (MEASURED_DPI / 25.4)

typedef struct {
  double left_mm, right_mm, top_mm, bottom_mm;
} Extent;

/* Of all that is drawn of the set, by the points of its paths: straight lines alone. */
static Extent
set_extent (const GPtrArray *elements)
{
  Extent extent = { G_MAXDOUBLE, -G_MAXDOUBLE, G_MAXDOUBLE, -G_MAXDOUBLE };
  for (guint k = 0; k < elements->len; k++) {
    const Element *element = g_ptr_array_index (elements, k);
    if (!g_str_equal (element->name, "path") || g_strcmp0 (element->layer, "set") != 0)
      continue;
    const char *at = attribute_of (element, "d");
    while (*(at += strspn (at, "MLZ")) != '\0') {
      char *end;
      double x_mm = g_ascii_strtod (at, &end), y_mm = g_ascii_strtod (end, (char **)&at);
      g_assert_true (at > end);
      extent.left_mm = MIN (extent.left_mm, x_mm);
      extent.right_mm = MAX (extent.right_mm, x_mm);
      extent.top_mm = MIN (extent.top_mm, y_mm);
      extent.bottom_mm = MAX (extent.bottom_mm, y_mm);
    }
  }
  return extent;
}

/* The middle of the ink that crosses a row of pixels near @near_mm, as @pdf is printed. */
static double
ink_mm (const char *pdf, double near_mm, double row_mm)
{
  const int around_px = (int)(2.0 * PIXELS_PER_MM), black = 100; /* walls are filled light grey */
  int first = (int)(near_mm * PIXELS_PER_MM) - around_px;
  g_autofree char *dpi = g_strdup_printf ("%d", MEASURED_DPI);
  g_autofree char *x = g_strdup_printf ("%d", first);
  g_autofree char *y = g_strdup_printf ("%d", (int)(row_mm * PIXELS_PER_MM));
  g_autofree char *width = g_strdup_printf ("%d", 2 * around_px);
  const char *const command[] = { "pdftoppm", "-gray", "-r", dpi,  "-f",  "1",  "-l", "1", "-x",
                                  x,          "-y",    y,    "-W", width, "-H", "1",  pdf, NULL };
  g_autofree char *picture = output_of_command (command, NULL);
  int columns, rows, most, header, sum = 0, n = 0;
  g_assert_cmpint (sscanf (picture, "P5 %d %d %d%n", &columns, &rows, &most, &header), ==, 3);
  g_assert_cmpint (columns, ==, 2 * around_px);
  const guint8 *pixel = (const guint8 *)picture + header + 1;
  for (int k = 0; k < columns; k++)
    if (pixel[k] <= black) {
      sum += k;
      n++;
    }
  g_assert_cmpint (n, >, 0);
  return (first + (double)sum / n + 0.5) / PIXELS_PER_MM;
}

/* A length in the set over the denominator: 5.20 m at 1:25 are 208 mm; at 1/4" = 1'-0", 1:48, each
 * foot is a quarter of an inch, 6.35 mm. */
static void
test_wall (Place *place, gconstpointer unused)
{
  static const struct {
    const char *units, *length_m, *thickness_m, *sheet;
    double denominator, length_mm, thickness_mm;
  } rows[] = {
    { "metric", "5.2", "0.3", "A3", 25, 208.0, 12.0 },
    { "metric", "10", "0.15", "A3", 50, 200.0, 3.0 },
    { "metric", "24", "0.4", "A4", 100, 240.0, 4.0 },
    { "imperial", "4.8768", "0.1524", "tabloid", 48, 16 * 6.35, 6.35 / 2 }, /* 16', 6" */
    { "imperial", "5.4864", "0.3048", "tabloid", 24, 18 * 12.7, 12.7 },     /* 18', 1' */
    { "imperial", "5.2", "0.3", "A3", 25, 208.0, 12.0 },
    { "metric", "4.8768", "0.1524", "tabloid", 48, 16 * 6.35, 6.35 / 2 },
  };
  g_autofree char *svg = in_place (place, "wall.svg"), *pdf = in_place (place, "wall.pdf");
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SqScene) scene =
      scene_of ("'units': '%s', 'room': {'bounce': false}, 'walls': [{'id': 'w',"
                " 'path': [[0, 0], [%s, 0]], 'thickness': %s, 'height': 3}]",
                rows[k].units, rows[k].length_m, rows[k].thickness_m);
    g_autoptr (SqPlot) plot = plot_of (scene, rows[k].sheet, rows[k].denominator, SQ_OVERLAY_NONE);
    g_autofree char *text = NULL;
    gsize length;
    export_to (plot, svg, SQ_PLOT_SVG);
    export_to (plot, pdf, SQ_PLOT_PDF);
    if (sq_plot_n_pages (plot) > 1) {
      g_autofree char *first = in_place (place, "wall-1.svg");
      g_assert_true (g_file_get_contents (first, &text, &length, NULL));
    } else {
      g_assert_true (g_file_get_contents (svg, &text, &length, NULL));
    }
    g_autoptr (GPtrArray) elements = elements_of (text, length);
    Extent extent = set_extent (elements);
    double long_mm = extent.right_mm - extent.left_mm;
    double thick_mm = extent.bottom_mm - extent.top_mm;
    g_test_message ("%s m at 1:%g: %.3f by %.3f mm", rows[k].length_m, rows[k].denominator, long_mm,
                    thick_mm);
    g_assert_cmpfloat_with_epsilon (long_mm, rows[k].length_mm, PAPER_MM);
    g_assert_cmpfloat_with_epsilon (thick_mm, rows[k].thickness_mm, PAPER_MM);

    double middle_mm = (extent.top_mm + extent.bottom_mm) / 2;
    double left_mm = ink_mm (pdf, extent.left_mm, middle_mm);
    double right_mm = ink_mm (pdf, extent.right_mm, middle_mm);
    g_test_message ("printed %.3f mm", right_mm - left_mm);
    g_assert_cmpfloat_with_epsilon (right_mm - left_mm, rows[k].length_mm, PAPER_MM);
    g_assert_cmpfloat_with_epsilon (left_mm, extent.left_mm, PAPER_MM);
  }
}

/* ISO 216: A3 is 420 × 297 mm; tabloid is 17 × 11 inches; a point is 1/72 of an inch. */
static void
test_sheet (Place *place, gconstpointer unused)
{
  static const struct {
    const char *units, *sheet;
    double width_mm, height_mm;
  } rows[] = { { "metric", "A3", 420, 297 },
               { "metric", "A4", 297, 210 },
               { "imperial", "tabloid", 17 * 25.4, 11 * 25.4 },
               { "imperial", "arch-c", 24 * 25.4, 18 * 25.4 } };
  const double points = 0.01;
  g_autofree char *svg = in_place (place, "sheet.svg"), *pdf = in_place (place, "sheet.pdf");
  g_autofree char *first = in_place (place, "sheet-1.svg");
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SqScene) scene = scene_of ("'units': '%s', " WALL, rows[k].units);
    g_autoptr (SqPlot) plot = plot_of (scene, rows[k].sheet, 100, SQ_OVERLAY_NONE);
    g_autofree char *text = NULL;
    gsize length;
    double width, height;
    export_to (plot, svg, SQ_PLOT_SVG);
    export_to (plot, pdf, SQ_PLOT_PDF);
    g_assert_true (
      g_file_get_contents (sq_plot_n_pages (plot) > 1 ? first : svg, &text, &length, NULL));
    g_autoptr (GPtrArray) elements = elements_of (text, length);
    const Element *root = nth_element (elements, "svg", 0);
    g_assert_true (g_str_has_suffix (attribute_of (root, "width"), "mm"));
    g_assert_true (g_str_has_suffix (attribute_of (root, "height"), "mm"));
    g_assert_cmpfloat_with_epsilon (number_of (root, "width"), rows[k].width_mm, FILE_MM);
    g_assert_cmpfloat_with_epsilon (number_of (root, "height"), rows[k].height_mm, FILE_MM);
    g_assert_cmpint (sscanf (attribute_of (root, "viewBox"), "0 0 %lf %lf", &width, &height), ==,
                     2);
    g_assert_cmpfloat_with_epsilon (width, rows[k].width_mm, FILE_MM);
    g_assert_cmpfloat_with_epsilon (height, rows[k].height_mm, FILE_MM);

    g_autofree char *info = output_of ("pdfinfo", pdf, NULL, NULL, NULL, NULL);
    const char *size = strstr (info, "Page size:");
    g_assert_nonnull (size);
    g_assert_cmpint (sscanf (size, "Page size: %lf x %lf pts", &width, &height), ==, 2);
    g_assert_cmpfloat_with_epsilon (width, rows[k].width_mm / 25.4 * 72, points);
    g_assert_cmpfloat_with_epsilon (height, rows[k].height_mm / 25.4 * 72, points);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD_IN_PLACE ("/plot length/a wall is as long as its scale says", test_wall);
  ADD_IN_PLACE ("/plot length/the sheet is as large as its name says", test_sheet);
  return g_test_run ();
}
