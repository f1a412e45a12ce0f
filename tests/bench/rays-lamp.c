/* rays-lamp.c: a lamp as the ray tracer's side reads it: places on its face, light along a ray */
#include "rays-lamp.h"

/* Of a table: a spot of 10 degrees has two dozen of them across. */
#define TABLE_SIDE 512

static RaysVector
single (SqVector v, double times)
{
  return (RaysVector){ (float)(v.x * times), (float)(v.y * times), (float)(v.z * times) };
}

/* By the equal-area map of the half-space on a disc, x and y over the root of 1 + z, which is as
 * fine at the rim as in the middle. The corners of the square lie behind the lamp. */
static float *
table_new (const SqLamp *lamp)
{
  float *table = g_new (float, TABLE_SIDE *TABLE_SIDE);
  for (int row = 0; row < TABLE_SIDE; row++)
    for (int column = 0; column < TABLE_SIDE; column++) {
      double x = 2.0 * column / (TABLE_SIDE - 1) - 1.0, y = 2.0 * row / (TABLE_SIDE - 1) - 1.0;
      double square = x * x + y * y, stretch = sqrt (MAX (2.0 - square, 0.0));
      SqVector direction = sq_vector (x * stretch, y * stretch, MAX (1.0 - square, 1e-9));
      direction = sq_vector_unit (direction);
      double candela = sq_intensity_cd (&lamp->intensity, direction) *
                       sq_passing_share (&lamp->passing, direction);
      table[row * TABLE_SIDE + column] = (float)(candela * lamp->output);
    }
  return table;
}

gboolean
rays_lamp_init (RaysLamp *ready, const SqLamp *lamp)
{
  static const RaysCd by[] = {
    [SQ_SENDS_NOTHING] = RAYS_CD_EVEN,   [SQ_SENDS_BEAM] = RAYS_CD_TABLE,
    [SQ_SENDS_LAMBERT] = RAYS_CD_FACING, [SQ_SENDS_SPHERE] = RAYS_CD_EVEN,
    [SQ_SENDS_TUBE] = RAYS_CD_ACROSS,    [SQ_SENDS_SKIRT] = RAYS_CD_TABLE,
  };
  *ready = (RaysLamp){
    .lamp = lamp,
    .dark = lamp->output <= 0.0 || lamp->shaped == SQ_SHAPED_NOT,
    .soft = lamp->radius_m > RAYS_SOFT_M,
    .by = by[lamp->intensity.sends],
    .right = single (lamp->frame.right, 1.0),
    .up = single (lamp->frame.up, 1.0),
    .ahead = single (lamp->frame.forward, 1.0),
    .cd = (float)(lamp->intensity.peak_cd * lamp->passing.factor * lamp->output),
  };
  if (lamp->passing.parts->len > 0) {
    if (ready->by == RAYS_CD_EVEN || ready->by == RAYS_CD_ACROSS)
      return FALSE;
    ready->by = RAYS_CD_TABLE;
  }
  if (ready->by == RAYS_CD_TABLE && !ready->dark)
    ready->table = table_new (lamp);
  return TRUE;
}

void
rays_lamp_clear (RaysLamp *ready)
{
  g_clear_pointer (&ready->table, g_free);
}

static void
ball_face (const SqLamp *lamp, SqVector way, double distance_m, RaysFace *face)
{
  SqFrame turned = sq_frame (way, 0.0);
  double sine = lamp->radius_m / distance_m;
  double disc_m = lamp->radius_m * sqrt (1.0 - sine * sine);
  face->middle =
    single ((SqVector){ lamp->fixture->at.x_m, lamp->fixture->at.y_m, lamp->fixture->at.z_m }, 1.0);
  RaysVector nearer = single (turned.forward, lamp->radius_m * sine);
  face->middle.x += nearer.x;
  face->middle.y += nearer.y;
  face->middle.z += nearer.z;
  face->across = single (turned.right, disc_m);
  face->up = single (turned.up, disc_m);
  face->normal = single (turned.forward, 1.0);
  face->share = (float)(1.0 - sine * sine);
}

gboolean
rays_lamp_face (const RaysLamp *ready, RaysVector from, RaysFace *face)
{
  const SqLamp *lamp = ready->lamp;
  SqPoint at = lamp->fixture->at;
  SqVector way = sq_vector_between (at, sq_point (from.x, from.y, from.z));
  *face = (RaysFace){
    .middle = { (float)at.x_m, (float)at.y_m, (float)at.z_m },
    .across = single (lamp->frame.right, lamp->width_m / 2.0),
    .up = single (lamp->frame.up, lamp->height_m / 2.0),
    .normal = single (lamp->frame.forward, 1.0),
    .by = ready->by == RAYS_CD_TABLE ? RAYS_CD_TABLE : RAYS_CD_FACING,
    .share = 1.0f,
  };
  if (lamp->shaped == SQ_SHAPED_FLAT)
    return sq_vector_dot (way, lamp->frame.forward) > 0.0;
  if (lamp->shaped == SQ_SHAPED_BALL) {
    double distance_m = sq_vector_length (way);
    if (distance_m <= lamp->radius_m)
      return FALSE;
    ball_face (lamp, way, distance_m, face);
  } else if (lamp->shaped == SQ_SHAPED_TUBE) {
    SqVector axis = lamp->frame.right;
    SqVector aside = sq_vector_sum (way, sq_vector_scale (axis, -sq_vector_dot (way, axis)));
    SqVector across = sq_vector_cross (axis, sq_vector_unit (aside));
    face->up = single (across, lamp->height_m / 2.0);
    face->normal = single (sq_vector_unit (aside), 1.0);
    return sq_vector_length (aside) > lamp->height_m / 2.0;
  }
  return TRUE;
}

/* Candela by table, at (x, y) on its disc. In steps, so that all but the
 * fetching runs in vectors. */
static void
look_up (const float *table, const float *x, const float *y, float *cd)
{
  float a[RAYS_LANES], b[RAYS_LANES], corners[4][RAYS_LANES];
  int cells[RAYS_LANES];
  const float half = 0.5f * (TABLE_SIDE - 1), last = TABLE_SIDE - 1.001f;
  for (int i = 0; i < RAYS_LANES; i++) {
    float column = MIN (MAX (x[i] * half + half, 0.0f), last);
    float row = MIN (MAX (y[i] * half + half, 0.0f), last);
    int left = (int)column, low = (int)row;
    a[i] = column - (float)left;
    b[i] = row - (float)low;
    cells[i] = low * TABLE_SIDE + left;
  }
  for (int i = 0; i < RAYS_LANES; i++) {
    const float *cell = table + cells[i];
    corners[0][i] = cell[0];
    corners[1][i] = cell[1];
    corners[2][i] = cell[TABLE_SIDE];
    corners[3][i] = cell[TABLE_SIDE + 1];
  }
  for (int i = 0; i < RAYS_LANES; i++) {
    float low = corners[0][i] + a[i] * (corners[1][i] - corners[0][i]);
    float high = corners[2][i] + a[i] * (corners[3][i] - corners[2][i]);
    cd[i] = low + b[i] * (high - low);
  }
}

void
rays_lamp_light (const RaysLamp *ready, const RaysFace *face, RaysWays *ways)
{
  const RaysVector n = face->normal, r = ready->right, u = ready->up, f = ready->ahead;
  const float peak = ready->cd * face->share;
  float nearness[RAYS_LANES]; /* of a place: 1 / distance */
  float cd[RAYS_LANES], x[RAYS_LANES], y[RAYS_LANES], z[RAYS_LANES];
  const float *wx = ways->x, *wy = ways->y, *wz = ways->z;
  for (int i = 0; i < RAYS_LANES; i++)
    nearness[i] = 1.0f / sqrtf (wx[i] * wx[i] + wy[i] * wy[i] + wz[i] * wz[i]);
  switch (face->by) {
  case RAYS_CD_FACING:
    for (int i = 0; i < RAYS_LANES; i++)
      cd[i] = -peak * nearness[i] * (wx[i] * n.x + wy[i] * n.y + wz[i] * n.z);
    break;
  case RAYS_CD_EVEN:
    for (int i = 0; i < RAYS_LANES; i++)
      cd[i] = peak;
    break;
  case RAYS_CD_ACROSS:
    for (int i = 0; i < RAYS_LANES; i++) {
      float along = nearness[i] * (wx[i] * r.x + wy[i] * r.y + wz[i] * r.z);
      cd[i] = peak * sqrtf (1.0f - MIN (along * along, 1.0f));
    }
    break;
  case RAYS_CD_TABLE:
  default:
    for (int i = 0; i < RAYS_LANES; i++) {
      x[i] = -nearness[i] * (wx[i] * r.x + wy[i] * r.y + wz[i] * r.z);
      y[i] = -nearness[i] * (wx[i] * u.x + wy[i] * u.y + wz[i] * u.z);
      z[i] = -nearness[i] * (wx[i] * f.x + wy[i] * f.y + wz[i] * f.z);
      float shrink = 1.0f / sqrtf (1.0f + MAX (z[i], 0.0f));
      x[i] *= shrink;
      y[i] *= shrink;
    }
    look_up (ready->table, x, y, cd);
    for (int i = 0; i < RAYS_LANES; i++)
      cd[i] = z[i] > 0.0f ? cd[i] : 0.0f;
    break;
  }
  for (int i = 0; i < RAYS_LANES; i++) {
    float lux = cd[i] * wz[i] * nearness[i] * nearness[i] * nearness[i];
    ways->lux[i] = wz[i] > 0.0f ? MAX (lux, 0.0f) : 0.0f;
  }
}
