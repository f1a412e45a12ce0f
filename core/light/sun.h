/* sun.h: where the sun stands, from place and time */
#pragma once

#include "scene/daylight.h"

G_BEGIN_DECLS

/* sq_sun_position:
 * @where: place, date, time and clock; whether it is on does not matter
 * @bearing_deg: (out): from true north, clockwise, 0 to 360
 * @elevation_deg: (out): above the horizon, as it is without air
 *
 * Meeus, Astronomical Algorithms (1998), chapters 7, 12, 13 and 25: the lower accuracy, 0.01
 * degrees over these centuries; parallax, 0.002 degrees, is left out.
 *
 * Returns: FALSE where the date or the time cannot be read */
gboolean sq_sun_position (const SqDaylight *where, double *bearing_deg, double *elevation_deg);

G_END_DECLS
