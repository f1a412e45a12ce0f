/* overlay.h: light under the plan: bands a stop wide, contours and their figures */
#pragma once

#include "draw/drawing.h"
#include "light/map.h"

G_BEGIN_DECLS

/* A light map made ready for drawing at any scale. */
typedef struct SqLightOverlay SqLightOverlay;

/* sq_light_overlay_new:
 * @scene: with its look applied: its rooms, its active camera's stop, its units
 * @map: lux over the plan; may be freed afterwards
 *
 * Smooths the logarithm of the map a little (1.3 steps) and traces a contour at every whole stop
 * from 5 under to 3 over the set exposure.
 * Returns: (transfer full) */
SqLightOverlay *sq_light_overlay_new (const SqScene *scene, const SqLightMap *map);
void sq_light_overlay_free (SqLightOverlay *overlay);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLightOverlay, sq_light_overlay_free)

/* Where figures had better not stand. */
typedef struct {
  const SqPaperBox *boxes; /* never in these */
  guint n_boxes;
  const SqPaperLine *lines; /* not across these where it can be helped */
  guint n_lines;
} SqKeepClear;

/* sq_light_overlay_draw:
 * @stops: colour and figure by stops from the set exposure, instead of lux or footcandles
 * @keep_clear: (nullable)
 *
 * Draws through the drawing's view, within what is clipped already. */
void sq_light_overlay_draw (SqDrawing *drawing,
                            const SqLightOverlay *overlay,
                            gboolean stops,
                            const SqKeepClear *keep_clear);

/* Height that the ramp takes with both rows of figures. */
#define SQ_RAMP_HEIGHT_MM 13.4

/* The ramp with lux (or footcandles) and stops under it, from @at (its top left corner) on. */
void sq_light_overlay_draw_ramp (SqDrawing *drawing,
                                 const SqLightOverlay *overlay,
                                 gboolean stops,
                                 SqPaperPoint at,
                                 double width_mm);

/* sq_level_text:
 * @lux: of a contour
 *
 * Figures in lux or footcandles; on the series 1 2 4 8 … 1024 where @lux is within a sixth of a
 * stop of it, else to two figures. Returns: (transfer full) */
char *sq_level_text (double lux, SqUnits units);

/* Whether the figures of this overlay are those of the series, up to a sixth of a stop off. */
gboolean sq_light_overlay_is_rounded (const SqLightOverlay *overlay);

G_END_DECLS
