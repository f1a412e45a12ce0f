/* plan-missing.c: what a plan lacks, in words, so that an empty field does not look like a fault */
#include "paper/plan-pages.h"

#include <glib/gi18n-lib.h>

static gboolean
is_free (const SqPlanReport *report, SqPaperBox box)
{
  for (guint k = 0; k < report->labels->len; k++)
    if (sq_paper_boxes_overlap (box, g_array_index (report->labels, SqLabel, k).box))
      return FALSE;
  for (guint k = 0; k < report->lines->len; k++)
    if (sq_paper_line_hits (g_array_index (report->lines, SqPaperLine, k), box))
      return FALSE;
  return TRUE;
}

/* Where a line of words may start: in the first corner of the field where nothing stands. */
static SqPaperPoint
free_corner (const SqPlanPages *plan, double width_mm, double cap_mm)
{
  const double in_mm = 8.0, air_mm = 1.0;
  SqPaperBox field = sq_paper_box_grown (plan->view.clip, -in_mm);
  double right_mm = field.width_mm - width_mm, down_mm = field.height_mm - cap_mm;
  const SqPaperPoint corners[] = {
    { 0, 0 }, { 0, down_mm }, { right_mm, 0 }, { right_mm, down_mm }
  };
  for (guint k = 0; k < G_N_ELEMENTS (corners); k++) {
    SqPaperBox box = { field.x_mm + corners[k].x_mm, field.y_mm + corners[k].y_mm, width_mm,
                       cap_mm };
    if (is_free (plan->report, sq_paper_box_grown (box, air_mm)))
      return (SqPaperPoint){ box.x_mm, box.y_mm + cap_mm };
  }
  return (SqPaperPoint){ field.x_mm, field.y_mm + cap_mm };
}

void
sq_plan_say_what_is_missing (const SqPlot *plot, const SqPlanPages *plan, SqDrawing *drawing)
{
  const SqScene *scene = plot->scene;
  gboolean no_set = scene->walls->len == 0 && scene->pieces->len == 0;
  gboolean no_lamps = scene->fixtures->len == 0;
  SqPlace least, most;
  SqType type = { .cap_mm = SQ_TYPE_HEAD,
                  .weight = 400,
                  .align = SQ_ALIGN_CENTRE,
                  .colour = sq_ink (drawing->view, drawing->view->has_overlay ? SQ_INK : SQ_MID),
                  .halo = TRUE };
  if (!sq_plan_extent_m (scene, &least, &most)) {
    type.cap_mm = SQ_TYPE_NAME;
    sq_draw_text (drawing, sq_paper_box_middle (plan->view.clip),
                  _ ("Nothing stands on this plan yet"), &type);
    return;
  }
  const char *words = no_set && no_lamps ? _ ("No set and no lamps yet")
                      : no_set           ? _ ("No set drawn yet: walls and pieces are missing")
                      : no_lamps         ? _ ("No lamps yet: the plan shows the set alone")
                      : scene->marks->len == 0 ? _ ("No marks yet: nobody's light is read")
                                               : NULL;
  if (words == NULL)
    return;
  type.align = SQ_ALIGN_LEFT;
  double width_mm = sq_text_width_mm (drawing, words, &type);
  sq_draw_text (drawing, free_corner (plan, width_mm, type.cap_mm), words, &type);
}
