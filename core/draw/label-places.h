/* label-places.h: the places that one label might take, and what each costs
 *
 * For label-board.h alone. */
#pragma once

#include "draw/label-index.h"
#include "draw/place-tags.h"

G_BEGIN_DECLS

/* One place that a label might take. */
typedef struct {
  SqPaperPoint at;
  int side;
  double gap_mm; /* from its thing */
  gboolean has_leader;
  SqPaperLine leader;
  SqPaperBox head, rows, box; /* box: round both */
  SqPaperBox reach;           /* round label, its air, and leader */
  double cost;                /* against what does not move */
  int order;
} SqLabelPlace;

/* Those from which no leader is long, and the others. */
typedef enum { SQ_RING_NEAR, SQ_RING_FAR, SQ_RINGS } SqLabelRing;

/* No place of the far ring costs less than this. */
#define SQ_LEAST_FAR_COST 22.0

/* Wanted round every label; half of it is its own. */
#define SQ_LABEL_AIR_MM 0.8
#define SQ_COST_AIR 2.0 /* per mm² of it taken */

/* sq_label_places:
 * @reach: (out): round all of them
 *
 * Returns: (transfer full): SqLabelPlace, the cheapest first */
GArray *sq_label_places (
  const SqWish *wish, int detail, SqLabelRing ring, SqLabelIndex *index, SqPaperBox *reach);

/* The place of a label that was put at wish->at by hand. */
SqLabelPlace sq_label_place_pinned (const SqWish *wish, int side, SqLabelIndex *index);

/* @place, moved a little. */
SqLabelPlace sq_label_place_moved (
  const SqWish *wish, int detail, const SqLabelPlace *place, SqPaperPoint by, SqLabelIndex *index);

/* TRUE if they are so far apart that they cost each other nothing. Asked so often that it is here.
 */
static inline gboolean
sq_label_reaches_apart (const SqPaperBox *a, const SqPaperBox *b)
{
  return a->x_mm >= b->x_mm + b->width_mm || b->x_mm >= a->x_mm + a->width_mm ||
         a->y_mm >= b->y_mm + b->height_mm || b->y_mm >= a->y_mm + a->height_mm;
}

/* What two labels at these places cost each other. */
double sq_label_places_between (const SqLabelPlace *a, const SqLabelPlace *b);

G_END_DECLS
