/* map-picture.h: a light map by itself as a picture */
#pragma once

#include "light/map.h"

G_BEGIN_DECLS

/* Each point of the map is a square of whole pixels, north up, so that the picture is at least 800
 * pixels wide or high; coloured in the bands of draw/ramp.h; grey where a point lies inside
 * something. Returns: (transfer full): PNG */
GBytes *sq_map_picture_png (const SqLightMap *map);

G_END_DECLS
