/* plot-page.c: the plan's page and those that follow, put together from their parts */
#include "paper/plot-private.h"

#include "paper/title-block.h"

#include <glib/gi18n-lib.h>

static void
draw_overlay (SqDrawing *drawing, gpointer data)
{
  const SqPlot *plot = data;
  const double around_mm = 0.6;
  /* While the plan is rehearsed there is no one to keep clear of, nor to see it. */
  if (plot->n_pages == 0)
    return;
  g_autoptr (GArray) boxes = g_array_copy (plot->report->solid);
  for (guint k = 0; k < plot->report->labels->len; k++) {
    SqPaperBox box = g_array_index (plot->report->labels, SqLabel, k).box;
    box = sq_paper_box_grown (box, around_mm);
    g_array_append_val (boxes, box);
  }
  const SqKeepClear keep_clear = {
    .boxes = (const SqPaperBox *)(gpointer)boxes->data,
    .n_boxes = boxes->len,
    .lines = (const SqPaperLine *)(gpointer)plot->report->lines->data,
    .n_lines = plot->report->lines->len,
  };
  sq_light_overlay_draw (drawing, plot->overlay, plot->stops, &keep_clear);
}

static gboolean
is_free (const SqPlanReport *report, SqPaperBox box)
{
  for (guint k = 0; k < report->labels->len; k++)
    if (sq_paper_boxes_overlap (box, g_array_index (report->labels, SqLabel, k).box))
      return FALSE;
  for (guint k = 0; k < report->lines->len; k++)
    if (sq_paper_line_hits (g_array_index (report->lines, SqPaperLine, k), box))
      return FALSE;
  return TRUE;
}

/* Where a line of words may start: in the first corner of the field where nothing stands. */
static SqPaperPoint
free_corner (const SqPlot *plot, double width_mm, double cap_mm)
{
  const double in_mm = 8.0, air_mm = 1.0;
  SqPaperBox field = sq_paper_box_grown (plot->layout.field, -in_mm);
  double right_mm = field.width_mm - width_mm, down_mm = field.height_mm - cap_mm;
  const SqPaperPoint corners[] = {
    { 0, 0 }, { 0, down_mm }, { right_mm, 0 }, { right_mm, down_mm }
  };
  for (guint k = 0; k < G_N_ELEMENTS (corners); k++) {
    SqPaperBox box = { field.x_mm + corners[k].x_mm, field.y_mm + corners[k].y_mm, width_mm,
                       cap_mm };
    if (is_free (plot->report, sq_paper_box_grown (box, air_mm)))
      return (SqPaperPoint){ box.x_mm, box.y_mm + cap_mm };
  }
  return (SqPaperPoint){ field.x_mm, field.y_mm + cap_mm };
}

/* What is missing, in words, so that an empty field does not look like a fault. */
static void
draw_what_is_missing (const SqPlot *plot, SqDrawing *drawing)
{
  const SqScene *scene = plot->scene;
  gboolean no_set = scene->walls->len == 0 && scene->pieces->len == 0;
  gboolean no_lamps = scene->fixtures->len == 0;
  SqPlace least, most;
  SqType type = { .cap_mm = SQ_TYPE_HEAD,
                  .weight = 400,
                  .align = SQ_ALIGN_CENTRE,
                  .colour = sq_ink (drawing->view, drawing->view->has_overlay ? SQ_INK : SQ_MID),
                  .halo = TRUE };
  if (!sq_plan_extent_m (scene, &least, &most)) {
    type.cap_mm = SQ_TYPE_NAME;
    sq_draw_text (drawing, sq_paper_box_middle (plot->layout.field),
                  _ ("Nothing stands on this plan yet"), &type);
    return;
  }
  const char *words = no_set && no_lamps ? _ ("No set and no lamps yet")
                      : no_set           ? _ ("No set drawn yet: walls and pieces are missing")
                      : no_lamps         ? _ ("No lamps yet: the plan shows the set alone")
                      : scene->marks->len == 0 ? _ ("No marks yet: nobody's light is read")
                                               : NULL;
  if (words == NULL)
    return;
  type.align = SQ_ALIGN_LEFT;
  double width_mm = sq_text_width_mm (drawing, words, &type);
  sq_draw_text (drawing, free_corner (plot, width_mm, type.cap_mm), words, &type);
}

void
sq_plot_draw_field (const SqPlot *plot, SqDrawing *drawing, SqPlanReport *report)
{
  const SqPlanRequest request = {
    .scene = plot->scene,
    .readings = plot->readings,
    .underlay = plot->overlay != NULL ? draw_overlay : NULL,
    .underlay_data = (gpointer)plot,
    .tag_rows = plot->tag_rows,
    .report = report,
  };
  sq_draw_plan (drawing, &request);
  sq_draw_layer (drawing, SQ_LAYER_SHEET);
  draw_what_is_missing (plot, drawing);
}

int
sq_plot_run_column (const SqPlot *plot, SqDrawing *drawing, int page)
{
  const SqSideColumn column = {
    .scene = plot->scene,
    .readings = plot->readings,
    .map = plot->overlay != NULL ? plot->map : NULL,
    .overlay = plot->overlay,
    .stops = plot->stops,
    .report = plot->report,
    .units = plot->units,
  };
  SqFlow flow;
  sq_flow_init (&flow, drawing, plot->sheet, page, plot->squeeze);
  sq_side_column_run (&flow, &column);
  return sq_flow_page (&flow);
}

static void
draw_title (const SqPlot *plot, SqDrawing *drawing, int page)
{
  g_autofree char *scale = sq_plot_scale_text (plot);
  const SqTitleBlock block = { .scene = plot->scene,
                               .scale = scale,
                               .sheet = plot->sheet->name,
                               .page = page + 1,
                               .n_pages = plot->n_pages };
  if (plot->sheet->columns == 0)
    sq_draw_title_strip (drawing, plot->layout.title_block, &block);
  else
    sq_draw_title_block (drawing, plot->layout.title_block, &block);
}

void
sq_plot_draw (const SqPlot *plot, cairo_t *cairo, int page)
{
  SqDrawing *drawing = sq_drawing_new (cairo, &plot->view);
  cairo_save (cairo);
  if (page == 0) {
    sq_plot_draw_field (plot, drawing, NULL);
    sq_plot_draw_foot (plot, drawing);
    for (int k = 0; k < plot->sheet->columns; k++) {
      sq_draw_box_path (drawing, plot->layout.columns[k], 0.0);
      sq_draw_stroke (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK));
    }
  }
  sq_plot_run_column (plot, drawing, page);
  draw_title (plot, drawing, page);
  sq_plot_draw_frame (plot, drawing, page);
  cairo_restore (cairo);
  sq_drawing_free (drawing);
}
