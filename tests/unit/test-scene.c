/* test-scene.c: scene files read, checked, changed and written back */
#include "scene/scene.h"

#include <string.h>

static SqScene *
parse (const char *text, GPtrArray *warnings, GError **error)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  return sq_scene_parse (text, strlen (text), library, warnings, error);
}

static void
test_empty (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = parse ("{\"format\": 1}", NULL, &error);
  g_assert_no_error (error);
  g_autofree char *text = sq_scene_write (scene);
  g_assert_cmpstr (text, ==, "{\n  \"format\": 1\n}\n");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scene/an empty scene is read and written", test_empty);
  return g_test_run ();
}
