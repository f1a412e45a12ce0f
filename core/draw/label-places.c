/* label-places.c: the places that one label might take, and what each costs */
#include "draw/label-places.h"

#define DIRECTIONS 16
static const double near_mm[] = { 1.4, 3, 4.5, 6.5, 9 };
static const double far_mm[] = { 13, 17, 22, 29, 37 };

#define NEAR_MM 3.0 /* within this of its thing a label needs no leader */
#define COST_LEADER_MM 0.4
#define LONG_LEADER_MM 12.0
#define BARE_TIMES 2.0 /* what lines cost that cross words without a plate */
#define FEW_LINES 12.0 /* two axes */
#define MANY_LINES_SHARE 0.25
#define MOST_LEADER_MM 40.0
#define COST_TOO_LONG 200.0
#define COST_LONG_LEADER 20.0 /* the eye loses it */
#define MOST_UNLED 28.0       /* of what a leader would cost, where there is none */
#define COST_NEARER 4.0       /* nearer to something else than to its own thing */
#define COST_TOUCH 40.0       /* of lying on anything, however little */
#define COST_LEADERS_CROSS 20.0
#define COST_OWN_ROWS 900.0
#define COST_OFF_FIELD 1e5

static SqPaperBox
moved (SqPaperBox box, SqPaperPoint by)
{
  box.x_mm += by.x_mm;
  box.y_mm += by.y_mm;
  return box;
}

static SqPaperBox
head_of (const SqWish *wish, int detail, int side)
{
  return wish->lesser_head[detail].width_mm > 0.0 ? wish->lesser_head[detail] : wish->head[side];
}

static SqPaperBox
whole (SqPaperBox head, SqPaperBox rows)
{
  return rows.width_mm > 0.0 ? sq_paper_box_union (head, rows) : head;
}

SqPaperBox
sq_wish_box (const SqWish *wish)
{
  SqPaperBox box =
    whole (head_of (wish, wish->detail, wish->side), wish->rows[wish->detail][wish->side]);
  return moved (box, wish->at);
}

/* Where a leader ends: inside the thing, at the near part of a long one. */
static SqPaperPoint
inside (SqTurnedBox box, SqPaperPoint from)
{
  double dx = from.x_mm - box.middle.x_mm, dy = from.y_mm - box.middle.y_mm;
  double c = cos (box.angle_rad), s = sin (box.angle_rad);
  double along = CLAMP (dx * c + dy * s, -0.6 * box.half_length_mm, 0.6 * box.half_length_mm);
  double across = CLAMP (-dx * s + dy * c, -0.6 * box.half_width_mm, 0.6 * box.half_width_mm);
  /* Of a squat body its middle is where the eye expects it. */
  if (box.half_length_mm < 4.0)
    along *= 0.3;
  if (box.half_width_mm < 4.0)
    across *= 0.3;
  return sq_paper_along (sq_paper_along (box.middle, box.angle_rad, along),
                         box.angle_rad + G_PI / 2, across);
}

static void
set_leader (const SqWish *wish, SqLabelPlace *place)
{
  SqPaperPoint middle = sq_paper_box_middle (place->head);
  SqPaperPoint end = inside (wish->about, middle);
  double leave = 0.0;
  /* A pill's leader aims at the pill, whose role line hangs below its middle. */
  if (wish->rows[0][0].width_mm > 0.0)
    middle = place->at;
  place->leader = (SqPaperLine){ middle, end };
  if (!sq_paper_clip_line (place->head, middle, end, NULL, &leave))
    return;
  place->leader.from.x_mm += leave * (end.x_mm - middle.x_mm);
  place->leader.from.y_mm += leave * (end.y_mm - middle.y_mm);
}

static SqPaperBox
round_line (SqPaperLine line)
{
  return (SqPaperBox){ MIN (line.from.x_mm, line.to.x_mm), MIN (line.from.y_mm, line.to.y_mm),
                       fabs (line.from.x_mm - line.to.x_mm), fabs (line.from.y_mm - line.to.y_mm) };
}

/* Without its cost. */
static SqLabelPlace
place_at (const SqWish *wish, int detail, int side, SqPaperPoint at, gboolean has_leader)
{
  SqLabelPlace place = { .at = at, .side = side, .has_leader = has_leader && wish->may_lead };
  place.head = moved (head_of (wish, detail, side), at);
  place.rows = wish->rows[detail][side];
  if (place.rows.width_mm > 0.0)
    place.rows = moved (place.rows, at);
  place.box = whole (place.head, place.rows);
  set_leader (wish, &place);
  place.reach = sq_paper_box_grown (place.box, SQ_LABEL_AIR_MM);
  if (place.has_leader)
    place.reach = sq_paper_box_union (place.reach, round_line (place.leader));
  return place;
}

static double
length_cost (const SqWish *wish, const SqLabelPlace *place)
{
  /* What chose its place chose its distance. */
  if (wish->spots != NULL)
    return 0.0;
  double length_mm = sq_paper_distance_mm (place->leader.from, place->leader.to);
  double cost = COST_LEADER_MM * length_mm;
  if (place->has_leader && length_mm > LONG_LEADER_MM)
    cost += COST_LONG_LEADER;
  if (place->has_leader && length_mm > MOST_LEADER_MM)
    cost += COST_TOO_LONG;
  return cost;
}

static double
leader_cost (const SqWish *wish, const SqLabelPlace *place, SqLabelIndex *index)
{
  double cost = length_cost (wish, place);
  if (!place->has_leader && wish->spots != NULL)
    return cost;
  double crossed = sq_label_index_leader_cost (index, place->leader, wish->of);
  /* What stands between is bad for the eye too that has to do without a line. */
  if (!place->has_leader)
    return cost + MIN (crossed, MOST_UNLED);
  if (place->gap_mm <= NEAR_MM)
    cost += COST_NEARER;
  /* Never under its own rows; the air round the head is not yet rows. */
  if (place->rows.width_mm > 0.0 && sq_paper_line_hits (place->leader, place->rows))
    cost += COST_OWN_ROWS;
  return cost + crossed;
}

/* On a plate many lines are hardly worse than a few. */
static double
lines_cost (const SqWish *wish, double cost)
{
  if (wish->bare)
    return BARE_TIMES * cost;
  return MIN (cost, FEW_LINES) + MANY_LINES_SHARE * MAX (cost - FEW_LINES, 0.0);
}

static double
fixed_cost (const SqWish *wish, const SqLabelPlace *place, SqLabelIndex *index)
{
  double cost = leader_cost (wish, place, index);
  SqLabelCover cover = sq_label_index_cover (index, place->box, SQ_LABEL_AIR_MM);

  if (!sq_paper_box_within (place->box, sq_label_index_field (index)))
    cost += COST_OFF_FIELD;
  if (sq_label_index_is_outside (index, sq_paper_box_middle (place->box)))
    cost -= SQ_GAIN_OUTSIDE;
  cost += SQ_COST_AIR * cover.solid_in_air_mm2;
  if (cover.solid_mm2 > 0.0)
    cost += COST_TOUCH;
  return cost + cover.boxes_cost + lines_cost (wish, cover.lines_cost);
}

/* The place where @part of the label, relative to its point, is @distance_mm off its thing. */
static SqPaperPoint
point_beside (const SqWish *wish, SqPaperBox part, double angle_rad, double distance_mm)
{
  SqTurnedBox shape = { .half_length_mm = part.width_mm / 2, .half_width_mm = part.height_mm / 2 };
  double off_mm = sq_turned_boxes_apart_mm (wish->about, shape, angle_rad, distance_mm);
  SqPaperPoint middle = sq_paper_along (wish->about.middle, angle_rad, off_mm);
  return (SqPaperPoint){ middle.x_mm - part.x_mm - part.width_mm / 2,
                         middle.y_mm - part.y_mm - part.height_mm / 2 };
}

/* Beside its thing, with a leader where it stands off or where something else is nearer. */
static void
add_beside (const SqWish *wish,
            int detail,
            int side,
            SqPaperPoint at,
            double gap_mm,
            SqLabelIndex *index,
            GArray *places)
{
  SqLabelPlace place = place_at (wish, detail, side, at, gap_mm > NEAR_MM);
  if (wish->may_lead && !place.has_leader &&
      sq_label_index_any_solid (index, sq_paper_box_grown (place.head, gap_mm), wish->of))
    place = place_at (wish, detail, side, at, TRUE);
  place.gap_mm = gap_mm;
  g_array_append_val (places, place);
}

/* All directions at one distance: the head is beside the thing, or else, near it, the whole label.
 */
static void
add_round (
  const SqWish *wish, int detail, double gap_mm, gboolean near, SqLabelIndex *index, GArray *places)
{
  gboolean has_rows = wish->rows[detail][SQ_ROWS_RIGHT].width_mm > 0.0;
  for (int direction = 0; direction < DIRECTIONS; direction++)
    for (int side = 0; side < (has_rows ? SQ_ROWS_SIDES : 1); side++) {
      double angle_rad = 2 * G_PI * direction / DIRECTIONS;
      SqPaperBox head = head_of (wish, detail, side);
      SqPaperBox all = whole (head, wish->rows[detail][side]);
      SqPaperPoint at = point_beside (wish, head, angle_rad, gap_mm);
      add_beside (wish, detail, side, at, gap_mm, index, places);
      if (!has_rows || !near)
        continue;
      at = point_beside (wish, all, angle_rad, gap_mm);
      add_beside (wish, detail, side, at, gap_mm, index, places);
    }
}

static void
add_spots (const SqWish *wish, int detail, GArray *places)
{
  for (guint i = 0; i < wish->spots->len; i++) {
    const SqLabelSpot *spot = &g_array_index (wish->spots, SqLabelSpot, i);
    SqLabelPlace place = place_at (wish, detail, SQ_ROWS_RIGHT, spot->at, TRUE);
    place.cost = spot->cost;
    g_array_append_val (places, place);
  }
}

static int
cheapest_first (gconstpointer a, gconstpointer b)
{
  const SqLabelPlace *one = a, *other = b;
  if (one->cost != other->cost)
    return one->cost < other->cost ? -1 : 1;
  return one->order < other->order ? -1 : one->order > other->order;
}

GArray *
sq_label_places (
  const SqWish *wish, int detail, SqLabelRing ring, SqLabelIndex *index, SqPaperBox *reach)
{
  const double *distances_mm = ring == SQ_RING_NEAR ? near_mm : far_mm;
  guint n = ring == SQ_RING_NEAR ? G_N_ELEMENTS (near_mm) : G_N_ELEMENTS (far_mm);
  GArray *places = g_array_new (FALSE, FALSE, sizeof (SqLabelPlace));

  if (wish->spots == NULL)
    for (guint i = 0; i < n && distances_mm[i] <= wish->most_mm; i++)
      add_round (wish, detail, distances_mm[i], ring == SQ_RING_NEAR, index, places);
  else if (ring == SQ_RING_NEAR)
    add_spots (wish, detail, places);
  if (places->len == 0 && ring == SQ_RING_NEAR) {
    /* Better badly placed than not at all. */
    SqLabelPlace place = place_at (wish, detail, SQ_ROWS_RIGHT, wish->about.middle, FALSE);
    g_array_append_val (places, place);
  }
  *reach = (SqPaperBox){ 0 };
  for (guint i = 0; i < places->len; i++) {
    SqPaperBox one = g_array_index (places, SqLabelPlace, i).reach;
    *reach = i == 0 ? one : sq_paper_box_union (*reach, one);
  }
  for (guint i = 0; i < places->len; i++) {
    SqLabelPlace *place = &g_array_index (places, SqLabelPlace, i);
    place->order = (int)i;
    place->cost += fixed_cost (wish, place, index);
  }
  g_array_sort (places, cheapest_first);
  return places;
}

SqLabelPlace
sq_label_place_pinned (const SqWish *wish, int side, SqLabelIndex *index)
{
  double angle_rad =
    atan2 (wish->at.y_mm - wish->about.middle.y_mm, wish->at.x_mm - wish->about.middle.x_mm);
  SqLabelPlace place = place_at (wish, 0, side, wish->at, FALSE);
  double gap_mm = sq_paper_distance_mm (place.leader.from, wish->about.middle) -
                  sq_turned_box_reach_mm (wish->about, angle_rad);
  place = place_at (wish, 0, side, wish->at, gap_mm > NEAR_MM);
  place.cost = fixed_cost (wish, &place, index);
  return place;
}

SqLabelPlace
sq_label_place_moved (
  const SqWish *wish, int detail, const SqLabelPlace *place, SqPaperPoint by, SqLabelIndex *index)
{
  SqPaperPoint at = { place->at.x_mm + by.x_mm, place->at.y_mm + by.y_mm };
  SqLabelPlace there = place_at (wish, detail, place->side, at, place->has_leader);
  there.order = place->order;
  there.gap_mm = place->gap_mm;
  there.cost = fixed_cost (wish, &there, index);
  return there;
}

double
sq_label_places_between (const SqLabelPlace *a, const SqLabelPlace *b)
{
  double cost = 0.0;
  if (sq_label_reaches_apart (&a->reach, &b->reach))
    return cost;
  double shared_mm2 = sq_paper_overlap_mm2 (sq_paper_box_grown (a->box, SQ_LABEL_AIR_MM / 2),
                                            sq_paper_box_grown (b->box, SQ_LABEL_AIR_MM / 2));
  if (shared_mm2 > 0.0)
    cost += SQ_COST_AIR * shared_mm2;
  if (shared_mm2 > 0.0 && sq_paper_boxes_overlap (a->box, b->box))
    cost += 2 * COST_TOUCH + SQ_COST_LABEL * sq_paper_overlap_mm2 (a->box, b->box);
  if (a->has_leader && sq_paper_line_hits (a->leader, b->box))
    cost += SQ_COST_LEADER_OVER;
  if (b->has_leader && sq_paper_line_hits (b->leader, a->box))
    cost += SQ_COST_LEADER_OVER;
  if (a->has_leader && b->has_leader &&
      sq_paper_lines_cross (a->leader.from, a->leader.to, b->leader.from, b->leader.to))
    cost += COST_LEADERS_CROSS;
  return cost;
}
