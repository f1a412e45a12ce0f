/* lamp-rows.h: one lamp's light over the rows of a receiver grid, at unit output */
#pragma once

#include "light/fast-shadow.h"
#include "light/row-scratch.h"
#include "light/shade.h"
#include "light/whole-face.h"

G_BEGIN_DECLS

/* Of the grid's step: how far the regions of a lamp that is small against it are on the safe side,
 * for the eye: so far that they hold all points whose cell an edge crosses. */
#define SQ_SAFE_SMALL 0.75

/* A lamp, and what stands in its way, made ready for a grid. */
typedef struct {
  const SqLamp *lamp;
  const SqReceivers *receivers;
  GArray *shades;          /* SqShade: the lamp's doors first, then the scene's obstacles */
  guint n_doors;           /* how many of them are doors */
  const GArray *obstacles; /* borrowed; SqShade.index is of these, or of the doors */
  SqLampHull hull;
  SqRegion lit;        /* before the lamp's face, within its reach */
  SqRegionCut *ground; /* the same, for shades to begin with */
  SqWholeFace *whole;  /* how its light is summed where all of it is seen */

  /* For the eye only. */
  gboolean small;     /* against the grid's step, so that it is taken for a point */
  SqFaceLines *lines; /* (nullable): over a flat face */
  GArray *shadows;    /* (nullable): SqFastShadow: one for each of @shades, on those lines */
} SqLampRows;

void sq_lamp_rows_init (SqLampRows *rows,
                        const SqLamp *lamp,
                        const GArray *obstacles,
                        const SqReceivers *receivers,
                        SqWay way);
/* The same in steps: the lamp's own doors alone; an obstacle more, which returns its shade or NULL
 * if it hides nothing; a shade moved over from @other, where it is number @k, to be that
 * of obstacle @index. Indices must rise. */
void sq_lamp_rows_init_bare (SqLampRows *rows,
                             const SqLamp *lamp,
                             const GArray *obstacles,
                             const SqReceivers *receivers,
                             SqWay way);
const SqShade *sq_lamp_rows_add (SqLampRows *rows, guint index);
void sq_lamp_rows_take (SqLampRows *rows, SqLampRows *other, guint k, guint index);
/* The same for a lamp that sends the same, and obstacles that stand the same, elsewhere in memory.
 */
void sq_lamp_rows_point_at (SqLampRows *rows,
                            const SqLamp *lamp,
                            const GArray *obstacles,
                            SqWay way);
void sq_lamp_rows_clear (SqLampRows *rows);

/* sq_lamp_rows_exact:
 * @first_row, @n_rows: at most SQ_BLOCK_ROWS
 * @only: (nullable) (array length=n_rows): columns that are wanted; others are left as they are
 * @lux: (out): n_rows × columns, for one unit of output
 *
 * The same bits as sq_lamp_see_past_all() and sq_lamp_unit_lux() at each point, whatever @only is.
 */
void sq_lamp_rows_exact (const SqLampRows *rows,
                         int first_row,
                         int n_rows,
                         const SqSpan *only,
                         SqRowScratch *scratch,
                         double *lux);

/* sq_lamp_rows_quick:
 *
 * The same for the eye, of @rows that were made for it. Over random sets full of obstacles it is
 * within 0.02 rms of the map's greatest light, and a hundredth of the points are off by more than
 * 0.03 of that; of a point's own light it is within 0.15 rms, and a seventh are off by more than
 * 0.03: in the edges of shadows, right beside faces, and most where something hides part of a lamp
 * behind an egg crate or a snoot, whose face is weighed as if it were even. Edges of a lamp that is
 * small against the grid's step are smoothed over a cell and a half. A point's last digits may
 * depend on @only. */
void sq_lamp_rows_quick (const SqLampRows *rows,
                         int first_row,
                         int n_rows,
                         const SqSpan *only,
                         SqRowScratch *scratch,
                         float *lux);

G_END_DECLS
