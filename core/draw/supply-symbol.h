/* supply-symbol.h: generators, distributions and outlets on the plan */
#pragma once

#include "draw/lamp-symbol.h"
#include "draw/wall-shape.h"

G_BEGIN_DECLS

/* @angle_rad: (cairo's sense) an outlet's flat side lies across it; others stay upright */
void sq_draw_supply (SqDrawing *drawing, SqPaperPoint at, int kind, double angle_rad);
SqTurnedBox sq_supply_outline (SqPaperPoint at, int kind);

/* Away from the wall that @place stands at; up the page where there is none near. */
double sq_supply_angle_rad (const GArray *blocks, SqPlace place);

G_END_DECLS
