/* plain-words.c: text with nothing in it that a file of some kind could not hold */
#include "draw/plain-words.h"

#include <string.h>

#define UNKNOWN 0xFFFD

static gboolean
is_noncharacter (gunichar c)
{
  return (c & 0xFFFE) == 0xFFFE || (c >= 0xFDD0 && c <= 0xFDEF);
}

static gboolean
is_control (gunichar c)
{
  return g_unichar_iscntrl (c) && c != '\t' && c != '\n' && c != '\r';
}

char *
sq_plain_words (const char *text)
{
  g_autofree char *valid = g_utf8_make_valid (text, -1);
  GString *plain = g_string_sized_new (strlen (valid));
  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at)) {
    gunichar c = g_utf8_get_char (at);
    g_string_append_unichar (plain, is_noncharacter (c) || is_control (c) ? UNKNOWN : c);
  }
  return g_string_free (plain, FALSE);
}
