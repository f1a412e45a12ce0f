/* panel-symbol.h: grip on the plan: flags, nets, frames and bounces at their true width */
#pragma once

#include "draw/lamp-symbol.h"

G_BEGIN_DECLS

#define SQ_PANEL_LEAST_MM 4.0

/* A panel to draw; in a legend one of @width_m facing +x. */
typedef struct {
  int kind; /* SqPanelKind */
  SqPaperPoint at;
  double facing_deg, tilt_deg;
  double width_m; /* across, as seen from above */
  double rise_m;  /* its other side; seen where it is tilted */
} SqPanelMark;

SqPanelMark sq_panel_mark (const SqView *view, const SqPanel *panel);
SqTurnedBox sq_panel_outline (const SqView *view, const SqPanelMark *mark);
void sq_draw_panel (SqDrawing *drawing, const SqPanelMark *mark);

/* Flag, Net, Frame, Bounce. Returns: N_() */
const char *sq_panel_kind_word (int kind);

G_END_DECLS
