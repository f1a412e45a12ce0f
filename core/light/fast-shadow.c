/* fast-shadow.c: a solid's shadow on a flat lamp face, as seen from each point of a receiver grid
 */
#include "light/fast-shadow.h"

/* As in solid.c: a face hides what is deeper than this behind it. */
#define SKIN_M 1e-8
/* What passes less than this is as good as solid. */
#define LEAST_PASSES 1e-6

/* All positions are taken from the middle of the lamp's face. */
typedef struct {
  SqVector first; /* the grid's first point */
  double step_m;
} Grid;

/* fixed - slope · P, for the grid's points P */
static SqGridForm
form_of (double fixed, SqVector slope, const Grid *grid)
{
  return (SqGridForm){
    .first = fixed - sq_vector_dot (slope, grid->first),
    .by_column = -slope.x * grid->step_m,
    .by_row = -slope.y * grid->step_m,
  };
}

/* With m = b - a: det (a - P, b - P, X - P) = (a × m) · (X - P) - (P × m) · X. */
static void
edge_init (
  SqEdgeForm *form, const SqFaceLines *face, const SqEdge *edge, SqVector a, SqVector b, Grid grid)
{
  SqVector m = sq_vector (b.x - a.x, b.y - a.y, b.z - a.z);
  SqVector normal = sq_vector_cross (a, m);
  form->left = edge->left;
  form->right = edge->right;
  form->middle = form_of (0.0, normal, &grid);
  form->along =
    form_of (sq_vector_dot (normal, face->along), sq_vector_cross (m, face->along), &grid);
  form->up =
    form_of (sq_vector_dot (normal, face->half_up), sq_vector_cross (m, face->half_up), &grid);
}

static void
face_init (SqFaceForm *form, const SqFaceLines *face, const SqPlane *plane, const Grid *grid)
{
  double height = sq_plane_height_m (plane, face->middle);
  double across = sq_vector_dot (plane->normal, face->half_across);
  form->height_m = form_of (height, sq_vector_scale (plane->normal, -1.0), grid);
  form->middle = height + SKIN_M;
  form->along = sq_vector_dot (plane->normal, face->along);
  form->up = sq_vector_dot (plane->normal, face->half_up);
  double reach = fabs (across) + fabs (form->up);
  form->side = form->middle + reach <= 0.0   ? SQ_FACE_IS_BEHIND
               : form->middle - reach >= 0.0 ? SQ_FACE_IS_BEFORE
                                             : SQ_FACE_CUTS;
}

void
sq_fast_shadow_init (SqFastShadow *shadow,
                     const SqFaceLines *face,
                     const SqSolid *solid,
                     double passes,
                     const SqReceiverGrid *grid)
{
  *shadow = (SqFastShadow){
    .edges = g_new (SqEdgeForm, solid->n_edges),
    .faces = g_new (SqFaceForm, solid->n_faces),
    .n_edges = solid->n_edges,
    .n_faces = solid->n_faces,
    .flat = solid->flat,
    .passes = passes < LEAST_PASSES ? 0.0f : (float)passes,
  };
  const Grid from_lamp = {
    .first = sq_vector_between (face->middle, sq_receiver_point (grid, 0, 0)),
    .step_m = grid->step_m,
  };
  for (guint i = 0; i < solid->n_faces; i++)
    face_init (&shadow->faces[i], face, &solid->faces[i], &from_lamp);
  for (guint i = 0; i < solid->n_edges; i++) {
    const SqEdge *edge = &solid->edges[i];
    SqVector a = sq_vector_between (face->middle, solid->corners[edge->from]);
    SqVector b = sq_vector_between (face->middle, solid->corners[edge->to]);
    edge_init (&shadow->edges[i], face, edge, a, b, from_lamp);
  }
}

void
sq_fast_shadow_clear (SqFastShadow *shadow)
{
  g_clear_pointer (&shadow->edges, g_free);
  g_clear_pointer (&shadow->faces, g_free);
}
