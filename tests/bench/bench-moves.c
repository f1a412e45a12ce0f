/* bench-moves.c: what the light takes while something moves */
#include "bench-light.h"
#include "bench-scenes.h"
#include "bench-time.h"
#include "light/lamp.h"
#include "machine.h"
#include "rays.h"

#define STEP_M 0.03 /* of a drag */

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
    double taken[BENCH_MOST_RUNS];
    bench_map_ms (engine, bench->scene, &bench->request, way);
    for (guint i = 0; i < bench->runs; i++) {
      g_autoptr (SqScene) moved = bench_scene_moved (bench->scene, g_ptr_array_index (ids, k),
                                                     STEP_M * (i + 1), STEP_M / 2.0 * (i + 1));
      taken[i] = bench_map_ms (engine, moved, &bench->request, way);
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
    bench_print_goal (bench, &(BenchGoal){ mean, spread.mean_ms, "ms", sure, NAN });
    bench_print_goal (bench, &(BenchGoal){ worst, spread.worst_ms, "ms", sure, moonshot });
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
      bench_map_ms (engine, bench->scene, &bench->request, ENGINE_EXACT);
      g_autoptr (SqScene) moved = bench_scene_moved (bench->scene, id, -0.4, 0.3);
      bench_map_ms (engine, moved, &bench->request, ENGINE_QUICK);
      double ms = bench_map_ms (engine, moved, &bench->request, ENGINE_EXACT);
      worst = MAX (worst, ms);
    }
  return worst;
}

/* A map after each touch of a dimmer: of the first lamp all the time, or of one lamp after the
 * other, so that nothing can be added up beforehand. */
static double
dimmer_ms (
  const Bench *bench, Engine *engine, const GPtrArray *ids, gboolean in_turn, EngineWay way)
{
  double taken[BENCH_MOST_RUNS];
  guint runs = BENCH_MOST_RUNS - 1;
  bench_map_ms (engine, bench->scene, &bench->request, way);
  for (guint i = 0; i < runs; i++) {
    const char *id = g_ptr_array_index (ids, in_turn ? i % ids->len : 0);
    g_autofree char *path = g_strdup_printf ("%s.level", id);
    g_autofree char *level = g_strdup_printf ("%.4f", 0.9 - 0.01 * i);
    g_autoptr (SqScene) dimmed = sq_scene_set (bench->scene, path, level, NULL);
    taken[i] = bench_map_ms (engine, dimmed, &bench->request, way);
  }
  return bench_median (taken, runs);
}

static void
print_dimmer (const Bench *bench, Engine *engine, const GPtrArray *small, const GPtrArray *soft)
{
  static const struct {
    const char *what;
    gboolean in_turn;
    EngineWay way;
  } rows[] = {
    { "dimmer of one lamp, fast", FALSE, ENGINE_QUICK },
    { "dimmers in turn, fast", TRUE, ENGINE_QUICK },
    { "dimmers in turn, exact", TRUE, ENGINE_EXACT },
  };
  guint n = small->len + soft->len;
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    double ms =
      dimmer_ms (bench, engine, small->len > 0 ? small : soft, rows[i].in_turn, rows[i].way);
    double plain_ms = machine_sum_ms (n, (gsize)BENCH_COLUMNS * BENCH_ROWS,
                                      engine_value_bytes (rows[i].way), BENCH_THREADS);
    g_autofree char *what = g_strdup_printf ("%s, against a plain sum", rows[i].what);
    bench_print_goal (bench, &(BenchGoal){ what, ms / plain_ms, "×", 2.0, NAN });
    printf ("  %.3f ms; the plain sum of %u maps takes %.3f ms\n", ms, n, plain_ms);
  }
}

void
bench_print_moves (const Bench *bench, Engine *engine)
{
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
  for (guint i = 0; i < G_N_ELEMENTS (drags); i++)
    print_drag (bench, engine, &drags[i]);
  print_dimmer (bench, engine, small, soft);
  GPtrArray *const all[] = { small, soft, persons, flags };
  bench_print_goal (bench, &(BenchGoal){ "exact map after release, worst",
                                         release_ms (bench, engine, all, G_N_ELEMENTS (all)), "ms",
                                         150.0, 30.0 });
}
