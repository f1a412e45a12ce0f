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

/* The same of fields in single precision, for the eye. */
void sq_field_sum_quick (double *total,
                         const float *const *fields,
                         const double *times,
                         guint n_fields,
                         gsize first,
                         gsize n);

G_END_DECLS
