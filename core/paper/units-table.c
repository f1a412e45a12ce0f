/* units-table.c: the units whose tags had no room for everything, said in full */
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

void
sq_units_block (SqFlow *flow, const SqSideColumn *column)
{
  const GPtrArray *crowded = column->report->crowded;
  if (crowded->len == 0)
    return;
  sq_flow_head (flow, _ ("Tags cut short on the plan"), 3.0);
  for (guint k = 0; k < crowded->len; k++) {
    const SqFixture *fixture = SQ_AT (SqFixture, crowded, k);
    g_autoptr (SqTagText) tag = sq_tag_text_new (column->scene, fixture, column->units, 0);
    g_autofree char *text = unit_text (tag);
    SqPaperPoint at;
    if (!sq_flow_take (flow, sq_flow_text_height_mm (flow, text, NUMBER_MM), &at))
      continue;
    SqType type = sq_flow_type (flow, 700, SQ_INK, SQ_ALIGN_LEFT);
    type.width_mm = NUMBER_MM - 1.0;
    type.one_line = TRUE;
    sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm, at.y_mm + type.cap_mm }, tag->number,
                  &type);
    type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
    type.width_mm = sq_flow_width_mm (flow) - NUMBER_MM;
    sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm + NUMBER_MM, at.y_mm + type.cap_mm }, text,
                  &type);
  }
}
