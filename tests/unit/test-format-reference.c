/* test-format-reference.c: the page of the file format says all that the tables say */
#include "scene/format-reference.h"
#include "scene/scene.h"

#include <string.h>

#define PAGE_FILE SQ_SOURCE_DIR "/core/scene/FORMAT.md"

static void
test_page_is_fresh (void)
{
  g_autofree char *in_tree = NULL, *now = sq_format_reference ();
  g_autoptr (GError) error = NULL;
  g_file_get_contents (PAGE_FILE, &in_tree, NULL, &error);
  g_assert_no_error (error);
  if (!g_str_equal (in_tree, now))
    g_test_message ("refresh it as its first lines say");
  g_assert_true (g_str_equal (in_tree, now));
}

/* From the heading of @kind to the next one. */
static char *
section_of (const char *page, const SqKind *kind)
{
  g_autofree char *heading = g_strdup_printf ("\n## %s\n", kind->name);
  const char *start = strstr (page, heading);
  g_assert_nonnull (start);
  const char *end = strstr (start + 1, "\n## ");
  return end != NULL ? g_strndup (start, (gsize)(end - start)) : g_strdup (start);
}

/* The line of @key in @section. */
static char *
row_of (const char *section, const char *key)
{
  g_autofree char *start_of_row = g_strdup_printf ("\n| `%s` | ", key);
  const char *start = strstr (section, start_of_row);
  if (start == NULL)
    g_error ("no row for %s in%s", key, section);
  return g_strndup (start, strcspn (start + 1, "\n") + 1);
}

static void
check_row (const SqField *field, const char *row)
{
  g_assert_nonnull (strstr (row, field->help));
  for (guint i = 0; field->words != NULL && field->words[i] != NULL; i++) {
    g_autofree char *word = g_strdup_printf ("`%s`", field->words[i]);
    g_assert_nonnull (strstr (row, word));
  }
  if (field->of != NULL)
    g_assert_nonnull (strstr (row, field->of->name));
  g_assert_cmpint (strstr (row, "| required |") != NULL, ==, (field->flags & SQ_REQUIRED) != 0);
  g_assert_cmpint (strstr (row, "; only for `") != NULL, ==, field->variants != 0);
}

static void
check_kind (const char *page, const SqKind *kind, GHashTable *seen)
{
  if (!g_hash_table_add (seen, (gpointer)kind))
    return;
  g_autofree char *section = section_of (page, kind);
  g_assert_nonnull (strstr (section, kind->help));
  for (guint i = 0; i < kind->n_fields; i++) {
    g_autofree char *row = row_of (section, kind->fields[i].key);
    check_row (&kind->fields[i], row);
    if (kind->fields[i].of != NULL)
      check_kind (page, kind->fields[i].of, seen);
  }
}

static void
test_every_row (void)
{
  g_autofree char *page = sq_format_reference ();
  g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
  check_kind (page, &sq_scene_kind, seen);
  check_kind (page, &sq_stand_kind, seen);
  g_assert_cmpuint (g_hash_table_size (seen), >, 30);
}

/* The columns of some rows whose meaning the format fixes. */
static void
test_columns (void)
{
  static const struct {
    const SqKind *kind;
    const char *key, *columns;
  } rows[] = {
    { &sq_fixture_kind, "level", "| a number |  | from 0 to 1 |  | `1` | look |" },
    { &sq_scene_kind, "north", "| a number | ° | from -360 to 360 |  | `90` |  |" },
    { &sq_room_kind, "ceiling_height",
      "| a number | m | from 0.5 to 100 | 2.2 to 8 | `null` | null |" },
    { &sq_panel_kind, "width", "| a number | m | above 0 up to 50 | 0.1 to 6.1 | required |  |" },
    { &sq_beam_kind, "beam_deg", "| ° | above 0 and below 180 | 4 to 120 | required |  |" },
    { &sq_opening_kind, "material",
      "| an id that exists: material |  |  |  | `null` | look, null |" },
    { &sq_camera_kind, "gate_mm",
      "| a list of 2 numbers | mm | from 1 to 200 |  | `[24.89, 18.66]` |  |" },
    { &sq_modifier_kind, "leaves", "`[90, 90, 90, 90]` |  |" },
    { &sq_daylight_kind, "time", "| a time, HH:MM |  |  |  | `\"12:00\"` | look |" },
  };
  g_autofree char *page = sq_format_reference ();
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *section = section_of (page, rows[i].kind);
    g_autofree char *row = row_of (section, rows[i].key);
    if (!g_str_has_suffix (row, rows[i].columns))
      g_error ("%s ends otherwise than %s", row, rows[i].columns);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/format reference/the page in the tree is up to date", test_page_is_fresh);
  g_test_add_func ("/format reference/every kind has a section and every key a row",
                   test_every_row);
  g_test_add_func ("/format reference/columns say unit, ranges, default and marks", test_columns);
  return g_test_run ();
}
