/* field-sum.h: fields of light, weighed and added up */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* total[i] += times · field[i], one multiplication and one addition each. */
void sq_field_add (double *total, const double *field, double times, gsize n);

/* total[first + i] = sum of times[k] · fields[k][first + i] in the order of k: the same bits as one
 * sq_field_add() after the other from 0. */
void sq_field_sum (double *total,
                   const double *const *fields,
                   const double *times,
                   guint n_fields,
                   gsize first,
                   gsize n);

/* For the eye, in single precision: sum[first + i] = all but number @but (which may be past the
 * last) of times[k] · fields[k][first + i]. */
void sq_field_sum_quick (float *sum,
                         const float *const *fields,
                         const double *times,
                         guint n_fields,
                         guint but,
                         gsize first,
                         gsize n);

/* total[i] = sum[i] + times · field[i]. */
void sq_field_add_quick (
  double *total, const float *sum, const float *field, double times, gsize n);

G_END_DECLS
