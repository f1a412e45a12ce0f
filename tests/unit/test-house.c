/* test-house.c: the rooms call each other one way only, and what people read can be translated */
#include <glib.h>
#include <string.h>

/* From the ground up: a room may include those before it and itself. */
static const char *const rooms[] = { "base", "scene", "power", "light", "draw", "paper" };

typedef void (*FileCheck) (const char *path, const char *text, gpointer data);

static void
each_source (const char *folder, FileCheck check, gpointer data)
{
  g_autofree char *path = g_build_filename (SQ_SOURCE_DIR, folder, NULL);
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;
  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    if (!g_str_has_suffix (name, ".c") && !g_str_has_suffix (name, ".h"))
      continue;
    g_autofree char *file = g_build_filename (path, name, NULL);
    g_autofree char *text = NULL, *short_name = g_build_filename (folder, name, NULL);
    g_assert_true (g_file_get_contents (file, &text, NULL, NULL));
    check (short_name, text, data);
  }
}

/* Calls back with what stands in each `#include "…"` or `<…>`. */
static void
each_include (const char *text, void (*check) (const char *what, gpointer data), gpointer data)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++) {
    if (!g_str_has_prefix (lines[i], "#include "))
      continue;
    g_autofree char *what = g_strdup (lines[i] + strlen ("#include ") + 1);
    what[strcspn (what, "\">")] = '\0';
    check (what, data);
  }
}

typedef struct {
  const char *path;
  guint room;
} Here;

static void
includes_downward (const char *what, gpointer data)
{
  const Here *here = data;
  for (guint above = here->room + 1; above < G_N_ELEMENTS (rooms); above++) {
    g_autofree char *prefix = g_strconcat (rooms[above], "/", NULL);
    if (g_str_has_prefix (what, prefix))
      g_error ("%s includes %s, which is above it", here->path, what);
  }
  static const char *const toolkit[] = { "gtk/", "gdk/", "gsk/" };
  for (guint i = 0; i < G_N_ELEMENTS (toolkit); i++) {
    if (g_str_has_prefix (what, toolkit[i]))
      g_error ("%s includes %s: core knows no GTK", here->path, what);
  }
}

static void
check_includes (const char *path, const char *text, gpointer data)
{
  Here here = { path, GPOINTER_TO_UINT (data) };
  each_include (text, includes_downward, &here);
}

static void
test_arrows (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rooms); i++) {
    g_autofree char *folder = g_build_filename ("core", rooms[i], NULL);
    each_source (folder, check_includes, GUINT_TO_POINTER (i));
  }
}

static void
check_first_line (const char *path, const char *text, gpointer data)
{
  const char *base = strrchr (path, '/') + 1;
  g_autofree char *begins = g_strdup_printf ("/* %s: ", base);
  if (!g_str_has_prefix (text, begins))
    g_error ("%s does not begin with \"%s\": one file, one idea, said in its first line", path,
             begins);
}

static void
test_first_lines (void)
{
  static const char *const folders[] = { "core/base", "core/scene", "core/light",
                                         "core/draw", "core/paper", "app",
                                         "ui",        "tests/unit", "tests/window" };
  for (guint i = 0; i < G_N_ELEMENTS (folders); i++)
    each_source (folders[i], check_first_line, NULL);
}

static void
check_listed (const char *path, const char *text, gpointer data)
{
  const char *const *listed = data;
  gboolean speaks = strstr (text, " _ (\"") != NULL || strstr (text, "(_ (\"") != NULL ||
                    strstr (text, "N_ (\"") != NULL || strstr (text, "g_dngettext (") != NULL;
  if (speaks && !g_strv_contains (listed, path))
    g_error ("%s has text for people and is not in ui/po/POTFILES", path);
}

static void
test_translatable (void)
{
  static const char *const folders[] = { "core/base",  "core/scene", "core/light", "core/draw",
                                         "core/paper", "app",        "ui" };
  g_autofree char *path = g_build_filename (SQ_SOURCE_DIR, "ui/po/POTFILES", NULL), *text = NULL;
  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_auto (GStrv) listed = g_strsplit (text, "\n", -1);
  for (guint i = 0; i < G_N_ELEMENTS (folders); i++)
    each_source (folders[i], check_listed, listed);
  for (guint i = 0; listed[i] != NULL; i++) {
    if (listed[i][0] == '\0' || listed[i][0] == '#')
      continue;
    g_autofree char *file = g_build_filename (SQ_SOURCE_DIR, listed[i], NULL);
    if (!g_file_test (file, G_FILE_TEST_EXISTS))
      g_error ("ui/po/POTFILES lists %s, which does not exist", listed[i]);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/house/rooms call downward only, and core knows no GTK", test_arrows);
  g_test_add_func ("/house/each file says its idea in its first line", test_first_lines);
  g_test_add_func ("/house/every source with text for people is listed for translation",
                   test_translatable);
  return g_test_run ();
}
