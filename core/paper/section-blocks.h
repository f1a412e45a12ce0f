/* section-blocks.h: what stands beside a section: where it cuts, figures, heights, legend
 *
 * For core/paper alone. */
#pragma once

#include "draw/section.h"
#include "paper/flow.h"

G_BEGIN_DECLS

/* sq_draw_section_key:
 * The set from above in small, within @box: its walls, its lamps as dots, the line of the cut, and
 * arrows at its ends the way one looks. */
void sq_draw_section_key (SqDrawing *drawing, const SqSection *section, SqPaperBox box);

/* The blocks, each with its head. */
void sq_section_cut_block (SqFlow *flow, const SqSection *section, double key_height_mm);
void sq_section_figures_block (SqFlow *flow, const SqSection *section);
void sq_section_heights_block (SqFlow *flow, const SqSection *section);
void sq_section_legend_block (SqFlow *flow, const SqSection *section);

G_END_DECLS
