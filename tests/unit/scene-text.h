/* scene-text.h: scenes written in tests, with ' for ", so that they can be read */
#pragma once

#include "base/error.h"
#include "scene/scene.h"

#include <string.h>

G_BEGIN_DECLS

/* @text with every ' made ". Returns: (transfer full) */
static inline char *
json_text (const char *text)
{
  return g_strdelimit (g_strdup (text), "'", '"');
}

/* A library class and a library material. */
#define LAMP "tungsten-fresnel-650"
#define CLOTH "half-frost"

/* @text: all members of the scene but the format. Returns: (transfer full): or NULL */
static inline SqScene *
read_scene (SqLibrary *library, const char *text, GError **error)
{
  g_autofree char *json = json_text (text);
  g_autofree char *whole = g_strdup_printf ("{\"format\": 1%s%s}", *json != '\0' ? ", " : "", json);
  return sq_scene_parse (whole, strlen (whole), library, NULL, error);
}

/* The same of a scene that is right. */
static inline SqScene *
right_scene (const char *text)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GError) error = NULL;
  SqScene *scene = read_scene (library, text, &error);
  g_assert_no_error (error);
  return scene;
}

/* That @error is one line: @place, what is wrong, what was expected, with @words (apart by |). */
static inline void
check_line (
  const char *name, const GError *error, SqError code, const char *place, const char *words)
{
  g_autofree char *start = g_strdup_printf ("%s: ", place);
  g_auto (GStrv) all = g_strsplit (words, "|", -1);
  gboolean right = error->domain == SQ_ERROR && error->code == (int)code &&
                   g_str_has_prefix (error->message, start) &&
                   strstr (error->message, "expected ") != NULL &&
                   strchr (error->message, '\n') == NULL;
  for (guint i = 0; all[i] != NULL; i++)
    right = right && strstr (error->message, all[i]) != NULL;
  if (!right)
    g_error ("%s: got (%d) \"%s\", expected (%d) \"%s…\" with %s", name, error->code,
             error->message, code, start, words);
}

/* That two texts are one; else the first line that differs. */
static inline void
same_text (const char *got, const char *expected)
{
  g_auto (GStrv) ours = g_strsplit (got, "\n", -1), theirs = g_strsplit (expected, "\n", -1);
  for (guint i = 0; ours[i] != NULL || theirs[i] != NULL; i++) {
    if (g_strcmp0 (ours[i], theirs[i]) != 0)
      g_error ("line %u is\n%s\nexpected\n%s", i + 1, ours[i] != NULL ? ours[i] : "the end",
               theirs[i] != NULL ? theirs[i] : "the end");
    if (ours[i] == NULL || theirs[i] == NULL)
      break;
  }
}

G_END_DECLS
