/* supply.c: the fields of supplies and cables */
#include "scene/supply.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqOtherLoad, member)
static const SqField other_load_fields[] = {
  { "label", N_ ("Label"), &sq_value_text, AT (label), .help = N_ ("What it is.") },
  { "watts", N_ ("Watts"), &sq_value_number, AT (watts), SQ_POWER, SQ_RANGE (0, 1e6),
    .flags = SQ_REQUIRED, .help = N_ ("What it draws.") },
};
#undef AT

#define AT(member) offsetof (SqSupply, member)
static const char *const supply_words[] = { "house", "distribution", "generator", NULL };
static const char *const system_words[] = { "single", "split", "three", NULL };
static const SqField supply_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name in references.") },
  { "label", N_ ("Label"), &sq_value_text, AT (label), .help = N_ ("As on the box.") },
  { "kind", N_ ("Kind"), &sq_value_word, AT (kind), .words = supply_words,
    .help = N_ ("A house circuit, a distribution box or a generator.") },
  { "system", N_ ("System"), &sq_value_word, AT (system), .words = system_words,
    .help = N_ ("Single-phase, split-phase or three-phase.") },
  { "volts", N_ ("Volts"), &sq_value_number, AT (volts), SQ_VOLTAGE, SQ_RANGE (0, 1000),
    SQ_USUAL (100, 240), .initial = 230, .flags = SQ_ABOVE_MIN, .help = N_ ("Line to neutral.") },
  { "hertz", N_ ("Frequency"), &sq_value_number, AT (hertz), SQ_FREQUENCY, SQ_RANGE (0, 1000),
    SQ_USUAL (50, 60), .initial = 50, .help = N_ ("Of the mains; 0: direct current.") },
  { "rating_a", N_ ("Rating"), &sq_value_number, AT (rating_a), SQ_CURRENT, SQ_RANGE (0, 100000),
    SQ_USUAL (10, 400), .initial = 16, .flags = SQ_ABOVE_MIN, .help = N_ ("Of each line.") },
  { "at", N_ ("Place"), &sq_value_place, AT (at), SQ_COORDINATES, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Where it is; null: not on the plan.") },
  { "fed_from", N_ ("Fed from"), &sq_value_reference, AT (fed_from), .names = SQ_NAMES_SUPPLY,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("The supply upstream.") },
  { "outlets", N_ ("Outlets"), &sq_value_count, AT (outlets), SQ_PLAIN, SQ_RANGE (0, 999),
    .help = N_ ("How many can be plugged in; 0: not counted.") },
  { "other_loads", N_ ("Other loads"), &sq_value_list, AT (other_loads), .of = &sq_other_load_kind,
    .help = N_ ("What else hangs on it.") },
  SQ_COMMON_ROWS,
};
#undef AT

#define AT(member) offsetof (SqCable, member)
static const SqField cable_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .help = N_ ("Its name in references.") },
  { "from", N_ ("From"), &sq_value_reference, AT (from), .names = SQ_NAMES_SUPPLY,
    .flags = SQ_REQUIRED, .help = N_ ("The supply that feeds it.") },
  { "to", N_ ("To"), &sq_value_reference, AT (to), .names = SQ_NAMES_FIXTURE | SQ_NAMES_SUPPLY,
    .flags = SQ_REQUIRED, .help = N_ ("The lamp or supply at its end.") },
  { "length", N_ ("Length"), &sq_value_number, AT (length_m), SQ_LENGTH, SQ_RANGE (0, SQ_FAR_M),
    SQ_USUAL (5, 100), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("As laid; null: along its way.") },
  { "via", N_ ("Way"), &sq_value_path, AT (via), SQ_COORDINATES, .help = N_ ("Points it is laid along.") },
  { "conductor_mm2", N_ ("Conductor"), &sq_value_number, AT (conductor_mm2), SQ_SECTION,
    SQ_RANGE (0.1, 2000), SQ_USUAL (1.5, 120), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Cross-section of one conductor.") },
  { "awg", N_ ("Gauge"), &sq_value_text, AT (awg), .help = N_ ("In place of it: American wire gauge, 12, 2, 4/0.") },
  { "conductor_c", N_ ("Conductor at"), &sq_value_number, AT (conductor_c), SQ_CELSIUS,
    SQ_RANGE (-40, 250), SQ_USUAL (20, 90), .initial = 70, .help = N_ ("Its temperature under load.") },
  SQ_COMMON_ROWS,
};
#undef AT
/* clang-format on */

const SqKind sq_other_load_kind = {
  .name = N_ ("other load"),
  .size = sizeof (SqOtherLoad),
  SQ_FIELDS (other_load_fields),
  .help = N_ ("Something of somebody else on the same circuit."),
};

const SqKind sq_supply_kind = {
  .name = N_ ("supply"),
  .size = sizeof (SqSupply),
  SQ_FIELDS (supply_fields),
  .names = SQ_NAMES_SUPPLY,
  .help = N_ ("Where current comes from. To local code, by a licensed electrician."),
};

const SqKind sq_cable_kind = {
  .name = N_ ("cable"),
  .size = sizeof (SqCable),
  SQ_FIELDS (cable_fields),
  .names = SQ_NAMES_CABLE,
  .help = N_ ("A run laid by hand, in place of the one the program would lay."),
};
