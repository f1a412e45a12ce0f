/* dimension-line.c: a measured line beside what it measures */
#include "draw/dimension-line.h"

#define EXTENSION_GAP_MM 1.2
#define STROKE_MM 2.2

/* The line and its figure, worked out. */
typedef struct {
  SqPaperPoint from, to;           /* what is measured */
  SqPaperPoint line_from, line_to; /* where the line is drawn */
  double angle_rad;                /* of the line */
  double outward_rad;              /* from what is measured to the line */
  double turn_rad;                 /* of the figure: readable from below or from the right */
  SqPaperPoint text_at;
  char *text; /* owned */
} Layout;

static SqType
figure_type (SqDrawing *drawing)
{
  return (SqType){ .cap_mm = sq_view_small_mm (drawing->view),
                   .weight = 500,
                   .align = SQ_ALIGN_CENTRE,
                   .colour = sq_ink (drawing->view, SQ_INK),
                   .halo = TRUE };
}

static Layout
ends (const SqView *view, const SqDimensionLine *line)
{
  Layout layout = { .from = sq_view_paper (view, line->from),
                    .to = sq_view_paper (view, line->to) };
  double offset = line->offset_m * view->mm_per_m;

  layout.angle_rad = atan2 (layout.to.y_mm - layout.from.y_mm, layout.to.x_mm - layout.from.x_mm);
  /* Left of the way in the set is a quarter turn against cairo's sense. */
  layout.outward_rad = layout.angle_rad + (offset < 0.0 ? G_PI / 2 : -G_PI / 2);
  layout.line_from = sq_paper_along (layout.from, layout.outward_rad, fabs (offset));
  layout.line_to = sq_paper_along (layout.to, layout.outward_rad, fabs (offset));
  return layout;
}

static Layout
lay_out (SqDrawing *drawing, const SqDimensionLine *line)
{
  const SqView *view = drawing->view;
  Layout layout = ends (view, line);

  layout.turn_rad = layout.angle_rad;
  while (layout.turn_rad > G_PI / 2 - 1e-6)
    layout.turn_rad -= G_PI;
  while (layout.turn_rad <= -G_PI / 2 - 1e-6)
    layout.turn_rad += G_PI;
  SqPaperPoint middle = { (layout.line_from.x_mm + layout.line_to.x_mm) / 2,
                          (layout.line_from.y_mm + layout.line_to.y_mm) / 2 };
  layout.text_at = sq_paper_along (middle, layout.turn_rad - G_PI / 2, 1.0);
  layout.text =
    line->text != NULL && *line->text != '\0'
      ? g_strdup (line->text)
      : sq_quantity_format (sq_place_distance_m (line->from, line->to), SQ_LENGTH, view->units);
  return layout;
}

void
sq_dimension_lines (const SqView *view, const SqDimensionLine *line, SqPaperLine lines[3])
{
  Layout layout = ends (view, line);
  lines[0] = (SqPaperLine){ layout.from, layout.line_from };
  lines[1] = (SqPaperLine){ layout.to, layout.line_to };
  lines[2] = (SqPaperLine){ layout.line_from, layout.line_to };
}

static SqPaperBox
figure_box (SqDrawing *drawing, const Layout *layout)
{
  SqType type = figure_type (drawing);
  double width = sq_text_width_mm (drawing, layout->text, &type), height = type.cap_mm * 1.2;
  double c = fabs (cos (layout->turn_rad)), s = fabs (sin (layout->turn_rad));
  SqPaperPoint middle =
    sq_paper_along (layout->text_at, layout->turn_rad - G_PI / 2, type.cap_mm / 2);
  return sq_paper_box_round (middle, (width * c + height * s) / 2, (width * s + height * c) / 2);
}

SqPaperBox
sq_dimension_text_box (SqDrawing *drawing, const SqDimensionLine *line)
{
  Layout layout = lay_out (drawing, line);
  SqPaperBox box = figure_box (drawing, &layout);
  g_free (layout.text);
  return box;
}

static void
draw_extension (SqDrawing *drawing, SqPaperPoint from, SqPaperPoint to, double outward_rad)
{
  if (sq_paper_distance_mm (from, to) <= EXTENSION_GAP_MM)
    return;
  sq_draw_line (drawing, sq_paper_along (from, outward_rad, EXTENSION_GAP_MM),
                sq_paper_along (to, outward_rad, EXTENSION_GAP_MM), SQ_PEN_18,
                sq_ink (drawing->view, SQ_INK));
}

static void
draw_end (SqDrawing *drawing, SqPaperPoint at, double angle_rad)
{
  double slant = angle_rad - G_PI / 4;
  sq_draw_line (drawing, sq_paper_along (at, slant, -STROKE_MM / 2),
                sq_paper_along (at, slant, STROKE_MM / 2), SQ_PEN_35,
                sq_ink (drawing->view, SQ_INK));
}

SqPaperBox
sq_draw_dimension (SqDrawing *drawing, const SqDimensionLine *line)
{
  Layout layout = lay_out (drawing, line);
  SqType type = figure_type (drawing);
  type.turn_rad = layout.turn_rad;

  draw_extension (drawing, layout.from, layout.line_from, layout.outward_rad);
  draw_extension (drawing, layout.to, layout.line_to, layout.outward_rad);
  sq_draw_line (drawing, layout.line_from, layout.line_to, SQ_PEN_18,
                sq_ink (drawing->view, SQ_INK));
  draw_end (drawing, layout.line_from, layout.angle_rad);
  draw_end (drawing, layout.line_to, layout.angle_rad);
  sq_draw_text (drawing, layout.text_at, layout.text, &type);
  SqPaperBox box = figure_box (drawing, &layout);
  g_free (layout.text);
  return box;
}
