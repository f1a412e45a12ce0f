/* lamp-class.h: a generic class of lamp: how it gives light, how big, how heavy, how fed */
#pragma once

#include "scene/fixture.h"

G_BEGIN_DECLS

typedef enum {
  SQ_OPTICS_LENS,
  SQ_OPTICS_OPEN,
  SQ_OPTICS_PARALLEL,
  SQ_OPTICS_PROFILE,
  SQ_OPTICS_PANEL,
  SQ_OPTICS_TUBE,
  SQ_OPTICS_DIFFUSED,
  SQ_OPTICS_ROUND,
  SQ_OPTICS_BULB,
} SqOptics;

typedef enum {
  SQ_SOURCE_TUNGSTEN,
  SQ_SOURCE_DISCHARGE,
  SQ_SOURCE_LED,
  SQ_SOURCE_FLUORESCENT,
  SQ_SOURCE_FLAME,
} SqSource;

typedef enum {
  SQ_DIMS_NONE,
  SQ_DIMS_MAINS,
  SQ_DIMS_OWN,
} SqDims;

typedef enum {
  SQ_EMITS_BY_BEAM = -1, /* by `beams` or `photometry` */
  SQ_EMITS_LAMBERT,
  SQ_EMITS_SPHERE,
  SQ_EMITS_TUBE,
  SQ_EMITS_SKIRT,
} SqEmits;

typedef struct {
  SqThing thing;
  int shape;                /* SqShape */
  double width_m, height_m; /* height NAN: as wide, see sq_face_height_m() */
} SqFace;

typedef struct {
  SqThing thing;
  double width_m, depth_m, height_m;
} SqBody;

typedef struct {
  SqThing thing;
  char *name;
  int slots;
} SqMode;

typedef struct {
  SqThing thing;
  SqSpread beam_deg;  /* full angle at half of the peak */
  SqSpread field_deg; /* full angle at a tenth */
  double peak_cd;
} SqBeam;

typedef struct {
  SqThing thing;
  char *id;
  char *name;
  char *family;
  int optics; /* SqOptics */
  int source; /* SqSource */
  double input_w, lamp_w;
  double volts[2]; /* least, most */
  double power_factor;
  double cct_k;
  double cct_range_k[2]; /* NAN: fixed */
  int dims;              /* SqDims */
  double level_min;
  SqFace *face; /* (nullable): a point */
  SqBody *body;
  double weight_kg;
  double spigot_mm; /* 16 or 28; NAN: neither */
  GPtrArray *modes; /* SqMode */
  char *kit;
  GPtrArray *beams; /* SqBeam: none, one, or spot and flood */
  int emits;        /* SqEmits */
  double lumens;    /* of shapes */
  char *photometry; /* (nullable): LM-63 or EULUMDAT text */
} SqClass;

/* A face's height; as wide as it is where the file gives none. */
static inline double
sq_face_height_m (const SqFace *face)
{
  return isnan (face->height_m) ? face->width_m : face->height_m;
}

extern const SqKind sq_class_kind, sq_face_kind, sq_body_kind, sq_mode_kind, sq_beam_kind;

G_END_DECLS
