/* plot-private.h: what a plot holds; for plot*.c and export*.c alone */
#pragma once

#include "paper/plot.h"
#include "paper/side-column.h"

G_BEGIN_DECLS

struct SqPlot {
  SqScene *scene;
  SqUnits units;
  gboolean mono;
  double dpi;
  SqTagRows tag_rows;

  const SqSheet *sheet;
  SqSheetLayout layout;
  double denominator;
  SqView view; /* of the plan on its page */

  SqReadings *readings;
  SqLightMap *map;         /* (nullable) */
  SqLightOverlay *overlay; /* (nullable) */
  gboolean stops;
  SqPlanReport *report; /* of the plan, for the column and for the overlay's figures */
  double squeeze;       /* of the column, see paper/flow.h */
  int n_pages;
};

/* Finds sheet, scale and view. @margin_mm of paper are kept free round the set, for its labels. */
gboolean sq_plot_place (SqPlot *plot, const SqPlotRequest *request, GError **error);

/* The pages' own parts. */
void sq_plot_draw_frame (const SqPlot *plot, SqDrawing *drawing, int page);
void sq_plot_draw_foot (const SqPlot *plot, SqDrawing *drawing);
void sq_plot_draw_field (const SqPlot *plot, SqDrawing *drawing, SqPlanReport *report);

/* Runs the side column. Returns: the last page it comes to */
int sq_plot_run_column (const SqPlot *plot, SqDrawing *drawing, int page);

/* `1:50`, as all its pages print it. Returns: (transfer full) */
char *sq_plot_scale_text (const SqPlot *plot);

G_END_DECLS
