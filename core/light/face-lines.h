/* face-lines.h: a flat lamp face as a few lines drawn over it, along which shadows are measured */
#pragma once

#include "base/geometry.h"

G_BEGIN_DECLS

#define SQ_LINES 8
/* Places on a line at which its light is weighed; between them lies a parabola. */
#define SQ_LINE_NODES 3
/* How many half sides up a line climbs in one half side across. Lines along a side would each be
 * hidden or seen in whole by the many shadows that run along it too. With a third a line of a
 * rectangle ends two lines higher than it starts, so that the parts of lines which such a shadow
 * leaves nearly add up to what it leaves of the face. */
#define SQ_LINES_SLOPE (1.0 / 3.0)

/* Coordinates on the face: u in half sides across and v in half sides up, -1 to 1 from its middle.
 * Line l holds the points (u, height[l] + SQ_LINES_SLOPE · u) from u = from[l] to to[l]. */
typedef struct {
  SqPoint middle;
  SqVector half_across, half_up;
  SqVector along; /* by one in u on a line */
  float height[SQ_LINES], from[SQ_LINES], to[SQ_LINES];
  float middle_u[SQ_LINES], per_half[SQ_LINES]; /* of the line; 1 / half its length */
  /* The nodes: start, middle and end of each line, and the square of their distance from the face's
   * middle. */
  float node_u[SQ_LINE_NODES][SQ_LINES], node_v[SQ_LINE_NODES][SQ_LINES];
  float node_square_m2[SQ_LINE_NODES][SQ_LINES];
} SqFaceLines;

/* sq_face_lines_init:
 * @half_across, @half_up: half sides of the face; sides of no length are allowed
 * @disc: the ellipse within that rectangle instead of all of it
 */
void sq_face_lines_init (
  SqFaceLines *face, SqPoint middle, SqVector half_across, SqVector half_up, gboolean disc);

G_END_DECLS
