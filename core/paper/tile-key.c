/* tile-key.c: all sheets of one plan in small, with the walls on them, and which of them this is */
#include "draw/wall-shape.h"
#include "paper/plan-pages.h"

#define MOST_WIDE_MM 60.0

/* How the paper of the whole plan lies in its key. */
typedef struct {
  SqPaperPoint at;
  double scale;
} Small;

static SqPaperBox
small_box (const Small *small, SqPaperBox box)
{
  return (SqPaperBox){ small->at.x_mm + small->scale * box.x_mm,
                       small->at.y_mm + small->scale * box.y_mm, small->scale * box.width_mm,
                       small->scale * box.height_mm };
}

double
sq_plan_key_width_mm (const SqPlanPages *plan, double height_mm)
{
  SqPaperBox whole = sq_tiling_whole (&plan->tiling);
  return MIN (height_mm * whole.width_mm / whole.height_mm, MOST_WIDE_MM);
}

static void
draw_walls (const SqPlot *plot, const SqPlanPages *plan, SqDrawing *drawing, const Small *small)
{
  g_autoptr (GArray) blocks = sq_wall_blocks (plot->scene);
  for (guint k = 0; k < blocks->len; k++) {
    SqPaperPoint corners[4];
    for (int n = 0; n < 4; n++) {
      SqPaperPoint at = sq_view_paper (&plan->view, sq_wall_block_at (blocks, k)->corner[n]);
      corners[n] = (SqPaperPoint){ small->at.x_mm + small->scale * at.x_mm,
                                   small->at.y_mm + small->scale * at.y_mm };
    }
    sq_draw_polyline (drawing, corners, 4, TRUE);
  }
  sq_draw_stroke (drawing, SQ_PEN_25, sq_ink (drawing->view, SQ_SOFT));
}

/* Where it is legible. */
static void
draw_number (SqDrawing *drawing, SqPaperBox cell, int number, gboolean here)
{
  SqPaperPoint middle = sq_paper_box_middle (cell);
  g_autofree char *text = g_strdup_printf ("%d", number);
  SqType type = { .cap_mm = SQ_TYPE_SMALL,
                  .weight = here ? 700 : 500,
                  .align = SQ_ALIGN_CENTRE,
                  .colour = sq_ink (drawing->view, SQ_INK),
                  .halo = !here };
  if (cell.height_mm < SQ_TYPE_SMALL + 0.8 || cell.width_mm < 2.0 * SQ_TYPE_SMALL)
    return;
  sq_draw_text (drawing, (SqPaperPoint){ middle.x_mm, middle.y_mm + SQ_TYPE_SMALL / 2.0 }, text,
                &type);
}

void
sq_plan_draw_key (const SqPlot *plot,
                  const SqPlanPages *plan,
                  SqDrawing *drawing,
                  const SqPlotPage *page,
                  SqPaperBox box)
{
  SqPaperBox whole = sq_tiling_whole (&plan->tiling);
  guint here = sq_plan_tile_of (plot, plan, page), n = sq_tiling_count (&plan->tiling);
  Small small = { .scale = MIN (box.width_mm / whole.width_mm, box.height_mm / whole.height_mm) };
  small.at = (SqPaperPoint){ box.x_mm + (box.width_mm - small.scale * whole.width_mm) / 2.0,
                             box.y_mm + (box.height_mm - small.scale * whole.height_mm) / 2.0 };
  SqPaperBox this_one = small_box (&small, sq_tiling_own (&plan->tiling, here));

  sq_draw_box_path (drawing, this_one, 0.0);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_POCHE), 1.0);
  draw_walls (plot, plan, drawing, &small);
  for (guint k = 0; k < n; k++) {
    if (!sq_tiling_has (&plan->tiling, k))
      continue;
    SqPaperBox cell = small_box (&small, sq_tiling_own (&plan->tiling, k));
    sq_draw_box_path (drawing, cell, 0.0);
    sq_draw_stroke (drawing, SQ_PEN_18, sq_ink (drawing->view, SQ_INK));
    draw_number (drawing, cell, sq_plan_sheet_number (plot, plan, k), k == here);
  }
  sq_draw_box_path (drawing, this_one, 0.0);
  sq_draw_stroke (drawing, SQ_PEN_50, sq_ink (drawing->view, SQ_INK));
}
