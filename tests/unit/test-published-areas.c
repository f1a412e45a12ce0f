/* test-published-areas.c: what is lost when a lamp with size is taken for a point, by closed forms
 *
 * Discs are in test-area-light.c, as are the single values of discs, rectangles, windows, balls,
 * tubes and half-hidden panels. */
#include "light-scene.h"

/* Percentages are worked out to so many digits; a square is summed by the contour formula, 1e-6. */
#define AS_PRINTED 6e-6
#define FIVE_TIMES 6e-5 /* two digits */
/* A tube is a ribbon, not a line. */
#define THIN 1e-5
#define PRINTED_LUX 1e-6

#define SIDE_M 0.8
#define LINE_M 1.2

/* How much more a point of the same candela would give, straight before the lamp's middle. */
typedef struct {
  const char *name;
  double distance; /* in sides, or lengths */
  double error;
  double tolerance;
} PointRow;

/* A square: E = 4 · L/2 · 2 a/A · atan (a/A), a half the side, A² = a² + d²: a quarter is the
 * rectangle parallel to the receiver with a corner over it, configuration factor B-3 of Howell's
 * catalogue (number from memory). The rule of five times the largest dimension gives 1.33 % by the
 * side and 0.67 % by the diagonal. */
static const PointRow squares[] = {
  { "one side", 1, 0.32930, AS_PRINTED },
  { "two sides", 2, 0.08302, AS_PRINTED },
  { "three sides", 3, 0.03697, AS_PRINTED },
  { "five sides", 5, 0.01333, AS_PRINTED },
  { "ten sides", 10, 0.00333, AS_PRINTED },
  { "five diagonals", 7.0710678118654755, 0.0067, FIVE_TIMES },
};

/* A line of I' cd/m across its axis: E = I'/d · (b + sin b cos b), b = atan (l/2d). */
static const PointRow lines[] = {
  { "one length", 1, 0.15788, THIN },    { "two lengths", 2, 0.04108, THIN },
  { "three lengths", 3, 0.01840, THIN }, { "five lengths", 5, 0.00665, THIN },
  { "ten lengths", 10, 0.00167, THIN },
};

static double
lux_before (const char *light, double distance_m)
{
  g_autoptr (SqScene) scene = scene_of ("'classes': [{'id': 'c', %s}],"
                                        "'fixtures': [{'id': 'f', 'class': 'c',"
                                        "'at': [0, 0, %.17g], 'aim': [0, 0, 0]}],"
                                        "'probes': [{'id': 'p', 'at': [0, 0, 0]}]",
                                        light, distance_m);
  return lux_of (scene);
}

static void
hold (const PointRow *row, double as_point_lux, double lux)
{
  g_test_message ("%s: %.4f %%", row->name, 100.0 * (as_point_lux / lux - 1.0));
  g_assert_cmpfloat_with_epsilon (as_point_lux / lux, 1.0 + row->error, row->tolerance);
}

static void
test_squares (void)
{
  /* π lumens of a Lambertian face are 1 cd. */
  g_autofree char *light =
    g_strdup_printf ("'emits': 'lambert', 'lumens': %.17g, 'face': {'shape': 'rect', 'width': %g}",
                     1000.0 * G_PI, SIDE_M);
  for (gsize i = 0; i < G_N_ELEMENTS (squares); i++) {
    double d_m = squares[i].distance * SIDE_M;
    hold (&squares[i], 1000.0 / (d_m * d_m), lux_before (light, d_m));
  }
}

static void
test_lines (void)
{
  /* π² lumens of a tube are 1 cd across its axis. */
  g_autofree char *light =
    g_strdup_printf ("'emits': 'tube', 'lumens': %.17g,"
                     "'face': {'shape': 'rect', 'width': %g, 'height': 0.002}",
                     1000.0 * G_PI * G_PI, LINE_M);
  for (gsize i = 0; i < G_N_ELEMENTS (lines); i++) {
    double d_m = lines[i].distance * LINE_M;
    hold (&lines[i], 1000.0 / (d_m * d_m), lux_before (light, d_m));
  }
}

/* What a diffusion frame 1.2 m square gives off that gets 2000 lx and scatters 0.4 of it: 1152 lm,
 * 254.6479 cd/m², 81.8974 lx at 2 m on its axis, by the square's closed form. Here it is a lamp. */
static void
test_frame (void)
{
  double lumens = 2000.0 * 0.4 * 1.2 * 1.2;
  g_assert_cmpfloat_with_epsilon (lumens / (G_PI * 1.2 * 1.2), 254.6479, 5e-5);
  g_autofree char *light = g_strdup_printf (
    "'emits': 'lambert', 'lumens': %.17g, 'face': {'shape': 'rect', 'width': 1.2}", lumens);
  assert_near (lux_before (light, 2.0), 81.8974, PRINTED_LUX);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/published areas/a square for a point", test_squares);
  g_test_add_func ("/published areas/a line for a point", test_lines);
  g_test_add_func ("/published areas/a frame's face", test_frame);
  return g_test_run ();
}
