/* whole-face.c: the light of a lamp whose whole face is seen, for many receptors at once */
#include "light/whole-face.h"

#include "light/face-light.h"

/* Where a face spans less than this, in radians, it is taken for a point: see light/area.c. */
#define SMALL 1e-4

/* What is less than this share of a beam's peak is not summed finely. */
#define DIM 1e-8

/* A disc's polygon reaches this little past it. */
#define DISC_REACH SQ_ROUND_REACH

/* The quick way: parts may look so many times larger. */
#define QUICK_COARSER 2.0
#define QUICK_COARSER_PAST_PARTS 1.5
#define QUICK_ONE 0.2      /* as small as this, of what they may: one place */
#define QUICK_EVEN_ONE 0.1 /* even faces: one place if they look as small as this */
#define QUICK_EVEN_FOUR 0.4
#define QUICK_CUT_LEVEL 4

static void
add_way (SqFaceSums *sums, SqFaceWay way)
{
  g_assert (sums->n_ways < SQ_MOST_WAYS);
  sums->ways[sums->n_ways++] = way;
}

static void
add_places (SqFaceSums *sums, const SqFacePlace *places, guint n, double from_m)
{
  add_way (sums, (SqFaceWay){ SQ_WAY_PLACES, from_m, places, n });
}

/* The cone about the axis that gets more than @dim of the peak. */
static void
find_bright_cone (SqFaceSums *sums, const SqLamp *lamp, double dim)
{
  double widest = sq_lamp_reach_rad (lamp, dim);
  if (widest < G_PI_2) {
    sums->bright_sine = sq_steady_sin (widest);
    sums->bright_cosine = sq_steady_cos (widest);
  }
}

/* Level by level; a level whose parts are no smaller than those of the one before is left out. */
static void
add_levels (SqFaceSums *sums, const SqLamp *lamp, double limit)
{
  double last_m = INFINITY;
  for (guint i = 0; i < lamp->places->n_levels; i++) {
    const SqFaceLevel *level = &lamp->places->levels[i];
    double from_m = level->size_m / limit + (i > 0 ? lamp->radius_m : 0.0);
    if (from_m < last_m)
      add_places (sums, level->places, level->n, from_m);
    last_m = MIN (last_m, from_m);
  }
}

static double
longest_m (const SqLamp *lamp)
{
  return sqrt (lamp->width_m * lamp->width_m + lamp->height_m * lamp->height_m);
}

static void
plan_even (SqWholeFace *plan, const SqLamp *lamp, gboolean dome, SqFaceWayKind near)
{
  SqFaceSums *sums = &plan->sums;
  sums->luminance_cd_m2 =
    lamp->intensity.peak_cd * lamp->passing.factor / sq_lamp_shown_area_m2 (lamp);
  add_places (sums, &plan->middle, 1, longest_m (lamp) / SMALL);
  add_way (sums, (SqFaceWay){ dome ? SQ_WAY_ELSEWHERE : near, 0.0, NULL, 0 });
}

static void
plan_shape (SqWholeFace *plan, const SqLamp *lamp)
{
  SqFaceSums *sums = &plan->sums;
  gboolean disc = lamp->n_face == SQ_DISC_SIDES;
  sums->radius_m = lamp->radius_m;
  sums->one_sided = lamp->shaped == SQ_SHAPED_FLAT;
  sums->round = lamp->shaped == SQ_SHAPED_BALL;
  sums->tube = lamp->shaped == SQ_SHAPED_TUBE;
  sums->corners = lamp->face;
  sums->n_corners = lamp->n_face;
  sums->half_sides[0] = lamp->width_m / 2.0 * (disc ? DISC_REACH : 1.0);
  sums->half_sides[1] = lamp->height_m / 2.0 * (disc ? DISC_REACH : 1.0);
  if (sums->round)
    sums->inside_m = lamp->radius_m;
  if (sums->tube) {
    sums->inside_m = lamp->height_m / 2.0;
    sums->half_sides[2] = lamp->height_m / 2.0;
    sums->length_m = lamp->width_m;
    sums->across_m = lamp->height_m;
  }
}

static const SqFaceWay elsewhere = { .kind = SQ_WAY_ELSEWHERE };

static void
plan_init (SqWholeFace *plan, const SqLamp *lamp, SqPoint origin)
{
  *plan = (SqWholeFace){
    .lamp = lamp,
    .sums = {
      .intensity = &lamp->intensity,
      .passing = &lamp->passing,
      .frame = lamp->frame,
      .at = lamp->fixture->at,
      .origin = origin,
      .cut = elsewhere,
    },
    .middle = { lamp->fixture->at, 1.0 },
  };
  plan_shape (plan, lamp);
}

void
sq_whole_face_init (SqWholeFace *plan, const SqLamp *lamp, gboolean dome)
{
  SqFaceSums *sums = &plan->sums;
  plan_init (plan, lamp, sq_point (0.0, 0.0, 0.0));
  switch (lamp->shaped) {
  case SQ_SHAPED_POINT:
    add_places (sums, &plan->middle, 1, 0.0);
    break;
  case SQ_SHAPED_FLAT:
    if (lamp->even) {
      plan_even (plan, lamp, dome, SQ_WAY_CONTOUR);
    } else {
      find_bright_cone (sums, lamp, DIM);
      add_levels (sums, lamp, sq_lamp_part_limit (lamp));
      add_way (sums, elsewhere);
    }
    break;
  case SQ_SHAPED_BALL:
    /* Wholly above the horizon a ball gives what a point does. */
    if (lamp->even && dome)
      add_way (sums, (SqFaceWay){ .kind = SQ_WAY_BALL_DOME });
    else if (lamp->even)
      add_places (sums, &plan->middle, 1, 0.0);
    else
      add_way (sums, elsewhere);
    break;
  case SQ_SHAPED_TUBE:
    if (lamp->even)
      plan_even (plan, lamp, dome, SQ_WAY_RIBBON);
    else
      add_way (sums, elsewhere);
    break;
  case SQ_SHAPED_NOT:
  default:
    add_places (sums, NULL, 0, 0.0);
    break;
  }
}

/* TRUE if the lamp is so high over all that the horizon cuts none of it, and that even right below
 * it the first way will do. */
static gboolean
is_high_over (const SqFaceSums *sums, double height_m)
{
  const double *half = sums->half_sides;
  double box_m = fabs (sums->frame.right.z) * half[0] + fabs (sums->frame.up.z) * half[1] +
                 fabs (sums->frame.forward.z) * half[2];
  double low_m = MAX (box_m, sums->radius_m);
  return height_m > low_m && height_m > sums->ways[0].from_m && sums->ways[0].kind == SQ_WAY_PLACES;
}

static void
plan_quick (SqWholeFace *plan, const SqLamp *lamp, SqPoint origin)
{
  SqFaceSums *sums = &plan->sums;
  sq_whole_face_init (plan, lamp, FALSE);
  sums->origin = origin;
  if (lamp->shaped != SQ_SHAPED_FLAT && lamp->shaped != SQ_SHAPED_TUBE)
    return;
  sums->n_ways = 0;
  if (lamp->shaped == SQ_SHAPED_TUBE) {
    add_places (sums, &plan->middle, 1, longest_m (lamp) / (lamp->even ? QUICK_EVEN_ONE : 0.0));
    add_way (sums, lamp->even ? (SqFaceWay){ .kind = SQ_WAY_RIBBON } : elsewhere);
    return;
  }
  const SqFacePlaces *places = lamp->places;
  const SqFaceLevel *coarse = &places->levels[0];
  const SqFaceLevel *fine = &places->levels[MIN (QUICK_CUT_LEVEL, places->n_levels - 1)];
  sums->cut = (SqFaceWay){ SQ_WAY_PLACES, 0.0, fine->places, fine->n };
  if (lamp->even) {
    sums->cut = (SqFaceWay){ .kind = SQ_WAY_CUT_CONTOUR };
    add_places (sums, &plan->middle, 1, longest_m (lamp) / QUICK_EVEN_ONE);
    add_places (sums, coarse->places, coarse->n, longest_m (lamp) / QUICK_EVEN_FOUR);
    add_way (sums, (SqFaceWay){ .kind = SQ_WAY_CONTOUR });
    return;
  }
  gboolean bare = lamp->passing.parts->len == 0;
  double limit = sq_lamp_part_limit (lamp) * (bare ? QUICK_COARSER : QUICK_COARSER_PAST_PARTS);
  find_bright_cone (sums, lamp, SQ_DIM_QUICK);
  add_places (sums, &plan->middle, 1, coarse->size_m / (limit * QUICK_ONE));
  add_levels (sums, lamp, limit);
  add_way (sums, elsewhere);
}

void
sq_whole_face_init_quick (SqWholeFace *plan, const SqLamp *lamp, SqPoint origin, gboolean level)
{
  plan_quick (plan, lamp, origin);
  plan->sums.one_way = level && is_high_over (&plan->sums, plan->sums.at.z_m - origin.z_m);
}

void
sq_whole_face_find (const SqWholeFace *face,
                    const SqFaceKernel *kernel,
                    const SqReceptors *receptors,
                    gsize n,
                    double *lux)
{
  if (kernel->lux (&face->sums, receptors, n, lux))
    return;
  for (gsize i = 0; i < n; i++) {
    if (lux[i] >= 0.0)
      continue;
    const SqReceptor receptor = { { receptors->x_m[i], receptors->y_m[i], receptors->z_m[i] },
                                  { receptors->nx[i], receptors->ny[i], receptors->nz[i] },
                                  receptors->dome };
    lux[i] = sq_face_whole_lux (face->lamp, &receptor);
  }
}

void
sq_whole_face_find_quick (const SqWholeFace *face,
                          const SqQuickFaceKernel *kernel,
                          const SqQuickReceptors *receptors,
                          gsize n,
                          float *lux)
{
  if (kernel->lux (&face->sums, receptors, n, lux))
    return;
  for (gsize i = 0; i < n; i++) {
    if (lux[i] >= 0.0f)
      continue;
    SqVector off = { receptors->x_m[i], receptors->y_m[i], receptors->z_m[i] };
    const SqReceptor receptor = { sq_point_along (face->sums.origin, off, 1.0),
                                  { receptors->nx[i], receptors->ny[i], receptors->nz[i] },
                                  FALSE };
    lux[i] = (float)sq_face_whole_lux (face->lamp, &receptor);
  }
}

void
sq_whole_face_lux (const SqLamp *lamp, const SqReceptors *receptors, gsize n, double *lux)
{
  SqWholeFace face;
  sq_whole_face_init (&face, lamp, receptors->dome);
  sq_whole_face_find (&face, sq_face_kernel_best (), receptors, n, lux);
}
