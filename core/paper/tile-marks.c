/* tile-marks.c: where the sheets of one plan meet: match lines, marks to lay over one another, key
 */
#include "draw/wall-shape.h"
#include "paper/plan-pages.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

#define MARK_RADIUS_MM 2.2
#define MARK_CROSS_MM 3.6

static guint
tile_of (const SqPlot *plot, const SqPlanPages *plan, const SqPlotPage *page)
{
  return (guint)(page->number - sq_plot_page (plot, (int)plan->first)->number);
}

/* What the neighbours show is pale: it is there to be matched, not to be read. */
static void
draw_veil (const SqPlanPages *plan, SqDrawing *drawing, guint tile)
{
  const double alpha = 0.45;
  SqPaperBox window = sq_tiling_window (&plan->tiling, tile);
  SqPaperBox own = sq_tiling_own (&plan->tiling, tile);
  cairo_save (drawing->cairo);
  cairo_set_fill_rule (drawing->cairo, CAIRO_FILL_RULE_EVEN_ODD);
  sq_draw_box_path (drawing, window, 0.0);
  sq_draw_box_path (drawing, own, 0.0);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), alpha);
  cairo_restore (drawing->cairo);
}

/* A ring with a cross: the same on both sheets, so that one can be laid on the other. */
static void
draw_target (SqDrawing *drawing, SqPaperPoint at)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  sq_draw_circle_path (drawing, at, MARK_RADIUS_MM);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
  sq_draw_circle_path (drawing, at, MARK_RADIUS_MM);
  sq_draw_stroke (drawing, SQ_PEN_25, ink);
  sq_draw_line (drawing, (SqPaperPoint){ at.x_mm - MARK_CROSS_MM, at.y_mm },
                (SqPaperPoint){ at.x_mm + MARK_CROSS_MM, at.y_mm }, SQ_PEN_18, ink);
  sq_draw_line (drawing, (SqPaperPoint){ at.x_mm, at.y_mm - MARK_CROSS_MM },
                (SqPaperPoint){ at.x_mm, at.y_mm + MARK_CROSS_MM }, SQ_PEN_18, ink);
}

/* The letter in a circle on the line, and beside it where the plan goes on. */
static void
draw_letter (SqDrawing *drawing,
             SqPaperPoint at,
             gboolean upright,
             gboolean beyond_is_right,
             const char *letter,
             int sheet)
{
  const double ring_mm = 2.8, apart_mm = 1.6;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  SqType type = { .cap_mm = SQ_TYPE_HEAD, .weight = 700, .align = SQ_ALIGN_CENTRE, .colour = ink };
  g_autofree char *words = g_strdup_printf (_ ("sheet %d"), sheet);
  sq_draw_circle_path (drawing, at, ring_mm);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
  sq_draw_circle_path (drawing, at, ring_mm);
  sq_draw_stroke (drawing, SQ_PEN_35, ink);
  sq_draw_text (drawing, (SqPaperPoint){ at.x_mm, at.y_mm + SQ_TYPE_HEAD / 2.0 }, letter, &type);

  type.cap_mm = SQ_TYPE_SMALL;
  type.weight = 600;
  type.halo = TRUE;
  SqPaperPoint text = at;
  if (upright) {
    type.align = beyond_is_right ? SQ_ALIGN_LEFT : SQ_ALIGN_RIGHT;
    text.x_mm += (beyond_is_right ? 1.0 : -1.0) * (ring_mm + apart_mm);
    text.y_mm += SQ_TYPE_SMALL / 2.0;
  } else {
    text.y_mm += beyond_is_right ? ring_mm + apart_mm + SQ_TYPE_SMALL : -(ring_mm + apart_mm);
  }
  sq_draw_text (drawing, text, words, &type);
}

/* Nothing that is read stands there: both sheets come to the same answer. */
static gboolean
is_clear (const SqPlanReport *report, SqPaperPoint at)
{
  SqPaperBox box = sq_paper_box_round (at, MARK_CROSS_MM, MARK_CROSS_MM);
  for (guint k = 0; k < report->labels->len; k++)
    if (sq_paper_boxes_overlap (box, g_array_index (report->labels, SqLabel, k).box))
      return FALSE;
  for (guint k = 0; k < report->solid->len; k++) {
    SqPaperBox solid = g_array_index (report->solid, SqPaperBox, k);
    /* A match line is among them, and the mark belongs on it. */
    gboolean is_seam = MIN (solid.width_mm, solid.height_mm) <= 2.0 * SQ_PLAN_SEAM_HALF_MM + 0.1;
    if (!is_seam && sq_paper_boxes_overlap (box, solid))
      return FALSE;
  }
  return TRUE;
}

/* One end of a match line, seen along it. */
static double
letter_along_mm (double own_end_mm, double inward, gboolean meets_another)
{
  /* Off the border; farther off a line that crosses, whose own letter stands there. */
  const double from_border_mm = 9.0, from_line_mm = 16.0;
  return own_end_mm + inward * (meets_another ? from_line_mm : from_border_mm);
}

/* The line on one side of this sheet, as far as the sheet goes. */
static void
draw_side (
  const SqPlot *plot, const SqPlanPages *plan, SqDrawing *drawing, guint tile, int right, int down)
{
  const double dash_mm[] = { 12.0, 1.6, 1.2, 1.6 }; /* a long chain line, ISO 128 */
  const double target_shares[] = { 0.25, 0.30, 0.20, 0.35, 0.15, 0.40, 0.10, 0.25 };
  const SqTiling *tiling = &plan->tiling;
  gboolean upright = right != 0;
  int beside = sq_tiling_neighbour (tiling, tile, right, down);
  if (beside < 0)
    return;
  g_autoptr (GArray) lines = sq_tiling_match_lines (tiling);
  guint column = tile % tiling->columns, row = tile / tiling->columns;
  guint number = upright ? column - (right < 0) : tiling->columns - 1 + row - (down < 0);
  SqPaperLine line = g_array_index (lines, SqPaperLine, number);
  SqPaperBox window = sq_tiling_window (tiling, tile), own = sq_tiling_own (tiling, tile);
  double across_mm = upright ? line.from.x_mm : line.from.y_mm;
  double start_mm = upright ? own.y_mm : own.x_mm;
  double long_mm = upright ? own.height_mm : own.width_mm;
  double window_start_mm = upright ? window.y_mm : window.x_mm;
  double window_long_mm = upright ? window.height_mm : window.width_mm;
#define ON_LINE(along)                                                                             \
  (upright ? (SqPaperPoint){ across_mm, (along) } : (SqPaperPoint){ (along), across_mm })
  SqPaperPoint from = ON_LINE (window_start_mm), to = ON_LINE (window_start_mm + window_long_mm);

  cairo_move_to (drawing->cairo, from.x_mm, from.y_mm);
  cairo_line_to (drawing->cairo, to.x_mm, to.y_mm);
  sq_draw_stroke_dashed (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK), dash_mm,
                         G_N_ELEMENTS (dash_mm));
  g_autofree char *letter = sq_letter_text (number);
  int sheet = sq_plot_page (plot, (int)plan->first + beside)->number;
  for (int end = -1; end <= 1; end += 2) {
    gboolean meets = sq_tiling_neighbour (tiling, tile, upright ? 0 : end, upright ? end : 0) >= 0;
    double at_end_mm = end < 0 ? start_mm : start_mm + long_mm;
    SqPaperPoint at = ON_LINE (letter_along_mm (at_end_mm, -end, meets));
    SqPaperPoint target = at;
    for (guint k = 0; k < G_N_ELEMENTS (target_shares); k++) {
      double share = end < 0 ? target_shares[k] : 1.0 - target_shares[k];
      target = ON_LINE (start_mm + long_mm * share);
      if (is_clear (plan->report, target))
        break;
    }
    draw_target (drawing, target);
    draw_letter (drawing, at, upright, right > 0 || down > 0, letter, sheet);
  }
#undef ON_LINE
}

void
sq_plan_draw_matches (const SqPlot *plot,
                      const SqPlanPages *plan,
                      SqDrawing *drawing,
                      const SqPlotPage *page)
{
  guint tile = tile_of (plot, plan, page);
  draw_veil (plan, drawing, tile);
  draw_side (plot, plan, drawing, tile, -1, 0);
  draw_side (plot, plan, drawing, tile, 1, 0);
  draw_side (plot, plan, drawing, tile, 0, -1);
  draw_side (plot, plan, drawing, tile, 0, 1);
}

double
sq_plan_key_width_mm (const SqPlanPages *plan, double height_mm)
{
  const double most_mm = 60.0;
  SqPaperBox whole = sq_tiling_whole (&plan->tiling);
  return MIN (height_mm * whole.width_mm / whole.height_mm, most_mm);
}

static void
draw_small_walls (const SqPlot *plot, const SqPlanPages *plan, SqDrawing *drawing)
{
  g_autoptr (GArray) blocks = sq_wall_blocks (plot->scene);
  for (guint k = 0; k < blocks->len; k++) {
    const SqWallBlock *block = sq_wall_block_at (blocks, k);
    SqPaperPoint corners[4];
    for (int n = 0; n < 4; n++)
      corners[n] = sq_view_paper (&plan->view, block->corner[n]);
    sq_draw_polyline (drawing, corners, 4, TRUE);
  }
  cairo_t *cairo = drawing->cairo;
  SqColour soft = sq_ink (drawing->view, SQ_SOFT);
  cairo_set_source_rgb (cairo, soft.red, soft.green, soft.blue);
  cairo_fill_preserve (cairo);
}

void
sq_plan_draw_key (const SqPlot *plot,
                  const SqPlanPages *plan,
                  SqDrawing *drawing,
                  const SqPlotPage *page,
                  SqPaperBox box)
{
  SqPaperBox whole = sq_tiling_whole (&plan->tiling);
  double scale = MIN (box.width_mm / whole.width_mm, box.height_mm / whole.height_mm);
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  guint here = tile_of (plot, plan, page);
  cairo_t *cairo = drawing->cairo;
  double left_mm = box.x_mm + (box.width_mm - scale * whole.width_mm) / 2.0;
  double top_mm = box.y_mm + (box.height_mm - scale * whole.height_mm) / 2.0;

  for (guint pass = 0; pass < 2; pass++) {
    for (guint k = 0; k < sq_tiling_count (&plan->tiling); k++) {
      SqPaperBox own = sq_tiling_own (&plan->tiling, k);
      SqPaperBox cell = { left_mm + scale * own.x_mm, top_mm + scale * own.y_mm,
                          scale * own.width_mm, scale * own.height_mm };
      sq_draw_box_path (drawing, cell, 0.0);
      if (pass == 0 && k == here) {
        sq_draw_fill (drawing, sq_ink (drawing->view, SQ_POCHE), 1.0);
      } else if (pass == 1) {
        sq_draw_stroke (drawing, k == here ? SQ_PEN_50 : SQ_PEN_18, ink);
      }
      cairo_new_path (cairo);
    }
    if (pass > 0)
      break;
    cairo_save (cairo);
    cairo_translate (cairo, left_mm, top_mm);
    cairo_scale (cairo, scale, scale);
    draw_small_walls (plot, plan, drawing);
    cairo_restore (cairo);
    sq_draw_stroke (drawing, SQ_PEN_13, sq_ink (drawing->view, SQ_SOFT));
  }
  /* As many numbers as are legible. */
  for (guint k = 0; k < sq_tiling_count (&plan->tiling); k++) {
    SqPaperBox own = sq_tiling_own (&plan->tiling, k);
    SqPaperPoint middle = { left_mm + scale * (own.x_mm + own.width_mm / 2.0),
                            top_mm + scale * (own.y_mm + own.height_mm / 2.0) };
    SqType type = { .cap_mm = SQ_TYPE_SMALL,
                    .weight = k == here ? 700 : 500,
                    .align = SQ_ALIGN_CENTRE,
                    .colour = ink,
                    .halo = k != here };
    g_autofree char *text =
      g_strdup_printf ("%d", sq_plot_page (plot, (int)(plan->first + k))->number);
    if (scale * own.height_mm < SQ_TYPE_SMALL + 0.8 || scale * own.width_mm < 2.0 * SQ_TYPE_SMALL)
      continue;
    sq_draw_text (drawing, (SqPaperPoint){ middle.x_mm, middle.y_mm + SQ_TYPE_SMALL / 2.0 }, text,
                  &type);
  }
}
