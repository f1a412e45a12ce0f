/* value.h: what the value types share: saying where and what was expected */
#pragma once

#include "base/error.h"
#include "scene/thing.h"

G_BEGIN_DECLS

/* Sets @error to "place: what"; always returns FALSE. */
gboolean sq_reading_error (const SqReading *reading,
                           SqError code,
                           GError **error,
                           const char *what,
                           ...) G_GNUC_PRINTF (4, 5);

/* What somebody wrote, fit for a message of one line: UTF-8, no control characters, not long.
 * (transfer full) */
char *sq_shown_text (const char *text);

/* "2.25": for messages, with a point in every locale. (transfer full) */
char *sq_number_text (double number);

/* "above 0 up to 100", "1"; "" where any number will do. (transfer full) */
char *sq_field_range (const SqField *field);

/* "a number from 0 to 100 (m)", "one of stand, sit, lie", "text" … (transfer full) */
char *sq_field_expected (const SqField *field);

/* "is text, expected …": the usual error of a wrong type; of a field, what its row allows. Both
 * return FALSE. */
gboolean sq_found_error (const SqReading *reading,
                         JsonNode *found,
                         const char *expected,
                         GError **error);
gboolean sq_expected_error (const SqField *field,
                            const SqReading *reading,
                            JsonNode *found,
                            GError **error);

/* A finite JSON number within the field's range. */
gboolean sq_read_number (
  const SqField *field, const SqReading *reading, JsonNode *node, double *number, GError **error);

/* A JSON array of exactly @count numbers, or null where the field may be null (then all NAN). */
gboolean sq_read_numbers (const SqField *field,
                          const SqReading *reading,
                          JsonNode *node,
                          guint count,
                          double *numbers,
                          GError **error);

/* The text of a JSON string; NULL for anything else: the library's own getter turns other values
 * into text. */
const char *sq_node_text (JsonNode *node);

/* Nodes of null, and of an array and an object that are handed over. */
JsonNode *sq_null_node (void);
JsonNode *sq_array_node (JsonArray *array);
JsonNode *sq_object_node (JsonObject *object);

/* [1, 2, 3] */
JsonNode *sq_write_numbers (const double *numbers, guint count);

/* A whole number is written as one, so that 3 stays 3. */
JsonNode *sq_write_number (double number);

/* TRUE if @text is [A-Za-z0-9_-]{1,64}. */
gboolean sq_check_id (const SqReading *reading, const char *text, GError **error);

/* TRUE if a list, path or map may have @count members. */
gboolean sq_check_count (const SqReading *reading, guint count, GError **error);

/* The clear of values that own nothing. */
void sq_clear_nothing (const SqField *field, void *value);

G_END_DECLS
