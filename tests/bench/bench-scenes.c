/* bench-scenes.c: the scene that is measured, moved a little, and grown */
#include "bench-scenes.h"
#include "light/map.h"
#include "light/obstacles.h"

#include <json-glib/json-glib.h>
#include <string.h>

#define SEED 20 /* any; the scenes are always the same */
#define JITTER_M 0.5
#define COVERED (1.0 / 3.0) /* of the set, by boxes that are added */

SqScene *
bench_scene_read (const char *path, GError **error)
{
  g_autofree char *text = NULL;
  gsize length;
  g_autoptr (SqLibrary) library = sq_library_new ();
  if (!g_file_get_contents (path, &text, &length, error))
    return NULL;
  return sq_scene_parse (text, length, library, NULL, error);
}

SqScene *
bench_scene_moved (const SqScene *scene, const char *id, double x_m, double y_m)
{
  const SqThing *thing = sq_scene_find (scene, id);
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_strdup_printf ("%s.at", id), *text = NULL;
  if (thing->kind == &sq_mark_kind) {
    SqPlace at = ((const SqMark *)thing)->at;
    text = g_strdup_printf ("[%.17g, %.17g]", at.x_m + x_m, at.y_m + y_m);
  } else {
    SqPoint at = sq_scene_middle (scene, thing);
    text = g_strdup_printf ("[%.17g, %.17g, %.17g]", at.x_m + x_m, at.y_m + y_m, at.z_m);
  }
  SqScene *moved = sq_scene_set (scene, path, text, &error);
  if (moved == NULL)
    g_error ("%s: %s", path, error->message);
  return moved;
}

static void
jitter (GRand *rand, JsonObject *lamp)
{
  JsonArray *at = json_object_get_array_member (lamp, "at");
  g_autoptr (JsonArray) moved = json_array_new ();
  for (guint i = 0; i < 3; i++) {
    double aside_m = g_rand_double_range (rand, -JITTER_M, JITTER_M);
    json_array_add_double_element (moved, json_array_get_double_element (at, i) + aside_m);
  }
  json_object_set_array_member (lamp, "at", g_steal_pointer (&moved));
}

static void
multiply_lamps (JsonObject *root, guint n_lamps)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  JsonArray *lamps = json_object_get_array_member (root, "fixtures");
  JsonArray *grown = json_array_new ();
  guint n = json_array_get_length (lamps);
  for (guint i = 0; i < n_lamps; i++) {
    guint which = n_lamps < n ? i * n / n_lamps : i % n;
    g_autofree char *text = json_to_string (json_array_get_element (lamps, which), FALSE);
    g_autoptr (JsonNode) copy = json_from_string (text, NULL);
    json_object_remove_member (json_node_get_object (copy), "motive"); /* which may be gone */
    if (i >= n) {
      g_autofree char *id = g_strdup_printf ("copy-%u", i);
      json_object_set_string_member (json_node_get_object (copy), "id", id);
      jitter (rand, json_node_get_object (copy));
    }
    json_array_add_element (grown, g_steal_pointer (&copy));
  }
  json_object_set_array_member (root, "fixtures", grown);
}

static void
add_boxes (JsonObject *root, const SqScene *scene, guint n_boxes)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (SEED);
  SqPlace from = { 0, 0 }, to = { 1, 1 };
  sq_scene_extent (scene, 0.0, &from, &to);
  double set_m2 = (to.x_m - from.x_m) * (to.y_m - from.y_m);
  double side_m = MIN (sqrt (COVERED * set_m2 / n_boxes), 1.0);
  if (!json_object_has_member (root, "pieces"))
    json_object_set_array_member (root, "pieces", json_array_new ());
  JsonArray *pieces = json_object_get_array_member (root, "pieces");
  for (guint i = 0; i < n_boxes; i++) {
    double x = g_rand_double_range (rand, from.x_m, to.x_m - side_m);
    double y = g_rand_double_range (rand, from.y_m, to.y_m - side_m);
    double w = side_m * g_rand_double_range (rand, 0.5, 1.0);
    double d = side_m * g_rand_double_range (rand, 0.5, 1.0);
    double base = g_rand_double_range (rand, 0.0, 3.0);
    double top = base + g_rand_double_range (rand, 0.2, 1.5);
    g_autofree char *text =
      g_strdup_printf ("{\"id\": \"box-%u\", \"base\": %.3f, \"top\": %.3f, \"outline\": "
                       "[[%.4f, %.4f], [%.4f, %.4f], [%.4f, %.4f], [%.4f, %.4f]]}",
                       i, base, top, x, y, x + w, y, x + w, y + d, x, y + d);
    json_array_add_element (pieces, json_from_string (text, NULL));
  }
}

SqScene *
bench_scene_grown (const SqScene *scene, guint n_lamps, guint n_solids, GError **error)
{
  g_autofree char *text = sq_scene_write (scene);
  g_autoptr (JsonNode) node = json_from_string (text, error);
  if (node == NULL)
    return NULL;
  JsonObject *root = json_node_get_object (node);
  /* What may name lamps that are no longer there. */
  static const char *const named[] = { "looks", "waivers",    "list_edits",
                                       "notes", "dimensions", "pages" };
  for (guint i = 0; i < G_N_ELEMENTS (named); i++)
    json_object_remove_member (root, named[i]);
  g_autoptr (GArray) obstacles = sq_obstacles_new (scene);
  if (n_lamps > 0)
    multiply_lamps (root, n_lamps);
  if (n_solids > obstacles->len)
    add_boxes (root, scene, n_solids - obstacles->len);
  g_autofree char *grown = json_to_string (node, FALSE);
  return sq_scene_parse (grown, strlen (grown), scene->library, NULL, error);
}
