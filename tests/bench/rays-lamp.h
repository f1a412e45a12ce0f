/* rays-lamp.h: a lamp as the ray tracer's side reads it: places on its face, light along a ray */
#pragma once

#include "light/lamp.h"
#include "rays.h"

G_BEGIN_DECLS

#define RAYS_LANES 16

typedef struct {
  float x, y, z;
} RaysVector;

/* How candela go with the direction. */
typedef enum {
  RAYS_CD_FACING, /* with the cosine to the face's normal */
  RAYS_CD_EVEN,   /* the same all round */
  RAYS_CD_ACROSS, /* with the sine to the lamp's right */
  RAYS_CD_TABLE,  /* looked up */
} RaysCd;

typedef struct {
  const SqLamp *lamp; /* borrowed */
  gboolean dark, soft;
  RaysCd by; /* of the whole lamp, from its middle */
  float cd;  /* peak, with what the modifiers and the dimmer leave of it */
  RaysVector right, up, ahead;
  float *table; /* (nullable): candela over the half-space ahead: x and y of the direction */
} RaysLamp;

/* The face as a point sees it: places are middle + u · across + v · up with u and v in -1 … 1. */
typedef struct {
  RaysVector middle, across, up, normal;
  RaysCd by;
  float share; /* of the lamp's candela that this face stands for */
} RaysFace;

/* 16 ways from points to places on the lamp, and what they bring. */
typedef struct {
  _Alignas(64) float x[RAYS_LANES];
  float y[RAYS_LANES], z[RAYS_LANES], lux[RAYS_LANES];
} RaysWays;

/* Candela of shapes are closed forms, as in intensity.h; of beams and whatever has modifiers that
 * care for the direction, sq_intensity_cd() and sq_passing_share() are put in a table beforehand:
 * no tracer would compute them for every ray. A bulb or tube with such modifiers is not known here.
 * Returns: FALSE for one */
gboolean rays_lamp_init (RaysLamp *ready, const SqLamp *lamp);
void rays_lamp_clear (RaysLamp *ready);

/* Returns: FALSE if @from is on it or behind it. */
gboolean rays_lamp_face (const RaysLamp *ready, RaysVector from, RaysFace *face);

/* Fills in what each way brings to a flat receptor that looks up, with nothing between. */
void rays_lamp_light (const RaysLamp *ready, const RaysFace *face, RaysWays *ways);

G_END_DECLS
