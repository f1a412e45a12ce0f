/* test-sight.c: what is seen of a lamp past solids, to the last bit where that is promised */
#include "light-scene.h"
#include "light/lamp-light.h"

#include <string.h>

/* Relative to what a receptor reads that looks straight at the lamp, with nothing between. */
#define ORDER 1e-12
/* A face so small that it is a point, relative. */
#define SAME_AS_POINT 1e-9
/* Of the cells of a face that is not Lambertian. */
#define CELLS 1e-2
/* Corners of an outline, in metres, and its area. */
#define DRAWN 1e-14

/* A lamp of every kind; 'f' is aimed at the middle of the floor. */
static const char *const lamps[] = {
  "'emits': 'lambert', 'lumens': 5000, 'face': {'shape': 'rect', 'width': 0.8, 'height': 0.5}",
  "'emits': 'lambert', 'lumens': 5000, 'face': {'shape': 'disc', 'width': 0.6}",
  ("'beams': [{'beam_deg': 30, 'field_deg': 50, 'peak_cd': 9000}],"
   "'face': {'shape': 'rect', 'width': 0.6}"),
  "'beams': [{'beam_deg': 12, 'field_deg': 20, 'peak_cd': 9000}], 'face': {'width': 0.2}",
  "'emits': 'skirt', 'lumens': 5000, 'face': {'shape': 'disc', 'width': 0.6}",
  "'emits': 'sphere', 'lumens': 5000, 'face': {'width': 0.4}",
  "'emits': 'tube', 'lumens': 5000, 'face': {'shape': 'rect', 'width': 1.2, 'height': 0.03}",
  "'emits': 'sphere', 'lumens': 5000",
};

typedef struct {
  SqScene *scene;
  GArray *lamps, *obstacles;
  const SqLamp *lamp;
  const SqObstacle **between; /* the doors first */
  guint n;
  SqSight sight;
} Stage;

static void
stage_init (Stage *stage, SqScene *scene)
{
  *stage = (Stage){ .scene = scene };
  stage->lamps = sq_lamps_new (scene, NULL);
  stage->obstacles = sq_obstacles_new (scene);
  stage->lamp = &g_array_index (stage->lamps, SqLamp, 0);
  const GArray *lists[] = { stage->lamp->doors, stage->obstacles };
  stage->between = g_new (const SqObstacle *, stage->obstacles->len + 4);
  for (gsize list = 0; list < G_N_ELEMENTS (lists); list++)
    for (guint i = 0; lists[list] && i < lists[list]->len; i++)
      stage->between[stage->n++] = &g_array_index (lists[list], SqObstacle, i);
  sq_sight_init (&stage->sight);
}

static void
stage_clear (Stage *stage)
{
  sq_sight_clear (&stage->sight);
  g_free (stage->between);
  g_array_unref (stage->obstacles);
  g_array_unref (stage->lamps);
  sq_scene_unref (stage->scene);
}

static double
lux_past (Stage *stage,
          const SqReceptor *receptor,
          const SqObstacle *const *between,
          guint n_between)
{
  sq_lamp_see (stage->lamp, receptor->at, between, n_between, NULL, &stage->sight);
  double lux = sq_lamp_lux (stage->lamp, receptor, &stage->sight);
  g_assert_true (isfinite (lux) && lux >= 0.0);
  return lux;
}

static double
between (GRand *rand, double low, double high)
{
  return g_rand_double_range (rand, low, high);
}

static SqVector
random_direction (GRand *rand)
{
  double azimuth_deg = between (rand, 0, 360);
  return sq_vector_toward (azimuth_deg, between (rand, -30, 90));
}

static SqReceptor
random_receptor (GRand *rand)
{
  SqReceptor receptor = { .normal = random_direction (rand), .dome = g_rand_boolean (rand) };
  receptor.at.x_m = between (rand, -3, 3);
  receptor.at.y_m = between (rand, -3, 3);
  receptor.at.z_m = between (rand, 0, 2);
  return receptor;
}

/* Flags, nets, boxes, tables and people about the middle of a floor. */
static SqScene *
random_scene (GRand *rand, const char *lamp, gboolean doors)
{
  g_autoptr (GString) panels = g_string_new (NULL);
  g_autoptr (GString) pieces = g_string_new (NULL);
  g_autoptr (GString) marks = g_string_new (NULL);
  for (int i = g_rand_int_range (rand, 1, 8); i > 0; i--) {
    const char *kind = g_rand_boolean (rand) ? "net" : "flag";
    double x = between (rand, -2, 2), y = between (rand, -2, 2), z = between (rand, 0.5, 2.5);
    double facing = between (rand, 0, 360), tilt = between (rand, -80, 90);
    double width = between (rand, 0.3, 2.5), height = between (rand, 0.3, 2.5);
    g_string_append_printf (panels,
                            "%s{'id': 'g%d', 'kind': '%s', 'material': 'half', 'at': [%g, %g, %g],"
                            "'facing': %g, 'tilt': %g, 'width': %g, 'height': %g}",
                            panels->len ? "," : "", i, kind, x, y, z, facing, tilt, width, height);
  }
  for (int i = g_rand_int_range (rand, 0, 4); i > 0; i--) {
    double x = between (rand, -2, 2), y = between (rand, -2, 2), r = between (rand, 0.2, 0.8);
    double base = between (rand, 0, 1.5), top = base + between (rand, 0.1, 1);
    g_string_append_printf (pieces, "%s{'base': %g, 'top': %g,", pieces->len ? "," : "", base, top);
    if (g_rand_boolean (rand))
      g_string_append_printf (pieces, "'disc': {'at': [%g, %g], 'radius': %g}}", x, y, r);
    else
      g_string_append_printf (pieces, "'outline': [[%g, %g], [%g, %g], [%g, %g], [%g, %g]]}", x - r,
                              y - r, x + r, y - r, x + r, y + r, x - r, y + r);
  }
  for (int i = g_rand_int_range (rand, 0, 3); i > 0; i--) {
    double x = between (rand, -2, 2), y = between (rand, -2, 2);
    g_string_append_printf (marks, "%s{'id': 'm%d', 'at': [%g, %g]}", marks->len ? "," : "", i, x,
                            y);
  }
  double x = between (rand, -3, 3), y = between (rand, -3, 3), z = between (rand, 2.5, 4);
  return scene_of ("'materials': [{'id': 'half', 'for': 'net', 'direct': 0.6}],"
                   "'classes': [{'id': 'c', %s}], 'fixtures': [{'id': 'f', 'class': 'c',"
                   "'at': [%g, %g, %g], 'aim': [0, 0, 0.5], 'level': 0.7 %s}],"
                   "'panels': [%s], 'pieces': [%s], 'marks': [%s]",
                   lamp, x, y, z, doors ? ", 'modifiers': [{'kind': 'doors'}]" : "", panels->str,
                   pieces->str, marks->str);
}

#define SCENES 300
#define POINTS 25

/* Calls @check for random points of random scenes with every kind of lamp. */
static void
try_scenes (guint seed,
            gboolean doors,
            void (*check) (Stage *stage, const SqReceptor *receptor, GRand *rand))
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  for (guint i = 0; i < SCENES; i++) {
    Stage stage;
    stage_init (&stage, random_scene (rand, lamps[i % G_N_ELEMENTS (lamps)], doors && i % 3 == 0));
    for (int k = 0; k < POINTS; k++) {
      const SqReceptor receptor = random_receptor (rand);
      check (&stage, &receptor, rand);
    }
    stage_clear (&stage);
  }
}

/* What alone hides nothing may be left out, what alone hides all leaves nothing, whatever else
 * stands there. */
static void
check_left_out (Stage *stage, const SqReceptor *receptor, GRand *rand)
{
  double all = lux_past (stage, receptor, stage->between, stage->n);
  gboolean whole = stage->sight.whole;
  g_autofree const SqObstacle **fewer = g_new (const SqObstacle *, stage->n);
  guint n = 0;
  gboolean dark = FALSE;
  double passes = 1.0;
  for (guint i = 0; i < stage->n; i++) {
    sq_lamp_see (stage->lamp, receptor->at, &stage->between[i], 1, NULL, &stage->sight);
    dark = dark || sq_sight_is_dark (&stage->sight);
    if (stage->sight.whole)
      passes *= stage->sight.passes;
    if (!(stage->sight.whole && stage->sight.passes == 1.0))
      fewer[n++] = stage->between[i];
  }
  g_assert_cmpfloat (lux_past (stage, receptor, fewer, n), ==, all);
  if (dark)
    g_assert_cmpfloat (all, ==, 0.0);
  if (whole)
    g_assert_cmpfloat (stage->sight.passes, ==, passes);

  sq_lamp_see_past_all (stage->lamp, receptor->at, stage->obstacles, NULL, &stage->sight);
  g_assert_cmpfloat (sq_lamp_lux (stage->lamp, receptor, &stage->sight), ==, all);
  double unit = sq_lamp_unit_lux (stage->lamp, receptor, &stage->sight);
  g_assert_cmpfloat (unit * stage->lamp->output, ==, all);
}

static void
test_left_out (void)
{
  try_scenes (1, TRUE, check_left_out);
}

/* Without doors: those that lie in a tube's own plane touch its ribbon, within 1e-9 m, and who is
 * asked first then decides about slivers as thin as that. */
static void
check_order (Stage *stage, const SqReceptor *receptor, GRand *rand)
{
  double all = lux_past (stage, receptor, stage->between, stage->n);
  SqReceptor straight = { .at = receptor->at };
  straight.normal = sq_vector_unit (sq_vector_between (receptor->at, stage->lamp->fixture->at));
  double clear = lux_past (stage, &straight, NULL, 0);
  for (guint i = stage->n; i > 1; i--) {
    guint k = (guint)g_rand_int_range (rand, 0, (gint)i);
    const SqObstacle *swap = stage->between[k];
    stage->between[k] = stage->between[i - 1];
    stage->between[i - 1] = swap;
  }
  double shuffled = lux_past (stage, receptor, stage->between, stage->n);
  g_assert_cmpfloat_with_epsilon (shuffled, all, ORDER * clear + DBL_MIN);
}

static void
test_order (void)
{
  try_scenes (2, FALSE, check_order);
}

/* Two pieces that share a face, each as wide as a door and long; nothing comes through the joint,
 * whatever looks at it from wherever, in the plane of the joint too. */
static void
test_joints (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);
  for (guint i = 0; i < 40 * G_N_ELEMENTS (lamps); i++) {
    double turn = between (rand, 0, 2 * G_PI), c = cos (turn), s = sin (turn);
    /* The joint runs along (c, s) through the middle; the lower half may end sooner. */
    double ends = i % 2 ? 9 : 7;
    g_autofree char *pieces = g_strdup_printf (
      "{'base': 1, 'top': %g, 'outline': [[%.17g, %.17g], [%.17g, %.17g], [%.17g, %.17g],"
      " [%.17g, %.17g]]},"
      "{'base': 1, 'top': 1.5, 'outline': [[%.17g, %.17g], [%.17g, %.17g], [%.17g, %.17g],"
      " [%.17g, %.17g]]}",
      i % 3 ? 1.5 : 1.3, -9 * c, -9 * s, 9 * c, 9 * s, 9 * c - 9 * s, 9 * s + 9 * c, -9 * c - 9 * s,
      -9 * s + 9 * c, ends * c, ends * s, -ends * c, -ends * s, -ends * c + 9 * s,
      -ends * s - 9 * c, ends * c + 9 * s, ends * s - 9 * c);
    Stage stage;
    stage_init (&stage, scene_of ("'classes': [{'id': 'c', %s}], 'fixtures': [{'id': 'f',"
                                  "'class': 'c', 'at': [%.17g, %.17g, 3], 'aim': [0, 0, 0]}],"
                                  "'pieces': [%s]",
                                  lamps[i % G_N_ELEMENTS (lamps)], 0.4 * c, 0.4 * s, pieces));
    for (int k = 0; k < 60; k++) {
      double along = between (rand, -2, 2), aside = k % 3 ? between (rand, -2, 2) : 0.0;
      SqReceptor receptor = random_receptor (rand);
      receptor.at = sq_point (along * c - aside * s, along * s + aside * c, k % 5 * 0.25);
      g_assert_cmpfloat (lux_past (&stage, &receptor, stage.between, stage.n), ==, 0.0);
    }
    stage_clear (&stage);
  }
}

/* Where a point stands on a solid: what it sees of a square that hangs level over the edge y = 0.
 */
static void
test_on_solids (void)
{
  static const char box[] = "'pieces': [{'outline': [[-1, 0], [1, 0], [1, 1], [-1, 1]],"
                            "'base': 1, 'top': 2}]";
  static const char sheet[] = "'panels': [{'id': 'g', 'kind': 'flag', 'at': [0, 0, 1.5],"
                              "'facing': 90, 'width': 2, 'height': 1}]";
  static const struct {
    const char *what, *set;
    SqPoint at;
    double share;
  } rows[] = {
    { "inside a box", box, { 0, 0.5, 1.5 }, 0.0 },
    { "on its top", box, { 0.3, 0.5, 2 }, 1.0 },
    { "on its top's edge", box, { 0.3, 0, 2 }, 1.0 },
    { "on its corner", box, { 1, 0, 2 }, 1.0 },
    { "on its bottom", box, { 0, 0.5, 1 }, 0.0 },
    { "on its bottom's edge, under it", box, { 0, 0, 1 }, 0.5 },
    { "on its side", box, { 0, 0, 1.5 }, 0.5 },
    { "in its side's plane, below", box, { 0, 0, 0.5 }, 0.5 },
    { "in line with its top's edge", box, { 1.5, 0, 2 }, 1.0 },
    { "in line with its upright edge", box, { 1, 0, 0.5 }, 0.75 },
    { "in the plane of its top", box, { 0, -2, 2 }, 1.0 },
    { "on a sheet's upper edge", sheet, { 0, 0, 2 }, 1.0 },
    { "on a sheet, in its plane", sheet, { 0, 0, 1.5 }, 1.0 },
    { "in a sheet's plane, below", sheet, { 0, 0, 0.5 }, 1.0 },
    { "in line with a sheet's edge", sheet, { 2, 0, 2 }, 1.0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    /* Even candela and a receptor turned up: by symmetry halves are halves, about its middle. */
    Stage stage;
    stage_init (&stage,
                scene_of ("'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': 5000,"
                          "'face': {'shape': 'rect', 'width': 0.5}}],"
                          "'fixtures': [{'id': 'f', 'class': 'c', 'at': [%g, %g, 4]}], %s",
                          rows[i].at.x_m, rows[i].share < 1.0 ? rows[i].at.y_m : 0.0, rows[i].set));
    const SqReceptor receptor = { rows[i].at, { 0, 0, 1 }, FALSE };
    double clear = lux_past (&stage, &receptor, NULL, 0);
    double lux = lux_past (&stage, &receptor, stage.between, stage.n);
    g_assert_cmpfloat (clear, >, 0.0);
    if (fabs (lux / clear - rows[i].share) > 1e-7)
      g_error ("%s: %g of %g", rows[i].what, lux, clear);
    if (rows[i].share == 1.0 || rows[i].share == 0.0)
      g_assert_cmpfloat (lux, ==, clear * rows[i].share);
    stage_clear (&stage);
  }
}

/* Faces of no size worth the name, among them those thinner than what counts as touching. */
static void
test_tiny_faces (void)
{
  static const struct {
    const char *shape;
    double width_m, height_m;
  } rows[] = { { "rect", 1e-12, 1e-12 }, { "rect", 1e-9, 1e-9 },    { "rect", 1e-6, 1e-12 },
               { "disc", 1e-10, 1e-10 }, { "disc", 1e-7, 1e-7 },    { "rect", 1e-300, 1e-300 },
               { "rect", 1e-170, 0.1 },  { "disc", 1e-170, 1e-170 } };
  static const char *const sends[] = { "'emits': 'lambert', 'lumens': 5000",
                                       "'beams': [{'beam_deg': 40, 'field_deg': 60,"
                                       "'peak_cd': 1591.5494309189535}]" };
  /* The edge of the flag at x = 0.2 halves the view from x = 0.4 with the lamp at 0. */
  static const char flag[] = "'panels': [{'id': 'g', 'kind': 'flag', 'at': [1.2, 0, 2],"
                             "'tilt': 90, 'width': 2, 'height': 2}]";
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (sends); k++) {
      Stage stage;
      stage_init (&stage,
                  scene_of ("'classes': [{'id': 'c', %s, 'face': {'shape': '%s',"
                            "'width': %g, 'height': %g}}],"
                            "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 4]}], %s",
                            sends[k], rows[i].shape, rows[i].width_m, rows[i].height_m, flag));
      SqReceptor receptor = { sq_point (0, 0, 0), { 0, 0, 1 }, FALSE };
      double straight = lux_past (&stage, &receptor, stage.between, stage.n);
      if (rows[i].width_m >= 1e-12 && rows[i].height_m >= 1e-12 && rows[i].height_m < 1e-6)
        assert_near (straight, 5000.0 / G_PI / 16.0, SAME_AS_POINT); /* I / d² */
      receptor.at.x_m = 0.4;
      double edge = lux_past (&stage, &receptor, stage.between, stage.n);
      g_assert_cmpfloat (edge, <=, straight);
      receptor.at.x_m = 0.6;
      g_assert_cmpfloat (lux_past (&stage, &receptor, stage.between, stage.n), ==, 0.0);
      stage_clear (&stage);
    }
}

/* A thousand flags that overlap cut the face in more parts than are kept: still an answer, and
 * soon. Whoever stands where nothing hides anything reads the same bits as without them. */
static void
test_thousand_flags (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (4);
  g_autoptr (GString) panels = g_string_new (NULL);
  for (int i = 0; i < 1000; i++) {
    double x = between (rand, -1, 1), y = between (rand, -1, 1), z = between (rand, 1, 2);
    double facing = between (rand, 0, 360), tilt = between (rand, 60, 90);
    g_string_append_printf (panels,
                            "%s{'id': 'g%d', 'kind': '%s', 'material': 'thin', 'at': [%g, %g, %g],"
                            "'facing': %g, 'tilt': %g, 'width': 0.3, 'height': 0.02}",
                            i ? "," : "", i, i % 2 ? "flag" : "net", x, y, z, facing, tilt);
  }
  for (gsize i = 0; i < G_N_ELEMENTS (lamps); i++) {
    Stage stage;
    stage_init (&stage, scene_of ("'materials': [{'id': 'thin', 'for': 'net', 'direct': 0.99}],"
                                  "'classes': [{'id': 'c', %s}], 'panels': [%s],"
                                  "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 3]}]",
                                  lamps[i], panels->str));
    gint64 start_us = g_get_monotonic_time ();
    SqReceptor receptor = { .normal = { 0, 0, 1 } };
    guint n_dimmed = 0;
    for (int k = 0; k < 20; k++) {
      receptor.at = sq_point (between (rand, -0.5, 0.5), between (rand, -0.5, 0.5), 0);
      double clear = lux_past (&stage, &receptor, NULL, 0);
      double lux = lux_past (&stage, &receptor, stage.between, stage.n);
      g_assert_cmpfloat (lux, <=, clear);
      n_dimmed += lux < 0.9 * clear;
    }
    if (stage.lamp->shaped != SQ_SHAPED_POINT)
      g_assert_cmpuint (n_dimmed, >, 15);
    /* Some 10 ms a point on a slow machine; a second each would be another kind of sum. */
    g_assert_cmpint (g_get_monotonic_time () - start_us, <, 20 * G_USEC_PER_SEC);
    receptor.at = sq_point (0, 0, 2.5);
    g_assert_cmpfloat (lux_past (&stage, &receptor, stage.between, stage.n), ==,
                       lux_past (&stage, &receptor, NULL, 0));
    stage_clear (&stage);
  }
}

/* The panel of 2 by 2 m at 3 m, half hidden by a sheet at 1.5 m that covers x ≥ 0: values for the
 * part at less than -x by the contour formula, computed apart. Behind a crate that hardly cuts
 * anything off it is no longer even, and summed in cells. */
static void
test_half_hidden_in_cells (void)
{
  static const struct {
    double x_m, lux;
  } rows[] = { { -0.5, 295.51980 }, { 0.0, 193.70682 } };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    Stage stage;
    stage_init (&stage,
                scene_of ("'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': %.17g,"
                          "  'face': {'shape': 'rect', 'width': 2}}],"
                          "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 3], 'modifiers': ["
                          "  {'kind': 'egg-crate', 'cutoff_deg': 89.99, 'transmission': 1}]}],"
                          "'panels': [{'id': 'g', 'kind': 'flag', 'at': [5, 0, 1.5], 'tilt': 90,"
                          "  'width': 10, 'height': 10}]",
                          1000.0 * G_PI * 4.0));
    const SqReceptor receptor = { { rows[i].x_m, 0, 0 }, { 0, 0, 1 }, FALSE };
    g_assert_false (stage.lamp->even);
    assert_near (lux_past (&stage, &receptor, stage.between, stage.n), rows[i].lux, CELLS);
    stage_clear (&stage);
  }
}

/* The polygon that stands for a disc has its area, and its corners where it says. */
static void
test_outlines (void)
{
  const SqFacePlane disc = { .half_right_m = 0.3, .half_up_m = 0.2, .round = TRUE };
  SqFaceSpot corners[SQ_FACE_SIDES];
  g_assert_cmpuint (sq_face_outline (&disc, corners), ==, SQ_FACE_SIDES);
  double twice_m2 = 0.0;
  for (guint i = 0; i < SQ_FACE_SIDES; i++) {
    double angle = 2.0 * G_PI * i / SQ_FACE_SIDES;
    SqFaceSpot next = corners[(i + 1) % SQ_FACE_SIDES];
    g_assert_cmpfloat_with_epsilon (corners[i].right_m, 0.3 * cos (angle), DRAWN);
    g_assert_cmpfloat_with_epsilon (corners[i].up_m, 0.2 * sin (angle), DRAWN);
    twice_m2 += corners[i].right_m * next.up_m - next.right_m * corners[i].up_m;
  }
  double reach = SQ_ROUND_REACH * SQ_ROUND_REACH;
  assert_near (twice_m2 / 2.0 * reach, G_PI * 0.3 * 0.2, DRAWN);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sight/what hides nothing changes nothing", test_left_out);
  g_test_add_func ("/sight/the order of solids does not matter", test_order);
  g_test_add_func ("/sight/no light through joints", test_joints);
  g_test_add_func ("/sight/points on solids", test_on_solids);
  g_test_add_func ("/sight/faces of hardly any size", test_tiny_faces);
  g_test_add_func ("/sight/a thousand flags", test_thousand_flags);
  g_test_add_func ("/sight/a panel half hidden, in cells", test_half_hidden_in_cells);
  g_test_add_func ("/sight/outlines", test_outlines);
  return g_test_run ();
}
