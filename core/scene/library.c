/* library.c: lamp classes, materials and stands, found by id */
#include "scene/library.h"

#include "base/json-text.h"
#include "scene/check.h"
#include "scene/library-data.h"
#include "scene/library-shelf.h"

typedef struct {
  GPtrArray *things;  /* SqThing, in file order */
  GHashTable *places; /* id, borrowed from the thing → its place among them, from 1 */
  GHashTable *spoilt; /* id → why there is nothing */
} Shelf;

struct SqLibrary {
  gatomicrefcount references;
  Shelf shelves[SQ_SHELVES];
  char *unread; /* (nullable) */
};

/* In the order of SqShelfName. */
static const struct {
  const char *key;
  const SqKind *kind;
} shelf_rows[SQ_SHELVES] = {
  { "classes", &sq_class_kind },
  { "materials", &sq_material_kind },
  { "stands", &sq_stand_kind },
};

int
sq_shelf_named (const char *key)
{
  for (int i = 0; i < SQ_SHELVES; i++) {
    if (g_str_equal (shelf_rows[i].key, key))
      return i;
  }
  return -1;
}

static gboolean
check (SqShelfName shelf, const SqThing *thing, const SqWhere *where, GError **error)
{
  switch (shelf) {
  case SQ_SHELF_CLASSES:
    return sq_class_check ((const SqClass *)thing, where, error);
  case SQ_SHELF_MATERIALS:
    return sq_material_check ((const SqMaterial *)thing, where, error);
  case SQ_SHELF_STANDS:
    return sq_stand_check ((const SqStand *)thing, where, error);
  default:
    g_assert_not_reached ();
  }
}

SqThing *
sq_shelf_read (SqShelfName shelf, const SqReading *reading, JsonNode *node, GError **error)
{
  g_autoptr (SqThing) thing = sq_thing_read (shelf_rows[shelf].kind, reading, node, error);
  if (thing == NULL || !check (shelf, thing, reading->where, error))
    return NULL;
  return g_steal_pointer (&thing);
}

static void
add (Shelf *shelf, SqThing *thing)
{
  g_ptr_array_add (shelf->things, thing);
  g_hash_table_insert (shelf->places, (gpointer)sq_thing_id (thing),
                       GUINT_TO_POINTER (shelf->things->len));
}

static void
add_all_but_spoilt (Shelf *shelf, const GPtrArray *things)
{
  for (guint i = 0; i < things->len; i++) {
    SqThing *thing = g_ptr_array_index (things, i);
    if (!g_hash_table_contains (shelf->spoilt, sq_thing_id (thing)))
      add (shelf, sq_thing_ref (thing));
  }
}

SqLibrary *
sq_library_draft (const SqLibrary *base)
{
  SqLibrary *draft = g_new0 (SqLibrary, 1);
  g_atomic_ref_count_init (&draft->references);
  draft->unread = base != NULL ? g_strdup (base->unread) : NULL;
  for (int i = 0; i < SQ_SHELVES; i++) {
    Shelf *shelf = &draft->shelves[i];
    shelf->things = g_ptr_array_new_with_free_func ((GDestroyNotify)sq_thing_unref);
    shelf->places = g_hash_table_new (g_str_hash, g_str_equal);
    shelf->spoilt = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
    if (base == NULL)
      continue;
    GHashTableIter iter;
    gpointer id, why;
    g_hash_table_iter_init (&iter, base->shelves[i].spoilt);
    while (g_hash_table_iter_next (&iter, &id, &why))
      g_hash_table_insert (shelf->spoilt, g_strdup (id), g_strdup (why));
    add_all_but_spoilt (shelf, base->shelves[i].things);
  }
  return draft;
}

static guint
place_of (const Shelf *shelf, const char *id)
{
  return GPOINTER_TO_UINT (g_hash_table_lookup (shelf->places, id));
}

void
sq_library_put (SqLibrary *draft, SqThing *thing)
{
  int at = 0;
  while (shelf_rows[at].kind != thing->kind)
    at++;
  Shelf *shelf = &draft->shelves[at];
  const char *id = sq_thing_id (thing);
  guint place = place_of (shelf, id);
  g_hash_table_remove (shelf->spoilt, id);
  if (place == 0) {
    add (shelf, thing);
    return;
  }
  gpointer *slot = &g_ptr_array_index (shelf->things, place - 1);
  g_hash_table_replace (shelf->places, (gpointer)id, GUINT_TO_POINTER (place)); /* the new key */
  sq_thing_unref (*slot);
  *slot = thing;
}

void
sq_library_spoil (SqLibrary *draft, SqShelfName shelf, const char *id, const char *why)
{
  g_hash_table_insert (draft->shelves[shelf].spoilt, g_strdup (id), g_strdup (why));
}

void
sq_library_set_unread (SqLibrary *draft, const char *why)
{
  if (draft->unread == NULL)
    draft->unread = g_strdup (why);
}

void
sq_library_settle (SqLibrary *draft)
{
  for (int i = 0; i < SQ_SHELVES; i++) {
    Shelf *shelf = &draft->shelves[i];
    g_autoptr (GPtrArray) things = g_steal_pointer (&shelf->things);
    shelf->things = g_ptr_array_new_with_free_func ((GDestroyNotify)sq_thing_unref);
    g_hash_table_remove_all (shelf->places);
    add_all_but_spoilt (shelf, things);
  }
}

/* The compiled-in files are part of the program: that they read is held by a test, so what cannot
 * be read here is a broken build. */
static void
add_compiled_in (SqLibrary *library, SqShelfName shelf, const char *text)
{
  const char *key = shelf_rows[shelf].key;
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) root = sq_json_parse (text, strlen (text), &error);
  if (root == NULL)
    g_error ("library: %s: %s", key, error->message);
  JsonArray *array = json_object_get_array_member (json_node_get_object (root), key);
  for (guint i = 0; i < json_array_get_length (array); i++) {
    SqWhere file = { .key = key }, where = { .up = &file, .index = i };
    SqReading reading = { .where = &where };
    SqThing *thing = sq_shelf_read (shelf, &reading, json_array_get_element (array, i), &error);
    if (thing == NULL || thing->extras != NULL)
      g_error ("library: %s[%u]: %s", key, i, error != NULL ? error->message : "unknown key");
    sq_library_put (library, thing);
  }
}

SqLibrary *
sq_library_new (void)
{
  SqLibrary *library = sq_library_draft (NULL);
  add_compiled_in (library, SQ_SHELF_CLASSES, sq_library_classes_json);
  add_compiled_in (library, SQ_SHELF_MATERIALS, sq_library_materials_json);
  add_compiled_in (library, SQ_SHELF_STANDS, sq_library_stands_json);
  return library;
}

SqLibrary *
sq_library_ref (SqLibrary *library)
{
  g_atomic_ref_count_inc (&library->references);
  return library;
}

void
sq_library_unref (SqLibrary *library)
{
  if (!g_atomic_ref_count_dec (&library->references))
    return;
  for (int i = 0; i < SQ_SHELVES; i++) {
    Shelf *shelf = &library->shelves[i];
    g_hash_table_unref (shelf->places);
    g_hash_table_unref (shelf->spoilt);
    g_ptr_array_unref (shelf->things);
  }
  g_free (library->unread);
  g_free (library);
}

static gconstpointer
find (const SqLibrary *library, SqShelfName name, const char *id)
{
  const Shelf *shelf = &library->shelves[name];
  guint place = place_of (shelf, id);
  return place > 0 ? g_ptr_array_index (shelf->things, place - 1) : NULL;
}

const SqClass *
sq_library_class (const SqLibrary *library, const char *id)
{
  return find (library, SQ_SHELF_CLASSES, id);
}

const SqMaterial *
sq_library_material (const SqLibrary *library, const char *id)
{
  return find (library, SQ_SHELF_MATERIALS, id);
}

const SqStand *
sq_library_stand (const SqLibrary *library, const char *id)
{
  return find (library, SQ_SHELF_STANDS, id);
}

const GPtrArray *
sq_library_classes (const SqLibrary *library)
{
  return library->shelves[SQ_SHELF_CLASSES].things;
}

const GPtrArray *
sq_library_materials (const SqLibrary *library)
{
  return library->shelves[SQ_SHELF_MATERIALS].things;
}

const GPtrArray *
sq_library_stands (const SqLibrary *library)
{
  return library->shelves[SQ_SHELF_STANDS].things;
}

const char *
sq_library_spoilt (const SqLibrary *library, SqNames names, const char *id)
{
  for (int i = 0; i < SQ_SHELVES; i++) {
    const char *why = g_hash_table_lookup (library->shelves[i].spoilt, id);
    if (why != NULL && (shelf_rows[i].kind->names & names))
      return why;
  }
  return NULL;
}

const char *
sq_library_unread (const SqLibrary *library)
{
  return library->unread;
}
