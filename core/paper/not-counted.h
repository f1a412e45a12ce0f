/* not-counted.h: what of the light is not counted, said once for all that have it in common */
#pragma once

#include "light/readings.h"

G_BEGIN_DECLS

/* sq_not_counted_lines:
 * @more: (nullable) (element-type utf8): further lines, such as a map's
 *
 * SqReadings.not_counted by what is left out, in the order in which it first comes: `1, 4: soft box
 * (counted as if it were not there)`, units by number. Returns: (transfer full) (element-type utf8)
 */
GPtrArray *sq_not_counted_lines (const SqReadings *readings, const GPtrArray *more);

G_END_DECLS
