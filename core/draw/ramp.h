/* ramp.h: the colours of light under a plan: bands for lux and bands for stops */
#pragma once

#include "draw/ink.h"

G_BEGIN_DECLS

/* Bands are a stop wide and counted from the set exposure, so that a lux sheet and a stops sheet
 * share their edges: band n lies between n and n + 1 stops. The first takes all below, the last all
 * above. */
#define SQ_FIRST_BAND (-6)
#define SQ_LAST_LUX_BAND 2
#define SQ_LAST_STOPS_BAND 3
#define SQ_LUX_BANDS (SQ_LAST_LUX_BAND - SQ_FIRST_BAND + 1)
#define SQ_STOPS_BANDS (SQ_LAST_STOPS_BAND - SQ_FIRST_BAND + 1)

/* The published cividis map, 256 steps of 8-bit sRGB (0xRRGGBB): Nuñez, Anderton, Renslow,
 * "Optimizing colormaps with consideration for color vision deficiency", PLoS ONE 13(7): e0199239,
 * 2018. The values are those of matplotlib 3.6 (lib/matplotlib/_cm_listed.py). */
#define SQ_CIVIDIS_STEPS 256
extern const guint sq_cividis[SQ_CIVIDIS_STEPS];

/* sq_cividis_at:
 * @t: 0 dark … 1 bright; taken to the nearer end outside
 *
 * Returns: the published map, linear in sRGB between its steps */
SqColour sq_cividis_at (double t);

/* sq_ramp_colour:
 * @ground: paper is mixed with white so that ink reads on every band; a screen is not
 * @stops: bands of stops (blue under, yellow over the set exposure) instead of lux (cividis)
 * @band: stops below it, see above; taken to the nearer end outside
 *
 * Lightness only rises from band to band, in both: a photocopy still reads dark to bright.
 * OKLab: B. Ottosson, "A perceptual color space for image processing", 2020. */
SqColour sq_ramp_colour (SqGround ground, gboolean stops, int band);

/* Of the ink and white, the one that reads on @colour: the ink where it gives 4.5 : 1 (the contrast
 * of WCAG 2.1 for text). */
SqColour sq_ramp_ink_on (SqColour colour);

/* Contrast of two colours by WCAG 2.1, 1 … 21. */
double sq_colour_contrast (SqColour a, SqColour b);

/* The grey of the same luminance: what a photocopy makes of @colour. */
SqColour sq_colour_grey (SqColour colour);

/* CIE 1976 lightness L*, 0 … 100. */
double sq_colour_lightness (SqColour colour);

G_END_DECLS
