/* section-say.h: the words of a section before they are placed, for section-words.c
 *
 * For section-say*.c and section-words.c alone. */
#pragma once

#include "draw/mark-label.h"
#include "draw/place-tags.h"
#include "draw/section.h"
#include "draw/tag.h"
#include "draw/text-label.h"

G_BEGIN_DECLS

/* How far from their things words may go, in millimetres. */
#define SQ_SAY_TAG_MM 25.0
#define SQ_SAY_MARK_MM 16.0
#define SQ_SAY_TEXT_MM 16.0
#define SQ_SAY_NEAR_MM 6.0

/* One label: what it says, by its kind, and where it stands. */
typedef struct {
  SqLabelKind kind;
  const SqThing *thing;
  SqTagText *tag;
  SqTagDetail first_detail;
  SqMarkLabel *mark;
  SqTextLabel text;
  SqWish wish;
  SqPaperBox box;
} SqSectionWord;

void sq_section_word_clear (gpointer word);

typedef struct {
  SqDrawing *drawing;
  const SqView *view;
  const SqSection *section;
  GArray *words; /* SqSectionWord: the most important first */
} SqSectionSay;

/* sq_section_say_text:
 * @text: lines beside a thing; taken
 *
 * Returns: (nullable): its wish, until the next is added; NULL where there is nothing to say */
SqWish *sq_section_say_text (const SqSectionSay *say,
                             SqLabelKind kind,
                             const SqThing *thing,
                             SqTextLabel *text,
                             SqTurnedBox about,
                             double most_mm);

/* An upright box as what words stand about. */
SqTurnedBox sq_section_about (SqPaperBox box);
SqTurnedBox sq_section_about_place (const SqView *view, SqPlace place, double half_mm);

/* Lights, people, grip, cameras, shadows; then openings, furniture, what is over head. */
void sq_section_say_all (const SqSectionSay *say, SqTagRows tag_rows);
void sq_section_say_over_head (const SqSectionSay *say);
void sq_section_say_set (const SqSectionSay *say);

G_END_DECLS
