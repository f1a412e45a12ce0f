/* test-svg-text.c: text of an SVG page is text: its words, lines, sides and look */
#include "svg-page.h"

static const SqColour ink = { 0.0, 0.0, 0.0 };

/* Set in the page's face a line may be so much longer or shorter in a file of other units. */
#define WIDTH_SHARE 0.001

#define HEBREW "\u05e9\u05dc\u05d5\u05dd \u05e2\u05d5\u05dc\u05dd"
#define JAPANESE "\u7167\u660e\u56f3 \u4e00\u968e"

static SqType
small (SqAlign align)
{
  return (SqType){ .cap_mm = 1.8, .weight = 400, .align = align, .colour = ink };
}

/* One text alone on a page. */
static GPtrArray *
page_of (const char *text, const SqType *type)
{
  SvgPage page = open_svg ();
  sq_draw_text (page.drawing, (SqPaperPoint){ 100, 50 }, text, type);
  return close_svg (&page);
}

static void
test_words (void)
{
  static const struct {
    const char *said, *written;
  } rows[] = {
    { "Net loft, night", "Net loft, night" },
    { "<b>&amp; \"5' & 6'\" > 4'", "<b>&amp; \"5' & 6'\" > 4'" },
    { "two   blanks", "two   blanks" },
    { "\x01 \x1f \x7f", "\ufffd \ufffd \ufffd" }, /* XML 1.0, section 2.2 */
    { "a\tb", "a b" },
    { "\u00bd \u2154 \u2212 \u00d7 \u00b2", "\u00bd \u2154 \u2212 \u00d7 \u00b2" },
    { HEBREW, HEBREW },
    { JAPANESE, JAPANESE },
    { "17 " HEBREW " 23 key", "17 " HEBREW " 23 key" },
    { "]]> <!-- --> <![CDATA[", "]]> <!-- --> <![CDATA[" },
  };
  const SqType type = small (SQ_ALIGN_LEFT);
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (GPtrArray) elements = page_of (rows[k].said, &type);
    g_assert_cmpuint (count_elements (elements, "text"), ==, 1);
    g_assert_cmpstr (nth_element (elements, "text", 0)->words->str, ==, rows[k].written);
  }
}

static void
test_not_utf8 (void)
{
  gsize length;
  g_autoptr (SqSvg) svg = sq_svg_new (420, 297);
  g_autofree char *text = sq_svg_end (svg, "caf\xe9 noir", "<desc> & more", &length);
  g_autoptr (GPtrArray) elements = elements_of (text, length);
  g_assert_cmpstr (nth_element (elements, "title", 0)->words->str, ==, "caf\ufffd noir");
  g_assert_cmpstr (nth_element (elements, "desc", 0)->words->str, ==, "<desc> & more");
}

/* em = cap height / 0.727; tracking is a share of the em. */
static void
test_look (void)
{
  SqType type = { .cap_mm = 3.0,
                  .weight = 700,
                  .colour = { 0x55 / 255.0, 0x5B / 255.0, 0x63 / 255.0 },
                  .tracking_em = 0.08,
                  .halo = TRUE,
                  .turn_rad = -G_PI / 6 };
  g_autoptr (GPtrArray) elements = page_of ("KEY", &type);
  const Element *text = nth_element (elements, "text", 0), *svg = nth_element (elements, "svg", 0);
  const double em_mm = 3.0 / 0.727;
  assert_near (number_of (text, "x"), 100, FILE_MM);
  assert_near (number_of (text, "y"), 50, FILE_MM);
  assert_near (number_of (text, "font-size"), em_mm, FILE_MM);
  assert_near (number_of (text, "letter-spacing"), 0.08 * em_mm, FILE_MM);
  g_assert_cmpstr (attribute_of (text, "font-weight"), ==, "700");
  g_assert_cmpstr (attribute_of (text, "fill"), ==, "#555b63");
  g_assert_cmpstr (attribute_of (text, "transform"), ==, "rotate(-30 100 50)");
  g_assert_cmpstr (attribute_of (text, "stroke"), ==, "#ffffff");
  g_assert_cmpstr (attribute_of (text, "paint-order"), ==, "stroke");
  g_assert_true (g_str_has_prefix (attribute_of (svg, "font-family"), "Inter,"));
  g_assert_nonnull (strstr (attribute_of (svg, "style"), "tabular-nums"));
}

/* What is aligned at a point is anchored there, so that it stays in any face. */
static void
test_anchors (void)
{
  static const struct {
    SqAlign align;
    const char *words, *anchor, *direction;
  } rows[] = {
    { SQ_ALIGN_LEFT, "key", NULL, NULL },    { SQ_ALIGN_CENTRE, "key", "middle", NULL },
    { SQ_ALIGN_RIGHT, "key", "end", NULL },  { SQ_ALIGN_LEFT, HEBREW, "end", "rtl" },
    { SQ_ALIGN_RIGHT, HEBREW, NULL, "rtl" }, { SQ_ALIGN_CENTRE, HEBREW, "middle", "rtl" },
    { SQ_ALIGN_LEFT, JAPANESE, NULL, NULL },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    const SqType type = small (rows[k].align);
    g_autoptr (GPtrArray) elements = page_of (rows[k].words, &type);
    const Element *text = nth_element (elements, "text", 0);
    assert_near (number_of (text, "x"), 100, FILE_MM);
    assert_near (number_of (text, "y"), 50, FILE_MM);
    g_assert_cmpstr (attribute_of (text, "text-anchor"), ==, rows[k].anchor);
    g_assert_cmpstr (attribute_of (text, "direction"), ==, rows[k].direction);
  }
}

/* As wide as on any other page, so that lines break where they do there. */
static void
test_widths (void)
{
  static const char *const words[] = { "Tungsten Fresnel 2000 W", "111 1.11", "KEY", HEBREW };
  const double points_per_mm = 72.0 / 25.4;
  const SqType type = small (SQ_ALIGN_LEFT);
  for (guint k = 0; k < G_N_ELEMENTS (words); k++) {
    Page page = open_page (&one_to_fifty), other = open_page (&one_to_fifty);
    cairo_scale (other.cairo, points_per_mm, points_per_mm);
    g_autoptr (SqDrawing) in_points = sq_drawing_new (other.cairo, &one_to_fifty);
    SvgPage svg = open_svg ();
    double width_mm = sq_text_width_mm (page.drawing, words[k], &type);
    assert_near (sq_text_width_mm (svg.drawing, words[k], &type), width_mm, width_mm * WIDTH_SHARE);
    assert_near (sq_text_width_mm (in_points, words[k], &type), width_mm, width_mm * WIDTH_SHARE);
    g_ptr_array_unref (close_svg (&svg));
    close_page (&page);
    close_page (&other);
  }
}

#define SENTENCE                                                                                   \
  "Blackout blind down, edges taped, and one plays as this window from the first slate to the "    \
  "last"

static void
test_lines (void)
{
  SqType type = small (SQ_ALIGN_LEFT);
  type.width_mm = 40.0;
  SvgPage page = open_svg ();
  double height_mm = sq_draw_text (page.drawing, (SqPaperPoint){ 100, 50 }, SENTENCE, &type);
  g_autoptr (GPtrArray) elements = close_svg (&page);
  guint n = count_elements (elements, "text");
  g_autoptr (GString) whole = g_string_new (NULL);
  g_assert_cmpuint (n, >, 2);
  for (guint k = 0; k < n; k++) {
    const Element *text = nth_element (elements, "text", k);
    assert_near (number_of (text, "x"), 100, FILE_MM);
    assert_near (number_of (text, "y"), 50 + k * height_mm / (n - 1), FILE_MM);
    g_string_append_printf (whole, "%s%s", k > 0 ? " " : "", text->words->str);
  }
  g_assert_cmpstr (whole->str, ==, SENTENCE);
}

static void
test_right_lines (void)
{
  SqType type = small (SQ_ALIGN_RIGHT);
  type.width_mm = 40.0;
  g_autoptr (GPtrArray) elements = page_of (SENTENCE, &type);
  for (guint k = 0; k < count_elements (elements, "text"); k++) {
    const Element *text = nth_element (elements, "text", k);
    assert_near (number_of (text, "x"), 100, FILE_MM);
    g_assert_cmpstr (attribute_of (text, "text-anchor"), ==, "end");
    g_assert_false (g_str_has_suffix (text->words->str, " "));
  }
}

/* A paragraph that is read from the right keeps to the right of its width. */
static void
test_lines_from_the_right (void)
{
  SqType type = small (SQ_ALIGN_LEFT);
  type.width_mm = 20.0;
  g_autoptr (GPtrArray) elements = page_of (HEBREW " " HEBREW " " HEBREW, &type);
  guint n = count_elements (elements, "text");
  g_assert_cmpuint (n, >, 1);
  for (guint k = 0; k < n; k++) {
    const Element *text = nth_element (elements, "text", k);
    assert_near (number_of (text, "x"), 120, FILE_MM);
    g_assert_cmpstr (attribute_of (text, "direction"), ==, "rtl");
    g_assert_null (attribute_of (text, "text-anchor")); /* it starts there */
  }
}

/* What is cut ends in an ellipsis, and what it leaves out is not in the file. */
static void
test_cut (void)
{
  SqType type = small (SQ_ALIGN_LEFT);
  type.width_mm = 40.0;
  type.one_line = TRUE;
  g_autoptr (GPtrArray) elements = page_of (SENTENCE, &type);
  g_assert_cmpuint (count_elements (elements, "text"), ==, 1);
  g_autofree char *words = g_strdup (nth_element (elements, "text", 0)->words->str);
  g_assert_true (g_str_has_suffix (words, "\u2026"));
  words[strlen (words) - strlen ("\u2026")] = '\0';
  g_assert_cmpuint (strlen (words), >, 10);
  g_assert_true (g_str_has_prefix (SENTENCE, words));
}

/* A word that is broken is broken with a hyphen, as on paper. */
static void
test_broken_word (void)
{
  SqType type = small (SQ_ALIGN_LEFT);
  type.width_mm = 12.0;
  g_autoptr (GPtrArray) elements = page_of ("Donaudampfschifffahrt", &type);
  g_autoptr (GString) whole = g_string_new (NULL);
  guint n = count_elements (elements, "text");
  g_assert_cmpuint (n, >, 1);
  for (guint k = 0; k < n; k++) {
    const char *words = nth_element (elements, "text", k)->words->str;
    gboolean hyphen = g_str_has_suffix (words, "-");
    g_assert_cmpint (hyphen, ==, k + 1 < n);
    g_string_append_len (whole, words, (gssize)(strlen (words) - (hyphen ? 1 : 0)));
  }
  g_assert_cmpstr (whole->str, ==, "Donaudampfschifffahrt");
}

/* What follows a number stands where it would stand on paper, also where a viewer has narrow ones;
 * it is still one text. */
static void
test_after_numbers (void)
{
  static const char words[] = "lux at 1.11\u00a0m, facing up";
  SvgPage page = open_svg ();
  SqType type = small (SQ_ALIGN_LEFT);
  sq_draw_text (page.drawing, (SqPaperPoint){ 100, 50 }, words, &type);
  type.align = SQ_ALIGN_RIGHT;
  sq_draw_text (page.drawing, (SqPaperPoint){ 100, 60 }, words, &type);
  type.align = SQ_ALIGN_CENTRE;
  sq_draw_text (page.drawing, (SqPaperPoint){ 100, 70 }, words, &type);
  double whole_mm = sq_text_width_mm (page.drawing, words, &type);
  double number_mm = sq_text_width_mm (page.drawing, "lux at 1.11\u00a0", &type);
  double before_mm = sq_text_width_mm (page.drawing, "lux at", &type);
  g_autoptr (GPtrArray) elements = close_svg (&page);
  for (guint k = 0; k < 3; k++)
    g_assert_cmpstr (nth_element (elements, "text", k)->words->str, ==, words);
  g_assert_cmpuint (count_elements (elements, "tspan"), ==, 3);

  const double within = FILE_MM + WIDTH_SHARE * whole_mm;
  assert_near (number_of (nth_element (elements, "tspan", 0), "x"), 100 + number_mm, within);
  g_assert_cmpstr (nth_element (elements, "tspan", 0)->words->str, ==, "m, facing up");
  const Element *right = nth_element (elements, "text", 1);
  g_assert_cmpstr (attribute_of (right, "text-anchor"), ==, "end");
  assert_near (number_of (right, "x"), 100 - whole_mm + before_mm, within);
  assert_near (number_of (nth_element (elements, "tspan", 1), "x"), 100, within);
  const Element *middle = nth_element (elements, "text", 2);
  g_assert_null (attribute_of (middle, "text-anchor"));
  assert_near (number_of (middle, "x"), 100 - whole_mm / 2, within);
}

/* Where two directions meet, the viewer sets the whole line: parts of it do not follow each other.
 */
static void
test_numbers_among_both_directions (void)
{
  const SqType type = small (SQ_ALIGN_LEFT);
  g_autoptr (GPtrArray) elements = page_of ("23 fc " HEBREW " 17 key", &type);
  g_assert_cmpstr (nth_element (elements, "text", 0)->words->str, ==, "23 fc " HEBREW " 17 key");
  g_assert_cmpuint (count_elements (elements, "tspan"), ==, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/svg text/any words are held", test_words);
  g_test_add_func ("/svg text/what is no UTF-8", test_not_utf8);
  g_test_add_func ("/svg text/size, weight, tracking, halo and turn", test_look);
  g_test_add_func ("/svg text/it is anchored where it is aligned", test_anchors);
  g_test_add_func ("/svg text/it is as wide as on any other page", test_widths);
  g_test_add_func ("/svg text/each line is a text", test_lines);
  g_test_add_func ("/svg text/lines that end at one side", test_right_lines);
  g_test_add_func ("/svg text/lines that are read from the right", test_lines_from_the_right);
  g_test_add_func ("/svg text/what is cut ends in an ellipsis", test_cut);
  g_test_add_func ("/svg text/a word that is broken", test_broken_word);
  g_test_add_func ("/svg text/what follows a number stays in its place", test_after_numbers);
  g_test_add_func ("/svg text/numbers in a line of both directions",
                   test_numbers_among_both_directions);
  return g_test_run ();
}
