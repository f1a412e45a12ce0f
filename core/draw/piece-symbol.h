/* piece-symbol.h: furniture and set pieces from above */
#pragma once

#include "draw/drawing.h"
#include "scene/scene.h"

G_BEGIN_DECLS

/* Without its label. What reaches from the floor past head height is drawn as cut, what hangs
 * overhead dashed. */
void sq_draw_piece (SqDrawing *drawing, const SqPiece *piece);

/* From the floor past head height: to the eye a column or a wall. */
gboolean sq_piece_is_column (const SqPiece *piece);

/* Upright box of its outline on paper. */
SqPaperBox sq_piece_box (const SqView *view, const SqPiece *piece);

/* sq_piece_label_fits:
 * @room: (out): within which the label's middle may lie
 * @turn_rad: (out): how it is turned, in cairo's sense
 *
 * Returns: FALSE where it does not fit inside the piece */
gboolean sq_piece_label_fits (
  SqDrawing *drawing, const SqPiece *piece, const SqType *type, SqPaperBox *room, double *turn_rad);

G_END_DECLS
