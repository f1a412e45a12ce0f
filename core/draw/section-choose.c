/* section-choose.c: which light a section goes through */
#include "base/error.h"
#include "draw/section-lit.h"
#include "draw/section.h"
#include "light/lamp.h"
#include "light/obstacles.h"

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

/* What the choice looks at, gathered once. */
typedef struct {
  const SqScene *scene;
  GArray *lamps;     /* SqLamp */
  GArray *obstacles; /* SqObstacle of light/obstacles.h */
} Field;

/* Nobody this far off a cut is touched by it. */
#define PERSON_M 1.0

/* How strongly a light alone lights whom its cut goes through, in lux at the face; the best of
 * them. What stands between is not looked at: it is chosen by this, not measured. */
static double
lights_on_cut_lux (const Field *field, const SqFixture *fixture, const SqMark **whom)
{
  const SqScene *scene = field->scene;
  SqCutPlane plane = sq_cut_plane (scene, fixture);
  g_autoptr (GArray) parts = NULL;
  double most = 0.0;
  for (guint i = 0; i < scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
    SqPoint face = sq_mark_face (mark);
    double away_m = sq_vector_length (sq_vector_between (fixture->at, face));
    if (mark->common.hidden || away_m <= 0.0 || fabs (sq_cut_off_m (&plane, face)) > PERSON_M)
      continue;
    double lux = sq_section_toward_cd (field->lamps, fixture, mark) / (away_m * away_m);
    if (!(lux > most))
      continue;
    if (parts == NULL)
      parts = sq_cut_parts (&plane, field->obstacles);
    if (!sq_cut_goes_through (parts, &mark->thing))
      continue;
    most = lux;
    *whom = mark;
  }
  return most;
}

enum {
  RANK_DARK,
  RANK_BURNS,
  RANK_KEY,
  RANK_KEY_AIMED,
  RANK_KEY_BURNS,
  RANK_LIGHTS,
  RANK_KEY_LIGHTS,
  RANK_FIRST_KEY
};

/* Of equals the earlier is taken; of lamps that light somebody and are no key the strongest. */
static int
rank (const Field *field, const SqFixture *fixture, double *lux)
{
  const SqMark *first =
    field->scene->marks->len > 0 ? SQ_AT (SqMark, field->scene->marks, 0) : NULL;
  const SqMark *whom = NULL;
  gboolean key = first != NULL ? sq_fixture_role_at (fixture, first->id) == SQ_ROLE_KEY
                               : fixture->role == SQ_ROLE_KEY;
  gboolean aimed = first != NULL && g_strcmp0 (fixture->aim.id, first->id) == 0;
  if (fixture->on && key && aimed)
    return RANK_FIRST_KEY;
  if (fixture->on && first != NULL)
    *lux = lights_on_cut_lux (field, fixture, &whom);
  if (whom != NULL)
    return sq_fixture_role_at (fixture, whom->id) == SQ_ROLE_KEY ? RANK_KEY_LIGHTS : RANK_LIGHTS;
  if (key)
    return fixture->on ? RANK_KEY_BURNS : aimed ? RANK_KEY_AIMED : RANK_KEY;
  return fixture->on ? RANK_BURNS : RANK_DARK;
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
  g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
  g_autoptr (GArray) obstacles = sq_obstacles_new (scene);
  const Field field = { scene, lamps, obstacles };
  const SqFixture *best = SQ_AT (SqFixture, scene->fixtures, 0);
  double most_lux = 0.0;
  int most = -1;
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    double lux = 0.0;
    int now = rank (&field, fixture, &lux);
    if (now > most || (now == most && now == RANK_LIGHTS && lux > most_lux)) {
      most = now;
      most_lux = lux;
      best = fixture;
    }
  }
  return best;
}
