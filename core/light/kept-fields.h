/* kept-fields.h: maps that are asked for again and again, with what moved done anew and no more
 *
 * Light adds up: a map is the sum of one field a lamp, at unit output, times its level. Fields are
 * kept, with what they were worked out from. Asked for another scene, the store finds for each lamp
 * the field that is nearest: a dimmer costs a sum, a lamp that moved its own field, a person or a
 * flag only those rows and columns of each field where the shadow was or is. A field is the same
 * bit for bit whichever way it was reached. */
#pragma once

#include "light/map.h"

G_BEGIN_DECLS

/* One thread at a time may ask; scenes and maps are nobody's but the caller's. */
typedef struct SqKeptFields SqKeptFields;

/* What is kept by default. */
#define SQ_KEPT_BYTES ((gsize)512 * 1024 * 1024)

/* @most_bytes: of fields; the least used are dropped beyond it. @threads: see sq_crew_new(). */
SqKeptFields *sq_kept_fields_new (gsize most_bytes, int threads);
void sq_kept_fields_free (SqKeptFields *kept);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqKeptFields, sq_kept_fields_free)

/* The same bits as sq_light_map() for the exact way. Where all fields of the scene together are
 * beyond the cap nothing is kept. Cancelled, it returns NULL, and the next asks are none the worse.
 * Returns: (transfer full): or NULL, cancelled or too big */
SqLightMap *sq_kept_fields_map (SqKeptFields *kept,
                                const SqScene *scene,
                                const SqMapRequest *request,
                                GCancellable *cancellable,
                                GError **error);

/* What the last map took. */
typedef struct {
  guint kept, mended, cold; /* fields by how they were reached */
  gsize points;             /* that were worked out */
  gsize bytes;              /* that are kept now */
} SqKeptWork;
SqKeptWork sq_kept_fields_work (const SqKeptFields *kept);

G_END_DECLS
