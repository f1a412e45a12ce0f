/* main.c: a verb to the command line, anything else to the window */
#include "arguments.h"
#include "base/error.h"
#include "verbs.h"
#ifdef SQ_WINDOW
#include "application.h"
#endif

#include <glib/gi18n.h>
#include <locale.h>
#include <signal.h>
#include <stdio.h>
#include <string.h>

static const SqVerb verbs[] = {
  { "plot", N_ ("Draw the plan at true scale: PDF, SVG or PNG."), sq_verb_plot },
  { "meter", N_ ("Read the light at every probe and mark, light by light."), sq_verb_meter },
  { "map", N_ ("Map the light over the plan: PNG or CSV."), sq_verb_map },
  { "check", N_ ("Say whether a scene file is sound; with -o, write it anew."), sq_verb_check },
};

static void
say_help (void)
{
  printf (_ ("squarelaw: lighting plans to scale, with true numbers\n\n"
             "  squarelaw [SCENE]              open the window\n"
             "  squarelaw VERB SCENE [OPTION…]\n\n"));
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    printf ("  %-6s %s\n", verbs[i].name, _ (verbs[i].summary));
  printf (_ (
    "\nsquarelaw VERB --help says more. Exit: 0 done, 1 the input is at fault, 2 wrong usage.\n"));
}

/* Named in the contract and not there yet: no misspelling. */
static gboolean
is_to_come (const char *name)
{
  static const char *const names[] = {
    "face", "lens", "list", "power", "snags", "photometry", NULL
  };
  return g_strv_contains (names, name);
}

static const SqVerb *
verb_named (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++) {
    if (g_str_equal (verbs[i].name, name))
      return &verbs[i];
  }
  return NULL;
}

static int
open_window (int argc, char **argv)
{
#ifdef SQ_WINDOW
  return sq_application_run (argc, argv);
#else
  return sq_say_usage (_ ("this build has no window; the verbs are %s"), "plot, meter, map, check");
#endif
}

int
main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, SQ_LOCALE_DIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  /* A full disk and a reader that went away are errors to report, not reasons to die. */
  signal (SIGXFSZ, SIG_IGN);
  signal (SIGPIPE, SIG_IGN);

  if (argc < 2)
    return open_window (argc, argv);
  if (g_str_equal (argv[1], "--help") || g_str_equal (argv[1], "-h")) {
    say_help ();
    return SQ_EXIT_DONE;
  }
  if (g_str_equal (argv[1], "--version")) {
    printf ("squarelaw %s\n", SQ_VERSION);
    return SQ_EXIT_DONE;
  }
  const SqVerb *verb = verb_named (argv[1]);
  if (verb != NULL)
    return verb->run (argc - 1, argv + 1, _ (verb->summary));
  if (argv[1][0] == '-' && argv[1][1] != '\0')
    return sq_say_usage (_ ("\"%s\" is no verb and no option; try squarelaw --help"), argv[1]);
  if (is_to_come (argv[1]))
    return sq_say_usage (_ ("%s: this verb is not built yet"), argv[1]);
  /* A word that names no file is a verb misspelt. */
  if (!g_file_test (argv[1], G_FILE_TEST_EXISTS) && strpbrk (argv[1], "./") == NULL)
    return sq_say_usage (_ ("\"%s\" is no verb and no file; try squarelaw --help"), argv[1]);
  return open_window (argc, argv);
}
