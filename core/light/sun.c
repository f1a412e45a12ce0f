/* sun.c: where the sun stands: day number, ecliptic, equator, horizon */
#include "light/sun.h"

#include "base/geometry.h"

#include <math.h>
#include <stdio.h>

#define J2000 2451545.0
#define DAYS_A_CENTURY 36525.0

/* Days from the epoch of Julian days to midnight of a Gregorian date (Meeus, 7.1). */
static double
julian_days_of (int year, int month, int day)
{
  if (month <= 2) {
    year--;
    month += 12;
  }
  int century = year / 100, leap = 2 - century + century / 4;
  return floor (365.25 * (year + 4716)) + floor (30.6001 * (month + 1)) + day + leap - 1524.5;
}

static gboolean
read_moment (const SqDaylight *where, double *julian_days)
{
  int year, month, day, hour, minute;
  if (where->date == NULL || where->time == NULL ||
      sscanf (where->date, "%4d-%2d-%2d", &year, &month, &day) != 3 ||
      sscanf (where->time, "%2d:%2d", &hour, &minute) != 2)
    return FALSE;
  *julian_days =
    julian_days_of (year, month, day) + (hour + minute / 60.0 - where->utc_offset_h) / 24.0;
  return TRUE;
}

/* Right ascension and declination of the sun as it appears (Meeus, 25). */
static void
apparent_place (double centuries,
                double *ascension_rad,
                double *declination_rad,
                double *obliquity_rad)
{
  double t = centuries;
  double mean_longitude_deg = 280.46646 + t * (36000.76983 + t * 0.0003032);
  double anomaly_rad = SQ_RADIANS (357.52911 + t * (35999.05029 - t * 0.0001537));
  double centre_deg = (1.914602 - t * (0.004817 + t * 0.000014)) * sin (anomaly_rad) +
                      (0.019993 - t * 0.000101) * sin (2.0 * anomaly_rad) +
                      0.000289 * sin (3.0 * anomaly_rad);
  double node_rad = SQ_RADIANS (125.04 - 1934.136 * t); /* of the moon, for the nutation */
  double longitude_rad =
    SQ_RADIANS (mean_longitude_deg + centre_deg - 0.00569 - 0.00478 * sin (node_rad));
  double mean_obliquity_deg = 23.439291 - t * (0.0130042 + t * 1.64e-7);
  *obliquity_rad = SQ_RADIANS (mean_obliquity_deg + 0.00256 * cos (node_rad));
  *ascension_rad = atan2 (cos (*obliquity_rad) * sin (longitude_rad), cos (longitude_rad));
  *declination_rad = asin (sin (*obliquity_rad) * sin (longitude_rad));
}

/* Apparent sidereal time at Greenwich (Meeus, 12.4, with the nutation of chapter 22's short form).
 */
static double
sidereal_time_rad (double julian_days, double centuries, double obliquity_rad)
{
  double t = centuries;
  double mean_deg =
    280.46061837 + 360.98564736629 * (julian_days - J2000) + t * t * (0.000387933 - t / 38710000.0);
  double node_rad = SQ_RADIANS (125.04 - 1934.136 * t);
  double nutation_deg = -0.00478 * sin (node_rad);
  return SQ_RADIANS (fmod (mean_deg, 360.0) + nutation_deg * cos (obliquity_rad));
}

gboolean
sq_sun_position (const SqDaylight *where, double *bearing_deg, double *elevation_deg)
{
  double julian_days, ascension_rad, declination_rad, obliquity_rad;
  if (!read_moment (where, &julian_days))
    return FALSE;
  double centuries = (julian_days - J2000) / DAYS_A_CENTURY;
  apparent_place (centuries, &ascension_rad, &declination_rad, &obliquity_rad);
  double latitude_rad = SQ_RADIANS (where->latitude_deg);
  double hour_angle_rad = sidereal_time_rad (julian_days, centuries, obliquity_rad) +
                          SQ_RADIANS (where->longitude_deg) - ascension_rad;
  double up = sin (latitude_rad) * sin (declination_rad) +
              cos (latitude_rad) * cos (declination_rad) * cos (hour_angle_rad);
  double south = sin (latitude_rad) * cos (declination_rad) * cos (hour_angle_rad) -
                 cos (latitude_rad) * sin (declination_rad);
  double west = cos (declination_rad) * sin (hour_angle_rad);
  double from_south_deg = SQ_DEGREES (atan2 (west, south));
  *elevation_deg = SQ_DEGREES (asin (CLAMP (up, -1.0, 1.0)));
  *bearing_deg = fmod (from_south_deg + 540.0, 360.0);
  return TRUE;
}
