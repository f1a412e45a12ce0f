/* set.c: the fields of the room, walls, openings and pieces, and what their defaults stand for */
#include "scene/set.h"

#include <glib/gi18n-lib.h>

/* clang-format off */
#define AT(member) offsetof (SqRoom, member)
static const SqField room_fields[] = {
  { "floor_reflectance", N_ ("Floor"), &sq_value_number, AT (floor_reflectance),
    SQ_FRACTION, SQ_RANGE (0, 1), .initial = 0.3,
    .help = N_ ("Share of light that the floor gives back.") },
  { "ceiling_height", N_ ("Ceiling height"), &sq_value_number, AT (ceiling_height_m),
    SQ_LENGTH, SQ_RANGE (0.5, 100), SQ_USUAL (2.2, 8), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Above the floor; null: open above. It lies over the area that each wall path of three or more points encloses.") },
  { "ceiling_reflectance", N_ ("Ceiling"), &sq_value_number, AT (ceiling_reflectance),
    SQ_FRACTION, SQ_RANGE (0, 1), .initial = 0.7,
    .help = N_ ("Share of light that the ceiling gives back.") },
  { "bounce", N_ ("Room gives light back"), &sq_value_flag, AT (bounce), .initial = TRUE,
    .help = N_ ("Whether walls, floor and ceiling re-emit what they receive.") },
  { "ground_reflectance", N_ ("Ground outside"), &sq_value_number, AT (ground_reflectance),
    SQ_FRACTION, SQ_RANGE (0, 1), .initial = 0.2,
    .help = N_ ("Share of daylight that the ground before the windows gives back.") },
};
#undef AT

#define AT(member) offsetof (SqWall, member)
static const char *const side_words[] = { "centre", "left", "right", NULL };
static const SqField wall_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .help = N_ ("Its name in references.") },
  { "path", N_ ("Path"), &sq_value_path, AT (path), SQ_COORDINATES, .least = 2,
    .flags = SQ_REQUIRED,
    .help = N_ ("The wall's centre line, or its measured face when side is left or right.") },
  { "side", N_ ("Side"), &sq_value_word, AT (side), .words = side_words,
    .help = N_ ("On which side of the path, walking along it, the wall's body lies.") },
  { "closed", N_ ("Closed"), &sq_value_flag, AT (closed),
    .help = N_ ("The last point joins the first.") },
  { "height", N_ ("Height"), &sq_value_number, AT (height_m),
    SQ_LENGTH, SQ_RANGE (0.01, 100), SQ_USUAL (2, 6), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Null: up to the ceiling, or 2.5 m where the room is open above.") },
  { "thickness", N_ ("Thickness"), &sq_value_number, AT (thickness_m),
    SQ_LENGTH, SQ_RANGE (0.001, 5), SQ_USUAL (0.02, 0.6), .initial = 0.12,
    .help = N_ ("How deep the reveals of its openings are.") },
  { "reflectance", N_ ("Reflectance"), &sq_value_number, AT (reflectance),
    SQ_FRACTION, SQ_RANGE (0, 1), .initial = 0.5,
    .help = N_ ("Share of light that its faces give back.") },
  { "tint", N_ ("Tint"), &sq_value_numbers, AT (tint), SQ_PLAIN, SQ_RANGE (0, 1), .count = 2,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("CIE 1931 x, y of the surface under D65; null: grey.") },
  { "wild", N_ ("Wild"), &sq_value_flag, AT (wild),
    .help = N_ ("Can be pulled. It blocks light until it is taken out of the scene.") },
  { "openings", N_ ("Openings"), &sq_value_list, AT (openings), .of = &sq_opening_kind,
    .help = N_ ("Windows, doors and holes.") },
  SQ_COMMON_ROWS,
};
#undef AT

#define AT(member) offsetof (SqOpening, member)
static const char *const opening_words[] = { "window", "door", "opening", NULL };
static const SqField opening_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .help = N_ ("Its name in references and looks.") },
  { "kind", N_ ("Kind"), &sq_value_word, AT (kind), .words = opening_words,
    .help = N_ ("What fills it.") },
  { "edge", N_ ("Edge"), &sq_value_count, AT (edge), SQ_PLAIN, SQ_RANGE (0, 9999),
    .help = N_ ("Index of the path's segment that it is in, from 0.") },
  { "offset", N_ ("Offset"), &sq_value_number, AT (offset_m), SQ_LENGTH, SQ_RANGE (0, SQ_FAR_M),
    .help = N_ ("From that edge's first point to the near jamb.") },
  { "width", N_ ("Width"), &sq_value_number, AT (width_m),
    SQ_LENGTH, SQ_RANGE (0, 1000), SQ_USUAL (0.5, 4), .flags = SQ_REQUIRED | SQ_ABOVE_MIN,
    .help = N_ ("Between its jambs.") },
  { "sill", N_ ("Sill"), &sq_value_number, AT (sill_m),
    SQ_LENGTH, SQ_RANGE (0, 100), SQ_USUAL (0, 2), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Lower edge above the floor; null: 0.9 m for a window, else 0.") },
  { "head", N_ ("Head"), &sq_value_number, AT (head_m),
    SQ_LENGTH, SQ_RANGE (0, 100), SQ_USUAL (1.8, 3), .initial = NAN, .flags = SQ_MAY_BE_NULL,
    .help = N_ ("Upper edge above the floor; null: 2.1 m, or the wall's top if that is lower.") },
  { "transmittance", N_ ("Lets through"), &sq_value_number, AT (transmittance),
    SQ_FRACTION, SQ_RANGE (0, 1), .initial = NAN, .flags = SQ_MAY_BE_NULL | SQ_PER_LOOK,
    .help = N_ ("0 shut to 1 open; null: 0.8 (glazing) for a window, else 1.") },
  { "material", N_ ("Material on it"), &sq_value_reference, AT (material),
    .names = SQ_NAMES_MATERIAL, .flags = SQ_MAY_BE_NULL | SQ_PER_LOOK,
    .help = N_ ("A gel, net or cloth over it.") },
  { "open_deg", N_ ("Door open"), &sq_value_number, AT (open_deg),
    SQ_ANGLE, SQ_RANGE (-180, 180), SQ_USUAL (0, 120), .initial = 90, .flags = SQ_PER_LOOK,
    .help = N_ ("A door's leaf, hinged at the near jamb: 0 shut, positive to the left of the path.") },
  SQ_COMMON_ROWS,
};
#undef AT

#define AT(member) offsetof (SqDisc, member)
static const SqField disc_fields[] = {
  { "at", N_ ("Centre"), &sq_value_place, AT (at), SQ_COORDINATES, .flags = SQ_REQUIRED,
    .help = N_ ("Its middle.") },
  { "radius", N_ ("Radius"), &sq_value_number, AT (radius_m),
    SQ_LENGTH, SQ_RANGE (0, 1000), SQ_USUAL (0.1, 2), .flags = SQ_REQUIRED | SQ_ABOVE_MIN,
    .help = N_ ("Half of how wide it is.") },
};
#undef AT

#define AT(member) offsetof (SqPiece, member)
static const SqField piece_fields[] = {
  { "id", N_ ("Id"), &sq_value_id, AT (id), .help = N_ ("Its name in references.") },
  { "label", N_ ("Label"), &sq_value_text, AT (label), .help = N_ ("What it is.") },
  { "outline", N_ ("Outline"), &sq_value_path, AT (outline), SQ_COORDINATES,
    .help = N_ ("Its corners in order; may be concave, may not cross itself.") },
  { "disc", N_ ("Disc"), &sq_value_object, AT (disc), .of = &sq_disc_kind,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("In place of an outline: a round piece.") },
  { "base", N_ ("Base"), &sq_value_number, AT (base_m), SQ_LENGTH, SQ_RANGE (-10, 100),
    SQ_USUAL (0, 3), .help = N_ ("Underside above the floor.") },
  { "top", N_ ("Top"), &sq_value_number, AT (top_m), SQ_LENGTH, SQ_RANGE (-10, 100),
    SQ_USUAL (0, 3), .initial = 0.75, .help = N_ ("Upper side above the floor.") },
  { "reflectance", N_ ("Reflectance"), &sq_value_number, AT (reflectance),
    SQ_FRACTION, SQ_RANGE (0, 1), .initial = 0.3,
    .help = N_ ("Share of light that it gives back.") },
  { "tint", N_ ("Tint"), &sq_value_numbers, AT (tint), SQ_PLAIN, SQ_RANGE (0, 1), .count = 2,
    .flags = SQ_MAY_BE_NULL, .help = N_ ("CIE 1931 x, y of the surface under D65; null: grey.") },
  SQ_COMMON_ROWS,
};
#undef AT
/* clang-format on */

const SqKind sq_room_kind = {
  .name = N_ ("room"),
  .size = sizeof (SqRoom),
  SQ_FIELDS (room_fields),
  .help = N_ ("Floor and ceiling, and whether the room gives light back."),
};

const SqKind sq_wall_kind = {
  .name = N_ ("wall"),
  .size = sizeof (SqWall),
  SQ_FIELDS (wall_fields),
  .names = SQ_NAMES_WALL,
  .help = N_ ("A run of wall of one height and thickness."),
};

const SqKind sq_opening_kind = {
  .name = N_ ("opening"),
  .size = sizeof (SqOpening),
  SQ_FIELDS (opening_fields),
  .names = SQ_NAMES_OPENING,
  .help = N_ ("A window, door or hole in a wall. Its reveal shades."),
};

const SqKind sq_disc_kind = {
  .name = N_ ("disc"),
  .size = sizeof (SqDisc),
  SQ_FIELDS (disc_fields),
  .help = N_ ("A round outline."),
};

const SqKind sq_piece_kind = {
  .name = N_ ("piece"),
  .size = sizeof (SqPiece),
  SQ_FIELDS (piece_fields),
  .names = SQ_NAMES_PIECE,
  .help = N_ ("A piece of furniture or set: an upright block that stops light."),
};

double
sq_wall_height_m (const SqWall *wall, const SqRoom *room)
{
  if (!isnan (wall->height_m))
    return wall->height_m;
  return isnan (room->ceiling_height_m) ? 2.5 : room->ceiling_height_m;
}

double
sq_opening_sill_m (const SqOpening *opening)
{
  if (!isnan (opening->sill_m))
    return opening->sill_m;
  return opening->kind == SQ_OPENING_WINDOW ? 0.9 : 0.0;
}

double
sq_opening_head_m (const SqOpening *opening, double wall_height_m)
{
  return isnan (opening->head_m) ? MIN (2.1, wall_height_m) : opening->head_m;
}

double
sq_opening_transmittance (const SqOpening *opening)
{
  if (!isnan (opening->transmittance))
    return opening->transmittance;
  return opening->kind == SQ_OPENING_WINDOW ? 0.8 : 1.0;
}

guint
sq_wall_n_edges (const SqWall *wall)
{
  return wall->closed ? wall->path->len : wall->path->len - 1;
}

gboolean
sq_wall_edge (const SqWall *wall, guint edge, SqPlace *from, SqPlace *to)
{
  if (edge >= sq_wall_n_edges (wall))
    return FALSE;
  *from = sq_path_at (wall->path, edge);
  *to = sq_path_at (wall->path, (edge + 1) % wall->path->len);
  return TRUE;
}
