/* test-map.c: light on a level grid */
#include "base/error.h"
#include "light-scene.h"

#define EXACT 1e-9

static SqLightMap *
map_of (const SqScene *scene, const SqMapRequest *request, int threads)
{
  g_autoptr (GError) error = NULL;
  SqLightMap *map = sq_light_map (scene, request, threads, NULL, &error);
  g_assert_no_error (error);
  return map;
}

/* A room with a window, two people, furniture, nets, and lamps of every kind. */
static SqScene *
busy_scene (void)
{
  return scene_of (
    "'room': {'ceiling_height': 2.8},"
    "'walls': [{'path': [[0, 0], [5, 0], [5, 4], [0, 4]], 'closed': true, 'openings': ["
    "  {'kind': 'window', 'edge': 0, 'offset': 1, 'width': 1.5},"
    "  {'kind': 'door', 'edge': 2, 'offset': 1, 'width': 0.9, 'open_deg': 60}]}],"
    "'pieces': [{'outline': [[1, 1], [2, 1], [2, 1.3], [1.3, 1.3], [1.3, 2], [1, 2]]},"
    "  {'disc': {'at': [3.5, 2], 'radius': 0.4}}],"
    "'marks': [{'id': 'a', 'at': [2.5, 2.5]}, {'id': 'b', 'at': [3, 1], 'posture': 'sit'}],"
    "'cameras': [{'id': 'cam', 'at': [2.5, 0.3, 1.5], 'aim': 'a'}],"
    "'materials': [{'id': 'n', 'for': 'net', 'direct': 0.5}],"
    "'panels': [{'id': 'g', 'kind': 'net', 'material': 'n', 'at': [2, 3, 2], 'tilt': 60,"
    "  'width': 0.8, 'height': 0.6}, {'id': 'h', 'kind': 'flag', 'at': [4, 3, 2], 'facing': 40,"
    "  'width': 0.6, 'height': 0.9}],"
    "'classes': [{'id': 'soft', 'emits': 'lambert', 'lumens': 8000, 'face': {'shape': 'rect',"
    "  'width': 0.6, 'height': 0.4}},"
    " {'id': 'lens', 'beams': [{'beam_deg': 12, 'field_deg': 20, 'peak_cd': 60000},"
    "  {'beam_deg': 50, 'field_deg': 70, 'peak_cd': 5000}], 'face': {'width': 0.2}},"
    " {'id': 'ball', 'emits': 'sphere', 'lumens': 3000, 'face': {'width': 0.4}},"
    " {'id': 'tube', 'emits': 'tube', 'lumens': 3000, 'face': {'shape': 'rect', 'width': 1.2,"
    "  'height': 0.03}}],"
    "'fixtures': [{'id': 'f1', 'class': 'soft', 'at': [1, 3.5, 2.2], 'aim': 'a'},"
    " {'id': 'f2', 'class': 'lens', 'at': [1.7, -3, 3], 'aim': 'a', 'modifiers': ["
    "  {'kind': 'doors', 'leaves': [20, 90, 20, 90]}]},"
    " {'id': 'f3', 'class': 'ball', 'at': [3.5, 2, 2.4]},"
    " {'id': 'f4', 'class': 'tube', 'at': [4.5, 2, 2.7]},"
    " {'id': 'f5', 'class': 'soft', 'at': [4.5, 3.5, 2.2], 'aim': 'b', 'modifiers': ["
    "  {'kind': 'egg-crate', 'cutoff_deg': 40}]}]");
}

/* The same bytes whatever the threads. */
static void
test_threads (void)
{
  g_autoptr (SqScene) scene = busy_scene ();
  for (int normal = SQ_NORMAL_UP; normal <= SQ_NORMAL_SQUARE; normal++) {
    SqMapRequest request = sq_map_request (scene, 0.2);
    request.normal = normal;
    g_autoptr (SqLightMap) one = map_of (scene, &request, 1);
    for (int threads = 2; threads <= 3; threads++) {
      g_autoptr (SqLightMap) more = map_of (scene, &request, threads);
      gsize size = (gsize)one->rows * one->columns * sizeof (double);
      g_assert_cmpint (more->rows, ==, one->rows);
      g_assert_cmpint (more->columns, ==, one->columns);
      g_assert_cmpmem (one->lux, size, more->lux, size);
    }
  }
}

/* A map's point reads what a probe there reads. */
static void
test_same_as_probe (void)
{
  g_autoptr (SqScene) scene = busy_scene ();
  SqMapRequest request = sq_map_request (scene, 0.7);
  request.from = (SqPlace){ 0.31, 0.33 };
  request.to = (SqPlace){ 4.9, 3.9 };
  g_autoptr (SqLightMap) map = map_of (scene, &request, 1);
  g_assert_cmpint (map->columns, ==, 7);
  g_assert_cmpint (map->rows, ==, 6);
  guint n_lit = 0;
  for (int i = 0; i < map->rows * map->columns; i++) {
    if (isnan (map->lux[i]))
      continue;
    g_autoptr (GError) error = NULL;
    g_autofree char *probes = g_strdup_printf ("[{\"id\": \"p\", \"at\": [%.17g, %.17g, 1.2]}]",
                                               map->first.x_m + i % map->columns * 0.7,
                                               map->first.y_m + i / map->columns * 0.7);
    g_autoptr (SqScene) probed = sq_scene_set (scene, "probes", probes, &error);
    g_assert_no_error (error);
    g_assert_cmpfloat (lux_of (probed), ==, map->lux[i]);
    n_lit += map->lux[i] > 1.0;
  }
  g_assert_cmpuint (n_lit, >, 20);
}

/* A point lamp 2 m over the plane: I cos / d² looking up, I / d² square on. */
static void
test_values (void)
{
  g_autoptr (SqScene) scene =
    scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172}],"
              "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 3.2]},"
              "  {'id': 'g', 'class': 'c', 'at': [0, 0, 3.2], 'level': 0.5},"
              "  {'id': 'h', 'class': 'c', 'at': [0, 0, 3.2], 'on': false}],"
              "'map': {'height': 1.2}");
  SqMapRequest request = sq_map_request (scene, 0.5);
  request.from = (SqPlace){ -1.0, -0.5 };
  request.to = (SqPlace){ 1.0, 0.5 };
  for (int normal = SQ_NORMAL_UP; normal <= SQ_NORMAL_SQUARE; normal++) {
    request.normal = normal;
    g_autoptr (SqLightMap) map = map_of (scene, &request, 1);
    g_assert_cmpint (map->columns, ==, 5);
    g_assert_cmpint (map->rows, ==, 3);
    for (int i = 0; i < 15; i++) {
      double x = -1.0 + 0.5 * (i % 5), y = -0.5 + 0.5 * (i / 5), square = x * x + y * y + 4.0;
      double cosine = normal == SQ_NORMAL_UP ? 2.0 / sqrt (square) : 1.0;
      if (normal == SQ_NORMAL_CAMERA) /* none: toward the page's bottom */
        cosine = MAX (y / sqrt (square), 0.0);
      g_assert_cmpfloat_with_epsilon (map->lux[i], 1500.0 * cosine / square, 1e-7);
    }
  }
  /* 250 for a flat receptor, ISO 800, 1/48 s, T2.8. */
  g_autoptr (SqLightMap) map = map_of (scene, &request, 1);
  assert_near (map->set_lux, 250.0 * 2.8 * 2.8 * 48.0 / 800.0, EXACT);
}

/* Inside a solid there is no light to read: NAN. */
static void
test_inside_solids (void)
{
  g_autoptr (SqScene) scene =
    scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 1000}],"
              "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 3]}],"
              "'pieces': [{'outline': [[1, 1], [2, 1], [2, 2], [1, 2]], 'top': 1}]");
  SqMapRequest request = sq_map_request (scene, 0.5);
  request.from = (SqPlace){ 0.0, 0.0 };
  request.to = (SqPlace){ 3.0, 3.0 };
  request.height_m = 0.5;
  g_autoptr (SqLightMap) map = map_of (scene, &request, 1);
  for (int i = 0; i < 49; i++) {
    gboolean inside = i == 3 * 7 + 3; /* (1.5, 1.5); its border is not inside */
    g_assert_true (isnan (map->lux[i]) == inside);
  }
  request.height_m = 1.0; /* on top of it */
  g_autoptr (SqLightMap) top = map_of (scene, &request, 1);
  for (int i = 0; i < 49; i++)
    g_assert_cmpfloat (top->lux[i], >, 0.0);
}

/* The set and a margin where no field is named. */
static void
test_field (void)
{
  g_autoptr (SqScene) scene = scene_of ("'walls': [{'path': [[0, 0], [4, 0]], 'thickness': 0.2}],"
                                        "'panels': [{'id': 'g', 'kind': 'flag', 'at': [2, 3, 1], "
                                        "'facing': 90, 'width': 2, 'height': 1}],"
                                        "'pieces': [{'disc': {'at': [5, 1], 'radius': 0.5}}],"
                                        "'marks': [{'id': 'a', 'at': [2, -2]}]");
  SqPlace from, to;
  g_assert_true (sq_scene_extent (scene, 0.5, &from, &to));
  g_assert_cmpfloat_with_epsilon (from.x_m, -0.6, EXACT);
  g_assert_cmpfloat_with_epsilon (from.y_m, -2.5, EXACT);
  g_assert_cmpfloat_with_epsilon (to.x_m, 6.0, EXACT);
  g_assert_cmpfloat_with_epsilon (to.y_m, 3.5, EXACT);
  SqMapRequest request = sq_map_request (scene, 1.0);
  g_autoptr (SqLightMap) map = map_of (scene, &request, 1);
  g_assert_cmpfloat (map->first.x_m, ==, map->request.from.x_m);
  g_assert_cmpfloat (map->request.from.x_m, <, from.x_m);
  g_autoptr (SqScene) empty = scene_of ("'units': 'metric'");
  g_assert_false (sq_scene_extent (empty, 0.5, &from, &to));
  request = sq_map_request (empty, 1.0);
  g_autoptr (SqLightMap) dark = map_of (empty, &request, 1);
  for (int i = 0; i < dark->rows * dark->columns; i++)
    g_assert_cmpfloat (dark->lux[i], ==, 0.0);
}

static void
test_refused (void)
{
  static const struct {
    double step_m;
    SqPlace from, to;
    int code;
  } rows[] = {
    { 0.0, { 0, 0 }, { 1, 1 }, SQ_ERROR_VALUE },  { -1.0, { 0, 0 }, { 1, 1 }, SQ_ERROR_VALUE },
    { NAN, { 0, 0 }, { 1, 1 }, SQ_ERROR_VALUE },  { INFINITY, { 0, 0 }, { 1, 1 }, SQ_ERROR_VALUE },
    { 1e-4, { 0, 0 }, { 1, 1 }, SQ_ERROR_LIMIT }, { 1e-300, { 0, 0 }, { 1, 1 }, SQ_ERROR_LIMIT },
    { 1.0, { 3, 0 }, { 1, 1 }, SQ_ERROR_LIMIT },
  };
  g_autoptr (SqScene) scene = scene_of ("'units': 'metric'");
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (GError) error = NULL;
    SqMapRequest request = sq_map_request (scene, rows[i].step_m);
    request.from = rows[i].from;
    request.to = rows[i].to;
    g_assert_null (sq_light_map (scene, &request, 1, NULL, &error));
    g_assert_error (error, SQ_ERROR, rows[i].code);
  }
}

static void
test_cancelled (void)
{
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = busy_scene ();
  SqMapRequest request = sq_map_request (scene, 0.01);
  g_cancellable_cancel (cancellable);
  g_assert_null (sq_light_map (scene, &request, 3, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/map/the same for any number of threads", test_threads);
  g_test_add_func ("/map/the same as a probe there", test_same_as_probe);
  g_test_add_func ("/map/values", test_values);
  g_test_add_func ("/map/inside solids", test_inside_solids);
  g_test_add_func ("/map/field", test_field);
  g_test_add_func ("/map/refused", test_refused);
  g_test_add_func ("/map/cancelled", test_cancelled);
  return g_test_run ();
}
