/* section.c: the section, layer by layer */
#include "draw/section.h"

#include "draw/camera-symbol.h"
#include "draw/section-figure.h"
#include "draw/section-grip.h"
#include "draw/section-lamp.h"
#include "draw/section-light.h"
#include "draw/section-measures.h"
#include "draw/section-obstacles.h"
#include "draw/section-words.h"

SqView
sq_section_view (const SqSection *section, SqPaperBox field, double mm_per_m)
{
  const SqSectionSet *set = &section->set;
  SqPaperPoint middle = sq_paper_box_middle (field);
  middle.x_mm += SQ_SECTION_SCALE_MM / 2;
  return (SqView){
    .mm_per_m = mm_per_m,
    .origin = { middle.x_mm - (set->least.x_m + set->most.x_m) / 2 * mm_per_m,
                middle.y_mm + (set->least.y_m + set->most.y_m) / 2 * mm_per_m },
    .clip = field,
    .ground = SQ_GROUND_PAPER,
    .units = (SqUnits)section->scene->units,
  };
}

static void
draw_people (SqDrawing *drawing, const SqSection *section)
{
  for (int pass = 0; pass < 2; pass++)
    for (guint i = 0; i < section->scene->marks->len; i++) {
      const SqMark *mark = SQ_AT (SqMark, section->scene->marks, i);
      gboolean on_cut = sq_section_on_cut (section, mark);
      if (sq_section_shows_mark (section, mark) && on_cut == (pass == 1))
        sq_draw_section_figure (drawing, &section->plane, mark, !on_cut);
    }
}

static void
draw_lamp (SqDrawing *drawing, const SqSection *section, const SqFixture *fixture)
{
  g_autoptr (SqSideLamp) side =
    sq_side_lamp_new (drawing->view, section->scene, &section->plane, fixture);
  sq_draw_side_lamp (drawing, section->scene, &section->plane, section->obstacles, side,
                     section->scene->room->ceiling_height_m);
}

static void
draw_lamps_and_cameras (SqDrawing *drawing, const SqSection *section)
{
  const SqScene *scene = section->scene;
  sq_draw_enter_near (drawing);
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    if (fixture != section->light && sq_section_shows_lamp (section, fixture))
      draw_lamp (drawing, section, fixture);
  }
  for (guint i = 0; i < scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, scene->cameras, i);
    if (!sq_section_shows_camera (section, camera))
      continue;
    SqPaperPoint at = sq_view_paper (drawing->view, sq_cut_place (&section->plane, camera->at));
    SqTurnedBox box = sq_section_camera_outline (drawing->view, section, camera);
    sq_draw_line (
      drawing, box.middle,
      (SqPaperPoint){ box.middle.x_mm, sq_view_paper (drawing->view, (SqPlace){ 0, 0 }).y_mm },
      SQ_PEN_25, sq_ink (drawing->view, SQ_SOFT));
    sq_draw_camera (drawing, at, sq_section_camera_deg (section, camera),
                    sq_label_or_id (camera->label, camera->id));
  }
  sq_draw_leave_near (drawing);
  draw_lamp (drawing, section, section->light);
}

static void
draw_light (SqDrawing *drawing, const SqSection *section, double front_mm)
{
  for (guint i = 0; i < section->shadows->len; i++)
    sq_draw_section_shadow (drawing, section,
                            &g_array_index (section->shadows, SqSectionShadow, i));
  sq_draw_section_throw (drawing, section, front_mm);
  for (guint i = 0; i < section->scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, section->scene->cameras, i);
    if (sq_section_shows_camera (section, camera))
      sq_draw_section_view_of (drawing, section, camera);
  }
}

/* The stretch of the cut, up and down to the field's border. */
static SqPaperBox
stretch_box (const SqView *view, const SqSectionSet *set)
{
  double left = sq_view_paper (view, set->least).x_mm, right = sq_view_paper (view, set->most).x_mm;
  return (SqPaperBox){ left, view->clip.y_mm, right - left, view->clip.height_mm };
}

static void
fill_report (SqSectionReport *report,
             const SqView *view,
             const SqSection *section,
             const SqSectionWords *words,
             const GArray *measures)
{
  g_array_set_size (report->labels, 0);
  g_array_set_size (report->handles, 0);
  sq_section_words_report (words, report->labels);
  for (guint i = 0; i < measures->len; i++) {
    const SqSectionMeasure *measure = &g_array_index (measures, SqSectionMeasure, i);
    const SqLabel label = { .kind = SQ_LABEL_DIMENSION, .thing = measure->of, .box = measure->box };
    g_array_append_val (report->labels, label);
  }
  sq_section_handles (view, section, report->handles);
}

void
sq_draw_section (SqDrawing *drawing, const SqSectionRequest *request)
{
  const SqSection *section = request->section;
  const SqView *view = drawing->view;
  const SqSectionSet *set = &section->set;
  cairo_t *cr = drawing->cairo;
  g_autoptr (SqSideLamp) side =
    sq_side_lamp_new (view, section->scene, &section->plane, section->light);
  double front_mm = sq_lamp_reach_mm (view, &side->lamp);

  g_autoptr (SqLabelObstacles) obstacles = sq_section_obstacles (view, section);
  if (request->keep_clear.width_mm > 0.0)
    sq_label_obstacles_add_box (obstacles, request->keep_clear, SQ_COST_LABEL, NULL);
  g_autoptr (GArray) measures = sq_section_measures (drawing, section, obstacles);
  g_autoptr (SqSectionWords) words =
    sq_section_words_new (drawing, section, request->tag_rows, obstacles);
  if (request->report != NULL)
    fill_report (request->report, view, section, words, measures);

  sq_draw_clip_to (drawing, view->clip);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_BUTT);
  cairo_set_line_join (cr, CAIRO_LINE_JOIN_MITER);
  sq_draw_clip_to (drawing, stretch_box (view, set));
  sq_draw_layer (drawing, SQ_LAYER_SET);
  sq_draw_section_levels (drawing, set);
  sq_draw_section_built (drawing, set);
  sq_draw_layer (drawing, SQ_LAYER_THROWS);
  draw_light (drawing, section, front_mm);
  sq_draw_layer (drawing, SQ_LAYER_GRIP);
  sq_draw_section_grip (drawing, set);
  sq_draw_layer (drawing, SQ_LAYER_PEOPLE);
  draw_people (drawing, section);
  sq_draw_layer (drawing, SQ_LAYER_LAMPS);
  draw_lamps_and_cameras (drawing, section);
  sq_draw_section_tilt (drawing, section, front_mm);
  sq_draw_unclip (drawing);

  sq_draw_layer (drawing, SQ_LAYER_DIMENSIONS);
  for (guint i = 0; i < measures->len; i++)
    sq_draw_dimension (drawing, &g_array_index (measures, SqSectionMeasure, i).line);
  sq_draw_section_scale (drawing, set);
  sq_draw_layer (drawing, SQ_LAYER_LABELS);
  sq_section_words_draw (words, drawing);
  sq_draw_unclip (drawing);
}
