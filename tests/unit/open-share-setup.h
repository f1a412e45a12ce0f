/* open-share-setup.h: lamps, things before them, and how much of the lamps rays see past them */
#pragma once

#include "light/open-share-kernel.h"

/* ---- The same by rays, on its own ---- */

typedef enum {
  PRISM,
  SHEET,
} Kind;

/* Counter-clockwise outline and two heights, or a rectangle. */
typedef struct {
  Kind kind;
  SqPlace outline[32];
  guint n;
  double base_m, top_m;
  SqPoint middle;
  SqVector half_across, half_up;
  double passes;
} Thing;

typedef struct {
  SqPoint middle;
  SqVector half_across, half_up;
  gboolean disc;
} Face;

/* Keeps of the way from t[0] to t[1] what is where height + climb · t is at most 0. */
static G_GNUC_UNUSED void
keep_below (double *t, double height, double climb)
{
  if (climb > 0.0)
    t[1] = MIN (t[1], -height / climb);
  else if (climb < 0.0)
    t[0] = MAX (t[0], -height / climb);
  else if (height > 0.0)
    t[1] = -1.0;
}

static G_GNUC_UNUSED gboolean
prism_is_between (const Thing *thing, SqPoint from, SqVector way)
{
  double t[2] = { 0.0, 1.0 };
  keep_below (t, thing->base_m - from.z_m, -way.z);
  keep_below (t, from.z_m - thing->top_m, way.z);
  for (guint i = 0; i < thing->n; i++) {
    SqPlace a = thing->outline[i], b = thing->outline[(i + 1) % thing->n];
    double x = b.y_m - a.y_m, y = a.x_m - b.x_m; /* outward */
    keep_below (t, x * (from.x_m - a.x_m) + y * (from.y_m - a.y_m), x * way.x + y * way.y);
  }
  return t[0] < t[1];
}

static G_GNUC_UNUSED gboolean
sheet_is_between (const Thing *thing, SqPoint from, SqVector way)
{
  SqVector normal = sq_vector_cross (thing->half_across, thing->half_up);
  double height = sq_vector_dot (normal, sq_vector_between (thing->middle, from));
  double t = -height / sq_vector_dot (normal, way);
  if (!(t > 0.0 && t < 1.0))
    return FALSE;
  SqVector at = sq_vector_between (thing->middle, sq_point_along (from, way, t));
  double u = sq_vector_dot (at, thing->half_across), v = sq_vector_dot (at, thing->half_up);
  return fabs (u) < sq_vector_dot (thing->half_across, thing->half_across) &&
         fabs (v) < sq_vector_dot (thing->half_up, thing->half_up);
}

/* Places that fill the square evenly: steps by the powers of the plastic number. */
#define RAYS 22500
static G_GNUC_UNUSED double
share_by_rays (
  const Face *face, const Thing *things, guint n, SqPoint from, SqVector normal, gboolean dome)
{
  double whole = 0.0, open = 0.0;
  for (int i = 0; i < RAYS; i++) {
    double u = fmod (0.5 + i * 0.7548776662466927, 1.0) * 2.0 - 1.0;
    double v = fmod (0.5 + i * 0.5698402909980532, 1.0) * 2.0 - 1.0;
    if (face->disc && u * u + v * v > 1.0)
      continue;
    SqPoint to =
      sq_point_along (sq_point_along (face->middle, face->half_across, u), face->half_up, v);
    SqVector way = sq_vector_between (from, to);
    double square = sq_vector_dot (way, way), cosine = sq_vector_dot (way, normal);
    double light = dome ? cosine + sqrt (square) : MAX (cosine, 0.0);
    light /= square * square; /* the cosine at the face has the same numerator everywhere */
    whole += light;
    for (guint k = 0; k < n && light > 0.0; k++)
      if (things[k].kind == PRISM ? prism_is_between (&things[k], from, way)
                                  : sheet_is_between (&things[k], from, way))
        light *= things[k].passes;
    open += light;
  }
  return whole > 0.0 ? open / whole : 1.0;
}

/* ---- What is tested ---- */

typedef struct {
  SqFaceLines face;
  SqReceiverGrid grid;
  SqFastShadow shadows[40];
  const SqFastShadow *list[40];
  guint n;
} Setup;

static G_GNUC_UNUSED void
setup_init (Setup *setup, const Face *face, const SqReceiverGrid *grid)
{
  *setup = (Setup){ .grid = *grid };
  sq_face_lines_init (&setup->face, face->middle, face->half_across, face->half_up, face->disc);
}

static G_GNUC_UNUSED void
setup_add (Setup *setup, const Thing *thing)
{
  SqSolid solid;
  if (thing->kind == PRISM)
    sq_solid_init_prism (&solid, thing->outline, thing->n, thing->base_m, thing->top_m);
  else
    sq_solid_init_sheet (&solid, thing->middle, thing->half_across, thing->half_up);
  SqFastShadow *shadow = &setup->shadows[setup->n];
  sq_fast_shadow_init (shadow, &setup->face, &solid, thing->passes, &setup->grid);
  setup->list[setup->n++] = shadow;
  sq_solid_clear (&solid);
}

static G_GNUC_UNUSED void
setup_clear (Setup *setup)
{
  for (guint i = 0; i < setup->n; i++)
    sq_fast_shadow_clear (&setup->shadows[i]);
}

static G_GNUC_UNUSED const SqRowReads level = { .normal = { 0, 0, 1 } };

static G_GNUC_UNUSED void
shares (const Setup *setup, const SqRowReads *reads, int row, int from, int to, float *share)
{
  sq_open_shares (&setup->face, setup->list, setup->n, &setup->grid, reads, row, from, to, share);
  for (int i = 0; i < to - from; i++)
    g_assert_true (share[i] >= 0.0f && share[i] <= 1.0f);
}

static G_GNUC_UNUSED float
one_share (const Setup *setup, int column, int row)
{
  float share;
  shares (setup, &level, row, column, column + 1, &share);
  return share;
}

static G_GNUC_UNUSED Thing
block (double x_m, double y_m, double width_m, double depth_m, double base_m, double top_m)
{
  return (Thing){
    .kind = PRISM,
    .outline = { { x_m, y_m },
                 { x_m + width_m, y_m },
                 { x_m + width_m, y_m + depth_m },
                 { x_m, y_m + depth_m } },
    .n = 4,
    .base_m = base_m,
    .top_m = top_m,
  };
}

static G_GNUC_UNUSED Thing
sheet (SqPoint middle, SqVector half_across, SqVector half_up, double passes)
{
  return (Thing){ SHEET, .middle = middle, .half_across = half_across, .half_up = half_up,
                  .passes = passes };
}

/* A metre square that looks down from 3 m over the middle of the grid, which has a point each 0.1 m
 * from -5 to 5 on the floor. */
static G_GNUC_UNUSED const Face overhead = { { 0, 0, 3 }, { 0.5, 0, 0 }, { 0, -0.5, 0 }, FALSE };
static G_GNUC_UNUSED const SqReceiverGrid floor_grid = { { -5, -5 }, 0.1, 0.0, 101, 101 };

/* ---- At random ---- */

static G_GNUC_UNUSED double
between (GRand *dice, double least, double most)
{
  return g_rand_double_range (dice, least, most);
}

/* One draw a statement: arguments may be worked out in any order. */
static G_GNUC_UNUSED SqPoint
random_point (GRand *dice, double reach_m, double lowest_m, double highest_m)
{
  double x = between (dice, -reach_m, reach_m);
  double y = between (dice, -reach_m, reach_m);
  double z = between (dice, lowest_m, highest_m);
  return sq_point (x, y, z);
}

static G_GNUC_UNUSED SqVector
random_way (GRand *dice, double least_deg, double most_deg)
{
  double azimuth_deg = between (dice, 0, 360);
  return sq_vector_toward (azimuth_deg, between (dice, least_deg, most_deg));
}

/* Two half sides at right angles of a face that looks along @out. */
static G_GNUC_UNUSED void
turn (GRand *dice, SqVector out, double least_m, double most_m, Face *face)
{
  SqVector right = sq_vector_unit (sq_vector_cross (out, sq_vector (0, 0, 1)));
  SqVector up = sq_vector_cross (right, out);
  double roll = between (dice, 0, 2 * G_PI), c = cos (roll), s = sin (roll);
  double a_m = between (dice, least_m, most_m);
  double b_m = between (dice, least_m, most_m);
  face->half_across =
    sq_vector_scale (sq_vector_sum (sq_vector_scale (right, c), sq_vector_scale (up, s)), a_m);
  face->half_up =
    sq_vector_scale (sq_vector_sum (sq_vector_scale (right, -s), sq_vector_scale (up, c)), b_m);
}

static G_GNUC_UNUSED Thing
random_thing (GRand *dice)
{
  static const guint sides[] = { 3, 4, 6, 32 };
  if (g_rand_boolean (dice)) {
    Face turned;
    turn (dice, random_way (dice, -80, 80), 0.1, 1, &turned);
    return sheet (random_point (dice, 2, 0.3, 2.5), turned.half_across, turned.half_up, 0.0);
  }
  Thing thing = { PRISM, .n = sides[g_rand_int_range (dice, 0, G_N_ELEMENTS (sides))] };
  SqPoint at = random_point (dice, 2, -0.5, 1.5);
  double r = between (dice, 0.1, 0.8);
  double turned = between (dice, 0, 2 * G_PI);
  for (guint i = 0; i < thing.n; i++) {
    double a = turned + 2.0 * G_PI * i / thing.n;
    thing.outline[i] = (SqPlace){ at.x_m + r * cos (a), at.y_m + r * sin (a) };
  }
  thing.base_m = at.z_m;
  thing.top_m = thing.base_m + between (dice, 0.1, 2);
  return thing;
}
