/* shadow.c: the shadow that somebody throws on the floor */
#include "draw/shadow.h"

#include "draw/shining-face.h"

/* A lamp no higher than the figure throws it without end: so far it is drawn. */
#define MOST_LENGTH_M 8.0
#define LEAST_LENGTH_M 0.3

/* A ray may end this much short of the face and still reach it. */
#define REACHED_M 0.01

/* So far over the floor walls stop it: over no sill, under every door's head. */
#define OVER_FLOOR_M 0.05

SqShadowSource
sq_shadow_source (const SqScene *scene, const SqFixture *fixture, const SqMark *mark)
{
  const SqClass *lamp_class = sq_scene_class (scene, fixture->class_id);
  SqVector way = sq_vector_between (fixture->at, sq_mark_face (mark));
  const SqPanel *frame = sq_frame_on_the_way (scene, fixture->at, way);
  SqShiningFace face = sq_shining_face (lamp_class, fixture);
  if (frame == NULL)
    return (SqShadowSource){ fixture->at, sq_shining_extent_m (&face, fixture->roll_deg) };
  face = (SqShiningFace){ frame->width_m, frame->height_m, FALSE };
  return (SqShadowSource){ frame->at, sq_shining_extent_m (&face, frame->roll_deg) };
}

double
sq_penumbra_m (double source_m, double before_m, double behind_m)
{
  return source_m * behind_m / before_m;
}

double
sq_shadow_core_m (double source_m, double before_m)
{
  const double figure_m = 2.0 * SQ_FIGURE_RADIUS_M;
  return source_m > figure_m ? figure_m * before_m / (source_m - figure_m) : INFINITY;
}

/* As far as the figure's height throws it: by the intercept theorem. */
static double
floor_length_m (const SqMark *mark, double lamp_z_m, double away_m)
{
  double crown_m = mark->floor_m + sq_mark_crown_height_m (mark);
  if (lamp_z_m <= crown_m)
    return MOST_LENGTH_M;
  return away_m * (crown_m - mark->floor_m) / (lamp_z_m - crown_m);
}

SqShadow
sq_shadow (const SqView *view,
           const SqScene *scene,
           const GArray *blocks,
           const SqFixture *fixture,
           const SqMark *mark)
{
  SqShadow shadow = { .foot = sq_view_paper (view, mark->at) };
  SqPoint face = sq_mark_face (mark);
  SqVector way = sq_vector_between (fixture->at, face);
  double whole_m = sq_vector_length (way);
  if (!fixture->on || fixture->level <= 0.0 || mark->posture == SQ_POSTURE_LIE ||
      sq_ray_cut_m (scene, blocks, fixture->at, way, whole_m) <= whole_m - REACHED_M)
    return shadow;

  SqShadowSource source = sq_shadow_source (scene, fixture, mark);
  SqPlace from = { source.at.x_m, source.at.y_m };
  double away = sq_place_distance_m (from, mark->at);
  if (away <= 2.0 * SQ_FIGURE_RADIUS_M)
    return shadow;
  double half = asin (SQ_FIGURE_RADIUS_M / away), touch = away * cos (half);
  double length = MIN (floor_length_m (mark, source.at.z_m, away), MOST_LENGTH_M);
  length = MIN (length, sq_shadow_core_m (source.width_m, touch));
  if (length < LEAST_LENGTH_M)
    return shadow;

  double azimuth = atan2 (mark->at.y_m - from.y_m, mark->at.x_m - from.x_m);
  double straight = (touch + length) * cos (half); /* along the middle, to the line of its end */
  shadow.any = TRUE;
  for (int i = 0; i < SQ_SHADOW_RAYS; i++) {
    double off = half * (1.0 - 2.0 * i / (SQ_SHADOW_RAYS - 1));
    SqVector ray = { cos (azimuth + off), sin (azimuth + off), 0.0 };
    SqPoint start = { from.x_m + touch * ray.x, from.y_m + touch * ray.y,
                      mark->floor_m + OVER_FLOOR_M };
    double wanted = straight / cos (off) - touch;
    double reach = sq_ray_cut_m (scene, blocks, start, ray, wanted);
    SqPlace end = { start.x_m + reach * ray.x, start.y_m + reach * ray.y };
    shadow.end[i] = sq_view_paper (view, end);
    shadow.climbs[i] = reach < wanted - REACHED_M;
    if (i > 0 && i + 1 < SQ_SHADOW_RAYS)
      continue;
    int side = i == 0 ? 0 : 1;
    shadow.edge[side] =
      (SqPaperLine){ sq_view_paper (view, (SqPlace){ start.x_m, start.y_m }), shadow.end[i] };
    double outside = sq_penumbra_m (source.width_m, touch, reach) / 2.0 * view->mm_per_m;
    double turn = side == 0 ? -G_PI / 2 : G_PI / 2; /* outward, in cairo's sense */
    shadow.penumbra[side] = sq_paper_along (shadow.end[i], -(azimuth + off) + turn, outside);
  }
  return shadow;
}

static void
draw_fill (SqDrawing *drawing, const SqShadow *shadow)
{
  /* On a dark ground it takes more to be seen. */
  gboolean on_dark = drawing->view->ground == SQ_GROUND_DARK;
  const double at_foot = on_dark ? 0.6 : 0.26, at_end = on_dark ? 0.2 : 0.07;
  cairo_t *cr = drawing->cairo;
  SqColour dark = sq_ink (drawing->view, SQ_SHADE);
  SqPaperPoint middle = shadow->end[SQ_SHADOW_RAYS / 2];

  cairo_move_to (cr, shadow->edge[0].from.x_mm, shadow->edge[0].from.y_mm);
  for (int i = 0; i < SQ_SHADOW_RAYS; i++)
    cairo_line_to (cr, shadow->end[i].x_mm, shadow->end[i].y_mm);
  cairo_line_to (cr, shadow->edge[1].from.x_mm, shadow->edge[1].from.y_mm);
  cairo_close_path (cr);
  sq_draw_fade (drawing, dark, shadow->foot, at_foot, middle, at_end);
}

void
sq_draw_shadow (SqDrawing *drawing, const SqShadow *shadow)
{
  static const double dash[] = { 0.8, 0.8 };
  cairo_t *cr = drawing->cairo;
  SqColour ink = sq_ink (drawing->view, SQ_INK);

  draw_fill (drawing, shadow);
  for (int side = 0; side < 2; side++) {
    sq_draw_line (drawing, shadow->edge[side].from, shadow->edge[side].to, SQ_PEN_18, ink);
    cairo_move_to (cr, shadow->edge[side].from.x_mm, shadow->edge[side].from.y_mm);
    cairo_line_to (cr, shadow->penumbra[side].x_mm, shadow->penumbra[side].y_mm);
    sq_draw_stroke_dashed (drawing, SQ_PEN_13, ink, dash, G_N_ELEMENTS (dash));
  }
  for (int i = 0; i + 1 < SQ_SHADOW_RAYS; i++)
    if (shadow->climbs[i] && shadow->climbs[i + 1])
      sq_draw_line (drawing, shadow->end[i], shadow->end[i + 1], SQ_PEN_50, ink);
}
