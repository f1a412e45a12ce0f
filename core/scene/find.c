/* find.c: looking things up in a scene: by id, by aim, the active camera, frames */
#include "scene/scene.h"

const SqThing *
sq_scene_find (const SqScene *scene, const char *id)
{
  return g_hash_table_lookup (scene->by_id, id);
}

const SqClass *
sq_scene_class (const SqScene *scene, const char *id)
{
  const SqThing *own = sq_scene_find (scene, id);
  if (own != NULL && own->kind == &sq_class_kind)
    return (const SqClass *)own;
  return sq_library_class (scene->library, id);
}

const SqMaterial *
sq_scene_material (const SqScene *scene, const char *id)
{
  const SqThing *own = sq_scene_find (scene, id);
  if (own != NULL && own->kind == &sq_material_kind)
    return (const SqMaterial *)own;
  return sq_library_material (scene->library, id);
}

const SqCamera *
sq_scene_camera (const SqScene *scene)
{
  if (scene->look_camera != NULL)
    return (const SqCamera *)sq_scene_find (scene, scene->look_camera);
  return scene->cameras->len > 0 ? SQ_AT (SqCamera, scene->cameras, 0) : NULL;
}

static SqPlace
path_middle (const GArray *path)
{
  SqPlace sum = { 0.0, 0.0 };
  for (guint i = 0; i < path->len; i++) {
    sum.x_m += sq_path_at (path, i).x_m;
    sum.y_m += sq_path_at (path, i).y_m;
  }
  return (SqPlace){ sum.x_m / path->len, sum.y_m / path->len };
}

static SqPoint
piece_middle (const SqPiece *piece)
{
  SqPlace place = piece->disc != NULL ? piece->disc->at : path_middle (piece->outline);
  return sq_point_above (place, (piece->base_m + piece->top_m) / 2.0);
}

SqPoint
sq_thing_middle (const SqThing *thing)
{
  switch (thing->kind->names) {
  case SQ_NAMES_MARK:
    return sq_mark_face ((const SqMark *)thing);
  case SQ_NAMES_CAMERA:
    return ((const SqCamera *)thing)->at;
  case SQ_NAMES_FIXTURE:
    return ((const SqFixture *)thing)->at;
  case SQ_NAMES_PANEL:
    return ((const SqPanel *)thing)->at;
  case SQ_NAMES_PROBE:
    return ((const SqProbe *)thing)->at;
  case SQ_NAMES_PIECE:
    return piece_middle ((const SqPiece *)thing);
  case SQ_NAMES_SUPPLY:
    return sq_point_above (((const SqSupply *)thing)->at, 0.0);
  case SQ_NAMES_NOTE:
    return sq_point_above (((const SqNote *)thing)->at, 0.0);
  default:
    return SQ_NO_POINT;
  }
}

/* An opening's middle needs its wall: in the wall's line, between the jambs, sill and head. */
static SqPoint
opening_middle (const SqScene *scene, const SqOpening *opening)
{
  for (guint i = 0; i < scene->walls->len; i++) {
    const SqWall *wall = SQ_AT (SqWall, scene->walls, i);
    guint index;
    SqPlace from, to;
    if (!g_ptr_array_find (wall->openings, opening, &index) ||
        !sq_wall_edge (wall, (guint)opening->edge, &from, &to))
      continue;
    double along = (opening->offset_m + opening->width_m / 2.0) / sq_place_distance_m (from, to);
    double height_m = sq_wall_height_m (wall, scene->room);
    double z_m = (sq_opening_sill_m (opening) + sq_opening_head_m (opening, height_m)) / 2.0;
    return sq_point (from.x_m + (to.x_m - from.x_m) * along, from.y_m + (to.y_m - from.y_m) * along,
                     z_m);
  }
  return SQ_NO_POINT;
}

SqPoint
sq_scene_middle (const SqScene *scene, const SqThing *thing)
{
  if (thing->kind == &sq_opening_kind)
    return opening_middle (scene, (const SqOpening *)thing);
  if (thing->kind == &sq_wall_kind) {
    const SqWall *wall = (const SqWall *)thing;
    return sq_point_above (path_middle (wall->path), sq_wall_height_m (wall, scene->room) / 2.0);
  }
  return sq_thing_middle (thing);
}

gboolean
sq_scene_aim_point (const SqScene *scene, const SqAim *aim, SqPoint *point)
{
  if (aim->id == NULL) {
    *point = aim->at;
    return sq_point_given (aim->at);
  }
  const SqThing *thing = sq_scene_find (scene, aim->id);
  if (thing == NULL)
    return FALSE;
  *point = sq_scene_middle (scene, thing);
  return sq_point_given (*point);
}

SqFrame
sq_fixture_frame (const SqScene *scene, const SqFixture *fixture)
{
  SqPoint target;
  SqVector forward = sq_vector (0, 0, -1);
  if (sq_scene_aim_point (scene, &fixture->aim, &target))
    forward = sq_vector_between (fixture->at, target);
  return sq_frame (forward, fixture->roll_deg);
}

SqVector
sq_camera_direction (const SqScene *scene, const SqCamera *camera)
{
  SqPoint target;
  if (!sq_scene_aim_point (scene, &camera->aim, &target))
    return sq_vector (0, 1, 0);
  return sq_vector_unit (sq_vector_between (camera->at, target));
}
