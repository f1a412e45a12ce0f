/* overlay-ramp.c: what the contours are called, and the ramp that explains their colours */
#include "draw/overlay-private.h"
#include "draw/ramp.h"

#include <string.h>

#define SERIES_STOPS (1.0 / 6.0) /* as near as this a figure of the series stands for it */

SqColour
sq_overlay_colour (const SqView *view, gboolean stops, int band)
{
  SqColour colour = sq_ramp_colour (view->ground, stops, band);
  return view->mono ? sq_colour_grey (colour) : colour;
}

static double
shown (double lux, SqUnits units)
{
  const double lux_per_fc = 1.0 / (SQ_FOOT_M * SQ_FOOT_M);
  return units == SQ_IMPERIAL ? lux / lux_per_fc : lux;
}

static gboolean
in_series (double value)
{
  double power = log2 (value);
  return value > 0.0 && fabs (power - round (power)) <= SERIES_STOPS;
}

char *
sq_level_text (double lux, SqUnits units)
{
  const int most_decimals = 6; /* a microlux is dark */
  double value = shown (lux, units);
  int decimals = 0;
  if (in_series (value)) {
    value = exp2 (round (log2 (value)));
    decimals = CLAMP (2 - (int)floor (log10 (value)), 0, most_decimals); /* 0.125 */
  } else if (value > 0.0) {
    int power = (int)floor (log10 (value));
    double unit = pow (10.0, power - 1);
    value = round (value / unit) * unit;
    decimals = CLAMP (1 - power, 0, most_decimals);
  }
  char format[8], text[G_ASCII_DTOSTR_BUF_SIZE];
  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (text, sizeof text, format, value);
  /* 4.0 is 4, and 0.50 is 0.5 */
  if (strchr (text, '.') != NULL) {
    char *end = text + strlen (text);
    while (end[-1] == '0')
      end--;
    if (end[-1] == '.')
      end--;
    *end = '\0';
  }
  return g_strdup (text);
}

gboolean
sq_light_overlay_is_rounded (const SqLightOverlay *overlay)
{
  double power = log2 (shown (overlay->set_lux, overlay->units));
  return in_series (exp2 (power)) && fabs (power - round (power)) > 0.005;
}

static char *
stop_text (const SqLightOverlay *overlay, int level)
{
  if (level == 0)
    return sq_quantity_format (overlay->t_stop, SQ_T_STOP, SQ_METRIC);
  return g_strdup_printf ("%s%d", level < 0 ? "\xe2\x88\x92" : "+", ABS (level));
}

char *
sq_overlay_figure (const SqLightOverlay *overlay, gboolean stops, int level)
{
  return stops ? stop_text (overlay, level)
               : sq_level_text (overlay->set_lux * exp2 (level), overlay->units);
}

static void
draw_figures_under (SqDrawing *drawing,
                    const SqLightOverlay *overlay,
                    gboolean stops,
                    SqPaperPoint at,
                    double band_mm,
                    int last,
                    SqColour quiet)
{
  for (int level = SQ_FIRST_CONTOUR; level <= last; level++) {
    g_autofree char *text = sq_overlay_figure (overlay, stops, level);
    SqType type = { .cap_mm = SQ_TYPE_SMALL,
                    .weight = level == 0 ? 700 : 400,
                    .align = SQ_ALIGN_CENTRE,
                    .colour = level == 0 ? sq_ink (drawing->view, SQ_INK) : quiet };
    SqPaperPoint p = { at.x_mm + (level - SQ_FIRST_BAND) * band_mm, at.y_mm };
    sq_draw_text (drawing, p, text, &type);
  }
}

void
sq_light_overlay_draw_ramp (SqDrawing *drawing,
                            const SqLightOverlay *overlay,
                            gboolean stops,
                            SqPaperPoint at,
                            double width_mm)
{
  const double height_mm = 4.6, tick_mm = 0.9;
  const SqView *view = drawing->view;
  SqColour ink = sq_ink (view, SQ_INK), mid = sq_ink (view, SQ_MID);
  int last = stops ? SQ_LAST_STOPS_BAND : SQ_LAST_LUX_BAND;
  double band_mm = width_mm / (last - SQ_FIRST_BAND + 1);

  /* From the right, each to the end, so that no seam shows between two. */
  for (int band = last; band >= SQ_FIRST_BAND; band--) {
    SqPaperBox box = { at.x_mm, at.y_mm, (band - SQ_FIRST_BAND + 1) * band_mm, height_mm };
    sq_draw_box_path (drawing, box, 0.0);
    sq_draw_fill (drawing, sq_overlay_colour (view, stops, band), 1.0);
  }
  sq_draw_box_path (drawing, (SqPaperBox){ at.x_mm, at.y_mm, width_mm, height_mm }, 0.0);
  sq_draw_stroke (drawing, SQ_PEN_18, ink);
  for (int level = SQ_FIRST_CONTOUR; level <= last; level++) {
    double x_mm = at.x_mm + (level - SQ_FIRST_BAND) * band_mm;
    sq_draw_line (drawing, (SqPaperPoint){ x_mm, at.y_mm },
                  (SqPaperPoint){ x_mm, at.y_mm + height_mm + tick_mm },
                  level == 0 ? SQ_PEN_50 : SQ_PEN_13, ink);
  }
  SqPaperPoint first = { at.x_mm, at.y_mm + 8.2 }, second = { at.x_mm, at.y_mm + 11.3 };
  draw_figures_under (drawing, overlay, FALSE, first, band_mm, last, ink);

  draw_figures_under (drawing, overlay, TRUE, second, band_mm, last, mid);
}
