/* test-intensity.c: profiles, shapes and what hangs on a lamp, in candela and lumens */
#include "light-scene.h"
#include "light/intensity.h"
#include "light/passing.h"

#define EXACT 1e-12
#define FLUX 1e-2   /* what is asked for */
#define SUMMED 1e-4 /* what this sum is good to, on smooth distributions */

static SqScene *
class_scene (const char *light, const char *fixture)
{
  return scene_of ("'classes': [{'id': 'c', %s}],"
                   "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 3], %s 'aim': [0, 9, 3]}]",
                   light, fixture);
}

static SqIntensity
intensity_of (const char *light, double beam)
{
  g_autoptr (SqScene) scene = class_scene (light, "");
  return sq_intensity_of (sq_scene_class (scene, "c"), beam);
}

/* @g_deg from the axis, @phi_deg about it from right to up. */
static SqVector
direction (double g_deg, double phi_deg)
{
  double g = SQ_RADIANS (g_deg), phi = SQ_RADIANS (phi_deg);
  return sq_vector (sin (g) * cos (phi), sin (g) * sin (phi), cos (g));
}

/* A half at half the beam angle, a tenth at half the field angle: the definition. */
static void
test_profile (void)
{
  static const double rows[][2] = {
    { 9, 16.2 }, { 50, 65 }, { 19, 21 }, { 20, 179.9 }, { 90, 179 }
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *light = g_strdup_printf (
      "'beams': [{'beam_deg': %g, 'field_deg': %g, 'peak_cd': 7000}]", rows[i][0], rows[i][1]);
    SqIntensity intensity = intensity_of (light, 0.3);
    assert_near (sq_intensity_cd (&intensity, direction (0.0, 0.0)), 7000.0, EXACT);
    for (double phi = 0.0; phi < 360.0; phi += 30.0) {
      assert_near (sq_intensity_cd (&intensity, direction (rows[i][0] / 2, phi)), 3500.0, 1e-9);
      assert_near (sq_intensity_cd (&intensity, direction (rows[i][1] / 2, phi)), 700.0, 1e-9);
    }
    g_assert_cmpfloat (sq_intensity_cd (&intensity, direction (90.001, 10.0)), ==, 0.0);
  }
}

static void
test_two_spreads (void)
{
  SqIntensity intensity =
    intensity_of ("'beams': [{'beam_deg': [28, 12], 'field_deg': [44, 21], 'peak_cd': 1000}]", 1.0);
  static const struct {
    double g_deg, phi_deg, cd;
  } rows[] = {
    { 14.0, 0.0, 500.0 },  { 14.0, 180.0, 500.0 }, { 22.0, 0.0, 100.0 },  { 6.0, 90.0, 500.0 },
    { 6.0, 270.0, 500.0 }, { 10.5, 90.0, 100.0 },  { 0.0, 45.0, 1000.0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_near (sq_intensity_cd (&intensity, direction (rows[i].g_deg, rows[i].phi_deg)),
                 rows[i].cd, 1e-9);
  /* Where the root of squares is 1, it is a half whatever the steepness: on the ellipse. */
  double phi = SQ_RADIANS (30.0);
  double g = 1.0 / hypot (cos (phi) / 14.0, sin (phi) / 6.0);
  assert_near (sq_intensity_cd (&intensity, direction (g, 30.0)), 500.0, 1e-9);
}

/* Halfway between spot and flood stand the geometric means. */
static void
test_spot_to_flood (void)
{
  static const char light[] = "'beams': [{'beam_deg': 9, 'field_deg': 16, 'peak_cd': 90000},"
                              "          {'beam_deg': 49, 'field_deg': 64, 'peak_cd': 1600}]";
  static const struct {
    double beam, beam_deg, field_deg, peak_cd;
  } rows[] = { { 0.0, 9.0, 16.0, 90000.0 },
               { 1.0, 49.0, 64.0, 1600.0 },
               { 0.5, 21.0, 32.0, 12000.0 } };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    SqIntensity intensity = intensity_of (light, rows[i].beam);
    double peak = rows[i].peak_cd;
    assert_near (sq_intensity_cd (&intensity, direction (0, 0)), peak, 1e-9);
    assert_near (sq_intensity_cd (&intensity, direction (rows[i].beam_deg / 2, 77)), peak / 2,
                 1e-9);
    assert_near (sq_intensity_cd (&intensity, direction (rows[i].field_deg / 2, 8)), peak / 10,
                 1e-9);
  }
}

/* Lumens of a distribution: midpoints over the sphere in equal steps of angle. */
static double
flux_lm (const SqIntensity *intensity)
{
  const int rings = 720, sectors = 360;
  double flux = 0.0;
  for (int i = 0; i < rings; i++) {
    double g = 180.0 * (i + 0.5) / rings, ring = 0.0;
    for (int k = 0; k < sectors; k++)
      ring += sq_intensity_cd (intensity, direction (g, 360.0 * (k + 0.5) / sectors));
    double from = SQ_RADIANS (180.0 * i / rings), to = SQ_RADIANS (180.0 * (i + 1) / rings);
    flux += ring * 2.0 * G_PI / sectors * (cos (from) - cos (to));
  }
  return flux;
}

static void
test_flux (void)
{
  static const char *const shapes[] = { "lambert", "sphere", "tube", "skirt" };
  for (gsize i = 0; i < G_N_ELEMENTS (shapes); i++) {
    g_autofree char *light = g_strdup_printf ("'emits': '%s', 'lumens': 12345", shapes[i]);
    SqIntensity intensity = intensity_of (light, 1.0);
    assert_near (flux_lm (&intensity), 12345.0, SUMMED);
  }
}

/* A profile with p = 2 and a narrow beam is a Gaussian: flux = peak · π gb² / ln 2 while sin g = g.
 * The field angle that makes p 2 is the root of ln 10 / ln 2 times the beam. */
static void
test_gaussian_flux (void)
{
  g_autofree char *light = g_strdup_printf (
    "'beams': [{'beam_deg': 2, 'field_deg': %.17g, 'peak_cd': 1e6}]", 2.0 * sqrt (log2 (10.0)));
  SqIntensity intensity = intensity_of (light, 1.0);
  double gb = SQ_RADIANS (1.0);
  assert_near (flux_lm (&intensity), 1e6 * G_PI * gb * gb / G_LN2, FLUX);
}

static double
share (const char *modifiers, SqVector toward)
{
  g_autofree char *fixture = g_strdup_printf ("'modifiers': [%s],", modifiers);
  g_autoptr (SqScene) scene =
    class_scene ("'beams': [{'beam_deg': 40, 'field_deg': 60, 'peak_cd': 1}]", fixture);
  const SqFixture *lamp = SQ_AT (SqFixture, scene->fixtures, 0);
  SqIntensity intensity = sq_intensity_of (sq_scene_class (scene, "c"), 1.0);
  SqPassing passing;
  sq_passing_init (&passing, scene, lamp, sq_intensity_half_up_rad (&intensity));
  double passed = sq_passing_share (&passing, toward);
  sq_passing_clear (&passing);
  return passed;
}

static void
test_scrims (void)
{
  static const char bottom[] = "{'kind': 'scrim', 'stops': 1, 'part': 'bottom'}";
  static const char top[] = "{'kind': 'scrim', 'stops': 1, 'part': 'top'}";
  assert_near (share ("{'kind': 'scrim', 'stops': 0.5}, {'kind': 'scrim'}", direction (3, 3)),
               exp2 (-1.5), EXACT);
  /* gb is 20 degrees, the edge blended over 5: whole from 2.5 degrees on either side. */
  assert_near (share (bottom, direction (3, 90)), 1.0, EXACT);
  assert_near (share (bottom, direction (3, 270)), 0.5, EXACT);
  assert_near (share (bottom, direction (0, 0)), 0.75, EXACT);
  assert_near (share (bottom, direction (1.25, 90)), 0.875, 1e-9);
  assert_near (share (top, direction (3, 90)), 0.5, EXACT);
  assert_near (share (top, direction (3, 270)), 1.0, EXACT);
  assert_near (share (top, direction (30, 0)), 0.75, EXACT);
}

static void
test_gels (void)
{
  g_autoptr (SqScene) scene = scene_of (
    "'materials': [{'id': 'half', 'for': 'gel', 'direct': 0.5}],"
    "'classes': [{'id': 'c', 'beams': [{'beam_deg': 40, 'field_deg': 60, 'peak_cd': 800}]}],"
    "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 2],"
    "  'modifiers': [{'kind': 'gel', 'material': 'half'}, {'kind': 'gel', 'material': 'half'}]}],"
    "'probes': [{'id': 'p', 'at': [0, 0, 0]}]");
  assert_near (lux_of (scene), 50.0, 1e-9);
}

/* transmission · (1 - |tan a| / tan c)+ · (1 - |tan b| / tan c)+ */
static void
test_egg_crate (void)
{
  static const char crate[] = "{'kind': 'egg-crate', 'cutoff_deg': 45, 'transmission': 0.8}";
  assert_near (share (crate, direction (0, 0)), 0.8, EXACT);
  assert_near (share (crate, sq_vector_unit (sq_vector (0.25, 0, 1))), 0.6, 1e-9);
  assert_near (share (crate, sq_vector_unit (sq_vector (-0.25, 0.5, 1))), 0.3, 1e-9);
  g_assert_cmpfloat (share (crate, sq_vector_unit (sq_vector (0.1, -1.01, 1))), ==, 0.0);
  g_assert_cmpfloat (share (crate, sq_vector (0, 0, -1)), ==, 0.0);
}

/* The overlap of two equal circles set apart by s of their diameter, against their area: 1 for s 0,
 * 0 from 1 on; at s 1/2 it is 2/3 - √3 / 2π. */
static void
test_snoot (void)
{
  static const char snoot[] = "{'kind': 'snoot', 'cutoff_deg': 20}";
  double half = SQ_DEGREES (atan (tan (SQ_RADIANS (20.0)) / 2.0));
  assert_near (share (snoot, direction (0, 0)), 1.0, EXACT);
  assert_near (share (snoot, direction (half, 123)), 2.0 / 3.0 - sqrt (3.0) / (2.0 * G_PI), 1e-9);
  g_assert_cmpfloat (share (snoot, direction (20.001, 0)), ==, 0.0);
  g_assert_cmpfloat (share (snoot, direction (170, 0)), ==, 0.0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/intensity/half and tenth", test_profile);
  g_test_add_func ("/intensity/two spreads", test_two_spreads);
  g_test_add_func ("/intensity/spot to flood", test_spot_to_flood);
  g_test_add_func ("/intensity/flux of shapes", test_flux);
  g_test_add_func ("/intensity/flux of a narrow beam", test_gaussian_flux);
  g_test_add_func ("/passing/scrims", test_scrims);
  g_test_add_func ("/passing/gels", test_gels);
  g_test_add_func ("/passing/egg crate", test_egg_crate);
  g_test_add_func ("/passing/snoot", test_snoot);
  return g_test_run ();
}
