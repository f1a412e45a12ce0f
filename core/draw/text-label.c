/* text-label.c: a few short lines beside a thing */
#include "draw/text-label.h"

#define LEADING 1.64
#define MOST_WIDTH_MM 40.0

void
sq_text_label_add (SqTextLabel *label, char *line)
{
  if (line == NULL || *line == '\0' || label->n_lines == SQ_TEXT_LABEL_LINES)
    g_free (line);
  else
    label->line[label->n_lines++] = line;
}

void
sq_text_label_clear (SqTextLabel *label)
{
  while (label->n_lines > 0)
    g_free (label->line[--label->n_lines]);
}

SqType
sq_set_word_type (SqDrawing *drawing)
{
  gboolean over = drawing->view->has_overlay;
  return (SqType){ .cap_mm = sq_view_small_mm (drawing->view),
                   .weight = 400,
                   .align = SQ_ALIGN_CENTRE,
                   .colour = sq_ink (drawing->view, over ? SQ_INK : SQ_MID),
                   .halo = over };
}

static SqType
line_type (SqDrawing *drawing, const SqTextLabel *label, int line)
{
  return (SqType){ .cap_mm = sq_view_small_mm (drawing->view),
                   .weight = line == 0 && !label->plain ? 600 : 400,
                   .colour = sq_ink (drawing->view, SQ_INK),
                   .width_mm = MOST_WIDTH_MM,
                   .one_line = TRUE,
                   .halo = TRUE };
}

SqPaperBox
sq_text_label_shape (SqDrawing *drawing, const SqTextLabel *label, int n_lines)
{
  double width = 0.0, cap = sq_view_small_mm (drawing->view);
  for (int i = 0; i < n_lines; i++) {
    SqType type = line_type (drawing, label, i);
    width = MAX (width, sq_text_width_mm (drawing, label->line[i], &type));
  }
  double height = cap * 1.3 + (n_lines - 1) * LEADING * cap;
  return sq_paper_box_round ((SqPaperPoint){ 0, 0 }, width / 2, height / 2);
}

void
sq_draw_text_label (
  SqDrawing *drawing, SqPaperPoint middle, const SqTextLabel *label, int n_lines, SqAlign align)
{
  SqPaperBox box = sq_text_label_shape (drawing, label, n_lines);
  double cap = sq_view_small_mm (drawing->view);
  double left = middle.x_mm + box.x_mm;
  double x = align == SQ_ALIGN_LEFT     ? left
             : align == SQ_ALIGN_CENTRE ? middle.x_mm
                                        : left + box.width_mm;

  for (int i = 0; i < n_lines; i++) {
    SqType type = line_type (drawing, label, i);
    type.align = align;
    SqPaperPoint at = { x, middle.y_mm + box.y_mm + cap + i * LEADING * cap };
    sq_draw_text (drawing, at, label->line[i], &type);
  }
}
