/* bench-light.h: what the parts of the light's benchmark share */
#pragma once

#include "bench-engine.h"

G_BEGIN_DECLS

#define BENCH_THREADS 2
#define BENCH_COLUMNS 256
#define BENCH_ROWS 192
#define BENCH_MOST_RUNS 64

typedef struct {
  SqScene *scene;
  SqMapRequest request;
  guint runs;
  gboolean quick;
  SqLightMap *maps[ENGINE_WAYS];
  double cold_ms[ENGINE_WAYS];
  double rays_ms; /* a map by rays: 1 a small lamp, 64 a soft one; NAN: none */
} Bench;

/* A row of the table: less is better. */
typedef struct {
  const char *what;
  double measured;
  const char *unit;
  double sure, moonshot; /* NAN: none */
} BenchGoal;

/* Times go with how many times as long the rays take. */
void bench_print_goal (const Bench *bench, const BenchGoal *goal);

/* A field of @columns × @rows points in the middle of the set, as large as takes all of it in. */
SqMapRequest bench_field (const SqScene *scene, int columns, int rows);

/* One map. */
double bench_map_ms (Engine *engine,
                     const SqScene *scene,
                     const SqMapRequest *request,
                     EngineWay way);

/* The same with nothing kept, the threads already standing: a median. */
double bench_cold_ms (const SqScene *scene, const SqMapRequest *request, EngineWay way, guint runs);

/* What is kept while something moves: drags, the dimmer, the exact map when the hand rests. */
void bench_print_moves (const Bench *bench, Engine *engine);

/* Maps by rays, and the cold maps in between so that both have the same weather; prints their times
 * and how far off they are. Sets bench->cold_ms and bench->rays_ms. */
void bench_print_cold (Bench *bench);

/* Rays without number against the exact way. */
void bench_print_check (const Bench *bench);

G_END_DECLS
