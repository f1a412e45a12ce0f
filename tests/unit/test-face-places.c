/* test-face-places.c: the places that stand for a whole face */
#include "light-scene.h"
#include "light/lamp.h"

/* Places stand for the face they were made for: area, centre and second moments, at every level. */
static void
hold_moments (const SqLamp *lamp)
{
  if (!lamp->places)
    return;
  gboolean disc = lamp->n_face == SQ_DISC_SIDES;
  double across = lamp->width_m * lamp->width_m / (disc ? 16.0 : 12.0);
  double high = lamp->height_m * lamp->height_m / (disc ? 16.0 : 12.0);
  for (guint i = 0; i < lamp->places->n_levels; i++) {
    const SqFaceLevel *level = &lamp->places->levels[i];
    double share = 0.0, x = 0.0, y = 0.0, xx = 0.0, yy = 0.0, xy = 0.0;
    g_assert_cmpuint (level->n, ==, 4u << i);
    for (guint k = 0; k < level->n; k++) {
      SqVector off = sq_vector_between (lamp->fixture->at, level->places[k].at);
      double a = sq_vector_dot (off, lamp->frame.right), b = sq_vector_dot (off, lamp->frame.up);
      double s = level->places[k].share;
      share += s, x += s * a, y += s * b, xx += s * a * a, yy += s * b * b, xy += s * a * b;
    }
    /* A disc's polygon has its second moments to a hundred-thousandth. */
    assert_near (share, 1.0, 1e-12);
    g_assert_cmpfloat_with_epsilon (x, 0.0, 1e-12);
    g_assert_cmpfloat_with_epsilon (y, 0.0, 1e-12);
    g_assert_cmpfloat_with_epsilon (xy, 0.0, 1e-12);
    assert_near (xx, across, disc ? 2e-5 : 1e-12);
    assert_near (yy, high, disc ? 2e-5 : 1e-12);
  }
}

/* Of every class that comes with the program, turned and tilted. */
static void
test_places (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *classes = sq_library_classes (library);
  guint held = 0;
  for (guint i = 0; i < classes->len; i++) {
    const SqClass *class = g_ptr_array_index (classes, i);
    g_autoptr (SqScene) scene =
      scene_of ("'fixtures': [{'id': 'f', 'class': '%s', 'at': [1, -2, 3], 'aim': [4, 1, 0.5],"
                "'roll': %u}]",
                class->id, i * 7 % 90);
    g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
    const SqLamp *lamp = &g_array_index (lamps, SqLamp, 0);
    hold_moments (lamp);
    held += lamp->places != NULL;
  }
  g_assert_cmpuint (held, >, classes->len / 2);
}

/* A list made like another shares what is still right, and has the same places. */
static void
test_shared (void)
{
  g_autoptr (SqScene) scene =
    scene_of ("'fixtures': [{'id': 'f', 'class': 'led-panel-60x30', 'at': [0, 0, 2]}]");
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) dimmed = sq_scene_set (scene, "f.level", "0.5", &error);
  g_autoptr (SqScene) moved = sq_scene_set (scene, "f.at", "[1, 0, 2]", &error);
  g_assert_no_error (error);
  g_autoptr (GArray) first = sq_lamps_new (scene, NULL);
  g_autoptr (GArray) same = sq_lamps_new (dimmed, first), other = sq_lamps_new (moved, first);
  const SqFacePlaces *places = g_array_index (first, SqLamp, 0).places;
  g_assert_true (g_array_index (same, SqLamp, 0).places == places);
  g_assert_true (g_array_index (other, SqLamp, 0).places != places);
  hold_moments (&g_array_index (other, SqLamp, 0));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/face places/keep moments", test_places);
  g_test_add_func ("/face places/are shared where nothing moved", test_shared);
  return g_test_run ();
}
