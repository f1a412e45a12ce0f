/* section-choose.c: which light a section goes through */
#include "base/error.h"
#include "draw/section.h"

#include <glib/gi18n-lib.h>

/* So many lamps are named where one is not found. */
#define MOST_NAMES 24

static const SqFixture *
by_id_or_number (const SqScene *scene, const char *id)
{
  const SqThing *thing = sq_scene_find (scene, id);
  if (thing != NULL && thing->kind == &sq_fixture_kind)
    return (const SqFixture *)thing;
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    if (g_strcmp0 (fixture->number, id) == 0)
      return fixture;
  }
  return NULL;
}

static char *
list_of_lamps (const SqScene *scene)
{
  GString *list = g_string_new (NULL);
  for (guint i = 0; i < MIN (scene->fixtures->len, MOST_NAMES); i++)
    g_string_append_printf (list, "%s%s", i > 0 ? ", " : "",
                            SQ_AT (SqFixture, scene->fixtures, i)->id);
  if (scene->fixtures->len > MOST_NAMES)
    /* Translators: ends a list of lamps: "f1, f2, f3 and 40 more" */
    g_string_append_printf (list, _ (" and %u more"), scene->fixtures->len - MOST_NAMES);
  return g_string_free (list, FALSE);
}

/* Any key before what is none; of two keys the one that burns, then the one that is aimed at the
 * mark; of equals the earlier is taken. */
static int
key_rank (const SqFixture *fixture, const SqMark *mark)
{
  gboolean aimed = g_strcmp0 (fixture->aim.id, mark->id) == 0;
  if (sq_fixture_role_at (fixture, mark->id) != SQ_ROLE_KEY)
    return fixture->on ? 1 : 0;
  return 2 + (aimed ? 1 : 0) + (fixture->on ? 2 : 0);
}

const SqFixture *
sq_section_light (const SqScene *scene, const char *id, GError **error)
{
  if (scene->fixtures->len == 0) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
                 _ ("fixtures: there is no light to cut through, expected one"));
    return NULL;
  }
  if (id != NULL) {
    const SqFixture *named = by_id_or_number (scene, id);
    if (named != NULL)
      return named;
    g_autofree char *shown = g_utf8_make_valid (id, MIN (strlen (id), 40));
    g_autofree char *list = list_of_lamps (scene);
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
                 _ ("light: %s is no light of this scene, expected one of %s"), shown, list);
    return NULL;
  }
  const SqFixture *best = SQ_AT (SqFixture, scene->fixtures, 0);
  const SqMark *mark = scene->marks->len > 0 ? SQ_AT (SqMark, scene->marks, 0) : NULL;
  int most = -1;
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    int rank = mark != NULL  ? key_rank (fixture, mark)
               : fixture->on ? 1 + (fixture->role == SQ_ROLE_KEY)
                             : 0;
    if (rank > most) {
      most = rank;
      best = fixture;
    }
  }
  return best;
}
