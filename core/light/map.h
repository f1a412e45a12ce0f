/* map.h: light over the plan: one value a point on a level grid */
#pragma once

#include "light/receivers.h"
#include "scene/scene.h"

G_BEGIN_DECLS

typedef struct {
  int quantity;     /* SqOverlay: lux or stops */
  double height_m;  /* of the plane */
  int normal;       /* SqNormal */
  double step_m;    /* between points, both ways */
  SqPlace from, to; /* the field: lower left and upper right; SQ_NO_PLACE: the set and a margin */
  SqWay way;        /* exact unless said */
} SqMapRequest;

typedef struct {
  SqMapRequest request; /* as asked, the field filled in */
  int columns, rows;
  SqPlace first; /* the lower left point */
  double step_m;
  double set_lux;         /* illuminance that is 0 stops for this receptor */
  double *lux;            /* rows × columns from the bottom left, x fastest; NAN inside a solid */
  GPtrArray *not_counted; /* as SqReadings has them */
} SqLightMap;

/* More points than this are refused. */
#define SQ_MOST_MAP_POINTS (16 * 1024 * 1024)

/* What the scene's own `map` asks for, at @step_m. */
SqMapRequest sq_map_request (const SqScene *scene, double step_m);

/* sq_light_map:
 *
 * Keeps nothing: see light/kept-fields.h for maps that are asked for again and again. The same
 * bytes for any number of threads. Returns: (transfer full): or NULL, cancelled or too big */
SqLightMap *sq_light_map (const SqScene *scene,
                          const SqMapRequest *request,
                          int threads,
                          GCancellable *cancellable,
                          GError **error);
void sq_light_map_free (SqLightMap *map);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLightMap, sq_light_map_free)

/* A map whose light and remarks are still to be made. Returns: (transfer full): or NULL with an
 * error that says what is wrong with the request */
SqLightMap *sq_light_map_new (const SqScene *scene, const SqMapRequest *request, GError **error);

/* The receivers of @map, in @scene. */
SqReceivers sq_light_map_receivers (const SqLightMap *map, const SqScene *scene);

/* Corners of everything in the set, grown by @margin_m; FALSE for an empty scene. */
gboolean sq_scene_extent (const SqScene *scene, double margin_m, SqPlace *from, SqPlace *to);

G_END_DECLS
