/* lit-scene.h: a scene made ready for light: its lamps, and what stands in their way */
#pragma once

#include "light/lamp.h"

G_BEGIN_DECLS

/* Immutable and shared by reference, so that a thread may work on one while the next is made. */
typedef struct {
  gatomicrefcount references;
  SqScene *scene;    /* a reference */
  GArray *lamps;     /* SqLamp: one for each fixture, in file order */
  GArray *obstacles; /* SqObstacle */
} SqLitScene;

/* @like: (nullable): see sq_lamps_new(). */
SqLitScene *sq_lit_scene_new (const SqScene *scene, const SqLitScene *like);
SqLitScene *sq_lit_scene_ref (SqLitScene *lit);
void sq_lit_scene_unref (SqLitScene *lit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLitScene, sq_lit_scene_unref)

/* TRUE if it gives light. */
static inline gboolean
sq_lamp_burns (const SqLamp *lamp)
{
  return lamp->output > 0.0 && lamp->shaped != SQ_SHAPED_NOT;
}

/* TRUE if the two send the same light to everywhere but for their output: what was worked out for
 * one holds for the other. @a_scene, @b_scene: which they are of. FALSE may also mean that it was
 * too long to find out. */
gboolean sq_lamp_sends_the_same (const SqLamp *a,
                                 const SqScene *a_scene,
                                 const SqLamp *b,
                                 const SqScene *b_scene);

/* sq_obstacles_match:
 * @was: (out) (array): for each of @now its index in @then, or -1 if it was not there like that
 *
 * Indices that are found rise. Returns: how many of @now are found */
guint sq_obstacles_match (const GArray *then, const GArray *now, int *was);

G_END_DECLS
