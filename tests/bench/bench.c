/* bench.c: how long reading and writing takes, as ratios measured in one run; nothing is asserted
 *
 * meson compile -C _build && _build/tests/bench
 * Medians of several runs. A ratio says the same on every machine; the milliseconds beside it are
 * this machine's. Light has a benchmark of its own: bench-light.c. */
#include "base/json-write.h"
#include "bench-time.h"
#include "scene/scene.h"

#include <json-glib/json-glib.h>
#include <string.h>
#include <sys/resource.h>

#define RUNS 5

/* A hall of @lamps lamps in rows over 40 people. */
static char *
hall_text (guint lamps)
{
  GString *text =
    g_string_new ("{\"format\": 1, \"walls\": [{\"path\": [[0, 0], [24, 0], [24, 16], "
                  "[0, 16]], \"closed\": true}], \"marks\": [");
  for (guint i = 0; i < 40; i++)
    g_string_append_printf (text, "%s{\"id\": \"m%u\", \"at\": [%u, %u]}", i > 0 ? ", " : "", i,
                            2 + i % 8 * 3, 2 + i / 8 * 3);
  g_string_append (text, "], \"fixtures\": [");
  for (guint i = 0; i < lamps; i++)
    g_string_append_printf (text,
                            "%s{\"id\": \"f%u\", \"class\": \"tungsten-fresnel-1000\", \"at\": "
                            "[%u.5, %u.5, 4], \"aim\": \"m%u\", \"level\": 0.5}",
                            i > 0 ? ", " : "", i, 1 + i % 22, 1 + i / 22 % 14, i % 40);
  g_string_append (text, "]}");
  return g_string_free (text, FALSE);
}

typedef struct {
  char *text;
  SqLibrary *library;
  SqScene *scene;
  JsonNode *tree;
} Subject;

static Subject *
subject_new (SqLibrary *library, guint lamps)
{
  Subject *subject = g_new0 (Subject, 1);
  g_autoptr (GError) error = NULL;
  subject->text = hall_text (lamps);
  subject->library = library;
  subject->scene = sq_scene_parse (subject->text, strlen (subject->text), library, NULL, &error);
  if (subject->scene == NULL)
    g_error ("%s", error->message);
  return subject;
}

static void
parse_by_library (gpointer data)
{
  const Subject *subject = data;
  g_autoptr (JsonParser) parser = json_parser_new ();
  json_parser_load_from_data (parser, subject->text, -1, NULL);
}

static void
read_scene (gpointer data)
{
  const Subject *subject = data;
  sq_scene_unref (
    sq_scene_parse (subject->text, strlen (subject->text), subject->library, NULL, NULL));
}

static void
write_scene (gpointer data)
{
  const Subject *subject = data;
  g_free (sq_scene_write (subject->scene));
}

static void
write_tree (gpointer data)
{
  g_free (sq_json_write (((const Subject *)data)->tree));
}

static JsonNode *
tree_new (guint depth)
{
  g_autoptr (JsonArray) numbers = json_array_new ();
  for (guint i = 0; i < 50000; i++)
    json_array_add_double_element (numbers, i + 0.1);
  JsonNode *node = json_node_init_array (json_node_alloc (), numbers);
  for (guint i = 1; i < depth; i++) {
    g_autoptr (JsonObject) object = json_object_new ();
    json_object_set_member (object, "a", node);
    node = json_node_init_object (json_node_alloc (), object);
  }
  return node;
}

int
main (void)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  Subject *large = subject_new (library, 4000);
  printf ("medians of %d runs\n", RUNS);

  double parsed = bench_ms (parse_by_library, large, RUNS);
  bench_say ("read and check 4,000 lamps", bench_ms (read_scene, large, RUNS),
             "json-glib's parser alone", parsed);
  bench_say ("write 4,000 lamps", bench_ms (write_scene, large, RUNS), "json-glib's parser alone",
             parsed);
  Subject flat = { .tree = tree_new (2) }, deep = { .tree = tree_new (64) };
  bench_say ("write 50,000 numbers 64 levels deep", bench_ms (write_tree, &deep, RUNS),
             "two levels deep", bench_ms (write_tree, &flat, RUNS));

  struct rusage usage;
  getrusage (RUSAGE_SELF, &usage);
  printf ("%-44s %8.1f MiB  %6.1f × the text of 4,000 lamps\n", "memory at its peak",
          (double)usage.ru_maxrss / 1024.0,
          (double)usage.ru_maxrss * 1024.0 / (double)strlen (large->text));
  return 0;
}
