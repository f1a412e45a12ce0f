/* sheet-view.h: the pages of a plot as they print, one under the other, at any zoom */
#pragma once

#include "paper/plot.h"

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SQ_TYPE_SHEET_VIEW (sq_sheet_view_get_type ())
G_DECLARE_FINAL_TYPE (SqSheetView, sq_sheet_view, SQ, SHEET_VIEW, GtkWidget)

/* Shows @plot (transfer full) from now on; NULL: nothing. */
void sq_sheet_view_take_plot (SqSheetView *view, SqPlot *plot);

/* 1 is true size at 96 pixels an inch; 0 fits the widest page into the room there is. */
void sq_sheet_view_set_zoom (SqSheetView *view, double zoom);

/* The zoom that is shown, also where it was chosen to fit. */
double sq_sheet_view_get_zoom (SqSheetView *view);

int sq_sheet_view_n_pages (SqSheetView *view);

/* How far down @page begins, in pixels; one past the last: where they end. */
double sq_sheet_view_page_top (SqSheetView *view, int page);

G_END_DECLS
