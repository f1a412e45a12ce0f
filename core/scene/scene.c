/* scene.c: the fields of a whole scene file */
#include "scene/scene.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define LIST(member, label_text, kind, help_text)                                                  \
  { #member, label_text, &sq_value_list, AT (member), .of = &kind, .help = help_text }

#define AT(member) offsetof (SqScene, member)
static const char *const units_words[] = { "metric", "imperial", NULL };
static const SqField scene_fields[] = {
  { "format", N_ ("Format"), &sq_value_count, AT (format), SQ_PLAIN, SQ_RANGE (1, SQ_FORMAT),
    .initial = 0, .flags = SQ_REQUIRED, .help = N_ ("Version of the file format: 1.") },
  { "title", N_ ("Title"), &sq_value_object, AT (title), .of = &sq_title_kind,
    .help = N_ ("What the title block says.") },
  { "units", N_ ("Units"), &sq_value_word, AT (units), .words = units_words,
    .help = N_ ("What is shown: m and lx, or ft-in and fc. The file is always metric.") },
  { "north", N_ ("North"), &sq_value_number, AT (north_deg), SQ_ANGLE, SQ_RANGE (-360, 360),
    .initial = 90, .help = N_ ("Page azimuth of true north, counter-clockwise from +x.") },
  { "meter", N_ ("Meter"), &sq_value_object, AT (meter), .of = &sq_meter_settings_kind,
    .help = N_ ("Exposure constants, and which ratio is meant.") },
  { "wanted", N_ ("Wanted"), &sq_value_object, AT (wanted), .of = &sq_wanted_kind,
    .help = N_ ("What the light shall be.") },
  { "room", N_ ("Room"), &sq_value_object, AT (room), .of = &sq_room_kind,
    .help = N_ ("Floor and ceiling.") },
  LIST (walls, N_ ("Walls"), sq_wall_kind, N_ ("Walls with their openings.")),
  LIST (pieces, N_ ("Pieces"), sq_piece_kind, N_ ("Furniture and set pieces.")),
  LIST (marks, N_ ("Marks"), sq_mark_kind, N_ ("Where subjects stand.")),
  LIST (cameras, N_ ("Cameras"), sq_camera_kind, N_ ("The first is active.")),
  LIST (fixtures, N_ ("Fixtures"), sq_fixture_kind, N_ ("Lamps.")),
  LIST (panels, N_ ("Panels"), sq_panel_kind, N_ ("Flags, nets, frames and bounces.")),
  LIST (probes, N_ ("Probes"), sq_probe_kind, N_ ("Fixed metering points.")),
  LIST (ambient, N_ ("Ambient"), sq_ambient_kind, N_ ("Light already there, as measured.")),
  { "daylight", N_ ("Daylight"), &sq_value_object, AT (daylight), .of = &sq_daylight_kind,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("Sun and sky; null: none.") },
  { "haze", N_ ("Haze"), &sq_value_number, AT (haze_per_m), SQ_PER_METRE, SQ_RANGE (0, 10),
    SQ_USUAL (0, 0.1), .help = N_ ("Extinction of the air; 0: none.") },
  LIST (supplies, N_ ("Supplies"), sq_supply_kind, N_ ("House circuits, boxes, generators.")),
  LIST (cables, N_ ("Cables"), sq_cable_kind, N_ ("Runs laid by hand.")),
  LIST (looks, N_ ("Looks"), sq_look_kind, N_ ("Named states of the set.")),
  LIST (notes, N_ ("Notes"), sq_note_kind, N_ ("Text on the plan.")),
  LIST (dimensions, N_ ("Dimensions"), sq_dimension_line_kind, N_ ("Measured lines.")),
  { "underlay", N_ ("Underlay"), &sq_value_object, AT (underlay), .of = &sq_underlay_kind,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("A picture under the plan; null: none.") },
  LIST (classes, N_ ("Classes"), sq_class_kind, N_ ("Lamp classes that this file brings along; they win over the library's.")),
  LIST (materials, N_ ("Materials"), sq_material_kind, N_ ("Materials that this file brings along; they win over the library's.")),
  { "map", N_ ("Map"), &sq_value_object, AT (map), .of = &sq_map_kind,
    .help = N_ ("What the overlay shows.") },
  LIST (pages, N_ ("Pages"), sq_page_kind, N_ ("Which pages are printed, and how.")),
  LIST (list_edits, N_ ("List edits"), sq_list_edit_kind, N_ ("Changes made to the truck list by hand.")),
  LIST (waivers, N_ ("Waivers"), sq_waiver_kind, N_ ("Findings that somebody has accepted.")),
};
#undef AT
/* clang-format on */

static void
scene_finalize (SqThing *thing)
{
  SqScene *scene = (SqScene *)thing;
  g_clear_pointer (&scene->library, sq_library_unref);
  g_clear_pointer (&scene->by_id, g_hash_table_unref);
  g_clear_pointer (&scene->look, g_free);
  g_clear_pointer (&scene->look_camera, g_free);
}

const SqKind sq_scene_kind = {
  .name = N_ ("scene"),
  .size = sizeof (SqScene),
  SQ_FIELDS (scene_fields),
  .help = N_ ("A scene file."),
  .finalize = scene_finalize,
};
