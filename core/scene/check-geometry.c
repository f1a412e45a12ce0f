/* check-geometry.c: lamps, cameras, panels, classes, materials and supplies that can be built */
#include "scene/check.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>

/* Nearer than this, two points are one. */
#define SAME_POINT_M 1e-6

static gboolean
fails (
  const SqWhere *list, guint index, const char *key, SqError code, GError **error, const char *text)
{
  SqWhere thing = { .up = list, .index = index };
  SqWhere member = { .up = &thing, .key = key };
  SqReading reading = { .where = key != NULL ? &member : &thing };
  return sq_reading_error (&reading, code, error, "%s", text);
}

static gboolean
aims_at_itself (const SqScene *scene, const char *id, SqPoint at, const SqAim *aim)
{
  SqPoint target;
  if (g_strcmp0 (aim->id, id) == 0)
    return TRUE;
  return sq_scene_aim_point (scene, aim, &target) &&
         sq_vector_length (sq_vector_between (at, target)) < SAME_POINT_M;
}

gboolean
sq_class_check (const SqClass *lamp, const SqWhere *where, GError **error)
{
  SqReading reading = { .where = where };
  guint lights =
    (lamp->beams->len > 0) + (lamp->emits != SQ_EMITS_BY_BEAM) + (lamp->photometry != NULL);
  if (lights != 1)
    return sq_reading_error (&reading, SQ_ERROR_VALUE, error,
                             _ ("has %u kinds of light, expected one of beams, emits, photometry"),
                             lights);
  if (lamp->beams->len > 2)
    return sq_reading_error (&reading, SQ_ERROR_VALUE, error,
                             _ ("has %u beams, expected one, or spot and flood"), lamp->beams->len);
  for (guint i = 0; i < lamp->beams->len; i++) {
    const SqBeam *beam = g_ptr_array_index (lamp->beams, i);
    SqWhere list = { .up = where, .key = "beams" };
    if (!(beam->field_deg.across > beam->beam_deg.across) ||
        !(beam->field_deg.up > beam->beam_deg.up))
      return fails (&list, i, "field_deg", SQ_ERROR_VALUE, error,
                    _ ("is not more than beam_deg, expected the wider angle of a tenth"));
  }
  if (lamp->emits != SQ_EMITS_BY_BEAM && !(lamp->lumens > 0.0))
    return sq_reading_error (&reading, SQ_ERROR_VALUE, error,
                             _ ("emits, but has no lumens, expected a flux above 0"));
  if (lamp->volts[0] > lamp->volts[1])
    return sq_reading_error (&reading, SQ_ERROR_VALUE, error,
                             _ ("volts are the wrong way round, expected [least, most]"));
  if (lamp->cct_range_k[0] > lamp->cct_range_k[1])
    return sq_reading_error (&reading, SQ_ERROR_VALUE, error,
                             _ ("cct_range is the wrong way round, expected [least, most]"));
  return TRUE;
}

gboolean
sq_material_check (const SqMaterial *material, const SqWhere *where, GError **error)
{
  SqReading reading = { .where = where };
  double sum = material->direct + material->scatter + material->reflect;
  if (sum > 1.0 + 1e-9) {
    g_autofree char *text = sq_number_text (sum);
    return sq_reading_error (&reading, SQ_ERROR_VALUE, error,
                             _ ("direct, scatter and reflect are %s together, expected at most 1"),
                             text);
  }
  return TRUE;
}

gboolean
sq_stand_check (const SqStand *stand, const SqWhere *where, GError **error)
{
  SqReading reading = { .where = where };
  if (stand->max_height_m < stand->min_height_m)
    return sq_reading_error (&reading, SQ_ERROR_VALUE, error,
                             _ ("max_height is below min_height, expected it above"));
  if (stand->spigot_mm[0] > stand->spigot_mm[1])
    return sq_reading_error (&reading, SQ_ERROR_VALUE, error,
                             _ ("spigot is the wrong way round, expected the smaller one first"));
  return TRUE;
}

/* In a look, things are named as a look names them: by id. */
static gboolean
aim_fails (const SqWhere *look,
           const char *list_key,
           guint index,
           const char *id,
           const char *key,
           GError **error,
           const char *text)
{
  SqWhere list = { .up = look, .key = list_key };
  SqWhere thing = { .up = &list, .key = look != NULL ? id : NULL, .index = index };
  SqWhere member = { .up = &thing, .key = key };
  SqReading reading = { .where = &member };
  return sq_reading_error (&reading, SQ_ERROR_GEOMETRY, error, "%s", text);
}

/* A supply that is not on the plan, say. */
static gboolean
aims_nowhere (const SqScene *scene, const char *id)
{
  const SqAim aim = { .id = (char *)id, .at = SQ_NO_POINT };
  SqPoint target;
  return id != NULL && !sq_scene_aim_point (scene, &aim, &target);
}

gboolean
sq_aims_check (const SqScene *scene, const SqWhere *look, GError **error)
{
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    if (aims_at_itself (scene, fixture->id, fixture->at, &fixture->aim))
      return aim_fails (look, "fixtures", i, fixture->id, "aim", error,
                        _ ("is the lamp itself, expected something else to aim at"));
    if (aims_nowhere (scene, fixture->aim.id))
      return aim_fails (look, "fixtures", i, fixture->id, "aim", error,
                        _ ("is not on the plan, expected something that has a place"));
  }
  for (guint i = 0; i < scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, scene->cameras, i);
    if (aims_at_itself (scene, camera->id, camera->at, &camera->aim))
      return aim_fails (look, "cameras", i, camera->id, "aim", error,
                        _ ("is the camera itself, expected something else to look at"));
    if (aims_nowhere (scene, camera->aim.id))
      return aim_fails (look, "cameras", i, camera->id, "aim", error,
                        _ ("is not on the plan, expected something that has a place"));
  }
  for (guint i = 0; i < scene->probes->len; i++) {
    const SqProbe *probe = SQ_AT (SqProbe, scene->probes, i);
    SqAim toward = { .id = probe->toward, .at = SQ_NO_POINT };
    if (aims_at_itself (scene, probe->id, probe->at, &toward))
      return aim_fails (look, "probes", i, probe->id, "toward", error,
                        _ ("is the probe itself, expected something else to look at"));
    if (aims_nowhere (scene, probe->toward))
      return aim_fails (look, "probes", i, probe->id, "toward", error,
                        _ ("is not on the plan, expected something that has a place"));
  }
  return TRUE;
}

static gboolean
panels_check (const SqScene *scene, GError **error)
{
  SqWhere list = { .key = "panels" };
  for (guint i = 0; i < scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, scene->panels, i);
    if (panel->material == NULL && panel->kind != SQ_PANEL_FLAG)
      return fails (&list, i, "material", SQ_ERROR_VALUE, error,
                    _ ("is missing, expected the id of a material (only a flag may do without)"));
  }
  return TRUE;
}

static gboolean
classes_check (const SqScene *scene, GError **error)
{
  SqWhere list = { .key = "classes" };
  for (guint i = 0; i < scene->classes->len; i++) {
    SqWhere where = { .up = &list, .index = i };
    if (!sq_class_check (SQ_AT (SqClass, scene->classes, i), &where, error))
      return FALSE;
  }
  list.key = "materials";
  for (guint i = 0; i < scene->materials->len; i++) {
    SqWhere where = { .up = &list, .index = i };
    if (!sq_material_check (SQ_AT (SqMaterial, scene->materials, i), &where, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
supplies_check (const SqScene *scene, GError **error)
{
  SqWhere list = { .key = "supplies" };
  for (guint i = 0; i < scene->supplies->len; i++) {
    const SqSupply *supply = SQ_AT (SqSupply, scene->supplies, i);
    /* Walking up from a supply ends after at most as many steps as there are supplies. */
    for (guint step = 0; supply->fed_from != NULL; step++) {
      if (step >= scene->supplies->len)
        return fails (&list, i, "fed_from", SQ_ERROR_GEOMETRY, error,
                      _ ("leads in a circle, expected a supply further upstream"));
      supply = (const SqSupply *)sq_scene_find (scene, supply->fed_from);
    }
  }
  list.key = "cables";
  for (guint i = 0; i < scene->cables->len; i++) {
    const SqCable *cable = SQ_AT (SqCable, scene->cables, i);
    if (g_str_equal (cable->from, cable->to))
      return fails (&list, i, "to", SQ_ERROR_GEOMETRY, error,
                    _ ("is where it comes from, expected another supply or a lamp"));
  }
  return TRUE;
}

gboolean
sq_scene_check_geometry (const SqScene *scene, GError **error)
{
  return sq_set_check (scene, error) && classes_check (scene, error) &&
         sq_aims_check (scene, NULL, error) && panels_check (scene, error) &&
         supplies_check (scene, error);
}
