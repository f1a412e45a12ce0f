/* json-write.h: from a JSON tree to its one canonical text */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

#define SQ_JSON_COLUMNS 100 /* what one line may hold, in characters */

/* sq_json_write:
 * @node: a tree as deep as the stack allows (what we read is 64 deep at most); its strings are
 *   UTF-8 without NUL
 *
 * Two blanks a level. An array or object stands on one line, `[1, 2]` or `{ "a": 1, "b": [] }`,
 * where it fits with its indentation, its key and a comma (counted even where none follows, so
 * that adding a neighbour does not move lines); else one member a line. The members of a top-level
 * object always stand one a line. Only what RFC 8259 section 7 demands is escaped. What the reader
 * makes of the text is written as the same text again.
 *
 * Returns: (transfer full): UTF-8, ending in a line feed */
char *sq_json_write (JsonNode *node);

/* sq_json_append_number:
 * @value: any double; NAN and the infinities, which JSON cannot say, become null
 *
 * The fewest digits that read back as @value exactly, and of those the nearest; plain from 1e-6 up
 * to 2^63, where the reader's whole numbers end (`0.1`, `250`, `0.000001`), with an exponent
 * outside
 * (`1e-7`, `2.5e+21`). Minus zero is `0`. The locale has no say. */
void sq_json_append_number (GString *out, double value);

G_END_DECLS
