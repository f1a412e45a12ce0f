/* page.h: a page of a plot: what it shows, on which sheet, at which scale, and who draws it
 *
 * For core/paper alone. A plot is a list of pages. Each kind of page has one function that adds its
 * pages to the list (sq_page_makers[]); border, title block and numbers then come by themselves. */
#pragma once

#include "paper/plot.h"

G_BEGIN_DECLS

typedef struct SqPlotPage SqPlotPage;

/* Draws what stands within the frame of @page, in millimetres from the sheet's top left corner;
 * drawing->view is page->view, its layer SQ_LAYER_SHEET. Called any number of times, always with
 * the same result. */
typedef void SqPageDraw (const SqPlot *plot, const SqPlotPage *page, SqDrawing *drawing);

struct SqPlotPage {
  int kind;             /* SqPageKind */
  char *name;           /* as a list of pages says it: `Plan`, `Section through 5` */
  gboolean names_title; /* the title block says the name in place of the drawing's title */
  char *part;           /* (nullable): the title block says this after the title */

  const SqSheet *sheet;
  SqSheetLayout layout;
  double denominator; /* 0: nothing on it is to scale */
  SqView view;        /* clip, ground, units and ink hold on every page; scale and origin where
                       * something is to scale */
  SqPageDraw *draw;
  gconstpointer data; /* the page's own, see sq_plot_keep() */

  int number; /* from 1, through all pages of the plot; 0 until all are there */
};

/* sq_plot_add_page:
 * @wish: what is asked for; its kind and ink become the page's
 * @name: (transfer full)
 *
 * Appends a page; it needs a sheet next: sq_page_place() or sq_page_take_sheet().
 * Returns: (transfer none) */
SqPlotPage *sq_plot_add_page (SqPlot *plot, const SqPageWish *wish, char *name, SqPageDraw *draw);

/* Keeps @data until the plot is freed. Returns: @data, for page->data */
gpointer sq_plot_keep (SqPlot *plot, gpointer data, GDestroyNotify free_data);

/* sq_page_place:
 * @page: whose sheet, layout, denominator and view are filled in
 * @wish: its sheet, turn and scale hold. A sheet that is not given is that of the plot's first page
 *   where the drawing fits it, else the best; a scale that is not given is the largest usual one
 * @parts: what besides the drawing needs room
 * @least, @most: what must lie on the paper, in metres: x to the right, y up, whatever they mean
 *
 * The drawing comes to stand in the middle of the field. Returns: FALSE with one line that says
 * what would do */
gboolean sq_page_place (const SqPlot *plot,
                        SqPlotPage *page,
                        const SqPageWish *wish,
                        SqSheetParts parts,
                        SqPlace least,
                        SqPlace most,
                        GError **error);

/* A page that is not to scale, or that knows its scale already. */
void sq_page_take_sheet (SqPlotPage *page,
                         const SqSheet *sheet,
                         gboolean portrait,
                         SqSheetParts parts);

/* A scale, with what lies between @least and @most in the middle of the field. */
void sq_page_take_scale (SqPlotPage *page, double denominator, SqPlace least, SqPlace most);

/* The foot of a page to scale: scale bar and the words about it; with SQ_FOOT_NORTH north and sun.
 * Every page that is to scale has one. */
typedef enum {
  SQ_FOOT_BAR = 0,
  SQ_FOOT_NORTH = 1 << 0,
} SqFootParts;
void sq_page_draw_foot (const SqPlot *plot,
                        const SqPlotPage *page,
                        SqDrawing *drawing,
                        SqFootParts parts);

/* `1:50`; nothing where nothing is to scale. Returns: (transfer full) */
char *sq_page_scale_text (const SqPlotPage *page);

/* SqPageMaker:
 * @wish: what is asked for; what it leaves open the request has filled in, so that only an overlay
 *   of -1 is still the scene's
 *
 * Appends the pages of a kind. Readings are there already. Returns: FALSE with one line */
typedef gboolean SqPageMaker (SqPlot *plot,
                              const SqPageWish *wish,
                              GCancellable *cancellable,
                              GError **error);

/* By SqPageKind; NULL for kinds that cannot be drawn yet. In plot.c: a row each. */
extern SqPageMaker *const sq_page_makers[];

SqPageMaker sq_make_plan_pages, sq_make_section_pages;

G_END_DECLS
