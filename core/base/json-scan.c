/* json-scan.c: the strings and numbers of JSON byte by byte, and where a fault stands */
#include "base/json-scan.h"

#include <errno.h>
#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

void
sq_json_scan_place (const SqJsonScan *scan, const char *at, guint *line, guint *column)
{
  *line = *column = 1;
  for (const char *c = scan->text; c < at; c++) {
    gboolean in_crlf = *c == '\r' && c + 1 < scan->end && c[1] == '\n';
    if (*c == '\n' || (*c == '\r' && !in_crlf)) {
      *line += 1;
      *column = 1;
    } else if (((guchar)*c & 0xc0) != 0x80) {
      *column += 1;
    }
  }
}

gboolean
sq_json_scan_fail (SqJsonScan *scan, const char *at, SqError code, const char *format, ...)
{
  g_autofree char *message = NULL;
  guint line, column;
  va_list args;

  va_start (args, format);
  message = g_strdup_vprintf (format, args);
  va_end (args);
  sq_json_scan_place (scan, at, &line, &column);
  g_set_error (scan->error, SQ_ERROR, code, _ ("line %u, column %u: %s"), line, column, message);
  return FALSE;
}

gboolean
sq_json_scan_is (const SqJsonScan *scan, const char *at, const char *word)
{
  gsize length = strlen (word);
  return (gsize)(scan->end - at) >= length && memcmp (at, word, length) == 0;
}

/* What stands at @at, for a message; a few habits from elsewhere get their name. */
static char *
found_at (const SqJsonScan *scan, const char *at)
{
  gunichar c;

  if (at == scan->end)
    return g_strdup (_ ("the text ends"));
  if (*at == '\'')
    return g_strdup (_ ("a single quote"));
  if (sq_json_scan_is (scan, at, "//") || sq_json_scan_is (scan, at, "/*"))
    return g_strdup (_ ("a comment, which JSON does not have"));
  if (sq_json_scan_is (scan, at, "NaN") || sq_json_scan_is (scan, at, "Infinity"))
    return g_strdup (_ ("a number that is not finite"));
  if (*at == '\0')
    return g_strdup (_ ("a NUL byte"));
  c = g_utf8_get_char_validated (at, scan->end - at);
  if (c == (gunichar)-1 || c == (gunichar)-2)
    return g_strdup (_ ("a byte that is not UTF-8"));
  if (!g_unichar_isgraph (c))
    return g_strdup_printf ("U+%04X", c);
  return g_strdup_printf (_ ("found “%.*s”"), (int)(g_utf8_next_char (at) - at), at);
}

char *
sq_json_scan_clip (const char *from, const char *to)
{
  const glong most = 40; /* characters */
  g_autofree char *whole = g_strndup (from, (gsize)(to - from));
  g_autofree char *start = NULL;

  if (g_utf8_strlen (whole, -1) <= most)
    return g_steal_pointer (&whole);
  start = g_utf8_substring (whole, 0, most);
  return g_strconcat (start, "…", NULL);
}

gboolean
sq_json_scan_unexpected (SqJsonScan *scan, const char *at, const char *expected)
{
  g_autofree char *found = found_at (scan, at);
  return sq_json_scan_fail (scan, at, SQ_ERROR_SYNTAX, _ ("%s, expected %s"), found, expected);
}

/* Four hexadecimal digits, or -1. */
static gint32
hex4_at (const SqJsonScan *scan, const char *at)
{
  gint32 unit = 0;

  if (scan->end - at < 4)
    return -1;
  for (guint i = 0; i < 4; i++) {
    if (!g_ascii_isxdigit (at[i]))
      return -1;
    unit = unit * 16 + g_ascii_xdigit_value (at[i]);
  }
  return unit;
}

/* \uXXXX, or two of them for a character past U+FFFF; scan->at is the backslash. */
static gboolean
scan_unicode_escape (SqJsonScan *scan, GString *into)
{
  const char *at = scan->at;
  gint32 unit = hex4_at (scan, at + 2);

  if (unit < 0)
    return sq_json_scan_fail (scan, at, SQ_ERROR_SYNTAX,
                              _ ("an unfinished escape, expected \\u and four hexadecimal digits"));
  if (unit == 0)
    return sq_json_scan_fail (scan, at, SQ_ERROR_SYNTAX,
                              _ ("the character U+0000, expected a text without NUL"));
  scan->at += 6;
  if (unit >= 0xd800 && unit <= 0xdfff) {
    gint32 low = sq_json_scan_is (scan, scan->at, "\\u") ? hex4_at (scan, scan->at + 2) : -1;
    if (unit >= 0xdc00 || low < 0xdc00 || low > 0xdfff)
      return sq_json_scan_fail (
        scan, at, SQ_ERROR_SYNTAX,
        _ ("half a surrogate pair, expected \\uD800…\\uDBFF and then \\uDC00…\\uDFFF"));
    unit = 0x10000 + ((unit - 0xd800) << 10) + (low - 0xdc00);
    scan->at += 6;
  }
  if (into != NULL)
    g_string_append_unichar (into, (gunichar)unit);
  return TRUE;
}

static gboolean
scan_escape (SqJsonScan *scan, GString *into)
{
  static const char letters[] = "\"\\/bfnrt";
  static const char meanings[] = "\"\\/\b\f\n\r\t";
  const char *at = scan->at;
  const char *letter;

  if (at + 1 == scan->end)
    return sq_json_scan_unexpected (scan, scan->end, _ ("the rest of the escape"));
  if (at[1] == 'u')
    return scan_unicode_escape (scan, into);
  letter = at[1] != '\0' ? strchr (letters, at[1]) : NULL;
  if (letter == NULL)
    return sq_json_scan_fail (
      scan, at, SQ_ERROR_SYNTAX,
      _ ("an unknown escape, expected \\\" \\\\ \\/ \\b \\f \\n \\r \\t or \\uXXXX"));
  if (into != NULL)
    g_string_append_c (into, meanings[letter - letters]);
  scan->at += 2;
  return TRUE;
}

gboolean
sq_json_scan_string (SqJsonScan *scan, GString *into)
{
  scan->at++;
  while (TRUE) {
    const char *run = scan->at;
    const char *bad;

    while (scan->at < scan->end && *scan->at != '"' && *scan->at != '\\' &&
           (guchar)*scan->at >= 0x20)
      scan->at++;
    if (!g_utf8_validate_len (run, scan->at - run, &bad))
      return sq_json_scan_unexpected (scan, bad, _ ("valid UTF-8"));
    if (into != NULL)
      g_string_append_len (into, run, scan->at - run);
    if (scan->at == scan->end)
      return sq_json_scan_unexpected (scan, scan->end, _ ("the closing quote of a string"));
    if (*scan->at == '"') {
      scan->at++;
      return TRUE;
    }
    if (*scan->at == '\0')
      return sq_json_scan_fail (scan, scan->at, SQ_ERROR_SYNTAX,
                                _ ("NUL in a string, expected text without it"));
    if (*scan->at != '\\')
      return sq_json_scan_fail (
        scan, scan->at, SQ_ERROR_SYNTAX,
        _ ("the control character U+%04X in a string, expected a closing quote or \\u%04x"),
        (guint)*scan->at, (guint)*scan->at);
    if (!scan_escape (scan, into))
      return FALSE;
  }
}

/* One digit or more from *@at, which moves past them. */
static gboolean
scan_digits (SqJsonScan *scan, const char **at)
{
  if (*at == scan->end || !g_ascii_isdigit (**at))
    return sq_json_scan_unexpected (scan, *at, _ ("a digit"));
  while (*at < scan->end && g_ascii_isdigit (**at))
    *at += 1;
  return TRUE;
}

/* The library would turn a whole number past 64 bits into another one, and 1e999 into infinity. */
static gboolean
check_range (SqJsonScan *scan, const char *end, gboolean whole)
{
  g_autofree char *number = g_strndup (scan->at, (gsize)(end - scan->at));
  g_autofree char *shown = NULL;

  errno = 0;
  if (whole)
    g_ascii_strtoll (number, NULL, 10);
  if (whole ? errno != ERANGE : isfinite (g_ascii_strtod (number, NULL)))
    return TRUE;
  shown = sq_json_scan_clip (scan->at, end);
  return sq_json_scan_fail (
    scan, scan->at, SQ_ERROR_LIMIT,
    whole ? _ ("%s is too large, expected -9223372036854775808 to 9223372036854775807")
          : _ ("%s is too large, expected at most 1.7976931348623157e308"),
    shown);
}

gboolean
sq_json_scan_number (SqJsonScan *scan)
{
  const char *at = scan->at;
  gboolean whole = TRUE;

  if (*at == '-')
    at++;
  if (at + 1 < scan->end && at[0] == '0' && g_ascii_isdigit (at[1]))
    return sq_json_scan_fail (scan, at, SQ_ERROR_SYNTAX,
                              _ ("a leading zero, expected a number without one"));
  if (!scan_digits (scan, &at))
    return FALSE;
  if (at < scan->end && *at == '.') {
    at++;
    whole = FALSE;
    if (!scan_digits (scan, &at))
      return FALSE;
  }
  if (at < scan->end && (*at == 'e' || *at == 'E')) {
    at++;
    whole = FALSE;
    if (at < scan->end && (*at == '+' || *at == '-'))
      at++;
    if (!scan_digits (scan, &at))
      return FALSE;
  }
  if (!check_range (scan, at, whole))
    return FALSE;
  scan->at = at;
  return TRUE;
}
