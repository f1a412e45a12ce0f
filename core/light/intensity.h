/* intensity.h: how a class of lamp sends light out: candela in a direction */
#pragma once

#include "scene/lamp-class.h"

G_BEGIN_DECLS

typedef enum {
  SQ_SENDS_NOTHING, /* the class says nothing that is understood here */
  SQ_SENDS_BEAM,    /* a profile about the axis */
  SQ_SENDS_LAMBERT, /* a flat diffuse face: lumens / π · cosine */
  SQ_SENDS_SPHERE,  /* lumens / 4π all round */
  SQ_SENDS_TUBE,    /* lumens / π² · sine of the angle to its axis, which is the frame's right */
  SQ_SENDS_SKIRT,   /* lumens / 2π over the half-space ahead */
} SqSends;

/* At one setting of spot and flood. Angles are halves, in radians, [across, up]. */
typedef struct {
  SqSends sends;
  double peak_cd;      /* the greatest, in whatever direction it is */
  double half_rad[2];  /* where a beam is at half of its peak */
  double steepness[2]; /* p of the profile */
} SqIntensity;

/* sq_intensity_of:
 * @beam: 0 spot to 1 flood; for classes with two beams the logarithms of angles and peak are
 *   interpolated, others do not care
 *
 * A class with a photometric web sends nothing here. */
SqIntensity sq_intensity_of (const SqClass *class, double beam);

/* Candela toward @direction, of unit length, in the lamp's frame: x right, y up, z forward.
 *
 * Profile of a beam: I(g) = peak · exp (-ln 2 · (g / gb)^p), g from the axis, gb half the beam
 * angle, gf half the field angle, p = ln (ln 10 / ln 2) / ln (gf / gb): exactly a half at gb and a
 * tenth at gf; nothing past 90 degrees, nor where the peak has been halved SQ_BEAM_STEPS times: a
 * billionth of it, less than any real housing leaks. With two spreads g / gb is the root of the sum
 * of squares across and up, and p goes over from one to the other with the square of the cosine. */
double sq_intensity_cd (const SqIntensity *intensity, SqVector direction);

#define SQ_BEAM_STEPS 30

/* The half-angle past which it sends less than @dim of its peak, for beams with @dim no less than
 * 2^-SQ_BEAM_STEPS; else, and at most, 90 degrees. */
double sq_intensity_reach_rad (const SqIntensity *intensity, double dim);

/* The half-angle at half peak across and up, for beams; what stands in for shapes: 60 degrees for
 * a Lambertian face, else 90. */
double sq_intensity_half_up_rad (const SqIntensity *intensity);

/* The angle over which the distribution changes much, for choosing how finely to sum. */
double sq_intensity_detail_rad (const SqIntensity *intensity);

G_END_DECLS
