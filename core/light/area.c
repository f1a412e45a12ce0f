/* area.c: light from a flat, evenly bright, Lambertian polygon, by closed forms */
#include "light/area.h"

/* Where a polygon spans less than this, in radians, it is taken as a point: the error is about a
 * square of it, and that of the sums below no longer smaller. */
#define SMALL 1e-4

/* Solid angle and direction of a polygon that looks small. Returns: FALSE if it does not */
static gboolean
looks_small (const SqPoint *corners, guint n, SqPoint at, double *solid_angle, SqVector *toward)
{
  SqVector first = sq_vector_between (at, corners[0]), sum = { 0 }, area = { 0 };
  double limit = SMALL * SMALL * sq_vector_dot (first, first);
  SqVector last = { 0 };
  for (guint i = 1; i < n; i++) {
    SqVector side = sq_vector_between (corners[0], corners[i]);
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
  *toward = sq_vector_scale (middle, 1.0 / sqrt (square));
  *solid_angle = fabs (sq_vector_dot (area, *toward)) / 2.0 / square;
  return TRUE;
}

/* β · Γ of one edge: the angle it spans times the unit normal of its plane. */
static inline SqVector
edge_term (SqVector a, SqVector b)
{
  SqVector normal = sq_vector_cross (a, b);
  double length = sq_vector_length (normal);
  if (!(length > 0.0))
    return (SqVector){ 0 };
  return sq_vector_scale (normal, atan2 (length, sq_vector_dot (a, b)) / length);
}

double
sq_area_flat (const SqPoint *corners, guint n, SqPoint at, SqVector normal)
{
  double solid_angle;
  SqVector toward;
  if (looks_small (corners, n, at, &solid_angle, &toward))
    return solid_angle * MAX (sq_vector_dot (toward, normal), 0.0);

  /* Walks round the corners that are left when the horizon has cut the polygon. */
  SqVector first = { 0 }, last = { 0 };
  gboolean begun = FALSE;
  double sum = 0.0;
  SqVector here = sq_vector_between (at, corners[0]);
  double height = sq_vector_dot (here, normal);
  for (guint i = 0; i < n; i++) {
    SqVector next = sq_vector_between (at, corners[i + 1 < n ? i + 1 : 0]);
    double next_height = sq_vector_dot (next, normal);
    SqVector kept[2];
    int n_kept = 0;
    if (height >= 0.0)
      kept[n_kept++] = here;
    if ((height > 0.0 && next_height < 0.0) || (height < 0.0 && next_height > 0.0)) {
      double t = height / (height - next_height);
      kept[n_kept++] = sq_vector_sum (sq_vector_scale (here, 1.0 - t), sq_vector_scale (next, t));
    }
    for (int k = 0; k < n_kept; k++) {
      if (begun)
        sum += sq_vector_dot (edge_term (last, kept[k]), normal);
      else
        first = kept[k];
      begun = TRUE;
      last = kept[k];
    }
    here = next;
    height = next_height;
  }
  if (begun)
    sum += sq_vector_dot (edge_term (last, first), normal);
  return fabs (sum) / 2.0;
}

static double
triangle_solid_angle (SqVector a, SqVector b, SqVector c)
{
  double la = sq_vector_length (a), lb = sq_vector_length (b), lc = sq_vector_length (c);
  double volume = sq_vector_dot (a, sq_vector_cross (b, c));
  double down = la * lb * lc + sq_vector_dot (a, b) * lc + sq_vector_dot (a, c) * lb +
                sq_vector_dot (b, c) * la;
  return 2.0 * atan2 (volume, down);
}

double
sq_area_dome (const SqPoint *corners, guint n, SqPoint at, SqVector axis)
{
  double solid_angle;
  SqVector toward;
  if (looks_small (corners, n, at, &solid_angle, &toward))
    return solid_angle * (1.0 + sq_vector_dot (toward, axis)) / 2.0;

  SqVector sum = { 0 }, middle = { 0 };
  SqVector first = sq_vector_between (at, corners[0]), last = first;
  solid_angle = 0.0;
  for (guint i = 1; i <= n; i++) {
    SqVector next = i < n ? sq_vector_between (at, corners[i]) : first;
    sum = sq_vector_sum (sum, edge_term (last, next));
    middle = sq_vector_sum (middle, next);
    if (i > 1 && i < n)
      solid_angle += triangle_solid_angle (first, last, next);
    last = next;
  }
  /* The vector illuminance points toward the polygon, whichever way round that was given. */
  double along = sq_vector_dot (sum, axis) / 2.0;
  if (sq_vector_dot (sum, middle) < 0.0)
    along = -along;
  return (fabs (solid_angle) + along) / 2.0;
}
