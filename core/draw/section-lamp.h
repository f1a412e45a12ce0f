/* section-lamp.h: a lamp from the side: its body at true size, and what holds it */
#pragma once

#include "draw/lamp-symbol.h"
#include "draw/section-cut.h"

G_BEGIN_DECLS

/* The plan's own symbol, seen from the side; its parts that a side shows are in there. */
typedef struct {
  SqFixture side;       /* the fixture as its symbol must read it */
  GPtrArray *modifiers; /* SqModifier, owned, of @side */
  SqLamp lamp;
} SqSideLamp;

/* Lamps that point out of the cut or into it show their face or their back, as lamps that point up
 * or down do on the plan. */
SqSideLamp *sq_side_lamp_new (const SqView *view,
                              const SqScene *scene,
                              const SqCutPlane *plane,
                              const SqFixture *fixture);
void sq_side_lamp_free (SqSideLamp *lamp);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqSideLamp, sq_side_lamp_free)

/* sq_hang_height_m:
 * How high the pipe or ceiling is that a hung lamp hangs from. The scene knows the lens; from there
 * to the pipe it is half the body, a yoke and a clamp (common practice), hence "about".
 * Returns: NAN where nothing is hung */
double sq_hang_height_m (const SqScene *scene, const SqFixture *fixture);

/* sq_draw_side_lamp:
 * @ceiling_m: over it, NAN: open above
 *
 * What holds it first, then the body. */
void sq_draw_side_lamp (SqDrawing *drawing,
                        const SqScene *scene,
                        const SqCutPlane *plane,
                        const GArray *obstacles,
                        const SqSideLamp *lamp,
                        double ceiling_m);

/* How far to both sides on the floor its stand reaches, in metres; 0 where it has no legs. */
double sq_stand_radius_m (const SqScene *scene, int mount, const char *stand_id);

/* A stand on the floor under @top: a stem and two of its legs. */
void sq_draw_side_stand (SqDrawing *drawing, SqPaperPoint top, double floor_mm, double radius_mm);

G_END_DECLS
