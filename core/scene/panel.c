/* panel.c: the fields of a panel, and its frame */
#include "scene/panel.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqPanel, member)
static const char *const panel_words[] = { "flag", "net", "diffusion", "bounce", NULL };
static const SqField panel_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name in references and looks.") },
  { "kind", N_ ("Kind"), &sq_value_word, AT (kind), .words = panel_words, .flags = SQ_REQUIRED,
    .help = N_ ("A flag blocks; a net passes some; diffusion passes some and re-emits; a bounce re-emits.") },
  { "at", N_ ("Place"), &sq_value_point, AT (at), SQ_COORDINATES,
    .flags = SQ_REQUIRED | SQ_PER_LOOK, .help = N_ ("Its centre.") },
  { "facing", N_ ("Facing"), &sq_value_number, AT (facing_deg), SQ_ANGLE, SQ_RANGE (-360, 360),
    .flags = SQ_PER_LOOK, .help = N_ ("Page azimuth of its normal.") },
  { "tilt", N_ ("Tilt"), &sq_value_number, AT (tilt_deg), SQ_ANGLE, SQ_RANGE (-90, 90),
    .flags = SQ_PER_LOOK, .help = N_ ("Elevation of its normal above the horizontal.") },
  { "roll", N_ ("Roll"), &sq_value_number, AT (roll_deg), SQ_ANGLE, SQ_RANGE (-360, 360),
    SQ_USUAL (-90, 90), .flags = SQ_PER_LOOK, .help = N_ ("Turns it about its normal, right-handed.") },
  { "width", N_ ("Width"), &sq_value_number, AT (width_m), SQ_LENGTH, SQ_RANGE (0, 50),
    SQ_USUAL (0.1, 6.1), .flags = SQ_REQUIRED | SQ_ABOVE_MIN, .help = N_ ("Level side.") },
  { "height", N_ ("Height"), &sq_value_number, AT (height_m), SQ_LENGTH, SQ_RANGE (0, 50),
    SQ_USUAL (0.1, 6.1), .flags = SQ_REQUIRED | SQ_ABOVE_MIN, .help = N_ ("The other side.") },
  { "material", N_ ("Material"), &sq_value_reference, AT (material), .names = SQ_NAMES_MATERIAL,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("The cloth or board; only a flag may do without.") },
  { "role", N_ ("Role"), &sq_value_word, AT (role), .words = sq_role_words, .initial = -1,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("Of what it gives off; null: that of the lamp that lights it.") },
  { "mount", N_ ("Mount"), &sq_value_word, AT (mount), .words = sq_mount_words,
    .help = N_ ("What holds it.") },
  { "stand", N_ ("Stand"), &sq_value_reference, AT (stand), .names = SQ_NAMES_STAND,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("A row of the stands table; null: chosen by spigot, height and load.") },
  { "set", N_ ("In place"), &sq_value_flag, AT (set), .initial = TRUE, .flags = SQ_PER_LOOK,
    .help = N_ ("Off: struck, for instance in a look.") },
  SQ_COMMON_ROWS,
};
#undef AT
/* clang-format on */

const SqKind sq_panel_kind = {
  .name = N_ ("panel"),
  .size = sizeof (SqPanel),
  SQ_FIELDS (panel_fields),
  .names = SQ_NAMES_PANEL,
  .help = N_ ("Free-standing grip. Both sides act."),
};

SqFrame
sq_panel_frame (const SqPanel *panel)
{
  double facing = SQ_RADIANS (panel->facing_deg);
  SqVector n = sq_vector_toward (panel->facing_deg, panel->tilt_deg);
  SqVector u = sq_vector (-sin (facing), cos (facing), 0.0);
  SqVector v = sq_vector_cross (n, u);
  double c = cos (SQ_RADIANS (panel->roll_deg)), s = sin (SQ_RADIANS (panel->roll_deg));
  /* n × u = v and n × v = -u: a right-handed turn about n. */
  return (SqFrame){
    .forward = n,
    .right = sq_vector_sum (sq_vector_scale (u, c), sq_vector_scale (v, s)),
    .up = sq_vector_sum (sq_vector_scale (v, c), sq_vector_scale (u, -s)),
  };
}
