/* exposure.c: from light to T-stops, stops and ratios, and back */
#include "light/exposure.h"

SqExposure
sq_exposure_of (const SqCamera *camera)
{
  if (!camera)
    return (SqExposure){ .t_stop = 2.8, .iso = 800.0, .exposure_s = 0.5 / 24.0 };
  return (SqExposure){
    .t_stop = camera->t_stop,
    .iso = camera->iso,
    .exposure_s = sq_camera_exposure_s (camera),
    .nd_stops = camera->nd_stops,
  };
}

double
sq_exposure_set_light (const SqExposure *exposure, double constant)
{
  double n = exposure->t_stop;
  return constant * n * n * exp2 (exposure->nd_stops) / (exposure->iso * exposure->exposure_s);
}

double
sq_exposure_t_stop (const SqExposure *exposure, double constant, double light)
{
  if (!(light > SQ_DARK_LX))
    return NAN;
  return sqrt (light * exposure->iso * exposure->exposure_s /
               (constant * exp2 (exposure->nd_stops)));
}

double
sq_stops_over (double light, double reference)
{
  return light > SQ_DARK_LX && reference > SQ_DARK_LX ? log2 (light / reference) : NAN;
}

double
sq_ratio (double a, double b)
{
  return b > SQ_DARK_LX ? a / b : NAN;
}
