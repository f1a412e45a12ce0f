/* tile-marks.c: where the sheets of one plan meet: match lines, marks to lay over one another, key
 */
#include "draw/wall-shape.h"
#include "paper/plan-pages.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

#define MARK_RADIUS_MM 2.2
#define MARK_CROSS_MM 3.6

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

/* A match line as it lies on a sheet: upright or level, and from where to where along itself. */
typedef struct {
  gboolean upright, beyond_is_right; /* right of it, or below it, is the other sheet's */
  double across_mm;
  double start_mm, long_mm;  /* of what belongs to this sheet */
  double from_mm, to_mm;     /* of what it shows */
  gboolean meets_another[2]; /* at its start, at its end */
} Joint;

static Joint
joint_of (const SqTiling *tiling, guint tile, int right, int down, SqPaperLine line)
{
  SqPaperBox window = sq_tiling_window (tiling, tile), own = sq_tiling_own (tiling, tile);
  gboolean upright = right != 0;
  Joint joint = { .upright = upright, .beyond_is_right = right > 0 || down > 0 };
  joint.across_mm = upright ? line.from.x_mm : line.from.y_mm;
  joint.start_mm = upright ? own.y_mm : own.x_mm;
  joint.long_mm = upright ? own.height_mm : own.width_mm;
  joint.from_mm = upright ? window.y_mm : window.x_mm;
  joint.to_mm = joint.from_mm + (upright ? window.height_mm : window.width_mm);
  for (int end = 0; end < 2; end++) {
    int step = end == 0 ? -1 : 1;
    joint.meets_another[end] =
      sq_tiling_neighbour (tiling, tile, upright ? 0 : step, upright ? step : 0) >= 0;
  }
  return joint;
}

static SqPaperPoint
on_joint (const Joint *joint, double along_mm)
{
  return joint->upright ? (SqPaperPoint){ joint->across_mm, along_mm }
                        : (SqPaperPoint){ along_mm, joint->across_mm };
}

/* In the first or the second half of what both sheets have of it. */
static SqPaperPoint
target_on (const Joint *joint, const SqPlanReport *report, int end)
{
  static const double shares[] = { 0.25, 0.30, 0.20, 0.35, 0.15, 0.40, 0.10 };
  for (guint k = 0; k < G_N_ELEMENTS (shares); k++) {
    double share = end == 0 ? shares[k] : 1.0 - shares[k];
    SqPaperPoint at = on_joint (joint, joint->start_mm + share * joint->long_mm);
    if (is_clear (report, at))
      return at;
  }
  return on_joint (joint, joint->start_mm + (end == 0 ? 0.25 : 0.75) * joint->long_mm);
}

static SqPaperPoint
letter_on (const Joint *joint, int end)
{
  /* Off the border; farther off a line that crosses, whose own letter stands there. */
  const double from_border_mm = 9.0, from_line_mm = 16.0;
  double in_mm = joint->meets_another[end] ? from_line_mm : from_border_mm;
  return on_joint (joint, joint->start_mm + (end == 0 ? in_mm : joint->long_mm - in_mm));
}

/* The line on one side of this sheet, as far as the sheet goes. */
static void
draw_side (
  const SqPlot *plot, const SqPlanPages *plan, SqDrawing *drawing, guint tile, int right, int down)
{
  const double dash_mm[] = { 12.0, 1.6, 1.2, 1.6 }; /* a long chain line, ISO 128 */
  const SqTiling *tiling = &plan->tiling;
  int beside = sq_tiling_neighbour (tiling, tile, right, down);
  if (beside < 0)
    return;
  g_autoptr (GArray) lines = sq_tiling_match_lines (tiling);
  guint column = tile % tiling->columns, row = tile / tiling->columns;
  guint number = right != 0 ? column - (right < 0) : tiling->columns - 1 + row - (down < 0);
  Joint joint = joint_of (tiling, tile, right, down, g_array_index (lines, SqPaperLine, number));
  SqPaperPoint from = on_joint (&joint, joint.from_mm), to = on_joint (&joint, joint.to_mm);

  cairo_move_to (drawing->cairo, from.x_mm, from.y_mm);
  cairo_line_to (drawing->cairo, to.x_mm, to.y_mm);
  sq_draw_stroke_dashed (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK), dash_mm,
                         G_N_ELEMENTS (dash_mm));
  g_autofree char *letter = sq_letter_text (number);
  int sheet = sq_plan_sheet_number (plot, plan, (guint)beside);
  for (int end = 0; end < 2; end++) {
    draw_target (drawing, target_on (&joint, plan->report, end));
    draw_letter (drawing, letter_on (&joint, end), joint.upright, joint.beyond_is_right, letter,
                 sheet);
  }
}

void
sq_plan_draw_matches (const SqPlot *plot,
                      const SqPlanPages *plan,
                      SqDrawing *drawing,
                      const SqPlotPage *page)
{
  guint tile = sq_plan_tile_of (plot, plan, page);
  draw_veil (plan, drawing, tile);
  draw_side (plot, plan, drawing, tile, -1, 0);
  draw_side (plot, plan, drawing, tile, 1, 0);
  draw_side (plot, plan, drawing, tile, 0, -1);
  draw_side (plot, plan, drawing, tile, 0, 1);
}
