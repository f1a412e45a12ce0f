/* area.c: light from a flat, evenly bright, Lambertian polygon, by closed forms */
#include "light/area.h"
#include "light/steady-math.h"

/* Where a polygon spans less than this, in radians, it is taken as a point: the error is about a
 * square of it, and that of the sums below no longer smaller. */
#define SMALL 1e-4

/* Solid angle and direction of a polygon that looks small. Returns: FALSE if it does not */
static gboolean
looks_small (const SqVector *toward, guint n, double *solid_angle, SqVector *direction)
{
  SqVector first = toward[0], sum = { 0 }, area = { 0 }, last = { 0 };
  double limit = SMALL * SMALL * sq_vector_dot (first, first);
  for (guint i = 1; i < n; i++) {
    SqVector side = sq_vector (toward[i].x - first.x, toward[i].y - first.y, toward[i].z - first.z);
    if (sq_vector_dot (side, side) > limit)
      return FALSE;
    area = sq_vector_sum (area, sq_vector_cross (last, side));
    sum = sq_vector_sum (sum, side);
    last = side;
  }
  SqVector middle = sq_vector_sum (first, sq_vector_scale (sum, 1.0 / n));
  double square = sq_vector_dot (middle, middle);
  if (!(square > 0.0))
    return FALSE;
  *direction = sq_vector_scale (middle, 1.0 / sqrt (square));
  *solid_angle = fabs (sq_vector_dot (area, *direction)) / 2.0 / square;
  return TRUE;
}

/* Sum of β · (@along · Γ) over the edges: the angle that each spans, times the share along @along
 * of its plane's unit normal. */
static double
contour (const SqVector *toward, guint n, SqVector along)
{
  double lengths[2 * SQ_AREA_MOST_CORNERS], dots[2 * SQ_AREA_MOST_CORNERS];
  double heights[2 * SQ_AREA_MOST_CORNERS];
  for (guint i = 0; i < n; i++) {
    SqVector a = toward[i], b = toward[i + 1 < n ? i + 1 : 0], normal = sq_vector_cross (a, b);
    lengths[i] = sq_vector_length (normal);
    dots[i] = sq_vector_dot (a, b);
    heights[i] = sq_vector_dot (normal, along);
  }
  for (guint i = 0; i < n; i++) {
    double length = lengths[i];
    heights[i] *= sq_steady_atan2 (length, dots[i]) / (length > 0.0 ? length : 1.0);
  }
  double sum = 0.0;
  for (guint i = 0; i < n; i++)
    sum += heights[i];
  return sum;
}

/* What of a polygon lies above the horizon. */
static guint
above_horizon (const SqVector *toward, guint n, SqVector normal, SqVector *above)
{
  guint kept = 0;
  double height = sq_vector_dot (toward[0], normal);
  for (guint i = 0; i < n; i++) {
    SqVector next = toward[i + 1 < n ? i + 1 : 0];
    double next_height = sq_vector_dot (next, normal);
    if (height >= 0.0)
      above[kept++] = toward[i];
    if ((height > 0.0 && next_height < 0.0) || (height < 0.0 && next_height > 0.0)) {
      double t = height / (height - next_height);
      above[kept++] =
        sq_vector_sum (sq_vector_scale (toward[i], 1.0 - t), sq_vector_scale (next, t));
    }
    height = next_height;
  }
  return kept;
}

double
sq_area_flat (const SqVector *toward, guint n, SqVector normal)
{
  double solid_angle;
  SqVector direction;
  if (n < 3 || n > SQ_AREA_MOST_CORNERS)
    return 0.0;
  if (looks_small (toward, n, &solid_angle, &direction))
    return solid_angle * MAX (sq_vector_dot (direction, normal), 0.0);
  SqVector above[2 * SQ_AREA_MOST_CORNERS];
  guint n_above = above_horizon (toward, n, normal, above);
  return fabs (contour (above, n_above, normal)) / 2.0;
}

static double
triangle_solid_angle (SqVector a, SqVector b, SqVector c)
{
  double la = sq_vector_length (a), lb = sq_vector_length (b), lc = sq_vector_length (c);
  double volume = sq_vector_dot (a, sq_vector_cross (b, c));
  double down = la * lb * lc + sq_vector_dot (a, b) * lc + sq_vector_dot (a, c) * lb +
                sq_vector_dot (b, c) * la;
  return 2.0 * sq_steady_atan2 (volume, down);
}

double
sq_area_dome (const SqVector *toward, guint n, SqVector axis)
{
  double solid_angle;
  SqVector direction;
  if (n < 3 || n > SQ_AREA_MOST_CORNERS)
    return 0.0;
  if (looks_small (toward, n, &solid_angle, &direction))
    return solid_angle * (1.0 + sq_vector_dot (direction, axis)) / 2.0;

  SqVector area = { 0 };
  solid_angle = 0.0;
  for (guint i = 1; i + 1 < n; i++) {
    solid_angle += triangle_solid_angle (toward[0], toward[i], toward[i + 1]);
    SqVector b =
      sq_vector (toward[i].x - toward[0].x, toward[i].y - toward[0].y, toward[i].z - toward[0].z);
    SqVector c = sq_vector (toward[i + 1].x - toward[0].x, toward[i + 1].y - toward[0].y,
                            toward[i + 1].z - toward[0].z);
    area = sq_vector_sum (area, sq_vector_cross (b, c));
  }
  /* The vector illuminance points toward the polygon, whichever way round that was given. */
  double along = contour (toward, n, axis) / 2.0;
  if (sq_vector_dot (area, toward[0]) < 0.0)
    along = -along;
  return (fabs (solid_angle) + along) / 2.0;
}
