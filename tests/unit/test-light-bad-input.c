/* test-light-bad-input.c: what nobody would build, and somebody will type */
#include "base/error.h"
#include "light-scene.h"
#include "light/kept-fields.h"

#define LAMPS                                                                                      \
  "'classes': [{'id': 'lens', 'beams': [{'beam_deg': 30, 'field_deg': 50, 'peak_cd': 9000}],"      \
  "  'face': {'width': 0.2}}, {'id': 'mat', 'emits': 'lambert', 'lumens': 5000, 'face': {'shape':" \
  "  'rect', 'width': 1, 'height': 0.5}}, {'id': 'ball', 'emits': 'sphere', 'lumens': 3000,"       \
  "  'face': {'width': 0.4}}, {'id': 'thin', 'emits': 'lambert', 'lumens': 500, 'face': {'shape':" \
  "  'rect', 'width': 1, 'height': 0}}, {'id': 'bare', 'beams': [{'beam_deg': 30, 'field_deg': "   \
  "50,"                                                                                            \
  "  'peak_cd': 9000}]}],"

/* All ways to a map, each value a light or, inside something, nothing. */
static void
assert_defined (const SqScene *scene, SqMapRequest request)
{
  g_autoptr (SqKeptFields) kept = sq_kept_fields_new (SQ_KEPT_BYTES, 2);
  for (int way = SQ_WAY_EXACT; way <= SQ_WAY_QUICK; way++)
    for (int normal = SQ_NORMAL_UP; normal <= SQ_NORMAL_SQUARE; normal++) {
      g_autoptr (GError) error = NULL;
      request.way = (SqWay)way;
      request.normal = normal;
      g_autoptr (SqLightMap) map = sq_light_map (scene, &request, 2, NULL, &error);
      g_assert_no_error (error);
      g_autoptr (SqLightMap) again = sq_kept_fields_map (kept, scene, &request, NULL, &error);
      g_assert_no_error (error);
      for (int i = 0; i < map->rows * map->columns; i++) {
        g_assert_true (isnan (map->lux[i]) || (isfinite (map->lux[i]) && map->lux[i] >= 0.0));
        g_assert_cmpint (isnan (map->lux[i]), ==, isnan (again->lux[i]));
      }
    }
  g_autoptr (SqReadings) readings = readings_of (scene);
  for (guint i = 0; i < readings->probes->len; i++) {
    const SqProbeReading *probe = g_ptr_array_index (readings->probes, i);
    g_assert_true (probe->probe->receptor == SQ_RECEPTOR_SPOT || isfinite (probe->lux));
  }
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
          "'panels': [{'id': 'g', 'kind': 'flag', 'at': [1, 3, 1.2], 'facing': 90, 'width': 1,"
          "'height': 1}, {'id': 'h', 'kind': 'flag', 'at': [1, 3, 1.2], 'facing': 90, 'width': 1,"
          "'height': 1}],"
          "'probes': [{'id': 'a', 'at': [1, 1, 1.2]}, {'id': 'b', 'at': [1.5, 1, 0.5]},"
          "{'id': 'c', 'at': [0.5, 0.5, 2.5]}, {'id': 'd', 'at': [1, 3, 1.2]}],"
          "'fixtures': [{'id': 'f1', 'class': 'lens', 'at': [0.5, 0.5, 2.5]},"
          "{'id': 'f2', 'class': 'mat', 'at': [2.5, 0.5, 1.2], 'aim': [0, 0.5, 1.2]},"
          "{'id': 'f3', 'class': 'ball', 'at': [3, 1, 1.2]},"
          "{'id': 'f4', 'class': 'bare', 'at': [0, 2, 0.5], 'aim': [0, 2, 3]},"
          "{'id': 'f5', 'class': 'thin', 'at': [0, 3, 2]},"
          "{'id': 'f6', 'class': 'mat', 'at': [2, 1, 1.2], 'aim': [2, 1, 3]}]");
  assert_defined (scene, field (scene, 0.0, 3.0, 0.25));
}

/* Dark, and one line says why. */
static void
test_inside (void)
{
  g_autoptr (SqScene) scene = scene_of (
    LAMPS "'pieces': [{'id': 'crate', 'base': 0, 'top': 2, 'outline': [[1, 1], [2, 1], [2, 2],"
          "[1, 2]]}],"
          "'probes': [{'id': 'in', 'at': [1.2, 1.2, 1]}, {'id': 'out', 'at': [0, 0, 1]}],"
          "'fixtures': [{'id': 'f1', 'class': 'lens', 'at': [1.5, 1.5, 1], 'aim': [0, 0, 1]}]");
  assert_defined (scene, field (scene, 0.0, 3.0, 0.25));
  g_autoptr (SqReadings) readings = readings_of (scene);
  for (guint i = 0; i < readings->probes->len; i++)
    g_assert_cmpfloat (((SqProbeReading *)g_ptr_array_index (readings->probes, i))->lux, ==, 0.0);
  static const char *const said[] = { "f1: inside crate, which stops its light",
                                      "in: inside crate, which stops its light" };
  for (gsize k = 0; k < G_N_ELEMENTS (said); k++)
    g_assert_true (
      g_ptr_array_find_with_equal_func (readings->not_counted, said[k], g_str_equal, NULL));
}

static void
test_thousand_flags (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (3);
  g_autoptr (GString) flags = g_string_new (NULL);
  for (int i = 0; i < 1000; i++) {
    double x = g_rand_double_range (dice, -0.3, 0.3), y = g_rand_double_range (dice, -0.3, 0.3);
    double facing = g_rand_double_range (dice, 0, 360), tilt = g_rand_double_range (dice, -60, 60);
    g_string_append_printf (flags,
                            "%s{'id': 'g%d', 'kind': 'flag', 'at': [%.6f, %.6f, 2], 'facing': %.6f,"
                            "'tilt': %.6f, 'width': 0.02, 'height': 0.4}",
                            i ? "," : "", i, x, y, facing, tilt);
  }
  g_autoptr (SqScene) scene =
    scene_of (LAMPS "'panels': [%s], 'probes': [{'id': 'a', 'at': [0, 0, 1]}],"
                    "'fixtures': [{'id': 'f1', 'class': 'mat', 'at': [0, 0, 3]},"
                    "{'id': 'f2', 'class': 'lens', 'at': [0.2, 0, 3]}]",
              flags->str);
  assert_defined (scene, field (scene, -1.0, 1.0, 0.5));
}

static void
test_far_and_large (void)
{
  g_autoptr (SqScene) scene = scene_of (
    LAMPS "'fixtures': [{'id': 'f1', 'class': 'lens', 'at': [0, 0, 3]}],"
          "'pieces': [{'id': 'p', 'base': 0, 'top': 2, 'outline': [[1, 1], [2, 1], [2, 2]]}]");
  assert_defined (scene, field (scene, 1e6, 1e6 + 3.0, 0.5));
  assert_defined (scene, field (scene, 0.0, 1.0, 50.0)); /* one point */
  g_autoptr (GError) error = NULL;
  SqMapRequest request = field (scene, 0.0, 1000.0, 0.1); /* a hundred million points */
  g_assert_null (sq_light_map (scene, &request, 2, NULL, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_LIMIT);
  g_assert_null (strchr (error->message, '\n'));
  g_clear_error (&error);
  g_autoptr (SqKeptFields) kept = sq_kept_fields_new (SQ_KEPT_BYTES, 2);
  g_assert_null (sq_kept_fields_map (kept, scene, &request, NULL, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_LIMIT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/light/bad input/touching", test_touching);
  g_test_add_func ("/light/bad input/inside something", test_inside);
  g_test_add_func ("/light/bad input/a thousand flags", test_thousand_flags);
  g_test_add_func ("/light/bad input/far and large", test_far_and_large);
  return g_test_run ();
}
