/* lamp-class.c: the fields of a lamp class */
#include "scene/lamp-class.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
static const char *const shape_words[] = { "disc", "rect", NULL };

#define AT(member) offsetof (SqFace, member)
static const SqField face_fields[] = {
  { "shape", N_ ("Shape"), &sq_value_word, AT (shape), .words = shape_words,
    .help = N_ ("Of what gives the light.") },
  { "width", N_ ("Width"), &sq_value_number, AT (width_m), SQ_LENGTH, SQ_RANGE (0, 50),
    SQ_USUAL (0, 2), .flags = SQ_REQUIRED, .help = N_ ("To the sides; a disc's diameter; a tube's length; 0: a point.") },
  { "height", N_ ("Height"), &sq_value_number, AT (height_m), SQ_LENGTH, SQ_RANGE (0, 50),
    SQ_USUAL (0, 2), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Upward; a tube's diameter; null: as wide.") },
};
#undef AT

#define AT(member) offsetof (SqBody, member)
static const SqField body_fields[] = {
  { "width", N_ ("Width"), &sq_value_number, AT (width_m), SQ_LENGTH, SQ_RANGE (0, 50),
    SQ_USUAL (0.05, 2), .initial = 0.25, .help = N_ ("To the sides.") },
  { "depth", N_ ("Depth"), &sq_value_number, AT (depth_m), SQ_LENGTH, SQ_RANGE (0, 50),
    SQ_USUAL (0.05, 2), .initial = 0.3, .help = N_ ("Along the throw.") },
  { "height", N_ ("Height"), &sq_value_number, AT (height_m), SQ_LENGTH, SQ_RANGE (0, 50),
    SQ_USUAL (0.05, 2), .initial = 0.25, .help = N_ ("Upward.") },
};
#undef AT

#define AT(member) offsetof (SqMode, member)
static const SqField mode_fields[] = {
  { "name", N_ ("Name"), &sq_value_text, AT (name), .flags = SQ_REQUIRED,
    .help = N_ ("As the lamp's own menu calls it.") },
  { "slots", N_ ("Slots"), &sq_value_count, AT (slots), SQ_PLAIN, SQ_RANGE (1, 512),
    .initial = 1, .flags = SQ_REQUIRED, .help = N_ ("How many addresses it takes.") },
};
#undef AT

#define AT(member) offsetof (SqBeam, member)
static const SqField beam_fields[] = {
  { "beam_deg", N_ ("Beam"), &sq_value_spread, AT (beam_deg), SQ_ANGLE, SQ_RANGE (0, 180),
    SQ_USUAL (4, 120), .flags = SQ_REQUIRED | SQ_ABOVE_MIN | SQ_BELOW_MAX,
    .help = N_ ("Full angle at half of the peak, or [across, up].") },
  { "field_deg", N_ ("Field"), &sq_value_spread, AT (field_deg), SQ_ANGLE, SQ_RANGE (0, 180),
    SQ_USUAL (5, 170), .flags = SQ_REQUIRED | SQ_ABOVE_MIN,
    .help = N_ ("Full angle at a tenth of the peak; more than the beam.") },
  { "peak_cd", N_ ("Peak"), &sq_value_number, AT (peak_cd), SQ_INTENSITY, SQ_RANGE (0, 1e9),
    SQ_USUAL (100, 1e7), .flags = SQ_REQUIRED | SQ_ABOVE_MIN, .help = N_ ("Along the aim.") },
};
#undef AT

#define AT(member) offsetof (SqClass, member)
static const char *const optics_words[] = { "lens", "open", "parallel", "profile", "panel", "tube", "diffused", "round", "bulb", NULL };
static const char *const source_words[] = { "tungsten", "discharge", "led", "fluorescent", "flame", NULL };
static const char *const dims_words[] = { "none", "mains", "own", NULL };
static const char *const emits_words[] = { "lambert", "sphere", "tube", "skirt", NULL };
static const SqField class_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name in references.") },
  { "name", N_ ("Name"), &sq_value_text, AT (name),
    .help = N_ ("Generic: no maker, no product.") },
  { "family", N_ ("Family"), &sq_value_text, AT (family), .help = N_ ("What it is filed under.") },
  { "optics", N_ ("Optics"), &sq_value_word, AT (optics), .words = optics_words,
    .help = N_ ("What its front is drawn as.") },
  { "source", N_ ("Source"), &sq_value_word, AT (source), .words = source_words,
    .help = N_ ("What makes the light, and what its back is drawn as.") },
  { "input_w", N_ ("Input"), &sq_value_number, AT (input_w), SQ_POWER, SQ_RANGE (0, 1e6),
    SQ_USUAL (0, 20000), .help = N_ ("What it draws.") },
  { "lamp_w", N_ ("Lamp"), &sq_value_number, AT (lamp_w), SQ_POWER, SQ_RANGE (0, 1e6),
    SQ_USUAL (0, 20000), .help = N_ ("What is printed on it.") },
  { "volts", N_ ("Volts"), &sq_value_numbers, AT (volts), SQ_VOLTAGE, SQ_RANGE (1, 1000),
    .initial_json = "[100, 240]", .count = 2, .help = N_ ("Least and most it may be fed with.") },
  { "power_factor", N_ ("Power factor"), &sq_value_number, AT (power_factor), SQ_PLAIN,
    SQ_RANGE (0, 1), SQ_USUAL (0.5, 1), .initial = 1, .flags = SQ_ABOVE_MIN,
    .help = N_ ("Watts per volt-ampere.") },
  { "cct", N_ ("Colour temperature"), &sq_value_number, AT (cct_k), SQ_TEMPERATURE,
    SQ_RANGE (1000, 40000), SQ_USUAL (1900, 6500), .initial = 3200, .help = N_ ("As it comes.") },
  { "cct_range", N_ ("From, to"), &sq_value_numbers, AT (cct_range_k), SQ_TEMPERATURE,
    SQ_RANGE (1000, 40000), .count = 2, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Between which its colour can be set; null: fixed.") },
  { "dims", N_ ("Dims"), &sq_value_word, AT (dims), .words = dims_words,
    .help = N_ ("Not, by a mains dimmer, or by its own.") },
  { "level_min", N_ ("Lowest level"), &sq_value_number, AT (level_min), SQ_FRACTION,
    SQ_RANGE (0, 1), .help = N_ ("Below which it goes out.") },
  { "face", N_ ("Face"), &sq_value_object, AT (face), .of = &sq_face_kind, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("What gives the light; null: a point.") },
  { "body", N_ ("Body"), &sq_value_object, AT (body), .of = &sq_body_kind,
    .help = N_ ("How big it is drawn.") },
  { "weight_kg", N_ ("Weight"), &sq_value_number, AT (weight_kg), SQ_MASS, SQ_RANGE (0, 10000),
    SQ_USUAL (0, 80), .help = N_ ("Of the head.") },
  { "spigot", N_ ("Spigot"), &sq_value_number, AT (spigot_mm), SQ_MILLIMETRES, SQ_RANGE (1, 100),
    SQ_USUAL (16, 28), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("16 or 28 mm; null: it goes on no stand.") },
  { "modes", N_ ("Modes"), &sq_value_list, AT (modes), .of = &sq_mode_kind,
    .help = N_ ("How many addresses it can take.") },
  { "kit", N_ ("Kit"), &sq_value_text, AT (kit), .help = N_ ("Row of the kit table: what goes along with it.") },
  { "beams", N_ ("Beams"), &sq_value_list, AT (beams), .of = &sq_beam_kind,
    .help = N_ ("One, or two: spot and flood.") },
  { "emits", N_ ("Emits"), &sq_value_word, AT (emits), .words = emits_words, .initial = SQ_EMITS_BY_BEAM,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("In place of beams: a flat diffuse face, a ball, a tube, a skirt.") },
  { "lumens", N_ ("Flux"), &sq_value_number, AT (lumens), SQ_FLUX, SQ_RANGE (0, 1e9),
    SQ_USUAL (10, 1e6), .help = N_ ("Of a shape.") },
  { "photometry", N_ ("Photometry"), &sq_value_text, AT (photometry),
    .help = N_ ("In place of beams: the text of an LM-63 or EULUMDAT file.") },
};
#undef AT
/* clang-format on */

const SqKind sq_face_kind = {
  .name = N_ ("face"),
  .size = sizeof (SqFace),
  SQ_FIELDS (face_fields),
  .help = N_ ("The emitting face of a lamp."),
};

const SqKind sq_body_kind = {
  .name = N_ ("body"),
  .size = sizeof (SqBody),
  SQ_FIELDS (body_fields),
  .help = N_ ("The outside of a lamp."),
};

const SqKind sq_mode_kind = {
  .name = N_ ("mode"),
  .size = sizeof (SqMode),
  SQ_FIELDS (mode_fields),
  .help = N_ ("A way to address a lamp."),
};

const SqKind sq_beam_kind = {
  .name = N_ ("beam"),
  .size = sizeof (SqBeam),
  SQ_FIELDS (beam_fields),
  .help = N_ ("A beam: a half of the peak at the beam angle, a tenth at the field angle."),
};

const SqKind sq_class_kind = {
  .name = N_ ("class"),
  .size = sizeof (SqClass),
  SQ_FIELDS (class_fields),
  .names = SQ_NAMES_CLASS,
  .help = N_ ("A generic lamp. Its light is one of beams, emits or photometry."),
};
