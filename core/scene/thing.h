/* thing.h: making, sharing, reading and writing things of any kind, by their table of fields */
#pragma once

#include "scene/field.h"

G_BEGIN_DECLS

/* Walks the rows of a kind's table. */
#define SQ_EACH_FIELD(field, kind_)                                                                \
  for (const SqField *field = (kind_)->fields; field < (kind_)->fields + (kind_)->n_fields; field++)

/* Every field at its default. Returns: (transfer full) */
SqThing *sq_thing_new (const SqKind *kind);

SqThing *sq_thing_ref (const SqThing *thing);
void sq_thing_unref (SqThing *thing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqThing, sq_thing_unref)

/* A new thing with the same values; members that are things are shared. It is the caller's alone
 * until it is handed on, and may be changed by sq_thing_set() until then. */
SqThing *sq_thing_copy (const SqThing *thing);

/* sq_thing_read:
 * @node: a JSON object
 *
 * Reads @node by @kind's table: unknown keys are kept and warned of; wrong types, ranges and words
 * are errors that name the place. Ids are not resolved here (see scene/check.h).
 *
 * Returns: (transfer full): or NULL */
SqThing *sq_thing_read (const SqKind *kind,
                        const SqReading *reading,
                        JsonNode *node,
                        GError **error);

/* What sq_thing_read() would read back: defaults left out, unknown members in their place; of a
 * partial only what it says. Returns: (transfer full): a JSON object */
JsonNode *sq_thing_write (const SqThing *thing, gboolean partial);

/* A copy of @base in which every field that @changes says has @changes' value. */
SqThing *sq_thing_overlay (const SqThing *base, const SqThing *changes);

/* TRUE if @thing differs in nothing from a new one of its kind. */
gboolean sq_thing_is_default (const SqThing *thing);

/* Replaces one value of @thing, which nobody else must hold yet, from JSON. */
gboolean sq_thing_set (
  SqThing *thing, const SqField *field, const SqReading *reading, JsonNode *node, GError **error);

/* sq_thing_put: Makes the member @field of @owner (an object or the only thing) be @member. */
void sq_thing_put (SqThing *owner, const SqField *field, SqThing *member);

/* Returns: (nullable): the row of @key in @kind */
const SqField *sq_kind_field (const SqKind *kind, const char *key);

/* "at, aim, level": the keys of all rows that have @flags (SqFieldFlags). (transfer full) */
char *sq_kind_keys (const SqKind *kind, guint flags);

/* TRUE if the row counts for this thing: its variant, if it has any, uses it. */
gboolean sq_field_applies (const SqField *field, const SqThing *thing);

/* The id of @thing; NULL if it has none. */
const char *sq_thing_id (const SqThing *thing);

/* The member of @thing that @field describes. */
static inline gpointer
sq_thing_value (const SqThing *thing, const SqField *field)
{
  return (char *)thing + field->offset;
}

G_END_DECLS
