/* left-out.c: what of a scene's light is not counted, and why, said line by line */
#include "light/left-out.h"

#include <glib/gi18n-lib.h>

static void
say (GPtrArray *lines, const char *id, const char *what)
{
  g_ptr_array_add (lines, g_strdup_printf ("%s: %s", id, what));
}

static void
say_of_fixture (GPtrArray *lines, const SqScene *scene, const SqFixture *fixture)
{
  const SqClass *class = sq_scene_class (scene, fixture->class_id);
  if (!fixture->on || fixture->level <= 0.0)
    return;
  if (class->photometry)
    say (lines, fixture->id, _ ("photometric web (counted as dark)"));
  for (guint i = 0; i < fixture->modifiers->len; i++) {
    switch ((SqModifierKind)SQ_AT (SqModifier, fixture->modifiers, i)->kind) {
    case SQ_MODIFIER_DIFFUSION:
      say (lines, fixture->id, _ ("diffusion on the lamp (counted as if it were not there)"));
      break;
    case SQ_MODIFIER_SOFTBOX:
      say (lines, fixture->id, _ ("soft box (counted as if it were not there)"));
      break;
    case SQ_MODIFIER_DOORS:
      if (!class->face || class->face->width_m <= 0.0)
        say (lines, fixture->id, _ ("doors (the lamp has no face to hinge them on)"));
      break;
    case SQ_MODIFIER_SCRIM:
    case SQ_MODIFIER_GEL:
    case SQ_MODIFIER_EGG_CRATE:
    case SQ_MODIFIER_SNOOT:
    default:
      break;
    }
  }
}

static void
say_of_panel (GPtrArray *lines, const SqScene *scene, const SqPanel *panel)
{
  if (!panel->set || !panel->material)
    return;
  const SqMaterial *material = sq_scene_material (scene, panel->material);
  if (material->scatter <= 0.0 && material->reflect <= 0.0)
    return;
  if (panel->kind == SQ_PANEL_DIFFUSION)
    say (lines, panel->id, _ ("light re-emitted by the frame"));
  else if (panel->kind == SQ_PANEL_BOUNCE)
    say (lines, panel->id, _ ("light given back by the bounce"));
}

static void
say_of_wall (GPtrArray *lines, const SqScene *scene, const SqWall *wall)
{
  for (guint i = 0; i < wall->openings->len; i++) {
    const SqOpening *opening = SQ_AT (SqOpening, wall->openings, i);
    const char *id = opening->id ? opening->id : wall->id ? wall->id : _ ("opening");
    if (opening->material && sq_scene_material (scene, opening->material)->scatter > 0.0)
      say (lines, id, _ ("light scattered by the material on the opening"));
  }
}

/* A lamp or a meter that was put into a wall, a piece of furniture or somebody reads dark. */
static void
say_if_inside (GPtrArray *lines, const char *id, SqPoint at, const GArray *obstacles)
{
  for (guint i = 0; i < obstacles->len; i++) {
    const SqObstacle *obstacle = &g_array_index (obstacles, SqObstacle, i);
    const SqSolid *solid = &obstacle->solid;
    SqVector way = sq_vector_between (solid->centre, at);
    if (sq_vector_dot (way, way) > solid->radius_m * solid->radius_m || obstacle->passes >= 1.0 ||
        !sq_solid_holds (solid, at))
      continue;
    const char *what = sq_thing_id (obstacle->owner);
    g_autofree char *line = what ? g_strdup_printf (_ ("inside %s, which stops its light"), what)
                                 : g_strdup (_ ("inside something solid, which stops its light"));
    say (lines, id, line);
    return;
  }
}

GPtrArray *
sq_light_left_out (const SqScene *scene, const GArray *obstacles)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    say_of_fixture (lines, scene, fixture);
    if (fixture->on && fixture->level > 0.0)
      say_if_inside (lines, fixture->id, fixture->at, obstacles);
  }
  for (guint i = 0; i < scene->panels->len; i++)
    say_of_panel (lines, scene, SQ_AT (SqPanel, scene->panels, i));
  for (guint i = 0; i < scene->walls->len; i++)
    say_of_wall (lines, scene, SQ_AT (SqWall, scene->walls, i));
  for (guint i = 0; i < scene->probes->len; i++) {
    const SqProbe *probe = SQ_AT (SqProbe, scene->probes, i);
    say_if_inside (lines, probe->id, probe->at, obstacles);
  }
  if (scene->room->bounce)
    say (lines, "room", _ ("light given back by walls, floor and ceiling"));
  if (scene->daylight && scene->daylight->on)
    say (lines, "daylight", _ ("sun and sky"));
  if (scene->ambient->len > 0)
    say (lines, "ambient", _ ("measured light"));
  if (scene->cables->len > 0)
    say (lines, "cables", _ ("what a long run takes from tungsten lamps"));
  if (scene->fixtures->len > 0)
    say (lines, "colour", _ ("temperature and tint of the light that is read"));
  if (scene->haze_per_m > 0.0)
    say (lines, "haze", _ ("what it takes from beams and scatters"));
  return lines;
}
