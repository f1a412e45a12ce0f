/* flow.h: blocks of words that run down the columns of a sheet and on to the pages after it */
#pragma once

#include "draw/drawing.h"
#include "paper/sheet.h"

G_BEGIN_DECLS

#define SQ_FLOW_MOST_COLUMNS 16

/* The same run of blocks is gone through for every page; only what falls on @page is drawn. */
typedef struct {
  SqDrawing *drawing;
  int page; /* that is drawn: 0 the plan's own; -1: none, only measure */

  /* Columns of the first page, then those of every page after it. */
  SqPaperBox first[SQ_FLOW_MOST_COLUMNS], next[SQ_FLOW_MOST_COLUMNS];
  guint n_first, n_next;
  int number; /* of the first page's sheet */

  double kept_mm;    /* at the foot of the first page's last column, for what must stand there */
  guint column;      /* counted on over all pages */
  double y_mm;       /* how far down the column */
  double squeeze;    /* of gaps and table rows: 1, or less where all would not fit otherwise */
  const char *title; /* (nullable): of the block that runs: said again at the head of a column */
} SqFlow;

/* Columns for words: the side columns of @first, which may have none, then those of pages of text
 * after it, @next. @number: of the first page's sheet, for pointing at what follows */
void sq_flow_init (SqFlow *flow,
                   SqDrawing *drawing,
                   const SqSheetLayout *first,
                   const SqSheetLayout *next,
                   int number);

/* Goes to the head of the next column; from one page to the next it says so at the foot. */
void sq_flow_next_column (SqFlow *flow);

/* TRUE if the next column, if any, is on a later page. */
gboolean sq_flow_ends_page (const SqFlow *flow);

/* The page that the flow has come to. */
int sq_flow_page (const SqFlow *flow);

/* Inside of a column: what its padding leaves. */
double sq_flow_width_mm (const SqFlow *flow);
double sq_flow_left_mm (const SqFlow *flow); /* down to the bottom of the column */

/* sq_flow_take:
 * @height_mm: of the next piece, which stays in one column
 * @at: (out): its top left corner
 *
 * Moves to the next column where this one has too little left.
 * Returns: TRUE if the piece is on the page that is drawn: draw it now */
gboolean sq_flow_take (SqFlow *flow, double height_mm, SqPaperPoint *at);

/* sq_flow_head:
 * Ends the block before and starts one with a section head, together with at least @keep_mm of what
 * follows. */
void sq_flow_head (SqFlow *flow, const char *title, double keep_mm);

/* sq_flow_text:
 * @indent_mm: from the left
 *
 * A paragraph, wrapped; past SQ_FLOW_MOST_LETTERS it is cut and ends in an ellipsis. */
void sq_flow_text (SqFlow *flow, const char *text, double indent_mm, SqInk ink);
#define SQ_FLOW_MOST_LETTERS 600

/* sq_flow_beside:
 * @at: (out): where the paragraph's block begins
 *
 * A paragraph @indent_mm from the left, for something narrow to stand beside it; at least @least_mm
 * high. Returns: TRUE where the narrow thing is to be drawn too, at @at */
gboolean sq_flow_beside (
  SqFlow *flow, const char *text, double indent_mm, double least_mm, SqPaperPoint *at);

/* Height of such a paragraph, with the space to the next. */
double sq_flow_text_height_mm (const SqFlow *flow, const char *text, double indent_mm);

/* @text as sq_flow_text() would print it. Returns: (transfer full) */
char *sq_flow_cut (const char *text);

/* Between two blocks, at most. */
#define SQ_FLOW_BETWEEN_MM 4.2
void sq_flow_gap (SqFlow *flow, double height_mm);

/* The small type of columns. */
SqType sq_flow_type (const SqFlow *flow, int weight, SqInk ink, SqAlign align);

G_END_DECLS
