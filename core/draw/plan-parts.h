/* plan-parts.h: a plan worked out before it is drawn, for plan.c and plan-labels.c */
#pragma once

#include "draw/cable-run.h"
#include "draw/camera-symbol.h"
#include "draw/opening-symbol.h"
#include "draw/panel-symbol.h"
#include "draw/place-tags.h"
#include "draw/plan.h"
#include "draw/supply-symbol.h"
#include "draw/throw.h"

G_BEGIN_DECLS

typedef struct {
  const SqPlanRequest *request;
  const SqScene *scene;
  SqDrawing *drawing;
  GArray *blocks; /* SqWallBlock */
  GArray *throws; /* SqThrow, by fixture; without any where it is not to be drawn */
  GArray *fields; /* SqCameraField, by camera */
  GArray *runs;   /* SqCableRun, by cable */
  SqPlace room;   /* somewhere inside, for what must be said on the room's side */
} SqPlanParts;

/* TRUE if the place is on the part of the page that the plan may use. */
gboolean sq_plan_shows (const SqPlanParts *parts, SqPaperPoint at);

/* All words of a plan: placed, then drawn in two layers, leaders under everything. */
SqPlanLabels *sq_plan_labels_new (const SqPlanParts *parts);
void sq_plan_labels_free (SqPlanLabels *labels);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqPlanLabels, sq_plan_labels_free)
void sq_plan_labels_report (const SqPlanLabels *labels, SqPlanReport *report);
void sq_plan_labels_draw_leaders (const SqPlanLabels *labels, const SqPlanParts *parts);
void sq_plan_labels_draw (const SqPlanLabels *labels, const SqPlanParts *parts);

/* What the placed labels must keep clear of. */
SqLabelObstacles *sq_plan_obstacles (const SqPlanParts *parts);

G_END_DECLS
