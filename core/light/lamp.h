/* lamp.h: a lamp made ready, and who reads its light */
#pragma once

#include "light/face-places.h"
#include "light/intensity.h"
#include "light/passing.h"
#include "light/sight.h"

G_BEGIN_DECLS

/* How the light of a lamp is summed. */
typedef enum {
  SQ_SHAPED_NOT,   /* it gives none */
  SQ_SHAPED_POINT, /* no size: inverse square */
  SQ_SHAPED_FLAT,  /* a face */
  SQ_SHAPED_BALL,  /* looks like an even disc from everywhere */
  SQ_SHAPED_TUBE,  /* a ribbon turned to whoever looks */
} SqShaped;

typedef struct {
  const SqFixture *fixture; /* borrowed */
  SqShaped shaped;
  SqFrame frame;
  SqIntensity intensity;
  SqPassing passing;
  double output;            /* level · 2^trim; 0: dark */
  double width_m, height_m; /* of the face: a tube's length and diameter */
  double radius_m;          /* of a ball round fixture->at that holds the face */
  gboolean even;            /* Lambertian, and nothing on it that depends on the direction */
  SqPoint *face;            /* corners, of a flat one */
  guint n_face;
  SqFacePlaces *places; /* (nullable): that stand for a flat face */
  GArray *doors;        /* (nullable) (element-type SqObstacle): they shadow only this lamp */
} SqLamp;

/* sq_lamps_new:
 * @like: (nullable) (element-type SqLamp): of a scene that was much the same: what is still right
 *   is shared with it, which saves time and changes nothing
 *
 * One for each fixture, in file order, also for those that are off.
 * Returns: (transfer full) (element-type SqLamp) */
GArray *sq_lamps_new (const SqScene *scene, const GArray *like);

/* sq_lamp_detail_rad:
 * The angle over which what the lamp sends changes much, with its modifiers. */
double sq_lamp_detail_rad (const SqLamp *lamp);

/* The half-angle about its axis past which it sends less than @dim of its peak; see
 * sq_intensity_reach_rad(). Past that of 2^-SQ_BEAM_STEPS it sends nothing. */
double sq_lamp_reach_rad (const SqLamp *lamp, double dim);

/* How small a part of an uneven face must look, against its distance, for its light to be summed at
 * four places: a third, or half of the detail. */
double sq_lamp_part_limit (const SqLamp *lamp);

/* Of what the lamp shows to whoever looks straight at it, over which its candela are spread. */
double sq_lamp_shown_area_m2 (const SqLamp *lamp);

/* sq_lamp_candela:
 * @x, @y, @z: (array length=n): directions of unit length in the lamp's frame: right, up, forward
 * @candela: (out) (array length=n)
 *
 * Candela of the whole lamp at unit output, past its modifiers: sq_intensity_cd() times
 * sq_passing_share(), but for rounding. The same bits for each direction whatever @n is. */
void sq_lamp_candela (
  const SqLamp *lamp, const double *x, const double *y, const double *z, gsize n, double *candela);

/* The corners round a disc and a rectangle that are spanned by two half axes. The disc's polygon
 * has the disc's own area; its second moments are right to a hundred-thousandth. */
#define SQ_DISC_SIDES 32
void sq_disc_corners (SqPoint centre, SqVector half_across, SqVector half_up, SqPoint *corners);
void sq_rect_corners (SqPoint centre, SqVector half_across, SqVector half_up, SqPoint *corners);

/* How a point reads light. */
typedef struct {
  SqPoint at;
  SqVector normal; /* unit length; a dome's axis */
  gboolean dome;   /* (1 + cosine) / 2; else flat, cosine */
} SqReceptor;

G_END_DECLS
