/* field-sites.h: every place in a scene file where a kind of thing may stand, for tests */
#pragma once

#include "field-values.h"

G_BEGIN_DECLS

/* One of each that may be named. */
static const char the_scene[] =
  "{\"format\": 1,"
  " \"walls\": [{\"id\": \"w1\", \"path\": [[0, 0], [6, 0]],"
  "              \"openings\": [{\"id\": \"o1\", \"width\": 1}]}],"
  " \"marks\": [{\"id\": \"m1\", \"at\": [3, 2]}],"
  " \"cameras\": [{\"id\": \"c1\", \"at\": [3, -2, 1.5], \"aim\": \"m1\"}],"
  " \"fixtures\": [{\"id\": \"f1\", \"class\": \"k1\", \"at\": [1, 1, 2.5], \"aim\": \"m1\"}],"
  " \"panels\": [{\"id\": \"g1\", \"kind\": \"flag\", \"at\": [2, 2, 2],"
  "               \"width\": 1, \"height\": 1}],"
  " \"daylight\": {\"latitude\": 52.5, \"longitude\": 13.4, \"date\": \"2024-06-20\"},"
  " \"supplies\": [{\"id\": \"s1\"}],"
  " \"looks\": [{\"id\": \"l1\"}],"
  " \"classes\": [{\"id\": \"k1\", \"emits\": \"sphere\", \"lumens\": 800}],"
  " \"materials\": [{\"id\": \"y1\", \"for\": \"gel\", \"direct\": 0.5}]}";

/* What must stand beside a value for the thing to be possible; null: must not stand there. */
static const struct {
  const SqKind *kind;
  const char *key;
  const char *members;
} beside[] = {
  { &sq_piece_kind, "disc", "{\"outline\": null}" },
  { &sq_piece_kind, "base", "{\"top\": 100}" },
  { &sq_class_kind, "emits", "{\"beams\": null, \"lumens\": 500}" },
  { &sq_class_kind, "photometry", "{\"beams\": null}" },
};

/* Where things of a kind (and variant) stand: in field @in of the site above; the whole file is the
 * site without one above. Lives on the stack of visit_sites(). */
typedef struct Site Site;
struct Site {
  const Site *up;
  const SqField *in;
  const SqKind *kind;
  int variant;
};

typedef struct Tally Tally;
typedef void (*SiteVisitor) (const Site *site, Tally *tally);

static inline void
visit_sites (const Site *site, SiteVisitor visitor, Tally *tally)
{
  visitor (site, tally);
  for (guint i = 0; i < site->kind->n_fields; i++) {
    const SqField *field = &site->kind->fields[i];
    if ((field->type != &sq_value_list && field->type != &sq_value_object) ||
        !row_applies (field, site->variant))
      continue;
    for (int variant = 0; variant < n_variants (field->of); variant++) {
      Site inner = { .up = site, .in = field, .kind = field->of, .variant = variant };
      visit_sites (&inner, visitor, tally);
    }
  }
}

static inline JsonObject *
scene_object (void)
{
  g_autoptr (JsonNode) node = tree (the_scene);
  return json_node_dup_object (node);
}

/* The thing that is changed: for the whole file, the scene above. */
static inline JsonObject *
thing_at (const Site *site)
{
  return site->up == NULL ? scene_object () : least_thing (site->kind, site->variant);
}

static inline const char *
members_beside (const SqKind *kind, const char *key)
{
  for (guint i = 0; i < G_N_ELEMENTS (beside); i++) {
    if (beside[i].kind == kind && g_str_equal (beside[i].key, key))
      return beside[i].members;
  }
  return NULL;
}

/* TRUE if the value shuts another one out, so that it cannot be set by itself. */
static inline gboolean
shuts_out (const SqKind *kind, const char *key)
{
  const char *members = members_beside (kind, key);
  return members != NULL && strstr (members, "null") != NULL;
}

/* Puts @value (transfer full) into the field of @thing, and what must stand beside it. In the whole
 * file, lists grow: the scene's own things are named elsewhere. */
static inline void
put_value (const Site *site, JsonObject *thing, const SqField *field, JsonNode *value)
{
  const char *members = members_beside (site->kind, field->key);
  if (members != NULL)
    merge (thing, members);
  if (site->up == NULL && field->type == &sq_value_list &&
      json_object_has_member (thing, field->key)) {
    JsonArray *list = json_object_get_array_member (thing, field->key);
    JsonArray *more = json_node_get_array (value);
    for (guint i = 0; i < json_array_get_length (more); i++)
      json_array_add_element (list, json_array_dup_element (more, i));
    json_node_unref (value);
    return;
  }
  json_object_set_member (thing, field->key, value);
}

/* The text of a scene with @thing (transfer full) at @site. */
static inline char *
scene_text (const Site *site, JsonObject *thing)
{
  if (site->up == NULL) {
    g_autoptr (JsonNode) root = object_tree (thing);
    json_object_unref (thing);
    return json_to_string (root, FALSE);
  }
  JsonObject *owner = thing_at (site->up);
  JsonNode *value = object_tree (thing);
  json_object_unref (thing);
  if (site->in->type == &sq_value_list) {
    JsonArray *list = json_array_new ();
    json_array_add_element (list, value);
    value = json_node_init_array (json_node_alloc (), list);
    json_array_unref (list);
  }
  put_value (site->up, owner, site->in, value);
  return scene_text (site->up, owner);
}

/* Where in its list the thing at @site stands. */
static inline guint
index_at (const Site *site)
{
  g_autoptr (JsonObject) scene = scene_object ();
  if (site->up->up != NULL || !json_object_has_member (scene, site->in->key))
    return 0;
  return json_array_get_length (json_object_get_array_member (scene, site->in->key));
}

/* `fixtures[1].modifiers[0].stops` */
static inline char *
place_at (const Site *site, const char *key)
{
  if (site->up == NULL)
    return g_strdup (key);
  g_autofree char *member = site->in->type == &sq_value_list
                              ? g_strdup_printf ("%s[%u].%s", site->in->key, index_at (site), key)
                              : g_strdup_printf ("%s.%s", site->in->key, key);
  return place_at (site->up, member);
}

/* The thing at @site in a whole scene. Returns: (nullable) (transfer none) */
static inline JsonObject *
find_at (const Site *site, JsonNode *scene)
{
  if (site->up == NULL)
    return json_node_get_object (scene);
  JsonObject *owner = find_at (site->up, scene);
  JsonNode *value = owner != NULL ? json_object_get_member (owner, site->in->key) : NULL;
  if (value == NULL || JSON_NODE_HOLDS_OBJECT (value))
    return value != NULL ? json_node_get_object (value) : NULL;
  return json_array_get_object_element (json_node_get_array (value), index_at (site));
}

/* What to call a field on the command line: `f1.level`, `room.bounce`. Returns: (nullable): for
 * things in a list that have no id */
static inline char *
path_at (const Site *site, const char *key)
{
  if (site->up == NULL)
    return g_strdup (key);
  if (site->in->type == &sq_value_list) {
    g_autoptr (JsonObject) thing = thing_at (site);
    const char *id = json_object_get_string_member_with_default (thing, "id", NULL);
    return id != NULL ? g_strdup_printf ("%s.%s", id, key) : NULL;
  }
  g_autofree char *member = g_strdup_printf ("%s.%s", site->in->key, key);
  return path_at (site->up, member);
}

/* For visitors: the library is read once, for it is long. */
struct Tally {
  SqLibrary *library;
  guint checked; /* how many values were */
};

static inline SqScene *
parse_scene (const Tally *tally, const char *text, GError **error)
{
  return sq_scene_parse (text, strlen (text), tally->library, NULL, error);
}

static inline void
tally_sites (SiteVisitor visitor, guint least)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  Tally tally = { .library = library };
  Site file = { .kind = &sq_scene_kind };
  visit_sites (&file, visitor, &tally);
  g_assert_cmpuint (tally.checked, >=, least);
}

G_END_DECLS
