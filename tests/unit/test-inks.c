/* test-inks.c: inks and role lines read on their ground, in one ink, and to eyes with two kinds of
 * cone
 */
#include "draw-page.h"
#include "draw/ramp.h"

static gboolean
same_dash (const SqRoleLine *a, const SqRoleLine *b)
{
  if (a->n_dashes != b->n_dashes)
    return FALSE;
  for (int i = 0; i < a->n_dashes; i++)
    if (fabs (a->dash_mm[i] - b->dash_mm[i]) > 0.05)
      return FALSE;
  return TRUE;
}

static void
test_role_dashes (void)
{
  for (int i = 0; i < SQ_ROLE_LINES; i++) {
    g_assert_nonnull (sq_role_lines[i].word);
    for (int j = i + 1; j < SQ_ROLE_LINES; j++) {
      g_assert_false (same_dash (&sq_role_lines[i], &sq_role_lines[j]));
      g_assert_cmpstr (sq_role_lines[i].word, !=, sq_role_lines[j].word);
    }
  }
}

static void
test_one_ink (void)
{
  SqView mono = { .mono = TRUE };
  SqColour ink = sq_ink (&mono, SQ_INK);
  for (int i = 0; i < SQ_ROLE_LINES; i++) {
    SqColour role = sq_role_colour (&mono, i);
    g_assert_true (role.red == ink.red && role.green == ink.green && role.blue == ink.blue);
  }
}

/* With one ink nothing has a hue: not the tint of a wall either. */
static void
test_no_tint (void)
{
  SqView mono = { .mono = TRUE };
  for (int i = 0; i < SQ_INKS; i++) {
    SqColour colour = sq_ink (&mono, (SqInk)i);
    assert_near (colour.red, colour.green, EXACT);
    assert_near (colour.green, colour.blue, EXACT);
  }
}

/* Contrast on white, and the dark hues on their ground #1B1E22, worked out beforehand by a separate
 * script from the formula of WCAG 2.1. What stands under 3 : 1, the least for lines (WCAG 1.4.11),
 * never stands without its word. */
static void
test_contrast (void)
{
  static const struct {
    const char *word;
    double on_white;
  } rows[SQ_ROLE_LINES] = {
    { "KEY", 3.9 },   { "FILL", 5.2 }, { "BACK", 3.4 }, { "SIDE", 3.1 }, { "TOP", 3.1 },
    { "UNDER", 3.1 }, { "BG", 6.9 },   { "PRAC", 2.3 }, { "FX", 18.0 },  { "DAY", 2.3 },
  };
  static const double inks[] = {
    [SQ_INK] = 18.0, [SQ_MID] = 6.9, [SQ_SOFT] = 3.2, [SQ_HAIR] = 2.0
  };
  const double rounded = 0.06, on_dark = 4.5;
  const SqView paper = { .ground = SQ_GROUND_PAPER }, dark = { .ground = SQ_GROUND_DARK };
  for (int i = 0; i < SQ_ROLE_LINES; i++) {
    g_assert_cmpstr (sq_role_lines[i].word, ==, rows[i].word);
    assert_near (sq_colour_contrast (sq_role_colour (&paper, i), sq_ink (&paper, SQ_PAPER)),
                 rows[i].on_white, rounded);
    /* To the three places that eight bits a channel allow. */
    g_assert_cmpfloat (sq_colour_contrast (sq_role_colour (&dark, i), sq_ink (&dark, SQ_PAPER)), >=,
                       on_dark - 0.05);
  }
  for (guint i = 0; i < G_N_ELEMENTS (inks); i++)
    assert_near (sq_colour_contrast (sq_ink (&paper, (SqInk)i), sq_ink (&paper, SQ_PAPER)), inks[i],
                 rounded);
}

/* How a colour looks to eyes that lack one kind of cone: Machado, Oliveira and Fernandes, "A
 * physiologically-based model for simulation of color vision deficiency", IEEE Transactions on
 * Visualization and Computer Graphics 15(6), 2009: the matrices of severity 1.0, for linear RGB. */
typedef struct {
  const char *name;
  double matrix[3][3];
} Eyes;

/* clang-format off */
static const Eyes eyes[] = {
  { "protanopia",   { {  0.152286,  1.052583, -0.204868 },
                      {  0.114503,  0.786281,  0.099216 },
                      { -0.003882, -0.048116,  1.051998 } } },
  { "deuteranopia", { {  0.367322,  0.860646, -0.227968 },
                      {  0.280085,  0.672501,  0.047413 },
                      { -0.011820,  0.042940,  0.968881 } } },
  { "tritanopia",   { {  1.255528, -0.076749, -0.178779 },
                      { -0.078411,  0.930809,  0.147602 },
                      {  0.004733,  0.691367,  0.303900 } } },
};
/* clang-format on */

/* IEC 61966-2-1. */
static double
linear (double c)
{
  return c <= 0.04045 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4);
}

static double
encoded (double c)
{
  c = CLAMP (c, 0.0, 1.0);
  return c <= 0.0031308 ? c * 12.92 : 1.055 * pow (c, 1.0 / 2.4) - 0.055;
}

static SqColour
seen_by (const Eyes *who, SqColour colour)
{
  const double from[3] = { linear (colour.red), linear (colour.green), linear (colour.blue) };
  double to[3] = { 0 };
  for (int i = 0; i < 3; i++)
    for (int j = 0; j < 3; j++)
      to[i] += who->matrix[i][j] * from[j];
  return (SqColour){ encoded (to[0]), encoded (to[1]), encoded (to[2]) };
}

/* CIE 1976 L*a*b* under D65. */
static void
lab_of (SqColour colour, double lab[3])
{
  static const double xyz[3][3] = { { 0.4124564, 0.3575761, 0.1804375 },
                                    { 0.2126729, 0.7151522, 0.0721750 },
                                    { 0.0193339, 0.1191920, 0.9503041 } };
  static const double white[3] = { 0.95047, 1.0, 1.08883 };
  const double rgb[3] = { linear (colour.red), linear (colour.green), linear (colour.blue) };
  double f[3];
  for (int i = 0; i < 3; i++) {
    double t = (xyz[i][0] * rgb[0] + xyz[i][1] * rgb[1] + xyz[i][2] * rgb[2]) / white[i];
    f[i] = t > 216.0 / 24389.0 ? cbrt (t) : (24389.0 / 27.0 * t + 16.0) / 116.0;
  }
  lab[0] = 116.0 * f[1] - 16.0;
  lab[1] = 500.0 * (f[0] - f[1]);
  lab[2] = 200.0 * (f[1] - f[2]);
}

/* Greys stay greys: each row of a matrix adds up to 1. */
static void
test_greys (void)
{
  const double printed = 2e-6;
  for (guint k = 0; k < G_N_ELEMENTS (eyes); k++)
    for (int i = 0; i < 3; i++)
      assert_near (eyes[k].matrix[i][0] + eyes[k].matrix[i][1] + eyes[k].matrix[i][2], 1.0,
                   printed);
}

static void
test_bands_apart (void)
{
  const double apart = 2.0;
  static const SqGround grounds[] = { SQ_GROUND_PAPER, SQ_GROUND_LIGHT, SQ_GROUND_DARK };
  for (guint k = 0; k < G_N_ELEMENTS (eyes); k++)
    for (guint g = 0; g < G_N_ELEMENTS (grounds); g++)
      for (int stops = 0; stops < 2; stops++)
        for (int band = SQ_FIRST_BAND + 1; band <= (stops ? SQ_LAST_STOPS_BAND : SQ_LAST_LUX_BAND);
             band++) {
          SqColour low = seen_by (&eyes[k], sq_ramp_colour (grounds[g], stops, band - 1));
          SqColour high = seen_by (&eyes[k], sq_ramp_colour (grounds[g], stops, band));
          double step = sq_colour_lightness (high) - sq_colour_lightness (low);
          if (step < apart)
            g_error ("%s, ground %d, stops %d, band %d: %.2f", eyes[k].name, grounds[g], stops,
                     band, step);
        }
}

/* Hues that differ at all stay apart by three times what is just noticeable (2.3 in CIE 1976, Mahy,
 * Van Eycken and Oosterlinck 1994); side, top and under share one, and go by dash and word. */
static void
test_hues_apart (void)
{
  const double apart = 3.0 * 2.3;
  for (int ground = 0; ground < 2; ground++) {
    const SqView view = { .ground = ground == 0 ? SQ_GROUND_PAPER : SQ_GROUND_DARK };
    for (guint k = 0; k < G_N_ELEMENTS (eyes); k++)
      for (int i = 0; i < SQ_ROLE_LINES; i++)
        for (int j = i + 1; j < SQ_ROLE_LINES; j++) {
          SqColour one = sq_role_colour (&view, i), other = sq_role_colour (&view, j);
          if (memcmp (&one, &other, sizeof one) == 0)
            continue;
          double a[3], b[3];
          lab_of (seen_by (&eyes[k], one), a);
          lab_of (seen_by (&eyes[k], other), b);
          double difference =
            sqrt (pow (a[0] - b[0], 2) + pow (a[1] - b[1], 2) + pow (a[2] - b[2], 2));
          if (difference < apart)
            g_error ("%s: %s and %s are %.1f apart", eyes[k].name, sq_role_lines[i].word,
                     sq_role_lines[j].word, difference);
        }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/roles/no two share a dash or a word", test_role_dashes);
  g_test_add_func ("/draw/roles/one ink where only one is allowed", test_one_ink);
  g_test_add_func ("/draw/roles/no tint in one ink", test_no_tint);
  g_test_add_func ("/draw/inks/contrast on their ground", test_contrast);
  g_test_add_func ("/draw/eyes/greys stay greys", test_greys);
  g_test_add_func ("/draw/eyes/bands stay apart", test_bands_apart);
  g_test_add_func ("/draw/eyes/hues of roles stay apart", test_hues_apart);
  return g_test_run ();
}
