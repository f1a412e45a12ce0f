/* turned-face.c: the face that a ball or a tube turns to a tile of a receiver grid, for the eye */
#include "light/turned-face.h"

#include "light/face-light.h"

void
sq_turned_face_forget (SqTurnedFace *face)
{
  for (guint i = 0; face->made && i < face->n_shadows; i++)
    sq_fast_shadow_clear (&face->shadows[i]);
  face->made = FALSE;
}

void
sq_turned_face_clear (SqTurnedFace *face)
{
  sq_turned_face_forget (face);
  g_clear_pointer (&face->shadows, g_free);
  face->n_shadows = 0;
}

void
sq_turned_face_make (SqTurnedFace *face,
                     const SqLamp *lamp,
                     const SqReceiverGrid *grid,
                     int column,
                     int row,
                     guint n_shadows)
{
  SqFacePlane plane;
  sq_turned_face_forget (face);
  if (face->n_shadows < n_shadows) {
    g_free (face->shadows);
    face->shadows = g_new0 (SqFastShadow, n_shadows);
    face->n_shadows = n_shadows;
  }
  face->made = TRUE;
  face->is_there = sq_lamp_face_toward (lamp, sq_receiver_point (grid, column, row), &plane);
  if (face->is_there)
    sq_face_lines_init (&face->lines, plane.middle,
                        sq_vector_scale (plane.right, plane.half_right_m),
                        sq_vector_scale (plane.up, plane.half_up_m), plane.round);
}

const SqFastShadow *
sq_turned_face_shadow (SqTurnedFace *face,
                       guint index,
                       const SqObstacle *obstacle,
                       const SqReceiverGrid *grid)
{
  SqFastShadow *shadow = &face->shadows[index];
  if (!shadow->faces)
    sq_fast_shadow_init (shadow, &face->lines, &obstacle->solid, obstacle->passes, grid);
  return shadow;
}
