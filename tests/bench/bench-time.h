/* bench-time.h: how long work takes, and how it is said */
#pragma once

#include <glib.h>
#include <stdio.h>
#include <time.h>

typedef void (*BenchWork) (gpointer data);

static inline double
bench_now_ms (void)
{
  struct timespec now;
  clock_gettime (CLOCK_MONOTONIC, &now);
  return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

static inline int
bench_compare (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

/* The middle one of @n values, which are sorted by it. */
static inline double
bench_median (double *values, guint n)
{
  qsort (values, n, sizeof *values, bench_compare);
  return n % 2 == 1 ? values[n / 2] : (values[n / 2 - 1] + values[n / 2]) / 2.0;
}

/* The median of @runs runs (at most 64), after one that warms up. */
static inline double
bench_ms (BenchWork work, gpointer data, guint runs)
{
  double taken[64];
  runs = CLAMP (runs, 1, G_N_ELEMENTS (taken));
  work (data);
  for (guint i = 0; i < runs; i++) {
    double start = bench_now_ms ();
    work (data);
    taken[i] = bench_now_ms () - start;
  }
  return bench_median (taken, runs);
}

/* A time and how many times another it is. */
static inline void
bench_say (const char *what, double ms, const char *against, double against_ms)
{
  printf ("%-44s %9.3f ms   %7.2f × %s (%.3f ms)\n", what, ms, ms / against_ms, against,
          against_ms);
}
