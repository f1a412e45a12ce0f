/* wall-drawing.h: walls cut through, seen from above */
#pragma once

#include "draw/drawing.h"
#include "draw/wall-shape.h"

G_BEGIN_DECLS

/* Cut walls grey with one outline round all that touch; wild ones dashed, without grey. */
void sq_draw_walls (SqDrawing *drawing, const GArray *blocks);

G_END_DECLS
