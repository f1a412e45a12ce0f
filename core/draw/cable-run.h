/* cable-run.h: the way of a cable over the plan, from where it stands to where it leads */
#pragma once

#include "draw/drawing.h"
#include "scene/scene.h"

G_BEGIN_DECLS

/* A cable's way on paper, cut where it leaves the field. To a supply that has no place it leaves
 * over the side that is nearest. */
typedef struct {
  SqPaperPoint *points; /* owned */
  guint n_points;       /* 0: nothing to draw */
  gboolean leaves;      /* the last point is where it leaves, to @leads_to */
  const SqThing *leads_to;
  SqPaperPoint label_at; /* middle of its longest straight part; or near where it leaves */
  char *text;            /* owned: length and section, `to …` */
} SqCableRun;

SqCableRun sq_cable_run (const SqView *view, const SqScene *scene, const SqCable *cable);
void sq_cable_run_clear (SqCableRun *run);
void sq_draw_cable (SqDrawing *drawing, const SqCableRun *run);

G_END_DECLS
