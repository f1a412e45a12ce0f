/* geometry.c: angles of directions */
#include "base/geometry.h"

double
sq_vector_azimuth_deg (SqVector v)
{
  double deg = SQ_DEGREES (atan2 (v.y, v.x));
  return deg < 0.0 ? deg + 360.0 : deg;
}

double
sq_vector_elevation_deg (SqVector v)
{
  return SQ_DEGREES (atan2 (v.z, hypot (v.x, v.y)));
}
