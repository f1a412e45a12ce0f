/* section-gather.c: what of the scene a section shows, and how far it reaches */
#include "draw/section-grip.h"
#include "draw/section-lamp.h"
#include "draw/section-lit.h"
#include "draw/section.h"
#include "light/obstacles.h"

#include <glib/gi18n-lib.h>

/* A shadow longer than this does not stretch the drawing. */
#define MOST_SHADOW_M 8.0

/* A wall that stands no further off at either end is taken in. */
#define NEXT_WALL_M 5.0

/* Round what stands at the end of the drawing. */
#define ROUND_M 0.5

/* Half of the base of a lift. */
#define LIFT_M 0.6

/* What a lamp's body and its clamp take over the lens. */
#define OVER_LAMP_M 0.4

/* A stretch of the cut that grows. */
static void
take (SqSectionSet *set, SqPlace place, double round_m)
{
  set->least.x_m = MIN (set->least.x_m, place.x_m - round_m);
  set->most.x_m = MAX (set->most.x_m, place.x_m + round_m);
  set->most.y_m = MAX (set->most.y_m, place.y_m);
  set->least.y_m = MIN (set->least.y_m, place.y_m);
}

static void
reach_of (const SqCutPart *part, SqPlace *least, SqPlace *most)
{
  *least = *most = part->corner[0];
  for (guint i = 1; i < part->n; i++) {
    least->x_m = MIN (least->x_m, part->corner[i].x_m);
    least->y_m = MIN (least->y_m, part->corner[i].y_m);
    most->x_m = MAX (most->x_m, part->corner[i].x_m);
    most->y_m = MAX (most->y_m, part->corner[i].y_m);
  }
}

/* To the next wall at each end, through it. */
static void
take_next_walls (SqSection *section)
{
  SqSectionSet *set = &section->set;
  double left = -G_MAXDOUBLE, right = G_MAXDOUBLE, left_end = 0.0, right_end = 0.0;
  for (guint i = 0; i < section->parts->len; i++) {
    const SqCutPart *part = &g_array_index (section->parts, SqCutPart, i);
    SqPlace least, most;
    if (part->owner->kind != &sq_wall_kind || part->sheet || !sq_section_is_drawn (part->owner))
      continue;
    reach_of (part, &least, &most);
    if (most.x_m > left && most.x_m <= set->least.x_m + ROUND_M) {
      left = most.x_m;
      left_end = least.x_m;
    }
    if (least.x_m < right && least.x_m >= set->most.x_m - ROUND_M) {
      right = least.x_m;
      right_end = most.x_m;
    }
  }
  if (left > set->least.x_m - NEXT_WALL_M)
    set->least.x_m = MIN (left_end - 0.12, set->least.x_m);
  if (right < set->most.x_m + NEXT_WALL_M)
    set->most.x_m = MAX (right_end + 0.12, set->most.x_m);
}

/* As high, and in a pit as low, as what is built there. */
static void
take_heights (SqSection *section)
{
  SqSectionSet *set = &section->set;
  double ceiling = section->scene->room->ceiling_height_m;
  for (guint i = 0; i < section->parts->len; i++) {
    const SqCutPart *part = &g_array_index (section->parts, SqCutPart, i);
    SqPlace least, most;
    reach_of (part, &least, &most);
    if (!sq_section_is_drawn (part->owner) || most.x_m <= set->least.x_m ||
        least.x_m >= set->most.x_m)
      continue;
    set->least.y_m = MIN (set->least.y_m, least.y_m);
    set->most.y_m = MAX (set->most.y_m, most.y_m);
  }
  for (guint i = 0; i < section->scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, section->scene->fixtures, i);
    if (!sq_section_shows_lamp (section, fixture))
      continue;
    set->most.y_m = MAX (set->most.y_m, fixture->at.z_m + OVER_LAMP_M);
    if (fixture->at.z_m < 0.0)
      set->least.y_m = MIN (set->least.y_m, fixture->at.z_m - OVER_LAMP_M);
  }
  if (!isnan (ceiling))
    set->most.y_m = MAX (set->most.y_m, ceiling);
}

/* What must be seen: the light, what holds it, what it is aimed at, the subject and its shadow. */
static void
find_extent (SqSection *section)
{
  const SqFixture *light = section->light;
  SqSectionSet *set = &section->set;
  double hang = sq_hang_height_m (section->scene, light);
  double legs = sq_stand_radius_m (section->scene, light->mount, light->stand);
  set->least = (SqPlace){ 0.0, -SQ_SECTION_FLOOR_M };
  set->most = (SqPlace){ 0.0, 0.0 };
  take (set, section->way.from, MAX (legs, light->mount == SQ_MOUNT_LIFT ? LIFT_M : ROUND_M) + 0.1);
  take (set, (SqPlace){ 0.0, light->at.z_m + OVER_LAMP_M }, 0.0);
  take (set, section->way.aim, ROUND_M);
  take (set, section->way.end, 0.0);
  if (light->at.z_m < 0.0)
    take (set, (SqPlace){ 0.0, light->at.z_m - OVER_LAMP_M }, 0.0);
  if (!isnan (hang))
    take (set, (SqPlace){ 0.0, hang + 0.1 }, 0.0);
  if (section->subject != NULL) {
    SqPlace foot = sq_cut_place (&section->plane, sq_mark_face (section->subject));
    foot.y_m = section->subject->floor_m + section->subject->stature_m;
    take (set, foot, ROUND_M + 0.2);
    foot.y_m = section->subject->floor_m;
    take (set, foot, ROUND_M + 0.2);
  }
  if (section->shadows->len > 0) {
    const SqSectionShadow *shadow = &g_array_index (section->shadows, SqSectionShadow, 0);
    for (guint i = 0; i < shadow->stretches->len; i++) {
      const SqShadowStretch *stretch = &g_array_index (shadow->stretches, SqShadowStretch, i);
      if (fabs (stretch->to.x_m - shadow->foot.x_m) < MOST_SHADOW_M)
        take (set, stretch->to, 0.3);
    }
  }
  for (guint i = 0; i < section->scene->marks->len; i++) { /* nobody at the end is cut in two */
    const SqMark *mark = SQ_AT (SqMark, section->scene->marks, i);
    SqPoint face = sq_mark_face (mark);
    SqPlace place = sq_cut_place (&section->plane, face);
    if (!mark->common.hidden && fabs (sq_cut_off_m (&section->plane, face)) <= set->near_m &&
        place.x_m > set->least.x_m - ROUND_M && place.x_m < set->most.x_m + ROUND_M)
      take (set, place, ROUND_M + 0.2);
  }
  take_next_walls (section);
  take_heights (section);
}

/* Whom it is aimed at; else the nearest of those that the plane goes through, on its lit side. */
static const SqMark *
find_subject (const SqSection *section)
{
  const SqMark *nearest = NULL;
  double least = G_MAXDOUBLE;
  if (section->plane.to != NULL && section->plane.to->kind == &sq_mark_kind) {
    const SqMark *mark = (const SqMark *)section->plane.to;
    return mark->common.hidden ? NULL : mark;
  }
  for (guint i = 0; i < section->scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, section->scene->marks, i);
    double along = sq_cut_place (&section->plane, sq_mark_face (mark)).x_m;
    if (!mark->common.hidden && sq_cut_goes_through (section->parts, &mark->thing) && along > 0.0 &&
        along < least) {
      least = along;
      nearest = mark;
    }
  }
  return nearest;
}

static void
clear_shadow (gpointer shadow)
{
  sq_section_shadow_clear (shadow);
}

static void
add_shadow (SqSection *section, const SqMark *mark)
{
  SqSectionShadow shadow;
  if (section->way.framed_m == 0.0 && !sq_section_shines_on (section->scene, section->light, mark))
    return;
  if (sq_section_shadow (&section->way, section->parts, &section->plane, mark, &shadow))
    g_array_append_val (section->shadows, shadow);
}

static void
find_shadows (SqSection *section)
{
  const SqSectionSet *set = &section->set;
  if (section->subject != NULL && section->light->on &&
      sq_cut_goes_through (section->parts, &section->subject->thing))
    add_shadow (section, section->subject);
  find_extent (section);
  for (guint i = 0; i < section->scene->marks->len && section->light->on; i++) {
    const SqMark *mark = SQ_AT (SqMark, section->scene->marks, i);
    double along = sq_cut_place (&section->plane, sq_mark_face (mark)).x_m;
    if (mark != section->subject && !mark->common.hidden && along > set->least.x_m &&
        along < set->most.x_m && sq_cut_goes_through (section->parts, &mark->thing))
      add_shadow (section, mark);
  }
}

SqSection *
sq_section_new (const SqScene *scene, const SqReadings *readings, const SqFixture *light)
{
  SqSection *section = g_new0 (SqSection, 1);
  section->scene = sq_scene_ref (scene);
  section->readings = readings;
  section->light = light;
  section->plane = sq_cut_plane (scene, light);
  section->obstacles = sq_obstacles_new (scene);
  section->parts = sq_cut_parts (&section->plane, section->obstacles);
  section->way = sq_section_throw (scene, light, &section->plane, section->obstacles);
  section->shadows = g_array_new (FALSE, FALSE, sizeof (SqSectionShadow));
  g_array_set_clear_func (section->shadows, clear_shadow);
  section->set = (SqSectionSet){ .scene = section->scene,
                                 .plane = &section->plane,
                                 .parts = section->parts,
                                 .obstacles = section->obstacles,
                                 .near_m = SQ_SECTION_NEAR_M };
  section->subject = find_subject (section);
  find_shadows (section);
  return section;
}

void
sq_section_free (SqSection *section)
{
  if (section == NULL)
    return;
  g_array_unref (section->shadows);
  g_array_unref (section->parts);
  g_array_unref (section->obstacles);
  sq_scene_unref (section->scene);
  g_free (section);
}

double
sq_section_lux (const SqSection *section, const SqMark *mark)
{
  const SqReadings *readings = section->readings;
  for (guint i = 0; readings != NULL && i < readings->marks->len; i++) {
    const SqMarkReading *reading = SQ_AT (SqMarkReading, readings->marks, i);
    for (guint k = 0; g_str_equal (reading->mark->id, mark->id) && k < reading->rows->len; k++) {
      const SqReadingRow *row = &g_array_index (reading->rows, SqReadingRow, k);
      if (g_strcmp0 (row->id, section->light->id) == 0)
        return row->lux;
    }
  }
  return NAN;
}

static gboolean
is_within (const SqSection *section, SqPoint point)
{
  if (sq_section_is_in_wall (&section->set, sq_cut_place (&section->plane, point)))
    return FALSE;
  double along = sq_cut_place (&section->plane, point).x_m;
  return along >= section->set.least.x_m && along <= section->set.most.x_m &&
         fabs (sq_cut_off_m (&section->plane, point)) <= section->set.near_m;
}

gboolean
sq_section_on_cut (const SqSection *section, const SqMark *mark)
{
  double along = sq_cut_place (&section->plane, sq_mark_face (mark)).x_m;
  return along >= section->set.least.x_m && along <= section->set.most.x_m &&
         sq_cut_goes_through (section->parts, &mark->thing);
}

gboolean
sq_section_shows_mark (const SqSection *section, const SqMark *mark)
{
  return !mark->common.hidden &&
         (sq_section_on_cut (section, mark) || is_within (section, sq_mark_face (mark)));
}

gboolean
sq_section_shows_lamp (const SqSection *section, const SqFixture *fixture)
{
  return fixture == section->light || (!fixture->common.hidden && is_within (section, fixture->at));
}

gboolean
sq_section_shows_camera (const SqSection *section, const SqCamera *camera)
{
  return !camera->common.hidden && is_within (section, camera->at);
}

char *
sq_section_title (const SqSection *section)
{
  const char *number = sq_label_or_id (section->light->number, section->light->id);
  const SqThing *to = section->plane.to;
  if (section->plane.by == SQ_CUT_BY_PAGE)
    return g_strdup (number);
  if (to != NULL && to->kind == &sq_mark_kind) {
    const char *letter = sq_label_or_id (((const SqMark *)to)->label, ((const SqMark *)to)->id);
    /* Translators: a section through light 1 and person A */
    return g_strdup_printf (_ ("%s to %s"), number, letter);
  }
  /* Translators: a section through light 1 along its own aim */
  return g_strdup_printf (_ ("%s, along its throw"), number);
}
