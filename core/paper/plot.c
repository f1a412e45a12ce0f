/* plot.c: from a scene and what is asked for to a list of pages */
#include "paper/plot-private.h"

#include "base/error.h"
#include "draw/section.h"
#include "light/exposure.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
SqPageMaker *const sq_page_makers[] = {
  [SQ_PAGE_PLAN]       = sq_make_plan_pages,
  [SQ_PAGE_RATIO]      = NULL,
  [SQ_PAGE_SECTION]    = sq_make_section_pages,
  [SQ_PAGE_LIST]       = NULL,
  [SQ_PAGE_POWER]      = NULL,
  [SQ_PAGE_CONTINUITY] = NULL,
};
/* clang-format on */

static gboolean
any_light (const SqLightMap *map)
{
  for (gsize k = 0; k < (gsize)map->columns * map->rows; k++)
    if (map->lux[k] > SQ_DARK_LX)
      return TRUE;
  return FALSE;
}

/* What is open in the wish for page @k is as the request says. */
static SqPageWish
wish_of (const SqPlotRequest *request, guint k)
{
  SqPageWish wish = k < request->n_pages ? request->pages[k] : SQ_PAGE_WISH;
  if (wish.sheet == NULL)
    wish.sheet = request->sheet;
  if (wish.turn == SQ_TURN_AS_FITS)
    wish.turn = request->turn;
  if (wish.denominator == 0.0)
    wish.denominator = request->denominator;
  if (wish.overlay < 0)
    wish.overlay = request->overlay;
  if (wish.light == NULL)
    wish.light = request->light;
  wish.mono = wish.mono || request->mono;
  return wish;
}

static guint
wishes (const SqPlotRequest *request)
{
  return MAX (request->n_pages, 1);
}

int
sq_plot_overlay (const SqPlot *plot, const SqPageWish *wish)
{
  return wish->overlay >= 0 ? wish->overlay : plot->scene->map->quantity;
}

/* One map does for all pages: lux and stops are two ways to print it. */
static gboolean
read_light (SqPlot *plot,
            const SqPlotRequest *request,
            int threads,
            GCancellable *cancellable,
            GError **error)
{
  SqPageWish lit[SQ_PLOT_MOST_WISHES];
  guint n_lit = 0;
  plot->readings = sq_read_meter (plot->scene, threads, cancellable, error);
  if (plot->readings == NULL)
    return FALSE;
  for (guint k = 0; k < wishes (request); k++) {
    SqPageWish wish = wish_of (request, k);
    if (wish.kind == SQ_PAGE_PLAN && sq_plot_overlay (plot, &wish) != SQ_OVERLAY_NONE)
      lit[n_lit++] = wish;
  }
  if (n_lit > 0 && !sq_plot_map_light (plot, lit, n_lit, threads, cancellable, error))
    return FALSE;
  if (plot->map != NULL && any_light (plot->map))
    plot->overlay = sq_light_overlay_new (plot->scene, plot->map);
  return TRUE;
}

/* What can be told wrong before light is computed, which takes its time. */
static gboolean
check_request (const SqPlot *plot, const SqPlotRequest *request, GError **error)
{
  const double least_dpi = 20.0, most_dpi = 1200.0;
  for (guint k = 0; k < wishes (request); k++) {
    SqPageWish wish = wish_of (request, k);
    SqSheetChoice unused;
    if (wish.kind == SQ_PAGE_SECTION && sq_section_light (plot->scene, wish.light, error) == NULL)
      return FALSE;
    if (wish.kind != SQ_PAGE_PLAN)
      continue;
    if (sq_plot_overlay (plot, &wish) == SQ_OVERLAY_COLOUR) {
      g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, "%s",
                   _ ("overlay: colour is not computed yet, expected lux, stops or none"));
      return FALSE;
    }
    if (!sq_plan_choose_sheet (plot, &wish, &unused, error))
      return FALSE;
  }
  if (!(request->dpi >= least_dpi && request->dpi <= most_dpi)) {
    g_autofree char *dpi = sq_quantity_format (request->dpi, SQ_PLAIN, SQ_METRIC);
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("dpi: %s is outside 20 to 1200"), dpi);
    return FALSE;
  }
  return TRUE;
}

static gboolean
make_pages (SqPlot *plot, const SqPlotRequest *request, GCancellable *cancellable, GError **error)
{
  for (guint k = 0; k < wishes (request); k++) {
    SqPageWish wish = wish_of (request, k);
    if (!sq_page_makers[wish.kind](plot, &wish, cancellable, error))
      return FALSE;
  }
  plot->n_pages = (int)plot->pages->len;
  for (int k = 0; k < plot->n_pages; k++)
    ((SqPlotPage *)g_ptr_array_index (plot->pages, k))->number = k + 1;
  plot->sheet = sq_plot_page (plot, 0)->sheet;
  return TRUE;
}

SqPlot *
sq_plot_new (const SqScene *scene,
             const SqPlotRequest *request,
             int threads,
             GCancellable *cancellable,
             GError **error)
{
  g_autoptr (SqPlot) plot = g_new0 (SqPlot, 1);
  plot->scene = sq_scene_ref (scene);
  plot->units = (SqUnits)scene->units;
  plot->dpi = request->dpi;
  plot->tag_rows = request->tag_rows;
  plot->pages = g_ptr_array_new_with_free_func (sq_plot_page_free);
  plot->kept = g_ptr_array_new_with_free_func (sq_plot_kept_free);
  plot->remarks = g_ptr_array_new_with_free_func (g_free);
  if (!check_request (plot, request, error) ||
      !read_light (plot, request, MAX (threads, 1), cancellable, error) ||
      !make_pages (plot, request, cancellable, error) ||
      g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;
  return g_steal_pointer (&plot);
}

void
sq_plot_free (SqPlot *plot)
{
  g_ptr_array_unref (plot->pages);
  g_ptr_array_unref (plot->kept);
  g_ptr_array_unref (plot->remarks);
  g_clear_pointer (&plot->overlay, sq_light_overlay_free);
  g_clear_pointer (&plot->map, sq_light_map_free);
  g_clear_pointer (&plot->readings, sq_readings_free);
  sq_scene_unref (plot->scene);
  g_free (plot);
}

void
sq_plot_remark (SqPlot *plot, char *line)
{
  g_ptr_array_add (plot->remarks, line);
}

int
sq_plot_n_pages (const SqPlot *plot)
{
  return plot->n_pages;
}

void
sq_plot_page_size_mm (const SqPlot *plot, int page, double *width_mm, double *height_mm)
{
  *width_mm = sq_plot_page (plot, page)->layout.width_mm;
  *height_mm = sq_plot_page (plot, page)->layout.height_mm;
}

const char *
sq_plot_page_name (const SqPlot *plot, int page)
{
  return sq_plot_page (plot, page)->name;
}

const SqSheet *
sq_plot_sheet (const SqPlot *plot)
{
  return plot->sheet;
}

gboolean
sq_plot_is_portrait (const SqPlot *plot)
{
  return sq_plot_page (plot, 0)->layout.portrait;
}

double
sq_plot_denominator (const SqPlot *plot)
{
  return sq_plot_page (plot, 0)->denominator;
}

char *
sq_plot_scale_text (const SqPlot *plot)
{
  return sq_page_scale_text (sq_plot_page (plot, 0));
}

const GPtrArray *
sq_plot_remarks (const SqPlot *plot)
{
  return plot->remarks;
}

const SqReadings *
sq_plot_readings (const SqPlot *plot)
{
  return plot->readings;
}
