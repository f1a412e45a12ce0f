/* cells.c: sums over a flat face whose light is not Lambertian, in cells that are fine enough */
#include "light/cells.h"

/* A part may be halved this often: four thousand cells of a square face. */
#define MOST_HALVINGS 12
/* Polygons with more corners than this are cut across first, so that all fits in fixed space. */
#define MOST_CORNERS 40
#define SPACE (MOST_CORNERS + MOST_HALVINGS + 2)

typedef struct {
  SqPoint at;
  double limit; /* of a part's size to its distance */
  SqCellFunc func;
  gconstpointer data;
} Sum;

typedef struct {
  double area_m2;
  SqPoint centre;
  SqVector long_axis, short_axis;       /* unit length, in the polygon's plane */
  double long_variance, short_variance; /* m², second moments about the centre over the area */
} Moments;

/* Returns: FALSE for a polygon of no area */
static gboolean
moments_of (const SqPoint *corners, guint n, Moments *moments)
{
  SqVector area = { 0 };
  for (guint i = 1; i + 1 < n; i++)
    area = sq_vector_sum (area, sq_vector_cross (sq_vector_between (corners[0], corners[i]),
                                                 sq_vector_between (corners[0], corners[i + 1])));
  double twice = sq_vector_length (area);
  if (!(twice > 0.0))
    return FALSE;
  SqVector normal = sq_vector_scale (area, 1.0 / twice);
  SqVector across = sq_vector_unit (
    sq_vector_cross (normal, fabs (normal.z) < 0.9 ? sq_vector (0, 0, 1) : sq_vector (1, 0, 0)));
  SqVector up = sq_vector_cross (normal, across);

  double x = 0.0, y = 0.0, xx = 0.0, xy = 0.0, yy = 0.0; /* times twice the area */
  double bx = 0.0, by = 0.0;
  for (guint i = 1; i < n; i++) {
    SqVector side = sq_vector_between (corners[0], corners[i]);
    double cx = sq_vector_dot (side, across), cy = sq_vector_dot (side, up);
    double triangle = bx * cy - by * cx;
    x += triangle * (bx + cx) / 3.0;
    y += triangle * (by + cy) / 3.0;
    xx += triangle * (bx * bx + cx * cx + bx * cx) / 6.0;
    yy += triangle * (by * by + cy * cy + by * cy) / 6.0;
    xy += triangle * (bx * by + cx * cy + (bx * cy + cx * by) / 2.0) / 6.0;
    bx = cx;
    by = cy;
  }
  x /= twice;
  y /= twice;
  xx = xx / twice - x * x;
  yy = yy / twice - y * y;
  xy = xy / twice - x * y;

  double angle = atan2 (2.0 * xy, xx - yy) / 2.0, c = cos (angle), s = sin (angle);
  *moments = (Moments){
    .area_m2 = twice / 2.0,
    .centre = sq_point_along (sq_point_along (corners[0], across, x), up, y),
    .long_axis = sq_vector_sum (sq_vector_scale (across, c), sq_vector_scale (up, s)),
    .short_axis = sq_vector_sum (sq_vector_scale (up, c), sq_vector_scale (across, -s)),
    .long_variance = MAX (xx * c * c + yy * s * s + 2.0 * xy * s * c, 0.0),
    .short_variance = MAX (xx * s * s + yy * c * c - 2.0 * xy * s * c, 0.0),
  };
  return TRUE;
}

static double
four_places (const Sum *sum, const Moments *moments)
{
  double far = sqrt (2.0 * moments->long_variance), near = sqrt (2.0 * moments->short_variance);
  const SqPoint places[] = {
    sq_point_along (moments->centre, moments->long_axis, far),
    sq_point_along (moments->centre, moments->long_axis, -far),
    sq_point_along (moments->centre, moments->short_axis, near),
    sq_point_along (moments->centre, moments->short_axis, -near),
  };
  double total = 0.0;
  for (gsize i = 0; i < G_N_ELEMENTS (places); i++)
    total += sum->func (places[i], sum->data);
  return total * moments->area_m2 / G_N_ELEMENTS (places);
}

static guint
half_of (const SqPoint *corners, guint n, SqPoint centre, SqVector axis, SqPoint *half)
{
  guint kept = 0;
  for (guint i = 0; i < n; i++) {
    SqPoint next = corners[i + 1 < n ? i + 1 : 0];
    double a = sq_vector_dot (axis, sq_vector_between (centre, corners[i]));
    double b = sq_vector_dot (axis, sq_vector_between (centre, next));
    if (a >= 0.0)
      half[kept++] = corners[i];
    if ((a > 0.0 && b < 0.0) || (a < 0.0 && b > 0.0))
      half[kept++] = sq_point_along (corners[i], sq_vector_between (corners[i], next), a / (a - b));
  }
  return kept;
}

static double
sum_part (const Sum *sum, const SqPoint *corners, guint n, int halvings)
{
  Moments moments;
  if (n < 3 || !moments_of (corners, n, &moments))
    return 0.0;
  double size_m = sqrt (12.0 * moments.long_variance); /* the side, of a rectangle */
  double distance_m = sq_vector_length (sq_vector_between (sum->at, moments.centre));
  if (size_m <= sum->limit * distance_m || halvings >= MOST_HALVINGS)
    return four_places (sum, &moments);
  SqPoint half[SPACE];
  SqVector back = sq_vector_scale (moments.long_axis, -1.0);
  guint kept = half_of (corners, n, moments.centre, moments.long_axis, half);
  double total = sum_part (sum, half, kept, halvings + 1);
  kept = half_of (corners, n, moments.centre, back, half);
  return total + sum_part (sum, half, kept, halvings + 1);
}

double
sq_cells_sum (const SqPoint *corners,
              guint n,
              SqPoint at,
              double detail_rad,
              SqCellFunc func,
              gconstpointer data)
{
  const Sum sum = { at, MIN (1.0 / 3.0, detail_rad / 2.0), func, data };
  if (n <= MOST_CORNERS)
    return sum_part (&sum, corners, n, 0);
  double total = 0.0;
  SqPoint fan[MOST_CORNERS];
  for (guint i = 1; i + 1 < n;) {
    guint take = MIN (n - i, (guint)MOST_CORNERS - 1);
    fan[0] = corners[0];
    for (guint k = 0; k < take; k++)
      fan[k + 1] = corners[i + k];
    total += sum_part (&sum, fan, take + 1, 0);
    i += take - 1;
  }
  return total;
}
