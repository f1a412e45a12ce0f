/* test-published.c: numbers that others have published, through the whole program: a scene goes in,
 * the meter or the camera answers
 *
 * Each row names where its figure was read. "Closed form" is worked out beside it; "from memory"
 * says that the standard itself was not read. */
#include "light-scene.h"
#include "light/exposure.h"

#define CLOSED_FORM 1e-9 /* relative */
#define AS_PRINTED 6e-6  /* relative: figures are printed to six digits */

/* E = I · cos / d², read by a flat probe that looks up. */
typedef struct {
  double candela, lamp_ft, probe_ft; /* heights */
  double fc;
  double tolerance;
  const char *source;
} PointRow;

static const PointRow points[] = {
  { 10000, 4 / 0.3048, 0, 625 * 0.3048 * 0.3048, CLOSED_FORM, "closed form: 10 000 / 4² = 625 lx" },
  { 10000, 4 / 0.3048, 0, 58.0644, AS_PRINTED, "the same in footcandles, 1 fc = 10.76391042 lx" },
  { 25000, 15, 5.5, 277.008, AS_PRINTED,
    "exercise, transtutors.com/questions/illumination-1363.htm; 25 000 / 9.5²" },
};

static void
test_points (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (points); i++) {
    const PointRow *row = &points[i];
    g_test_message ("%s", row->source);
    g_autoptr (SqScene) scene =
      scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': %.17g}],"
                "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, %.17g]}],"
                "'probes': [{'id': 'p', 'at': [0, 0, %.17g]}]",
                4.0 * G_PI * row->candela, row->lamp_ft * 0.3048, row->probe_ft * 0.3048);
    assert_near (lux_of (scene) * 0.3048 * 0.3048, row->fc, row->tolerance);
  }
}

/* The light that gives N at shutter t and speed S: E = C · N² / (S · t). */
typedef struct {
  double n, t_s, iso, c;
  double lux;
  double tolerance;
  const char *source;
} ExposureRow;

#define FC (1.0 / (0.3048 * 0.3048))
#define ROOT_8 2.8284271247461903

static const ExposureRow exposures[] = {
  { 8, 1, 100, 250, 160, CLOSED_FORM,
    "colour-science, docstring of average_illuminance(8, 1, 100)" },
  { ROOT_8, 0.02, 100, 25 * FC, 100 * FC, CLOSED_FORM,
    "100 fc at ISO 100, 1/50 s is f/2.8: trade's rule, tvtechnology.com" },
  { 4, 1 / 48.0, 800, 25 * FC, 24 * FC, CLOSED_FORM,
    "fc = 25 T² / (S t): illuma.blogspot.com 2013/08; the page rounds 24.0 to 25" },
  { 1, 1, 100, 250, 2.5, CLOSED_FORM, "EV 0 at ISO 100: E = 2.5 · 2^EV, liquisearch.com" },
  { 8, 1 / 4.0, 100, 250, 640, CLOSED_FORM, "EV 8" },
  { 16, 1 / 128.0, 100, 250, 81920, CLOSED_FORM, "EV 15" },
  { ROOT_8, 0.02, 100, 320, 1280, CLOSED_FORM, "dome, ISO 2720:1974 from 320, secondary copies" },
  { ROOT_8, 0.02, 100, 340, 1360, CLOSED_FORM, "dome, 340 in use" },
};

static void
test_exposures (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (exposures); i++) {
    const ExposureRow *row = &exposures[i];
    const SqExposure exposure = { .t_stop = row->n, .iso = row->iso, .exposure_s = row->t_s };
    g_test_message ("%s", row->source);
    assert_near (sq_exposure_set_light (&exposure, row->c), row->lux, row->tolerance);
    assert_near (sq_exposure_t_stop (&exposure, row->c, row->lux), row->n, row->tolerance);
  }
}

/* Two lamps of the same distance at a mark: their readings are as their levels. */
typedef struct {
  double key, fill;
  double total, plain, total_stops;
  const char *source;
} RatioRow;

#define LIGHTING_RATIO "image.absoluteastronomy.com/topics/Lighting_ratio; stops are log2"
static const RatioRow ratios[] = {
  { 800, 200, 5, 4, 2.3219, LIGHTING_RATIO }, { 100, 100, 2, 1, 1, LIGHTING_RATIO },
  { 200, 100, 3, 2, 1.585, LIGHTING_RATIO },  { 400, 100, 5, 4, 2.3219, LIGHTING_RATIO },
  { 300, 100, 4, 3, 2, LIGHTING_RATIO },      { 700, 100, 8, 7, 3, LIGHTING_RATIO },
  { 1500, 100, 16, 15, 4, LIGHTING_RATIO },
};

static void
test_ratios (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (ratios); i++) {
    const RatioRow *row = &ratios[i];
    g_test_message ("%s", row->source);
    /* Both 2 m from the face of a person of 1.70 m, level with it. */
    double most = MAX (row->key, row->fill), z_m = 0.936 * 1.70;
    g_autoptr (SqScene) scene =
      scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': %.17g}],"
                "'marks': [{'id': 'm', 'at': [0, 0]}],"
                "'cameras': [{'id': 'cam', 'at': [0, -3, 1.5], 'aim': 'm'}],"
                "'fixtures': ["
                "{'id': 'k', 'class': 'c', 'at': [-2, 0, %.17g], 'level': %.17g, 'role': 'key'},"
                "{'id': 'f', 'class': 'c', 'at': [2, 0, %.17g], 'level': %.17g, 'role': 'fill'}]",
                4.0 * G_PI * 4.0 * most, z_m, row->key / most, z_m, row->fill / most);
    g_autoptr (SqReadings) readings = sq_read_meter (scene, 1, NULL, NULL);
    const SqMarkReading *mark = g_ptr_array_index (readings->marks, 0);
    assert_near (mark->key_lux, row->key, CLOSED_FORM);
    assert_near (mark->fill_lux, row->fill, CLOSED_FORM);
    assert_near (mark->ratio, row->total, CLOSED_FORM);
    assert_near (mark->key_to_fill, row->plain, CLOSED_FORM);
    g_assert_cmpfloat_with_epsilon (mark->ratio_stops, row->total_stops, 5e-5);
  }
}

/* Angles of view, 2 atan (w / 2f). */
typedef struct {
  double focal_mm, width_mm, height_mm;
  double across_deg, up_deg;
  const char *source;
} ViewRow;

#define FULL_FRAME "36 × 24: camera area, BKSTS dictionary, citing SMPTE 96M; closed form"
#define SUPER_35 "24.89 × 18.66: liquisearch.com 35 mm film (SMPTE ST 59 from memory); closed form"
static const ViewRow views[] = {
  { 50, 36, 24, 39.5978, 26.9915, FULL_FRAME },
  { 18, 36, 24, 90.0, 67.3801, FULL_FRAME },
  { 50, 24.89, 18.66, 27.9538, 21.1397, SUPER_35 },
  { 25, 24.89, 18.66, 52.9282, 40.9311, SUPER_35 },
};

static void
test_views (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (views); i++) {
    const ViewRow *row = &views[i];
    g_test_message ("%s", row->source);
    g_autoptr (SqScene) scene = scene_of (
      "'cameras': [{'id': 'c', 'at': [0, 0, 1], 'focal_mm': %.17g, 'gate_mm': [%.17g, %.17g]}]",
      row->focal_mm, row->width_mm, row->height_mm);
    const SqCamera *camera = sq_scene_camera (scene);
    g_assert_cmpfloat_with_epsilon (sq_camera_view_across_deg (camera), row->across_deg, 5.1e-5);
    g_assert_cmpfloat_with_epsilon (sq_camera_view_up_deg (camera), row->up_deg, 5.1e-5);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/published/points", test_points);
  g_test_add_func ("/published/exposures", test_exposures);
  g_test_add_func ("/published/ratios", test_ratios);
  g_test_add_func ("/published/angles of view", test_views);
  return g_test_run ();
}
