/* side-column.c: the blocks beside the plan, in the order they are read */
#include "paper/side-column.h"

/* How much of a column the cautions take, with the gap above them. */
static double
caution_height_mm (const SqFlow *flow, const SqSideColumn *column)
{
  SqFlow measure = *flow;
  measure.page = -1;
  sq_caution_block (&measure, column);
  return measure.y_mm + SQ_FLOW_BETWEEN_MM;
}

/* At the foot of the first page, where room was kept. */
static void
draw_caution_at_foot (const SqFlow *flow, const SqSideColumn *column)
{
  SqFlow foot = *flow;
  foot.column = flow->n_first - 1;
  foot.y_mm = 0.0;
  foot.y_mm = sq_flow_left_mm (&foot);
  foot.kept_mm = 0.0;
  sq_caution_block (&foot, column);
}

/* Of two columns beside a plan the first tells of the light and the second of its lamps. What is
 * left of the emptier one is for the pencil. */
static void
end_two_columns (SqFlow *flow, const SqSideColumn *column)
{
  SqFlow first = *flow;
  sq_flow_next_column (flow);
  sq_units_block (flow, column);
  gboolean is_emptier =
    sq_flow_page (flow) == 0 && sq_flow_left_mm (flow) > sq_flow_left_mm (&first);
  if (is_emptier || sq_flow_page (flow) > 0)
    sq_on_the_day_block (flow);
  else
    sq_on_the_day_block (&first);
}

void
sq_side_column_run (SqFlow *flow, const SqSideColumn *column)
{
  if (flow->n_first > 0)
    flow->kept_mm = caution_height_mm (flow, column);
  sq_figures_block (flow, column);
  sq_light_block (flow, column);
  sq_legend_block (flow, column);

  gboolean is_still_first = flow->n_first == 0 || sq_flow_page (flow) == 0;
  if (!is_still_first)
    draw_caution_at_foot (flow, column);
  flow->kept_mm = 0.0;
  if (is_still_first)
    sq_caution_block (flow, column);
  sq_off_plan_block (flow, column);
  sq_notes_block (flow, column);
  sq_revisions_block (flow, column);
  if (flow->n_first > 1 && flow->column == 0) {
    end_two_columns (flow, column);
  } else {
    sq_units_block (flow, column);
    sq_on_the_day_block (flow);
  }
}
