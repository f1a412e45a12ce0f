/* test-contour.c: contours lie where the light is what they say */
#include "draw/contour.h"

#define LAMP_CD 1000.0
#define LAMP_HEIGHT_M 2.0
#define STEP_M 0.05
#define RADIUS_TOLERANCE 0.01 /* relative */

/* Level light of a point lamp over the middle: E = I h / (h² + r²)^1.5 (inverse square and cosine).
 */
static SqGrid *
lamp_grid (int n)
{
  double half_m = (n - 1) * STEP_M / 2.0;
  SqGrid *grid = sq_grid_new (n, n, (SqPlace){ -half_m, -half_m }, STEP_M);
  for (int j = 0; j < n; j++)
    for (int i = 0; i < n; i++) {
      double x = -half_m + i * STEP_M, y = -half_m + j * STEP_M;
      double r2 = x * x + y * y + LAMP_HEIGHT_M * LAMP_HEIGHT_M;
      *sq_grid_at (grid, i, j) = log2 (LAMP_CD * LAMP_HEIGHT_M / pow (r2, 1.5));
    }
  return grid;
}

/* The same, solved for r. */
static double
radius_m (double lux)
{
  return sqrt (pow (LAMP_CD * LAMP_HEIGHT_M / lux, 2.0 / 3.0) - LAMP_HEIGHT_M * LAMP_HEIGHT_M);
}

static const SqContour *
contour_at (const GPtrArray *contours, guint n)
{
  return g_ptr_array_index (contours, n);
}

static SqPlace
point_at (const SqContour *contour, guint n)
{
  return g_array_index (contour->points, SqPlace, n);
}

/* By the shoelace formula. */
static double
area_m2 (const SqContour *contour)
{
  double sum = 0.0;
  for (guint k = 0; k < contour->points->len; k++) {
    SqPlace a = point_at (contour, k);
    SqPlace b = point_at (contour, (k + 1) % contour->points->len);
    sum += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return fabs (sum) / 2.0;
}

static void
test_circles (void)
{
  const double levels_lux[] = { 16, 32, 64, 128, 200 };
  g_autoptr (SqGrid) grid = lamp_grid (201);
  for (guint k = 0; k < G_N_ELEMENTS (levels_lux); k++) {
    g_autoptr (GPtrArray) contours = sq_contours (grid, log2 (levels_lux[k]));
    double r_m = radius_m (levels_lux[k]);
    g_assert_cmpuint (contours->len, ==, 1);
    const SqContour *circle = contour_at (contours, 0);
    g_assert_true (circle->closed);
    for (guint n = 0; n < circle->points->len; n++) {
      SqPlace p = point_at (circle, n);
      g_assert_cmpfloat_with_epsilon (hypot (p.x_m, p.y_m), r_m, RADIUS_TOLERANCE * r_m);
    }
    g_assert_cmpfloat_with_epsilon (sq_contour_length_m (circle), 2.0 * G_PI * r_m,
                                    RADIUS_TOLERANCE * 2.0 * G_PI * r_m);
  }
}

/* Nothing is brighter than under the lamp: I / h². */
static void
test_nothing (void)
{
  g_autoptr (SqGrid) grid = lamp_grid (41);
  double peak = LAMP_CD / (LAMP_HEIGHT_M * LAMP_HEIGHT_M);
  g_autoptr (GPtrArray) above = sq_contours (grid, log2 (1.01 * peak));
  g_autoptr (GPtrArray) below = sq_contours (grid, log2 (1e-3));
  g_assert_cmpuint (above->len, ==, 0);
  g_assert_cmpuint (below->len, ==, 0);
}

/* A circle wider than the grid is cut into four arcs that end on its border. */
static void
test_border (void)
{
  g_autoptr (SqGrid) grid = lamp_grid (81);
  const double half_m = 2.0, r_m = 2.3;
  double lux = LAMP_CD * LAMP_HEIGHT_M / pow (r_m * r_m + LAMP_HEIGHT_M * LAMP_HEIGHT_M, 1.5);
  g_autoptr (GPtrArray) contours = sq_contours (grid, log2 (lux));
  g_assert_cmpuint (contours->len, ==, 4);
  for (guint k = 0; k < contours->len; k++) {
    const SqContour *arc = contour_at (contours, k);
    SqPlace a = point_at (arc, 0), b = point_at (arc, arc->points->len - 1);
    g_assert_false (arc->closed);
    g_assert_cmpfloat_with_epsilon (MAX (fabs (a.x_m), fabs (a.y_m)), half_m, 1e-9);
    g_assert_cmpfloat_with_epsilon (MAX (fabs (b.x_m), fabs (b.y_m)), half_m, 1e-9);
  }
}

/* One cell, two high corners across from each other. */
static void
test_saddle (void)
{
  static const struct {
    double level;
    gboolean joined; /* the middle, 0.5, holds the high corners together */
  } rows[] = { { 0.4, TRUE }, { 0.5, TRUE }, { 0.6, FALSE } };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SqGrid) grid = sq_grid_new (2, 2, (SqPlace){ 0, 0 }, 1.0);
    *sq_grid_at (grid, 0, 0) = 1.0;
    *sq_grid_at (grid, 1, 1) = 1.0;
    g_autoptr (GPtrArray) contours = sq_contours (grid, rows[k].level);
    g_assert_cmpuint (contours->len, ==, 2);
    for (guint n = 0; n < contours->len; n++) {
      const SqContour *line = contour_at (contours, n);
      g_assert_cmpuint (line->points->len, ==, 2);
      SqPlace a = point_at (line, 0), b = point_at (line, 1);
      double x = (a.x_m + b.x_m) / 2.0, y = (a.y_m + b.y_m) / 2.0;
      /* Each line cuts off one corner: the low ones (x and y on different sides of the
       * middle) where the high ones hold together. */
      gboolean low_corner = (x > 0.5) != (y > 0.5);
      g_assert_cmpint (low_corner, ==, rows[k].joined);
    }
  }
}

static void
test_holes (void)
{
  g_autoptr (SqGrid) grid = lamp_grid (201);
  const double level_lux = 64, hole_m = 0.4;
  double r_m = radius_m (level_lux);
  for (int j = 0; j < grid->rows; j++)
    for (int i = 0; i < grid->columns; i++) {
      double x = grid->first.x_m + i * STEP_M - r_m, y = grid->first.y_m + j * STEP_M;
      if (hypot (x, y) <= hole_m)
        *sq_grid_at (grid, i, j) = NAN;
    }
  g_autoptr (GPtrArray) contours = sq_contours (grid, log2 (level_lux));
  g_assert_cmpuint (contours->len, ==, 1);
  const SqContour *arc = contour_at (contours, 0);
  g_assert_false (arc->closed);
  for (guint n = 0; n < arc->points->len; n++) {
    SqPlace p = point_at (arc, n);
    g_assert_cmpfloat (hypot (p.x_m - r_m, p.y_m), >, hole_m - STEP_M);
  }
  /* What the hole swallows of the circle: an angle of 4 asin (hole / 2r), a cell more or less. */
  double expected = r_m * (2.0 * G_PI - 4.0 * asin (hole_m / (2.0 * r_m)));
  g_assert_cmpfloat_with_epsilon (sq_contour_length_m (arc), expected, 4.0 * STEP_M);
}

static void
test_areas (void)
{
  const double levels_lux[] = { 32, 64, 128 };
  g_autoptr (SqGrid) grid = lamp_grid (201);
  for (guint k = 0; k < G_N_ELEMENTS (levels_lux); k++) {
    g_autoptr (GPtrArray) areas = sq_contour_areas (grid, log2 (levels_lux[k]));
    double r_m = radius_m (levels_lux[k]), expected = G_PI * r_m * r_m;
    g_assert_cmpuint (areas->len, ==, 1);
    g_assert_true (contour_at (areas, 0)->closed);
    g_assert_cmpfloat_with_epsilon (area_m2 (contour_at (areas, 0)), expected,
                                    RADIUS_TOLERANCE * expected);
  }
}

/* All that is lit is the whole grid; a brighter band inside it is cut along the border. */
static void
test_areas_at_the_border (void)
{
  g_autoptr (SqGrid) grid = lamp_grid (81);
  g_autoptr (GPtrArray) all = sq_contour_areas (grid, log2 (1e-3));
  g_assert_cmpuint (all->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (area_m2 (contour_at (all, 0)), 16.0, 1e-9);

  /* A circle of 2.3 m in a square of half 2 m: four segments beyond the sides are missing. */
  const double half_m = 2.0, r_m = 2.3;
  double lux = LAMP_CD * LAMP_HEIGHT_M / pow (r_m * r_m + LAMP_HEIGHT_M * LAMP_HEIGHT_M, 1.5);
  double segment = r_m * r_m * acos (half_m / r_m) - half_m * sqrt (r_m * r_m - half_m * half_m);
  double expected = G_PI * r_m * r_m - 4.0 * segment;
  g_autoptr (GPtrArray) areas = sq_contour_areas (grid, log2 (lux));
  g_assert_cmpuint (areas->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (area_m2 (contour_at (areas, 0)), expected,
                                  RADIUS_TOLERANCE * expected);
}

static void
test_cells (void)
{
  /* One point with a value: a diamond of one step each way. */
  g_autoptr (SqGrid) grid = sq_grid_new (5, 5, (SqPlace){ 0, 0 }, 1.0);
  for (int k = 0; k < 25; k++)
    grid->value[k] = NAN;
  *sq_grid_at (grid, 2, 2) = 7.0;
  g_autoptr (GPtrArray) one = sq_contour_cells (grid);
  g_assert_cmpuint (one->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (area_m2 (contour_at (one, 0)), 2.0, 1e-3);
  /* None at all: nothing. */
  *sq_grid_at (grid, 2, 2) = NAN;
  g_autoptr (GPtrArray) none = sq_contour_cells (grid);
  g_assert_cmpuint (none->len, ==, 0);
}

/* Grids without a cell have no contour, and do no harm. */
static void
test_tiny (void)
{
  for (int columns = 1; columns <= 3; columns++) {
    g_autoptr (SqGrid) grid = sq_grid_new (columns, 1, (SqPlace){ 0, 0 }, 1.0);
    *sq_grid_at (grid, 0, 0) = 1.0;
    g_autoptr (GPtrArray) contours = sq_contours (grid, 0.5);
    g_assert_cmpuint (contours->len, ==, 0);
    sq_grid_smooth (grid, 1.3);
    sq_grid_grow (grid);
  }
}

static void
test_smoothing (void)
{
  g_autoptr (SqGrid) grid = sq_grid_new (21, 9, (SqPlace){ 0, 0 }, 1.0);
  for (int j = 0; j < 9; j++)
    for (int i = 0; i < 21; i++)
      *sq_grid_at (grid, i, j) = i < 10 ? 2.0 : i == 10 ? NAN : 5.0;
  sq_grid_smooth (grid, 1.3);
  /* A wall of NAN holds both sides apart: nothing changes. */
  for (int j = 0; j < 9; j++)
    for (int i = 0; i < 21; i++)
      if (i == 10)
        g_assert_true (isnan (*sq_grid_at (grid, i, j)));
      else
        g_assert_cmpfloat_with_epsilon (*sq_grid_at (grid, i, j), i < 10 ? 2.0 : 5.0, 1e-12);

  /* One bright point spreads as a Gaussian: its neighbour gets exp (-1 / 2 sigma²) of it. */
  const double sigma = 1.3;
  g_autoptr (SqGrid) point = sq_grid_new (31, 31, (SqPlace){ 0, 0 }, 1.0);
  *sq_grid_at (point, 15, 15) = 1.0;
  sq_grid_smooth (point, sigma);
  double top = *sq_grid_at (point, 15, 15);
  g_assert_cmpfloat_with_epsilon (*sq_grid_at (point, 16, 15) / top, exp (-0.5 / (sigma * sigma)),
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (*sq_grid_at (point, 16, 16) / top, exp (-1.0 / (sigma * sigma)),
                                  1e-9);
  double sum = 0.0;
  for (int k = 0; k < 31 * 31; k++)
    sum += point->value[k];
  g_assert_cmpfloat_with_epsilon (sum, 1.0, 1e-9);
}

static void
test_growing (void)
{
  g_autoptr (SqGrid) grid = sq_grid_new (7, 1, (SqPlace){ 0, 0 }, 1.0);
  const double before[] = { 1, NAN, 3, NAN, NAN, NAN, 5 }, after[] = { 1, 2, 3, 3, NAN, 5, 5 };
  for (int i = 0; i < 7; i++)
    *sq_grid_at (grid, i, 0) = before[i];
  sq_grid_grow (grid);
  for (int i = 0; i < 7; i++)
    if (isnan (after[i]))
      g_assert_true (isnan (*sq_grid_at (grid, i, 0)));
    else
      g_assert_cmpfloat (*sq_grid_at (grid, i, 0), ==, after[i]);
}

/* A slope goes on into the wall, so that a slanting contour keeps its course to the very end. */
static void
test_growing_slope (void)
{
  const int n = 9, wall = 6;
  const double across = 0.3, up = 0.4, level = 2.05;
  g_autoptr (SqGrid) grid = sq_grid_new (n, n, (SqPlace){ 0, 0 }, 1.0);
  for (int j = 0; j < n; j++)
    for (int i = 0; i < n; i++)
      *sq_grid_at (grid, i, j) = j < wall ? across * i + up * j : NAN;
  sq_grid_grow (grid);
  for (int i = 0; i < n; i++) {
    g_assert_cmpfloat_with_epsilon (*sq_grid_at (grid, i, wall), across * i + up * wall, 1e-12);
    g_assert_true (isnan (*sq_grid_at (grid, i, wall + 1)));
  }
  g_autoptr (GPtrArray) lines = sq_contours (grid, level);
  g_assert_cmpuint (lines->len, ==, 1);
  for (guint k = 0; k < contour_at (lines, 0)->points->len; k++) {
    SqPlace p = point_at (contour_at (lines, 0), k);
    g_assert_cmpfloat_with_epsilon (across * p.x_m + up * p.y_m, level, 1e-12);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/contour/a lamp's are circles of the right radius", test_circles);
  g_test_add_func ("/contour/none outside the range of values", test_nothing);
  g_test_add_func ("/contour/lines end on the border", test_border);
  g_test_add_func ("/contour/a saddle goes by its middle", test_saddle);
  g_test_add_func ("/contour/lines end at holes", test_holes);
  g_test_add_func ("/contour/areas are those of circles", test_areas);
  g_test_add_func ("/contour/areas close along the border", test_areas_at_the_border);
  g_test_add_func ("/contour/outline of what has values", test_cells);
  g_test_add_func ("/contour/grids without a cell", test_tiny);
  g_test_add_func ("/grid/smoothing stops at walls", test_smoothing);
  g_test_add_func ("/grid/growing into holes", test_growing);
  g_test_add_func ("/grid/growing keeps a slope", test_growing_slope);
  return g_test_run ();
}
