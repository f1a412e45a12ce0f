/* verbs.h: what the command line can do, one function and one file a verb */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct {
  const char *name;
  const char *summary; /* N_() */
  /* argv[0] is the verb. Returns: an exit code */
  int (*run) (int argc, char **argv, const char *summary);
} SqVerb;

int sq_verb_check (int argc, char **argv, const char *summary);
int sq_verb_meter (int argc, char **argv, const char *summary);
int sq_verb_map (int argc, char **argv, const char *summary);
int sq_verb_plot (int argc, char **argv, const char *summary);

G_END_DECLS
