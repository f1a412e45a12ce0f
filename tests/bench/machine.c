/* machine.c: what this machine is, and how fast its memory can be read */
#include "machine.h"
#include "bench-time.h"

#include <math.h>
#include <pthread.h>
#include <string.h>
#include <unistd.h>

#define RUNS 21
#define MOST_THREADS 64
#define TRIAD_BYTES ((gsize)128 * 1024 * 1024) /* of each array */
#define STRIP 2048 /* values that are summed through all maps before the next */

/* The rest of the line that starts with @key in one of the kernel's tables.
 * Returns: (transfer full) (nullable) */
static char *
line_of (const char *file, const char *key)
{
  g_autofree char *text = NULL;
  if (!g_file_get_contents (file, &text, NULL, NULL))
    return NULL;
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);
  for (guint i = 0; lines[i] != NULL; i++)
    if (g_str_has_prefix (lines[i], key)) {
      const char *colon = strchr (lines[i], ':');
      return colon != NULL ? g_strstrip (g_strdup (colon + 1)) : NULL;
    }
  return NULL;
}

static void
print_units (const char *flags)
{
  static const char *const units[] = { "sse2", "avx2", "fma", "avx512f" };
  g_auto (GStrv) words = g_strsplit (flags, " ", -1);
  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (g_strv_contains ((const char *const *)words, units[i]))
      printf (" %s", units[i]);
}

void
machine_print (void)
{
  g_autofree char *name = line_of ("/proc/cpuinfo", "model name");
  g_autofree char *flags = line_of ("/proc/cpuinfo", "flags");
  printf ("%s, %u cores;", name != NULL ? name : "a processor without a name",
          g_get_num_processors ());
  print_units (flags != NULL ? flags : "");
  printf ("; caches %ld KiB, %ld KiB, %ld MiB; compiler %s\n",
          sysconf (_SC_LEVEL1_DCACHE_SIZE) / 1024, sysconf (_SC_LEVEL2_CACHE_SIZE) / 1024,
          sysconf (_SC_LEVEL3_CACHE_SIZE) / (1024 * 1024), __VERSION__);
}

double
machine_peak_mib (void)
{
  g_autofree char *peak = line_of ("/proc/self/status", "VmHWM");
  return peak != NULL ? g_ascii_strtod (peak, NULL) / 1024.0 : NAN;
}

void
machine_forget_peak (void)
{
  /* "5" sets the high-water mark to what is in use now; where it cannot be, the peak is that of
   * all. Written in place: the kernel's file is not one to be replaced. */
  FILE *file = fopen ("/proc/self/clear_refs", "w");
  if (file == NULL)
    return;
  fputs ("5", file);
  fclose (file);
}

typedef struct Team Team;

/* A thread's part of the values: from its first to its end. */
typedef struct {
  Team *team;
  gsize first, end;
} Part;

typedef void (*PartFunc) (const Part *part);

struct Team {
  PartFunc func;
  int threads;
  pthread_barrier_t barrier;
  gboolean over;
  guint n_maps;
  gsize n;
  void *maps, *total; /* n_maps × n; n */
  Part parts[MOST_THREADS];
};

static gpointer
stand_by (gpointer data)
{
  const Part *part = data;
  Team *team = part->team;
  for (;;) {
    pthread_barrier_wait (&team->barrier);
    if (team->over)
      return NULL;
    team->func (part);
    pthread_barrier_wait (&team->barrier);
  }
}

static void
run_once (gpointer data)
{
  Team *team = data;
  if (team->threads > 1)
    pthread_barrier_wait (&team->barrier);
  team->func (&team->parts[0]);
  if (team->threads > 1)
    pthread_barrier_wait (&team->barrier);
}

static double
time_team (Team *team, gsize bytes)
{
  GThread *others[MOST_THREADS];
  team->threads = CLAMP (team->threads, 1, MOST_THREADS);
  team->maps = g_malloc (bytes * team->n_maps * team->n);
  team->total = g_malloc (bytes * team->n);
  memset (team->maps, 0, bytes * team->n_maps * team->n);
  memset (team->total, 0, bytes * team->n);
  pthread_barrier_init (&team->barrier, NULL, (unsigned)team->threads);
  for (int i = 0; i < team->threads; i++) {
    team->parts[i] = (Part){ .team = team,
                             .first = team->n * (gsize)i / (gsize)team->threads,
                             .end = team->n * (gsize)(i + 1) / (gsize)team->threads };
    if (i > 0)
      others[i] = g_thread_new ("machine", stand_by, &team->parts[i]);
  }
  double ms = bench_ms (run_once, team, RUNS);
  team->over = TRUE;
  if (team->threads > 1)
    pthread_barrier_wait (&team->barrier);
  for (int i = 1; i < team->threads; i++)
    g_thread_join (others[i]);
  pthread_barrier_destroy (&team->barrier);
  g_free (team->maps);
  g_free (team->total);
  return ms;
}

/* One function a precision: strip by strip, so that the total stays near. */
#define DEFINE_SUM(name, Value)                                                                    \
  static void name (const Part *part)                                                              \
  {                                                                                                \
    const Team *team = part->team;                                                                 \
    for (gsize strip = part->first; strip < part->end; strip += STRIP) {                           \
      gsize n = MIN (STRIP, part->end - strip);                                                    \
      Value *restrict total = (Value *)team->total + strip;                                        \
      memset (total, 0, n * sizeof *total);                                                        \
      for (guint k = 0; k < team->n_maps; k++) {                                                   \
        const Value *restrict map = (const Value *)team->maps + k * team->n + strip;               \
        for (gsize i = 0; i < n; i++)                                                              \
          total[i] += map[i];                                                                      \
      }                                                                                            \
    }                                                                                              \
  }

DEFINE_SUM (sum_singles, float)
DEFINE_SUM (sum_doubles, double)

double
machine_sum_ms (guint n_maps, gsize n, guint value_bytes, int threads)
{
  Team team = { .func = value_bytes == 4 ? sum_singles : sum_doubles,
                .threads = threads,
                .n_maps = n_maps,
                .n = n };
  return time_team (&team, value_bytes);
}

static void
triad (const Part *part)
{
  const Team *team = part->team;
  double *restrict a = team->total;
  const double *restrict b = team->maps, *restrict c = b + team->n;
  for (gsize i = part->first; i < part->end; i++)
    a[i] = b[i] + 1.5 * c[i];
}

double
machine_triad_gb_s (int threads)
{
  Team team = {
    .func = triad, .threads = threads, .n_maps = 2, .n = TRIAD_BYTES / sizeof (double)
  };
  double ms = time_team (&team, sizeof (double));
  return 3.0 * (double)TRIAD_BYTES / (ms / 1e3) / 1e9;
}
