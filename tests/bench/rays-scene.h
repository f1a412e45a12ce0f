/* rays-scene.h: what stands in the way of light, as triangles for the ray tracer */
#pragma once

#include "light/lamp.h"

#include <embree3/rtcore.h>

G_BEGIN_DECLS

#define RAYS_IN_PACKET 16

/* What a packet of shadow rays meets. The tracer's own context comes first: it is what the tracer
 * hands to whoever is asked about a net. */
typedef struct {
  struct RTCIntersectContext context;
  float passes[RAYS_IN_PACKET]; /* share of light that comes through nets and panes */
  guint64 met[RAYS_IN_PACKET];  /* nets and panes that were counted, by bit */
} RaysCast;

typedef struct {
  RTCScene scene;
  GArray *passes; /* float, by triangle of the geometry of nets and panes */
  guint n_triangles;
} RaysScene;

/* @obstacles, @doors: (element-type SqObstacle): @doors may be NULL. Nets and panes are a geometry
 * of their own with a filter, so that what is solid is tested at full speed. Past 64 of them two
 * may be taken for one another. */
void rays_scene_init (RaysScene *scene,
                      RTCDevice device,
                      const GArray *obstacles,
                      const GArray *doors);
void rays_scene_clear (RaysScene *scene);

/* sets @cast up for rays of one packet. */
static inline void
rays_cast_init (RaysCast *cast)
{
  rtcInitIntersectContext (&cast->context);
  cast->context.flags = RTC_INTERSECT_CONTEXT_FLAG_COHERENT;
}

static inline void
rays_cast_reset (RaysCast *cast)
{
  for (int i = 0; i < RAYS_IN_PACKET; i++) {
    cast->passes[i] = 1.0f;
    cast->met[i] = 0;
  }
}

G_END_DECLS
