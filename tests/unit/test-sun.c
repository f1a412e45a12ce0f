/* test-sun.c: the sun stands where almanacs have it */
#include "base/error.h"
#include "light/sun.h"

#include <math.h>

/* Low accuracy of Meeus, 0.01 degrees, and the parallax that is left out. */
#define SUN_DEG 0.02

/* The same moment by another clock. */
#define SAME_DEG 1e-6

/* Without refraction; astropy 5.2, PyEphem 4.1 and astronomy-engine 2.1 agree to 0.0003 degrees. */
static void
test_positions (void)
{
  static const struct {
    const char *where, *date, *time;
    double utc_offset_h, latitude_deg, longitude_deg, elevation_deg, bearing_deg;
  } rows[] = {
    { "London", "2024-06-20", "13:00", 1, 51.4779, -0.0015, 61.9568, 179.1650 },
    { "Los Angeles", "2024-12-21", "08:30", -8, 34.0522, -118.2437, 15.2125, 132.9472 },
    { "Sydney", "2025-03-20", "13:00", 11, -33.8688, 151.2093, 56.2399, 1.1907 },
    { "Mumbai", "2026-01-15", "17:00", 5.5, 19.0760, 72.8777, 16.4030, 240.1060 },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    SqDaylight day = { .latitude_deg = rows[k].latitude_deg,
                       .longitude_deg = rows[k].longitude_deg,
                       .date = (char *)rows[k].date,
                       .time = (char *)rows[k].time,
                       .utc_offset_h = rows[k].utc_offset_h };
    double bearing_deg, elevation_deg;
    g_test_message ("%s", rows[k].where);
    g_assert_true (sq_sun_position (&day, &bearing_deg, &elevation_deg));
    g_assert_cmpfloat_with_epsilon (elevation_deg, rows[k].elevation_deg, SUN_DEG);
    g_assert_cmpfloat_with_epsilon (bearing_deg, rows[k].bearing_deg, SUN_DEG);
  }
}

/* A clock that is ahead of UTC shows the same sun at another time, across midnight too. */
static void
test_clocks (void)
{
  SqDaylight utc = { .latitude_deg = 60.0, .date = (char *)"2026-06-21", .time = (char *)"22:30" };
  SqDaylight ahead = {
    .latitude_deg = 60.0, .date = (char *)"2026-06-22", .time = (char *)"02:30", .utc_offset_h = 4.0
  };
  double bearing_deg[2], elevation_deg[2];
  g_assert_true (sq_sun_position (&utc, &bearing_deg[0], &elevation_deg[0]));
  g_assert_true (sq_sun_position (&ahead, &bearing_deg[1], &elevation_deg[1]));
  g_assert_cmpfloat_with_epsilon (bearing_deg[0], bearing_deg[1], SAME_DEG);
  g_assert_cmpfloat_with_epsilon (elevation_deg[0], elevation_deg[1], SAME_DEG);
}

static void
test_unreadable (void)
{
  static const char *const rows[][2] = {
    { NULL, "12:00" }, { "2026-05-02", NULL }, { "today", "12:00" }, { "2026-05-02", "noon" }
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    SqDaylight day = { .date = (char *)rows[k][0], .time = (char *)rows[k][1] };
    double bearing_deg, elevation_deg;
    g_assert_false (sq_sun_position (&day, &bearing_deg, &elevation_deg));
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sun/where almanacs have it", test_positions);
  g_test_add_func ("/sun/whatever the clock", test_clocks);
  g_test_add_func ("/sun/no date, no sun", test_unreadable);
  return g_test_run ();
}
