/* section.c: the section, layer by layer */
#include "draw/section.h"

#include "draw/camera-symbol.h"
#include "draw/dimension-line.h"
#include "draw/section-figure.h"
#include "draw/section-grip.h"
#include "draw/section-lamp.h"
#include "draw/section-light.h"
#include "draw/section-obstacles.h"
#include "draw/section-words.h"

/* A height is measured this far beside its thing, on paper at least. */
#define BESIDE_MM 9.0

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

/* TRUE if no wall stands between the floor and @height_m at @along_m. */
static gboolean
is_free (const SqSection *section, double along_m, double height_m)
{
  if (along_m < section->set.least.x_m || along_m > section->set.most.x_m)
    return FALSE;
  for (guint i = 0; i < section->parts->len; i++) {
    const SqCutPart *part = &g_array_index (section->parts, SqCutPart, i);
    double from = G_MAXDOUBLE, to = -G_MAXDOUBLE, low = G_MAXDOUBLE;
    for (guint k = 0; k < part->n; k++) {
      from = MIN (from, part->corner[k].x_m);
      to = MAX (to, part->corner[k].x_m);
      low = MIN (low, part->corner[k].y_m);
    }
    if (part->owner->kind == &sq_wall_kind && low < height_m && from <= along_m && to >= along_m)
      return FALSE;
  }
  return TRUE;
}

/* How far left of @along_m (right: negative) a height is measured: near, but on no wall. */
static double
free_beside_m (const SqSection *section, double along_m, double height_m, double beside_m)
{
  const double shares[] = { 1.0, -1.0, 1.6, -1.6, 0.6, -0.6, 2.4, -2.4 };
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++)
    if (is_free (section, along_m - shares[i] * beside_m, height_m))
      return shares[i] * beside_m;
  return beside_m;
}

/* A height that is measured in the drawing. */
typedef struct {
  SqDimensionLine line;
  const SqThing *of;
} Measure;

#define MOST_MEASURES 2

/* Of the lens, and of the subject's crown. */
static guint
find_measures (const SqView *view, const SqSection *section, Measure measures[MOST_MEASURES])
{
  double beside = BESIDE_MM / view->mm_per_m;
  double legs =
    sq_stand_radius_m (section->scene, section->light->mount, section->light->stand) + 0.08;
  double lens = section->light->at.z_m;
  guint n = 0;
  if (lens > 0.0)
    measures[n++] =
      (Measure){ .line = { .from = { 0.0, 0.0 },
                           .to = { 0.0, lens },
                           .offset_m = free_beside_m (section, 0.0, lens, MAX (beside, legs)) },
                 .of = &section->light->thing };
  if (section->subject != NULL && sq_section_shows_mark (section, section->subject)) {
    const SqMark *mark = section->subject;
    double along = sq_cut_place (&section->plane, sq_mark_face (mark)).x_m;
    /* Behind the figure: to the right, past the knees of who sits that way. */
    gboolean knees =
      mark->posture == SQ_POSTURE_SIT &&
      sq_cut_direction (&section->plane, sq_vector_toward (mark->facing_deg, 0.0)).x > 0.0;
    double crown = mark->floor_m + sq_mark_crown_height_m (mark);
    double right = MAX (beside, knees ? 0.8 : 0.5),
           free_m = free_beside_m (section, along, 0.05, -right);
    measures[n++] =
      (Measure){ .line = { .from = { along, 0.0 }, .to = { along, crown }, .offset_m = free_m },
                 .of = &mark->thing };
  }
  return n;
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

/* What they take up, for words to keep clear of. */
static void
add_measures (SqDrawing *drawing, const Measure *measures, guint n, GArray *boxes, GArray *lines)
{
  for (guint i = 0; i < n; i++) {
    SqPaperLine drawn[3];
    SqPaperBox box = sq_dimension_text_box (drawing, &measures[i].line);
    sq_dimension_lines (drawing->view, &measures[i].line, drawn);
    g_array_append_val (boxes, box);
    g_array_append_vals (lines, drawn, G_N_ELEMENTS (drawn));
  }
}

static void
fill_report (SqSectionReport *report,
             const SqView *view,
             const SqSection *section,
             const SqSectionWords *words,
             const Measure *measures,
             const GArray *measure_boxes)
{
  g_array_set_size (report->labels, 0);
  g_array_set_size (report->handles, 0);
  sq_section_words_report (words, report->labels);
  for (guint i = 0; i < measure_boxes->len; i++) {
    const SqLabel label = { .kind = SQ_LABEL_DIMENSION,
                            .thing = measures[i].of,
                            .box = g_array_index (measure_boxes, SqPaperBox, i) };
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
  g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqPaperBox));
  g_autoptr (GArray) lines = g_array_new (FALSE, FALSE, sizeof (SqPaperLine));
  g_autoptr (SqSideLamp) side =
    sq_side_lamp_new (view, section->scene, &section->plane, section->light);
  double front_mm = sq_lamp_reach_mm (view, &side->lamp);

  Measure measures[MOST_MEASURES];
  guint n_measures = find_measures (view, section, measures);
  add_measures (drawing, measures, n_measures, boxes, lines);
  g_autoptr (SqSectionWords) words =
    sq_section_words_new (drawing, section, request->tag_rows, boxes, lines);
  if (request->report != NULL)
    fill_report (request->report, view, section, words, measures, boxes);

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
  for (guint i = 0; i < n_measures; i++)
    sq_draw_dimension (drawing, &measures[i].line);
  sq_draw_section_scale (drawing, set);
  sq_draw_layer (drawing, SQ_LAYER_LABELS);
  sq_section_words_draw (words, drawing);
  sq_draw_unclip (drawing);
}
