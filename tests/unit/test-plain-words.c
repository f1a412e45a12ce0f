/* test-plain-words.c: text with nothing in it that a file of some kind could not hold */
#include "draw/plain-words.h"

/* Unicode: control characters (23.1), the 66 noncharacters (23.7). */
static void
test_plain (void)
{
  static const struct {
    const char *name, *text, *plain;
  } rows[] = {
    { "nothing", "", "" },
    { "words of every script", "Kai 3 \u2013 \u05e9\u05dc\u05d5\u05dd \u6e2f",
      "Kai 3 \u2013 \u05e9\u05dc\u05d5\u05dd \u6e2f" },
    { "breaks and tabs stay", "a\tb\nc\rd", "a\tb\nc\rd" },
    { "controls",
      "a\x01"
      "b\x1b"
      "c\x7f"
      "d\xc2\x85",
      "a\ufffd"
      "b\ufffd"
      "c\ufffd"
      "d\ufffd" },
    { "noncharacters",
      "a\xef\xb7\x90"
      "b\xef\xb7\xaf"
      "c\xef\xbf\xbe"
      "d\xef\xbf\xbf"
      "e\xf4\x8f\xbf\xbe",
      "a\ufffd"
      "b\ufffd"
      "c\ufffd"
      "d\ufffd"
      "e\ufffd" },
    { "beside them", "\xef\xb7\x8f\xef\xb7\xb0\xef\xbf\xbd", "\xef\xb7\x8f\xef\xb7\xb0\ufffd" },
    { "no UTF-8",
      "a\xff"
      "b\xc3",
      "a\ufffd"
      "b\ufffd" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *plain = sq_plain_words (rows[i].text);
    if (g_strcmp0 (plain, rows[i].plain) != 0)
      g_error ("%s: \"%s\", expected \"%s\"", rows[i].name, plain, rows[i].plain);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/plain words/what no file may hold is shown as unknown", test_plain);
  return g_test_run ();
}
