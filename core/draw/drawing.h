/* drawing.h: a page being drawn: cairo in millimetres, pens, dashes and text by cap height
 *
 * Whoever makes the surface sets it up so that one cairo unit is one millimetre, y downward. */
#pragma once

#include "draw/ink.h"
#include "draw/layer.h"

#include <pango/pangocairo.h>

G_BEGIN_DECLS

typedef struct {
  cairo_t *cairo;
  double pale_alpha; /* of what is being drawn pale; else 0 */
  struct SqSvg *svg; /* (nullable): what @cairo belongs to; it is written instead of painted */
  const SqView *view;
  PangoContext *text; /* rounding and hinting off: spacing would break at millimetre units */
} SqDrawing;

/* A drawing over @cairo and @view, which outlive it. Paths, matrix and the pen's manners are set on
 * @cairo; all that paints or clips goes through the calls below, which know where it goes. */
SqDrawing *sq_drawing_new (cairo_t *cairo, const SqView *view);
void sq_drawing_free (SqDrawing *drawing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqDrawing, sq_drawing_free)

/* Strokes or fills the current path and clears it. Pens go through sq_view_pen_mm(). */
void sq_draw_stroke (SqDrawing *drawing, double pen_mm, SqColour colour);
void sq_draw_stroke_dashed (
  SqDrawing *drawing, double pen_mm, SqColour colour, const double *dash_mm, int n_dashes);
void sq_draw_fill (SqDrawing *drawing, SqColour colour, double alpha);

/* Fills in one colour that is @from_alpha at @from and @to_alpha at @to, straight between. */
void sq_draw_fade (SqDrawing *drawing,
                   SqColour colour,
                   SqPaperPoint from,
                   double from_alpha,
                   SqPaperPoint to,
                   double to_alpha);

/* Fills the current path with @fill, outlines it in ink and clears it. */
void sq_draw_outlined (SqDrawing *drawing, SqInk fill, double pen_mm);

/* Nothing is drawn outside the current path any more until the second is called, which also brings
 * back the rest of cairo's state; they nest. */
void sq_draw_clip (SqDrawing *drawing);
void sq_draw_clip_to (SqDrawing *drawing, SqPaperBox box); /* a box for the path */
void sq_draw_unclip (SqDrawing *drawing);

/* What is drawn between the two keeps @alpha of itself, as one picture; they do not nest. */
void sq_draw_pale (SqDrawing *drawing, double alpha);
void sq_draw_unpale (SqDrawing *drawing);

/* What follows belongs to @layer. Only files that have layers take notice. */
void sq_draw_layer (SqDrawing *drawing, SqLayer layer);

/* Straight lines and common shapes, each stroked or filled at once. */
void sq_draw_line (
  SqDrawing *drawing, SqPaperPoint a, SqPaperPoint b, double pen_mm, SqColour colour);
void sq_draw_dot (SqDrawing *drawing, SqPaperPoint at, double radius_mm, SqColour colour);
void sq_draw_box_path (SqDrawing *drawing, SqPaperBox box, double corner_mm);

void sq_draw_polyline (SqDrawing *drawing, const SqPaperPoint *points, guint n, gboolean closed);
void sq_draw_circle_path (SqDrawing *drawing, SqPaperPoint middle, double radius_mm);

/* A filled head at @to, @head_mm long, on a shaft from @from. */
void sq_draw_arrow (SqDrawing *drawing,
                    SqPaperPoint from,
                    SqPaperPoint to,
                    double pen_mm,
                    SqColour colour,
                    const double *dash_mm,
                    int n_dashes,
                    double head_mm);

/* Dots from @from to @to, evenly, at most @step_mm apart, one at each end. */
void sq_draw_dots (SqDrawing *drawing,
                   SqPaperPoint from,
                   SqPaperPoint to,
                   double step_mm,
                   double radius_mm,
                   SqColour colour);

/* A frame of its own: origin at @at, x along @angle_rad (cairo's sense). Undone by the second. */
void sq_draw_enter (SqDrawing *drawing, SqPaperPoint at, double angle_rad);
void sq_draw_leave (SqDrawing *drawing);

typedef enum {
  SQ_ALIGN_LEFT,
  SQ_ALIGN_CENTRE,
  SQ_ALIGN_RIGHT,
} SqAlign;

typedef struct {
  double cap_mm;
  int weight;    /* 400, 500, 600, 700 */
  SqAlign align; /* of the text about its point */
  SqColour colour;
  double tracking_em; /* 0.08 for role words */
  double width_mm;    /* 0: one line; else wrapped, or cut with an ellipsis where @one_line */
  gboolean one_line;
  gboolean halo;   /* the ground's colour round each letter */
  double turn_rad; /* for cairo, about its point */
} SqType;

/* Draws @text with its (first) baseline at @at. Tabular figures are on. Returns: its height in
 * millimetres from the first baseline to the last */
double sq_draw_text (SqDrawing *drawing, SqPaperPoint at, const char *text, const SqType *type);

/* What sq_draw_text() would take up, as a box relative to its point, turn left out: from cap height
 * to the depth of descenders. */
SqPaperBox sq_text_box (SqDrawing *drawing, const char *text, const SqType *type);
double sq_text_width_mm (SqDrawing *drawing, const char *text, const SqType *type);

G_END_DECLS
