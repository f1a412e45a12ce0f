/* test-plot-map.c: how far light is mapped round a set, and what is said of what is not counted */
#include "paper/not-counted.h"
#include "paper/plot-private.h"
#include "plot-place.h"

#define PROBED_M 0.25 /* steps in which the end of the light is looked for */
#define ROUNDING_M 1e-6

/* A bulb over an open floor with a kerb: nothing hinders its light. */
#define OPEN_FLOOR                                                                                 \
  "'room': {'bounce': false}, 'map': {'height': 0.2, 'normal': 'up'},"                             \
  "'walls': [{'id': 'w', 'path': [[0, 0], [4, 0]], 'thickness': 0.1, 'height': 0.01}],"            \
  "'marks': [{'id': 'm', 'label': 'A', 'at': [2, 1]}],"                                            \
  "'cameras': [{'id': 'c', 'label': '1', 'at': [2, 0.5, 1.5], 'aim': 'm', 't_stop': %s}],"         \
  "'fixtures': [{'id': 'f1', 'class': 'bulb-tungsten-60', 'at': [2, 1, 2], 'aim': 'm'}]"

static SqPlot *
lit_plot (const char *t_stop)
{
  g_autoptr (SqScene) scene = scene_of (OPEN_FLOOR, t_stop);
  return plot_of (scene, "A3", 50, SQ_OVERLAY_STOPS);
}

/* A border inside the paper is where the light has ended: darker than the darkest tint, 5 stops
 * under the set stop. Light that went on past it would be cut off in a straight line. */
static void
test_ends (void)
{
  static const char *const stops[] = { "2", "2.8", "4" };
  for (guint k = 0; k < G_N_ELEMENTS (stops); k++) {
    g_autoptr (SqPlot) plot = lit_plot (stops[k]);
    const SqLightMap *map = plot->map;
    double paper_m = sq_plot_page (plot, 0)->layout.field.width_mm * 50 / 1000.0;
    double across_m = map->request.to.x_m - map->request.from.x_m;
    double brightest = 0.0;
    g_assert_cmpfloat (across_m, <, paper_m - 2 * PROBED_M);
    for (int row = 0; row < map->rows; row++)
      for (int side = 0; side < 2; side++) {
        gsize at = (gsize)row * (gsize)map->columns + (gsize)(side * (map->columns - 1));
        brightest = MAX (brightest, map->lux[at]);
      }
    g_assert_cmpfloat (brightest, <=, map->set_lux / 32.0);
  }
}

/* However far light goes, it is read no farther than the paper shows. */
static void
test_paper (void)
{
  g_autoptr (SqPlot) plot = lit_plot ("1");
  const SqMapRequest *request = &plot->map->request;
  SqPaperBox field = sq_plot_page (plot, 0)->layout.field;
  g_assert_cmpfloat (request->to.x_m - request->from.x_m, <=, field.width_mm / 20 + ROUNDING_M);
  g_assert_cmpfloat (request->to.y_m - request->from.y_m, <=, field.height_mm / 20 + ROUNDING_M);
}

/* A wider stop needs less light: the same lamp's goes farther. */
static void
test_follows (void)
{
  g_autoptr (SqPlot) wide = lit_plot ("2"), narrow = lit_plot ("4");
  double wide_m = wide->map->request.to.y_m - wide->map->request.from.y_m;
  double narrow_m = narrow->map->request.to.y_m - narrow->map->request.from.y_m;
  g_assert_cmpfloat (wide_m, >, narrow_m + PROBED_M);
}

/* Light out of doors that ends is told; none leaves a room without openings. */
static void
test_fades (void)
{
  g_autoptr (SqPlot) open = lit_plot ("4");
  g_assert_true (open->fades);
  g_autoptr (SqScene) room = scene_of ("%s", WHOLE);
  g_autoptr (SqPlot) shut = plot_of (room, "A3", 50, SQ_OVERLAY_STOPS);
  g_assert_false (shut->fades);
}

/* Two soft boxes are one line with both numbers; what is not a thing of the scene keeps its word.
 */
static void
test_not_counted (void)
{
  g_autoptr (SqScene) scene = scene_of (
    "'room': {'bounce': true}, 'fixtures': ["
    "{'id': 'f1', 'number': '7', 'class': 'open-face-800', 'at': [0, 0, 2], 'aim': [1, 3, 1],"
    " 'modifiers': [{'kind': 'softbox', 'material': 'full-silk', 'width': 0.6, 'height': 0.6}]},"
    "{'id': 'f2', 'number': '9', 'class': 'open-face-800', 'at': [2, 0, 2], 'aim': [1, 3, 1],"
    " 'modifiers': [{'kind': 'softbox', 'material': 'full-silk', 'width': 0.6, 'height': 0.6}]}]");
  g_autoptr (GError) error = NULL;
  g_autoptr (SqReadings) readings = sq_read_meter (scene, 1, NULL, &error);
  g_assert_no_error (error);
  g_autoptr (GPtrArray) lines = sq_not_counted_lines (readings, readings->not_counted);
  guint n_boxes = 0, n_rooms = 0;
  for (guint k = 0; k < lines->len; k++) {
    const char *line = g_ptr_array_index (lines, k);
    n_boxes += g_str_has_prefix (line, "7, 9: soft box");
    n_rooms += g_str_has_prefix (line, "room: ");
  }
  g_assert_cmpuint (n_boxes, ==, 1);
  g_assert_cmpuint (n_rooms, ==, 1);
  g_assert_cmpuint (lines->len, <, readings->not_counted->len);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plot map/ends where light does", test_ends);
  g_test_add_func ("/plot map/goes no farther than the paper", test_paper);
  g_test_add_func ("/plot map/goes farther for a wider stop", test_follows);
  g_test_add_func ("/plot map/says where tint ends", test_fades);
  g_test_add_func ("/plot map/what is not counted is said by kind", test_not_counted);
  return g_test_run ();
}
