/* camera.h: a camera: where it looks, how much it sees, how it is exposed */
#pragma once

#include "scene/common.h"

G_BEGIN_DECLS

typedef struct {
  SqThing thing;
  char *id;
  char *label;
  SqPoint at; /* of the entrance pupil */
  SqAim aim;
  double focal_mm;
  double gate_mm[2]; /* width, height */
  double squeeze;    /* anamorphic: 1 none */
  double aspect;     /* width : height of what is kept of the gate; NAN: all */
  double t_stop;
  double iso;
  double fps;
  double shutter_deg;
  double nd_stops;
  double white_k;
  SqCommon common;
} SqCamera;

extern const SqKind sq_camera_kind;

/* What the frame takes of the gate, in millimetres, after @aspect. */
void sq_camera_frame_mm (const SqCamera *camera, double *width_mm, double *height_mm);

/* Angles of view: 2 atan (w / 2f), the width unsqueezed. */
double sq_camera_view_across_deg (const SqCamera *camera);
double sq_camera_view_up_deg (const SqCamera *camera);

/* Exposure time: shutter angle / (360 · frames a second). */
double sq_camera_exposure_s (const SqCamera *camera);

G_END_DECLS
