/* test-tiles.c: a plan on several sheets: nothing is lost at the joints, lengths and words stay
 * whole */
#include "draw/plan-parts.h"
#include "paper/plan-pages.h"
#include "plot-place.h"

#include "base/error.h"

#define ROUNDING_MM 1e-9
#define PAPER_MM 0.1

/* Windows cover the paper; what belongs to each covers it once; neighbours share 30 mm. */
static void
test_geometry (void)
{
  static const SqTiling rows[] = {
    { 1, 1, 306, 241 }, { 2, 1, 390, 241 }, { 1, 3, 267, 353 },
    { 4, 3, 267, 169 }, { 8, 8, 390, 241 },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    const SqTiling *tiling = &rows[k];
    SqPaperBox whole = sq_tiling_whole (tiling);
    double own_mm2 = 0.0;
    guint n = sq_tiling_count (tiling);
    for (guint a = 0; a < n; a++) {
      SqPaperBox window = sq_tiling_window (tiling, a), own = sq_tiling_own (tiling, a);
      g_assert_true (sq_paper_box_within (window, sq_paper_box_grown (whole, ROUNDING_MM)));
      g_assert_true (sq_paper_box_within (own, sq_paper_box_grown (window, ROUNDING_MM)));
      g_assert_cmpfloat (window.width_mm, ==, tiling->width_mm);
      own_mm2 += own.width_mm * own.height_mm;
      for (guint b = 0; b < a; b++)
        g_assert_cmpfloat (sq_paper_overlap_mm2 (own, sq_tiling_own (tiling, b)), <, 1e-6);
      int right = sq_tiling_neighbour (tiling, a, 1, 0);
      if (right >= 0) {
        SqPaperBox next = sq_tiling_window (tiling, (guint)right);
        g_assert_cmpfloat_with_epsilon (window.x_mm + window.width_mm - next.x_mm, 30.0,
                                        ROUNDING_MM);
        g_assert_cmpint (sq_tiling_neighbour (tiling, (guint)right, -1, 0), ==, (int)a);
      }
      int down = sq_tiling_neighbour (tiling, a, 0, 1);
      if (down >= 0) {
        SqPaperBox next = sq_tiling_window (tiling, (guint)down);
        g_assert_cmpfloat_with_epsilon (window.y_mm + window.height_mm - next.y_mm, 30.0,
                                        ROUNDING_MM);
        g_assert_cmpint (sq_tiling_neighbour (tiling, (guint)down, 0, -1), ==, (int)a);
      }
    }
    g_assert_cmpfloat_with_epsilon (own_mm2, whole.width_mm * whole.height_mm, 1e-3);
    g_autoptr (GArray) lines = sq_tiling_match_lines (tiling);
    g_assert_cmpuint (lines->len, ==, tiling->columns + tiling->rows - 2);
  }
}

static const SqPlanPages *
plan_of (const SqPlot *plot)
{
  return sq_plot_page (plot, 0)->data;
}

/* A page at ten pixels a millimetre. */
static cairo_surface_t *
picture_of (const SqPlot *plot, int page)
{
  const double px_per_mm = 10.0;
  double width_mm, height_mm;
  sq_plot_page_size_mm (plot, page, &width_mm, &height_mm);
  cairo_surface_t *image = cairo_image_surface_create (
    CAIRO_FORMAT_RGB24, (int)(width_mm * px_per_mm), (int)(height_mm * px_per_mm));
  cairo_t *cairo = cairo_create (image);
  cairo_set_source_rgb (cairo, 1.0, 1.0, 1.0);
  cairo_paint (cairo);
  cairo_scale (cairo, px_per_mm, px_per_mm);
  sq_plot_draw (plot, cairo, page);
  cairo_destroy (cairo);
  cairo_surface_flush (image);
  return image;
}

/* Where in the row @y_mm the first black stroke across it lies, coming from @from_mm. */
static double
stroke_mm (cairo_surface_t *image, double from_mm, double y_mm, int step)
{
  const int black = 100, px_per_mm = 10;
  const guint8 *bytes = cairo_image_surface_get_data (image);
  const guint8 *row =
    bytes + (gsize)(y_mm * px_per_mm) * (gsize)cairo_image_surface_get_stride (image);
  int columns = cairo_image_surface_get_width (image), x = (int)(from_mm * px_per_mm);
  while (x > 0 && x < columns && row[4 * x] > black)
    x += step;
  int first = x;
  while (x > 0 && x < columns && row[4 * x] <= black)
    x += step;
  return (first + x - step + 1) / 2.0 / px_per_mm;
}

/* 8 m at 1:20 are 400 mm, and A4 has 267: from the end of the wall on one sheet to the other end on
 * the other, by what one has been moved against the other. */
static void
test_scale_over_joint (void)
{
  g_autoptr (SqScene) scene = scene_of ("%s", WALL);
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 20, SQ_OVERLAY_NONE);
  const SqPlanPages *plan = plan_of (plot);
  g_assert_cmpuint (plan->tiling.columns, ==, 2);
  g_assert_cmpuint (plan->tiling.rows, ==, 1);
  double end_mm[2];
  for (int page = 0; page < 2; page++) {
    SqPaperBox field = sq_plot_page (plot, page)->layout.field;
    SqPaperBox window = sq_tiling_window (&plan->tiling, (guint)page);
    cairo_surface_t *image = picture_of (plot, page);
    /* From outside of the wall towards its end. */
    double at_mm = page == 0
                     ? stroke_mm (image, field.x_mm + 1.0, field.y_mm + field.height_mm / 2, 1)
                     : stroke_mm (image, field.x_mm + field.width_mm - 1.0,
                                  field.y_mm + field.height_mm / 2, -1);
    end_mm[page] = at_mm - field.x_mm + window.x_mm;
    cairo_surface_destroy (image);
  }
  g_assert_cmpfloat_with_epsilon (end_mm[1] - end_mm[0], 400.0, PAPER_MM);
}

/* Lamps in a row, so that some stand right at the joints. */
static SqScene *
row_of_lamps (void)
{
  g_autoptr (GString) lamps = g_string_new (NULL);
  for (int k = 0; k < 24; k++)
    g_string_append_printf (lamps,
                            "%s{'id': 'f%d', 'number': '%d', 'class': 'open-face-800',"
                            " 'at': [%.1f, %d, 2], 'aim': 'm'}",
                            k > 0 ? "," : "", k, k + 1, 0.8 * k, 2 + k % 3 * 3);
  return scene_of ("'room': {'bounce': false}, 'marks': [{'id': 'm', 'label': 'A', 'at': [9, 6]}],"
                   "'cameras': [{'id': 'c', 'label': '1', 'at': [9, 1, 1.5], 'aim': 'm'}],"
                   "'fixtures': [%s]",
                   lamps->str);
}

/* A tag stands once, whole on one sheet at least: never over a match line. */
static void
test_words_whole (void)
{
  static const struct {
    const char *sheet;
    double denominator;
    guint least_sheets;
  } rows[] = { { "A4", 50, 3 }, { "A4", 25, 8 }, { "A3", 25, 4 }, { "letter", 48, 3 } };
  g_autoptr (SqScene) scene = row_of_lamps ();
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SqPlot) plot = plot_of (scene, rows[k].sheet, rows[k].denominator, SQ_OVERLAY_NONE);
    const SqPlanPages *plan = plan_of (plot);
    g_autoptr (GArray) lines = sq_tiling_match_lines (&plan->tiling);
    guint n_tags = 0;
    g_assert_cmpuint (plan->n_sheets, >=, rows[k].least_sheets);
    for (guint n = 0; n < plan->report->labels->len; n++) {
      const SqLabel *label = &g_array_index (plan->report->labels, SqLabel, n);
      gboolean whole = FALSE;
      if (label->kind != SQ_LABEL_TAG && label->kind != SQ_LABEL_MARK)
        continue;
      n_tags += label->kind == SQ_LABEL_TAG;
      for (guint tile = 0; tile < plan->n_sheets; tile++)
        whole = whole || sq_paper_box_within (label->box, sq_tiling_window (&plan->tiling, tile));
      g_assert_true (whole);
      for (guint line = 0; line < lines->len; line++)
        g_assert_false (sq_paper_line_hits (g_array_index (lines, SqPaperLine, line), label->box));
    }
    g_assert_cmpuint (n_tags, ==, 24);
  }
}

/* Each sheet says which of how many it is, and where the plan goes on; words follow on the last. */
static void
test_says (Place *place, gconstpointer unused)
{
  g_autoptr (SqScene) scene = row_of_lamps ();
  g_autoptr (GError) error = NULL;
  SqPlotRequest request = SQ_PLOT_REQUEST;
  request.sheet = "A4";
  request.turn = SQ_TURN_LANDSCAPE; /* two by two */
  request.denominator = 50;
  request.overlay = SQ_OVERLAY_NONE;
  g_autoptr (SqPlot) plot = sq_plot_new (scene, &request, 1, NULL, &error);
  g_assert_no_error (error);
  int n = (int)plan_of (plot)->n_sheets;
  g_assert_cmpint (sq_plot_n_pages (plot), ==, n + 1);
  g_assert_cmpstr (sq_plot_page_name (plot, 1), ==, "Plan, part 2 of 4");
  g_assert_cmpint (n, ==, 4);
  g_autofree char *pdf = in_place (place, "tiles.pdf");
  export_to (plot, pdf, SQ_PLOT_PDF);
  g_autofree char *bytes = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (pdf, &bytes, &length, NULL));
  g_assert_true (holds (bytes, length, "/Title (Plan, part 2 of 4)")); /* in the outline */
  g_autofree char *text = text_of (pdf);
  g_auto (GStrv) pages = g_strsplit (text, "\f", -1);
  g_assert_true (says (pages[0], "part 1 of 4"));
  g_assert_true (says (pages[0], "1 / 5"));
  g_assert_true (says (pages[0], "sheet 2"));
  g_assert_true (says (pages[0], "sheet 3"));
  g_assert_false (says (pages[0], "sheet 4"));
  g_assert_true (says (pages[0], "Cautions, figures and legend: sheet 5."));
  g_assert_true (says (pages[3], "part 4 of 4"));
  g_assert_true (says (pages[3], "sheet 2"));
  g_assert_true (says (pages[4], "Mains"));
  g_assert_true (says (pages[4], "5 / 5"));

  const GPtrArray *remarks = sq_plot_remarks (plot);
  g_assert_cmpuint (remarks->len, ==, 1);
  const char *remark = g_ptr_array_index (remarks, 0);
  g_assert_true (g_str_has_prefix (
    remark, "plan: A4 at 1:50 takes 4 sheets, to be joined at their match lines; "));
}

/* One sheet that holds it is one sheet, and needs no remark. */
static void
test_not_needed (void)
{
  g_autoptr (SqScene) scene = row_of_lamps ();
  g_autoptr (SqPlot) plot = plot_of (scene, "A2", 50, SQ_OVERLAY_NONE);
  g_assert_cmpint (sq_plot_n_pages (plot), ==, 1);
  g_assert_cmpstr (sq_plot_page_name (plot, 0), ==, "Plan");
  g_assert_cmpuint (sq_plot_remarks (plot)->len, ==, 0);
}

/* Words that stand where they stood before stand where they would be placed anew. */
static void
test_placed_once (void)
{
  g_autoptr (SqScene) scene = row_of_lamps ();
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 50, SQ_OVERLAY_LUX);
  SqPlanReport *report = plan_of (plot)->report;
  g_assert_nonnull (report->placed);
  cairo_surface_t *kept = picture_of (plot, 1);
  g_clear_pointer (&report->placed, sq_plan_labels_free);
  cairo_surface_t *anew = picture_of (plot, 1);
  gsize length =
    (gsize)cairo_image_surface_get_stride (kept) * (gsize)cairo_image_surface_get_height (kept);
  g_assert_cmpmem (cairo_image_surface_get_data (kept), length, cairo_image_surface_get_data (anew),
                   length);
  cairo_surface_destroy (kept);
  cairo_surface_destroy (anew);
}

/* Two runs give the same bytes. */
static void
test_repeats (Place *place, gconstpointer unused)
{
  g_autoptr (SqScene) scene = row_of_lamps ();
  g_autofree char *bytes[2] = { NULL, NULL };
  gsize length[2];
  for (int k = 0; k < 2; k++) {
    g_autoptr (SqPlot) plot = plot_of (scene, "A4", 50, SQ_OVERLAY_LUX);
    g_autofree char *pdf = in_place (place, "tiles.pdf");
    export_to (plot, pdf, SQ_PLOT_PDF);
    g_assert_true (g_file_get_contents (pdf, &bytes[k], &length[k], NULL));
  }
  g_assert_cmpmem (bytes[0], length[0], bytes[1], length[1]);
  g_free (bytes[1]);
  bytes[1] = NULL;
}

/* Two rooms at opposite corners of a large lot, 24 m apart: sheets on which neither stands are left
 * out; those that are there cover all that is drawn, and no match line leads to one that is not. */
static void
test_empty (void)
{
  g_autoptr (SqScene) scene = scene_of (
    "'room': {'bounce': false}, 'walls': ["
    "{'id': 'a', 'path': [[0, 0], [3, 0], [3, 3], [0, 3]], 'closed': true, 'thickness': 0.1},"
    "{'id': 'b', 'path': [[20, 20], [24, 20], [24, 24], [20, 24]], 'closed': true,"
    " 'thickness': 0.1}]");
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 20, SQ_OVERLAY_NONE);
  const SqPlanPages *plan = plan_of (plot);
  const SqTiling *tiling = &plan->tiling;
  const SqPlace corners[] = { { 0, 0 }, { 3, 3 }, { 0, 3 }, { 20, 20 }, { 24, 24 }, { 24, 20 } };
  guint n = sq_tiling_count (tiling), on_some = 0;
  g_assert_cmpuint (plan->n_sheets, <, n);
  g_assert_cmpuint (plan->n_sheets, ==, sq_tiling_sheets (tiling));
  for (guint k = 0; k < plan->n_sheets; k++) {
    guint tile = sq_tiling_nth (tiling, k);
    g_assert_true (sq_tiling_has (tiling, tile));
    g_assert_cmpuint (sq_tiling_rank (tiling, tile), ==, k);
    g_assert_cmpuint (sq_plan_tile_of (plot, plan, sq_plot_page (plot, (int)k)), ==, tile);
    g_assert_cmpint (sq_plan_sheet_number (plot, plan, tile), ==, (int)k + 1);
    for (int side = -1; side <= 1; side += 2) {
      int beside = sq_tiling_neighbour (tiling, tile, side, 0);
      g_assert_true (beside < 0 || sq_tiling_has (tiling, (guint)beside));
    }
  }
  for (guint k = 0; k < G_N_ELEMENTS (corners); k++)
    for (guint tile = 0; tile < n; tile++) {
      SqPaperPoint at = sq_view_paper (&plan->view, corners[k]);
      on_some += sq_tiling_has (tiling, tile) &&
                 sq_paper_box_within ((SqPaperBox){ at.x_mm, at.y_mm, 0.0, 0.0 },
                                      sq_tiling_own (tiling, tile));
    }
  g_assert_cmpuint (on_some, >=, G_N_ELEMENTS (corners));
  g_autofree char *last = g_strdup_printf ("Plan, part %u of %u", plan->n_sheets, plan->n_sheets);
  g_assert_cmpstr (sq_plot_page_name (plot, (int)plan->n_sheets - 1), ==, last);
}

/* An empty scene at a scale that takes several sheets keeps them all: it has to be drawn on. */
static void
test_nothing (void)
{
  g_autoptr (SqScene) scene = scene_of ("'room': {'bounce': false}");
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 2, SQ_OVERLAY_NONE);
  const SqPlanPages *plan = plan_of (plot);
  g_assert_cmpuint (plan->n_sheets, >, 1);
  g_assert_cmpuint (plan->n_sheets, ==, sq_tiling_count (&plan->tiling));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tiles/windows cover the plan", test_geometry);
  g_test_add_func ("/tiles/a wall of 8 m over a joint is 400 mm at 1:20", test_scale_over_joint);
  g_test_add_func ("/tiles/words are whole", test_words_whole);
  ADD_IN_PLACE ("/tiles/each says which it is", test_says);
  g_test_add_func ("/tiles/one sheet where one does", test_not_needed);
  g_test_add_func ("/tiles/sheets without anything are left out", test_empty);
  g_test_add_func ("/tiles/nothing at all keeps its sheets", test_nothing);
  g_test_add_func ("/tiles/words are placed once", test_placed_once);
  ADD_IN_PLACE ("/tiles/the same bytes again", test_repeats);
  return g_test_run ();
}
