/* field-values.h: values that a row of a field table allows, made from the row alone, for tests */
#pragma once

#include "scene/scene.h"

#include <string.h>

G_BEGIN_DECLS

/* What the values below may name: it stands in every scene of these tests (field-sites.h), stands
 * excepted, which only the library has. */
static const struct {
  SqNames names;
  const char *id;
} the_cast[] = {
  { SQ_NAMES_FIXTURE, "f1" },        { SQ_NAMES_MARK, "m1" },  { SQ_NAMES_CAMERA, "c1" },
  { SQ_NAMES_SUPPLY, "s1" },         { SQ_NAMES_PANEL, "g1" }, { SQ_NAMES_OPENING, "o1" },
  { SQ_NAMES_MATERIAL, "y1" },       { SQ_NAMES_CLASS, "k1" }, { SQ_NAMES_LOOK, "l1" },
  { SQ_NAMES_STAND, "light-stand" },
};

/* What a thing needs beyond its required rows: the rules that tie rows together. */
static const struct {
  const SqKind *kind;
  const char *members;
} needed[] = {
  { &sq_wall_kind, "{\"path\": [[-10000, 0], [10000, 0], [10000, 5]]}" },
  { &sq_piece_kind, "{\"outline\": [[0, 0], [2, 0], [2, 1]]}" },
  { &sq_panel_kind, "{\"material\": \"y1\"}" },
  { &sq_class_kind, "{\"beams\": [{\"beam_deg\": 20, \"field_deg\": 40, \"peak_cd\": 1000}]}" },
};

/* A tree by the JSON library's own reader, which is not what is tested here. */
static inline JsonNode *
tree (const char *text)
{
  g_autoptr (GError) error = NULL;
  JsonNode *node = json_from_string (text, &error);
  if (node == NULL)
    g_error ("%s: %s", error->message, text);
  return node;
}

/* @what: where, for whoever reads the failure */
static inline void
same_tree (const char *what, JsonNode *got, JsonNode *expected)
{
  if (json_node_equal (got, expected))
    return;
  g_autofree char *is = json_to_string (got, FALSE), *shall = json_to_string (expected, FALSE);
  g_error ("%s is %s, expected %s", what, is, shall);
}

static inline JsonNode *
number_tree (double number)
{
  JsonNode *node = json_node_alloc ();
  if (isnan (number))
    return json_node_init_null (node);
  if (number == floor (number))
    return json_node_init_int (node, (gint64)number);
  return json_node_init_double (node, number);
}

static inline JsonNode *
numbers_tree (const double *numbers, guint count)
{
  g_autoptr (JsonArray) array = json_array_new ();
  for (guint i = 0; i < count; i++)
    json_array_add_element (array, number_tree (numbers[i]));
  return json_node_init_array (json_node_alloc (), array);
}

static inline JsonNode *
object_tree (JsonObject *object)
{
  return json_node_init_object (json_node_alloc (), object);
}

/* Copies every member of @from into @object; null takes it out. */
static inline void
merge (JsonObject *object, const char *from)
{
  g_autoptr (JsonNode) members = tree (from);
  g_autoptr (GList) keys = json_object_get_members (json_node_get_object (members));
  for (GList *key = keys; key != NULL; key = key->next) {
    JsonNode *value = json_object_dup_member (json_node_get_object (members), key->data);
    json_object_remove_member (object, key->data);
    if (JSON_NODE_HOLDS_NULL (value))
      json_node_unref (value);
    else
      json_object_set_member (object, key->data, value);
  }
}

static inline const SqField *
variant_row (const SqKind *kind)
{
  for (guint i = 0; i < kind->n_fields; i++) {
    if (kind->fields[i].flags & SQ_SAYS_VARIANT)
      return &kind->fields[i];
  }
  return NULL;
}

/* 1 for a kind without variants. */
static inline int
n_variants (const SqKind *kind)
{
  const SqField *row = variant_row (kind);
  return row != NULL ? (int)g_strv_length ((char **)row->words) : 1;
}

static inline gboolean
row_applies (const SqField *field, int variant)
{
  return field->variants == 0 || (field->variants & (1u << variant)) != 0;
}

static inline gboolean
has_range (const SqField *field)
{
  return field->min != 0.0 || field->max != 0.0;
}

static inline const char *
cast_id (SqNames names)
{
  for (guint i = 0; i < G_N_ELEMENTS (the_cast); i++) {
    if (the_cast[i].names & names)
      return the_cast[i].id;
  }
  g_error ("nobody in the cast is named by %x", names);
}

/* Well within the range, and not the default. */
static inline double
some_number (const SqField *field)
{
  double low = field->usual_min, high = field->usual_max;
  if (low == 0.0 && high == 0.0) {
    low = field->min;
    high = field->max;
  }
  double middle = (low + high) / 2.0;
  return middle == field->initial ? low + (high - low) * 0.375 : middle;
}

static inline int
some_count (const SqField *field)
{
  int count = (int)MIN (field->min + 1.0, field->max);
  return count == (int)field->initial ? count + 1 : count;
}

static inline const char *
some_word (const SqField *field)
{
  return field->words[(int)field->initial == 0 ? 1 : 0];
}

static inline JsonObject *least_thing (const SqKind *kind, int variant);

static inline const SqField *
row_for_looks (const SqKind *kind)
{
  for (guint i = 0; i < kind->n_fields; i++) {
    if (kind->fields[i].flags & SQ_PER_LOOK)
      return &kind->fields[i];
  }
  g_error ("no look changes a %s", kind->name);
}

static inline JsonNode *some_value (const SqField *field);

/* {"key": a value}, for one row. */
static inline JsonNode *
changes_tree (const SqField *field)
{
  g_autoptr (JsonObject) changes = json_object_new ();
  json_object_set_member (changes, field->key, some_value (field));
  return object_tree (changes);
}

/* An object that is not all default. */
static inline JsonNode *
some_object (const SqKind *kind)
{
  g_autoptr (JsonObject) object = least_thing (kind, 0);
  if (json_object_get_size (object) == 0)
    json_object_set_member (object, kind->fields[0].key, some_value (&kind->fields[0]));
  return object_tree (object);
}

static inline JsonNode *
one_member (const char *key, JsonNode *value)
{
  g_autoptr (JsonObject) object = json_object_new ();
  json_object_set_member (object, key, value);
  return object_tree (object);
}

/* One legal value of the row that is not its default. */
static inline JsonNode *
some_value (const SqField *field)
{
  static const struct {
    const SqValueType *type;
    const char *text;
  } fixed[] = {
    { &sq_value_id, "\"renamed\"" },
    { &sq_value_text, "\"Küche \\\"7\\\" \\\\ 1:2\"" },
    { &sq_value_date, "\"2024-02-29\"" },
    { &sq_value_time, "\"17:30\"" },
    { &sq_value_place, "[1.5, -2.25]" },
    { &sq_value_point, "[1.5, -2.25, 1.75]" },
    { &sq_value_direction, "[0, -1, 0.5]" },
    { &sq_value_path, "[[0, 0], [2.5, 0], [2.5, 1]]" },
    { &sq_value_aim, "[4, 5, 1.25]" },
    { &sq_value_json, "{\"legend\": [10, 20.5], \"more\": null}" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (fixed); i++) {
    if (fixed[i].type == field->type)
      return tree (fixed[i].text);
  }
  const SqValueType *type = field->type;
  double number = some_number (field);
  if (type == &sq_value_flag)
    return tree (field->initial != 0.0 ? "false" : "true");
  if (type == &sq_value_word)
    return json_node_init_string (json_node_alloc (), some_word (field));
  if (type == &sq_value_count)
    return number_tree (some_count (field));
  if (type == &sq_value_number)
    return number_tree (number);
  if (type == &sq_value_spread)
    return numbers_tree ((double[]){ number * 0.75, number }, 2);
  if (type == &sq_value_numbers) {
    double numbers[4];
    for (guint i = 0; i < field->count; i++)
      numbers[i] = field->min + (field->max - field->min) * (i + 1) / (field->count + 1);
    return numbers_tree (numbers, field->count);
  }
  if (type == &sq_value_reference)
    return json_node_init_string (json_node_alloc (), cast_id (field->names));
  if (type == &sq_value_role_at)
    return one_member (cast_id (field->names), tree ("\"fill\""));
  if (type == &sq_value_object)
    return some_object (field->of);
  if (type == &sq_value_partial)
    return changes_tree (row_for_looks (field->of));
  if (type == &sq_value_partials)
    return one_member (cast_id (field->of->names), changes_tree (row_for_looks (field->of)));
  g_assert_true (type == &sq_value_list);
  g_autoptr (JsonArray) list = json_array_new ();
  json_array_add_object_element (list, least_thing (field->of, 0));
  return json_node_init_array (json_node_alloc (), list);
}

/* A thing with its required rows, an id, and what else it cannot be without. */
static inline JsonObject *
least_thing (const SqKind *kind, int variant)
{
  JsonObject *thing = json_object_new ();
  for (guint i = 0; i < kind->n_fields; i++) {
    const SqField *field = &kind->fields[i];
    if (field->type == &sq_value_id) {
      g_autofree char *id = g_strdelimit (g_strdup_printf ("new-%s", kind->name), " ", '-');
      json_object_set_string_member (thing, field->key, id);
    } else if (field->flags & SQ_SAYS_VARIANT) {
      json_object_set_string_member (thing, field->key, field->words[variant]);
    } else if ((field->flags & SQ_REQUIRED) && row_applies (field, variant)) {
      json_object_set_member (thing, field->key, some_value (field));
    }
  }
  for (guint i = 0; i < G_N_ELEMENTS (needed); i++) {
    if (needed[i].kind == kind)
      merge (thing, needed[i].members);
  }
  return thing;
}

/* Every legal value worth trying: the ends of the range where they are legal, every word, null
 * where it may be, and whatever else a type of value takes. (element-type JsonNode) */
static inline GPtrArray *
legal_values (const SqField *field)
{
  GPtrArray *values = g_ptr_array_new_with_free_func ((GDestroyNotify)json_node_unref);
  const SqValueType *type = field->type;
  g_ptr_array_add (values, some_value (field));
  if (field->flags & SQ_MAY_BE_NULL)
    g_ptr_array_add (values, tree ("null"));
  if (type == &sq_value_flag) {
    g_ptr_array_add (values, tree ("true"));
    g_ptr_array_add (values, tree ("false"));
  }
  if (type == &sq_value_number || type == &sq_value_count || type == &sq_value_spread) {
    if (!(field->flags & SQ_ABOVE_MIN))
      g_ptr_array_add (values, number_tree (field->min));
    if (!(field->flags & SQ_BELOW_MAX))
      g_ptr_array_add (values, number_tree (field->max));
  }
  for (guint i = 0; type == &sq_value_word && field->words[i] != NULL; i++) {
    if (!(field->flags & SQ_SAYS_VARIANT))
      g_ptr_array_add (values, json_node_init_string (json_node_alloc (), field->words[i]));
  }
  for (guint i = 0; type == &sq_value_role_at && field->words[i] != NULL; i++) {
    JsonNode *word = json_node_init_string (json_node_alloc (), field->words[i]);
    g_ptr_array_add (values, one_member (cast_id (field->names), word));
  }
  if (type == &sq_value_point && (field->flags & SQ_WITHOUT_Z))
    g_ptr_array_add (values, tree ("[7, 8.5]"));
  if (type == &sq_value_aim)
    g_ptr_array_add (values, json_node_init_string (json_node_alloc (), cast_id (field->names)));
  return values;
}

G_END_DECLS
