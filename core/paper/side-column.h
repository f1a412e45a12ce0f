/* side-column.h: what stands beside the plan: figures, ramp, legend, notes, cautions, revisions */
#pragma once

#include "draw/overlay.h"
#include "draw/plan.h"
#include "draw/section.h"
#include "paper/flow.h"

G_BEGIN_DECLS

/* What there is to tell; all borrowed. */
typedef struct {
  const SqScene *scene; /* in its look */
  const SqReadings *readings;
  const SqLightMap *map;         /* (nullable): no overlay */
  const SqLightOverlay *overlay; /* (nullable): with @map */
  gboolean stops;                /* colours of the overlay */
  gboolean fades;                /* its tint ends out of doors */
  const SqPlanReport *report;    /* of the plan as it was drawn */
  const SqSection *section;      /* (nullable): what is drawn, where it is no plan */
  SqUnits units;
} SqSideColumn;

/* Runs all blocks through @flow. Cautions stand on the first page, whatever runs on to the next:
 * where there are columns beside the plan, room is kept for them. */
void sq_side_column_run (SqFlow *flow, const SqSideColumn *column);

/* The blocks. One that has nothing to say takes no room. */
void sq_figures_block (SqFlow *flow, const SqSideColumn *column);
void sq_light_block (SqFlow *flow, const SqSideColumn *column);
void sq_legend_block (SqFlow *flow, const SqSideColumn *column);
void sq_caution_block (SqFlow *flow, const SqSideColumn *column);
void sq_off_plan_block (SqFlow *flow, const SqSideColumn *column); /* supplies that have no place */
void sq_notes_block (SqFlow *flow, const SqSideColumn *column);
void sq_revisions_block (SqFlow *flow, const SqSideColumn *column);

/* Units by number: all of them where there is room to spare or most tags were cut short, else those
 * whose tags were cut short. */
void sq_units_block (SqFlow *flow, const SqSideColumn *column);

/* Lines for the pencil: to the end of the column beside a plan, to the end of a page of words; no
 * page is begun for them. */
void sq_on_the_day_block (SqFlow *flow);

G_END_DECLS
