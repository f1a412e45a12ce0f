/* inside.h: which points of a receiver grid are inside something solid */
#pragma once

#include "light/obstacles.h"
#include "light/region.h"

G_BEGIN_DECLS

/* Made for a grid; may be asked again and again while nothing moves. */
typedef struct {
  GArray *obstacles; /* a reference */
  SqReceiverGrid grid;
  GArray *sections; /* what of each solid is on the grid */
  GArray **found;   /* of each block of rows: the points, once somebody asked */
} SqInside;

void sq_inside_init (SqInside *inside, GArray *obstacles, const SqReceiverGrid *grid);
void sq_inside_clear (SqInside *inside); /* also of what is all 0 */

/* TRUE if @inside is all 0, or was made for other obstacles or another grid. */
gboolean sq_inside_is_of_others (const SqInside *inside,
                                 const GArray *obstacles,
                                 const SqReceiverGrid *grid);

/* Writes NAN into @lux, n_rows × columns from @first_row on, wherever sq_obstacles_hold() is TRUE.
 * @first_row is a multiple of SQ_BLOCK_ROWS, and so are @n_rows but for the last ones; a block is
 * for one thread at a time. */
void sq_inside_mark (SqInside *inside, int first_row, int n_rows, double *lux);

G_END_DECLS
