/* section-measures.h: the heights that are measured in a section: of the lens, of the crown */
#pragma once

#include "draw/dimension-line.h"
#include "draw/label-obstacles.h"
#include "draw/section.h"

G_BEGIN_DECLS

typedef struct {
  SqDimensionLine line;
  SqPaperBox box; /* of its figure */
  const SqThing *of;
} SqSectionMeasure;

/* sq_section_measures:
 * @obstacles: what figures keep clear of; the measures are added to them, for words
 *
 * A height whose figure finds no free place, as at very small scales, is not measured: the list of
 * heights has it.
 * Returns: (transfer full) (element-type SqSectionMeasure) */
GArray *sq_section_measures (SqDrawing *drawing,
                             const SqSection *section,
                             SqLabelObstacles *obstacles);

G_END_DECLS
