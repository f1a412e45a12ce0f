/* cells.c: sums over what is seen of a face whose light is not Lambertian, finely enough */
#include "light/cells.h"

/* What is seen may be halved this often: four thousand cells of a square face. */
#define MOST_HALVINGS 12
/* Whose two second moments differ by less, of their sum, has no long axis. */
#define ROUND 1e-9

typedef struct {
  SqVector middle;
  double limit_square; /* of a cell's size to its distance, squared */
  SqFaceParts *scratch;
  SqCellsFunc func;
  gconstpointer data;
  double total;
  SqFaceSpots spots;
} Sum;

typedef struct {
  double area_m2; /* times what passes */
  SqFaceSpot centre;
  double cosine, sine;                  /* of the long axis to the right */
  double long_variance, short_variance; /* m², second moments about the centre over the area */
} Moments;

/* Returns: FALSE where there is no area */
static gboolean
moments_of (const SqFaceParts *parts, guint first, guint n, Moments *moments)
{
  /* Times twice the area, about the first corner. */
  SqFaceSpot origin = parts->corners[parts->parts[first].first];
  double twice = 0.0, x = 0.0, y = 0.0, xx = 0.0, xy = 0.0, yy = 0.0;
  for (guint i = first; i < first + n; i++) {
    const SqFacePart *part = &parts->parts[i];
    const SqFaceSpot *corners = sq_face_part_corners (parts, part);
    double bx = corners[part->n - 1].right_m - origin.right_m;
    double by = corners[part->n - 1].up_m - origin.up_m;
    for (guint k = 0; k < part->n; k++) {
      double cx = corners[k].right_m - origin.right_m, cy = corners[k].up_m - origin.up_m;
      double triangle = (bx * cy - by * cx) * part->passes, sx = bx + cx, sy = by + cy;
      twice += triangle;
      x += triangle * sx;
      y += triangle * sy;
      xx += triangle * (sx * sx - bx * cx);
      yy += triangle * (sy * sy - by * cy);
      xy += triangle * (sx * sy + bx * by + cx * cy);
      bx = cx;
      by = cy;
    }
  }
  if (!(twice > 0.0))
    return FALSE;
  double per = 1.0 / twice;
  x *= per / 3.0;
  y *= per / 3.0;
  xx = xx * per / 6.0 - x * x;
  yy = yy * per / 6.0 - y * y;
  xy = xy * per / 12.0 - x * y;

  double sum = xx + yy, difference = xx - yy;
  double apart = sqrt (difference * difference + 4.0 * xy * xy);
  double along = apart > ROUND * sum ? difference / apart : 1.0; /* cosine of twice the angle */
  double sine = sqrt (MAX (1.0 - along, 0.0) / 2.0);
  *moments = (Moments){
    .area_m2 = twice / 2.0,
    .centre = { origin.right_m + x, origin.up_m + y },
    .cosine = sqrt (MAX (1.0 + along, 0.0) / 2.0),
    .sine = xy < 0.0 ? -sine : sine,
    .long_variance = MAX (sum + apart, 0.0) / 2.0,
    .short_variance = MAX (sum - apart, 0.0) / 2.0,
  };
  return TRUE;
}

static void
flush (Sum *sum)
{
  if (sum->spots.n > 0)
    sum->total += sum->func (&sum->spots, sum->data);
  sum->spots.n = 0;
}

static void
add_four_spots (Sum *sum, const Moments *moments)
{
  SqFaceSpots *spots = &sum->spots;
  if (spots->n + 4 > SQ_MOST_SPOTS)
    flush (sum);
  double far = sqrt (2.0 * moments->long_variance), near = sqrt (2.0 * moments->short_variance);
  double c = moments->cosine, s = moments->sine;
  const double right_m[] = { far * c, -far * c, -near * s, near * s };
  const double up_m[] = { far * s, -far * s, near * c, -near * c };
  for (guint i = 0; i < 4; i++) {
    spots->right_m[spots->n + i] = moments->centre.right_m + right_m[i];
    spots->up_m[spots->n + i] = moments->centre.up_m + up_m[i];
    spots->weight_m2[spots->n + i] = moments->area_m2 / 4.0;
  }
  spots->n += 4;
}

/* Adds to scratch what of some parts lies within the line. Returns: FALSE for no room */
static gboolean
add_half (Sum *sum, const SqFaceParts *parts, guint first, guint n, const SqFaceLine *line)
{
  SqFaceParts *scratch = sum->scratch;
  SqFaceSpot past[2 * SQ_MOST_PART_CORNERS];
  for (guint i = first; i < first + n; i++) {
    const SqFacePart part = parts->parts[i]; /* a copy: both may be the same arrays */
    const SqFaceSpot *corners = sq_face_part_corners (parts, &part);
    guint n_within, n_past;
    if (part.n > SQ_MOST_PART_CORNERS || !sq_face_parts_have_room (scratch))
      return FALSE;
    SqFaceSide side = sq_face_cut (corners, part.n, line, 0.0,
                                   scratch->corners + scratch->n_corners, &n_within, past, &n_past);
    if (side == SQ_FACE_ACROSS)
      sq_face_parts_end (scratch, n_within, part.passes);
    else if (side == SQ_FACE_WITHIN)
      sq_face_parts_add (scratch, corners, part.n, part.passes);
  }
  return TRUE;
}

static void
sum_parts (Sum *sum, const SqFaceParts *parts, guint first, guint n, int halvings)
{
  Moments moments;
  if (n == 0 || !moments_of (parts, first, n, &moments))
    return;
  SqVector centre = sum->middle;
  centre.x += moments.centre.right_m;
  centre.y += moments.centre.up_m;
  /* 12 variances: the square of the side, of a rectangle. */
  if (12.0 * moments.long_variance <= sum->limit_square * sq_vector_dot (centre, centre) ||
      halvings >= MOST_HALVINGS) {
    add_four_spots (sum, &moments);
    return;
  }

  SqFaceParts *scratch = sum->scratch;
  guint first_half = scratch->n_parts, first_corner = scratch->n_corners;
  double c = moments.cosine, s = moments.sine;
  SqFaceLine line = { -(c * moments.centre.right_m + s * moments.centre.up_m), c, s };
  gboolean room = add_half (sum, parts, first, n, &line);
  guint second_half = scratch->n_parts;
  line = (SqFaceLine){ -line.middle_m, -line.right, -line.up };
  room = room && add_half (sum, parts, first, n, &line);
  if (room) {
    guint end = scratch->n_parts;
    sum_parts (sum, scratch, first_half, second_half - first_half, halvings + 1);
    sum_parts (sum, scratch, second_half, end - second_half, halvings + 1);
  } else {
    add_four_spots (sum, &moments); /* thousands of parts: coarsely */
  }
  scratch->n_parts = first_half;
  scratch->n_corners = first_corner;
}

double
sq_cells_sum (const SqFaceParts *parts,
              SqVector middle,
              double limit,
              SqFaceParts *scratch,
              SqCellsFunc func,
              gconstpointer data)
{
  Sum sum;
  sum.middle = middle;
  sum.limit_square = limit * limit;
  sum.scratch = scratch;
  sum.func = func;
  sum.data = data;
  sum.total = 0.0;
  sum.spots.n = 0; /* the rest of it need not be cleared */
  sum_parts (&sum, parts, 0, parts->n_parts, 0);
  flush (&sum);
  return sum.total;
}
