/* test-library-light.c: the library's lamps give as much light as such lamps do, and no more */
#include "scene/library.h"

#include "library-expect.h"

#include <math.h>

/* One row a class, in the library's order.
 * bare_lm: what the bare lamp inside gives, lamp makers' tables, from memory; 0: not known.
 * candela: straight ahead, of lamps given by their flux, common practice; 0: not known, or given
 *   by beams. */
typedef struct {
  const char *id;
  double bare_lm;
  double candela;
} Published;

/* clang-format off */
static const Published published[] = {
  { "tungsten-fresnel-150", 3600 },
  { "tungsten-fresnel-300", 7000 },
  { "tungsten-fresnel-650", 16500 },
  { "tungsten-fresnel-1000", 26000 },
  { "tungsten-fresnel-2000", 54000 },
  { "tungsten-fresnel-5000", 140000 },
  { "tungsten-fresnel-10000", 290000 },
  { "tungsten-fresnel-20000", 580000 },
  { "open-face-800", 20000 },
  { "open-face-2000", 54000 },
  { "broad-1000", 26000 },
  { "par-can-very-narrow", 0 },
  { "par-can-narrow", 0 },
  { "par-can-medium", 0 },
  { "par-can-wide", 0 },
  { "lamp-bank-9", 0 },
  { "lamp-bank-24", 0 },
  { "discharge-fresnel-200", 0 },
  { "discharge-fresnel-575", 49000 },
  { "discharge-fresnel-1200", 110000 },
  { "discharge-fresnel-2500", 240000 },
  { "discharge-fresnel-4000", 390000 },
  { "discharge-fresnel-6000", 600000 },
  { "discharge-fresnel-12000", 1150000 },
  { "discharge-fresnel-18000", 1700000 },
  { "discharge-par-200", 16000 },
  { "discharge-par-575", 49000 },
  { "discharge-par-1200", 110000 },
  { "discharge-par-1800", 165000 },
  { "discharge-par-2500", 0 },
  { "discharge-par-4000", 390000 },
  { "discharge-par-6000", 0 },
  { "discharge-par-9000", 820000 },
  { "discharge-par-18000", 1700000 },
  { "led-fresnel-200", 0 },
  { "led-fresnel-450", 0 },
  { "led-spot-60", 5500 },
  { "led-spot-120", 11000 },
  { "led-spot-300", 27000 },
  { "led-spot-600", 50000 },
  { "led-spot-1200", 95000 },
  { "led-spot-2500", 0 },
  { "led-beam-panel-600", 0 },
  { "led-panel-30x30", 0 },
  { "led-panel-60x30-ho", 0 },
  { "led-panel-60x30", 0 },
  { "led-panel-120x30", 0 },
  { "led-panel-130x80", 0 },
  { "led-mat-60x30", 0, 2700 },
  { "led-mat-60x60", 0, 5200 },
  { "led-mat-120x60", 0, 9500 },
  { "led-tube-60", 700, 170 },
  { "led-tube-120", 1600, 380 },
  { "led-tube-240", 3500, 850 },
  { "fluorescent-4x60", 0 },
  { "fluorescent-4x120", 0 },
  { "fluorescent-8x120", 0 },
  { "softlight-2000", 0 },
  { "cyc-flood-1000", 26000 },
  { "ground-row-500", 0 },
  { "led-ground-row-100", 0 },
  { "led-strobe-1000", 0 },
  { "softlight-4000", 0 },
  { "paper-lantern-75", 12500, 700 },
  { "led-lantern-60", 0 },
  { "space-light-6000", 165000, 8800 },
  { "led-space-light-500", 45000, 4700 },
  { "balloon-8000", 216000, 12000 },
  { "discharge-balloon-4800", 440000, 24500 },
  { "bulb-tungsten-25", 220, 18 },
  { "bulb-tungsten-60", 720, 57 },
  { "bulb-tungsten-100", 1400, 111 },
  { "bulb-led-9", 806, 64 },
  { "bulb-overrun-250", 6500, 517 },
  { "candle", 0, 1 },
  { "led-neon-100", 0 },
  { "profile-5", 16500 },
  { "profile-10", 16500 },
  { "profile-19", 16500 },
  { "profile-26", 16500 },
  { "profile-36", 16500 },
  { "profile-50", 16500 },
  { "profile-70", 16500 },
  { "profile-90", 16500 },
};

/* Of the sources, in the order of SqSource. Handbooks, from memory.
 * lm_per_w: the best there is, per watt drawn (flame: none is drawn).
 * cd_m2: luminance of the bare source: coil at 3200 K, arc, diode, tube, candle. No lens or
 * reflector can make a face brighter than the source in it. */
static const struct {
  double lm_per_w, cd_m2;
} best[] = { { 36, 3e7 }, { 110, 5e8 }, { 200, 1e8 }, { 105, 2e4 }, { 0, 2e4 } };

/* By kind of lamp: what the bare lamp in it gives for each watt drawn from the mains, and how much
 * of that comes out of the housing in flood. Handbooks, from memory: 3200 K coils 23 to 30 lm/W,
 * household ones from 8; arcs with their ballast 65 to 95; white diodes with their electronics 60
 * to 130, mixed of colours or in a thin tube half as much; studio tubes of high colour rendering
 * 45 to 105. A lens with an open lamp behind it catches a fifth to a third, a reflector half and
 * more, a shell that the light is bounced off a fifth to a third, a gate with an ellipsoid behind
 * it two thirds, a narrow gate less. */
static const struct {
  const char *family;
  SqSource source;
  double bare_lm_per_w[2], share[2];
} kinds[] = {
  { "fresnel", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.15, 0.4 } },
  { "fresnel", SQ_SOURCE_DISCHARGE, { 65, 95 }, { 0.15, 0.4 } },
  { "fresnel", SQ_SOURCE_LED, { 60, 130 }, { 0.15, 0.4 } },
  { "open-face", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.4, 0.65 } },
  { "par", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.35, 0.6 } },
  { "par", SQ_SOURCE_DISCHARGE, { 65, 95 }, { 0.35, 0.6 } },
  { "multi-lamp bank", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.35, 0.6 } },
  { "spot", SQ_SOURCE_LED, { 60, 130 }, { 0.6, 1 } }, /* nothing but the open reflector */
  { "panel", SQ_SOURCE_LED, { 60, 130 }, { 0.4, 1 } },
  { "mat", SQ_SOURCE_LED, { 60, 130 }, { 0.6, 1 } },
  { "tube", SQ_SOURCE_LED, { 30, 65 }, { 0.6, 1 } },
  { "fluorescent bank", SQ_SOURCE_FLUORESCENT, { 45, 105 }, { 0.35, 0.65 } },
  { "softlight", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.15, 0.4 } },
  { "cyc", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.35, 0.65 } },
  { "cyc", SQ_SOURCE_LED, { 60, 130 }, { 0.35, 0.65 } },
  { "strobe", SQ_SOURCE_LED, { 60, 130 }, { 0.6, 1 } },
  { "lantern", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.5, 0.9 } },
  { "lantern", SQ_SOURCE_LED, { 60, 130 }, { 0.5, 0.9 } },
  { "space light", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.25, 0.7 } },
  { "space light", SQ_SOURCE_LED, { 60, 130 }, { 0.25, 0.7 } },
  { "balloon", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.5, 0.9 } },
  { "balloon", SQ_SOURCE_DISCHARGE, { 65, 95 }, { 0.5, 0.9 } },
  { "practical bulb", SQ_SOURCE_TUNGSTEN, { 8, 30 }, { 1, 1 } }, /* it is the bare lamp */
  { "practical bulb", SQ_SOURCE_LED, { 60, 130 }, { 1, 1 } },
  { "profile", SQ_SOURCE_TUNGSTEN, { 23, 30 }, { 0.25, 0.75 } },
};
/* clang-format on */

#define LUX_PER_FOOT_CANDLE 10.7639 /* 1 / 0.3048² */

/* Relative. */
#define CANDELA_WITHIN 0.05 /* round figures */
#define FLUX_WITHIN 1e-4    /* of our integral against a closed form */
#define SMALL_ANGLE 1e-3    /* of a closed form that takes sin g for g, at 2 degrees */
#define READING_WITHIN 0.1  /* a reading by hand, of a class and not of that lamp */
#define SPOT_OVER_FLOOD 1.1 /* spotting gathers no more light; exchanged lenses lose unequally */

/* Share of the peak at @gamma from the aim and @phi about it, as the scene format defines it. */
static double
beam_share (const SqBeam *beam, double gamma_rad, double phi_rad)
{
  double across = beam->beam_deg.across / 2 * G_PI / 180, up = beam->beam_deg.up / 2 * G_PI / 180;
  double drop = log (log (10) / log (2));
  double power_across = drop / log (beam->field_deg.across / beam->beam_deg.across);
  double power_up = drop / log (beam->field_deg.up / beam->beam_deg.up);
  double c = cos (phi_rad), s = sin (phi_rad);
  double of_half = gamma_rad * hypot (c / across, s / up);

  return exp (-log (2) * pow (of_half, power_across * c * c + power_up * s * s));
}

/* Over the half-space ahead, by midpoints; the four quarters about the aim are alike. */
static double
beam_flux_lm (const SqBeam *beam)
{
  gboolean round =
    beam->beam_deg.across == beam->beam_deg.up && beam->field_deg.across == beam->field_deg.up;
  int rings = 3000, spokes = round ? 1 : 48;
  double sum = 0;

  for (int spoke = 0; spoke < spokes; spoke++) {
    double phi_rad = (spoke + 0.5) / spokes * G_PI_2;
    for (int ring = 0; ring < rings; ring++) {
      double gamma_rad = (ring + 0.5) / rings * G_PI_2;
      sum += beam_share (beam, gamma_rad, phi_rad) * sin (gamma_rad);
    }
  }
  return beam->peak_cd * sum * (G_PI_2 / rings) * (2 * G_PI / spokes);
}

/* A class in flood, or as it is. */
static double
class_flux_lm (const SqClass *class)
{
  if (class->beams->len == 0)
    return class->lumens;
  return beam_flux_lm (g_ptr_array_index (class->beams, class->beams->len - 1));
}

static double
class_peak_cd (const SqClass *class)
{
  /* Solid angles that spread a flux to its peak: of a cosine, a ball, a sine and a half-space. */
  const double per_peak_sr[] = { G_PI, 4 * G_PI, G_PI * G_PI, 2 * G_PI };

  if (class->beams->len > 0)
    return ((const SqBeam *)g_ptr_array_index (class->beams, 0))->peak_cd;
  return class->lumens / per_peak_sr[class->emits];
}

/* Two beams whose flux can be written down: one that falls by e^(-k g), and one so narrow that it
 * is a Gaussian on a plane, wider across than up. */
static void
test_integral (void)
{
  double k = log (2) / (15 * G_PI / 180), to_tenth = log (10) / log (2);
  SqBeam falling = { .beam_deg = { 30, 30 }, .peak_cd = 1000 };
  SqBeam narrow = { .beam_deg = { 2, 1 }, .peak_cd = 1e6 };

  falling.field_deg = (SqSpread){ 30 * to_tenth, 30 * to_tenth };
  narrow.field_deg = (SqSpread){ 2 * sqrt (to_tenth), sqrt (to_tenth) };
  expect_near (beam_flux_lm (&falling), 2 * G_PI * 1000 * (1 - k * exp (-k * G_PI_2)) / (1 + k * k),
               FLUX_WITHIN, "e^(-k g)", "flux");
  expect_near (beam_flux_lm (&narrow), 1e6 * G_PI * (1 * G_PI / 180) * (0.5 * G_PI / 180) / log (2),
               SMALL_ANGLE, "Gaussian", "flux");
}

static void
one_light (const SqClass *class, const Published *row)
{
  int ways =
    (class->beams->len > 0) + (class->emits != SQ_EMITS_BY_BEAM) + (class->photometry != NULL);

  expect (ways == 1, class->id, "gives light in no way or in several");
  expect (class->beams->len <= 2, class->id, "has more than spot and flood");
  expect ((class->emits != SQ_EMITS_BY_BEAM) == (class->lumens > 0), class->id,
          "has a flux without a shape, or a shape without a flux");
}

static void
beam_order (const SqClass *class, const Published *row)
{
  const SqBeam *spot = NULL;

  for (guint i = 0; i < class->beams->len; i++) {
    const SqBeam *beam = g_ptr_array_index (class->beams, i);
    SqSpread half = beam->beam_deg, tenth = beam->field_deg;

    expect (tenth.across > half.across && tenth.up > half.up, class->id, "a field within its beam");
    expect (tenth.across < 180 && tenth.up < 180, class->id, "a field past the half-space");
    expect (half.across >= half.up, class->id, "is wider up than across");
    if (spot != NULL)
      expect (spot->beam_deg.across < half.across && spot->peak_cd > beam->peak_cd, class->id,
              "spot is not the narrower and brighter one");
    spot = beam;
  }
}

static void
flux_of_source (const SqClass *class, const Published *row)
{
  double lm = class_flux_lm (class);

  expect_within (lm, 0, row->bare_lm > 0 ? row->bare_lm : INFINITY, class->id,
                 "lm, of its bare lamp");
  if (class->source != SQ_SOURCE_FLAME)
    expect_within (lm / class->input_w, 0, best[class->source].lm_per_w, class->id, "lm/W");
  if (class->beams->len == 2)
    expect_within (beam_flux_lm (g_ptr_array_index (class->beams, 0)), 0, lm * SPOT_OVER_FLOOD,
                   class->id, "lm in spot, of that in flood");
}

/* A candle draws nothing. */
static void
flux_of_kind (const SqClass *class, const Published *row)
{
  double lm = class_flux_lm (class);
  gboolean known = class->source == SQ_SOURCE_FLAME;

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++) {
    const double *bare = kinds[i].bare_lm_per_w, *share = kinds[i].share;
    if (kinds[i].source != (SqSource) class->source ||
        g_strcmp0 (kinds[i].family, class->family) != 0)
      continue;
    known = TRUE;
    expect_within (lm / class->input_w, bare[0] * share[0], bare[1] * share[1], class->id,
                   "lm/W, of its kind");
    if (row->bare_lm > 0) {
      expect_within (row->bare_lm / class->input_w, bare[0], bare[1], class->id,
                     "lm/W, of its bare lamp");
      expect_within (lm / row->bare_lm, share[0], share[1], class->id, "share of its bare lamp");
    }
  }
  expect (known, class->id, "is of no kind that is known");
}

static void
no_brighter_than_source (const SqClass *class, const Published *row)
{
  double box_m2 = class->face->width_m * sq_face_height_m (class->face);
  double face_m2 = class->face->shape == SQ_SHAPE_DISC ? box_m2 * G_PI_4 : box_m2;

  expect_within (class_peak_cd (class) / face_m2, 0, best[class->source].cd_m2, class->id,
                 "cd/m2 of its face");
}

static void
candela_of_shape (const SqClass *class, const Published *row)
{
  expect (row->candela == 0 || class->emits != SQ_EMITS_BY_BEAM, class->id, "is given by beams");
  if (row->candela > 0)
    expect_near (class_peak_cd (class), row->candela, CANDELA_WITHIN, class->id, "cd");
}

/* Sealed-beam lamps of 1 kW, as a public stage-lighting reference lists them. */
static void
test_parallel_beams (void)
{
  static const struct {
    const char *id;
    double across_deg, up_deg, peak_cd;
  } rows[] = {
    { "par-can-very-narrow", 12, 6, 400000 },
    { "par-can-narrow", 14, 7, 330000 },
    { "par-can-medium", 28, 12, 125000 },
    { "par-can-wide", 48, 24, 40000 },
  };
  g_autoptr (SqLibrary) library = sq_library_new ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    const SqClass *class = sq_library_class (library, rows[i].id);
    const SqBeam *beam = g_ptr_array_index (class->beams, 0);
    g_assert_cmpfloat (beam->beam_deg.across, ==, rows[i].across_deg);
    g_assert_cmpfloat (beam->beam_deg.up, ==, rows[i].up_deg);
    g_assert_cmpfloat (beam->peak_cd, ==, rows[i].peak_cd);
  }
}

/* A trade column on lighting a screen gives 160 fc at 6 ft before a bank of eight 4 ft tubes. That
 * is near enough for the face to count: each part of it is further off and seen aslant. */
static void
test_tube_bank (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  const SqClass *class = sq_library_class (library, "fluorescent-8x120");
  const SqBeam *beam = g_ptr_array_index (class->beams, 0);
  double width_m = class->face->width_m, height_m = sq_face_height_m (class->face);
  double away_m = 6 * 0.3048, lux = 0;
  int cells = 40;

  for (int i = 0; i < cells * cells; i++) {
    double x_m = ((i % cells + 0.5) / cells - 0.5) * width_m;
    double y_m = ((i / cells + 0.5) / cells - 0.5) * height_m;
    double aside_m = hypot (x_m, y_m), distance_m = hypot (aside_m, away_m);
    double cd = beam->peak_cd / (cells * cells) *
                beam_share (beam, atan2 (aside_m, away_m), atan2 (y_m, x_m));
    lux += cd * (away_m / distance_m) / (distance_m * distance_m);
  }
  expect_near (lux / LUX_PER_FOOT_CANDLE, 160, READING_WITHIN, class->id, "fc at 6 ft");
}

static const struct ClassTest {
  const char *path;
  void (*check) (const SqClass *class, const Published *row);
} class_tests[] = {
  { "/library/light/given in one way", one_light },
  { "/library/light/spot before flood, beam within field", beam_order },
  { "/library/light/flux is within what its source makes", flux_of_source },
  { "/library/light/lumens per watt are of its kind", flux_of_kind },
  { "/library/light/face is no brighter than its source", no_brighter_than_source },
  { "/library/light/flux of a shape gives the published candela", candela_of_shape },
};

static void
test_each_class (gconstpointer data)
{
  const struct ClassTest *test = data;
  g_autoptr (SqLibrary) library = sq_library_new ();
  const GPtrArray *classes = sq_library_classes (library);

  for (guint i = 0; i < G_N_ELEMENTS (published); i++) {
    const SqClass *class = g_ptr_array_index (classes, i);
    g_assert_cmpstr (class->id, ==, published[i].id);
    test->check (class, &published[i]);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/library/light/integral of a beam has its closed form", test_integral);
  for (guint i = 0; i < G_N_ELEMENTS (class_tests); i++)
    g_test_add_data_func (class_tests[i].path, &class_tests[i], test_each_class);
  g_test_add_func ("/library/light/parallel beams as published", test_parallel_beams);
  g_test_add_func ("/library/light/bank of eight tubes reads as published", test_tube_bank);
  return g_test_run ();
}
