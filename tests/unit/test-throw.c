/* test-throw.c: where light and sight go on the plan: throws, ticks, fields of view */
#include "draw-page.h"
#include "draw/beam-angles.h"
#include "draw/camera-symbol.h"
#include "draw/throw.h"

static void
test_camera_field (void)
{
  static const struct {
    double focal, gate, squeeze;
  } rows[] = { { 40, 24.9, 1 }, { 18, 36.7, 1 }, { 75, 24.9, 2 }, { 300, 16, 1 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text =
      g_strdup_printf ("'marks': [{'id': 'm', 'at': [4, 3]}], 'cameras': [{'id': "
                       "'c',"
                       "'at': [0, 0, 1.5], 'aim': 'm', 'focal_mm': %g, 'gate_mm': [%g, 18],"
                       "'squeeze': %g}]",
                       rows[i].focal, rows[i].gate, rows[i].squeeze);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (GArray) blocks = sq_wall_blocks (scene);
    SqCameraField field =
      sq_camera_field (&one_to_fifty, scene, blocks, SQ_AT (SqCamera, scene->cameras, 0));
    double half = atan (rows[i].gate * rows[i].squeeze / (2 * rows[i].focal));
    assert_near (field.half_rad, half, EXACT);
    assert_near (field.frame_mm, 5.0 * 20.0, 1e-6); /* 3, 4, 5 */
    for (int edge = 0; edge < 2; edge++) {
      SqPaperPoint at = sq_camera_edge_at (&field, edge, 60.0);
      double angle = atan2 (-(at.y_mm - field.pupil.y_mm), at.x_mm - field.pupil.x_mm);
      assert_near (angle, atan2 (3, 4) + (edge == 0 ? half : -half), EXACT);
    }
  }
}

static void
test_camera_reach (void)
{
  /* A wall along its left side cuts the left edge of the field, not the right one. */
  g_autoptr (SqScene) scene =
    right_scene ("'walls': [{'id': 'w', 'path': [[-9, 2], [30, 2]], 'thickness': 0.2,"
                 "'height': 3}], 'cameras': [{'id': 'c', 'at': [0, 0, 1.5], 'aim': [4, 0, 1.5],"
                 "'focal_mm': 18, 'gate_mm': [36, 24]}]");
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  SqCameraField field =
    sq_camera_field (&one_to_fifty, scene, blocks, SQ_AT (SqCamera, scene->cameras, 0));
  assert_near (field.half_rad, G_PI / 4, EXACT); /* 36 over twice 18 */
  assert_near (field.reach_mm[0], 20.0 * 1.9 * G_SQRT2, 1e-6);
  /* At the frame, 4 m away and 4 m to each side, the wall stands at 1.9 of these 4. */
  assert_near (field.seen[0], 1.9 / 4.0, 1.0 / 32.0);
  assert_near (field.seen[1], 1.0, EXACT);
  /* With no wall it goes half as far again as the frame, 4 m away. */
  assert_near (field.reach_mm[1], 20.0 * 1.5 * 4.0 * G_SQRT2, 1e-6);
}

/* A camera may look through a door at somebody, but past the frame a window ends its edges. */
static void
test_camera_out_of_window (void)
{
  static const struct {
    double aim_x, left_x;
  } rows[] = { { 2.0, 3.9 }, { 5.0, 7.5 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf (
      "'walls': [{'id': 'w', 'path': [[4, -9], [4, 9]], 'thickness': 0.2, 'height': 3,"
      "'openings': [{'id': 'o', 'kind': 'window', 'edge': 0, 'offset': 0.5, 'width': 17}]}],"
      "'cameras': [{'id': 'c', 'at': [0, 0, 1.5], 'aim': [%g, 0, 1.5], 'focal_mm': 18,"
      "'gate_mm': [36, 24]}]",
      rows[i].aim_x);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (GArray) blocks = sq_wall_blocks (scene);
    SqCameraField field =
      sq_camera_field (&one_to_fifty, scene, blocks, SQ_AT (SqCamera, scene->cameras, 0));
    for (int edge = 0; edge < 2; edge++)
      assert_near (field.reach_mm[edge], 20.0 * rows[i].left_x * G_SQRT2, 1e-6);
  }
}

static const char one_lamp[] =
  "'room': {'ceiling_height': null}, 'fixtures': [{'id': 'f', 'class': "
  "'tungsten-fresnel-2000', 'at': [0, 0, 3], 'aim': [6, 2, 1.5], 'beam': 0.5}]";

static void
test_stop_ticks (void)
{
  g_autoptr (SqScene) scene = right_scene (one_lamp);
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, 0);
  SqThrow way = sq_throw (&one_to_fifty, scene, blocks, fixture, FALSE);
  SqPoint aim = { 6, 2, 1.5 };
  double whole = sq_vector_length (sq_vector_between (fixture->at, aim));

  g_assert_true (way.any && way.aim_tick);
  g_assert_cmpint (way.n_ticks, >=, 5);
  for (int n = 0; n < way.n_ticks; n++) {
    SqPlace at = sq_view_place (&one_to_fifty, way.tick[n]);
    /* The point of the axis above that place, and how much brighter it is there by 1 / d². */
    double share = at.x_m / 6.0;
    SqPoint point = { at.x_m, at.y_m, 3.0 + share * (1.5 - 3.0) };
    double distance = sq_vector_length (sq_vector_between (fixture->at, point));
    assert_near (at.y_m, at.x_m / 3.0, EXACT);
    assert_near (log2 (pow (whole / distance, 2)), n, 1e-9);
  }
}

static void
test_ticks_count_from_frame (void)
{
  g_autoptr (SqScene) scene = right_scene (
    "'fixtures': [{'id': 'f', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 2],"
    "'aim': [8, 0, 2]}], 'panels': [{'id': 'g', 'kind': 'diffusion', 'material': 'full-white',"
    "'at': [3, 0, 2], 'facing': 180, 'width': 1.2, 'height': 1.2}]");
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  SqThrow way =
    sq_throw (&one_to_fifty, scene, blocks, SQ_AT (SqFixture, scene->fixtures, 0), FALSE);
  g_assert_false (way.hard); /* the frame is the source now */
  for (int n = 0; n < way.n_ticks; n++)
    assert_near (sq_view_place (&one_to_fifty, way.tick[n]).x_m, 3.0 + 5.0 * pow (2.0, -n / 2.0),
                 EXACT);
}

static void
test_axis_is_cut (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'walls': [{'id': 'w', 'path': [[4, -3], [4, "
                 "3]], 'thickness': 0.2, 'height': 3}],"
                 "'fixtures': [{'id': 'f', 'class': 'tungsten-fresnel-650', "
                 "'at': [0, 0, 2], 'aim': [8, 0, 2]}]");
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  SqThrow way =
    sq_throw (&one_to_fifty, scene, blocks, SQ_AT (SqFixture, scene->fixtures, 0), FALSE);
  assert_near (sq_view_place (&one_to_fifty, way.axis.to).x_m, 3.9, EXACT);
  g_assert_false (way.aim_tick);
  g_assert_cmpint (way.n_ticks, >, 0);
  for (int n = 0; n < way.n_ticks; n++)
    g_assert_cmpfloat (sq_view_place (&one_to_fifty, way.tick[n]).x_m, <=, 3.9);
}

/* What stands in the way at 4 m: a door is open whichever way it swings; flags and bounces end the
 * light whatever their cloth, nets never. */
static void
test_what_ends_it (void)
{
  static const struct {
    const char *what;
    double end_m;
  } rows[] = {
    { "'walls': [{'id': 'w', 'path': [[4, -3], [4, 3]], 'thickness': 0.2, 'height': 3, 'openings':"
      "[{'id': 'o', 'kind': 'door', 'offset': 2, 'width': 2, 'open_deg': 90}]}]",
      8.0 },
    { "'walls': [{'id': 'w', 'path': [[4, -3], [4, 3]], 'thickness': 0.2, 'height': 3, 'openings':"
      "[{'id': 'o', 'kind': 'door', 'offset': 2, 'width': 2, 'open_deg': -90}]}]",
      8.0 },
    { "'walls': [{'id': 'w', 'path': [[4, -3], [4, 3]], 'thickness': 0.2, 'height': 3, 'openings':"
      "[{'id': 'o', 'kind': 'door', 'offset': 2, 'width': 2, 'open_deg': 0}]}]",
      3.9 },
    { "'panels': [{'id': 'g', 'kind': 'flag', 'at': [4, 0, 1.5], 'width': 1, 'height': 1}]", 4.0 },
    { "'panels': [{'id': 'g', 'kind': 'bounce', 'at': [4, 0, 1.5], 'width': 1, 'height': 1,"
      "'material': 'poly-board'}]",
      4.0 },
    { "'panels': [{'id': 'g', 'kind': 'net', 'at': [4, 0, 1.5], 'width': 1, 'height': 1,"
      "'material': 'single-net'}]",
      8.0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqScene) scene = right_scene (rows[i].what);
    g_autoptr (GArray) blocks = sq_wall_blocks (scene);
    double end_m = sq_ray_cut_m (scene, blocks, sq_point (0, 0, 1.5), sq_vector (1, 0, 0), 8.0);
    g_test_message ("%s", rows[i].what);
    assert_near (end_m, rows[i].end_m, EXACT);
  }
}

/* The edges stand where the beam has fallen to a half and a tenth, each cut by what it meets: a
 * wall along one side, a flag before the other. */
static void
test_edges (void)
{
  g_autoptr (SqScene) scene = right_scene (
    "'classes': [{'id': 'k', 'optics': 'lens', 'face': {'width': 0.1}, 'beams': ["
    "  {'beam_deg': 40, 'field_deg': 60, 'peak_cd': 9000}]}],"
    "'walls': [{'id': 'w', 'path': [[-2, 1.1], [12, 1.1]], 'thickness': 0.2, 'height': 4}],"
    "'panels': [{'id': 'g', 'kind': 'flag', 'at': [2, -1.1, 2], 'facing': 180, 'width': 0.6,"
    "  'height': 1}],"
    "'fixtures': [{'id': 'f', 'class': 'k', 'at': [0, 0, 2], 'aim': [8, 0, 2]}]");
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  SqThrow way =
    sq_throw (&one_to_fifty, scene, blocks, SQ_AT (SqFixture, scene->fixtures, 0), FALSE);
  g_assert_true (way.hard && way.with_tenth);
  const double half = SQ_RADIANS (20), tenth = SQ_RADIANS (30);
  const struct {
    SqPaperLine line;
    double slope, end_x;
  } rows[] = {
    { way.half[0], tan (half), 1.0 / tan (half) },    /* to the wall's face at y = 1 */
    { way.tenth[0], tan (tenth), 1.0 / tan (tenth) }, /* its own way to the same wall */
    { way.half[1], -tan (half), 8.0 },                /* beside the flag: level with the aim */
    { way.tenth[1], -tan (tenth), 2.0 },              /* the flag spans y -1.4 to -0.8 */
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    SqPlace end = sq_view_place (&one_to_fifty, rows[i].line.to);
    double slope = end.y_m / end.x_m;
    assert_near (slope, rows[i].slope, 1e-9);
    assert_near (end.x_m, rows[i].end_x, 1e-9);
  }
}

/* With more than eight hard lamps a tenth is drawn for keys, backs and profiles alone. */
static void
test_many_tenths (void)
{
  static const struct {
    const char *optics, *role;
    gboolean among_many;
  } rows[] = {
    { "lens", "key", TRUE },   { "lens", "back", TRUE },          { "lens", "fill", FALSE },
    { "lens", "side", FALSE }, { "profile", "background", TRUE }, { "parallel", "effect", FALSE },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (int many = 0; many < 2; many++) {
      g_autofree char *text = g_strdup_printf (
        "'classes': [{'id': 'k', 'optics': '%s', 'beams': ["
        "  {'beam_deg': 20, 'field_deg': 40, 'peak_cd': 9000}]}],"
        "'fixtures': [{'id': 'f', 'class': 'k', 'at': [0, 0, 2], 'aim': [8, 0, 2], 'role': '%s'}]",
        rows[i].optics, rows[i].role);
      g_autoptr (SqScene) scene = right_scene (text);
      g_autoptr (GArray) blocks = sq_wall_blocks (scene);
      SqThrow way =
        sq_throw (&one_to_fifty, scene, blocks, SQ_AT (SqFixture, scene->fixtures, 0), many);
      g_assert_true (way.hard);
      g_assert_cmpint (way.with_tenth, ==, !many || rows[i].among_many);
    }
}

static void
test_beam_angles (void)
{
  g_autoptr (SqScene) scene = right_scene (
    "'classes': [{'id': 'k', 'optics': 'lens', 'source': 'led', 'beams': ["
    "{'beam_deg': 10, 'field_deg': 18, 'peak_cd': 9}, {'beam_deg': 40, 'field_deg': 72,"
    "'peak_cd': 1}]}], 'fixtures': ["
    "{'id': 'spot', 'class': 'k', 'at': [0, 0, 2], 'beam': 0},"
    "{'id': 'mid', 'class': 'k', 'at': [0, 0, 2], 'beam': 0.5},"
    "{'id': 'boxed', 'class': 'k', 'at': [0, 0, 2], 'modifiers': [{'kind': 'softbox', 'width': 1,"
    " 'height': 1, 'material': 'full-white'}]},"
    "{'id': 'snoot', 'class': 'k', 'at': [0, 0, 2], 'modifiers': [{'kind': 'snoot',"
    " 'cutoff_deg': 20}]}]");
  double half, tenth;
  g_assert_true (sq_fixture_beam_deg (scene, SQ_AT (SqFixture, scene->fixtures, 0), &half, &tenth));
  assert_near (half, 10.0, EXACT);
  g_assert_true (sq_fixture_beam_deg (scene, SQ_AT (SqFixture, scene->fixtures, 1), &half, &tenth));
  assert_near (half, 20.0, 1e-9); /* the geometric mean of 10 and 40 */
  assert_near (tenth, 36.0, 1e-9);
  g_assert_false (sq_fixture_is_hard (scene, SQ_AT (SqFixture, scene->fixtures, 2)));

  /* A snoot passes (2 / π)(acos s - s √(1 - s²)), s = tan g / tan c: overlap of two equal discs. */
  g_assert_true (sq_fixture_beam_deg (scene, SQ_AT (SqFixture, scene->fixtures, 3), &half, &tenth));
  const double angles[] = { half, tenth }, passes[] = { 0.5, 0.1 };
  for (int i = 0; i < 2; i++) {
    double s = tan (SQ_RADIANS (angles[i] / 2)) / tan (SQ_RADIANS (20));
    assert_near ((2 / G_PI) * (acos (s) - s * sqrt (1 - s * s)), passes[i], 0.002);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/cameras/edges at atan (width over twice the focal length)",
                   test_camera_field);
  g_test_add_func ("/draw/cameras/a wall ends the field", test_camera_reach);
  g_test_add_func ("/draw/cameras/past the frame a window ends the field",
                   test_camera_out_of_window);
  g_test_add_func ("/draw/throw/each tick is one stop", test_stop_ticks);
  g_test_add_func ("/draw/throw/ticks count from a frame", test_ticks_count_from_frame);
  g_test_add_func ("/draw/throw/a wall cuts the axis", test_axis_is_cut);
  g_test_add_func ("/draw/throw/what ends it and what does not", test_what_ends_it);
  g_test_add_func ("/draw/throw/edges are cut each by its own", test_edges);
  g_test_add_func ("/draw/throw/tenths among many", test_many_tenths);
  g_test_add_func ("/draw/throw/beam angles", test_beam_angles);
  return g_test_run ();
}
