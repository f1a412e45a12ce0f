/* exposure.h: from light to T-stops, stops and ratios, and back */
#pragma once

#include "scene/camera.h"

G_BEGIN_DECLS

/* What the camera does with light. */
typedef struct {
  double t_stop;     /* as set */
  double iso;        /* exposure index */
  double exposure_s; /* of one frame */
  double nd_stops;
} SqExposure;

/* Reflected-light constant of a spot reading, cd·s·ISO/m² (ISO 2720: 10.6 to 13.4, 12.5 in use). */
#define SQ_SPOT_K 12.5

/* The exposure of @camera; with none: ISO 800, 24 frames a second, 180 degrees, T2.8, no ND. */
SqExposure sq_exposure_of (const SqCamera *camera);

/* The light that gives the set stop: constant · N² · 2^nd / (ISO · t), ISO 2720. With an
 * incident-light constant C it is lux, with a reflected-light constant K cd/m². */
double sq_exposure_set_light (const SqExposure *exposure, double constant);

/* The T-stop that @light asks for: N² = light · ISO · t / (constant · 2^nd). NAN where dark. */
double sq_exposure_t_stop (const SqExposure *exposure, double constant, double light);

/* Less light than this is darkness: a hundredth of a moonless, overcast night (common practice).
 * The tails of beams fall to 1e-20 lx, and nobody wants to read how many stops that is. */
#define SQ_DARK_LX 1e-6

/* log2 (light / reference); NAN where either is dark. */
double sq_stops_over (double light, double reference);

/* a / b; NAN where @b is dark. */
double sq_ratio (double a, double b);

G_END_DECLS
