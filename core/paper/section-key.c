/* section-key.c: where a section cuts the set, in small, and which way one looks */
#include "paper/section-blocks.h"

#include "draw/plan.h"
#include "draw/wall-drawing.h"

#define ARROW_MM 4.2
#define HEAD_MM 2.0
#define END_MM 2.6
#define INSET_MM 3.5 /* for the arrows at the ends of the line */

/* ISO 128: long dashes with dots for where a cut runs, thick at its ends. */
static const double cut_dash[] = { 6.0, 1.2, 0.6, 1.2 };

static void
draw_lamps (SqDrawing *drawing, const SqSection *section)
{
  const SqView *view = drawing->view;
  for (guint i = 0; i < section->scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, section->scene->fixtures, i);
    if (!fixture->common.hidden && fixture != section->light)
      sq_draw_dot (drawing, sq_view_paper (view, (SqPlace){ fixture->at.x_m, fixture->at.y_m }),
                   0.5, sq_ink (view, SQ_SOFT));
  }
}

static SqPaperPoint
on_plan (const SqView *view, const SqCutPlane *plane, double along_m)
{
  SqPoint point = sq_cut_point (plane, (SqPlace){ along_m, 0.0 });
  return sq_view_paper (view, (SqPlace){ point.x_m, point.y_m });
}

static void
draw_cut_line (SqDrawing *drawing, const SqSection *section)
{
  const SqView *view = drawing->view;
  SqColour ink = sq_ink (view, SQ_INK);
  double along = sq_view_angle_rad (sq_vector_azimuth_deg (section->plane.along));
  double to_eye = sq_view_angle_rad (sq_vector_azimuth_deg (section->plane.to_eye));
  SqPaperPoint from = on_plan (view, &section->plane, section->set.least.x_m);
  SqPaperPoint to = on_plan (view, &section->plane, section->set.most.x_m);
  from = sq_paper_along (from, along, -1.0);
  to = sq_paper_along (to, along, 1.0);
  cairo_move_to (drawing->cairo, from.x_mm, from.y_mm);
  cairo_line_to (drawing->cairo, to.x_mm, to.y_mm);
  sq_draw_stroke_dashed (drawing, SQ_PEN_25, ink, cut_dash, G_N_ELEMENTS (cut_dash));
  for (int end = 0; end < 2; end++) {
    SqPaperPoint at = end == 0 ? from : to;
    sq_draw_line (drawing, at, sq_paper_along (at, along, end == 0 ? END_MM : -END_MM), SQ_PEN_70,
                  ink);
    sq_draw_arrow (drawing, sq_paper_along (at, to_eye, ARROW_MM), at, SQ_PEN_35, ink, NULL, 0,
                   HEAD_MM);
  }
}

/* The light, its number in a ring, so small that the line shows on both sides. */
static void
draw_light (SqDrawing *drawing, const SqSection *section)
{
  const SqView *view = drawing->view;
  const char *number = sq_label_or_id (section->light->number, section->light->id);
  SqType type = { .cap_mm = SQ_TYPE_SMALL,
                  .weight = 700,
                  .align = SQ_ALIGN_CENTRE,
                  .colour = sq_ink (view, SQ_INK),
                  .width_mm = 14.0,
                  .one_line = TRUE };
  SqPaperPoint at = on_plan (view, &section->plane, 0.0);
  double half = MAX (2.0, sq_text_width_mm (drawing, number, &type) / 2 + 1.0);
  sq_draw_box_path (drawing, sq_paper_box_round (at, half, 2.0), 2.0);
  sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_35);
  sq_draw_text (drawing, (SqPaperPoint){ at.x_mm, at.y_mm + type.cap_mm / 2 }, number, &type);
}

static void
draw_marks (SqDrawing *drawing, const SqSection *section)
{
  const SqView *view = drawing->view;
  for (guint i = 0; i < section->scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, section->scene->marks, i);
    SqPaperPoint at = sq_view_paper (view, mark->at);
    if (mark->common.hidden)
      continue;
    cairo_rectangle (drawing->cairo, at.x_mm - 0.7, at.y_mm - 0.7, 1.4, 1.4);
    sq_draw_fill (drawing, sq_ink (view, SQ_INK), 1.0);
  }
}

void
sq_draw_section_key (SqDrawing *drawing, const SqSection *section, SqPaperBox box)
{
  SqPlace least, most;
  SqPaperBox inner = sq_paper_box_grown (box, -INSET_MM);
  SqPaperPoint middle = sq_paper_box_middle (box);
  if (!sq_plan_extent_m (section->scene, &least, &most))
    return;
  double scale = MIN (inner.width_mm / MAX (most.x_m - least.x_m, 1.0),
                      inner.height_mm / MAX (most.y_m - least.y_m, 1.0));
  SqView view = *drawing->view;
  view.mm_per_m = scale;
  view.clip = box;
  view.origin = (SqPaperPoint){ middle.x_mm - (least.x_m + most.x_m) / 2 * scale,
                                middle.y_mm + (least.y_m + most.y_m) / 2 * scale };
  SqDrawing small = *drawing;
  small.view = &view;
  g_autoptr (GArray) blocks = sq_wall_blocks (section->scene);
  sq_draw_clip_to (drawing, box);
  sq_draw_walls (&small, blocks);
  draw_lamps (&small, section);
  draw_marks (&small, section);
  draw_cut_line (&small, section);
  draw_light (&small, section);
  sq_draw_unclip (drawing);
}
