/* verb-check.c: is the scene file sound? and, with -o, the file written anew */
#include "arguments.h"
#include "base/json-write.h"
#include "verbs.h"

#include <glib/gi18n.h>
#include <stdio.h>
#include <string.h>

typedef struct {
  const char *key;   /* in the file and in JSON */
  const char *words; /* for people */
  guint count;
} Count;

static char *
for_people (const SqArguments *arguments, const Count *counts, guint n)
{
  GString *text = g_string_new (NULL);
  gboolean stream = g_str_equal (arguments->scene_path, "-");
  g_string_append_printf (text, _ ("%s: sound"),
                          stream ? _ ("standard input") : arguments->scene_path);
  for (guint i = 0; i < n; i++) {
    if (counts[i].count > 0)
      g_string_append_printf (text, "  %s %u", counts[i].words, counts[i].count);
  }
  g_string_append_c (text, '\n');
  return g_string_free (text, FALSE);
}

static char *
for_programs (const SqArguments *arguments, const Count *counts, guint n)
{
  g_autoptr (JsonObject) object = json_object_new ();
  json_object_set_string_member (object, "file", arguments->scene_path);
  json_object_set_boolean_member (object, "sound", TRUE);
  for (guint i = 0; i < n; i++)
    json_object_set_int_member (object, counts[i].key, counts[i].count);
  g_autoptr (JsonNode) node = json_node_init_object (json_node_alloc (), object);
  return sq_json_write (node);
}

int
sq_verb_check (int argc, char **argv, const char *summary)
{
  g_auto (SqArguments) arguments = { 0 };
  int code = sq_arguments_parse (&arguments, argc, argv, NULL, summary);
  if (code >= 0)
    return code;
  if (arguments.look != NULL && arguments.output != NULL)
    return sq_say_usage (_ ("check: --look and -o exclude each other: a file holds all its looks"));
  g_autoptr (SqScene) scene = sq_arguments_load (&arguments);
  if (scene == NULL)
    return SQ_EXIT_INPUT;
  if (arguments.output != NULL) {
    g_autofree char *text = sq_scene_write (scene);
    return sq_put_result (&arguments, text, strlen (text));
  }
  const Count counts[] = {
    { "walls", _ ("walls"), scene->walls->len },
    { "pieces", _ ("pieces"), scene->pieces->len },
    { "marks", _ ("marks"), scene->marks->len },
    { "cameras", _ ("cameras"), scene->cameras->len },
    { "fixtures", _ ("lamps"), scene->fixtures->len },
    { "panels", _ ("panels"), scene->panels->len },
    { "probes", _ ("probes"), scene->probes->len },
    { "supplies", _ ("supplies"), scene->supplies->len },
    { "looks", _ ("looks"), scene->looks->len },
  };
  g_autofree char *text = arguments.json ? for_programs (&arguments, counts, G_N_ELEMENTS (counts))
                                         : for_people (&arguments, counts, G_N_ELEMENTS (counts));
  return sq_put_result (&arguments, text, strlen (text));
}
