/* svg-private.h: what the parts of the SVG writer share; for svg-*.c alone */
#pragma once

#include "draw/svg-writer.h"

G_BEGIN_DECLS

/* Opens the groups in which the next element stands: those of its layer and all that hold.
 * Returns: (transfer none): where it is written */
GString *sq_svg_open (SqSvg *svg);

/* From the current frame to the page, and how much longer a length becomes on the way. */
cairo_matrix_t sq_svg_page_matrix (const SqSvg *svg);
double sq_svg_page_scale (const cairo_matrix_t *matrix);

/* Appends @value to three decimals, without those that are 0, in any locale. What is not finite or
 * beyond a kilometre ends there. */
void sq_svg_put_number (GString *to, double value);

/* Appends ` ATTRIBUTE="…"`: a number; `#rrggbb`, and how much of it, where that is not all. */
void sq_svg_put_value (GString *to, const char *attribute, double value);
void sq_svg_put_colour (GString *to, const char *attribute, SqColour colour, double alpha);

/* Appends @text so that XML 1.0 (section 2.2) can hold it: markup escaped, breaks and tabs as
 * spaces, U+FFFD for characters that no file may hold and for what is no UTF-8. */
void sq_svg_put_words (GString *to, const char *text);

G_END_DECLS
