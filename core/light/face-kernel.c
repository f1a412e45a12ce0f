/* face-kernel.c: loops over many points: plain, so that the compiler makes vectors of them
 *
 * Compiled once for each precision (SQ_REAL_IS_FLOAT) and instruction set; SQ_KERNEL is the name
 * of the table at the end, SQ_KERNEL_NAME what it is called. Nothing in a loop depends on what
 * another point gave, nothing branches on it, and sums run in the order of places or edges: so
 * bits do not depend on how many points go through an instruction at once. */
#include "light/face-kernel.h"

#ifdef SQ_REAL_IS_FLOAT
typedef SqQuickReceptors Receptors;
typedef SqQuickFaceKernel Kernel;
#else
typedef SqReceptors Receptors;
typedef SqFaceKernel Kernel;
#endif

/* Points are taken so many at a time: what is kept of them between loops stays near. */
#define BLOCK 64

/* Nearer than this to a place is on it. */
#define ON_IT_M 1e-9

typedef struct {
  SqReal x, y, z;
} Triple;

static inline Triple
triple_of (SqVector v)
{
  return (Triple){ (SqReal)v.x, (SqReal)v.y, (SqReal)v.z };
}

/* Counted from the origin; the difference is taken in double precision. */
static inline Triple
place_of (const SqFaceSums *sums, SqPoint place)
{
  return triple_of (sq_vector_between (sums->origin, place));
}

static inline SqReal
dot (Triple a, Triple b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline Triple
minus (Triple a, Triple b)
{
  return (Triple){ a.x - b.x, a.y - b.y, a.z - b.z };
}

static inline Triple
plus (Triple a, Triple b)
{
  return (Triple){ a.x + b.x, a.y + b.y, a.z + b.z };
}

static inline Triple
cross (Triple a, Triple b)
{
  return (Triple){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}

static inline Triple
times (Triple a, SqReal by)
{
  return (Triple){ a.x * by, a.y * by, a.z * by };
}

static inline Triple
stands_at (const Receptors *receptors, gsize i)
{
  return (Triple){ receptors->x_m[i], receptors->y_m[i], receptors->z_m[i] };
}

static inline Triple
normal_of (const Receptors *receptors, gsize i)
{
  return (Triple){ receptors->nx[i], receptors->ny[i], receptors->nz[i] };
}

static Receptors
receptors_from (const Receptors *receptors, gsize first)
{
  return (Receptors){
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
  SqReal square[BLOCK], power[BLOCK];
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
  for (gsize i = 0; i < n; i += BLOCK)
    find_candela_of_block (intensity, passing, x + i, y + i, z + i, MIN (n - i, BLOCK),
                           candela + i);
}

/* What sorting says besides the index of a way. */
#define NOTHING (-1)
#define CUT (-2)

/* Which way each of a block of receptors is summed, in whole numbers. */
static void
sort (const SqFaceSums *sums, const Receptors *block, gsize n, SqReal *sorted)
{
  const Triple at = place_of (sums, sums->at);
  const Triple right = triple_of (sums->frame.right), up = triple_of (sums->frame.up);
  const Triple forward = triple_of (sums->frame.forward);
  const SqReal radius = (SqReal)sums->radius_m, inside = (SqReal)(sums->inside_m + ON_IT_M);
  const SqReal sine = (SqReal)sums->bright_sine, cosine = (SqReal)sums->bright_cosine;
  const SqReal across = (SqReal)sums->half_sides[0], high = (SqReal)sums->half_sides[1],
               deep = (SqReal)sums->half_sides[2], round = sums->round ? radius : 0;
  const SqReal dome = block->dome, tube = sums->tube;
  const SqReal behind = sums->one_sided ? (SqReal)ON_IT_M : (SqReal)-INFINITY;
  const SqReal farthest = (SqReal)sums->ways[0].from_m;

  SqReal away[BLOCK], special[BLOCK];
  for (gsize i = 0; i < n; i++) {
    Triple v = minus (stands_at (block, i), at), normal = normal_of (block, i);
    SqReal square = dot (v, v), along = dot (v, right), ahead = dot (v, forward);
    SqReal height = -dot (v, normal); /* of the lamp's middle over the receptor's horizon */
    SqReal box = sq_real_abs (dot (normal, right)) * across +
                 sq_real_abs (dot (normal, up)) * high + sq_real_abs (dot (normal, forward)) * deep;
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
  SqReal x[BLOCK], y[BLOCK], z[BLOCK]; /* unit length, in the lamp's frame */
  SqReal weight[BLOCK];                /* response / distance² */
} Directions;

static void
look_from (
  const SqFaceSums *sums, SqPoint place, const Receptors *block, gsize n, Directions *directions)
{
  const Triple at = place_of (sums, place);
  const Triple right = triple_of (sums->frame.right), up = triple_of (sums->frame.up);
  const Triple forward = triple_of (sums->frame.forward);
  const SqReal dome = block->dome;
  for (gsize i = 0; i < n; i++) {
    Triple v = minus (stands_at (block, i), at);
    SqReal square = dot (v, v);
    gboolean apart = square >= (SqReal)(ON_IT_M * ON_IT_M);
    SqReal inverse = 1 / sq_real_sqrt (apart ? square : 1);
    SqReal cosine = -dot (v, normal_of (block, i)) * inverse;
    SqReal response = dome > 0 ? (1 + cosine) / 2 : sq_real_max (cosine, 0);
    directions->x[i] = dot (v, right) * inverse;
    directions->y[i] = dot (v, up) * inverse;
    directions->z[i] = dot (v, forward) * inverse;
    directions->weight[i] = apart ? response * (inverse * inverse) : 0;
  }
}

static void
sum_places (const SqFaceSums *sums,
            const SqFaceWay *way,
            const Receptors *block,
            gsize n,
            SqReal *restrict lux)
{
  Directions directions;
  SqReal candela[BLOCK];
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

/* Edges of a polygon as they lie from each receptor: the angle that one spans, as its sine and
 * cosine times a length, and n · Γ: how its plane's normal stands to the receptor's. */
typedef struct {
  SqReal sine[BLOCK], cosine[BLOCK], facing[BLOCK];
} Edges;

static inline void
set_edge (Edges *edges, gsize i, Triple a, Triple b, Triple normal)
{
  Triple plane = cross (a, b);
  SqReal length = sq_real_sqrt (dot (plane, plane));
  edges->sine[i] = length;
  edges->cosine[i] = dot (a, b);
  edges->facing[i] = dot (plane, normal) / (length > 0 ? length : 1);
}

/* + β · (n · Γ) */
static void
add_edges (const Edges *edges, gsize n, SqReal *restrict sum)
{
  for (gsize i = 0; i < n; i++)
    sum[i] += sq_real_atan2 (edges->sine[i], edges->cosine[i]) * edges->facing[i];
}

/* E = L/2 · | sum of β · (n · Γ) |, see light/area.h. */
static void
sum_contour (const SqFaceSums *sums, const Receptors *block, gsize n, SqReal *restrict lux)
{
  const SqReal half = (SqReal)(sums->luminance_cd_m2 / 2.0);
  Edges edges;
  SqReal sum[BLOCK] = { 0 };
  for (guint k = 0; k < sums->n_corners; k++) {
    const Triple from = place_of (sums, sums->corners[k]);
    const Triple to = place_of (sums, sums->corners[k + 1 < sums->n_corners ? k + 1 : 0]);
    for (gsize i = 0; i < n; i++) {
      Triple at = stands_at (block, i);
      set_edge (&edges, i, minus (from, at), minus (to, at), normal_of (block, i));
    }
    add_edges (&edges, n, sum);
  }
  for (gsize i = 0; i < n; i++)
    lux[i] = sq_real_abs (sum[i]) * half;
}

/* The corners of the ribbon go round: (-1, -1), (1, -1), (1, 1), (-1, 1). */
static void
sum_ribbon (const SqFaceSums *sums, const Receptors *block, gsize n, SqReal *restrict lux)
{
  const Triple at = place_of (sums, sums->at), axis = triple_of (sums->frame.right);
  const Triple along = times (axis, (SqReal)(sums->length_m / 2.0));
  const SqReal wide = (SqReal)(sums->across_m / 2.0), half = (SqReal)(sums->luminance_cd_m2 / 2.0);
  Edges edges;
  SqReal sum[BLOCK] = { 0 };
  for (int k = 0; k < 4; k++) {
    const SqReal from_along = k == 0 || k == 3 ? -1 : 1, from_across = k < 2 ? -1 : 1;
    const SqReal to_along = k < 2 ? 1 : -1, to_across = k == 0 || k == 3 ? -1 : 1;
    for (gsize i = 0; i < n; i++) {
      Triple middle = minus (at, stands_at (block, i));
      Triple aside = minus (middle, times (axis, dot (middle, axis)));
      SqReal square = dot (aside, aside);
      Triple across = times (cross (axis, aside), wide / sq_real_sqrt (square > 0 ? square : 1));
      Triple from = plus (middle, plus (times (along, from_along), times (across, from_across)));
      Triple to = plus (middle, plus (times (along, to_along), times (across, to_across)));
      set_edge (&edges, i, from, to, normal_of (block, i));
    }
    add_edges (&edges, n, sum);
  }
  for (gsize i = 0; i < n; i++)
    lux[i] = sq_real_abs (sum[i]) * half;
}

/* I / (2 D²) · ((2 - 2 √(1 - s²)) / s² + cosine), s the radius over the distance D: the solid angle
 * and the vector of an even ball, as sq_area_dome() adds them. */
static void
sum_ball_dome (const SqFaceSums *sums, const Receptors *block, gsize n, SqReal *restrict lux)
{
  const Triple at = place_of (sums, sums->at);
  const SqReal candela = (SqReal)(sums->intensity->peak_cd * sums->passing->factor);
  const SqReal radius_square = (SqReal)(sums->radius_m * sums->radius_m);
  for (gsize i = 0; i < n; i++) {
    Triple way = minus (at, stands_at (block, i));
    SqReal square = sq_real_max (dot (way, way), radius_square);
    SqReal cosine = dot (way, normal_of (block, i)) / sq_real_sqrt (square);
    SqReal spread = 2 / (1 + sq_real_sqrt (1 - radius_square / square));
    lux[i] = candela * (spread + cosine) / (2 * square);
  }
}

static void
sum_way (const SqFaceSums *sums, const SqFaceWay *way, const Receptors *run, gsize n, SqReal *lux)
{
  switch (way->kind) {
  case SQ_WAY_PLACES:
    sum_places (sums, way, run, n, lux);
    break;
  case SQ_WAY_CONTOUR:
    sum_contour (sums, run, n, lux);
    break;
  case SQ_WAY_RIBBON:
    sum_ribbon (sums, run, n, lux);
    break;
  case SQ_WAY_BALL_DOME:
    sum_ball_dome (sums, run, n, lux);
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
find_lux (const SqFaceSums *sums, const Receptors *receptors, gsize n, SqReal *lux)
{
  SqReal sorted[BLOCK];
  gboolean all = TRUE;
  for (gsize first = 0; first < n; first += BLOCK) {
    const gsize count = MIN (n - first, BLOCK);
    const Receptors block = receptors_from (receptors, first);
    sort (sums, &block, count, sorted);
    for (gsize from = 0, run = 0; from < count; from += run) {
      run = run_of (sorted + from, count - from);
      const Receptors alike = receptors_from (&block, from);
      const SqFaceWay *way = way_of (sums, sorted[from]);
      sum_way (sums, way, &alike, run, lux + first + from);
      all = all && way->kind != SQ_WAY_ELSEWHERE;
    }
  }
  return all;
}

extern const Kernel SQ_KERNEL;
const Kernel SQ_KERNEL = { SQ_KERNEL_NAME, find_candela, find_lux };
