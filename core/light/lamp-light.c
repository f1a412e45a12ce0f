/* lamp-light.c: what of a lamp is seen from a point, and how that adds up to a reading */
#include "light/area.h"
#include "light/cells.h"
#include "light/lamp.h"

/* Nearer to a lamp than this, or to its face's plane, is on it. */
#define ON_IT_M 1e-9

gboolean
sq_lamp_is_out_of_sight (const SqLamp *lamp, const SqReceptor *receptor)
{
  SqVector way = sq_vector_between (lamp->fixture->at, receptor->at);
  if (lamp->output <= 0.0 || lamp->shaped == SQ_SHAPED_NOT)
    return TRUE;
  if (lamp->shaped == SQ_SHAPED_FLAT && sq_vector_dot (way, lamp->frame.forward) <= ON_IT_M)
    return TRUE;
  return !receptor->dome &&
         sq_area_is_below (lamp->fixture->at, lamp->radius_m, receptor->at, receptor->normal);
}

/* From every side a ball looks like the disc on which the lines of sight touch it. */
static guint
ball_as_seen (const SqLamp *lamp, SqPoint from, SqPoint *corners)
{
  SqVector way = sq_vector_between (lamp->fixture->at, from);
  double distance_m = sq_vector_length (way), radius_m = lamp->width_m / 2.0;
  if (distance_m <= radius_m + ON_IT_M)
    return 0;
  SqFrame turned = sq_frame (way, 0.0);
  double sine = radius_m / distance_m, disc_m = radius_m * sqrt (1.0 - sine * sine);
  SqPoint centre = sq_point_along (lamp->fixture->at, turned.forward, radius_m * sine);
  sq_disc_corners (centre, sq_vector_scale (turned.right, disc_m),
                   sq_vector_scale (turned.up, disc_m), corners);
  return SQ_DISC_SIDES;
}

static guint
tube_as_seen (const SqLamp *lamp, SqPoint from, SqPoint *corners)
{
  SqVector axis = lamp->frame.right, way = sq_vector_between (lamp->fixture->at, from);
  SqVector aside = sq_vector_sum (way, sq_vector_scale (axis, -sq_vector_dot (way, axis)));
  if (sq_vector_length (aside) <= lamp->height_m / 2.0 + ON_IT_M)
    return 0;
  SqVector across = sq_vector_cross (axis, sq_vector_unit (aside));
  sq_rect_corners (lamp->fixture->at, sq_vector_scale (axis, lamp->width_m / 2.0),
                   sq_vector_scale (across, lamp->height_m / 2.0), corners);
  return 4;
}

void
sq_lamp_see (
  const SqLamp *lamp, SqPoint from, const GArray *obstacles, const SqThing *own, SqSight *sight)
{
  SqPoint turned[SQ_DISC_SIDES];
  const SqPoint *corners = turned;
  guint n = 0;
  sq_sight_reset (sight);
  switch (lamp->shaped) {
  case SQ_SHAPED_POINT:
    turned[0] = lamp->fixture->at;
    n = sq_vector_length (sq_vector_between (from, turned[0])) > ON_IT_M ? 1 : 0;
    break;
  case SQ_SHAPED_FLAT:
    corners = lamp->face;
    n = sq_vector_dot (sq_vector_between (lamp->fixture->at, from), lamp->frame.forward) > ON_IT_M
          ? lamp->n_face
          : 0;
    break;
  case SQ_SHAPED_BALL:
    n = ball_as_seen (lamp, from, turned);
    break;
  case SQ_SHAPED_TUBE:
    n = tube_as_seen (lamp, from, turned);
    break;
  case SQ_SHAPED_NOT:
  default:
    break;
  }
  if (n > 0 && lamp->output > 0.0)
    sq_sight_see (sight, corners, n, from, obstacles, lamp->doors, own);
}

/* Candela per unit of luminance toward a place at right angles: what area the lamp shows. */
static double
shown_area_m2 (const SqLamp *lamp)
{
  switch (lamp->shaped) {
  case SQ_SHAPED_BALL:
    return G_PI * lamp->radius_m * lamp->radius_m;
  case SQ_SHAPED_TUBE:
    return lamp->width_m * lamp->height_m;
  default: {
    double round = lamp->n_face == SQ_DISC_SIDES ? G_PI / 4.0 : 1.0;
    return lamp->width_m * lamp->height_m * round;
  }
  }
}

typedef struct {
  const SqLamp *lamp;
  const SqReceptor *receptor;
  SqVector facing; /* unit normal of the part that is summed; only for what turns to the point */
  double area_m2;  /* over which the lamp's candela are spread */
} Cell;

static double
response (const SqReceptor *receptor, SqVector toward)
{
  double cosine = sq_vector_dot (receptor->normal, toward);
  return receptor->dome ? (1.0 + cosine) / 2.0 : MAX (cosine, 0.0);
}

/* Candela of the whole lamp toward the receptor as if all of it stood at @place. */
static double
candela_from (const Cell *cell, SqPoint place, SqVector back)
{
  const SqFrame *frame = &cell->lamp->frame;
  SqVector direction =
    sq_vector (sq_vector_dot (back, frame->right), sq_vector_dot (back, frame->up),
               sq_vector_dot (back, frame->forward));
  double share = sq_passing_share (&cell->lamp->passing, direction);
  if (cell->lamp->shaped == SQ_SHAPED_BALL || cell->lamp->shaped == SQ_SHAPED_TUBE)
    return cell->lamp->intensity.peak_cd * share * fabs (sq_vector_dot (back, cell->facing));
  return sq_intensity_cd (&cell->lamp->intensity, direction) * share;
}

/* A SqCellFunc. */
static double
lux_of_cell (SqPoint place, gconstpointer data)
{
  const Cell *cell = data;
  SqVector way = sq_vector_between (cell->receptor->at, place);
  double square = sq_vector_dot (way, way);
  if (square < ON_IT_M * ON_IT_M)
    return 0.0;
  SqVector toward = sq_vector_scale (way, 1.0 / sqrt (square));
  double candela = candela_from (cell, place, sq_vector_scale (toward, -1.0));
  return candela / cell->area_m2 * response (cell->receptor, toward) / square;
}

/* Above the horizon only, for a flat receptor. */
static double
sum_cells (Cell *cell, const SqPoint *corners, guint n)
{
  double detail_rad =
    MIN (sq_intensity_detail_rad (&cell->lamp->intensity), cell->lamp->passing.detail_rad);
  SqPoint at = cell->receptor->at;
  SqVector normal = cell->receptor->normal;
  cell->facing = sq_vector_unit (sq_vector_cross (sq_vector_between (corners[0], corners[1]),
                                                  sq_vector_between (corners[0], corners[2])));
  const SqPlane horizon = { normal, sq_vector_dot (normal, (SqVector){ at.x_m, at.y_m, at.z_m }) };
  double least = INFINITY;
  for (guint i = 0; i < n; i++)
    least = MIN (least, sq_plane_height_m (&horizon, corners[i]));
  if (cell->receptor->dome || least >= 0.0)
    return sq_cells_sum (corners, n, at, detail_rad, lux_of_cell, cell);
  g_autoptr (GArray) below = g_array_new (FALSE, FALSE, sizeof (SqPoint));
  g_autoptr (GArray) above = g_array_new (FALSE, FALSE, sizeof (SqPoint));
  sq_polygon_cut (corners, n, &horizon, below, above);
  return sq_cells_sum ((const SqPoint *)(void *)above->data, above->len, at, detail_rad,
                       lux_of_cell, cell);
}

double
sq_lamp_lux (const SqLamp *lamp, const SqReceptor *receptor, const SqSight *sight)
{
  Cell cell = { .lamp = lamp, .receptor = receptor };
  cell.area_m2 = lamp->shaped == SQ_SHAPED_POINT ? 1.0 : shown_area_m2 (lamp);
  double lux = 0.0;
  for (guint i = 0; i < sight->seen->len; i++) {
    const SqSeen *seen = &g_array_index (sight->seen, SqSeen, i);
    const SqPoint *corners = sq_sight_corners (sight, seen);
    double part;
    if (seen->n == 1)
      part = lux_of_cell (corners[0], &cell);
    else if (!lamp->even)
      part = sum_cells (&cell, corners, seen->n);
    else {
      part = receptor->dome ? sq_area_dome (corners, seen->n, receptor->at, receptor->normal)
                            : sq_area_flat (corners, seen->n, receptor->at, receptor->normal);
      part *= lamp->intensity.peak_cd / cell.area_m2 * lamp->passing.factor;
    }
    lux += seen->passes * part;
  }
  return lux * lamp->output;
}
