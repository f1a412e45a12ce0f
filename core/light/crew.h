/* crew.h: threads that do work row by row, with one outcome however many they are */
#pragma once

#include "light/row-scratch.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* Does row @row. @scratch is this thread's own. Rows may not touch each other's results. */
typedef void (*SqRowFunc) (guint row, SqRowScratch *scratch, gpointer data);

typedef struct {
  guint n_rows;
  SqRowFunc do_row;
  gpointer data;
} SqRows;

/* Threads that wait for work. One caller at a time may give it to them. */
typedef struct SqCrew SqCrew;

/* @threads: 1 to 256, the caller's own among them; where one cannot be had, fewer there are. */
SqCrew *sq_crew_new (int threads);
void sq_crew_free (SqCrew *crew);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqCrew, sq_crew_free)

/* Does all rows, once each. Returns: FALSE with G_IO_ERROR_CANCELLED if it was stopped between rows
 */
gboolean sq_crew_do (SqCrew *crew, const SqRows *rows, GCancellable *cancellable, GError **error);

G_END_DECLS
