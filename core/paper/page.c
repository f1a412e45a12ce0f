/* page.c: pages added to a plot, and a drawing placed on one */
#include "paper/page.h"

#include "paper/plot-private.h"
#include "paper/scale.h"
#include "paper/sheet-choice.h"

#define LABEL_MARGIN_MM 14.0 /* kept free round a drawing, where we choose the scale */
#define LEAST_MARGIN_MM 5.0  /* and where it is asked for */
#define LEAST_SIDE_M 1.0     /* what is smaller is drawn as if it were so large */

typedef struct {
  gpointer data;
  GDestroyNotify free_data;
} Kept;

void
sq_plot_kept_free (gpointer data)
{
  Kept *kept = data;
  kept->free_data (kept->data);
  g_free (kept);
}

gpointer
sq_plot_keep (SqPlot *plot, gpointer data, GDestroyNotify free_data)
{
  Kept *kept = g_new (Kept, 1);
  *kept = (Kept){ data, free_data };
  g_ptr_array_add (plot->kept, kept);
  return data;
}

void
sq_plot_page_free (gpointer data)
{
  SqPlotPage *page = data;
  g_free (page->name);
  g_free (page->part);
  g_free (page);
}

SqPlotPage *
sq_plot_add_page (SqPlot *plot, const SqPageWish *wish, char *name, SqPageDraw *draw)
{
  SqPlotPage *page = g_new0 (SqPlotPage, 1);
  page->kind = wish->kind;
  page->name = name;
  page->draw = draw;
  page->view = (SqView){ .ground = SQ_GROUND_PAPER, .units = plot->units, .mono = wish->mono };
  g_ptr_array_add (plot->pages, page);
  return page;
}

void
sq_page_take_sheet (SqPlotPage *page, const SqSheet *sheet, gboolean portrait, SqSheetParts parts)
{
  page->sheet = sheet;
  sq_sheet_lay_out (sheet, portrait, parts, &page->layout);
  page->view.clip = page->layout.field;
}

SqDrawingSize
sq_drawing_size (
  const SqPlot *plot, const SqPageWish *wish, SqSheetParts parts, SqPlace least, SqPlace most)
{
  return (SqDrawingSize){ .units = plot->units,
                          .width_m = MAX (most.x_m - least.x_m, LEAST_SIDE_M),
                          .height_m = MAX (most.y_m - least.y_m, LEAST_SIDE_M),
                          .margin_mm = wish->denominator > 0.0 ? LEAST_MARGIN_MM : LABEL_MARGIN_MM,
                          .parts = parts };
}

/* The sheet of the plot's first page, where that will do: a set of pages is bound more easily. */
static const SqSheet *
sheet_of_first (const SqPlot *plot, const SqDrawingSize *size, const SqPageWish *wish)
{
  const SqSheet *sheet = sq_plot_page (plot, 0)->sheet;
  SqSheetChoice choice;
  if (sheet != NULL &&
      sq_sheet_choose (size, sheet, wish->turn, wish->denominator, FALSE, &choice, NULL))
    return sheet;
  return NULL;
}

gboolean
sq_page_place (const SqPlot *plot,
               SqPlotPage *page,
               const SqPageWish *wish,
               SqSheetParts parts,
               SqPlace least,
               SqPlace most,
               GError **error)
{
  SqDrawingSize size = sq_drawing_size (plot, wish, parts, least, most);
  SqSheetChoice choice;
  const SqSheet *sheet = NULL;
  if (wish->sheet == NULL)
    sheet = sheet_of_first (plot, &size, wish);
  else if ((sheet = sq_sheet_find (wish->sheet, error)) == NULL)
    return FALSE;
  if (!sq_sheet_choose (&size, sheet, wish->turn, wish->denominator, FALSE, &choice, error))
    return FALSE;
  sq_page_take_sheet (page, choice.sheet, choice.portrait, parts);
  sq_page_take_scale (page, choice.denominator, least, most);
  return TRUE;
}

void
sq_page_take_scale (SqPlotPage *page, double denominator, SqPlace least, SqPlace most)
{
  SqPaperPoint middle = sq_paper_box_middle (page->layout.field);
  double mm_per_m = 1000.0 / denominator;
  page->denominator = denominator;
  page->view.mm_per_m = mm_per_m;
  page->view.origin = (SqPaperPoint){ middle.x_mm - (least.x_m + most.x_m) / 2.0 * mm_per_m,
                                      middle.y_mm + (least.y_m + most.y_m) / 2.0 * mm_per_m };
}

char *
sq_page_scale_text (const SqPlotPage *page)
{
  return page->denominator > 0.0 ? sq_scale_format (page->denominator, page->view.units)
                                 : g_strdup ("");
}
