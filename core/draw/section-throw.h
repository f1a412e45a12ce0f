/* section-throw.h: where a lamp's light goes on the cut: axis, tilt, beam edges, stop ticks */
#pragma once

#include "draw/section-cut.h"

G_BEGIN_DECLS

/* More ticks than this down an axis would be closer than they can be read. */
#define SQ_SECTION_TICKS 16

enum { SQ_EDGE_ABOVE, SQ_EDGE_UNDER, SQ_EDGES };

/* All in metres on the cut. */
typedef struct {
  SqPlace from;     /* the middle of the emitting face */
  gboolean aimed;   /* it has an axis: it does not shine all round */
  double tilt_deg;  /* of the axis, above the level; below: negative */
  SqPlace aim;      /* what it points at, else where its axis ends */
  double away_m;    /* to there */
  SqPlace end;      /* of the axis: the aim, or what stops it before */
  gboolean reaches; /* the aim itself */

  SqPlace ticks_from; /* the lamp, or the frame that takes over as the source */
  double framed_m;    /* along the axis to that frame; 0: there is none */
  guint n_ticks;
  SqPlace tick[SQ_SECTION_TICKS]; /* tick[n]: n stops over the aim */

  gboolean hard;                                  /* its beam has edges */
  double edge_deg[SQ_EDGES], tenth_deg[SQ_EDGES]; /* off the axis, half and tenth of the peak */
  gboolean by_door[SQ_EDGES];              /* a door cuts it nearer than that: one edge for both */
  SqPlace half[SQ_EDGES], tenth[SQ_EDGES]; /* where they end */

  SqPlace source[SQ_EDGES]; /* upper and lower end of what shines, the frame if there is one */
} SqSectionThrow;

/* @obstacles: of the scene; the subject that is aimed at does not stop the axis */
SqSectionThrow sq_section_throw (const SqScene *scene,
                                 const SqFixture *fixture,
                                 const SqCutPlane *plane,
                                 const GArray *obstacles);

/* How large the beam is at the aim, across the axis, between its edges; 0 where it has none. */
double sq_section_beam_m (const SqSectionThrow *way);

/* How large what shines looks from the aim, in the plane of the cut. */
double sq_section_source_deg (const SqSectionThrow *way);

G_END_DECLS
