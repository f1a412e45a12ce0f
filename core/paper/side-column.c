/* side-column.c: the blocks beside the plan, in the order they are read */
#include "paper/side-column.h"

void
sq_side_column_run (SqFlow *flow, const SqSideColumn *column)
{
  sq_figures_block (flow, column);
  sq_light_block (flow, column);
  sq_legend_block (flow, column);
  sq_units_block (flow, column);
  sq_notes_block (flow, column);
  sq_caution_block (flow, column);
  sq_revisions_block (flow, column);
  sq_on_the_day_block (flow);
}
