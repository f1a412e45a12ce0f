/* bench-light.c: how fast the light is, against rays, memory and what we want; nothing is asserted
 *
 *   _build/tests/bench-light [--quick] [SCENE]
 *
 * Medians of several runs after one that warms up. README.md beside this says what each row is. */
#include "bench-light.h"
#include "bench-scenes.h"
#include "bench-time.h"
#include "machine.h"

#define MIB (1024.0 * 1024.0)

static void
print_number (double value, const char *unit)
{
  g_autofree char *text =
    isnan (value) ? g_strdup ("-") : g_strdup_printf ("%.*f %s", value < 10.0 ? 3 : 1, value, unit);
  printf ("  %11s", text);
}

static const char *
verdict_on (const BenchGoal *goal)
{
  if (isnan (goal->sure) && isnan (goal->moonshot))
    return "";
  if (goal->measured <= goal->moonshot)
    return "moonshot met";
  if (isnan (goal->sure))
    return "moonshot not met";
  if (goal->measured > goal->sure)
    return "not met";
  return isnan (goal->moonshot) ? "met" : "met, moonshot not";
}

void
bench_print_goal (const Bench *bench, const BenchGoal *goal)
{
  gboolean is_time = g_str_equal (goal->unit, "ms");
  printf ("%-46s", goal->what);
  print_number (goal->measured, goal->unit);
  print_number (is_time ? bench->rays_ms / goal->measured : NAN, "×");
  print_number (goal->sure, goal->unit);
  print_number (goal->moonshot, goal->unit);
  printf ("  %s\n", verdict_on (goal));
  fflush (stdout);
}

SqMapRequest
bench_field (const SqScene *scene, int columns, int rows)
{
  SqPlace from = { 0, 0 }, to = { 1, 1 };
  sq_scene_extent (scene, 1.0, &from, &to);
  double step_m = MAX ((to.x_m - from.x_m) / (columns - 1), (to.y_m - from.y_m) / (rows - 1));
  SqMapRequest request = sq_map_request (scene, step_m);
  double half_x_m = step_m * (columns - 1) / 2.0, half_y_m = step_m * (rows - 1) / 2.0;
  double x_m = (from.x_m + to.x_m) / 2.0, y_m = (from.y_m + to.y_m) / 2.0;
  request.normal = SQ_NORMAL_UP;
  request.from = (SqPlace){ x_m - half_x_m, y_m - half_y_m };
  request.to = (SqPlace){ x_m + half_x_m, y_m + half_y_m };
  return request;
}

double
bench_map_ms (Engine *engine, const SqScene *scene, const SqMapRequest *request, EngineWay way)
{
  double start = bench_now_ms ();
  SqLightMap *map = engine_map (engine, scene, request, way);
  double ms = bench_now_ms () - start;
  sq_light_map_free (map);
  return ms;
}

double
bench_cold_ms (const SqScene *scene, const SqMapRequest *request, EngineWay way, guint runs)
{
  double taken[BENCH_MOST_RUNS];
  for (guint i = 0; i < runs; i++) {
    g_autoptr (Engine) engine = engine_new (BENCH_THREADS);
    taken[i] = bench_map_ms (engine, scene, request, way);
  }
  return bench_median (taken, runs);
}

static void
print_growth (const Bench *bench,
              const char *what,
              const SqScene *scene,
              const SqMapRequest *request)
{
  guint runs = MIN (bench->runs, 5);
  bench_cold_ms (scene, request, ENGINE_QUICK, 1); /* warms up */
  double quick_ms = bench_cold_ms (scene, request, ENGINE_QUICK, runs);
  double exact_ms = bench_cold_ms (scene, request, ENGINE_EXACT, MIN (runs, 3));
  printf ("%-46s  %8.2f ms fast, %8.2f ms exact\n", what, quick_ms, exact_ms);
  fflush (stdout);
}

static void
grow (const Bench *bench)
{
  static const guint lamps[] = { 8, 32, 128, 256 }, solids[] = { 500, 5000 };
  static const int sides[] = { 128, 256, 512, 1024 };
  puts ("\ngrowth, cold");
  for (guint i = 0; i < G_N_ELEMENTS (lamps); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) scene = bench_scene_grown (bench->scene, lamps[i], 0, &error);
    g_autofree char *what = g_strdup_printf ("%u lamps", lamps[i]);
    if (scene == NULL)
      printf ("%s: %s\n", what, error->message);
    else
      print_growth (bench, what, scene, &bench->request);
  }
  for (guint i = 0; i < G_N_ELEMENTS (solids); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (SqScene) scene = bench_scene_grown (bench->scene, 0, solids[i], &error);
    g_autofree char *what = g_strdup_printf ("%u solids", solids[i]);
    if (scene == NULL)
      printf ("%s: %s\n", what, error->message);
    else
      print_growth (bench, what, scene, &bench->request);
  }
  for (guint i = 0; i < G_N_ELEMENTS (sides); i++) {
    const SqMapRequest request = bench_field (bench->scene, sides[i], sides[i]);
    g_autofree char *what = g_strdup_printf ("%d × %d points", sides[i], sides[i]);
    print_growth (bench, what, bench->scene, &request);
  }
}

static void
make_maps (Bench *bench)
{
  for (int way = 0; way < ENGINE_WAYS; way++) {
    g_autoptr (Engine) engine = engine_new (BENCH_THREADS);
    bench->maps[way] = engine_map (engine, bench->scene, &bench->request, (EngineWay)way);
  }
}

static void
print_table (const Bench *bench)
{
  printf ("\n%-46s  %11s  %11s  %11s  %11s\n", "", "measured", "rays take", "sure", "moonshot");
  const double *cold = bench->cold_ms;
  bench_print_goal (bench, &(BenchGoal){ "map, cold, fast", cold[ENGINE_QUICK], "ms",
                                         bench->rays_ms / 20.0, bench->rays_ms / 80.0 });
  bench_print_goal (bench, &(BenchGoal){ "map, cold, exact", cold[ENGINE_EXACT], "ms", NAN, NAN });
  g_autoptr (Engine) engine = engine_new (BENCH_THREADS);
  bench_print_moves (bench, engine);
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) many = bench_scene_grown (bench->scene, 256, 0, &error);
  if (many == NULL)
    printf ("256 lamps: %s\n", error->message);
  else
    bench_print_goal (bench, &(BenchGoal){ "256 lamps, cold, fast",
                                           bench_cold_ms (many, &bench->request, ENGINE_QUICK,
                                                          MIN (bench->runs, 5)),
                                           "ms", 80.0, 16.0 });
  printf ("%-46s  %7.1f MiB\n%-46s  %7.1f MiB\n", "fields kept after all this",
          (double)engine_bytes (engine) / MIB, "memory at its peak", machine_peak_mib ());
}

int
main (int argc, char **argv)
{
  Bench bench = { .rays_ms = NAN };
  const char *path = SQ_SOURCE_DIR "/samples/ferry-terminal.squarelaw";
  for (int i = 1; i < argc; i++)
    if (g_str_equal (argv[i], "--quick"))
      bench.quick = TRUE;
    else
      path = argv[i];
  bench.runs = bench.quick ? 3 : 9;
  g_autoptr (GError) error = NULL;
  bench.scene = bench_scene_read (path, &error);
  if (bench.scene == NULL) {
    fprintf (stderr, "%s\n", error->message);
    return 1;
  }
  bench.request = bench_field (bench.scene, BENCH_COLUMNS, BENCH_ROWS);
  g_autofree char *name = g_path_get_basename (path);
  machine_print ();
  printf ("memory, a = b + 1.5 c: %.1f GB/s with 1 thread, %.1f with %d\n", machine_triad_gb_s (1),
          machine_triad_gb_s (BENCH_THREADS), BENCH_THREADS);
  printf ("%s, %d × %d points %.3f m apart, %d threads, medians of %u runs\n", name, BENCH_COLUMNS,
          BENCH_ROWS, bench.request.step_m, BENCH_THREADS, bench.runs);
  make_maps (&bench);
  bench_print_cold (&bench);
  if (!bench.quick)
    bench_print_check (&bench);
  machine_forget_peak ();
  print_table (&bench);
  if (!bench.quick)
    grow (&bench);
  for (int way = 0; way < ENGINE_WAYS; way++)
    sq_light_map_free (bench.maps[way]);
  sq_scene_unref (bench.scene);
  return 0;
}
