/* check.h: what a scene must fulfil beyond its single fields: ids, references, geometry */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* Fills scene->by_id. Every id once, none reserved, every reference to something of the right
 * kind in the scene or its library. */
gboolean sq_scene_index (SqScene *scene, GError **error);

/* What no id may be: the rows of light that are no lamp's, and the keys of the whole file. */
gboolean sq_id_is_reserved (const char *id);

/* "fixture, supply": which kinds an id may name. (transfer full) */
char *sq_names_text (SqNames names);

/* Walls, openings, pieces, lamps, cameras, classes, materials and supplies that can be built. */
gboolean sq_scene_check_geometry (const SqScene *scene, GError **error);
gboolean sq_set_check (const SqScene *scene, GError **error);

/* That nothing is aimed at where it stands: of all checks the only one that a look can break, for
 * it moves lamps, marks and panels.
 * @look: (nullable): where the look stands in the file, if one is applied to @scene */
gboolean sq_aims_check (const SqScene *scene, const SqWhere *look, GError **error);

/* A class, a material and a stand by themselves, for the library as well. */
gboolean sq_class_check (const SqClass *lamp, const SqWhere *where, GError **error);
gboolean sq_material_check (const SqMaterial *material, const SqWhere *where, GError **error);
gboolean sq_stand_check (const SqStand *stand, const SqWhere *where, GError **error);

G_END_DECLS
