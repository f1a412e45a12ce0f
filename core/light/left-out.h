/* left-out.h: what of a scene's light is not counted, and why, said line by line */
#pragma once

#include "light/obstacles.h"

G_BEGIN_DECLS

/* sq_light_left_out:
 * @obstacles: (element-type SqObstacle): of @scene
 *
 * Lines such as `f3: diffusion on the lamp (counted as if it were not there)`, in the order of the
 * file; and what stands inside something solid, where it is dark. Lamps that are dark and panels
 * that are struck say nothing. Returns: (transfer full) (element-type utf8) */
GPtrArray *sq_light_left_out (const SqScene *scene, const GArray *obstacles);

G_END_DECLS
