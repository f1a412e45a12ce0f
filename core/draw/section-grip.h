/* section-grip.h: flags, nets, frames and bounces on the cut, at their true heights */
#pragma once

#include "draw/section-set.h"

G_BEGIN_DECLS

/* How a panel lies on the cut. */
typedef struct {
  gboolean cut;     /* by the plane; else beside it */
  gboolean edge_on; /* a line from @from to @to; else an area with @outline */
  SqPlace from, to; /* its lowest and highest point */
  SqPlace outline[5];
  guint n;
} SqSidePanel;

/* sq_side_panel:
 * Returns: FALSE where it is not shown: not set, hidden, or off the cut and not near it */
gboolean sq_side_panel (const SqSectionSet *set, const SqPanel *panel, SqSidePanel *side);

/* Upright box of it on paper. */
SqPaperBox sq_side_panel_box (const SqView *view, const SqSidePanel *side);

/* All of them, those beside the cut first and thin. */
void sq_draw_section_grip (SqDrawing *drawing, const SqSectionSet *set);

/* What stands beside the cut is drawn between these two: as it is, but pale. */
void sq_draw_enter_near (SqDrawing *drawing);
void sq_draw_leave_near (SqDrawing *drawing);

G_END_DECLS
