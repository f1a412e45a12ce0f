/* opening-symbol.h: windows, doors and holes in walls */
#pragma once

#include "draw/drawing.h"
#include "draw/wall-shape.h"

G_BEGIN_DECLS

/* @block has an opening. */
void sq_draw_opening (SqDrawing *drawing, const SqWallBlock *block);

/* `sill / head` beside a window. */
typedef struct {
  char *text;      /* owned; NULL: nothing to say */
  SqPaperPoint at; /* of the baseline's middle */
  double turn_rad;
  double length_mm;
  SqPaperBox box; /* upright box round it */
} SqOpeningText;

/* @room: a place on the side where the text shall stand
 * @beyond: on the other side nevertheless
 * @slide_mm: how far along the wall from the opening's middle */
SqOpeningText sq_opening_text (
  SqDrawing *drawing, const SqWallBlock *block, SqPlace room, gboolean beyond, double slide_mm);
void sq_draw_opening_text (SqDrawing *drawing, const SqOpeningText *text);

G_END_DECLS
