/* shadow.h: the shadow that somebody throws on the floor: outline, direction, penumbra */
#pragma once

#include "draw/camera-symbol.h"
#include "draw/ray-cut.h"

G_BEGIN_DECLS

/* Half as wide as somebody's shoulders: what the light passes by. */
#define SQ_FIGURE_RADIUS_M 0.20

typedef struct {
  gboolean any;
  SqPaperPoint foot;        /* of the figure */
  SqPaperLine edge[2];      /* from where the light touches the figure to the shadow's end */
  SqPaperPoint penumbra[2]; /* where the half-shadow's outer edges end */
} SqShadow;

/* The shadow of the figure at @mark in the light of @fixture, on the mark's floor, cut at walls.
 * None where the lamp is soft, off, blocked, or turned so far away that less than half of its peak
 * reaches the face; nor where the figure lies. */
SqShadow sq_shadow (const SqView *view,
                    const SqScene *scene,
                    const GArray *blocks,
                    const SqFixture *fixture,
                    const SqMark *mark);

/* TRUE if the middle of the shadow lies within the camera's field. */
gboolean sq_camera_sees_shadow (const SqCameraField *field, const SqShadow *shadow);

void sq_draw_shadow (SqDrawing *drawing, const SqShadow *shadow);

G_END_DECLS
