/* passing.c: what the things hung on a lamp let through, direction by direction */
#include "light/passing.h"

#include "light/candela-formulas.h"

static void
add_part (SqPassing *passing, SqPassingPart part, double detail_rad)
{
  g_array_append_val (passing->parts, part);
  passing->detail_rad = MIN (passing->detail_rad, detail_rad);
}

void
sq_passing_init (SqPassing *passing,
                 const SqScene *scene,
                 const SqFixture *fixture,
                 double half_up_rad)
{
  *passing = (SqPassing){
    .factor = 1.0,
    .parts = g_array_new (FALSE, FALSE, sizeof (SqPassingPart)),
    .detail_rad = INFINITY,
  };
  for (guint i = 0; i < fixture->modifiers->len; i++) {
    const SqModifier *modifier = SQ_AT (SqModifier, fixture->modifiers, i);
    double cutoff_rad = SQ_RADIANS (modifier->cutoff_deg);
    switch ((SqModifierKind)modifier->kind) {
    case SQ_MODIFIER_SCRIM:
      if (modifier->part == SQ_PART_FULL)
        passing->factor *= sq_steady_exp2 (-modifier->stops);
      else
        add_part (passing,
                  (SqPassingPart){ .kind = SQ_PASSING_HALF_SCRIM,
                                   .passes = sq_steady_exp2 (-modifier->stops),
                                   .side = modifier->part == SQ_PART_TOP ? 1.0 : -1.0,
                                   .blend_rad = half_up_rad / 4.0 },
                  half_up_rad / 4.0);
      break;
    case SQ_MODIFIER_GEL:
      passing->factor *= sq_scene_material (scene, modifier->material)->direct;
      break;
    case SQ_MODIFIER_EGG_CRATE:
      add_part (passing,
                (SqPassingPart){ .kind = SQ_PASSING_EGG_CRATE,
                                 .passes = modifier->transmission,
                                 .tangent = sq_steady_tan (cutoff_rad) },
                cutoff_rad / 4.0);
      break;
    case SQ_MODIFIER_SNOOT:
      add_part (passing,
                (SqPassingPart){ .kind = SQ_PASSING_SNOOT, .tangent = sq_steady_tan (cutoff_rad) },
                cutoff_rad / 4.0);
      break;
    case SQ_MODIFIER_DIFFUSION:
    case SQ_MODIFIER_SOFTBOX:
    case SQ_MODIFIER_DOORS:
    default:
      break;
    }
  }
}

void
sq_passing_clear (SqPassing *passing)
{
  g_clear_pointer (&passing->parts, g_array_unref);
}

static double
part_share (const SqPassingPart *part, SqVector direction)
{
  switch (part->kind) {
  case SQ_PASSING_HALF_SCRIM:
    return sq_half_scrim_share (part, direction.y);
  case SQ_PASSING_EGG_CRATE:
    return sq_egg_crate_share (part, direction.x, direction.y, direction.z);
  case SQ_PASSING_SNOOT:
  default:
    return sq_snoot_share (part, direction.x, direction.y, direction.z);
  }
}

double
sq_passing_share (const SqPassing *passing, SqVector direction)
{
  double share = passing->factor;
  for (guint i = 0; i < passing->parts->len; i++)
    share *= part_share (&g_array_index (passing->parts, SqPassingPart, i), direction);
  return share;
}
