/* scale-bar.c: alternating halves in two rows, tenths under the first part */
#include "paper/scale-bar.h"

#include "paper/scale.h"

#include <glib/gi18n-lib.h>

#define HALF_ROW_MM 0.8
#define PARTS 5

/* What a part may stand for, in metres or in feet. */
static const double metric_parts[] = { 0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1,   2,
                                       5,    10,   20,   50,  100, 200, 500, 1000 };
static const double imperial_parts[] = {
  1.0 / 12, 0.25, 0.5, 1, 2, 4, 8, 16, 32, 64, 128, 256, 512
};

SqScaleBar
sq_scale_bar (double denominator, SqUnits units, double most_mm)
{
  const double *parts = units == SQ_IMPERIAL ? imperial_parts : metric_parts;
  guint n = units == SQ_IMPERIAL ? G_N_ELEMENTS (imperial_parts) : G_N_ELEMENTS (metric_parts);
  double unit_m = units == SQ_IMPERIAL ? SQ_FOOT_M : 1.0;
  SqScaleBar bar = { .parts = PARTS, .fine_parts = units == SQ_IMPERIAL ? 4 : 10 };
  for (guint k = 0; k < n; k++) {
    double part_mm = parts[k] * unit_m * 1000.0 / denominator;
    if (k > 0 && part_mm * PARTS > most_mm + 1e-9)
      break;
    bar.part_m = parts[k] * unit_m;
    bar.part_mm = part_mm;
  }
  return bar;
}

static void
halves (SqDrawing *drawing, SqPaperPoint at, double part_mm, int parts, gboolean upper_first)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  for (int k = 0; k < parts; k++) {
    gboolean upper = (k % 2 == 0) == upper_first;
    SqPaperBox box = { at.x_mm + k * part_mm, at.y_mm + (upper ? 0.0 : HALF_ROW_MM), part_mm,
                       HALF_ROW_MM };
    sq_draw_box_path (drawing, box, 0.0);
  }
  sq_draw_fill (drawing, ink, 1.0);
}

/* 1.5, 20; inches below a foot are not written. */
static char *
part_text (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (digits, sizeof digits, value < 100.0 ? "%.3g" : "%.0f", value);
  return g_strdup (digits);
}

void
sq_draw_scale_bar (SqDrawing *drawing, SqPaperPoint at, const SqScaleBar *bar, SqUnits units)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double length_mm = bar->parts * bar->part_mm;
  double unit_m = units == SQ_IMPERIAL ? SQ_FOOT_M : 1.0;
  const double gap_mm = 0.6, fine_mm = 1.1;

  halves (drawing, at, bar->part_mm, bar->parts, TRUE);
  sq_draw_box_path (drawing, (SqPaperBox){ at.x_mm, at.y_mm, length_mm, 2.0 * HALF_ROW_MM }, 0.0);
  sq_draw_stroke (drawing, SQ_PEN_18, ink);
  for (int k = 0; k <= bar->fine_parts; k++) {
    double x_mm = at.x_mm + bar->part_mm * k / bar->fine_parts;
    double top_mm = at.y_mm + 2.0 * HALF_ROW_MM + gap_mm;
    sq_draw_line (drawing, (SqPaperPoint){ x_mm, top_mm }, (SqPaperPoint){ x_mm, top_mm + fine_mm },
                  SQ_PEN_18, ink);
  }
  SqType type = { .cap_mm = SQ_TYPE_SMALL, .weight = 500, .align = SQ_ALIGN_CENTRE, .colour = ink };
  for (int k = 0; k <= bar->parts; k++) {
    g_autofree char *text = part_text (k * bar->part_m / unit_m);
    sq_draw_text (drawing, (SqPaperPoint){ at.x_mm + k * bar->part_mm, at.y_mm - 1.8 }, text,
                  &type);
  }
  type.align = SQ_ALIGN_LEFT;
  sq_draw_text (drawing, (SqPaperPoint){ at.x_mm + length_mm + 2.6, at.y_mm - 1.8 },
                units == SQ_IMPERIAL ? "ft" : "m", &type);
}

char *
sq_scale_bar_text (const SqScaleBar *bar, double denominator, SqUnits units)
{
  double length_mm = bar->parts * bar->part_mm;
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (digits, sizeof digits, "%.4g",
                   units == SQ_IMPERIAL ? length_mm / SQ_INCH_MM : length_mm);
  g_autofree char *scale = sq_scale_format (denominator, units);
  /* Translators: scale; then a length on paper with its unit */
  return g_strdup_printf (_ ("%s.  The bar is %s %s long: check it before you scale off."), scale,
                          digits, units == SQ_IMPERIAL ? "in" : "mm");
}
