/* fast-shadow.h: a solid's shadow on a flat lamp face, as seen from each point of a receiver grid
 */
#pragma once

#include "light/face-lines.h"
#include "light/receivers.h"
#include "light/solid.h"

G_BEGIN_DECLS

/* A number that is affine in column and row. */
typedef struct {
  double first, by_column, by_row;
} SqGridForm;

static inline double
sq_grid_form_at_row (const SqGridForm *form, int row)
{
  return form->first + form->by_row * row;
}

/* Half the face: on line l, at u, the value is middle + along · u + up · height[l]; where it is
 * more than 0 nothing is hidden (for an edge whose left face is seen; else less than 0). */
typedef struct {
  SqGridForm middle, along, up;
  guint left, right; /* faces of the solid */
} SqEdgeForm;

typedef enum {
  SQ_FACE_IS_BEHIND, /* the lamp is all behind the solid's face: that face spares none of it */
  SQ_FACE_CUTS,      /* what of the lamp is before it is not hidden from who sees it */
  SQ_FACE_IS_BEFORE, /* the lamp is all before it: who sees it sees all of the lamp */
} SqFormSide;

typedef struct {
  SqGridForm height_m; /* of the grid's point above it */
  SqFormSide side;
  double middle, along, up; /* of the lamp above it, as in SqEdgeForm */
} SqFaceForm;

/* For a point P and an edge from a to b, det (a - P, b - P, X - P) tells on which side of the plane
 * through P and the edge X lies. The determinant is affine in P, because the terms with P twice
 * vanish; so for a level grid and a flat lamp it takes nine numbers an edge for all points. */
typedef struct {
  SqEdgeForm *edges;
  SqFaceForm *faces;
  guint n_edges, n_faces;
  gboolean flat;
  float passes; /* share of light that goes straight through */
} SqFastShadow;

/* The same shadow as sq_face_shadow() has. @passes: 0 to 1 */
void sq_fast_shadow_init (SqFastShadow *shadow,
                          const SqFaceLines *face,
                          const SqSolid *solid,
                          double passes,
                          const SqReceiverGrid *grid);
void sq_fast_shadow_clear (SqFastShadow *shadow);

G_END_DECLS
