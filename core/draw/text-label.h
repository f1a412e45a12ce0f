/* text-label.h: a few short lines beside a thing: what a panel, camera or supply is */
#pragma once

#include "draw/drawing.h"

G_BEGIN_DECLS

#define SQ_TEXT_LABEL_LINES 3

typedef struct {
  char *line[SQ_TEXT_LABEL_LINES]; /* owned */
  int n_lines;
  gboolean plain; /* all in weight 400; else the first in 600 */
} SqTextLabel;

void sq_text_label_add (SqTextLabel *label, char *line); /* takes @line; empty ones are dropped */
void sq_text_label_clear (SqTextLabel *label);

/* Words of the set: quiet, so that lamps stand out; centred about their point. */
SqType sq_set_word_type (SqDrawing *drawing);

/* Of its first @n_lines, about its middle. */
SqPaperBox sq_text_label_shape (SqDrawing *drawing, const SqTextLabel *label, int n_lines);

/* @middle: of that box */
void sq_draw_text_label (
  SqDrawing *drawing, SqPaperPoint middle, const SqTextLabel *label, int n_lines, SqAlign align);

G_END_DECLS
