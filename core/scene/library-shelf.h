/* library-shelf.h: how a library is laid out, for the sources that fill one */
#pragma once

#include "scene/library.h"

G_BEGIN_DECLS

typedef enum { SQ_SHELF_CLASSES, SQ_SHELF_MATERIALS, SQ_SHELF_STANDS } SqShelfName;
#define SQ_SHELVES 3

/* Returns: the shelf that a file calls @key; -1: none */
int sq_shelf_named (const char *key);

/* Reads and checks one thing of a shelf. Returns: (transfer full): or NULL */
SqThing *sq_shelf_read (SqShelfName shelf,
                        const SqReading *reading,
                        JsonNode *node,
                        GError **error);

/* A library that is still the caller's alone. It is filled by sq_library_put() and
 * sq_library_spoil(), of which the last word on an id counts; sq_library_settle() makes it one
 * that others may hold. */
SqLibrary *sq_library_draft (const SqLibrary *base);
void sq_library_put (SqLibrary *draft, SqThing *thing); /* (transfer full) */
void sq_library_spoil (SqLibrary *draft, SqShelfName shelf, const char *id, const char *why);
void sq_library_set_unread (SqLibrary *draft, const char *why); /* only the first is kept */
void sq_library_settle (SqLibrary *draft);

G_END_DECLS
