/* test-light-bad-input.c: what nobody would build, and somebody will type */
#include "base/error.h"
#include "light-scene.h"
#include "light/kept-fields.h"
#include "light/obstacles.h"

/* Readings eight kilometres from the origin, where a number's last digit is 1e-12 m. */
#define FAR_SAME 1e-9
#define FAR_SAME_QUICK 1e-3

#define LAMPS                                                                                      \
  "'classes': [{'id': 'lens', 'beams': [{'beam_deg': 30, 'field_deg': 50, 'peak_cd': 9000}],"      \
  "  'face': {'width': 0.2}}, {'id': 'mat', 'emits': 'lambert', 'lumens': 5000, 'face': {'shape':" \
  "  'rect', 'width': 1, 'height': 0.5}}, {'id': 'ball', 'emits': 'sphere', 'lumens': 3000,"       \
  "  'face': {'width': 0.4}}, {'id': 'thin', 'emits': 'lambert', 'lumens': 500, 'face': {'shape':" \
  "  'rect', 'width': 1, 'height': 0}}, {'id': 'tube', 'emits': 'tube', 'lumens': 3000, 'face':"   \
  "  {'shape': 'rect', 'width': 1.2, 'height': 0.03}}, {'id': 'bare', 'beams': [{'beam_deg': 30,"  \
  "  'field_deg': 50, 'peak_cd': 9000}]}, {'id': 'dot', 'emits': 'lambert', 'lumens': 500, "       \
  "'face':"                                                                                        \
  "  {'shape': 'rect', 'width': 0, 'height': 0}}],"

static void
assert_readings (const SqScene *scene)
{
  g_autoptr (SqReadings) readings = readings_of (scene);
  for (guint i = 0; i < readings->probes->len; i++) {
    const SqProbeReading *probe = g_ptr_array_index (readings->probes, i);
    double read = probe->probe->receptor == SQ_RECEPTOR_SPOT ? probe->cd_m2 : probe->lux;
    g_assert_true (isfinite (read) && read >= 0.0);
  }
  for (guint i = 0; i < readings->marks->len; i++) {
    const SqMarkReading *mark = g_ptr_array_index (readings->marks, i);
    g_assert_true (isfinite (mark->lux) && mark->lux >= 0.0);
    for (guint k = 0; k < mark->rows->len; k++)
      g_assert_true (isfinite (g_array_index (mark->rows, SqReadingRow, k).lux));
  }
}

/* Each value a light or, inside something and only there, nothing. */
static void
assert_map (const SqScene *scene, const GArray *obstacles, const SqLightMap *map)
{
  const SqReceivers receivers = sq_light_map_receivers (map, scene);
  for (int i = 0; i < map->rows * map->columns; i++) {
    SqPoint at = sq_receiver_point (&receivers.grid, i % map->columns, i / map->columns);
    if (sq_obstacles_hold (obstacles, at))
      g_assert_true (isnan (map->lux[i]));
    else if (!(isfinite (map->lux[i]) && map->lux[i] >= 0.0))
      g_error ("%g lx at (%.17g, %.17g, %.17g)", map->lux[i], at.x_m, at.y_m, at.z_m);
  }
}

/* All ways to a map. */
static void
assert_defined (const SqScene *scene, SqMapRequest request)
{
  g_autoptr (SqKeptFields) kept = sq_kept_fields_new (SQ_KEPT_BYTES, 2);
  g_autoptr (GArray) obstacles = sq_obstacles_new (scene);
  for (int way = SQ_WAY_EXACT; way <= SQ_WAY_QUICK; way++)
    for (int normal = SQ_NORMAL_UP; normal <= SQ_NORMAL_SQUARE; normal++) {
      g_autoptr (GError) error = NULL;
      request.way = (SqWay)way;
      request.normal = normal;
      g_autoptr (SqLightMap) map = sq_light_map (scene, &request, 2, NULL, &error);
      g_assert_no_error (error);
      g_autoptr (SqLightMap) again = sq_kept_fields_map (kept, scene, &request, NULL, &error);
      g_assert_no_error (error);
      assert_map (scene, obstacles, map);
      assert_map (scene, obstacles, again);
      gsize size = (gsize)map->rows * (gsize)map->columns * sizeof (double);
      if (way == SQ_WAY_EXACT)
        g_assert_cmpmem (map->lux, size, again->lux, size);
    }
  assert_readings (scene);
}

static SqMapRequest
field (const SqScene *scene, double from_m, double to_m, double step_m)
{
  SqMapRequest request = sq_map_request (scene, step_m);
  request.from = (SqPlace){ from_m, from_m };
  request.to = (SqPlace){ to_m, to_m };
  return request;
}

/* Points on faces, edges and corners; solids that coincide; a lamp in a point of the map, in its
 * plane, below it; straight up and down. */
static void
test_touching (void)
{
  g_autoptr (SqScene) scene = scene_of (
    LAMPS "'pieces': [{'id': 'p', 'base': 0, 'top': 1.2, 'outline': [[1, 1], [2, 1], [2, 2],"
          "[1, 2]]}, {'id': 'q', 'base': 0, 'top': 1.2, 'outline': [[1, 1], [2, 1], [2, 2],"
          "[1, 2]]}, {'id': 'r', 'base': 1.2, 'top': 2, 'outline': [[2, 2], [3, 2], [3, 3],"
          "[2, 3]]}],"
          "'marks': [{'id': 'm', 'at': [0.25, 2.5]}, {'id': 'n', 'at': [0.25, 2.5]}],"
          "'panels': [{'id': 'g', 'kind': 'flag', 'at': [1, 3, 1.2], 'facing': 90, 'width': 1,"
          "'height': 1}, {'id': 'h', 'kind': 'flag', 'at': [1, 3, 1.2], 'facing': 90, 'width': 1,"
          "'height': 1}, {'id': 'i', 'kind': 'flag', 'at': [1.25, 3, 1.2], 'facing': 270,"
          "'width': 1, 'height': 1}, {'id': 'j', 'kind': 'flag', 'at': [2.5, 1.5, 1.2],"
          "'tilt': 90, 'width': 1, 'height': 1}],"
          "'probes': [{'id': 'a', 'at': [1, 1, 1.2]}, {'id': 'b', 'at': [1.5, 1, 0.5]},"
          "{'id': 'c', 'at': [0.5, 0.5, 2.5]}, {'id': 'd', 'at': [1, 3, 1.2]},"
          "{'id': 'e', 'at': [1.5, 1, 1.2], 'receptor': 'dome'}, {'id': 'f', 'at': [1, 1, 1.2],"
          "'receptor': 'spot', 'normal': [1, 0, 0]}, {'id': 'k', 'at': [3, 1, 1.2]}],"
          "'fixtures': [{'id': 'f1', 'class': 'lens', 'at': [0.5, 0.5, 2.5]},"
          "{'id': 'f2', 'class': 'mat', 'at': [2.5, 0.5, 1.2], 'aim': [0, 0.5, 1.2]},"
          "{'id': 'f3', 'class': 'ball', 'at': [3, 1, 1.2]},"
          "{'id': 'f4', 'class': 'bare', 'at': [0, 2, 0.5], 'aim': [0, 2, 3]},"
          "{'id': 'f5', 'class': 'thin', 'at': [0, 3, 2]},"
          "{'id': 'f6', 'class': 'mat', 'at': [2, 1, 1.2], 'aim': [2, 1, 3]},"
          "{'id': 'f7', 'class': 'tube', 'at': [0.5, 1, 1.2], 'aim': [0.5, 1, 0]},"
          "{'id': 'f8', 'class': 'dot', 'at': [0.5, 2, 2], 'aim': [0.5, 2, 0]},"
          "{'id': 'f9', 'class': 'lens', 'at': [0.5, 0.25, 1.2], 'aim': [0.5, 0.25, 3]},"
          "{'id': 'f10', 'class': 'tube', 'at': [1, 0.5, 1], 'aim': [1, 3, 1]}]");
  SqMapRequest request = field (scene, 0.0, 3.0, 0.25);
  for (int i = 0; i < 5; i++) {
    request.height_m = (const double[]){ 0.0, 0.5, 1.0, 1.2, 2.0 }[i];
    assert_defined (scene, request);
  }
}

static SqLightMap *
defined_map (const char *members)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = scene_of (
    LAMPS "'fixtures': [{'id': 'f', 'class': 'mat', 'at': [2.5, 3, 2.5], 'aim': [1, 1, 0.5]}], %s",
    members);
  SqMapRequest request = field (scene, -1.0, 3.0, 0.1);
  request.height_m = 0.4;
  assert_defined (scene, request);
  SqLightMap *map = sq_light_map (scene, &request, 2, NULL, &error);
  g_assert_no_error (error);
  return map;
}

/* What stands twice hides no more than what stands once: the same bits. */
static void
test_twice (void)
{
  static const struct {
    const char *once, *twice;
  } rows[] = {
    { "'pieces': [{'outline': [[1, 1], [2, 1], [2, 2], [1, 2]], 'top': 1}]",
      "'pieces': [{'outline': [[1, 1], [2, 1], [2, 2], [1, 2]], 'top': 1},"
      " {'outline': [[1, 1], [2, 1], [2, 2], [1, 2]], 'top': 1}]" },
    { "'walls': [{'path': [[1, 0.5], [1, 2.5]], 'thickness': 0.3, 'height': 1.5}]",
      "'walls': [{'path': [[1, 0.5], [1, 2.5]], 'thickness': 0.3, 'height': 1.5},"
      " {'path': [[1, 1], [1, 2]], 'thickness': 0.1, 'height': 1.5}]" },
    { "'panels': [{'id': 'g', 'kind': 'flag', 'at': [1, 1, 1.5], 'facing': 30, 'width': 1,"
      "'height': 1}]",
      "'panels': [{'id': 'g', 'kind': 'flag', 'at': [1, 1, 1.5], 'facing': 30, 'width': 1,"
      "'height': 1}, {'id': 'h', 'kind': 'flag', 'at': [1, 1, 1.5], 'facing': 30, 'width': 1,"
      "'height': 1}]" },
    { "'marks': [{'id': 'm', 'at': [1, 1]}]",
      "'marks': [{'id': 'm', 'at': [1, 1]}, {'id': 'n', 'at': [1, 1]}]" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqLightMap) once = defined_map (rows[i].once);
    g_autoptr (SqLightMap) twice = defined_map (rows[i].twice);
    gsize size = (gsize)once->rows * (gsize)once->columns * sizeof (double);
    g_assert_cmpmem (once->lux, size, twice->lux, size);
  }
}

/* Dark, and one line says why. */
static void
test_inside (void)
{
  g_autoptr (SqScene) scene = scene_of (
    LAMPS "'pieces': [{'id': 'crate', 'base': 0, 'top': 2, 'outline': [[1, 1], [2, 1], [2, 2],"
          "[1, 2]]}],"
          "'probes': [{'id': 'in', 'at': [1.2, 1.2, 1]}, {'id': 'out', 'at': [0, 0, 1]}],"
          "'fixtures': [{'id': 'f1', 'class': 'lens', 'at': [1.5, 1.5, 1], 'aim': [0, 0, 1]},"
          "{'id': 'f2', 'class': 'ball', 'at': [1.5, 1.5, 1.5]},"
          "{'id': 'f3', 'class': 'tube', 'at': [1.5, 1.5, 0.5], 'roll': 90},"
          "{'id': 'f4', 'class': 'bare', 'at': [1.5, 1.5, 1], 'aim': [0, 0, 1]}]");
  SqMapRequest request = field (scene, 0.0, 3.0, 0.25);
  assert_defined (scene, request);
  for (int way = SQ_WAY_EXACT; way <= SQ_WAY_QUICK; way++) {
    g_autoptr (GError) error = NULL;
    request.way = (SqWay)way;
    g_autoptr (SqLightMap) map = sq_light_map (scene, &request, 1, NULL, &error);
    g_assert_no_error (error);
    for (int i = 0; i < map->rows * map->columns; i++)
      g_assert_true (isnan (map->lux[i]) || map->lux[i] == 0.0);
  }
  g_autoptr (SqReadings) readings = readings_of (scene);
  for (guint i = 0; i < readings->probes->len; i++)
    g_assert_cmpfloat (((SqProbeReading *)g_ptr_array_index (readings->probes, i))->lux, ==, 0.0);
  static const char *const said[] = { "f1", "f2", "f3", "f4", "in" };
  for (gsize k = 0; k < G_N_ELEMENTS (said); k++) {
    g_autofree char *line = g_strdup_printf ("%s: inside crate, which stops its light", said[k]);
    guint n = 0;
    for (guint i = 0; i < readings->not_counted->len; i++)
      n += g_str_equal (g_ptr_array_index (readings->not_counted, i), line);
    g_assert_cmpuint (n, ==, 1);
  }
}

/* Nothing stands in a panel without width; a lamp may have a face without height. */
static void
test_without_size (void)
{
  g_autoptr (SqScene) scene = scene_of (
    LAMPS
    "'panels': [{'id': 'g', 'kind': 'flag', 'at': [1, 1, 1.5], 'width': 1, 'height': 1},"
    "{'id': 'h', 'kind': 'flag', 'at': [1, 1, 1.5], 'width': 1e-9, 'height': 1e-9},"
    "{'id': 'i', 'kind': 'flag', 'at': [1, 1, 1.5], 'width': 1, 'height': 1e-12}],"
    "'pieces': [{'outline': [[2, 1], [2.0001, 1], [2, 2]], 'base': 0.5,"
    "'top': 0.500000001}],"
    "'fixtures': [{'id': 'f1', 'class': 'thin', 'at': [1, 2, 3], 'aim': [1, 1, 0]},"
    "{'id': 'f2', 'class': 'dot', 'at': [2, 2, 3], 'aim': [1, 1, 0], 'modifiers': [{'kind':"
    "'doors'}]}, {'id': 'f3', 'class': 'thin', 'at': [0, 0, 2], 'aim': [1, 1, 1],"
    "'modifiers': [{'kind': 'egg-crate', 'cutoff_deg': 0.001}]}, {'id': 'f4', 'class': 'lens',"
    "'at': [0, 1, 2], 'aim': [1, 1, 1], 'modifiers': [{'kind': 'snoot', 'cutoff_deg': 0.001}]}]");
  assert_defined (scene, field (scene, 0.0, 3.0, 0.25));
  static const char *const paths[] = { "g.width", "g.height" };
  for (gsize i = 0; i < G_N_ELEMENTS (paths); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_null (sq_scene_set (scene, paths[i], "0", &error));
    g_assert_error (error, SQ_ERROR, SQ_ERROR_VALUE);
  }
}

/* Slats that cross, and a thousand nets each before all of the lamp: past a thousand parts the face
 * is seen in cells. */
static void
thousand (const char *kind, double width_m, double step_m)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (3);
  g_autoptr (GString) panels = g_string_new (NULL);
  for (int i = 0; i < 1000; i++) {
    double x = g_rand_double_range (dice, -0.3, 0.3), y = g_rand_double_range (dice, -0.3, 0.3);
    double facing = g_rand_double_range (dice, 0, 360), tilt = g_rand_double_range (dice, -60, 60);
    g_string_append_printf (panels,
                            "%s{'id': 'g%d', 'kind': '%s', 'at': [%.6f, %.6f, 2], 'facing': %.6f,"
                            "'material': 'net', 'tilt': %.6f, 'width': %g, 'height': 0.4}",
                            i ? "," : "", i, kind, x, y, facing, tilt, width_m);
  }
  g_autoptr (SqScene) scene =
    scene_of (LAMPS "'materials': [{'id': 'net', 'for': 'net', 'direct': 0.99}],"
                    "'panels': [%s], 'probes': [{'id': 'a', 'at': [0, 0, 1]}],"
                    "'marks': [{'id': 'm', 'at': [0.5, 0.5]}],"
                    "'fixtures': [{'id': 'f1', 'class': 'mat', 'at': [0, 0, 3]},"
                    "{'id': 'f2', 'class': 'lens', 'at': [0.2, 0, 3]},"
                    "{'id': 'f3', 'class': 'tube', 'at': [0.2, 0, 3]}]",
              panels->str);
  g_test_timer_start ();
  assert_defined (scene, field (scene, -1.0, 1.0, step_m));
  g_test_message ("%s: %.2f s", kind, g_test_timer_elapsed ());
}

static void
test_thousand_panels (void)
{
  thousand ("flag", 0.02, 0.5);
  thousand ("flag", 0.5, 0.5);
  thousand ("net", 0.02, 1.0);
  thousand ("net", 0.5, 1.0);
}

/* A hundred million points: refused in one line, and at once. */
static void
assert_refused (const SqScene *scene, const SqMapRequest *request)
{
  g_autoptr (SqKeptFields) kept = sq_kept_fields_new (SQ_KEPT_BYTES, 2);
  for (int keeps = 0; keeps < 2; keeps++) {
    g_autoptr (GError) error = NULL;
    SqLightMap *map = keeps ? sq_kept_fields_map (kept, scene, request, NULL, &error)
                            : sq_light_map (scene, request, 2, NULL, &error);
    g_assert_null (map);
    g_assert_error (error, SQ_ERROR, SQ_ERROR_LIMIT);
    g_assert_true (g_str_has_prefix (error->message, "map: "));
    g_assert_null (strchr (error->message, '\n'));
  }
}

static void
test_far_and_large (void)
{
  g_autoptr (SqScene) scene = scene_of (
    LAMPS "'fixtures': [{'id': 'f1', 'class': 'lens', 'at': [0, 0, 3]},"
          "{'id': 'f2', 'class': 'mat', 'at': [0, 0, 3], 'aim': [9, 9, 0]},"
          "{'id': 'f3', 'class': 'bare', 'at': [0, 0, 3], 'aim': [9, 9, 0]}],"
          "'pieces': [{'id': 'p', 'base': 0, 'top': 2, 'outline': [[1, 1], [2, 1], [2, 2]]}]");
  assert_defined (scene, field (scene, 1e6, 1e6 + 3.0, 0.5));
  assert_defined (scene, field (scene, -1e6, -1e6 + 3.0, 0.5));
  assert_defined (scene, field (scene, 0.0, 1.0, 50.0)); /* one point */
  assert_defined (scene, field (scene, 0.5, 0.5, 0.1));  /* likewise */
  assert_defined (scene, field (scene, -1e5, 1e5, 1e4));
  SqMapRequest request = field (scene, 0.0, 1000.0, 0.1);
  assert_refused (scene, &request);
  request.way = SQ_WAY_QUICK;
  assert_refused (scene, &request);
}

/* The same set, all of it moved by this much both ways. */
static SqScene *
moved_set (double by_m)
{
  return scene_of (
    LAMPS "'fixtures': [{'id': 'f1', 'class': 'mat', 'at': [%.17g, %.17g, 3], 'aim': [%.17g, %.17g,"
          "0]}, {'id': 'f2', 'class': 'ball', 'at': [%.17g, %.17g, 2]}],"
          "'panels': [{'id': 'g', 'kind': 'flag', 'at': [%.17g, %.17g, 2.5], 'tilt': 90, 'width': "
          "1, 'height': 1}], 'marks': [{'id': 'm', 'at': [%.17g, %.17g]}]",
    by_m, by_m, by_m + 2.0, by_m + 2.0, by_m + 3.0, by_m, by_m + 0.5, by_m + 0.5, by_m + 1.5,
    by_m + 1.0);
}

static void
test_far_off (void)
{
  const double far_m = 8192.0; /* so that all places stay what they are */
  g_autoptr (SqScene) near = moved_set (0.0), far = moved_set (far_m), edge = moved_set (9990.0);
  assert_defined (far, field (far, far_m, far_m + 3.0, 0.25));
  assert_defined (edge, field (edge, 9990.0, 9993.0, 0.25));
  assert_defined (edge, field (edge, 0.0, 3.0, 0.25));
  g_autoptr (GError) refused = NULL;
  g_assert_null (sq_scene_set (near, "f1.at", "[100000, 0, 3]", &refused));
  g_assert_error (refused, SQ_ERROR, SQ_ERROR_VALUE);
  for (int way = SQ_WAY_EXACT; way <= SQ_WAY_QUICK; way++) {
    g_autoptr (GError) error = NULL;
    SqMapRequest request = field (near, 0.0, 3.0, 0.25);
    request.way = (SqWay)way;
    g_autoptr (SqLightMap) here = sq_light_map (near, &request, 1, NULL, &error);
    g_assert_no_error (error);
    request.from = (SqPlace){ far_m, far_m };
    request.to = (SqPlace){ far_m + 3.0, far_m + 3.0 };
    g_autoptr (SqLightMap) there = sq_light_map (far, &request, 1, NULL, &error);
    g_assert_no_error (error);
    double same = way == SQ_WAY_EXACT ? FAR_SAME : FAR_SAME_QUICK;
    for (int i = 0; i < here->rows * here->columns; i++)
      if (!isnan (here->lux[i]))
        g_assert_cmpfloat_with_epsilon (there->lux[i], here->lux[i], same * (here->lux[i] + 1.0));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/light/bad input/touching", test_touching);
  g_test_add_func ("/light/bad input/twice the same", test_twice);
  g_test_add_func ("/light/bad input/inside something", test_inside);
  g_test_add_func ("/light/bad input/without size", test_without_size);
  g_test_add_func ("/light/bad input/a thousand panels", test_thousand_panels);
  g_test_add_func ("/light/bad input/far and large", test_far_and_large);
  g_test_add_func ("/light/bad input/far off", test_far_off);
  return g_test_run ();
}
