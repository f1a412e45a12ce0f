/* passing.c: what the things hung on a lamp let through, direction by direction */
#include "light/passing.h"

typedef enum {
  HALF_SCRIM,
  EGG_CRATE,
  SNOOT,
} PartKind;

typedef struct {
  PartKind kind;
  double passes;    /* half scrim: where it acts; egg crate: straight on */
  double side;      /* half scrim: 1 acts above, -1 below */
  double blend_rad; /* half scrim */
  double tangent;   /* egg crate, snoot: of the cut-off */
} Part;

static void
add_part (SqPassing *passing, Part part, double detail_rad)
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
    .parts = g_array_new (FALSE, FALSE, sizeof (Part)),
    .detail_rad = INFINITY,
  };
  for (guint i = 0; i < fixture->modifiers->len; i++) {
    const SqModifier *modifier = SQ_AT (SqModifier, fixture->modifiers, i);
    double cutoff_rad = SQ_RADIANS (modifier->cutoff_deg);
    switch ((SqModifierKind)modifier->kind) {
    case SQ_MODIFIER_SCRIM:
      if (modifier->part == SQ_PART_FULL)
        passing->factor *= exp2 (-modifier->stops);
      else
        add_part (passing,
                  (Part){ .kind = HALF_SCRIM,
                          .passes = exp2 (-modifier->stops),
                          .side = modifier->part == SQ_PART_TOP ? 1.0 : -1.0,
                          .blend_rad = half_up_rad / 4.0 },
                  half_up_rad / 4.0);
      break;
    case SQ_MODIFIER_GEL:
      passing->factor *= sq_scene_material (scene, modifier->material)->direct;
      break;
    case SQ_MODIFIER_EGG_CRATE:
      add_part (
        passing,
        (Part){ .kind = EGG_CRATE, .passes = modifier->transmission, .tangent = tan (cutoff_rad) },
        cutoff_rad / 2.0);
      break;
    case SQ_MODIFIER_SNOOT:
      add_part (passing, (Part){ .kind = SNOOT, .tangent = tan (cutoff_rad) }, cutoff_rad / 2.0);
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
part_share (const Part *part, SqVector direction)
{
  if (part->kind == HALF_SCRIM) {
    double above_rad = part->side * asin (CLAMP (direction.y, -1.0, 1.0));
    double acting = CLAMP (0.5 + above_rad / part->blend_rad, 0.0, 1.0);
    return 1.0 - acting * (1.0 - part->passes);
  }
  if (direction.z <= 0.0)
    return 0.0;
  if (part->kind == EGG_CRATE) {
    double across = 1.0 - fabs (direction.x / direction.z) / part->tangent;
    double up = 1.0 - fabs (direction.y / direction.z) / part->tangent;
    return part->passes * MAX (across, 0.0) * MAX (up, 0.0);
  }
  double s = hypot (direction.x, direction.y) / direction.z / part->tangent;
  return s < 1.0 ? M_2_PI * (acos (s) - s * sqrt (1.0 - s * s)) : 0.0;
}

double
sq_passing_share (const SqPassing *passing, SqVector direction)
{
  double share = passing->factor;
  for (guint i = 0; i < passing->parts->len && share > 0.0; i++)
    share *= part_share (&g_array_index (passing->parts, Part, i), direction);
  return share;
}
