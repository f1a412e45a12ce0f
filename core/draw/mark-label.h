/* mark-label.h: who stands at a mark, and what the meter reads there */
#pragma once

#include "base/figure-text.h"
#include "draw/drawing.h"
#include "light/readings.h"

G_BEGIN_DECLS

typedef struct {
  char *letter;
  char *light; /* `311 lx  T3.9`; NULL: no reading */
  char *ratio; /* `6.2 : 1   back 0`; with @light */
} SqMarkLabel;

/* @reading: (nullable) */
SqMarkLabel *sq_mark_label_new (const SqMark *mark,
                                const SqReadings *readings,
                                const SqMarkReading *reading,
                                SqUnits units);
void sq_mark_label_free (SqMarkLabel *label);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqMarkLabel, sq_mark_label_free)

/* The light of one lamp that gives the set stop. A lamp by itself is read flat, while set_lux is a
 * dome's. */
double sq_flat_set_lux (const SqReadings *readings);

/* Stops of the back light from the set stop; NAN: none. */
double sq_back_from_set_stops (const SqReadings *readings, const SqMarkReading *reading);

/* Both relative to the letter's middle; @box is of no width where there is no reading. */
void sq_mark_label_shape (
  SqDrawing *drawing, const SqMarkLabel *label, gboolean left, SqPaperBox *letter, SqPaperBox *box);

/* @at: the letter's middle */
void sq_draw_mark_label (SqDrawing *drawing,
                         SqPaperPoint at,
                         const SqMarkLabel *label,
                         gboolean left);

G_END_DECLS
