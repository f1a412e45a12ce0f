/* cautions.c: what can hurt, in words; nothing of it is computed: those who know and may must look
 */
#include "draw/point-symbols.h"
#include "paper/side-column.h"

#include <glib/gi18n-lib.h>

#define CAUTION_SIDE_MM 4.8
#define INDENT_MM 6.4
#define MOST_UNITS 24 /* the rest is "…": the tags tell them too */

typedef gboolean IsOne (const SqScene *scene, const SqFixture *fixture);

/* A section's cautions are of the lamps that are drawn on it. */
static gboolean
is_shown (const SqSideColumn *column, const SqFixture *fixture)
{
  const SqSection *section = column->section;
  return section == NULL || fixture == section->light || sq_section_shows_lamp (section, fixture);
}

/* "Units 1, 2" of those that @is_one says; NULL if there is none. */
static char *
units_that (const SqSideColumn *column, IsOne *is_one)
{
  const SqScene *scene = column->scene;
  g_autoptr (GPtrArray) found = g_ptr_array_new ();
  for (guint k = 0; k < scene->fixtures->len; k++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, k);
    if (is_shown (column, fixture) && is_one (scene, fixture))
      g_ptr_array_add (found, (gpointer)fixture);
  }
  if (found->len == 0)
    return NULL;
  g_autoptr (GString) text = g_string_new (found->len == 1 ? _ ("Unit") : _ ("Units"));
  for (guint k = 0; k < MIN (found->len, MOST_UNITS); k++) {
    const SqFixture *fixture = SQ_AT (SqFixture, found, k);
    g_autofree char *number = sq_flow_cut (sq_label_or_id (fixture->number, fixture->id));
    g_string_append_printf (text, "%s%s", k > 0 ? ", " : " ", number);
  }
  if (found->len > MOST_UNITS)
    g_string_append (text, " …");
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static gboolean
is_discharge (const SqScene *scene, const SqFixture *fixture)
{
  return sq_scene_class (scene, fixture->class_id)->source == SQ_SOURCE_DISCHARGE;
}

static gboolean
is_flame (const SqScene *scene, const SqFixture *fixture)
{
  return sq_scene_class (scene, fixture->class_id)->source == SQ_SOURCE_FLAME;
}

static gboolean
is_hung (const SqScene *scene, const SqFixture *fixture)
{
  const double over_heads_m = 2.1;
  return fixture->mount == SQ_MOUNT_CEILING || fixture->mount == SQ_MOUNT_PIPE ||
         (fixture->mount == SQ_MOUNT_WALL && fixture->at.z_m > over_heads_m);
}

/* Held up from the floor, by something that can fall over. */
static gboolean
is_raised (const SqScene *scene, const SqFixture *fixture)
{
  const double tall_stand_m = 3.0;
  return fixture->mount == SQ_MOUNT_LIFT || fixture->mount == SQ_MOUNT_BOOM ||
         (fixture->mount == SQ_MOUNT_STAND && fixture->at.z_m > tall_stand_m);
}

static gboolean
has_generator (const SqScene *scene)
{
  for (guint k = 0; k < scene->supplies->len; k++)
    if (SQ_AT (SqSupply, scene->supplies, k)->kind == SQ_SUPPLY_GENERATOR)
      return TRUE;
  return FALSE;
}

/* "Units 1, 2 overhead: …" if any unit is so. */
static gboolean
add_for_units (GPtrArray *lines, const SqSideColumn *column, IsOne *is_one, const char *what)
{
  g_autofree char *units = units_that (column, is_one);
  if (units == NULL)
    return FALSE;
  g_ptr_array_add (lines, g_strconcat (units, " ", what, NULL));
  return TRUE;
}

static GPtrArray *
caution_lines (const SqSideColumn *column)
{
  const SqScene *scene = column->scene;
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (lines,
                   g_strdup (_ ("Mains and distribution: to local code, by a licensed person.")));
  if (column->section == NULL && has_generator (scene)) /* it stands on the plan */
    g_ptr_array_add (
      lines, g_strdup (_ ("Generator: earth it, keep its exhaust from people and openings.")));
  g_ptr_array_add (lines,
                   g_strdup (_ ("Lamps run hot: keep cloth, gel and scenery clear of them.")));
  /* Translators: "Units 5, 6" stands before each of these */
  if (!add_for_units (lines, column, is_hung,
                      _ ("overhead: a safety bond on each and all that hangs on it; rigging "
                         "to local code, by a licensed person.")))
    g_ptr_array_add (
      lines, g_strdup (_ ("Rigging overhead: safety bonds; to local code, by a licensed person.")));
  add_for_units (lines, column, is_raised,
                 _ ("on lifts, booms or tall stands: ballast, a safety bond, nobody under them; "
                    "lower them in wind."));
  add_for_units (lines, column, is_discharge,
                 _ ("discharge, UV: safety glass in, keep your distance."));
  add_for_units (lines, column, is_flame, _ ("open flame: fire watch, extinguisher."));
  if (scene->haze_per_m > 0.0)
    g_ptr_array_add (
      lines, g_strdup (_ ("Haze: ventilate, keep exposure within limits, tell everybody.")));
  return lines;
}

/* In each column that they run through the mark stands beside the first line. */
void
sq_caution_block (SqFlow *flow, const SqSideColumn *column)
{
  g_autoptr (GPtrArray) lines = caution_lines (column);
  guint marked = G_MAXUINT;
  sq_flow_head (flow, _ ("Caution"), 12.0);
  for (guint k = 0; k < lines->len; k++) {
    SqPaperPoint at;
    gboolean drawn = sq_flow_beside (flow, g_ptr_array_index (lines, k), INDENT_MM, 0.0, &at);
    if (drawn && flow->column != marked)
      sq_draw_caution_mark (flow->drawing, (SqPaperPoint){ at.x_mm + CAUTION_SIDE_MM / 2.0,
                                                           at.y_mm + SQ_TYPE_SMALL / 2.0 });
    marked = flow->column;
  }
}
