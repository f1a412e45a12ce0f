/* field-sum.c: fields of light, weighed and added up */
#include "light/field-sum.h"

/* So many values stay in a near cache while all fields are added to them; fewer would read each
 * field in pieces too short to be fetched ahead. */
#define BLOCK 4096

/* Four at once: what is added up is fetched and put back a fourth as often. In the order of one at
 * a time, so that the bits are the same. */
#define FIELDS 4

void
sq_field_add (double *total, const double *field, double times, gsize n)
{
  for (gsize i = 0; i < n; i++)
    total[i] += times * field[i];
}

static void
add_four (double *restrict sum, const double *const *fields, const double *times, gsize n)
{
  const double *restrict a = fields[0], *restrict b = fields[1];
  const double *restrict c = fields[2], *restrict d = fields[3];
  for (gsize i = 0; i < n; i++)
    sum[i] = sum[i] + times[0] * a[i] + times[1] * b[i] + times[2] * c[i] + times[3] * d[i];
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
    gsize from = first + done, count = MIN (n - done, (gsize)BLOCK);
    guint k = 0;
    for (gsize i = 0; i < count; i++)
      total[from + i] = 0.0;
    for (; k + FIELDS <= n_fields; k += FIELDS) {
      const double *const four[FIELDS] = { fields[k] + from, fields[k + 1] + from,
                                           fields[k + 2] + from, fields[k + 3] + from };
      add_four (total + from, four, times + k, count);
    }
    for (; k < n_fields; k++)
      sq_field_add (total + from, fields[k] + from, times[k], count);
  }
}

static void
add_four_quick (float *restrict sum, const float *const *fields, const float *weights, gsize n)
{
  const float *restrict a = fields[0], *restrict b = fields[1];
  const float *restrict c = fields[2], *restrict d = fields[3];
  for (gsize i = 0; i < n; i++)
    sum[i] = sum[i] + weights[0] * a[i] + weights[1] * b[i] + weights[2] * c[i] + weights[3] * d[i];
}

static void
add_one_quick (float *restrict sum, const float *restrict field, float weight, gsize n)
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
      add_four_quick (block, four, weights, count);
      n_held = 0;
    }
    for (guint k = 0; k < n_held; k++)
      add_one_quick (block, four[k], weights[k], count);
  }
}

void
sq_field_add_quick (double *total, const float *sum, const float *field, double times, gsize n)
{
  float weight = (float)times;
  for (gsize i = 0; i < n; i++)
    total[i] = sum[i] + weight * field[i];
}
