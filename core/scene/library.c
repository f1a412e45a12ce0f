/* library.c: what comes with the program: lamp classes, materials and stands, compiled in as JSON
 */
#include "scene/library.h"

#include "base/json-text.h"
#include "scene/check.h"
#include "scene/library-data.h"

#include <glib/gi18n-lib.h>

struct SqLibrary {
  gatomicrefcount references;
  GPtrArray *classes, *materials, *stands;
  GHashTable *classes_by_id, *materials_by_id, *stands_by_id;
};

/* clang-format off */
#define AT(member) offsetof (SqStand, member)
static const SqField stand_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED, .help = N_ ("Its name in references.") },
  { "name", N_ ("Name"), &sq_value_text, AT (name), .help = N_ ("Generic.") },
  { "spigot", N_ ("Spigot"), &sq_value_numbers, AT (spigot_mm), SQ_MILLIMETRES, SQ_RANGE (1, 100),
    .initial_json = "[16, 16]", .count = 2, .help = N_ ("The two sizes it takes; twice the same where it takes one.") },
  { "min_height", N_ ("Lowest"), &sq_value_number, AT (min_height_m), SQ_LENGTH, SQ_RANGE (0, 50),
    .help = N_ ("Spigot above the floor.") },
  { "max_height", N_ ("Highest"), &sq_value_number, AT (max_height_m), SQ_LENGTH, SQ_RANGE (0, 50),
    .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Spigot above the floor; null: what it is fixed to decides.") },
  { "load_kg", N_ ("Load"), &sq_value_number, AT (load_kg), SQ_MASS, SQ_RANGE (0, 10000),
    .help = N_ ("What it may carry.") },
  { "weight_kg", N_ ("Weight"), &sq_value_number, AT (weight_kg), SQ_MASS, SQ_RANGE (0, 10000),
    .help = N_ ("Of itself.") },
  { "footprint", N_ ("Footprint"), &sq_value_number, AT (footprint_m), SQ_LENGTH, SQ_RANGE (0, 20),
    .help = N_ ("Across its open legs.") },
  { "sandbags", N_ ("Sandbags"), &sq_value_count, AT (sandbags), SQ_PLAIN, SQ_RANGE (0, 100),
    .help = N_ ("How many it asks for.") },
};
#undef AT
/* clang-format on */

const SqKind sq_stand_kind = {
  .name = N_ ("stand"),
  .size = sizeof (SqStand),
  SQ_FIELDS (stand_fields),
  .names = SQ_NAMES_STAND,
  .help = N_ ("A stand of the library."),
};

/* The three files are part of the program: that they read is held by a test, so what cannot be
 * read here is a broken build. */
static void
add_file (const char *text, const char *key, const SqKind *kind, GPtrArray *list, GHashTable *by_id)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) root = sq_json_parse (text, strlen (text), &error);
  if (root == NULL)
    g_error ("library: %s: %s", key, error->message);
  JsonArray *array = json_object_get_array_member (json_node_get_object (root), key);
  for (guint i = 0; i < json_array_get_length (array); i++) {
    SqWhere file = { .key = key }, where = { .up = &file, .index = i };
    SqReading reading = { .where = &where };
    SqThing *thing = sq_thing_read (kind, &reading, json_array_get_element (array, i), &error);
    if (thing == NULL || thing->extras != NULL ||
        (kind == &sq_class_kind && !sq_class_check ((SqClass *)thing, &where, &error)) ||
        (kind == &sq_material_kind && !sq_material_check ((SqMaterial *)thing, &where, &error)))
      g_error ("library: %s[%u]: %s", key, i, error != NULL ? error->message : "unknown key");
    g_ptr_array_add (list, thing);
    g_hash_table_insert (by_id, (gpointer)sq_thing_id (thing), thing);
  }
}

SqLibrary *
sq_library_new (void)
{
  SqLibrary *library = g_new0 (SqLibrary, 1);
  g_atomic_ref_count_init (&library->references);
  library->classes = g_ptr_array_new_with_free_func ((GDestroyNotify)sq_thing_unref);
  library->materials = g_ptr_array_new_with_free_func ((GDestroyNotify)sq_thing_unref);
  library->stands = g_ptr_array_new_with_free_func ((GDestroyNotify)sq_thing_unref);
  library->classes_by_id = g_hash_table_new (g_str_hash, g_str_equal);
  library->materials_by_id = g_hash_table_new (g_str_hash, g_str_equal);
  library->stands_by_id = g_hash_table_new (g_str_hash, g_str_equal);
  add_file (sq_library_classes_json, "classes", &sq_class_kind, library->classes,
            library->classes_by_id);
  add_file (sq_library_materials_json, "materials", &sq_material_kind, library->materials,
            library->materials_by_id);
  add_file (sq_library_stands_json, "stands", &sq_stand_kind, library->stands,
            library->stands_by_id);
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
  g_hash_table_unref (library->classes_by_id);
  g_hash_table_unref (library->materials_by_id);
  g_hash_table_unref (library->stands_by_id);
  g_ptr_array_unref (library->classes);
  g_ptr_array_unref (library->materials);
  g_ptr_array_unref (library->stands);
  g_free (library);
}

const SqClass *
sq_library_class (const SqLibrary *library, const char *id)
{
  return g_hash_table_lookup (library->classes_by_id, id);
}

const SqMaterial *
sq_library_material (const SqLibrary *library, const char *id)
{
  return g_hash_table_lookup (library->materials_by_id, id);
}

const SqStand *
sq_library_stand (const SqLibrary *library, const char *id)
{
  return g_hash_table_lookup (library->stands_by_id, id);
}

const GPtrArray *
sq_library_classes (const SqLibrary *library)
{
  return library->classes;
}

const GPtrArray *
sq_library_materials (const SqLibrary *library)
{
  return library->materials;
}

const GPtrArray *
sq_library_stands (const SqLibrary *library)
{
  return library->stands;
}
