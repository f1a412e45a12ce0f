/* plot.c: from a scene to pages: read, mapped, placed, counted */
#include "paper/plot-private.h"

#include "base/error.h"
#include "light/exposure.h"

#include <glib/gi18n-lib.h>

#define MAP_STEP_M 0.05
#define MAP_MOST_POINTS 200000.0
#define MAP_MARGIN_M 0.3

/* The finest step that keeps within the number of points, in whole centimetres above 5. */
static SqMapRequest
map_request (const SqScene *scene, int quantity)
{
  SqMapRequest request = sq_map_request (scene, MAP_STEP_M);
  request.quantity = quantity;
  SqPlace from, to;
  if (!sq_plan_extent_m (scene, &from, &to))
    return request;
  request.from = (SqPlace){ from.x_m - MAP_MARGIN_M, from.y_m - MAP_MARGIN_M };
  request.to = (SqPlace){ to.x_m + MAP_MARGIN_M, to.y_m + MAP_MARGIN_M };
  double width_m = request.to.x_m - request.from.x_m, height_m = request.to.y_m - request.from.y_m;
  while ((width_m / request.step_m + 2.0) * (height_m / request.step_m + 2.0) > MAP_MOST_POINTS)
    request.step_m += 0.01;
  return request;
}

static gboolean
any_light (const SqLightMap *map)
{
  for (gsize k = 0; k < (gsize)map->columns * map->rows; k++)
    if (map->lux[k] > SQ_DARK_LX)
      return TRUE;
  return FALSE;
}

static gboolean
read_light (SqPlot *plot, int overlay, int threads, GCancellable *cancellable, GError **error)
{
  plot->readings = sq_read_meter (plot->scene, threads, cancellable, error);
  if (plot->readings == NULL)
    return FALSE;
  if (overlay == SQ_OVERLAY_NONE)
    return TRUE;
  SqPlace from, to;
  if (!sq_plan_extent_m (plot->scene, &from, &to))
    return TRUE;
  SqMapRequest request = map_request (plot->scene, overlay);
  plot->map = sq_light_map (plot->scene, &request, threads, cancellable, error);
  if (plot->map == NULL)
    return FALSE;
  plot->stops = overlay == SQ_OVERLAY_STOPS;
  if (any_light (plot->map))
    plot->overlay = sq_light_overlay_new (plot->scene, plot->map);
  plot->view.has_overlay = plot->overlay != NULL;
  return TRUE;
}

/* A first run, drawn nowhere, tells where labels stand and how many pages there are. */
static void
rehearse (SqPlot *plot)
{
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cairo = cairo_create (surface);
  SqDrawing *drawing = sq_drawing_new (cairo, &plot->view);
  plot->report = sq_plan_report_new ();
  sq_plot_draw_field (plot, drawing, plot->report);
  const double usual = 1.0, tight = 0.8;
  plot->squeeze = usual;
  plot->n_pages = sq_plot_run_column (plot, drawing, -1) + 1;
  if (plot->n_pages > 1 && plot->sheet->columns > 0) {
    plot->squeeze = tight;
    plot->n_pages = sq_plot_run_column (plot, drawing, -1) + 1;
  }
  sq_drawing_free (drawing);
  cairo_destroy (cairo);
  cairo_surface_destroy (surface);
}

SqPlot *
sq_plot_new (const SqScene *scene,
             const SqPlotRequest *request,
             int threads,
             GCancellable *cancellable,
             GError **error)
{
  int overlay = request->overlay >= 0 ? request->overlay : scene->map->quantity;
  if (overlay == SQ_OVERLAY_COLOUR) {
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, "%s",
                 _ ("overlay: colour is not computed yet, expected lux, stops or none"));
    return NULL;
  }
  const double least_dpi = 20.0, most_dpi = 1200.0;
  if (!(request->dpi >= least_dpi && request->dpi <= most_dpi)) {
    g_autofree char *dpi = sq_quantity_format (request->dpi, SQ_PLAIN, SQ_METRIC);
    g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("dpi: %s is outside 20 to 1200"), dpi);
    return NULL;
  }

  g_autoptr (SqPlot) plot = g_new0 (SqPlot, 1);
  plot->scene = sq_scene_ref (scene);
  plot->units = (SqUnits)scene->units;
  plot->mono = request->mono;
  plot->dpi = request->dpi;
  plot->tag_rows = request->tag_rows;
  if (!sq_plot_place (plot, request, error) ||
      !read_light (plot, overlay, MAX (threads, 1), cancellable, error))
    return NULL;
  rehearse (plot);
  if (g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;
  return g_steal_pointer (&plot);
}

void
sq_plot_free (SqPlot *plot)
{
  g_clear_pointer (&plot->overlay, sq_light_overlay_free);
  g_clear_pointer (&plot->map, sq_light_map_free);
  g_clear_pointer (&plot->report, sq_plan_report_free);
  g_clear_pointer (&plot->readings, sq_readings_free);
  sq_scene_unref (plot->scene);
  g_free (plot);
}

int
sq_plot_n_pages (const SqPlot *plot)
{
  return plot->n_pages;
}

void
sq_plot_page_size_mm (const SqPlot *plot, int page, double *width_mm, double *height_mm)
{
  *width_mm = plot->sheet->width_mm;
  *height_mm = plot->sheet->height_mm;
}

const SqSheet *
sq_plot_sheet (const SqPlot *plot)
{
  return plot->sheet;
}

double
sq_plot_denominator (const SqPlot *plot)
{
  return plot->denominator;
}

const SqReadings *
sq_plot_readings (const SqPlot *plot)
{
  return plot->readings;
}
