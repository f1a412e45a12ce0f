/* test-plot-text.c: what stands on a page is found in its files: as text, by layer, by bookmark */
#include "plot-place.h"
#include "svg-elements.h"

#define HEBREW "\u05d4\u05e8\u05e9\u05ea\u05d5\u05ea \u05dc\u05de\u05e2\u05dc\u05d4"
#define JAPANESE "\u7db2\u306f\u4e0a\u3052\u305f\u307e\u307e"

static GPtrArray *
svg_of (const Place *place, const SqPlot *plot)
{
  g_autofree char *path = in_place (place, "plot.svg"), *text = NULL;
  gsize length;
  g_assert_cmpint (sq_plot_n_pages (plot), ==, 1);
  export_to (plot, path, SQ_PLOT_SVG);
  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  return elements_of (text, length);
}

/* All texts of a layer, or of all, in a row and without blanks. */
static char *
text_in (const GPtrArray *elements, const char *layer)
{
  GString *words = g_string_new (NULL);
  for (guint k = 0; k < elements->len; k++) {
    const Element *element = g_ptr_array_index (elements, k);
    if (g_str_equal (element->name, "text") &&
        (layer == NULL || g_strcmp0 (element->layer, layer) == 0))
      g_string_append (words, element->words->str);
  }
  return without_blanks (g_string_free (words, FALSE));
}

static void
test_found (Place *place, gconstpointer unused)
{
  static const char *const words[] = {
    "Salt and Iron",
    "Net loft, night",
    "2026-03-09",
    "O. Brandt",
    "17",
    "23",
    "KEY",
    "FILL",
    "2.40",
    "Legend",
    "Nets stay up.",
    "issued",
    "1:50",
    "licensed person",
  };
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 50, SQ_OVERLAY_LUX);
  g_autofree char *pdf = in_place (place, "plot.pdf");
  export_to (plot, pdf, SQ_PLOT_PDF);
  g_autoptr (GPtrArray) elements = svg_of (place, plot);
  g_autofree char *in_svg = text_in (elements, NULL), *in_pdf = text_of (pdf);
  for (guint k = 0; k < G_N_ELEMENTS (words); k++) {
    if (!says (in_svg, words[k]))
      g_error ("%s is not found in the SVG", words[k]);
    if (!says (in_pdf, words[k]))
      g_error ("%s is not found in the PDF", words[k]);
  }
}

/* Each thing in the layer that is named after it. */
static void
test_layers (Place *place, gconstpointer unused)
{
  static const struct {
    const char *layer, *words;
  } rows[] = { { "tags", "17" },
               { "tags", "KEY" },
               { "readings", "lx" },
               { "labels", "T4" },
               { "sheet", "Nets stay up." },
               { "sheet", "Salt and Iron" },
               { "overlay", "256" } };
  static const char *const drawn[] = { "paper",  "overlay", "set",     "throws", "sight",
                                       "people", "lamps",   "cameras", "tags",   "sheet" };
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 50, SQ_OVERLAY_LUX);
  g_autoptr (GPtrArray) elements = svg_of (place, plot);
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autofree char *text = text_in (elements, rows[k].layer);
    if (!says (text, rows[k].words))
      g_error ("%s is not in the layer %s: %s", rows[k].words, rows[k].layer, text);
  }
  for (guint k = 0; k < G_N_ELEMENTS (drawn); k++) {
    guint paths = 0;
    for (guint n = 0; n < elements->len; n++) {
      const Element *element = g_ptr_array_index (elements, n);
      paths += g_str_equal (element->name, "path") && g_strcmp0 (element->layer, drawn[k]) == 0;
    }
    if (paths == 0)
      g_error ("nothing is drawn in the layer %s", drawn[k]);
  }
  /* All is in a layer, and no layer comes twice. */
  for (guint n = 0; n < elements->len; n++) {
    const Element *element = g_ptr_array_index (elements, n);
    if (g_str_equal (element->name, "text"))
      g_assert_nonnull (element->layer);
    if (element->layer != NULL && strchr (element->layer, '-') != NULL)
      g_error ("%s: a layer comes twice", element->layer);
  }
}

/* Any script, and what XML would take for itself. */
static void
test_any_words (Place *place, gconstpointer unused)
{
  g_autoptr (SqScene) scene =
    scene_of (WALL ", 'title': {'production': 'Salt & <Iron>'}, 'notes': ["
                   "{'id': 'n1', 'text': '" HEBREW "', 'at': [1, 1]},"
                   "{'id': 'n2', 'text': '" JAPANESE "', 'at': [2, 1]},"
                   "{'id': 'n3', 'text': 'bell \\u0007 end', 'at': [3, 1]}]");
  g_autoptr (SqPlot) plot = plot_of (scene, "A3", 50, SQ_OVERLAY_NONE);
  g_autoptr (GPtrArray) elements = svg_of (place, plot);
  g_autofree char *text = text_in (elements, "sheet");
  g_assert_true (says (text, "Salt & <Iron>"));
  g_assert_true (says (text, HEBREW));
  g_assert_true (says (text, JAPANESE));
  g_assert_true (says (text, "bell \ufffd end"));
  g_assert_true (
    g_str_has_prefix (nth_element (elements, "title", 0)->words->str, "Salt & <Iron>: "));
}

/* A page each has its bookmark; each font is in the file. */
static void
test_pdf (Place *place, gconstpointer unused)
{
  g_autoptr (SqScene) scene = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) plot = plot_of (scene, "A4", 100, SQ_OVERLAY_LUX);
  g_autofree char *pdf = in_place (place, "plot.pdf");
  export_to (plot, pdf, SQ_PLOT_PDF);
  int n_pages = sq_plot_n_pages (plot);
  g_assert_cmpint (n_pages, >, 1); /* A4 has its column on the second */

  g_autofree char *xml = output_of ("pdftohtml", "-xml", "-i", "-stdout", pdf, NULL);
  const char *outline = strstr (xml, "<outline>");
  g_assert_nonnull (outline);
  for (int page = 1; page <= n_pages; page++) {
    g_autofree char *item = g_strdup_printf ("<item page=\"%d\">", page);
    const char *found = strstr (outline, item);
    g_assert_nonnull (found);
    g_assert_true (found[strlen (item)] != '<'); /* it has a name */
  }

  g_autofree char *fonts = output_of ("pdffonts", pdf, NULL, NULL, NULL, NULL);
  g_auto (GStrv) lines = g_strsplit (fonts, "\n", -1);
  const char *embedded = strstr (lines[0], "emb"), *mapped = strstr (lines[0], "uni");
  guint n_fonts = 0;
  g_assert_true (embedded != NULL && mapped != NULL);
  for (guint k = 2; lines[k] != NULL && *lines[k] != '\0'; k++, n_fonts++) {
    g_assert_true (g_str_has_prefix (lines[k] + (embedded - lines[0]), "yes"));
    g_assert_true (g_str_has_prefix (lines[k] + (mapped - lines[0]), "yes"));
  }
  g_assert_cmpuint (n_fonts, >, 0);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  ADD_IN_PLACE ("/plot text/it is found in PDF and SVG", test_found);
  ADD_IN_PLACE ("/plot text/it stands in the layer of its thing", test_layers);
  ADD_IN_PLACE ("/plot text/any script, any sign", test_any_words);
  ADD_IN_PLACE ("/plot text/PDF has bookmarks and all fonts", test_pdf);
  return g_test_run ();
}
