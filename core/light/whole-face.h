/* whole-face.h: the light of a lamp whose whole face is seen, for many receptors at once */
#pragma once

#include "light/face-kernel.h"
#include "light/lamp.h"

G_BEGIN_DECLS

/* sq_whole_face_lux:
 * @receptors: (array length=n)
 * @lux: (out) (array length=n): at unit output (not times level and trim), past the modifiers, with
 *   nothing in between: doors do not count here
 *
 * What sq_face_whole_lux() finds, by the same formulas for many at once: nothing on the lamp,
 * behind a flat face or below the horizon. How the light is summed goes by the lamp and by where
 * each receptor stands:
 * - lamps without size: I · cos / d²;
 * - even faces: the contour formula, within 1e-12 of sq_area_flat(), or where a face spans less
 * than 1e-4 radians as a point; balls: the closed form of the ball, which sq_lamp_unit_lux() takes
 * for a polygon (1e-5);
 * - faces that are not even: the places of light/face-places.h, in the coarsest level whose parts
 *   look smaller than sq_lamp_part_limit() from where the nearest may be. Outside the cone that
 * gets more than 1e-8 of the peak the coarsest level is taken, so that what is summed there is good
 * to that share of the peak;
 * - where the horizon may cut the face, where parts would have to be finer than all levels, and for
 *   what is rare (domes before even faces, balls and tubes behind egg crates): sq_face_whole_lux().
 *
 * The same bits for each receptor whatever its neighbours, on every machine. */
void sq_whole_face_lux (const SqLamp *lamp, const SqReceptors *receptors, gsize n, double *lux);

/* A lamp made ready for this. It may not be copied: it points into itself. */
typedef struct {
  const SqLamp *lamp; /* borrowed */
  SqFaceSums sums;
  SqFacePlace middle; /* all of the face in one place */
} SqWholeFace;

void sq_whole_face_init (SqWholeFace *face, const SqLamp *lamp, gboolean dome);

/* For the eye, less than this share of a beam's peak is darkness. */
#define SQ_DIM_QUICK 1e-4

/* The same for the eye, in single precision, by fewer places, for flat receptors, which are counted
 * from @origin; the nearer the better. @level: all that will be asked for are as high as that and
 * face up. */
void sq_whole_face_init_quick (SqWholeFace *face,
                               const SqLamp *lamp,
                               SqPoint origin,
                               gboolean level);

/* sq_whole_face_find:
 * @kernel: see sq_face_kernel_best()
 *
 * What sq_whole_face_lux() says. */
void sq_whole_face_find (const SqWholeFace *face,
                         const SqFaceKernel *kernel,
                         const SqReceptors *receptors,
                         gsize n,
                         double *lux);
void sq_whole_face_find_quick (const SqWholeFace *face,
                               const SqQuickFaceKernel *kernel,
                               const SqQuickReceptors *receptors,
                               gsize n,
                               float *lux);

G_END_DECLS
