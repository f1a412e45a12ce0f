/* opening-symbol.c: windows, doors and holes in walls, seen from above */
#include "draw/opening-symbol.h"

#include "draw/text-label.h"

static const double thin_dash[] = { 1.2, 0.8 };

#define CLEAR_OF_WALL_MM 1.4

static void
window (SqDrawing *drawing, const SqPaperPoint corner[4])
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  SqPaperPoint near = { (corner[0].x_mm + corner[3].x_mm) / 2,
                        (corner[0].y_mm + corner[3].y_mm) / 2 };
  SqPaperPoint far = { (corner[1].x_mm + corner[2].x_mm) / 2,
                       (corner[1].y_mm + corner[2].y_mm) / 2 };

  sq_draw_polyline (drawing, corner, 4, TRUE);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
  sq_draw_line (drawing, corner[0], corner[1], SQ_PEN_18, ink);
  sq_draw_line (drawing, corner[3], corner[2], SQ_PEN_18, ink);
  sq_draw_line (drawing, near, far, SQ_PEN_35, ink);
}

/* The leaf as it stands, and the way it swings: hinged at the near jamb, to the left face, or to
 * the right one where it opens that way. */
static void
door (SqDrawing *drawing, const SqPaperPoint corner[4], double open_deg)
{
  cairo_t *cr = drawing->cairo;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  gboolean right = open_deg < 0.0;
  SqPaperPoint hinge = corner[right ? 0 : 3], latch = corner[right ? 1 : 2];
  double width = sq_paper_distance_mm (hinge, latch);
  double shut = atan2 (latch.y_mm - hinge.y_mm, latch.x_mm - hinge.x_mm);
  double open = sq_view_angle_rad (open_deg);
  double swing = sq_view_angle_rad (right ? MIN (open_deg, -90.0) : MAX (open_deg, 90.0));

  sq_draw_line (drawing, hinge, sq_paper_along (hinge, shut + open, width), SQ_PEN_35, ink);
  cairo_new_sub_path (cr);
  if (right)
    cairo_arc (cr, hinge.x_mm, hinge.y_mm, width, shut, shut + swing);
  else
    cairo_arc_negative (cr, hinge.x_mm, hinge.y_mm, width, shut, shut + swing);
  sq_draw_stroke_dashed (drawing, SQ_PEN_18, ink, thin_dash,
                         open_deg != 0.0 ? 0 : (int)G_N_ELEMENTS (thin_dash));
}

/* Wall goes on over it, under it, or both: its faces dashed. */
static void
hole (SqDrawing *drawing, const SqPaperPoint corner[4])
{
  for (int side = 0; side < 4; side += 2) {
    cairo_move_to (drawing->cairo, corner[side].x_mm, corner[side].y_mm);
    cairo_line_to (drawing->cairo, corner[side + 1].x_mm, corner[side + 1].y_mm);
  }
  sq_draw_stroke_dashed (drawing, SQ_PEN_18, sq_ink (drawing->view, SQ_INK), thin_dash,
                         G_N_ELEMENTS (thin_dash));
}

void
sq_draw_opening (SqDrawing *drawing, const SqWallBlock *block)
{
  SqPaperPoint corner[4];
  for (int i = 0; i < 4; i++)
    corner[i] = sq_view_paper (drawing->view, block->corner[i]);

  switch (block->opening->kind) {
  case SQ_OPENING_WINDOW:
    window (drawing, corner);
    break;
  case SQ_OPENING_DOOR:
    door (drawing, corner, block->opening->open_deg);
    break;
  case SQ_OPENING_HOLE:
  default:
    hole (drawing, corner);
    break;
  }
}

static char *
length_text (double metres, SqUnits units)
{
  if (units == SQ_IMPERIAL)
    return sq_quantity_format (metres, SQ_LENGTH, units);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  return g_strdup (g_ascii_formatd (digits, sizeof digits, "%.2f", metres));
}

SqOpeningText
sq_opening_text (
  SqDrawing *drawing, const SqWallBlock *block, SqPlace room, gboolean beyond, double slide_mm)
{
  const SqOpening *opening = block->opening;
  double sill = sq_opening_sill_m (opening);
  SqOpeningText text = { 0 };
  if (opening->kind == SQ_OPENING_DOOR || (opening->kind == SQ_OPENING_HOLE && sill <= 0.0))
    return text;

  g_autofree char *low = length_text (sill, drawing->view->units);
  g_autofree char *high =
    length_text (sq_opening_head_m (opening, block->height_m), drawing->view->units);
  text.text = g_strdup_printf ("%s / %s", low, high);

  /* Along the wall, upright, clear of the face that looks into the room. */
  SqPlace middle = { 0, 0 };
  for (int i = 0; i < 4; i++) {
    middle.x_m += block->corner[i].x_m / 4;
    middle.y_m += block->corner[i].y_m / 4;
  }
  SqPlace a = block->corner[0], b = block->corner[1];
  double azimuth = atan2 (b.y_m - a.y_m, b.x_m - a.x_m), normal = azimuth + G_PI / 2;
  double toward = cos (normal) * (room.x_m - middle.x_m) + sin (normal) * (room.y_m - middle.y_m);
  double thick = sq_place_distance_m (block->corner[0], block->corner[3]);
  SqType type = sq_set_word_type (drawing);
  double clear = thick * drawing->view->mm_per_m / 2 + CLEAR_OF_WALL_MM + type.cap_mm / 2;
  double side = (toward < 0.0) != beyond ? -normal - G_PI : -normal; /* cairo's sense */
  double turn = -azimuth;

  while (turn > G_PI / 2 - 1e-6) /* read from below, or from the right */
    turn -= G_PI;
  while (turn <= -G_PI / 2 - 1e-6)
    turn += G_PI;
  SqPaperPoint beside = sq_paper_along (sq_view_paper (drawing->view, middle), -azimuth, slide_mm);
  SqPaperPoint centre = sq_paper_along (beside, side, clear);
  text.turn_rad = turn;
  text.at = sq_paper_along (centre, turn + G_PI / 2, type.cap_mm / 2);
  double width = sq_text_width_mm (drawing, text.text, &type), height = type.cap_mm * 1.3;
  text.length_mm = width;
  double c = fabs (cos (turn)), s = fabs (sin (turn));
  text.box =
    sq_paper_box_round (centre, (width * c + height * s) / 2, (width * s + height * c) / 2);
  return text;
}

void
sq_draw_opening_text (SqDrawing *drawing, const SqOpeningText *text)
{
  SqType type = sq_set_word_type (drawing);
  type.turn_rad = text->turn_rad;
  sq_draw_text (drawing, text->at, text->text, &type);
}
