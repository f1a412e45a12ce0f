/* left-out.h: what of a scene's light is not counted as yet, said line by line */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* Lines such as `f3: diffusion on the lamp (counted as if it were not there)`, in the order of the
 * file. Lamps that are dark and panels that are struck say nothing.
 * Returns: (transfer full) (element-type utf8) */
GPtrArray *sq_light_left_out (const SqScene *scene);

G_END_DECLS
