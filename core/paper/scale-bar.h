/* scale-bar.h: a bar that tells whether the printer kept the scale */
#pragma once

#include "draw/drawing.h"

G_BEGIN_DECLS

/* A bar of equal parts, as long as a ruler can check. */
typedef struct {
  double part_m; /* what one part stands for: 1 m, 1 ft … */
  int parts;
  int fine_parts; /* the first part again, divided: tenths, or half feet */
  double part_mm; /* on paper */
} SqScaleBar;

/* The longest of the usual bars within @most_mm at 1:@denominator. */
SqScaleBar sq_scale_bar (double denominator, SqUnits units, double most_mm);

/* Draws it with its left end at @at (its upper edge), figures above. */
void sq_draw_scale_bar (SqDrawing *drawing, SqPaperPoint at, const SqScaleBar *bar, SqUnits units);

/* `1:50. The bar is 100 mm long: check it before you scale off.` Returns: (transfer full) */
char *sq_scale_bar_text (const SqScaleBar *bar, double denominator, SqUnits units);

G_END_DECLS
