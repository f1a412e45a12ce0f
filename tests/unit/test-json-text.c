/* test-json-text.c: does the tree hold what the text says, and no tree come of a bad text? */
#include "base/json-text.h"

#include "base/error.h"

#include <string.h>

/* Read from a copy of exactly its length, so that a memory checker sees any step past the end. */
static JsonNode *
parse (const char *text, gsize length, GError **error)
{
  g_autofree char *exact = g_malloc (MAX (length, 1));
  memcpy (exact, text, length);
  return sq_json_parse (exact, length, error);
}

static JsonNode *
parse_good (const char *text)
{
  g_autoptr (GError) error = NULL;
  JsonNode *root = parse (text, strlen (text), &error);
  g_assert_no_error (error);
  return root;
}

static const char sample[] =
  "{\n"
  "  \"format\": 1,\n"
  "  \"title\": { \"scene\": \"12\\u0041\", \"location\": \"Caf\u00e9 \\ud83d\\udca1 "
  "\\\"Nord\\\"\" },\n"
  "  \"north\": -9.05e+1,\r\n"
  "  \"walls\": [\n"
  "    { \"id\": \"w1\", \"path\": [[0, 0], [4.25, 0.0], [4.25, -3E0]], \"closed\": true },\n"
  "    { \"id\": \"w2\", \"path\": [], \"tint\": null, \"wild\": false, \"x\": {} }\n"
  "  ]\n"
  "}\n\n";

static void
test_cut_off (void)
{
  gsize whole = (gsize)(strrchr (sample, '}') + 1 - sample);

  for (gsize length = 0; length < sizeof sample; length++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (JsonNode) root = parse (sample, length, &error);
    if (length >= whole) {
      g_assert_no_error (error);
      g_assert_nonnull (root);
    } else {
      g_assert_error (error, SQ_ERROR, SQ_ERROR_SYNTAX);
    }
  }
}

/* Whatever passes the check must be read by the library as well; and as long as only bytes are
 * changed at random, most must not pass. */
static void
test_changed_bytes (void)
{
  static const char likely[] = "{}[]\",:\\/0123456789.eE+-untrfalse \n\t'\xc3\xff";
  const guint rounds = 20000;
  g_autoptr (GRand) random = g_rand_new_with_seed (8259);
  guint passed = 0;

  for (guint round = 0; round < rounds; round++) {
    char text[sizeof sample];
    gint changes = g_rand_int_range (random, 1, 4);
    g_autoptr (GError) error = NULL;
    g_autoptr (JsonNode) root = NULL;

    memcpy (text, sample, sizeof sample);
    for (gint i = 0; i < changes; i++)
      text[g_rand_int_range (random, 0, sizeof sample - 1)] =
        likely[g_rand_int_range (random, 0, sizeof likely)];
    root = parse (text, sizeof sample - 1, &error);
    if (sq_json_check (text, sizeof sample - 1, NULL)) {
      g_assert_no_error (error);
      g_assert_true (JSON_NODE_HOLDS_OBJECT (root));
      passed++;
    } else {
      g_assert_null (root);
      g_assert_true (g_str_has_prefix (error->message, "line "));
    }
  }
  g_assert_cmpuint (passed, >, rounds / 100);
  g_assert_cmpuint (passed, <, rounds / 2);
}

static void
test_depth (void)
{
  const guint depth = 64;
  g_autoptr (GString) text = g_string_new (NULL);
  g_autoptr (JsonNode) root = NULL;
  JsonNode *node;

  for (guint i = 0; i < depth; i += 2)
    g_string_append (text, "[{\"a\":");
  g_string_append (text, "1");
  for (guint i = 0; i < depth; i += 2)
    g_string_append (text, "}]");
  node = root = parse_good (text->str);
  for (guint i = 0; i < depth; i += 2) {
    node = json_array_get_element (json_node_get_array (node), 0);
    node = json_object_get_member (json_node_get_object (node), "a");
  }
  g_assert_cmpint (json_node_get_int (node), ==, 1);
}

static void
test_many_keys (void)
{
  const guint keys = 100000;
  GString *text = g_string_new ("{");
  g_autoptr (JsonNode) root = NULL;
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < keys; i++)
    g_string_append_printf (text, "%s\"key%u\":%u", i > 0 ? "," : "", i, i);
  g_string_append (text, ",\"key\\u0037\":0}");
  g_assert_null (parse (text->str, text->len, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_SYNTAX);
  g_assert_nonnull (strstr (error->message, "\"key\\u0037\" stands twice"));

  g_string_truncate (text, text->len - strlen (",\"key\\u0037\":0}"));
  g_string_append_c (text, '}');
  root = parse_good (text->str);
  g_assert_cmpuint (json_object_get_size (json_node_get_object (root)), ==, keys);
  g_string_free (text, TRUE);
}

static void
test_numbers (void)
{
  static const struct {
    const char *text;
    gboolean whole;
    gint64 number;
    double value;
  } numbers[] = {
    { "0", TRUE, 0, 0.0 },
    { "-0", TRUE, 0, 0.0 },
    { "-12", TRUE, -12, 0.0 },
    { "9007199254740993", TRUE, G_GINT64_CONSTANT (9007199254740993), 0.0 },
    { "9223372036854775807", TRUE, G_MAXINT64, 0.0 },
    { "-9223372036854775808", TRUE, G_MININT64, 0.0 },
    { "0.0", FALSE, 0, 0.0 },
    { "-1.5", FALSE, 0, -1.5 },
    { "1E5", FALSE, 0, 1e5 },
    { "1e+5", FALSE, 0, 1e5 },
    { "25e-2", FALSE, 0, 0.25 },
    { "0.1", FALSE, 0, 0.1 },
    { "0.10000000000000001", FALSE, 0, 0.1 },
    { "0.30000000000000004", FALSE, 0, 0.1 + 0.2 },
    { "9007199254740993.0", FALSE, 0, 9007199254740992.0 },
    { "5e-324", FALSE, 0, 0x1p-1074 },
    { "2.2250738585072011e-308", FALSE, 0, 0x0.fffffffffffffp-1022 },
    { "1.7976931348623157E+308", FALSE, 0, G_MAXDOUBLE },
    { "1e-999", FALSE, 0, 0.0 },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++) {
    g_autoptr (JsonNode) root = parse_good (numbers[i].text);
    if (numbers[i].whole) {
      g_assert_true (json_node_get_value_type (root) == G_TYPE_INT64);
      g_assert_cmpint (json_node_get_int (root), ==, numbers[i].number);
    } else {
      double value;
      g_assert_true (json_node_get_value_type (root) == G_TYPE_DOUBLE);
      value = json_node_get_double (root);
      g_assert_cmpmem (&value, sizeof value, &numbers[i].value, sizeof value);
    }
  }
}

/* Every character that there is, escaped and as it is, 256 to a text. */
static void
test_every_character (void)
{
  for (gunichar block = 0; block <= 0x10ff00; block += 0x100) {
    g_autoptr (GString) text = g_string_new ("[\"");
    g_autoptr (GString) plain = g_string_new (NULL);
    g_autoptr (GString) wanted = g_string_new (NULL);
    g_autoptr (JsonNode) root = NULL;

    for (gunichar c = block; c < block + 0x100; c++) {
      if (c == 0 || (c >= 0xd800 && c <= 0xdfff))
        continue;
      g_string_append_unichar (wanted, c);
      if (c >= 0x20 && c != '"' && c != '\\')
        g_string_append_unichar (plain, c);
      if (c > 0xffff)
        g_string_append_printf (text, "\\u%04x\\u%04X", 0xd7c0 + (c >> 10), 0xdc00 + (c & 0x3ff));
      else
        g_string_append_printf (text, "\\u%04x", c);
    }
    g_string_append_printf (text, "\",\"%s\"]", plain->str);
    root = parse_good (text->str);
    g_assert_cmpstr (json_array_get_string_element (json_node_get_array (root), 0), ==,
                     wanted->str);
    g_assert_cmpstr (json_array_get_string_element (json_node_get_array (root), 1), ==, plain->str);
  }
}

static void
test_strings (void)
{
  const gsize length = 3000000;
  g_autofree char *long_text = g_malloc (length + 3);
  g_autoptr (JsonNode) escapes = parse_good ("\"\\\"\\\\\\/\\b\\f\\n\\r\\t\"");
  g_autoptr (JsonNode) keys =
    parse_good ("{\"\":1,\" \":2,\"\\t\":3,\"true\":4,\"\\ud83d\\udca1\":5}");
  g_autoptr (JsonNode) root = NULL;
  JsonObject *object = json_node_get_object (keys);

  g_assert_cmpstr (json_node_get_string (escapes), ==, "\"\\/\b\f\n\r\t");
  g_assert_cmpint (json_object_get_int_member (object, ""), ==, 1);
  g_assert_cmpint (json_object_get_int_member (object, " "), ==, 2);
  g_assert_cmpint (json_object_get_int_member (object, "\t"), ==, 3);
  g_assert_cmpint (json_object_get_int_member (object, "true"), ==, 4);
  g_assert_cmpint (json_object_get_int_member (object, "\U0001f4a1"), ==, 5);

  memset (long_text, 'x', length + 2);
  long_text[0] = long_text[length + 1] = '"';
  long_text[length + 2] = '\0';
  root = parse_good (long_text);
  g_assert_cmpuint (strlen (json_node_get_string (root)), ==, length);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/json text/cut off at every byte", test_cut_off);
  g_test_add_func ("/json text/bytes changed at random", test_changed_bytes);
  g_test_add_func ("/json text/64 levels", test_depth);
  g_test_add_func ("/json text/100,000 keys in one object", test_many_keys);
  g_test_add_func ("/json text/numbers arrive unharmed", test_numbers);
  g_test_add_func ("/json text/every character arrives unharmed", test_every_character);
  g_test_add_func ("/json text/strings and keys arrive unharmed", test_strings);
  return g_test_run ();
}
