/* rest-sum.c: what all fields but one add up to, kept while that one is dragged or dimmed */
#include "light/rest-sum.h"

static gboolean
same (const SqAddend *a, const SqAddend *b)
{
  return a->stamp == b->stamp && a->output == b->output;
}

/* How many addends differ from the last time, and which is the last of them. */
static guint
count_changes (const SqRestSum *rest, const SqAddend *addends, guint n, guint *which)
{
  guint changes = 0;
  for (guint i = 0; i < n; i++)
    if (!same (&g_array_index (rest->addends, SqAddend, i), &addends[i])) {
      *which = i;
      changes++;
    }
  return changes;
}

SqRestUse
sq_rest_sum_next (SqRestSum *rest, const SqAddend *addends, guint n, gsize n_points)
{
  SqRestUse use = SQ_REST_NOT;
  guint which = rest->but;
  gboolean like = rest->addends && rest->addends->len == n && rest->n_points == n_points;
  guint changes = like ? count_changes (rest, addends, n, &which) : n;
  if (changes > 1 || n < 2)
    rest->stands = FALSE;
  else if (rest->stands && which == rest->but)
    use = SQ_REST_USE;
  else if (changes == 1)
    use = SQ_REST_MAKE;
  if (use == SQ_REST_MAKE) {
    rest->sum = g_renew (float, rest->sum, n_points);
    rest->but = which;
    rest->stands = TRUE;
  }
  if (!rest->addends)
    rest->addends = g_array_new (FALSE, FALSE, sizeof (SqAddend));
  g_array_set_size (rest->addends, 0);
  g_array_append_vals (rest->addends, addends, n);
  rest->n_points = n_points;
  return use;
}

void
sq_rest_sum_clear (SqRestSum *rest)
{
  g_clear_pointer (&rest->addends, g_array_unref);
  g_clear_pointer (&rest->sum, g_free);
}
