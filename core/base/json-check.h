/* json-check.h: is a text JSON, by the letter of RFC 8259? */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Limits of ours; RFC 8259 section 9 lets a reader set them. */
#define SQ_JSON_DEPTH_MAX 64                /* arrays and objects inside one another */
#define SQ_JSON_BYTES_MAX ((gsize)64 << 20) /* 64 MiB of text */

/* sq_json_check:
 * @text: (array length=length): any bytes at all; need not end in NUL
 * @length: how many there are
 *
 * One pass over the bytes, no recursion. Refused beyond what the grammar refuses: a byte-order
 * mark, one key twice in an object (compared unescaped, so "a" and "\u0061" are one), U+0000 in
 * any form, lone surrogates, numbers that are not finite as a double, whole numbers (no fraction,
 * no exponent) outside the signed 64-bit range, and texts past the limits above.
 *
 * Time grows with the length of the text; only an object whose thousands of keys were chosen to
 * share one g_str_hash() value takes the square of their number.
 *
 * Returns: FALSE with SQ_ERROR_SYNTAX, or SQ_ERROR_LIMIT where the text is JSON but past a limit.
 *   The message is `line 3, column 14: what is wrong, expected what`; lines end at LF, CR LF or CR,
 *   columns count characters, both from 1. */
gboolean sq_json_check (const char *text, gsize length, GError **error);

G_END_DECLS
