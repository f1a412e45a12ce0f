/* test-fields-set.c: every row set by name, and changed by a look where a look may change it */
#include "field-sites.h"

/* What a number of quantity text may lose on its way through other units: parts in this many. */
#define QUANTITY_TOLERANCE 1e-12

static SqScene *
must_parse (const Tally *tally, const char *text)
{
  g_autoptr (GError) error = NULL;
  SqScene *scene = parse_scene (tally, text, &error);
  g_assert_no_error (error);
  return scene;
}

/* The scene before the value is set: what must stand beside it does. */
static SqScene *
scene_before (const Site *site, const Tally *tally, const SqField *field)
{
  JsonObject *thing = thing_at (site);
  const char *members = members_beside (site->kind, field->key);
  if (members != NULL && !shuts_out (site->kind, field->key))
    merge (thing, members);
  g_autofree char *text = scene_text (site, thing);
  return must_parse (tally, text);
}

/* As JSON. */

static void
check_set_as_json (const Site *site, Tally *tally, const SqField *field, const char *path)
{
  JsonObject *thing = thing_at (site);
  put_value (site, thing, field, some_value (field));
  g_autofree char *value = json_to_string (json_object_get_member (thing, field->key), FALSE);
  g_autofree char *text = scene_text (site, thing);
  g_autoptr (SqScene) read = must_parse (tally, text);
  g_autoptr (SqScene) before = scene_before (site, tally, field);
  g_autofree char *untouched = sq_scene_write (before);

  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) set = sq_scene_set (before, path, value, &error);
  if (shuts_out (site->kind, field->key)) {
    g_assert_null (set);
    g_assert_nonnull (strstr (error->message, "expected one"));
    return;
  }
  g_assert_no_error (error);
  g_autofree char *expected = sq_scene_write (read), *got = sq_scene_write (set);
  g_assert_cmpstr (got, ==, expected);
  g_autofree char *still = sq_scene_write (before);
  g_assert_cmpstr (still, ==, untouched);
  tally->checked++;
}

static void
check_each_as_json (const Site *site, Tally *tally)
{
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    g_autofree char *path = path_at (site, field->key);
    if (path != NULL && row_applies (field, site->variant))
      check_set_as_json (site, tally, field, path);
  }
}

static void
test_as_json (void)
{
  tally_sites (check_each_as_json, 250);
}

/* As bare text, where the value is text of some kind. */

static void
check_as_text (const Site *site, Tally *tally)
{
  static const struct {
    const SqValueType *type;
    const char *text;
  } bare[] = {
    { &sq_value_text, "12A" },       { &sq_value_text, "7" },     { &sq_value_text, "true" },
    { &sq_value_text, "two words" }, { &sq_value_text, "0.50" },  { &sq_value_date, "2024-02-29" },
    { &sq_value_time, "17:30" },     { &sq_value_id, "renamed" },
  };
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    g_autofree char *path = path_at (site, field->key);
    for (guint k = 0; path != NULL && k < G_N_ELEMENTS (bare); k++) {
      if (bare[k].type != field->type || shuts_out (site->kind, field->key))
        continue;
      JsonObject *thing = thing_at (site);
      json_object_set_string_member (thing, field->key, bare[k].text);
      g_autofree char *text = scene_text (site, thing);
      g_autoptr (SqScene) read = must_parse (tally, text);
      g_autoptr (SqScene) before = scene_before (site, tally, field);
      g_autoptr (GError) error = NULL;
      g_autoptr (SqScene) set = sq_scene_set (before, path, bare[k].text, &error);
      g_assert_no_error (error);
      g_autofree char *expected = sq_scene_write (read), *got = sq_scene_write (set);
      g_assert_cmpstr (got, ==, expected);
      tally->checked++;
    }
  }
}

static void
test_as_text (void)
{
  tally_sites (check_as_text, 200);
}

/* As a quantity with its unit. Foot 0.3048 m and pound 0.45359237 kg: the international yard and
 * pound agreement of 1959; fc = lm/ft². */

static const struct {
  SqDimension dimension;
  const char *text;
  double value; /* in the unit of files */
} quantities[] = {
  { SQ_PLAIN, "3/4", 0.75 },
  { SQ_PLAIN, "6/4", 1.5 },
  { SQ_PLAIN, "4 / 4", 1.0 },
  { SQ_PLAIN, "2 * 150", 300.0 },
  { SQ_LENGTH, "6'6\"", 6.5 * 0.3048 },
  { SQ_LENGTH, "45 cm", 0.45 },
  { SQ_MILLIMETRES, "2 in", 50.8 },
  { SQ_SECTION, "2.5 mm²", 2.5 },
  { SQ_ANGLE, "52° 30'", 52.5 },
  { SQ_ILLUMINANCE, "12 fc", 12.0 / (0.3048 * 0.3048) },
  { SQ_INTENSITY, "25 kcd", 25000.0 },
  { SQ_FLUX, "1.2 klm", 1200.0 },
  { SQ_TEMPERATURE, "3200K", 3200.0 },
  { SQ_CELSIUS, "60 °C", 60.0 },
  { SQ_MIRED, "-131 mired", -131.0 },
  { SQ_POWER, "1.2 kW", 1200.0 },
  { SQ_VOLTAGE, "0.12 kV", 120.0 },
  { SQ_CURRENT, "63 A", 63.0 },
  { SQ_FREQUENCY, "60 Hz", 60.0 },
  { SQ_FRACTION, "25%", 0.25 },
  { SQ_STOPS, "1/2 stop", 0.5 },
  { SQ_MASS, "40 lb", 40.0 * 0.45359237 },
  { SQ_HOURS, "90 min", 1.5 },
  { SQ_FRAME_RATE, "25 fps", 25.0 },
  { SQ_PER_METRE, "0.05 1/m", 0.05 },
  { SQ_T_STOP, "T4", 4.0 },
};

static gboolean
fits (const SqField *field, double value)
{
  return value > field->min && value < field->max &&
         (field->type != &sq_value_count || value == floor (value));
}

/* The number that @scene has at @site; its default where it is not written. */
static double
number_at (const Site *site, const SqScene *scene, const SqField *field)
{
  g_autofree char *text = sq_scene_write (scene);
  g_autoptr (JsonNode) root = tree (text);
  JsonObject *thing = find_at (site, root);
  if (thing == NULL || !json_object_has_member (thing, field->key))
    return field->initial;
  return json_object_get_double_member (thing, field->key);
}

static void
check_set_quantity (const Site *site, Tally *tally, const SqField *field, const char *path)
{
  guint i = 0;
  while (i < G_N_ELEMENTS (quantities) &&
         (quantities[i].dimension != field->dimension || !fits (field, quantities[i].value)))
    i++;
  if (i == G_N_ELEMENTS (quantities))
    g_error ("%s: no quantity here that fits", path);
  g_autoptr (SqScene) before = scene_before (site, tally, field);
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) set = sq_scene_set (before, path, quantities[i].text, &error);
  g_assert_no_error (error);
  double got = number_at (site, set, field), wanted = quantities[i].value;
  if (!(fabs (got - wanted) <= fabs (wanted) * QUANTITY_TOLERANCE))
    g_error ("%s=%s is %.17g, expected %.17g", path, quantities[i].text, got, wanted);
  tally->checked++;
}

static void
check_each_quantity (const Site *site, Tally *tally)
{
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    gboolean number = field->type == &sq_value_number || field->type == &sq_value_count ||
                      field->type == &sq_value_spread;
    g_autofree char *path = path_at (site, field->key);
    if (number && path != NULL && field->min < field->max)
      check_set_quantity (site, tally, field, path);
  }
}

static void
test_as_quantity (void)
{
  tally_sites (check_each_quantity, 60);
}

/* Under a look: the value is the look's in the look, and the scene's own stays. */

/* The object of the thing that @things names in @scene, as it is written. */
static JsonObject *
thing_in_scene (JsonNode *scene, const SqField *things, const char *id)
{
  JsonObject *root = json_node_get_object (scene);
  if (id == NULL)
    return json_object_get_object_member (root, things->key);
  if (things->of == &sq_opening_kind) { /* the one opening of the one wall */
    JsonObject *wall =
      json_array_get_object_element (json_object_get_array_member (root, "walls"), 0);
    return json_array_get_object_element (json_object_get_array_member (wall, "openings"), 0);
  }
  return json_array_get_object_element (json_object_get_array_member (root, things->key), 0);
}

static void
check_under_look (Tally *tally, const SqField *things, const SqField *field, JsonNode *value)
{
  const char *id = things->type == &sq_value_partials ? cast_id (things->of->names) : NULL;
  g_autoptr (JsonObject) object = scene_object ();
  JsonNode *changes = one_member (field->key, json_node_ref (value));
  JsonObject *look =
    json_array_get_object_element (json_object_get_array_member (object, "looks"), 0);
  json_object_set_member (look, things->key, id != NULL ? one_member (id, changes) : changes);
  g_autoptr (JsonNode) given = object_tree (object);
  g_autofree char *text = json_to_string (given, FALSE);
  g_autoptr (SqScene) scene = must_parse (tally, text);
  g_autofree char *before = sq_scene_write (scene);

  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) in_look = sq_scene_in_look (scene, "l1", &error);
  g_assert_no_error (error);
  g_autofree char *shown_text = sq_scene_write (in_look);
  g_autoptr (JsonNode) shown = tree (shown_text);
  g_autoptr (JsonNode) base = tree (the_scene);
  JsonObject *got = thing_in_scene (shown, things, id), *own = thing_in_scene (base, things, id);
  /* All of the thing's own members, with the look's one over them. */
  g_autoptr (JsonNode) merged = object_tree (own);
  json_object_set_member (own, field->key, json_node_ref (value));
  g_autoptr (JsonNode) now = object_tree (got);
  same_tree (field->key, now, merged);

  g_autofree char *after = sq_scene_write (scene);
  g_assert_cmpstr (after, ==, before);
  tally->checked++;
}

static void
test_under_looks (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  Tally tally = { .library = library };
  for (guint i = 0; i < sq_look_kind.n_fields; i++) {
    const SqField *things = &sq_look_kind.fields[i];
    for (guint k = 0; things->of != NULL && k < things->of->n_fields; k++) {
      const SqField *field = &things->of->fields[k];
      if (!(field->flags & SQ_PER_LOOK))
        continue;
      g_autoptr (JsonNode) value = some_value (field);
      check_under_look (&tally, things, field, value);
    }
  }
  g_assert_cmpuint (tally.checked, >=, 28);
}

/* Every kind of modifier hangs on a lamp in a look and none of them in the scene itself. */
static void
test_modifiers_under_looks (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  Tally tally = { .library = library };
  const SqField *things = &sq_look_kind.fields[0];
  while (!g_str_equal (things->key, "fixtures"))
    things++;
  const SqField *field = &sq_fixture_kind.fields[0];
  while (!g_str_equal (field->key, "modifiers"))
    field++;
  for (int variant = 0; variant < n_variants (&sq_modifier_kind); variant++) {
    g_autoptr (JsonArray) list = json_array_new ();
    json_array_add_object_element (list, least_thing (&sq_modifier_kind, variant));
    g_autoptr (JsonNode) value = json_node_init_array (json_node_alloc (), list);
    check_under_look (&tally, things, field, value);
  }
  g_assert_cmpuint (tally.checked, ==, 7);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/fields/set/every row as JSON, equal to reading it", test_as_json);
  g_test_add_func ("/fields/set/text without quotes", test_as_text);
  g_test_add_func ("/fields/set/every number as a quantity with its unit", test_as_quantity);
  g_test_add_func ("/fields/looks/every row that a look may change", test_under_looks);
  g_test_add_func ("/fields/looks/every kind of modifier", test_modifiers_under_looks);
  return g_test_run ();
}
