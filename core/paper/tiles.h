/* tiles.h: a plan too large for one sheet, divided over several that overlap
 *
 * The whole plan is laid out once, on a paper as large as it takes: so a label stands once,
 * whatever sheets it comes to lie on, and a length that runs over a joint keeps its true scale.
 * Each sheet then shows a window of it. Windows overlap by SQ_TILE_OVERLAP_MM; in the middle of the
 * overlap runs the match line, where sheets are to be cut and joined. */
#pragma once

#include "paper/sheet-choice.h"

G_BEGIN_DECLS

typedef struct {
  guint columns, rows;
  double width_mm, height_mm; /* of a window: the field of a sheet */
  guint64 empty;              /* bit per sheet on which nothing is drawn: there is no such sheet */
} SqTiling;

/* The paper that the whole plan takes; from (0, 0). */
SqPaperBox sq_tiling_whole (const SqTiling *tiling);

static inline guint
sq_tiling_count (const SqTiling *tiling)
{
  return tiling->columns * tiling->rows;
}

static inline gboolean
sq_tiling_has (const SqTiling *tiling, guint n)
{
  return (tiling->empty >> n & 1) == 0;
}

/* How many of its sheets there are. */
guint sq_tiling_sheets (const SqTiling *tiling);

/* Which of all is the @k-th that there is, from 0. */
guint sq_tiling_nth (const SqTiling *tiling, guint k);

/* How many there are before @n. */
guint sq_tiling_rank (const SqTiling *tiling, guint n);

/* What sheet @n, counted from 0 in the way one reads, shows of it. */
SqPaperBox sq_tiling_window (const SqTiling *tiling, guint n);

/* What of its window belongs to sheet @n alone: as far as the match lines, or to its edge where
 * there is no sheet beside it. */
SqPaperBox sq_tiling_own (const SqTiling *tiling, guint n);

/* Where the match lines run: those down the paper from the left, then those across from the top.
 * Returns: (transfer full): SqPaperLine */
GArray *sq_tiling_match_lines (const SqTiling *tiling);

/* The sheet beside @n: @right and @down are -1, 0 or 1. Returns: -1 if there is none */
int sq_tiling_neighbour (const SqTiling *tiling, guint n, int right, int down);

G_END_DECLS
