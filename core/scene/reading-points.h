/* reading-points.h: where light is read on the plan, and what was read there on the scout */
#pragma once

#include "scene/common.h"

G_BEGIN_DECLS

typedef enum {
  SQ_RECEPTOR_FLAT, /* cosine */
  SQ_RECEPTOR_DOME, /* (1 + cosine) / 2 over the whole sphere */
  SQ_RECEPTOR_SPOT, /* luminance of the surface met along the normal */
} SqReceptorKind;

typedef struct {
  SqThing thing;
  char *id;
  SqPoint at;
  SqVector normal; /* any length but 0 */
  char *toward;    /* in place of the normal */
  int receptor;    /* SqReceptorKind */
  SqCommon common;
} SqProbe;

typedef struct {
  SqThing thing;
  char *id;
  SqPoint at; /* z NAN where the file gives none */
  double lux;
  double cct_k; /* NAN: not measured */
  SqCommon common;
} SqAmbient;

extern const SqKind sq_probe_kind, sq_ambient_kind;

G_END_DECLS
