/* daylight.c: the fields of daylight */
#include "scene/daylight.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqDaylight, member)
static const char *const sky_words[] = { "clear", "part", "overcast", NULL };
static const SqField daylight_fields[] = {
  { "on", N_ ("On"), &sq_value_flag, AT (on), .initial = TRUE, .flags = SQ_PER_LOOK,
    .help = N_ ("Whether daylight counts.") },
  { "latitude", N_ ("Latitude"), &sq_value_number, AT (latitude_deg), SQ_ANGLE, SQ_RANGE (-90, 90),
    .flags = SQ_REQUIRED, .help = N_ ("Of the place, north positive.") },
  { "longitude", N_ ("Longitude"), &sq_value_number, AT (longitude_deg), SQ_ANGLE,
    SQ_RANGE (-180, 180), .flags = SQ_REQUIRED, .help = N_ ("Of the place, east positive.") },
  { "date", N_ ("Date"), &sq_value_date, AT (date), .flags = SQ_REQUIRED | SQ_PER_LOOK,
    .help = N_ ("YYYY-MM-DD.") },
  { "time", N_ ("Time"), &sq_value_time, AT (time), .initial_json = "\"12:00\"",
    .flags = SQ_PER_LOOK, .help = N_ ("HH:MM by the clock of the place.") },
  { "utc_offset", N_ ("From UTC"), &sq_value_number, AT (utc_offset_h), SQ_HOURS,
    SQ_RANGE (-14, 14), .flags = SQ_PER_LOOK, .help = N_ ("Hours that the clock is ahead of UTC, summer time included.") },
  { "sky", N_ ("Sky"), &sq_value_word, AT (sky), .words = sky_words, .flags = SQ_PER_LOOK,
    .help = N_ ("How much cloud.") },
  { "sun_role", N_ ("The sun is"), &sq_value_word, AT (sun_role), .words = sq_role_words,
    .initial = SQ_ROLE_KEY, .flags = SQ_PER_LOOK, .help = N_ ("The part the sun plays.") },
  { "sky_role", N_ ("The sky is"), &sq_value_word, AT (sky_role), .words = sq_role_words,
    .initial = SQ_ROLE_FILL, .flags = SQ_PER_LOOK, .help = N_ ("The part the sky plays.") },
};
#undef AT
/* clang-format on */

const SqKind sq_daylight_kind = {
  .name = N_ ("daylight"),
  .size = sizeof (SqDaylight),
  SQ_FIELDS (daylight_fields),
  .help = N_ ("Place and time from which sun and sky follow."),
};
