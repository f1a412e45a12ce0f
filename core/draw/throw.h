/* throw.h: where a lamp's light goes on the plan: axis, beam edges, stop ticks */
#pragma once

#include "draw/beam-angles.h"
#include "draw/lamp-symbol.h"
#include "draw/ray-cut.h"

G_BEGIN_DECLS

/* Axis starts this far past the lamp's front. */
#define SQ_AXIS_CLEAR_MM 3.2

/* More ticks than this down an axis would be closer than they can be read. */
#define SQ_MOST_TICKS 16

typedef struct {
  gboolean any; /* FALSE: nothing to draw: all round, straight down, off, aimed at itself */
  int role_line;
  SqPaperLine axis; /* from the lamp's front to its aim or to what stops it */
  gboolean hard;
  SqPaperLine half[2], tenth[2]; /* left, right; where hard */
  gboolean with_tenth;
  int n_ticks;
  SqPaperPoint tick[SQ_MOST_TICKS]; /* tick[n]: n half-stops of distance, one stop, from the aim */
  gboolean aim_tick;                /* tick[0] is the aim itself and not hidden */
  double angle_rad;                 /* of the axis */
} SqThrow;

/* @many: the plan has so many hard lamps that a tenth is drawn for key, back and profiles alone */
SqThrow sq_throw (const SqView *view,
                  const SqScene *scene,
                  const GArray *blocks,
                  const SqFixture *fixture,
                  gboolean many);

/* Where tick @n stands: at 2^(-n/2) of the way from @source to @aim, n stops over the aim. Seen
 * from above that holds whatever the lamp's height. */
SqPaperPoint sq_tick_place (SqPaperPoint source, SqPaperPoint aim, int n);

void sq_draw_throw (SqDrawing *drawing, const SqThrow *way);

/* An edge at half of the peak, or, dashed, at a tenth. For legends too. */
void sq_draw_beam_edge (SqDrawing *drawing, SqPaperLine edge, gboolean tenth, SqColour colour);

/* One tick across @angle_rad: short and thin, or long and thick at the aim. For legends too. */
void sq_draw_tick (SqDrawing *drawing, SqPaperPoint at, double angle_rad, gboolean at_aim);

G_END_DECLS
