/* set.h: the room and what is built in it: walls with openings, furniture and set pieces */
#pragma once

#include "scene/common.h"

G_BEGIN_DECLS

typedef struct {
  SqThing thing;
  double floor_reflectance;
  double ceiling_height_m; /* NAN: open above */
  double ceiling_reflectance;
  gboolean bounce; /* the room re-emits */
  double ground_reflectance;
} SqRoom;

typedef enum {
  SQ_SIDE_CENTRE,
  SQ_SIDE_LEFT, /* the wall's body lies to the left of the path: the path is its right face */
  SQ_SIDE_RIGHT,
} SqSide;

typedef struct {
  SqThing thing;
  char *id;
  GArray *path; /* SqPlace */
  int side;     /* SqSide */
  gboolean closed;
  double height_m; /* NAN: to the ceiling, or 2.5 where there is none */
  double thickness_m;
  double reflectance;
  double tint[2];
  gboolean wild;       /* can be pulled */
  GPtrArray *openings; /* SqOpening */
  SqCommon common;
} SqWall;

typedef enum {
  SQ_OPENING_WINDOW,
  SQ_OPENING_DOOR,
  SQ_OPENING_HOLE, /* "opening" in the file */
} SqOpeningKind;

typedef struct {
  SqThing thing;
  char *id;
  int kind;        /* SqOpeningKind */
  int edge;        /* index of the path's segment */
  double offset_m; /* from that edge's first point to the near jamb */
  double width_m;
  double sill_m, head_m; /* above the floor; NAN: by kind, see sq_opening_sill_m() */
  double transmittance;  /* NAN: by kind, see sq_opening_transmittance() */
  char *material;
  double open_deg; /* a door's leaf, hinged at the near jamb: 0 shut, positive to the path's left */
  SqCommon common;
} SqOpening;

typedef struct {
  SqThing thing;
  SqPlace at;
  double radius_m;
} SqDisc;

typedef struct {
  SqThing thing;
  char *id;
  char *label;
  GArray *outline; /* SqPlace; empty where there is a disc */
  SqDisc *disc;    /* (nullable) */
  double base_m, top_m;
  double reflectance;
  double tint[2];
  SqCommon common;
} SqPiece;

extern const SqKind sq_room_kind, sq_wall_kind, sq_opening_kind, sq_disc_kind, sq_piece_kind;

/* What NAN stands for. @room gives the ceiling. */
double sq_wall_height_m (const SqWall *wall, const SqRoom *room);
double sq_opening_sill_m (const SqOpening *opening); /* window 0.9, others 0 */
double sq_opening_head_m (const SqOpening *opening,
                          double wall_height_m);            /* 2.1, under the wall's top */
double sq_opening_transmittance (const SqOpening *opening); /* window 0.8 (glazing), others 1 */

/* The ends of segment @edge of @wall's path; the last edge of a closed wall leads back to its first
 * point. Returns: FALSE if there is no such edge. */
gboolean sq_wall_edge (const SqWall *wall, guint edge, SqPlace *from, SqPlace *to);
guint sq_wall_n_edges (const SqWall *wall);

static inline SqPlace
sq_path_at (const GArray *path, guint i)
{
  return g_array_index (path, SqPlace, i);
}

G_END_DECLS
