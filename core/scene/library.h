/* library.h: lamp classes, materials and stands that come with the program or live in a folder */
#pragma once

#include "scene/lamp-class.h"
#include "scene/material.h"

G_BEGIN_DECLS

/* A stand: what it carries and how high it goes. */
typedef struct {
  SqThing thing;
  char *id;
  char *name;
  double spigot_mm[2];               /* the sizes it takes; both the same where it takes one */
  double min_height_m, max_height_m; /* highest NAN: what it is fixed to decides */
  double load_kg, weight_kg;
  double footprint_m; /* across its open legs; 0: it has none */
  int sandbags;
} SqStand;

extern const SqKind sq_stand_kind;

/* Immutable and shared. Later additions win over earlier ones of the same id. */
typedef struct SqLibrary SqLibrary;

/* What is compiled in. Returns: (transfer full) */
SqLibrary *sq_library_new (void);
SqLibrary *sq_library_ref (SqLibrary *library);
void sq_library_unref (SqLibrary *library);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLibrary, sq_library_unref)

/* Returns: (nullable) */
const SqClass *sq_library_class (const SqLibrary *library, const char *id);
const SqMaterial *sq_library_material (const SqLibrary *library, const char *id);
const SqStand *sq_library_stand (const SqLibrary *library, const char *id);

/* All of them, in file order. (transfer none) (element-type SqClass / SqMaterial / SqStand) */
const GPtrArray *sq_library_classes (const SqLibrary *library);
const GPtrArray *sq_library_materials (const SqLibrary *library);
const GPtrArray *sq_library_stands (const SqLibrary *library);

G_END_DECLS
