/* crew.c: threads that do work row by row, with one outcome however many they are
 *
 * Plain pthreads: the thread sanitizer sees through them. A round of work is open while the caller
 * is at it, and ends when nobody is busy with it. Who wakes up too late is not waited for. */
#include "light/crew.h"

#include <pthread.h>

#define MOST_THREADS 256

struct SqCrew {
  pthread_mutex_t mutex;
  pthread_cond_t begins, ends;
  pthread_t others[MOST_THREADS];
  guint n_others, n_busy;
  guint64 round;
  gboolean open, leave;
  const SqRows *rows; /* of this round */
  GCancellable *cancellable;
  gint next; /* atomic: the row that nobody has taken yet */
  SqRowScratch *scratch;
};

static void
work_on (SqCrew *crew, SqRowScratch *scratch)
{
  const SqRows *rows = crew->rows;
  while (!g_cancellable_is_cancelled (crew->cancellable)) {
    guint row = (guint)g_atomic_int_add (&crew->next, 1);
    if (row >= rows->n_rows)
      break;
    rows->do_row (row, scratch, rows->data);
  }
}

static void *
live (void *data)
{
  SqCrew *crew = data;
  g_autoptr (SqRowScratch) scratch = sq_row_scratch_new ();
  guint64 done = 0;
  pthread_mutex_lock (&crew->mutex);
  for (;;) {
    while ((crew->round == done || !crew->open) && !crew->leave)
      pthread_cond_wait (&crew->begins, &crew->mutex);
    if (crew->leave)
      break;
    done = crew->round;
    crew->n_busy++;
    pthread_mutex_unlock (&crew->mutex);
    work_on (crew, scratch);
    pthread_mutex_lock (&crew->mutex);
    if (--crew->n_busy == 0)
      pthread_cond_signal (&crew->ends);
  }
  pthread_mutex_unlock (&crew->mutex);
  return NULL;
}

SqCrew *
sq_crew_new (int threads)
{
  SqCrew *crew = g_new0 (SqCrew, 1);
  pthread_mutex_init (&crew->mutex, NULL);
  pthread_cond_init (&crew->begins, NULL);
  pthread_cond_init (&crew->ends, NULL);
  crew->scratch = sq_row_scratch_new ();
  for (int i = 1; i < CLAMP (threads, 1, MOST_THREADS); i++)
    if (pthread_create (&crew->others[crew->n_others], NULL, live, crew) == 0)
      crew->n_others++;
  return crew;
}

void
sq_crew_free (SqCrew *crew)
{
  if (!crew)
    return;
  pthread_mutex_lock (&crew->mutex);
  crew->leave = TRUE;
  pthread_cond_broadcast (&crew->begins);
  pthread_mutex_unlock (&crew->mutex);
  for (guint i = 0; i < crew->n_others; i++)
    pthread_join (crew->others[i], NULL);
  pthread_cond_destroy (&crew->ends);
  pthread_cond_destroy (&crew->begins);
  pthread_mutex_destroy (&crew->mutex);
  sq_row_scratch_free (crew->scratch);
  g_free (crew);
}

gboolean
sq_crew_do (SqCrew *crew, const SqRows *rows, GCancellable *cancellable, GError **error)
{
  gboolean shared = crew->n_others > 0 && rows->n_rows > 1;
  pthread_mutex_lock (&crew->mutex);
  crew->rows = rows;
  crew->cancellable = cancellable;
  g_atomic_int_set (&crew->next, 0);
  if (shared) {
    crew->round++;
    crew->open = TRUE;
    pthread_cond_broadcast (&crew->begins);
  }
  pthread_mutex_unlock (&crew->mutex);
  work_on (crew, crew->scratch);
  pthread_mutex_lock (&crew->mutex);
  crew->open = FALSE;
  while (crew->n_busy > 0)
    pthread_cond_wait (&crew->ends, &crew->mutex);
  pthread_mutex_unlock (&crew->mutex);
  return !g_cancellable_set_error_if_cancelled (cancellable, error);
}
