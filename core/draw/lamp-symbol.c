/* lamp-symbol.c: a lamp on the plan, put together from its parts */
#include "draw/lamp-symbol.h"

#include "draw/lamp-parts.h"

SqLamp
sq_lamp_of_fixture (const SqScene *scene, const SqFixture *fixture, const SqView *view)
{
  SqFrame frame = sq_fixture_frame (scene, fixture);
  const SqStand *stand =
    fixture->stand != NULL ? sq_library_stand (scene->library, fixture->stand) : NULL;
  SqLamp lamp = {
    .lamp_class = sq_scene_class (scene, fixture->class_id),
    .fixture = fixture,
    .at = sq_view_paper (view, (SqPlace){ fixture->at.x_m, fixture->at.y_m }),
    .elevation_deg = sq_vector_elevation_deg (frame.forward),
    .roll_deg = fixture->roll_deg,
    .with_mount = TRUE,
    .legs_radius_m = stand != NULL                     ? stand->footprint_m / 2
                     : fixture->mount == SQ_MOUNT_LIFT ? SQ_LIFT_RADIUS_M
                                                       : SQ_LEGS_RADIUS_M,
  };
  gboolean upright = fabs (lamp.elevation_deg) >= 90.0 - SQ_LAMP_UPRIGHT_DEG;
  lamp.azimuth_deg = sq_vector_azimuth_deg (upright ? frame.up : frame.forward);
  return lamp;
}

/* Where the middle of the body lies along the throw. */
static double
body_middle_mm (const SqLampSize *size)
{
  return size->form == SQ_FORM_AIMED ? -size->skirt_mm - size->depth_mm / 2 : 0.0;
}

double
sq_lamp_reach_mm (const SqView *view, const SqLamp *lamp)
{
  SqLampSize size = sq_lamp_size (view, lamp);
  if (size.form == SQ_FORM_ROUND)
    return size.width_mm / 2;
  if (size.form != SQ_FORM_AIMED)
    return size.depth_mm / 2;
  return sq_draw_lamp_modifiers (NULL, lamp->fixture, size.face_mm, size.front_mm);
}

SqTurnedBox
sq_lamp_body (const SqView *view, const SqLamp *lamp)
{
  SqLampSize size = sq_lamp_size (view, lamp);
  double angle = sq_view_angle_rad (lamp->azimuth_deg);
  return (SqTurnedBox){ .middle = sq_paper_along (lamp->at, angle, body_middle_mm (&size)),
                        .angle_rad = angle,
                        .half_length_mm = size.depth_mm / 2,
                        .half_width_mm = size.width_mm / 2 };
}

SqTurnedBox
sq_lamp_outline (const SqView *view, const SqLamp *lamp)
{
  SqLampSize size = sq_lamp_size (view, lamp);
  double ahead = sq_lamp_reach_mm (view, lamp);
  double behind = body_middle_mm (&size) - size.depth_mm / 2;
  double angle = sq_view_angle_rad (lamp->azimuth_deg);
  double width = size.width_mm;

  if (lamp->lamp_class->source == SQ_SOURCE_FLUORESCENT && size.form != SQ_FORM_ROUND)
    behind -= SQ_LAMP_PINS_MM;
  if (size.form == SQ_FORM_AIMED && (size.skirt_mm > 0.0 || ahead > size.front_mm))
    width = MAX (width, size.face_mm + (ahead > size.front_mm ? 2.0 : 0.0));
  return (SqTurnedBox){ .middle = sq_paper_along (lamp->at, angle, (ahead + behind) / 2),
                        .angle_rad = angle,
                        .half_length_mm = (ahead - behind) / 2,
                        .half_width_mm = width / 2 };
}

static void
draw_held (SqDrawing *drawing, const SqLamp *lamp, const SqLampSize *size, gboolean over)
{
  SqMountGlyph glyph = sq_mount_glyph (lamp->fixture->mount);
  double middle = body_middle_mm (size);

  sq_draw_enter (drawing, (SqPaperPoint){ middle, 0 }, 0.0);
  if (!over)
    sq_draw_mount (drawing, glyph, size->width_mm, size->depth_mm,
                   lamp->legs_radius_m * drawing->view->mm_per_m);
  else if ((glyph == SQ_GLYPH_HUNG || glyph == SQ_GLYPH_BOOM) && size->form == SQ_FORM_AIMED) {
    /* the clamp, on top of the body */
    sq_draw_box_path (drawing, sq_paper_box_round ((SqPaperPoint){ 0, 0 }, 0.65, 0.65), 0.0);
    sq_draw_fill (drawing, sq_ink (drawing->view, SQ_INK), 1.0);
  }
  sq_draw_leave (drawing);
}

void
sq_draw_lamp (SqDrawing *drawing, const SqLamp *lamp)
{
  SqLampSize size = sq_lamp_size (drawing->view, lamp);
  gboolean held =
    lamp->with_mount && lamp->fixture != NULL && lamp->lamp_class->optics != SQ_OPTICS_BULB;

  sq_draw_enter (drawing, lamp->at, sq_view_angle_rad (lamp->azimuth_deg));
  if (held)
    draw_held (drawing, lamp, &size, FALSE);
  switch (size.form) {
  case SQ_FORM_AIMED:
    sq_draw_lamp_aimed (drawing, lamp, &size);
    sq_draw_lamp_modifiers (drawing, lamp->fixture, size.face_mm, size.front_mm);
    break;
  case SQ_FORM_DOWN:
  case SQ_FORM_UP:
    sq_draw_lamp_upright (drawing, lamp, &size);
    break;
  case SQ_FORM_ROUND:
  default:
    sq_draw_lamp_round (drawing, lamp, &size);
    break;
  }
  if (held)
    draw_held (drawing, lamp, &size, TRUE);
  sq_draw_leave (drawing);
}
