/* section-figure.h: people from the side: standing, sitting, lying, and which way they face */
#pragma once

#include "draw/drawing.h"
#include "draw/section-cut.h"

G_BEGIN_DECLS

/* sq_draw_section_figure:
 * @thin: beside the cut: an outline alone
 *
 * To scale, by stature and posture; a nose says which way somebody faces, to the left, to the
 * right, or, with both ears seen, toward the eye; from behind there is none. */
void sq_draw_section_figure (SqDrawing *drawing,
                             const SqCutPlane *plane,
                             const SqMark *mark,
                             gboolean thin);

/* Upright boxes on paper of its head (the first) and of the rest, for labels to keep clear of. */
#define SQ_FIGURE_BOXES 3
guint sq_section_figure_boxes (const SqView *view,
                               const SqCutPlane *plane,
                               const SqMark *mark,
                               SqPaperBox boxes[SQ_FIGURE_BOXES]);

G_END_DECLS
