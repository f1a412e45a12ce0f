/* supply.h: what feeds the lamps, and the cables drawn by hand */
#pragma once

#include "scene/common.h"

G_BEGIN_DECLS

typedef enum {
  SQ_SUPPLY_HOUSE,
  SQ_SUPPLY_DISTRIBUTION,
  SQ_SUPPLY_GENERATOR,
} SqSupplyKind;

typedef enum {
  SQ_SYSTEM_SINGLE,
  SQ_SYSTEM_SPLIT,
  SQ_SYSTEM_THREE,
} SqSystem;

typedef struct {
  SqThing thing;
  char *label;
  double watts;
} SqOtherLoad;

typedef struct {
  SqThing thing;
  char *id;
  char *label;
  int kind;     /* SqSupplyKind */
  int system;   /* SqSystem */
  double volts; /* line to neutral */
  double hertz;
  double rating_a; /* of each line */
  SqPlace at;      /* NAN: not placed */
  char *fed_from;
  int outlets;
  GPtrArray *other_loads; /* SqOtherLoad */
  SqCommon common;
} SqSupply;

typedef struct {
  SqThing thing;
  char *id;
  char *from, *to;
  double length_m;      /* NAN: along `via` */
  GArray *via;          /* SqPlace */
  double conductor_mm2; /* NAN: by awg */
  char *awg;            /* 12, 2, 4/0 */
  double conductor_c;
  SqCommon common;
} SqCable;

extern const SqKind sq_supply_kind, sq_cable_kind, sq_other_load_kind;

G_END_DECLS
