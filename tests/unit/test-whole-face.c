/* test-whole-face.c: many receptors at once before whole faces, against one at a time */
#include "light-scene.h"
#include "light/face-light.h"
#include "light/whole-face.h"

#define MANY 135 /* some blocks, and some left over */

/* How far the two ways may be apart, relative to what is read. */
#define SAME 1e-9       /* the same places or the same closed form */
#define CONTOUR 1e-12   /* the contour formula, for faces that span a fiftieth or more */
#define SMALL_FACE 5e-8 /* past that, differences cancel; below 1e-4 the face is a point */
#define POLYGON 1e-4    /* a ball against the polygon that stands for it */
/* Uneven faces are summed in other parts, and what is dark is summed coarsely: relative to what
 * is read, and to the peak over the square of the distance. */
#define PARTS 5e-3
#define OF_PEAK 6e-3
/* The eye's way, likewise. */
#define QUICK 1e-2
#define QUICK_OF_PEAK 6e-3

/* By a kernel of one's choice. */
static void
lux_by (const SqFaceKernel *kernel,
        const SqLamp *lamp,
        const SqReceptors *receptors,
        gsize n,
        double *lux)
{
  SqWholeFace face;
  sq_whole_face_init (&face, lamp, receptors->dome);
  sq_whole_face_find (&face, kernel, receptors, n, lux);
}

static void
lux_quick (const SqLamp *lamp,
           SqPoint origin,
           const float *x,
           const float *y,
           const float *z,
           const float *nx,
           const float *ny,
           const float *nz,
           gsize n,
           float *lux)
{
  SqWholeFace face;
  const SqQuickReceptors receptors = { x, y, z, nx, ny, nz, FALSE };
  sq_whole_face_init_quick (&face, lamp, origin, FALSE);
  sq_whole_face_find_quick (&face, sq_quick_face_kernel_best (), &receptors, n, lux);
}

typedef struct {
  double x[MANY], y[MANY], z[MANY], nx[MANY], ny[MANY], nz[MANY];
  SqReceptors arrays;
} Crowd;

static SqReceptor
receptor_of (const Crowd *crowd, gsize i)
{
  return (SqReceptor){ { crowd->x[i], crowd->y[i], crowd->z[i] },
                       { crowd->nx[i], crowd->ny[i], crowd->nz[i] },
                       crowd->arrays.dome };
}

static void
crowd_set (Crowd *crowd, gsize i, SqPoint at, SqVector normal)
{
  crowd->x[i] = at.x_m;
  crowd->y[i] = at.y_m;
  crowd->z[i] = at.z_m;
  crowd->nx[i] = normal.x;
  crowd->ny[i] = normal.y;
  crowd->nz[i] = normal.z;
}

static SqVector
random_direction (void)
{
  double length;
  SqVector v;
  do {
    v = sq_vector (g_test_rand_double_range (-1, 1), g_test_rand_double_range (-1, 1),
                   g_test_rand_double_range (-1, 1));
    length = sq_vector_length (v);
  } while (length > 1.0 || length < 0.1);
  return sq_vector_scale (v, 1.0 / length);
}

/* Round about the lamp, more of them in front of it than elsewhere, most looking its way. */
static void
crowd_init (Crowd *crowd, const SqLamp *lamp, gboolean dome)
{
  crowd->arrays =
    (SqReceptors){ crowd->x, crowd->y, crowd->z, crowd->nx, crowd->ny, crowd->nz, dome };
  for (gsize i = 0; i < MANY; i++) {
    SqVector way = random_direction ();
    if (i % 3 != 0)
      way = sq_vector_unit (sq_vector_sum (
        lamp->frame.forward, sq_vector_scale (way, g_test_rand_double_range (0.0, 0.9))));
    double distance_m = exp2 (g_test_rand_double_range (-1.0, 4.0));
    if (i % 5 == 0)
      distance_m = MAX (lamp->radius_m, 0.01) * g_test_rand_double_range (0.5, 4.0);
    SqVector normal = random_direction ();
    if (i % 4 != 0)
      normal = sq_vector_unit (sq_vector_sum (normal, sq_vector_scale (way, -1.3)));
    crowd_set (crowd, i, sq_point_along (lamp->fixture->at, way, distance_m), normal);
  }
}

static SqScene *
lamp_scene (const char *class, double beam, const char *modifiers)
{
  return scene_of ("'fixtures': [{'id': 'f', 'class': '%s', 'at': [1, 2, 3], 'aim': [4, 6, 1.5],"
                   " 'beam': %g, 'modifiers': [%s]}]",
                   class, beam, modifiers);
}

static SqScene *
made_scene (const char *light)
{
  return scene_of ("'classes': [{'id': 'c', %s}],"
                   "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 3], 'aim': [0, 9, 3]}]",
                   light);
}

static const SqLamp *
first_lamp (const GArray *lamps)
{
  return &g_array_index (lamps, SqLamp, 0);
}

static double
lux_alone (const SqLamp *lamp, SqReceptor receptor)
{
  double lux;
  const SqReceptors one = { &receptor.at.x_m,   &receptor.at.y_m,   &receptor.at.z_m,
                            &receptor.normal.x, &receptor.normal.y, &receptor.normal.z,
                            receptor.dome };
  sq_whole_face_lux (lamp, &one, 1, &lux);
  return lux;
}

static double
tolerance_of (const SqLamp *lamp, SqReceptor receptor, double lux)
{
  double distance_m = sq_vector_length (sq_vector_between (lamp->fixture->at, receptor.at));
  double of_peak = lamp->intensity.peak_cd / (distance_m * distance_m);
  if (lamp->shaped == SQ_SHAPED_POINT)
    return lux * SAME;
  if (lamp->shaped == SQ_SHAPED_BALL)
    return lux * POLYGON + of_peak * POLYGON;
  if (!lamp->even)
    return lux * PARTS + of_peak * OF_PEAK;
  gboolean wide = MIN (lamp->width_m, lamp->height_m) > 0.02 * distance_m;
  return lux * (wide ? CONTOUR : SMALL_FACE) + of_peak * (wide ? CONTOUR : SMALL_FACE);
}

static void
compare_with_seen (const SqLamp *lamp, const char *what, gboolean dome)
{
  Crowd crowd;
  double lux[MANY];
  crowd_init (&crowd, lamp, dome);
  sq_whole_face_lux (lamp, &crowd.arrays, MANY, lux);
  for (gsize i = 0; i < MANY; i += 7) {
    SqReceptor receptor = receptor_of (&crowd, i);
    double seen = sq_face_whole_lux (lamp, &receptor);
    double apart = fabs (lux[i] - seen);
    if (!(apart <= tolerance_of (lamp, receptor, seen)))
      g_error ("%s: %.12g lx, seen %.12g lx at (%g, %g, %g)", what, lux[i], seen, receptor.at.x_m,
               receptor.at.y_m, receptor.at.z_m);
  }
}

static const char *const modifier_rows[] = {
  "",
  "{'kind': 'scrim', 'stops': 1}",
  "{'kind': 'scrim', 'stops': 2, 'part': 'bottom'}",
  "{'kind': 'egg-crate', 'cutoff_deg': 40, 'transmission': 0.8}",
  "{'kind': 'snoot', 'cutoff_deg': 25}",
  "{'kind': 'scrim', 'part': 'top'}, {'kind': 'egg-crate', 'cutoff_deg': 50}",
};

typedef void (*LampTest) (const SqLamp *lamp, const char *what);

/* Each class of the library, with every so many of the sets of modifiers, all of them by turns;
 * spot and flood by turns. */
static void
each_lamp (LampTest test, guint step)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *classes = sq_library_classes (library);
  for (guint i = 0; i < classes->len; i++)
    for (guint k = i % step; k < G_N_ELEMENTS (modifier_rows); k += step) {
      const SqClass *class = g_ptr_array_index (classes, i);
      g_autoptr (SqScene) scene = lamp_scene (class->id, (i / step + k) % 2, modifier_rows[k]);
      g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
      g_autofree char *what = g_strdup_printf ("%s with %s", class->id, modifier_rows[k]);
      test (first_lamp (lamps), what);
    }
}

static void
one_against_seen (const SqLamp *lamp, const char *what)
{
  compare_with_seen (lamp, what, FALSE);
  compare_with_seen (lamp, what, TRUE);
}

static void
test_against_seen (void)
{
  each_lamp (one_against_seen, 3);
}

/* A face without size, whatever it sends. */
static void
test_points_against_seen (void)
{
  static const char *const rows[] = {
    "'beams': [{'beam_deg': 40, 'field_deg': 60, 'peak_cd': 800}]",
    "'beams': [{'beam_deg': [28, 12], 'field_deg': [44, 21], 'peak_cd': 1000}]",
    "'emits': 'lambert', 'lumens': 700",
    "'emits': 'sphere', 'lumens': 700",
    "'emits': 'skirt', 'lumens': 700",
    "'emits': 'tube', 'lumens': 700",
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqScene) scene = made_scene (rows[i]);
    g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
    g_assert_cmpint (first_lamp (lamps)->shaped, ==, SQ_SHAPED_POINT);
    one_against_seen (first_lamp (lamps), rows[i]);
  }
}

static void
kernels_and_neighbours (const SqLamp *lamp, const char *what)
{
  Crowd crowd;
  double together[MANY], lux[MANY];
  for (int dome = 0; dome < 2; dome++) {
    crowd_init (&crowd, lamp, dome);
    lux_by (sq_face_kernel_of (0), lamp, &crowd.arrays, MANY, together);
    for (guint k = 1; sq_face_kernel_of (k); k++) {
      lux_by (sq_face_kernel_of (k), lamp, &crowd.arrays, MANY, lux);
      g_assert_cmpmem (lux, sizeof lux, together, sizeof together);
    }
    for (gsize i = 0; i < MANY; i += 8)
      g_assert_cmpfloat (lux_alone (lamp, receptor_of (&crowd, i)), ==, together[i]);
  }
}

static void
test_same_bits (void)
{
  each_lamp (kernels_and_neighbours, 6);
}

static void
candela_by_blocks (const SqLamp *lamp, const char *what)
{
  double x[MANY], y[MANY], z[MANY], candela[MANY], alone;
  float xf[MANY], yf[MANY], zf[MANY], quick[MANY];
  for (gsize i = 0; i < MANY; i++) {
    SqVector v = random_direction ();
    if (i % 2)
      v = sq_vector_unit (sq_vector (v.x * 0.3, v.y * 0.3, 1.0));
    x[i] = v.x, y[i] = v.y, z[i] = v.z;
    xf[i] = (float)v.x, yf[i] = (float)v.y, zf[i] = (float)v.z;
  }
  sq_lamp_candela (lamp, x, y, z, MANY, candela);
  sq_quick_face_kernel_best ()->candela (&lamp->intensity, &lamp->passing, xf, yf, zf, MANY, quick);
  for (gsize i = 0; i < MANY; i++) {
    SqVector v = { x[i], y[i], z[i] };
    double one = sq_intensity_cd (&lamp->intensity, v) * sq_passing_share (&lamp->passing, v);
    assert_near (candela[i], one, 4e-16 * 4);
    g_assert_cmpfloat_with_epsilon (quick[i], one, 2e-5 * lamp->intensity.peak_cd);
    sq_lamp_candela (lamp, &x[i], &y[i], &z[i], 1, &alone);
    g_assert_cmpfloat (alone, ==, candela[i]);
  }
}

static void
test_candela (void)
{
  each_lamp (candela_by_blocks, 1);
}

/* The eye's way, from twice as far as the face is large. */
static void
quick_enough (const SqLamp *lamp, const char *what)
{
  Crowd crowd;
  double lux[MANY];
  float x[MANY], y[MANY], z[MANY], nx[MANY], ny[MANY], nz[MANY], quick[MANY];
  const SqPoint origin = { 2.0, 2.0, 0.0 };
  crowd_init (&crowd, lamp, FALSE);
  sq_whole_face_lux (lamp, &crowd.arrays, MANY, lux);
  for (gsize i = 0; i < MANY; i++) {
    x[i] = (float)(crowd.x[i] - origin.x_m), y[i] = (float)(crowd.y[i] - origin.y_m);
    z[i] = (float)(crowd.z[i] - origin.z_m);
    nx[i] = (float)crowd.nx[i], ny[i] = (float)crowd.ny[i], nz[i] = (float)crowd.nz[i];
  }
  lux_quick (lamp, origin, x, y, z, nx, ny, nz, MANY, quick);
  for (gsize i = 0; i < MANY; i++) {
    SqVector way = sq_vector_between (lamp->fixture->at, receptor_of (&crowd, i).at);
    double distance_m = sq_vector_length (way);
    g_assert_false (isnan (quick[i]));
    g_assert_cmpfloat (quick[i], >=, 0.0f);
    /* Right at the edge of its light a skirt is all or nothing. */
    if (distance_m < 2.0 * lamp->radius_m || fabs (sq_vector_dot (way, lamp->frame.forward)) < 1e-3)
      continue;
    double of_peak = lamp->intensity.peak_cd / (distance_m * distance_m);
    if (!(fabs (quick[i] - lux[i]) <= QUICK * lux[i] + QUICK_OF_PEAK * of_peak))
      g_error ("%s: %.9g lx, exactly %.9g lx, %g m off", what, (double)quick[i], lux[i],
               distance_m);
  }
}

static void
test_quick (void)
{
  each_lamp (quick_enough, 3);
}

/* Lambertian faces and a ball of 1000 cd/m²: closed forms, as they stand in catalogues of radiation
 * configuration factors (rectangles: parallel and perpendicular to the receptor). The lamp is at
 * (0, 0, 3) and looks along +y. */
static void
test_closed_forms (void)
{
  static const struct {
    const char *light;
    double area_m2; /* as it shows: candela = 1000 · area */
    SqPoint at;
    SqVector normal;
    double lux, tolerance;
  } rows[] = {
    /* parallel, four quarters of 0.5 x 0.5 at 2 m: L/2 · 4 · 2 a/A atan (a/A), A² = a² + d² */
    { "'emits': 'lambert', 'face': {'shape': 'rect', 'width': 1}",
      1.0,
      { 0, 2, 3 },
      { 0, -1, 0 },
      230.836798,
      1e-8 },
    /* a 2 x 1 face, its lower edge at the receptor's plane and 1.5 m off; looking up */
    { "'emits': 'lambert', 'face': {'shape': 'rect', 'width': 4, 'height': 1}",
      4.0,
      { 0, 1.5, 2.5 },
      { 0, 0, 1 },
      2 * 115.345114,
      1e-8 },
    { "'emits': 'sphere', 'face': {'width': 0.6}",
      G_PI * 0.09,
      { 0, 2, 3 },
      { 0, -1, 0 },
      70.685835,
      1e-8 },
    { "'emits': 'sphere', 'face': {'width': 0.6}",
      G_PI * 0.09,
      { 0, 2, 3 },
      { 0, -0.8660254037844386, 0.5 },
      61.215729,
      1e-8 },
    /* disc on its axis: π L R² / (R² + d²), its polygon within 1e-4 of it */
    { "'emits': 'lambert', 'face': {'width': 1}",
      G_PI_4,
      { 0, 1, 3 },
      { 0, -1, 0 },
      628.318531,
      1e-4 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    gboolean ball = strstr (rows[i].light, "sphere") != NULL;
    double lumens = 1000.0 * rows[i].area_m2 * (ball ? 4.0 * G_PI : G_PI);
    g_autofree char *light = g_strdup_printf ("%s, 'lumens': %.17g", rows[i].light, lumens);
    g_autoptr (SqScene) scene = made_scene (light);
    g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
    const SqReceptor receptor = { rows[i].at, rows[i].normal, FALSE };
    assert_near (lux_alone (first_lamp (lamps), receptor), rows[i].lux, rows[i].tolerance);
  }
}

/* A dome before a ball: half of solid angle and vector illuminance; far off as before a point. */
static void
test_ball_and_dome (void)
{
  g_autoptr (SqScene) scene = made_scene ("'emits': 'sphere', 'lumens': 12.566370614359172,"
                                          "'face': {'width': 2}");
  g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
  const SqLamp *lamp = first_lamp (lamps);
  /* 1 cd, R = 1, D = 2: L = 1/π; solid angle 2π (1 - √3/2), vector π L / 4. */
  SqReceptor receptor = { { 0, 2, 3 }, { 0, -1, 0 }, TRUE };
  double solid = 2.0 * G_PI * (1.0 - sqrt (3.0) / 2.0);
  assert_near (lux_alone (lamp, receptor), (solid / G_PI + 0.25) / 2.0, 1e-14);
  receptor.normal = sq_vector (0, 1, 0);
  assert_near (lux_alone (lamp, receptor), (solid / G_PI - 0.25) / 2.0, 1e-13);
  receptor = (SqReceptor){ { 0, 1e4, 3 }, { 0, 0, 1 }, TRUE };
  assert_near (lux_alone (lamp, receptor), 0.5e-8, 1e-8);
}

static void
inverse_square (const SqLamp *lamp, const char *what)
{
  if (lamp->passing.parts->len > 0)
    return;
  double ahead = lamp->shaped == SQ_SHAPED_TUBE ? 0.0 : 1.0;
  SqVector way = sq_vector_unit (sq_vector_sum (sq_vector_scale (lamp->frame.forward, 1.0),
                                                sq_vector_scale (lamp->frame.up, 1.0 - ahead)));
  SqReceptor receptor = { sq_point_along (lamp->fixture->at, way, 1e5), sq_vector_scale (way, -1.0),
                          FALSE };
  assert_near (lux_alone (lamp, receptor), lamp->intensity.peak_cd * lamp->passing.factor * 1e-10,
               1e-6);
}

static void
test_inverse_square (void)
{
  each_lamp (inverse_square, 1);
}

/* Where formulas divide by nothing: on the face, in its plane, at its corners, inside. */
static void
awkward_places (const SqLamp *lamp, const char *what)
{
  static const double steps[] = { -1.0, -0.5, 0.0, 0.5, 1.0 };
  static const double off_m[] = { 0.0, 1e-12, -1e-12, 1e-6, 1e-3 };
  SqVector right = sq_vector_scale (lamp->frame.right, MAX (lamp->width_m, 0.01) / 2.0);
  SqVector up = sq_vector_scale (lamp->frame.up, MAX (lamp->height_m, 0.01) / 2.0);
  Crowd crowd = { 0 };
  double lux[MANY];
  float x[MANY], y[MANY], z[MANY], nx[MANY], ny[MANY], nz[MANY], quick[MANY];
  gsize n = 0;
  crowd.arrays = (SqReceptors){ crowd.x, crowd.y, crowd.z, crowd.nx, crowd.ny, crowd.nz, FALSE };
  for (gsize i = 0; i < 125; i++, n++) {
    SqPoint at = sq_point_along (lamp->fixture->at, right, steps[i % 5]);
    at = sq_point_along (at, up, steps[i / 5 % 5]);
    at = sq_point_along (at, lamp->frame.forward, off_m[i / 25]);
    crowd_set (&crowd, n, at, sq_vector_scale (lamp->frame.forward, i % 2 ? -1.0 : 1.0));
    SqVector off = sq_vector_between (lamp->fixture->at, at);
    x[n] = (float)off.x, y[n] = (float)off.y, z[n] = (float)off.z;
    nx[n] = (float)crowd.nx[n], ny[n] = (float)crowd.ny[n], nz[n] = (float)crowd.nz[n];
  }
  lux_quick (lamp, lamp->fixture->at, x, y, z, nx, ny, nz, n, quick);
  for (int dome = 0; dome < 2; dome++) {
    crowd.arrays.dome = dome;
    sq_whole_face_lux (lamp, &crowd.arrays, n, lux);
    for (gsize i = 0; i < n; i++) {
      g_assert_true (isfinite (lux[i]) && lux[i] >= 0.0);
      g_assert_true (isfinite (quick[i]) && quick[i] >= 0.0f);
    }
  }
  if (lamp->shaped == SQ_SHAPED_FLAT || lamp->shaped == SQ_SHAPED_BALL)
    g_assert_cmpfloat (lux[12], ==, 0.0); /* in its middle */
}

static void
test_awkward_places (void)
{
  each_lamp (awkward_places, 6);
  g_autoptr (SqScene) scene = made_scene ("'emits': 'lambert', 'lumens': 700");
  g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
  awkward_places (first_lamp (lamps), "a point");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/whole face/as seen one at a time", test_against_seen);
  g_test_add_func ("/whole face/points as seen", test_points_against_seen);
  g_test_add_func ("/whole face/same bits alone and by every kernel", test_same_bits);
  g_test_add_func ("/whole face/candela by blocks", test_candela);
  g_test_add_func ("/whole face/for the eye", test_quick);
  g_test_add_func ("/whole face/closed forms", test_closed_forms);
  g_test_add_func ("/whole face/dome before a ball", test_ball_and_dome);
  g_test_add_func ("/whole face/inverse square far away", test_inverse_square);
  g_test_add_func ("/whole face/awkward places", test_awkward_places);
  return g_test_run ();
}
