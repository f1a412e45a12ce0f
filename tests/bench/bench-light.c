/* bench-light.c: how fast the light is, against rays, memory and what we want; nothing is asserted
 *
 *   _build/tests/bench-light [--quick] [SCENE]
 *
 * Medians of several runs after one that warms up. README.md beside this says what each row is. */
#include "bench-engine.h"
#include "bench-scenes.h"
#include "bench-time.h"
#include "light/lamp.h"
#include "machine.h"
#include "rays.h"

#include <string.h>

#define THREADS 2
#define COLUMNS 256
#define ROWS 192
#define LEAST_SHARE 0.01 /* of the map's peak; below it nothing is compared */
#define STEP_M 0.03      /* of a drag */
#define MOST_RUNS 64
#define MIB (1024.0 * 1024.0)

typedef struct {
  SqScene *scene;
  SqMapRequest request;
  guint runs;
  gboolean quick;
  SqLightMap *maps[ENGINE_WAYS];
  double cold_ms[ENGINE_WAYS];
  double rays_ms; /* a map by rays: 1 a small lamp, 64 a soft one; NAN: none */
} Bench;

typedef struct {
  double rms, worst; /* relative */
} Error;

/* A row of the table. */
typedef struct {
  const char *what;
  double measured;
  const char *unit;
  double sure, moonshot; /* NAN: none */
  gboolean more;         /* is better */
} Goal;

static void
print_number (double value, const char *unit)
{
  g_autofree char *text =
    isnan (value) ? g_strdup ("-") : g_strdup_printf ("%.*f %s", value < 10.0 ? 3 : 1, value, unit);
  printf ("  %11s", text);
}

static const char *
verdict_on (const Goal *goal)
{
  double way = goal->more ? -1.0 : 1.0, gap = way * goal->measured;
  if (isnan (goal->sure) && isnan (goal->moonshot))
    return "";
  if (gap <= way * goal->moonshot)
    return "moonshot met";
  if (isnan (goal->sure))
    return "moonshot not met";
  if (gap > way * goal->sure)
    return "not met";
  return isnan (goal->moonshot) ? "met" : "met, moonshot not";
}

/* With how many times as long the rays take, for what is a time. */
static void
print_goal (const Bench *bench, const Goal *goal)
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

static Error
error_of (const double *lux, const SqLightMap *truth)
{
  gsize n = (gsize)truth->columns * truth->rows, compared = 0;
  double peak = 0.0, squares = 0.0;
  Error error = { 0 };
  for (gsize i = 0; i < n; i++)
    peak = isnan (truth->lux[i]) ? peak : MAX (peak, truth->lux[i]);
  for (gsize i = 0; i < n; i++) {
    if (isnan (truth->lux[i]) || truth->lux[i] < LEAST_SHARE * peak)
      continue;
    double off = fabs (lux[i] / truth->lux[i] - 1.0);
    squares += off * off;
    error.worst = MAX (error.worst, off);
    compared++;
  }
  error.rms = sqrt (squares / MAX (compared, 1));
  return error;
}

/* A field of @columns × @rows points in the middle of the set, as large as takes all of it in. */
static SqMapRequest
field_of (const SqScene *scene, int columns, int rows)
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

static double
map_ms (Engine *engine, const SqScene *scene, const SqMapRequest *request, EngineWay way)
{
  double start = bench_now_ms ();
  SqLightMap *map = engine_map (engine, scene, request, way);
  double ms = bench_now_ms () - start;
  sq_light_map_free (map);
  return ms;
}

/* With nothing kept, the threads already standing. */
static double
cold_ms (const SqScene *scene, const SqMapRequest *request, EngineWay way, guint runs)
{
  double taken[MOST_RUNS];
  for (guint i = 0; i < runs + 1; i++) {
    g_autoptr (Engine) engine = engine_new (THREADS);
    taken[i > 0 ? i - 1 : 0] = map_ms (engine, scene, request, way);
  }
  return bench_median (taken, runs);
}

/* Ids of lamps, small or soft, that burn. Returns: (transfer full) (element-type utf8) */
static GPtrArray *
lamp_ids (const SqScene *scene, gboolean soft)
{
  GPtrArray *ids = g_ptr_array_new ();
  g_autoptr (GArray) lamps = sq_lamps_new (scene, NULL);
  for (guint i = 0; i < lamps->len; i++) {
    const SqLamp *lamp = &g_array_index (lamps, SqLamp, i);
    if (lamp->output > 0.0 && (lamp->radius_m > RAYS_SOFT_M) == (soft != FALSE))
      g_ptr_array_add (ids, lamp->fixture->id);
  }
  return ids;
}

static GPtrArray *
person_ids (const SqScene *scene)
{
  GPtrArray *ids = g_ptr_array_new ();
  for (guint i = 0; i < scene->marks->len; i++)
    g_ptr_array_add (ids, SQ_AT (SqMark, scene->marks, i)->id);
  return ids;
}

static GPtrArray *
flag_ids (const SqScene *scene)
{
  GPtrArray *ids = g_ptr_array_new ();
  for (guint i = 0; i < scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, scene->panels, i);
    if (panel->set && panel->kind == SQ_PANEL_FLAG)
      g_ptr_array_add (ids, panel->id);
  }
  return ids;
}

/* What is dragged, and what is wanted of it. */
typedef struct {
  const char *what;
  GPtrArray *ids;
  double sure_ms, moonshot_ms;
} Drag;

typedef struct {
  double mean_ms, worst_ms;
} Spread;

/* Each thing in turn is moved step by step, never twice to the same place; a map after each step.
 * Of each the median, of these the mean and the worst. */
static Spread
drag_ms (const Bench *bench, Engine *engine, const GPtrArray *ids, EngineWay way)
{
  Spread spread = { 0 };
  guint n = bench->quick ? MIN (ids->len, 4) : ids->len;
  for (guint k = 0; k < n; k++) {
    double taken[MOST_RUNS];
    map_ms (engine, bench->scene, &bench->request, way);
    for (guint i = 0; i < bench->runs; i++) {
      g_autoptr (SqScene) moved = bench_scene_moved (bench->scene, g_ptr_array_index (ids, k),
                                                     STEP_M * (i + 1), STEP_M / 2.0 * (i + 1));
      taken[i] = map_ms (engine, moved, &bench->request, way);
    }
    double ms = bench_median (taken, bench->runs);
    spread.mean_ms += ms / n;
    spread.worst_ms = MAX (spread.worst_ms, ms);
  }
  return spread;
}

static void
print_drag (const Bench *bench, Engine *engine, const Drag *drag)
{
  static const char *const ways[] = { "fast", "exact" };
  if (drag->ids->len == 0)
    return;
  for (int way = 0; way < ENGINE_WAYS; way++) {
    Spread spread = drag_ms (bench, engine, drag->ids, (EngineWay)way);
    g_autofree char *mean = g_strdup_printf ("%s dragged, %s, mean", drag->what, ways[way]);
    g_autofree char *worst = g_strdup_printf ("%s dragged, %s, worst", drag->what, ways[way]);
    double sure = way == ENGINE_QUICK ? drag->sure_ms : NAN;
    double moonshot = way == ENGINE_EXACT ? drag->moonshot_ms : NAN;
    print_goal (bench, &(Goal){ mean, spread.mean_ms, "ms", sure, NAN, FALSE });
    print_goal (bench, &(Goal){ worst, spread.worst_ms, "ms", sure, moonshot, FALSE });
  }
}

/* The exact map when the hand rests: the fast one was asked all the way, the exact one is that of
 * the place before. */
static double
release_ms (const Bench *bench, Engine *engine, GPtrArray *const *ids, guint n_kinds)
{
  double worst = 0.0;
  for (guint k = 0; k < n_kinds; k++)
    for (guint i = 0; i < (bench->quick ? MIN (ids[k]->len, 1) : ids[k]->len); i++) {
      const char *id = g_ptr_array_index (ids[k], i);
      map_ms (engine, bench->scene, &bench->request, ENGINE_EXACT);
      g_autoptr (SqScene) moved = bench_scene_moved (bench->scene, id, -0.4, 0.3);
      map_ms (engine, moved, &bench->request, ENGINE_QUICK);
      worst = MAX (worst, map_ms (engine, moved, &bench->request, ENGINE_EXACT));
    }
  return worst;
}

static double
dimmer_ms (const Bench *bench, Engine *engine, const char *id, EngineWay way)
{
  double taken[MOST_RUNS];
  guint runs = MOST_RUNS - 1;
  g_autofree char *path = g_strdup_printf ("%s.level", id);
  map_ms (engine, bench->scene, &bench->request, way);
  for (guint i = 0; i < runs; i++) {
    g_autofree char *level = g_strdup_printf ("%.4f", 0.9 - 0.01 * i);
    g_autoptr (SqScene) dimmed = sq_scene_set (bench->scene, path, level, NULL);
    taken[i] = map_ms (engine, dimmed, &bench->request, way);
  }
  return bench_median (taken, runs);
}

static void
print_dimmer (const Bench *bench, Engine *engine)
{
  g_autoptr (GPtrArray) small = lamp_ids (bench->scene, FALSE);
  g_autoptr (GPtrArray) soft = lamp_ids (bench->scene, TRUE);
  const char *id = g_ptr_array_index (small->len > 0 ? small : soft, 0);
  static const char *const rows[] = { "dimmer, fast, against a plain memory sum",
                                      "dimmer, exact, against a plain memory sum" };
  for (int way = 0; way < ENGINE_WAYS; way++) {
    double ms = dimmer_ms (bench, engine, id, (EngineWay)way);
    double plain_ms = machine_sum_ms (small->len + soft->len, (gsize)COLUMNS * ROWS,
                                      engine_value_bytes ((EngineWay)way), THREADS);
    print_goal (bench, &(Goal){ rows[way], ms / plain_ms, "×", 2.0, NAN, FALSE });
    printf ("  %.3f ms; the plain sum of %u maps takes %.3f ms\n", ms, small->len + soft->len,
            plain_ms);
  }
}

typedef struct {
  const Rays *rays;
  RaysWanted wanted;
  double *lux;
  guint64 n_rays;
} RaysWork;

static void
cast_rays (gpointer data)
{
  RaysWork *work = data;
  work->n_rays = rays_map (work->rays, &work->wanted, work->lux);
}

/* Returns: ms */
static double
print_rays (const Bench *bench, const Rays *rays, const char *what, RaysWanted wanted)
{
  const SqLightMap *exact = bench->maps[ENGINE_EXACT];
  g_autofree double *lux = g_new (double, (gsize)COLUMNS *ROWS);
  RaysWork work = { rays, wanted, lux, 0 };
  double ms = bench_ms (cast_rays, &work, MIN (bench->runs, 5));
  Error error = error_of (lux, exact);
  printf ("%-46s  %8.2f ms; off by %.2f %% rms, %.1f %% at worst; %.1f million rays, %.1f a µs\n",
          what, ms, error.rms * 100.0, error.worst * 100.0, (double)work.n_rays / 1e6,
          (double)work.n_rays / ms / 1e3);
  fflush (stdout);
  return ms;
}

static void
print_tracer (Bench *bench)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Rays) rays = rays_new (bench->scene, bench->maps[ENGINE_EXACT], &error);
  if (rays == NULL) {
    printf ("no rays: %s\n", error->message);
    return;
  }
  g_autofree char *tracer = rays_describe (rays);
  printf ("%s; %u solids, %u triangles; %u small lamps, %u soft\n", tracer, rays_solids (rays),
          rays_triangles (rays), rays_lamps (rays, FALSE), rays_lamps (rays, TRUE));
  print_rays (bench, rays, "1 ray a small lamp, 64 a soft one, 1 thread", (RaysWanted){ 1, 8, 1 });
  bench->rays_ms = print_rays (bench, rays, "the same, 2 threads", (RaysWanted){ 1, 8, THREADS });
  print_rays (bench, rays, "16 rays a small lamp, 64 a soft one", (RaysWanted){ 4, 8, THREADS });
  Error fast = error_of (bench->maps[ENGINE_QUICK]->lux, bench->maps[ENGINE_EXACT]);
  printf ("%-46s  %8.2f ms; off by %.2f %% rms, %.1f %% at worst\n", "the fast map, cold",
          bench->cold_ms[ENGINE_QUICK], fast.rms * 100.0, fast.worst * 100.0);
}

/* On every eighth point each way: rays without number against the exact way. */
static void
print_check (const Bench *bench)
{
  const SqMapRequest request = field_of (bench->scene, COLUMNS / 8, ROWS / 8);
  g_autoptr (Engine) engine = engine_new (THREADS);
  g_autoptr (SqLightMap) exact = engine_map (engine, bench->scene, &request, ENGINE_EXACT);
  g_autoptr (Rays) rays = rays_new (bench->scene, exact, NULL);
  if (rays == NULL)
    return;
  g_autofree double *lux = g_new (double, (gsize)exact->columns * exact->rows);
  rays_map (rays, &(RaysWanted){ 64, 64, THREADS }, lux);
  Error error = error_of (lux, exact);
  printf (
    "check: the exact map and 4096 rays a lamp, %d × %d points, are %.3f %% rms apart, %.2f %% "
    "at worst\n",
    exact->columns, exact->rows, error.rms * 100.0, error.worst * 100.0);
}

static void
print_growth (const Bench *bench,
              const char *what,
              const SqScene *scene,
              const SqMapRequest *request)
{
  guint runs = MIN (bench->runs, 5);
  double quick_ms = cold_ms (scene, request, ENGINE_QUICK, runs);
  double exact_ms = cold_ms (scene, request, ENGINE_EXACT, MIN (runs, 3));
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
    const SqMapRequest request = field_of (bench->scene, sides[i], sides[i]);
    g_autofree char *what = g_strdup_printf ("%d × %d points", sides[i], sides[i]);
    print_growth (bench, what, bench->scene, &request);
  }
}

static void
make_maps (Bench *bench)
{
  for (int way = 0; way < ENGINE_WAYS; way++) {
    g_autoptr (Engine) engine = engine_new (THREADS);
    bench->maps[way] = engine_map (engine, bench->scene, &bench->request, (EngineWay)way);
    bench->cold_ms[way] = cold_ms (bench->scene, &bench->request, (EngineWay)way, bench->runs);
  }
}

static void
print_table (const Bench *bench)
{
  printf ("\n%-46s  %11s  %11s  %11s  %11s\n", "", "measured", "rays take", "sure", "moonshot");
  const double *cold = bench->cold_ms;
  print_goal (bench, &(Goal){ "map, cold, fast", cold[ENGINE_QUICK], "ms", bench->rays_ms / 20.0,
                              bench->rays_ms / 80.0, FALSE });
  print_goal (bench, &(Goal){ "map, cold, exact", cold[ENGINE_EXACT], "ms", NAN, NAN, FALSE });
  g_autoptr (GPtrArray) small = lamp_ids (bench->scene, FALSE);
  g_autoptr (GPtrArray) soft = lamp_ids (bench->scene, TRUE);
  g_autoptr (GPtrArray) persons = person_ids (bench->scene);
  g_autoptr (GPtrArray) flags = flag_ids (bench->scene);
  const Drag drags[] = {
    { "small lamp", small, 0.5, 16.0 },
    { "soft lamp", soft, 3.0, 16.0 },
    { "person", persons, 4.0, 16.0 },
    { "flag", flags, 4.0, 16.0 },
  };
  g_autoptr (Engine) engine = engine_new (THREADS);
  for (guint i = 0; i < G_N_ELEMENTS (drags); i++)
    print_drag (bench, engine, &drags[i]);
  print_dimmer (bench, engine);
  GPtrArray *const all[] = { small, soft, persons, flags };
  print_goal (bench, &(Goal){ "exact map after release, worst",
                              release_ms (bench, engine, all, G_N_ELEMENTS (all)), "ms", 150.0,
                              30.0, FALSE });
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) many = bench_scene_grown (bench->scene, 256, 0, &error);
  if (many == NULL)
    printf ("256 lamps: %s\n", error->message);
  else
    print_goal (bench, &(Goal){ "256 lamps, cold, fast",
                                cold_ms (many, &bench->request, ENGINE_QUICK, MIN (bench->runs, 5)),
                                "ms", 80.0, 16.0, FALSE });
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
  bench.request = field_of (bench.scene, COLUMNS, ROWS);
  g_autofree char *name = g_path_get_basename (path);
  machine_print ();
  printf ("memory, a = b + 1.5 c: %.1f GB/s with 1 thread, %.1f with %d\n", machine_triad_gb_s (1),
          machine_triad_gb_s (THREADS), THREADS);
  printf ("%s, %d × %d points %.3f m apart, %d threads, medians of %u runs\n", name, COLUMNS, ROWS,
          bench.request.step_m, THREADS, bench.runs);
  make_maps (&bench);
  print_tracer (&bench);
  if (!bench.quick)
    print_check (&bench);
  machine_forget_peak ();
  print_table (&bench);
  if (!bench.quick) {
    grow (&bench);
  }
  for (int way = 0; way < ENGINE_WAYS; way++)
    sq_light_map_free (bench.maps[way]);
  sq_scene_unref (bench.scene);
  return 0;
}
