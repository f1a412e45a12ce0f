/* plot-private.h: what a plot holds; for plot*.c, the pages and export*.c alone */
#pragma once

#include "draw/overlay.h"
#include "paper/page.h"
#include "paper/sheet-choice.h"

G_BEGIN_DECLS

struct SqPlot {
  SqScene *scene;
  SqUnits units;
  double dpi;
  SqTagRows tag_rows;

  SqReadings *readings;
  SqLightMap *map;         /* (nullable): no page has an overlay */
  SqLightOverlay *overlay; /* (nullable): no light on the map */
  gboolean fades;          /* the overlay's tint ends somewhere out of doors */

  GPtrArray *pages; /* SqPlotPage, in the order of their numbers */
  GPtrArray *kept;  /* what pages keep */
  GPtrArray *remarks;
  int n_pages;          /* 0 until all are there */
  const SqSheet *sheet; /* of the first page */
};

static inline const SqPlotPage *
sq_plot_page (const SqPlot *plot, int page)
{
  return (const SqPlotPage *)g_ptr_array_index (plot->pages, page);
}

/* Adds a line to what there is to say of the pages. @line: (transfer full) */
void sq_plot_remark (SqPlot *plot, char *line);

/* For freeing plot->pages and plot->kept. */
void sq_plot_page_free (gpointer page);
void sq_plot_kept_free (gpointer kept);

/* What lies between @least and @most, as a drawing that wants a sheet; words are not counted. */
SqDrawingSize sq_drawing_size (
  const SqPlot *plot, const SqPageWish *wish, SqSheetParts parts, SqPlace least, SqPlace most);

/* SqOverlay of a page. */
int sq_plot_overlay (const SqPlot *plot, const SqPageWish *wish);

/* On what a plan is going to be drawn. Returns: FALSE with one line that says what would do */
gboolean sq_plan_choose_sheet (const SqPlot *plot,
                               const SqPageWish *wish,
                               SqSheetChoice *choice,
                               GError **error);

/* sq_plot_map_light:
 * @wishes: of the plans that print it
 *
 * Makes plot->map, none of a scene without extent: it goes round the set as far as the light does,
 * but no farther than the paper; and says in plot->fades whether it ends there. Returns: FALSE with
 * one line */
gboolean sq_plot_map_light (SqPlot *plot,
                            const SqPageWish *wishes,
                            guint n_wishes,
                            int threads,
                            GCancellable *cancellable,
                            GError **error);

/* The page's own parts. */
void sq_page_draw_frame (const SqPlotPage *page, SqDrawing *drawing);
void sq_page_draw_title (const SqPlot *plot, const SqPlotPage *page, SqDrawing *drawing);

/* `1:50`, as the first page prints it. Returns: (transfer full) */
char *sq_plot_scale_text (const SqPlot *plot);

G_END_DECLS
