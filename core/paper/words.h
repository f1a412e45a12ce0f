/* words.h: figures as the pages write them */
#pragma once

#include "base/quantity.h"

G_BEGIN_DECLS

/* `−1½`, `0`; `+2` where @signed_up; `–` for NAN. Returns: (transfer full) */
char *sq_stops_text (double stops, gboolean signed_up);

/* `4.0 : 1`, `16 : 1`; `–` for NAN. Returns: (transfer full) */
char *sq_ratio_text (double ratio);

/* A small length: `50 mm`, `2 in`. Returns: (transfer full) */
char *sq_fine_length_text (double length_m, SqUnits units);

/* What is in @text, or nothing at all as ``. */
const char *sq_said (const char *text);

G_END_DECLS
