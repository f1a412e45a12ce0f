/* field-sum.c: fields of light, weighed and added up */
#include "light/field-sum.h"

/* So many values stay in a near cache while all fields are added to them; fewer would read each
 * field in pieces too short to be fetched ahead. */
#define BLOCK 4096

void
sq_field_add (double *total, const double *field, double times, gsize n)
{
  for (gsize i = 0; i < n; i++)
    total[i] += times * field[i];
}

void
sq_field_sum (double *total,
              const double *const *fields,
              const double *times,
              guint n_fields,
              gsize first,
              gsize n)
{
  for (gsize done = 0; done < n; done += BLOCK) {
    double *sum = total + first + done;
    gsize count = MIN (n - done, (gsize)BLOCK);
    for (gsize i = 0; i < count; i++)
      sum[i] = 0.0;
    for (guint k = 0; k < n_fields; k++)
      sq_field_add (sum, fields[k] + first + done, times[k], count);
  }
}

void
sq_field_sum_quick (float *sum,
                    const float *const *fields,
                    const double *times,
                    guint n_fields,
                    guint but,
                    gsize first,
                    gsize n)
{
  for (gsize done = 0; done < n; done += BLOCK) {
    float *restrict block = sum + first + done;
    gsize count = MIN (n - done, (gsize)BLOCK);
    for (gsize i = 0; i < count; i++)
      block[i] = 0.0f;
    for (guint k = 0; k < n_fields; k++) {
      const float *restrict field = k == but ? NULL : fields[k] + first + done;
      float weight = (float)times[k];
      for (gsize i = 0; field && i < count; i++)
        block[i] += weight * field[i];
    }
  }
}

void
sq_field_add_quick (double *total, const float *sum, const float *field, double times, gsize n)
{
  float weight = (float)times;
  for (gsize i = 0; i < n; i++)
    total[i] = sum[i] + weight * field[i];
}
