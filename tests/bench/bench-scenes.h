/* bench-scenes.h: the scene that is measured, moved a little, and grown */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* Returns: (transfer full): or NULL with an error */
SqScene *bench_scene_read (const char *path, GError **error);

/* The scene with the fixture, mark or panel of this id a little aside. Returns: (transfer full) */
SqScene *bench_scene_moved (const SqScene *scene, const char *id, double x_m, double y_m);

/* bench_scene_grown:
 * @n_lamps: 0: as they are; fewer: picked evenly; more: all again and again, each copy within half
 *   a metre of its place
 * @n_solids: 0: as they are; more: so many boxes are added, strewn over the set, that it has that
 *   many convex solids; together they cover a third of it at most
 *
 * Returns: (transfer full): always the same for the same numbers; or NULL with an error */
SqScene *bench_scene_grown (const SqScene *scene, guint n_lamps, guint n_solids, GError **error);

G_END_DECLS
