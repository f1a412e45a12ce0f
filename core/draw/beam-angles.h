/* beam-angles.h: how wide a lamp's beam is drawn, with what hangs in front of it */
#pragma once

#include "scene/scene.h"

G_BEGIN_DECLS

/* Beams this wide or wider (full angle at half of the peak) have no edge worth drawing. */
#define SQ_HARD_BEAM_DEG 90.0

/* sq_fixture_beam_deg:
 * @half_deg, @tenth_deg: (out): full angles across the throw at half and at a tenth of the peak
 *
 * Between spot and flood by the logarithms of the angles. Diffusion adds its spread in quadrature;
 * snoots and crates narrow it to where they alone would pass that much. For drawing: near enough
 * (a degree or two) where two of these work together.
 * Returns: FALSE where the lamp has no beam: shapes, measured photometry, soft boxes */
gboolean sq_fixture_beam_deg (const SqScene *scene,
                              const SqFixture *fixture,
                              double *half_deg,
                              double *tenth_deg);

/* TRUE if its beam has an edge. */
gboolean sq_fixture_is_hard (const SqScene *scene, const SqFixture *fixture);

G_END_DECLS
