/* json-check.c: how values stand in one another by RFC 8259, one pass and no recursion */
#include "base/json-check.h"

#include "base/json-scan.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What may come next. */
typedef enum {
  VALUE,        /* at the start, and after a colon */
  VALUE_OR_END, /* after [ */
  NEXT_VALUE,   /* after a comma in an array */
  KEY_OR_END,   /* after { */
  NEXT_KEY,     /* after a comma in an object */
  COLON,        /* after a key */
  COMMA_OR_END, /* after a value */
} State;

/* An array or object that is still open. */
typedef struct {
  const char *opened; /* its bracket in the text */
  GHashTable *keys;   /* those of this object so far; emptied and used again */
} Level;

typedef struct {
  SqJsonScan scan;
  State state;
  guint depth;
  Level levels[SQ_JSON_DEPTH_MAX];
  GString *key; /* the last one, unescaped */
} Check;

static const Level *
open_bracket (const Check *check)
{
  return check->depth > 0 ? &check->levels[check->depth - 1] : NULL;
}

static gboolean
in_object (const Check *check)
{
  return check->depth > 0 && *open_bracket (check)->opened == '{';
}

static gboolean
text_ends_too_soon (Check *check)
{
  SqJsonScan *scan = &check->scan;
  guint line, column;

  sq_json_scan_place (scan, open_bracket (check)->opened, &line, &column);
  return sq_json_scan_fail (scan, scan->at, SQ_ERROR_SYNTAX,
                            in_object (check)
                              ? _ ("the text ends, expected a } for the { in line %u")
                              : _ ("the text ends, expected a ] for the [ in line %u"),
                            line);
}

static const char *
expected_in_state (const Check *check)
{
  switch (check->state) {
  case VALUE:
    return _ ("a value");
  case VALUE_OR_END:
    return _ ("a value or ]");
  case NEXT_VALUE:
    return _ ("another value after the comma");
  case KEY_OR_END:
    return _ ("a key in double quotes or }");
  case NEXT_KEY:
    return _ ("another key in double quotes after the comma");
  case COLON:
    return _ ("a colon after the key");
  case COMMA_OR_END:
    break;
  }
  if (check->depth == 0)
    return _ ("nothing after the end of the value");
  return in_object (check) ? _ ("a comma or }") : _ ("a comma or ]");
}

static gboolean
unexpected (Check *check)
{
  SqJsonScan *scan = &check->scan;
  gboolean may_end = check->state == VALUE_OR_END || check->state == KEY_OR_END ||
                     (check->state == COMMA_OR_END && check->depth > 0);

  if (scan->at == scan->end && may_end)
    return text_ends_too_soon (check);
  return sq_json_scan_unexpected (scan, scan->at, expected_in_state (check));
}

static gboolean
open_level (Check *check, State next)
{
  SqJsonScan *scan = &check->scan;
  Level *level;

  if (check->depth == SQ_JSON_DEPTH_MAX)
    return sq_json_scan_fail (scan, scan->at, SQ_ERROR_LIMIT,
                              _ ("brackets nested too deeply, expected at most %d levels"),
                              SQ_JSON_DEPTH_MAX);
  level = &check->levels[check->depth++];
  level->opened = scan->at++;
  if (level->keys != NULL)
    g_hash_table_remove_all (level->keys);
  check->state = next;
  return TRUE;
}

static gboolean
close_level (Check *check)
{
  check->depth--;
  check->scan.at++;
  check->state = COMMA_OR_END;
  return TRUE;
}

/* One of the three words of section 3; FALSE and no error if none stands here. */
static gboolean
skip_word (SqJsonScan *scan)
{
  static const char *const words[] = { "true", "false", "null" };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++) {
    if (sq_json_scan_is (scan, scan->at, words[i])) {
      scan->at += strlen (words[i]);
      return TRUE;
    }
  }
  return FALSE;
}

static gboolean
check_value (Check *check)
{
  SqJsonScan *scan = &check->scan;
  char c = *scan->at;

  if (c == '{')
    return open_level (check, KEY_OR_END);
  if (c == '[')
    return open_level (check, VALUE_OR_END);
  if (c == '"') {
    if (!sq_json_scan_string (scan, NULL))
      return FALSE;
  } else if (c == '-' || g_ascii_isdigit (c)) {
    if (!sq_json_scan_number (scan))
      return FALSE;
  } else if (!skip_word (scan)) {
    return unexpected (check);
  }
  check->state = COMMA_OR_END;
  return TRUE;
}

static gboolean
check_key (Check *check)
{
  SqJsonScan *scan = &check->scan;
  GHashTable **keys = &check->levels[check->depth - 1].keys;
  const char *quote = scan->at;

  if (*quote != '"')
    return unexpected (check);
  g_string_truncate (check->key, 0);
  if (!sq_json_scan_string (scan, check->key))
    return FALSE;
  if (*keys == NULL)
    *keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  if (!g_hash_table_add (*keys, g_strndup (check->key->str, check->key->len))) {
    g_autofree char *shown = sq_json_scan_clip (quote, scan->at);
    return sq_json_scan_fail (scan, quote, SQ_ERROR_SYNTAX,
                              _ ("%s stands twice in this object, expected each key once"), shown);
  }
  check->state = COLON;
  return TRUE;
}

static gboolean
check_comma_or_end (Check *check)
{
  char c = *check->scan.at;

  if (check->depth == 0)
    return unexpected (check);
  if (c == (in_object (check) ? '}' : ']'))
    return close_level (check);
  if (c != ',')
    return unexpected (check);
  check->scan.at++;
  check->state = in_object (check) ? NEXT_KEY : NEXT_VALUE;
  return TRUE;
}

/* At a byte that is no blank. */
static gboolean
check_token (Check *check)
{
  char c = *check->scan.at;

  switch (check->state) {
  case VALUE:
  case NEXT_VALUE:
    return check_value (check);
  case VALUE_OR_END:
    return c == ']' ? close_level (check) : check_value (check);
  case NEXT_KEY:
    return check_key (check);
  case KEY_OR_END:
    return c == '}' ? close_level (check) : check_key (check);
  case COLON:
    if (c != ':')
      return unexpected (check);
    check->scan.at++;
    check->state = VALUE;
    return TRUE;
  case COMMA_OR_END:
    return check_comma_or_end (check);
  }
  g_assert_not_reached ();
}

static gboolean
check_tokens (Check *check)
{
  SqJsonScan *scan = &check->scan;

  while (TRUE) {
    while (scan->at < scan->end &&
           (*scan->at == ' ' || *scan->at == '\n' || *scan->at == '\t' || *scan->at == '\r'))
      scan->at++;
    if (scan->at == scan->end)
      return (check->depth == 0 && check->state == COMMA_OR_END) || unexpected (check);
    if (!check_token (check))
      return FALSE;
  }
}

gboolean
sq_json_check (const char *text, gsize length, GError **error)
{
  Check check = { .scan = { text, text, text + length, error } };
  gboolean good;

  if (length > SQ_JSON_BYTES_MAX) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_LIMIT,
                 _ ("the text has %zu bytes, expected at most %zu"), length, SQ_JSON_BYTES_MAX);
    return FALSE;
  }
  if (sq_json_scan_is (&check.scan, text, "\xef\xbb\xbf"))
    return sq_json_scan_fail (&check.scan, text, SQ_ERROR_SYNTAX,
                              _ ("a byte-order mark, expected UTF-8 without one"));
  check.key = g_string_new (NULL);
  good = check_tokens (&check);
  g_string_free (check.key, TRUE);
  for (guint i = 0; i < SQ_JSON_DEPTH_MAX; i++)
    g_clear_pointer (&check.levels[i].keys, g_hash_table_unref);
  return good;
}
