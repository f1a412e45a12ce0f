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

/* Four at once: what is added up is fetched and put back a fourth as often. In the order of one at
 * a time, so that the bits are the same. */
#define FIELDS 4

static void
add_four (float *restrict sum, const float *const *fields, const float *weights, gsize n)
{
  const float *restrict a = fields[0], *restrict b = fields[1];
  const float *restrict c = fields[2], *restrict d = fields[3];
  for (gsize i = 0; i < n; i++)
    sum[i] = sum[i] + weights[0] * a[i] + weights[1] * b[i] + weights[2] * c[i] + weights[3] * d[i];
}

static void
add_one (float *restrict sum, const float *restrict field, float weight, gsize n)
{
  for (gsize i = 0; i < n; i++)
    sum[i] += weight * field[i];
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
    float *block = sum + first + done;
    gsize count = MIN (n - done, (gsize)BLOCK);
    const float *four[FIELDS];
    float weights[FIELDS];
    guint n_held = 0;
    for (gsize i = 0; i < count; i++)
      block[i] = 0.0f;
    for (guint k = 0; k < n_fields; k++) {
      if (k == but)
        continue;
      four[n_held] = fields[k] + first + done;
      weights[n_held++] = (float)times[k];
      if (n_held < FIELDS)
        continue;
      add_four (block, four, weights, count);
      n_held = 0;
    }
    for (guint k = 0; k < n_held; k++)
      add_one (block, four[k], weights[k], count);
  }
}

void
sq_field_add_quick (double *total, const float *sum, const float *field, double times, gsize n)
{
  float weight = (float)times;
  for (gsize i = 0; i < n; i++)
    total[i] = sum[i] + weight * field[i];
}
