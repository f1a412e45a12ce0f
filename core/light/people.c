/* people.c: a person as a few convex solids, sized by stature and posture
 *
 * Heights as shares of stature: hip 0.47, shoulders and chin 0.86, crown 1; seat 0.26, a sitter's
 * crown 0.79. Widths for 1.70 m: head 0.19, shoulders 0.48 by 0.27 deep. Common practice, from
 * body-segment shares of Drillis and Contini 1966, from memory. Arms hang within the torso. */
#include "light/obstacles.h"

#define USUAL_STATURE_M 1.70
#define SIDES 8

typedef struct {
  GArray *obstacles;
  const SqMark *mark;
  SqVector ahead, left; /* on plan */
  double size;          /* against somebody of usual stature */
} Body;

/* A place on plan, for somebody of usual stature, from the mark. */
static SqPlace
from_mark (const Body *body, double ahead_m, double left_m)
{
  ahead_m *= body->size;
  left_m *= body->size;
  return (SqPlace){ body->mark->at.x_m + body->ahead.x * ahead_m + body->left.x * left_m,
                    body->mark->at.y_m + body->ahead.y * ahead_m + body->left.y * left_m };
}

static void
add_prism (const Body *body, const SqPlace *outline, guint n, double base, double top)
{
  const SqMark *mark = body->mark;
  SqObstacle *part =
    sq_obstacles_add (body->obstacles, &mark->thing, 0.0, sq_skin_reflectance ((SqSkin)mark->skin));
  sq_solid_init_prism (&part->solid, outline, n, mark->floor_m + base * mark->stature_m,
                       mark->floor_m + top * mark->stature_m);
}

/* Heights are shares of stature, lengths for somebody of usual stature. */
static void
add_round (const Body *body, double half_depth_m, double half_width_m, double base, double top)
{
  SqPlace outline[SIDES];
  for (int i = 0; i < SIDES; i++) {
    double angle = 2.0 * G_PI * (i + 0.5) / SIDES;
    outline[i] = from_mark (body, half_depth_m * cos (angle), half_width_m * sin (angle));
  }
  add_prism (body, outline, SIDES, base, top);
}

static void
add_box (const Body *body, double back_m, double front_m, double width_m, double base, double top)
{
  const SqPlace outline[] = {
    from_mark (body, back_m, -width_m / 2.0),
    from_mark (body, front_m, -width_m / 2.0),
    from_mark (body, front_m, width_m / 2.0),
    from_mark (body, back_m, width_m / 2.0),
  };
  add_prism (body, outline, G_N_ELEMENTS (outline), base, top);
}

void
sq_obstacles_add_person (GArray *obstacles, const SqMark *mark)
{
  const Body body = {
    .obstacles = obstacles,
    .mark = mark,
    .ahead = sq_vector_toward (mark->facing_deg, 0.0),
    .left = sq_vector_toward (mark->facing_deg + 90.0, 0.0),
    .size = mark->stature_m / USUAL_STATURE_M,
  };
  const double head_m = 0.095;
  switch ((SqPosture)mark->posture) {
  case SQ_POSTURE_SIT:
    add_round (&body, head_m, head_m, 0.655, 0.79);
    add_round (&body, 0.135, 0.24, 0.26, 0.655);
    add_box (&body, 0.0, 0.45, 0.36, 0.20, 0.30); /* thighs */
    add_box (&body, 0.33, 0.45, 0.32, 0.0, 0.20); /* lower legs */
    break;
  case SQ_POSTURE_LIE: /* on the back, the face at the mark, the feet behind */
    add_round (&body, head_m, head_m, 0.0, 0.12);
    add_box (&body, -USUAL_STATURE_M + 0.12, -0.12, 0.40, 0.0, 0.13);
    break;
  case SQ_POSTURE_STAND:
  default:
    add_round (&body, head_m, head_m, 0.86, 1.0);
    add_round (&body, 0.135, 0.24, 0.47, 0.86);
    add_round (&body, 0.11, 0.18, 0.0, 0.47);
    break;
  }
}
