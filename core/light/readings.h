/* readings.h: what the meter says at every probe and mark, light by light, as plain values */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* Each lamp has a row, in file order; off or unseen it reads 0. */
typedef struct {
  const char *id;      /* the lamp's id, or `sun`, `sky`, `room`, `ambient`, `panel:g1`; interned */
  const char *from;    /* (nullable): for a panel, the lamp that lights it */
  int role;            /* SqRole it plays here */
  double lux;          /* a probe's own receptor; at a mark: flat, turned straight at the light */
  double dome_lux;     /* share of the dome; 0 for back-role lights */
  double dome_all_lux; /* the same with back light left in */
  double azimuth_deg;  /* page azimuth from the point to the light */
  double from_camera_deg; /* on plan, between light and camera, 0 … 180 */
  double elevation_deg;
  double distance_m;
} SqReadingRow;

typedef struct {
  const SqProbe *probe;
  double lux;    /* flat or dome; NAN for spot */
  double cd_m2;  /* spot; NAN else */
  double t_stop; /* NAN where dark */
  double stops;  /* from the set stop; NAN where dark */
  GArray *rows;  /* SqReadingRow, in file order; lux adds up (spot: cd/m² in lux's place) */
} SqProbeReading;

typedef struct {
  const SqMark *mark;
  SqPoint face;
  double lux, lux_all;
  double t_stop, stops_from_exposure;
  double key_lux, fill_lux, back_lux;
  double ratio, ratio_stops; /* (key + fill) : fill; NAN where undefined, as all of these */
  double key_to_fill;
  double back_stops;  /* against the key; NAN only where one of the two is 0 */
  double shown_ratio; /* the one of the two that the scene's meter counts by */
  GArray *rows;
} SqMarkReading;

typedef struct {
  const SqScene *scene;                         /* a reference */
  const SqCamera *camera;                       /* (nullable): the active one */
  double set_t_stop, iso, exposure_s, nd_stops; /* as set, or what stands in with no camera */
  double set_lux;                               /* dome illuminance that gives the set stop */
  GPtrArray *probes;                            /* SqProbeReading */
  GPtrArray *marks;                             /* SqMarkReading */
  GPtrArray *not_counted; /* char *: one line each: what in the scene this engine leaves out */
} SqReadings;

/* FALSE for a lamp that is off: people are not told of it, programs are. */
gboolean sq_reading_burns (const SqReadings *readings, const SqReadingRow *row);

/* Reads @scene at every probe and mark. The digits do not depend on @threads (at least 1).
 * Returns: (transfer full): or NULL if @cancellable stopped it */
SqReadings *sq_read_meter (const SqScene *scene,
                           int threads,
                           GCancellable *cancellable,
                           GError **error);
void sq_readings_free (SqReadings *readings);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqReadings, sq_readings_free)

G_END_DECLS
