/* point-symbols.c: small marks at a place */
#include "draw/point-symbols.h"

#define RING_MM 1.5 /* of a probe */
#define ARROW_MM 4.6
#define NOTE_INSET_MM 0.4
#define LETTER_INSET_MM 1.0
#define MOST_LETTERS_MM 14.0 /* wide: a short name */

void
sq_draw_probe (SqDrawing *drawing, SqPaperPoint at, double azimuth_deg)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  const double arm = SQ_PROBE_RADIUS_MM;

  sq_draw_circle_path (drawing, at, RING_MM);
  sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_35);
  sq_draw_line (drawing, (SqPaperPoint){ at.x_mm - arm, at.y_mm },
                (SqPaperPoint){ at.x_mm + arm, at.y_mm }, SQ_PEN_25, ink);
  sq_draw_line (drawing, (SqPaperPoint){ at.x_mm, at.y_mm - arm },
                (SqPaperPoint){ at.x_mm, at.y_mm + arm }, SQ_PEN_25, ink);
  sq_draw_dot (drawing, at, 0.45, ink);
  if (!isnan (azimuth_deg)) {
    double angle = sq_view_angle_rad (azimuth_deg);
    sq_draw_arrow (drawing, sq_paper_along (at, angle, RING_MM),
                   sq_paper_along (at, angle, ARROW_MM), SQ_PEN_25, ink, NULL, 0, 1.4);
  }
}

static SqType
number_type (SqDrawing *drawing)
{
  return (SqType){ .cap_mm = SQ_TYPE_SMALL,
                   .weight = 600,
                   .align = SQ_ALIGN_CENTRE,
                   .colour = sq_ink (drawing->view, SQ_INK) };
}

double
sq_note_mark_width_mm (SqDrawing *drawing, int number)
{
  g_autofree char *digits = g_strdup_printf ("%d", number);
  SqType type = number_type (drawing);
  return MAX (SQ_NOTE_SIDE_MM, sq_text_width_mm (drawing, digits, &type) + 2.0 * NOTE_INSET_MM);
}

void
sq_draw_note_mark (SqDrawing *drawing, SqPaperPoint at, int number)
{
  g_autofree char *digits = g_strdup_printf ("%d", number);
  SqType type = number_type (drawing);
  double half_mm = sq_note_mark_width_mm (drawing, number) / 2;
  sq_draw_box_path (drawing, sq_paper_box_round (at, half_mm, SQ_NOTE_SIDE_MM / 2), 0.0);
  sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_25);
  sq_draw_text (drawing, (SqPaperPoint){ at.x_mm, at.y_mm + SQ_TYPE_SMALL / 2 }, digits, &type);
}

void
sq_draw_caution_mark (SqDrawing *drawing, SqPaperPoint at)
{
  const SqPaperPoint triangle[] = { { at.x_mm, at.y_mm - 2.7 },
                                    { at.x_mm + 2.6, at.y_mm + 1.7 },
                                    { at.x_mm - 2.6, at.y_mm + 1.7 } };
  SqColour ink = sq_ink (drawing->view, SQ_INK);

  sq_draw_polyline (drawing, triangle, G_N_ELEMENTS (triangle), TRUE);
  sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_50);
  sq_draw_text (
    drawing, (SqPaperPoint){ at.x_mm, at.y_mm + 1.1 }, "!",
    &(SqType){ .cap_mm = SQ_TYPE_SMALL, .weight = 700, .align = SQ_ALIGN_CENTRE, .colour = ink });
}

static SqType
letter_type (SqDrawing *drawing)
{
  return (SqType){ .cap_mm = SQ_TYPE_HEAD,
                   .weight = 700,
                   .align = SQ_ALIGN_CENTRE,
                   .colour = sq_ink (drawing->view, SQ_PAPER),
                   .width_mm = MOST_LETTERS_MM,
                   .one_line = TRUE };
}

double
sq_mark_letter_width_mm (SqDrawing *drawing, const char *letter)
{
  SqType type = letter_type (drawing);
  return MAX (SQ_LETTER_SIDE_MM, sq_text_width_mm (drawing, letter, &type) + 2.0 * LETTER_INSET_MM);
}

void
sq_draw_mark_letter (SqDrawing *drawing, SqPaperPoint at, const char *letter)
{
  SqType type = letter_type (drawing);
  double half = sq_mark_letter_width_mm (drawing, letter) / 2;

  sq_draw_box_path (drawing, sq_paper_box_round (at, half, SQ_LETTER_SIDE_MM / 2), 0.0);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_INK), 1.0);
  sq_draw_text (drawing, (SqPaperPoint){ at.x_mm, at.y_mm + SQ_TYPE_HEAD / 2 }, letter, &type);
}
