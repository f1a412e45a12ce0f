/* units-table.c: the units by number: those whose tags had no room for everything, or all */
#include "paper/side-column.h"

#include "draw/tag-text.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

#define NUMBER_MM 8.0

/* "LED panel 60 × 30, 40 %, 5600 K, 2.20 m, FILL" */
static char *
unit_text (const SqTagText *tag)
{
  g_autoptr (GString) line = g_string_new (tag->type);
  const char *const more[] = { tag->level, tag->colour, tag->height, _ (tag->role_word) };
  for (guint k = 0; k < G_N_ELEMENTS (more); k++)
    if (*sq_said (more[k]) != '\0')
      g_string_append_printf (line, ", %s", more[k]);
  return g_string_free (g_steal_pointer (&line), FALSE);
}

static void
unit_row (SqFlow *flow, const SqSideColumn *column, const SqFixture *fixture)
{
  g_autoptr (SqTagText) tag = sq_tag_text_new (column->scene, fixture, column->units, 0);
  g_autofree char *text = unit_text (tag);
  SqPaperPoint at;
  if (!sq_flow_beside (flow, text, NUMBER_MM, 0.0, &at))
    return;
  SqType type = sq_flow_type (flow, 700, SQ_INK, SQ_ALIGN_LEFT);
  type.width_mm = NUMBER_MM - 1.0;
  type.one_line = TRUE;
  sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm, at.y_mm + type.cap_mm }, tag->number,
                &type);
}

static int
by_number (gconstpointer a, gconstpointer b)
{
  return sq_unit_number_compare (*(const SqFixture *const *)a, *(const SqFixture *const *)b);
}

/* Those that are drawn. */
static GPtrArray *
all_units (const SqScene *scene)
{
  GPtrArray *units = g_ptr_array_new ();
  for (guint k = 0; k < scene->fixtures->len; k++) {
    SqFixture *fixture = g_ptr_array_index (scene->fixtures, k);
    if (!fixture->common.hidden)
      g_ptr_array_add (units, fixture);
  }
  g_ptr_array_sort (units, by_number);
  return units;
}

static void
run (SqFlow *flow, const SqSideColumn *column, const char *title, const GPtrArray *units)
{
  sq_flow_head (flow, title, 3.0);
  for (guint k = 0; k < units->len; k++)
    unit_row (flow, column, SQ_AT (SqFixture, units, k));
}

/* Whether all units go where the flow stands without beginning a page for them. */
static gboolean
fits_here (const SqFlow *flow, const SqSideColumn *column, const GPtrArray *units)
{
  SqFlow measure = *flow;
  measure.page = -1;
  run (&measure, column, _ ("Units"), units);
  return sq_flow_page (&measure) == sq_flow_page (flow);
}

void
sq_units_block (SqFlow *flow, const SqSideColumn *column)
{
  const double most_share = 0.5;
  const GPtrArray *crowded = column->report->crowded;
  g_autoptr (GPtrArray) all = all_units (column->scene);
  gboolean many = crowded->len > most_share * all->len;
  /* Beside a plan in a single column tags are enough. */
  gboolean roomy = sq_flow_page (flow) > 0 || flow->n_first > 1;
  if (all->len > 0 && (many || (roomy && fits_here (flow, column, all))))
    run (flow, column, _ ("Units"), all);
  else if (crowded->len > 0)
    run (flow, column, _ ("Tags cut short on the plan"), crowded);
}
