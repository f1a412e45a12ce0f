/* intensity.c: how a class of lamp sends light out: candela in a direction */
#include "light/intensity.h"

static double
between_logs (double spot, double flood, double beam)
{
  return exp ((1.0 - beam) * log (spot) + beam * log (flood));
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
    intensity.steepness[way] = log (G_LN10 / G_LN2) / log (tenth / half);
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

static double
beam_cd (const SqIntensity *intensity, SqVector direction)
{
  double aside = hypot (direction.x, direction.y);
  double g = atan2 (aside, direction.z);
  if (g > G_PI_2)
    return 0.0;
  if (aside <= 0.0)
    return intensity->peak_cd;
  double cosine = direction.x / aside, sine = direction.y / aside;
  double across = g * cosine / intensity->half_rad[0], up = g * sine / intensity->half_rad[1];
  double steepness =
    intensity->steepness[0] * cosine * cosine + intensity->steepness[1] * sine * sine;
  return intensity->peak_cd * exp (-G_LN2 * pow (hypot (across, up), steepness));
}

double
sq_intensity_cd (const SqIntensity *intensity, SqVector direction)
{
  switch (intensity->sends) {
  case SQ_SENDS_BEAM:
    return beam_cd (intensity, direction);
  case SQ_SENDS_LAMBERT:
    return intensity->peak_cd * MAX (direction.z, 0.0);
  case SQ_SENDS_SPHERE:
    return intensity->peak_cd;
  case SQ_SENDS_TUBE:
    return intensity->peak_cd * hypot (direction.y, direction.z);
  case SQ_SENDS_SKIRT:
    return direction.z > 0.0 ? intensity->peak_cd : 0.0;
  case SQ_SENDS_NOTHING:
  default:
    return 0.0;
  }
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
