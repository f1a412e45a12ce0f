/* section-words.h: the words of a section: placed, reported, drawn */
#pragma once

#include "draw/label-obstacles.h"
#include "draw/section.h"

G_BEGIN_DECLS

typedef struct SqSectionWords SqSectionWords;

/* @obstacles: what words keep clear of: sq_section_obstacles(), and what stands already */
SqSectionWords *sq_section_words_new (SqDrawing *drawing,
                                      const SqSection *section,
                                      SqTagRows tag_rows,
                                      const SqLabelObstacles *obstacles);
void sq_section_words_free (SqSectionWords *words);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqSectionWords, sq_section_words_free)

void sq_section_words_report (const SqSectionWords *words, GArray *labels);
void sq_section_words_draw (const SqSectionWords *words, SqDrawing *drawing);

G_END_DECLS
