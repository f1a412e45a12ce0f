/* material.h: what cloths, gels, nets and boards do to light */
#pragma once

#include "scene/thing.h"

G_BEGIN_DECLS

typedef enum {
  SQ_FOR_GEL,
  SQ_FOR_DIFFUSION,
  SQ_FOR_NET,
  SQ_FOR_BOUNCE,
  SQ_FOR_FLAG,
} SqMaterialFor;

typedef struct {
  SqThing thing;
  char *id;
  char *name;
  int for_what;                    /* SqMaterialFor */
  double direct, scatter, reflect; /* shares of what falls on it; together at most 1 */
  double spread_deg;               /* half-angle at half power of what is scattered or reflected */
  double mired;
  double tint[2];
} SqMaterial;

extern const SqKind sq_material_kind;

G_END_DECLS
