/* arguments.c: the options that all verbs share, and loading the scene they name */
#include "arguments.h"

#include "base/error.h"
#include "base/safe-file.h"

#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

#define MOST_THREADS 256

void
sq_arguments_clear (SqArguments *arguments)
{
  g_free (arguments->scene_path);
  g_free (arguments->output);
  g_free (arguments->look);
  g_strfreev (arguments->sets);
}

/* Errors are one line, whatever came in. */
static char *
in_one_line (const char *text)
{
  char *line = g_utf8_make_valid (text, -1);
  for (char *c = line; *c != '\0'; c++) {
    if (g_ascii_iscntrl (*c))
      *c = ' ';
  }
  return line;
}

static const char *
shown_path (const char *path)
{
  return g_str_equal (path, "-") ? _ ("standard input") : path;
}

int
sq_say_error (const char *path, const GError *error)
{
  /* Errors of the file system name the file themselves. */
  gboolean named = g_error_matches (error, SQ_ERROR, SQ_ERROR_FILE);
  g_autofree char *text = named ? g_strdup (error->message)
                                : g_strdup_printf ("%s: %s", shown_path (path), error->message);
  g_autofree char *line = in_one_line (text);
  fprintf (stderr, "squarelaw: %s\n", line);
  return SQ_EXIT_INPUT;
}

int
sq_say_usage (const char *format, ...)
{
  va_list values;
  va_start (values, format);
  g_autofree char *text = g_strdup_vprintf (format, values);
  va_end (values);
  g_autofree char *line = in_one_line (text);
  fprintf (stderr, "squarelaw: %s\n", line);
  return SQ_EXIT_USAGE;
}

int
sq_arguments_parse (
  SqArguments *arguments, int argc, char **argv, const GOptionEntry *own, const char *summary)
{
  const char *verb = argv[0];
  gboolean help = FALSE;
  g_auto (GStrv) rest = NULL;
  *arguments = (SqArguments){ .threads = (int)g_get_num_processors () };
  const GOptionEntry shared[] = {
    { "look", 0, 0, G_OPTION_ARG_STRING, &arguments->look, N_ ("Show this look"), N_ ("ID") },
    { "set", 0, 0, G_OPTION_ARG_STRING_ARRAY, &arguments->sets,
      N_ ("Change one field first, f1.level=50%; may be given often"), N_ ("ID.FIELD=VALUE") },
    { "output", 'o', 0, G_OPTION_ARG_FILENAME, &arguments->output,
      N_ ("Write to this file; -: standard output"), N_ ("FILE") },
    { "json", 0, 0, G_OPTION_ARG_NONE, &arguments->json, N_ ("Answer in JSON"), NULL },
    { "csv", 0, 0, G_OPTION_ARG_NONE, &arguments->csv, N_ ("Answer in CSV"), NULL },
    { "threads", 0, 0, G_OPTION_ARG_INT, &arguments->threads,
      N_ ("Use so many threads; the answer does not depend on it"), N_ ("N") },
    { "help", 'h', 0, G_OPTION_ARG_NONE, &help, N_ ("Say this"), NULL },
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &rest, NULL, N_ ("SCENE") },
    { NULL },
  };
  g_autoptr (GOptionContext) context = g_option_context_new (NULL);
  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_set_summary (context, summary);
  g_option_context_set_translation_domain (context, GETTEXT_PACKAGE);
  if (own != NULL)
    g_option_context_add_main_entries (context, own, GETTEXT_PACKAGE);
  g_option_context_add_main_entries (context, shared, GETTEXT_PACKAGE);

  /* The parser moves pointers about: give it an array of its own. */
  g_auto (GStrv) words = g_new0 (char *, argc + 1);
  for (int i = 0; i < argc; i++)
    words[i] = g_strdup (argv[i]);
  g_autoptr (GError) error = NULL;
  if (!g_option_context_parse_strv (context, &words, &error))
    return sq_say_usage (_ ("%s: %s; try squarelaw %s --help"), verb, error->message, verb);
  if (help) {
    g_set_prgname ("squarelaw");
    g_autofree char *text = g_option_context_get_help (context, FALSE, NULL);
    /* The library writes "Usage:\n  squarelaw [OPTION…] SCENE": the verb belongs between. */
    g_auto (GStrv) parts = g_strsplit (text, "squarelaw ", 2);
    g_autofree char *whole = g_strjoin (NULL, parts[0], "squarelaw ", verb, " ", parts[1], NULL);
    fputs (parts[1] != NULL ? whole : text, stdout);
    return SQ_EXIT_DONE;
  }
  if (rest == NULL || rest[0] == NULL)
    return sq_say_usage (_ ("%s: no scene is named; try squarelaw %s --help"), verb, verb);
  if (rest[1] != NULL)
    return sq_say_usage (_ ("%s: \"%s\" is one too many; one scene is expected"), verb, rest[1]);
  if (arguments->threads < 1 || arguments->threads > MOST_THREADS)
    return sq_say_usage (_ ("--threads: %d is out of range, expected 1 to %d"), arguments->threads,
                         MOST_THREADS);
  if (arguments->json && arguments->csv)
    return sq_say_usage (_ ("--json and --csv exclude each other"));
  for (char **set = arguments->sets; set != NULL && *set != NULL; set++) {
    if (strchr (*set, '=') == NULL)
      return sq_say_usage (_ ("--set %s: has no =, expected ID.FIELD=VALUE"), *set);
  }
  arguments->scene_path = g_strdup (rest[0]);
  return -1;
}

static void
say_lines (const char *path, const char *kind, const GPtrArray *lines)
{
  for (guint i = 0; i < lines->len; i++) {
    g_autofree char *line = in_one_line (g_ptr_array_index (lines, i));
    fprintf (stderr, "squarelaw: %s: %s: %s\n", shown_path (path), kind, line);
  }
}

void
sq_say_warnings (const SqArguments *arguments, const GPtrArray *lines)
{
  say_lines (arguments->scene_path, _ ("warning"), lines);
}

static SqScene *
with_sets (SqScene *scene, char **sets, GError **error)
{
  g_autoptr (SqScene) result = scene;
  for (char **set = sets; set != NULL && *set != NULL; set++) {
    const char *equals = strchr (*set, '=');
    g_autofree char *path = g_strndup (*set, (gsize)(equals - *set));
    g_autoptr (GError) inner = NULL;
    SqScene *changed = sq_scene_set (result, path, equals + 1, &inner);
    if (changed == NULL) {
      g_set_error (error, inner->domain, inner->code, "--set %s", inner->message);
      return NULL;
    }
    sq_scene_unref (result);
    result = changed;
  }
  return g_steal_pointer (&result);
}

/* On the user's own library: each names the file that it is about. */
static void
say_remarks (const GPtrArray *remarks)
{
  for (guint i = 0; i < remarks->len; i++) {
    g_autofree char *line = in_one_line (g_ptr_array_index (remarks, i));
    fprintf (stderr, "squarelaw: %s: %s\n", _ ("warning"), line);
  }
}

SqScene *
sq_arguments_load (const SqArguments *arguments)
{
  const char *path = arguments->scene_path;
  g_autoptr (GError) error = NULL;
  g_autoptr (GPtrArray) warnings = g_ptr_array_new_with_free_func (g_free);
  gsize length;
  g_autofree char *text = sq_file_load (path, &length, &error);
  if (text == NULL) {
    sq_say_error (path, error);
    return NULL;
  }
  g_autoptr (GPtrArray) remarks = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (SqLibrary) library = sq_library_of_user (g_get_user_data_dir (), remarks);
  g_autoptr (SqScene) base = sq_scene_parse (text, length, library, warnings, &error);
  g_autoptr (SqScene) in_look = NULL;
  SqScene *result = NULL;
  if (base != NULL)
    in_look = sq_scene_in_look (base, arguments->look, &error);
  if (in_look != NULL)
    result = with_sets (g_steal_pointer (&in_look), arguments->sets, &error);
  /* An error is one line: what else there was to say waits for a file that is right. */
  if (result == NULL) {
    sq_say_error (path, error);
    return NULL;
  }
  say_remarks (remarks);
  sq_say_warnings (arguments, warnings);
  return result;
}

void
sq_say_left_out (const SqArguments *arguments, const GPtrArray *lines)
{
  say_lines (arguments->scene_path, _ ("not counted yet"), lines);
}

int
sq_put_result (const SqArguments *arguments, const char *text, gsize length)
{
  g_autoptr (GError) error = NULL;
  const char *path = arguments->output != NULL ? arguments->output : "-";
  if (!sq_file_save (path, text, length, &error))
    return sq_say_error (path, error);
  return SQ_EXIT_DONE;
}
