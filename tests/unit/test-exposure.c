/* test-exposure.c: light to T-stops and back, stops and ratios, against published rows */
#include "light-scene.h"
#include "light/exposure.h"

#define EXACT 1e-12
#define AS_PRINTED 1e-4

/* ISO 100, 1/50 s, 100 fc: N by constant; and the lux that give f/2.8284 exactly. Closed form
 * N²/t = E·S/C, ISO 2720. */
static void
test_constants (void)
{
  static const struct {
    double constant, n, lux;
  } rows[] = {
    { 250.0, 2.9345, 1000.0 },
    { 320.0, 2.5937, 1280.0 },
    { 330.0, 2.5541, 1320.0 },
    { 340.0, 2.5163, 1360.0 },
  };
  const SqExposure exposure = { .t_stop = sqrt (8.0), .iso = 100.0, .exposure_s = 0.02 };
  double lux = 100.0 / (0.3048 * 0.3048);
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    assert_near (sq_exposure_t_stop (&exposure, rows[i].constant, lux), rows[i].n, AS_PRINTED);
    assert_near (sq_exposure_set_light (&exposure, rows[i].constant), rows[i].lux, EXACT);
  }
}

/* The trade's fc = 25 T² / (ISO · t) is C = 25 / 0.3048² lx: T4 at ISO 800, 1/48 s asks for 24 fc.
 */
static void
test_trade_rule (void)
{
  const SqExposure exposure = { .t_stop = 4.0, .iso = 800.0, .exposure_s = 1.0 / 48.0 };
  double fc = 1.0 / (0.3048 * 0.3048);
  assert_near (sq_exposure_set_light (&exposure, 25.0 * fc), 24.0 * fc, EXACT);
  assert_near (sq_exposure_t_stop (&exposure, 25.0 * fc, 24.0 * fc), 4.0, EXACT);
}

/* EV at ISO 100 with K 12.5: L = 2^(EV - 3); with C 250: E = 2.5 · 2^EV. EV = log2 (N² / t). */
static void
test_exposure_values (void)
{
  static const struct {
    double ev, luminance, lux;
  } rows[] = {
    { 0, 0.125, 2.5 }, { 3, 1, 20 }, { 8, 32, 640 }, { 10, 128, 2560 }, { 15, 4096, 81920 }
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    const SqExposure exposure = { .t_stop = exp2 (rows[i].ev / 2.0),
                                  .iso = 100.0,
                                  .exposure_s = 1.0 };
    assert_near (sq_exposure_set_light (&exposure, SQ_SPOT_K), rows[i].luminance, EXACT);
    assert_near (sq_exposure_set_light (&exposure, 250.0), rows[i].lux, EXACT);
  }
}

/* A stop of ND takes half of the light: the same T needs twice as much. */
static void
test_neutral_density (void)
{
  const SqExposure clear = { .t_stop = 2.8, .iso = 800.0, .exposure_s = 1.0 / 48.0 };
  SqExposure dark = clear;
  dark.nd_stops = 0.9 / log10 (2.0); /* density 0.9: three stops, nearly */
  double lux = sq_exposure_set_light (&clear, 340.0);
  assert_near (sq_exposure_set_light (&dark, 340.0), lux * pow (10.0, 0.9), EXACT);
  assert_near (sq_exposure_t_stop (&dark, 340.0, lux), 2.8 / pow (10.0, 0.45), EXACT);
}

static void
test_stops_and_ratios (void)
{
  /* Published: 2:1 is 1 stop, 3:1 1.585, 4:1 2, 5:1 2.3219, 8:1 3, 16:1 4. */
  static const double rows[][2] = { { 2, 1 },      { 3, 1.585 }, { 4, 2 },
                                    { 5, 2.3219 }, { 8, 3 },     { 16, 4 } };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpfloat_with_epsilon (sq_stops_over (rows[i][0], 1.0), rows[i][1], 5e-5);
  g_assert_true (isnan (sq_stops_over (0.0, 1.0)));
  g_assert_true (isnan (sq_stops_over (1.0, 0.0)));
  g_assert_true (isnan (sq_ratio (1.0, 0.0)));
  const SqExposure exposure = sq_exposure_of (NULL);
  g_assert_true (isnan (sq_exposure_t_stop (&exposure, 340.0, 0.0)));
}

/* No camera: ISO 800, 24 frames a second, 180 degrees, T2.8. 180 / 24 is 1/48 s. */
static void
test_no_camera (void)
{
  const SqExposure exposure = sq_exposure_of (NULL);
  g_assert_cmpfloat (exposure.t_stop, ==, 2.8);
  g_assert_cmpfloat (exposure.iso, ==, 800.0);
  assert_near (exposure.exposure_s, 1.0 / 48.0, EXACT);
  g_assert_cmpfloat (exposure.nd_stops, ==, 0.0);
}

/* Shutter angle / 360 / frames a second: 172.8 at 24 is 1/50 s, 144 at 24 is 1/60. */
static void
test_camera (void)
{
  static const double rows[][2] = { { 180, 48 }, { 172.8, 50 }, { 144, 60 } };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqScene) scene = scene_of (
      "'cameras': [{'id': 'a', 'at': [0, 0, 1], 'shutter_deg': %g, 'nd_stops': 2, 't_stop': 4}]",
      rows[i][0]);
    SqExposure exposure = sq_exposure_of (sq_scene_camera (scene));
    assert_near (1.0 / exposure.exposure_s, rows[i][1], EXACT);
    g_assert_cmpfloat (exposure.nd_stops, ==, 2.0);
    g_assert_cmpfloat (exposure.t_stop, ==, 4.0);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/exposure/constants", test_constants);
  g_test_add_func ("/exposure/the trade's rule", test_trade_rule);
  g_test_add_func ("/exposure/exposure values", test_exposure_values);
  g_test_add_func ("/exposure/neutral density", test_neutral_density);
  g_test_add_func ("/exposure/stops and ratios", test_stops_and_ratios);
  g_test_add_func ("/exposure/no camera", test_no_camera);
  g_test_add_func ("/exposure/shutter angles", test_camera);
  return g_test_run ();
}
