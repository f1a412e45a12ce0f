/* test-json-check.c: what is JSON and what is not, by RFC 8259 */
#include "base/json-check.h"

#include "base/error.h"

#include <string.h>

/* Checks a copy of exactly its length, so that a memory checker sees any step past the end. */
static gboolean
check (const char *text, gsize length, GError **error)
{
  g_autofree char *exact = g_malloc (MAX (length, 1));
  memcpy (exact, text, length);
  return sq_json_check (exact, length, error);
}

typedef struct {
  const char *section; /* of RFC 8259 */
  const char *text;
  gsize length;
  guint line, column; /* of the fault; 0, 0: there is none */
} Row;

/* clang-format off */
#define GOOD(section, text) { section, text, sizeof (text) - 1, 0, 0 }
#define BAD(section, text, line, column) { section, text, sizeof (text) - 1, line, column }

static const Row rows[] = {
  /* Section 2: a text is one value with blanks round it. */
  GOOD ("2", " \t\n\r1 \t\n\r"),
  GOOD ("2", "[ 1 , 2 ]"),
  GOOD ("2", "{ \"a\" : 1 }"),
  BAD ("2", "", 1, 1),
  BAD ("2", " \n ", 2, 2),
  BAD ("2", "1 2", 1, 3),
  BAD ("2", "{} []", 1, 4),
  BAD ("2", "[]]", 1, 3),
  BAD ("2", "{}x", 1, 3),
  BAD ("2", "[1]\0", 1, 4),
  BAD ("2", "\0", 1, 1),
  BAD ("2", "\f1", 1, 1),
  BAD ("2", "[\v1]", 1, 2),
  BAD ("2", "[\u00a01]", 1, 2),
  BAD ("2", "[1] // end", 1, 5),
  BAD ("2", "/* start */ [1]", 1, 1),
  BAD ("2", "[1] # end", 1, 5),
  BAD ("2", "]", 1, 1),
  BAD ("2", ",", 1, 1),
  BAD ("2", ":", 1, 1),

  /* Section 3: three words, in small letters. */
  GOOD ("3", "true"),
  GOOD ("3", "false"),
  GOOD ("3", "null"),
  GOOD ("3", "[true,false,null]"),
  BAD ("3", "True", 1, 1),
  BAD ("3", "NULL", 1, 1),
  BAD ("3", "nul", 1, 1),
  BAD ("3", "truex", 1, 5),
  BAD ("3", "[true false]", 1, 7),
  BAD ("3", "undefined", 1, 1),
  BAD ("3", "abc", 1, 1),

  /* Section 4: objects; names should be unique, ours must. */
  GOOD ("4", "{}"),
  GOOD ("4", "{\"\":0}"),
  GOOD ("4", "{\"a\":{\"a\":{\"a\":1}}}"),
  GOOD ("4", "{\"a\":1,\"A\":2,\"\\u00e4\":3,\"a\u0308\":4}"),
  GOOD ("4", "[{\"a\":1},{\"a\":1}]"),
  GOOD ("4", "{\"a\":{\"b\":1},\"b\":[{\"a\":1},{\"b\":2}]}"),
  BAD ("4", "{\"a\":1,\"a\":1}", 1, 8),
  BAD ("4", "{\"a\":1,\"\\u0061\":2}", 1, 8),
  BAD ("4", "{\"\":1,\n \"\":2}", 2, 2),
  BAD ("4", "{\"\\/\":1,\"/\":2}", 1, 9),
  BAD ("4", "{\"\U0001f4a1\":1,\"\\ud83d\\uDCA1\":2}", 1, 8),
  BAD ("4", "{\"a\":{\"b\":1,\"c\":{},\"b\":2}}", 1, 20),
  BAD ("4", "{\"a\":{\"a\":1},\"a\":2}", 1, 14),
  BAD ("4", "{", 1, 2),
  BAD ("4", "}", 1, 1),
  BAD ("4", "{\"a\"", 1, 5),
  BAD ("4", "{\"a\":", 1, 6),
  BAD ("4", "{\"a\":1", 1, 7),
  BAD ("4", "{\"a\":1,", 1, 8),
  BAD ("4", "{\"a\":1,}", 1, 8),
  BAD ("4", "{\"a\":1,,\"b\":2}", 1, 8),
  BAD ("4", "{,}", 1, 2),
  BAD ("4", "{\"a\" 1}", 1, 6),
  BAD ("4", "{\"a\"=1}", 1, 5),
  BAD ("4", "{\"a\":}", 1, 6),
  BAD ("4", "{\"a\"::1}", 1, 6),
  BAD ("4", "{\"a\",1}", 1, 5),
  BAD ("4", "{a:1}", 1, 2),
  BAD ("4", "{1:1}", 1, 2),
  BAD ("4", "{'a':1}", 1, 2),
  BAD ("4", "{null:1}", 1, 2),
  BAD ("4", "{\"a\":1]", 1, 7),
  BAD ("4", "{\"a\":1 \"b\":2}", 1, 8),
  BAD ("4", "{\"a\":1;\"b\":2}", 1, 7),

  /* Section 5: arrays. */
  GOOD ("5", "[]"),
  GOOD ("5", "[[],[[]],{}]"),
  GOOD ("5", "[1,\"1\",null,true,[1],{}]"),
  BAD ("5", "[", 1, 2),
  BAD ("5", "[1", 1, 3),
  BAD ("5", "[1,", 1, 4),
  BAD ("5", "[1,]", 1, 4),
  BAD ("5", "[,1]", 1, 2),
  BAD ("5", "[1,,2]", 1, 4),
  BAD ("5", "[1 2]", 1, 4),
  BAD ("5", "[1:2]", 1, 3),
  BAD ("5", "[1}", 1, 3),
  BAD ("5", "(1)", 1, 1),
  BAD ("5", "[\n  1,\n  [2, 3\n]", 4, 2),

  /* Section 6: numbers; an implementation may limit range and precision, and says so. */
  GOOD ("6", "0"),
  GOOD ("6", "-0"),
  GOOD ("6", "-0.0"),
  GOOD ("6", "-1"),
  GOOD ("6", "0.5"),
  GOOD ("6", "10"),
  GOOD ("6", "1E5"),
  GOOD ("6", "1e+5"),
  GOOD ("6", "1e-5"),
  GOOD ("6", "1e05"),
  GOOD ("6", "0e0"),
  GOOD ("6", "0E+999"),
  GOOD ("6", "1e-999"),
  GOOD ("6", "1.7976931348623157e308"),
  GOOD ("6", "9223372036854775807"),
  GOOD ("6", "-9223372036854775808"),
  GOOD ("6", "9223372036854775808.0"),
  GOOD ("6", "0.1234567890123456789012345678901234567890123456789012345678901234567890"),
  BAD ("6", "1e999", 1, 1),
  BAD ("6", "[1, -1e999]", 1, 5),
  BAD ("6", "1.8e308", 1, 1),
  BAD ("6", "9223372036854775808", 1, 1),
  BAD ("6", "-9223372036854775809", 1, 1),
  BAD ("6", "[100000000000000000000000000000000000000000000000000000000000]", 1, 2),
  BAD ("6", "-", 1, 2),
  BAD ("6", "+1", 1, 1),
  BAD ("6", "--1", 1, 2),
  BAD ("6", "- 1", 1, 2),
  BAD ("6", ".5", 1, 1),
  BAD ("6", "-.5", 1, 2),
  BAD ("6", "5.", 1, 3),
  BAD ("6", "5.e3", 1, 3),
  BAD ("6", "1e", 1, 3),
  BAD ("6", "1e+", 1, 4),
  BAD ("6", "1e+-2", 1, 4),
  BAD ("6", "1e1.5", 1, 4),
  BAD ("6", "1.2.3", 1, 4),
  BAD ("6", "01", 1, 1),
  BAD ("6", "-012", 1, 2),
  BAD ("6", "00", 1, 1),
  BAD ("6", "0x10", 1, 2),
  BAD ("6", "1,5", 1, 2),
  BAD ("6", "1_000", 1, 2),
  BAD ("6", "1f", 1, 2),
  BAD ("6", "NaN", 1, 1),
  BAD ("6", "[NaN]", 1, 2),
  BAD ("6", "Infinity", 1, 1),
  BAD ("6", "-Infinity", 1, 2),
  BAD ("6", "-NaN", 1, 2),
  BAD ("6", "\uff11", 1, 1),
  BAD ("6", "\u00bd", 1, 1),

  /* Section 7: strings. */
  GOOD ("7", "\"\""),
  GOOD ("7", "\"\\\"\\\\\\/\\b\\f\\n\\r\\t\""),
  GOOD ("7", "\"\\u20AC\\u20ac\""),
  GOOD ("7", "\"\\uD83D\\uDCA1\""),
  GOOD ("7", "\"/'#;//\""),
  GOOD ("7", "\"\x7f\""),
  GOOD ("7", "\"\u2028\u2029\""),
  GOOD ("7", "\"\\uFFFE\\uffff\""),
  BAD ("7", "\"", 1, 2),
  BAD ("7", "\"abc", 1, 5),
  BAD ("7", "\"abc\\", 1, 6),
  BAD ("7", "\"abc\\\"", 1, 7),
  BAD ("7", "'abc'", 1, 1),
  BAD ("7", "\u201cabc\u201d", 1, 1),
  BAD ("7", "\"a\nb\"", 1, 3),
  BAD ("7", "\"a\tb\"", 1, 3),
  BAD ("7", "\"a\rb\"", 1, 3),
  BAD ("7", "\"a\x1f\"", 1, 3),
  BAD ("7", "\"a\0b\"", 1, 3),
  BAD ("7", "\"\\a\"", 1, 2),
  BAD ("7", "\"\\x41\"", 1, 2),
  BAD ("7", "\"\\'\"", 1, 2),
  BAD ("7", "\"\\0\"", 1, 2),
  BAD ("7", "\"\\\0\"", 1, 2),
  BAD ("7", "\"\\\n\"", 1, 2),
  BAD ("7", "\"\\\u00e9\"", 1, 2),
  BAD ("7", "\"\\U0041\"", 1, 2),
  BAD ("7", "\"\\u\"", 1, 2),
  BAD ("7", "\"\\u004\"", 1, 2),
  BAD ("7", "\"\\u00g0\"", 1, 2),
  BAD ("7", "\"\\u+041\"", 1, 2),
  BAD ("7", "\"\\u 041\"", 1, 2),
  BAD ("7", "\"\\u00", 1, 2),
  BAD ("7", "\"ab\\u0000\"", 1, 4),
  BAD ("7", "{\"\\u0000\":1}", 1, 3),

  /* Section 8.1: UTF-8, no byte-order mark. */
  BAD ("8.1", "\xef\xbb\xbf[1]", 1, 1),
  GOOD ("8.1", "\"\u00e9\u20ac\U0001f4a1\""),
  GOOD ("8.1", "\"\xef\xbb\xbf\""),
  GOOD ("8.1", "\"\U0010ffff\""),
  BAD ("8.1", "\"\xe9\"", 1, 2),
  BAD ("8.1", "\"\u00e9\x80\"", 1, 3),
  BAD ("8.1", "\"\xc0\x80\"", 1, 2),
  BAD ("8.1", "\"\xc1\xbf\"", 1, 2),
  BAD ("8.1", "\"\xe0\x80\xaf\"", 1, 2),
  BAD ("8.1", "\"\xf4\x90\x80\x80\"", 1, 2),
  BAD ("8.1", "\"\xff\"", 1, 2),
  BAD ("8.1", "\"ab\xe2\x82\"", 1, 4),
  BAD ("8.1", "\"ab\xe2\x82", 1, 4),
  BAD ("8.1", "{\"\xe9\":1}", 1, 3),
  BAD ("8.1", "\xff", 1, 1),
  BAD ("8.1", "[1\xe9]", 1, 3),
  BAD ("8.1", "[\0001\0]\0", 1, 2),

  /* Section 8.2: surrogates come in pairs, if at all. */
  BAD ("8.2", "\"\xed\xa0\x80\"", 1, 2),
  BAD ("8.2", "\"\xed\xbf\xbf\"", 1, 2),
  BAD ("8.2", "\"\\ud800\"", 1, 2),
  BAD ("8.2", "\"\\uDFFF\"", 1, 2),
  BAD ("8.2", "\"a\\ud83dx\"", 1, 3),
  BAD ("8.2", "\"\\ud83d\\n\"", 1, 2),
  BAD ("8.2", "\"\\ud83d\\ud83d\"", 1, 2),
  BAD ("8.2", "\"\\udca1\\ud83d\"", 1, 2),
  BAD ("8.2", "\"\\udc00\\udc00\"", 1, 2),
  BAD ("8.2", "\"\\ud83d\\udbff\"", 1, 2),
  BAD ("8.2", "\"\\ud83d\\ue000\"", 1, 2),
  GOOD ("8.2", "\"\\ud800\\udc00\\udbff\\udfff\\ud7ff\\ue000\""),
  BAD ("8.2", "\"\\ud83d\\u0041\"", 1, 2),
  BAD ("8.2", "\"\\ud83d\\u", 1, 2),
  BAD ("8.2", "\"\\ud83d\\udc\"", 1, 2),

  /* Lines end at LF, CR LF and CR; columns count characters, not bytes. */
  BAD ("2", "[\n\n  x", 3, 3),
  BAD ("2", "[\r\n\r\n  x", 3, 3),
  BAD ("2", "[\r\r  x", 3, 3),
  BAD ("2", "[\r\n\n\r  x", 4, 3),
  BAD ("7", "[\n\"\u00e9\U0001f4a1\u20ac\" x", 2, 7),
};
/* clang-format on */

static void
test_rows (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    const Row *row = &rows[i];
    g_autoptr (GError) error = NULL;
    gboolean good = check (row->text, row->length, &error);
    g_autofree char *place = g_strdup_printf ("line %u, column %u: ", row->line, row->column);

    if (good != (row->line == 0) || (!good && !g_str_has_prefix (error->message, place))) {
      g_autofree char *shown = g_strescape (row->text, NULL);
      g_error ("section %s: \"%s\": %s", row->section, shown, good ? "taken" : error->message);
    }
    if (!good) {
      g_assert_true (error->domain == SQ_ERROR);
      g_assert_nonnull (strstr (error->message, ", expected "));
      g_assert_null (strpbrk (error->message, "\n\r"));
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
    }
  }
}

/* The texts that are JSON but more than we take have their own code. */
static void
test_limit_code (void)
{
  static const struct {
    const char *text;
    gint code; /* an SqError */
  } codes[] = {
    { "1e999", SQ_ERROR_LIMIT },    { "9223372036854775808", SQ_ERROR_LIMIT },
    { "01", SQ_ERROR_SYNTAX },      { "{\"a\":1,\"a\":1}", SQ_ERROR_SYNTAX },
    { "[1,]", SQ_ERROR_SYNTAX },    { "\"\\u0000\"", SQ_ERROR_SYNTAX },
    { "[1] [2]", SQ_ERROR_SYNTAX }, { "", SQ_ERROR_SYNTAX },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (codes); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_false (sq_json_check (codes[i].text, strlen (codes[i].text), &error));
    g_assert_error (error, SQ_ERROR, codes[i].code);
  }
}

static void
test_message (void)
{
  static const struct {
    const char *text, *message;
  } messages[] = {
    { "{\n  \"title\": {\n    \"scene\": 12,\n  }\n}",
      "line 4, column 3: found “}”, expected another key in double quotes after the comma" },
    { "{ \"a\": [1, 2 }", "line 1, column 14: found “}”, expected a comma or ]" },
    { "[\n1,\n[2", "line 3, column 3: the text ends, expected a ] for the [ in line 3" },
    { "{\"level\": 1, \"level\": 2}",
      "line 1, column 14: \"level\" stands twice in this object, expected each key once" },
    { "\xef\xbb\xbf{}", "line 1, column 1: a byte-order mark, expected UTF-8 without one" },
    { "{'a': 1}", "line 1, column 2: a single quote, expected a key in double quotes or }" },
    { "[1 /* one */]",
      "line 1, column 4: a comment, which JSON does not have, expected a comma or ]" },
    { "\"a\nb\"", "line 1, column 3: the control character U+000A in a string, expected a closing "
                  "quote or \\u000a" },
    { "[\u202e]", "line 1, column 2: U+202E, expected a value or ]" },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (messages); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_false (sq_json_check (messages[i].text, strlen (messages[i].text), &error));
    g_assert_cmpstr (error->message, ==, messages[i].message);
  }
}

static char *
nested (guint depth, char open, const char *inside, char close)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < depth; i++)
    g_string_append_printf (text, open == '{' ? "{\"a\":" : "%c", open);
  g_string_append (text, inside);
  for (guint i = 0; i < depth; i++)
    g_string_append_c (text, close);
  return g_string_free (text, FALSE);
}

static void
test_depth (void)
{
  static const char brackets[][2] = { { '[', ']' }, { '{', '}' } };

  for (gsize i = 0; i < G_N_ELEMENTS (brackets); i++) {
    g_autofree char *most = nested (64, brackets[i][0], "1", brackets[i][1]);
    g_autofree char *more = nested (65, brackets[i][0], "1", brackets[i][1]);
    g_autoptr (GError) error = NULL;

    g_assert_true (check (most, strlen (most), &error));
    g_assert_no_error (error);
    g_assert_false (check (more, strlen (more), &error));
    g_assert_error (error, SQ_ERROR, SQ_ERROR_LIMIT);
  }
}

static void
test_abyss (void)
{
  const guint depth = 256000;
  g_autofree char *closed = nested (depth, '[', "", ']');
  g_autoptr (GError) error = NULL;

  for (gsize length = depth; length <= 2 * depth; length += depth) {
    g_assert_false (check (closed, length, &error));
    g_assert_error (error, SQ_ERROR, SQ_ERROR_LIMIT);
    g_assert_true (g_str_has_prefix (error->message, "line 1, column 65: "));
    g_clear_error (&error);
  }
}

static void
test_size (void)
{
  const gsize most = (gsize)64 * 1024 * 1024;
  g_autofree char *text = g_malloc (most + 1);
  g_autoptr (GError) error = NULL;

  memset (text, ' ', most + 1);
  text[0] = '1';
  g_assert_true (sq_json_check (text, most, NULL));
  g_assert_false (sq_json_check (text, most + 1, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_LIMIT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/json check/the grammar row by row", test_rows);
  g_test_add_func ("/json check/what is too much has its own code", test_limit_code);
  g_test_add_func ("/json check/messages say place, fault and remedy", test_message);
  g_test_add_func ("/json check/64 levels are read and 65 are not", test_depth);
  g_test_add_func ("/json check/256,000 nested brackets", test_abyss);
  g_test_add_func ("/json check/64 MiB are read and one byte more is not", test_size);
  return g_test_run ();
}
