/* test-svg.c: paths, layers and clips of an SVG page, and that all is painted through one place */
#include "svg-page.h"

#include <locale.h>

static const SqColour red = { 1.0, 0.0, 0.0 };

/* Turned by a quarter about (100, 50), the way of the clock: x runs down the page. */
static void
test_path (void)
{
  const double dash[] = { 4.0, 1.25 };
  SvgPage page = open_svg ();
  sq_draw_enter (page.drawing, (SqPaperPoint){ 100, 50 }, G_PI / 2);
  cairo_move_to (page.cairo, 0, 0);
  cairo_line_to (page.cairo, 12.5, 0);
  sq_draw_stroke_dashed (page.drawing, SQ_PEN_35, red, dash, G_N_ELEMENTS (dash));
  sq_draw_leave (page.drawing);
  g_autoptr (GPtrArray) elements = close_svg (&page);
  const Element *svg = nth_element (elements, "svg", 0), *path = nth_element (elements, "path", 0);
  g_assert_cmpstr (attribute_of (svg, "width"), ==, "420mm");
  g_assert_cmpstr (attribute_of (svg, "height"), ==, "297mm");
  g_assert_cmpstr (attribute_of (svg, "viewBox"), ==, "0 0 420 297");
  g_assert_cmpstr (nth_element (elements, "title", 0)->words->str, ==, "A page");
  g_assert_cmpstr (nth_element (elements, "desc", 0)->words->str, ==, "drawn by a test");
  g_assert_cmpstr (attribute_of (path, "d"), ==, "M100 50L100 62.5");
  g_assert_cmpstr (attribute_of (path, "fill"), ==, "none");
  g_assert_cmpstr (attribute_of (path, "stroke"), ==, "#ff0000");
  g_assert_cmpstr (attribute_of (path, "stroke-width"), ==, "0.35");
  g_assert_cmpstr (attribute_of (path, "stroke-dasharray"), ==, "4 1.25");
}

/* A circle's points are a radius from its middle, wherever it is drawn from; a frame that is twice
 * as large has pens twice as wide. */
static void
test_frames (void)
{
  SvgPage page = open_svg ();
  cairo_save (page.cairo);
  cairo_translate (page.cairo, 40, 30);
  cairo_scale (page.cairo, 2, 2);
  sq_draw_circle_path (page.drawing, (SqPaperPoint){ 5, 0 }, 10);
  sq_draw_stroke (page.drawing, SQ_PEN_50, red);
  cairo_restore (page.cairo);
  g_autoptr (GPtrArray) elements = close_svg (&page);
  const Element *path = nth_element (elements, "path", 0);
  g_assert_cmpstr (attribute_of (path, "stroke-width"), ==, "1");
  double x_mm, y_mm;
  g_assert_cmpint (sscanf (attribute_of (path, "d"), "M%lf %lf", &x_mm, &y_mm), ==, 2);
  assert_near (x_mm, 40 + 2 * (5 + 10), FILE_MM);
  assert_near (y_mm, 30, FILE_MM);
  g_assert_true (g_str_has_suffix (attribute_of (path, "d"), "Z"));
}

static void
test_numbers (void)
{
  static const struct {
    double x_mm;
    const char *written;
  } rows[] = {
    { 0.0, "M0 0L0 1" },
    { -3.5, "M-3.5 0L-3.5 1" },
    { 0.25, "M0.25 0L0.25 1" },
    { -0.0001, "M0 0L0 1" },
    { 1000.0, "M1000 0L1000 1" },
    { 7.125, "M7.125 0L7.125 1" },
    { 0.0625, "M0.063 0L0.063 1" }, /* half of a thousandth goes away from 0 */
  };
  g_autofree char *before = g_strdup (setlocale (LC_NUMERIC, NULL));
  g_test_message ("numbers as in %s", setlocale (LC_NUMERIC, "de_DE.UTF-8"));
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    SvgPage page = open_svg ();
    sq_draw_line (page.drawing, (SqPaperPoint){ rows[k].x_mm, 0 },
                  (SqPaperPoint){ rows[k].x_mm, 1 }, SQ_PEN_13, red);
    g_autoptr (GPtrArray) elements = close_svg (&page);
    g_assert_cmpstr (attribute_of (nth_element (elements, "path", 0), "d"), ==, rows[k].written);
  }
  setlocale (LC_NUMERIC, before);
}

static void
draw_square (SqDrawing *drawing, double at_mm)
{
  sq_draw_box_path (drawing, (SqPaperBox){ at_mm, at_mm, 10, 10 }, 0.0);
  sq_draw_fill (drawing, red, 1.0);
}

/* What is on top stays on top: a layer that comes again is a group of its own. */
static void
test_layers (void)
{
  SvgPage page = open_svg ();
  sq_draw_layer (page.drawing, SQ_LAYER_LAMPS);
  draw_square (page.drawing, 0);
  sq_draw_layer (page.drawing, SQ_LAYER_POWER); /* nothing of it */
  sq_draw_layer (page.drawing, SQ_LAYER_TAGS);
  draw_square (page.drawing, 5);
  draw_square (page.drawing, 8);
  sq_draw_layer (page.drawing, SQ_LAYER_LAMPS);
  draw_square (page.drawing, 10);
  g_autoptr (GPtrArray) elements = close_svg (&page);
  static const char *const layers[] = { "lamps", "tags", "tags", "lamps-2" };
  for (guint k = 0; k < G_N_ELEMENTS (layers); k++)
    g_assert_cmpstr (nth_element (elements, "path", k)->layer, ==, layers[k]);
  g_assert_cmpuint (count_elements (elements, "path"), ==, G_N_ELEMENTS (layers));
  g_assert_cmpuint (count_elements (elements, "g"), ==, 3);
  for (guint k = 0; k < 3; k++) {
    const Element *title = nth_element (elements, "title", k + 1); /* behind the page's own */
    g_assert_nonnull (title->layer);
    g_assert_cmpuint (title->words->len, >, 0);
  }
}

static void
test_layers_have_names (void)
{
  g_autoptr (GHashTable) ids = g_hash_table_new (g_str_hash, g_str_equal);
  g_autofree char *path = g_build_filename (SQ_SOURCE_DIR, "app/share/squarelaw.1", NULL);
  g_autofree char *manual = NULL;
  g_assert_true (g_file_get_contents (path, &manual, NULL, NULL));
  for (int layer = 0; layer < SQ_LAYERS; layer++) {
    const char *id = sq_layer_id ((SqLayer)layer);
    for (const char *c = id; *c != '\0'; c++)
      g_assert_true (g_ascii_islower (*c));
    g_assert_true (g_hash_table_add (ids, (gpointer)id));
    g_autofree char *word = g_strdup_printf ("\\b%s\\b", id);
    if (!g_regex_match_simple (word, manual, G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT))
      g_error ("the manual does not name the layer %s", id);
    g_assert_cmpstr (sq_layer_title ((SqLayer)layer), !=, "");
  }
}

/* Clips hold across layers, nest, and end. */
static void
test_clips (void)
{
  SvgPage page = open_svg ();
  sq_draw_layer (page.drawing, SQ_LAYER_SET);
  draw_square (page.drawing, 0);
  sq_draw_box_path (page.drawing, (SqPaperBox){ 20, 10, 306, 241 }, 0.0);
  sq_draw_clip (page.drawing);
  draw_square (page.drawing, 1);
  cairo_set_fill_rule (page.cairo, CAIRO_FILL_RULE_EVEN_ODD);
  sq_draw_circle_path (page.drawing, (SqPaperPoint){ 50, 50 }, 5);
  sq_draw_clip (page.drawing);
  draw_square (page.drawing, 2);
  sq_draw_unclip (page.drawing);
  sq_draw_layer (page.drawing, SQ_LAYER_LAMPS);
  draw_square (page.drawing, 3);
  sq_draw_unclip (page.drawing);
  draw_square (page.drawing, 4);
  g_autoptr (GPtrArray) elements = close_svg (&page);
  static const int clips[] = { 0, 1, 2, 1, 0 };
  const guint n_clips = 2; /* their paths come first, among the definitions */
  g_assert_cmpuint (count_elements (elements, "clipPath"), ==, n_clips);
  for (guint k = 0; k < G_N_ELEMENTS (clips); k++)
    g_assert_cmpint (nth_element (elements, "path", n_clips + k)->clips, ==, clips[k]);
  g_assert_cmpstr (attribute_of (nth_element (elements, "path", 0), "d"), ==,
                   "M20 10L326 10L326 251L20 251Z");
  g_assert_null (attribute_of (nth_element (elements, "path", 0), "clip-rule"));
  g_assert_cmpstr (attribute_of (nth_element (elements, "path", 1), "clip-rule"), ==, "evenodd");
}

static void
test_fills (void)
{
  const SqColour dark = { 0x14 / 255.0, 0x17 / 255.0, 0x19 / 255.0 };
  SvgPage page = open_svg ();
  sq_draw_box_path (page.drawing, (SqPaperBox){ 0, 0, 10, 10 }, 0.0);
  sq_draw_fill (page.drawing, dark, 0.86);
  sq_draw_enter (page.drawing, (SqPaperPoint){ 100, 100 }, 0.0);
  sq_draw_box_path (page.drawing, (SqPaperBox){ 0, 0, 10, 10 }, 0.0);
  sq_draw_fade (page.drawing, dark, (SqPaperPoint){ 0, 5 }, 0.26, (SqPaperPoint){ 10, 5 }, 0.07);
  sq_draw_leave (page.drawing);
  g_autoptr (GPtrArray) elements = close_svg (&page);
  const Element *plain = nth_element (elements, "path", 0);
  const Element *fading = nth_element (elements, "path", 1);
  const Element *fade = nth_element (elements, "linearGradient", 0);
  g_assert_cmpstr (attribute_of (plain, "fill"), ==, "#141719");
  g_assert_cmpstr (attribute_of (plain, "fill-opacity"), ==, "0.86");
  g_assert_null (attribute_of (plain, "stroke"));
  g_autofree char *address = g_strdup_printf ("url(#%s)", attribute_of (fade, "id"));
  g_assert_cmpstr (attribute_of (fading, "fill"), ==, address);
  g_assert_cmpstr (attribute_of (fade, "gradientUnits"), ==, "userSpaceOnUse");
  assert_near (number_of (fade, "x1"), 100, FILE_MM);
  assert_near (number_of (fade, "x2"), 110, FILE_MM);
  assert_near (number_of (fade, "y1"), 105, FILE_MM);
  assert_near (number_of (fade, "y2"), 105, FILE_MM);
  g_assert_cmpstr (attribute_of (nth_element (elements, "stop", 0), "stop-opacity"), ==, "0.26");
  g_assert_cmpstr (attribute_of (nth_element (elements, "stop", 1), "stop-opacity"), ==, "0.07");
  g_assert_cmpstr (attribute_of (nth_element (elements, "stop", 1), "stop-color"), ==, "#141719");
}

/* A path that goes nowhere, a pen of no width or, by subtraction, of less (which no viewer must be
 * given: SVG 1.1, 11.4), words that are none. */
static void
test_nothing (void)
{
  const SqType type = { .cap_mm = 2.5, .weight = 400, .colour = red };
  SvgPage page = open_svg ();
  cairo_move_to (page.cairo, 10, 10);
  sq_draw_stroke (page.drawing, SQ_PEN_35, red);
  sq_draw_fill (page.drawing, red, 1.0);
  sq_draw_line (page.drawing, (SqPaperPoint){ 0, 0 }, (SqPaperPoint){ 10, 10 }, 0.0, red);
  sq_draw_line (page.drawing, (SqPaperPoint){ 0, 0 }, (SqPaperPoint){ 10, 10 }, -0.1, red);
  sq_draw_text (page.drawing, (SqPaperPoint){ 10, 10 }, "", &type);
  sq_draw_text (page.drawing, (SqPaperPoint){ 10, 10 }, "   ", &type);
  g_autoptr (GPtrArray) elements = close_svg (&page);
  g_assert_cmpuint (count_elements (elements, "path"), ==, 0);
  g_assert_cmpuint (count_elements (elements, "text"), ==, 0);
  g_assert_cmpuint (count_elements (elements, "g"), ==, 0);
}

/* What paints past the drawing's own calls would be missing in an SVG. */
static void
test_one_place (void)
{
  static const char *const folders[] = { "core/draw", "core/paper" };
  /* The calls themselves, and pictures that are made of pixels. */
  static const char *const allowed[] = { "drawing.c", "page-text.c", "map-picture.c",
                                         "export-png.c", NULL };
  g_autoptr (GRegex) painting = g_regex_new (
    "(pango_cairo_show|pango_cairo_layout_path|cairo_(stroke|fill|paint|mask|clip|show_|text_path|"
    "glyph_path|push_group|set_source|pattern_))",
    G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT, NULL);
  guint looked_at = 0;
  for (guint k = 0; k < G_N_ELEMENTS (folders); k++) {
    g_autofree char *folder = g_build_filename (SQ_SOURCE_DIR, folders[k], NULL);
    g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
    const char *name;
    g_assert_nonnull (dir);
    while ((name = g_dir_read_name (dir)) != NULL) {
      g_autofree char *path = g_build_filename (folder, name, NULL), *text = NULL;
      if (!g_str_has_suffix (name, ".c") || g_strv_contains (allowed, name))
        continue;
      g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
      g_autoptr (GMatchInfo) match = NULL;
      if (g_regex_match (painting, text, G_REGEX_MATCH_DEFAULT, &match)) {
        g_autofree char *call = g_match_info_fetch (match, 0);
        g_error ("%s/%s calls %s…: paint through draw/drawing.h", folders[k], name, call);
      }
      looked_at++;
    }
  }
  g_assert_cmpuint (looked_at, >, 50);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/svg/a path stands on the page in millimetres", test_path);
  g_test_add_func ("/svg/a frame of another size", test_frames);
  g_test_add_func ("/svg/numbers are short, in any locale", test_numbers);
  g_test_add_func ("/svg/layers are groups", test_layers);
  g_test_add_func ("/svg/each layer has an id and a title", test_layers_have_names);
  g_test_add_func ("/svg/clips nest", test_clips);
  g_test_add_func ("/svg/colours and fades", test_fills);
  g_test_add_func ("/svg/nothing leaves nothing", test_nothing);
  g_test_add_func ("/svg/all is painted through one place", test_one_place);
  return g_test_run ();
}
