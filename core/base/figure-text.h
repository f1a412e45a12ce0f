/* figure-text.h: stops and ratios as every page, table and panel writes them */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* `−1½`, `0`; `+2` where @signed_up; `–` for NAN. Returns: (transfer full) */
char *sq_stops_text (double stops, gboolean signed_up);

/* `4.0 : 1`, `16 : 1`; `–` for NAN. Returns: (transfer full) */
char *sq_ratio_text (double ratio);

/* The same stops with their word: `+1 stop`, `−½ stop`, `0 stops`. Returns: (transfer full) */
char *sq_stops_in_words (double stops);

G_END_DECLS
