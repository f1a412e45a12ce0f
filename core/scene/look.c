/* look.c: the fields of a look */
#include "scene/look.h"

#include "scene/common.h"
#include "scene/daylight.h"
#include "scene/fixture.h"
#include "scene/mark.h"
#include "scene/panel.h"
#include "scene/set.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqLook, member)
static const SqField look_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name on the command line.") },
  { "name", N_ ("Name"), &sq_value_text, AT (name), .help = N_ ("As printed.") },
  { "note", N_ ("Note"), &sq_value_text, AT (note), .help = N_ ("A remark.") },
  { "camera", N_ ("Camera"), &sq_value_reference, AT (camera), .names = SQ_NAMES_CAMERA,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("The active camera; null: the first.") },
  { "fixtures", N_ ("Fixtures"), &sq_value_partials, AT (fixtures), .of = &sq_fixture_kind,
    .help = N_ ("What differs, lamp by lamp.") },
  { "panels", N_ ("Panels"), &sq_value_partials, AT (panels), .of = &sq_panel_kind,
    .help = N_ ("What differs, panel by panel.") },
  { "openings", N_ ("Openings"), &sq_value_partials, AT (openings), .of = &sq_opening_kind,
    .help = N_ ("What differs, opening by opening.") },
  { "marks", N_ ("Marks"), &sq_value_partials, AT (marks), .of = &sq_mark_kind,
    .help = N_ ("What differs, mark by mark.") },
  { "daylight", N_ ("Daylight"), &sq_value_partial, AT (daylight), .of = &sq_daylight_kind,
    .help = N_ ("What differs of the daylight.") },
  { "haze", N_ ("Haze"), &sq_value_number, AT (haze_per_m), SQ_PER_METRE, SQ_RANGE (0, 10),
    SQ_USUAL (0, 0.1), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Extinction; null: as in the base scene.") },
};
#undef AT
/* clang-format on */

const SqKind sq_look_kind = {
  .name = N_ ("look"),
  .size = sizeof (SqLook),
  SQ_FIELDS (look_fields),
  .names = SQ_NAMES_LOOK,
  .help = N_ ("A named state of the set. The scene without one is the look base."),
};
