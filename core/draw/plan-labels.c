/* plan-labels.c: all words of a plan: placed, reported, drawn */
#include "draw/plan-words.h"
#include "draw/point-symbols.h"

struct SqPlanLabels {
  GArray *words; /* SqPlanWord: the most important of the placed ones first */
  GArray *solid; /* SqPaperBox: what stands on the plan besides words */
  GArray *lines; /* SqPaperLine: what crosses it */
};

static void
place (GArray *words, const SqLabelObstacles *obstacles)
{
  g_autofree SqWish *wishes = g_new (SqWish, words->len + 1);
  guint n = 0;

  for (guint i = 0; i < words->len; i++) {
    const SqPlanWord *word = &g_array_index (words, SqPlanWord, i);
    if (word->placed)
      wishes[n++] = word->wish;
  }
  sq_place_tags (wishes, n, obstacles);
  n = 0;
  for (guint i = 0; i < words->len; i++) {
    SqPlanWord *word = &g_array_index (words, SqPlanWord, i);
    if (!word->placed)
      continue;
    word->wish = wishes[n++];
    word->box = sq_wish_box (&word->wish);
  }
}

/* What other words, such as a contour's figure, had better keep clear of. */
static void
keep_obstacles (SqPlanLabels *labels, const SqLabelObstacles *obstacles)
{
  for (guint i = 0; i < obstacles->boxes->len; i++) {
    const SqObstacle *obstacle = &g_array_index (obstacles->boxes, SqObstacle, i);
    if (obstacle->cost >= SQ_COST_PANEL)
      g_array_append_val (labels->solid, obstacle->box);
  }
  for (guint i = 0; i < obstacles->lines->len; i++)
    g_array_append_val (labels->lines, g_array_index (obstacles->lines, SqObstacleLine, i).line);
}

SqPlanLabels *
sq_plan_labels_new (const SqPlanParts *parts)
{
  g_autoptr (SqLabelObstacles) obstacles = sq_plan_obstacles (parts);
  SqPlanLabels *labels = g_new0 (SqPlanLabels, 1);
  labels->words = g_array_new (FALSE, FALSE, sizeof (SqPlanWord));
  g_array_set_clear_func (labels->words, sq_plan_word_clear);
  labels->solid = g_array_new (FALSE, FALSE, sizeof (SqPaperBox));
  labels->lines = g_array_new (FALSE, FALSE, sizeof (SqPaperLine));
  keep_obstacles (labels, obstacles);
  sq_plan_add_note_words (parts, obstacles->field, labels->words);
  if (!parts->request->without_tags)
    sq_plan_add_light_words (parts, labels->words);
  sq_plan_add_set_words (parts, obstacles, labels->words);
  place (labels->words, obstacles);
  return labels;
}

void
sq_plan_labels_free (SqPlanLabels *labels)
{
  if (labels == NULL)
    return;
  g_array_unref (labels->words);
  g_array_unref (labels->solid);
  g_array_unref (labels->lines);
  g_free (labels);
}

void
sq_plan_labels_report (const SqPlanLabels *labels, SqPlanReport *report)
{
  for (guint i = 0; i < labels->words->len; i++) {
    const SqPlanWord *word = &g_array_index (labels->words, SqPlanWord, i);
    if (word->wish.left_out)
      continue;
    SqLabel label = { .kind = word->kind,
                      .thing = word->thing,
                      .box = word->box,
                      .by_hand = word->wish.pinned,
                      .has_leader = word->wish.has_leader,
                      .leader = word->wish.leader };
    if (word->kind == SQ_LABEL_TAG)
      label.detail = (SqTagDetail)(word->first_detail + (int)word->wish.detail);
    g_array_append_val (report->labels, label);
    if (word->wish.has_leader)
      g_array_append_val (report->lines, word->wish.leader);
    if (word->kind == SQ_LABEL_TAG && word->wish.detail > 0)
      g_ptr_array_add (report->crowded, (gpointer)word->thing);
  }
  g_array_append_vals (report->solid, labels->solid->data, labels->solid->len);
  g_array_append_vals (report->lines, labels->lines->data, labels->lines->len);
}

void
sq_plan_labels_draw_leaders (const SqPlanLabels *labels, const SqPlanParts *parts)
{
  SqDrawing *drawing = parts->drawing;
  for (guint i = 0; i < labels->words->len; i++) {
    const SqPlanWord *word = &g_array_index (labels->words, SqPlanWord, i);
    if (word->placed && word->wish.has_leader && !word->wish.left_out)
      sq_draw_line (drawing, word->wish.leader.from, word->wish.leader.to, SQ_PEN_18,
                    sq_ink (drawing->view, SQ_INK));
  }
}

/* A label of lines leans toward what it names. */
static void
draw_lines (SqDrawing *drawing, const SqPlanWord *word)
{
  double off = word->wish.at.x_mm - word->wish.about.middle.x_mm;
  double half = word->box.width_mm / 2;
  gboolean aside = word->spots == NULL && fabs (off) > half;
  SqAlign align = !aside ? SQ_ALIGN_CENTRE : off > 0.0 ? SQ_ALIGN_LEFT : SQ_ALIGN_RIGHT;
  sq_draw_text_label (drawing, word->wish.at, &word->text,
                      word->text.n_lines - (int)word->wish.detail, align);
}

static SqLayer
layer_of (const SqPlanWord *word)
{
  return word->kind == SQ_LABEL_TAG    ? SQ_LAYER_TAGS
         : word->kind == SQ_LABEL_MARK ? SQ_LAYER_READINGS
         : word->kind == SQ_LABEL_NOTE ? SQ_LAYER_NOTES
                                       : SQ_LAYER_LABELS;
}

/* The words of a piece, quieter than others, turned where it is narrow. */
static void
draw_inside (SqDrawing *drawing, const SqPlanWord *word)
{
  SqType type = sq_set_word_type (drawing);
  SqPaperPoint at = sq_paper_along (word->wish.at, word->turn_rad + G_PI / 2, type.cap_mm / 2);
  type.turn_rad = word->turn_rad;
  sq_draw_text (drawing, at, ((const SqPiece *)word->thing)->label, &type);
}

static void
draw_opening (SqDrawing *drawing, const SqPlanWord *word)
{
  SqOpeningText text = word->opening;
  SqPaperPoint was = sq_paper_box_middle (text.box);
  text.at.x_mm += word->wish.at.x_mm - was.x_mm;
  text.at.y_mm += word->wish.at.y_mm - was.y_mm;
  sq_draw_opening_text (drawing, &text);
}

static void
draw_word (const SqPlanParts *parts, const SqPlanWord *word)
{
  SqDrawing *drawing = parts->drawing;
  gboolean left = word->wish.side == SQ_ROWS_LEFT;
  if (word->wish.left_out || !word->placed)
    return; /* a dimension's figure is drawn with its line */

  if (word->kind == SQ_LABEL_TAG)
    sq_draw_tag (drawing, word->wish.at, word->tag,
                 (SqTagDetail)(word->first_detail + (int)word->wish.detail), left);
  else if (word->kind == SQ_LABEL_MARK)
    sq_draw_mark_label (drawing, word->wish.at, word->mark, left);
  else if (word->kind == SQ_LABEL_OPENING)
    draw_opening (drawing, word);
  else if (word->kind == SQ_LABEL_NOTE)
    sq_draw_note_mark (drawing, word->wish.at, word->number);
  else if (word->inside)
    draw_inside (drawing, word);
  else
    draw_lines (drawing, word);
}

void
sq_plan_labels_draw (const SqPlanLabels *labels, const SqPlanParts *parts)
{
  /* Backwards: the most important last, on top, should two of them meet after all. */
  for (SqLayer layer = SQ_LAYER_LABELS; layer <= SQ_LAYER_READINGS; layer++) {
    sq_draw_layer (parts->drawing, layer);
    for (guint i = labels->words->len; i > 0; i--) {
      const SqPlanWord *word = &g_array_index (labels->words, SqPlanWord, i - 1);
      if (layer_of (word) == layer)
        draw_word (parts, word);
    }
  }
}
