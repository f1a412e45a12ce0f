/* candela-formulas.h: what a lamp sends in one direction, and what its modifiers let through */
#pragma once

#include "light/intensity.h"
#include "light/passing.h"
#include "light/real.h"

G_BEGIN_DECLS

/* The formulas themselves, without branches that differ from one direction to the next, so that
 * loops over them can be vectors; they are documented at sq_intensity_cd() and sq_passing_share().
 * Directions are of unit length in the lamp's frame: x right, y up, z forward. */

/* A beam's profile, ready to be evaluated. */
typedef struct {
  SqReal peak_cd;
  SqReal per_square[2]; /* 1 / gb², across and up */
  SqReal power[2];      /* p / 2: of the square of g / gb */
} SqProfile;

static inline SqProfile
sq_profile_of (const SqIntensity *intensity)
{
  SqProfile profile = { .peak_cd = (SqReal)intensity->peak_cd };
  for (int way = 0; way < 2; way++) {
    profile.per_square[way] = (SqReal)(1.0 / (intensity->half_rad[way] * intensity->half_rad[way]));
    profile.power[way] = (SqReal)(intensity->steepness[way] / 2.0);
  }
  return profile;
}

/* The same across as up: then the direction about the axis is not asked for. */
static inline gboolean
sq_intensity_is_round (const SqIntensity *intensity)
{
  return intensity->half_rad[0] == intensity->half_rad[1] &&
         intensity->steepness[0] == intensity->steepness[1];
}

/* g², g the angle from the axis; for directions ahead. 1 - cos g = sin² g / (1 + cos g). */
static inline SqReal
sq_angle_square_of (SqReal aside_square, SqReal z)
{
  return sq_real_angle_square (aside_square / (1 + sq_real_max (z, 0)));
}

/* @square: (inout): g², then (g / gb)²; @power: (out): p / 2 in this direction. */
static inline void
sq_profile_oval (const SqProfile *profile, SqReal x, SqReal y, SqReal *square, SqReal *power)
{
  SqReal aside_square = x * x + y * y;
  SqReal across = x * x / (aside_square > 0 ? aside_square : 1), up = 1 - across;
  *square *= across * profile->per_square[0] + up * profile->per_square[1];
  *power = across * profile->power[0] + up * profile->power[1];
}

static inline SqReal
sq_beam_cd (const SqProfile *profile, gboolean round, SqReal x, SqReal y, SqReal z)
{
  SqReal square = sq_angle_square_of (x * x + y * y, z), power = profile->power[0];
  if (round)
    square *= profile->per_square[0];
  else
    sq_profile_oval (profile, x, y, &square, &power);
  /* peak · 2^-((g / gb)²)^(p / 2) */
  SqReal steps = sq_real_exp2 (power * sq_real_log2 (square));
  SqReal candela = profile->peak_cd * sq_real_exp2 (-steps);
  return z >= 0 && steps < SQ_BEAM_STEPS ? candela : 0;
}

static inline SqReal
sq_lambert_cd (SqReal peak_cd, SqReal z)
{
  return peak_cd * sq_real_max (z, 0);
}

static inline SqReal
sq_tube_cd (SqReal peak_cd, SqReal y, SqReal z)
{
  return peak_cd * sq_real_sqrt (y * y + z * z);
}

static inline SqReal
sq_skirt_cd (SqReal peak_cd, SqReal z)
{
  return z > 0 ? peak_cd : 0;
}

static inline SqReal
sq_half_scrim_share (const SqPassingPart *part, SqReal y)
{
  SqReal acting = (SqReal)0.5 + (SqReal)(part->side / part->blend_rad) * sq_real_asin (y);
  return 1 - sq_real_min (sq_real_max (acting, 0), 1) * (1 - (SqReal)part->passes);
}

static inline SqReal
sq_egg_crate_share (const SqPassingPart *part, SqReal x, SqReal y, SqReal z)
{
  SqReal per_tangent = 1 / ((z > 0 ? z : 1) * (SqReal)part->tangent);
  SqReal across = sq_real_max (1 - sq_real_abs (x) * per_tangent, 0);
  SqReal up = sq_real_max (1 - sq_real_abs (y) * per_tangent, 0);
  SqReal share = (SqReal)part->passes * across * up;
  return z > 0 ? share : 0;
}

static inline SqReal
sq_snoot_share (const SqPassingPart *part, SqReal x, SqReal y, SqReal z)
{
  SqReal s = sq_real_sqrt (x * x + y * y) / ((z > 0 ? z : 1) * (SqReal)part->tangent);
  SqReal within = sq_real_min (s, 1);
  SqReal share =
    (SqReal)M_2_PI * (sq_real_acos (within) - within * sq_real_sqrt (1 - within * within));
  return z > 0 ? share : 0;
}

G_END_DECLS
