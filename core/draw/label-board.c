/* label-board.c: where each label stands now, and what that costs */
#include "draw/label-board.h"

/* Apart from everything. */
static const SqPaperBox nowhere = { G_MAXDOUBLE, G_MAXDOUBLE, 0.0, 0.0 };

/* On an average each label may push in so often, and so many may stay while all others move about
 * them. With more labels than that it would take long and be of little use. */
#define PUSHES_EACH 40
#define AROUNDS 100
#define MOST_LABELS 250

void
sq_label_board_init (SqLabelBoard *board,
                     SqWish *wishes,
                     guint n,
                     const SqLabelObstacles *obstacles)
{
  gboolean many = n > MOST_LABELS;
  *board = (SqLabelBoard){ .wishes = wishes,
                           .n = n,
                           .index = sq_label_index_new (obstacles),
                           .placed = g_new0 (gboolean, n + 1),
                           .now = g_new0 (SqLabelPlace, n + 1),
                           .taken = g_new (SqPaperBox, n + 1),
                           .choices = g_new0 (SqLabelChoices, n * SQ_TAG_DETAILS * SQ_RINGS + 1),
                           .reach = g_new (SqPaperBox, n + 1),
                           .untried = g_new0 (guint8, n + 1),
                           .about = g_new (guint, n + 1),
                           .settled = g_new0 (gboolean, n + 1),
                           .yield = G_MAXDOUBLE,
                           .many = many,
                           .pushes_left = many ? n : n * PUSHES_EACH,
                           .arounds_left = many ? 0 : AROUNDS };
  for (guint i = 0; i < n; i++)
    board->taken[i] = board->reach[i] = nowhere;
}

void
sq_label_board_clear (SqLabelBoard *board)
{
  for (guint i = 0; i < board->n * SQ_TAG_DETAILS * SQ_RINGS; i++)
    if (board->choices[i].places != NULL)
      g_array_unref (board->choices[i].places);
  sq_label_index_free (board->index);
  g_free (board->placed);
  g_free (board->now);
  g_free (board->taken);
  g_free (board->choices);
  g_free (board->reach);
  g_free (board->untried);
  g_free (board->about);
  g_free (board->settled);
}

const SqLabelChoices *
sq_label_board_choices (SqLabelBoard *board, guint label, int detail, SqLabelRing ring)
{
  guint which = (label * SQ_TAG_DETAILS + (guint)detail) * SQ_RINGS + ring;
  SqLabelChoices *choices = &board->choices[which];
  SqPaperBox *reach = &board->reach[label];
  if (choices->places != NULL)
    return choices;
  choices->places =
    sq_label_places (&board->wishes[label], detail, ring, board->index, &choices->reach);
  if (choices->places->len > 0)
    *reach =
      reach->x_mm == nowhere.x_mm ? choices->reach : sq_paper_box_union (*reach, choices->reach);
  return choices;
}

void
sq_label_board_stand (SqLabelBoard *board, guint label, const SqLabelPlace *place)
{
  board->now[label] = *place;
  board->taken[label] = place->reach;
}

/* Something changed in @where: whoever can reach there may stand better now. */
static void
mark_untried (SqLabelBoard *board, SqPaperBox where)
{
  for (guint i = 0; i < board->n; i++)
    if (!sq_label_reaches_apart (&board->reach[i], &where))
      board->untried[i] = G_MAXUINT8;
}

void
sq_label_board_put (SqLabelBoard *board, guint label, const SqLabelPlace *place, int detail)
{
  if (board->placed[label])
    mark_untried (board, board->taken[label]);
  mark_untried (board, place->reach);
  sq_label_board_stand (board, label, place);
  board->placed[label] = TRUE;
  board->wishes[label].detail = (SqTagDetail)detail;
}

void
sq_label_board_take_off (SqLabelBoard *board, guint label)
{
  board->placed[label] = FALSE;
  board->taken[label] = nowhere;
  board->wishes[label].left_out = TRUE;
}

double
sq_label_board_cost_at (const SqLabelBoard *board, guint label, const SqLabelPlace *place)
{
  double cost = place->cost;
  for (guint i = 0; i < board->n; i++)
    if (!sq_label_reaches_apart (&place->reach, &board->taken[i]) && i != label)
      cost += sq_label_places_between (place, &board->now[i]);
  return cost;
}

double
sq_label_board_cost_now (const SqLabelBoard *board, guint label)
{
  return sq_label_board_cost_at (board, label, &board->now[label]);
}

double
sq_label_board_cost_of_all (const SqLabelBoard *board)
{
  double cost = 0.0;
  for (guint i = 0; i < board->n; i++) {
    if (!board->placed[i])
      continue;
    cost += board->now[i].cost;
    for (guint j = 0; j < i; j++)
      if (!sq_label_reaches_apart (&board->taken[i], &board->taken[j]))
        cost += sq_label_places_between (&board->now[i], &board->now[j]);
  }
  return cost;
}

/* The cheapest of a ring, if it costs less than @least. Returns: what it costs */
static double
find_in_ring (
  SqLabelBoard *board, guint label, int detail, SqLabelRing ring, double least, SqLabelPlace *best)
{
  const SqLabelChoices *choices = sq_label_board_choices (board, label, detail, ring);
  guint n_about = 0;
  for (guint i = 0; i < board->n; i++)
    if (!sq_label_reaches_apart (&choices->reach, &board->taken[i]) && i != label)
      board->about[n_about++] = i;
  for (guint i = 0; i < choices->places->len; i++) {
    const SqLabelPlace *place = &g_array_index (choices->places, SqLabelPlace, i);
    double cost = place->cost;
    if (cost >= least)
      break;
    for (guint j = 0; j < n_about && cost < least; j++) {
      guint other = board->about[j];
      if (sq_label_reaches_apart (&place->reach, &board->taken[other]))
        continue;
      double between = sq_label_places_between (place, &board->now[other]);
      cost += board->settled[other] ? between : MIN (between, board->yield);
    }
    if (cost < least) {
      least = cost;
      *best = *place;
    }
  }
  return least;
}

double
sq_label_board_find_best (SqLabelBoard *board, guint label, int detail, SqLabelPlace *best)
{
  double least = find_in_ring (board, label, detail, SQ_RING_NEAR, G_MAXDOUBLE, best);
  if (least <= SQ_LEAST_FAR_COST)
    return least;
  return find_in_ring (board, label, detail, SQ_RING_FAR, least, best);
}
