/* face-kernel.c: loops over many points: plain, so that the compiler makes vectors of them
 *
 * Compiled once for each precision (SQ_REAL_IS_FLOAT) and instruction set; SQ_KERNEL is the name
 * of the table at the end, SQ_KERNEL_NAME what it is called. Nothing in a loop depends on what
 * another point gave, nothing branches on it, and sums run in the order of places or edges: so
 * bits do not depend on how many points go through an instruction at once. */
#include "light/face-contour.h"

static SqRealReceptors
receptors_from (const SqRealReceptors *receptors, gsize first)
{
  return (SqRealReceptors){
    .x_m = receptors->x_m + first,
    .y_m = receptors->y_m + first,
    .z_m = receptors->z_m + first,
    .nx = receptors->nx + first,
    .ny = receptors->ny + first,
    .nz = receptors->nz + first,
    .dome = receptors->dome,
  };
}

/* Short loops: more of their steps are under way at a time than of one long one. */
static void
send_beam (const SqIntensity *intensity,
           SqReal factor,
           const SqReal *restrict x,
           const SqReal *restrict y,
           const SqReal *restrict z,
           gsize n,
           SqReal *restrict candela)
{
  const SqProfile profile = sq_profile_of (intensity);
  const gboolean round = sq_intensity_is_round (intensity);
  SqReal square[SQ_FACE_BLOCK], power[SQ_FACE_BLOCK];
  for (gsize i = 0; i < n; i++)
    square[i] = sq_angle_square_of (x[i] * x[i] + y[i] * y[i], z[i]);
  if (round)
    for (gsize i = 0; i < n; i++) {
      square[i] *= profile.per_square[0];
      power[i] = profile.power[0];
    }
  else
    for (gsize i = 0; i < n; i++)
      sq_profile_oval (&profile, x[i], y[i], &square[i], &power[i]);
  for (gsize i = 0; i < n; i++)
    power[i] *= sq_real_log2 (square[i]);
  for (gsize i = 0; i < n; i++)
    power[i] = sq_real_exp2 (power[i]);
  for (gsize i = 0; i < n; i++) {
    gboolean sends = (z[i] >= 0) & (power[i] < SQ_BEAM_STEPS);
    candela[i] = sends ? factor * (profile.peak_cd * sq_real_exp2 (-power[i])) : 0;
  }
}

static void
send_out (const SqIntensity *intensity,
          SqReal factor,
          const SqReal *restrict x,
          const SqReal *restrict y,
          const SqReal *restrict z,
          gsize n,
          SqReal *restrict candela)
{
  const SqReal peak_cd = (SqReal)intensity->peak_cd;
  switch (intensity->sends) {
  case SQ_SENDS_BEAM:
    send_beam (intensity, factor, x, y, z, n, candela);
    break;
  case SQ_SENDS_LAMBERT:
    for (gsize i = 0; i < n; i++)
      candela[i] = factor * sq_lambert_cd (peak_cd, z[i]);
    break;
  case SQ_SENDS_TUBE:
    for (gsize i = 0; i < n; i++)
      candela[i] = factor * sq_tube_cd (peak_cd, y[i], z[i]);
    break;
  case SQ_SENDS_SKIRT:
    for (gsize i = 0; i < n; i++)
      candela[i] = factor * sq_skirt_cd (peak_cd, z[i]);
    break;
  case SQ_SENDS_SPHERE:
  case SQ_SENDS_NOTHING:
  default:
    for (gsize i = 0; i < n; i++)
      candela[i] = intensity->sends == SQ_SENDS_SPHERE ? factor * peak_cd : 0;
    break;
  }
}

static void
let_through (const SqPassingPart *part,
             const SqReal *restrict x,
             const SqReal *restrict y,
             const SqReal *restrict z,
             gsize n,
             SqReal *restrict candela)
{
  switch (part->kind) {
  case SQ_PASSING_HALF_SCRIM:
    for (gsize i = 0; i < n; i++)
      candela[i] *= sq_half_scrim_share (part, y[i]);
    break;
  case SQ_PASSING_EGG_CRATE:
    for (gsize i = 0; i < n; i++)
      candela[i] *= sq_egg_crate_share (part, x[i], y[i], z[i]);
    break;
  case SQ_PASSING_SNOOT:
  default:
    for (gsize i = 0; i < n; i++)
      candela[i] *= sq_snoot_share (part, x[i], y[i], z[i]);
    break;
  }
}

/* Of at most a block of directions. */
static void
find_candela_of_block (const SqIntensity *intensity,
                       const SqPassing *passing,
                       const SqReal *x,
                       const SqReal *y,
                       const SqReal *z,
                       gsize n,
                       SqReal *candela)
{
  send_out (intensity, (SqReal)passing->factor, x, y, z, n, candela);
  for (guint i = 0; i < passing->parts->len; i++)
    let_through (&g_array_index (passing->parts, SqPassingPart, i), x, y, z, n, candela);
}

static void
find_candela (const SqIntensity *intensity,
              const SqPassing *passing,
              const SqReal *x,
              const SqReal *y,
              const SqReal *z,
              gsize n,
              SqReal *candela)
{
  for (gsize i = 0; i < n; i += SQ_FACE_BLOCK)
    find_candela_of_block (intensity, passing, x + i, y + i, z + i, MIN (n - i, SQ_FACE_BLOCK),
                           candela + i);
}

/* What sorting says besides the index of a way. */
#define NOTHING (-1)
#define CUT (-2)

/* Which way each of a block of receptors is summed, in whole numbers. */
static void
sort (const SqFaceSums *sums, const SqRealReceptors *block, gsize n, SqReal *sorted)
{
  const SqTriple at = sq_triple_from_origin (sums, sums->at);
  const SqTriple right = sq_triple_of (sums->frame.right), up = sq_triple_of (sums->frame.up);
  const SqTriple forward = sq_triple_of (sums->frame.forward);
  const SqReal radius = (SqReal)sums->radius_m, inside = (SqReal)(sums->inside_m + SQ_ON_IT_M);
  const SqReal sine = (SqReal)sums->bright_sine, cosine = (SqReal)sums->bright_cosine;
  const SqReal across = (SqReal)sums->half_sides[0], high = (SqReal)sums->half_sides[1],
               deep = (SqReal)sums->half_sides[2], round = sums->round ? radius : 0;
  const SqReal dome = block->dome, tube = sums->tube;
  const SqReal behind = sums->one_sided ? (SqReal)SQ_ON_IT_M : (SqReal)-INFINITY;
  const SqReal farthest = (SqReal)sums->ways[0].from_m;

  SqReal away[SQ_FACE_BLOCK], special[SQ_FACE_BLOCK];
  for (gsize i = 0; i < n; i++) {
    SqTriple v = sq_triple_minus (sq_stands_at (block, i), at), normal = sq_looks_along (block, i);
    SqReal square = sq_triple_dot (v, v), along = sq_triple_dot (v, right),
           ahead = sq_triple_dot (v, forward);
    SqReal height =
      -sq_triple_dot (v, normal); /* of the lamp's middle over the receptor's horizon */
    SqReal box = sq_real_abs (sq_triple_dot (normal, right)) * across +
                 sq_real_abs (sq_triple_dot (normal, up)) * high +
                 sq_real_abs (sq_triple_dot (normal, forward)) * deep;
    SqReal outside = sq_real_max (box, round) - height; /* over 0: some of it may be below */
    SqReal is = dome > 0 || outside <= 0 ? 0 : CUT;
    is = dome > 0 || height > -radius ? is : NOTHING;
    is = (tube > 0 ? square - along * along : square) > inside * inside ? is : NOTHING;
    special[i] = ahead > behind ? is : NOTHING;
    /* aside · cosine - ahead · sine > radius: in the dark, where coarse sums will do */
    SqReal beyond = radius + ahead * sine, aside_square = square - ahead * ahead;
    gboolean dark = beyond < 0 || aside_square * (cosine * cosine) > beyond * beyond;
    away[i] = dark ? sq_real_max (square, farthest * farthest) : square;
    sorted[i] = 0;
  }
  for (guint k = 0; k < sums->n_ways; k++) {
    const SqReal from = (SqReal)sums->ways[k].from_m;
    for (gsize i = 0; i < n; i++)
      sorted[i] += away[i] < from * from ? 1 : 0;
  }
  for (gsize i = 0; i < n; i++)
    sorted[i] = special[i] < 0 ? special[i] : sorted[i];
}

typedef struct {
  SqReal x[SQ_FACE_BLOCK], y[SQ_FACE_BLOCK],
    z[SQ_FACE_BLOCK];           /* unit length, in the lamp's frame */
  SqReal weight[SQ_FACE_BLOCK]; /* response / distance² */
} Directions;

static void
look_from (const SqFaceSums *sums,
           SqPoint place,
           const SqRealReceptors *block,
           gsize n,
           Directions *directions)
{
  const SqTriple at = sq_triple_from_origin (sums, place);
  const SqTriple right = sq_triple_of (sums->frame.right), up = sq_triple_of (sums->frame.up);
  const SqTriple forward = sq_triple_of (sums->frame.forward);
  const SqReal dome = block->dome;
  for (gsize i = 0; i < n; i++) {
    SqTriple v = sq_triple_minus (sq_stands_at (block, i), at);
    SqReal square = sq_triple_dot (v, v);
    gboolean apart = square >= (SqReal)(SQ_ON_IT_M * SQ_ON_IT_M);
    SqReal inverse = 1 / sq_real_sqrt (apart ? square : 1);
    SqReal cosine = -sq_triple_dot (v, sq_looks_along (block, i)) * inverse;
    SqReal response = dome > 0 ? (1 + cosine) / 2 : sq_real_max (cosine, 0);
    directions->x[i] = sq_triple_dot (v, right) * inverse;
    directions->y[i] = sq_triple_dot (v, up) * inverse;
    directions->z[i] = sq_triple_dot (v, forward) * inverse;
    directions->weight[i] = apart ? response * (inverse * inverse) : 0;
  }
}

static void
sum_places (const SqFaceSums *sums,
            const SqFaceWay *way,
            const SqRealReceptors *block,
            gsize n,
            SqReal *restrict lux)
{
  Directions directions;
  SqReal candela[SQ_FACE_BLOCK];
  for (gsize i = 0; i < n; i++)
    lux[i] = 0;
  for (guint k = 0; k < way->n_places; k++) {
    const SqReal share = (SqReal)way->places[k].share;
    look_from (sums, way->places[k].at, block, n, &directions);
    find_candela_of_block (sums->intensity, sums->passing, directions.x, directions.y, directions.z,
                           n, candela);
    for (gsize i = 0; i < n; i++)
      lux[i] += share * (candela[i] * directions.weight[i]);
  }
}

static void
sum_way (
  const SqFaceSums *sums, const SqFaceWay *way, const SqRealReceptors *run, gsize n, SqReal *lux)
{
  switch (way->kind) {
  case SQ_WAY_PLACES:
    sum_places (sums, way, run, n, lux);
    break;
  case SQ_WAY_CONTOUR:
    sq_sum_contour (sums, run, n, lux);
    break;
  case SQ_WAY_CUT_CONTOUR:
    sq_sum_cut_contour (sums, run, n, lux);
    break;
  case SQ_WAY_RIBBON:
    sq_sum_ribbon (sums, run, n, lux);
    break;
  case SQ_WAY_BALL_DOME:
    sq_sum_ball_dome (sums, run, n, lux);
    break;
  case SQ_WAY_ELSEWHERE:
  default:
    for (gsize i = 0; i < n; i++)
      lux[i] = SQ_ELSEWHERE;
    break;
  }
}

static const SqFaceWay *
way_of (const SqFaceSums *sums, SqReal sorted)
{
  static const SqFaceWay nothing = { .kind = SQ_WAY_PLACES };
  if (sorted >= 0)
    return &sums->ways[(guint)sorted];
  return sorted <= CUT ? &sums->cut : &nothing;
}

/* How many from the first are sorted alike. */
static gsize
run_of (const SqReal *sorted, gsize n)
{
  guint alike = 0;
  for (gsize i = 0; i < n; i++)
    alike += sorted[i] == sorted[0];
  if (alike == n)
    return n;
  gsize run = 1;
  while (sorted[run] == sorted[0])
    run++;
  return run;
}

/* Receptors that are summed the same way usually stand together: runs of them go at once. */
static gboolean
find_lux (const SqFaceSums *sums, const SqRealReceptors *receptors, gsize n, SqReal *lux)
{
  SqReal sorted[SQ_FACE_BLOCK];
  gboolean all = TRUE;
  for (gsize first = 0; first < n; first += SQ_FACE_BLOCK) {
    const gsize count = MIN (n - first, SQ_FACE_BLOCK);
    const SqRealReceptors block = receptors_from (receptors, first);
    if (sums->one_way) {
      sum_way (sums, &sums->ways[0], &block, count, lux + first);
      continue;
    }
    sort (sums, &block, count, sorted);
    for (gsize from = 0, run = 0; from < count; from += run) {
      run = run_of (sorted + from, count - from);
      const SqRealReceptors alike = receptors_from (&block, from);
      const SqFaceWay *way = way_of (sums, sorted[from]);
      sum_way (sums, way, &alike, run, lux + first + from);
      all = all && way->kind != SQ_WAY_ELSEWHERE;
    }
  }
  return all;
}

extern const SqRealKernel SQ_KERNEL;
const SqRealKernel SQ_KERNEL = { SQ_KERNEL_NAME, find_candela, find_lux };
