/* look.c: the fields of a look, and the scene as a look shows it */
#include "scene/check.h"
#include "scene/edit.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqLook, member)
static const SqField look_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name on the command line.") },
  { "name", N_ ("Name"), &sq_value_text, AT (name), .help = N_ ("As printed.") },
  { "note", N_ ("Note"), &sq_value_text, AT (note), .help = N_ ("A remark.") },
  { "camera", N_ ("Camera"), &sq_value_reference, AT (camera), .names = SQ_NAMES_CAMERA,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("The active camera; null: the first.") },
  { "fixtures", N_ ("Fixtures"), &sq_value_partials, AT (fixtures), .of = &sq_fixture_kind,
    .help = N_ ("What differs, lamp by lamp.") },
  { "panels", N_ ("Panels"), &sq_value_partials, AT (panels), .of = &sq_panel_kind,
    .help = N_ ("What differs, panel by panel.") },
  { "openings", N_ ("Openings"), &sq_value_partials, AT (openings), .of = &sq_opening_kind,
    .help = N_ ("What differs, opening by opening.") },
  { "marks", N_ ("Marks"), &sq_value_partials, AT (marks), .of = &sq_mark_kind,
    .help = N_ ("What differs, mark by mark.") },
  { "daylight", N_ ("Daylight"), &sq_value_partial, AT (daylight), .of = &sq_daylight_kind,
    .help = N_ ("What differs of the daylight.") },
  { "haze", N_ ("Haze"), &sq_value_number, AT (haze_per_m), SQ_PER_METRE, SQ_RANGE (0, 10),
    SQ_USUAL (0, 0.1), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Extinction; null: as in the base scene.") },
};
#undef AT
/* clang-format on */

const SqKind sq_look_kind = {
  .name = N_ ("look"),
  .size = sizeof (SqLook),
  SQ_FIELDS (look_fields),
  .names = SQ_NAMES_LOOK,
  .help = N_ ("A named state of the set. The scene without one is the look base."),
};

/* @list with what a look changes of its members; @changes: id → SqThing. (transfer full) */
static GPtrArray *
list_in_look (const GPtrArray *list, GHashTable *changes)
{
  GPtrArray *result = g_ptr_array_new_full (list->len, (GDestroyNotify)sq_thing_unref);
  for (guint i = 0; i < list->len; i++) {
    const SqThing *thing = g_ptr_array_index (list, i);
    const char *id = sq_thing_id (thing);
    const SqThing *changed = id != NULL ? g_hash_table_lookup (changes, id) : NULL;
    g_ptr_array_add (result,
                     changed != NULL ? sq_thing_overlay (thing, changed) : sq_thing_ref (thing));
  }
  return result;
}

static GHashTable *
changes_by_id (const GPtrArray *partials)
{
  GHashTable *changes = g_hash_table_new (g_str_hash, g_str_equal);
  for (guint i = 0; i < partials->len; i++) {
    const SqPartial *partial = g_ptr_array_index (partials, i);
    g_hash_table_insert (changes, partial->id, partial->changes);
  }
  return changes;
}

static void
apply (GPtrArray **list, const GPtrArray *partials)
{
  if (partials->len == 0)
    return;
  g_autoptr (GHashTable) changes = changes_by_id (partials);
  GPtrArray *old = *list;
  *list = list_in_look (old, changes);
  g_ptr_array_unref (old);
}

/* Openings stand in their walls: the walls are copied. */
static void
apply_to_openings (SqScene *scene, const GPtrArray *partials)
{
  if (partials->len == 0)
    return;
  g_autoptr (GHashTable) changes = changes_by_id (partials);
  GPtrArray *walls = g_ptr_array_new_full (scene->walls->len, (GDestroyNotify)sq_thing_unref);
  for (guint i = 0; i < scene->walls->len; i++) {
    SqWall *wall = (SqWall *)sq_thing_copy (g_ptr_array_index (scene->walls, i));
    GPtrArray *openings = wall->openings;
    wall->openings = list_in_look (openings, changes);
    g_ptr_array_unref (openings);
    g_ptr_array_add (walls, wall);
  }
  g_ptr_array_unref (scene->walls);
  scene->walls = walls;
}

static gboolean
look_unknown (const SqScene *scene, const char *look_id, GError **error)
{
  g_autoptr (GPtrArray) ids = g_ptr_array_new ();
  g_ptr_array_add (ids, (gpointer) "base");
  for (guint i = 0; i < scene->looks->len; i++)
    g_ptr_array_add (ids, SQ_AT (SqLook, scene->looks, i)->id);
  g_ptr_array_add (ids, NULL);
  g_autofree char *known = g_strjoinv (", ", (char **)ids->pdata);
  g_autofree char *shown = sq_shown_text (look_id);
  g_set_error (error, SQ_ERROR, SQ_ERROR_REFERENCE,
               _ ("look: \"%s\" does not exist, expected one of %s"), shown, known);
  return FALSE;
}

SqScene *
sq_scene_in_look (const SqScene *scene, const char *look_id, GError **error)
{
  if (look_id == NULL || g_str_equal (look_id, "base"))
    return sq_scene_ref (scene);
  const SqThing *found = sq_scene_find (scene, look_id);
  if (found == NULL || found->kind != &sq_look_kind) {
    look_unknown (scene, look_id, error);
    return NULL;
  }
  const SqLook *look = (const SqLook *)found;
  g_autoptr (SqScene) result = sq_scene_copy (scene);
  apply (&result->fixtures, look->fixtures);
  apply (&result->panels, look->panels);
  apply (&result->marks, look->marks);
  apply_to_openings (result, look->openings);
  if (look->daylight != NULL && result->daylight != NULL) {
    SqDaylight *base = result->daylight;
    result->daylight = (SqDaylight *)sq_thing_overlay (&base->thing, look->daylight);
    sq_thing_unref (&base->thing);
  }
  if (!isnan (look->haze_per_m))
    result->haze_per_m = look->haze_per_m;
  g_free (result->look);
  result->look = g_strdup (look->id);
  g_free (result->look_camera);
  result->look_camera = g_strdup (look->camera);
  if (!sq_scene_index (result, error))
    return NULL;
  return g_steal_pointer (&result);
}
