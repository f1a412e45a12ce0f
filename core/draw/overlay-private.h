/* overlay-private.h: what the parts of the overlay share; for overlay*.c and their tests alone */
#pragma once

#include "draw/contour.h"
#include "draw/overlay.h"

G_BEGIN_DECLS

/* Whole stops from the set exposure. */
#define SQ_FIRST_CONTOUR (-5)
#define SQ_LAST_CONTOUR 3
#define SQ_CONTOURS (SQ_LAST_CONTOUR - SQ_FIRST_CONTOUR + 1)

struct SqLightOverlay {
  double set_lux, t_stop;
  SqUnits units;
  SqGrid *grid;                  /* stops from the set exposure, NAN where nothing is shown */
  GPtrArray *outline;            /* SqContour: of all that has a value */
  GPtrArray *rooms;              /* SqContour (nullable): where walls enclose them */
  GPtrArray *dark;               /* SqContour: under the darkest band, where that shows */
  GPtrArray *solids;             /* SqContour: pieces that the plane of the map cuts through */
  GPtrArray *lines[SQ_CONTOURS]; /* SqContour */
  GPtrArray *areas[SQ_CONTOURS]; /* SqContour: of all that is brighter */
};

/* Of a band, as this view shows it: with one ink its grey. */
SqColour sq_overlay_colour (const SqView *view, gboolean stops, int band);

/* Adds @contour to the current path. */
void sq_contour_path (SqDrawing *drawing, const SqContour *contour);

/* What stands on the contour @level stops from the set exposure. Returns: (transfer full) */
char *sq_overlay_figure (const SqLightOverlay *overlay, gboolean stops, int level);

/* A figure on a contour, where it stands. */
typedef struct {
  SqPaperPoint at; /* its middle */
  double turn_rad;
  double width_mm;
  int level; /* stops from the set exposure */
} SqOverlayFigure;

/* Upright box round its patch. */
SqPaperBox sq_overlay_figure_box (const SqOverlayFigure *figure);

/* Returns: (transfer full): SqOverlayFigure, clear of @keep_clear */
GArray *sq_overlay_place_figures (SqDrawing *drawing,
                                  const SqLightOverlay *overlay,
                                  gboolean stops,
                                  const SqKeepClear *keep_clear);

/* The figures along the lines. */
void sq_overlay_draw_figures (SqDrawing *drawing,
                              const SqLightOverlay *overlay,
                              gboolean stops,
                              const SqKeepClear *keep_clear);

G_END_DECLS
