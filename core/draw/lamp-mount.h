/* lamp-mount.h: what holds a lamp, as marks on its body and as a glyph in its tag */
#pragma once

#include "draw/drawing.h"

G_BEGIN_DECLS

/* Mounts as drawn: a pipe and a ceiling look alike from above. */
typedef enum {
  SQ_GLYPH_STAND,
  SQ_GLYPH_LIFT,
  SQ_GLYPH_HUNG,
  SQ_GLYPH_BOOM,
  SQ_GLYPH_WALL,
  SQ_GLYPH_FLOOR,
  SQ_GLYPH_HAND,
  SQ_GLYPH_SET,
  SQ_MOUNT_GLYPHS,
} SqMountGlyph;

SqMountGlyph sq_mount_glyph (int mount);              /* SqMount */
const char *sq_mount_glyph_word (SqMountGlyph glyph); /* N_(): stand, hung … */

/* Radius of a stand's legs, and of a lift's outriggers, where no stand is named, in metres (common
 * practice). */
#define SQ_LEGS_RADIUS_M 0.42
#define SQ_LIFT_RADIUS_M 0.75

/* The marks on the body, to be drawn before it, in the lamp's frame: x along the throw, origin at
 * the middle of a body of @width_mm across and @depth_mm along. */
void sq_draw_mount (
  SqDrawing *drawing, SqMountGlyph glyph, double width_mm, double depth_mm, double legs_radius_mm);

/* A square of side @size_mm with its lower left corner at @at. Returns: how far the text after it
 * starts from @at, in mm */
double sq_draw_mount_glyph (SqDrawing *drawing,
                            SqPaperPoint at,
                            double size_mm,
                            SqMountGlyph glyph);
double sq_mount_glyph_width_mm (double size_mm);

G_END_DECLS
