/* test-section-shadow.c: shadows on the upright cut: who throws them, how far, how soft
 *
 * All expected values are closed forms: similar triangles over the light's height and distance. */
#include "section-place.h"

/* A scene with a lamp of no size at @height m, somebody @away m off and what @rest says. */
static SqSection *
shadow_scene (double height, double away, const char *mark, const char *rest)
{
  g_autofree char *text = g_strdup_printf (
    "'room': {'ceiling_height': null}, 'marks': [{'id': 'm', 'at': [%g, 0], %s}], 'fixtures': "
    "[{'id': 'f', 'class': 'point', 'at': [0, 0, %g], 'aim': 'm'}]%s",
    away, mark, height, rest);
  return section (text);
}

static const SqSectionShadow *
only_shadow (const SqSection *cut)
{
  g_assert_cmpuint (cut->shadows->len, ==, 1);
  return &g_array_index (cut->shadows, SqSectionShadow, 0);
}

static void
test_shadow_on_the_floor (void)
{
  static const struct {
    const char *mark;
    double h, a, p; /* lamp, distance, figure */
  } rows[] = {
    { "'stature': 1.7", 3.0, 4.0, 1.7 },
    { "'stature': 1.85", 2.4, 1.5, 1.85 },
    { "'stature': 1.2", 5.0, 6.0, 1.2 },
    { "'stature': 1.7, 'posture': 'sit'", 3.0, 2.0, 0.79 * 1.7 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqSection) cut = shadow_scene (rows[i].h, rows[i].a, rows[i].mark, "");
    const SqSectionShadow *shadow = only_shadow (cut);
    double behind = rows[i].a * rows[i].p / (rows[i].h - rows[i].p);
    g_assert_true (shadow->ends && shadow->end_on == NULL);
    check_place ("end", shadow->end, rows[i].a + behind, 0.0);
    assert_near (sq_section_shadow_length_m (shadow) * MM_PER_M, behind * MM_PER_M, PAPER_MM);
    /* One stretch of floor, from the foot. */
    g_assert_cmpuint (shadow->stretches->len, ==, 1);
    const SqShadowStretch *stretch = &g_array_index (shadow->stretches, SqShadowStretch, 0);
    check_place ("foot", stretch->from, rows[i].a, 0.0);
    check_place ("end of the stretch", stretch->to, rows[i].a + behind, 0.0);
  }
}

static void
test_shadow_up_the_wall (void)
{
  /* Lamp 3 m, 4 m off somebody of 1.7 m; a wall's face 2 m behind: the ray over the crown is at
   * 3 - (3 - 1.7) · 6 / 4 there. */
  g_autoptr (SqSection) cut = shadow_scene (
    3.0, 4.0, "'stature': 1.7",
    ", 'walls': [{'id': 'w', 'path': [[6, -3], [6, 3]], 'side': 'right', 'height': 2.7}]");
  const SqSectionShadow *shadow = only_shadow (cut);
  double up = 3.0 - 1.3 * 6.0 / 4.0;
  check_place ("end", shadow->end, 6.0, up);
  assert_near (sq_section_shadow_height_m (shadow), up, EXACT);
  g_assert_cmpuint (shadow->stretches->len, ==, 2);
  const SqShadowStretch *floor = &g_array_index (shadow->stretches, SqShadowStretch, 0);
  const SqShadowStretch *wall = &g_array_index (shadow->stretches, SqShadowStretch, 1);
  check_place ("foot", floor->from, 4.0, 0.0);
  check_place ("the wall's foot", floor->to, 6.0, 0.0);
  check_place ("up from it", wall->from, 6.0, 0.0);
  check_place ("to there", wall->to, 6.0, up);
}

static void
test_shadow_from_a_low_lamp (void)
{
  /* Under the crown the ray over it rises, and ends where a wall is: 1.5 + 0.2 · 6 / 4. */
  const char *wall =
    ", 'walls': [{'id': 'w', 'path': [[6, -3], [6, 3]], 'side': 'right', 'height': 2.7}]";
  g_autoptr (SqSection) walled = shadow_scene (1.5, 4.0, "'stature': 1.7", wall);
  check_place ("end", only_shadow (walled)->end, 6.0, 1.5 + 0.2 * 6.0 / 4.0);
  g_autoptr (SqSection) open = shadow_scene (1.5, 4.0, "'stature': 1.7", "");
  g_assert_false (only_shadow (open)->ends);
  g_assert_true (isinf (sq_section_shadow_length_m (only_shadow (open))));
}

static void
test_shadow_over_furniture (void)
{
  /* A table 0.8 m high from 1 to 2 m behind: the ray over the crown, 1.7 m at 4 m and falling 0.325
   * a metre, is at 1.05 m over its far end: the shadow covers its top and ends on the floor. */
  g_autoptr (SqSection) cut =
    shadow_scene (3.0, 4.0, "'stature': 1.7",
                  ", 'pieces': [{'id': 't', 'outline': [[5, -1], [6, -1], [6, 1], [5, 1]], 'top': "
                  "0.8}]");
  const SqSectionShadow *shadow = only_shadow (cut);
  double end = 4.0 * 3.0 / 1.3;
  gboolean top = FALSE, behind = FALSE;
  check_place ("end", shadow->end, end, 0.0);
  for (guint i = 0; i < shadow->stretches->len; i++) {
    const SqShadowStretch *stretch = &g_array_index (shadow->stretches, SqShadowStretch, i);
    double low = MIN (stretch->from.y_m, stretch->to.y_m);
    if (stretch->on != NULL && low > 0.7) {
      check_place ("top, near end", stretch->from, 5.0, 0.8);
      check_place ("top, far end", stretch->to, 6.0, 0.8);
      top = TRUE;
    }
    if (stretch->on == NULL && stretch->from.x_m > 5.5) {
      check_place ("behind it", stretch->from, 6.0, 0.0);
      check_place ("to the end", stretch->to, end, 0.0);
      behind = TRUE;
    }
  }
  g_assert_true (top && behind);
}

/* What stands before somebody is dark behind it: nothing of that is told as their shadow. */
static void
test_shadow_begins_at_the_figure (void)
{
  g_autoptr (SqSection) cut =
    shadow_scene (3.0, 4.0, "'stature': 1.7",
                  ", 'pieces': [{'id': 't', 'outline': [[2.5, -1], [3, -1], [3, 1], [2.5, 1]], "
                  "'top': 1.0}]");
  const SqSectionShadow *shadow = only_shadow (cut);
  check_place ("end", shadow->end, 4.0 * 3.0 / 1.3, 0.0);
  g_assert_cmpuint (shadow->stretches->len, ==, 1);
  check_place ("foot", g_array_index (shadow->stretches, SqShadowStretch, 0).from, 4.0, 0.0);
}

static void
test_penumbra (void)
{
  /* The face, 0.4 m high, stands across the axis: its two ends are 0.2 m off along (-sin, cos). */
  g_autoptr (SqSection) cut =
    section ("'room': {'ceiling_height': null}, 'marks': [{'id': 'm', 'at': [4, 0], 'stature': "
             "1.7}], 'fixtures': [{'id': 'f', 'class': 'spot', 'at': [0, 0, 3], 'aim': 'm'}]");
  const SqSectionShadow *shadow = only_shadow (cut);
  double face = 0.936 * 1.7, tilt = atan ((face - 3.0) / 4.0);
  for (int edge = 0; edge < SQ_EDGES; edge++) {
    double side = edge == SQ_EDGE_ABOVE ? 0.2 : -0.2;
    double x = -side * sin (tilt), z = 3.0 + side * cos (tilt);
    check_place ("end of the face", cut->way.source[edge], x, z);
    g_assert_true (shadow->has_edge[edge]);
    check_place ("edge", shadow->edge[edge], x + (4.0 - x) * z / (z - 1.7), 0.0);
  }
  double apart = atan2 (3.0 + 0.2 * cos (tilt) - face, 4.0 + 0.2 * sin (tilt)) -
                 atan2 (3.0 - 0.2 * cos (tilt) - face, 4.0 - 0.2 * sin (tilt));
  assert_near (sq_section_source_deg (&cut->way), fabs (SQ_DEGREES (apart)), DEGREES);
}

static void
test_no_shadow (void)
{
  static const struct {
    const char *name, *mark, *rest;
  } rows[] = {
    { "lying", "'posture': 'lie'", "" },
    { "hidden", "'hidden': true", "" },
    { "behind a flag", "'stature': 1.7",
      ", 'panels': [{'id': 'g', 'kind': 'flag', 'at': [2, 0, 1.5], 'facing': 180, 'width': 3, "
      "'height': 3}]" },
    { "behind a wall", "'stature': 1.7",
      ", 'walls': [{'id': 'w', 'path': [[2, -3], [2, 3]], 'height': 4}]" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqSection) cut = shadow_scene (3.0, 4.0, rows[i].mark, rows[i].rest);
    if (cut->shadows->len > 0)
      g_error ("%s: throws a shadow", rows[i].name);
  }
}

/* Who is not lit throws no shadow. The face looks straight up from 1.8 m, over a crown of 1.7 m;
 * the crate's cells let nothing through past 20 degrees, and from 3 m up and 4 m off the figure is
 * seen from 18 degrees (the crown, atan (1.3 / 4)) to 37 (the foot, atan (3 / 4)) below the level.
 */
static void
test_no_shadow_without_light (void)
{
  static const struct {
    const char *name, *at, *aim, *more;
    guint n;
  } rows[] = {
    { "up", "[0, 0, 1.8]", "[0, 0, 2.5]", "", 0 },
    { "up, from under the crown", "[0, 0, 1.2]", "[0, 0, 2.5]", "", 1 },
    { "away", "[0, 0, 3]", "[-4, 0, 3]", "", 0 },
    { "along a crate", "[0, 0, 3]", "[4, 0, 1]", "{'kind': 'egg-crate', 'cutoff_deg': 20}", 1 },
    { "past a crate", "[0, 0, 3]", "[4, 0, 5]", "{'kind': 'egg-crate', 'cutoff_deg': 20}", 0 },
    { "dark", "[0, 0, 3]", "[4, 0, 1]", "", 0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf (
      "'classes': [{'id': 'soft', 'name': 'soft', 'optics': 'panel', 'source': 'led', 'input_w': "
      "100, 'face': {'shape': 'rect', 'width': 0.2, 'height': 0.2}, 'body': {'width': 0.3, "
      "'depth': 0.1, 'height': 0.3}, 'emits': 'lambert', 'lumens': 3000}], "
      "'room': {'ceiling_height': null}, 'marks': [{'id': 'm', 'at': [4, 0], 'stature': 1.7}], "
      "'walls': [{'id': 'w', 'path': [[7, -3], [7, 3]], 'height': 4}], "
      "'fixtures': [{'id': 'f', 'class': 'soft', 'at': %s, 'aim': %s, 'level': %d, "
      "'modifiers': [%s]}]",
      rows[i].at, rows[i].aim, !g_str_equal (rows[i].name, "dark"), rows[i].more);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (SqSection) cut = section_of (scene);
    if (cut->shadows->len != rows[i].n)
      g_error ("%s: %u shadows, wanted %u", rows[i].name, cut->shadows->len, rows[i].n);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/section shadow/along the floor", test_shadow_on_the_floor);
  g_test_add_func ("/section shadow/up the wall", test_shadow_up_the_wall);
  g_test_add_func ("/section shadow/from a lamp under the crown", test_shadow_from_a_low_lamp);
  g_test_add_func ("/section shadow/over furniture", test_shadow_over_furniture);
  g_test_add_func ("/section shadow/begins at the figure", test_shadow_begins_at_the_figure);
  g_test_add_func ("/section shadow/soft edge", test_penumbra);
  g_test_add_func ("/section shadow/none", test_no_shadow);
  g_test_add_func ("/section shadow/none without light", test_no_shadow_without_light);
  return g_test_run ();
}
