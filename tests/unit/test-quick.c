/* test-quick.c: the quick way against the exact one, and the meter against the map */
#include "random-light.h"

#define SCENES 300
#define STEP_M 0.1

/* What lamp-rows.h states. Measured over these sets, as shares of the map's greatest light: 0.016
 * rms, and 0.0055 of the points off by more than 0.03; they lie in edges of shadows and right
 * beside faces. */
#define QUICK_RMS 0.02
#define QUICK_OFF 0.03
#define QUICK_OFF_SHARE 0.01

static SqLightMap *
map_of (const SqScene *scene, const SqMapRequest *request, SqWay way)
{
  g_autoptr (GError) error = NULL;
  SqMapRequest asked = *request;
  asked.way = way;
  SqLightMap *map = sq_light_map (scene, &asked, 2, NULL, &error);
  g_assert_no_error (error);
  return map;
}

static SqMapRequest
random_request (GRand *dice, const SqScene *scene)
{
  SqMapRequest request = sq_map_request (scene, STEP_M);
  request.height_m = any (dice, 0.0, 2.5);
  request.normal = g_rand_int_range (dice, SQ_NORMAL_UP, SQ_NORMAL_SQUARE + 1);
  request.from = (SqPlace){ any (dice, -1.5, 0), any (dice, -1.5, 0) };
  request.to = (SqPlace){ any (dice, 5, 6), any (dice, 4, 5) };
  return request;
}

typedef struct {
  double squares;
  gsize points, off;
} Errors;

static void
compare (Errors *errors, const SqLightMap *exact, const SqLightMap *quick)
{
  double most = 0.0;
  for (int i = 0; i < exact->rows * exact->columns; i++)
    most = isnan (exact->lux[i]) ? most : MAX (most, exact->lux[i]);
  for (int i = 0; i < exact->rows * exact->columns; i++) {
    g_assert_cmpint (isnan (exact->lux[i]), ==, isnan (quick->lux[i]));
    if (isnan (exact->lux[i]))
      continue;
    g_assert_true (isfinite (exact->lux[i]) && isfinite (quick->lux[i]));
    g_assert_cmpfloat (quick->lux[i], >=, 0.0);
    if (!(most > 0.0))
      continue;
    double off = (quick->lux[i] - exact->lux[i]) / most;
    errors->squares += off * off;
    errors->points++;
    errors->off += fabs (off) > QUICK_OFF;
  }
}

static void
test_quick (void)
{
  Errors errors = { 0 };
  for (guint32 seed = 0; seed < SCENES; seed++) {
    g_autoptr (GRand) dice = g_rand_new_with_seed (2000 + seed);
    g_autoptr (SqScene) scene = random_light (dice);
    SqMapRequest request = random_request (dice, scene);
    g_autoptr (SqLightMap) exact = map_of (scene, &request, SQ_WAY_EXACT);
    g_autoptr (SqLightMap) quick = map_of (scene, &request, SQ_WAY_QUICK);
    compare (&errors, exact, quick);
  }
  double rms = sqrt (errors.squares / (double)errors.points);
  double share = (double)errors.off / (double)errors.points;
  g_test_message ("%zu points, %.4f rms, %.4f of them off by more than %g", errors.points, rms,
                  share, QUICK_OFF);
  g_assert_cmpuint (errors.points, >, 10000);
  g_assert_cmpfloat (rms, <, QUICK_RMS);
  g_assert_cmpfloat (share, <, QUICK_OFF_SHARE);
}

/* A flat meter that looks up at one of the map's points reads what the map has there, to the last
 * bit. */
static void
test_one_answer (void)
{
  guint read = 0;
  for (guint32 seed = 0; seed < SCENES; seed++) {
    g_autoptr (GRand) dice = g_rand_new_with_seed (5000 + seed);
    g_autoptr (SqScene) scene = random_light (dice);
    SqMapRequest request = random_request (dice, scene);
    request.normal = SQ_NORMAL_UP;
    g_autoptr (SqLightMap) map = map_of (scene, &request, SQ_WAY_EXACT);
    int column = g_rand_int_range (dice, 0, map->columns);
    int row = g_rand_int_range (dice, 0, map->rows);
    double expected = map->lux[row * map->columns + column];
    SqPoint at = sq_point (map->first.x_m + column * map->step_m,
                           map->first.y_m + row * map->step_m, request.height_m);
    g_autofree char *probes =
      g_strdup_printf ("[{\"id\": \"q\", \"at\": [%.17g, %.17g, %.17g], \"normal\": [0, 0, 1],"
                       "\"receptor\": \"flat\"}]",
                       at.x_m, at.y_m, at.z_m);
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) metered = sq_scene_set (scene, "probes", probes, &error);
    g_assert_no_error (error);
    if (isnan (expected))
      continue;
    double found = lux_of (metered);
    if (found != expected)
      g_error ("scene %u, (%.17g, %.17g, %.17g): the meter reads %.17g, the map has %.17g", seed,
               at.x_m, at.y_m, at.z_m, found, expected);
    read++;
  }
  g_assert_cmpuint (read, >, SCENES / 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quick/near to exact", test_quick);
  g_test_add_func ("/quick/meter and map have one answer", test_one_answer);
  return g_test_run ();
}
