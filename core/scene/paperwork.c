/* paperwork.c: the fields of what the scene says about its pages */
#include "scene/paperwork.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define TEXT(key, label, help_text) { #key, label, &sq_value_text, AT (key), .help = help_text }

#define AT(member) offsetof (SqRevision, member)
static const SqField revision_fields[] = {
  TEXT (number, N_ ("Number"), N_ ("Letter or number of the issue.")),
  TEXT (date, N_ ("Date"), N_ ("As printed.")),
  TEXT (what, N_ ("What"), N_ ("What changed.")),
};
#undef AT

#define AT(member) offsetof (SqTitle, member)
static const SqField title_fields[] = {
  TEXT (production, N_ ("Production"), N_ ("The film or show.")),
  TEXT (scene, N_ ("Scene"), N_ ("Number and slug of the scene.")),
  TEXT (location, N_ ("Location"), N_ ("Where it is shot.")),
  TEXT (set, N_ ("Set"), N_ ("What it plays as.")),
  TEXT (title, N_ ("Title"), N_ ("Of the drawing.")),
  TEXT (date, N_ ("Date"), N_ ("Of issue, YYYY-MM-DD.")),
  TEXT (drawn_by, N_ ("Drawn by"), N_ ("Who drew it.")),
  TEXT (gaffer, N_ ("Gaffer"), N_ ("Head of set lighting.")),
  TEXT (director, N_ ("Director"), N_ ("Who directs.")),
  TEXT (dp, N_ ("Director of photography"), N_ ("Who photographs.")),
  TEXT (owner, N_ ("Owner"), N_ ("Legal owner of the document (ISO 7200).")),
  TEXT (document, N_ ("Document"), N_ ("Its number.")),
  TEXT (approved_by, N_ ("Approved by"), N_ ("Who said yes.")),
  { "revisions", N_ ("Revisions"), &sq_value_list, AT (revisions), .of = &sq_revision_kind,
    .help = N_ ("Newest last.") },
};
#undef AT

#define AT(member) offsetof (SqMeterSettings, member)
static const char *const ratio_words[] = { "total", "plain", NULL };
static const SqField meter_fields[] = {
  { "flat_c", N_ ("Constant, flat"), &sq_value_number, AT (flat_c), SQ_PLAIN, SQ_RANGE (50, 1000),
    SQ_USUAL (240, 400), .initial = 250, .help = N_ ("Exposure constant C of a flat receptor (ISO 2720: 240 to 400).") },
  { "dome_c", N_ ("Constant, dome"), &sq_value_number, AT (dome_c), SQ_PLAIN, SQ_RANGE (50, 1000),
    SQ_USUAL (320, 540), .initial = 340, .help = N_ ("Exposure constant C of a dome (ISO 2720: 320 to 540).") },
  { "ratio", N_ ("Ratio"), &sq_value_word, AT (ratio), .words = ratio_words,
    .help = N_ ("Total: (key + fill) : fill. Plain: key : fill.") },
};
#undef AT

#define AT(member) offsetof (SqWanted, member)
static const SqField wanted_fields[] = {
  { "key", N_ ("Key"), &sq_value_number, AT (key_stops), SQ_STOPS, SQ_RANGE (-20, 20),
    SQ_USUAL (-4, 4), .help = N_ ("From the set stop.") },
  { "back", N_ ("Back"), &sq_value_number, AT (back_stops), SQ_STOPS, SQ_RANGE (-20, 20),
    SQ_USUAL (-4, 4), .initial = 0.5, .help = N_ ("From the set stop.") },
  { "background", N_ ("Background"), &sq_value_number, AT (background_stops), SQ_STOPS,
    SQ_RANGE (-20, 20), SQ_USUAL (-4, 4), .initial = -1.5,
    .help = N_ ("From the set stop, read by spot where a background lamp aims.") },
  { "ratio", N_ ("Ratio"), &sq_value_number, AT (ratio), SQ_PLAIN, SQ_RANGE (1, 1000),
    SQ_USUAL (1, 16), .initial = 4, .help = N_ ("As meter.ratio counts it.") },
};
#undef AT

#define AT(member) offsetof (SqMap, member)
static const char *const quantity_words[] = { "lux", "stops", "colour", NULL };
static const char *const normal_words[] = { "up", "camera", "square", NULL };
static const SqField map_fields[] = {
  { "quantity", N_ ("Shows"), &sq_value_word, AT (quantity), .words = quantity_words,
    .help = N_ ("What the overlay shows.") },
  { "height", N_ ("Height"), &sq_value_number, AT (height_m), SQ_LENGTH, SQ_RANGE (0, 100),
    SQ_USUAL (0, 2), .initial = 1.2, .help = N_ ("Of the plane it is read on.") },
  { "normal", N_ ("Faces"), &sq_value_word, AT (normal), .words = normal_words,
    .help = N_ ("Which way the receptor looks: up, to the active camera, or square to every source in turn.") },
};
#undef AT

#define AT(member) offsetof (SqNote, member)
static const SqField note_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .help = N_ ("Its name in references.") },
  { "text", N_ ("Text"), &sq_value_text, AT (text), .flags = SQ_REQUIRED, .help = N_ ("What it says.") },
  { "at", N_ ("Place"), &sq_value_place, AT (at), SQ_COORDINATES, .flags = SQ_REQUIRED,
    .help = N_ ("Where its number stands.") },
  { "points_to", N_ ("Points to"), &sq_value_place, AT (points_to), SQ_COORDINATES,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("End of its leader; null: none.") },
  SQ_COMMON_ROWS,
};
#undef AT

#define AT(member) offsetof (SqDimensionLine, member)
static const SqField dimension_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .help = N_ ("Its name in references.") },
  { "from", N_ ("From"), &sq_value_place, AT (from), SQ_COORDINATES, .flags = SQ_REQUIRED,
    .help = N_ ("One end.") },
  { "to", N_ ("To"), &sq_value_place, AT (to), SQ_COORDINATES, .flags = SQ_REQUIRED,
    .help = N_ ("The other end.") },
  { "offset", N_ ("Offset"), &sq_value_number, AT (offset_m), SQ_LENGTH, SQ_RANGE (-1000, 1000),
    SQ_USUAL (-2, 2), .help = N_ ("Of the line from its ends, to the left of from → to.") },
  { "text", N_ ("Text"), &sq_value_text, AT (text), .help = N_ ("In place of the length.") },
  SQ_COMMON_ROWS,
};
#undef AT

#define AT(member) offsetof (SqUnderlay, member)
static const char *const underlay_words[] = { "png", "jpeg", "svg", "pdf", NULL };
static const SqField underlay_fields[] = {
  { "format", N_ ("Format"), &sq_value_word, AT (format), .words = underlay_words,
    .flags = SQ_REQUIRED, .help = N_ ("What the data is.") },
  { "data", N_ ("Data"), &sq_value_text, AT (data), .flags = SQ_REQUIRED, .help = N_ ("The file, in base64 (RFC 4648).") },
  { "scale", N_ ("Width"), &sq_value_number, AT (scale_m), SQ_LENGTH, SQ_RANGE (0, SQ_FAR_M),
    SQ_USUAL (1, 100), .initial = 10, .flags = SQ_ABOVE_MIN, .help = N_ ("How wide the picture is in the set.") },
  { "at", N_ ("Place"), &sq_value_place, AT (at), SQ_COORDINATES, .initial_json = "[0, 0]",
    .help = N_ ("Of its lower left corner.") },
  { "turn", N_ ("Turn"), &sq_value_number, AT (turn_deg), SQ_ANGLE, SQ_RANGE (-360, 360),
    .help = N_ ("Counter-clockwise about that corner.") },
  { "opacity", N_ ("Opacity"), &sq_value_number, AT (opacity), SQ_FRACTION, SQ_RANGE (0, 1),
    .initial = 0.5, .help = N_ ("How strongly it shows.") },
};
#undef AT

#define AT(member) offsetof (SqPage, member)
static const char *const page_words[] = { "plan", "ratio", "section", "list", "power", "continuity", NULL };
static const char *const overlay_words[] = { "lux", "stops", "colour", "none", NULL };
static const SqField page_fields[] = {
  { "page", N_ ("Page"), &sq_value_word, AT (page), .words = page_words, .flags = SQ_REQUIRED,
    .help = N_ ("Which page.") },
  { "sheet", N_ ("Sheet"), &sq_value_text, AT (sheet), .help = N_ ("A4 to A0, letter, tabloid, arch-a to arch-e; none: the best fit.") },
  { "scale", N_ ("Scale"), &sq_value_text, AT (scale), .help = N_ ("1:50, or 1/4\"=1'; none: the best standard fit.") },
  { "portrait", N_ ("Portrait"), &sq_value_flag, AT (portrait),
    .help = N_ ("Upright sheet; else as it fits.") },
  { "overlay", N_ ("Overlay"), &sq_value_word, AT (overlay), .words = overlay_words, .initial = -1,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("What lies under the plan; null: the map's quantity.") },
  { "look", N_ ("Look"), &sq_value_reference, AT (look), .names = SQ_NAMES_LOOK,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("Null: the one that is shown.") },
  { "light", N_ ("Light"), &sq_value_reference, AT (light), .names = SQ_NAMES_FIXTURE,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("Through which a section is cut.") },
  { "mono", N_ ("One ink"), &sq_value_flag, AT (mono), .help = N_ ("Every hue printed in the ink.") },
  { "blocks", N_ ("Blocks"), &sq_value_json, AT (blocks), .flags = SQ_MAY_BE_NULL, .help = N_ ("Where blocks were dragged; null: laid out by the program.") },
};
#undef AT

#define AT(member) offsetof (SqListEdit, member)
static const SqField list_edit_fields[] = {
  { "item", N_ ("Item"), &sq_value_text, AT (item), .flags = SQ_REQUIRED, .help = N_ ("The row of the list.") },
  { "count", N_ ("Count"), &sq_value_number, AT (count), SQ_PLAIN, SQ_RANGE (0, 1e6), .initial = NAN,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("Null: as computed.") },
  { "added", N_ ("Added"), &sq_value_flag, AT (added), .help = N_ ("A row that the plan does not ask for.") },
  { "struck", N_ ("Struck"), &sq_value_flag, AT (struck), .help = N_ ("Not wanted.") },
  TEXT (note, N_ ("Note"), N_ ("A remark.")),
  TEXT (supplier, N_ ("Supplier"), N_ ("Where it comes from.")),
};
#undef AT

#define AT(member) offsetof (SqWaiver, member)
static const SqField waiver_fields[] = {
  { "finding", N_ ("Finding"), &sq_value_text, AT (finding), .flags = SQ_REQUIRED, .help = N_ ("Kind of the finding that is waived.") },
  TEXT (about, N_ ("About"), N_ ("The id it is about; none: wherever it is found.")),
  { "reason", N_ ("Reason"), &sq_value_text, AT (reason), .flags = SQ_REQUIRED, .help = N_ ("Why it is waived.") },
};
#undef AT
/* clang-format on */

#define KIND(symbol, struct_name, said, table, text)                                               \
  const SqKind symbol = {                                                                          \
    .name = said, .size = sizeof (struct_name), SQ_FIELDS (table), .help = text                    \
  }

KIND (
  sq_revision_kind, SqRevision, N_ ("revision"), revision_fields, N_ ("One issue of the drawing."));
KIND (sq_title_kind, SqTitle, N_ ("title"), title_fields, N_ ("What the title block says."));
KIND (sq_meter_settings_kind,
      SqMeterSettings,
      N_ ("meter"),
      meter_fields,
      N_ ("How readings become stops and ratios."));
KIND (sq_wanted_kind,
      SqWanted,
      N_ ("wanted"),
      wanted_fields,
      N_ ("What new lights are set for, and balancing aims at."));
KIND (sq_map_kind, SqMap, N_ ("map"), map_fields, N_ ("What the overlay shows."));
KIND (
  sq_underlay_kind, SqUnderlay, N_ ("underlay"), underlay_fields, N_ ("A picture under the plan."));
KIND (sq_page_kind, SqPage, N_ ("page"), page_fields, N_ ("A page to print."));
KIND (sq_list_edit_kind,
      SqListEdit,
      N_ ("list edit"),
      list_edit_fields,
      N_ ("A change made to the truck list by hand."));
KIND (sq_waiver_kind,
      SqWaiver,
      N_ ("waiver"),
      waiver_fields,
      N_ ("A finding that somebody has accepted."));

const SqKind sq_note_kind = {
  .name = N_ ("note"),
  .size = sizeof (SqNote),
  SQ_FIELDS (note_fields),
  .names = SQ_NAMES_NOTE,
  .help = N_ ("Text at a place."),
};

const SqKind sq_dimension_line_kind = {
  .name = N_ ("dimension"),
  .size = sizeof (SqDimensionLine),
  SQ_FIELDS (dimension_fields),
  .names = SQ_NAMES_DIMENSION,
  .help = N_ ("A measured line."),
};
