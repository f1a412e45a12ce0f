/* plan-power-words.c: what a plan says of supplies, cables and probes */
#include "draw/plan-words.h"
#include "draw/point-symbols.h"

#include <glib/gi18n-lib.h>

/* Words beside a cable: so far off it, and a place to stand every so often. */
#define BESIDE_RUN_MM 0.9
#define SPOT_EACH_MM 5.0
#define COST_OFF_MIDDLE_MM 0.03

/* What leaves the field says where to close by. */
#define MOST_FROM_END_MM 34.0

static void
add_supply_words (const SqPlanParts *parts, GArray *words)
{
  for (guint i = 0; i < parts->scene->supplies->len; i++) {
    const SqSupply *supply = SQ_AT (SqSupply, parts->scene->supplies, i);
    if (supply->common.hidden || !sq_place_given (supply->at))
      continue;
    SqTextLabel text = { 0 };
    sq_text_label_add (&text, g_strdup (sq_label_or_id (supply->label, supply->id)));
    SqPaperPoint at = sq_view_paper (parts->drawing->view, supply->at);
    sq_plan_add_text (parts, words, SQ_LABEL_SUPPLY, &supply->thing, &supply->common, &text, 1,
                      sq_supply_outline (at, supply->kind), SQ_MOST_NEAR_MM);
  }
}

static double
run_length_mm (const SqCableRun *run)
{
  double length_mm = 0.0;
  for (guint i = 1; i < run->n_points; i++)
    length_mm += sq_paper_distance_mm (run->points[i - 1], run->points[i]);
  return length_mm;
}

/* On both sides of one straight part of a run. */
static void
add_spots_beside (
  const SqCableRun *run, guint part, SqPaperBox text, SqPaperBox field, GArray *spots)
{
  SqPaperPoint from = run->points[part - 1], to = run->points[part];
  SqPaperPoint end = run->points[run->n_points - 1];
  double length_mm = sq_paper_distance_mm (from, to);
  double angle_rad = atan2 (to.y_mm - from.y_mm, to.x_mm - from.x_mm);
  double off_mm =
    (fabs (sin (angle_rad)) * text.width_mm + fabs (cos (angle_rad)) * text.height_mm) / 2 +
    BESIDE_RUN_MM;
  int n = 1 + (int)(length_mm / SPOT_EACH_MM);
  for (int i = 0; i < n; i++) {
    SqPaperPoint beside = sq_paper_along (from, angle_rad, length_mm * (i + 0.5) / n);
    if (run->leaves && sq_paper_distance_mm (beside, end) > MOST_FROM_END_MM)
      continue;
    double cost = COST_OFF_MIDDLE_MM * sq_paper_distance_mm (beside, run->label_at);
    for (int side = -1; side <= 1; side += 2) {
      SqPaperPoint middle = sq_paper_along (beside, angle_rad + side * G_PI / 2, off_mm);
      SqPaperBox box = sq_paper_box_round (middle, text.width_mm / 2, text.height_mm / 2);
      const SqLabelSpot spot = { sq_paper_box_middle (sq_paper_box_moved_within (box, field)),
                                 cost };
      g_array_append_val (spots, spot);
    }
  }
}

static void
add_cable_words (const SqPlanParts *parts, SqPaperBox field, GArray *words)
{
  for (guint i = 0; i < parts->scene->cables->len; i++) {
    const SqCable *cable = SQ_AT (SqCable, parts->scene->cables, i);
    const SqCableRun *run = &g_array_index (parts->runs, SqCableRun, i);
    SqTextLabel text = { .plain = TRUE };
    if (cable->common.hidden || run->n_points < 2)
      continue;
    g_auto (GStrv) lines = g_strsplit (run->text, "\n", SQ_TEXT_LABEL_LINES);
    for (int j = 0; lines[j] != NULL; j++)
      sq_text_label_add (&text, g_strdup (lines[j]));
    SqTurnedBox about = { run->label_at, 0.0, 0.6, 0.6 };
    SqPlanWord *word = sq_plan_add_text (parts, words, SQ_LABEL_CABLE, &cable->thing,
                                         &cable->common, &text, 1, about, SQ_MOST_NEAR_MM);
    if (word == NULL)
      continue;
    SqPaperBox box = word->wish.head[SQ_ROWS_RIGHT];
    GArray *spots = sq_plan_word_spots (word);
    for (guint part = 1; part < run->n_points; part++)
      add_spots_beside (run, part, box, field, spots);
    word->wish.may_go = TRUE;
    if (!run->leaves)
      word->wish.most_cost = run_length_mm (run) < SQ_SHORT_CABLE * box.width_mm
                               ? SQ_MOST_SHORT_CABLE_COST
                               : SQ_MOST_CABLE_COST;
  }
}

static void
add_probe_words (const SqPlanParts *parts, GArray *words)
{
  const SqReadings *readings = parts->request->readings;
  SqUnits units = parts->drawing->view->units;
  for (guint i = 0; readings != NULL && i < readings->probes->len; i++) {
    const SqProbeReading *reading = SQ_AT (SqProbeReading, readings->probes, i);
    const SqProbe *probe = reading->probe;
    if (probe->common.hidden)
      continue;
    gboolean spot = probe->receptor == SQ_RECEPTOR_SPOT;
    g_autofree char *light = spot ? sq_quantity_format (reading->cd_m2, SQ_LUMINANCE, units)
                                  : sq_quantity_format (reading->lux, SQ_ILLUMINANCE, units);
    g_autofree char *stop = isnan (reading->t_stop)
                              ? g_strdup (_ ("dark"))
                              : sq_quantity_format (reading->t_stop, SQ_T_STOP, units);
    SqTextLabel text = { 0 };
    sq_text_label_add (&text, g_strdup_printf ("%s  %s", light, stop));
    SqPaperPoint at =
      sq_view_paper (parts->drawing->view, (SqPlace){ probe->at.x_m, probe->at.y_m });
    sq_plan_add_text (parts, words, SQ_LABEL_PROBE, &probe->thing, &probe->common, &text, 1,
                      (SqTurnedBox){ at, 0.0, SQ_PROBE_RADIUS_MM, SQ_PROBE_RADIUS_MM }, 10.0);
  }
}

void
sq_plan_add_power_words (const SqPlanParts *parts, SqPaperBox field, GArray *words)
{
  add_probe_words (parts, words);
  add_supply_words (parts, words);
  add_cable_words (parts, field, words);
}
