/* reading-points.c: the fields of probes and of measured ambient light */
#include "scene/reading-points.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqProbe, member)
static const char *const receptor_words[] = { "flat", "dome", "spot", NULL };
static const SqField probe_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name in references.") },
  { "at", N_ ("Place"), &sq_value_point, AT (at), SQ_COORDINATES, .flags = SQ_REQUIRED,
    .help = N_ ("Where the receptor is held.") },
  { "normal", N_ ("Normal"), &sq_value_direction, AT (normal), SQ_PLAIN, SQ_RANGE (-SQ_FAR_M, SQ_FAR_M),
    .initial_json = "[0, 0, 1]", .help = N_ ("Which way it looks; any length but none.") },
  { "toward", N_ ("Toward"), &sq_value_reference, AT (toward),
    .names = SQ_NAMES_ANYTHING_PLACED, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("What it looks at, in place of a normal.") },
  { "receptor", N_ ("Receptor"), &sq_value_word, AT (receptor), .words = receptor_words,
    .help = N_ ("Flat (cosine), dome, or spot: the luminance of the surface met along the normal.") },
  SQ_COMMON_ROWS,
};
#undef AT

#define AT(member) offsetof (SqAmbient, member)
static const SqField ambient_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .help = N_ ("Its name in references.") },
  { "at", N_ ("Place"), &sq_value_point, AT (at), SQ_COORDINATES,
    .flags = SQ_REQUIRED | SQ_WITHOUT_Z, .help = N_ ("Where it was read.") },
  { "lux", N_ ("Illuminance"), &sq_value_number, AT (lux), SQ_ILLUMINANCE, SQ_RANGE (0, 1e6),
    .flags = SQ_REQUIRED, .help = N_ ("What the meter said.") },
  { "cct_k", N_ ("Colour temperature"), &sq_value_number, AT (cct_k), SQ_TEMPERATURE,
    SQ_RANGE (1000, 40000), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("What the colour meter said; null: not read.") },
  SQ_COMMON_ROWS,
};
#undef AT
/* clang-format on */

const SqKind sq_probe_kind = {
  .name = N_ ("probe"),
  .size = sizeof (SqProbe),
  SQ_FIELDS (probe_fields),
  .names = SQ_NAMES_PROBE,
  .help = N_ ("A fixed metering point."),
};

const SqKind sq_ambient_kind = {
  .name = N_ ("ambient reading"),
  .size = sizeof (SqAmbient),
  SQ_FIELDS (ambient_fields),
  .names = SQ_NAMES_AMBIENT,
  .help = N_ ("Light already there, as measured on the scout."),
};
