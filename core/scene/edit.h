/* edit.h: changed copies of a scene; the old one stays as it is for whoever holds it */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* A copy that shares every member; its index is not made yet. */
SqScene *sq_scene_copy (const SqScene *scene);

/* Indexes and checks a scene that was just made. */
gboolean sq_scene_finish (SqScene *scene, GError **error);

/* A copy of @owner in which @old, somewhere in its lists and objects, is @now. The way down to it
 * is copied, everything else shared. Returns: (transfer full): NULL if @old is not in @owner */
SqThing *sq_thing_replace (const SqThing *owner, const SqThing *old, SqThing *now);

G_END_DECLS
