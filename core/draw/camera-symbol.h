/* camera-symbol.h: a camera on the plan and what it sees */
#pragma once

#include "draw/lamp-symbol.h"
#include "draw/wall-shape.h"

G_BEGIN_DECLS

/* The black box with its letter, pupil at @at. */
void sq_draw_camera (SqDrawing *drawing, SqPaperPoint at, double azimuth_deg, const char *label);
SqTurnedBox sq_camera_outline (const SqView *view, SqPaperPoint at, double azimuth_deg);

/* Its field of view on the plan. */
typedef struct {
  SqPaperPoint pupil;
  double angle_rad;   /* of the line of sight, in cairo's sense */
  double half_rad;    /* atan (width / 2f), width unsqueezed */
  double frame_mm;    /* along the line of sight to the frame: the distance of the mark */
  double reach_mm[2]; /* along each edge, left and right of the line of sight, to what ends it: a
                       * wall, past the frame a window or door too; with neither half as far
                       * again as the frame */
  double seen[2];     /* share of half the frame, left and right, that no wall hides */
} SqCameraField;

/* The frame stands at the mark that the camera is aimed at, else at its aim, else at the mark
 * nearest to its line of sight. */
SqCameraField sq_camera_field (const SqView *view,
                               const SqScene *scene,
                               const GArray *blocks,
                               const SqCamera *camera);

/* Where an edge (0 left, 1 right) stands at @along_mm down the line of sight. */
SqPaperPoint sq_camera_edge_at (const SqCameraField *field, int edge, double along_mm);

/* @active: the camera that takes this shot; others only reach to their frame, thinner */
void sq_draw_camera_field (SqDrawing *drawing, const SqCameraField *field, gboolean active);

G_END_DECLS
