/* sheet-choice.h: which sheet, which way up, at which scale; and how many of them where one is too
 * small
 *
 * Where nothing is asked for, sheets and scales are weighed like this: 1:50 is what lighting is
 * drawn at, 1:100 does for an exterior, at 1:200 lamps are specks; anybody prints A3, many reach A2
 * and A1, A0 is for those who own a plotter. So, in this order, the first that holds the set and
 * has room for its words:
 *
 *   A3 at 1:50, A2 at 1:50, A3 at 1:100, A1 at 1:50, A2 at 1:100, A1 at 1:100, A0 at 1:50, A0 at
 *   1:100, A3, A2, A1, A0 at 1:200, and so on to smaller scales
 *
 * (tabloid, arch-c, arch-d, arch-e at 1/4", 1/8", 1/16"). Words have room where tags and labels
 * would cover no more than SQ_MOST_WORDS of the set with the ground round it. If they have room
 * nowhere, that pair is taken which gives them most. On the sheet that was found the largest usual
 * scale is used that it takes. */
#pragma once

#include "paper/sheet.h"

G_BEGIN_DECLS

#define SQ_MOST_WORDS 0.5
#define SQ_MOST_TILES 64
#define SQ_TILE_OVERLAP_MM 30.0 /* that two neighbours both show */

/* What must lie on the paper. */
typedef struct {
  SqUnits units;
  double width_m, height_m; /* of the drawing */
  double margin_mm;         /* kept free on each side, for words */
  guint n_words;            /* tags and labels that want room; 0: none */
  SqSheetParts parts;
} SqDrawingSize;

/* Where it lies. */
typedef struct {
  const SqSheet *sheet;
  gboolean portrait;
  double denominator;
  guint columns, rows; /* of sheets; 1 × 1: one */
} SqSheetChoice;

/* sq_sheet_choose:
 * @sheet: (nullable): that is asked for
 * @denominator: that is asked for; 0: none
 * @may_tile: whether a drawing too large for a sheet at a scale that is asked for may go over
 *   several
 *
 * An upright sheet is taken where it is asked for, and where it draws larger, or takes fewer
 * sheets, than one on its side. Returns: FALSE with one line that says what would do: whatever it
 * names does hold the drawing, with room for its words */
gboolean sq_sheet_choose (const SqDrawingSize *size,
                          const SqSheet *sheet,
                          SqSheetTurn turn,
                          double denominator,
                          gboolean may_tile,
                          SqSheetChoice *choice,
                          GError **error);

/* Whether one sheet of @choice holds the drawing. */
gboolean sq_sheet_holds (const SqDrawingSize *size, const SqSheetChoice *choice);

/* How much of the set on paper, with the ground round it, words would cover: 0.5 is half. */
double sq_sheet_words_share (const SqDrawingSize *size, const SqSheetChoice *choice);

/* sq_sheet_better:
 * What would hold all of a drawing that went over several sheets or is crowded: `scale 1:100 or
 * sheet A1`. Returns: (transfer full) (nullable): NULL if nothing usable does */
char *sq_sheet_better (const SqDrawingSize *size, const SqSheetChoice *choice);

G_END_DECLS
