/* plan-pages.h: the pages of one plan: a sheet or several, and the words that do not fit beside it
 *
 * For core/paper alone. */
#pragma once

#include "paper/plot-private.h"
#include "paper/tiles.h"

G_BEGIN_DECLS

/* A plan and where it lies; page->data of all its pages. */
typedef struct {
  SqView view; /* of the plan: on its page, or, where it goes over several, on the paper that all of
                * them make up */
  SqTiling tiling;               /* 1 × 1: one sheet */
  gboolean stops;                /* what the overlay says */
  const SqLightOverlay *overlay; /* (nullable) */
  SqPlanReport *report;          /* of the plan, for the words and for the overlay's figures */
  double squeeze;                /* of the words, see paper/flow.h */
  guint first;                   /* of its pages, in plot->pages */
  guint n_sheets;                /* that show the plan; pages of words follow */
} SqPlanPages;

static inline gboolean
sq_plan_is_tiled (const SqPlanPages *plan)
{
  return sq_tiling_count (&plan->tiling) > 1;
}

/* Which of the sheets of @plan @page is, from 0, counted with those left out. */
static inline guint
sq_plan_tile_of (const SqPlot *plot, const SqPlanPages *plan, const SqPlotPage *page)
{
  return sq_tiling_nth (&plan->tiling,
                        (guint)(page->number - sq_plot_page (plot, (int)plan->first)->number));
}

/* The number of the page that shows @tile, which is not left out. */
static inline int
sq_plan_sheet_number (const SqPlot *plot, const SqPlanPages *plan, guint tile)
{
  return sq_plot_page (plot, (int)(plan->first + sq_tiling_rank (&plan->tiling, tile)))->number;
}

/* Finds on which sheets of @plan nothing would be drawn but light: for SqTiling.empty. Where that
 * is so of all, none is left out. */
guint64 sq_plan_empty_tiles (const SqPlot *plot, const SqPlanPages *plan);

/* Draws all of the plan through drawing->view, which is plan->view. @report: (nullable) */
void sq_plan_draw_whole (const SqPlot *plot,
                         const SqPlanPages *plan,
                         SqDrawing *drawing,
                         SqPlanReport *report);

/* Runs the words of @plan; those on @page of them are drawn: 0 those beside the plan, -1 none.
 * Returns: the last page that they come to */
int sq_plan_run_words (const SqPlot *plot, const SqPlanPages *plan, SqDrawing *drawing, int page);

/* What is drawn over sheet @n of a plan on several: match lines, with their letters and the sheets
 * they lead to, and marks to lay over one another. */
void sq_plan_draw_matches (const SqPlot *plot,
                           const SqPlanPages *plan,
                           SqDrawing *drawing,
                           const SqPlotPage *page);

/* Within @box: all sheets in small, the walls on them, @page filled in. */
void sq_plan_draw_key (const SqPlot *plot,
                       const SqPlanPages *plan,
                       SqDrawing *drawing,
                       const SqPlotPage *page,
                       SqPaperBox box);

/* How wide the key is at @height_mm. */
double sq_plan_key_width_mm (const SqPlanPages *plan, double height_mm);

/* Words in the field that say what is missing from the scene. */
void sq_plan_say_what_is_missing (const SqPlot *plot, const SqPlanPages *plan, SqDrawing *drawing);

G_END_DECLS
