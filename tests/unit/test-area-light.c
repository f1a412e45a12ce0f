/* test-area-light.c: lamps of every shape against closed forms */
#include "light-scene.h"

/* Tolerances, relative. */
#define POINT 1e-9
#define CONTOUR 1e-6
#define CLOSED_FORM 5e-3
#define HALF_HIDDEN 1e-2

/* What a class of this luminance and face sends: a Lambertian face gives L · area · π lumens. */
typedef struct {
  const char *name;
  const char *face; /* width and height, or diameter */
  double area_m2;
  const char *lamp; /* place and aim */
  const char *probe;
  double lux; /* for 1000 cd/m² */
  double tolerance;
} Face;

/* Closed forms: configuration factors of a disc and of rectangles to an element (Howell's catalogue
 * B-3, B-4, B-12, B-13, numbers from memory), computed apart from this program. */
static const Face faces[] = {
  { "a disc on its axis", "'shape': 'disc', 'width': 1", G_PI / 4.0, "'at': [0, 0, 1]",
    "'at': [0, 0, 0]", 628.318531, 1e-4 },
  { "a disc off its axis", "'shape': 'disc', 'width': 1", G_PI / 4.0, "'at': [0, 0, 2]",
    "'at': [1, 0, 0]", 123.094865, 1e-4 },
  { "a rectangle over its corner", "'shape': 'rect', 'width': 1, 'height': 2", 2.0,
    "'at': [0.5, 1, 1.5], 'roll': 0", "'at': [0, 0, 0]", 384.404214, CONTOUR },
  { "a square over its middle", "'shape': 'rect', 'width': 1", 1.0, "'at': [0, 0, 2]",
    "'at': [0, 0, 0]", 230.836798, CONTOUR },
  { "an upright square, edge on the floor", "'shape': 'rect', 'width': 1", 1.0,
    "'at': [0.5, 0, 0.5], 'aim': [0.5, 1, 0.5]", "'at': [0, 1, 0]", 175.094144, CONTOUR },
  { "an upright rectangle, edge on the floor", "'shape': 'rect', 'width': 2, 'height': 1", 2.0,
    "'at': [1, 0, 0.5], 'aim': [1, 1, 0.5]", "'at': [0, 1.5, 0]", 115.345114, CONTOUR },
  { "a window over the plane", "'shape': 'rect', 'width': 3, 'height': 2", 6.0,
    "'at': [0, 0, 2], 'aim': [0, 1, 2]", "'at': [0, 4, 0]", 105.335286, CONTOUR },
  { "a window, facing it", "'shape': 'rect', 'width': 3, 'height': 2", 6.0,
    "'at': [0, 0, 2], 'aim': [0, 1, 2]", "'at': [0, 4, 0], 'normal': [0, -1, 0]", 224.479962,
    CONTOUR },
};

static SqScene *
face_scene (const Face *face, const char *more)
{
  return scene_of ("'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': %.17g, 'face': {%s}}],"
                   "'fixtures': [{'id': 'f', 'class': 'c', %s}],"
                   "'probes': [{'id': 'p', %s}] %s",
                   1000.0 * G_PI * face->area_m2, face->face, face->lamp, face->probe, more);
}

static void
test_faces (gconstpointer data)
{
  const Face *face = data;
  g_autoptr (SqScene) scene = face_scene (face, "");
  assert_near (lux_of (scene), face->lux, face->tolerance);
}

/* E = I cos / d²; 1 fc = 1 / 0.3048² lx, exactly. The lamp at 15 ft, the point 5.5 ft up a wall
 * opposite: an exercise's data, its answer by the formula. */
static void
test_points (void)
{
  g_autoptr (SqScene) straight = scene_of (
    "'classes': [{'id': 'c', 'beams': [{'beam_deg': 20, 'field_deg': 30, 'peak_cd': 10000}]}],"
    "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 4]}],"
    "'probes': [{'id': 'p', 'at': [0, 0, 0]}]");
  assert_near (lux_of (straight), 625.0, POINT);

  /* An even lamp of 1000 cd, 3 m up; 4 m aside: 1000 · (3/5) / 25. */
  g_autoptr (SqScene) aside =
    scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': %.17g}],"
              "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 3]}],"
              "'probes': [{'id': 'p', 'at': [4, 0, 0]}]",
              4.0 * G_PI * 1000.0);
  assert_near (lux_of (aside), 24.0, POINT);

  /* 90 cd at 25 degrees of incidence gives 18 lm/ft² at 2.12874 ft: an exercise's data. */
  double d_m = sqrt (90.0 * cos (SQ_RADIANS (25.0)) / 18.0) * 0.3048;
  g_assert_cmpfloat_with_epsilon (d_m / 0.3048, 2.12874, 5e-6);
  g_autoptr (SqScene) feet =
    scene_of ("'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': %.17g}],"
              "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, %.17g]}],"
              "'probes': [{'id': 'p', 'at': [0, 0, 0], 'normal': [%.17g, 0, %.17g]}]",
              4.0 * G_PI * 90.0, d_m, sin (SQ_RADIANS (25.0)), cos (SQ_RADIANS (25.0)));
  assert_near (lux_of (feet), 18.0 / (0.3048 * 0.3048), POINT);
}

/* A ball of radius R and luminance L: E = π L (R / D)² cos, all of it above the horizon. */
static void
test_balls (void)
{
  static const struct {
    const char *probe;
    double lux;
  } rows[] = {
    { "'at': [0, 0, 0]", 70.685835 },
    { "'at': [0, 0, 0], 'normal': [0.5, 0, 0.86602540378443865]", 61.215729 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    /* I = L π R², lumens = 4π I. */
    g_autoptr (SqScene) scene = scene_of (
      "'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': %.17g, 'face': {'width': 0.6}}],"
      "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 2]}], 'probes': [{'id': 'p', %s}]",
      4.0 * G_PI * 1000.0 * G_PI * 0.09, rows[i].probe);
    assert_near (lux_of (scene), rows[i].lux, 1e-4);
  }
}

/* A thin tube of I' cd/m across its axis, one end opposite: I'/(2d) (b + sin b cos b) for a
 * receiver that looks straight at the axis, I'/(2d) sin² b for one that looks along it; b = atan (l
 * / d). */
static void
test_tubes (void)
{
  static const struct {
    const char *normal;
    double lux;
  } rows[] = { { "0, 0, 1", 341.965332 }, { "1, 0, 0", 147.540984 } };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqScene) scene =
      scene_of ("'classes': [{'id': 'c', 'emits': 'tube', 'lumens': %.17g,"
                "  'face': {'shape': 'rect', 'width': 1.2, 'height': 0.004}}],"
                "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0.6, 0, 1]}],"
                "'probes': [{'id': 'p', 'at': [0, 0, 0], 'normal': [%s]}]",
                500.0 * 1.2 * G_PI * G_PI, rows[i].normal);
    assert_near (lux_of (scene), rows[i].lux, CLOSED_FORM / 50.0);
  }
}

/* A panel 2 by 2 m at 3 m, half hidden by a sheet at 1.5 m that covers x ≥ 0: from x the part at
 * less than -x is seen; values for that part by the contour formula, computed apart. */
static void
test_half_hidden (void)
{
  static const struct {
    double x_m, lux;
  } rows[] = { { -0.5, 295.51980 }, { 0.0, 193.70682 } };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqScene) scene =
      scene_of ("'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': %.17g,"
                "  'face': {'shape': 'rect', 'width': 2}}],"
                "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 3]}],"
                "'probes': [{'id': 'p', 'at': [%g, 0, 0]}],"
                "'panels': [{'id': 'g', 'kind': 'flag', 'at': [5, 0, 1.5], 'tilt': 90,"
                "  'width': 10, 'height': 10}]",
                1000.0 * G_PI * 4.0, rows[i].x_m);
    assert_near (lux_of (scene), rows[i].lux, HALF_HIDDEN / 1e4);
  }
}

/* A square that stands half below the receiver's horizon reads as its upper half alone. */
static void
test_below_horizon (void)
{
  const Face whole = { .face = "'shape': 'rect', 'width': 2",
                       .area_m2 = 4.0,
                       .lamp = "'at': [0, 0, 0], 'aim': [0, 1, 0]",
                       .probe = "'at': [0, 1.5, 0]" };
  const Face half = { .face = "'shape': 'rect', 'width': 2, 'height': 1",
                      .area_m2 = 2.0,
                      .lamp = "'at': [0, 0, 0.5], 'aim': [0, 1, 0.5]",
                      .probe = "'at': [0, 1.5, 0]" };
  g_autoptr (SqScene) scene = face_scene (&whole, ""), upper = face_scene (&half, "");
  /* Two rectangles 1 wide, 1 high, 1.5 away, edge on the floor: the perpendicular closed form. */
  double c = 1.5, r = hypot (1.0, c);
  double expected = 1000.0 * (atan (1.0 / c) - c / r * atan (1.0 / r));
  assert_near (lux_of (scene), expected, CONTOUR);
  assert_near (lux_of (upper), expected, CONTOUR);
}

/* A point source put for a face is wrong by this much (closed forms): a disc at k diameters by
 * 1 / 4k²; far away the two agree. */
static void
test_point_for_disc (void)
{
  static const double diameters[] = { 1.0, 2.0, 3.0, 5.0, 10.0, 1000.0, 1e5 };
  for (gsize i = 0; i < G_N_ELEMENTS (diameters); i++) {
    double k = diameters[i];
    Face disc = { .face = "'shape': 'disc', 'width': 0.05",
                  .area_m2 = G_PI * 0.025 * 0.025,
                  .probe = "'at': [0, 0, 0]" };
    g_autofree char *lamp = g_strdup_printf ("'at': [0, 0, %.17g]", k * 0.05);
    disc.lamp = lamp;
    g_autoptr (SqScene) scene = face_scene (&disc, "");
    double as_point = 1000.0 * disc.area_m2 / (k * k * 0.05 * 0.05);
    assert_near (as_point / lux_of (scene), 1.0 + 1.0 / (4.0 * k * k), 1e-4);
  }
}

/* A dome reads (1 + cosine) / 2 of what a flat receptor turned to the lamp reads; from far. */
static void
test_dome (void)
{
  static const double angles_deg[] = { 0.0, 30.0, 60.0, 90.0, 120.0, 150.0, 180.0 };
  for (gsize i = 0; i < G_N_ELEMENTS (angles_deg); i++) {
    double a = SQ_RADIANS (angles_deg[i]);
    g_autoptr (SqScene) scene = scene_of (
      "'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': 1000, 'face': {'width': 0.1}}],"
      "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 100]}],"
      "'probes': [{'id': 'p', 'at': [0, 0, 0], 'receptor': 'dome', 'normal': [%.17g, 0, %.17g]}]",
      sin (a), cos (a));
    double straight = 1000.0 / G_PI / 1e4;
    g_assert_cmpfloat_with_epsilon (lux_of (scene), straight * (1.0 + cos (a)) / 2.0,
                                    straight * 1e-5);
  }
}

/* A disc of luminance L on the dome's axis spans a cone of half-angle a: the dome reads
 * L/2 · (2π (1 - cos a) + π sin² a). */
static void
test_dome_near (void)
{
  Face disc = { .face = "'shape': 'disc', 'width': 1",
                .area_m2 = G_PI / 4.0,
                .lamp = "'at': [0, 0, 0.5]",
                .probe = "'at': [0, 0, 0], 'receptor': 'dome'" };
  g_autoptr (SqScene) scene = face_scene (&disc, "");
  double a = atan (1.0);
  double expected = 500.0 * (2.0 * G_PI * (1.0 - cos (a)) + G_PI * sin (a) * sin (a));
  assert_near (lux_of (scene), expected, 2e-4);
}

/* On a lamp, in it, and behind or in the plane of a face nothing is read. A ball is seen from the
 * side. */
static void
test_on_the_lamp (void)
{
  static const char *const places[] = { "0, 0, 2", "0, 0, 2.5", "3, 0, 2", "0.1, 0.05, 2" };
  static const char *const shapes[] = { "lambert", "sphere", "tube", "skirt" };
  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (shapes); k++)
      for (int sized = 0; sized < 2; sized++) {
        g_autoptr (SqScene) scene = scene_of (
          "'classes': [{'id': 'c', 'emits': '%s', 'lumens': 1000 %s}],"
          "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 2]}],"
          "'probes': [{'id': 'p', 'at': [%s]}]",
          shapes[k], sized ? ", 'face': {'width': 0.4, 'height': 0.2, 'shape': 'rect'}" : "",
          places[i]);
        gboolean ball_aside = i == 2 && sized && g_str_equal (shapes[k], "sphere");
        if (ball_aside)
          g_assert_cmpfloat (lux_of (scene), >, 0.0);
        else
          g_assert_cmpfloat (lux_of (scene), ==, 0.0);
      }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (faces); i++) {
    g_autofree char *path = g_strdup_printf ("/area light/%s", faces[i].name);
    g_test_add_data_func (path, &faces[i], test_faces);
  }
  g_test_add_func ("/area light/a point, inverse square and cosine", test_points);
  g_test_add_func ("/area light/a ball", test_balls);
  g_test_add_func ("/area light/a tube", test_tubes);
  g_test_add_func ("/area light/a panel half hidden", test_half_hidden);
  g_test_add_func ("/area light/a panel half below the horizon", test_below_horizon);
  g_test_add_func ("/area light/a disc against a point", test_point_for_disc);
  g_test_add_func ("/area light/a dome from far", test_dome);
  g_test_add_func ("/area light/a dome near a disc", test_dome_near);
  g_test_add_func ("/area light/nothing is read on a lamp and behind it", test_on_the_lamp);
  return g_test_run ();
}
