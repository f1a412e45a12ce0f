/* section-blocks.c: what stands beside a section: where it cuts, figures, heights, legend */
#include "paper/section-blocks.h"

#include "base/figure-text.h"
#include "draw/mark-label.h"
#include "draw/panel-symbol.h"
#include "draw/section-grip.h"
#include "draw/section-lamp.h"
#include "light/exposure.h"
#include "paper/legend-marks.h"

#include <glib/gi18n-lib.h>

#define ROW_MM 3.9
#define LEGEND_ROW_MM 4.6
#define MOST_HEIGHTS 18
#define LEVEL_M 0.03 /* what lies this level has one height */

/* Name to the left, what it says to the right. */
static void
row (SqFlow *flow, const char *name, const char *value, gboolean strong)
{
  SqPaperPoint at;
  if (!sq_flow_take (flow, ROW_MM * flow->squeeze, &at))
    return;
  SqType left = sq_flow_type (flow, 400, strong ? SQ_INK : SQ_MID, SQ_ALIGN_LEFT);
  SqType right = sq_flow_type (flow, strong ? 700 : 500, SQ_INK, SQ_ALIGN_RIGHT);
  double width = sq_flow_width_mm (flow), y = at.y_mm + left.cap_mm;
  left.width_mm = MAX (width - sq_text_width_mm (flow->drawing, value, &right) - 2.0, 8.0);
  left.one_line = TRUE;
  sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm, y }, name, &left);
  sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm + width, y }, value, &right);
}

static void
length_row (SqFlow *flow, const SqSection *section, const char *name, double length_m)
{
  g_autofree char *text = sq_quantity_format (length_m, SQ_LENGTH, (SqUnits)section->scene->units);
  row (flow, name, text, FALSE);
}

static const char *
compass_word (double bearing_deg)
{
  static const char *const words[] = { N_ ("north"),      N_ ("north-east"), N_ ("east"),
                                       N_ ("south-east"), N_ ("south"),      N_ ("south-west"),
                                       N_ ("west"),       N_ ("north-west") };
  return _ (words[((int)round (bearing_deg / 45.0) % 8 + 8) % 8]);
}

static char *
cut_words (const SqSection *section)
{
  const SqCutPlane *plane = &section->plane;
  double looking =
    section->scene->north_deg - sq_vector_azimuth_deg (sq_vector_scale (plane->to_eye, -1.0));
  const char *number = sq_label_or_id (section->light->number, section->light->id);
  const char *way = compass_word (looking);
  if (plane->by == SQ_CUT_BY_PAGE)
    /* Translators: a light's number; a direction of the compass */
    return g_strdup_printf (_ ("Through %s, across the plan: it points nowhere on it. Looking %s."),
                            number, way);
  if (plane->to != NULL && plane->to->kind == &sq_mark_kind) {
    const SqMark *mark = (const SqMark *)plane->to;
    const char *letter = sq_label_or_id (mark->label, mark->id);
    if (plane->by == SQ_CUT_BY_MARK)
      /* Translators: a light's number, a person's letter, a direction of the compass */
      return g_strdup_printf (
        _ ("Through %s and %s, who is nearest: it points nowhere on the plan. Looking %s."), number,
        letter, way);
    return g_strdup_printf (_ ("Through %s and %s, at whom it is aimed. Looking %s."), number,
                            letter, way);
  }
  return g_strdup_printf (_ ("Through %s, along its throw. Looking %s."), number, way);
}

void
sq_section_cut_block (SqFlow *flow, const SqSection *section, double key_height_mm)
{
  SqUnits units = (SqUnits)section->scene->units;
  SqPaperPoint at;
  sq_flow_head (flow, _ ("The cut"), key_height_mm);
  if (sq_flow_take (flow, key_height_mm + 1.5, &at))
    sq_draw_section_key (flow->drawing, section,
                         (SqPaperBox){ at.x_mm, at.y_mm, sq_flow_width_mm (flow), key_height_mm });
  g_autofree char *words = cut_words (section);
  g_autofree char *near = sq_quantity_format (section->set.near_m, SQ_LENGTH, units);
  g_autofree char *pale = g_strdup_printf (_ ("Pale: what stands within %s of it."), near);
  sq_flow_text (flow, words, 0.0, SQ_INK);
  sq_flow_text (flow, pale, 0.0, SQ_MID);
}

static void
light_rows (SqFlow *flow, const SqSection *section)
{
  const SqSectionThrow *way = &section->way;
  SqUnits units = (SqUnits)section->scene->units;
  length_row (flow, section, _ ("Lens height"), section->light->at.z_m);
  if (!way->aimed)
    return;
  g_autofree char *tilt = sq_quantity_format (round (fabs (way->tilt_deg)), SQ_ANGLE, SQ_METRIC);
  g_autofree char *down =
    fabs (way->tilt_deg) < 0.5
      ? g_strdup (_ ("level"))
      : g_strdup_printf (way->tilt_deg < 0.0 ? _ ("%s down") : _ ("%s up"), tilt);
  row (flow, _ ("Tilt"), down, FALSE);
  length_row (flow, section, _ ("To its aim"), way->away_m);
  if (!way->reaches)
    row (flow, _ ("Reaches its aim"), _ ("no, blocked"), TRUE);
  if (way->hard) {
    g_autofree char *beam = sq_quantity_format (sq_section_beam_m (way), SQ_LENGTH, units);
    row (flow, _ ("Beam there, half to half"), beam, FALSE);
  }
  double size = sq_section_source_deg (way);
  if (size >= 0.1) {
    g_autofree char *seen = sq_quantity_format (size, SQ_ANGLE, SQ_METRIC);
    row (flow,
         way->framed_m > 0.0 ? _ ("Frame, as seen from there") : _ ("Face, as seen from there"),
         seen, FALSE);
  }
}

static void
subject_rows (SqFlow *flow, const SqSection *section)
{
  const SqMark *mark = section->subject;
  if (mark == NULL)
    return;
  SqUnits units = (SqUnits)section->scene->units;
  const char *letter = sq_label_or_id (mark->label, mark->id);
  double lux = sq_section_lux (section, mark);
  if (section->light->on && !isnan (lux)) {
    /* Translators: of a light alone, at a person: a letter */
    g_autofree char *name = g_strdup_printf (_ ("Its light at %s"), letter);
    g_autofree char *light = sq_quantity_format (lux, SQ_ILLUMINANCE, units);
    g_autofree char *stops =
      sq_stops_text (sq_stops_over (lux, sq_flat_set_lux (section->readings)), TRUE);
    g_autofree char *value = g_strdup_printf ("%s   %s", light, stops);
    row (flow, name, value, TRUE);
  }
  for (guint i = 0; i < section->shadows->len; i++) {
    const SqSectionShadow *shadow = &g_array_index (section->shadows, SqSectionShadow, i);
    double up = sq_section_shadow_height_m (shadow);
    g_autofree char *name =
      g_strdup_printf (_ ("Shadow of %s"), sq_label_or_id (shadow->mark->label, shadow->mark->id));
    g_autofree char *length =
      sq_quantity_format (up > 0.0 ? up : sq_section_shadow_length_m (shadow), SQ_LENGTH, units);
    g_autofree char *value = !shadow->ends ? g_strdup (_ ("no end"))
                             : up > 0.0    ? g_strdup_printf (_ ("up to %s"), length)
                                           : g_strdup_printf (_ ("%s behind"), length);
    row (flow, name, value, FALSE);
    if (!shadow->has_edge[SQ_EDGE_ABOVE] || !shadow->has_edge[SQ_EDGE_UNDER])
      continue;
    g_autofree char *soft = sq_quantity_format (
      sq_place_distance_m (shadow->edge[SQ_EDGE_ABOVE], shadow->edge[SQ_EDGE_UNDER]), SQ_LENGTH,
      units);
    row (flow, _ ("Its edge, from dark to light"), soft, FALSE);
  }
}

void
sq_section_figures_block (SqFlow *flow, const SqSection *section)
{
  g_autofree char *number =
    g_strdup_printf (_ ("Light %s"), sq_label_or_id (section->light->number, section->light->id));
  sq_flow_head (flow, number, 6.0 * ROW_MM);
  if (!section->light->on)
    row (flow, _ ("In this look"), _ ("off"), TRUE);
  light_rows (flow, section);
  subject_rows (flow, section);
  if (section->subject != NULL && section->readings != NULL && section->light->on) {
    g_autofree char *stop =
      sq_quantity_format (section->readings->set_t_stop, SQ_T_STOP, SQ_METRIC);
    /* Translators: what a reading rests on; %s is a T-stop */
    g_autofree char *line =
      g_strdup_printf (_ ("This lamp alone, flat, turned to it; stops from %s."), stop);
    sq_flow_text (flow, line, 0.0, SQ_MID);
  }
}

/* One line of the list of heights. */
typedef struct {
  double top_m, low_m; /* NAN: a single height */
  char *name;
  gboolean about;
} Height;

static void
clear_height (gpointer height)
{
  g_free (((Height *)height)->name);
}

static int
highest_first (gconstpointer a, gconstpointer b)
{
  const Height *x = a, *y = b;
  if (x->top_m != y->top_m)
    return x->top_m > y->top_m ? -1 : 1;
  return g_strcmp0 (x->name, y->name);
}

static void
add (GArray *list, double top_m, double low_m, char *name)
{
  const Height height = { top_m, low_m, name, FALSE };
  g_array_append_val (list, height);
}

static void
add_lights_and_grip (GArray *list, const SqSection *section)
{
  const SqScene *scene = section->scene;
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, i);
    const char *number = sq_label_or_id (fixture->number, fixture->id);
    double hang = sq_hang_height_m (scene, fixture);
    if (!sq_section_shows_lamp (section, fixture))
      continue;
    add (list, fixture->at.z_m, NAN, g_strdup_printf (_ ("%s, lens"), number));
    if (fixture == section->light && !isnan (hang) && !(hang >= scene->room->ceiling_height_m)) {
      add (list, hang, NAN, g_strdup_printf (_ ("%s, pipe"), number));
      g_array_index (list, Height, list->len - 1).about = TRUE;
    }
  }
  for (guint i = 0; i < scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, scene->panels, i);
    SqSidePanel side;
    if (sq_side_panel (&section->set, panel, &side) && side.cut)
      add (list, side.to.y_m, side.from.y_m,
           g_utf8_strdown (_ (sq_panel_kind_word (panel->kind)), -1));
  }
}

static void
add_people_and_set (GArray *list, const SqSection *section)
{
  static const char *const words[] = { N_ ("window"), N_ ("door"), N_ ("opening") };
  const SqScene *scene = section->scene;
  for (guint i = 0; i < scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
    const char *letter = sq_label_or_id (mark->label, mark->id);
    if (!sq_section_shows_mark (section, mark) || !sq_section_on_cut (section, mark))
      continue;
    add (list, mark->floor_m + sq_mark_crown_height_m (mark), NAN,
         g_strdup_printf (_ ("%s, crown"), letter));
    add (list, sq_mark_face (mark).z_m, NAN, g_strdup_printf (_ ("%s, eyes"), letter));
  }
  for (guint i = 0; i < scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, scene->cameras, i);
    if (sq_section_shows_camera (section, camera))
      add (list, camera->at.z_m, NAN,
           g_strdup_printf (_ ("camera %s, lens"), sq_label_or_id (camera->label, camera->id)));
  }
  g_autoptr (GArray) openings = sq_section_openings (&section->set);
  for (guint i = 0; i < openings->len; i++) {
    const SqSideOpening *opening = &g_array_index (openings, SqSideOpening, i);
    if (!opening->opening->common.hidden && opening->to_m >= section->set.least.x_m &&
        opening->from_m <= section->set.most.x_m)
      add (list, opening->head_m, opening->sill_m, g_strdup (_ (words[opening->opening->kind])));
  }
  if (!isnan (scene->room->ceiling_height_m))
    add (list, scene->room->ceiling_height_m, NAN, g_strdup (_ ("ceiling")));
}

void
sq_section_heights_block (SqFlow *flow, const SqSection *section)
{
  SqUnits units = (SqUnits)section->scene->units;
  g_autoptr (GArray) list = g_array_new (FALSE, FALSE, sizeof (Height));
  g_array_set_clear_func (list, clear_height);
  add_lights_and_grip (list, section);
  add_people_and_set (list, section);
  g_array_sort (list, highest_first);
  sq_flow_head (flow, _ ("Heights from the floor"), 5.0 * ROW_MM);
  for (guint i = 0; i < MIN (list->len, MOST_HEIGHTS); i++) {
    const Height *height = &g_array_index (list, Height, i);
    g_autofree char *top = sq_quantity_format (height->top_m, SQ_LENGTH, units);
    g_autofree char *low = sq_quantity_format (height->low_m, SQ_LENGTH, units);
    /* Translators: a height that is worked out, not measured; then from this height to that */
    g_autofree char *value = height->about ? g_strdup_printf (_ ("about %s"), top)
                             : !(height->top_m - height->low_m > LEVEL_M)
                               ? g_strdup (top)
                               : g_strdup_printf (_ ("%s to %s"), low, top);
    row (flow, height->name, value, FALSE);
  }
  if (list->len > MOST_HEIGHTS) {
    g_autofree char *more = g_strdup_printf (_ ("and %u more"), list->len - MOST_HEIGHTS);
    sq_flow_text (flow, more, 0.0, SQ_MID);
  }
}

static void
draw_dark (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  double half = SQ_LEGEND_MARK_MM / 2.0;
  SqColour dark = sq_ink (drawing->view, SQ_SHADE);

  cairo_rectangle (drawing->cairo, middle.x_mm - half, middle.y_mm - 0.75, 2 * half, 1.5);
  sq_draw_fade (drawing, dark, (SqPaperPoint){ middle.x_mm - half, middle.y_mm }, 0.42,
                (SqPaperPoint){ middle.x_mm + half, middle.y_mm }, 0.10);
}

static void
draw_cut_mark (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item)
{
  sq_draw_box_path (drawing, sq_paper_box_round (middle, SQ_LEGEND_MARK_MM / 2.0, 1.3), 0.0);
  sq_draw_outlined (drawing, SQ_POCHE, SQ_PEN_35);
}

static void
legend_row (SqFlow *flow, SqLegendDraw *draw, const char *name, int value)
{
  SqPaperPoint at;
  const SqLegendItem item = { .draw = draw, .name = name, .value = value };
  if (!sq_flow_take (flow, LEGEND_ROW_MM * flow->squeeze, &at))
    return;
  SqType type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
  type.width_mm = sq_flow_width_mm (flow) - SQ_LEGEND_MARK_MM - 2.0;
  type.one_line = TRUE;
  double y = at.y_mm + LEGEND_ROW_MM * flow->squeeze / 2.0;
  draw (flow->drawing, (SqPaperPoint){ at.x_mm + SQ_LEGEND_MARK_MM / 2.0, y }, &item);
  sq_draw_text (flow->drawing,
                (SqPaperPoint){ at.x_mm + SQ_LEGEND_MARK_MM + 2.0, y + type.cap_mm / 2.0 }, name,
                &type);
}

void
sq_section_legend_block (SqFlow *flow, const SqSection *section)
{
  const SqSectionThrow *way = &section->way;
  sq_flow_head (flow, _ ("Legend"), 4.0 * LEGEND_ROW_MM);
  legend_row (flow, draw_cut_mark, _ ("cut through"), 0);
  if (way->aimed && section->light->on) {
    g_autofree char *role =
      g_strdup_printf (_ ("throw, %s"), _ (sq_role_words[section->light->role]));
    legend_row (flow, sq_legend_draw_role, role, section->light->role);
    legend_row (flow, sq_legend_draw_ticks, _ ("stop ticks: each is one stop less"), 0);
  }
  if (way->hard && section->light->on)
    legend_row (flow, sq_legend_draw_beams, _ ("beam: half, tenth of its peak"), 0);
  if (section->shadows->len > 0)
    legend_row (flow, draw_dark, _ ("shadow, with its soft edge dashed"), 0);
}
