/* rays.c: the same map by rays cast at triangles: what the engine is measured against
 *
 * Rays are cast at their best: in packets of 16 that share an origin (a tile of points seen from a
 * small lamp's middle, a tile of a soft face seen from a point), marked coherent, none where no
 * light would come, denormals flushed; light along them from tables, in vectors. */
#include "rays.h"
#include "base/error.h"
#include "rays-lamp.h"
#include "rays-scene.h"

#include <xmmintrin.h>

#define TILE 4     /* a side; of points or strata */
#define JITTERS 64 /* different patterns; the points choose by a hash */

/* Of a ray's length: what touches its ends is not in its way. */
#define NEAR 1e-5f

#define FLUSH_DENORMALS 0x8040 /* of the vector unit's status word: results and operands */

/* Level points; row 0 is the lowest on the page. */
typedef struct {
  SqPlace first;
  double step_m, height_m;
  int columns, rows;
} Grid;

struct Rays {
  RTCDevice device;
  Grid grid;
  GArray *lamps, *obstacles; /* SqLamp, SqObstacle */
  RaysLamp *ready;           /* one a lamp */
  RaysScene shared;          /* for lamps without doors */
  RaysScene *own;            /* one a lamp: with its doors, where it has some */
};

/* Where on the face rays go, in -1 … 1, tile by tile of strata. */
typedef struct {
  float *u, *v; /* JITTERS times side² */
  guint n;      /* side² */
} Pattern;

typedef struct {
  const Rays *rays;
  Pattern patterns[2][2]; /* of small lamps and soft ones; square and disc */
  double *lux;
  gint next_band; /* atomic: nobody has taken it yet */
  gsize n_rays;   /* atomic */
} Job;

/* What one thread casts with. */
typedef struct {
  struct RTCRay16 rays;
  _Alignas(64) int lit[RAYS_IN_PACKET]; /* -1: to be cast */
  RaysWays ways;
  RaysCast cast;
  gsize n_rays;
} Packet;

static guint32
hash (guint32 x)
{
  x = (x ^ x >> 16) * 0x7feb352d;
  x = (x ^ x >> 15) * 0x846ca68b;
  return x ^ x >> 16;
}

/* A number in 0 … 1 by its place in the row. */
static float
drawn (guint32 i)
{
  return (float)(hash (i + 1) >> 8) / (1 << 24);
}

/* From the square to the disc, even areas to even areas, neighbours to neighbours (Shirley and Chiu
 * 1997). */
static void
bend_to_disc (float *u, float *v)
{
  float a = *u, b = *v;
  if (a == 0.0f && b == 0.0f)
    return;
  gboolean flat = fabsf (a) > fabsf (b);
  float radius = flat ? a : b;
  float turn = flat ? (float)G_PI_4 * b / a : (float)G_PI_2 - (float)G_PI_4 * a / b;
  *u = radius * cosf (turn);
  *v = radius * sinf (turn);
}

static Pattern
pattern_new (guint side, gboolean disc)
{
  Pattern pattern = { .n = side * side };
  pattern.u = g_new0 (float, JITTERS *pattern.n);
  pattern.v = g_new0 (float, JITTERS *pattern.n);
  for (guint i = 0; side > 1 && i < JITTERS * pattern.n; i++) {
    guint tile = i % pattern.n / (TILE * TILE), cell = i % (TILE * TILE);
    guint column = tile % (side / TILE) * TILE + cell % TILE;
    guint row = tile / (side / TILE) * TILE + cell / TILE;
    pattern.u[i] = 2.0f * ((float)column + drawn (2 * i)) / (float)side - 1.0f;
    pattern.v[i] = 2.0f * ((float)row + drawn (2 * i + 1)) / (float)side - 1.0f;
    if (disc)
      bend_to_disc (&pattern.u[i], &pattern.v[i]);
  }
  return pattern;
}

Rays *
rays_new (const SqScene *scene, const SqLightMap *map, GError **error)
{
  g_autoptr (Rays) rays = g_new0 (Rays, 1);
  rays->grid = (Grid){ map->first, map->step_m, map->request.height_m, map->columns, map->rows };
  rays->device = rtcNewDevice ("threads=1");
  rays->lamps = sq_lamps_new (scene, NULL);
  rays->obstacles = sq_obstacles_new (scene);
  rays->ready = g_new0 (RaysLamp, rays->lamps->len);
  rays->own = g_new0 (RaysScene, rays->lamps->len);
  rays_scene_init (&rays->shared, rays->device, rays->obstacles, NULL);
  for (guint i = 0; i < rays->lamps->len; i++) {
    const SqLamp *lamp = &g_array_index (rays->lamps, SqLamp, i);
    if (!rays_lamp_init (&rays->ready[i], lamp)) {
      g_set_error (error, SQ_ERROR, SQ_ERROR_VALUE,
                   "fixtures[%u]: a bulb or tube with directional modifiers, expected another", i);
      return NULL;
    }
    if (lamp->doors != NULL)
      rays_scene_init (&rays->own[i], rays->device, rays->obstacles, lamp->doors);
  }
  return g_steal_pointer (&rays);
}

void
rays_free (Rays *rays)
{
  if (rays == NULL)
    return;
  for (guint i = 0; i < rays->lamps->len; i++) {
    rays_lamp_clear (&rays->ready[i]);
    if (rays->own[i].scene != NULL)
      rays_scene_clear (&rays->own[i]);
  }
  rays_scene_clear (&rays->shared);
  rtcReleaseDevice (rays->device);
  g_array_unref (rays->lamps);
  g_array_unref (rays->obstacles);
  g_free (rays->ready);
  g_free (rays->own);
  g_free (rays);
}

/* Casts what is lit. What a ray brought is taken from it as far as something is in its way. */
static void
cast (Packet *packet, const RaysScene *scene)
{
  gsize n = 0;
  for (int i = 0; i < RAYS_IN_PACKET; i++) {
    packet->lit[i] = packet->ways.lux[i] > 0.0f ? -1 : 0;
    packet->rays.tnear[i] = NEAR;
    packet->rays.tfar[i] = 1.0f - NEAR;
    n -= packet->lit[i];
  }
  if (n == 0)
    return;
  packet->n_rays += n;
  if (scene->passes->len > 0)
    rays_cast_reset (&packet->cast);
  rtcOccluded16 (packet->lit, scene->scene, &packet->cast.context, &packet->rays);
  for (int i = 0; i < RAYS_IN_PACKET; i++)
    packet->ways.lux[i] = packet->rays.tfar[i] < 0.0f ? 0.0f : packet->ways.lux[i];
  if (scene->passes->len > 0)
    for (int i = 0; i < RAYS_IN_PACKET; i++)
      packet->ways.lux[i] *= packet->cast.passes[i];
}

static RaysVector
point_at (const Grid *grid, int column, int row)
{
  return (RaysVector){ (float)(grid->first.x_m + column * grid->step_m),
                       (float)(grid->first.y_m + row * grid->step_m), (float)grid->height_m };
}

/* One ray from the lamp's middle to each point of the band. */
static void
light_from_middle (const Job *job, Packet *packet, guint lamp, int first_row)
{
  const Grid *grid = &job->rays->grid;
  const RaysLamp *ready = &job->rays->ready[lamp];
  const RaysScene *scene =
    job->rays->own[lamp].scene != NULL ? &job->rays->own[lamp] : &job->rays->shared;
  SqPoint at = ready->lamp->fixture->at;
  const RaysFace face = { .normal = { (float)ready->lamp->frame.forward.x,
                                      (float)ready->lamp->frame.forward.y,
                                      (float)ready->lamp->frame.forward.z },
                          .by = ready->by,
                          .share = 1.0f };
  struct RTCRay16 *rays = &packet->rays;
  for (int i = 0; i < RAYS_IN_PACKET; i++) {
    rays->org_x[i] = (float)at.x_m;
    rays->org_y[i] = (float)at.y_m;
    rays->org_z[i] = (float)at.z_m;
  }
  for (int first = 0; first < grid->columns; first += TILE) {
    for (int i = 0; i < RAYS_IN_PACKET; i++) {
      RaysVector p = point_at (grid, first + i % TILE, first_row + i / TILE);
      packet->ways.x[i] = rays->org_x[i] - p.x;
      packet->ways.y[i] = rays->org_y[i] - p.y;
      packet->ways.z[i] = rays->org_z[i] - p.z;
    }
    rays_lamp_light (ready, &face, &packet->ways);
    for (int i = 0; i < RAYS_IN_PACKET; i++) {
      rays->dir_x[i] = -packet->ways.x[i];
      rays->dir_y[i] = -packet->ways.y[i];
      rays->dir_z[i] = -packet->ways.z[i];
    }
    cast (packet, scene);
    for (int i = 0; i < RAYS_IN_PACKET; i++) {
      int column = first + i % TILE, row = first_row + i / TILE;
      if (column < grid->columns && row < grid->rows)
        job->lux[(gsize)row * grid->columns + column] += packet->ways.lux[i];
    }
  }
}

/* Rays from a point to its pattern of places on the face. Returns: lux */
static double
light_at_point (Packet *packet,
                const RaysLamp *ready,
                const RaysScene *scene,
                const Pattern *pattern,
                RaysVector from,
                guint jitter)
{
  RaysFace face;
  if (!rays_lamp_face (ready, from, &face))
    return 0.0;
  struct RTCRay16 *rays = &packet->rays;
  RaysWays *ways = &packet->ways;
  const RaysVector a = face.across, b = face.up;
  const RaysVector way = { face.middle.x - from.x, face.middle.y - from.y, face.middle.z - from.z };
  for (int i = 0; i < RAYS_IN_PACKET; i++) {
    rays->org_x[i] = from.x;
    rays->org_y[i] = from.y;
    rays->org_z[i] = from.z;
  }
  float sum[RAYS_IN_PACKET] = { 0 };
  for (guint first = 0; first < pattern->n; first += RAYS_IN_PACKET) {
    const float *u = pattern->u + jitter * pattern->n + first;
    const float *v = pattern->v + jitter * pattern->n + first;
    for (int i = 0; i < RAYS_IN_PACKET; i++) {
      ways->x[i] = rays->dir_x[i] = way.x + u[i] * a.x + v[i] * b.x;
      ways->y[i] = rays->dir_y[i] = way.y + u[i] * a.y + v[i] * b.y;
      ways->z[i] = rays->dir_z[i] = way.z + u[i] * a.z + v[i] * b.z;
    }
    rays_lamp_light (ready, &face, ways);
    cast (packet, scene);
    for (int i = 0; i < RAYS_IN_PACKET; i++)
      sum[i] += ways->lux[i];
  }
  double lux = 0.0;
  for (int i = 0; i < RAYS_IN_PACKET; i++)
    lux += sum[i];
  return lux / pattern->n;
}

static void
do_band (const Job *job, Packet *packet, int first_row)
{
  const Rays *rays = job->rays;
  const Grid *grid = &rays->grid;
  int end_row = MIN (first_row + TILE, grid->rows);
  for (guint k = 0; k < rays->lamps->len; k++) {
    const RaysLamp *ready = &rays->ready[k];
    const RaysScene *scene = rays->own[k].scene != NULL ? &rays->own[k] : &rays->shared;
    gboolean round = ready->lamp->shaped == SQ_SHAPED_BALL || ready->lamp->n_face == SQ_DISC_SIDES;
    const Pattern *pattern = &job->patterns[ready->soft][round];
    if (ready->dark)
      continue;
    if (pattern->n == 1 || ready->lamp->shaped == SQ_SHAPED_POINT) {
      light_from_middle (job, packet, k, first_row);
      continue;
    }
    for (int row = first_row; row < end_row; row++)
      for (int column = 0; column < grid->columns; column++) {
        gsize point = (gsize)row * grid->columns + column;
        guint jitter = hash ((guint32)point * 256 + k) % JITTERS;
        job->lux[point] +=
          light_at_point (packet, ready, scene, pattern, point_at (grid, column, row), jitter);
      }
  }
}

static gpointer
work_on (gpointer data)
{
  Job *job = data;
  int bands = (job->rays->grid.rows + TILE - 1) / TILE;
  unsigned state = _mm_getcsr ();
  _mm_setcsr (state | FLUSH_DENORMALS);
  Packet packet = { 0 };
  rays_cast_init (&packet.cast);
  for (int i = 0; i < RAYS_IN_PACKET; i++) {
    packet.rays.mask[i] = G_MAXUINT32;
    packet.rays.id[i] = (guint)i;
  }
  for (;;) {
    int band = g_atomic_int_add (&job->next_band, 1);
    if (band >= bands)
      break;
    do_band (job, &packet, band * TILE);
  }
  g_atomic_pointer_add (&job->n_rays, (gssize)packet.n_rays);
  _mm_setcsr (state);
  return NULL;
}

guint64
rays_map (const Rays *rays, const RaysWanted *wanted, double *lux)
{
  Job job = { .rays = rays, .lux = lux };
  for (int disc = 0; disc < 2; disc++) {
    job.patterns[FALSE][disc] = pattern_new (wanted->small, disc != 0);
    job.patterns[TRUE][disc] = pattern_new (wanted->soft, disc != 0);
  }
  memset (lux, 0, sizeof *lux * rays->grid.columns * rays->grid.rows);
  GThread *others[64];
  int n_others = CLAMP (wanted->threads, 1, (int)G_N_ELEMENTS (others)) - 1;
  for (int i = 0; i < n_others; i++)
    others[i] = g_thread_new ("rays", work_on, &job);
  work_on (&job);
  for (int i = 0; i < n_others; i++)
    g_thread_join (others[i]);
  for (int soft = 0; soft < 2; soft++)
    for (int disc = 0; disc < 2; disc++) {
      g_free (job.patterns[soft][disc].u);
      g_free (job.patterns[soft][disc].v);
    }
  return job.n_rays;
}

guint
rays_solids (const Rays *rays)
{
  return rays->obstacles->len;
}

guint
rays_triangles (const Rays *rays)
{
  return rays->shared.n_triangles;
}

guint
rays_lamps (const Rays *rays, gboolean soft)
{
  guint n = 0;
  for (guint i = 0; i < rays->lamps->len; i++)
    n += !rays->ready[i].dark && !rays->ready[i].soft == !soft;
  return n;
}

char *
rays_describe (const Rays *rays)
{
  gssize version = rtcGetDeviceProperty (rays->device, RTC_DEVICE_PROPERTY_VERSION);
  gboolean native =
    rtcGetDeviceProperty (rays->device, RTC_DEVICE_PROPERTY_NATIVE_RAY16_SUPPORTED) != 0;
  return g_strdup_printf ("Embree %d.%d.%d, packets of %d%s", (int)(version / 10000),
                          (int)(version / 100 % 100), (int)(version % 100), RAYS_IN_PACKET,
                          native ? " in one vector" : " as pairs of 8");
}
