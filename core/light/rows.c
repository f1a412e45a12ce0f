/* rows.c: work that is done row by row on several threads, with one outcome */
#include "light/rows.h"

#define MOST_THREADS 256

typedef struct {
  const SqRows *rows;
  GCancellable *cancellable;
  gint next; /* atomic: the row that nobody has taken yet */
} Work;

static gpointer
work_on (gpointer data)
{
  Work *work = data;
  const SqRows *rows = work->rows;
  SqSight sight;
  sq_sight_init (&sight);
  while (!g_cancellable_is_cancelled (work->cancellable)) {
    guint row = (guint)g_atomic_int_add (&work->next, 1);
    if (row >= rows->n_rows)
      break;
    rows->do_row (row, &sight, rows->data);
  }
  sq_sight_clear (&sight);
  return NULL;
}

gboolean
sq_rows_do (const SqRows *rows, int threads, GCancellable *cancellable, GError **error)
{
  Work work = { .rows = rows, .cancellable = cancellable };
  GThread *others[MOST_THREADS];
  guint n_others = 0, wanted = MIN ((guint)CLAMP (threads, 1, MOST_THREADS), rows->n_rows);
  for (guint i = 1; i < wanted; i++) {
    GThread *thread = g_thread_try_new ("light", work_on, &work, NULL);
    if (thread)
      others[n_others++] = thread;
  }
  work_on (&work);
  for (guint i = 0; i < n_others; i++)
    g_thread_join (others[i]);
  return !g_cancellable_set_error_if_cancelled (cancellable, error);
}
