/* lamp-mount.c: stand legs, pipes, wall bars, feet: what holds a lamp */
#include "draw/lamp-mount.h"

#include "scene/fixture.h"

#include <glib/gi18n-lib.h>

SqMountGlyph
sq_mount_glyph (int mount)
{
  switch (mount) {
  case SQ_MOUNT_CEILING:
  case SQ_MOUNT_PIPE:
    return SQ_GLYPH_HUNG;
  case SQ_MOUNT_BOOM:
    return SQ_GLYPH_BOOM;
  case SQ_MOUNT_LIFT:
    return SQ_GLYPH_LIFT;
  case SQ_MOUNT_WALL:
    return SQ_GLYPH_WALL;
  case SQ_MOUNT_FLOOR:
    return SQ_GLYPH_FLOOR;
  case SQ_MOUNT_HAND:
    return SQ_GLYPH_HAND;
  case SQ_MOUNT_SET:
    return SQ_GLYPH_SET;
  case SQ_MOUNT_STAND:
  default:
    return SQ_GLYPH_STAND;
  }
}

const char *
sq_mount_glyph_word (SqMountGlyph glyph)
{
  static const char *const words[SQ_MOUNT_GLYPHS] = {
    [SQ_GLYPH_STAND] = N_ ("stand"), [SQ_GLYPH_LIFT] = N_ ("lift"), [SQ_GLYPH_HUNG] = N_ ("hung"),
    [SQ_GLYPH_BOOM] = N_ ("boom"),   [SQ_GLYPH_WALL] = N_ ("wall"), [SQ_GLYPH_FLOOR] = N_ ("floor"),
    [SQ_GLYPH_HAND] = N_ ("hand"),   [SQ_GLYPH_SET] = N_ ("set"),
  };
  return words[glyph];
}

static void
draw_legs (SqDrawing *drawing, double radius_mm)
{
  SqColour soft = sq_ink (drawing->view, SQ_SOFT);
  for (int leg = 0; leg < 3; leg++) {
    SqPaperPoint foot =
      sq_paper_along ((SqPaperPoint){ 0, 0 }, G_PI + leg * 2.0 * G_PI / 3, radius_mm);
    sq_draw_line (drawing, (SqPaperPoint){ 0, 0 }, foot, SQ_PEN_18, soft);
    sq_draw_dot (drawing, foot, 0.28, soft);
  }
}

/* Four outriggers, each on a pad. */
static void
draw_outriggers (SqDrawing *drawing, double radius_mm)
{
  SqColour soft = sq_ink (drawing->view, SQ_SOFT);
  for (int leg = 0; leg < 4; leg++) {
    double angle = G_PI / 4 + leg * G_PI / 2;
    SqPaperPoint foot = sq_paper_along ((SqPaperPoint){ 0, 0 }, angle, radius_mm);
    sq_draw_line (drawing, (SqPaperPoint){ 0, 0 }, foot, SQ_PEN_25, soft);
    sq_draw_line (drawing, sq_paper_along (foot, angle - G_PI / 2, 0.7),
                  sq_paper_along (foot, angle + G_PI / 2, 0.7), SQ_PEN_50, soft);
  }
}

/* An arm from behind with its counterweight; where it stands is not known. */
static void
draw_arm (SqDrawing *drawing, double depth_mm)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  const double arm = 5.5, weight_long = 1.7, weight_wide = 1.2;
  double x = -depth_mm / 2 - arm;
  sq_draw_line (drawing, (SqPaperPoint){ -depth_mm / 2, 0 }, (SqPaperPoint){ x, 0 }, SQ_PEN_35,
                ink);
  sq_draw_box_path (drawing,
                    (SqPaperBox){ x - weight_long, -weight_wide / 2, weight_long, weight_wide }, 0);
  sq_draw_fill (drawing, ink, 1.0);
}

static void
draw_pipe (SqDrawing *drawing, double width_mm)
{
  double reach = MAX (width_mm / 2 + 2.2, 3.6);
  for (int side = -1; side <= 1; side += 2)
    sq_draw_line (drawing, (SqPaperPoint){ side * 0.45, -reach },
                  (SqPaperPoint){ side * 0.45, reach }, SQ_PEN_25, sq_ink (drawing->view, SQ_INK));
}

static void
draw_wall_bar (SqDrawing *drawing, double width_mm, double depth_mm)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double x = -depth_mm / 2 - 1.0, half = 0.45 * width_mm + 0.6;
  int n = MAX (3, (int)(width_mm / 1.4));

  sq_draw_line (drawing, (SqPaperPoint){ x, -half }, (SqPaperPoint){ x, half }, SQ_PEN_70, ink);
  for (int i = 0; i <= n; i++) {
    double y = -half + 2 * half * i / n;
    sq_draw_line (drawing, (SqPaperPoint){ x, y }, (SqPaperPoint){ x - 1.1, y + 0.9 }, SQ_PEN_25,
                  ink);
  }
  sq_draw_line (drawing, (SqPaperPoint){ x, 0 }, (SqPaperPoint){ -depth_mm / 2, 0 }, SQ_PEN_35,
                ink);
}

static void
draw_feet (SqDrawing *drawing, double width_mm, double depth_mm)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  for (int side = -1; side <= 1; side += 2) {
    double y = side * (width_mm / 2 + 1.1);
    sq_draw_line (drawing, (SqPaperPoint){ -0.2 * depth_mm, y },
                  (SqPaperPoint){ 0.2 * depth_mm, y }, SQ_PEN_35, ink);
    sq_draw_line (drawing, (SqPaperPoint){ 0, y }, (SqPaperPoint){ 0, side * width_mm / 2 },
                  SQ_PEN_35, ink);
  }
}

static void
draw_hand (SqDrawing *drawing, double depth_mm)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double x = -depth_mm / 2;
  sq_draw_line (drawing, (SqPaperPoint){ x, 0 }, (SqPaperPoint){ x - 1.6, 0 }, SQ_PEN_50, ink);
  sq_draw_circle_path (drawing, (SqPaperPoint){ x - 2.4, 0 }, 0.8);
  sq_draw_stroke (drawing, SQ_PEN_50, ink);
}

void
sq_draw_mount (
  SqDrawing *drawing, SqMountGlyph glyph, double width_mm, double depth_mm, double legs_radius_mm)
{
  switch (glyph) {
  case SQ_GLYPH_STAND:
    draw_legs (drawing, MAX (legs_radius_mm, MAX (width_mm, depth_mm) / 2 + 1.6));
    break;
  case SQ_GLYPH_LIFT:
    draw_outriggers (drawing, MAX (legs_radius_mm, hypot (width_mm, depth_mm) / 2 + 1.2));
    break;
  case SQ_GLYPH_HUNG:
    draw_pipe (drawing, width_mm);
    break;
  case SQ_GLYPH_BOOM:
    draw_arm (drawing, depth_mm);
    break;
  case SQ_GLYPH_WALL:
    draw_wall_bar (drawing, width_mm, depth_mm);
    break;
  case SQ_GLYPH_FLOOR:
    draw_feet (drawing, width_mm, depth_mm);
    break;
  case SQ_GLYPH_HAND:
    draw_hand (drawing, depth_mm);
    break;
  case SQ_GLYPH_SET:
  case SQ_MOUNT_GLYPHS:
  default:
    break;
  }
}

double
sq_mount_glyph_width_mm (double size_mm)
{
  return size_mm + 0.7;
}

double
sq_draw_mount_glyph (SqDrawing *drawing, SqPaperPoint at, double size_mm, SqMountGlyph glyph)
{
  cairo_t *cr = drawing->cairo;
  const double pen = 0.28, edge = pen / 2, w = size_mm;

  sq_draw_enter (drawing, at, 0.0);
  switch (glyph) {
  case SQ_GLYPH_STAND:
    cairo_move_to (cr, w / 2, -w);
    cairo_line_to (cr, w / 2, -edge);
    cairo_move_to (cr, 0, -edge);
    cairo_line_to (cr, w, -edge);
    break;
  case SQ_GLYPH_LIFT: /* a stand whose head goes up */
    cairo_move_to (cr, w / 2, -w + edge);
    cairo_line_to (cr, w / 2, -edge);
    cairo_move_to (cr, 0, -edge);
    cairo_line_to (cr, w, -edge);
    cairo_move_to (cr, 0.12 * w, -0.62 * w);
    cairo_line_to (cr, w / 2, -w + edge);
    cairo_line_to (cr, 0.88 * w, -0.62 * w);
    break;
  case SQ_GLYPH_BOOM: /* a mast, an arm, and what hangs from it */
    cairo_move_to (cr, edge, 0);
    cairo_line_to (cr, edge, -w + edge);
    cairo_line_to (cr, w - edge, -w + edge);
    cairo_line_to (cr, w - edge, -0.45 * w);
    break;
  case SQ_GLYPH_HUNG:
    cairo_move_to (cr, w / 2, 0);
    cairo_line_to (cr, w / 2, -w + edge);
    cairo_move_to (cr, 0, -w + edge);
    cairo_line_to (cr, w, -w + edge);
    break;
  case SQ_GLYPH_WALL:
    cairo_move_to (cr, edge, -w);
    cairo_line_to (cr, edge, 0);
    cairo_move_to (cr, edge, -w / 2);
    cairo_line_to (cr, w, -w / 2);
    break;
  case SQ_GLYPH_FLOOR:
    cairo_move_to (cr, 0.1 * w, -edge);
    cairo_line_to (cr, 0.5 * w, -0.72 * w);
    cairo_line_to (cr, 0.9 * w, -edge);
    cairo_close_path (cr);
    break;
  case SQ_GLYPH_HAND:
    sq_draw_circle_path (drawing, (SqPaperPoint){ w / 2, -0.3 * w }, 0.28 * w);
    cairo_move_to (cr, w / 2, -w);
    cairo_line_to (cr, w / 2, -0.58 * w);
    break;
  case SQ_GLYPH_SET:
  case SQ_MOUNT_GLYPHS:
  default:
    cairo_rectangle (cr, edge, -0.9 * w + edge, 0.9 * w - 2 * edge, 0.9 * w - 2 * edge);
    break;
  }
  sq_draw_stroke (drawing, pen, sq_ink (drawing->view, SQ_INK));
  sq_draw_leave (drawing);
  return sq_mount_glyph_width_mm (size_mm);
}
