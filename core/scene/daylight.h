/* daylight.h: place and time from which sun and sky are computed */
#pragma once

#include "scene/fixture.h"

G_BEGIN_DECLS

typedef enum {
  SQ_SKY_CLEAR,
  SQ_SKY_PART,
  SQ_SKY_OVERCAST,
} SqSky;

typedef struct {
  SqThing thing;
  gboolean on;
  double latitude_deg, longitude_deg; /* north, east positive */
  char *date;                         /* YYYY-MM-DD */
  char *time;                         /* HH:MM, local */
  double utc_offset_h;                /* with summer time in it */
  int sky;                            /* SqSky */
  int sun_role, sky_role;             /* SqRole */
} SqDaylight;

extern const SqKind sq_daylight_kind;

G_END_DECLS
