/* plot-page.c: a page put together: what it shows, its title, its border */
#include "paper/plot-private.h"
#include "paper/title-block.h"

void
sq_page_draw_title (const SqPlot *plot, const SqPlotPage *page, SqDrawing *drawing)
{
  g_autofree char *scale = sq_page_scale_text (page);
  const SqTitleBlock block = { .scene = plot->scene,
                               .name = page->names_title ? page->name : NULL,
                               .part = page->part,
                               .scale = scale,
                               .sheet = page->sheet->name,
                               .page = page->number,
                               .n_pages = plot->n_pages };
  if (page->layout.is_strip)
    sq_draw_title_strip (drawing, page->layout.title_block, &block);
  else
    sq_draw_title_block (drawing, page->layout.title_block, &block);
}

void
sq_plot_draw (const SqPlot *plot, cairo_t *cairo, int number)
{
  const SqPlotPage *page = sq_plot_page (plot, number);
  SqDrawing *drawing = sq_drawing_new (cairo, &page->view);
  cairo_save (cairo);
  sq_draw_layer (drawing, SQ_LAYER_SHEET);
  page->draw (plot, page, drawing);
  sq_draw_layer (drawing, SQ_LAYER_SHEET);
  sq_page_draw_title (plot, page, drawing);
  sq_page_draw_frame (page, drawing);
  cairo_restore (cairo);
  sq_drawing_free (drawing);
}
