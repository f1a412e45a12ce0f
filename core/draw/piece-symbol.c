/* piece-symbol.c: furniture and set pieces from above */
#include "draw/piece-symbol.h"

/* From the floor up past this a thing is a column or a wall to the eye; hung above it, it is
 * overhead (common practice). */
#define HEAD_HEIGHT_M 2.2

static void
piece_path (SqDrawing *drawing, const SqPiece *piece)
{
  const SqView *view = drawing->view;
  if (piece->disc != NULL) {
    sq_draw_circle_path (drawing, sq_view_paper (view, piece->disc->at),
                         piece->disc->radius_m * view->mm_per_m);
    return;
  }
  for (guint i = 0; i < piece->outline->len; i++) {
    SqPaperPoint at = sq_view_paper (view, sq_path_at (piece->outline, i));
    cairo_line_to (drawing->cairo, at.x_mm, at.y_mm);
  }
  cairo_close_path (drawing->cairo);
}

gboolean
sq_piece_is_column (const SqPiece *piece)
{
  gboolean shaped = piece->disc != NULL || piece->outline->len > 0;
  return shaped && piece->base_m < 0.1 && piece->top_m >= HEAD_HEIGHT_M;
}

void
sq_draw_piece (SqDrawing *drawing, const SqPiece *piece)
{
  static const double overhead_dash[] = { 2.0, 1.0 };
  gboolean column = sq_piece_is_column (piece);
  gboolean overhead = piece->base_m >= HEAD_HEIGHT_M;
  gboolean over = drawing->view->has_overlay;

  if (piece->disc == NULL && piece->outline->len == 0)
    return;
  if (column || (!overhead && !over)) {
    piece_path (drawing, piece);
    sq_draw_fill (drawing, sq_ink (drawing->view, column ? SQ_POCHE : SQ_FURN), 1.0);
  }
  piece_path (drawing, piece);
  sq_draw_stroke_dashed (drawing, column ? SQ_PEN_35 : SQ_PEN_18,
                         sq_ink (drawing->view, column || over ? SQ_INK : SQ_MID), overhead_dash,
                         overhead ? (int)G_N_ELEMENTS (overhead_dash) : 0);
}

SqPaperBox
sq_piece_box (const SqView *view, const SqPiece *piece)
{
  if (piece->disc != NULL) {
    double r = piece->disc->radius_m * view->mm_per_m;
    return sq_paper_box_round (sq_view_paper (view, piece->disc->at), r, r);
  }
  SqPaperPoint first = sq_view_paper (view, sq_path_at (piece->outline, 0));
  SqPaperBox box = { first.x_mm, first.y_mm, 0, 0 };
  for (guint i = 1; i < piece->outline->len; i++) {
    SqPaperPoint at = sq_view_paper (view, sq_path_at (piece->outline, i));
    box = sq_paper_box_union (box, (SqPaperBox){ at.x_mm, at.y_mm, 0, 0 });
  }
  return box;
}

gboolean
sq_piece_label_fits (
  SqDrawing *drawing, const SqPiece *piece, const SqType *type, SqPaperBox *room, double *turn_rad)
{
  SqPaperBox box = sq_piece_box (drawing->view, piece);
  double width = sq_text_width_mm (drawing, piece->label, type) + 1.6;
  double height = type->cap_mm * 1.3 + 1.0;

  if (piece->disc != NULL) { /* a rectangle inside the circle */
    SqPaperPoint middle = { box.x_mm + box.width_mm / 2, box.y_mm + box.height_mm / 2 };
    box = sq_paper_box_round (middle, 0.4 * box.width_mm, 0.3 * box.height_mm);
  }
  gboolean upright = width <= box.width_mm && height <= box.height_mm;
  gboolean turned = !upright && width <= box.height_mm && height <= box.width_mm;
  double across = (turned ? height : width) / 2, down = (turned ? width : height) / 2;

  *turn_rad = turned ? -G_PI / 2 : 0.0;
  *room = (SqPaperBox){ box.x_mm + across, box.y_mm + down, box.width_mm - 2 * across,
                        box.height_mm - 2 * down };
  return upright || turned;
}
