/* test-open-share.c: how much of a lamp's face is open, where the answer is plain */
#include "open-share-setup.h"

/* Where a shadow's edges run along the face's sides. */
#define ALONG_SIDES 0.002
/* And a net before what something else hides part of counts as spread evenly along a line. */
#define SPREAD 0.03
/* Where only several solids together hide all. */
#define LEAK 2e-6
/* The same, another way. */
#define SAME 4e-6
/* Of what rays see. */
#define WORST 0.14

static float
share_past (const Thing *things, guint n, int column, int row)
{
  Setup setup;
  setup_init (&setup, &overhead, &floor_grid);
  for (guint i = 0; i < n; i++)
    setup_add (&setup, &things[i]);
  float share = one_share (&setup, column, row);
  setup_clear (&setup);
  return share;
}

/* What is hidden by one, and what stands in no way, exactly; seen from (0.3, -0.2) on the floor. */
static void
test_all_or_nothing (void)
{
  static const struct {
    const char *name;
    double base_m, top_m, half_m, share;
  } rows[] = {
    { "a slab between", 1.0, 1.5, 2.0, 0.0 },
    { "the point is inside", -0.5, 0.5, 1.0, 0.0 },
    { "the point is on the base", 0.0, 0.5, 1.0, 0.0 },
    { "the point is on the top", -0.5, 0.0, 1.0, 1.0 },
    { "below the point", -2.0, -1.0, 1.0, 1.0 },
    { "above the lamp", 3.5, 4.0, 2.0, 1.0 },
    { "the lamp sits under it", 3.0, 4.0, 2.0, 1.0 },
    { "the lamp is recessed in it", 2.9, 4.0, 2.0, 0.0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    double half = rows[i].half_m;
    Thing slab = block (-half, -half, 2 * half, 2 * half, rows[i].base_m, rows[i].top_m);
    float share = share_past (&slab, 1, 53, 48);
    if (share != (float)rows[i].share)
      g_error ("%s: %g", rows[i].name, share);
  }
  Thing aside = block (3, 3, 0.5, 0.5, 0, 2);
  g_assert_cmpfloat (share_past (&aside, 1, 53, 48), ==, 1.0f);
  g_assert_cmpfloat (share_past (NULL, 0, 53, 48), ==, 1.0f);
  Thing cloth = sheet (sq_point (0, 0, 1), sq_vector (2, 0, 0), sq_vector (0, 2, 0), 0.0);
  g_assert_cmpfloat (share_past (&cloth, 1, 53, 48), ==, 0.0f);
  /* Nor does anything more that hides some of it take less away than all. */
  const Thing more[] = { block (-1, 0.01, 0.9, 2, 1.1, 1.4), cloth,
                         block (0.1, -0.7, 0.6, 2, 0.5, 0.8) };
  for (int c = 45; c <= 55; c++)
    g_assert_cmpfloat (share_past (more, G_N_ELEMENTS (more), c, 48), ==, 0.0f);
}

/* From right below the lamp, sheets whose edges pass below its middle: halves and quarters. */
static void
test_halves (void)
{
  const Thing east = sheet (sq_point (2, 0, 1), sq_vector (2, 0, 0), sq_vector (0, 2, 0), 0.0);
  const Thing north = sheet (sq_point (0, 2, 1.2), sq_vector (2, 0, 0), sq_vector (0, 2, 0), 0.0);
  static const struct {
    double east, north, share; /* what each passes; 1: it is not there */
  } rows[] = {
    { 0.0, 1.0, 0.5 },   { 0.5, 1.0, 0.75 },  { 0.0, 0.0, 0.25 },
    { 0.0, 0.5, 0.375 }, { 0.5, 0.0, 0.375 }, { 0.4, 0.6, 0.7 * 0.8 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    Thing things[] = { east, north };
    things[0].passes = rows[i].east;
    things[1].passes = rows[i].north;
    double net = MAX (rows[i].east, rows[i].north);
    g_assert_cmpfloat_with_epsilon (share_past (things, 2, 50, 50), rows[i].share,
                                    net > 0.0 && net < 1.0 ? SPREAD : ALONG_SIDES);
  }
  /* Three nets one above the other, and a fourth that lets all through. */
  const double passes[] = { 0.5, 0.8, 0.25, 1.0 };
  Thing nets[G_N_ELEMENTS (passes)];
  for (gsize i = 0; i < G_N_ELEMENTS (passes); i++)
    nets[i] =
      sheet (sq_point (0, 0, 1 + 0.2 * i), sq_vector (2, 0, 0), sq_vector (0, 2, 0), passes[i]);
  g_assert_cmpfloat_with_epsilon (share_past (nets, 4, 50, 50), 0.5 * 0.8 * 0.25, SAME);
}

/* A slab in two parts hides what it hides in one. */
static void
test_no_leak (void)
{
  Setup one, two;
  const Thing slab = block (-1, -1.1, 2.1, 2.0, 1.3, 1.5);
  const Thing west = block (-1, -1.1, 1.037, 2.0, 1.3, 1.5);
  const Thing east = block (0.037, -1.1, 1.063, 2.0, 1.3, 1.5);
  setup_init (&one, &overhead, &floor_grid);
  setup_init (&two, &overhead, &floor_grid);
  setup_add (&one, &slab);
  setup_add (&two, &west);
  setup_add (&two, &east);
  int n_dark = 0, n_partly = 0;
  for (int row = 0; row < floor_grid.rows; row++) {
    float whole[101], parts[101];
    shares (&one, &level, row, 0, 101, whole);
    shares (&two, &level, row, 0, 101, parts);
    for (int c = 0; c < 101; c++) {
      g_assert_cmpfloat_with_epsilon (parts[c], whole[c], whole[c] > 0.0f ? SAME : LEAK);
      n_dark += whole[c] == 0.0f;
      n_partly += whole[c] > 0.0f && whole[c] < 1.0f;
    }
  }
  g_assert_cmpint (n_dark, >, 100);
  g_assert_cmpint (n_partly, >, 100);
  setup_clear (&one);
  setup_clear (&two);
}

static void
assert_as_rays_see (const Face *face, const SqReceiverGrid *grid, const Thing *things, guint n)
{
  Setup setup;
  setup_init (&setup, face, grid);
  for (guint i = 0; i < n; i++)
    setup_add (&setup, &things[i]);
  for (int row = 0; row < grid->rows; row++)
    for (int column = 0; column < grid->columns; column++) {
      SqPoint at = sq_receiver_point (grid, column, row);
      double rays = share_by_rays (face, things, n, at, level.normal, FALSE);
      g_assert_cmpfloat_with_epsilon (one_share (&setup, column, row), rays, WORST);
    }
  setup_clear (&setup);
}

/* A pillar that the lamp is partly in, one that ends at the lamp's height, a shade round it. */
static void
test_at_the_lamp (void)
{
  const SqReceiverGrid grid = { { -2.03, -1.97 }, 0.7, 0.0, 7, 7 };
  const Thing through = block (0.1, -0.2, 1.0, 0.9, 1.5, 4.0);
  const Thing up_to = block (0.1, -0.2, 1.0, 0.9, 1.5, 3.0);
  const Thing shade =
    sheet (sq_point (0.5, 0, 3), sq_vector (0, 0.5, 0), sq_vector (0.1, 0, 0.4), 0.0);
  assert_as_rays_see (&overhead, &grid, &through, 1);
  assert_as_rays_see (&overhead, &grid, &up_to, 1);
  assert_as_rays_see (&overhead, &grid, &shade, 1);
}

/* More than fit the stack, posts and nets by turns. */
static void
test_crowd (void)
{
  const SqReceiverGrid grid = { { -2.03, -1.97 }, 0.7, 0.0, 7, 7 };
  Thing things[40];
  for (guint i = 0; i < G_N_ELEMENTS (things); i++) {
    double a = 2.0 * G_PI * i / G_N_ELEMENTS (things), r = i % 3 == 0 ? 0.4 : 0.9;
    things[i] = block (r * cos (a), r * sin (a), 0.07, 0.05, 0.9, 1.9 + 0.02 * i);
    things[i].passes = i % 2 ? 0.5 : 0.0;
  }
  assert_as_rays_see (&overhead, &grid, things, G_N_ELEMENTS (things));
}

/* Row 50 is the line y = 0, in the plane of a sheet, along a block's side, and through its edges.
 */
static void
test_in_line (void)
{
  Setup setup;
  float share[101];
  const Thing cloth = sheet (sq_point (0, 0, 1), sq_vector (1, 0, 0), sq_vector (0, 0, 1), 0.0);
  setup_init (&setup, &overhead, &floor_grid);
  setup_add (&setup, &cloth);
  shares (&setup, &level, 50, 0, 101, share);
  for (int c = 0; c < 101; c++)
    g_assert_cmpfloat (share[c], ==, 1.0f);
  setup_clear (&setup);

  /* It hides the lamp's half behind y = 0 where its top is not looked over. */
  const Thing brick = block (-1, 0, 2, 1, 0, 2.9);
  setup_init (&setup, &overhead, &floor_grid);
  setup_add (&setup, &brick);
  shares (&setup, &level, 50, 0, 101, share);
  for (int c = 42; c <= 58; c++)
    g_assert_cmpfloat_with_epsilon (share[c], 0.5, ALONG_SIDES);
  setup_clear (&setup);
}

/* Nothing but hidden or seen; a face without height lies in part behind an edge. */
static void
test_no_size (void)
{
  const Thing brick = block (-0.5, -0.5, 1, 1, 0.5, 1);
  const SqVector none = { 0, 0, 0 };
  const Face faces[] = { { { 0, 0, 3 }, none, none, FALSE },
                         { { 0, 0, 3 }, none, none, TRUE },
                         { { 0, 0, 3 }, { 0.5, 0, 0 }, none, FALSE } };
  for (gsize i = 0; i < G_N_ELEMENTS (faces); i++) {
    Setup setup;
    int n_hidden = 0, n_seen = 0;
    setup_init (&setup, &faces[i], &floor_grid);
    setup_add (&setup, &brick);
    for (int row = 0; row < 101; row++) {
      float share[101];
      shares (&setup, &level, row, 0, 101, share);
      for (int c = 0; c < 101; c++) {
        n_hidden += share[c] == 0.0f;
        n_seen += share[c] == 1.0f;
      }
    }
    /* From a point the shadow is 1.5 m wide at the floor; points at its very edge may be either. */
    if (i < 2) {
      g_assert_cmpint (n_hidden + n_seen, ==, 101 * 101);
      g_assert_cmpint (n_hidden, >=, 15 * 15 - 2 * 15);
      g_assert_cmpint (n_hidden, <=, 16 * 16);
    }
    setup_clear (&setup);
  }
}

/* ---- The same another way ---- */

static void
random_setup (GRand *dice, Setup *setup)
{
  Face face = { .middle = { 0.1, 0.2, 2.5 }, .disc = g_rand_boolean (dice) };
  turn (dice, random_way (dice, -80, 0), 0.1, 1.5, &face);
  const SqReceiverGrid grid = { { -4, -4 }, 0.11, 0.7, 73, 73 };
  setup_init (setup, &face, &grid);
  for (int i = 0; i < 4; i++) {
    Thing thing = random_thing (dice);
    thing.passes = g_rand_int_range (dice, 0, 3) == 0 ? 0.3 : 0.0;
    setup_add (setup, &thing);
  }
}

static void
test_alone_or_in_a_row (void)
{
  g_autoptr (GRand) dice = g_rand_new_with_seed (7);
  for (int round = 0; round < 20; round++) {
    Setup setup;
    float row[73], x[73], y[73], z[73], given[73];
    SqRowReads reads = { .normal = sq_vector_toward (between (dice, 0, 360), 20) };
    for (int c = 0; c < 73; c++) {
      x[c] = (float)reads.normal.x;
      y[c] = (float)reads.normal.y;
      z[c] = (float)reads.normal.z;
    }
    const SqRowReads by_column = { .normal_x = x, .normal_y = y, .normal_z = z };
    random_setup (dice, &setup);
    for (int k = 0; k < 73; k += 9) {
      shares (&setup, &reads, k, 0, 73, row);
      shares (&setup, &by_column, k, 0, 73, given);
      for (int c = 0; c < 73; c++) {
        float alone;
        shares (&setup, &reads, k, c, c + 1, &alone);
        g_assert_cmpfloat_with_epsilon (alone, row[c], 10 * SAME);
        g_assert_cmpfloat_with_epsilon (given[c], row[c], 100 * SAME);
      }
    }
    setup_clear (&setup);
  }
}

#ifdef SQ_HAVE_AVX2
static void
test_same_bits (void)
{
  if (!__builtin_cpu_supports ("avx2")) {
    g_test_message ("this processor has one set of instructions only: nothing to compare");
    return;
  }
  g_autoptr (GRand) dice = g_rand_new_with_seed (11);
  int n_partly = 0;
  for (int round = 0; round < 60; round++) {
    Setup setup;
    float share[2][73];
    SqOpenSpans spans[4 * SQ_GO_COLUMNS];
    SqOpenSorted solids[4];
    SqBound lo[64], hi[64];
    guint touched[4];
    guint8 seen[64];
    const SqRowReads reads = { .normal = random_way (dice, -20, 90), .dome = round % 2 };
    random_setup (dice, &setup);
    for (int row = 0; row < 73; row++) {
      SqOpenJob job = { .face = &setup.face,
                        .shadows = setup.list,
                        .n = 1 + round % 4,
                        .grid = &setup.grid,
                        .reads = &reads,
                        .row = row,
                        .to = 73,
                        .share = share[0],
                        .spans = spans,
                        .touched = touched,
                        .solids = solids,
                        .seen = seen,
                        .bounds = { lo, hi } };
      sq_open_shares_baseline (&job);
      job.share = share[1];
      sq_open_shares_avx2 (&job);
      g_assert_cmpmem (share[0], sizeof share[0], share[1], sizeof share[1]);
      for (int c = 0; c < 73; c++)
        n_partly += share[0][c] > 0.0f && share[0][c] < 1.0f;
    }
    setup_clear (&setup);
  }
  g_assert_cmpint (n_partly, >, 1000);
}
#endif

/* On the lamp, behind it, in its plane, and from a thousand kilometres: numbers, all the same. */
static void
test_never_nan (void)
{
  static const SqReceiverGrid grids[] = {
    { { -0.5, -0.5 }, 0.1, 3.0, 11, 11 },       { { -0.5, -0.5 }, 0.1, 3.5, 11, 11 },
    { { -1e6, -1e6 }, 2e5, 0.0, 11, 11 },       { { 1e6, 1e6 }, 0.1, -1e6, 11, 11 },
    { { -5e-5, -5e-5 }, 1e-5, 2.9999, 11, 11 },
  };
  static const SqVector normals[] = { { 0, 0, 1 }, { 0, 0, -1 }, { 1, 0, 0 }, { 0, 0, 0 } };
  const Thing things[] = {
    block (-0.2, -0.2, 0.3, 0.4, 1, 2),
    block (-0.2, -0.2, 0.3, 0.4, 2.5, 3.5),
    sheet (sq_point (0, 0, 3), sq_vector (0.2, 0, 0), sq_vector (0, 0.2, 0), 0.5),
    sheet (sq_point (0, 0, 3), sq_vector (0.2, 0, 0), sq_vector (0, 0, 0.2), 0.0),
  };
  for (gsize g = 0; g < G_N_ELEMENTS (grids); g++)
    for (gsize k = 0; k < 2 * G_N_ELEMENTS (normals); k++) {
      Setup setup;
      float share[11];
      const SqRowReads reads = { .normal = normals[k / 2], .dome = k % 2 };
      setup_init (&setup, &overhead, &grids[g]);
      for (gsize i = 0; i < G_N_ELEMENTS (things); i++)
        setup_add (&setup, &things[i]);
      for (int row = 0; row < 11; row++)
        shares (&setup, &reads, row, 0, 11, share);
      setup_clear (&setup);
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/open share/all hidden or nothing, exactly", test_all_or_nothing);
  g_test_add_func ("/open share/halves, quarters and nets multiply", test_halves);
  g_test_add_func ("/open share/no light between two that touch", test_no_leak);
  g_test_add_func ("/open share/solids that touch or cross the lamp", test_at_the_lamp);
  g_test_add_func ("/open share/forty at once", test_crowd);
  g_test_add_func ("/open share/points in line with sheets and sides", test_in_line);
  g_test_add_func ("/open share/a face of no size", test_no_size);
  g_test_add_func ("/open share/a point alone or in a row", test_alone_or_in_a_row);
#ifdef SQ_HAVE_AVX2
  g_test_add_func ("/open share/the same bits on every processor", test_same_bits);
#endif
  g_test_add_func ("/open share/never not a number", test_never_nan);
  return g_test_run ();
}
