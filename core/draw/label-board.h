/* label-board.h: labels on their way to a place: where each stands now, and what that costs
 *
 * For place-tags.c, label-moves.c and label-board.c alone. */
#pragma once

#include "draw/label-places.h"

G_BEGIN_DECLS

/* Better by less than this is the rounding of sums. */
#define SQ_LABEL_BETTER 1e-6

typedef struct {
  GArray *places; /* SqLabelPlace, the cheapest first; NULL: not asked for yet */
  SqPaperBox reach;
} SqLabelChoices;

typedef struct {
  SqWish *wishes;
  guint n;
  SqLabelIndex *index;
  gboolean *placed;
  SqLabelPlace *now;       /* where each stands */
  SqPaperBox *taken;       /* the reach of that, closely packed; nowhere if it is not placed */
  SqLabelChoices *choices; /* of each label, detail and ring */
  SqPaperBox *reach;       /* of each, round all places that it may take */
  guint8 *untried;         /* of each, the ways (label-moves.c) that may better it, since something
                            * changed within its reach */
  guint *about;            /* who may matter to the one that is being placed */

  /* While one is pushed in: who has a new place already, and what all others count at most, as
   * they may step aside. */
  gboolean *settled;
  double yield;

  gboolean many; /* so many labels that there is hardly room for all: fine steps are of no use */
  guint pushes_left, arounds_left; /* so many more are tried (label-moves.c) */
} SqLabelBoard;

void sq_label_board_init (SqLabelBoard *board,
                          SqWish *wishes,
                          guint n,
                          const SqLabelObstacles *obstacles);
void sq_label_board_clear (SqLabelBoard *board);

/* The places that a label may take. (transfer none) */
const SqLabelChoices *sq_label_board_choices (SqLabelBoard *board,
                                              guint label,
                                              int detail,
                                              SqLabelRing ring);

/* Lets it stand there for a try: nobody is told. */
void sq_label_board_stand (SqLabelBoard *board, guint label, const SqLabelPlace *place);

/* Lets it stand there; for all that can reach what it leaves and takes all ways are untried. */
void sq_label_board_put (SqLabelBoard *board, guint label, const SqLabelPlace *place, int detail);

/* Takes it off the board: its words are left out. */
void sq_label_board_take_off (SqLabelBoard *board, guint label);

/* What a place costs with all others that stand; where a label stands now; all together. */
double sq_label_board_cost_at (const SqLabelBoard *board, guint label, const SqLabelPlace *place);
double sq_label_board_cost_now (const SqLabelBoard *board, guint label);
double sq_label_board_cost_of_all (const SqLabelBoard *board);

/* The cheapest place at @detail with all others where they stand. Returns: what it costs */
double sq_label_board_find_best (SqLabelBoard *board, guint label, int detail, SqLabelPlace *best);

/* Better places for all, by all ways there are (label-moves.c). */
void sq_label_board_improve (SqLabelBoard *board);

G_END_DECLS
