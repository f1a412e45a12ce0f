/* check-set.c: walls, openings and pieces that can be built */
#include "scene/check.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>

#define SAME_PLACE_M 1e-6

static double
turn (SqPlace a, SqPlace b, SqPlace c)
{
  return (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
}

static gboolean
cross (SqPlace a, SqPlace b, SqPlace c, SqPlace d)
{
  return turn (a, b, c) * turn (a, b, d) < 0.0 && turn (c, d, a) * turn (c, d, b) < 0.0;
}

static double
outline_area_m2 (const GArray *outline)
{
  double twice = 0.0;
  for (guint i = 0; i < outline->len; i++) {
    SqPlace a = sq_path_at (outline, i), b = sq_path_at (outline, (i + 1) % outline->len);
    twice += a.x_m * b.y_m - b.x_m * a.y_m;
  }
  return fabs (twice) / 2.0;
}

static gboolean
outline_crosses_itself (const GArray *outline)
{
  guint n = outline->len;
  for (guint i = 0; i < n; i++) {
    for (guint k = i + 1; k < n; k++) {
      if (cross (sq_path_at (outline, i), sq_path_at (outline, (i + 1) % n),
                 sq_path_at (outline, k), sq_path_at (outline, (k + 1) % n)))
        return TRUE;
    }
  }
  return FALSE;
}

static gboolean
opening_check (
  const SqWall *wall, const SqRoom *room, guint index, const SqWhere *where, GError **error)
{
  const SqOpening *opening = SQ_AT (SqOpening, wall->openings, index);
  SqReading reading = { .where = where };
  double height_m = sq_wall_height_m (wall, room);
  double sill_m = sq_opening_sill_m (opening), head_m = sq_opening_head_m (opening, height_m);
  SqPlace from, to;
  if (!sq_wall_edge (wall, (guint)opening->edge, &from, &to))
    return sq_reading_error (&reading, SQ_ERROR_GEOMETRY, error,
                             _ ("edge %d does not exist, expected 0 to %u"), opening->edge,
                             sq_wall_n_edges (wall) - 1);
  double length_m = sq_place_distance_m (from, to);
  if (opening->offset_m + opening->width_m > length_m + SAME_PLACE_M) {
    g_autofree char *a = sq_number_text (opening->offset_m + opening->width_m),
                    *b = sq_number_text (length_m);
    return sq_reading_error (
      &reading, SQ_ERROR_GEOMETRY, error,
      _ ("reaches to %s m along an edge of %s m, expected offset and width within it"), a, b);
  }
  if (head_m > height_m + SAME_PLACE_M) {
    g_autofree char *a = sq_number_text (head_m), *b = sq_number_text (height_m);
    return sq_reading_error (&reading, SQ_ERROR_GEOMETRY, error,
                             _ ("head at %s m is above the wall's top at %s m, expected it below"),
                             a, b);
  }
  if (!(sill_m < head_m)) {
    g_autofree char *a = sq_number_text (sill_m), *b = sq_number_text (head_m);
    return sq_reading_error (&reading, SQ_ERROR_GEOMETRY, error,
                             _ ("sill at %s m is not under the head at %s m, expected it lower"), a,
                             b);
  }
  for (guint i = 0; i < index; i++) {
    const SqOpening *other = SQ_AT (SqOpening, wall->openings, i);
    gboolean beside = other->edge != opening->edge ||
                      other->offset_m + other->width_m <= opening->offset_m + SAME_PLACE_M ||
                      opening->offset_m + opening->width_m <= other->offset_m + SAME_PLACE_M;
    gboolean above = sq_opening_head_m (other, height_m) <= sill_m + SAME_PLACE_M ||
                     head_m <= sq_opening_sill_m (other) + SAME_PLACE_M;
    if (!beside && !above)
      return sq_reading_error (&reading, SQ_ERROR_GEOMETRY, error,
                               _ ("lies over openings[%u] of the same wall, expected them apart"),
                               i);
  }
  return TRUE;
}

static gboolean
wall_check (const SqWall *wall, const SqRoom *room, const SqWhere *where, GError **error)
{
  SqReading reading = { .where = where };
  if (wall->closed && wall->path->len < 3)
    return sq_reading_error (&reading, SQ_ERROR_GEOMETRY, error,
                             _ ("is closed with %u points, expected at least 3"), wall->path->len);
  for (guint i = 0; i < sq_wall_n_edges (wall); i++) {
    SqPlace from, to;
    sq_wall_edge (wall, i, &from, &to);
    if (sq_place_distance_m (from, to) < SAME_PLACE_M) {
      SqWhere path = { .up = where, .key = "path" };
      SqWhere point = { .up = &path, .index = (i + 1) % wall->path->len };
      SqReading at = { .where = &point };
      return sq_reading_error (&at, SQ_ERROR_GEOMETRY, error,
                               _ ("stands on the point before it, expected another place"));
    }
  }
  for (guint i = 0; i < wall->openings->len; i++) {
    SqWhere list = { .up = where, .key = "openings" };
    SqWhere opening = { .up = &list, .index = i };
    if (!opening_check (wall, room, i, &opening, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
piece_check (const SqPiece *piece, const SqWhere *where, GError **error)
{
  SqReading reading = { .where = where };
  if ((piece->outline->len > 0) == (piece->disc != NULL))
    return sq_reading_error (&reading, SQ_ERROR_VALUE, error,
                             piece->disc != NULL
                               ? _ ("has an outline and a disc, expected one")
                               : _ ("has no shape, expected an outline or a disc"));
  if (piece->disc == NULL) {
    if (piece->outline->len < 3 || outline_area_m2 (piece->outline) < 1e-9)
      return sq_reading_error (&reading, SQ_ERROR_GEOMETRY, error,
                               _ ("outline has no area, expected at least 3 corners round one"));
    if (outline_crosses_itself (piece->outline))
      return sq_reading_error (&reading, SQ_ERROR_GEOMETRY, error,
                               _ ("outline crosses itself, expected its corners in order"));
  }
  if (!(piece->top_m > piece->base_m)) {
    g_autofree char *a = sq_number_text (piece->top_m), *b = sq_number_text (piece->base_m);
    return sq_reading_error (&reading, SQ_ERROR_GEOMETRY, error,
                             _ ("top at %s m is not above the base at %s m, expected it higher"), a,
                             b);
  }
  return TRUE;
}

gboolean
sq_set_check (const SqScene *scene, GError **error)
{
  SqWhere walls = { .key = "walls" }, pieces = { .key = "pieces" };
  for (guint i = 0; i < scene->walls->len; i++) {
    SqWhere wall = { .up = &walls, .index = i };
    if (!wall_check (SQ_AT (SqWall, scene->walls, i), scene->room, &wall, error))
      return FALSE;
  }
  for (guint i = 0; i < scene->pieces->len; i++) {
    SqWhere piece = { .up = &pieces, .index = i };
    if (!piece_check (SQ_AT (SqPiece, scene->pieces, i), &piece, error))
      return FALSE;
  }
  return TRUE;
}
