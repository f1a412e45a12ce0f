/* throw.c: axis, beam edges and stop ticks of a lamp
 *
 * Light falls off as 1 / d²: each tick toward the lamp, at 1/√2 of the distance, is one stop more.
 */
#include "draw/throw.h"

/* Ticks nearer to each other or to the lamp than this are left out. */
#define LEAST_TICK_STEP_MM 2.2

/* An edge runs no further than this many throws. */
#define MOST_EDGE 1.25

/* Tenths wider than this say nothing. */
#define MOST_TENTH_DEG 120.0

/* Shorter throws have no room for an axis. */
#define LEAST_THROW_MM 2.0

SqPaperPoint
sq_tick_place (SqPaperPoint source, SqPaperPoint aim, int n)
{
  double share = exp2 (-n / 2.0);
  return (SqPaperPoint){ source.x_mm + share * (aim.x_mm - source.x_mm),
                         source.y_mm + share * (aim.y_mm - source.y_mm) };
}

static SqPaperPoint
paper_of (const SqView *view, SqPoint point)
{
  return sq_view_paper (view, (SqPlace){ point.x_m, point.y_m });
}

/* One edge, @half_deg to the side: to the plane through the aim, if that is not far, or to what
 * stops it. */
static SqPaperLine
edge (const SqView *view,
      const SqScene *scene,
      const GArray *blocks,
      SqPoint from,
      SqFrame frame,
      double half_deg,
      double start_mm,
      double throw_m)
{
  double c = cos (SQ_RADIANS (half_deg)), s = sin (SQ_RADIANS (half_deg));
  SqVector level = sq_vector_unit (sq_vector_cross (frame.forward, sq_vector (0, 0, 1)));
  SqVector toward = sq_vector_sum (sq_vector_scale (frame.forward, c), sq_vector_scale (level, s));
  double reach = sq_ray_cut_m (scene, blocks, from, toward, throw_m * MIN (1.0 / c, MOST_EDGE));
  SqPaperPoint at = paper_of (view, from);
  SqPaperPoint end = paper_of (view, sq_point_along (from, toward, reach));
  double angle = atan2 (end.y_mm - at.y_mm, end.x_mm - at.x_mm);
  double length = sq_paper_distance_mm (at, end);
  return (SqPaperLine){ sq_paper_along (at, angle, MIN (start_mm, length)), end };
}

static void
add_ticks (SqThrow *way, SqPaperPoint source, SqPaperPoint aim, double clear_mm, double seen_mm)
{
  double length = sq_paper_distance_mm (source, aim), last = G_MAXDOUBLE;
  way->aim_tick = length <= seen_mm + 1e-6;
  for (int n = 0; n < SQ_MOST_TICKS; n++) {
    SqPaperPoint at = sq_tick_place (source, aim, n);
    double along = sq_paper_distance_mm (source, at);
    if (along < clear_mm || last - along < LEAST_TICK_STEP_MM)
      break;
    last = along;
    way->tick[way->n_ticks++] = at;
  }
}

SqThrow
sq_throw (const SqView *view,
          const SqScene *scene,
          const GArray *blocks,
          const SqFixture *fixture,
          gboolean many)
{
  const SqClass *lamp_class = sq_scene_class (scene, fixture->class_id);
  SqThrow way = { .role_line = fixture->role };
  SqLamp lamp = sq_lamp_of_fixture (scene, fixture, view);
  SqPoint aim;
  if (!fixture->on || sq_lamp_size (view, &lamp).form != SQ_FORM_AIMED ||
      !sq_scene_aim_point (scene, &fixture->aim, &aim))
    return way;

  SqVector ray = sq_vector_between (fixture->at, aim);
  double throw_m = sq_vector_length (ray);
  double seen_m = sq_ray_cut_m (scene, blocks, fixture->at, ray, throw_m);
  SqPaperPoint source = paper_of (view, fixture->at), end = paper_of (view, aim);
  SqPaperPoint stop = paper_of (view, sq_point_along (fixture->at, sq_vector_unit (ray), seen_m));
  double start = sq_lamp_reach_mm (view, &lamp) + SQ_AXIS_CLEAR_MM;
  double length = sq_paper_distance_mm (source, stop);
  if (length < start + LEAST_THROW_MM)
    return way;

  way.any = TRUE;
  way.angle_rad = atan2 (end.y_mm - source.y_mm, end.x_mm - source.x_mm);
  way.axis = (SqPaperLine){ sq_paper_along (source, way.angle_rad, start), stop };

  double framed_m = sq_frame_on_the_way_m (scene, fixture->at, ray);
  if (framed_m > 0.0 && framed_m < seen_m)
    add_ticks (&way, paper_of (view, sq_point_along (fixture->at, sq_vector_unit (ray), framed_m)),
               end, 3.0, length);
  else
    add_ticks (&way, source, end, start, length);
  /* Ticks past what stops the light say nothing. */
  while (way.n_ticks > 0 && sq_paper_distance_mm (source, way.tick[0]) > length + 1e-6) {
    memmove (way.tick, way.tick + 1, sizeof way.tick - sizeof way.tick[0]);
    way.n_ticks--;
  }

  double half, tenth;
  SqFrame frame = sq_fixture_frame (scene, fixture);
  way.hard = framed_m == 0.0 && sq_fixture_is_hard (scene, fixture);
  if (!way.hard || !sq_fixture_beam_deg (scene, fixture, &half, &tenth))
    return way;
  way.with_tenth = tenth < MOST_TENTH_DEG &&
                   (!many || fixture->role == SQ_ROLE_KEY || fixture->role == SQ_ROLE_BACK ||
                    lamp_class->optics == SQ_OPTICS_PROFILE);
  for (int side = 0; side < 2; side++) {
    double sign = side == 0 ? -0.5 : 0.5;
    way.half[side] = edge (view, scene, blocks, fixture->at, frame, sign * half, start, throw_m);
    if (way.with_tenth)
      way.tenth[side] =
        edge (view, scene, blocks, fixture->at, frame, sign * tenth, start, throw_m);
  }
  return way;
}

void
sq_draw_tick (SqDrawing *drawing, SqPaperPoint at, double angle_rad, gboolean at_aim)
{
  double half = at_aim ? 1.7 : 0.85;
  sq_draw_line (drawing, sq_paper_along (at, angle_rad + G_PI / 2, half),
                sq_paper_along (at, angle_rad - G_PI / 2, half), at_aim ? SQ_PEN_50 : SQ_PEN_35,
                sq_ink (drawing->view, SQ_INK));
}

static void
draw_dashed (
  SqDrawing *drawing, SqPaperLine line, double pen_mm, SqColour colour, const double *dash, int n)
{
  cairo_move_to (drawing->cairo, line.from.x_mm, line.from.y_mm);
  cairo_line_to (drawing->cairo, line.to.x_mm, line.to.y_mm);
  sq_draw_stroke_dashed (drawing, pen_mm, colour, dash, n);
}

void
sq_draw_beam_edge (SqDrawing *drawing, SqPaperLine edge_line, gboolean tenth, SqColour colour)
{
  static const double tenth_dash[] = { 1.6, 1.0 };
  draw_dashed (drawing, edge_line, SQ_PEN_18, colour, tenth_dash,
               tenth ? (int)G_N_ELEMENTS (tenth_dash) : 0);
}

void
sq_draw_throw (SqDrawing *drawing, const SqThrow *way)
{
  const SqRoleLine *role = &sq_role_lines[way->role_line];
  SqColour colour = sq_role_colour (drawing->view, way->role_line);

  if (!way->any)
    return;
  for (int side = 0; way->hard && side < 2; side++) {
    sq_draw_beam_edge (drawing, way->half[side], FALSE, colour);
    if (way->with_tenth)
      sq_draw_beam_edge (drawing, way->tenth[side], TRUE, colour);
  }
  draw_dashed (drawing, way->axis, SQ_PEN_35, colour, role->dash_mm, role->n_dashes);
  for (int n = 0; n < way->n_ticks; n++)
    sq_draw_tick (drawing, way->tick[n], way->angle_rad, n == 0 && way->aim_tick);
}
