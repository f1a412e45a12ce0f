/* test-library-distribution.c: each lamp of the library sends out the candela and lumens it says */
#include "light/intensity.h"
#include "scene/library.h"

#include "library-expect.h"

#include <math.h>

/* Relative. */
#define FLUX_WITHIN 1e-2  /* of a sum over the sphere, and of a series in g for sin g */
#define ANGLE_WITHIN 1e-6 /* of an angle found by halving */
#define CANDELA_WITHIN 1e-9

/* @g_rad from the aim, @phi_rad about it from right to up. */
static SqVector
direction (double g_rad, double phi_rad)
{
  return sq_vector (sin (g_rad) * cos (phi_rad), sin (g_rad) * sin (phi_rad), cos (g_rad));
}

/* Over the whole sphere, by midpoints that lie closer toward the aim: g = π u². Also the greatest
 * candela that was met. */
static double
flux_lm (const SqIntensity *intensity, double *greatest_cd)
{
  const int rings = 1500, spokes = 48;
  double sum = 0.0;

  *greatest_cd = 0.0;
  for (int ring = 0; ring < rings; ring++) {
    double u = (ring + 0.5) / rings, g_rad = G_PI * u * u, width_rad = 2.0 * G_PI * u / rings;
    for (int spoke = 0; spoke < spokes; spoke++) {
      double cd =
        sq_intensity_cd (intensity, direction (g_rad, 2.0 * G_PI * (spoke + 0.5) / spokes));
      sum += cd * sin (g_rad) * width_rad;
      *greatest_cd = MAX (*greatest_cd, cd);
    }
  }
  return sum * 2.0 * G_PI / spokes;
}

/* Lumens of a profile, from its closed form. With a = (g / gb)^p, all moments of it are gammas:
 *   ∫ g^n exp (-ln 2 · a) dg = gb^(n+1) · (ln 2)^(-(n+1)/p) · Γ((n+1)/p) / p,
 * and sin g = g - g³/3! + g⁵/5! - … What lies past 90 degrees is counted here and is none of the
 * lamp's: with the widest floods half a hundredth. gb and p depend on the angle about the aim, over
 * which is summed. */
static double
closed_flux_lm (const SqBeam *beam)
{
  const int spokes = 360, terms = 12;
  const double half[2] = { SQ_RADIANS (beam->beam_deg.across) / 2.0,
                           SQ_RADIANS (beam->beam_deg.up) / 2.0 };
  const double tenth[2] = { SQ_RADIANS (beam->field_deg.across) / 2.0,
                            SQ_RADIANS (beam->field_deg.up) / 2.0 };
  double sum = 0.0;

  for (int spoke = 0; spoke < spokes; spoke++) {
    double phi = 2.0 * G_PI * (spoke + 0.5) / spokes, c = cos (phi), s = sin (phi);
    double gb = 1.0 / hypot (c / half[0], s / half[1]), factorial = 1.0;
    double p[2];
    for (int way = 0; way < 2; way++)
      p[way] = log (G_LN10 / G_LN2) / log (tenth[way] / half[way]);
    double power = p[0] * c * c + p[1] * s * s;
    for (int k = 0; k < terms; k++) {
      double n = 2.0 * k + 2.0;
      if (k > 0)
        factorial *= -2.0 * k * (2.0 * k + 1.0); /* with its sign */
      sum += pow (gb, n) * pow (G_LN2, -n / power) * tgamma (n / power) / power / factorial;
    }
  }
  return beam->peak_cd * sum * 2.0 * G_PI / spokes;
}

/* The angle from the aim, toward right (@up FALSE) or up, at which @share of the peak is left. */
static double
angle_at_rad (const SqIntensity *intensity, gboolean up, double share)
{
  double low = 0.0, high = G_PI_2;

  for (int i = 0; i < 60; i++) {
    double middle = (low + high) / 2.0;
    double cd = sq_intensity_cd (intensity, direction (middle, up ? G_PI_2 : 0.0));
    if (cd > share * intensity->peak_cd)
      low = middle;
    else
      high = middle;
  }
  return low;
}

static void
beam_comes_back (const SqClass *class, const SqBeam *beam, double setting)
{
  SqIntensity intensity = sq_intensity_of (class, setting);
  double greatest_cd, lm = flux_lm (&intensity, &greatest_cd);

  expect_near (sq_intensity_cd (&intensity, sq_vector (0, 0, 1)), beam->peak_cd, CANDELA_WITHIN,
               class->id, "cd along the aim");
  expect_within (greatest_cd, 0.9 * beam->peak_cd, beam->peak_cd * (1 + CANDELA_WITHIN), class->id,
                 "greatest cd");
  expect_near (lm, closed_flux_lm (beam), FLUX_WITHIN, class->id, "lm of a beam");
  for (int up = 0; up < 2; up++) {
    double half_deg = up ? beam->beam_deg.up : beam->beam_deg.across;
    double tenth_deg = up ? beam->field_deg.up : beam->field_deg.across;
    expect_near (2.0 * angle_at_rad (&intensity, up, 0.5), SQ_RADIANS (half_deg), ANGLE_WITHIN,
                 class->id, "beam angle");
    expect_near (2.0 * angle_at_rad (&intensity, up, 0.1), SQ_RADIANS (tenth_deg), ANGLE_WITHIN,
                 class->id, "field angle");
  }
}

/* Shapes by their definition: where half and a tenth of the peak are left, in degrees from the aim
 * across and up, 90 where all is left up to there. A cosine: 60, acos 0.1. A sine to the tube's
 * axis, which is across: the same across, all of it up. */
static const struct {
  double per_lumen;
  double half_deg[2], tenth_deg[2];
} shapes[] = {
  [SQ_EMITS_LAMBERT] = { 1.0 / G_PI, { 60.0, 60.0 }, { 84.2608, 84.2608 } },
  [SQ_EMITS_SPHERE] = { 1.0 / (4.0 * G_PI), { 90.0, 90.0 }, { 90.0, 90.0 } },
  [SQ_EMITS_TUBE] = { 1.0 / (G_PI * G_PI), { 60.0, 90.0 }, { 84.2608, 90.0 } },
  [SQ_EMITS_SKIRT] = { 1.0 / (2.0 * G_PI), { 90.0, 90.0 }, { 90.0, 90.0 } },
};

static void
shape_comes_back (const SqClass *class, double setting)
{
  SqIntensity intensity = sq_intensity_of (class, setting);
  double greatest_cd, lm = flux_lm (&intensity, &greatest_cd);
  double peak_cd = class->lumens * shapes[class->emits].per_lumen;

  expect_near (lm, class->lumens, FLUX_WITHIN, class->id, "lm of a shape");
  expect_near (sq_intensity_cd (&intensity, sq_vector (0, 0, 1)), peak_cd, CANDELA_WITHIN,
               class->id, "cd along the aim");
  expect_within (greatest_cd, 0.99 * peak_cd, peak_cd * (1 + CANDELA_WITHIN), class->id,
                 "greatest cd");
  for (int up = 0; up < 2; up++) {
    expect_near (angle_at_rad (&intensity, up, 0.5), SQ_RADIANS (shapes[class->emits].half_deg[up]),
                 ANGLE_WITHIN, class->id, "angle of a half");
    expect_near (angle_at_rad (&intensity, up, 0.1),
                 SQ_RADIANS (shapes[class->emits].tenth_deg[up]), ANGLE_WITHIN, class->id,
                 "angle of a tenth");
  }
}

static void
each_class (gboolean shaped)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *classes = sq_library_classes (library);
  guint held = 0;

  for (guint i = 0; i < classes->len; i++) {
    const SqClass *class = g_ptr_array_index (classes, i);
    if ((class->emits != SQ_EMITS_BY_BEAM) != shaped)
      continue;
    held++;
    for (int flood = 0; flood < 2; flood++) {
      guint last = class->beams->len - 1;
      if (shaped)
        shape_comes_back (class, flood);
      else
        beam_comes_back (class, g_ptr_array_index (class->beams, flood ? last : 0), flood);
    }
  }
  g_assert_cmpuint (held, >, 0);
}

static void
test_beams (void)
{
  each_class (FALSE);
}

static void
test_shapes (void)
{
  each_class (TRUE);
}

/* The closed form itself: with p = 1 it is the integral of e^(-k g) sin g, 1 / (1 + k²), and with
 * p = 2 and a small angle π gb² / ln 2. */
static void
test_closed_form (void)
{
  double k = log (2) / SQ_RADIANS (5);
  double to_tenth = log (10) / log (2);
  SqBeam falling = { .beam_deg = { 10, 10 }, .peak_cd = 1000 };
  SqBeam narrow = { .beam_deg = { 2, 1 }, .peak_cd = 1e6 };

  falling.field_deg = (SqSpread){ 10 * to_tenth, 10 * to_tenth };
  narrow.field_deg = (SqSpread){ 2 * sqrt (to_tenth), sqrt (to_tenth) };
  expect_near (closed_flux_lm (&falling), 2 * G_PI * 1000 / (1 + k * k), 1e-9, "e^(-k g)", "flux");
  expect_near (closed_flux_lm (&narrow), 1e6 * G_PI * SQ_RADIANS (1) * SQ_RADIANS (0.5) / log (2),
               1e-3, "Gaussian", "flux");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/library/distribution/closed form of a beam's flux", test_closed_form);
  g_test_add_func ("/library/distribution/beams: flux, peak and angles come back", test_beams);
  g_test_add_func ("/library/distribution/shapes: flux, peak and angles come back", test_shapes);
  return g_test_run ();
}
