/* answer.h: small steps in making JSON for programs and words for people */
#pragma once

#include "base/quantity.h"

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

/* NAN, which JSON cannot say, becomes null. */
void sq_answer_number (JsonObject *object, const char *key, double number);

/* NULL becomes null. */
void sq_answer_text (JsonObject *object, const char *key, const char *text);

/* (transfer full) @array */
void sq_answer_array (JsonObject *object, const char *key, JsonArray *array);

/* Lines of text as an array. */
void sq_answer_lines (JsonObject *object, const char *key, const GPtrArray *lines);

/* (transfer full): the canonical text of @object, which is consumed */
char *sq_answer_finish (JsonObject *object);

/* Stops with their sign: +1, −½, 0; "–" for NAN. (transfer full) */
char *sq_answer_stops (double stops);

/* The same with its word: +1 stop, −½ stop, 0 stops. (transfer full) */
char *sq_answer_stops_in_words (double stops);

/* "4.2 : 1"; "–" for NAN. (transfer full) */
char *sq_answer_ratio (double ratio);

G_END_DECLS
