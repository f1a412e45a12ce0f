/* plan-set-words.c: what a plan says of the set: walls, openings, pieces, dimensions, notes */
#include "draw/dimension-line.h"
#include "draw/piece-symbol.h"
#include "draw/plan-words.h"
#include "draw/point-symbols.h"

#include <glib/gi18n-lib.h>

/* "wild" once a wall, beside its longest straight run. */
static void
add_wall_spots (const SqView *view, const SqWallBlock *block, SqPaperBox text, GArray *spots)
{
  const double beside_mm = 1.0, spot_each_mm = 5.0, cost_off_middle_mm = 0.05;
  SqPaperPoint a = sq_view_paper (view, block->corner[0]);
  SqPaperPoint b = sq_view_paper (view, block->corner[1]);
  SqPaperPoint c = sq_view_paper (view, block->corner[2]);
  double angle_rad = atan2 (b.y_mm - a.y_mm, b.x_mm - a.x_mm);
  double length_mm = sq_paper_distance_mm (a, b);
  double off_mm =
    sq_paper_distance_mm (b, c) / 2 + beside_mm +
    (fabs (sin (angle_rad)) * text.width_mm + fabs (cos (angle_rad)) * text.height_mm) / 2;
  SqPaperPoint middle = { (a.x_mm + c.x_mm) / 2, (a.y_mm + c.y_mm) / 2 };
  int n = 1 + 2 * (int)(length_mm / 2 / spot_each_mm);
  for (int i = 0; i < n; i++) {
    double along_mm = length_mm * ((i + 0.5) / n - 0.5);
    SqPaperPoint beside = sq_paper_along (middle, angle_rad, along_mm);
    for (int side = -1; side <= 1; side += 2) {
      const SqLabelSpot spot = { sq_paper_along (beside, angle_rad + side * G_PI / 2, off_mm),
                                 cost_off_middle_mm * fabs (along_mm) };
      g_array_append_val (spots, spot);
    }
  }
}

static const SqWallBlock *
longest_block (const GArray *blocks, const SqWall *wall)
{
  const SqWallBlock *longest = NULL;
  double most_m = 0.0;
  for (guint i = 0; i < blocks->len; i++) {
    const SqWallBlock *block = sq_wall_block_at (blocks, i);
    double length_m = sq_place_distance_m (block->corner[0], block->corner[1]);
    if (block->wall != wall || block->opening != NULL || length_m <= most_m)
      continue;
    most_m = length_m;
    longest = block;
  }
  return longest;
}

static void
add_wall_words (const SqPlanParts *parts, GArray *words)
{
  const SqView *view = parts->drawing->view;
  for (guint i = 0; i < parts->scene->walls->len; i++) {
    const SqWall *wall = SQ_AT (SqWall, parts->scene->walls, i);
    const SqWallBlock *block = longest_block (parts->blocks, wall);
    if (!wall->wild || wall->common.hidden || block == NULL)
      continue;
    SqPaperPoint a = sq_view_paper (view, block->corner[0]);
    SqPaperPoint c = sq_view_paper (view, block->corner[2]);
    SqTurnedBox about = { .middle = { (a.x_mm + c.x_mm) / 2, (a.y_mm + c.y_mm) / 2 } };
    SqTextLabel text = { .plain = TRUE };
    sq_text_label_add (&text, g_strdup (_ ("wild")));
    SqPlanWord *word = sq_plan_add_text (parts, words, SQ_LABEL_WALL, &wall->thing, &wall->common,
                                         &text, 1, about, SQ_MOST_NEAR_MM);
    if (word == NULL)
      continue;
    word->wish.may_go = TRUE;
    add_wall_spots (view, block, word->wish.head[SQ_ROWS_RIGHT], sq_plan_word_spots (word));
  }
}

/* Words of a piece may stand anywhere in @room, best in its middle. */
static void
add_piece_spots (SqPaperBox room, GArray *spots)
{
  static const double shares[] = { 0.5, 0.25, 0.75, 0.0, 1.0 };
  const double cost_aside = 0.4;
  for (guint i = 0; i < G_N_ELEMENTS (shares) * G_N_ELEMENTS (shares); i++) {
    double across = shares[i % G_N_ELEMENTS (shares)], down = shares[i / G_N_ELEMENTS (shares)];
    const SqLabelSpot spot = { { room.x_mm + across * room.width_mm,
                                 room.y_mm + down * room.height_mm },
                               cost_aside * (fabs (across - 0.5) + fabs (down - 0.5)) };
    g_array_append_val (spots, spot);
  }
}

/* Inside where it fits, else beside. */
static void
add_piece_words (const SqPlanParts *parts, GArray *words)
{
  SqType type = sq_set_word_type (parts->drawing);
  for (guint i = 0; i < parts->scene->pieces->len; i++) {
    const SqPiece *piece = SQ_AT (SqPiece, parts->scene->pieces, i);
    gboolean shaped = piece->disc != NULL || piece->outline->len > 0;
    if (piece->common.hidden || piece->label == NULL || *piece->label == '\0' || !shaped)
      continue;
    SqPaperBox box = sq_piece_box (parts->drawing->view, piece), room;
    SqTurnedBox about = { sq_paper_box_middle (box), 0.0, box.width_mm / 2, box.height_mm / 2 };
    double turn_rad = 0.0;
    gboolean fits = sq_piece_label_fits (parts->drawing, piece, &type, &room, &turn_rad);
    SqTextLabel text = { .plain = TRUE };
    sq_text_label_add (&text, g_strdup (piece->label));
    SqPlanWord *word = sq_plan_add_text (parts, words, SQ_LABEL_PIECE, &piece->thing,
                                         &piece->common, &text, 1, about, SQ_MOST_NEAR_MM);
    if (word == NULL)
      continue;
    word->wish.may_go = TRUE;
    word->inside = fits;
    if (!fits)
      continue;
    double width_mm = sq_text_width_mm (parts->drawing, piece->label, &type);
    double height_mm = 1.3 * type.cap_mm;
    gboolean turned = turn_rad != 0.0;
    word->turn_rad = turn_rad;
    sq_plan_word_set_box (word, sq_paper_box_round ((SqPaperPoint){ 0, 0 },
                                                    (turned ? height_mm : width_mm) / 2,
                                                    (turned ? width_mm : height_mm) / 2));
    add_piece_spots (room, sq_plan_word_spots (word));
  }
}

/* The figures of a window slide along their wall to where least crosses them, and to the far side
 * of it where the near one is taken. */
static void
add_opening_word (const SqPlanParts *parts, const SqWallBlock *block, GArray *words)
{
  static const double slides_mm[] = { 0, 2.5, -2.5, 5, -5, 8, -8, 11, -11, 14, -14 };
  const double cost_of_slide = 0.2, cost_beyond = 12.0, most_lengths = 1.5;
  double length_mm = block->opening->width_m * parts->drawing->view->mm_per_m;
  SqPlanWord word = { .kind = SQ_LABEL_OPENING, .thing = &block->opening->thing, .placed = TRUE };
  word.opening = sq_opening_text (parts->drawing, block, parts->room, FALSE, 0.0);
  SqPaperPoint middle = sq_paper_box_middle (word.opening.box);
  /* A longer one would seem to belong to the next window. */
  if (word.opening.text == NULL || word.opening.length_mm > most_lengths * length_mm ||
      !sq_plan_shows (parts, middle)) {
    g_free (word.opening.text);
    return;
  }
  word.wish =
    (SqWish){ .of = block->opening, .about = { .middle = middle }, .n_details = 1, .may_go = TRUE };
  sq_plan_word_set_box (&word,
                        sq_paper_box_round ((SqPaperPoint){ 0, 0 }, word.opening.box.width_mm / 2,
                                            word.opening.box.height_mm / 2));
  GArray *spots = sq_plan_word_spots (&word);
  for (guint i = 0; i < 2 * G_N_ELEMENTS (slides_mm); i++) {
    gboolean beyond = i >= G_N_ELEMENTS (slides_mm);
    double slide_mm = slides_mm[i % G_N_ELEMENTS (slides_mm)];
    if (fabs (slide_mm) > length_mm / 2)
      continue;
    SqOpeningText text = sq_opening_text (parts->drawing, block, parts->room, beyond, slide_mm);
    const SqLabelSpot spot = { sq_paper_box_middle (text.box),
                               cost_of_slide * fabs (slide_mm) + (beyond ? cost_beyond : 0.0) };
    g_array_append_val (spots, spot);
    g_free (text.text);
  }
  g_array_append_val (words, word);
}

static void
add_opening_words (const SqPlanParts *parts, GArray *words)
{
  for (guint i = 0; i < parts->blocks->len; i++) {
    const SqWallBlock *block = sq_wall_block_at (parts->blocks, i);
    if (block->opening != NULL && !block->opening->common.hidden)
      add_opening_word (parts, block, words);
  }
}

/* The figures of dimensions stand where they must: those placed after them keep clear. */
static void
add_dimension_words (const SqPlanParts *parts, SqLabelObstacles *obstacles, GArray *words)
{
  for (guint i = 0; i < parts->scene->dimensions->len; i++) {
    const SqDimensionLine *line = SQ_AT (SqDimensionLine, parts->scene->dimensions, i);
    if (line->common.hidden)
      continue;
    SqPlanWord word = { .kind = SQ_LABEL_DIMENSION, .thing = &line->thing };
    word.box = sq_dimension_text_box (parts->drawing, line);
    sq_label_obstacles_add_box (obstacles, word.box, SQ_COST_LABEL, word.thing);
    g_array_append_val (words, word);
  }
}

/* A note's number stands where it was put, or close by where something else stands there. */
static void
add_note_spots (SqPaperPoint at, SqPaperBox square, SqPaperBox field, GArray *spots)
{
  static const double aside_mm[] = { 0, 2.5, 5, 7.5, 10 };
  const int directions = 12;
  const double cost_aside_mm = 1.0;
  for (guint i = 0; i < G_N_ELEMENTS (aside_mm); i++)
    for (int direction = 0; direction < (i == 0 ? 1 : directions); direction++) {
      SqPaperPoint middle = sq_paper_along (at, 2 * G_PI * direction / directions, aside_mm[i]);
      SqPaperBox box = sq_paper_box_round (middle, square.width_mm / 2, square.height_mm / 2);
      const SqLabelSpot spot = { sq_paper_box_middle (sq_paper_box_moved_within (box, field)),
                                 cost_aside_mm * aside_mm[i] };
      g_array_append_val (spots, spot);
    }
}

void
sq_plan_add_note_words (const SqPlanParts *parts, SqPaperBox field, GArray *words)
{
  const SqView *view = parts->drawing->view;
  for (guint i = 0, number = 0; i < parts->scene->notes->len; i++) {
    const SqNote *note = SQ_AT (SqNote, parts->scene->notes, i);
    if (note->common.hidden)
      continue;
    SqPlanWord word = {
      .kind = SQ_LABEL_NOTE, .thing = &note->thing, .number = (int)++number, .placed = TRUE
    };
    SqPaperPoint at = sq_view_paper (view, note->at);
    gboolean points = sq_place_given (note->points_to);
    if (!sq_plan_shows (parts, at))
      continue;
    word.wish =
      (SqWish){ .of = note,
                .about = { .middle = points ? sq_view_paper (view, note->points_to) : at },
                .n_details = 1,
                .may_lead = points };
    double width_mm = sq_note_mark_width_mm (parts->drawing, word.number);
    SqPaperBox square =
      sq_paper_box_round ((SqPaperPoint){ 0, 0 }, width_mm / 2, SQ_NOTE_SIDE_MM / 2);
    sq_plan_word_set_box (&word, square);
    add_note_spots (at, square, field, sq_plan_word_spots (&word));
    g_array_append_val (words, word);
  }
}

void
sq_plan_add_set_words (const SqPlanParts *parts, SqLabelObstacles *obstacles, GArray *words)
{
  gboolean far_out = sq_first_tag_detail (parts->drawing->view) > SQ_TAG_FULL;
  gboolean with_tags = !parts->request->without_tags;
  if (with_tags && !far_out)
    sq_plan_add_power_words (parts, obstacles->field, words);
  add_dimension_words (parts, obstacles, words);
  if (!far_out) {
    add_opening_words (parts, words);
    add_piece_words (parts, words);
    if (with_tags)
      add_wall_words (parts, words);
  }
}
