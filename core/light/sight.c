/* sight.c: what of a lamp's face is seen from a point, past everything that stands between */
#include "light/sight.h"

/* What is more than this is not cut any further. There is room for twice as much, so that cuts
 * which are undone do not count. */
#define MOST_PARTS 1000
#define MOST_CORNERS (16 * MOST_PARTS)
#define MOST_PART_CORNERS 100
#define CELLS 32

G_STATIC_ASSERT (CELLS *CELLS <= 2 * MOST_PARTS);

void
sq_sight_init (SqSight *sight)
{
  *sight = (SqSight){ 0 };
  sq_face_parts_init (&sight->parts, 2 * MOST_PARTS, 2 * MOST_CORNERS);
  sq_face_parts_init (&sight->next, 2 * MOST_PARTS, 2 * MOST_CORNERS);
}

void
sq_sight_clear (SqSight *sight)
{
  sq_face_parts_clear (&sight->parts);
  sq_face_parts_clear (&sight->next);
  g_free (sight->lines);
  g_free (sight->between);
  *sight = (SqSight){ 0 };
}

void
sq_sight_reset (SqSight *sight)
{
  sight->whole = FALSE;
  sq_face_parts_empty (&sight->parts);
}

/* The obstacle's shadow, into @sight->lines. */
static int
shadow (SqSight *sight, const SqObstacle *obstacle)
{
  guint most = obstacle->solid.n_faces + obstacle->solid.n_edges;
  if (most > sight->n_lines) {
    sight->lines = g_renew (SqFaceLine, sight->lines, most);
    sight->n_lines = most;
  }
  return sq_face_shadow (&sight->face, &obstacle->solid, sight->from, sight->lines);
}

typedef enum {
  UNTOUCHED, /* nothing of it is hidden */
  HIDDEN,    /* all of it is */
  CUT,
  TOO_MANY, /* there is no room for what would be left */
} Outcome;

/* Cuts one part by a shadow, into @sight->next: what lies past a line is kept as it is, what is
 * within them all is weighed. A part that merely touches the shadow is not in it. Only when all
 * lines have been asked is it known whether anything is hidden: if not, all cuts are undone. */
static Outcome
cut_part (
  SqSight *sight, const SqFaceSpot *corners, guint n, double before, int n_lines, double passes)
{
  SqFaceParts *next = &sight->next;
  SqFaceSpot buffers[2][2 * SQ_MOST_PART_CORNERS];
  guint first_part = next->n_parts, first_corner = next->n_corners, n_cuts = 0, longest = 0;
  for (int k = 0; k < n_lines; k++) {
    if (n > SQ_MOST_PART_CORNERS || !sq_face_parts_have_room (next))
      return TOO_MANY;
    SqFaceSpot *within = buffers[n_cuts % 2];
    guint n_within, n_past;
    SqFaceSide side = sq_face_cut (corners, n, &sight->lines[k], SQ_TOUCH_M, within, &n_within,
                                   next->corners + next->n_corners, &n_past);
    if (side == SQ_FACE_PAST) {
      next->n_parts = first_part;
      next->n_corners = first_corner;
      return UNTOUCHED;
    }
    if (side == SQ_FACE_WITHIN)
      continue;
    sq_face_parts_end (next, n_past, before);
    longest = MAX (longest, n_past);
    corners = within;
    n = n_within;
    n_cuts++;
  }
  if (MAX (longest, n) > MOST_PART_CORNERS)
    return TOO_MANY;
  if (passes > 0.0 && !sq_face_parts_add (next, corners, n, before * passes))
    return TOO_MANY;
  return n_cuts > 0 ? CUT : HIDDEN;
}

/* The whole face becomes parts if the shadow cuts it. Returns: FALSE for too many */
static gboolean
hide_of_whole (SqSight *sight, int n_lines, double passes)
{
  SqFaceSpot corners[SQ_FACE_SIDES];
  guint n = sq_face_outline (&sight->face, corners);
  sq_face_parts_empty (&sight->next);
  Outcome outcome = cut_part (sight, corners, n, sight->passes, n_lines, passes);
  if (outcome == HIDDEN) {
    sight->passes *= passes;
    sight->whole = sight->passes > 0.0;
  } else if (outcome == CUT) {
    SqFaceParts swap = sight->parts;
    sight->parts = sight->next;
    sight->next = swap;
    sight->whole = FALSE;
  }
  return outcome != TOO_MANY;
}

static gboolean
hide_of_parts (SqSight *sight, int n_lines, double passes)
{
  gboolean changed = FALSE;
  sq_face_parts_empty (&sight->next);
  for (guint i = 0; i < sight->parts.n_parts; i++) {
    const SqFacePart *part = &sight->parts.parts[i];
    const SqFaceSpot *corners = sq_face_part_corners (&sight->parts, part);
    Outcome outcome = cut_part (sight, corners, part->n, part->passes, n_lines, passes);
    if (outcome == TOO_MANY ||
        (outcome == UNTOUCHED && !sq_face_parts_add (&sight->next, corners, part->n, part->passes)))
      return FALSE;
    changed = changed || outcome != UNTOUCHED;
  }
  if (changed) {
    SqFaceParts swap = sight->parts;
    sight->parts = sight->next;
    sight->next = swap;
  }
  return sight->parts.n_parts <= MOST_PARTS && sight->parts.n_corners <= MOST_CORNERS;
}

/* All of what is seen lies in the shadow. */
static void
weigh (SqSight *sight, double passes)
{
  sight->passes *= passes;
  sight->whole = sight->whole && sight->passes > 0.0;
  for (guint i = 0; i < sight->parts.n_parts; i++)
    sight->parts.parts[i].passes *= passes;
  if (!(passes > 0.0))
    sq_sight_reset (sight);
}

/* Returns: FALSE if there are too many parts now */
static gboolean
hide (SqSight *sight, const SqObstacle *obstacle)
{
  int n_lines = shadow (sight, obstacle);
  if (n_lines == SQ_HIDES_ALL)
    weigh (sight, obstacle->passes);
  if (n_lines <= 0)
    return TRUE;
  return sight->whole ? hide_of_whole (sight, n_lines, obstacle->passes)
                      : hide_of_parts (sight, n_lines, obstacle->passes);
}

static SqFaceSpot
middle_of (const SqFaceSpot *corners, guint n)
{
  SqFaceSpot sum = { 0.0, 0.0 };
  for (guint i = 0; i < n; i++) {
    sum.right_m += corners[i].right_m;
    sum.up_m += corners[i].up_m;
  }
  return (SqFaceSpot){ sum.right_m / n, sum.up_m / n };
}

/* Cuts a part across in CELLS slices, each added to @to. */
static void
slice (const SqFaceSpot *corners, guint n, gboolean upward, double half_m, SqFaceParts *to)
{
  SqFaceSpot buffers[2][2 * SQ_MOST_PART_CORNERS];
  guint n_cuts = 0;
  for (int k = 1; k < CELLS; k++) {
    SqFaceLine line = { .middle_m = half_m - 2.0 * half_m * k / CELLS };
    *(upward ? &line.up : &line.right) = 1.0;
    SqFaceSpot *rest = buffers[n_cuts % 2], *cell = to->corners + to->n_corners;
    guint n_cell, n_rest;
    SqFaceSide side = sq_face_cut (corners, n, &line, 0.0, cell, &n_cell, rest, &n_rest);
    if (side == SQ_FACE_PAST)
      continue;
    if (side == SQ_FACE_WITHIN)
      break;
    sq_face_parts_end (to, n_cell, 1.0);
    corners = rest;
    n = n_rest;
    n_cuts++;
  }
  sq_face_parts_add (to, corners, n, 1.0);
}

/* Weighs those cells whose middles lie in a shadow. */
static void
weigh_cells (SqFaceParts *cells, const SqFaceLine *lines, int n_lines, double passes)
{
  for (guint i = 0; i < cells->n_parts; i++) {
    SqFacePart *cell = &cells->parts[i];
    SqFaceSpot middle = middle_of (sq_face_part_corners (cells, cell), cell->n);
    int k = 0;
    while (k < n_lines && sq_face_line_height_m (&lines[k], middle) <= SQ_TOUCH_M)
      k++;
    if (k == n_lines)
      cell->passes *= passes;
  }
}

/* The stated limit's way out: cells, each seen or not by its middle. */
static void
see_cells (SqSight *sight, const SqObstacle *const *between, guint n_between)
{
  SqFaceSpot corners[SQ_FACE_SIDES];
  guint n = sq_face_outline (&sight->face, corners);
  SqFaceParts *strips = &sight->next, *cells = &sight->parts;
  sq_sight_reset (sight);
  sq_face_parts_empty (strips);
  slice (corners, n, FALSE, sight->face.half_right_m, strips);
  for (guint i = 0; i < strips->n_parts; i++) {
    const SqFacePart *strip = &strips->parts[i];
    slice (sq_face_part_corners (strips, strip), strip->n, TRUE, sight->face.half_up_m, cells);
  }
  for (guint i = 0; i < n_between; i++) {
    int n_lines = shadow (sight, between[i]);
    if (n_lines != SQ_HIDES_NOTHING)
      weigh_cells (cells, sight->lines, n_lines, between[i]->passes);
  }
  guint n_seen = 0;
  for (guint i = 0; i < cells->n_parts; i++)
    if (cells->parts[i].passes > 0.0)
      cells->parts[n_seen++] = cells->parts[i];
  cells->n_parts = n_seen;
}

static void
keep_between (SqSight *sight, guint n)
{
  if (n > sight->n_between) {
    sight->between = g_renew (const SqObstacle *, sight->between, n);
    sight->n_between = n;
  }
}

void
sq_sight_see (SqSight *sight,
              const SqFacePlane *face,
              SqPoint from,
              const SqObstacle *const *between,
              guint n_between,
              const SqThing *own)
{
  sq_sight_reset (sight);
  sight->from = from;
  sight->face = *face;
  sight->whole = TRUE;
  sight->passes = 1.0;
  for (guint i = 0; i < n_between && !sq_sight_is_dark (sight); i++) {
    if (between[i]->passes >= 1.0 || (own && between[i]->owner == own) || hide (sight, between[i]))
      continue;
    guint n = 0;
    keep_between (sight, n_between);
    for (guint k = 0; k < n_between; k++)
      if (between[k]->passes < 1.0 && !(own && between[k]->owner == own))
        sight->between[n++] = between[k];
    see_cells (sight, sight->between, n);
    return;
  }
}

void
sq_sight_see_past_all (SqSight *sight,
                       const SqFacePlane *face,
                       SqPoint from,
                       const GArray *doors,
                       const GArray *obstacles,
                       const SqThing *own)
{
  double right_m = face->half_right_m, up_m = face->half_up_m;
  double radius_m = sqrt (right_m * right_m + up_m * up_m);
  const GArray *lists[] = { doors, obstacles };
  guint n = 0;
  keep_between (sight, obstacles->len + (doors ? doors->len : 0));
  for (gsize list = 0; list < G_N_ELEMENTS (lists); list++)
    for (guint i = 0; lists[list] && i < lists[list]->len; i++) {
      const SqObstacle *obstacle = &g_array_index (lists[list], SqObstacle, i);
      if (!sq_solid_is_clear (&obstacle->solid, from, face->middle, radius_m))
        sight->between[n++] = obstacle;
    }
  sq_sight_see (sight, face, from, sight->between, n, own);
}
