/* json-scan.h: the strings and numbers of JSON (RFC 8259 sections 6 to 8), for json-check.c */
#pragma once

#include "base/error.h"

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  const char *text, *at,
    *end; /* all of it, where the reading stands, and just past its last byte */
  GError **error;
} SqJsonScan;

/* sq_json_scan_is:
 * Returns: whether the text reads @word from @at on */
gboolean sq_json_scan_is (const SqJsonScan *scan, const char *at, const char *word);

/* sq_json_scan_place:
 * @line: (out): of @at, from 1; lines end at LF, CR LF or CR
 * @column: (out): characters, from 1
 *
 * Counts from the start of the text: for messages only. */
void sq_json_scan_place (const SqJsonScan *scan, const char *at, guint *line, guint *column);

/* sq_json_scan_fail:
 * Sets the error to `line …, column …: ` and the message. Returns: FALSE */
gboolean sq_json_scan_fail (SqJsonScan *scan, const char *at, SqError code, const char *format, ...)
  G_GNUC_PRINTF (4, 5);

/* sq_json_scan_unexpected:
 * Says what stands at @at and what was @expected there. Returns: FALSE */
gboolean sq_json_scan_unexpected (SqJsonScan *scan, const char *at, const char *expected);

/* sq_json_scan_clip:
 * Returns: (transfer full): what is written between two points, cut to what a message can carry;
 *   must be UTF-8 */
char *sq_json_scan_clip (const char *from, const char *to);

/* sq_json_scan_string:
 * @scan: stands at the opening quote; left past the closing one
 * @into: (nullable): the unescaped text is added to it
 *
 * Returns: FALSE with the error set */
gboolean sq_json_scan_string (SqJsonScan *scan, GString *into);

/* sq_json_scan_number:
 * @scan: stands at a minus or a digit; left past the number
 *
 * Returns: FALSE with the error set: SQ_ERROR_LIMIT if the number is written well but too large */
gboolean sq_json_scan_number (SqJsonScan *scan);

G_END_DECLS
