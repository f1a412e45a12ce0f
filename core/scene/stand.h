/* stand.h: what a lamp stands on or hangs from: what it carries, how high it goes */
#pragma once

#include "scene/thing.h"

G_BEGIN_DECLS

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

G_END_DECLS
