/* test-json-write.c: the one canonical text of a JSON tree */
#include "base/json-write.h"

#include "base/json-text.h"

#include <float.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

static JsonNode *
parse (const char *text)
{
  g_autoptr (GError) error = NULL;
  JsonNode *root = sq_json_parse (text, strlen (text), &error);
  g_assert_no_error (error);
  return root;
}

static char *
rewritten (const char *text)
{
  g_autoptr (JsonNode) root = parse (text);
  return sq_json_write (root);
}

static char *
number (double value)
{
  GString *text = g_string_new (NULL);
  sq_json_append_number (text, value);
  return g_string_free (text, FALSE);
}

/* ECMA-262, Number::toString, for the digits and the plain range down to 1e-6; upwards that goes to
 * 1e21 where we stop at 2^63. Limits of doubles: IEEE 754 and <float.h>. 2^-1017, 2^-1007: the
 * shortest that read back, as correctly rounding printers (Steele and White 1990, Gay 1990) give.
 */
static void
test_numbers (void)
{
  static const struct {
    double value;
    const char *text;
  } numbers[] = {
    { 0.0, "0" },
    { -0.0, "0" },
    { 1.0, "1" },
    { -1.0, "-1" },
    { 10.0, "10" },
    { 250.0, "250" },
    { 3200.0, "3200" },
    { 0.1, "0.1" },
    { -0.1, "-0.1" },
    { 0.25, "0.25" },
    { 1.70, "1.7" },
    { 12.5, "12.5" },
    { 100.001, "100.001" },
    { 1.0 / 3.0, "0.3333333333333333" },
    { 2.0 / 3.0, "0.6666666666666666" },
    { 0.1 + 0.2, "0.30000000000000004" },
    { 0.1 * 3.0, "0.30000000000000004" },
    { 123456.789, "123456.789" },
    { 0.001, "0.001" },
    { 1e-6, "0.000001" },
    { 1.5e-6, "0.0000015" },
    { 9.99e-7, "9.99e-7" },
    { 1e-7, "1e-7" },
    { -1.25e-7, "-1.25e-7" },
    { 1e5, "100000" },
    { 1e15, "1000000000000000" },
    { 9007199254740991.0, "9007199254740991" },
    { 9007199254740992.0, "9007199254740992" },
    { 9007199254740994.0, "9007199254740994" },
    { 1e18, "1000000000000000000" },
    { 9223372036854774784.0, "9223372036854775000" }, /* the last double below 2^63 */
    { 0x1p63, "9.223372036854776e+18" },
    { -0x1p63, "-9.223372036854776e+18" },
    { 1e21, "1e+21" },
    { 6.02214076e23, "6.02214076e+23" },
    { 1e22, "1e+22" },
    { 1e23, "1e+23" },
    { 0x1p-1017, "7.120236347223045e-307" },
    { 0x1p-1007, "7.291122019556398e-304" },
    { 5e-324, "5e-324" },
    { 0x0.fffffffffffffp-1022, "2.225073858507201e-308" },
    { DBL_MIN, "2.2250738585072014e-308" },
    { DBL_MAX, "1.7976931348623157e+308" },
    { DBL_EPSILON, "2.220446049250313e-16" },
    { (double)NAN, "null" },
    { (double)INFINITY, "null" },
    { -(double)INFINITY, "null" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++) {
    g_autofree char *text = number (numbers[i].value);
    g_assert_cmpstr (text, ==, numbers[i].text);
  }
}

/* Whether @text, written by us for @value, reads back and no decimal of one digit less does. Those
 * that could are the nearest to @value and its two neighbours, printed by the C library. */
static void
assert_shortest (double value, const char *text)
{
  int digits = 0, exponent;
  gint64 nearest = 0;
  g_autofree char *shorter = NULL;
  gboolean leading = TRUE;
  guint zeros = 0;

  g_assert_cmpfloat (g_ascii_strtod (text, NULL), ==, value);
  for (const char *c = text; *c != '\0' && *c != 'e'; c++) {
    if (!g_ascii_isdigit (*c) || (leading && *c == '0'))
      continue;
    leading = FALSE;
    digits++;
    zeros = *c == '0' ? zeros + 1 : 0;
  }
  digits -= (int)zeros;
  g_assert_cmpint (digits, >=, 1);
  g_assert_cmpint (digits, <=, 17);
  if (digits == 1)
    return;

  shorter = g_strdup_printf ("%.*e", digits - 2, value);
  for (const char *c = shorter; *c != 'e'; c++) {
    if (g_ascii_isdigit (*c))
      nearest = nearest * 10 + g_ascii_digit_value (*c);
  }
  exponent = atoi (strchr (shorter, 'e') + 1) - (digits - 2);
  for (gint64 near = nearest - 1; near <= nearest + 1; near++) {
    g_autofree char *other = g_strdup_printf ("%" G_GINT64_FORMAT "e%d", near, exponent);
    g_assert_cmpfloat (g_ascii_strtod (other, NULL), !=, fabs (value));
  }
}

static void
test_shortest (void)
{
  const guint rounds = 40000;
  g_autoptr (GRand) random = g_rand_new_with_seed (754);

  for (int exponent = -1074; exponent <= 1023; exponent++) {
    g_autofree char *text = number (ldexp (1.0, exponent));
    assert_shortest (ldexp (1.0, exponent), text);
  }
  for (guint round = 0; round < rounds; round++) {
    guint64 bits = (guint64)g_rand_int (random) << 32 | g_rand_int (random);
    double value;
    g_autofree char *text = NULL;

    if (round % 4 == 0)
      bits &= ~G_GUINT64_CONSTANT (0x7ff0000000000000); /* a subnormal one */
    memcpy (&value, &bits, sizeof value);
    if (!isfinite (value) || value == 0.0)
      continue;
    text = number (value);
    assert_shortest (value, text);
  }
}

/* What a hand types comes back as typed: up to fifteen digits survive (DBL_DIG). */
static void
test_typed (void)
{
  const guint rounds = 40000;
  g_autoptr (GRand) random = g_rand_new_with_seed (15);

  for (guint round = 0; round < rounds; round++) {
    gint whole = g_rand_int_range (random, 0, 100000);
    gint tail = g_rand_int_range (random, 1, 1000) * 10 + g_rand_int_range (random, 1, 10);
    g_autofree char *typed = g_strdup_printf ("%d.%05d", whole, tail);
    g_autofree char *text = number (g_ascii_strtod (typed, NULL));
    g_assert_cmpstr (text, ==, typed);
  }
}

static void
test_layout (void)
{
  static const struct {
    const char *given, *written;
  } layouts[] = {
    { "1", "1\n" },
    { " \"a\" ", "\"a\"\n" },
    { "null", "null\n" },
    { "[]", "[]\n" },
    { "{}", "{}\n" },
    { "[1,2]", "[1, 2]\n" },
    { "[[],{},[{}]]", "[[], {}, [{}]]\n" },
    { "[{\"a\":1,\"b\":[1,2]}]", "[{ \"a\": 1, \"b\": [1, 2] }]\n" },
    { "{\"a\":1}", "{\n  \"a\": 1\n}\n" },
    { "{\"a\":{},\"b\":[],\"c\":{\"d\":true}}",
      "{\n  \"a\": {},\n  \"b\": [],\n  \"c\": { \"d\": true }\n}\n" },
    { "{\"b\":1,\"a\":2}", "{\n  \"b\": 1,\n  \"a\": 2\n}\n" },
    { "{\"walls\":[{\"id\":\"w1\",\"path\":[[0.0,0],[4.250,0],[4.250,3.5],[0,3.5]],\"height\":3.0,"
      "\"closed\":true,\"note\":\"as built, not as drawn\",\"openings\":[]},{\"id\":\"w2\"}]}",
      "{\n"
      "  \"walls\": [\n"
      "    {\n"
      "      \"id\": \"w1\",\n"
      "      \"path\": [[0, 0], [4.25, 0], [4.25, 3.5], [0, 3.5]],\n"
      "      \"height\": 3,\n"
      "      \"closed\": true,\n"
      "      \"note\": \"as built, not as drawn\",\n"
      "      \"openings\": []\n"
      "    },\n"
      "    { \"id\": \"w2\" }\n"
      "  ]\n"
      "}\n" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (layouts); i++) {
    g_autofree char *written = rewritten (layouts[i].given);
    g_assert_cmpstr (written, ==, layouts[i].written);
  }
}

/* RFC 8259 section 7: quotation mark, reverse solidus and U+0000 to U+001F, nothing else. */
static void
test_escapes (void)
{
  g_autoptr (JsonNode) node = json_node_new (JSON_NODE_VALUE);
  g_autofree char *written = NULL;

  json_node_set_string (node, "\"\\/\b\f\n\r\t\x01\x1f\x7f é € \u2028 \U0001f4a1 <&>'");
  written = sq_json_write (node);
  g_assert_cmpstr (written, ==,
                   "\"\\\"\\\\/\\b\\f\\n\\r\\t\\u0001\\u001f\x7f é € \u2028 \U0001f4a1 <&>'\"\n");
}

/* A line holds 100 characters, one of them kept for a comma; characters are not bytes, and what is
 * escaped counts as it is written. */
static void
test_width (void)
{
  static const struct {
    const char *filler;
    guint width;
  } fillers[] = { { "x", 1 }, { "é", 1 }, { "\U0001f4a1", 1 }, { "\\n", 2 }, { "\\u0001", 6 } };
  const guint taken = strlen ("  \"a\": [\"\"],");

  for (gsize i = 0; i < G_N_ELEMENTS (fillers); i++) {
    for (guint room = 0; room < 2; room++) {
      g_autoptr (GString) text = g_string_new (NULL);
      g_autoptr (GString) wanted = g_string_new ("{\n  \"a\": [");
      g_autofree char *given = NULL;
      g_autofree char *written = NULL;
      guint width = 100 - taken + 1 - room; /* one too many, then as many as there is room for */

      for (guint done = 0; done < width % fillers[i].width; done++)
        g_string_append_c (text, '-');
      for (guint done = 0; done < width / fillers[i].width; done++)
        g_string_append (text, fillers[i].filler);
      if (room == 0)
        g_string_append_printf (wanted, "\n    \"%s\"\n  ]", text->str);
      else
        g_string_append_printf (wanted, "\"%s\"]", text->str);
      g_string_append (wanted, "\n}\n");
      given = g_strdup_printf ("{\"a\":[\"%s\"]}", text->str);
      written = rewritten (given);
      g_assert_cmpstr (written, ==, wanted->str);
    }
  }
}

static double
random_number (GRand *random)
{
  switch (g_rand_int_range (random, 0, 4)) {
  case 0:
    return g_rand_int_range (random, -100000, 100000) / 1000.0;
  case 1:
    return ldexp (g_rand_double (random) - 0.5, g_rand_int_range (random, -1070, 1024));
  case 2:
    return ldexp (1.0, g_rand_int_range (random, 50, 75));
  default:
    return g_rand_int_range (random, -1000, 1000);
  }
}

static char *
random_string (GRand *random)
{
  static const char *const bits[] = {
    "a", "key", "é", "\U0001f4a1", "\"", "\\", "\n", "\x02", " "
  };
  GString *text = g_string_new (NULL);

  for (gint left = g_rand_int_range (random, 0, 12); left > 0; left--)
    g_string_append (text, bits[g_rand_int_range (random, 0, G_N_ELEMENTS (bits))]);
  return g_string_free (text, FALSE);
}

static JsonNode *
random_tree (GRand *random, guint depth)
{
  gint kind = g_rand_int_range (random, 0, depth > 0 ? 8 : 5);
  gint count = g_rand_int_range (random, 0, 7);
  g_autofree char *text = random_string (random);

  if (kind == 0)
    return json_node_init_string (json_node_alloc (), text);
  if (kind == 1)
    return json_node_init_double (json_node_alloc (), random_number (random));
  if (kind == 2)
    return json_node_init_int (json_node_alloc (), (gint64)g_rand_int (random)
                                                     << g_rand_int_range (random, 0, 32));
  if (kind == 3)
    return json_node_init_boolean (json_node_alloc (), g_rand_boolean (random));
  if (kind == 4)
    return json_node_init_null (json_node_alloc ());
  if (kind < 7) {
    g_autoptr (JsonArray) array = json_array_new ();
    for (gint i = 0; i < count; i++)
      json_array_add_element (array, random_tree (random, depth - 1));
    return json_node_init_array (json_node_alloc (), array);
  } else {
    g_autoptr (JsonObject) object = json_object_new ();
    for (gint i = 0; i < count; i++) {
      g_autofree char *key = random_string (random);
      json_object_set_member (object, key, random_tree (random, depth - 1));
    }
    return json_node_init_object (json_node_alloc (), object);
  }
}

/* The same values in the same order; a number may have changed from a double to a gint64. */
static void
assert_same (JsonNode *a, JsonNode *b)
{
  g_assert_cmpint (json_node_get_node_type (a), ==, json_node_get_node_type (b));
  if (JSON_NODE_HOLDS_ARRAY (a)) {
    JsonArray *left = json_node_get_array (a), *right = json_node_get_array (b);
    g_assert_cmpuint (json_array_get_length (left), ==, json_array_get_length (right));
    for (guint i = 0; i < json_array_get_length (left); i++)
      assert_same (json_array_get_element (left, i), json_array_get_element (right, i));
  } else if (JSON_NODE_HOLDS_OBJECT (a)) {
    g_autoptr (GList) left = json_object_get_members (json_node_get_object (a));
    g_autoptr (GList) right = json_object_get_members (json_node_get_object (b));
    const GList *r = right;
    g_assert_cmpuint (g_list_length (left), ==, g_list_length (right));
    for (const GList *l = left; l != NULL; l = l->next, r = r->next) {
      g_assert_cmpstr (l->data, ==, r->data);
      assert_same (json_object_get_member (json_node_get_object (a), l->data),
                   json_object_get_member (json_node_get_object (b), r->data));
    }
  } else if (JSON_NODE_HOLDS_VALUE (a) && json_node_get_value_type (a) == G_TYPE_STRING) {
    g_assert_cmpstr (json_node_get_string (a), ==, json_node_get_string (b));
  } else if (JSON_NODE_HOLDS_VALUE (a) && json_node_get_value_type (a) == G_TYPE_BOOLEAN) {
    g_assert_cmpint (json_node_get_boolean (a), ==, json_node_get_boolean (b));
  } else if (JSON_NODE_HOLDS_VALUE (a) && json_node_get_value_type (a) == G_TYPE_INT64) {
    g_assert_cmpint (json_node_get_int (a), ==, json_node_get_int (b));
  } else if (JSON_NODE_HOLDS_VALUE (a)) {
    g_assert_cmpfloat (json_node_get_double (a), ==, json_node_get_double (b));
  }
}

static void
test_fixed_point (void)
{
  const guint rounds = 3000;
  g_autoptr (GRand) random = g_rand_new_with_seed (1);

  for (guint round = 0; round < rounds; round++) {
    g_autoptr (JsonNode) tree = random_tree (random, 6);
    g_autofree char *first = sq_json_write (tree);
    g_autoptr (JsonNode) again = parse (first);
    g_autofree char *second = sq_json_write (again);
    g_auto (GStrv) lines = g_strsplit (first, "\n", -1);

    assert_same (tree, again);
    g_assert_cmpstr (first, ==, second);
    for (guint i = 0; lines[i] != NULL; i++) {
      g_assert_false (g_str_has_suffix (lines[i], " "));
      /* Only a lone value may be wider, and none here is. */
      g_assert_cmpint (g_utf8_strlen (lines[i], -1), <=, SQ_JSON_COLUMNS);
    }
  }
}

static JsonNode *
deep_tree (guint depth, guint numbers)
{
  JsonNode *node;
  g_autoptr (JsonArray) bottom = json_array_new ();

  for (guint i = 0; i < numbers; i++)
    json_array_add_double_element (bottom, i + 0.1);
  node = json_node_init_array (json_node_alloc (), bottom);
  for (guint i = 1; i < depth; i++) {
    g_autoptr (JsonObject) object = json_object_new ();
    json_object_set_member (object, "a", node);
    node = json_node_init_object (json_node_alloc (), object);
  }
  return node;
}

/* Down to the reader's limit: all numbers are there, and the text is its own fixed point. How long
 * that takes is for tests/bench. */
static void
test_deep (void)
{
  const guint numbers = 2000, depth = 64;
  g_autoptr (JsonNode) deep = deep_tree (depth, numbers);
  g_autofree char *text = sq_json_write (deep);
  g_autoptr (JsonNode) back = sq_json_parse (text, strlen (text), NULL);
  g_assert_nonnull (back);
  g_autofree char *again = sq_json_write (back);
  g_assert_cmpstr (text, ==, again);
  JsonNode *node = back;
  while (JSON_NODE_HOLDS_OBJECT (node))
    node = json_object_get_member (json_node_get_object (node), "a");
  g_assert_cmpuint (json_array_get_length (json_node_get_array (node)), ==, numbers);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/json write/numbers as people write them", test_numbers);
  g_test_add_func ("/json write/no shorter number reads back", test_shortest);
  g_test_add_func ("/json write/a typed number comes back as typed", test_typed);
  g_test_add_func ("/json write/layout", test_layout);
  g_test_add_func ("/json write/only what must be escaped is", test_escapes);
  g_test_add_func ("/json write/a line holds 100 characters", test_width);
  g_test_add_func ("/json write/reading and writing again changes nothing", test_fixed_point);
  g_test_add_func ("/json write/nested to the limit", test_deep);
  return g_test_run ();
}
