/* rows.h: work that is done row by row on several threads, with one outcome */
#pragma once

#include "light/sight.h"

#include <gio/gio.h>

G_BEGIN_DECLS

/* Does row @row. @sight is this thread's own. Rows may not touch each other's results. */
typedef void (*SqRowFunc) (guint row, SqSight *sight, gpointer data);

typedef struct {
  guint n_rows;
  SqRowFunc do_row;
  gpointer data;
} SqRows;

/* Does all rows, once each, on @threads threads (at least 1), the caller's among them. Where a
 * thread cannot be had, fewer do.
 * Returns: FALSE with G_IO_ERROR_CANCELLED if it was stopped between rows */
gboolean sq_rows_do (const SqRows *rows, int threads, GCancellable *cancellable, GError **error);

G_END_DECLS
