/* shadow.c: the shadow that somebody throws on the floor */
#include "draw/shadow.h"

#include "draw/beam-angles.h"

/* A lamp no higher than the figure throws it without end: so far it is drawn. */
#define MOST_LENGTH_M 12.0
#define LEAST_LENGTH_M 0.3

/* Of the crown over the eyes (common practice). */
#define CROWN_M 0.11

/* A ray may end this much short of the face and still reach it. */
#define REACHED_M 0.01

static gboolean
lights (const SqScene *scene, const GArray *blocks, const SqFixture *fixture, SqPoint face)
{
  double half, tenth;
  if (!fixture->on || !sq_fixture_is_hard (scene, fixture) ||
      !sq_fixture_beam_deg (scene, fixture, &half, &tenth))
    return FALSE;
  SqVector ray = sq_vector_between (fixture->at, face);
  double distance = sq_vector_length (ray);
  double along = sq_vector_dot (ray, sq_fixture_frame (scene, fixture).forward) / distance;
  if (SQ_DEGREES (acos (CLAMP (along, -1.0, 1.0))) > half / 2)
    return FALSE;
  /* Through cloth its shadow has no edge left. */
  if (sq_frame_on_the_way_m (scene, fixture->at, ray) > 0.0)
    return FALSE;
  return sq_ray_cut_m (scene, blocks, fixture->at, ray, distance) > distance - REACHED_M;
}

/* One edge, a tangent to the figure on the plan: on to @length_m past it, or to a wall. */
static SqPaperLine
tangent (const SqView *view,
         const SqScene *scene,
         const GArray *blocks,
         SqPlace lamp,
         double azimuth_rad,
         double touch_m,
         double length_m,
         double floor_m)
{
  SqVector ray = { cos (azimuth_rad), sin (azimuth_rad), 0.0 };
  SqPoint from = { lamp.x_m + touch_m * ray.x, lamp.y_m + touch_m * ray.y, floor_m + 0.05 };
  double reach = sq_ray_cut_m (scene, blocks, from, ray, length_m);
  SqPlace end = { from.x_m + reach * ray.x, from.y_m + reach * ray.y };
  return (SqPaperLine){ sq_view_paper (view, (SqPlace){ from.x_m, from.y_m }),
                        sq_view_paper (view, end) };
}

SqShadow
sq_shadow (const SqView *view,
           const SqScene *scene,
           const GArray *blocks,
           const SqFixture *fixture,
           const SqMark *mark)
{
  const SqClass *lamp_class = sq_scene_class (scene, fixture->class_id);
  SqShadow shadow = { .foot = sq_view_paper (view, mark->at) };
  SqPoint face = sq_mark_face (mark);
  SqPlace lamp = { fixture->at.x_m, fixture->at.y_m };
  double away = sq_place_distance_m (lamp, mark->at);
  if (mark->posture == SQ_POSTURE_LIE || away <= 2.0 * SQ_FIGURE_RADIUS_M ||
      !lights (scene, blocks, fixture, face))
    return shadow;

  double crown = face.z_m + CROWN_M, height = crown - mark->floor_m;
  double length = MOST_LENGTH_M;
  if (fixture->at.z_m > crown) /* by the intercept theorem */
    length = MIN (length, away * height / (fixture->at.z_m - crown));
  if (length < LEAST_LENGTH_M)
    return shadow;

  double azimuth = atan2 (mark->at.y_m - lamp.y_m, mark->at.x_m - lamp.x_m);
  double half = asin (SQ_FIGURE_RADIUS_M / away), touch = away * cos (half);
  double source_m = lamp_class->face != NULL ? lamp_class->face->width_m : 0.0;
  shadow.any = TRUE;
  for (int side = 0; side < 2; side++) {
    double turned = azimuth + (side == 0 ? half : -half);
    shadow.edge[side] = tangent (view, scene, blocks, lamp, turned, touch, length, mark->floor_m);
    /* Seen from the figure's edge the source is as wide behind as before it. */
    double drawn = sq_paper_distance_mm (shadow.edge[side].from, shadow.edge[side].to);
    double wide = drawn * source_m / away / 2;
    shadow.penumbra[side] =
      sq_paper_along (shadow.edge[side].to, -turned + (side == 0 ? -G_PI / 2 : G_PI / 2), wide);
  }
  return shadow;
}

gboolean
sq_camera_sees_shadow (const SqCameraField *field, const SqShadow *shadow)
{
  SqPaperPoint middle = { (shadow->edge[0].to.x_mm + shadow->foot.x_mm) / 2,
                          (shadow->edge[0].to.y_mm + shadow->foot.y_mm) / 2 };
  double dx = middle.x_mm - field->pupil.x_mm, dy = middle.y_mm - field->pupil.y_mm;
  double along = dx * cos (field->angle_rad) + dy * sin (field->angle_rad);
  double across = -dx * sin (field->angle_rad) + dy * cos (field->angle_rad);
  return along > 0.0 && fabs (across) <= along * tan (field->half_rad);
}

void
sq_draw_shadow (SqDrawing *drawing, const SqShadow *shadow)
{
  static const double dash[] = { 0.8, 0.8 };
  cairo_t *cr = drawing->cairo;
  SqColour dark = sq_colour_hex (0x141719), ink = sq_ink (drawing->view, SQ_INK);
  const SqPaperPoint corners[] = { shadow->edge[0].from, shadow->edge[0].to, shadow->edge[1].to,
                                   shadow->edge[1].from };
  const SqPaperPoint end = { (shadow->edge[0].to.x_mm + shadow->edge[1].to.x_mm) / 2,
                             (shadow->edge[0].to.y_mm + shadow->edge[1].to.y_mm) / 2 };

  sq_draw_polyline (drawing, corners, G_N_ELEMENTS (corners), TRUE);
  sq_draw_fade (drawing, dark, shadow->foot, 0.26, end, 0.07);

  for (int side = 0; side < 2; side++) {
    sq_draw_line (drawing, shadow->edge[side].from, shadow->edge[side].to, SQ_PEN_18, ink);
    cairo_move_to (cr, shadow->edge[side].from.x_mm, shadow->edge[side].from.y_mm);
    cairo_line_to (cr, shadow->penumbra[side].x_mm, shadow->penumbra[side].y_mm);
    sq_draw_stroke_dashed (drawing, SQ_PEN_13, ink, dash, G_N_ELEMENTS (dash));
  }
}
