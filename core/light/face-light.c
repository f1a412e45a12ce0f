/* face-light.c: what a receptor reads of parts of a lamp's face */
#include "light/face-light.h"
#include "light/area.h"
#include "light/cells.h"

/* Nearer to a lamp than this, or to its face's plane, is on it. */
#define ON_IT_M 1e-9

/* From every side a ball looks like the disc on which the lines of sight touch it. */
static gboolean
ball_toward (const SqLamp *lamp, SqVector way, SqFacePlane *face)
{
  double distance_m = sq_vector_length (way), radius_m = lamp->width_m / 2.0;
  if (distance_m <= radius_m + ON_IT_M)
    return FALSE;
  SqFrame turned = sq_frame (way, 0.0);
  double sine = radius_m / distance_m, disc_m = radius_m * sqrt (1.0 - sine * sine);
  face->middle = sq_point_along (lamp->fixture->at, turned.forward, radius_m * sine);
  face->right = turned.right;
  face->up = turned.up;
  face->half_right_m = face->half_up_m = disc_m * SQ_ROUND_REACH;
  face->round = TRUE;
  return TRUE;
}

static gboolean
tube_toward (const SqLamp *lamp, SqVector way, SqFacePlane *face)
{
  SqVector axis = lamp->frame.right;
  SqVector aside = sq_vector_sum (way, sq_vector_scale (axis, -sq_vector_dot (way, axis)));
  if (sq_vector_length (aside) <= lamp->height_m / 2.0 + ON_IT_M)
    return FALSE;
  face->right = axis;
  face->up = sq_vector_cross (axis, sq_vector_unit (aside));
  face->half_right_m = lamp->width_m / 2.0;
  face->half_up_m = lamp->height_m / 2.0;
  return TRUE;
}

static gboolean
flat_toward (const SqLamp *lamp, SqVector way, SqFacePlane *face)
{
  face->right = lamp->frame.right;
  face->up = lamp->frame.up;
  face->round = lamp->n_face == SQ_DISC_SIDES;
  double reach = face->round ? SQ_ROUND_REACH : 1.0;
  face->half_right_m = lamp->width_m / 2.0 * reach;
  face->half_up_m = lamp->height_m / 2.0 * reach;
  return sq_vector_dot (way, lamp->frame.forward) > ON_IT_M;
}

gboolean
sq_lamp_face_toward (const SqLamp *lamp, SqPoint from, SqFacePlane *face)
{
  SqVector way = sq_vector_between (lamp->fixture->at, from);
  *face = (SqFacePlane){ .middle = lamp->fixture->at };
  switch (lamp->shaped) {
  case SQ_SHAPED_POINT:
    return sq_vector_length (way) > ON_IT_M;
  case SQ_SHAPED_FLAT:
    return flat_toward (lamp, way, face);
  case SQ_SHAPED_BALL:
    return ball_toward (lamp, way, face);
  case SQ_SHAPED_TUBE:
    return tube_toward (lamp, way, face);
  case SQ_SHAPED_NOT:
  default:
    return FALSE;
  }
}

/* The face as it lies from the receptor: right, up, and away along its normal. */
typedef struct {
  const SqLamp *lamp;
  gboolean dome;
  SqVector normal;             /* of the receptor */
  SqVector middle;             /* of the face; away is more than 0 */
  SqVector right, up, forward; /* the lamp's own frame */
} Facing;

static SqVector
turned (const SqFacePlane *face, SqVector away, SqVector v)
{
  return sq_vector (sq_vector_dot (v, face->right), sq_vector_dot (v, face->up),
                    sq_vector_dot (v, away));
}

static void
facing_init (Facing *facing,
             const SqLamp *lamp,
             const SqReceptor *receptor,
             const SqFacePlane *face)
{
  SqVector way = sq_vector_between (receptor->at, face->middle);
  SqVector away = sq_vector_cross (face->right, face->up);
  if (sq_vector_dot (way, away) < 0.0)
    away = sq_vector_scale (away, -1.0);
  *facing = (Facing){
    .lamp = lamp,
    .dome = receptor->dome,
    .normal = turned (face, away, receptor->normal),
    .middle = turned (face, away, way),
    .right = turned (face, away, lamp->frame.right),
    .up = turned (face, away, lamp->frame.up),
    .forward = turned (face, away, lamp->frame.forward),
  };
}

/* Candela per unit of luminance, times what of the light comes through. */
static double
sum_even_parts (const Facing *facing, const SqFaceParts *parts)
{
  SqVector toward[SQ_AREA_MOST_CORNERS];
  double sum = 0.0;
  for (guint i = 0; i < parts->n_parts; i++) {
    const SqFacePart *part = &parts->parts[i];
    const SqFaceSpot *corners = sq_face_part_corners (parts, part);
    for (guint k = 0; k < part->n; k++)
      toward[k] = sq_vector (facing->middle.x + corners[k].right_m,
                             facing->middle.y + corners[k].up_m, facing->middle.z);
    sum += part->passes * (facing->dome ? sq_area_dome (toward, part->n, facing->normal)
                                        : sq_area_flat (toward, part->n, facing->normal));
  }
  return sum;
}

/* A SqCellsFunc: candela of the whole lamp as if all of it stood at a spot, over the distance
 * squared, as the receptor reads it. */
static double
sum_spots (const SqFaceSpots *spots, gconstpointer data)
{
  const Facing *facing = data;
  double x[SQ_MOST_SPOTS], y[SQ_MOST_SPOTS], z[SQ_MOST_SPOTS];
  double weight[SQ_MOST_SPOTS], candela[SQ_MOST_SPOTS];
  SqVector normal = facing->normal, right = facing->right, up = facing->up,
           forward = facing->forward;
  double base = facing->dome ? 0.5 : 0.0, slope = facing->dome ? 0.5 : 1.0;
  for (guint i = 0; i < spots->n; i++) {
    SqVector way = sq_vector (facing->middle.x + spots->right_m[i],
                              facing->middle.y + spots->up_m[i], facing->middle.z);
    double square = sq_vector_dot (way, way), back = -1.0 / sqrt (square);
    double response = base - slope * back * sq_vector_dot (normal, way);
    x[i] = back * sq_vector_dot (right, way);
    y[i] = back * sq_vector_dot (up, way);
    z[i] = back * sq_vector_dot (forward, way);
    weight[i] = spots->weight_m2[i] * MAX (response, 0.0) / square;
    if (facing->lamp->shaped == SQ_SHAPED_BALL)
      weight[i] *= -back * facing->middle.z;
  }
  sq_lamp_candela (facing->lamp, x, y, z, spots->n, candela);
  double sum = 0.0;
  for (guint i = 0; i < spots->n; i++)
    sum += weight[i] * candela[i];
  return sum;
}

/* What of the parts is above the receptor's horizon. */
static void
cut_by_horizon (const Facing *facing, const SqFaceParts *parts, SqFaceParts *above)
{
  SqVector normal = facing->normal;
  const SqFaceLine below = { -sq_vector_dot (normal, facing->middle), -normal.x, -normal.y };
  SqFaceSpot past[2 * SQ_MOST_PART_CORNERS];
  for (guint i = 0; i < parts->n_parts; i++) {
    const SqFacePart *part = &parts->parts[i];
    const SqFaceSpot *corners = sq_face_part_corners (parts, part);
    guint n, n_past;
    if (!sq_face_parts_have_room (above))
      break;
    SqFaceSide side = sq_face_cut (corners, part->n, &below, 0.0, above->corners + above->n_corners,
                                   &n, past, &n_past);
    if (side == SQ_FACE_ACROSS)
      sq_face_parts_end (above, n, part->passes);
    else if (side == SQ_FACE_WITHIN)
      sq_face_parts_add (above, corners, part->n, part->passes);
  }
}

static double
sum_uneven_parts (const Facing *facing,
                  const SqFacePlane *face,
                  const SqFaceParts *parts,
                  SqFaceParts *scratch)
{
  double least = sq_vector_dot (facing->normal, facing->middle) -
                 fabs (facing->normal.x) * face->half_right_m -
                 fabs (facing->normal.y) * face->half_up_m;
  sq_face_parts_empty (scratch);
  if (!facing->dome && least < 0.0) {
    cut_by_horizon (facing, parts, scratch);
    parts = scratch;
  }
  return sq_cells_sum (parts, facing->middle, sq_lamp_part_limit (facing->lamp), scratch, sum_spots,
                       facing);
}

double
sq_face_parts_lux (const SqLamp *lamp,
                   const SqReceptor *receptor,
                   const SqFacePlane *face,
                   const SqFaceParts *parts,
                   SqFaceParts *scratch)
{
  Facing facing;
  facing_init (&facing, lamp, receptor, face);
  if (!lamp->even)
    return sum_uneven_parts (&facing, face, parts, scratch) / sq_lamp_shown_area_m2 (lamp);
  double luminance = lamp->intensity.peak_cd / sq_lamp_shown_area_m2 (lamp) * lamp->passing.factor;
  return sum_even_parts (&facing, parts) * luminance;
}

static double
point_lux (const SqLamp *lamp, const SqReceptor *receptor)
{
  const SqFrame *frame = &lamp->frame;
  SqVector way = sq_vector_between (lamp->fixture->at, receptor->at);
  double square = sq_vector_dot (way, way), per = 1.0 / sqrt (square), candela;
  double x = sq_vector_dot (way, frame->right) * per, y = sq_vector_dot (way, frame->up) * per;
  double z = sq_vector_dot (way, frame->forward) * per;
  double cosine = -sq_vector_dot (way, receptor->normal) * per;
  sq_lamp_candela (lamp, &x, &y, &z, 1, &candela);
  return candela * (receptor->dome ? (1.0 + cosine) / 2.0 : MAX (cosine, 0.0)) / square;
}

/* Room for one convex part and its halves, as often as they are halved. */
#define WHOLE_PARTS 32
#define WHOLE_CORNERS (WHOLE_PARTS * (SQ_FACE_SIDES + 16) + 2 * SQ_MOST_PART_CORNERS)

double
sq_face_whole_lux (const SqLamp *lamp, const SqReceptor *receptor)
{
  SqFacePlane face;
  if (!sq_lamp_face_toward (lamp, receptor->at, &face))
    return 0.0;
  if (lamp->shaped == SQ_SHAPED_POINT)
    return point_lux (lamp, receptor);
  SqFaceSpot corners[SQ_FACE_SIDES], spare_corners[WHOLE_CORNERS];
  SqFacePart all = { 0, sq_face_outline (&face, corners), 1.0 }, spare_parts[WHOLE_PARTS];
  const SqFaceParts whole = { &all, corners, 1, all.n, 1, all.n };
  SqFaceParts scratch = { spare_parts, spare_corners, 0, 0, WHOLE_PARTS, WHOLE_CORNERS };
  return sq_face_parts_lux (lamp, receptor, &face, &whole, &scratch);
}
