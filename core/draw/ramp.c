/* ramp.c: the colours of light under a plan, built in a space where steps look even */
#include "draw/ramp.h"

/* Lightness, and the two opponent axes green to red, blue to yellow (Ottosson 2020). */
typedef struct {
  double l, a, b;
} OkLab;

static double
linear (double c)
{
  return c <= 0.04045 ? c / 12.92 : pow ((c + 0.055) / 1.055, 2.4);
}

static double
encoded (double c)
{
  c = CLAMP (c, 0.0, 1.0);
  return c <= 0.0031308 ? c * 12.92 : 1.055 * pow (c, 1.0 / 2.4) - 0.055;
}

static OkLab
oklab (SqColour colour)
{
  double r = linear (colour.red), g = linear (colour.green), b = linear (colour.blue);
  double l = cbrt (0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b);
  double m = cbrt (0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b);
  double s = cbrt (0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b);
  return (OkLab){ 0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s,
                  1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
                  0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s };
}

/* Back to sRGB; what no screen can show is clipped channel by channel. */
static SqColour
from_oklab (OkLab c)
{
  double l = pow (c.l + 0.3963377774 * c.a + 0.2158037573 * c.b, 3.0);
  double m = pow (c.l - 0.1055613458 * c.a - 0.0638541728 * c.b, 3.0);
  double s = pow (c.l - 0.0894841775 * c.a - 1.2914855480 * c.b, 3.0);
  return (SqColour){ encoded (4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s),
                     encoded (-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s),
                     encoded (-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s) };
}

SqColour
sq_cividis_at (double t)
{
  double at = CLAMP (t, 0.0, 1.0) * (SQ_CIVIDIS_STEPS - 1);
  int i = MIN ((int)at, SQ_CIVIDIS_STEPS - 2);
  double f = at - i;
  SqColour low = sq_colour_hex (sq_cividis[i]), high = sq_colour_hex (sq_cividis[i + 1]);
  return (SqColour){ low.red + f * (high.red - low.red), low.green + f * (high.green - low.green),
                     low.blue + f * (high.blue - low.blue) };
}

/* The darkest band takes the map from where its neighbours still differ to the eye; white is mixed
 * in on paper, where ink lies over every band. */
static SqColour
lux_colour (SqGround ground, int band)
{
  double along = (double)(band - SQ_FIRST_BAND) / (SQ_LUX_BANDS - 1);
  if (ground != SQ_GROUND_PAPER)
    return sq_cividis_at (0.08 + 0.92 * along);
  const double white_share = 0.38;
  OkLab map = oklab (sq_cividis_at (0.22 + 0.78 * along));
  OkLab white = oklab (sq_colour_hex (0xFFFFFF));
  return from_oklab ((OkLab){ map.l + white_share * (white.l - map.l),
                              map.a + white_share * (white.a - map.a),
                              map.b + white_share * (white.b - map.b) });
}

/* Hue tells under from over, lightness rises through both: by 2 of L* or more from band to band, to
 * eyes that lack one kind of cone too, which is what keeps the yellow so pale. */
static SqColour
stops_colour (SqGround ground, int band)
{
  const double blue_rad = SQ_RADIANS (258), yellow_rad = SQ_RADIANS (84);
  double s = band + 0.5;
  double lightness, chroma;
  if (ground == SQ_GROUND_PAPER) {
    lightness = CLAMP (0.844 + (s < 0 ? 0.031 : 0.035) * s, 0.68, 0.975);
    chroma = s < 0 ? -0.017 * s : 0.026 * s;
  } else {
    lightness = CLAMP (0.30 + 0.068 * (s + 5.5), 0.20, 0.97);
    chroma = s < 0 ? -0.020 * s : 0.034 * s;
  }
  chroma = MIN (chroma, s < 0 ? 0.11 : 0.125);
  double hue_rad = s < 0 ? blue_rad : yellow_rad;
  return from_oklab ((OkLab){ lightness, chroma * cos (hue_rad), chroma * sin (hue_rad) });
}

SqColour
sq_ramp_colour (SqGround ground, gboolean stops, int band)
{
  if (stops)
    return stops_colour (ground, CLAMP (band, SQ_FIRST_BAND, SQ_LAST_STOPS_BAND));
  return lux_colour (ground, CLAMP (band, SQ_FIRST_BAND, SQ_LAST_LUX_BAND));
}

/* Relative luminance Y of sRGB (IEC 61966-2-1). */
static double
luminance (SqColour c)
{
  return 0.2126 * linear (c.red) + 0.7152 * linear (c.green) + 0.0722 * linear (c.blue);
}

double
sq_colour_contrast (SqColour a, SqColour b)
{
  double ya = luminance (a), yb = luminance (b);
  return (MAX (ya, yb) + 0.05) / (MIN (ya, yb) + 0.05);
}

double
sq_colour_lightness (SqColour colour)
{
  double y = luminance (colour);
  return y > 216.0 / 24389.0 ? 116.0 * cbrt (y) - 16.0 : y * 24389.0 / 27.0;
}

SqColour
sq_colour_grey (SqColour colour)
{
  double grey = encoded (luminance (colour));
  return (SqColour){ grey, grey, grey };
}

SqColour
sq_ramp_ink_on (SqColour colour)
{
  const SqView paper = { .ground = SQ_GROUND_PAPER };
  const double readable = 4.5;
  SqColour ink = sq_ink (&paper, SQ_INK);
  return sq_colour_contrast (ink, colour) >= readable ? ink : sq_colour_hex (0xFFFFFF);
}
