/* lamp.h: a lamp made ready: what it sends to a point, and how that adds up to a reading */
#pragma once

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
  GArray *doors; /* (nullable) (element-type SqObstacle): they shadow only this lamp */
} SqLamp;

/* One for each fixture, in file order, also for those that are off.
 * Returns: (transfer full) (element-type SqLamp) */
GArray *sq_lamps_new (const SqScene *scene);

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

/* TRUE if the lamp is dark, or all of it is below the receptor's horizon, or it faces away. */
gboolean sq_lamp_is_out_of_sight (const SqLamp *lamp, const SqReceptor *receptor);

/* What @from sees of the lamp, into @sight. @own: see sq_sight_see(). */
void sq_lamp_see (
  const SqLamp *lamp, SqPoint from, const GArray *obstacles, const SqThing *own, SqSight *sight);

/* The lux that the receptor reads of what is in @sight, which was seen from where it stands.
 *
 * E = sum of level · 2^trim · T · I · cos / d² · V. Even faces, balls and tubes by the contour
 * formula, exactly; other faces in cells (light/cells.h), each sending its share of the lamp's
 * candela. On the lamp, inside it and behind its face nothing is read. */
double sq_lamp_lux (const SqLamp *lamp, const SqReceptor *receptor, const SqSight *sight);

G_END_DECLS
