/* test-scene-frames.c: where lamps, panels and cameras look, and where aims lead */
#include "scene-text.h"

#define SAME 1e-12   /* of directions and metres: a few roundings */
#define PRINTED 5e-5 /* of a table printed with four decimals */

static void
same_vector (const char *what, SqVector got, SqVector expected)
{
  if (!(fabs (got.x - expected.x) <= SAME && fabs (got.y - expected.y) <= SAME &&
        fabs (got.z - expected.z) <= SAME))
    g_error ("%s is (%.15g, %.15g, %.15g), expected (%.15g, %.15g, %.15g)", what, got.x, got.y,
             got.z, expected.x, expected.y, expected.z);
}

static void
same_point (const char *what, SqPoint got, SqPoint expected)
{
  same_vector (what, sq_vector (got.x_m, got.y_m, got.z_m),
               sq_vector (expected.x_m, expected.y_m, expected.z_m));
}

/* Right, up and forward are of unit length, square to one another and right-handed: forward is
 * up × right, since up = right × forward. */
static void
check_square (SqFrame frame)
{
  g_assert_cmpfloat_with_epsilon (sq_vector_length (frame.forward), 1.0, SAME);
  g_assert_cmpfloat_with_epsilon (sq_vector_length (frame.right), 1.0, SAME);
  g_assert_cmpfloat_with_epsilon (sq_vector_dot (frame.right, frame.forward), 0.0, SAME);
  same_vector ("up", frame.up, sq_vector_cross (frame.right, frame.forward));
  same_vector ("forward", frame.forward, sq_vector_cross (frame.up, frame.right));
}

/* Worked by hand from: right = forward × z, page +x where forward is vertical; up = right ×
 * forward; roll turns both about forward, right-handed. */
static const struct {
  const char *name;
  SqVector forward;
  double roll_deg;
  SqVector right, up;
} frames[] = {
  { "along +x", { 2, 0, 0 }, 0, { 0, -1, 0 }, { 0, 0, 1 } },
  { "along -x", { -1, 0, 0 }, 0, { 0, 1, 0 }, { 0, 0, 1 } },
  { "up the page", { 0, 3, 0 }, 0, { 1, 0, 0 }, { 0, 0, 1 } },
  { "down the page", { 0, -1, 0 }, 0, { -1, 0, 0 }, { 0, 0, 1 } },
  { "straight down", { 0, 0, -5 }, 0, { 1, 0, 0 }, { 0, 1, 0 } },
  { "straight up", { 0, 0, 5 }, 0, { 1, 0, 0 }, { 0, -1, 0 } },
  { "down at 45 degrees", { 0, 1, -1 }, 0, { 1, 0, 0 }, { 0, G_SQRT2 / 2, G_SQRT2 / 2 } },
  { "nearly straight down", { 1e-9, 0, -1 }, 0, { 1, 0, 0 }, { 0, 1, 0 } },
  { "along +x, a quarter turn", { 1, 0, 0 }, 90, { 0, 0, -1 }, { 0, -1, 0 } },
  { "along +x, a quarter back", { 1, 0, 0 }, -90, { 0, 0, 1 }, { 0, 1, 0 } },
  { "along +x, half a turn", { 1, 0, 0 }, 180, { 0, 1, 0 }, { 0, 0, -1 } },
  { "straight down, a quarter turn", { 0, 0, -1 }, 90, { 0, -1, 0 }, { 1, 0, 0 } },
  { "up the page, an eighth",
    { 0, 1, 0 },
    45,
    { G_SQRT2 / 2, 0, -G_SQRT2 / 2 },
    { G_SQRT2 / 2, 0, G_SQRT2 / 2 } },
};

static void
test_frames (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (frames); i++) {
    SqFrame frame = sq_frame (frames[i].forward, frames[i].roll_deg);
    same_vector (frames[i].name, frame.forward, sq_vector_unit (frames[i].forward));
    same_vector (frames[i].name, frame.right, frames[i].right);
    same_vector (frames[i].name, frame.up, frames[i].up);
  }
}

static void
test_frames_square (void)
{
  for (int azimuth = 0; azimuth < 360; azimuth += 15) {
    for (int elevation = -75; elevation <= 75; elevation += 15) {
      for (int roll = -180; roll <= 180; roll += 45)
        check_square (sq_frame (sq_vector_toward (azimuth, elevation), roll));
    }
  }
}

static void
test_fixture_frame (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'marks': [{'id': 'm1', 'at': [3, 4], 'stature': 1.7}],"
                 "'fixtures': [{'id': 'down', 'class': '" LAMP "', 'at': [0, 0, 2], 'roll': 90},"
                 " {'id': 'level', 'class': '" LAMP "', 'at': [0, 0, 2], 'aim': [0, 7, 2]},"
                 " {'id': 'face', 'class': '" LAMP "', 'at': [3, 4, 1.0912], 'aim': 'm1'}]");
  SqFrame down = sq_fixture_frame (scene, SQ_AT (SqFixture, scene->fixtures, 0));
  SqFrame level = sq_fixture_frame (scene, SQ_AT (SqFixture, scene->fixtures, 1));
  SqFrame face = sq_fixture_frame (scene, SQ_AT (SqFixture, scene->fixtures, 2));
  same_vector ("down", down.forward, sq_vector (0, 0, -1));
  same_vector ("down, right", down.right, sq_vector (0, -1, 0));
  same_vector ("level", level.forward, sq_vector (0, 1, 0));
  same_vector ("level, up", level.up, sq_vector (0, 0, 1));
  same_vector ("under the face", face.forward, sq_vector (0, 0, 1));
}

/* Worked by hand from: n toward (facing, tilt); u = (-sin facing, cos facing, 0) at any tilt; v = n
 * × u; roll turns u and v about n, right-handed. */
static const struct {
  double facing_deg, tilt_deg, roll_deg;
  SqVector n, u, v;
} panels[] = {
  { 0, 0, 0, { 1, 0, 0 }, { 0, 1, 0 }, { 0, 0, 1 } },
  { 90, 0, 0, { 0, 1, 0 }, { -1, 0, 0 }, { 0, 0, 1 } },
  { 180, 0, 0, { -1, 0, 0 }, { 0, -1, 0 }, { 0, 0, 1 } },
  { -90, 0, 0, { 0, -1, 0 }, { 1, 0, 0 }, { 0, 0, 1 } },
  { 0, 90, 0, { 0, 0, 1 }, { 0, 1, 0 }, { -1, 0, 0 } },
  { 0, -90, 0, { 0, 0, -1 }, { 0, 1, 0 }, { 1, 0, 0 } },
  { 90, 90, 0, { 0, 0, 1 }, { -1, 0, 0 }, { 0, -1, 0 } },
  { 90, -90, 0, { 0, 0, -1 }, { -1, 0, 0 }, { 0, 1, 0 } },
  { 0, 0, 90, { 1, 0, 0 }, { 0, 0, 1 }, { 0, -1, 0 } },
  { 0, -90, 90, { 0, 0, -1 }, { 1, 0, 0 }, { 0, -1, 0 } },
  { 0, 45, 0, { G_SQRT2 / 2, 0, G_SQRT2 / 2 }, { 0, 1, 0 }, { -G_SQRT2 / 2, 0, G_SQRT2 / 2 } },
};

static void
test_panel_frames (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (panels); i++) {
    g_autofree char *text = g_strdup_printf (
      "'panels': [{'id': 'g1', 'kind': 'flag', 'at': [0, 0, 1], 'width': 1, 'height': 2,"
      " 'facing': %d, 'tilt': %d, 'roll': %d}]",
      (int)panels[i].facing_deg, (int)panels[i].tilt_deg, (int)panels[i].roll_deg);
    g_autoptr (SqScene) scene = right_scene (text);
    SqFrame frame = sq_panel_frame (SQ_AT (SqPanel, scene->panels, 0));
    same_vector (text, frame.forward, panels[i].n);
    same_vector (text, frame.right, panels[i].u);
    same_vector (text, frame.up, panels[i].v);
  }
}

/* 2 atan (w / 2f). Gates: full frame 36 × 24 mm (still cameras and their sensors); Super 35, four
 * perforations, 24.89 × 18.66 mm (SMPTE ST 59, from memory). Angles worked from these by hand; the
 * two with a squeeze or an aspect from: aspect / squeeze on the gate, 2 · w across. */
static const struct {
  const char *camera; /* members */
  double across_deg, up_deg;
} views[] = {
  { "'gate_mm': [36, 24], 'focal_mm': 50", 39.5978, 26.9915 },
  { "'gate_mm': [36, 24], 'focal_mm': 18", 90.0000, 67.3801 },
  { "'focal_mm': 50", 27.9538, 21.1397 },
  { "'focal_mm': 25", 52.9282, 40.9311 },
  /* 24.89 / 1.85 = 13.4541 mm high */
  { "'focal_mm': 50, 'aspect': 1.85", 27.9538, 15.3252 },
  /* 18.66 · 1 mm wide, for 1.33 over 1.33 of squeeze; across as 18.66 · 1.33 mm */
  { "'focal_mm': 50, 'aspect': 1.33, 'squeeze': 1.33", 27.8759, 21.1397 },
};

static SqScene *
scene_with_camera (const char *members)
{
  g_autofree char *text =
    g_strdup_printf ("'cameras': [{'id': 'c1', 'at': [0, 0, 1.5], %s}]", members);
  return right_scene (text);
}

static void
test_views (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (views); i++) {
    g_autoptr (SqScene) scene = scene_with_camera (views[i].camera);
    const SqCamera *camera = sq_scene_camera (scene);
    g_assert_cmpfloat_with_epsilon (sq_camera_view_across_deg (camera), views[i].across_deg,
                                    PRINTED);
    g_assert_cmpfloat_with_epsilon (sq_camera_view_up_deg (camera), views[i].up_deg, PRINTED);
  }
}

/* 24.89 mm through 50 mm: 5 · 24.89 / 50 = 2.489 m wide at 5 m. */
static void
test_width_at_a_distance (void)
{
  g_autoptr (SqScene) scene = scene_with_camera ("'focal_mm': 50");
  double half_rad = SQ_RADIANS (sq_camera_view_across_deg (sq_scene_camera (scene))) / 2.0;
  g_assert_cmpfloat_with_epsilon (2.0 * 5.0 * tan (half_rad), 2.489, SAME);
}

/* Shutter angle / (360 · frames a second): 1/48, 1/50 and 1/60 s are the usual ones at 24. */
static void
test_exposures (void)
{
  static const struct {
    const char *camera;
    double seconds;
  } rows[] = {
    { "'label': '1'", 1.0 / 48.0 },
    { "'shutter_deg': 172.8", 1.0 / 50.0 },
    { "'shutter_deg': 144", 1.0 / 60.0 },
    { "'fps': 48, 'shutter_deg': 360", 1.0 / 48.0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqScene) scene = scene_with_camera (rows[i].camera);
    g_assert_cmpfloat_with_epsilon (sq_camera_exposure_s (sq_scene_camera (scene)), rows[i].seconds,
                                    SAME);
  }
}

static void
test_lines_of_sight (void)
{
  g_autoptr (SqScene) level = scene_with_camera ("'label': '1'");
  g_autoptr (SqScene) aimed = scene_with_camera ("'aim': [3, 0, 5.5]");
  same_vector ("none", sq_camera_direction (level, sq_scene_camera (level)), sq_vector (0, 1, 0));
  same_vector ("3, 4, 5", sq_camera_direction (aimed, sq_scene_camera (aimed)),
               sq_vector (0.6, 0, 0.8));
}

/* Shares of stature: 0.936 standing (body-segment ratios of Drillis and Contini, 1966, from
 * memory), 0.72 sitting, 0.07 lying (common practice). */
static void
test_eyes (void)
{
  static const struct {
    const char *mark;
    double eyes_m, face_z_m;
  } rows[] = {
    { "'stature': 1.7", 1.5912, 1.5912 },
    { "'stature': 1.7, 'posture': 'sit'", 1.224, 1.224 },
    { "'stature': 1.7, 'posture': 'lie'", 0.119, 0.119 },
    { "'stature': 2, 'floor': 0.4", 1.872, 2.272 },
    { "'stature': 1, 'floor': -0.5, 'posture': 'sit'", 0.72, 0.22 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text =
      g_strdup_printf ("'marks': [{'id': 'm1', 'at': [3, -2], %s}]", rows[i].mark);
    g_autoptr (SqScene) scene = right_scene (text);
    const SqMark *mark = SQ_AT (SqMark, scene->marks, 0);
    g_assert_cmpfloat_with_epsilon (sq_mark_eye_height_m (mark), rows[i].eyes_m, SAME);
    same_point (text, sq_mark_face (mark), sq_point (3, -2, rows[i].face_z_m));
  }
}

/* Where an aim at each kind of thing leads. */
static void
test_aims (void)
{
  static const struct {
    const char *id;
    SqPoint at;
  } rows[] = {
    { "m1", { 3, 2, 1.5912 } },      /* the face: 0.936 · 1.7 */
    { "window", { 2, 0, 1.5 } },     /* sill 0.9 and head 2.1 unless said */
    { "door", { 4, 1.5, 1.05 } },    /* the second edge; from the floor to 2.1 */
    { "hole", { 3.5, 0, 0.5 } },     /* as given */
    { "closing", { 2, 1.5, 1.0 } },  /* the edge that closes the wall: from (4, 3) to (0, 0) */
    { "low", { 0, 5, 0.75 } },       /* the middle of a wall 1.5 m high */
    { "w1", { 8.0 / 3.0, 1, 1.6 } }, /* up to the ceiling at 3.2 m */
    { "table", { 2.5, 2, 0.5 } },    /* corners' middle, halfway from 0.25 to 0.75 */
    { "drum", { 1, 1, 0.375 } },     /* 0 to 0.75 unless said */
    { "c1", { 3, -2, 1.5 } },        { "f2", { 5, 5, 3 } },  { "g1", { 2, 2, 2 } },
    { "p1", { 1, 2, 1.25 } },        { "box", { 7, 7, 0 } }, { "n1", { 6, 6, 0 } },
  };
  g_autoptr (SqScene) scene = right_scene (
    "'room': {'ceiling_height': 3.2},"
    "'walls': [{'id': 'w1', 'path': [[0, 0], [4, 0], [4, 3]], 'closed': true, 'openings': ["
    "   {'id': 'window', 'width': 2, 'offset': 1},"
    "   {'id': 'door', 'kind': 'door', 'edge': 1, 'width': 1, 'offset': 1},"
    "   {'id': 'hole', 'kind': 'opening', 'width': 1, 'offset': 3, 'sill': 0.2, 'head': 0.8},"
    "   {'id': 'closing', 'edge': 2, 'width': 1, 'offset': 2, 'sill': 0.5, 'head': 1.5}]},"
    "  {'id': 'low', 'path': [[-1, 5], [1, 5]], 'height': 1.5}],"
    "'pieces': [{'id': 'table', 'outline': [[2, 1], [3, 1], [3, 3], [2, 3]], 'base': 0.25},"
    "  {'id': 'drum', 'disc': {'at': [1, 1], 'radius': 0.3}}],"
    "'marks': [{'id': 'm1', 'at': [3, 2]}],"
    "'cameras': [{'id': 'c1', 'at': [3, -2, 1.5]}],"
    "'fixtures': [{'id': 'f2', 'class': '" LAMP "', 'at': [5, 5, 3]}],"
    "'panels': [{'id': 'g1', 'kind': 'flag', 'at': [2, 2, 2], 'width': 1, 'height': 1}],"
    "'probes': [{'id': 'p1', 'at': [1, 2, 1.25]}],"
    "'supplies': [{'id': 'box', 'at': [7, 7]}, {'id': 'van'}],"
    "'notes': [{'id': 'n1', 'text': 'x', 'at': [6, 6]}]");
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    SqAim aim = { .id = (char *)rows[i].id, .at = SQ_NO_POINT };
    SqPoint point;
    g_assert_true (sq_scene_aim_point (scene, &aim, &point));
    same_point (rows[i].id, point, rows[i].at);
    same_point (rows[i].id, sq_scene_middle (scene, sq_scene_find (scene, rows[i].id)), rows[i].at);
  }

  SqPoint point;
  SqAim at_point = { .at = { 1, 2, 3 } }, at_nothing = { .at = SQ_NO_POINT };
  SqAim nowhere = { .id = (char *)"van", .at = SQ_NO_POINT };
  g_assert_true (sq_scene_aim_point (scene, &at_point, &point));
  same_point ("a point", point, sq_point (1, 2, 3));
  g_assert_false (sq_scene_aim_point (scene, &at_nothing, &point));
  g_assert_false (sq_scene_aim_point (scene, &nowhere, &point));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/frames/along an aim, vertical ones and rolled ones", test_frames);
  g_test_add_func ("/frames/square and right-handed in every direction", test_frames_square);
  g_test_add_func ("/frames/of a lamp", test_fixture_frame);
  g_test_add_func ("/frames/of a panel, at any tilt", test_panel_frames);
  g_test_add_func ("/cameras/angles of view", test_views);
  g_test_add_func ("/cameras/width of the picture at a distance", test_width_at_a_distance);
  g_test_add_func ("/cameras/exposure times", test_exposures);
  g_test_add_func ("/cameras/line of sight", test_lines_of_sight);
  g_test_add_func ("/marks/height of the eyes, and the face", test_eyes);
  g_test_add_func ("/aims/lead to the face, the middle, or the point", test_aims);
  return g_test_run ();
}
