/* answer.c: small steps in making JSON for programs */
#include "answer.h"

#include "base/json-write.h"

#include <math.h>

void
sq_answer_number (JsonObject *object, const char *key, double number)
{
  if (isfinite (number))
    json_object_set_double_member (object, key, number);
  else
    json_object_set_null_member (object, key);
}

void
sq_answer_text (JsonObject *object, const char *key, const char *text)
{
  if (text != NULL)
    json_object_set_string_member (object, key, text);
  else
    json_object_set_null_member (object, key);
}

void
sq_answer_array (JsonObject *object, const char *key, JsonArray *array)
{
  json_object_set_array_member (object, key, array);
}

void
sq_answer_lines (JsonObject *object, const char *key, const GPtrArray *lines)
{
  JsonArray *array = json_array_sized_new (lines->len);
  for (guint i = 0; i < lines->len; i++)
    json_array_add_string_element (array, g_ptr_array_index (lines, i));
  sq_answer_array (object, key, array);
}

char *
sq_answer_finish (JsonObject *object)
{
  g_autoptr (JsonNode) node = json_node_init_object (json_node_alloc (), object);
  json_object_unref (object);
  return sq_json_write (node);
}
