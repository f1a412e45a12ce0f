/* test-quantity-refused.c: what is no number with unit, said in one line, whatever the bytes */
#include <glib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

#include "base/error.h"
#include "base/quantity.h"

#define M SQ_METRIC
#define NEVER 12345.0 /* what a failed parse must leave alone */

/* clang-format off */
static void
test_refused (void)
{
  const struct {
    const char *text;
    SqDimension dimension;
    double now;
    const char *says; /* a part of the message */
  } rows[] = {
    { "", SQ_LENGTH, 1, "nothing is written" },
    { " \t\xc2\xa0", SQ_LENGTH, 1, "nothing is written" },
    { "2 3", SQ_LENGTH, 1, "two numbers without an operator" },
    { "2 m 3", SQ_LENGTH, 1, "two numbers without an operator" },
    { "2 m 300 cm", SQ_LENGTH, 1, "two numbers without an operator" },
    { "5'12\"", SQ_LENGTH, 1, "two numbers without an operator" },
    { "6 ft 30 cm", SQ_LENGTH, 1, "two numbers without an operator" },
    { "10 cm 2 m", SQ_LENGTH, 1, "two numbers without an operator" },
    { "2(3)", SQ_PLAIN, 1, "two numbers without an operator" },
    { "6 3/2", SQ_PLAIN, 1, "two numbers without an operator" },
    { "6 1/2.5", SQ_PLAIN, 1, "two numbers without an operator" },
    { "1:30", SQ_LENGTH, 1, "“:”" },
    { "1:75", SQ_HOURS, 1, "“:”" },
    { "1:3", SQ_HOURS, 1, "“:”" },
    { "1:3a", SQ_HOURS, 1, "“:”" },
    { "1:300", SQ_HOURS, 1, "“:”" },
    { ":30", SQ_HOURS, 1, "“:”" },
    { "6\" 2", SQ_LENGTH, 1, "two numbers without an operator" },
    { "1 yd 2", SQ_LENGTH, 1, "two numbers without an operator" },
    { "6 ½ ½", SQ_PLAIN, 1, "two numbers without an operator" },
    { "3 parsec", SQ_LENGTH, 1, "“parsec” is neither a unit nor an operator" },
    { "3 mx", SQ_LENGTH, 1, "“mx” is neither" },
    { "nan", SQ_PLAIN, 1, "“nan” is neither" },
    { "inf", SQ_PLAIN, 1, "“inf” is neither" },
    { "–", SQ_PLAIN, 1, "“–” is neither" },
    { "f/2.8", SQ_T_STOP, 1, "“f” is neither" },
    { "T4½", SQ_T_STOP, 1, "two numbers without an operator" },
    { "4 1/2", SQ_T_STOP, 1, "two numbers without an operator" },
    { "3 m", SQ_FRACTION, 1, "this is a length; expected a fraction, such as 50 %" },
    { "50%", SQ_LENGTH, 1, "this is a fraction; expected a length, such as 2.1 m" },
    { "3 K", SQ_CELSIUS, 1, "this is a colour temperature" },
    { "1 stop", SQ_LENGTH, 1, "this is a number of stops" },
    { "+1 stop", SQ_LENGTH, 1, "this is a number of stops" },
    { "+1 stop", SQ_T_STOP, 1, "this is a number of stops" },
    { "T2.8", SQ_PLAIN, 1, "this is a T-stop" },
    { "4 m / 2 m", SQ_LENGTH, 1, "this is a plain number" },
    { "2 m * 3 m", SQ_LENGTH, 1, "a length times a length" },
    { "1/2'6\"", SQ_LENGTH, 1, "a plain number over a length" },
    { "2/(1 m/2 m)", SQ_LENGTH, 1, "this is a plain number" },
    { "1/(2 m)", SQ_LENGTH, 1, "a plain number over a length" },
    { "2 m / 2 lx", SQ_LENGTH, 1, "a length over an illuminance" },
    { "2 m + 1 lx", SQ_LENGTH, 1, "a length and an illuminance do not add up" },
    { "2 m + 2 m / 1 m", SQ_LENGTH, 1, "do not add up" },
    { "1 stop", SQ_ILLUMINANCE, 100, "needs a sign" },
    { "+1 stop + 1", SQ_ILLUMINANCE, 100, "needs a unit" },
    { "50 + 1 stop", SQ_ILLUMINANCE, 100, "needs a unit" },
    { "+1 stop", SQ_ILLUMINANCE, NAN, "no value yet" },
    { "x2", SQ_LENGTH, NAN, "no value yet" },
    { "/2", SQ_LENGTH, INFINITY, "no value yet" },
    { "+=2 m", SQ_LENGTH, NAN, "no value yet" },
    { "1/0", SQ_PLAIN, 1, "division by zero" },
    { "1 m/(2-2)", SQ_LENGTH, 1, "division by zero" },
    { "1/0 m", SQ_LENGTH, 1, "division by zero" },
    { "/0", SQ_LENGTH, 1, "division by zero" },
    { "1e999", SQ_PLAIN, 1, "too large" },
    { "1e200*1e200", SQ_PLAIN, 1, "not finite" },
    { "1/(1e300*1e300)", SQ_PLAIN, 1, "not finite" },
    { "1e308 km", SQ_LENGTH, 1, "not finite" },
    { "+9999 stops", SQ_FLUX, 1, "not finite" },
    { "(2", SQ_PLAIN, 1, "a bracket is not closed" },
    { "2)", SQ_PLAIN, 1, "closed that was not opened" },
    { "()", SQ_PLAIN, 1, "a number is missing before “)”" },
    { "2+", SQ_PLAIN, 1, "a number is missing at the end" },
    { "+", SQ_PLAIN, 1, "a number is missing at the end" },
    { "+=", SQ_PLAIN, 1, "a number is missing at the end" },
    { "m", SQ_LENGTH, 1, "a number is missing before “m”" },
    { "*/2", SQ_PLAIN, 1, "“/” is neither" },
    { "1,250 lx", SQ_ILLUMINANCE, 1, "“1,250” could be two numbers" },
    { "100,250", SQ_PLAIN, 1, "“100,250” could be two numbers" },
    { "1,250,000", SQ_PLAIN, 1, "could be two numbers" },
    { "1,250.5", SQ_PLAIN, 1, "could be two numbers" },
    { "1.250,5", SQ_PLAIN, 1, "could be two numbers" },
    { "1.2.3", SQ_PLAIN, 1, "could be two numbers" },
    { "2,", SQ_PLAIN, 1, "“,” is neither" },
    { "2\nm", SQ_LENGTH, 1, "neither" },
    { "2 m\xff", SQ_LENGTH, 1, "not UTF-8" },
    { "2 m\xe2\x80", SQ_LENGTH, 1, "not UTF-8" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    double value = NEVER;
    g_autoptr (GError) error = NULL;
    gboolean read = sq_quantity_parse (rows[i].text, rows[i].dimension, SQ_METRIC, rows[i].now,
                                       &value, &error);
    if (read)
      g_error ("“%s” was read as %g", rows[i].text, value);
    g_assert_error (error, SQ_ERROR, SQ_ERROR_VALUE);
    g_assert_cmpfloat (value, ==, NEVER);
    if (!strstr (error->message, rows[i].says))
      g_error ("“%s”: %s; does not say: %s", rows[i].text, error->message, rows[i].says);
  }
}
/* clang-format on */

static void
test_message (void)
{
  double value = 0;
  g_autoptr (GError) error = NULL;
  g_assert_false (sq_quantity_parse ("3\tm", SQ_FRACTION, M, NAN, &value, &error));
  g_assert_cmpstr (
    error->message, ==,
    "“3 m”: this is a length; expected a fraction, such as 50 %, 0.5, x2 or -1 stop");
  g_clear_error (&error);
  g_autofree char *longer = g_strnfill (100, 'a');
  g_assert_false (sq_quantity_parse (longer, SQ_STOPS, M, NAN, &value, &error));
  g_autofree char *start = g_strnfill (40, 'a');
  g_autofree char *named = g_strconcat ("“", start, "…”: ", NULL);
  g_assert_true (g_str_has_prefix (error->message, named));
}

/* Examples in messages must be understood themselves: each is asked for by an error, and read. */
static void
test_examples (void)
{
  for (int d = 0; d < SQ_DIMENSIONS; d++) {
    double value = 0;
    g_autoptr (GError) error = NULL;
    g_assert_false (sq_quantity_parse ("?", (SqDimension)d, M, 1, &value, &error));
    const char *list = strstr (error->message, "such as ");
    g_assert_nonnull (list);
    g_autoptr (GRegex) between = g_regex_new (", | or ", 0, 0, NULL);
    g_auto (GStrv) examples = g_regex_split (between, list + strlen ("such as "), 0);
    for (char **example = examples; *example; example++) {
      g_autoptr (GError) refused = NULL;
      sq_quantity_parse (*example, (SqDimension)d, M, 1, &value, &refused);
      g_assert_no_error (refused);
    }
  }
}

static char *
bracketed (int depth)
{
  g_autofree char *open = g_strnfill ((gsize)depth, '(');
  g_autofree char *close = g_strnfill ((gsize)depth, ')');
  return g_strconcat (open, "1", close, NULL);
}

static void
test_limits (void)
{
  double value = 0;
  g_autoptr (GError) error = NULL;
  g_autofree char *deep = bracketed (SQ_QUANTITY_MOST_BRACKETS);
  g_autofree char *too_deep = bracketed (SQ_QUANTITY_MOST_BRACKETS + 1);
  g_assert_true (sq_quantity_parse (deep, SQ_PLAIN, M, NAN, &value, NULL));
  g_assert_false (sq_quantity_parse (too_deep, SQ_PLAIN, M, NAN, &value, &error));
  g_assert_nonnull (strstr (error->message, "brackets"));
  g_clear_error (&error);
  /* brackets beside each other are not deep */
  const char *beside =
    "(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)"
    "+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)";
  g_assert_true (sq_quantity_parse (beside, SQ_PLAIN, M, NAN, &value, NULL));
  g_assert_cmpfloat (value, ==, 39);
  g_autofree char *spaces = g_strnfill (SQ_QUANTITY_MOST_BYTES - 1, ' ');
  g_autofree char *longest = g_strconcat (spaces, "1", NULL);
  g_autofree char *too_long = g_strconcat (spaces, "12", NULL);
  g_assert_true (sq_quantity_parse (longest, SQ_PLAIN, M, NAN, &value, NULL));
  g_assert_false (sq_quantity_parse (too_long, SQ_PLAIN, M, NAN, &value, &error));
  g_assert_nonnull (strstr (error->message, "longer than 256 bytes"));
}

/* Half of the strings are any bytes, half are made of what the grammar knows. */
static char *
random_text (GRand *random)
{
  static const char *const pieces[] = {
    "1",   "2", "0",  ".", ",",  "e9", "/", "*",    "x", "+",  "-", "−",  "(",      ")", " ",   "½",
    "1/2", "m", "cm", "'", "\"", "ft", "K", "stop", "%", "lx", "T", "+=", "\u00a0", "°", ":30",
  };
  GString *text = g_string_new (NULL);
  gboolean bytes = g_rand_boolean (random);
  for (int left = g_rand_int_range (random, 0, bytes ? 300 : 10); left > 0; left--) {
    if (bytes)
      g_string_append_c (text, (char)g_rand_int_range (random, 1, 256));
    else
      g_string_append (text, pieces[g_rand_int_range (random, 0, G_N_ELEMENTS (pieces))]);
  }
  return g_string_free (text, FALSE);
}

static void
test_random_bytes (void)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (20240607);
  int read_count = 0;
  const int strings = 20000;
  for (int i = 0; i < strings; i++) {
    g_autofree char *text = random_text (random);
    SqDimension dimension = (SqDimension)g_rand_int_range (random, 0, SQ_DIMENSIONS);
    SqUnits units = g_rand_boolean (random) ? SQ_IMPERIAL : SQ_METRIC;
    double value = NEVER;
    g_autoptr (GError) error = NULL;
    if (sq_quantity_parse (text, dimension, units, 2, &value, &error)) {
      g_assert_no_error (error);
      g_assert_true (isfinite (value));
      read_count++;
    } else {
      g_assert_error (error, SQ_ERROR, SQ_ERROR_VALUE);
      g_assert_cmpfloat (value, ==, NEVER);
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
      g_assert_null (strpbrk (error->message, "\r\n\t\v\f"));
      g_assert_cmpint (g_utf8_strlen (error->message, -1), <, 300);
    }
  }
  g_assert_cmpint (read_count, >, strings / 100); /* or the strings would prove little */
  g_assert_cmpint (read_count, <, strings);
}

int
main (int argc, char *argv[])
{
  setlocale (LC_CTYPE, "");
  setlocale (LC_NUMERIC, ""); /* messages stay as written here */
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/quantity/refused/what is wrong is said", test_refused);
  g_test_add_func ("/quantity/refused/message names the text and gives examples", test_message);
  g_test_add_func ("/quantity/refused/examples in messages are understood", test_examples);
  g_test_add_func ("/quantity/refused/limits of length and depth", test_limits);
  g_test_add_func ("/quantity/refused/any bytes", test_random_bytes);
  return g_test_run ();
}
