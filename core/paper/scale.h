/* scale.h: drawing scales: read, written, and the usual ones */
#pragma once

#include "base/quantity.h"

G_BEGIN_DECLS

/* A scale is its denominator: 50 for 1:50, 48 for 1/4" = 1'-0". */

/* sq_scale_parse:
 * @text: `1:50`, or a length on paper and the length it stands for: `1/4"=1'`, `1/2" = 1'-0"`,
 *   `2 cm = 1 m`
 * @denominator: (out): 1 … 10000
 *
 * Returns: FALSE with SQ_ERROR_USAGE and one line that shows what would be understood */
gboolean sq_scale_parse (const char *text, double *denominator, GError **error);

/* `1:50`; in imperial, what the trade writes for its own scales: `1/4" = 1'-0"`.
 * Returns: (transfer full) */
char *sq_scale_format (double denominator, SqUnits units);

/* The usual scales, from the largest drawing to the smallest. ISO 5455: 1:1, 1:2, 1:5 × 10^n, with
 * 1:25 as common practice; imperial: inches to the foot.
 * Returns: a denominator, 0 past the last */
double sq_scale_usual (SqUnits units, guint n);

/* sq_scale_fit:
 * @width_m, @height_m: of what must fit @field_width_mm × @field_height_mm
 *
 * Returns: the usual scale that draws it largest, 0 if none will do */
double sq_scale_fit (
  SqUnits units, double width_m, double height_m, double field_width_mm, double field_height_mm);

/* Whether it fits at 1:@denominator, a hundredth of a millimetre given. */
gboolean sq_scale_fits (double denominator,
                        double width_m,
                        double height_m,
                        double field_width_mm,
                        double field_height_mm);

G_END_DECLS
