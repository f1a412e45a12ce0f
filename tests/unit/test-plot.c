/* test-plot.c: printed plans are true to scale, say what they must, and say what is wrong */
#include "plot-place.h"

#include "base/error.h"

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
  const int black = 100;           /* darker: ink; walls are filled with a light grey */
  g_autoptr (SqScene) scene = scene_of ("%s", WALL);
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SqPlot) plot = plot_of (scene, rows[k].sheet, rows[k].denominator, SQ_OVERLAY_NONE);
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
    sq_sheet_lay_out (sq_plot_sheet (plot), FALSE, SQ_SHEET_BESIDE, &layout);
    int row = (int)(10.0 * (layout.field.y_mm + layout.field.height_mm / 2.0));
    double left_px = 10.0 * (layout.field.x_mm + layout.field.width_mm / 2.0);
    const guint8 *line = pixel + (gsize)row * (gsize)columns;
    double runs[2] = { NAN, NAN };
    for (int side = 0; side < 2; side++) {
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
    "Salt and Iron",
    "Net loft, night",
    "2026-03-09",
    "O. Brandt",
    "1:50",
    "A3",
    "17",
    "23",
    "KEY",
    "FILL",
    "Figures",
    "Legend",
    "T4",
    "340 dome",
    "250 flat",
    "(key + fill) : fill",
    "Caution",
    "licensed person",
    "Nets stay up.",
    "Revisions",
    "issued",
    "1 / 1",
    "The bar is 100 mm long",
    "On the day",
    "Light, lux",
    "256",
  };
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 50, SQ_OVERLAY_LUX);
  g_autofree char *path = in_place (place, "whole.pdf");
  export_to (plot, path, SQ_PLOT_PDF);
  g_autofree char *text = text_of (path);
  for (guint k = 0; k < G_N_ELEMENTS (words); k++)
    if (!says (text, words[k]))
      g_error ("%s is not on the page", words[k]);

  g_autofree char *info = output_of ("pdfinfo", path, NULL, NULL, NULL, NULL);
  g_assert_nonnull (strstr (info, "Salt and Iron: Net loft, night"));
  g_assert_nonnull (strstr (info, "O. Brandt"));
  g_assert_nonnull (strstr (info, "Squarelaw"));
  g_assert_nonnull (strstr (info, "1190.55 x 841.89 pts (A3)"));
  g_autofree char *bytes = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  /* Both dates are the title's, else the clock would get into the file. */
  g_assert_true (holds (bytes, length, "/CreationDate (20260309000000Z)"));
  g_assert_true (holds (bytes, length, "/ModDate (20260309000000Z)"));
}

/* A4 has no side column: figures, legend and notes follow on a page of their own. */
static void
test_pages (Place *place, gconstpointer unused)
{
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 0, SQ_OVERLAY_LUX);
  g_assert_cmpint (sq_plot_n_pages (plot), ==, 2);
  g_autofree char *path = in_place (place, "plot.v2.png");
  g_autofree char *one = in_place (place, "plot.v2-1.png"),
                  *two = in_place (place, "plot.v2-2.png");
  export_to (plot, path, SQ_PLOT_PNG);
  g_assert_false (g_file_test (path, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_test (one, G_FILE_TEST_EXISTS));
  g_assert_true (g_file_test (two, G_FILE_TEST_EXISTS));

  g_autoptr (GError) error = NULL;
  g_assert_false (sq_plot_export (plot, "-", SQ_PLOT_SVG, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_USAGE);
  g_assert_cmpstr (error->message, ==,
                   "-: 2 pages do not go into one SVG, expected a file name or PDF");

  g_autofree char *pdf = in_place (place, "plot.pdf");
  export_to (plot, pdf, SQ_PLOT_PDF);
  g_autofree char *text = text_of (pdf);
  const char *second = strchr (text, '\f');
  g_assert_nonnull (second);
  g_assert_nonnull (strstr (second, "Figures"));
  g_assert_nonnull (strstr (second, "Caution"));
  g_assert_true (says (second, "2 / 2"));
  g_assert_null (g_strstr_len (text, second - text, "Mains"));
  g_assert_true (says (text, "Cautions, figures and legend: sheet 2."));
}

/* Notes and revisions run on overleaf, and the sheet says so; cautions do not. */
static void
test_runs_on (Place *place, gconstpointer unused)
{
  g_autoptr (GString) notes = g_string_new (NULL);
  for (int k = 0; k < 60; k++)
    g_string_append_printf (notes, "%s{'id': 'n%d', 'text': 'Note %d.', 'at': [1, 1]}",
                            k > 0 ? "," : "", k, k + 1);
  g_autoptr (SqScene) scene =
    scene_of ("'title': {'revisions': [{'number': 'A', 'date': '2026-09-14', 'what': 'issued'}]},"
              "'marks': [{'id': 'm', 'label': 'A', 'at': [4, 3]}],"
              "'fixtures': [{'id': 'f1', 'number': '17', 'class': 'discharge-fresnel-1200',"
              " 'at': [1, 1, 2.4], 'aim': 'm', 'mount': 'pipe'}], 'notes': [%s]",
              notes->str);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 50, SQ_OVERLAY_LUX);
  g_assert_cmpint (sq_plot_n_pages (plot), ==, 2);
  g_autofree char *pdf = in_place (place, "plot.pdf");
  export_to (plot, pdf, SQ_PLOT_PDF);
  g_autofree char *text = text_of (pdf);
  char *second = strchr (text, '\f');
  g_assert_nonnull (second);
  *second++ = '\0';
  g_assert_true (says (text, "Mains and distribution"));
  g_assert_true (says (text, "Unit 17 discharge"));
  g_assert_true (says (text, "continued on sheet 2"));
  g_assert_true (says (text, "Note 1."));
  g_assert_true (says (second, "Notes, continued"));
  g_assert_true (says (second, "Note 60."));
  g_assert_true (says (second, "2026-09-14"));
  g_assert_false (says (second, "Mains"));
  g_assert_false (says (second, "continued on sheet"));
}

/* A legend that fills a whole column does not push the cautions off the first sheet. */
static void
test_cautions_stay (Place *place, gconstpointer unused)
{
  g_autoptr (GString) marks = g_string_new (NULL);
  for (int k = 0; k < 120; k++)
    g_string_append_printf (marks, "%s{'id': 'm%d', 'label': 'P%d', 'at': [%d, %d]}",
                            k > 0 ? "," : "", k, k, k % 12, k / 12);
  g_autoptr (SqScene) scene =
    scene_of ("'marks': [%s], 'fixtures': [{'id': 'f1', 'number': '17', 'class': 'open-face-800',"
              " 'at': [1, 1, 2.4], 'aim': 'm1'}]",
              marks->str);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 50, SQ_OVERLAY_NONE);
  g_assert_cmpint (sq_plot_n_pages (plot), >, 1);
  g_autofree char *pdf = in_place (place, "plot.pdf");
  export_to (plot, pdf, SQ_PLOT_PDF);
  g_autofree char *text = text_of (pdf);
  char *second = strchr (text, '\f');
  g_assert_nonnull (second);
  *second++ = '\0';
  g_assert_true (says (text, "Mains and distribution"));
  g_assert_false (says (second, "Mains and distribution"));
  g_assert_true (says (second, "Figures, continued"));
  g_assert_true (says (second, "Legend"));
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
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SqScene) scene = scene_of ("%s", rows[k].scene);
    g_autoptr (SqPlot) plot = plot_of (scene, "A3", 0, SQ_OVERLAY_LUX);
    g_autofree char *path = in_place (place, "empty.pdf");
    export_to (plot, path, SQ_PLOT_PDF);
    g_autofree char *text = text_of (path);
    g_assert_true (says (text, rows[k].says));
    g_assert_nonnull (strstr (text, "Caution"));
    g_assert_nonnull (strstr (text, "Mains"));
  }
}

/* Nothing is printed within 4 mm of the edge of any page. At 25.4 dpi a pixel is a millimetre. */
static void
assert_clean_margin (const SqPlot *plot, const Place *place)
{
  for (int page = 0; page < sq_plot_n_pages (plot); page++) {
    double width_mm, height_mm;
    sq_plot_page_size_mm (plot, page, &width_mm, &height_mm);
    int columns = (int)round (width_mm), rows = (int)round (height_mm);
    cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_A8, columns, rows);
    cairo_t *cairo = cairo_create (image);
    sq_plot_draw (plot, cairo, page);
    cairo_destroy (cairo);
    cairo_surface_flush (image);
    const guint8 *pixel = cairo_image_surface_get_data (image);
    int stride = cairo_image_surface_get_stride (image);
    for (int y = 0; y < rows; y++)
      for (int x = 0; x < columns; x++)
        if (x < 4 || y < 4 || x >= columns - 4 || y >= rows - 4)
          g_assert_cmpint (pixel[y * stride + x], ==, 0);
    cairo_surface_destroy (image);
  }
}

/* Words without end are cut where they would leave their place; nothing breaks. */
static void
test_long_words (Place *place, gconstpointer unused)
{
  g_autofree char *letters = g_strnfill (10000, 'w');
  g_autoptr (GString) notes = g_string_new (NULL);
  for (int k = 0; k < 1010; k++)
    g_string_append_printf (notes, "%s{'id': 'n%d', 'text': 'Note %d.', 'at': [1, 1]}",
                            k > 0 ? "," : "", k, k + 1);
  g_autoptr (SqScene) scene = scene_of (
    "'title': {'production': '%s', 'title': '%s', 'director': '%s', 'date': '%s',"
    " 'revisions': [{'number': '%s', 'date': '%s', 'what': '%s'}]},"
    "'marks': [{'id': 'm', 'label': 'A', 'at': [0, 0]}, {'id': 'q', 'label': '%s', "
    "'at': [3, 3]}],"
    "'notes': [{'id': 'x', 'text': '%s', 'at': [0, 0]}, %s]",
    letters, letters, letters, "9 March", letters, letters, letters, letters, letters, notes->str);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 0, SQ_OVERLAY_NONE);
  g_assert_cmpint (sq_plot_n_pages (plot), >, 1);
  g_autofree char *path = in_place (place, "long.pdf");
  export_to (plot, path, SQ_PLOT_PDF);
  g_autofree char *text = text_of (path);
  if (text != NULL) {
    /* The first thousand came to a page, and the rest is owned up to. */
    g_assert_true (says (text, "Note 999."));
    g_assert_false (says (text, "Note 1000."));
    g_assert_true (says (text, "and 11 more in the scene file"));
  }
  assert_clean_margin (plot, place);
  g_autofree char *bytes = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_true (holds (bytes, length, "/CreationDate (20000101000000Z)")); /* 9 March is no date */
}

#define NB "\xc2\xa0" /* no-break space, which stands before units */

static void
test_refused (void)
{
  static const struct {
    const char *sheet;
    double denominator, dpi;
    int overlay;
    const char *message;
  } rows[] = {
    /* 8 m at 1:1 with 5 mm each side for words: 8010 mm in windows of 390 that overlap by 30, 23 of
     * them; 1010 high in windows of 241, 5. Upright, 267 × 353, it would be 34 × 4. */
    { "A3", 1, 150, SQ_OVERLAY_NONE,
      "scale: the plan is 8.00" NB "m × 1.00" NB "m, A3 at 1:1 would take 115 sheets and 64 are "
      "the most, expected scale 1:5" },
    { "B5", 0, 150, SQ_OVERLAY_NONE,
      "sheet: \"B5\" is no sheet, expected one of A4, A3, A2, A1, A0, letter, arch-a, tabloid, "
      "arch-b, arch-c, arch-d, arch-e" },
    { NULL, 0, 150, SQ_OVERLAY_COLOUR,
      "overlay: colour is not computed yet, expected lux, stops or none" },
    { NULL, 0, 5, SQ_OVERLAY_NONE, "dpi: 5 is outside 20 to 1200" },
    { NULL, 0, NAN, SQ_OVERLAY_NONE, "dpi: – is outside 20 to 1200" },
  };
  g_autoptr (SqScene) scene =
    scene_of ("'walls': [{'id': 'w', 'path': [[0, 0], [8, 0]], 'thickness': 0.3, 'height': 3}]");
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
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

/* Who hangs and who is held up from the floor is told apart; a generator out of sight is named. */
static void
test_cautions (Place *place, gconstpointer unused)
{
  static const char *const words[] = {
    "Units 3, 4, 6 overhead: a safety bond",
    "Units 1, 2, 5 on lifts, booms or tall stands",
    "Generator: earth it",
    "Supplies off the plan",
    "Big set, 160 A 3~; feeds Box 1, 8. Behind the chapel.",
  };
  static const struct {
    const char *mount;
    double height_m;
  } lamps[] = { { "lift", 6 },  { "boom", 3 }, { "pipe", 4 }, { "ceiling", 3 },
                { "stand", 4 }, { "wall", 3 }, { "wall", 1 }, { "stand", 2 } };
  g_autoptr (GString) fixtures = g_string_new (NULL);
  for (guint k = 0; k < G_N_ELEMENTS (lamps); k++)
    g_string_append_printf (fixtures,
                            "%s{'id': 'f%u', 'number': '%u', 'class': 'open-face-800',"
                            " 'at': [%u, 1, %.0f], 'mount': '%s'%s}",
                            k > 0 ? "," : "", k + 1, k + 1, k, lamps[k].height_m, lamps[k].mount,
                            k == 7 ? ", 'supply': 'gen'" : "");
  g_autoptr (SqScene) scene = scene_of (
    "'fixtures': [%s], 'supplies': [{'id': 'gen', 'label': 'Big set', 'kind': 'generator', "
    "'system': 'three', 'rating_a': 160, 'note': 'Behind the chapel.'},"
    "{'id': 'box', 'label': 'Box 1', 'kind': 'distribution', 'at': [2, 2], 'fed_from': 'gen'}]",
    fixtures->str);
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 0, SQ_OVERLAY_NONE);
  g_autofree char *pdf = in_place (place, "plot.pdf");
  export_to (plot, pdf, SQ_PLOT_PDF);
  g_autofree char *text = text_of (pdf);
  for (guint k = 0; text != NULL && k < G_N_ELEMENTS (words); k++)
    if (!says (text, words[k]))
      g_error ("%s is not on the page", words[k]);
}

/* Scripts that run from right to left, scripts whose letters no font may have: nothing breaks, and
 * nothing leaves its place. */
static void
test_scripts (Place *place, gconstpointer unused)
{
  static const char *const words[] = {
    "מחסן הרשתות, לילה 3", "الملح والحديد",      "網の倉庫・夜", "摄影指导", "👍 Ж Δ",
    "\u202e turned",       "a\u0301\u0301\u0301"
  };
  for (guint k = 0; k < G_N_ELEMENTS (words); k++) {
    const char *w = words[k];
    g_autoptr (GString) note = g_string_new (NULL);
    for (int n = 0; n < 12; n++)
      g_string_append_printf (note, "%s ", w);
    g_autoptr (SqScene) scene = scene_of (
      "'title': {'production': '%s', 'title': '%s', 'scene': '%s', 'set': '%s', 'dp': '%s',"
      " 'location': '%s', 'revisions': [{'number': '%s', 'date': '%s', 'what': '%s'}]},"
      "'walls': [{'id': 'w', 'path': [[0, 0], [8, 0], [8, 6], [0, 6]], 'closed': true,"
      " 'height': 3, 'thickness': 0.1}],"
      "'marks': [{'id': 'm', 'label': '%s', 'at': [4, 3]}],"
      "'fixtures': [{'id': 'f1', 'number': '%s', 'class': 'open-face-800', 'at': [1, 1, 2.4],"
      " 'aim': 'm'}],"
      "'pieces': [{'id': 'p', 'outline': [[2, 4], [4, 4], [4, 5], [2, 5]], 'base': 0, 'top': 0.7,"
      " 'label': '%s'}],"
      "'notes': [{'id': 'n', 'text': '%s', 'at': [2, 2]}]",
      w, w, w, w, w, w, w, w, note->str, w, w, w, note->str);
    g_autoptr (SqPlot) plot = plot_of (scene, k % 2 == 0 ? "A3" : "A4", 0, SQ_OVERLAY_NONE);
    assert_clean_margin (plot, place);
    g_autofree char *pdf = in_place (place, "scripts.pdf");
    export_to (plot, pdf, SQ_PLOT_PDF);
    g_autofree char *text = text_of (pdf);
    if (text != NULL)
      g_assert_true (says (text, "Revisions"));
  }
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

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD_IN_PLACE ("/plot/a wall of 8 m is 160 mm at 1:50", test_true_scale);
  ADD_IN_PLACE ("/plot/the page says what it must", test_says);
  ADD_IN_PLACE ("/plot/small sheets go on to a second page", test_pages);
  ADD_IN_PLACE ("/plot/notes run on overleaf", test_runs_on);
  ADD_IN_PLACE ("/plot/cautions stay on the first sheet", test_cautions_stay);
  ADD_IN_PLACE ("/plot/what lacks something says so", test_empty);
  ADD_IN_PLACE ("/plot/words without end", test_long_words);
  ADD_IN_PLACE ("/plot/scripts of the world", test_scripts);
  ADD_IN_PLACE ("/plot/cautions say what hangs and what stands", test_cautions);
  g_test_add_func ("/plot/refused in one line", test_refused);
  g_test_add_func ("/plot/cancelled", test_cancelled);
  return g_test_run ();
}
