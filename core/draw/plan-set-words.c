/* plan-set-words.c: what a plan says of probes, power and set */
#include "draw/dimension-line.h"
#include "draw/piece-symbol.h"
#include "draw/plan-words.h"
#include "draw/point-symbols.h"

#include <glib/gi18n-lib.h>

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

static void
add_cable_words (const SqPlanParts *parts, GArray *words)
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
    SqWish *wish = sq_plan_add_text (parts, words, SQ_LABEL_CABLE, &cable->thing, &cable->common,
                                     &text, 1, about, SQ_MOST_NEAR_MM);
    if (wish != NULL && !run->leaves)
      wish->most_cost = run_length_mm (run) < SQ_SHORT_CABLE * wish->head[SQ_ROWS_RIGHT].width_mm
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

/* "wild" once a wall, at its longest straight run. */
static void
add_wall_words (const SqPlanParts *parts, GArray *words)
{
  for (guint i = 0; i < parts->scene->walls->len; i++) {
    const SqWall *wall = SQ_AT (SqWall, parts->scene->walls, i);
    const SqWallBlock *longest = NULL;
    double most = 0.0;
    if (!wall->wild || wall->common.hidden)
      continue;
    for (guint j = 0; j < parts->blocks->len; j++) {
      const SqWallBlock *block = sq_wall_block_at (parts->blocks, j);
      double length = sq_place_distance_m (block->corner[0], block->corner[1]);
      if (block->wall == wall && block->opening == NULL && length > most) {
        most = length;
        longest = block;
      }
    }
    if (longest == NULL)
      continue;
    SqPaperPoint a = sq_view_paper (parts->drawing->view, longest->corner[0]);
    SqPaperPoint b = sq_view_paper (parts->drawing->view, longest->corner[1]);
    SqPaperPoint c = sq_view_paper (parts->drawing->view, longest->corner[2]);
    SqTurnedBox about = { .middle = { (a.x_mm + c.x_mm) / 2, (a.y_mm + c.y_mm) / 2 },
                          .angle_rad = atan2 (b.y_mm - a.y_mm, b.x_mm - a.x_mm),
                          .half_length_mm = 6.0,
                          .half_width_mm = sq_paper_distance_mm (b, c) / 2 };
    SqTextLabel text = { .plain = TRUE };
    sq_text_label_add (&text, g_strdup (_ ("wild")));
    sq_plan_add_text (parts, words, SQ_LABEL_WALL, &wall->thing, &wall->common, &text, 1, about,
                      SQ_MOST_NEAR_MM);
  }
}

/* A word that stands where it is from now on: those placed after it keep clear of it. */
static void
add_standing (SqLabelObstacles *obstacles, GArray *words, const SqPlanWord *word)
{
  sq_label_obstacles_add_box (obstacles, word->box, SQ_COST_LABEL, word->thing);
  g_array_append_val (words, *word);
}

/* The clearest of a few places in @room: the middle, if it is as good as any. */
static void
set_inside (const SqPlanParts *parts,
            const SqLabelObstacles *obstacles,
            SqPlanWord *word,
            SqPaperBox room,
            double width_mm)
{
  static const double shares[] = { 0.5, 0.25, 0.75, 0.0, 1.0 };
  double cap = sq_view_small_mm (parts->drawing->view), least = G_MAXDOUBLE;
  gboolean turned = word->turn_rad != 0.0;
  double across = turned ? cap * 1.3 : width_mm, down = turned ? width_mm : cap * 1.3;

  for (guint i = 0; i < G_N_ELEMENTS (shares) * G_N_ELEMENTS (shares); i++) {
    SqPaperPoint middle = { room.x_mm + shares[i % G_N_ELEMENTS (shares)] * room.width_mm,
                            room.y_mm + shares[i / G_N_ELEMENTS (shares)] * room.height_mm };
    SqPaperBox box = sq_paper_box_round (middle, across / 2, down / 2);
    double cost = sq_label_obstacles_cost (obstacles, box);
    if (cost >= least)
      continue;
    least = cost;
    word->box = box;
    word->at = turned ? (SqPaperPoint){ middle.x_mm + cap / 2, middle.y_mm }
                      : (SqPaperPoint){ middle.x_mm, middle.y_mm + cap / 2 };
  }
}

/* Inside where it fits, else beside. */
static void
add_piece_words (const SqPlanParts *parts, SqLabelObstacles *obstacles, GArray *words)
{
  for (guint i = 0; i < parts->scene->pieces->len; i++) {
    const SqPiece *piece = SQ_AT (SqPiece, parts->scene->pieces, i);
    gboolean shaped = piece->disc != NULL || piece->outline->len > 0;
    if (piece->common.hidden || piece->label == NULL || *piece->label == '\0' || !shaped)
      continue;
    SqPaperBox box = sq_piece_box (parts->drawing->view, piece);
    SqPaperPoint middle = sq_paper_box_middle (box);
    SqType type = sq_set_word_type (parts->drawing);
    SqPlanWord word = { .kind = SQ_LABEL_PIECE, .thing = &piece->thing };
    SqPaperBox room;
    if (!sq_piece_label_fits (parts->drawing, piece, &type, &room, &word.turn_rad)) {
      SqTextLabel text = { .plain = TRUE };
      sq_text_label_add (&text, g_strdup (piece->label));
      SqTurnedBox about = { middle, 0.0, box.width_mm / 2, box.height_mm / 2 };
      sq_plan_add_text (parts, words, SQ_LABEL_PIECE, &piece->thing, &piece->common, &text, 1,
                        about, SQ_MOST_NEAR_MM);
      continue;
    }
    set_inside (parts, obstacles, &word, room,
                sq_text_width_mm (parts->drawing, piece->label, &type));
    if (sq_plan_shows (parts, middle))
      add_standing (obstacles, words, &word);
  }
}

/* The best of several places for the figures of a window: they slide along their wall to where
 * least crosses them, and to the far side of it where the near one is taken. */
static void
place_opening_text (const SqPlanParts *parts,
                    const SqLabelObstacles *obstacles,
                    const SqWallBlock *block,
                    SqOpeningText *best)
{
  static const double slides_mm[] = { 0, 2.5, -2.5, 5, -5, 8, -8, 11, -11, 14, -14 };
  const double cost_of_slide = 0.2, cost_beyond = 12.0, most_lengths = 1.5;
  double length_mm = block->opening->width_m * parts->drawing->view->mm_per_m;
  double least = G_MAXDOUBLE;
  for (guint i = 0; i < 2 * G_N_ELEMENTS (slides_mm); i++) {
    gboolean beyond = i >= G_N_ELEMENTS (slides_mm);
    double slide_mm = slides_mm[i % G_N_ELEMENTS (slides_mm)];
    if (fabs (slide_mm) > length_mm / 2)
      continue;
    SqOpeningText text = sq_opening_text (parts->drawing, block, parts->room, beyond, slide_mm);
    if (text.text == NULL)
      return;
    double cost = sq_label_obstacles_cost (obstacles, text.box) + cost_of_slide * fabs (slide_mm) +
                  (beyond ? cost_beyond : 0.0);
    /* A longer one would seem to belong to the next window. */
    if (cost < least && text.length_mm <= most_lengths * length_mm) {
      least = cost;
      g_free (best->text);
      *best = text;
    } else {
      g_free (text.text);
    }
  }
}

static void
add_opening_words (const SqPlanParts *parts, SqLabelObstacles *obstacles, GArray *words)
{
  for (guint i = 0; i < parts->blocks->len; i++) {
    const SqWallBlock *block = sq_wall_block_at (parts->blocks, i);
    if (block->opening == NULL || block->opening->common.hidden)
      continue;
    SqPlanWord word = { .kind = SQ_LABEL_OPENING, .thing = &block->opening->thing };
    place_opening_text (parts, obstacles, block, &word.opening);
    if (word.opening.text == NULL)
      continue;
    word.box = word.opening.box;
    add_standing (obstacles, words, &word);
  }
}

/* What stands where it must: figures of dimensions, numbers of notes. */
static void
add_fixed_words (const SqPlanParts *parts, SqLabelObstacles *obstacles, GArray *words)
{
  for (guint i = 0; i < parts->scene->dimensions->len; i++) {
    const SqDimensionLine *line = SQ_AT (SqDimensionLine, parts->scene->dimensions, i);
    if (line->common.hidden)
      continue;
    SqPlanWord word = { .kind = SQ_LABEL_DIMENSION, .thing = &line->thing };
    word.box = sq_dimension_text_box (parts->drawing, line);
    add_standing (obstacles, words, &word);
  }
  for (guint i = 0, number = 0; i < parts->scene->notes->len; i++) {
    const SqNote *note = SQ_AT (SqNote, parts->scene->notes, i);
    if (note->common.hidden)
      continue;
    SqPlanWord word = { .kind = SQ_LABEL_NOTE, .thing = &note->thing, .number = (int)++number };
    double width_mm = sq_note_mark_width_mm (parts->drawing, word.number);
    word.at = sq_view_paper (parts->drawing->view, note->at);
    if (!sq_plan_shows (parts, word.at))
      continue;
    word.box = sq_paper_box_moved_within (
      sq_paper_box_round (word.at, width_mm / 2, SQ_NOTE_SIDE_MM / 2), obstacles->field);
    word.at = sq_paper_box_middle (word.box);
    add_standing (obstacles, words, &word);
  }
}

void
sq_plan_add_set_words (const SqPlanParts *parts, SqLabelObstacles *obstacles, GArray *words)
{
  gboolean far_out = sq_first_tag_detail (parts->drawing->view) > SQ_TAG_FULL;
  if (!parts->request->without_tags && !far_out) {
    add_probe_words (parts, words);
    add_supply_words (parts, words);
    add_cable_words (parts, words);
    add_wall_words (parts, words);
  }
  add_fixed_words (parts, obstacles, words);
  if (!far_out) {
    add_opening_words (parts, obstacles, words);
    add_piece_words (parts, obstacles, words);
  }
}
