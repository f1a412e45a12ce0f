/* test-fields-refused.c: no row takes a value of the wrong type, size or spelling */
#include "base/error.h"
#include "field-sites.h"

/* What a type of value takes of the kinds of JSON; all else is refused at the value itself. */
enum {
  TEXT = 1 << 0,
  NUMBER = 1 << 1,
  FLAG = 1 << 2,
  OBJECT = 1 << 3, /* {}, or told which member of it is missing */
  LIST = 1 << 4,   /* [] */
  ANY = TEXT | NUMBER | FLAG | OBJECT | LIST,
};

static const struct {
  const SqValueType *type;
  guint takes;
} takes[] = {
  { &sq_value_id, 0 },          { &sq_value_text, TEXT },      { &sq_value_date, 0 },
  { &sq_value_time, 0 },        { &sq_value_flag, FLAG },      { &sq_value_word, 0 },
  { &sq_value_count, 0 },       { &sq_value_number, NUMBER },  { &sq_value_numbers, 0 },
  { &sq_value_spread, NUMBER }, { &sq_value_place, 0 },        { &sq_value_point, 0 },
  { &sq_value_direction, 0 },   { &sq_value_path, LIST },      { &sq_value_reference, 0 },
  { &sq_value_aim, 0 },         { &sq_value_role_at, OBJECT }, { &sq_value_object, OBJECT },
  { &sq_value_list, LIST },     { &sq_value_partial, OBJECT }, { &sq_value_partials, OBJECT },
  { &sq_value_json, ANY },
};

static guint
taken_by (const SqField *field)
{
  for (guint i = 0; i < G_N_ELEMENTS (takes); i++) {
    if (takes[i].type == field->type)
      return field->least > 0 ? takes[i].takes & ~(guint)LIST : takes[i].takes;
  }
  g_error ("%s: a type of value that this test does not know", field->type->name);
}

static gboolean
takes_null (const SqField *field)
{
  if (field->type == &sq_value_text) /* no text and empty text are the same */
    return !(field->flags & SQ_REQUIRED);
  return (field->flags & SQ_MAY_BE_NULL) || field->type == &sq_value_json;
}

/* One line, `place: what is wrong, expected what`. */
static void
check_message (const GError *error, const char *place)
{
  g_autofree char *start = g_strconcat (place, ": ", NULL);
  g_assert_true (error->domain == SQ_ERROR);
  if (!g_str_has_prefix (error->message, start) || strstr (error->message, "expected ") == NULL)
    g_error ("\"%s\" does not start with %s, or not say what was expected", error->message, place);
  g_assert_null (strchr (error->message, '\n'));
}

/* @value (transfer full) in @field is refused at the place of the field and @deeper. The caller
 * owns the error. */
static GError *
refusal (const Site *site, Tally *tally, const SqField *field, JsonNode *value, const char *deeper)
{
  JsonObject *thing = thing_at (site);
  const char *members = members_beside (site->kind, field->key);
  if (members != NULL)
    merge (thing, members);
  json_object_set_member (thing, field->key, value);
  g_autofree char *text = scene_text (site, thing);
  g_autofree char *own_place = place_at (site, field->key);
  g_autofree char *place = g_strconcat (own_place, deeper, NULL);

  GError *error = NULL;
  g_autoptr (SqScene) scene = parse_scene (tally, text, &error);
  if (scene != NULL)
    g_error ("%s: is read in %s", place, text);
  check_message (error, place);
  tally->checked++;
  return error;
}

/* That all of what would have been right is said. */
static void
check_says (const GError *error, const char *what)
{
  if (strstr (error->message, what) == NULL)
    g_error ("\"%s\" does not say \"%s\"", error->message, what);
}

static void
check_says_what (const SqField *field, const GError *error)
{
  if (field->type == &sq_value_word) {
    for (guint i = 0; field->words[i] != NULL; i++)
      check_says (error, field->words[i]);
  } else if (field->type != &sq_value_id && field->type != &sq_value_reference &&
             field->type != &sq_value_aim && field->type != &sq_value_path) {
    check_says (error, field->type->name);
  }
}

static void
check_wrong_types (const Site *site, Tally *tally)
{
  static const struct {
    guint type;
    const char *text;
  } wrong[] = {
    { TEXT, "\"a b\"" }, { NUMBER, "-17.25" }, { FLAG, "true" }, { OBJECT, "{}" }, { LIST, "[]" },
  };
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    if (!row_applies (field, site->variant))
      continue;
    for (guint k = 0; k < G_N_ELEMENTS (wrong); k++) {
      if (taken_by (field) & wrong[k].type)
        continue;
      g_autoptr (GError) error = refusal (site, tally, field, tree (wrong[k].text), "");
      check_says_what (field, error);
    }
    if (!takes_null (field)) {
      g_autoptr (GError) error = refusal (site, tally, field, tree ("null"), "");
      g_assert_null (strstr (error->message, "or null"));
    }
  }
}

static void
test_wrong_types (void)
{
  tally_sites (check_wrong_types, 1800);
}

/* Out of range. */

/* @value with its first number, however deep, made @number. Returns: (transfer full) */
static JsonNode *
with_first_number (JsonNode *value, double number, GString *place)
{
  if (!JSON_NODE_HOLDS_ARRAY (value))
    return number_tree (number);
  JsonArray *from = json_node_get_array (value);
  g_autoptr (JsonArray) to = json_array_new ();
  for (guint i = 0; i < json_array_get_length (from); i++)
    json_array_add_element (to, json_array_dup_element (from, i));
  g_string_append (place, "[0]");
  JsonNode *first = with_first_number (json_array_get_element (from, 0), number, place);
  g_autoptr (JsonArray) result = json_array_new ();
  json_array_add_element (result, first);
  for (guint i = 1; i < json_array_get_length (to); i++)
    json_array_add_element (result, json_array_dup_element (to, i));
  return json_node_init_array (json_node_alloc (), result);
}

static void
check_number_refused (const Site *site, Tally *tally, const SqField *field, double number)
{
  g_autoptr (JsonNode) legal = some_value (field);
  g_autoptr (GString) deeper = g_string_new (NULL);
  JsonNode *value = with_first_number (legal, number, deeper);
  g_autoptr (GError) error = refusal (site, tally, field, value, deeper->str);
  char low[G_ASCII_DTOSTR_BUF_SIZE], high[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (low, sizeof low, "%.10g", field->min);
  g_ascii_formatd (high, sizeof high, "%.10g", field->max);
  if (error->code == SQ_ERROR_NEWER) {
    g_assert_cmpstr (field->key, ==, "format");
    return;
  }
  g_assert_cmpint (error->code, ==, SQ_ERROR_VALUE);
  check_says (error, low);
  check_says (error, high);
  check_says (error, sq_dimension_unit (field->dimension));
}

static void
check_out_of_range (const Site *site, Tally *tally)
{
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    if (!row_applies (field, site->variant) || !has_range (field))
      continue;
    double step = field->type == &sq_value_count ? 1.0 : (field->max - field->min) * 1e-6;
    check_number_refused (site, tally, field, field->min - step);
    check_number_refused (site, tally, field, field->max + step);
    if (field->flags & SQ_ABOVE_MIN)
      check_number_refused (site, tally, field, field->min);
    if (field->flags & SQ_BELOW_MAX)
      check_number_refused (site, tally, field, field->max);
  }
}

static void
test_out_of_range (void)
{
  tally_sites (check_out_of_range, 300);
}

/* Members of lists of numbers. */

static void
check_members (const Site *site, Tally *tally)
{
  static const char *const wrong[] = { "\"a b\"", "true", "null", "{}", "[]" };
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    gboolean numbers = field->type == &sq_value_numbers || field->type == &sq_value_place ||
                       field->type == &sq_value_point || field->type == &sq_value_direction ||
                       field->type == &sq_value_spread || field->type == &sq_value_aim;
    if (!numbers || !row_applies (field, site->variant))
      continue;
    for (guint k = 0; k < G_N_ELEMENTS (wrong); k++) {
      g_autoptr (JsonNode) legal = some_value (field);
      JsonArray *array = json_node_get_array (legal);
      guint last = json_array_get_length (array) - 1;
      json_array_remove_element (array, last);
      json_array_add_element (array, tree (wrong[k]));
      g_autofree char *deeper = g_strdup_printf ("[%u]", last);
      g_autoptr (GError) error = refusal (site, tally, field, json_node_copy (legal), deeper);
      check_says (error, "a number");
      g_assert_null (strstr (error->message, "or null"));
    }
    g_autoptr (JsonNode) legal = some_value (field);
    json_array_add_int_element (json_node_get_array (legal), 1);
    json_array_add_int_element (json_node_get_array (legal), 1);
    g_autoptr (GError) error = refusal (site, tally, field, json_node_copy (legal), "");
    check_says_what (field, error);
  }
}

static void
test_members (void)
{
  tally_sites (check_members, 100);
}

/* Whole numbers, dates, times, ids: text and numbers that only look right. */

static void
check_lookalikes (const Site *site, Tally *tally)
{
  static const struct {
    const SqValueType *type;
    const char *text;
  } lookalikes[] = {
    { &sq_value_count, "1.5" },
    { &sq_value_date, "\"2023-02-29\"" },
    { &sq_value_date, "\"2024-13-01\"" },
    { &sq_value_date, "\"2024-6-20\"" },
    { &sq_value_date, "\"0000-01-01\"" },
    { &sq_value_date, "\"2024-06-20T12:00\"" },
    { &sq_value_date, "\"\"" },
    { &sq_value_time, "\"24:00\"" },
    { &sq_value_time, "\"12:60\"" },
    { &sq_value_time, "\"9:30\"" },
    { &sq_value_time, "\"09:30:00\"" },
    { &sq_value_time, "\"\"" },
    { &sq_value_id, "\"\"" },
    { &sq_value_id, "\"ü\"" },
    { &sq_value_id, "\"a.b\"" },
    { &sq_value_id, "\"1234567890123456789012345678901234567890123456789012345678901234x\"" },
    { &sq_value_reference, "\"\"" },
    { &sq_value_reference, "\"a.b\"" },
    { &sq_value_aim, "\"\"" },
    { &sq_value_word, "\"\"" },
    { &sq_value_word, "\"KEY\"" },
    { &sq_value_direction, "[0, 0, 0]" },
  };
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    for (guint k = 0; row_applies (field, site->variant) && k < G_N_ELEMENTS (lookalikes); k++) {
      if (lookalikes[k].type != field->type)
        continue;
      g_autoptr (GError) error = refusal (site, tally, field, tree (lookalikes[k].text), "");
      check_says (error, "expected ");
    }
    if (field->type == &sq_value_text && (field->flags & SQ_REQUIRED)) {
      g_autoptr (GError) error = refusal (site, tally, field, tree ("\"\""), "");
      check_says (error, "expected text");
    }
  }
}

static void
test_lookalikes (void)
{
  tally_sites (check_lookalikes, 200);
}

/* Required rows. */

static void
check_required (const Site *site, Tally *tally)
{
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    if (!row_applies (field, site->variant) || !(field->flags & SQ_REQUIRED) ||
        (field->flags & SQ_SAYS_VARIANT))
      continue;
    JsonObject *thing = thing_at (site);
    json_object_remove_member (thing, field->key);
    g_autofree char *text = scene_text (site, thing);
    g_autofree char *place = place_at (site, field->key);
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) scene = parse_scene (tally, text, &error);
    g_assert_null (scene);
    check_message (error, place);
    check_says (error, "is missing");
    tally->checked++;
  }
}

static void
test_required (void)
{
  tally_sites (check_required, 40);
}

/* The same rows under a look: what it may change is held to the same, what it may not is refused.
 */

static void
check_in_look (Tally *tally, const SqField *things, const SqField *field)
{
  g_autoptr (JsonObject) scene = scene_object ();
  const char *id = things->type == &sq_value_partials ? cast_id (things->of->names) : NULL;
  JsonNode *value = field->flags & SQ_PER_LOOK ? tree ("{\"no\": \"value\"}") : some_value (field);
  JsonNode *changes = one_member (field->key, value);
  JsonObject *look = json_object_new ();
  json_object_set_string_member (look, "id", "l1");
  json_object_set_member (look, things->key, id != NULL ? one_member (id, changes) : changes);
  JsonArray *looks = json_array_new ();
  json_array_add_object_element (looks, look);
  json_object_set_array_member (scene, "looks", looks);
  g_autoptr (JsonNode) root = object_tree (scene);
  g_autofree char *text = json_to_string (root, FALSE);
  g_autofree char *place = id != NULL
                             ? g_strdup_printf ("looks[0].%s.%s.%s", things->key, id, field->key)
                             : g_strdup_printf ("looks[0].%s.%s", things->key, field->key);
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) parsed = parse_scene (tally, text, &error);
  g_assert_null (parsed);
  check_message (error, place);
  if (!(field->flags & SQ_PER_LOOK))
    check_says (error, "cannot be changed by a look");
  tally->checked++;
}

static void
test_looks (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  Tally tally = { .library = library };
  for (guint i = 0; i < sq_look_kind.n_fields; i++) {
    const SqField *things = &sq_look_kind.fields[i];
    for (guint k = 0; things->of != NULL && k < things->of->n_fields; k++)
      check_in_look (&tally, things, &things->of->fields[k]);
  }
  g_assert_cmpuint (tally.checked, >, 80);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fields/refused/wrong types", test_wrong_types);
  g_test_add_func ("/fields/refused/numbers out of range", test_out_of_range);
  g_test_add_func ("/fields/refused/members of lists of numbers", test_members);
  g_test_add_func ("/fields/refused/text and numbers that only look right", test_lookalikes);
  g_test_add_func ("/fields/refused/required rows that are missing", test_required);
  g_test_add_func ("/fields/refused/what a look may not change, or not so", test_looks);
  return g_test_run ();
}
