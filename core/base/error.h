/* error.h: what can go wrong with what a user gives us, as one GError domain */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define SQ_ERROR (sq_error_quark ())

/* SQ_ERROR_SYNTAX: the text is not JSON (RFC 8259)
 * SQ_ERROR_VALUE: a value is missing, of the wrong kind or out of range
 * SQ_ERROR_REFERENCE: an id that does not exist, stands twice or names the wrong kind of thing
 * SQ_ERROR_GEOMETRY: a thing that cannot be built: no size, outside its wall, aimed at itself
 * SQ_ERROR_NEWER: the file was written by a later Squarelaw
 * SQ_ERROR_LIMIT: more than the stated limits allow
 * SQ_ERROR_FILE: the file system said no
 * SQ_ERROR_USAGE: the command line is wrong
 *
 * Messages are one line: place, what is wrong, what was expected. The caller that knows the file's
 * name puts it in front. */
typedef enum {
  SQ_ERROR_SYNTAX,
  SQ_ERROR_VALUE,
  SQ_ERROR_REFERENCE,
  SQ_ERROR_GEOMETRY,
  SQ_ERROR_NEWER,
  SQ_ERROR_LIMIT,
  SQ_ERROR_FILE,
  SQ_ERROR_USAGE,
} SqError;

GQuark sq_error_quark (void);

G_END_DECLS
