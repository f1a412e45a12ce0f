/* lamp-parts.h: the parts that a lamp's symbol is put together from, for lamp-symbol.c
 *
 * All draw in the lamp's frame: origin at the middle of the emitting face, x along the throw, y to
 * its right, millimetres. The body lies behind the face. */
#pragma once

#include "draw/lamp-symbol.h"

G_BEGIN_DECLS

/* Pens of a burning lamp and of one that is off. */
typedef struct {
  double body_mm, face_mm, lens_mm;
  double dash_mm[2];
  int n_dashes;
} SqLampPens;

SqLampPens sq_lamp_pens (gboolean on);

/* How far a fluorescent lamp's pins stand out behind. */
#define SQ_LAMP_PINS_MM 1.5

/* Outline by source, open at the front: from the front's left round the back to its right. The
 * back lies at @back_mm, the front at @front_mm. */
void sq_lamp_back_path (SqDrawing *drawing,
                        int source, /* SqSource */
                        double width_mm,
                        double back_mm,
                        double front_mm);

/* The drop in the housing of a flame that has one. */
void sq_draw_lamp_flame_within (SqDrawing *drawing, double middle_mm);

/* Body and emitting face. */
void sq_draw_lamp_aimed (SqDrawing *drawing, const SqLamp *lamp, const SqLampSize *size);
void sq_draw_lamp_upright (SqDrawing *drawing, const SqLamp *lamp, const SqLampSize *size);
void sq_draw_lamp_round (SqDrawing *drawing, const SqLamp *lamp, const SqLampSize *size);

/* What hangs in front, from @from_mm outward. Returns: how far ahead the last mark reaches. With
 * no @drawing it only measures. */
double sq_draw_lamp_modifiers (SqDrawing *drawing,
                               const SqFixture *fixture,
                               double face_mm,
                               double from_mm);

G_END_DECLS
