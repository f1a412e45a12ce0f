/* overlay.c: light under the plan: bands a stop wide and the contours between them */
#include "draw/overlay-private.h"
#include "draw/ramp.h"
#include "draw/rooms.h"
#include "light/exposure.h"

/* Darker than this many stops under the first contour is all one dark. */
#define FLOOR_STOPS (SQ_FIRST_BAND - 6)
#define SMOOTH_STEPS 1.3
#define SHORTEST_LOOP_MM 9.0

static SqContour *
disc_outline (const SqDisc *disc)
{
  const int corners = 64;
  SqContour *contour = g_new0 (SqContour, 1);
  contour->closed = TRUE;
  contour->points = g_array_new (FALSE, FALSE, sizeof (SqPlace));
  for (int k = 0; k < corners; k++) {
    double angle = 2.0 * G_PI * k / corners;
    SqPlace place = { disc->at.x_m + disc->radius_m * cos (angle),
                      disc->at.y_m + disc->radius_m * sin (angle) };
    g_array_append_val (contour->points, place);
  }
  return contour;
}

/* The map has no values inside of what it cuts; the exact outline is known from the scene. */
static GPtrArray *
solids_at (const SqScene *scene, double height_m)
{
  GPtrArray *solids = g_ptr_array_new_with_free_func ((GDestroyNotify)sq_contour_free);
  for (guint k = 0; k < scene->pieces->len; k++) {
    const SqPiece *piece = SQ_AT (SqPiece, scene->pieces, k);
    if (!(piece->base_m <= height_m && height_m < piece->top_m))
      continue;
    if (piece->disc != NULL) {
      g_ptr_array_add (solids, disc_outline (piece->disc));
    } else if (piece->outline->len > 2) {
      SqContour *contour = g_new0 (SqContour, 1);
      contour->closed = TRUE;
      contour->points = g_array_ref (piece->outline);
      g_ptr_array_add (solids, contour);
    }
  }
  return solids;
}

/* NAN, where nothing was read, stays NAN. */
static double
stops_shown (double lux, double set_lux)
{
  if (isnan (lux))
    return NAN;
  double stops = sq_stops_over (lux, set_lux);
  return stops >= FLOOR_STOPS ? stops : FLOOR_STOPS;
}

/* The darkest band has no end: it shows in rooms, and in the open where light surrounds it. Like
 * the light it goes on under the faces of the walls. */
static void
find_ground (SqLightOverlay *overlay, const SqScene *scene, const SqGrid *grid)
{
  gsize n_points = (gsize)grid->columns * grid->rows;
  g_autoptr (SqGrid) rooms = sq_grid_copy (grid), dark = sq_grid_copy (grid);
  sq_dark_keep (dark, SQ_FIRST_CONTOUR);
  if (sq_rooms_keep (rooms, scene)) {
    overlay->rooms = sq_contour_cells (rooms);
    for (gsize k = 0; k < n_points; k++)
      if (!isnan (rooms->value[k]))
        dark->value[k] = rooms->value[k];
  }
  g_autoptr (SqGrid) grown = sq_grid_copy (dark);
  sq_grid_grow (grown);
  for (gsize k = 0; k < n_points; k++)
    if (isnan (dark->value[k]) && isnan (grid->value[k]))
      dark->value[k] = grown->value[k];
  overlay->dark = sq_contour_cells (dark);
}

SqLightOverlay *
sq_light_overlay_new (const SqScene *scene, const SqLightMap *map)
{
  SqLightOverlay *overlay = g_new0 (SqLightOverlay, 1);
  const SqCamera *camera = sq_scene_camera (scene);
  const double stop_without_camera = 2.8;
  overlay->set_lux = map->set_lux;
  overlay->t_stop = camera != NULL ? camera->t_stop : stop_without_camera;
  overlay->units = (SqUnits)scene->units;

  g_autoptr (SqGrid) grid = sq_grid_new (map->columns, map->rows, map->first, map->step_m);
  for (gsize k = 0; k < (gsize)map->columns * map->rows; k++)
    grid->value[k] = stops_shown (map->lux[k], map->set_lux);
  sq_grid_smooth (grid, SMOOTH_STEPS);
  overlay->solids = solids_at (scene, map->request.height_m);
  find_ground (overlay, scene, grid);
  overlay->grid = sq_grid_copy (grid);
  sq_grid_grow (grid); /* lines run on under the faces of the walls */
  overlay->outline = sq_contour_cells (grid);
  for (int k = 0; k < SQ_CONTOURS; k++) {
    overlay->lines[k] = sq_contours (grid, SQ_FIRST_CONTOUR + k);
    overlay->areas[k] = sq_contour_areas (grid, SQ_FIRST_CONTOUR + k);
  }
  return overlay;
}

void
sq_light_overlay_free (SqLightOverlay *overlay)
{
  for (int k = 0; k < SQ_CONTOURS; k++) {
    g_ptr_array_unref (overlay->lines[k]);
    g_ptr_array_unref (overlay->areas[k]);
  }
  g_ptr_array_unref (overlay->outline);
  g_clear_pointer (&overlay->rooms, g_ptr_array_unref);
  g_ptr_array_unref (overlay->dark);
  g_ptr_array_unref (overlay->solids);
  sq_grid_free (overlay->grid);
  g_free (overlay);
}

void
sq_contour_path (SqDrawing *drawing, const SqContour *contour)
{
  const double least_step_mm = 0.1;
  SqPaperPoint last = { 0 };
  for (guint k = 0; k < contour->points->len; k++) {
    SqPaperPoint p = sq_view_paper (drawing->view, g_array_index (contour->points, SqPlace, k));
    gboolean ends = k == 0 || k + 1 == contour->points->len;
    if (!ends && hypot (p.x_mm - last.x_mm, p.y_mm - last.y_mm) < least_step_mm)
      continue;
    if (k == 0)
      cairo_move_to (drawing->cairo, p.x_mm, p.y_mm);
    else
      cairo_line_to (drawing->cairo, p.x_mm, p.y_mm);
    last = p;
  }
  if (contour->closed)
    cairo_close_path (drawing->cairo);
}

static void
areas_path (SqDrawing *drawing, const GPtrArray *areas)
{
  for (guint k = 0; k < areas->len; k++)
    sq_contour_path (drawing, g_ptr_array_index (areas, k));
}

/* Each band is laid over the one below it, so that no seam can show between two. */
static void
draw_bands (SqDrawing *drawing, const SqLightOverlay *overlay, gboolean stops)
{
  int last = stops ? SQ_LAST_STOPS_BAND : SQ_LAST_LUX_BAND;
  areas_path (drawing, overlay->dark);
  sq_draw_fill (drawing, sq_overlay_colour (drawing->view, stops, SQ_FIRST_BAND), 1.0);
  for (int k = 0; k < SQ_CONTOURS && SQ_FIRST_CONTOUR + k <= last; k++) {
    if (overlay->areas[k]->len == 0)
      continue;
    areas_path (drawing, overlay->areas[k]);
    sq_draw_fill (drawing, sq_overlay_colour (drawing->view, stops, SQ_FIRST_CONTOUR + k), 1.0);
  }
}

static SqColour
line_colour (const SqView *view, gboolean stops, int level)
{
  if (view->ground != SQ_GROUND_PAPER)
    return sq_ramp_ink_on (sq_overlay_colour (view, stops, level));
  return level == 0 || view->mono ? sq_ink (view, SQ_INK) : sq_colour_hex (0x3A4048);
}

static void
draw_lines (SqDrawing *drawing, const SqLightOverlay *overlay, gboolean stops)
{
  cairo_set_line_join (drawing->cairo, CAIRO_LINE_JOIN_ROUND);
  for (int k = 0; k < SQ_CONTOURS; k++) {
    int level = SQ_FIRST_CONTOUR + k;
    gboolean any = FALSE;
    for (guint n = 0; n < overlay->lines[k]->len; n++) {
      const SqContour *line = g_ptr_array_index (overlay->lines[k], n);
      double length_mm = sq_contour_length_m (line) * drawing->view->mm_per_m;
      if (line->closed && length_mm < SHORTEST_LOOP_MM)
        continue;
      sq_contour_path (drawing, line);
      any = TRUE;
    }
    if (any)
      sq_draw_stroke (drawing, level == 0 ? SQ_PEN_50 : SQ_PEN_13,
                      line_colour (drawing->view, stops, level));
  }
}

void
sq_light_overlay_draw (SqDrawing *drawing,
                       const SqLightOverlay *overlay,
                       gboolean stops,
                       const SqKeepClear *keep_clear)
{
  cairo_t *cairo = drawing->cairo;
  cairo_save (cairo);
  cairo_new_path (cairo);
  cairo_set_fill_rule (cairo, CAIRO_FILL_RULE_EVEN_ODD);
  areas_path (drawing, overlay->outline);
  sq_draw_clip (drawing);
  draw_bands (drawing, overlay, stops);
  draw_lines (drawing, overlay, stops);
  sq_draw_unclip (drawing);
  cairo_restore (cairo);
  /* In a doorway a room's darkness ends in a line. */
  if (overlay->rooms != NULL)
    areas_path (drawing, overlay->rooms);
  sq_draw_stroke (drawing, SQ_PEN_13, line_colour (drawing->view, stops, SQ_FIRST_CONTOUR));
  areas_path (drawing, overlay->solids);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
  sq_overlay_draw_figures (drawing, overlay, stops, keep_clear);
}
