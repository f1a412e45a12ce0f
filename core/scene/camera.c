/* camera.c: the fields of a camera, its view and its exposure time */
#include "scene/camera.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqCamera, member)
static const SqField camera_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name in references and looks.") },
  { "label", N_ ("Label"), &sq_value_text, AT (label),
    .help = N_ ("The sign on the plan: 1, 2…; none: its id.") },
  { "at", N_ ("Place"), &sq_value_point, AT (at), SQ_COORDINATES, .flags = SQ_REQUIRED,
    .help = N_ ("Of the lens.") },
  { "aim", N_ ("Aim"), &sq_value_aim, AT (aim), SQ_COORDINATES,
    .names = SQ_NAMES_ANYTHING_PLACED, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("A point, or the id of anything (a mark: its face); null: level, up the page.") },
  { "focal_mm", N_ ("Focal length"), &sq_value_number, AT (focal_mm),
    SQ_MILLIMETRES, SQ_RANGE (1, 5000), SQ_USUAL (12, 200), .initial = 35,
    .help = N_ ("Of the lens as marked; a squeezing lens sees wider across.") },
  { "gate_mm", N_ ("Gate"), &sq_value_numbers, AT (gate_mm), SQ_MILLIMETRES, SQ_RANGE (1, 200),
    .initial_json = "[24.89, 18.66]", .count = 2,
    .help = N_ ("Width and height of what is exposed; Super 35, four perforations, unless said.") },
  { "squeeze", N_ ("Squeeze"), &sq_value_number, AT (squeeze), SQ_PLAIN, SQ_RANGE (1, 3),
    .initial = 1, .help = N_ ("Of an anamorphic lens; 1: none.") },
  { "aspect", N_ ("Aspect"), &sq_value_number, AT (aspect), SQ_PLAIN, SQ_RANGE (0.1, 10),
    SQ_USUAL (1, 2.4), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Width : height of the picture kept; null: the whole gate.") },
  { "t_stop", N_ ("Stop"), &sq_value_number, AT (t_stop), SQ_T_STOP, SQ_RANGE (0.5, 128),
    SQ_USUAL (1.2, 22), .initial = 2.8, .help = N_ ("The set stop.") },
  { "iso", N_ ("ISO"), &sq_value_number, AT (iso), SQ_PLAIN, SQ_RANGE (1, 1e6),
    SQ_USUAL (50, 6400), .initial = 800, .help = N_ ("Exposure index.") },
  { "fps", N_ ("Frames a second"), &sq_value_number, AT (fps), SQ_FRAME_RATE,
    SQ_RANGE (0.01, 100000), SQ_USUAL (1, 120), .initial = 24, .help = N_ ("Frame rate.") },
  { "shutter_deg", N_ ("Shutter"), &sq_value_number, AT (shutter_deg), SQ_ANGLE,
    SQ_RANGE (0, 360), SQ_USUAL (11.25, 360), .initial = 180, .flags = SQ_ABOVE_MIN,
    .help = N_ ("Shutter angle.") },
  { "nd_stops", N_ ("ND"), &sq_value_number, AT (nd_stops), SQ_STOPS, SQ_RANGE (0, 30),
    SQ_USUAL (0, 7), .help = N_ ("Neutral density before the lens.") },
  { "white_k", N_ ("White"), &sq_value_number, AT (white_k), SQ_TEMPERATURE, SQ_RANGE (1000, 40000),
    SQ_USUAL (2700, 7500), .initial = 5600, .help = N_ ("Colour temperature it takes for white.") },
  SQ_COMMON_ROWS,
};
#undef AT
/* clang-format on */

const SqKind sq_camera_kind = {
  .name = N_ ("camera"),
  .size = sizeof (SqCamera),
  SQ_FIELDS (camera_fields),
  .names = SQ_NAMES_CAMERA,
  .help = N_ ("A camera. The first is active unless a look names another."),
};

void
sq_camera_frame_mm (const SqCamera *camera, double *width_mm, double *height_mm)
{
  double width = camera->gate_mm[0], height = camera->gate_mm[1];
  if (!isnan (camera->aspect)) {
    double on_gate = camera->aspect / camera->squeeze;
    if (width / height > on_gate)
      width = height * on_gate;
    else
      height = width / on_gate;
  }
  *width_mm = width;
  *height_mm = height;
}

double
sq_camera_view_across_deg (const SqCamera *camera)
{
  double width_mm, height_mm;
  sq_camera_frame_mm (camera, &width_mm, &height_mm);
  return SQ_DEGREES (2.0 * atan (width_mm * camera->squeeze / (2.0 * camera->focal_mm)));
}

double
sq_camera_view_up_deg (const SqCamera *camera)
{
  double width_mm, height_mm;
  sq_camera_frame_mm (camera, &width_mm, &height_mm);
  return SQ_DEGREES (2.0 * atan (height_mm / (2.0 * camera->focal_mm)));
}

double
sq_camera_exposure_s (const SqCamera *camera)
{
  return camera->shutter_deg / (360.0 * camera->fps);
}
