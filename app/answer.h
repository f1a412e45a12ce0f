/* answer.h: small steps in making JSON for programs */
#pragma once

#include <glib.h>

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

G_END_DECLS
