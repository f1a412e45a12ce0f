/* point-symbols.h: small marks at a place: probes, note numbers, cautions, mark letters */
#pragma once

#include "draw/drawing.h"

G_BEGIN_DECLS

/* A ring with cross hairs; @azimuth_deg of the receptor's normal, NAN where it looks up or down. */
void sq_draw_probe (SqDrawing *drawing, SqPaperPoint at, double azimuth_deg);
#define SQ_PROBE_RADIUS_MM 2.3

/* A thin square round a number: a note. From three digits on it is wider than high. */
void sq_draw_note_mark (SqDrawing *drawing, SqPaperPoint at, int number);
#define SQ_NOTE_SIDE_MM 4.2
double sq_note_mark_width_mm (SqDrawing *drawing, int number);

/* A triangle: a caution. */
void sq_draw_caution_mark (SqDrawing *drawing, SqPaperPoint at);

/* A white letter on a black square: somebody. A name too long for a plan is cut. */
double sq_mark_letter_width_mm (SqDrawing *drawing, const char *letter);
void sq_draw_mark_letter (SqDrawing *drawing, SqPaperPoint at, const char *letter);
#define SQ_LETTER_SIDE_MM 4.6

G_END_DECLS
