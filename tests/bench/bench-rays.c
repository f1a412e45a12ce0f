/* bench-rays.c: the map by rays: how long it takes, and how far off it is */
#include "bench-light.h"
#include "bench-time.h"
#include "rays.h"

#define LEAST_SHARE 0.01 /* of the map's peak; below it nothing is compared */

typedef struct {
  double rms, worst; /* relative */
} Error;

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

/* Rays of one kind: how many, and what became of them. */
typedef struct {
  const char *what;
  RaysWanted wanted;
  double taken_ms[BENCH_MOST_RUNS];
  guint64 n_rays;
  Error error;
} Cast;

static void
cast_rays (const Bench *bench, const Rays *rays, Cast *cast, guint run)
{
  g_autofree double *lux = g_new (double, (gsize)BENCH_COLUMNS *BENCH_ROWS);
  double start = bench_now_ms ();
  cast->n_rays = rays_map (rays, &cast->wanted, lux);
  cast->taken_ms[run] = bench_now_ms () - start;
  cast->error = error_of (lux, bench->maps[ENGINE_EXACT]);
}

static double
print_cast (Cast *cast, guint runs)
{
  double ms = bench_median (cast->taken_ms, runs);
  printf ("%-46s  %8.2f ms; off by %.2f %% rms, %.1f %% at worst; %.1f million rays, %.1f a µs\n",
          cast->what, ms, cast->error.rms * 100.0, cast->error.worst * 100.0,
          (double)cast->n_rays / 1e6, (double)cast->n_rays / ms / 1e3);
  return ms;
}

/* Run 0 warms up and is written over. */
void
bench_print_cold (Bench *bench)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (Rays) rays = rays_new (bench->scene, bench->maps[ENGINE_EXACT], &error);
  Cast casts[] = {
    { .what = "1 ray a small lamp, 64 a soft one, 1 thread", .wanted = { 1, 8, 1 } },
    { .what = "the same, 2 threads", .wanted = { 1, 8, BENCH_THREADS } },
    { .what = "16 rays a small lamp, 64 a soft one", .wanted = { 4, 8, BENCH_THREADS } },
  };
  double taken_ms[ENGINE_WAYS][BENCH_MOST_RUNS];
  for (guint i = 0; i < bench->runs + 1; i++) {
    guint run = i > 0 ? i - 1 : 0;
    for (guint k = 0; rays != NULL && k < G_N_ELEMENTS (casts); k++)
      cast_rays (bench, rays, &casts[k], run);
    for (int way = 0; way < ENGINE_WAYS; way++)
      taken_ms[way][run] = bench_cold_ms (bench->scene, &bench->request, (EngineWay)way, 1);
  }
  for (int way = 0; way < ENGINE_WAYS; way++)
    bench->cold_ms[way] = bench_median (taken_ms[way], bench->runs);

  if (rays == NULL) {
    printf ("no rays: %s\n", error->message);
  } else {
    g_autofree char *tracer = rays_describe (rays);
    printf ("%s; %u solids, %u triangles; %u small lamps, %u soft\n", tracer, rays_solids (rays),
            rays_triangles (rays), rays_lamps (rays, FALSE), rays_lamps (rays, TRUE));
    print_cast (&casts[0], bench->runs);
    bench->rays_ms = print_cast (&casts[1], bench->runs);
    print_cast (&casts[2], bench->runs);
  }
  Error fast = error_of (bench->maps[ENGINE_QUICK]->lux, bench->maps[ENGINE_EXACT]);
  printf ("%-46s  %8.2f ms; off by %.2f %% rms, %.1f %% at worst\n", "the fast map, cold",
          bench->cold_ms[ENGINE_QUICK], fast.rms * 100.0, fast.worst * 100.0);
}

/* On every eighth point each way. */
void
bench_print_check (const Bench *bench)
{
  const SqMapRequest request = bench_field (bench->scene, BENCH_COLUMNS / 8, BENCH_ROWS / 8);
  g_autoptr (Engine) engine = engine_new (BENCH_THREADS);
  g_autoptr (SqLightMap) exact = engine_map (engine, bench->scene, &request, ENGINE_EXACT);
  g_autoptr (Rays) rays = rays_new (bench->scene, exact, NULL);
  if (rays == NULL)
    return;
  g_autofree double *lux = g_new (double, (gsize)exact->columns * exact->rows);
  rays_map (rays, &(RaysWanted){ 64, 64, BENCH_THREADS }, lux);
  Error error = error_of (lux, exact);
  printf (
    "check: the exact map and 4096 rays a lamp, %d × %d points, are %.3f %% rms apart, %.2f %% "
    "at worst\n",
    exact->columns, exact->rows, error.rms * 100.0, error.worst * 100.0);
}
