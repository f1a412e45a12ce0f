/* test-one-answer.c: map, meter and marks read the same light at the same place, to the last bit */
#include "random-light.h"

#define SCENES 200
#define PROBES 40
#define STEP_M 0.17

static SqScene *
with (const SqScene *scene, const char *list, const char *members)
{
  g_autoptr (GError) error = NULL;
  SqScene *changed = sq_scene_set (scene, list, members, &error);
  g_assert_no_error (error);
  return changed;
}

static SqLightMap *
random_map (GRand *dice, const SqScene *scene)
{
  g_autoptr (GError) error = NULL;
  SqMapRequest request = sq_map_request (scene, STEP_M);
  request.height_m = any (dice, 0.0, 2.5);
  request.normal = SQ_NORMAL_UP;
  request.from = (SqPlace){ -1.0, -1.0 };
  request.to = (SqPlace){ 6.0, 5.0 };
  SqLightMap *map = sq_light_map (scene, &request, 2, NULL, &error);
  g_assert_no_error (error);
  return map;
}

/* Flat meters that look up, at points of the map. */
static void
test_map_and_meter (void)
{
  guint n_read = 0, n_lit = 0;
  for (guint32 seed = 0; seed < SCENES; seed++) {
    g_autoptr (GRand) dice = g_rand_new_with_seed (5000 + seed);
    g_autoptr (SqScene) scene = random_light (dice);
    g_autoptr (SqLightMap) map = random_map (dice, scene);
    const SqReceivers receivers = sq_light_map_receivers (map, scene);
    g_autoptr (GString) probes = g_string_new ("[");
    int index[PROBES];
    for (int i = 0; i < PROBES; i++) {
      int column = g_rand_int_range (dice, 0, map->columns);
      int row = g_rand_int_range (dice, 0, map->rows);
      SqPoint at = sq_receiver_point (&receivers.grid, column, row);
      index[i] = row * map->columns + column;
      g_string_append_printf (probes, "%s{\"id\": \"q%d\", \"at\": [%.17g, %.17g, %.17g]}",
                              i ? "," : "", i, at.x_m, at.y_m, at.z_m);
    }
    g_string_append_c (probes, ']');
    g_autoptr (SqScene) metered = with (scene, "probes", probes->str);
    g_autoptr (SqReadings) readings = readings_of (metered);
    for (int i = 0; i < PROBES; i++) {
      const SqProbeReading *probe = g_ptr_array_index (readings->probes, (guint)i);
      double there = map->lux[index[i]];
      if (isnan (there)) /* inside something, where the meter reads what comes through: nothing */
        continue;
      if (probe->lux != there)
        g_error ("seed %u, probe %d: the meter reads %.17g, the map %.17g", 5000 + seed, i,
                 probe->lux, there);
      n_read++;
      n_lit += there > 0.0;
    }
  }
  g_test_message ("%u points read, %u of them lit", n_read, n_lit);
  g_assert_cmpuint (n_lit, >, SCENES * PROBES / 4);
}

/* All marks of random_light.h but one. */
static char *
marks_without (const SqScene *scene, guint left_out)
{
  static const char *const postures[] = {
    [SQ_POSTURE_STAND] = "stand", [SQ_POSTURE_SIT] = "sit", [SQ_POSTURE_LIE] = "lie"
  };
  g_autoptr (GString) text = g_string_new ("[");
  for (guint i = 0; i < scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
    if (i == left_out)
      continue;
    g_string_append_printf (
      text, "%s{\"id\": \"%s\", \"at\": [%.17g, %.17g], \"facing\": %.17g, \"posture\": \"%s\"}",
      text->len > 1 ? "," : "", mark->id, mark->at.x_m, mark->at.y_m, mark->facing_deg,
      postures[mark->posture]);
  }
  g_string_append_c (text, ']');
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* One at the face for each lamp, turned to it. */
static char *
probes_at (const SqScene *scene, SqPoint face)
{
  g_autoptr (GString) text = g_string_new ("[");
  for (guint i = 0; i < scene->fixtures->len; i++)
    g_string_append_printf (
      text, "%s{\"id\": \"q%u\", \"at\": [%.17g, %.17g, %.17g], \"toward\": \"f%u\"}", i ? "," : "",
      i, face.x_m, face.y_m, face.z_m, i);
  g_string_append_c (text, ']');
  return g_string_free (g_steal_pointer (&text), FALSE);
}

/* A person does not shade the own meter: lamp by lamp a mark reads what probes read that stand
 * where the face was, turned to each lamp, when the person has gone. */
static void
test_marks_and_meter (void)
{
  guint n_read = 0, n_lit = 0;
  for (guint32 seed = 0; seed < SCENES; seed++) {
    g_autoptr (GRand) dice = g_rand_new_with_seed (7000 + seed);
    g_autoptr (SqScene) scene = random_light (dice);
    g_autoptr (SqReadings) readings = readings_of (scene);
    for (guint i = 0; i < readings->marks->len; i++) {
      const SqMarkReading *mark = g_ptr_array_index (readings->marks, i);
      g_autofree char *marks = marks_without (scene, i), *probes = probes_at (scene, mark->face);
      g_autoptr (SqScene) gone = with (scene, "marks", marks);
      g_autoptr (SqScene) metered = with (gone, "probes", probes);
      g_autoptr (SqReadings) there = readings_of (metered);
      for (guint k = 0; k < scene->fixtures->len; k++) {
        const SqProbeReading *probe = g_ptr_array_index (there->probes, k);
        double by_mark = g_array_index (mark->rows, SqReadingRow, k).lux;
        double by_probe = g_array_index (probe->rows, SqReadingRow, k).lux;
        if (by_mark != by_probe)
          g_error ("seed %u, mark %u, lamp %u: %.17g at the mark, %.17g by the probe", 7000 + seed,
                   i, k, by_mark, by_probe);
        n_read++;
        n_lit += by_mark > 0.0;
      }
    }
  }
  g_test_message ("%u readings, %u of them lit", n_read, n_lit);
  g_assert_cmpuint (n_lit, >, SCENES);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/one answer/map and meter", test_map_and_meter);
  g_test_add_func ("/one answer/marks and meter", test_marks_and_meter);
  return g_test_run ();
}
