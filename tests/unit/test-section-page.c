/* test-section-page.c: sections as drawings and as pages: which light, what is said, bad input */
#include "draw/section-figure.h"
#include "draw/section.h"
#include "paper/plot.h"
#include "paper/scale.h"
#include "scene-text.h"

#include <glib/gstdio.h>

#define ROOM                                                                                       \
  "'walls': [{'id': 'w', 'path': [[0, 0], [8, 0], [8, 6], [0, 6]], 'closed': true, 'height': 3, "  \
  "'thickness': 0.1}]"
#define MARKS                                                                                      \
  "'marks': [{'id': 'm', 'label': 'A', 'at': [4, 3]}, {'id': 'n', 'label': 'B', 'at': [6, 5]}]"

#define WHOLE                                                                                      \
  ROOM ", " MARKS ", 'fixtures': [{'id': 'f1', 'number': '17', 'class': '" LAMP                    \
       "', 'at': [1, 1, 2.4], 'aim': 'm'}, {'id': 'f2', 'number': '23', 'class': '" LAMP           \
       "', 'at': [7, 1, 2], 'aim': 'm', 'role': 'fill'}]"

/* Two labels may touch, no more: square millimetres. */
#define TOUCH_MM2 0.3
#define FACE_MM2 1.0

static void
test_which_light (void)
{
  static const struct {
    const char *name, *lamps, *light;
  } rows[] = {
    { "the first mark's key",
      "{'id': 'a', %s, 'role': 'back', 'aim': 'm'}, {'id': 'b', %s, 'aim': 'm'}", "b" },
    { "the one aimed at it", "{'id': 'a', %s, 'aim': 'n'}, {'id': 'b', %s, 'aim': 'm'}", "b" },
    { "one that burns",
      "{'id': 'a', %s, 'aim': 'm', 'on': false}, {'id': 'b', %s, 'aim': [1, 1, 1]}", "b" },
    { "key there, back elsewhere",
      "{'id': 'a', %s, 'aim': 'n'}, {'id': 'b', %s, 'role': 'back', 'role_at': {'m': 'key'}, "
      "'aim': 'm'}",
      "b" },
    { "no key: what burns",
      "{'id': 'a', %s, 'role': 'fill', 'on': false}, {'id': 'b', %s, 'role': "
      "'back'}",
      "b" },
    { "a key that points elsewhere, a fill that lights somebody on its cut",
      "{'id': 'a', %s, 'aim': [1, 0, 2]}, {'id': 'b', %s, 'role': 'fill', 'aim': [4, 3, 1]}", "b" },
    { "a key that lights somebody else",
      "{'id': 'a', %s, 'aim': [4, 3, 1], 'role': 'fill'}, {'id': 'b', %s, 'aim': [6, 5, 1]}", "b" },
    { "of two fills the stronger",
      "{'id': 'a', %s, 'role': 'fill', 'aim': [4, 3, 1], 'level': 0.1}, {'id': 'b', %s, 'role': "
      "'fill', 'aim': [4, 3, 1]}",
      "b" },
  };
  const char *where = "'class': '" LAMP "', 'at': [1, 1, 2.5]";
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_auto (GStrv) apart = g_strsplit (rows[i].lamps, "%s", -1);
    g_autofree char *lamps = g_strjoinv (where, apart);
    g_autofree char *text = g_strdup_printf (MARKS ", 'fixtures': [%s]", lamps);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (GError) error = NULL;
    const SqFixture *light = sq_section_light (scene, NULL, &error);
    g_assert_no_error (error);
    if (g_strcmp0 (light->id, rows[i].light) != 0)
      g_error ("%s: %s, expected %s", rows[i].name, light->id, rows[i].light);
  }
}

static void
test_light_by_id_and_number (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'fixtures': [{'id': 'a', 'number': 'b', 'class': '" LAMP "', 'at': [1, 1, 2]}, "
                 "{'id': 'b', 'number': '7', 'class': '" LAMP "', 'at': [1, 1, 2]}]");
  g_assert_cmpstr (sq_section_light (scene, "b", NULL)->id, ==, "b"); /* the id comes first */
  g_assert_cmpstr (sq_section_light (scene, "7", NULL)->id, ==, "b");
}

/* @n lamps along a wall, all aimed at the first mark. */
static SqScene *
lamps_along (guint n)
{
  g_autoptr (GString) text = g_string_new (ROOM ", " MARKS ", 'fixtures': [");
  for (guint i = 0; i < n; i++)
    g_string_append_printf (text,
                            "%s{'id': 'f%u', 'class': '" LAMP "', 'at': [%u, %u, %u], 'aim': 'm'}",
                            i > 0 ? "," : "", i, 1 + i % 7, 1 + i / 7 % 4, 2 + i % 3);
  g_string_append (text, "]");
  return right_scene (text->str);
}

static void
test_unknown_light (void)
{
  g_autoptr (SqScene) few = lamps_along (3), many = lamps_along (300), none = right_scene (ROOM);
  g_autoptr (GError) error = NULL, long_error = NULL, no_error = NULL;
  g_assert_null (sq_section_light (few, "f9", &error));
  check_line ("unknown", error, SQ_ERROR_USAGE, "light", "f9|f0, f1, f2");
  g_assert_null (sq_section_light (many, "m", &long_error)); /* a mark is no light */
  check_line ("of many", long_error, SQ_ERROR_USAGE, "light", "f0, f1,|and 276 more");
  g_assert_null (sq_section_light (none, NULL, &no_error));
  check_line ("of none", no_error, SQ_ERROR_USAGE, "fixtures", "no light");
}

/* Draws it nowhere. @report: (nullable) */
static void
draw (const SqSection *section, const SqView *view, SqSectionReport *report)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cairo = cairo_create (surface);
  SqDrawing *drawing = sq_drawing_new (cairo, view);
  const SqSectionRequest request = { .section = section, .report = report };
  sq_draw_section (drawing, &request);
  g_assert_cmpint (cairo_status (cairo), ==, CAIRO_STATUS_SUCCESS);
  sq_drawing_free (drawing);
  cairo_destroy (cairo);
  cairo_surface_destroy (surface);
}

/* No word hides a face. No measured figure, as far as this tells them from words, hides anything of
 * a person: such a figure stands upright, higher than it is wide. */
static void
check_people (const char *name,
              const SqSection *section,
              const SqView *view,
              const SqSectionReport *report)
{
  for (guint i = 0; i < section->scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, section->scene->marks, i);
    SqPaperBox boxes[SQ_FIGURE_BOXES]; /* the face first */
    if (!sq_section_shows_mark (section, mark))
      continue;
    guint n = sq_section_figure_boxes (view, &section->plane, mark, boxes);
    for (guint k = 0; k < report->labels->len; k++) {
      const SqLabel *label = &g_array_index (report->labels, SqLabel, k);
      gboolean measures =
        label->kind == SQ_LABEL_DIMENSION && label->box.height_mm > label->box.width_mm;
      for (guint m = 0; m < (measures ? n : 1); m++)
        if (sq_paper_overlap_mm2 (label->box, boxes[m]) > FACE_MM2)
          g_error ("%s, light %s: a label of kind %d lies on %s", name, section->light->id,
                   (int)label->kind, mark->id);
    }
  }
}

/* Draws it in @field, at 1:@denominator, or at the largest usual scale, and looks at its labels. */
static void
check_labels (
  const char *name, const SqSection *section, double width_mm, double height_mm, double denominator)
{
  SqPaperBox field = { 0, 0, width_mm, height_mm };
  if (denominator == 0.0)
    denominator = sq_scale_fit (SQ_METRIC, section->set.most.x_m - section->set.least.x_m,
                                section->set.most.y_m - section->set.least.y_m, width_mm - 30.0,
                                height_mm - 22.0);
  SqView view = sq_section_view (section, field, 1000.0 / denominator);
  g_autoptr (SqSectionReport) report = sq_section_report_new ();
  draw (section, &view, report);
  for (guint i = 0; i < report->labels->len; i++) {
    const SqLabel *one = &g_array_index (report->labels, SqLabel, i);
    if (!sq_paper_box_within (one->box, field))
      g_error ("%s, light %s: a label is off the field", name, section->light->id);
    for (guint k = i + 1; k < report->labels->len; k++) {
      const SqLabel *other = &g_array_index (report->labels, SqLabel, k);
      if (sq_paper_overlap_mm2 (one->box, other->box) > TOUCH_MM2)
        g_error ("%s, light %s, 1:%.0f: a label of kind %d lies on one of kind %d", name,
                 section->light->id, denominator, (int)one->kind, (int)other->kind);
    }
  }
  check_people (name, section, &view, report);
}

static SqScene *
sample (const char *name)
{
  g_autofree char *path = g_build_filename (SQ_SOURCE_DIR, "samples", name, NULL), *text = NULL;
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GError) error = NULL;
  gsize length;
  g_assert_true (g_file_get_contents (path, &text, &length, NULL));
  SqScene *scene = sq_scene_parse (text, length, library, NULL, &error);
  g_assert_no_error (error);
  return scene;
}

static void
test_no_label_on_another (void)
{
  static const char *const names[] = { "office-interview.squarelaw", "lighthouse-kitchen.squarelaw",
                                       "ferry-terminal.squarelaw", "radio-workshop.squarelaw" };
  for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autoptr (SqScene) scene = sample (names[i]);
    for (guint k = 0; k < scene->fixtures->len; k++) {
      g_autoptr (SqSection) section =
        sq_section_new (scene, NULL, SQ_AT (SqFixture, scene->fixtures, k));
      check_labels (names[i], section, 306.0, 228.0, 0.0); /* A3 */
      check_labels (names[i], section, 267.0, 98.0, 0.0);  /* A4, with words under it */
      check_labels (names[i], section, 306.0, 228.0, 200.0);
    }
  }
}

/* Whatever it is, it has an extent and can be drawn on paper and on both grounds of a screen. */
static void
test_odd_scenes (void)
{
  static const struct {
    const char *name, *scene;
  } rows[] = {
    { "a lamp alone", "" },
    { "on the floor, at a corner", ROOM ", 'pieces': []" },
    { "a ceiling without walls", "'room': {'ceiling_height': 4}" },
    { "everybody at its place",
      "'marks': [{'id': 'm', 'at': [1, 1]}, {'id': 'n', 'at': [1, 1], 'posture': 'lie'}]" },
    { "a mark 9 km off", "'marks': [{'id': 'm', 'at': [9000, 9000]}]" },
    { "a wall through the lamp", "'walls': [{'id': 'w', 'path': [[0, 0], [2, 2]]}]" },
    { "a panel on the lamp", "'panels': [{'id': 'g', 'kind': 'flag', 'at': [1, 1, 2], 'facing': "
                             "0, 'width': 1, 'height': 1}]" },
    { "a camera on the lamp", "'cameras': [{'id': 'c', 'at': [1, 1, 2]}]" },
  };
  static const char *const lamps[] = {
    "'aim': [3, 2, 1]",
    "'aim': [1, 1, 0]",
    "'aim': [1, 1, 9]",
    "'aim': [1.001, 1, 1.999]",
    "'level': 0, 'aim': [3, 3, 1]",
    "'on': false",
    "'mount': 'pipe'",
    "'mount': 'ceiling'",
    "'mount': 'lift', 'aim': [9, 1, 2]",
    "'mount': 'wall'",
    "'mount': 'boom'",
    "'mount': 'hand', 'aim': [1, 1, 2]",
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (guint k = 0; k < 2 * G_N_ELEMENTS (lamps); k++) {
      g_autofree char *text = g_strdup_printf (
        "%s%s'fixtures': [{'id': 'f', 'class': '%s', 'at': [1, 1, 2], %s}]", rows[i].scene,
        *rows[i].scene != '\0' ? ", " : "", k % 2 == 0 ? LAMP : "paper-lantern-75", lamps[k / 2]);
      g_autoptr (SqLibrary) library = sq_library_new ();
      g_autoptr (GError) error = NULL;
      g_autoptr (SqScene) scene = read_scene (library, text, &error);
      if (scene == NULL) /* aimed at itself: refused where it is read */
        continue;
      g_autoptr (SqSection) section =
        sq_section_new (scene, NULL, SQ_AT (SqFixture, scene->fixtures, 0));
      const SqSectionSet *set = &section->set;
      if (!(set->most.x_m - set->least.x_m > 0.5 && set->most.y_m - set->least.y_m > 0.5))
        g_error ("%s, %s: no extent", rows[i].name, lamps[k / 2]);
      for (int ground = SQ_GROUND_PAPER; ground <= SQ_GROUND_DARK; ground++) {
        SqView view = sq_section_view (section, (SqPaperBox){ 0, 0, 200, 60 }, 20.0);
        view.ground = (SqGround)ground;
        draw (section, &view, NULL);
      }
    }
}

static SqPlot *
section_plot (const SqScene *scene, const char *light, const char *sheet, double denominator)
{
  g_autoptr (GError) error = NULL;
  SqPlotRequest request = SQ_PLOT_REQUEST;
  request.n_pages = 1;
  request.pages[0] = SQ_PAGE_WISH;
  request.pages[0].kind = SQ_PAGE_SECTION;
  request.pages[0].light = light;
  request.sheet = sheet;
  request.denominator = denominator;
  SqPlot *plot = sq_plot_new (scene, &request, 1, NULL, &error);
  g_assert_no_error (error);
  return plot;
}

static void
test_page (void)
{
  g_autoptr (SqScene) scene = right_scene (WHOLE);
  g_autoptr (SqPlot) named = section_plot (scene, "f2", NULL, 0.0);
  g_assert_cmpint (sq_plot_n_pages (named), ==, 1);
  g_assert_cmpstr (sq_plot_page_name (named, 0), ==, "Section through 23 and A");
  g_assert_cmpstr (sq_plot_sheet (named)->id, ==, "A3");
  g_assert_cmpuint (sq_plot_remarks (named)->len, ==, 0);
  /* Which was chosen is said where none was asked for. */
  g_autoptr (SqPlot) open = section_plot (scene, NULL, NULL, 0.0);
  g_assert_cmpstr (sq_plot_page_name (open, 0), ==, "Section through 17 and A");
  g_assert_cmpuint (sq_plot_remarks (open)->len, ==, 1);
  g_assert_nonnull (strstr (g_ptr_array_index (sq_plot_remarks (open), 0), "17 (f1)"));
  /* A scale that is asked for is kept, on the smallest sheet too. */
  g_autoptr (SqPlot) asked = section_plot (scene, "f1", "A4", 50.0);
  g_assert_cmpfloat (sq_plot_denominator (asked), ==, 50.0);
  g_assert_cmpstr (sq_plot_sheet (asked)->id, ==, "A4");
}

/* One light is no choice: nothing is said of it. */
static void
test_one_light (void)
{
  g_autoptr (SqScene) scene = lamps_along (1);
  g_autoptr (SqPlot) plot = section_plot (scene, NULL, NULL, 0.0);
  g_assert_cmpuint (sq_plot_remarks (plot)->len, ==, 0);
}

/* Cautions are of the lamps on the cut: these scenes have many more, whose list needed a second
 * sheet. */
static void
test_one_sheet (void)
{
  static const struct {
    const char *name, *light;
  } rows[] = { { "radio-workshop.squarelaw", "f1" },
               { "ferry-terminal.squarelaw", "f31" },
               { "lighthouse-kitchen.squarelaw", "f2" },
               { "office-interview.squarelaw", "f1" } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqScene) scene = sample (rows[i].name);
    g_autoptr (SqPlot) plot = section_plot (scene, rows[i].light, "A4", 0.0);
    if (sq_plot_n_pages (plot) != 1)
      g_error ("%s: %d sheets", rows[i].name, sq_plot_n_pages (plot));
  }
}

static void
test_same_bytes (void)
{
  g_autofree char *folder = g_dir_make_tmp ("squarelaw-section-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "section.pdf", NULL);
  char *bytes[2];
  gsize length[2];
  for (int i = 0; i < 2; i++) {
    g_autoptr (SqScene) scene = right_scene (WHOLE);
    g_autoptr (SqPlot) plot = section_plot (scene, "f1", NULL, 0.0);
    g_autoptr (GError) error = NULL;
    sq_plot_export (plot, path, SQ_PLOT_PDF, &error);
    g_assert_no_error (error);
    g_assert_true (g_file_get_contents (path, &bytes[i], &length[i], NULL));
  }
  g_assert_cmpmem (bytes[0], length[0], bytes[1], length[1]);
  g_free (bytes[0]);
  g_free (bytes[1]);
  g_remove (path);
  g_rmdir (folder);
}

static void
test_five_hundred_lamps (void)
{
  g_autoptr (SqScene) scene = lamps_along (500);
  g_autoptr (SqSection) section =
    sq_section_new (scene, NULL, SQ_AT (SqFixture, scene->fixtures, 0));
  SqView view = sq_section_view (section, (SqPaperBox){ 0, 0, 306, 228 }, 20.0);
  g_autoptr (SqSectionReport) report = sq_section_report_new ();
  draw (section, &view, report);
  guint shown = 0;
  for (guint i = 0; i < scene->fixtures->len; i++)
    shown += sq_section_shows_lamp (section, SQ_AT (SqFixture, scene->fixtures, i));
  guint tags = 0;
  for (guint i = 0; i < report->labels->len; i++)
    tags += g_array_index (report->labels, SqLabel, i).kind == SQ_LABEL_TAG;
  g_assert_cmpuint (tags, ==, shown); /* each that is drawn has its number */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/section/light/the main mark's key", test_which_light);
  g_test_add_func ("/section/light/by id and number", test_light_by_id_and_number);
  g_test_add_func ("/section/light/unknown", test_unknown_light);
  g_test_add_func ("/section/labels/none lies on another", test_no_label_on_another);
  g_test_add_func ("/section/labels/five hundred lamps", test_five_hundred_lamps);
  g_test_add_func ("/section/odd scenes are drawn", test_odd_scenes);
  g_test_add_func ("/section/page/name, sheet, scale", test_page);
  g_test_add_func ("/section/page/one light is not remarked on", test_one_light);
  g_test_add_func ("/section/page/cautions of the cut fit one sheet", test_one_sheet);
  g_test_add_func ("/section/page/the same bytes", test_same_bytes);
  return g_test_run ();
}
