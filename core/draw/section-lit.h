/* section-lit.h: whether a lamp sends any light toward somebody */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* sq_section_shines_on:
 * @light: one of @scene's fixtures
 *
 * FALSE if the lamp is dark, or nothing of the figure, from the foot to the crown, is before its
 * face and within what its beam, crate or snoot lets through, seen from the face's middle. What
 * stands between is not looked at. */
gboolean sq_section_shines_on (const SqScene *scene, const SqFixture *light, const SqMark *mark);

/* sq_section_toward_cd:
 * @lamps: of sq_lamps_new() (light/lamp.h)
 *
 * The most that @light sends, as it burns, toward any height of the figure, in candela; 0 where
 * sq_section_shines_on() is FALSE. */
double sq_section_toward_cd (const GArray *lamps, const SqFixture *light, const SqMark *mark);

G_END_DECLS
