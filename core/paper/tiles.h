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
} SqTiling;

/* The paper that the whole plan takes; from (0, 0). */
SqPaperBox sq_tiling_whole (const SqTiling *tiling);

static inline guint
sq_tiling_count (const SqTiling *tiling)
{
  return tiling->columns * tiling->rows;
}

/* What sheet @n, counted from 0 in the way one reads, shows of it. */
SqPaperBox sq_tiling_window (const SqTiling *tiling, guint n);

/* What of its window belongs to sheet @n alone: as far as the match lines. */
SqPaperBox sq_tiling_own (const SqTiling *tiling, guint n);

/* Where the match lines run: those down the paper from the left, then those across from the top.
 * Returns: (transfer full): SqPaperLine */
GArray *sq_tiling_match_lines (const SqTiling *tiling);

/* The sheet beside @n: @right and @down are -1, 0 or 1. Returns: -1 if there is none */
int sq_tiling_neighbour (const SqTiling *tiling, guint n, int right, int down);

G_END_DECLS
