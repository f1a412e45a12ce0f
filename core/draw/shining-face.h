/* shining-face.h: what shines of a lamp, as it is drawn: its face, or the soft box before it */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

typedef struct {
  double width_m, height_m; /* both 0: a point */
  gboolean disc;            /* else a rectangle */
} SqShiningFace;

/* The last soft box in front, which replaces the face. @fixture: (nullable). Returns: (nullable) */
const SqModifier *sq_soft_box (const SqFixture *fixture);

/* @fixture: (nullable): what hangs in front of the class's own face */
SqShiningFace sq_shining_face (const SqClass *lamp_class, const SqFixture *fixture);

/* How far it reaches from side to side in a direction @turned_deg from its width: w |cos| + h |sin|
 * for the corners of a rectangle; for a disc, or what is drawn out of one, the root of the sum of
 * their squares. */
double sq_shining_extent_m (const SqShiningFace *face, double turned_deg);

G_END_DECLS
