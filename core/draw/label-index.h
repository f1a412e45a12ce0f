/* label-index.h: what a label would cover and cross, looked up among its neighbours alone */
#pragma once

#include "draw/label-obstacles.h"

G_BEGIN_DECLS

/* The obstacles of a plan in a grid of cells. Keeps count of what it looked at: for one thread. */
typedef struct SqLabelIndex SqLabelIndex;

/* @obstacles outlives it and stays as it is. */
SqLabelIndex *sq_label_index_new (const SqLabelObstacles *obstacles);
void sq_label_index_free (SqLabelIndex *index);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLabelIndex, sq_label_index_free)

/* What a box lies on. */
typedef struct {
  double boxes_cost;       /* of all that it covers */
  double lines_cost;       /* of all that crosses it */
  double solid_mm2;        /* covered of what is SQ_COST_PANEL or dearer */
  double solid_in_air_mm2; /* the same of the box and the air round it */
} SqLabelCover;

SqLabelCover sq_label_index_cover (SqLabelIndex *index, SqPaperBox box, double air_mm);

/* What a leader to @of would cross on its way. */
double sq_label_index_leader_cost (SqLabelIndex *index, SqPaperLine leader, const void *of);

/* TRUE if something solid reaches into @box that is not @of. */
gboolean sq_label_index_any_solid (SqLabelIndex *index, SqPaperBox box, const void *of);

gboolean sq_label_index_is_outside (const SqLabelIndex *index, SqPaperPoint at);
SqPaperBox sq_label_index_field (const SqLabelIndex *index);

G_END_DECLS
