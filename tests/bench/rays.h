/* rays.h: the same map by rays cast at triangles: what the engine is measured against */
#pragma once

#include "light/map.h"

G_BEGIN_DECLS

/* A lamp that reaches further than this from its middle throws soft shadows, and gets many rays. */
#define RAYS_SOFT_M 0.3

typedef struct Rays Rays;

/* Rays that each lamp sends to each point, as strata along a side of its face: 1 is one ray to its
 * middle; else a multiple of 4, and there are so many squared, jittered. */
typedef struct {
  guint small, soft;
  int threads;
} RaysWanted;

/* Makes everything ready that outlives a map, trees of triangles and tables of candela, for the
 * points of @map. Returns: (transfer full): NULL with an error for a lamp that is not known here */
Rays *rays_new (const SqScene *scene, const SqLightMap *map, GError **error);
void rays_free (Rays *rays);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (Rays, rays_free)

/* Fills @lux, a value a point as SqLightMap has them, for a receptor that looks up; what is inside
 * a solid is lit as if it were not. Returns: how many rays were cast */
guint64 rays_map (const Rays *rays, const RaysWanted *wanted, double *lux);

guint rays_solids (const Rays *rays);
guint rays_triangles (const Rays *rays);
guint rays_lamps (const Rays *rays, gboolean soft);

/* Which tracer this is, in a line. Returns: (transfer full) */
char *rays_describe (const Rays *rays);

G_END_DECLS
