/* intensity.c: how a class of lamp sends light out: candela in a direction */
#include "light/intensity.h"

#include "light/candela-formulas.h"

static double
between_logs (double spot, double flood, double beam)
{
  return sq_steady_exp2 ((1.0 - beam) * sq_steady_log2 (spot) + beam * sq_steady_log2 (flood));
}

static SqIntensity
beam_intensity (const SqBeam *spot, const SqBeam *flood, double beam)
{
  const double half_deg[2][2] = {
    { spot->beam_deg.across, flood->beam_deg.across },
    { spot->beam_deg.up, flood->beam_deg.up },
  };
  const double tenth_deg[2][2] = {
    { spot->field_deg.across, flood->field_deg.across },
    { spot->field_deg.up, flood->field_deg.up },
  };
  SqIntensity intensity = {
    .sends = SQ_SENDS_BEAM,
    .peak_cd = between_logs (spot->peak_cd, flood->peak_cd, beam),
  };
  for (int way = 0; way < 2; way++) {
    double half = between_logs (half_deg[way][0], half_deg[way][1], beam);
    double tenth = between_logs (tenth_deg[way][0], tenth_deg[way][1], beam);
    intensity.half_rad[way] = SQ_RADIANS (half) / 2.0;
    intensity.steepness[way] = sq_steady_log2 (G_LN10 / G_LN2) / sq_steady_log2 (tenth / half);
  }
  return intensity;
}

SqIntensity
sq_intensity_of (const SqClass *class, double beam)
{
  static const struct {
    SqSends sends;
    double per_lumen;
  } shapes[] = {
    [SQ_EMITS_LAMBERT] = { SQ_SENDS_LAMBERT, 1.0 / G_PI },
    [SQ_EMITS_SPHERE] = { SQ_SENDS_SPHERE, 1.0 / (4.0 * G_PI) },
    [SQ_EMITS_TUBE] = { SQ_SENDS_TUBE, 1.0 / (G_PI * G_PI) },
    [SQ_EMITS_SKIRT] = { SQ_SENDS_SKIRT, 1.0 / (2.0 * G_PI) },
  };

  if (class->photometry)
    return (SqIntensity){ SQ_SENDS_NOTHING };
  if (class->emits != SQ_EMITS_BY_BEAM)
    return (SqIntensity){
      .sends = shapes[class->emits].sends,
      .peak_cd = class->lumens * shapes[class->emits].per_lumen,
    };
  if (class->beams->len == 0)
    return (SqIntensity){ SQ_SENDS_NOTHING };
  const SqBeam *spot = g_ptr_array_index (class->beams, 0);
  const SqBeam *flood = g_ptr_array_index (class->beams, class->beams->len - 1);
  return beam_intensity (spot, flood, beam);
}

double
sq_intensity_cd (const SqIntensity *intensity, SqVector direction)
{
  double peak_cd = intensity->peak_cd, x = direction.x, y = direction.y, z = direction.z;
  SqProfile profile;
  switch (intensity->sends) {
  case SQ_SENDS_BEAM:
    profile = sq_profile_of (intensity);
    return sq_beam_cd (&profile, sq_intensity_is_round (intensity), x, y, z);
  case SQ_SENDS_LAMBERT:
    return sq_lambert_cd (peak_cd, z);
  case SQ_SENDS_SPHERE:
    return peak_cd;
  case SQ_SENDS_TUBE:
    return sq_tube_cd (peak_cd, y, z);
  case SQ_SENDS_SKIRT:
    return sq_skirt_cd (peak_cd, z);
  case SQ_SENDS_NOTHING:
  default:
    return 0.0;
  }
}

double
sq_intensity_reach_rad (const SqIntensity *intensity, double dim)
{
  if (intensity->sends != SQ_SENDS_BEAM)
    return G_PI_2;
  /* Between across and up both are mixed. */
  double softest = MIN (intensity->steepness[0], intensity->steepness[1]);
  double times = sq_steady_pow (-sq_steady_log2 (dim), 1.0 / softest);
  return MIN (times * MAX (intensity->half_rad[0], intensity->half_rad[1]), G_PI_2);
}

double
sq_intensity_half_up_rad (const SqIntensity *intensity)
{
  if (intensity->sends == SQ_SENDS_BEAM)
    return intensity->half_rad[1];
  return intensity->sends == SQ_SENDS_LAMBERT ? G_PI / 3.0 : G_PI_2;
}

double
sq_intensity_detail_rad (const SqIntensity *intensity)
{
  if (intensity->sends != SQ_SENDS_BEAM)
    return G_PI_2;
  double detail = G_PI_2;
  for (int way = 0; way < 2; way++) {
    double soft = MIN (1.0, 2.0 / intensity->steepness[way]); /* a steep edge is that much finer */
    detail = MIN (detail, intensity->half_rad[way] * soft);
  }
  return detail;
}
