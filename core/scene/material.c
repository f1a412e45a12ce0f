/* material.c: the fields of a material */
#include "scene/material.h"

#include "scene/common.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqMaterial, member)
static const char *const for_words[] = { "gel", "diffusion", "net", "bounce", "flag", NULL };
static const SqField material_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .flags = SQ_REQUIRED,
    .help = N_ ("Its name in references.") },
  { "name", N_ ("Name"), &sq_value_text, AT (name), .help = N_ ("Generic trade name.") },
  { "for", N_ ("For"), &sq_value_word, AT (for_what), .words = for_words, .flags = SQ_REQUIRED,
    .help = N_ ("What it is used as.") },
  { "direct", N_ ("Direct"), &sq_value_number, AT (direct), SQ_FRACTION, SQ_RANGE (0, 1),
    .help = N_ ("Share that passes straight on.") },
  { "scatter", N_ ("Scatter"), &sq_value_number, AT (scatter), SQ_FRACTION, SQ_RANGE (0, 1),
    .help = N_ ("Share that passes and is spread.") },
  { "reflect", N_ ("Reflect"), &sq_value_number, AT (reflect), SQ_FRACTION, SQ_RANGE (0, 1),
    .help = N_ ("Share that comes back.") },
  { "spread_deg", N_ ("Spread"), &sq_value_number, AT (spread_deg), SQ_ANGLE, SQ_RANGE (0, 60),
    .initial = 60, .help = N_ ("Half-angle at half power about the straight-on or mirror direction; 60 is Lambertian, under 5 a mirror.") },
  { "mired", N_ ("Mired"), &sq_value_number, AT (mired), SQ_MIRED, SQ_RANGE (-1000, 1000),
    SQ_USUAL (-200, 200), .help = N_ ("Shift of colour temperature; warmer is positive.") },
  { "tint", N_ ("Tint"), &sq_value_numbers, AT (tint), SQ_PLAIN, SQ_RANGE (0, 1), .count = 2,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("CIE 1931 x, y of what D65 becomes; null: none.") },
};
#undef AT
/* clang-format on */

const SqKind sq_material_kind = {
  .name = N_ ("material"),
  .size = sizeof (SqMaterial),
  SQ_FIELDS (material_fields),
  .names = SQ_NAMES_MATERIAL,
  .help = N_ ("A gel, cloth, net or board."),
};
