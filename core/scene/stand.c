/* stand.c: the fields of a stand */
#include "scene/stand.h"

#include "scene/common.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqStand, member)
static const SqField stand_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED, .help = N_ ("Its name in references.") },
  { "name", N_ ("Name"), &sq_value_text, AT (name), .help = N_ ("Generic.") },
  { "spigot", N_ ("Spigot"), &sq_value_numbers, AT (spigot_mm), SQ_MILLIMETRES, SQ_RANGE (1, 100),
    .initial_json = "[16, 16]", .count = 2, .help = N_ ("The two sizes it takes; twice the same where it takes one.") },
  { "min_height", N_ ("Lowest"), &sq_value_number, AT (min_height_m), SQ_LENGTH, SQ_RANGE (0, 50),
    .help = N_ ("Spigot above the floor.") },
  { "max_height", N_ ("Highest"), &sq_value_number, AT (max_height_m), SQ_LENGTH, SQ_RANGE (0, 50),
    .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Spigot above the floor; null: what it is fixed to decides.") },
  { "load_kg", N_ ("Load"), &sq_value_number, AT (load_kg), SQ_MASS, SQ_RANGE (0, 10000),
    .help = N_ ("What it may carry.") },
  { "weight_kg", N_ ("Weight"), &sq_value_number, AT (weight_kg), SQ_MASS, SQ_RANGE (0, 10000),
    .help = N_ ("Of itself.") },
  { "footprint", N_ ("Footprint"), &sq_value_number, AT (footprint_m), SQ_LENGTH, SQ_RANGE (0, 20),
    .help = N_ ("Across its open legs.") },
  { "sandbags", N_ ("Sandbags"), &sq_value_count, AT (sandbags), SQ_PLAIN, SQ_RANGE (0, 100),
    .help = N_ ("How many it asks for.") },
};
#undef AT
/* clang-format on */

const SqKind sq_stand_kind = {
  .name = N_ ("stand"),
  .size = sizeof (SqStand),
  SQ_FIELDS (stand_fields),
  .names = SQ_NAMES_STAND,
  .help = N_ ("A stand of the library."),
};
