/* lamp-symbol.h: a lamp on the plan: its back tells the source, its front how the light leaves
 *
 * Drawn to scale from its class, never under 4 mm. What is put in its way follows in order,
 * outward. */
#pragma once

#include "draw/drawing.h"
#include "draw/lamp-mount.h"
#include "scene/scene.h"

G_BEGIN_DECLS

/* No body is drawn narrower than this; panels have limits of their own. */
#define SQ_LAMP_LEAST_MM 4.0
#define SQ_PANEL_LAMP_LEAST_DEPTH_MM 2.6

/* Closer to straight up or down than this the throw has no direction on the plan. */
#define SQ_LAMP_UPRIGHT_DEG 15.0

/* One lamp to draw: where and how. */
typedef struct {
  const SqClass *lamp_class;
  const SqFixture *fixture; /* (nullable): none for a legend: on, bare, held by nothing */
  SqPaperPoint at;          /* middle of the emitting face */
  double azimuth_deg;       /* of the throw; where it is upright, of the face's up */
  double elevation_deg;
  double roll_deg;
  gboolean with_mount; /* legs, pipe … */
  double legs_radius_m;
} SqLamp;

typedef enum {
  SQ_FORM_AIMED,
  SQ_FORM_DOWN,
  SQ_FORM_UP,
  SQ_FORM_ROUND, /* shines all round */
} SqLampForm;

/* As drawn, in millimetres. */
typedef struct {
  SqLampForm form;
  double width_mm, depth_mm; /* of the body: across the throw and along it */
  double face_mm;            /* width of the emitting face */
  double face_up_mm;         /* its other size, seen where the lamp is upright */
  double skirt_mm;           /* from the body to the face: the depth of a cloth's skirt */
  double front_mm;           /* how far the optics' mark reaches ahead of the face */
} SqLampSize;

/* The lamp of a scene's fixture as @view shows it. */
SqLamp sq_lamp_of_fixture (const SqScene *scene, const SqFixture *fixture, const SqView *view);

SqLampSize sq_lamp_size (const SqView *view, const SqLamp *lamp);

/* The body alone, then with optics and modifiers; both without what holds it. */
SqTurnedBox sq_lamp_body (const SqView *view, const SqLamp *lamp);
SqTurnedBox sq_lamp_outline (const SqView *view, const SqLamp *lamp);

/* How far along the throw, from the emitting face, the outermost mark reaches. */
double sq_lamp_reach_mm (const SqView *view, const SqLamp *lamp);

void sq_draw_lamp (SqDrawing *drawing, const SqLamp *lamp);

G_END_DECLS
