/* tag.h: a lamp's tag: its number in a pill, its role's line under it, three rows beside it */
#pragma once

#include "draw/drawing.h"
#include "draw/tag-text.h"

G_BEGIN_DECLS

/* sq_tag_shape:
 * @left: the rows stand to the left of the pill
 * @pill: (out): the pill with its role line
 * @rows: (out): the plate behind the rows; of no width where there are none
 *
 * Both relative to the pill's middle. */
void sq_tag_shape (SqDrawing *drawing,
                   const SqTagText *text,
                   SqTagDetail detail,
                   gboolean left,
                   SqPaperBox *pill,
                   SqPaperBox *rows);

/* The pill itself, without its number: dashed and thin where the lamp is off. */
void sq_draw_pill (SqDrawing *drawing, SqPaperBox pill, gboolean on);

/* Changed by the look: a filled wedge, its tip at @tip, pointing right, or left. */
#define SQ_WEDGE_MM 1.2
void sq_draw_wedge (SqDrawing *drawing, SqPaperPoint tip, gboolean to_left);

/* @at: the pill's middle */
void sq_draw_tag (
  SqDrawing *drawing, SqPaperPoint at, const SqTagText *text, SqTagDetail detail, gboolean left);

G_END_DECLS
