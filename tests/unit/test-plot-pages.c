/* test-plot-pages.c: which pages there are, in which order, on which paper */
#include "plot-place.h"

#include "base/error.h"

/* A sheet's size is what its standard says. */
#define EXACT_MM 1e-9

static void
test_lists_refused (void)
{
  static const struct {
    const char *list, *begins;
  } rows[] = {
    { "", "pages: \"\" names no page, expected plan" },
    { "plan,", "pages: \"\" is no kind of page, expected plan" },
    { "poster", "pages: \"poster\" is no kind of page, expected plan" },
    { "Plan", "pages: \"Plan\" is no kind of page, expected plan" },
    { "plan,plan", "pages: \"plan\" is named twice, expected plan" },
    { "plan,ratio", "pages: \"ratio\" cannot be drawn yet, expected plan" },
    { "continuity", "pages: \"continuity\" cannot be drawn yet, expected plan" },
    { "\xff\xfe", "pages: \"" },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (GError) error = NULL;
    SqPlotRequest request = SQ_PLOT_REQUEST;
    g_assert_false (sq_plot_request_pages (&request, rows[k].list, &error));
    g_assert_error (error, SQ_ERROR, SQ_ERROR_USAGE);
    g_assert_true (g_str_has_prefix (error->message, rows[k].begins));
    g_assert_null (strchr (error->message, '\n'));
    g_assert_true (g_utf8_validate (error->message, -1, NULL));
    g_assert_cmpuint (request.n_pages, ==, 0);
  }
}

/* What the scene says of a kind of page is kept when the command line names that kind. */
static void
test_list_keeps (void)
{
  g_autoptr (SqScene) scene = scene_of (
    "%s, 'pages': [{'page': 'ratio'}, {'page': 'plan', 'sheet': 'A4', 'scale': '1:200'}]", WALL);
  g_autoptr (GError) error = NULL;
  SqPlotRequest request;
  sq_plot_request_of (scene, &request, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (request.n_pages, ==, 1);
  sq_plot_request_pages (&request, " plan ", &error);
  g_assert_no_error (error);
  g_assert_cmpuint (request.n_pages, ==, 1);
  g_assert_cmpstr (request.pages[0].sheet, ==, "A4");
  g_assert_cmpfloat (request.pages[0].denominator, ==, 200.0);
  g_autoptr (GPtrArray) left_out = sq_plot_left_out (scene);
  g_assert_cmpuint (left_out->len, ==, 1);
  g_assert_cmpstr (g_ptr_array_index (left_out, 0), ==,
                   "pages[0]: this kind of page is not drawn yet");
}

/* One line says which page of the scene is wrong, and one that there are too many. */
static void
test_pages_refused (void)
{
  static const struct {
    const char *page, *begins;
  } rows[] = {
    { "'sheet': 'B7'", "pages[1].sheet: \"B7\" is no sheet, expected one of A4" },
    { "'scale': 'one'", "pages[1].scale: \"one\" is no scale, expected such as" },
    { "'scale': '1:0.0001'", "pages[1].scale: 1:0.0001 is outside 1:1 to 1:10000" },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (GError) error = NULL;
    SqPlotRequest request;
    g_autoptr (SqScene) scene =
      scene_of ("%s, 'pages': [{'page': 'plan'}, {'page': 'plan', %s}]", WALL, rows[k].page);
    g_assert_false (sq_plot_request_of (scene, &request, &error));
    g_assert_error (error, SQ_ERROR, SQ_ERROR_VALUE);
    g_assert_true (g_str_has_prefix (error->message, rows[k].begins));
  }
}

static void
test_too_many_pages (void)
{
  g_autoptr (GString) pages = g_string_new ("{'page': 'plan'}");
  for (int k = 1; k < 300; k++)
    g_string_append (pages, ", {'page': 'plan'}");
  g_autoptr (GError) error = NULL;
  SqPlotRequest request;
  g_autoptr (SqScene) scene = scene_of ("%s, 'pages': [%s]", WALL, pages->str);
  g_assert_true (sq_plot_request_of (scene, &request, &error));
  g_assert_cmpuint (request.n_pages, ==, SQ_PLOT_MOST_WISHES);
  g_autoptr (GPtrArray) left_out = sq_plot_left_out (scene);
  g_assert_cmpuint (left_out->len, ==, 1);
  g_assert_true (g_str_has_prefix (g_ptr_array_index (left_out, 0), "pages[16]: "));
}

/* The end of a note that is too long for the page is not left out in silence. */
static void
test_cut_notes (void)
{
  g_autofree char *fits = g_strnfill (600, 'a'), *cut = g_strnfill (601, 'a');
  const struct {
    const char *text[3], *line;
  } rows[] = {
    { { fits, "short", "x" }, NULL },
    { { "short", cut, fits }, "notes[1].text: what is past 600 letters is not drawn" },
    { { cut, fits, cut }, "notes[0].text and 1 more: what is past 600 letters is not drawn" },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SqScene) scene =
      scene_of ("%s, 'notes': [{'text': '%s', 'at': [0, 0]}, {'text': '%s', 'at': [0, 0]},"
                " {'text': '%s', 'at': [0, 0]}]",
                WALL, rows[k].text[0], rows[k].text[1], rows[k].text[2]);
    g_autoptr (GPtrArray) left_out = sq_plot_left_out (scene);
    g_assert_cmpuint (left_out->len, ==, rows[k].line != NULL);
    if (rows[k].line != NULL)
      g_assert_cmpstr (g_ptr_array_index (left_out, 0), ==, rows[k].line);
  }
}

/* Several plans: each on its own paper, with its own overlay. */
static void
test_several_plans (Place *place, gconstpointer unused)
{
  g_autoptr (SqScene) scene =
    scene_of (WHOLE ", 'pages': [{'page': 'plan', 'sheet': 'A3', 'overlay': 'stops'},"
                    "{'page': 'plan', 'sheet': 'A4', 'portrait': true, 'overlay': 'none'},"
                    "{'page': 'plan', 'sheet': 'tabloid', 'overlay': 'lux', 'mono': true}]");
  static const double sizes_mm[][2] = {
    { 420, 297 }, { 210, 297 }, { 210, 297 }, { 17 * 25.4, 11 * 25.4 }
  };
  g_autoptr (GError) error = NULL;
  SqPlotRequest request;
  sq_plot_request_of (scene, &request, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (request.n_pages, ==, 3);
  g_autoptr (SqPlot) plot = sq_plot_new (scene, &request, 1, NULL, &error);
  g_assert_no_error (error);
  g_assert_cmpint (sq_plot_n_pages (plot), ==, 4);
  for (int page = 0; page < 4; page++) {
    double width_mm, height_mm;
    sq_plot_page_size_mm (plot, page, &width_mm, &height_mm);
    g_assert_cmpfloat_with_epsilon (width_mm, sizes_mm[page][0], EXACT_MM);
    g_assert_cmpfloat_with_epsilon (height_mm, sizes_mm[page][1], EXACT_MM);
    g_assert_cmpstr (sq_plot_page_name (plot, page), ==,
                     page == 2 ? "Figures, legend, notes" : "Plan");
  }
  g_autofree char *pdf = in_place (place, "plans.pdf");
  export_to (plot, pdf, SQ_PLOT_PDF);
  g_autofree char *text = text_of (pdf);
  g_auto (GStrv) pages = g_strsplit (text, "\f", -1);
  g_assert_true (says (pages[0], "Light, stops"));
  g_assert_false (says (pages[2], "Light,"));
  g_assert_true (says (pages[3], "Light, lux"));
  g_assert_true (says (pages[1], "Cautions, figures and legend: sheet 3."));
  g_assert_true (says (pages[3], "4 / 4"));
}

/* Words that run over from a large sheet go on one that anybody can print. */
static void
test_words_on_handy_paper (void)
{
  g_autoptr (GString) notes = g_string_new (NULL);
  for (int k = 0; k < 400; k++)
    g_string_append_printf (notes, "%s{'id': 'n%d', 'text': 'Note %d.', 'at': [1, 1]}",
                            k > 0 ? "," : "", k, k + 1);
  static const struct {
    const char *sheet;
    double width_mm;
  } rows[] = { { "A1", 420 }, { "A3", 420 }, { "A4", 297 }, { "arch-d", 17 * 25.4 } };
  g_autoptr (SqScene) scene = scene_of (WALL ", 'notes': [%s]", notes->str);
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SqPlot) plot = plot_of (scene, rows[k].sheet, 0, SQ_OVERLAY_NONE);
    double width_mm, height_mm;
    g_assert_cmpint (sq_plot_n_pages (plot), >, 1);
    sq_plot_page_size_mm (plot, 1, &width_mm, &height_mm);
    g_assert_cmpfloat_with_epsilon (width_mm, rows[k].width_mm, EXACT_MM);
    g_assert_true (g_str_has_prefix (sq_plot_page_name (plot, 1), "Figures, legend, notes"));
  }
}

/* A tall set stands upright, a wide one lies; both as large as may be. */
static void
test_turns (void)
{
  static const struct {
    double width_m, height_m;
    SqSheetTurn turn;
    gboolean portrait;
  } rows[] = {
    { 5, 9, SQ_TURN_AS_FITS, TRUE },
    { 9, 5, SQ_TURN_AS_FITS, FALSE },
    { 5, 9, SQ_TURN_LANDSCAPE, FALSE },
    { 9, 5, SQ_TURN_PORTRAIT, TRUE },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    char width[G_ASCII_DTOSTR_BUF_SIZE], height[G_ASCII_DTOSTR_BUF_SIZE];
    g_ascii_dtostr (width, sizeof width, rows[k].width_m);
    g_ascii_dtostr (height, sizeof height, rows[k].height_m);
    g_autoptr (SqScene) scene =
      scene_of ("'pieces': [{'id': 'p', 'outline': [[0, 0], [%s, 0], [%s, %s], [0, %s]],"
                " 'base': 0, 'top': 1}]",
                width, width, height, height);
    g_autoptr (GError) error = NULL;
    SqPlotRequest request = SQ_PLOT_REQUEST;
    request.turn = rows[k].turn;
    request.sheet = "A4";
    g_autoptr (SqPlot) plot = sq_plot_new (scene, &request, 1, NULL, &error);
    g_assert_no_error (error);
    g_assert_cmpint (sq_plot_is_portrait (plot), ==, rows[k].portrait);
  }
}

/* A hundred lamps on a small sheet: the page is drawn, and what would do is said. */
static void
test_crowded (void)
{
  g_autoptr (GString) lamps = g_string_new (NULL);
  for (int k = 0; k < 100; k++)
    g_string_append_printf (lamps,
                            "%s{'id': 'f%d', 'number': '%d', 'class': 'open-face-800',"
                            " 'at': [%d, %d, 2]}",
                            k > 0 ? "," : "", k, k + 1, k % 10, k / 10);
  g_autoptr (SqScene) scene = scene_of ("'room': {'bounce': false}, 'fixtures': [%s]", lamps->str);
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 0, SQ_OVERLAY_NONE);
  const GPtrArray *remarks = sq_plot_remarks (plot);
  g_assert_cmpuint (remarks->len, ==, 1);
  const char *remark = g_ptr_array_index (remarks, 0);
  g_assert_true (g_str_has_prefix (remark, "plan: A4 at 1:100 is crowded, "));
  g_assert_true (g_str_has_suffix (remark, " has more room"));
  g_assert_null (strchr (remark, '\n'));
}

/* No tag is cut short, yet the words of a hundred cameras are more than the sheet has room for. */
static void
test_crowded_without_tags (void)
{
  g_autoptr (GString) cameras = g_string_new (NULL);
  for (int k = 0; k < 100; k++)
    g_string_append_printf (cameras, "%s{'id': 'c%d', 'label': '%d', 'at': [%d, %d, 1.4]}",
                            k > 0 ? "," : "", k, k + 1, k % 10, k / 10);
  g_autoptr (SqScene) scene = scene_of ("'room': {'bounce': false}, 'cameras': [%s]", cameras->str);
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 0, SQ_OVERLAY_NONE);
  const GPtrArray *remarks = sq_plot_remarks (plot);
  g_assert_cmpuint (remarks->len, ==, 1);
  const char *remark = g_ptr_array_index (remarks, 0);
  g_assert_true (g_str_has_prefix (remark, "plan: A4 at 1:100 is crowded, "));
  g_assert_null (strstr (remark, "cut short"));
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plot pages/lists that are refused", test_lists_refused);
  g_test_add_func ("/plot pages/a scene's pages that are refused", test_pages_refused);
  g_test_add_func ("/plot pages/too many", test_too_many_pages);
  g_test_add_func ("/plot pages/notes that are cut", test_cut_notes);
  g_test_add_func ("/plot pages/a list keeps what the scene says", test_list_keeps);
  ADD_IN_PLACE ("/plot pages/several plans", test_several_plans);
  g_test_add_func ("/plot pages/words on paper that anybody prints", test_words_on_handy_paper);
  g_test_add_func ("/plot pages/upright or on its side", test_turns);
  g_test_add_func ("/plot pages/crowded", test_crowded);
  g_test_add_func ("/plot pages/crowded without a tag", test_crowded_without_tags);
  return g_test_run ();
}
