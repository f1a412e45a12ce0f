/* plot-frame.c: the border, with grid references, centring marks and where to fold */
#include "paper/plot-private.h"
#include "paper/words.h"

#define REFERENCE_STRIP_MM 5.0
#define REFERENCE_FIELD_MM 50.0
#define CENTRING_IN_MM 5.0

/* Fields run from the middle of the sheet outwards; the outermost take what is left. */
static void
references_along (const SqPlotPage *page, SqDrawing *drawing, SqPaperBox outer, gboolean across)
{
  SqColour mid = sq_ink (drawing->view, SQ_MID);
  double sheet_mm = across ? page->layout.width_mm : page->layout.height_mm;
  double start = across ? outer.x_mm : outer.y_mm;
  double end = start + (across ? outer.width_mm : outer.height_mm);
  double near = across ? outer.y_mm : outer.x_mm;
  double far = near + (across ? outer.height_mm : outer.width_mm);
  int half = MAX ((int)round (sheet_mm / 2.0 / REFERENCE_FIELD_MM), 1), n = 2 * half;
  SqType type = { .cap_mm = SQ_TYPE_SMALL, .weight = 400, .align = SQ_ALIGN_CENTRE, .colour = mid };
  for (int k = 0; k < n; k++) {
    double from = k == 0 ? start : sheet_mm / 2.0 + (k - half) * REFERENCE_FIELD_MM;
    double to = k + 1 == n ? end : sheet_mm / 2.0 + (k + 1 - half) * REFERENCE_FIELD_MM;
    g_autofree char *text = across ? g_strdup_printf ("%d", k + 1) : sq_letter_text ((guint)k);
    for (int side = 0; side < 2; side++) {
      double edge = side == 0 ? near : far - REFERENCE_STRIP_MM;
      double along = (from + to) / 2.0, middle = edge + REFERENCE_STRIP_MM / 2.0;
      SqPaperPoint at = across ? (SqPaperPoint){ along, middle } : (SqPaperPoint){ middle, along };
      at.y_mm += type.cap_mm / 2.0;
      sq_draw_text (drawing, at, text, &type);
      if (k > 0)
        sq_draw_line (drawing, across ? (SqPaperPoint){ from, edge } : (SqPaperPoint){ edge, from },
                      across ? (SqPaperPoint){ from, edge + REFERENCE_STRIP_MM }
                             : (SqPaperPoint){ edge + REFERENCE_STRIP_MM, from },
                      SQ_PEN_13, mid);
    }
  }
}

/* At the ends of the sheet's two axes, for filming and folding. They reach into the drawing, but
 * not into words beside it. */
static void
centring_marks (const SqPlotPage *page, SqDrawing *drawing, SqPaperBox outer)
{
  const double by_words_mm = SQ_COLUMN_PADDING_MM - 1.0;
  double in_mm = page->layout.foot_kind != SQ_FOOT_NONE ? CENTRING_IN_MM : by_words_mm;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  SqPaperBox frame = page->layout.frame;
  double x = page->layout.width_mm / 2.0, y = page->layout.height_mm / 2.0;
  double right = frame.x_mm + frame.width_mm, bottom = frame.y_mm + frame.height_mm;
  double outer_right = outer.x_mm + outer.width_mm, outer_bottom = outer.y_mm + outer.height_mm;
  double right_in_mm = page->layout.n_columns > 0 ? by_words_mm : in_mm;
  gboolean over_title = page->layout.title_block.x_mm < x;
  const SqPaperPoint marks[][2] = {
    { { x, outer.y_mm }, { x, frame.y_mm + in_mm } },
    { { x, outer_bottom }, { x, bottom - (over_title ? 0.0 : by_words_mm) } },
    { { outer.x_mm, y }, { frame.x_mm + in_mm, y } },
    { { outer_right, y }, { right - right_in_mm, y } },
  };
  for (guint k = 0; k < G_N_ELEMENTS (marks); k++)
    sq_draw_line (drawing, marks[k][0], marks[k][1], SQ_PEN_70, ink);
}

/* A short stroke from the outer line inward wherever the sheet is to be folded. */
static void
folding_marks (const SqPlotPage *page, SqDrawing *drawing, SqPaperBox outer)
{
  const double long_mm = 2.0;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double right = outer.x_mm + outer.width_mm, bottom = outer.y_mm + outer.height_mm;
  double at_mm[SQ_SHEET_MOST_FOLDS];
  guint n = sq_sheet_folds (page->sheet, page->layout.portrait, TRUE, at_mm);
  for (guint k = 0; k < n; k++) {
    sq_draw_line (drawing, (SqPaperPoint){ at_mm[k], outer.y_mm },
                  (SqPaperPoint){ at_mm[k], outer.y_mm + long_mm }, SQ_PEN_35, ink);
    sq_draw_line (drawing, (SqPaperPoint){ at_mm[k], bottom - long_mm },
                  (SqPaperPoint){ at_mm[k], bottom }, SQ_PEN_35, ink);
  }
  n = sq_sheet_folds (page->sheet, page->layout.portrait, FALSE, at_mm);
  for (guint k = 0; k < n; k++) {
    double y_mm = page->layout.height_mm - at_mm[k];
    sq_draw_line (drawing, (SqPaperPoint){ outer.x_mm, y_mm },
                  (SqPaperPoint){ outer.x_mm + long_mm, y_mm }, SQ_PEN_35, ink);
    sq_draw_line (drawing, (SqPaperPoint){ right - long_mm, y_mm }, (SqPaperPoint){ right, y_mm },
                  SQ_PEN_35, ink);
  }
}

void
sq_page_draw_frame (const SqPlotPage *page, SqDrawing *drawing)
{
  SqPaperBox frame = page->layout.frame;
  if (page->layout.references) {
    SqPaperBox outer = sq_paper_box_grown (frame, REFERENCE_STRIP_MM);
    sq_draw_box_path (drawing, outer, 0.0);
    sq_draw_stroke (drawing, SQ_PEN_13, sq_ink (drawing->view, SQ_MID));
    references_along (page, drawing, outer, TRUE);
    references_along (page, drawing, outer, FALSE);
    folding_marks (page, drawing, outer);
    centring_marks (page, drawing, outer);
  }
  sq_draw_box_path (drawing, frame, 0.0);
  sq_draw_stroke (drawing, SQ_PEN_70, sq_ink (drawing->view, SQ_INK));
}
