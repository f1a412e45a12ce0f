/* wall-shape.h: walls as blocks: straight runs with mitred corners, and the openings between them
 */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* A straight piece of wall seen from above. Corners run counter-clockwise: 0 → 1 along the right
 * face in the path's direction, 2 → 3 back along the left one. */
typedef struct {
  const SqWall *wall;
  const SqOpening *opening; /* (nullable): this is where it stands, not wall */
  SqPlace corner[4];
  double height_m; /* of the wall */
} SqWallBlock;

/* All walls of @scene that are not hidden. Returns: (transfer full): of SqWallBlock */
GArray *sq_wall_blocks (const SqScene *scene);

static inline const SqWallBlock *
sq_wall_block_at (const GArray *blocks, guint i)
{
  return &g_array_index (blocks, SqWallBlock, i);
}

/* TRUE if @place lies in @block, within @margin_m outside its edges too; less than 0: only what is
 * so far inside of them. */
gboolean sq_wall_block_holds (const SqWallBlock *block, SqPlace place, double margin_m);

G_END_DECLS
