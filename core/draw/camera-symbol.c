/* camera-symbol.c: a camera from above, and its field of view to scale */
#include "draw/camera-symbol.h"

#include "draw/ray-cut.h"

#define BODY_LENGTH_M 0.34
#define BODY_WIDTH_M 0.20
#define LEAST_LENGTH_MM 6.0
#define LEAST_WIDTH_MM 4.6
#define LENS_BACK_MM 1.6
#define LENS_FRONT_MM 1.2
#define LABEL_AIR_MM 0.8

/* Where no wall ends them, edges run on past the frame by this share of its distance; so far where
 * there is no frame. */
#define PAST_FRAME 0.5
#define OPEN_REACH_M 6.0
/* Further away than this no wall ends them. */
#define MOST_REACH_M 60.0
/* A frame that would stand nearer than this is left out. */
#define LEAST_FRAME_MM 4.0

static double
body_length_mm (const SqView *view)
{
  return MAX (BODY_LENGTH_M * view->mm_per_m, LEAST_LENGTH_MM);
}

static double
body_width_mm (const SqView *view)
{
  return MAX (BODY_WIDTH_M * view->mm_per_m, LEAST_WIDTH_MM);
}

SqTurnedBox
sq_camera_outline (const SqView *view, SqPaperPoint at, double azimuth_deg)
{
  double angle = sq_view_angle_rad (azimuth_deg);
  double back = -LENS_BACK_MM - body_length_mm (view);
  return (SqTurnedBox){ .middle = sq_paper_along (at, angle, (back + LENS_FRONT_MM) / 2),
                        .angle_rad = angle,
                        .half_length_mm = (LENS_FRONT_MM - back) / 2,
                        .half_width_mm = body_width_mm (view) / 2 };
}

/* Upright in the body, however that is turned: smaller where it is long, then cut. */
static void
draw_label (SqDrawing *drawing, SqTurnedBox body, const char *label)
{
  SqType type = { .cap_mm = SQ_TYPE_HEAD,
                  .weight = 700,
                  .align = SQ_ALIGN_CENTRE,
                  .colour = sq_ink (drawing->view, SQ_PAPER),
                  .one_line = TRUE };
  double room_mm = 2.0 * sq_turned_box_reach_mm (body, 0.0) - LABEL_AIR_MM;
  if (sq_text_width_mm (drawing, label, &type) > room_mm)
    type.cap_mm = SQ_TYPE_SMALL;
  type.width_mm = room_mm;
  body.middle.y_mm += type.cap_mm / 2;
  sq_draw_text (drawing, body.middle, label, &type);
}

void
sq_draw_camera (SqDrawing *drawing, SqPaperPoint at, double azimuth_deg, const char *label)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK), paper = sq_ink (drawing->view, SQ_PAPER);
  double length = body_length_mm (drawing->view), width = body_width_mm (drawing->view);
  double angle = sq_view_angle_rad (azimuth_deg);
  const SqPaperPoint lens[] = { { -LENS_BACK_MM, -0.3 * width },
                                { LENS_FRONT_MM, -0.46 * width },
                                { LENS_FRONT_MM, 0.46 * width },
                                { -LENS_BACK_MM, 0.3 * width } };
  const double gate = -LENS_BACK_MM - 0.9;

  sq_draw_enter (drawing, at, angle);
  for (int pass = 0; pass < 2; pass++) {
    sq_draw_polyline (drawing, lens, G_N_ELEMENTS (lens), TRUE);
    if (pass == 0)
      sq_draw_fill (drawing, paper, 1.0);
    else
      sq_draw_stroke (drawing, SQ_PEN_50, ink);
  }
  cairo_rectangle (drawing->cairo, -LENS_BACK_MM - length, -width / 2, length, width);
  sq_draw_fill (drawing, ink, 1.0);
  sq_draw_line (drawing, (SqPaperPoint){ gate, -width / 2 + 0.5 },
                (SqPaperPoint){ gate, width / 2 - 0.5 }, SQ_PEN_70, paper);
  sq_draw_leave (drawing);

  SqPaperPoint middle = sq_paper_along (at, angle, -LENS_BACK_MM - 0.58 * length);
  draw_label (drawing, (SqTurnedBox){ middle, angle, 0.42 * length, width / 2 }, label);
}

/* How far down the line of sight a place lies. */
static double
along_m (SqPlace from, double azimuth_rad, SqPlace place)
{
  return (place.x_m - from.x_m) * cos (azimuth_rad) + (place.y_m - from.y_m) * sin (azimuth_rad);
}

static double
frame_distance_m (const SqScene *scene, const SqCamera *camera, SqPlace from, double azimuth_rad)
{
  SqPoint aim;
  if (sq_scene_aim_point (scene, &camera->aim, &aim))
    return along_m (from, azimuth_rad, (SqPlace){ aim.x_m, aim.y_m });

  double best = NAN, least_off = G_MAXDOUBLE;
  for (guint i = 0; i < scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
    double ahead = along_m (from, azimuth_rad, mark->at);
    double off = fabs (along_m (from, azimuth_rad + G_PI / 2, mark->at));
    if (ahead > 0.3 && off / ahead < least_off) {
      least_off = off / ahead;
      best = ahead;
    }
  }
  return best;
}

/* From the middle of the frame outward, as far as walls leave the view to it free. @side: 1 left,
 * -1 right */
static double
seen_of_frame (const SqScene *scene,
               const GArray *blocks,
               const SqCamera *camera,
               double azimuth_rad,
               double half_rad,
               double frame_m,
               int side)
{
  const int steps = 32;
  for (int i = 1; i <= steps; i++) {
    double off = atan ((double)i / steps * tan (half_rad));
    SqVector toward = { cos (azimuth_rad + side * off), sin (azimuth_rad + side * off), 0.0 };
    double away_m = frame_m / cos (off);
    if (sq_ray_cut_m (scene, blocks, camera->at, toward, away_m) < away_m)
      return (i - 1.0) / steps;
  }
  return 1.0;
}

SqCameraField
sq_camera_field (const SqView *view,
                 const SqScene *scene,
                 const GArray *blocks,
                 const SqCamera *camera)
{
  SqVector sight = sq_camera_direction (scene, camera);
  double azimuth = SQ_RADIANS (sq_vector_azimuth_deg (sight));
  SqPlace from = { camera->at.x_m, camera->at.y_m };
  double half = SQ_RADIANS (sq_camera_view_across_deg (camera)) / 2;
  double frame = frame_distance_m (scene, camera, from, azimuth);
  SqCameraField field = { .pupil = sq_view_paper (view, from),
                          .angle_rad = -azimuth,
                          .half_rad = half,
                          .frame_mm = frame * view->mm_per_m };

  double framed_m = frame > 0.0 ? frame / cos (half) : 0.0; /* along an edge */
  double open_m = framed_m > 0.0 ? framed_m * (1.0 + PAST_FRAME) : OPEN_REACH_M;
  for (int edge = 0; edge < 2; edge++) {
    double turned = azimuth + (edge == 0 ? half : -half);
    /* Level, at the lens: what it would see were it not tilted. */
    SqVector toward = { cos (turned), sin (turned), 0.0 };
    double wall_m = sq_sight_cut_m (scene, blocks, camera->at, toward, framed_m, MOST_REACH_M);
    field.seen[edge] = framed_m > 0.0 ? seen_of_frame (scene, blocks, camera, azimuth, half, frame,
                                                       edge == 0 ? 1 : -1)
                                      : 0.0;
    field.reach_mm[edge] = (wall_m < MOST_REACH_M ? wall_m : open_m) * view->mm_per_m;
  }
  return field;
}

SqPaperPoint
sq_camera_edge_at (const SqCameraField *field, int edge, double along_mm)
{
  double turned = field->angle_rad + (edge == 0 ? -field->half_rad : field->half_rad);
  return sq_paper_along (field->pupil, turned, along_mm / cos (field->half_rad));
}

/* Its corners where the frame's edge is seen; dotted between them, as far as walls allow. */
static void
draw_bracket (SqDrawing *drawing, const SqCameraField *field)
{
  static const double dots[] = { 0.5, 0.9 };
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double half = field->frame_mm * tan (field->half_rad), corner = MIN (2.4, half);

  sq_draw_enter (drawing, field->pupil, field->angle_rad);
  for (int edge = 0; edge < 2; edge++) {
    int side = edge == 0 ? -1 : 1; /* left of the view is up in its frame */
    if (field->seen[edge] < 1.0)
      continue;
    cairo_move_to (drawing->cairo, field->frame_mm, side * (half - corner));
    cairo_line_to (drawing->cairo, field->frame_mm, side * half);
    cairo_line_to (drawing->cairo, field->frame_mm - corner * cos (field->half_rad),
                   side * (half - corner * sin (field->half_rad)));
  }
  sq_draw_stroke (drawing, SQ_PEN_35, ink);
  cairo_move_to (drawing->cairo, field->frame_mm, -half * field->seen[0]);
  cairo_line_to (drawing->cairo, field->frame_mm, half * field->seen[1]);
  sq_draw_stroke_dashed (drawing, SQ_PEN_13, ink, dots, G_N_ELEMENTS (dots));
  sq_draw_leave (drawing);
}

void
sq_draw_camera_field (SqDrawing *drawing, const SqCameraField *field, gboolean active)
{
  static const double near_dash[] = { 6.0, 1.5 }, far_dash[] = { 2.0, 1.5 };
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  gboolean framed = field->frame_mm >= LEAST_FRAME_MM; /* not where NAN */

  for (int edge = 0; edge < 2; edge++) {
    double wall = field->reach_mm[edge] * cos (field->half_rad);
    double to = framed ? MIN (field->frame_mm, wall) : wall;
    SqPaperPoint from = sq_camera_edge_at (field, edge, LENS_FRONT_MM);
    SqPaperPoint middle = sq_camera_edge_at (field, edge, MAX (to, LENS_FRONT_MM));
    SqPaperPoint end = sq_camera_edge_at (field, edge, wall);

    cairo_move_to (drawing->cairo, from.x_mm, from.y_mm);
    cairo_line_to (drawing->cairo, middle.x_mm, middle.y_mm);
    sq_draw_stroke_dashed (drawing, active ? SQ_PEN_25 : SQ_PEN_18, ink, near_dash, 2);
    if (active && wall > to) {
      cairo_move_to (drawing->cairo, middle.x_mm, middle.y_mm);
      cairo_line_to (drawing->cairo, end.x_mm, end.y_mm);
      sq_draw_stroke_dashed (drawing, SQ_PEN_13, ink, far_dash, 2);
    }
  }
  if (framed)
    draw_bracket (drawing, field);
}
