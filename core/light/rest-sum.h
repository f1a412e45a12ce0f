/* rest-sum.h: what all fields but one add up to, kept while that one is dragged or dimmed */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* A field as it goes into a sum. */
typedef struct {
  guint64 stamp; /* another for any other content */
  double output;
} SqAddend;

typedef enum {
  SQ_REST_NOT,  /* add up everything */
  SQ_REST_MAKE, /* add up all but one into @sum, and that one to it */
  SQ_REST_USE,  /* @sum stands: add that one */
} SqRestUse;

typedef struct {
  GArray *addends; /* SqAddend: of the last sum; NULL at first */
  float *sum;      /* of all but number @but, if @stands */
  gsize n_points;
  guint but;
  gboolean stands;
} SqRestSum;

/* sq_rest_sum_next:
 * @addends, @n: of the sum that comes now, in the order of the lamps
 * @n_points: of each field
 *
 * Compares with the last sum: where one and the same addend goes on changing, the rest of them need
 * not be added up again. rest->but says which; rest->sum has room for all points. */
SqRestUse sq_rest_sum_next (SqRestSum *rest, const SqAddend *addends, guint n, gsize n_points);

void sq_rest_sum_clear (SqRestSum *rest);

G_END_DECLS
