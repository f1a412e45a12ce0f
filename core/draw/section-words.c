/* section-words.c: the words of a section: placed, reported, drawn */
#include "draw/section-words.h"

#include "draw/section-say.h"

struct SqSectionWords {
  GArray *words; /* SqSectionWord: the most important first */
};

SqSectionWords *
sq_section_words_new (SqDrawing *drawing,
                      const SqSection *section,
                      SqTagRows tag_rows,
                      const SqLabelObstacles *obstacles)
{
  SqSectionWords *words = g_new0 (SqSectionWords, 1);
  words->words = g_array_new (FALSE, FALSE, sizeof (SqSectionWord));
  g_array_set_clear_func (words->words, sq_section_word_clear);
  const SqSectionSay say = { drawing, drawing->view, section, words->words };
  sq_section_say_all (&say, tag_rows);

  g_autofree SqWish *wishes = g_new (SqWish, words->words->len + 1);
  for (guint i = 0; i < words->words->len; i++)
    wishes[i] = g_array_index (words->words, SqSectionWord, i).wish;
  sq_place_tags (wishes, words->words->len, obstacles);
  for (guint i = 0; i < words->words->len; i++) {
    SqSectionWord *word = &g_array_index (words->words, SqSectionWord, i);
    word->wish = wishes[i];
    word->box = sq_wish_box (&word->wish);
  }
  return words;
}

void
sq_section_words_free (SqSectionWords *words)
{
  if (words == NULL)
    return;
  g_array_unref (words->words);
  g_free (words);
}

void
sq_section_words_report (const SqSectionWords *words, GArray *labels)
{
  for (guint i = 0; i < words->words->len; i++) {
    const SqSectionWord *word = &g_array_index (words->words, SqSectionWord, i);
    SqLabel label = { .kind = word->kind, .thing = word->thing, .box = word->box };
    if (word->kind == SQ_LABEL_TAG)
      label.detail = word->first_detail + word->wish.detail;
    if (!word->wish.left_out)
      g_array_append_val (labels, label);
  }
}

/* Lines lean toward what they name. */
static void
draw_lines (SqDrawing *drawing, const SqSectionWord *word)
{
  double off = word->wish.at.x_mm - word->wish.about.middle.x_mm, half = word->box.width_mm / 2;
  SqAlign align = off > half ? SQ_ALIGN_LEFT : off < -half ? SQ_ALIGN_RIGHT : SQ_ALIGN_CENTRE;
  sq_draw_text_label (drawing, word->wish.at, &word->text, word->text.n_lines, align);
}

void
sq_section_words_draw (const SqSectionWords *words, SqDrawing *drawing)
{
  for (guint i = 0; i < words->words->len; i++) {
    const SqSectionWord *word = &g_array_index (words->words, SqSectionWord, i);
    if (word->wish.has_leader && !word->wish.left_out)
      sq_draw_line (drawing, word->wish.leader.from, word->wish.leader.to, SQ_PEN_18,
                    sq_ink (drawing->view, SQ_INK));
  }
  for (guint i = words->words->len; i > 0; i--) {
    const SqSectionWord *word = &g_array_index (words->words, SqSectionWord, i - 1);
    gboolean left = word->wish.side == SQ_ROWS_LEFT;
    if (word->wish.left_out)
      continue;
    if (word->kind == SQ_LABEL_TAG)
      sq_draw_tag (drawing, word->wish.at, word->tag, word->first_detail + word->wish.detail, left);
    else if (word->kind == SQ_LABEL_MARK)
      sq_draw_mark_label (drawing, word->wish.at, word->mark, left);
    else
      draw_lines (drawing, word);
  }
}
