/* cells.c: sums over what is seen of a face whose light is not Lambertian, finely enough */
#include "light/cells.h"

#include <string.h>

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

/* Sums over triangles from one origin to the edges, times twice their area. */
typedef struct {
  double twice, x, y, xx, xy, yy;
} Sums;

/* Those to the edges from @before through the corners from number @from on. */
static inline void
add_triangles (Sums *sums,
               SqFaceSpot origin,
               SqFaceSpot before,
               const SqFaceSpot *corners,
               guint from,
               guint n,
               double passes)
{
  Sums s = *sums;
  double bx = before.right_m - origin.right_m, by = before.up_m - origin.up_m;
  for (guint k = from; k < n; k++) {
    double cx = corners[k].right_m - origin.right_m, cy = corners[k].up_m - origin.up_m;
    double triangle = (bx * cy - by * cx) * passes, sx = bx + cx, sy = by + cy;
    s.twice += triangle;
    s.x += triangle * sx;
    s.y += triangle * sy;
    s.xx += triangle * (sx * sx - bx * cx);
    s.yy += triangle * (sy * sy - by * cy);
    s.xy += triangle * (sx * sy + bx * by + cx * cy);
    bx = cx;
    by = cy;
  }
  *sums = s;
}

/* Returns: FALSE where there is no area */
static gboolean
moments_of (const SqFaceParts *parts, guint first, guint n, Moments *moments)
{
  const SqFacePart *part = &parts->parts[first];
  const SqFaceSpot *corners = sq_face_part_corners (parts, part);
  const SqFaceSpot origin = corners[0];
  Sums sums = { 0 };
  add_triangles (&sums, origin, corners[1], corners, 2, part->n, part->passes);
  for (guint i = 1; i < n; i++) {
    part = &parts->parts[first + i];
    corners = sq_face_part_corners (parts, part);
    add_triangles (&sums, origin, corners[part->n - 1], corners, 0, part->n, part->passes);
  }
  if (!(sums.twice > 0.0))
    return FALSE;
  double per = 1.0 / sums.twice;
  double x = sums.x * (per / 3.0), y = sums.y * (per / 3.0);
  double xx = sums.xx * per / 6.0 - x * x;
  double yy = sums.yy * per / 6.0 - y * y;
  double xy = sums.xy * per / 12.0 - x * y;

  double sum = xx + yy, difference = xx - yy;
  double apart = sqrt (difference * difference + 4.0 * xy * xy);
  double along = apart > ROUND * sum ? difference / apart : 1.0; /* cosine of twice the angle */
  double sine = sqrt (MAX (1.0 - along, 0.0) / 2.0);
  *moments = (Moments){
    .area_m2 = sums.twice / 2.0,
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

/* Cuts @n parts by a line, into scratch: what is within it from the next part on, what is past it
 * @n parts behind that. Parts which the line leaves whole keep their corners where they are, if
 * that is in scratch. Returns: FALSE for no room */
static gboolean
halve (Sum *sum,
       const SqFaceParts *parts,
       guint first,
       guint n,
       const SqFaceLine *line,
       guint *n_within,
       guint *n_past)
{
  SqFaceParts *scratch = sum->scratch;
  SqFacePart *within = scratch->parts + scratch->n_parts, *past = within + n;
  if (n > (scratch->most_parts - scratch->n_parts) / 2)
    return FALSE;
  *n_within = *n_past = 0;
  for (guint i = first; i < first + n; i++) {
    SqFacePart part = parts->parts[i];
    const SqFaceSpot *corners = sq_face_part_corners (parts, &part);
    if (part.n > SQ_MOST_PART_CORNERS || scratch->n_corners + 4 * part.n > scratch->most_corners)
      return FALSE;
    guint at = scratch->n_corners, past_at = at + 2 * part.n, n_in, n_out;
    SqFaceSide side = sq_face_cut (corners, part.n, line, 0.0, scratch->corners + at, &n_in,
                                   scratch->corners + past_at, &n_out);
    if (side == SQ_FACE_ACROSS) {
      within[(*n_within)++] = (SqFacePart){ at, n_in, part.passes };
      past[(*n_past)++] = (SqFacePart){ past_at, n_out, part.passes };
      scratch->n_corners = past_at + n_out;
      continue;
    }
    if (parts->corners != scratch->corners) {
      memcpy (scratch->corners + at, corners, part.n * sizeof *corners);
      part.first = at;
      scratch->n_corners += part.n;
    }
    if (side == SQ_FACE_WITHIN)
      within[(*n_within)++] = part;
    else
      past[(*n_past)++] = part;
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
  guint first_half = scratch->n_parts, first_corner = scratch->n_corners, n_within, n_past;
  double c = moments.cosine, s = moments.sine;
  const SqFaceLine line = { -(c * moments.centre.right_m + s * moments.centre.up_m), c, s };
  if (halve (sum, parts, first, n, &line, &n_within, &n_past)) {
    scratch->n_parts = first_half + 2 * n;
    sum_parts (sum, scratch, first_half, n_within, halvings + 1);
    sum_parts (sum, scratch, first_half + n, n_past, halvings + 1);
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
