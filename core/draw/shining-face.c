/* shining-face.c: what shines of a lamp, as it is drawn */
#include "draw/shining-face.h"

const SqModifier *
sq_soft_box (const SqFixture *fixture)
{
  const SqModifier *found = NULL;
  for (guint i = 0; fixture != NULL && i < fixture->modifiers->len; i++) {
    const SqModifier *modifier = SQ_AT (SqModifier, fixture->modifiers, i);
    if (modifier->kind == SQ_MODIFIER_SOFTBOX)
      found = modifier;
  }
  return found;
}

SqShiningFace
sq_shining_face (const SqClass *lamp_class, const SqFixture *fixture)
{
  const SqModifier *box = sq_soft_box (fixture);
  const SqFace *face = lamp_class->face;
  if (box != NULL)
    return (SqShiningFace){ box->width_m, box->height_m, box->shape == SQ_SHAPE_DISC };
  if (face != NULL)
    return (SqShiningFace){ face->width_m, sq_face_height_m (face), face->shape == SQ_SHAPE_DISC };
  return (SqShiningFace){ 0 };
}

double
sq_shining_extent_m (const SqShiningFace *face, double turned_deg)
{
  double across = fabs (face->width_m * cos (SQ_RADIANS (turned_deg)));
  double up = fabs (face->height_m * sin (SQ_RADIANS (turned_deg)));
  return face->disc ? hypot (across, up) : across + up;
}
