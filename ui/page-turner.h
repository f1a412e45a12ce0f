/* page-turner.h: which of several pages is in view, and buttons that turn to another */
#pragma once

#include "sheet-view.h"

G_BEGIN_DECLS

#define SQ_TYPE_PAGE_TURNER (sq_page_turner_get_type ())
G_DECLARE_FINAL_TYPE (SqPageTurner, sq_page_turner, SQ, PAGE_TURNER, GtkWidget)

/* Follows @sheet as it is scrolled in @room. Its buttons are `win.page-previous` and
 * `win.page-next`; it is hidden where there is one page. */
void sq_page_turner_follow (SqPageTurner *turner, SqSheetView *sheet, GtkScrolledWindow *room);

/* After the sheet has taken another plot: shows its first page, or what is in view now. */
void sq_page_turner_begin (SqPageTurner *turner);
void sq_page_turner_look (SqPageTurner *turner);

/* Shows the page @by further on. */
void sq_page_turner_turn (SqPageTurner *turner, int by);

/* From 0. */
int sq_page_turner_get_page (SqPageTurner *turner);

G_END_DECLS
