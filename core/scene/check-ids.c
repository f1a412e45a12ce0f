/* check-ids.c: every id once, every reference to something that exists */
#include "scene/check.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>

typedef gboolean (*ThingVisitor) (const SqThing *thing,
                                  const SqReading *reading,
                                  gpointer data,
                                  GError **error);

static gboolean visit (const SqThing *thing,
                       const SqReading *reading,
                       ThingVisitor visitor,
                       gpointer data,
                       GError **error);

static gboolean
visit_list (const GPtrArray *list,
            const SqReading *reading,
            ThingVisitor visitor,
            gpointer data,
            GError **error)
{
  for (guint i = 0; i < list->len; i++) {
    SqWhere where = { .up = reading->where, .index = i };
    SqReading member = { .where = &where };
    if (!visit (g_ptr_array_index (list, i), &member, visitor, data, error))
      return FALSE;
  }
  return TRUE;
}

/* @thing first, then all things in it. */
static gboolean
visit (const SqThing *thing,
       const SqReading *reading,
       ThingVisitor visitor,
       gpointer data,
       GError **error)
{
  if (!visitor (thing, reading, data, error))
    return FALSE;
  SQ_EACH_FIELD (field, thing->kind) {
    SqWhere where = { .up = reading->where, .key = field->key };
    SqReading member = { .where = &where };
    gpointer value = sq_thing_value (thing, field);
    if (field->type == &sq_value_list) {
      if (!visit_list (*(GPtrArray **)value, &member, visitor, data, error))
        return FALSE;
    } else if (field->type == &sq_value_object) {
      const SqThing *inner = *(SqThing **)value;
      if (inner != NULL && !visit (inner, &member, visitor, data, error))
        return FALSE;
    } else if (field->type == &sq_value_partials) {
      const GPtrArray *partials = *(GPtrArray **)value;
      for (guint k = 0; k < partials->len; k++) {
        const SqPartial *partial = g_ptr_array_index (partials, k);
        SqWhere at = { .up = &where, .key = partial->id };
        SqReading inner = { .where = &at, .partial = TRUE };
        if (!visit (partial->changes, &inner, visitor, data, error))
          return FALSE;
      }
    }
  }
  return TRUE;
}

gboolean
sq_id_is_reserved (const char *id)
{
  static const char *const words[] = { "sun", "sky", "room", "base", "ambient", NULL };
  return g_strv_contains (words, id) || sq_kind_field (&sq_scene_kind, id) != NULL;
}

static gboolean
enter (const SqThing *thing, const SqReading *reading, gpointer data, GError **error)
{
  GHashTable *by_id = data;
  const char *id = thing->kind->names != 0 && !reading->partial ? sq_thing_id (thing) : NULL;
  if (id == NULL)
    return TRUE;
  SqWhere where = { .up = reading->where, .key = "id" };
  SqReading at_id = { .where = &where };
  if (sq_id_is_reserved (id))
    return sq_reading_error (&at_id, SQ_ERROR_REFERENCE, error,
                             _ ("\"%s\" is reserved, expected another id"), id);
  const SqThing *other = g_hash_table_lookup (by_id, id);
  if (other != NULL)
    return sq_reading_error (&at_id, SQ_ERROR_REFERENCE, error,
                             _ ("\"%s\" is taken already (%s), expected an id of its own"), id,
                             _ (other->kind->name));
  g_hash_table_insert (by_id, (gpointer)id, (gpointer)thing);
  return TRUE;
}

char *
sq_names_text (SqNames names)
{
  static const SqKind *const kinds[] = {
    &sq_wall_kind,    &sq_opening_kind,  &sq_piece_kind, &sq_mark_kind,   &sq_camera_kind,
    &sq_fixture_kind, &sq_panel_kind,    &sq_probe_kind, &sq_supply_kind, &sq_cable_kind,
    &sq_class_kind,   &sq_material_kind, &sq_look_kind,  &sq_stand_kind,
  };
  g_autoptr (GPtrArray) words = g_ptr_array_new ();
  if ((names & SQ_NAMES_ANYTHING_PLACED) == SQ_NAMES_ANYTHING_PLACED) {
    g_ptr_array_add (words, _ ("anything on the plan"));
    names &= ~SQ_NAMES_ANYTHING_PLACED;
  }
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++) {
    if (kinds[i]->names & names)
      g_ptr_array_add (words, _ (kinds[i]->name));
  }
  if (names & SQ_NAMES_DAYLIGHT)
    g_ptr_array_add (words, (gpointer) "sun, sky");
  g_ptr_array_add (words, NULL);
  return g_strjoinv (", ", (char **)words->pdata);
}

static gboolean
resolve (
  const SqScene *scene, const SqReading *reading, const char *id, SqNames names, GError **error)
{
  const SqThing *found = g_hash_table_lookup (scene->by_id, id);
  if (found != NULL && (found->kind->names & names))
    return TRUE;
  const char *spoilt = sq_library_spoilt (scene->library, names, id);
  if (spoilt != NULL)
    return sq_reading_error (reading, SQ_ERROR_REFERENCE, error, _ ("\"%s\" cannot be used: %s"),
                             id, spoilt);
  if ((names & SQ_NAMES_CLASS) && sq_library_class (scene->library, id) != NULL)
    return TRUE;
  if ((names & SQ_NAMES_MATERIAL) && sq_library_material (scene->library, id) != NULL)
    return TRUE;
  if ((names & SQ_NAMES_STAND) && sq_library_stand (scene->library, id) != NULL)
    return TRUE;
  if ((names & SQ_NAMES_DAYLIGHT) && (g_str_equal (id, "sun") || g_str_equal (id, "sky")))
    return TRUE;
  g_autofree char *expected = sq_names_text (names);
  if (found != NULL)
    return sq_reading_error (reading, SQ_ERROR_REFERENCE, error,
                             _ ("\"%s\" names the wrong thing (%s), expected the id of: %s"), id,
                             _ (found->kind->name), expected);
  const char *unread = sq_library_unread (scene->library);
  if (unread != NULL && (names & (SQ_NAMES_CLASS | SQ_NAMES_MATERIAL | SQ_NAMES_STAND)))
    return sq_reading_error (reading, SQ_ERROR_REFERENCE, error,
                             _ ("\"%s\" does not exist, expected the id of: %s (not read: %s)"), id,
                             expected, unread);
  return sq_reading_error (reading, SQ_ERROR_REFERENCE, error,
                           _ ("\"%s\" does not exist, expected the id of: %s"), id, expected);
}

/* As a key of the object at @reading: a mark in role_at, a thing that a look changes. */
static gboolean
resolve_key (
  const SqScene *scene, const SqReading *reading, const char *id, SqNames names, GError **error)
{
  SqWhere where = { .up = reading->where, .key = id };
  SqReading at_key = { .where = &where };
  return resolve (scene, &at_key, id, names, error);
}

static gboolean
resolve_all (const SqThing *thing, const SqReading *reading, gpointer data, GError **error)
{
  const SqScene *scene = data;
  SQ_EACH_FIELD (field, thing->kind) {
    SqWhere where = { .up = reading->where, .key = field->key };
    SqReading member = { .where = &where };
    gpointer value = sq_thing_value (thing, field);
    if (field->type == &sq_value_reference || field->type == &sq_value_aim) {
      const char *id = field->type == &sq_value_aim ? ((SqAim *)value)->id : *(char **)value;
      if (id != NULL && sq_field_applies (field, thing) &&
          !resolve (scene, &member, id, field->names, error))
        return FALSE;
    } else if (field->type == &sq_value_role_at) {
      const GPtrArray *entries = *(GPtrArray **)value;
      for (guint k = 0; k < entries->len; k++) {
        const SqRoleAt *entry = g_ptr_array_index (entries, k);
        if (!resolve_key (scene, &member, entry->mark, field->names, error))
          return FALSE;
      }
    } else if (field->type == &sq_value_partials) {
      const GPtrArray *partials = *(GPtrArray **)value;
      for (guint k = 0; k < partials->len; k++) {
        const SqPartial *partial = g_ptr_array_index (partials, k);
        if (!resolve_key (scene, &member, partial->id, field->of->names, error))
          return FALSE;
      }
    }
  }
  return TRUE;
}

gboolean
sq_scene_index (SqScene *scene, GError **error)
{
  SqReading reading = { .where = NULL };
  g_clear_pointer (&scene->by_id, g_hash_table_unref);
  scene->by_id = g_hash_table_new (g_str_hash, g_str_equal);
  return visit (&scene->thing, &reading, enter, scene->by_id, error) &&
         visit (&scene->thing, &reading, resolve_all, scene, error);
}
