/* test-kept-fields.c: a map is the same bit for bit however it was reached */
#include "light/kept-fields.h"
#include "light/lamp-light.h"
#include "light/lit-scene.h"
#include "random-light.h"

#define SCENES 120
#define MOVES 6
#define STEP_M 0.23

static SqLightMap *
cold (const SqScene *scene, const SqMapRequest *request)
{
  g_autoptr (GError) error = NULL;
  SqLightMap *map = sq_light_map (scene, request, 1, NULL, &error);
  g_assert_no_error (error);
  return map;
}

static SqLightMap *
warm (SqKeptFields *kept, const SqScene *scene, const SqMapRequest *request)
{
  g_autoptr (GError) error = NULL;
  SqLightMap *map = sq_kept_fields_map (kept, scene, request, NULL, &error);
  g_assert_no_error (error);
  return map;
}

static void
assert_same (const SqLightMap *a, const SqLightMap *b, const char *what)
{
  g_assert_cmpint (a->rows, ==, b->rows);
  g_assert_cmpint (a->columns, ==, b->columns);
  for (int i = 0; i < a->rows * a->columns; i++)
    if (memcmp (&a->lux[i], &b->lux[i], sizeof (double)) != 0 &&
        !(isnan (a->lux[i]) && isnan (b->lux[i])))
      g_error ("%s: row %d column %d: %.17g is not %.17g", what, i / a->columns, i % a->columns,
               a->lux[i], b->lux[i]);
}

/* Last digits of the quick way may depend on what was asked for together. */
#define QUICK_DIGITS 1e-4

static void
assert_alike (const SqLightMap *a, const SqLightMap *b)
{
  for (int i = 0; i < a->rows * a->columns; i++) {
    if (isnan (a->lux[i]) && isnan (b->lux[i]))
      continue;
    g_assert_cmpfloat_with_epsilon (a->lux[i], b->lux[i], QUICK_DIGITS * (b->lux[i] + 1.0));
  }
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

/* Point by point, past everything that there is. */
static double
lux_by_itself (const SqLitScene *lit, const SqReceivers *receivers, SqPoint at, SqSight *sight)
{
  double lux = 0.0;
  for (guint i = 0; i < lit->lamps->len; i++) {
    const SqLamp *lamp = &g_array_index (lit->lamps, SqLamp, i);
    SqReceptor receptor = { .at = at, .normal = sq_vector (0, 0, 1) };
    if (receivers->normal == SQ_NORMAL_SQUARE)
      receptor.normal = sq_vector_unit (sq_vector_between (at, lamp->fixture->at));
    else if (receivers->normal == SQ_NORMAL_CAMERA)
      receptor.normal = sq_vector_unit (sq_vector_between (at, receivers->camera));
    sq_lamp_see_past_all (lamp, at, lit->obstacles, NULL, sight);
    lux += sq_lamp_lux (lamp, &receptor, sight);
  }
  return lux;
}

/* What is left out of the way because it hides nothing, and what is not looked at because all of it
 * is hidden, changes no bit of any value. */
static void
test_regions (void)
{
  SqSight sight;
  sq_sight_init (&sight);
  for (guint32 seed = 0; seed < SCENES; seed++) {
    g_autoptr (GRand) dice = g_rand_new_with_seed (seed);
    g_autoptr (SqScene) scene = random_light (dice);
    SqMapRequest request = random_request (dice, scene);
    g_autoptr (SqLightMap) map = cold (scene, &request);
    g_autoptr (SqLitScene) lit = sq_lit_scene_new (scene, NULL);
    SqReceivers receivers = sq_light_map_receivers (map, scene);
    for (int row = 0; row < map->rows; row++)
      for (int column = 0; column < map->columns; column++) {
        SqPoint at = sq_receiver_point (&receivers.grid, column, row);
        double found = map->lux[row * map->columns + column];
        if (isnan (found)) {
          g_assert_true (sq_obstacles_hold (lit->obstacles, at));
          continue;
        }
        g_assert_false (sq_obstacles_hold (lit->obstacles, at));
        double expected = lux_by_itself (lit, &receivers, at, &sight);
        if (found != expected)
          g_error ("scene %u, row %d, column %d (%g, %g, %g): %.17g is not %.17g", seed, row,
                   column, at.x_m, at.y_m, at.z_m, found, expected);
      }
  }
  sq_sight_clear (&sight);
}

static SqScene *
set (SqScene *scene, const char *path, const char *text)
{
  g_autoptr (GError) error = NULL;
  SqScene *changed = sq_scene_set (scene, path, text, &error);
  if (error)
    g_error ("%s = %s: %s", path, text, error->message);
  sq_scene_unref (scene);
  return changed;
}

/* Something is moved, dimmed, taken away or put back. */
static SqScene *
random_change (GRand *dice, SqScene *scene)
{
  guint n_panels = scene->panels->len, n_pieces = scene->pieces->len;
  guint kind = (guint)g_rand_int_range (dice, 0, 6);
  g_autofree char *path = NULL, *text = NULL;
  double x = any (dice, 0.5, 4.5), y = any (dice, 0.5, 3.5), z = any (dice, 0.3, 3);
  guint lamp = (guint)g_rand_int_range (dice, 0, (gint32)scene->fixtures->len);
  guint mark = (guint)g_rand_int_range (dice, 0, (gint32)scene->marks->len);
  if (kind == 0) {
    path = g_strdup_printf ("f%u.at", lamp);
    text = g_strdup_printf ("[%.17g, %.17g, %.17g]", x, y, z);
  } else if (kind == 1) {
    path = g_strdup_printf ("f%u.level", lamp);
    text = g_strdup_printf ("%.17g", any (dice, 0, 1));
  } else if (kind == 2) {
    path = g_strdup_printf ("m%u.at", mark);
    text = g_strdup_printf ("[%.17g, %.17g]", x, y);
  } else if (kind == 3) {
    path = g_strdup_printf ("m%u.posture", mark);
    text = g_strdup (g_rand_boolean (dice) ? "sit" : "stand");
  } else if (kind == 4 && n_panels > 0) {
    path = g_strdup_printf ("g%d.at", g_rand_int_range (dice, 0, (gint32)n_panels));
    text = g_strdup_printf ("[%.17g, %.17g, %.17g]", x, y, z);
  } else if (kind == 5 && n_pieces > 0) {
    path = g_strdup_printf ("p%d.top", g_rand_int_range (dice, 0, (gint32)n_pieces));
    text = g_strdup_printf ("%.17g", any (dice, 1.1, 2.8));
  } else {
    path = g_strdup_printf ("f%u.on", lamp);
    text = g_strdup (g_rand_boolean (dice) ? "true" : "false");
  }
  return set (scene, path, text);
}

static void
test_moves (gconstpointer way)
{
  guint mended = 0, kept_whole = 0;
  for (guint32 seed = 0; seed < SCENES; seed++) {
    g_autoptr (GRand) dice = g_rand_new_with_seed (1000 + seed);
    SqScene *scene = random_light (dice);
    SqMapRequest request = random_request (dice, scene);
    request.way = (SqWay)GPOINTER_TO_INT (way);
    g_autoptr (SqKeptFields) kept = sq_kept_fields_new (SQ_KEPT_BYTES, 2);
    for (int move = 0; move < MOVES; move++) {
      g_autoptr (SqLightMap) moved = warm (kept, scene, &request);
      SqKeptWork work = sq_kept_fields_work (kept);
      mended += work.mended;
      kept_whole += work.kept;
      if (request.way == SQ_WAY_EXACT) {
        g_autoptr (SqLightMap) fresh = cold (scene, &request);
        assert_same (moved, fresh, "moved against cold");
      } else {
        g_autoptr (SqKeptFields) none = sq_kept_fields_new (SQ_KEPT_BYTES, 2);
        g_autoptr (SqLightMap) fresh = warm (none, scene, &request);
        assert_alike (moved, fresh);
      }
      scene = random_change (dice, scene);
    }
    sq_scene_unref (scene);
  }
  g_test_message ("%u fields mended, %u kept as they were", mended, kept_whole);
  g_assert_cmpuint (mended, >, SCENES);
  g_assert_cmpuint (kept_whole, >, SCENES);
}

/* A flag before a ball goes from low rows, where another stays, to high ones: the rows to be mended
 * are in two stretches, and the face that the ball turns to the one is not what the other sees. */
static void
test_turned (void)
{
  SqScene *scene = scene_of (
    "'classes': [{'id': 'b', 'emits': 'sphere', 'lumens': 5000, 'face': {'width': 0.6}}],"
    "'panels': [{'id': 'g', 'kind': 'flag', 'at': [0.5, 1.0, 1.2], 'facing': 180, 'width': 0.25,"
    "'height': 0.4}, {'id': 'stays', 'kind': 'flag', 'at': [0.6, 0.9, 1.2], 'facing': 180,"
    "'width': 0.25, 'height': 0.4}], 'fixtures': [{'id': 'f', 'class': 'b', 'at': [-1, 1.6, 2]}]");
  SqMapRequest request = sq_map_request (scene, 0.1);
  request.way = SQ_WAY_QUICK;
  request.from = (SqPlace){ 0, 0 };
  request.to = (SqPlace){ 3, 3.1 };
  request.height_m = 0.8;
  g_autoptr (SqKeptFields) kept = sq_kept_fields_new (SQ_KEPT_BYTES, 1);
  g_autoptr (SqKeptFields) none = sq_kept_fields_new (SQ_KEPT_BYTES, 1);
  sq_light_map_free (warm (kept, scene, &request));
  scene = set (scene, "g.at", "[0.5, 2.2, 1.2]");
  g_autoptr (SqLightMap) moved = warm (kept, scene, &request);
  g_assert_cmpuint (sq_kept_fields_work (kept).mended, ==, 1);
  g_autoptr (SqLightMap) fresh = warm (none, scene, &request);
  assert_alike (moved, fresh);
  sq_scene_unref (scene);
}

/* Each change takes what it must and no more. */
static void
test_work (void)
{
  SqScene *scene = scene_of (
    "'marks': [{'id': 'a', 'at': [0, 0]}], 'classes': [{'id': 'l', 'beams': [{'beam_deg': 60,"
    "'field_deg': 90, 'peak_cd': 5000}], 'face': {'width': 0.2}}], 'fixtures': ["
    "{'id': 'f1', 'class': 'l', 'at': [-2, 0, 3], 'aim': [0, 0, 0]},"
    "{'id': 'f2', 'class': 'l', 'at': [2, 0, 3], 'aim': [0, 0, 0]}]");
  SqMapRequest request = sq_map_request (scene, 0.1);
  request.from = (SqPlace){ -3, -3 };
  request.to = (SqPlace){ 3, 3 };
  g_autoptr (SqKeptFields) kept = sq_kept_fields_new (SQ_KEPT_BYTES, 2);
  const struct {
    const char *path, *text;
    guint kept, mended, cold;
  } rows[] = {
    { NULL, NULL, 0, 0, 2 },         { NULL, NULL, 2, 0, 0 },
    { "f1.level", "0.5", 2, 0, 0 },  { "f1.at", "[-2, 1, 3]", 1, 0, 1 },
    { "a.at", "[0, 0.1]", 0, 2, 0 }, { "f1.on", "false", 1, 0, 0 },
    { "f1.on", "true", 2, 0, 0 },    { "f1.at", "[-2, 0, 3]", 1, 1, 0 }, /* it was there before */
    { "f2.number", "7", 2, 0, 0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    if (rows[i].path)
      scene = set (scene, rows[i].path, rows[i].text);
    g_autoptr (SqLightMap) map = warm (kept, scene, &request);
    SqKeptWork work = sq_kept_fields_work (kept);
    g_test_message ("step %zu: %u kept, %u mended, %u cold, %zu points", i, work.kept, work.mended,
                    work.cold, work.points);
    g_assert_cmpuint (work.kept, ==, rows[i].kept);
    g_assert_cmpuint (work.mended, ==, rows[i].mended);
    g_assert_cmpuint (work.cold, ==, rows[i].cold);
    gsize all = (gsize)map->rows * (gsize)map->columns;
    if (work.cold == 0)
      g_assert_cmpuint (work.points, <, work.mended> 0 ? all : 1);
  }
  sq_scene_unref (scene);
}

/* A cap that holds some fields, one that holds none: the same map, and no more is kept. */
static void
test_cap (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (7);
  g_autoptr (SqScene) scene = random_light (dice);
  SqMapRequest request = random_request (dice, scene);
  g_autoptr (SqLightMap) fresh = cold (scene, &request);
  gsize field = (gsize)fresh->rows * (gsize)fresh->columns * sizeof (double);
  const gsize caps[] = { 0, field, field * scene->fixtures->len };
  for (gsize i = 0; i < G_N_ELEMENTS (caps); i++) {
    g_autoptr (SqKeptFields) kept = sq_kept_fields_new (caps[i], 2);
    SqMapRequest other = request;
    other.height_m += 0.1;
    for (int round = 0; round < 3; round++) {
      g_autoptr (SqLightMap) map = warm (kept, scene, &request);
      assert_same (map, fresh, "under a cap");
      g_assert_cmpuint (sq_kept_fields_work (kept).bytes, <=, caps[i]);
      sq_light_map_free (warm (kept, scene, &other));
      g_assert_cmpuint (sq_kept_fields_work (kept).bytes, <=, caps[i]);
    }
  }
}

/* Stopped at once, or somewhere on the way, and asked again. */
static gpointer
cancel_soon (gpointer cancellable)
{
  g_usleep (300);
  g_cancellable_cancel (cancellable);
  return NULL;
}

static void
test_cancel (void)
{
  guint stopped = 0;
  for (guint32 seed = 0; seed < 30; seed++) {
    g_autoptr (GRand) dice = g_rand_new_with_seed (seed);
    SqScene *scene = random_light (dice);
    SqMapRequest request = random_request (dice, scene);
    request.step_m = 0.05;
    g_autoptr (SqKeptFields) kept = sq_kept_fields_new (SQ_KEPT_BYTES, 2);
    for (int round = 0; round < 3; round++) {
      g_autoptr (GCancellable) cancellable = g_cancellable_new ();
      g_autoptr (GError) error = NULL;
      GThread *other = g_thread_new ("cancel", cancel_soon, cancellable);
      g_autoptr (SqLightMap) map = sq_kept_fields_map (kept, scene, &request, cancellable, &error);
      g_thread_join (other);
      g_assert_true ((map == NULL) == (error != NULL));
      if (map == NULL) {
        g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
        stopped++;
      }
      scene = random_change (dice, scene);
    }
    g_autoptr (SqLightMap) map = warm (kept, scene, &request);
    g_autoptr (SqLightMap) fresh = cold (scene, &request);
    assert_same (map, fresh, "after it was stopped");
    sq_scene_unref (scene);
  }
  g_test_message ("stopped %u times", stopped);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/kept-fields/regions leave nothing out", test_regions);
  g_test_add_data_func ("/kept-fields/moves, exact", GINT_TO_POINTER (SQ_WAY_EXACT), test_moves);
  g_test_add_data_func ("/kept-fields/moves, quick", GINT_TO_POINTER (SQ_WAY_QUICK), test_moves);
  g_test_add_func ("/kept-fields/a ball turns to rows far apart", test_turned);
  g_test_add_func ("/kept-fields/no more than must be", test_work);
  g_test_add_func ("/kept-fields/cap", test_cap);
  g_test_add_func ("/kept-fields/stopped on the way", test_cancel);
  return g_test_run ();
}
