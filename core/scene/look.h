/* look.h: a named state of the set: only what differs from the base scene */
#pragma once

#include "scene/thing.h"

G_BEGIN_DECLS

typedef struct {
  SqThing thing;
  char *id;
  char *name;
  char *note;
  char *camera;
  GPtrArray *fixtures, *panels, *openings, *marks; /* SqPartial */
  SqThing *daylight;                               /* (nullable): partial */
  double haze_per_m;                               /* NAN: as in the base scene */
} SqLook;

extern const SqKind sq_look_kind;

G_END_DECLS
