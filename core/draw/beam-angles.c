/* beam-angles.c: how wide a lamp's beam is drawn */
#include "draw/beam-angles.h"

/* Cloth that spreads this far makes a Lambertian face of itself. */
#define LAMBERT_SPREAD_DEG 60.0

static double
between (double spot_deg, double flood_deg, double beam)
{
  return exp ((1.0 - beam) * log (spot_deg) + beam * log (flood_deg));
}

/* Rolled, an elliptical beam is as wide on the plan as in this direction. */
static double
across (SqSpread spot, SqSpread flood, double beam, double roll_deg)
{
  double c = cos (SQ_RADIANS (roll_deg)), s = sin (SQ_RADIANS (roll_deg));
  return 1.0 / hypot (c / between (spot.across, flood.across, beam),
                      s / between (spot.up, flood.up, beam));
}

/* Full angle at which the tangent is @share of that of the cut-off. */
static double
cut_deg (double cutoff_deg, double share)
{
  return 2.0 * SQ_DEGREES (atan (share * tan (SQ_RADIANS (cutoff_deg))));
}

static gboolean
modify (const SqScene *scene, const SqModifier *modifier, double *half_deg, double *tenth_deg)
{
  const SqMaterial *cloth;
  switch (modifier->kind) {
  case SQ_MODIFIER_SOFTBOX:
    return FALSE;
  case SQ_MODIFIER_DIFFUSION:
    cloth = sq_scene_material (scene, modifier->material);
    if (cloth == NULL || cloth->spread_deg >= LAMBERT_SPREAD_DEG)
      return FALSE;
    *half_deg = hypot (*half_deg, 2.0 * cloth->spread_deg);
    /* The lobe's own tenth, as far out as a bell curve's: sqrt (ln 10 / ln 2) times its half. */
    *tenth_deg = hypot (*tenth_deg, 2.0 * cloth->spread_deg * sqrt (log (10) / log (2)));
    return TRUE;
  case SQ_MODIFIER_SNOOT: /* two discs that part: half at 0.404 of the tangent, a tenth at 0.805 */
    *half_deg = MIN (*half_deg, cut_deg (modifier->cutoff_deg, 0.404));
    *tenth_deg = MIN (*tenth_deg, cut_deg (modifier->cutoff_deg, 0.805));
    return TRUE;
  case SQ_MODIFIER_EGG_CRATE: /* 1 - tan a / tan c */
    *half_deg = MIN (*half_deg, cut_deg (modifier->cutoff_deg, 0.5));
    *tenth_deg = MIN (*tenth_deg, cut_deg (modifier->cutoff_deg, 0.9));
    return TRUE;
  default:
    return TRUE;
  }
}

gboolean
sq_fixture_beam_deg (const SqScene *scene,
                     const SqFixture *fixture,
                     double *half_deg,
                     double *tenth_deg)
{
  const SqClass *lamp_class = sq_scene_class (scene, fixture->class_id);
  if (lamp_class->beams->len == 0)
    return FALSE;
  const SqBeam *spot = SQ_AT (SqBeam, lamp_class->beams, 0);
  const SqBeam *flood = SQ_AT (SqBeam, lamp_class->beams, lamp_class->beams->len - 1);

  *half_deg = across (spot->beam_deg, flood->beam_deg, fixture->beam, fixture->roll_deg);
  *tenth_deg = across (spot->field_deg, flood->field_deg, fixture->beam, fixture->roll_deg);
  for (guint i = 0; i < fixture->modifiers->len; i++)
    if (!modify (scene, SQ_AT (SqModifier, fixture->modifiers, i), half_deg, tenth_deg))
      return FALSE;
  return TRUE;
}

gboolean
sq_fixture_is_hard (const SqScene *scene, const SqFixture *fixture)
{
  double half, tenth;
  return sq_fixture_beam_deg (scene, fixture, &half, &tenth) && half < SQ_HARD_BEAM_DEG;
}
