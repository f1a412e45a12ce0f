/* open-share.h: how much of a lamp's face is open past what stands before it, for the eye */
#pragma once

#include "light/fast-shadow.h"

G_BEGIN_DECLS

/* How the points of a row read light. */
typedef struct {
  SqVector normal; /* unit length */
  /* (nullable): all three, else @normal: of each point, from the first that is asked for */
  const float *normal_x, *normal_y, *normal_z;
  gboolean dome; /* (1 + cosine) / 2; else flat, cosine */
} SqRowReads;

/* sq_open_shares:
 * @shadows, @n: of the solids that may stand between, made for this @face and @grid
 * @from, @to: columns from … to - 1 of @row
 * @share: (out): for each, how much of the face's light comes past all of them, 0 to 1
 *
 * The face's light counts as Lambertian: for a lamp behind an egg crate or a snoot the share may be
 * off by 0.17 rms. Each shadow is measured exactly along the face's lines, which stand for what is
 * between them; along a line the light is a polynomial, and a net counts as spread evenly; all in
 * float. Where some of the face is hidden the share is off by 0.008 rms and 0.06 at worst; within
 * one diagonal of the face by 0.024 and 0.1; where a solid stands in the lamp by 0.14. Shadows
 * whose edges run along the lines are the worst, those along the face's sides nearly exact. Where
 * the face's middle is below the receptor's horizon, so that little light comes at all, it may be
 * off by 0.06 rms and 0.4.
 *
 * Nothing hidden is 1, all hidden is 0, exactly; where only several together hide all, a millionth
 * may be left. The digits do not depend on the processor, and but for the last few not on which
 * columns are asked for together. Never NaN, if all
 * positions are within 1000 km. A face that has no light for a point, from behind or below its
 * horizon, has a share all the same. */
void sq_open_shares (const SqFaceLines *face,
                     const SqFastShadow *const *shadows,
                     guint n,
                     const SqReceiverGrid *grid,
                     const SqRowReads *reads,
                     int row,
                     int from,
                     int to,
                     float *share);

G_END_DECLS
