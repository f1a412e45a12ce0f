/* tile-ink.c: on which sheets of a plan that goes over several anything is drawn */
#include "paper/plan-pages.h"

/* Fine enough that no pen is lost, and no more pixels than that takes. */
#define MOST_PX_PER_MM 1.0
#define MOST_PIXELS 6e6

/* The plan without its light, small: how much ink there is in each pixel. */
static cairo_surface_t *
ink_of (const SqPlot *plot, const SqPlanPages *plan, double px_per_mm)
{
  SqPaperBox whole = sq_tiling_whole (&plan->tiling);
  SqPlanPages bare = *plan;
  bare.overlay = NULL;
  cairo_surface_t *ink =
    cairo_image_surface_create (CAIRO_FORMAT_A8, (int)ceil (whole.width_mm * px_per_mm),
                                (int)ceil (whole.height_mm * px_per_mm));
  cairo_t *cairo = cairo_create (ink);
  cairo_scale (cairo, px_per_mm, px_per_mm);
  SqDrawing *drawing = sq_drawing_new (cairo, &plan->view);
  sq_plan_draw_whole (plot, &bare, drawing, NULL);
  sq_drawing_free (drawing);
  cairo_destroy (cairo);
  cairo_surface_flush (ink);
  return ink;
}

static gboolean
has_ink (cairo_surface_t *ink, SqPaperBox box, double px_per_mm)
{
  const guint8 *bytes = cairo_image_surface_get_data (ink);
  gsize stride = (gsize)cairo_image_surface_get_stride (ink);
  int from_x = MAX ((int)floor (box.x_mm * px_per_mm), 0);
  int from_y = MAX ((int)floor (box.y_mm * px_per_mm), 0);
  int to_x =
    MIN ((int)ceil ((box.x_mm + box.width_mm) * px_per_mm), cairo_image_surface_get_width (ink));
  int to_y =
    MIN ((int)ceil ((box.y_mm + box.height_mm) * px_per_mm), cairo_image_surface_get_height (ink));
  for (int y = from_y; y < to_y; y++)
    for (int x = from_x; x < to_x; x++)
      if (bytes[(gsize)y * stride + (gsize)x] > 0)
        return TRUE;
  return FALSE;
}

guint64
sq_plan_empty_tiles (const SqPlot *plot, const SqPlanPages *plan)
{
  SqPaperBox whole = sq_tiling_whole (&plan->tiling);
  double px_per_mm = MIN (MOST_PX_PER_MM, sqrt (MOST_PIXELS / (whole.width_mm * whole.height_mm)));
  cairo_surface_t *ink = ink_of (plot, plan, px_per_mm);
  guint64 empty = 0;
  guint n = sq_tiling_count (&plan->tiling), n_empty = 0;
  G_STATIC_ASSERT (SQ_MOST_TILES <= 8 * sizeof empty);
  for (guint k = 0; k < n; k++)
    if (!has_ink (ink, sq_tiling_own (&plan->tiling, k), px_per_mm)) {
      empty |= G_GUINT64_CONSTANT (1) << k;
      n_empty++;
    }
  cairo_surface_destroy (ink);
  return n_empty < n ? empty : 0;
}
