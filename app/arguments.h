/* arguments.h: what every verb understands, and the scene that it is to work on */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* Exit codes: part of the contract. */
enum { SQ_EXIT_DONE, SQ_EXIT_INPUT, SQ_EXIT_USAGE };

typedef struct {
  char *scene_path; /* "-": standard input */
  char *output;     /* -o; NULL: none given */
  char *look;
  char **sets; /* ID.FIELD=VALUE */
  gboolean json, csv;
  int threads;
} SqArguments;

void sq_arguments_clear (SqArguments *arguments);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SqArguments, sq_arguments_clear)

/* sq_arguments_parse:
 * @argc, @argv: the command line, argv[0] being the verb
 * @own: options of the verb itself; NULL: none
 * @summary: what the verb does, for --help
 *
 * Returns: -1 to go on, else the exit code (--help was asked for, or the usage was wrong and has
 *   been said) */
int sq_arguments_parse (
  SqArguments *arguments, int argc, char **argv, const GOptionEntry *own, const char *summary);

/* The scene with its look applied and then every --set. Warnings go to standard error, one line
 * each. Returns: (transfer full): or NULL, said on standard error */
SqScene *sq_arguments_load (const SqArguments *arguments);

/* Says "squarelaw: PATH: message" on standard error. Returns: SQ_EXIT_INPUT */
int sq_say_error (const char *path, const GError *error);

/* The same for wrong usage. Returns: SQ_EXIT_USAGE */
int sq_say_usage (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* One line each on standard error. */
void sq_say_warnings (const SqArguments *arguments, const GPtrArray *lines);

/* What the light leaves out, on standard error, for answers that have no room for words. */
void sq_say_left_out (const SqArguments *arguments, const GPtrArray *lines);

/* Writes a result to -o, or to standard output. Returns: an exit code */
int sq_put_result (const SqArguments *arguments, const char *text, gsize length);

G_END_DECLS
