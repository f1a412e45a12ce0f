/* label-moves.c: four ways to let labels stand better
 *
 * Replace: the best place with all others where they are. Push: a place that others have, which
 * find new ones. Around: it stays there while all others settle about it. Nudge: a step aside. Each
 * keeps what it did only where the sum of all costs has become less. */
#include "draw/label-board.h"

enum { REPLACE = 1 << 0, PUSH = 1 << 1, AROUND = 1 << 2, NUDGE = 1 << 3 };

/* Rounds of replacing and pushing; while one is kept in its place a few do. */
#define ROUNDS 6
#define ROUNDS_AROUND 3
#define ROUNDS_NUDGE 2

/* So many of its cheapest places are pushed for, if they gain so much. What costs less is no
 * conflict. */
#define PUSHES 16
#define WORTH_PUSHING 3.0
#define MOST_PUSHED 6
#define IN_THE_WAY 1.0

/* What costs more may push those that stand behind, too: who steps aside counts each of them as no
 * more than that. */
#define TROUBLED 20.0
#define YIELD 12.0

/* It is kept at so many of its cheapest places, so far apart. */
#define AROUNDS 6
#define AROUND_APART_MM 4.0
#define WORTH_AROUND 2.0

/* Where a step aside, of so much or half of it, is tried. */
#define NUDGES 16
#define NUDGE_MM 1.6
#define WORTH_NUDGING 6.0

static int
detail_now (const SqLabelBoard *board, guint label)
{
  return (int)board->wishes[label].detail;
}

static gboolean
replace_better (SqLabelBoard *board, guint label)
{
  SqLabelPlace best;
  double cost = sq_label_board_find_best (board, label, detail_now (board, label), &best);
  if (cost >= sq_label_board_cost_now (board, label) - SQ_LABEL_BETTER)
    return FALSE;
  sq_label_board_put (board, label, &best, detail_now (board, label));
  return TRUE;
}

/* Labels that move together. */
typedef struct {
  guint of[MOST_PUSHED + 1];
  SqLabelPlace was[MOST_PUSHED + 1];
  guint n;
} Chain;

/* What the labels of @chain cost with all others and each other. */
static double
cost_of_chain (const SqLabelBoard *board, const Chain *chain)
{
  double cost = 0.0;
  for (guint i = 0; i < chain->n; i++) {
    cost += sq_label_board_cost_now (board, chain->of[i]);
    for (guint j = 0; j < i; j++)
      cost -= sq_label_places_between (&board->now[chain->of[i]], &board->now[chain->of[j]]);
  }
  return cost;
}

static void
join_chain (SqLabelBoard *board, Chain *chain, guint label)
{
  board->settled[label] = TRUE;
  chain->was[chain->n] = board->now[label];
  chain->of[chain->n++] = label;
}

/* Those in the way of @place join the chain. FALSE if that makes it too long or one is pinned. */
static gboolean
join_in_the_way (SqLabelBoard *board, Chain *chain, const SqLabelPlace *place)
{
  for (guint i = 0; i < board->n; i++) {
    if (sq_label_reaches_apart (&place->reach, &board->taken[i]) || board->settled[i] ||
        sq_label_places_between (place, &board->now[i]) <= IN_THE_WAY)
      continue;
    if (board->wishes[i].pinned || chain->n > MOST_PUSHED)
      return FALSE;
    join_chain (board, chain, i);
  }
  return TRUE;
}

/* Leaves the chain as it stands if that is better than it was, else puts all back. */
static gboolean
keep_if_better (SqLabelBoard *board, Chain *chain, gboolean tried)
{
  SqLabelPlace there[MOST_PUSHED + 1];
  double after = tried ? cost_of_chain (board, chain) : 0.0;
  for (guint i = 0; i < chain->n; i++) {
    there[i] = board->now[chain->of[i]];
    sq_label_board_stand (board, chain->of[i], &chain->was[i]);
    board->settled[chain->of[i]] = FALSE;
  }
  if (!tried || after >= cost_of_chain (board, chain) - SQ_LABEL_BETTER)
    return FALSE;
  for (guint i = 0; i < chain->n; i++)
    sq_label_board_put (board, chain->of[i], &there[i], detail_now (board, chain->of[i]));
  return TRUE;
}

/* Puts a label at @place and finds new places for those that stand in the way; and, where those may
 * @yield, for those in their way. Returns: FALSE, with all as it was, where that is no better */
static gboolean
push_to (SqLabelBoard *board, guint label, const SqLabelPlace *place, double yield)
{
  Chain chain = { .n = 0 };
  join_chain (board, &chain, label);
  sq_label_board_stand (board, label, place);
  gboolean tried = join_in_the_way (board, &chain, place);
  for (guint i = 1; i < chain.n && tried; i++) {
    SqLabelPlace best;
    board->yield = yield;
    sq_label_board_find_best (board, chain.of[i], detail_now (board, chain.of[i]), &best);
    board->yield = G_MAXDOUBLE;
    sq_label_board_stand (board, chain.of[i], &best);
    tried = yield == G_MAXDOUBLE || join_in_the_way (board, &chain, &best);
  }
  return keep_if_better (board, &chain, tried);
}

static gboolean
push_better (SqLabelBoard *board, guint label)
{
  const GArray *places =
    sq_label_board_choices (board, label, detail_now (board, label), SQ_RING_NEAR)->places;
  double now = sq_label_board_cost_now (board, label);
  for (guint i = 0; i < MIN (places->len, PUSHES) && board->pushes_left > 0; i++) {
    const SqLabelPlace *place = &g_array_index (places, SqLabelPlace, i);
    if (place->cost >= now - WORTH_PUSHING)
      break;
    board->pushes_left--;
    if (push_to (board, label, place, G_MAXDOUBLE) ||
        (now > TROUBLED && push_to (board, label, place, YIELD)))
      return TRUE;
  }
  return FALSE;
}

/* A step aside, where that helps. */
static gboolean
nudge_better (SqLabelBoard *board, guint label)
{
  const SqWish *wish = &board->wishes[label];
  double now = sq_label_board_cost_now (board, label);
  SqLabelPlace best = board->now[label];
  gboolean better = FALSE;
  if (wish->spots != NULL || now < WORTH_NUDGING)
    return FALSE;
  for (int i = 0; i < NUDGES; i++) {
    double step_mm = i % 2 == 0 ? NUDGE_MM : NUDGE_MM / 2;
    SqPaperPoint by = sq_paper_along ((SqPaperPoint){ 0, 0 }, 2 * G_PI * i / NUDGES, step_mm);
    SqLabelPlace place =
      sq_label_place_moved (wish, (int)wish->detail, &board->now[label], by, board->index);
    double cost = sq_label_board_cost_at (board, label, &place);
    if (cost >= now - SQ_LABEL_BETTER)
      continue;
    better = TRUE;
    now = cost;
    best = place;
  }
  if (better)
    sq_label_board_put (board, label, &best, (int)wish->detail);
  return better;
}

typedef struct {
  guint label;
  double cost;
} Ranked;

static int
dearest_first (gconstpointer a, gconstpointer b)
{
  const Ranked *one = a, *other = b;
  if (one->cost != other->cost)
    return one->cost > other->cost ? -1 : 1;
  return one->label < other->label ? -1 : one->label > other->label;
}

typedef gboolean (*Better) (SqLabelBoard *board, guint label);

/* Tries a way on all who have not tried it since something moved near them, the dearest first.
 * TRUE if any stands better. */
static gboolean
each_better (SqLabelBoard *board, guint8 way, Better better)
{
  g_autofree Ranked *order = g_new (Ranked, board->n + 1);
  gboolean any = FALSE;
  guint n = 0;
  for (guint i = 0; i < board->n; i++)
    if (!board->wishes[i].pinned && board->placed[i] && (board->untried[i] & way) != 0)
      order[n++] = (Ranked){ i, sq_label_board_cost_now (board, i) };
  qsort (order, n, sizeof *order, dearest_first);
  for (guint i = 0; i < n; i++) {
    board->untried[order[i].label] &= (guint8)~way;
    any = better (board, order[i].label) || any;
  }
  return any;
}

static void
settle (SqLabelBoard *board, int rounds)
{
  for (int round = 0; round < rounds; round++)
    if (!each_better (board, REPLACE, replace_better) && !each_better (board, PUSH, push_better))
      return;
}

/* Keeps a label at @place while all others find theirs about it. FALSE, with all as it was, where
 * that makes the whole no better. */
static gboolean
settle_around (SqLabelBoard *board, guint label, const SqLabelPlace *place)
{
  gsize n = board->n;
  g_autofree SqLabelPlace *was = g_memdup2 (board->now, n * sizeof *was);
  g_autofree guint8 *untried = g_memdup2 (board->untried, n);
  double before = sq_label_board_cost_of_all (board);

  sq_label_board_put (board, label, place, detail_now (board, label));
  board->wishes[label].pinned = TRUE;
  settle (board, ROUNDS_AROUND);
  board->wishes[label].pinned = FALSE;
  if (sq_label_board_cost_of_all (board) < before - WORTH_AROUND)
    return TRUE;
  for (guint i = 0; i < n; i++) {
    if (board->placed[i])
      sq_label_board_stand (board, i, &was[i]);
    board->untried[i] = untried[i];
  }
  return FALSE;
}

static gboolean
around_better (SqLabelBoard *board, guint label)
{
  const GArray *places =
    sq_label_board_choices (board, label, detail_now (board, label), SQ_RING_NEAR)->places;
  double now = sq_label_board_cost_now (board, label);
  SqPaperPoint last = board->now[label].at;
  if (now < TROUBLED)
    return FALSE;
  for (guint i = 0, n = 0; i < places->len && n < AROUNDS && board->arounds_left > 0; i++) {
    const SqLabelPlace *place = &g_array_index (places, SqLabelPlace, i);
    if (place->cost >= now - WORTH_PUSHING)
      break;
    if (sq_paper_distance_mm (place->at, last) < AROUND_APART_MM)
      continue;
    last = place->at;
    n++;
    board->arounds_left--;
    if (settle_around (board, label, place))
      return TRUE;
  }
  return FALSE;
}

void
sq_label_board_improve (SqLabelBoard *board)
{
  settle (board, ROUNDS);
  each_better (board, AROUND, around_better);
  settle (board, ROUNDS);
  for (int round = 0; round < ROUNDS_NUDGE; round++)
    each_better (board, NUDGE, nudge_better);
}
