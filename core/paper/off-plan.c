/* off-plan.c: what feeds the set and stands nowhere on the plan, in words */
#include "paper/side-column.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

/* A page is no archive: past these the rest is counted. */
#define MOST_SUPPLIES 40
#define MOST_FED 24

static gboolean
is_off_plan (const SqSupply *supply)
{
  return !supply->common.hidden && isnan (supply->at.x_m);
}

/* "Generator 110 kVA", or "G1" where it has no name, with its rating where that is known. */
static char *
name_text (const SqSupply *supply)
{
  const char *name = sq_label_or_id (supply->label, supply->id);
  if (!(supply->rating_a > 0.0))
    return g_strdup (name);
  g_autofree char *amps = sq_quantity_format (supply->rating_a, SQ_CURRENT, SQ_METRIC);
  static const char *const systems[] = {
    [SQ_SYSTEM_SINGLE] = "", [SQ_SYSTEM_SPLIT] = " split", [SQ_SYSTEM_THREE] = " 3~"
  };
  return g_strdup_printf ("%s, %s%s", name, amps, systems[CLAMP (supply->system, 0, 2)]);
}

static void
add_fed (GString *text, guint *n, const char *name)
{
  if (*n < MOST_FED)
    g_string_append_printf (text, "%s%s", *n > 0 ? ", " : "", name);
  else if (*n == MOST_FED)
    g_string_append (text, " …");
  ++*n;
}

/* Supplies and lamps that hang on it, by name. */
static char *
fed_text (const SqScene *scene, const SqSupply *supply)
{
  g_autoptr (GString) text = g_string_new (NULL);
  guint n = 0;
  for (guint k = 0; k < scene->supplies->len; k++) {
    const SqSupply *other = SQ_AT (SqSupply, scene->supplies, k);
    if (g_strcmp0 (other->fed_from, supply->id) == 0)
      add_fed (text, &n, sq_label_or_id (other->label, other->id));
  }
  for (guint k = 0; k < scene->fixtures->len; k++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, k);
    if (g_strcmp0 (fixture->supply, supply->id) == 0)
      add_fed (text, &n, sq_label_or_id (fixture->number, fixture->id));
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static char *
supply_text (const SqScene *scene, const SqSupply *supply)
{
  g_autofree char *name = name_text (supply), *fed = fed_text (scene, supply);
  g_autoptr (GString) text = g_string_new (name);
  if (*fed != '\0') {
    g_string_append (text, "; ");
    /* Translators: %s is a list of boxes and unit numbers */
    g_string_append_printf (text, _ ("feeds %s"), fed);
  }
  g_string_append_c (text, '.');
  if (*sq_said (supply->common.note) != '\0')
    g_string_append_printf (text, " %s", supply->common.note);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

void
sq_off_plan_block (SqFlow *flow, const SqSideColumn *column)
{
  const double least_mm = 6.0;
  const SqScene *scene = column->scene;
  guint n = 0;
  for (guint k = 0; k < scene->supplies->len; k++) {
    const SqSupply *supply = SQ_AT (SqSupply, scene->supplies, k);
    if (!is_off_plan (supply) || n++ >= MOST_SUPPLIES)
      continue;
    if (n == 1)
      sq_flow_head (flow, _ ("Supplies off the plan"), least_mm);
    g_autofree char *text = supply_text (scene, supply);
    sq_flow_text (flow, text, 0.0, SQ_INK);
  }
  if (n > MOST_SUPPLIES) {
    g_autofree char *more =
      g_strdup_printf (_ ("and %u more in the scene file"), n - MOST_SUPPLIES);
    sq_flow_text (flow, more, 0.0, SQ_MID);
  }
}
