/* dimension-line.h: a measured line (after ISO 129-1: extension lines, strokes, figure above) */
#pragma once

#include "draw/drawing.h"
#include "scene/paperwork.h"

G_BEGIN_DECLS

/* Returns: the upright box of its figure */
SqPaperBox sq_draw_dimension (SqDrawing *drawing, const SqDimensionLine *line);
/* What is drawn: two extension lines and the line itself. */
void sq_dimension_lines (const SqView *view, const SqDimensionLine *line, SqPaperLine lines[3]);
SqPaperBox sq_dimension_text_box (SqDrawing *drawing, const SqDimensionLine *line);

G_END_DECLS
