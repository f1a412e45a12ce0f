/* plan-use.c: which marks a plan uses */
#include "draw/plan-use.h"

#include "draw/beam-angles.h"
#include "draw/ink.h"
#include "draw/lamp-symbol.h"
#include "draw/tag-text.h"

int
sq_unit_number_compare (const SqFixture *a, const SqFixture *b)
{
  const char *one = sq_label_or_id (a->number, a->id);
  const char *other = sq_label_or_id (b->number, b->id);
  gboolean one_counts = g_ascii_isdigit (*one), other_counts = g_ascii_isdigit (*other);
  if (one_counts != other_counts)
    return one_counts ? -1 : 1;
  if (one_counts) {
    char *one_rest, *other_rest;
    guint64 x = g_ascii_strtoull (one, &one_rest, 10),
            y = g_ascii_strtoull (other, &other_rest, 10);
    if (x != y)
      return x < y ? -1 : 1;
    one = one_rest;
    other = other_rest;
  }
  return strcmp (one, other);
}

static int
by_number (gconstpointer a, gconstpointer b)
{
  return sq_unit_number_compare (*(const SqFixture *const *)a, *(const SqFixture *const *)b);
}

static void
look_at_fixtures (SqPlanUse *use, const SqScene *scene)
{
  static const SqView any = { .mm_per_m = 20.0 };
  gboolean seen[SQ_SOURCE_FLAME + 1][SQ_OPTICS_BULB + 1] = { { FALSE } };
  g_autoptr (GPtrArray) sorted = g_ptr_array_new ();

  for (guint i = 0; i < scene->fixtures->len; i++)
    if (!SQ_AT (SqFixture, scene->fixtures, i)->common.hidden)
      g_ptr_array_add (sorted, g_ptr_array_index (scene->fixtures, i));
  g_ptr_array_sort (sorted, by_number);

  for (guint i = 0; i < sorted->len; i++) {
    SqFixture *fixture = g_ptr_array_index (sorted, i);
    const SqClass *lamp_class = sq_scene_class (scene, fixture->class_id);
    SqLamp lamp = sq_lamp_of_fixture (scene, fixture, &any);
    SqLampForm form = sq_lamp_size (&any, &lamp).form;

    if (!seen[lamp_class->source][lamp_class->optics])
      g_ptr_array_add (use->lamps, fixture);
    seen[lamp_class->source][lamp_class->optics] = TRUE;
    use->mounts |= 1u << sq_mount_glyph (fixture->mount);
    use->roles |= 1u << fixture->role;
    use->points_down = use->points_down || form == SQ_FORM_DOWN;
    use->points_up = use->points_up || form == SQ_FORM_UP;
    use->off = use->off || !fixture->on;
    use->changed = use->changed || sq_look_changes_fixture (scene, fixture->id);
    if (fixture->on && form == SQ_FORM_AIMED) {
      use->ticks = TRUE;
      use->beams = use->beams || sq_fixture_is_hard (scene, fixture);
    }
    for (guint j = 0; j < fixture->modifiers->len; j++)
      use->modifiers |= 1u << SQ_AT (SqModifier, fixture->modifiers, j)->kind;
  }
}

void
sq_plan_use_init (SqPlanUse *use, const SqScene *scene)
{
  *use = (SqPlanUse){ .lamps = g_ptr_array_new () };
  look_at_fixtures (use, scene);
  for (guint i = 0; i < scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, scene->panels, i);
    if (!panel->common.hidden && panel->set)
      use->panels |= 1u << panel->kind;
  }
  for (guint i = 0; i < scene->supplies->len; i++) {
    const SqSupply *supply = SQ_AT (SqSupply, scene->supplies, i);
    if (!supply->common.hidden && sq_place_given (supply->at))
      use->supplies |= 1u << supply->kind;
  }
  for (guint i = 0; i < scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
    use->people = use->people || !mark->common.hidden;
    use->walks = use->walks || (!mark->common.hidden && mark->path->len > 0);
  }
  for (guint i = 0; i < scene->cameras->len; i++)
    use->cameras = use->cameras || !SQ_AT (SqCamera, scene->cameras, i)->common.hidden;
  for (guint i = 0; i < scene->probes->len; i++)
    use->probes = use->probes || !SQ_AT (SqProbe, scene->probes, i)->common.hidden;
  for (guint i = 0; i < scene->cables->len; i++)
    use->cables = use->cables || !SQ_AT (SqCable, scene->cables, i)->common.hidden;
  for (guint i = 0; i < scene->walls->len; i++) {
    const SqWall *wall = SQ_AT (SqWall, scene->walls, i);
    use->wild_walls = use->wild_walls || (wall->wild && !wall->common.hidden);
  }
  if (scene->daylight != NULL && scene->daylight->on)
    use->roles |= 1u << SQ_LINE_DAYLIGHT;
}

void
sq_plan_use_clear (SqPlanUse *use)
{
  g_clear_pointer (&use->lamps, g_ptr_array_unref);
}
