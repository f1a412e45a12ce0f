/* place-tags.c: where tags and labels stand, and how much they say there */
#include "draw/place-tags.h"

#include "draw/label-board.h"

/* Rounds of saying less, and finding better places then. */
#define ROUNDS_LESS 3
#define COST_LESS 15.0 /* a label that says less had better stand much better */
#define COST_MORE 60.0 /* worth what a label may say again: a long leader over some lines */

/* Covering less than this is not seen. */
#define SEEN_MM2 0.05

/* TRUE where it lies on a label, a letter, a face, something solid or the border, or a leader lies
 * on it. */
static gboolean
lies_on_something (const SqLabelBoard *board, guint label)
{
  const SqLabelPlace *place = &board->now[label];
  double covered_mm2 = sq_label_index_cover (board->index, place->box, 0.0).solid_mm2;
  if (!sq_paper_box_within (place->box, sq_label_index_field (board->index)))
    return TRUE;
  for (guint i = 0; i < board->n; i++) {
    const SqLabelPlace *other = &board->now[i];
    if (sq_label_reaches_apart (&place->reach, &board->taken[i]) || i == label)
      continue;
    if ((place->has_leader && sq_paper_line_hits (place->leader, other->box)) ||
        (other->has_leader && sq_paper_line_hits (other->leader, place->box)))
      return TRUE;
    covered_mm2 += sq_paper_overlap_mm2 (place->box, other->box);
  }
  return covered_mm2 > SEEN_MM2;
}

/* Labels that still lie on something say less, as far as that helps, the least important first;
 * where there are many, at once as little as they can. TRUE if any does. */
static gboolean
say_less (SqLabelBoard *board)
{
  gboolean any = FALSE;
  for (guint i = board->n; i-- > 0;) {
    const SqWish *wish = &board->wishes[i];
    int next = (int)wish->detail + 1;
    for (int detail = board->many ? MAX (next, wish->n_details - 1) : next;
         detail < wish->n_details && !wish->pinned && lies_on_something (board, i); detail++) {
      SqLabelPlace best;
      double cost = sq_label_board_find_best (board, i, detail, &best);
      if (cost + COST_LESS >= sq_label_board_cost_now (board, i))
        continue;
      sq_label_board_put (board, i, &best, detail);
      any = TRUE;
    }
  }
  return any;
}

/* Others moved since: what stands well saying more says more. */
static void
say_more (SqLabelBoard *board)
{
  for (guint i = 0; i < board->n; i++) {
    int least = (int)board->wishes[i].detail;
    SqLabelPlace was = board->now[i];
    for (int detail = 0; detail < (board->many ? MIN (least, 1) : least); detail++) {
      SqLabelPlace best;
      double cost = sq_label_board_find_best (board, i, detail, &best);
      if (cost >= sq_label_board_cost_now (board, i) + COST_MORE)
        continue;
      sq_label_board_put (board, i, &best, detail);
      if (!lies_on_something (board, i))
        break;
      sq_label_board_put (board, i, &was, least);
    }
  }
}

/* How much more it costs than it is worth; 0 for what stays in any case. */
static double
not_worth (const SqLabelBoard *board, guint label)
{
  const SqWish *wish = &board->wishes[label];
  if (wish->pinned || !board->placed[label])
    return 0.0;
  if (wish->may_go && lies_on_something (board, label))
    return sq_label_board_cost_now (board, label);
  return wish->most_cost > 0.0 ? sq_label_board_cost_now (board, label) - wish->most_cost : 0.0;
}

/* What is not worth its place goes, the dearest first, as others may stand well without it. */
static void
leave_out (SqLabelBoard *board)
{
  for (;;) {
    guint worst = 0;
    double most = 0.0;
    for (guint i = 0; i < board->n; i++) {
      double over = not_worth (board, i);
      if (over > most) {
        most = over;
        worst = i;
      }
    }
    if (most <= 0.0)
      return;
    sq_label_board_take_off (board, worst);
  }
}

/* A pinned tag stands where it is; its rows take the side that covers less. */
static void
put_pinned (SqLabelBoard *board, guint label)
{
  double least = G_MAXDOUBLE;
  for (int side = 0; side < SQ_ROWS_SIDES; side++) {
    SqLabelPlace place = sq_label_place_pinned (&board->wishes[label], side, board->index);
    double cost = sq_label_board_cost_at (board, label, &place);
    if (cost >= least)
      continue;
    least = cost;
    sq_label_board_put (board, label, &place, 0);
  }
}

static void
place_all (SqLabelBoard *board)
{
  gboolean any_less = FALSE;
  for (guint i = 0; i < board->n; i++)
    if (board->wishes[i].pinned)
      put_pinned (board, i);
  for (guint i = 0; i < board->n; i++) {
    SqLabelPlace best;
    if (board->wishes[i].pinned)
      continue;
    sq_label_board_find_best (board, i, 0, &best);
    sq_label_board_put (board, i, &best, 0);
  }
  sq_label_board_improve (board);
  for (int round = 0; round < ROUNDS_LESS && say_less (board); round++) {
    any_less = TRUE;
    sq_label_board_improve (board);
  }
  if (any_less) {
    say_more (board);
    sq_label_board_improve (board);
    say_less (board);
  }
  leave_out (board);
}

void
sq_place_tags (SqWish *wishes, guint n, const SqLabelObstacles *obstacles)
{
  SqLabelBoard board;
  sq_label_board_init (&board, wishes, n, obstacles);
  place_all (&board);
  for (guint i = 0; i < n; i++) {
    wishes[i].at = board.now[i].at;
    wishes[i].side = board.now[i].side;
    wishes[i].has_leader = board.now[i].has_leader;
    wishes[i].leader = board.now[i].leader;
  }
  sq_label_board_clear (&board);
}
