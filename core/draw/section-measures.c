/* section-measures.c: the heights that are measured in a section, and how far beside their things
 */
#include "draw/section-measures.h"

#include "draw/label-index.h"
#include "draw/section-lamp.h"

/* A height is measured this far beside its thing, on paper at least. */
#define BESIDE_MM 9.0

/* Between the line and the face of a wall. */
#define WALL_AIR_MM 1.5

/* Of a figure that so much lies under, nothing is read. */
#define SEEN_MM2 0.3

#define COST_IN_WALL 200.0
#define COST_FARTHER 8.0 /* per share of the distance that is wanted */

/* What a wall over the floor and under @height_m leaves free is not in it. */
static gboolean
is_in_wall (const SqSection *section, double along_m, double air_m, double height_m)
{
  if (along_m < section->set.least.x_m || along_m > section->set.most.x_m)
    return TRUE;
  for (guint i = 0; i < section->parts->len; i++) {
    const SqCutPart *part = &g_array_index (section->parts, SqCutPart, i);
    double from = G_MAXDOUBLE, to = -G_MAXDOUBLE, low = G_MAXDOUBLE;
    for (guint k = 0; k < part->n; k++) {
      from = MIN (from, part->corner[k].x_m);
      to = MAX (to, part->corner[k].x_m);
      low = MIN (low, part->corner[k].y_m);
    }
    if (part->owner->kind == &sq_wall_kind && low < height_m && from <= along_m + air_m &&
        to >= along_m - air_m)
      return TRUE;
  }
  return FALSE;
}

/* Of what the lines run over, as thin boxes. */
static double
lines_cost (const SqView *view, SqLabelIndex *index, const SqDimensionLine *line)
{
  const double half_mm = 0.15;
  SqPaperLine drawn[3];
  double cost = 0.0;
  sq_dimension_lines (view, line, drawn);
  for (guint i = 0; i < G_N_ELEMENTS (drawn); i++) {
    SqPaperPoint from = drawn[i].from, to = drawn[i].to;
    SqPaperBox box = sq_paper_box_union (sq_paper_box_round (from, half_mm, half_mm),
                                         sq_paper_box_round (to, half_mm, half_mm));
    cost += sq_label_index_cover (index, box, 0.0).boxes_cost;
  }
  return cost;
}

/* How far left of its thing (right: negative) a height is measured: near @beside_m, where its
 * figure lies on least. Returns: FALSE where it would lie on a person, a lamp or another figure */
static gboolean
choose_place (SqDrawing *drawing,
              const SqSection *section,
              SqLabelIndex *index,
              double beside_m,
              SqSectionMeasure *measure)
{
  const double shares[] = { 1.0,  -1.0, 0.75,  -0.75, 1.3,  -1.3, 1.6,
                            -1.6, 0.55, -0.55, 2.0,   -2.0, 2.4,  -2.4 };
  double least = G_MAXDOUBLE, air_m = WALL_AIR_MM / drawing->view->mm_per_m;
  SqDimensionLine line = measure->line;
  gboolean clean = FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++) {
    line.offset_m = shares[i] * beside_m;
    SqPaperBox box = sq_dimension_text_box (drawing, &line);
    SqLabelCover cover = sq_label_index_cover (index, box, 0.4);
    double cost = cover.boxes_cost + cover.lines_cost + lines_cost (drawing->view, index, &line);
    cost += COST_FARTHER * fabs (fabs (shares[i]) - 1.0) + (shares[i] < 0.0 ? 1.0 : 0.0);
    if (is_in_wall (section, line.from.x_m - line.offset_m, air_m, line.to.y_m))
      cost += COST_IN_WALL;
    if (cost >= least)
      continue;
    least = cost;
    measure->line.offset_m = line.offset_m;
    measure->box = box;
    clean = cover.solid_mm2 <= SEEN_MM2;
  }
  return clean;
}

static void
add (SqDrawing *drawing,
     const SqSection *section,
     SqLabelObstacles *obstacles,
     double beside_m,
     SqSectionMeasure measure,
     GArray *measures)
{
  SqPaperLine drawn[3];
  g_autoptr (SqLabelIndex) index = sq_label_index_new (obstacles);
  if (!choose_place (drawing, section, index, beside_m, &measure))
    return;
  g_array_append_val (measures, measure);
  sq_label_obstacles_add_box (obstacles, measure.box, SQ_COST_LABEL, NULL);
  sq_dimension_lines (drawing->view, &measure.line, drawn);
  for (guint i = 0; i < G_N_ELEMENTS (drawn); i++)
    sq_label_obstacles_add_line (obstacles, drawn[i], 2.0 * SQ_COST_AXIS);
}

GArray *
sq_section_measures (SqDrawing *drawing, const SqSection *section, SqLabelObstacles *obstacles)
{
  GArray *measures = g_array_new (FALSE, FALSE, sizeof (SqSectionMeasure));
  const SqFixture *light = section->light;
  const SqMark *mark = section->subject;
  double beside = BESIDE_MM / drawing->view->mm_per_m, lens = light->at.z_m;
  double legs = sq_stand_radius_m (section->scene, light->mount, light->stand) + 0.08;
  if (lens > 0.0)
    add (drawing, section, obstacles, MAX (beside, legs),
         (SqSectionMeasure){ .line = { .from = { 0.0, 0.0 }, .to = { 0.0, lens } },
                             .of = &light->thing },
         measures);
  if (mark != NULL && sq_section_shows_mark (section, mark)) {
    double along = sq_cut_place (&section->plane, sq_mark_face (mark)).x_m;
    /* Behind the figure: to the right, past the knees of who sits that way. */
    gboolean knees =
      mark->posture == SQ_POSTURE_SIT &&
      sq_cut_direction (&section->plane, sq_vector_toward (mark->facing_deg, 0.0)).x > 0.0;
    double crown = mark->floor_m + sq_mark_crown_height_m (mark);
    add (drawing, section, obstacles, -MAX (beside, knees ? 0.8 : 0.5),
         (SqSectionMeasure){ .line = { .from = { along, 0.0 }, .to = { along, crown } },
                             .of = &mark->thing },
         measures);
  }
  return measures;
}
