/* mark.c: the fields of a mark, and where its face is */
#include "scene/mark.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqMark, member)
static const char *const posture_words[] = { "stand", "sit", "lie", NULL };
static const char *const skin_words[] = { "light", "light-medium", "medium", "medium-deep", "deep", NULL };
static const SqField mark_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name in references and looks.") },
  { "label", N_ ("Label"), &sq_value_text, AT (label),
    .help = N_ ("The letter on the plan: A, B…; none: its id.") },
  { "at", N_ ("Place"), &sq_value_place, AT (at), SQ_COORDINATES,
    .flags = SQ_REQUIRED | SQ_PER_LOOK, .help = N_ ("Where the subject stands.") },
  { "floor", N_ ("Floor"), &sq_value_number, AT (floor_m), SQ_LENGTH, SQ_RANGE (-10, 100),
    SQ_USUAL (0, 2), .flags = SQ_PER_LOOK, .help = N_ ("Height of what the subject stands on; a sitter's floor is where the feet are.") },
  { "facing", N_ ("Facing"), &sq_value_number, AT (facing_deg), SQ_ANGLE, SQ_RANGE (-360, 360),
    .initial = 270, .flags = SQ_PER_LOOK,
    .help = N_ ("Page azimuth, counter-clockwise from +x; 270 looks down the page.") },
  { "stature", N_ ("Stature"), &sq_value_number, AT (stature_m), SQ_LENGTH, SQ_RANGE (0.4, 3),
    SQ_USUAL (1, 2.1), .initial = 1.70, .help = N_ ("How tall the subject is, standing.") },
  { "posture", N_ ("Posture"), &sq_value_word, AT (posture), .words = posture_words,
    .flags = SQ_PER_LOOK, .help = N_ ("Sets the height of the face.") },
  { "path", N_ ("Walk"), &sq_value_path, AT (path), SQ_COORDINATES,
    .help = N_ ("Further points of a walk that starts here.") },
  { "skin", N_ ("Skin"), &sq_value_word, AT (skin), .words = skin_words, .initial = SQ_SKIN_MEDIUM,
    .help = N_ ("How much light the face gives back.") },
  { "shadow_pinned", N_ ("Shadows stay drawn"), &sq_value_flag, AT (shadow_pinned),
    .help = N_ ("Draw its shadows even where the camera does not see them.") },
  SQ_COMMON_ROWS,
};
#undef AT
/* clang-format on */

const SqKind sq_mark_kind = {
  .name = N_ ("mark"),
  .size = sizeof (SqMark),
  SQ_FIELDS (mark_fields),
  .names = SQ_NAMES_MARK,
  .help = N_ ("Where a subject stands, sits or lies, and where a walk starts."),
};

double
sq_mark_eye_height_m (const SqMark *mark)
{
  static const double share[] = { 0.936, 0.72, 0.07 };
  return mark->stature_m * share[mark->posture];
}

double
sq_mark_crown_height_m (const SqMark *mark)
{
  static const double share[] = { 1.0, 0.79, 0.13 };
  return mark->stature_m * share[mark->posture];
}

SqPoint
sq_mark_face (const SqMark *mark)
{
  return sq_point_above (mark->at, mark->floor_m + sq_mark_eye_height_m (mark));
}

double
sq_skin_reflectance (SqSkin skin)
{
  static const double share[] = { 0.45, 0.38, 0.30, 0.20, 0.10 };
  return share[skin];
}
