/* supply-symbol.h: generators, distributions, outlets, and the cables between */
#pragma once

#include "draw/lamp-symbol.h"
#include "draw/wall-shape.h"

G_BEGIN_DECLS

/* @angle_rad: (cairo's sense) an outlet's flat side lies across it; others stay upright */
void sq_draw_supply (SqDrawing *drawing, SqPaperPoint at, int kind, double angle_rad);
SqTurnedBox sq_supply_outline (SqPaperPoint at, int kind);

/* Away from the wall that @place stands at; up the page where there is none near. */
double sq_supply_angle_rad (const GArray *blocks, SqPlace place);

/* A cable's way on paper, cut where it leaves the field. */
typedef struct {
  SqPaperPoint *points; /* owned */
  guint n_points;       /* 0: nothing to draw */
  gboolean leaves;      /* the last point is where it leaves, to @leads_to */
  const SqThing *leads_to;
  SqPaperPoint label_at; /* middle of its longest straight part */
  char *text;            /* owned: length and section, `to …` */
} SqCableRun;

SqCableRun sq_cable_run (const SqView *view, const SqScene *scene, const SqCable *cable);
void sq_cable_run_clear (SqCableRun *run);
void sq_draw_cable (SqDrawing *drawing, const SqCableRun *run);

G_END_DECLS
