/* turned-face.h: the face that a ball or a tube turns to a tile of a receiver grid, for the eye */
#pragma once

#include "light/fast-shadow.h"
#include "light/lamp.h"
#include "light/obstacles.h"

G_BEGIN_DECLS

/* So many columns and rows see the same face. */
#define SQ_TURNED_TILE 16

/* Shadows are made when they are asked for. */
typedef struct {
  gboolean made, is_there;
  SqFaceLines lines;
  SqFastShadow *shadows;
  guint n_shadows;
} SqTurnedFace;

/* sq_turned_face_make:
 * @face: empty, or made before, which is forgotten
 * @column, @row: towards which it turns
 * @n_shadows: how many may be asked for
 *
 * Nothing is there if that point is in the lamp. */
void sq_turned_face_make (SqTurnedFace *face,
                          const SqLamp *lamp,
                          const SqReceiverGrid *grid,
                          int column,
                          int row,
                          guint n_shadows);

/* The shadow of @obstacle, which has the number @index whenever it is asked for. */
const SqFastShadow *sq_turned_face_shadow (SqTurnedFace *face,
                                           guint index,
                                           const SqObstacle *obstacle,
                                           const SqReceiverGrid *grid);

/* Forgets the face, and keeps what memory it may need again; or lets that go too. */
void sq_turned_face_forget (SqTurnedFace *face);
void sq_turned_face_clear (SqTurnedFace *face);

G_END_DECLS
