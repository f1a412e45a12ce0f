/* geometry.h: places and directions in the scene: metres, x right, y up the page, z up */
#pragma once

#include <glib.h>
#include <math.h>

G_BEGIN_DECLS

/* Coordinate systems are types: a place on the plan is not a point in the room, a direction is
 * neither, and millimetres on paper (SqPaperPoint, draw/view.h) are none of these. */
typedef struct {
  double x_m, y_m;
} SqPlace;

typedef struct {
  double x_m, y_m, z_m;
} SqPoint;

/* A direction or a difference of points; unit length only where a function says so. */
typedef struct {
  double x, y, z;
} SqVector;

#define SQ_RADIANS(deg) ((deg) * (G_PI / 180.0))
#define SQ_DEGREES(rad) ((rad) * (180.0 / G_PI))

/* "Not given": optional places and points are NAN in x. */
#define SQ_NO_PLACE ((SqPlace){ NAN, NAN })
#define SQ_NO_POINT ((SqPoint){ NAN, NAN, NAN })

static inline gboolean
sq_place_given (SqPlace p)
{
  return !isnan (p.x_m);
}

static inline gboolean
sq_point_given (SqPoint p)
{
  return !isnan (p.x_m);
}

static inline SqPoint
sq_point (double x_m, double y_m, double z_m)
{
  return (SqPoint){ x_m, y_m, z_m };
}

static inline SqPoint
sq_point_above (SqPlace p, double z_m)
{
  return (SqPoint){ p.x_m, p.y_m, z_m };
}

static inline SqVector
sq_vector (double x, double y, double z)
{
  return (SqVector){ x, y, z };
}

/* From @a to @b. */
static inline SqVector
sq_vector_between (SqPoint a, SqPoint b)
{
  return (SqVector){ b.x_m - a.x_m, b.y_m - a.y_m, b.z_m - a.z_m };
}

static inline SqPoint
sq_point_along (SqPoint p, SqVector v, double times)
{
  return (SqPoint){ p.x_m + v.x * times, p.y_m + v.y * times, p.z_m + v.z * times };
}

static inline SqVector
sq_vector_sum (SqVector a, SqVector b)
{
  return (SqVector){ a.x + b.x, a.y + b.y, a.z + b.z };
}

static inline SqVector
sq_vector_scale (SqVector v, double times)
{
  return (SqVector){ v.x * times, v.y * times, v.z * times };
}

static inline double
sq_vector_dot (SqVector a, SqVector b)
{
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

static inline SqVector
sq_vector_cross (SqVector a, SqVector b)
{
  return (SqVector){ a.y * b.z - a.z * b.y, a.z * b.x - a.x * b.z, a.x * b.y - a.y * b.x };
}

static inline double
sq_vector_length (SqVector v)
{
  return sqrt (sq_vector_dot (v, v));
}

/* Unit length; a vector of no length stays as it is. */
static inline SqVector
sq_vector_unit (SqVector v)
{
  double length = sq_vector_length (v);
  return length > 0.0 ? sq_vector_scale (v, 1.0 / length) : v;
}

/* The direction of page azimuth @azimuth_deg (counter-clockwise from +x) and @elevation_deg above
 * the horizontal; unit length. */
static inline SqVector
sq_vector_toward (double azimuth_deg, double elevation_deg)
{
  double a = SQ_RADIANS (azimuth_deg), e = SQ_RADIANS (elevation_deg);
  return (SqVector){ cos (e) * cos (a), cos (e) * sin (a), sin (e) };
}

static inline double
sq_place_distance_m (SqPlace a, SqPlace b)
{
  return hypot (b.x_m - a.x_m, b.y_m - a.y_m);
}

/* Page azimuth of @v in degrees, 0 to 360. */
double sq_vector_azimuth_deg (SqVector v);

/* Elevation of @v above the horizontal in degrees, -90 to 90. */
double sq_vector_elevation_deg (SqVector v);

G_END_DECLS
