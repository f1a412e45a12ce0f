/* library.h: lamp classes, materials and stands that come with the program or live in a folder */
#pragma once

#include "scene/lamp-class.h"
#include "scene/material.h"
#include "scene/stand.h"

G_BEGIN_DECLS

/* Immutable and shared. Later additions win over earlier ones of the same id. */
typedef struct SqLibrary SqLibrary;

/* What is compiled in. Returns: (transfer full) */
SqLibrary *sq_library_new (void);
SqLibrary *sq_library_ref (SqLibrary *library);
void sq_library_unref (SqLibrary *library);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLibrary, sq_library_unref)

/* Limits of a folder, stated: what is past them is not read, and that is said. */
#define SQ_LIBRARY_FILES_MAX 1000
#define SQ_LIBRARY_BYTES_MAX ((gsize)64 << 20) /* of all its files together */

/* sq_library_with_folder:
 * @base: what is there already; it stays as it is
 * @folder: a path, in the file system's encoding; a folder that is not there adds nothing
 * @remarks: (element-type utf8): what must be said to the user is added here, one line each:
 *   `FILE: PLACE: what is wrong, expected what`
 *
 * Adds what stands under `classes`, `materials` and `stands` in every file of @folder whose name
 * ends in `.json` and begins with no dot, in byte order of their names. What is wrong is left out
 * and said, the rest is used. An id whose last word is wrong has nothing at all: a scene that
 * names it is told why, and never gets something else in its place (sq_library_spoilt()).
 *
 * Returns: (transfer full): never NULL */
SqLibrary *sq_library_with_folder (SqLibrary *base, const char *folder, GPtrArray *remarks);

/* What is compiled in, and over it the user's own: the folder `squarelaw/library` in @data_dir,
 * where the user's programs keep their data. Core looks up no environment: who calls says where
 * that is. Returns: (transfer full): never NULL */
SqLibrary *sq_library_of_user (const char *data_dir, GPtrArray *remarks);

/* Returns: (nullable) */
const SqClass *sq_library_class (const SqLibrary *library, const char *id);
const SqMaterial *sq_library_material (const SqLibrary *library, const char *id);
const SqStand *sq_library_stand (const SqLibrary *library, const char *id);

/* All of them, in file order; one that won over another stands in its place.
 * (transfer none) (element-type SqClass / SqMaterial / SqStand) */
const GPtrArray *sq_library_classes (const SqLibrary *library);
const GPtrArray *sq_library_materials (const SqLibrary *library);
const GPtrArray *sq_library_stands (const SqLibrary *library);

/* Why nothing of this id can be had, if a file of the folder has one that is wrong.
 * @names: which kinds are asked for
 * Returns: (nullable): one line that names the file */
const char *sq_library_spoilt (const SqLibrary *library, SqNames names, const char *id);

/* What of the folder could not be read at all, so that nobody knows which ids it has.
 * Returns: (nullable): one line, the first of them */
const char *sq_library_unread (const SqLibrary *library);

G_END_DECLS
