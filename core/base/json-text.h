/* json-text.h: from the text of a JSON document to its tree */
#pragma once

#include "base/json-check.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* sq_json_parse:
 * @text: (array length=length): any bytes at all; need not end in NUL
 * @length: how many there are
 *
 * In the tree a number is a gint64 when it was written whole and a double otherwise. json-glib's
 * getters turn one kind of value into another without a word ("3200" reads as 0, true as 1): look
 * at the kind of a node before its value.
 *
 * Returns: (transfer full): the root, or NULL with the error of sq_json_check() */
JsonNode *sq_json_parse (const char *text, gsize length, GError **error);

G_END_DECLS
