/* test-scene-looks.c: a scene as its looks show it, the scene itself left as it is */
#include "scene-text.h"

#define SCENE                                                                                      \
  "'walls': [{'id': 'w1', 'path': [[0, 0], [6, 0]],"                                               \
  "  'openings': [{'id': 'o1', 'width': 1}, {'width': 1, 'offset': 3}]},"                          \
  " {'id': 'w2', 'path': [[0, 4], [6, 4]], 'openings': [{'id': 'o2', 'width': 2}]}],"              \
  "'marks': [{'id': 'm1', 'at': [3, 2]}, {'id': 'm2', 'at': [4, 2]}],"                             \
  "'cameras': [{'id': 'c1', 'at': [3, -2, 1.5]}, {'id': 'c2', 'at': [5, -2, 1.5]}],"               \
  "'fixtures': [{'id': 'f1', 'class': '" LAMP "', 'at': [0, 0, 2], 'aim': 'm1', 'level': 0.5,"     \
  "    'future': 1},"                                                                              \
  "  {'id': 'f2', 'class': '" LAMP "', 'at': [1, 0, 2], 'modifiers': [{'kind': 'scrim'}]}],"       \
  "'panels': [{'id': 'g1', 'kind': 'flag', 'at': [2, 2, 2], 'width': 1, 'height': 1}],"            \
  "'daylight': {'latitude': 52.5, 'longitude': 13.4, 'date': '2024-06-20'},"                       \
  "'haze': 0.01,"                                                                                  \
  "'looks': [{'id': 'night', 'camera': 'c2',"                                                      \
  "    'fixtures': {'f2': {'on': false, 'modifiers': []},"                                         \
  "      'f1': {'level': 0.25, 'cct': 4300, 'aim': [9, 9, 0], 'modifiers':"                        \
  "        [{'kind': 'gel', 'material': '" CLOTH                                                   \
  "'}, {'kind': 'doors', 'leaves': [0, 9, 0, 9]}]}},"                                              \
  "    'panels': {'g1': {'set': false, 'tilt': -90}},"                                             \
  "    'openings': {'o2': {'transmittance': 0, 'material': '" CLOTH "'}, 'o1': {'open_deg': 0}},"  \
  "    'marks': {'m2': {'at': [5, 1], 'floor': 0.2, 'facing': 90, 'posture': 'sit'}},"             \
  "    'daylight': {'time': '22:00', 'sky': 'overcast'}, 'haze': 0},"                              \
  "  {'id': 'plain'},"                                                                             \
  "  {'id': 'dusk', 'fixtures': {'f1': {'aim': null, 'cct': null}}}]"

static SqScene *
in_look (const SqScene *scene, const char *id)
{
  g_autoptr (GError) error = NULL;
  SqScene *result = sq_scene_in_look (scene, id, &error);
  g_assert_no_error (error);
  return result;
}

static const SqFixture *
fixture (const SqScene *scene, const char *id)
{
  return (const SqFixture *)sq_scene_find (scene, id);
}

static void
test_lamps (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autoptr (SqScene) night = in_look (scene, "night");
  const SqFixture *f1 = fixture (night, "f1"), *f2 = fixture (night, "f2");
  g_assert_cmpfloat (f1->level, ==, 0.25);
  g_assert_cmpfloat (f1->cct_k, ==, 4300.0);
  g_assert_null (f1->aim.id);
  g_assert_cmpfloat (f1->aim.at.x_m, ==, 9.0);
  g_assert_cmpuint (f1->modifiers->len, ==, 2);
  g_assert_cmpstr (SQ_AT (SqModifier, f1->modifiers, 0)->material, ==, CLOTH);
  g_assert_cmpfloat (SQ_AT (SqModifier, f1->modifiers, 1)->leaves_deg[SQ_LEAF_RIGHT], ==, 9.0);
  g_assert_true (f1->on);
  g_assert_cmpfloat (f1->at.z_m, ==, 2.0);
  g_assert_false (f2->on);
  g_assert_cmpuint (f2->modifiers->len, ==, 0);
  g_assert_cmpfloat (f2->level, ==, 1.0);
}

static void
test_back_to_default (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autoptr (SqScene) dusk = in_look (scene, "dusk");
  const SqFixture *f1 = fixture (dusk, "f1");
  g_assert_null (f1->aim.id);
  g_assert_false (sq_point_given (f1->aim.at));
  g_assert_true (isnan (f1->cct_k));
  g_assert_cmpfloat (f1->level, ==, 0.5);
}

static void
test_set_and_grip (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autoptr (SqScene) night = in_look (scene, "night");
  const SqPanel *g1 = (const SqPanel *)sq_scene_find (night, "g1");
  const SqOpening *o1 = (const SqOpening *)sq_scene_find (night, "o1");
  const SqOpening *o2 = (const SqOpening *)sq_scene_find (night, "o2");
  const SqMark *m1 = (const SqMark *)sq_scene_find (night, "m1");
  const SqMark *m2 = (const SqMark *)sq_scene_find (night, "m2");
  g_assert_false (g1->set);
  g_assert_cmpfloat (g1->tilt_deg, ==, -90.0);
  g_assert_cmpfloat (o1->open_deg, ==, 0.0);
  g_assert_null (o1->material);
  g_assert_cmpfloat (sq_opening_transmittance (o1), ==, 0.8);
  g_assert_cmpfloat (sq_opening_transmittance (o2), ==, 0.0);
  g_assert_cmpstr (o2->material, ==, CLOTH);
  g_assert_cmpfloat (o2->open_deg, ==, 90.0);
  g_assert_cmpfloat (m2->at.x_m, ==, 5.0);
  g_assert_cmpfloat (m2->floor_m, ==, 0.2);
  g_assert_cmpfloat (m2->facing_deg, ==, 90.0);
  g_assert_cmpint (m2->posture, ==, SQ_POSTURE_SIT);
  g_assert_cmpfloat (m1->at.x_m, ==, 3.0);
  /* What is found by id is what stands in the wall. */
  const SqWall *w2 = SQ_AT (SqWall, night->walls, 1);
  g_assert_true (g_ptr_array_index (w2->openings, 0) == o2);
}

static void
test_air_and_time (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autoptr (SqScene) night = in_look (scene, "night");
  g_assert_cmpstr (night->daylight->time, ==, "22:00");
  g_assert_cmpint (night->daylight->sky, ==, SQ_SKY_OVERCAST);
  g_assert_cmpstr (night->daylight->date, ==, "2024-06-20");
  g_assert_cmpfloat (night->haze_per_m, ==, 0.0);
  g_assert_cmpstr (sq_scene_camera (night)->id, ==, "c2");
  g_assert_cmpstr (night->look, ==, "night");

  g_autoptr (SqScene) plain = in_look (scene, "plain");
  g_assert_cmpstr (plain->daylight->time, ==, "12:00");
  g_assert_cmpfloat (plain->haze_per_m, ==, 0.01);
  g_assert_cmpstr (sq_scene_camera (plain)->id, ==, "c1");
}

static void
test_scene_untouched (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autofree char *before = sq_scene_write (scene);
  g_autoptr (SqScene) night = in_look (scene, "night");
  g_autofree char *after = sq_scene_write (scene);
  g_assert_cmpstr (after, ==, before);
  g_assert_cmpfloat (fixture (scene, "f1")->level, ==, 0.5);
  g_assert_true (((const SqPanel *)sq_scene_find (scene, "g1"))->set);
  g_assert_null (scene->look);
  g_assert_cmpstr (sq_scene_camera (scene)->id, ==, "c1");
  /* What no look changes is shared, not copied. */
  g_assert_true (sq_scene_find (night, "m1") == sq_scene_find (scene, "m1"));
  /* An unknown member stays with its lamp. */
  g_autofree char *text = sq_scene_write (night);
  g_assert_nonnull (strstr (text, "\"future\": 1"));
}

static void
test_outlives_its_scene (void)
{
  SqScene *scene = right_scene (SCENE);
  g_autoptr (SqScene) night = in_look (scene, "night");
  sq_scene_unref (scene);
  g_assert_cmpstr (((const SqMark *)sq_scene_find (night, "m1"))->id, ==, "m1");
  g_assert_cmpfloat (fixture (night, "f1")->level, ==, 0.25);
}

static void
test_base (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autoptr (SqScene) base = in_look (scene, "base");
  g_autoptr (SqScene) none = in_look (scene, NULL);
  g_assert_true (base == scene);
  g_assert_true (none == scene);
}

static void
test_unknown_look (void)
{
  static const char *const unknown[] = { "day", "f1", "", NULL };
  g_autoptr (SqScene) scene = right_scene (SCENE);
  for (guint i = 0; unknown[i] != NULL; i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) none = sq_scene_in_look (scene, unknown[i], &error);
    g_assert_null (none);
    check_line (unknown[i], error, SQ_ERROR_REFERENCE, "look",
                "does not exist|base, night, plain, dusk");
  }
}

/* A look over a scene that is in a look already: what both say is the later one's. */
static void
test_look_on_look (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autoptr (SqScene) night = in_look (scene, "night");
  g_autoptr (SqScene) both = in_look (night, "dusk");
  g_assert_cmpstr (both->look, ==, "dusk");
  g_assert_cmpstr (sq_scene_camera (both)->id, ==, "c1");
  g_assert_true (isnan (fixture (both, "f1")->cct_k));
}

static void
test_set_keeps_the_look (void)
{
  g_autoptr (SqScene) scene = right_scene (SCENE);
  g_autoptr (SqScene) night = in_look (scene, "night");
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) changed = sq_scene_set (night, "f1.level", "0.75", &error);
  g_assert_no_error (error);
  g_assert_cmpstr (changed->look, ==, "night");
  g_assert_cmpstr (sq_scene_camera (changed)->id, ==, "c2");
  g_assert_cmpfloat (fixture (changed, "f1")->level, ==, 0.75);
  g_assert_cmpfloat (fixture (changed, "f1")->cct_k, ==, 4300.0);
  g_assert_false (fixture (changed, "f2")->on);
  g_assert_cmpfloat (fixture (night, "f1")->level, ==, 0.25);
}

/* A look that moves every lamp of the largest plan. No time is asserted: it must end. */
static void
test_many_lamps (void)
{
  enum { LAMPS = 4000 };
  g_autoptr (GString) lamps = g_string_new ("'fixtures': [");
  g_autoptr (GString) changes = g_string_new ("'looks': [{'id': 'l1', 'fixtures': {");
  for (int i = 0; i < LAMPS; i++) {
    const char *comma = i > 0 ? ", " : "";
    g_string_append_printf (lamps, "%s{'id': 'f%d', 'class': '" LAMP "', 'at': [%d, 0, 2]}", comma,
                            i, i);
    g_string_append_printf (changes, "%s'f%d': {'at': [%d, 1, 3]}", comma, i, i);
  }
  g_string_append_printf (lamps, "], %s}}]", changes->str);
  g_autoptr (SqScene) scene = right_scene (lamps->str);
  g_autoptr (SqScene) moved = in_look (scene, "l1");
  g_assert_cmpuint (moved->fixtures->len, ==, LAMPS);
  for (guint i = 0; i < LAMPS; i++) {
    const SqFixture *lamp = SQ_AT (SqFixture, moved->fixtures, i);
    g_assert_cmpfloat (lamp->at.x_m, ==, i);
    g_assert_cmpfloat (lamp->at.z_m, ==, 3.0);
  }
  g_assert_cmpfloat (fixture (scene, "f3999")->at.z_m, ==, 2.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/looks/lamps, their aims and modifiers", test_lamps);
  g_test_add_func ("/looks/null takes a value back to its default", test_back_to_default);
  g_test_add_func ("/looks/panels, openings and marks", test_set_and_grip);
  g_test_add_func ("/looks/daylight, haze and camera", test_air_and_time);
  g_test_add_func ("/looks/the scene itself stays as it is", test_scene_untouched);
  g_test_add_func ("/looks/a look outlives its scene", test_outlives_its_scene);
  g_test_add_func ("/looks/base is the scene itself", test_base);
  g_test_add_func ("/looks/an unknown look names those there are", test_unknown_look);
  g_test_add_func ("/looks/a look over another", test_look_on_look);
  g_test_add_func ("/looks/a value set in a look stays in it", test_set_keeps_the_look);
  g_test_add_func ("/looks/every lamp of 4000 moved", test_many_lamps);
  return g_test_run ();
}
