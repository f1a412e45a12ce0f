/* inside.h: which points of a receiver grid are inside something solid */
#pragma once

#include "light/obstacles.h"
#include "light/region.h"

G_BEGIN_DECLS

/* Made once for a grid. */
typedef struct {
  const GArray *obstacles; /* borrowed */
  SqReceiverGrid grid;
  GArray *sections; /* what of each solid is on the grid */
} SqInside;

void sq_inside_init (SqInside *inside, const GArray *obstacles, const SqReceiverGrid *grid);
void sq_inside_clear (SqInside *inside);

/* Writes NAN into @lux, n_rows × columns from @first_row, at most SQ_BLOCK_ROWS rows, wherever
 * sq_obstacles_hold() is TRUE. */
void sq_inside_mark (const SqInside *inside, int first_row, int n_rows, double *lux);

G_END_DECLS
