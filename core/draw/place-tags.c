/* place-tags.c: where tags and labels stand */
#include "draw/place-tags.h"

#define DIRECTIONS 16
static const double distances_mm[] = { 1.4, 3, 6, 10, 16, 25, 40 };
#define DISTANCES ((int)G_N_ELEMENTS (distances_mm))
#define PLACES (DIRECTIONS * DISTANCES * SQ_ROWS_SIDES)

#define ROUNDS 6
#define NEAR_MM 3.0  /* within this of its thing a label needs no leader */
#define AIR_MM 0.8   /* wanted round every label */
#define COST_AIR 2.0 /* per mm² of it taken */
#define COST_LEADER_MM 0.4
#define COST_LEADERS_CROSS 20.0
#define COST_OWN_ROWS 900.0
#define COST_OFF_FIELD 1e5
#define COST_LESS 15.0 /* a label that says less had better stand much better */

/* Covering less than this is not seen. */
#define SEEN_MM2 0.05

/* One place that a label might take. */
typedef struct {
  SqPaperPoint at;
  int side;
  gboolean has_leader;
  SqPaperLine leader;
  SqPaperBox box, head, rows;
  double cost; /* against what does not move */
} Place;

typedef struct {
  SqWish *wishes;
  guint n;
  const SqLabelObstacles *obstacles;
  gboolean *placed;
  Place *now;      /* where each stands */
  GArray **places; /* of Place, for each label and detail, when first asked for */
} Board;

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
set_leader (const SqWish *wish, Place *place)
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

static double
leader_cost (const SqWish *wish, const Place *place, const SqLabelObstacles *obstacles)
{
  SqPaperLine leader = place->leader;
  double cost = COST_LEADER_MM * sq_paper_distance_mm (leader.from, leader.to);
  if (!place->has_leader)
    return cost;
  /* Never under its own rows; the air round the head is not yet rows. */
  if (place->rows.width_mm > 0.0 && sq_paper_line_hits (leader, place->rows))
    cost += COST_OWN_ROWS;
  return cost + sq_label_obstacles_leader_cost (obstacles, leader, wish->of);
}

static double
fixed_cost (const SqWish *wish, const Place *place, const SqLabelObstacles *obstacles)
{
  SqPaperPoint middle = sq_paper_box_middle (place->box);
  SqPaperBox air = sq_paper_box_grown (place->box, AIR_MM);
  double cost = leader_cost (wish, place, obstacles);

  if (!sq_paper_box_within (place->box, obstacles->field))
    cost += COST_OFF_FIELD;
  if (obstacles->is_outside != NULL && obstacles->is_outside (middle, obstacles->outside_data))
    cost -= SQ_GAIN_OUTSIDE;
  cost += COST_AIR * sq_label_obstacles_covered_mm2 (obstacles, air, SQ_COST_PANEL);
  return cost + sq_label_obstacles_cost (obstacles, place->box);
}

static Place
place_at (const SqWish *wish, int detail, int side, SqPaperPoint at, gboolean has_leader)
{
  Place place = { .at = at, .side = side, .has_leader = has_leader && wish->may_lead };
  place.head = moved (head_of (wish, detail, side), at);
  place.rows = wish->rows[detail][side];
  if (place.rows.width_mm > 0.0)
    place.rows = moved (place.rows, at);
  place.box = whole (place.head, place.rows);
  set_leader (wish, &place);
  return place;
}

/* All places of a label at one detail, with what they cost against the things that stand still. */
static const GArray *
places_of (Board *board, guint index, int detail)
{
  GArray **known = &board->places[index * SQ_TAG_DETAILS + (guint)detail];
  const SqWish *wish = &board->wishes[index];
  if (*known != NULL)
    return *known;
  *known = g_array_sized_new (FALSE, FALSE, sizeof (Place), PLACES);

  for (int i = 0; i < DISTANCES && distances_mm[i] <= wish->most_mm; i++)
    for (int direction = 0; direction < DIRECTIONS; direction++)
      for (int side = 0; side < SQ_ROWS_SIDES; side++) {
        gboolean one_sided = wish->rows[detail][SQ_ROWS_RIGHT].width_mm <= 0.0;
        if (one_sided && side != SQ_ROWS_RIGHT)
          continue;
        SqPaperBox head = head_of (wish, detail, side);
        SqTurnedBox shape = { .half_length_mm = head.width_mm / 2,
                              .half_width_mm = head.height_mm / 2 };
        double angle = 2 * G_PI * direction / DIRECTIONS;
        double off = sq_turned_boxes_apart_mm (wish->about, shape, angle, distances_mm[i]);
        SqPaperPoint middle = sq_paper_along (wish->about.middle, angle, off);
        SqPaperPoint at = { middle.x_mm - head.x_mm - head.width_mm / 2,
                            middle.y_mm - head.y_mm - head.height_mm / 2 };
        Place place = place_at (wish, detail, side, at, distances_mm[i] > NEAR_MM);
        place.cost = fixed_cost (wish, &place, board->obstacles);
        g_array_append_val (*known, place);
      }
  return *known;
}

/* What a place costs against one label that stands. */
static double
between (const Place *a, const Place *b)
{
  SqPaperBox air = sq_paper_box_grown (a->box, AIR_MM);
  double cost = 0.0;

  if (sq_paper_boxes_overlap (air, b->box))
    cost += SQ_COST_LABEL * sq_paper_overlap_mm2 (a->box, b->box) +
            COST_AIR * sq_paper_overlap_mm2 (air, b->box);
  if (a->has_leader && sq_paper_line_hits (a->leader, b->box))
    cost += SQ_COST_LEADER_OVER;
  if (b->has_leader && sq_paper_line_hits (b->leader, a->box))
    cost += SQ_COST_LEADER_OVER;
  if (a->has_leader && b->has_leader &&
      sq_paper_lines_cross (a->leader.from, a->leader.to, b->leader.from, b->leader.to))
    cost += COST_LEADERS_CROSS;
  return cost;
}

/* Stops counting once it is past @enough. */
static double
moving_cost (const Board *board, guint index, const Place *place, double enough)
{
  double cost = 0.0;
  for (guint i = 0; i < board->n && cost < enough; i++)
    if (i != index && board->placed[i])
      cost += between (place, &board->now[i]);
  return cost;
}

static double
cost_now (const Board *board, guint index)
{
  return board->now[index].cost + moving_cost (board, index, &board->now[index], G_MAXDOUBLE);
}

static double
find_best (Board *board, guint index, int detail, Place *best)
{
  const GArray *places = places_of (board, index, detail);
  double least = G_MAXDOUBLE;
  for (guint i = 0; i < places->len; i++) {
    const Place *place = &g_array_index (places, Place, i);
    if (place->cost >= least)
      continue;
    double cost = place->cost + moving_cost (board, index, place, least - place->cost);
    if (cost < least) {
      least = cost;
      *best = *place;
    }
  }
  return least;
}

static void
put (Board *board, guint index, const Place *place, int detail)
{
  board->now[index] = *place;
  board->placed[index] = TRUE;
  board->wishes[index].detail = (SqTagDetail)detail;
}

/* TRUE if it found a better place. */
static gboolean
replace_better (Board *board, guint index)
{
  Place best;
  double now = cost_now (board, index);
  if (find_best (board, index, (int)board->wishes[index].detail, &best) >= now - 1e-9)
    return FALSE;
  put (board, index, &best, (int)board->wishes[index].detail);
  return TRUE;
}

typedef struct {
  guint index;
  double cost;
} Ranked;

static int
dearest_first (gconstpointer a, gconstpointer b)
{
  const Ranked *one = a, *other = b;
  if (one->cost != other->cost)
    return one->cost > other->cost ? -1 : 1;
  return one->index < other->index ? -1 : one->index > other->index;
}

static void
improve (Board *board, int rounds)
{
  g_autofree Ranked *order = g_new (Ranked, board->n + 1);
  gboolean better = TRUE;
  for (int round = 0; round < rounds && better; round++) {
    guint n = 0;
    better = FALSE;
    for (guint i = 0; i < board->n; i++)
      if (!board->wishes[i].pinned)
        order[n++] = (Ranked){ i, cost_now (board, i) };
    qsort (order, n, sizeof *order, dearest_first);
    for (guint i = 0; i < n; i++)
      better = replace_better (board, order[i].index) || better;
  }
}

/* Square millimetres of other labels, letters, faces and bodies that it lies on. */
static double
covered_mm2 (const Board *board, guint index)
{
  SqPaperBox box = board->now[index].box;
  double covered = 0.0;
  for (guint i = 0; i < board->n; i++)
    if (i != index && board->placed[i])
      covered += sq_paper_overlap_mm2 (box, board->now[i].box);
  return covered + sq_label_obstacles_covered_mm2 (board->obstacles, box, SQ_COST_BODY);
}

/* Labels that still lie on something say less, as far as that helps. */
static void
say_less (Board *board)
{
  for (guint i = 0; i < board->n; i++) {
    SqWish *wish = &board->wishes[i];
    for (int detail = (int)wish->detail + 1;
         detail < wish->n_details && !wish->pinned && covered_mm2 (board, i) > SEEN_MM2; detail++) {
      Place best;
      if (find_best (board, i, detail, &best) + COST_LESS < cost_now (board, i))
        put (board, i, &best, detail);
    }
  }
}

/* What is not worth its place goes, the dearest first, as others may stand well without it. */
static void
leave_out (Board *board)
{
  for (gboolean any = TRUE; any;) {
    guint worst = 0;
    double most = 0.0;
    any = FALSE;
    for (guint i = 0; i < board->n; i++) {
      const SqWish *wish = &board->wishes[i];
      if (wish->most_cost <= 0.0 || wish->pinned || !board->placed[i])
        continue;
      double over = cost_now (board, i) - wish->most_cost;
      if (over <= most)
        continue;
      any = TRUE;
      most = over;
      worst = i;
    }
    if (!any)
      return;
    board->placed[worst] = FALSE;
    board->wishes[worst].left_out = TRUE;
  }
}

/* A pinned tag stands where it is; its rows take the side that covers less. */
static void
put_pinned (Board *board, guint index)
{
  SqWish *wish = &board->wishes[index];
  double angle =
    atan2 (wish->at.y_mm - wish->about.middle.y_mm, wish->at.x_mm - wish->about.middle.x_mm);
  double least = G_MAXDOUBLE;

  for (int side = 0; side < SQ_ROWS_SIDES; side++) {
    Place place = place_at (wish, 0, side, wish->at, FALSE);
    double gap = sq_paper_distance_mm (place.leader.from, wish->about.middle) -
                 sq_turned_box_reach_mm (wish->about, angle);
    place.has_leader = wish->may_lead && gap > NEAR_MM;
    place.cost = fixed_cost (wish, &place, board->obstacles);
    double cost = place.cost + moving_cost (board, index, &place, G_MAXDOUBLE);
    if (cost < least) {
      least = cost;
      put (board, index, &place, 0);
    }
  }
}

void
sq_place_tags (SqWish *wishes, guint n, const SqLabelObstacles *obstacles)
{
  Board board = { .wishes = wishes,
                  .n = n,
                  .obstacles = obstacles,
                  .placed = g_new0 (gboolean, n + 1),
                  .now = g_new0 (Place, n + 1),
                  .places = g_new0 (GArray *, n * SQ_TAG_DETAILS + 1) };

  for (guint i = 0; i < n; i++)
    if (wishes[i].pinned)
      put_pinned (&board, i);
  for (guint i = 0; i < n; i++) {
    Place best;
    if (wishes[i].pinned)
      continue;
    find_best (&board, i, 0, &best);
    put (&board, i, &best, 0);
  }
  improve (&board, ROUNDS);
  say_less (&board);
  improve (&board, 1);
  leave_out (&board);

  for (guint i = 0; i < n; i++) {
    wishes[i].at = board.now[i].at;
    wishes[i].side = board.now[i].side;
    wishes[i].has_leader = board.now[i].has_leader;
    wishes[i].leader = board.now[i].leader;
  }
  for (guint i = 0; i < n * SQ_TAG_DETAILS; i++)
    if (board.places[i] != NULL)
      g_array_unref (board.places[i]);
  g_free (board.places);
  g_free (board.now);
  g_free (board.placed);
}
