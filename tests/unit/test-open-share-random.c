/* test-open-share-random.c: how much of a lamp's face is open, against rays to many places of it */
#include "open-share-setup.h"

/* Of the light with nothing between, over points where some of the face is hidden: rms and worst.
 * Measured over 15 000 points; the rays themselves are good to a thousandth. */
static const struct {
  const char *where;
  double rms, worst;
} limits[] = {
  { "farther than the face's diagonal", 0.009, 0.07 },
  { "nearer", 0.028, 0.11 },
  { "the face's middle is below the horizon", 0.06, 0.4 },
};
/* As in the table of limits. */
typedef struct {
  double squares[3], worst[3];
  int n[3];
} Errors;

/* Lamps of 0.1 to 3 m that look down, or aslant, on a grid with one to three things before it. */
static void
random_round (guint32 seed, double least_passes, double most_passes, Errors *errors)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (seed);
  Face face = { .disc = g_rand_boolean (dice) };
  face.middle = random_point (dice, 2, 2, 4);
  SqVector out = random_way (dice, -85, 5);
  turn (dice, out, 0.05, 1.5, &face);
  SqPoint first = random_point (dice, 1.5, 0, 1.2);
  const SqReceiverGrid grid = {
    { first.x_m - 4.5, first.y_m - 4.5 }, between (dice, 0.05, 0.2), first.z_m, 60, 60,
  };
  SqRowReads reads = level;
  int reading = g_rand_int_range (dice, 0, 4);
  if (reading == 0)
    reads.normal = random_way (dice, -20, 90);
  reads.dome = reading == 1;

  Setup setup;
  Thing things[3];
  guint n = g_rand_int_range (dice, 1, 4);
  setup_init (&setup, &face, &grid);
  for (guint i = 0; i < n; i++) {
    things[i] = random_thing (dice);
    things[i].passes = most_passes > 0.0 ? between (dice, least_passes, most_passes) : 0.0;
    setup_add (&setup, &things[i]);
  }
  int tried = 0;
  for (int k = 0; k < 400 && tried < 4; k++) {
    int column = g_rand_int_range (dice, 0, grid.columns);
    int row = g_rand_int_range (dice, 0, grid.rows);
    SqPoint at = sq_receiver_point (&grid, column, row);
    float share;
    shares (&setup, &reads, row, column, column + 1, &share);
    double before_m = sq_vector_dot (out, sq_vector_between (face.middle, at));
    if (before_m < 0.02 || share <= 0.0f || share >= 1.0f)
      continue;
    double error = share - share_by_rays (&face, things, n, at, reads.normal, reads.dome);
    double diagonal_m =
      2.0 * hypot (sq_vector_length (face.half_across), sq_vector_length (face.half_up));
    SqVector way_back = sq_vector_between (at, face.middle);
    int where = sq_vector_length (way_back) < diagonal_m ? 1 : 0;
    if (!reads.dome && sq_vector_dot (reads.normal, way_back) < 0.0)
      where = 2;
    errors->squares[where] += error * error;
    errors->worst[where] = MAX (errors->worst[where], fabs (error));
    errors->n[where]++;
    tried++;
  }
  setup_clear (&setup);
}

static void
assert_errors (const Errors *errors)
{
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++) {
    double rms = sqrt (errors->squares[i] / MAX (errors->n[i], 1));
    g_test_message ("%s: %d points, rms %.4f, worst %.4f", limits[i].where, errors->n[i], rms,
                    errors->worst[i]);
    g_assert_cmpint (errors->n[i], >, 5);
    g_assert_cmpfloat (rms, <, limits[i].rms);
    g_assert_cmpfloat (errors->worst[i], <, limits[i].worst);
  }
}

static void
test_random_solids (void)
{
  Errors errors = { 0 };
  for (guint32 seed = 1; seed <= 300; seed++)
    random_round (seed, 0.0, 0.0, &errors);
  assert_errors (&errors);
}

static void
test_random_nets (void)
{
  Errors errors = { 0 };
  for (guint32 seed = 1001; seed <= 1200; seed++)
    random_round (seed, 0.1, 0.9, &errors);
  assert_errors (&errors);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/open share/at random, solids are as rays see them", test_random_solids);
  g_test_add_func ("/open share/at random, nets are as rays see them", test_random_nets);
  return g_test_run ();
}
