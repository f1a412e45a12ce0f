/* scene.h: the whole scene: everything a set-lighting plan needs, as one immutable value */
#pragma once

#include "scene/camera.h"
#include "scene/daylight.h"
#include "scene/fixture.h"
#include "scene/lamp-class.h"
#include "scene/library.h"
#include "scene/look.h"
#include "scene/mark.h"
#include "scene/material.h"
#include "scene/panel.h"
#include "scene/paperwork.h"
#include "scene/reading-points.h"
#include "scene/set.h"
#include "scene/supply.h"

G_BEGIN_DECLS

#define SQ_FORMAT 1

/* Limits, stated: more of a thing than this is refused. */
#define SQ_MOST_MEMBERS 5000            /* of any list, path or map */
#define SQ_MOST_TEXT (32 * 1024 * 1024) /* bytes of one text */

typedef struct {
  SqThing thing;
  int format;
  SqTitle *title;
  int units;        /* SqUnits */
  double north_deg; /* page azimuth of true north */
  SqMeterSettings *meter;
  SqWanted *wanted;
  SqRoom *room;
  GPtrArray *walls, *pieces, *marks, *cameras, *fixtures, *panels, *probes, *ambient;
  SqDaylight *daylight; /* (nullable) */
  double haze_per_m;
  GPtrArray *supplies, *cables, *looks, *notes, *dimensions;
  SqUnderlay *underlay; /* (nullable) */
  GPtrArray *classes, *materials;
  SqMap *map;
  GPtrArray *pages, *list_edits, *waivers;

  /* Not in the table: derived when the scene was read. */
  SqLibrary *library;
  GHashTable *by_id; /* id → SqThing, borrowed from the lists above */
  char *look;        /* id of the look that is applied; NULL: base */
  char *look_camera; /* (nullable): that look's camera */
} SqScene;

extern const SqKind sq_scene_kind;

static inline SqScene *
sq_scene_ref (const SqScene *scene)
{
  return (SqScene *)sq_thing_ref (&scene->thing);
}

static inline void
sq_scene_unref (SqScene *scene)
{
  sq_thing_unref (&scene->thing);
}

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqScene, sq_scene_unref)

/* sq_scene_parse:
 * @text, @length: a scene file
 * @library: classes, materials and stands that the scene may name
 * @warnings: (element-type utf8): unknown keys are added here, each one line; may be NULL
 *
 * Reads and checks everything: syntax, fields, references, geometry.
 * Returns: (transfer full): or NULL with one line that says where, what, and what was expected */
SqScene *sq_scene_parse (
  const char *text, gsize length, SqLibrary *library, GPtrArray *warnings, GError **error);

/* The canonical text: a file that this wrote is read and written back byte for byte.
 * Returns: (transfer full) */
char *sq_scene_write (const SqScene *scene);

/* sq_scene_set:
 * @path: `ID.FIELD`, `room.bounce`, `units`, `f1.class`, dotted on through objects
 * @text: JSON, else a quantity with its unit, else text; lists whole
 *
 * Returns: (transfer full): the changed scene, checked as if it had been read so */
SqScene *sq_scene_set (const SqScene *scene, const char *path, const char *text, GError **error);

/* The scene with a look's changes applied; `base` or NULL: as it is. An unknown id is an error. */
SqScene *sq_scene_in_look (const SqScene *scene, const char *look_id, GError **error);

/* Returns: (nullable): the thing of this id in the scene itself, whatever its kind */
const SqThing *sq_scene_find (const SqScene *scene, const char *id);

/* The scene's own class or material first, then the library's. Never NULL for an id that stands in
 * a scene that was read. */
const SqClass *sq_scene_class (const SqScene *scene, const char *id);
const SqMaterial *sq_scene_material (const SqScene *scene, const char *id);

/* Returns: (nullable): the active camera: the look's, else the first */
const SqCamera *sq_scene_camera (const SqScene *scene);

/* Where an aim or a `toward` leads: the point itself, a mark's face, the middle of anything else.
 * Returns: FALSE for an aim at nothing */
gboolean sq_scene_aim_point (const SqScene *scene, const SqAim *aim, SqPoint *point);

/* The middle of anything in @scene; of a mark the face. SQ_NO_POINT for what stands nowhere. */
SqPoint sq_scene_middle (const SqScene *scene, const SqThing *thing);

/* The same without a scene: SQ_NO_POINT for walls and openings, which need the room. */
SqPoint sq_thing_middle (const SqThing *thing);

/* The frame of a fixture: aimed at nothing, it looks straight down. */
SqFrame sq_fixture_frame (const SqScene *scene, const SqFixture *fixture);

/* The line of sight of a camera: unit length; aimed at nothing, up the page. */
SqVector sq_camera_direction (const SqScene *scene, const SqCamera *camera);

/* Typed members of lists. */
#define SQ_AT(Type, array, i) ((const Type *)g_ptr_array_index ((array), (i)))

G_END_DECLS
