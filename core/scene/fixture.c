/* fixture.c: the fields of a lamp and its modifiers, its frame and its roles */
#include "scene/fixture.h"

#include <glib/gi18n-lib.h>

const char *const sq_role_words[] = { "key",   "fill",       "back",      "side",   "top",
                                      "under", "background", "practical", "effect", NULL };
const char *const sq_mount_words[] = { "stand", "floor", "wall", "ceiling", "pipe",
                                       "boom",  "lift",  "hand", "set",     NULL };
const char *const sq_line_words[] = {
  "L1", "L2", "L3", "L1-L2", "L2-L3", "L1-L3", "L1-L2-L3", NULL
};

/* clang-format off */
#define AT(member) offsetof (SqModifier, member)
#define ONLY(kind) (1u << SQ_MODIFIER_##kind)
static const char *const modifier_words[] = { "scrim", "gel", "diffusion", "softbox", "egg-crate", "snoot", "doors", NULL };
static const char *const part_words[] = { "full", "top", "bottom", NULL };
static const char *const shape_words[] = { "disc", "rect", NULL };
static const SqField modifier_fields[] = {
  { "kind", N_ ("Kind"), &sq_value_word, AT (kind), .words = modifier_words,
    .flags = SQ_REQUIRED | SQ_SAYS_VARIANT, .help = N_ ("What hangs on the lamp.") },
  { "stops", N_ ("Stops"), &sq_value_number, AT (stops), SQ_STOPS, SQ_RANGE (0, 4),
    SQ_USUAL (0.5, 1), .initial = 1, .variants = ONLY (SCRIM), .flags = SQ_ABOVE_MIN,
    .help = N_ ("What it takes away: 0.5 single, 1 double.") },
  { "part", N_ ("Part"), &sq_value_word, AT (part), .words = part_words, .variants = ONLY (SCRIM),
    .help = N_ ("Whole, or the half that acts on what goes up or down.") },
  { "material", N_ ("Material"), &sq_value_reference, AT (material), .names = SQ_NAMES_MATERIAL,
    .variants = ONLY (GEL) | ONLY (DIFFUSION) | ONLY (SOFTBOX), .flags = SQ_REQUIRED,
    .help = N_ ("The gel or cloth.") },
  { "shape", N_ ("Shape"), &sq_value_word, AT (shape), .words = shape_words, .initial = SQ_SHAPE_RECT,
    .variants = ONLY (SOFTBOX), .help = N_ ("Of the front cloth.") },
  { "width", N_ ("Width"), &sq_value_number, AT (width_m), SQ_LENGTH, SQ_RANGE (0, 20),
    SQ_USUAL (0.3, 2), .variants = ONLY (SOFTBOX), .flags = SQ_REQUIRED | SQ_ABOVE_MIN,
    .help = N_ ("Of the front cloth; a disc's diameter.") },
  { "height", N_ ("Height"), &sq_value_number, AT (height_m), SQ_LENGTH, SQ_RANGE (0, 20),
    SQ_USUAL (0.3, 2), .variants = ONLY (SOFTBOX), .flags = SQ_REQUIRED | SQ_ABOVE_MIN,
    .help = N_ ("Of the front cloth; a disc's diameter.") },
  { "depth", N_ ("Depth"), &sq_value_number, AT (depth_m), SQ_LENGTH, SQ_RANGE (0, 5),
    SQ_USUAL (0.2, 1), .initial = 0.4, .variants = ONLY (SOFTBOX), .help = N_ ("From the lamp to the front cloth.") },
  { "cutoff_deg", N_ ("Cut-off"), &sq_value_number, AT (cutoff_deg), SQ_ANGLE, SQ_RANGE (0, 90),
    SQ_USUAL (10, 60), .variants = ONLY (EGG_CRATE) | ONLY (SNOOT),
    .flags = SQ_REQUIRED | SQ_ABOVE_MIN | SQ_BELOW_MAX,
    .help = N_ ("Half-angle past which nothing passes; of a cell, its tangent is width / depth.") },
  { "transmission", N_ ("Transmission"), &sq_value_number, AT (transmission), SQ_FRACTION,
    SQ_RANGE (0, 1), .initial = 0.7, .variants = ONLY (EGG_CRATE), .help = N_ ("What passes straight on.") },
  { "leaves", N_ ("Leaves"), &sq_value_numbers, AT (leaves_deg), SQ_ANGLE, SQ_RANGE (-60, 180),
    .initial_json = "[90, 90, 90, 90]", .count = SQ_LEAVES, .variants = ONLY (DOORS),
    .help = N_ ("Top, right, bottom, left from behind the lamp: 90 open, 0 straight ahead, negative folded in.") },
};
#undef AT
#undef ONLY

#define AT(member) offsetof (SqFixture, member)
static const SqField fixture_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name in references and looks.") },
  { "number", N_ ("Unit"), &sq_value_text, AT (number),
    .help = N_ ("The unit number on the plan: 7, 12A; none: its id.") },
  { "class", N_ ("Class"), &sq_value_reference, AT (class_id), .names = SQ_NAMES_CLASS,
    .flags = SQ_REQUIRED, .help = N_ ("What lamp it is.") },
  { "at", N_ ("Place"), &sq_value_point, AT (at), SQ_COORDINATES,
    .flags = SQ_REQUIRED | SQ_PER_LOOK, .help = N_ ("Centre of the emitting face.") },
  { "aim", N_ ("Aim"), &sq_value_aim, AT (aim), SQ_COORDINATES, .names = SQ_NAMES_ANYTHING_PLACED,
    .flags = SQ_MAY_BE_NULL | SQ_PER_LOOK,
    .help = N_ ("A point, or the id of anything (a mark: its face); null: straight down.") },
  { "roll", N_ ("Roll"), &sq_value_number, AT (roll_deg), SQ_ANGLE, SQ_RANGE (-360, 360),
    SQ_USUAL (-90, 90), .help = N_ ("Turns the face about the aim, right-handed.") },
  { "beam", N_ ("Beam"), &sq_value_number, AT (beam), SQ_FRACTION, SQ_RANGE (0, 1), .initial = 1,
    .flags = SQ_PER_LOOK, .help = N_ ("0 spot to 1 flood, where the lamp has both.") },
  { "on", N_ ("On"), &sq_value_flag, AT (on), .initial = TRUE, .flags = SQ_PER_LOOK,
    .help = N_ ("Burning.") },
  { "level", N_ ("Level"), &sq_value_number, AT (level), SQ_FRACTION, SQ_RANGE (0, 1),
    .initial = 1, .flags = SQ_PER_LOOK, .help = N_ ("Fraction of its light, not of voltage.") },
  { "follows", N_ ("Follows"), &sq_value_flag, AT (follows),
    .help = N_ ("The level is kept at what its role is wanted to give until a hand sets it.") },
  { "trim_stops", N_ ("Trim"), &sq_value_number, AT (trim_stops), SQ_STOPS, SQ_RANGE (-10, 10),
    SQ_USUAL (-2, 2), .flags = SQ_PER_LOOK,
    .help = N_ ("What a meter on set read against the computed light.") },
  { "cct", N_ ("Colour temperature"), &sq_value_number, AT (cct_k), SQ_TEMPERATURE,
    SQ_RANGE (1000, 40000), SQ_USUAL (2700, 6500), .initial = NAN,
    .flags = SQ_MAY_BE_NULL | SQ_PER_LOOK, .help = N_ ("Where the class can vary it; null: as it comes.") },
  { "tint", N_ ("Tint"), &sq_value_numbers, AT (tint), SQ_PLAIN, SQ_RANGE (0, 1), .count = 2,
    .flags = SQ_MAY_BE_NULL | SQ_PER_LOOK, .help = N_ ("CIE 1931 x, y of a colour lamp; null: white.") },
  { "role", N_ ("Role"), &sq_value_word, AT (role), .words = sq_role_words,
    .help = N_ ("What it is for.") },
  { "role_at", N_ ("Role at a mark"), &sq_value_role_at, AT (role_at), .words = sq_role_words,
    .names = SQ_NAMES_MARK, .help = N_ ("Mark by mark, where it plays another part (cross keys).") },
  { "motive", N_ ("Motive"), &sq_value_reference, AT (motive),
    .names = SQ_NAMES_ANYTHING_PLACED | SQ_NAMES_DAYLIGHT, .flags = SQ_MAY_BE_NULL, .help = N_ ("What the audience takes this light to come from; also sun or sky.") },
  { "motive_text", N_ ("Motive in words"), &sq_value_text, AT (motive_text),
    .help = N_ ("The same where nothing on the plan stands for it: moon, street.") },
  { "mount", N_ ("Mount"), &sq_value_word, AT (mount), .words = sq_mount_words,
    .help = N_ ("What holds it.") },
  { "stand", N_ ("Stand"), &sq_value_reference, AT (stand), .names = SQ_NAMES_STAND,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("A row of the stands table; null: chosen by spigot, height and load.") },
  { "modifiers", N_ ("Modifiers"), &sq_value_list, AT (modifiers), .of = &sq_modifier_kind,
    .flags = SQ_PER_LOOK, .help = N_ ("In order from the lamp outward, each acting on what the one before left.") },
  { "supply", N_ ("Supply"), &sq_value_reference, AT (supply), .names = SQ_NAMES_SUPPLY,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("What feeds it.") },
  { "line", N_ ("Line"), &sq_value_word, AT (line), .words = sq_line_words, .initial = SQ_LINE_NONE,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("Which line or lines it hangs on.") },
  { "circuit", N_ ("Circuit"), &sq_value_text, AT (circuit), .help = N_ ("Of the distribution.") },
  { "channel", N_ ("Channel"), &sq_value_count, AT (channel), SQ_PLAIN, SQ_RANGE (0, 99999),
    .help = N_ ("On the board; 0: none.") },
  { "universe", N_ ("Universe"), &sq_value_count, AT (universe), SQ_PLAIN, SQ_RANGE (0, 63999),
    .help = N_ ("Of the data; 0: none.") },
  { "address", N_ ("Address"), &sq_value_count, AT (address), SQ_PLAIN, SQ_RANGE (0, 512),
    .help = N_ ("First slot, 1 to 512; 0: none.") },
  { "mode", N_ ("Mode"), &sq_value_text, AT (mode), .help = N_ ("Name of one of the class's modes.") },
  SQ_COMMON_ROWS,
};
#undef AT
/* clang-format on */

const SqKind sq_modifier_kind = {
  .name = N_ ("modifier"),
  .size = sizeof (SqModifier),
  SQ_FIELDS (modifier_fields),
  .help = N_ ("What hangs on a lamp: scrims, gels, cloth, crates, snoots, doors."),
};

const SqKind sq_fixture_kind = {
  .name = N_ ("fixture"),
  .size = sizeof (SqFixture),
  SQ_FIELDS (fixture_fields),
  .names = SQ_NAMES_FIXTURE,
  .help = N_ ("A lamp. Its body and stand block no light; its own doors do."),
};

SqRole
sq_fixture_role_at (const SqFixture *fixture, const char *mark_id)
{
  for (guint i = 0; i < fixture->role_at->len; i++) {
    const SqRoleAt *entry = g_ptr_array_index (fixture->role_at, i);
    if (g_str_equal (entry->mark, mark_id))
      return (SqRole)entry->role;
  }
  return (SqRole)fixture->role;
}

SqFrame
sq_frame (SqVector forward, double roll_deg)
{
  SqFrame frame = { .forward = sq_vector_unit (forward) };
  SqVector right = sq_vector_cross (frame.forward, sq_vector (0, 0, 1));
  /* Within a millionth of vertical the cross product is noise: page +x by the contract. */
  frame.right = sq_vector_length (right) > 1e-6 ? sq_vector_unit (right) : sq_vector (1, 0, 0);
  frame.up = sq_vector_unit (sq_vector_cross (frame.right, frame.forward));
  if (roll_deg != 0.0) {
    double c = cos (SQ_RADIANS (roll_deg)), s = sin (SQ_RADIANS (roll_deg));
    SqVector r = frame.right, u = frame.up;
    SqVector about = sq_vector_cross (frame.forward, r); /* right-handed about forward */
    frame.right = sq_vector_sum (sq_vector_scale (r, c), sq_vector_scale (about, s));
    about = sq_vector_cross (frame.forward, u);
    frame.up = sq_vector_sum (sq_vector_scale (u, c), sq_vector_scale (about, s));
  }
  return frame;
}
