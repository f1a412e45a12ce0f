/* receivers.h: the level grid of points at which a map reads light */
#pragma once

#include "base/geometry.h"

G_BEGIN_DECLS

/* Points stand at first + column · step along x and first + row · step along y, all at one height;
 * row 0 is the lowest on the page. */
typedef struct {
  SqPlace first;
  double step_m;
  double height_m;
  int columns, rows;
} SqReceiverGrid;

/* And which way they look. */
typedef struct {
  SqReceiverGrid grid;
  int normal;     /* SqNormal */
  SqPoint camera; /* not given: cameras stand far below the page */
} SqReceivers;

/* How they are read. */
typedef enum {
  SQ_WAY_EXACT, /* double precision: whatever a person reads as a number */
  SQ_WAY_QUICK, /* single precision, for the eye while something moves */
} SqWay;

static inline SqPoint
sq_receiver_point (const SqReceiverGrid *grid, int column, int row)
{
  return sq_point (grid->first.x_m + column * grid->step_m, grid->first.y_m + row * grid->step_m,
                   grid->height_m);
}

G_END_DECLS
