/* test-ramp.c: the colours of light are the published ones, and read in grey too */
#include "draw/ramp.h"

/* Bands from the darkest to the brightest. Worked out beforehand by a separate script from the
 * formulas in the OKLab paper (Ottosson 2020) and 17 samples of cividis. */
/* clang-format off */
static const struct {
  const char *name;
  SqGround ground;
  gboolean stops;
  int n;
  guint hex[SQ_STOPS_BANDS];
  double darkest_contrast; /* of ink on the first band; 0: white is used there */
  double least_step;       /* of L* */
} ramps[] = {
  { "lux on paper", SQ_GROUND_PAPER, FALSE, SQ_LUX_BANDS,
    { 0x808AA3, 0x9196A2, 0xA0A1A5, 0xAEADA9, 0xBEBAA9, 0xCEC6A6, 0xDED4A2, 0xEFE29C, 0xFEF298 },
    5.2, 4.2 },
  { "stops on paper", SQ_GROUND_PAPER, TRUE, SQ_STOPS_BANDS,
    { 0x749AD2, 0x82A2D0, 0x92ABCF, 0xA3B4CF, 0xB3BECE, 0xC3C7CC, 0xD5D1C8, 0xE9DBC0, 0xFDE6B7,
      0xFFF0AD }, 6.2, 2.5 },
  { "stops on a screen", SQ_GROUND_DARK, TRUE, SQ_STOPS_BANDS,
    { 0x012A63, 0x1E3F6E, 0x395278, 0x536581, 0x6D798A, 0x888C92, 0xA6A095, 0xC6B491, 0xE6C88B,
      0xFFDB82 }, 0, 5.0 },
};

/* Plain cividis from 0.08 to 1; its first colour is left out, where those samples are too few. */
static const guint screen_lux[] = {
  0x34446D, 0x525A6D, 0x6C6E72, 0x878478, 0xA39A74, 0xC1B269, 0xE1CB56, 0xFEE838,
};
/* clang-format on */

/* As a screen shows it, in steps of 8 bits. */
static void
assert_colour (SqColour colour, guint hex)
{
  const int tolerance = 1;
  const double channel[] = { colour.red, colour.green, colour.blue };
  for (int k = 0; k < 3; k++) {
    int expected = (int)(hex >> (16 - 8 * k) & 0xFF);
    g_assert_cmpint (ABS ((int)round (channel[k] * 255.0) - expected), <=, tolerance);
  }
}

/* The band as a screen or a printer gets it. */
static SqColour
band_of_8_bits (guint ramp, int band)
{
  SqColour c = sq_ramp_colour (ramps[ramp].ground, ramps[ramp].stops, SQ_FIRST_BAND + band);
  return (SqColour){ round (c.red * 255.0) / 255.0, round (c.green * 255.0) / 255.0,
                     round (c.blue * 255.0) / 255.0 };
}

static void
test_table (void)
{
  /* Both ends as the map is printed and shipped everywhere. */
  g_assert_cmphex (sq_cividis[0], ==, 0x00224E);
  g_assert_cmphex (sq_cividis[SQ_CIVIDIS_STEPS - 1], ==, 0xFEE838);
  assert_colour (sq_cividis_at (-1.0), 0x00224E);
  assert_colour (sq_cividis_at (0.0), 0x00224E);
  assert_colour (sq_cividis_at (2.0), 0xFEE838);
  /* The middle grey of the map (matplotlib 3.6: #7C7B78). */
  assert_colour (sq_cividis_at (0.5), 0x7C7B78);
}

/* Its authors made lightness rise evenly: every 16 steps by about a sixteenth of the whole. */
static void
test_even (void)
{
  double first = sq_colour_lightness (sq_colour_hex (sq_cividis[0]));
  double last = sq_colour_lightness (sq_colour_hex (sq_cividis[SQ_CIVIDIS_STEPS - 1]));
  double share = (last - first) / 15.0;
  for (int k = 1; k < SQ_CIVIDIS_STEPS; k++)
    g_assert_cmpfloat (sq_colour_lightness (sq_colour_hex (sq_cividis[k])) + 0.35, >,
                       sq_colour_lightness (sq_colour_hex (sq_cividis[k - 1])));
  for (int k = 17; k < SQ_CIVIDIS_STEPS; k += 17) {
    double step = sq_colour_lightness (sq_colour_hex (sq_cividis[k])) -
                  sq_colour_lightness (sq_colour_hex (sq_cividis[k - 17]));
    g_assert_cmpfloat (step, >, 0.7 * share);
    g_assert_cmpfloat (step, <, 1.4 * share);
  }
}

static void
test_bands (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (ramps); k++)
    for (int band = 0; band < ramps[k].n; band++)
      assert_colour (sq_ramp_colour (ramps[k].ground, ramps[k].stops, SQ_FIRST_BAND + band),
                     ramps[k].hex[band]);
  for (guint k = 0; k < G_N_ELEMENTS (screen_lux); k++)
    assert_colour (sq_ramp_colour (SQ_GROUND_LIGHT, FALSE, SQ_FIRST_BAND + 1 + (int)k),
                   screen_lux[k]);
}

static void
test_ends (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (ramps); k++) {
    SqColour below = sq_ramp_colour (ramps[k].ground, ramps[k].stops, -100);
    SqColour above = sq_ramp_colour (ramps[k].ground, ramps[k].stops, 100);
    assert_colour (below, ramps[k].hex[0]);
    assert_colour (above, ramps[k].hex[ramps[k].n - 1]);
  }
}

/* In grey the bands still go from dark to bright, each apart from the next. */
static void
test_grey (void)
{
  const double tolerance = 0.1;
  for (guint k = 0; k < G_N_ELEMENTS (ramps); k++)
    for (int band = 1; band < ramps[k].n; band++) {
      SqColour colour = band_of_8_bits (k, band);
      SqColour grey = sq_colour_grey (colour);
      double below = sq_colour_lightness (band_of_8_bits (k, band - 1));
      g_assert_cmpfloat (sq_colour_lightness (colour) - below, >=, ramps[k].least_step - tolerance);
      g_assert_cmpfloat (grey.red, ==, grey.green);
      g_assert_cmpfloat (grey.red, ==, grey.blue);
      g_assert_cmpfloat_with_epsilon (sq_colour_lightness (grey), sq_colour_lightness (colour),
                                      1e-3);
    }
}

static void
test_ink (void)
{
  const SqView paper = { .ground = SQ_GROUND_PAPER };
  const double tolerance = 0.06, readable = 4.5;
  for (guint k = 0; k < G_N_ELEMENTS (ramps); k++)
    for (int band = 0; band < ramps[k].n; band++) {
      SqColour colour = sq_ramp_colour (ramps[k].ground, ramps[k].stops, SQ_FIRST_BAND + band);
      double contrast = sq_colour_contrast (sq_ink (&paper, SQ_INK), colour);
      if (band == 0 && ramps[k].darkest_contrast > 0.0)
        g_assert_cmpfloat_with_epsilon (contrast, ramps[k].darkest_contrast, tolerance);
      if (ramps[k].ground == SQ_GROUND_PAPER)
        g_assert_cmpfloat (contrast, >=, readable);
      /* On a screen one of the two always reads at 3.9 : 1 or better. */
      g_assert_cmpfloat (sq_colour_contrast (sq_ramp_ink_on (colour), colour), >=, 3.9);
    }
}

/* Known values: WCAG 2.1 gives white on black 21 : 1; L* of mid grey #777777 is 50.03 (CIE 1976).
 */
static void
test_measures (void)
{
  SqColour white = sq_colour_hex (0xFFFFFF), black = sq_colour_hex (0x000000);
  g_assert_cmpfloat_with_epsilon (sq_colour_contrast (white, black), 21.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_colour_contrast (black, white), 21.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_colour_lightness (white), 100.0, 1e-6);
  g_assert_cmpfloat_with_epsilon (sq_colour_lightness (black), 0.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (sq_colour_lightness (sq_colour_hex (0x777777)), 50.03, 0.01);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/ramp/the published table", test_table);
  g_test_add_func ("/ramp/lightness rises evenly", test_even);
  g_test_add_func ("/ramp/every band has its colour", test_bands);
  g_test_add_func ("/ramp/beyond the ends it stays", test_ends);
  g_test_add_func ("/ramp/bands differ in grey", test_grey);
  g_test_add_func ("/ramp/ink reads on every band", test_ink);
  g_test_add_func ("/ramp/contrast and lightness", test_measures);
  return g_test_run ();
}
