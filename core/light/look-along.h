/* look-along.h: which surfaces a line of sight meets, for spot readings */
#pragma once

#include "light/obstacles.h"

G_BEGIN_DECLS

typedef struct {
  SqPoint at;
  SqVector normal; /* unit length, toward the eye */
  double
    weight; /* cd/m² there for each lux it gets: passed by what is before it · reflectance / π */
} SqSurface;

/* sq_look_along:
 * @direction: unit length
 * @floor_reflectance: of the floor, z = 0
 *
 * Surfaces from the eye outward, through nets and panes, up to the first that lets nothing pass;
 * all taken as matt. An eye inside something sees nothing.
 *
 * Returns: (transfer full) (element-type SqSurface) */
GArray *sq_look_along (const GArray *obstacles,
                       double floor_reflectance,
                       SqPoint from,
                       SqVector direction);

G_END_DECLS
