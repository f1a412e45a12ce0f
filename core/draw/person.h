/* person.h: people on the plan: standing, sitting, lying, and the way they walk */
#pragma once

#include "draw/drawing.h"
#include "scene/mark.h"
#include "scene/set.h"

G_BEGIN_DECLS

/* Sizes of a grown figure seen from above, in metres (common practice). */
#define SQ_SHOULDERS_WIDE_M 0.48
#define SQ_SHOULDERS_DEEP_M 0.27
#define SQ_HEAD_RADIUS_M 0.095

/* People stay large enough to read however small the scale is. */
double sq_person_mm_per_m (const SqView *view);

/* sq_person_outline:
 * @parts: (out): the shoulders, then the legs of one who sits or the blanket of one who lies
 *
 * Returns: how many parts there are */
#define SQ_PERSON_PARTS 2
guint sq_person_outline (const SqView *view,
                         SqPaperPoint at,
                         double facing_deg,
                         int posture,
                         SqTurnedBox parts[SQ_PERSON_PARTS]);

void sq_draw_person (SqDrawing *drawing, SqPaperPoint at, double facing_deg, int posture);

/* The walk of @mark from where it stands along what of its path is still ahead of it; nothing where
 * there is none. */
void sq_draw_walk (SqDrawing *drawing, const SqMark *mark);

G_END_DECLS
