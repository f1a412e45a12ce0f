/* test-shadow.c: shadows on the plan: how long, how soft, where they end, which are worth drawing
 */
#include "draw-page.h"
#include "draw/shadow.h"
#include "draw/shining-face.h"

/* Who stands is as high as their stature: 1.70 m unless the scene says. */
#define CROWN_M 1.70

/* Through the view and back. */
#define ON_PLAN 1e-9

/* One lamp of each kind that throws a shadow of the mark at (3, 0); 20 mm to the metre. */
static SqShadow
shadow_in (const SqScene *scene, guint lamp)
{
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  return sq_shadow (&one_to_fifty, scene, blocks, SQ_AT (SqFixture, scene->fixtures, lamp),
                    SQ_AT (SqMark, scene->marks, 0));
}

static void
test_length (void)
{
  /* A lamp 4 m up, 3 m away: by the intercept theorem the shadow ends 3 · crown / (4 - crown)
   * behind. */
  g_autoptr (SqScene) scene = right_scene (
    "'marks': [{'id': 'm', 'at': [3, 0]}], 'fixtures': ["
    "{'id': 'f', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 4], 'aim': 'm'},"
    "{'id': 'off', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 4], 'aim': 'm', 'on': false},"
    "{'id': 'over', 'class': 'tungsten-fresnel-2000', 'at': [3, 0.3, 4], 'aim': 'm'},"
    "{'id': 'low', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 1.2], 'aim': 'm'}]");
  SqShadow shadow = shadow_in (scene, 0);
  double half = asin (SQ_FIGURE_RADIUS_M / 3.0);

  g_assert_true (shadow.any);
  for (int i = 0; i < SQ_SHADOW_RAYS; i++)
    g_assert_false (shadow.climbs[i]);
  for (int side = 0; side < 2; side++) {
    SqPlace from = sq_view_place (&one_to_fifty, shadow.edge[side].from);
    SqPlace to = sq_view_place (&one_to_fifty, shadow.edge[side].to);
    double turned = side == 0 ? half : -half;
    assert_near (atan2 (to.y_m, to.x_m), turned, ON_PLAN);
    /* It touches the figure: the radius stands square on the tangent. */
    assert_near (hypot (from.x_m - 3.0, from.y_m), SQ_FIGURE_RADIUS_M, ON_PLAN);
    assert_near (sq_place_distance_m (from, to), 3.0 * CROWN_M / (4.0 - CROWN_M), ON_PLAN);
  }
  g_assert_false (shadow_in (scene, 1).any);
  g_assert_false (shadow_in (scene, 2).any);
  /* A lamp lower than the crown throws it on and on: 8 m of it are drawn. */
  shadow = shadow_in (scene, 3);
  assert_near (sq_paper_distance_mm (shadow.edge[0].from, shadow.edge[0].to), 8.0 * 20.0, 1e-6);
}

/* Source · behind / before: the two examples that the trade gives, a soft one and a hard one. */
static void
test_penumbra (void)
{
  assert_near (sq_penumbra_m (1.2, 3.0, 1.5), 0.6, EXACT);
  assert_near (sq_penumbra_m (0.15, 3.0, 1.5), 0.075, EXACT);
  /* At the end of the core it is as wide as the shadow of a point, 2r (1 + behind / before). */
  double core = sq_shadow_core_m (1.2, 3.0);
  assert_near (sq_penumbra_m (1.2, 3.0, core), 0.4 * (1.0 + core / 3.0), EXACT);
  g_assert_true (isinf (sq_shadow_core_m (0.4, 3.0)));
}

/* Lamps with a face 0.3 m and 1.2 m wide; a soft box of 0.9 m; a frame of 2 m half way. */
static void
test_penumbra_drawn (void)
{
  g_autoptr (SqScene) scene = right_scene (
    "'classes': [{'id': 'small', 'face': {'width': 0.3}, 'emits': 'lambert', 'lumens': 9000},"
    "{'id': 'large', 'optics': 'panel', 'face': {'shape': 'rect', 'width': 1.2, 'height': 0.6},"
    "'emits': 'lambert', 'lumens': 9000}],"
    "'marks': [{'id': 'm', 'at': [3, 0]}, {'id': 'n', 'at': [-4, 0]}], 'fixtures': ["
    "{'id': 'a', 'class': 'small', 'at': [0, 0, 4], 'aim': 'm'},"
    "{'id': 'b', 'class': 'large', 'at': [0, 0, 4], 'aim': 'm'},"
    "{'id': 'c', 'class': 'large', 'at': [0, 0, 4], 'aim': 'm', 'roll': 90},"
    "{'id': 'd', 'class': 'small', 'at': [0, 0, 4], 'aim': 'm', 'modifiers': ["
    "  {'kind': 'softbox', 'material': 'half-frost', 'width': 0.9, 'height': 0.9}]}]");
  static const double wide[] = { 0.3, 1.2, 0.6, 0.9 };
  const double touch = 3.0 * cos (asin (SQ_FIGURE_RADIUS_M / 3.0));
  for (guint i = 0; i < G_N_ELEMENTS (wide); i++) {
    SqShadow shadow = shadow_in (scene, i);
    double whole = 3.0 * CROWN_M / (4.0 - CROWN_M);
    double core = wide[i] > 0.4 ? 0.4 * touch / (wide[i] - 0.4) : INFINITY;
    double length = MIN (whole, core);
    assert_near (sq_paper_distance_mm (shadow.edge[0].from, shadow.edge[0].to), 20.0 * length,
                 ON_PLAN);
    for (int side = 0; side < 2; side++)
      assert_near (sq_paper_distance_mm (shadow.edge[side].to, shadow.penumbra[side]),
                   20.0 * wide[i] * length / touch / 2, ON_PLAN);
  }
}

/* Rolled, a rectangle reaches from corner to corner, a disc no farther than before. */
static void
test_width_of_the_source (void)
{
  static const struct {
    const char *shape;
    double roll_deg, across_m, up_m;
  } rows[] = {
    { "rect", 0.0, 0.3, 0.4 },
    { "rect", 90.0, 0.4, 0.3 },
    { "rect", 45.0, 0.7 / G_SQRT2, 0.7 / G_SQRT2 },
    { "disc", 0.0, 0.5, 0.5 },
    { "disc", 45.0, 0.5, 0.5 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    gboolean disc = strcmp (rows[i].shape, "disc") == 0;
    g_autofree char *text = g_strdup_printf (
      "'classes': [{'id': 'c', 'beams': [{'beam_deg': 50, 'field_deg': 70, 'peak_cd': 5000}],"
      "'face': {'shape': '%s', 'width': %g%s}}], 'marks': [{'id': 'm', 'at': [3, 0]}], 'fixtures':"
      "[{'id': 'f', 'class': 'c', 'at': [0, 0, 4], 'aim': 'm', 'roll': %g}]",
      rows[i].shape, disc ? 0.5 : 0.3, disc ? "" : ", 'height': 0.4", rows[i].roll_deg);
    g_autoptr (SqScene) scene = right_scene (text);
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, 0);
    SqShiningFace face = sq_shining_face (sq_scene_class (scene, fixture->class_id), fixture);
    assert_near (sq_shining_extent_m (&face, rows[i].roll_deg), rows[i].across_m, EXACT);
    assert_near (sq_shining_extent_m (&face, rows[i].roll_deg + 90.0), rows[i].up_m, EXACT);
    assert_near (sq_shadow_source (scene, fixture, SQ_AT (SqMark, scene->marks, 0)).width_m,
                 rows[i].across_m, EXACT);
  }
}

static void
test_frame_throws_it (void)
{
  g_autoptr (SqScene) scene = right_scene (
    "'marks': [{'id': 'm', 'at': [6, 0]}], 'fixtures': ["
    "{'id': 'f', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 1.5912], 'aim': 'm'}],"
    "'panels': [{'id': 'g', 'kind': 'diffusion', 'material': 'full-white', 'at': [2, 0.3, 1.6],"
    "'facing': 180, 'width': 1.2, 'height': 1.2}]");
  SqShadowSource source = sq_shadow_source (scene, SQ_AT (SqFixture, scene->fixtures, 0),
                                            SQ_AT (SqMark, scene->marks, 0));
  assert_near (source.width_m, 1.2, EXACT);
  assert_near (source.at.x_m, 2.0, EXACT);
  assert_near (source.at.y_m, 0.3, EXACT);
}

/* A wall 2 m behind ends it; a post in the middle ends only what falls on it. */
static void
test_walls_end_it (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'walls': [{'id': 'w', 'path': [[5, -4], [5, 4]], 'thickness': 0.2, 'height': 3},"
                 "{'id': 'p', 'path': [[4, -0.05], [4, 0.05]], 'thickness': 0.1, 'height': 3}],"
                 "'marks': [{'id': 'm', 'at': [3, 0]}], 'fixtures': ["
                 "{'id': 'f', 'class': 'tungsten-fresnel-650', 'at': [0, 0, 2], 'aim': 'm'}]");
  SqShadow shadow = shadow_in (scene, 0);
  for (int i = 0; i < SQ_SHADOW_RAYS; i++) {
    g_assert_true (shadow.climbs[i]);
    SqPlace end = sq_view_place (&one_to_fifty, shadow.end[i]);
    gboolean at_post = fabs (end.y_m / end.x_m) <= 0.05 / 3.95;
    assert_near (end.x_m, at_post ? 3.95 : 4.9, ON_PLAN);
  }
}

/* Two lamps of I and 3 I, equally high and far: the shadow of the weaker is log2 (4 / 3) deep, that
 * of the stronger two stops; a lamp of a tenth of the light is not worth a shadow. */
static void
test_depth (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'marks': [{'id': 'm', 'at': [0, 0]}], 'fixtures': ["
                 "{'id': 'a', 'class': 'tungsten-fresnel-650', 'at': [3, 0, 3], 'role': 'side'},"
                 "{'id': 'b', 'class': 'tungsten-fresnel-650', 'at': [-3, 0, 3], 'role': 'key'},"
                 "{'id': 'c', 'class': 'tungsten-fresnel-650', 'at': [0, 3, 3], 'role': 'back'}]");
  static const double shares[][3] = { { 1, 3, 0 }, { 1, 1, 0 }, { 9, 0, 1 } };
  const SqMark *mark = SQ_AT (SqMark, scene->marks, 0);
  const SqPoint face = sq_mark_face (mark);
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++) {
    g_autoptr (GArray) rows = g_array_new (FALSE, FALSE, sizeof (SqReadingRow));
    SqMarkReading reading = { .mark = mark, .face = face, .rows = rows };
    double all = 0.0;
    for (guint j = 0; j < 3; j++) {
      const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, j);
      SqVector way = sq_vector_between (face, fixture->at);
      SqReadingRow row = { .id = fixture->id,
                           .lux = 100.0 * shares[i][j],
                           .elevation_deg = sq_vector_elevation_deg (way),
                           .distance_m = sq_vector_length (way) };
      g_array_append_val (rows, row);
      all += shares[i][j];
    }
    g_autoptr (GPtrArray) marks = g_ptr_array_new ();
    g_ptr_array_add (marks, &reading);
    const SqReadings readings = { .marks = marks };
    for (guint j = 0; j < 3; j++) {
      const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, j);
      double stops = log2 (all / (all - shares[i][j]));
      if (isfinite (stops))
        assert_near (sq_shadow_stops (&reading, fixture), stops, ON_PLAN);
      g_assert_cmpint (sq_shadow_counts (scene, &readings, fixture, mark), ==, stops >= 1.0 / 3.0);
    }
  }
}

/* With no readings: key and back light whose beam is on the face. */
static void
test_without_readings (void)
{
  g_autoptr (SqScene) scene = right_scene (
    "'marks': [{'id': 'm', 'at': [3, 0]}], 'fixtures': ["
    "{'id': 'f', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 4], 'aim': 'm', 'beam': 0},"
    "{'id': 'away', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 4], 'aim': [0, 5, 1],"
    " 'beam': 0},"
    "{'id': 'soft', 'class': 'softlight-2000', 'at': [0, 0, 4], 'aim': 'm'},"
    "{'id': 'bg', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 4], 'aim': 'm',"
    " 'role': 'background'}]");
  for (guint i = 0; i < scene->fixtures->len; i++)
    g_assert_cmpint (sq_shadow_counts (scene, NULL, SQ_AT (SqFixture, scene->fixtures, i),
                                       SQ_AT (SqMark, scene->marks, 0)),
                     ==, i == 0);
}

/* Behind the camera, beside its field, and behind a wall it is not seen. */
static void
test_seen (void)
{
  static const struct {
    const char *walls;
    double aim_x, aim_y;
    gboolean seen;
  } rows[] = {
    { "", 4, 0, TRUE },
    { "", -4, 0, FALSE },
    { "", 4, 4, FALSE },
    { "{'id': 'w', 'path': [[1, -9], [1, 9]], 'height': 3}", 4, 0, FALSE },
    { "{'id': 'w', 'path': [[1, -9], [1, 9]], 'height': 1}", 4, 0, TRUE }, /* over it */
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf (
      "'walls': [%s], 'marks': [{'id': 'm', 'at': [3, 0]}],"
      "'cameras': [{'id': 'c', 'at': [0, 0, 1.5], 'aim': [%g, %g, 1.5], 'focal_mm': 40}],"
      "'fixtures': [{'id': 'f', 'class': 'tungsten-fresnel-650', 'at': [3, 3, 3], 'aim': 'm'}]",
      rows[i].walls, rows[i].aim_x, rows[i].aim_y);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (GArray) blocks = sq_wall_blocks (scene);
    const SqCamera *camera = SQ_AT (SqCamera, scene->cameras, 0);
    SqCameraField field = sq_camera_field (&one_to_fifty, scene, blocks, camera);
    SqShadow shadow = shadow_in (scene, 0);
    g_assert_true (shadow.any);
    g_assert_cmpint (sq_camera_sees_shadow (&one_to_fifty, scene, blocks, camera, &field, &shadow),
                     ==, rows[i].seen);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/shadows/as long as the lamp is high", test_length);
  g_test_add_func ("/draw/shadows/penumbra by similar triangles", test_penumbra);
  g_test_add_func ("/draw/shadows/penumbra and core as drawn", test_penumbra_drawn);
  g_test_add_func ("/shadow/as wide as what shines", test_width_of_the_source);
  g_test_add_func ("/draw/shadows/a frame throws it", test_frame_throws_it);
  g_test_add_func ("/draw/shadows/walls end it", test_walls_end_it);
  g_test_add_func ("/draw/shadows/deep ones count", test_depth);
  g_test_add_func ("/draw/shadows/with no readings key and back count", test_without_readings);
  g_test_add_func ("/draw/shadows/seen by the camera", test_seen);
  return g_test_run ();
}
