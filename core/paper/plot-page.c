/* plot-page.c: the plan's page and those that follow, put together from their parts */
#include "paper/plot-private.h"

#include "draw/lamp-symbol.h"
#include "draw/person.h"
#include "paper/title-block.h"

#include <glib/gi18n-lib.h>

/* Where somebody or a lamp stands no figure of the overlay may either. */
static void
add_bodies (const SqPlot *plot, GArray *boxes)
{
  const SqScene *scene = plot->scene;
  for (guint k = 0; k < scene->fixtures->len; k++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, k);
    SqLamp lamp = sq_lamp_of_fixture (scene, fixture, &plot->view);
    SqTurnedBox turned = sq_lamp_outline (&plot->view, &lamp);
    double c = fabs (cos (turned.angle_rad)), s = fabs (sin (turned.angle_rad));
    SqPaperBox box =
        sq_paper_box_round (turned.middle, turned.half_length_mm * c + turned.half_width_mm * s,
                            turned.half_length_mm * s + turned.half_width_mm * c);
    g_array_append_val (boxes, box);
  }
  for (guint k = 0; k < scene->marks->len; k++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, k);
    double half_mm = 0.6 * SQ_SHOULDERS_WIDE_M * plot->view.mm_per_m;
    SqPaperBox box = sq_paper_box_round (sq_view_paper (&plot->view, mark->at), half_mm, half_mm);
    g_array_append_val (boxes, box);
  }
}

static void
draw_overlay (SqDrawing *drawing, gpointer data)
{
  const SqPlot *plot = data;
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqPaperBox));
  const double around_mm = 0.6;
  /* While the plan is rehearsed there is no one to keep clear of, nor to see it. */
  if (plot->n_pages == 0)
    return;
  for (guint k = 0; k < plot->report->labels->len; k++) {
    SqPaperBox box = g_array_index (plot->report->labels, SqLabel, k).box;
    box = sq_paper_box_grown (box, around_mm);
    g_array_append_val (boxes, box);
  }
  add_bodies (plot, boxes);
  sq_light_overlay_draw (drawing, plot->overlay, plot->stops,
                         (const SqPaperBox *)(gpointer)boxes->data, boxes->len);
}

/* What is missing, in words, so that an empty field does not look like a fault. */
static void
draw_what_is_missing (const SqPlot *plot, SqDrawing *drawing)
{
  const SqScene *scene = plot->scene;
  SqPaperBox field = plot->layout.field;
  gboolean no_set = scene->walls->len == 0 && scene->pieces->len == 0;
  gboolean no_lamps = scene->fixtures->len == 0;
  SqPlace least, most;
  SqType type = {.cap_mm = SQ_TYPE_HEAD,
                 .weight = 400,
                 .align = SQ_ALIGN_CENTRE,
                 .colour = sq_ink (drawing->view, SQ_MID)};
  if (!sq_plan_extent_m (scene, &least, &most)) {
    type.cap_mm = SQ_TYPE_NAME;
    sq_draw_text (
        drawing,
        (SqPaperPoint){field.x_mm + field.width_mm / 2.0, field.y_mm + field.height_mm / 2.0},
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
  const double in_mm = 8.0;
  sq_draw_text (drawing, (SqPaperPoint){field.x_mm + in_mm, field.y_mm + in_mm + type.cap_mm},
                words, &type);
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
  const SqTitleBlock block = {.scene = plot->scene,
                              .scale = scale,
                              .sheet = plot->sheet->name,
                              .page = page + 1,
                              .n_pages = plot->n_pages};
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
