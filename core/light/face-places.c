/* face-places.c: places that stand for the whole of a flat face, few or many */
#include "light/face-places.h"

/* A part has as many corners as the face, and at most one more for each time that it was cut. */
#define MOST_CORNERS 48

/* Where the second moments differ by less than this share, the long axis is as good as any: the
 * face's own right is taken, so that rounding does not choose. */
#define ROUND 1e-9

typedef struct {
  double right, up;
} Spot;

typedef struct {
  Spot corners[MOST_CORNERS];
  guint n;
} Part;

typedef struct {
  double area;
  Spot centre, long_axis;               /* unit length */
  double long_variance, short_variance; /* m² */
} Moments;

typedef struct {
  SqPoint middle;
  SqVector right, up;
  double area;
  SqFacePlaces *places;
} Halving;

/* Area, centre and second moments: sums over the triangles of a fan. */
static Moments
moments_of (const Part *part)
{
  Spot first = part->corners[0], b = { 0, 0 };
  double twice = 0.0, x = 0.0, y = 0.0, xx = 0.0, xy = 0.0, yy = 0.0;
  for (guint i = 1; i < part->n; i++) {
    Spot c = { part->corners[i].right - first.right, part->corners[i].up - first.up };
    double triangle = b.right * c.up - b.up * c.right;
    twice += triangle;
    x += triangle * (b.right + c.right) / 3.0;
    y += triangle * (b.up + c.up) / 3.0;
    xx += triangle * (b.right * b.right + c.right * c.right + b.right * c.right) / 6.0;
    yy += triangle * (b.up * b.up + c.up * c.up + b.up * c.up) / 6.0;
    xy +=
      triangle * (b.right * b.up + c.right * c.up + (b.right * c.up + c.right * b.up) / 2.0) / 6.0;
    b = c;
  }
  if (!(twice > 0.0))
    return (Moments){ .centre = first, .long_axis = { 1, 0 } };
  x /= twice;
  y /= twice;
  xx = xx / twice - x * x;
  yy = yy / twice - y * y;
  xy = xy / twice - x * y;

  /* The long axis, at half the angle of (xx - yy, 2 xy). */
  double mean = (xx + yy) / 2.0, difference = (xx - yy) / 2.0;
  double apart = sqrt (difference * difference + xy * xy);
  Spot axis = { 1.0, 0.0 };
  if (apart > ROUND * mean) {
    axis = difference > 0.0 ? (Spot){ apart + difference, xy } : (Spot){ xy, apart - difference };
    double length = sqrt (axis.right * axis.right + axis.up * axis.up);
    axis = (Spot){ axis.right / length, axis.up / length };
  }
  return (Moments){
    .area = twice / 2.0,
    .centre = { first.right + x, first.up + y },
    .long_axis = axis,
    .long_variance = MAX (mean + apart, 0.0),
    .short_variance = MAX (mean - apart, 0.0),
  };
}

static void
add_place (const Halving *halving, SqFaceLevel *level, Spot spot, double area)
{
  SqPoint at = sq_point_along (halving->middle, halving->right, spot.right);
  level->places[level->n++] = (SqFacePlace){
    .at = sq_point_along (at, halving->up, spot.up),
    .share = area / halving->area,
  };
}

static void
add_part (const Halving *halving, SqFaceLevel *level, const Moments *moments)
{
  double far = sqrt (2.0 * moments->long_variance), near = sqrt (2.0 * moments->short_variance);
  Spot centre = moments->centre, axis = moments->long_axis;
  const Spot away[] = { { axis.right * far, axis.up * far },
                        { -axis.up * near, axis.right * near } };
  for (int i = 0; i < 4; i++) {
    double sign = i % 2 ? -1.0 : 1.0;
    Spot spot = { centre.right + sign * away[i / 2].right, centre.up + sign * away[i / 2].up };
    add_place (halving, level, spot, moments->area / 4.0);
  }
  level->size_m = MAX (level->size_m, sqrt (12.0 * moments->long_variance));
}

/* What lies on the side of @centre to which @axis times @side points. */
static Part
half_of (const Part *part, Spot centre, Spot axis, double side)
{
  Part half = { .n = 0 };
  for (guint i = 0; i < part->n; i++) {
    Spot here = part->corners[i], next = part->corners[i + 1 < part->n ? i + 1 : 0];
    double a = side * (axis.right * (here.right - centre.right) + axis.up * (here.up - centre.up));
    double b = side * (axis.right * (next.right - centre.right) + axis.up * (next.up - centre.up));
    if (a >= 0.0)
      half.corners[half.n++] = here;
    if ((a > 0.0 && b < 0.0) || (a < 0.0 && b > 0.0)) {
      double t = a / (a - b);
      half.corners[half.n++] =
        (Spot){ here.right + (next.right - here.right) * t, here.up + (next.up - here.up) * t };
    }
  }
  return half;
}

static void
halve (const Halving *halving, const Part *part, guint depth)
{
  Moments moments = moments_of (part);
  add_part (halving, &halving->places->levels[depth], &moments);
  if (depth + 1 >= halving->places->n_levels)
    return;
  for (int side = 1; side >= -1; side -= 2) {
    Part half = half_of (part, moments.centre, moments.long_axis, side);
    halve (halving, &half, depth + 1);
  }
}

SqFacePlaces *
sq_face_places_new (SqPoint middle,
                    SqVector right,
                    SqVector up,
                    const double *right_m,
                    const double *up_m,
                    guint n,
                    double finest_m)
{
  g_return_val_if_fail (n >= 3 && n + SQ_FACE_HALVINGS <= MOST_CORNERS, NULL);
  Part whole = { .n = n };
  for (guint i = 0; i < n; i++)
    whole.corners[i] = (Spot){ right_m[i], up_m[i] };
  Moments moments = moments_of (&whole);
  double size_m = sqrt (12.0 * moments.long_variance);
  SqFacePlaces *places = g_new0 (SqFacePlaces, 1);
  g_atomic_ref_count_init (&places->references);
  /* Two halvings halve the size. */
  places->n_levels = 1;
  while (places->n_levels <= SQ_FACE_HALVINGS && size_m > finest_m) {
    places->n_levels++;
    size_m *= G_SQRT2 / 2.0;
  }
  places->levels = g_new0 (SqFaceLevel, places->n_levels);
  for (guint i = 0; i < places->n_levels; i++)
    places->levels[i].places = g_new (SqFacePlace, 4u << i);
  const Halving halving = { middle, right, up, moments.area, places };
  halve (&halving, &whole, 0);
  return places;
}

SqFacePlaces *
sq_face_places_ref (SqFacePlaces *places)
{
  g_atomic_ref_count_inc (&places->references);
  return places;
}

void
sq_face_places_unref (SqFacePlaces *places)
{
  if (!places || !g_atomic_ref_count_dec (&places->references))
    return;
  for (guint i = 0; i < places->n_levels; i++)
    g_free (places->levels[i].places);
  g_free (places->levels);
  g_free (places);
}
