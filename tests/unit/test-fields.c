/* test-fields.c: every row of every kind: sound, defaulted, read and written back */
#include "base/json-write.h"
#include "field-sites.h"

#define MOST_ROWS 64 /* of a kind: what the fields said of a thing are counted in */

/* Each kind once, the library's stands as well. */

typedef void (*KindVisitor) (const SqKind *kind);

static void
visit_kinds (const SqKind *kind, KindVisitor visitor, GHashTable *seen)
{
  if (!g_hash_table_add (seen, (gpointer)kind))
    return;
  visitor (kind);
  for (guint i = 0; i < kind->n_fields; i++) {
    if (kind->fields[i].of != NULL)
      visit_kinds (kind->fields[i].of, visitor, seen);
  }
}

static void
each_kind (KindVisitor visitor)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  visit_kinds (&sq_scene_kind, visitor, seen);
  visit_kinds (&sq_stand_kind, visitor, seen);
  g_assert_cmpuint (g_hash_table_size (seen), >, 30);
}

/* Rows are sound. */

static gboolean
is_snake_case (const char *key)
{
  return g_ascii_islower (key[0]) &&
         key[strspn (key, "abcdefghijklmnopqrstuvwxyz0123456789_")] == 0;
}

static gsize
size_of_member (const SqField *field)
{
  return field->type == &sq_value_numbers ? field->type->size * field->count : field->type->size;
}

static void
check_range (const SqField *field)
{
  gboolean counts = field->type == &sq_value_number || field->type == &sq_value_count;
  if (field->min != 0.0 || field->max != 0.0)
    g_assert_cmpfloat (field->min, <=, field->max);
  if (field->usual_min != 0.0 || field->usual_max != 0.0) {
    g_assert_cmpfloat (field->usual_min, <, field->usual_max);
    g_assert_cmpfloat (field->usual_min, >=, field->min);
    g_assert_cmpfloat (field->usual_max, <=, field->max);
  }
  if (!counts || (field->flags & SQ_REQUIRED))
    return;
  if (isnan (field->initial)) {
    g_assert_true (field->flags & SQ_MAY_BE_NULL);
    return;
  }
  g_assert_cmpfloat (field->initial, >=, field->min);
  g_assert_cmpfloat (field->initial, <=, field->max);
  if (field->flags & SQ_ABOVE_MIN)
    g_assert_cmpfloat (field->initial, >, field->min);
  if (field->flags & SQ_BELOW_MAX)
    g_assert_cmpfloat (field->initial, <, field->max);
}

static void
check_words (const SqField *field)
{
  if (field->type != &sq_value_word)
    return;
  int words = (int)g_strv_length ((char **)field->words);
  int null_word = field->flags & SQ_MAY_BE_NULL ? -1 : 0;
  g_assert_cmpint ((int)field->initial, >=, null_word);
  g_assert_cmpint ((int)field->initial, <, words);
}

static void
check_row (const SqKind *kind, guint row)
{
  const SqField *field = &kind->fields[row];
  if (!is_snake_case (field->key) || field->help == NULL || !g_str_has_suffix (field->help, "."))
    g_error ("%s.%s: key in snake_case, and help that ends in a period", kind->name, field->key);
  g_assert_true (field->label != NULL && *field->label != '\0');
  g_assert_nonnull (field->type);
  check_range (field);
  check_words (field);
  g_assert_cmpuint (field->offset, >=, sizeof (SqThing));
  g_assert_cmpuint (field->offset + size_of_member (field), <=, kind->size);
  for (guint i = 0; i < row; i++) {
    const SqField *other = &kind->fields[i];
    g_assert_cmpstr (field->key, !=, other->key);
    g_assert_true (other->offset + size_of_member (other) <= field->offset ||
                   field->offset + size_of_member (field) <= other->offset);
  }
}

static void
check_rows (const SqKind *kind)
{
  g_assert_true (kind->name != NULL && *kind->name != '\0');
  g_assert_true (kind->help != NULL && g_str_has_suffix (kind->help, "."));
  g_assert_cmpuint (kind->n_fields, >, 0);
  g_assert_cmpuint (kind->n_fields, <=, MOST_ROWS);
  for (guint i = 0; i < kind->n_fields; i++)
    check_row (kind, i);
}

static void
test_rows (void)
{
  each_kind (check_rows);
}

/* Defaults: what the row states is what a new thing has. */

static JsonNode *
stated_default (const SqField *field)
{
  const SqValueType *type = field->type;
  if (field->initial_json != NULL)
    return tree (field->initial_json);
  if (type == &sq_value_number || type == &sq_value_count || type == &sq_value_spread)
    return number_tree (field->initial);
  if (type == &sq_value_flag)
    return tree (field->initial != 0.0 ? "true" : "false");
  if (type == &sq_value_word && field->initial >= 0.0)
    return json_node_init_string (json_node_alloc (), field->words[(int)field->initial]);
  if (type == &sq_value_list || type == &sq_value_path)
    return tree ("[]");
  if (type == &sq_value_partials || type == &sq_value_role_at ||
      (type == &sq_value_object && !(field->flags & SQ_MAY_BE_NULL)))
    return tree ("{}");
  return tree ("null");
}

static void
check_defaults (const SqKind *kind)
{
  g_autoptr (SqThing) fresh = sq_thing_new (kind);
  g_autoptr (JsonNode) written = sq_thing_write (fresh, FALSE);
  for (guint i = 0; i < kind->n_fields; i++) {
    const SqField *field = &kind->fields[i];
    if (field->flags & SQ_REQUIRED)
      continue;
    g_assert_false (json_object_has_member (json_node_get_object (written), field->key));
    if (field->type == &sq_value_partial) {
      g_assert_null (*(SqThing **)sq_thing_value (fresh, field));
      continue;
    }
    g_autoptr (JsonNode) value = field->type->write (field, sq_thing_value (fresh, field));
    g_autoptr (JsonNode) stated = stated_default (field);
    same_tree (field->key, value, stated);
  }
}

static void
test_defaults (void)
{
  each_kind (check_defaults);
}

/* Read and written: each legal value comes back, and what is written stays as it is. */

static char *
rewritten (const SqKind *kind, JsonNode *node)
{
  g_autoptr (GPtrArray) warnings = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  SqReading reading = { .warnings = warnings };
  g_autoptr (SqThing) thing = sq_thing_read (kind, &reading, node, &error);
  g_assert_no_error (error);
  g_assert_cmpuint (warnings->len, ==, 0);
  g_autoptr (JsonNode) written = sq_thing_write (thing, FALSE);
  return sq_json_write (written);
}

static void
check_legal_value (const SqKind *kind, int variant, const SqField *field, JsonNode *value)
{
  g_autoptr (JsonObject) thing = least_thing (kind, variant);
  json_object_set_member (thing, field->key, json_node_ref (value));
  g_autoptr (JsonNode) given = object_tree (thing);
  g_autofree char *text = rewritten (kind, given);
  g_autoptr (JsonNode) written = tree (text);
  JsonNode *back = json_object_get_member (json_node_get_object (written), field->key);
  g_autoptr (JsonNode) left_out = stated_default (field);
  same_tree (field->key, back != NULL ? back : left_out, value);
  g_autofree char *again = rewritten (kind, written);
  g_assert_cmpstr (again, ==, text);
}

static void
check_legal_values (const SqKind *kind)
{
  for (int variant = 0; variant < n_variants (kind); variant++) {
    for (guint i = 0; i < kind->n_fields; i++) {
      const SqField *field = &kind->fields[i];
      if (!row_applies (field, variant) || (field->flags & SQ_SAYS_VARIANT))
        continue;
      g_autoptr (GPtrArray) values = legal_values (field);
      for (guint k = 0; k < values->len; k++)
        check_legal_value (kind, variant, field, g_ptr_array_index (values, k));
    }
  }
}

static void
test_legal_values (void)
{
  each_kind (check_legal_values);
}

/* The same in a whole scene, where all rules hold. */

static void
check_in_scene (const Site *site, Tally *tally)
{
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    if (!row_applies (field, site->variant) || (field->flags & SQ_SAYS_VARIANT))
      continue;
    JsonObject *thing = thing_at (site);
    put_value (site, thing, field, some_value (field));
    g_autoptr (JsonNode) value = json_node_copy (json_object_get_member (thing, field->key));
    g_autofree char *text = scene_text (site, thing);
    g_autofree char *place = place_at (site, field->key);

    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) scene = parse_scene (tally, text, &error);
    g_assert_no_error (error);
    g_autofree char *written = sq_scene_write (scene);
    g_autoptr (JsonNode) root = tree (written);
    JsonObject *back = find_at (site, root);
    g_assert_nonnull (back);
    same_tree (place, json_object_get_member (back, field->key), value);
    g_autoptr (SqScene) again = parse_scene (tally, written, &error);
    g_assert_no_error (error);
    g_autofree char *rewrite = sq_scene_write (again);
    g_assert_cmpstr (rewrite, ==, written);
    tally->checked++;
  }
}

static void
test_in_scene (void)
{
  tally_sites (check_in_scene, 300);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fields/every row has label, help and a place of its own", test_rows);
  g_test_add_func ("/fields/a new thing has the defaults and writes none", test_defaults);
  g_test_add_func ("/fields/every legal value is read and written back", test_legal_values);
  g_test_add_func ("/fields/every row holds in a whole scene", test_in_scene);
  return g_test_run ();
}
