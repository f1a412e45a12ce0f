/* plan-pages.c: a plan laid out on a sheet or several, drawn once in thought to see what it needs
 */
#include "paper/plan-pages.h"

#include "paper/scale.h"
#include "paper/side-column.h"

#include <glib/gi18n-lib.h>

static void
plan_pages_free (gpointer data)
{
  SqPlanPages *plan = data;
  g_clear_pointer (&plan->report, sq_plan_report_free);
  g_free (plan);
}

static guint
count_shown (const SqScene *scene)
{
  guint n = 0;
  for (guint k = 0; k < scene->fixtures->len; k++)
    n += !SQ_AT (SqFixture, scene->fixtures, k)->common.hidden;
  for (guint k = 0; k < scene->panels->len; k++)
    n += !SQ_AT (SqPanel, scene->panels, k)->common.hidden;
  for (guint k = 0; k < scene->marks->len; k++)
    n += !SQ_AT (SqMark, scene->marks, k)->common.hidden;
  for (guint k = 0; k < scene->cameras->len; k++)
    n += !SQ_AT (SqCamera, scene->cameras, k)->common.hidden;
  return n;
}

static SqDrawingSize
plan_size (const SqPlot *plot, const SqPageWish *wish, SqPlace *least, SqPlace *most)
{
  *least = *most = (SqPlace){ 0.0, 0.0 };
  sq_plan_extent_m (plot->scene, least, most);
  SqDrawingSize size = sq_drawing_size (plot, wish, SQ_SHEET_BESIDE, *least, *most);
  size.n_words = count_shown (plot->scene);
  return size;
}

gboolean
sq_plan_choose_sheet (const SqPlot *plot,
                      const SqPageWish *wish,
                      SqSheetChoice *choice,
                      GError **error)
{
  SqPlace least, most;
  SqDrawingSize size = plan_size (plot, wish, &least, &most);
  const SqSheet *sheet = wish->sheet != NULL ? sq_sheet_find (wish->sheet, error) : NULL;
  if (wish->sheet != NULL && sheet == NULL)
    return FALSE;
  return sq_sheet_choose (&size, sheet, wish->turn, wish->denominator, TRUE, choice, error);
}

static void
draw_overlay (SqDrawing *drawing, gpointer data)
{
  const SqPlanPages *plan = data;
  const double around_mm = 0.6;
  g_autoptr (GArray) boxes = g_array_copy (plan->report->solid);
  for (guint k = 0; k < plan->report->labels->len; k++) {
    SqPaperBox box = g_array_index (plan->report->labels, SqLabel, k).box;
    box = sq_paper_box_grown (box, around_mm);
    g_array_append_val (boxes, box);
  }
  const SqKeepClear keep_clear = {
    .boxes = (const SqPaperBox *)(gpointer)boxes->data,
    .n_boxes = boxes->len,
    .lines = (const SqPaperLine *)(gpointer)plan->report->lines->data,
    .n_lines = plan->report->lines->len,
  };
  sq_light_overlay_draw (drawing, plan->overlay, plan->stops, &keep_clear);
}

void
sq_plan_draw_whole (const SqPlot *plot,
                    const SqPlanPages *plan,
                    SqDrawing *drawing,
                    SqPlanReport *report)
{
  /* While the plan is rehearsed there is no one to keep clear of, nor to see the light. */
  gboolean is_rehearsed = report != NULL;
  g_autoptr (GArray) seams = sq_tiling_match_lines (&plan->tiling);
  const SqPlanRequest request = {
    .scene = plot->scene,
    .readings = plot->readings,
    .underlay = plan->overlay != NULL && !is_rehearsed ? draw_overlay : NULL,
    .underlay_data = (gpointer)plan,
    .tag_rows = plot->tag_rows,
    .seams = seams,
    .as_before = is_rehearsed ? NULL : plan->report,
    .report = report,
  };
  sq_draw_plan (drawing, &request);
}

/* Words need no larger paper than anybody can print. */
static void
lay_out_words (const SqSheet *sheet, gboolean portrait, const SqSheet **of, SqSheetLayout *layout)
{
  const SqSheet *handy = sq_sheet_usual (sheet->units, 0);
  gboolean is_large = sheet->width_mm > handy->width_mm;
  *of = is_large ? handy : sheet;
  sq_sheet_lay_out (*of, portrait && !is_large, SQ_SHEET_TEXT, layout);
}

int
sq_plan_run_words (const SqPlot *plot, const SqPlanPages *plan, SqDrawing *drawing, int page)
{
  const SqPlotPage *last = sq_plot_page (plot, (int)(plan->first + plan->n_sheets) - 1);
  const SqSideColumn column = {
    .scene = plot->scene,
    .readings = plot->readings,
    .map = plan->overlay != NULL ? plot->map : NULL,
    .overlay = plan->overlay,
    .stops = plan->stops,
    .report = plan->report,
    .units = plot->units,
  };
  const SqSheet *unused;
  SqSheetLayout text;
  SqFlow flow;
  lay_out_words (last->sheet, last->layout.portrait, &unused, &text);
  sq_flow_init (&flow, drawing, &last->layout, &text, last->number);
  flow.page = page;
  flow.squeeze = plan->squeeze;
  sq_side_column_run (&flow, &column);
  return sq_flow_page (&flow);
}

static void
draw_one_sheet (const SqPlot *plot, const SqPlotPage *page, SqDrawing *drawing)
{
  const SqPlanPages *plan = page->data;
  sq_plan_draw_whole (plot, plan, drawing, NULL);
  sq_draw_layer (drawing, SQ_LAYER_SHEET);
  sq_plan_say_what_is_missing (plot, plan, drawing);
  sq_page_draw_foot (plot, page, drawing, SQ_FOOT_NORTH);
  for (guint k = 0; k < page->layout.n_columns; k++) {
    sq_draw_box_path (drawing, page->layout.columns[k], 0.0);
    sq_draw_stroke (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK));
  }
  sq_plan_run_words (plot, plan, drawing, 0);
}

/* The window of the plan that this sheet shows, moved to where its field is. */
static void
draw_tile (const SqPlot *plot, const SqPlotPage *page, SqDrawing *drawing)
{
  const SqPlanPages *plan = page->data;
  SqPaperBox field = page->layout.field;
  SqPaperBox window = sq_tiling_window (&plan->tiling, sq_plan_tile_of (plot, plan, page));
  SqDrawing whole = *drawing;
  whole.view = &plan->view;
  sq_draw_box_path (drawing, field, 0.0);
  sq_draw_clip (drawing);
  cairo_translate (drawing->cairo, field.x_mm - window.x_mm, field.y_mm - window.y_mm);
  sq_plan_draw_whole (plot, plan, &whole, NULL);
  sq_draw_layer (drawing, SQ_LAYER_SHEET);
  sq_plan_draw_matches (plot, plan, &whole, page);
  sq_draw_unclip (drawing);
  sq_page_draw_foot (plot, page, drawing, SQ_FOOT_NORTH);
}

static void
draw_words (const SqPlot *plot, const SqPlotPage *page, SqDrawing *drawing)
{
  const SqPlanPages *plan = page->data;
  const SqPlotPage *first = sq_plot_page (plot, (int)plan->first);
  sq_plan_run_words (plot, plan, drawing, page->number - first->number - (int)plan->n_sheets + 1);
}

/* The paper that all sheets make up, with the plan in its middle. */
static void
lay_tiles (SqPlot *plot, const SqPageWish *wish, const SqSheetChoice *choice, SqPlanPages *plan)
{
  guint n = choice->columns * choice->rows;
  for (guint k = 0; k < n; k++) {
    char *part = g_strdup_printf (_ ("part %u of %u"), k + 1, n);
    /* Translators: %s is "part 2 of 6" */
    char *name = g_strdup_printf (_ ("Plan, %s"), part);
    SqPlotPage *page = sq_plot_add_page (plot, wish, name, draw_tile);
    sq_page_take_sheet (page, choice->sheet, choice->portrait, SQ_SHEET_DRAWING);
    page->denominator = choice->denominator;
    page->part = part;
    page->data = plan;
  }
  SqPaperBox field = sq_plot_page (plot, (int)plan->first)->layout.field;
  plan->tiling = (SqTiling){ choice->columns, choice->rows, field.width_mm, field.height_mm };
}

static void
place (SqPlot *plot,
       const SqPageWish *wish,
       const SqSheetChoice *choice,
       SqPlanPages *plan,
       SqPlace least,
       SqPlace most)
{
  SqPlotPage place = { 0 };
  plan->first = plot->pages->len;
  plan->n_sheets = choice->columns * choice->rows;
  plan->tiling = (SqTiling){ 1, 1, 0.0, 0.0 };
  if (plan->n_sheets > 1) {
    lay_tiles (plot, wish, choice, plan);
    place = *sq_plot_page (plot, (int)plan->first);
    place.layout.field = place.view.clip = sq_tiling_whole (&plan->tiling);
    sq_page_take_scale (&place, choice->denominator, least, most);
    plan->view = place.view;
  } else {
    SqPlotPage *page = sq_plot_add_page (plot, wish, g_strdup (_ ("Plan")), draw_one_sheet);
    sq_page_take_sheet (page, choice->sheet, choice->portrait, SQ_SHEET_BESIDE);
    sq_page_take_scale (page, choice->denominator, least, most);
    page->view.has_overlay = plan->overlay != NULL;
    page->data = plan;
    plan->view = page->view;
  }
  plan->view.has_overlay = plan->overlay != NULL;
}

/* A first run, drawn nowhere, tells where labels stand and how many pages of words there are. */
static int
rehearse (const SqPlot *plot, SqPlanPages *plan)
{
  const double usual = 1.0, tight = 0.8;
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cairo = cairo_create (surface);
  SqDrawing *drawing = sq_drawing_new (cairo, &plan->view);
  plan->report = sq_plan_report_new ();
  sq_plan_draw_whole (plot, plan, drawing, plan->report);
  plan->squeeze = usual;
  int n_words = sq_plan_run_words (plot, plan, drawing, -1);
  if (n_words > 0 && sq_plot_page (plot, (int)plan->first)->layout.n_columns > 0) {
    plan->squeeze = tight;
    n_words = sq_plan_run_words (plot, plan, drawing, -1);
  }
  sq_drawing_free (drawing);
  cairo_destroy (cairo);
  cairo_surface_destroy (surface);
  return n_words;
}

/* `A1 at 1:100`, as we would have chosen. Returns: (transfer full) (nullable): NULL if that is no
 * better than @choice */
static char *
roomier_text (const SqDrawingSize *size, const SqSheetChoice *choice)
{
  SqSheetChoice ours;
  if (!sq_sheet_choose (size, NULL, SQ_TURN_AS_FITS, 0.0, FALSE, &ours, NULL) ||
      ours.denominator >= choice->denominator)
    return NULL;
  g_autofree char *scale = sq_scale_format (ours.denominator, size->units);
  return g_strdup_printf (_ ("%s at %s"), ours.sheet->name, scale);
}

/* What the user did not ask for and had better know. */
static void
remark (SqPlot *plot,
        const SqPlanPages *plan,
        const SqDrawingSize *size,
        const SqSheetChoice *choice)
{
  const double many_share = 0.25;             /* of all tags */
  const double crowded = 1.6 * SQ_MOST_WORDS; /* words that cover more of the set */
  g_autofree char *scale = sq_scale_format (choice->denominator, size->units);
  guint cut = plan->report->crowded->len, all = plot->scene->fixtures->len;
  if (sq_plan_is_tiled (plan)) {
    g_autofree char *better = sq_sheet_better (size, choice);
    g_autofree char *cure =
      better != NULL ? g_strdup_printf (_ ("; %s would hold it on one"), better) : g_strdup ("");
    sq_plot_remark (plot, g_strdup_printf (_ ("plan: %s at %s takes %u sheets, to be joined at "
                                              "their match lines%s"),
                                           choice->sheet->name, scale, plan->n_sheets, cure));
  }
  if (cut > many_share * all || sq_sheet_words_share (size, choice) > crowded) {
    g_autofree char *better = roomier_text (size, choice);
    const char *roomier =
      better != NULL ? better : _ ("a larger scale, over several sheets if need be,");
    sq_plot_remark (
      plot, cut > 0 ? g_strdup_printf (_ ("plan: %s at %s is crowded, %u of %u tags are cut short, "
                                          "%s has more room"),
                                       choice->sheet->name, scale, cut, all, roomier)
                    : g_strdup_printf (_ ("plan: %s at %s is crowded, %s has more room"),
                                       choice->sheet->name, scale, roomier));
  }
}

gboolean
sq_make_plan_pages (SqPlot *plot, const SqPageWish *wish, GCancellable *cancellable, GError **error)
{
  SqPlace least, most;
  SqSheetChoice choice;
  if (!sq_plan_choose_sheet (plot, wish, &choice, error))
    return FALSE;
  SqDrawingSize size = plan_size (plot, wish, &least, &most);
  SqPlanPages *plan = sq_plot_keep (plot, g_new0 (SqPlanPages, 1), plan_pages_free);
  int overlay = sq_plot_overlay (plot, wish);
  plan->overlay = overlay != SQ_OVERLAY_NONE ? plot->overlay : NULL;
  plan->stops = overlay == SQ_OVERLAY_STOPS;
  place (plot, wish, &choice, plan, least, most);
  int n_words = rehearse (plot, plan);
  for (int k = 0; k < n_words; k++) {
    char *name = n_words == 1 ? g_strdup (_ ("Figures, legend, notes"))
                              : g_strdup_printf (_ ("Figures, legend, notes %d"), k + 1);
    SqPlotPage *page = sq_plot_add_page (plot, wish, name, draw_words);
    lay_out_words (choice.sheet, choice.portrait, &page->sheet, &page->layout);
    page->data = plan;
  }
  remark (plot, plan, &size, &choice);
  return !g_cancellable_set_error_if_cancelled (cancellable, error);
}
