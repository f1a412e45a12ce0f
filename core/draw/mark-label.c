/* mark-label.c: a mark's letter with the reading box that belongs to it */
#include "draw/mark-label.h"

#include "draw/point-symbols.h"

#include <glib/gi18n-lib.h>

#define BOX_HEIGHT_MM 7.6
#define BOX_INSET_MM 1.2

double
sq_back_from_set_stops (const SqReadings *readings, const SqMarkReading *reading)
{
  const SqMeterSettings *meter = readings->scene->meter;
  double set_flat_lux = readings->set_lux * meter->flat_c / meter->dome_c;
  return reading->back_lux > 0.0 ? log2 (reading->back_lux / set_flat_lux) : NAN;
}

/* `+½`, `−1`, `0`: stops as a bare figure, signed. */
static char *
bare_stops (double stops)
{
  g_autofree char *said = sq_quantity_format (stops, SQ_STOPS, SQ_METRIC);
  char *unit = strstr (said, "\u00a0");
  if (unit != NULL)
    *unit = '\0';
  gboolean over = !g_str_has_prefix (said, "\u2212") && !g_str_equal (said, "0");
  return g_strconcat (over ? "+" : "", said, NULL);
}

static char *
ratio_text (const SqReadings *readings, const SqMarkReading *reading)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  g_autofree char *ratio = NULL;
  if (isfinite (reading->shown_ratio)) {
    g_ascii_formatd (digits, sizeof digits, reading->shown_ratio < 99.95 ? "%.1f" : "%.0f",
                     reading->shown_ratio);
    ratio = g_strdup_printf ("%s : 1", digits);
  } else {
    ratio = g_strdup (_ ("no fill"));
  }
  double back = sq_back_from_set_stops (readings, reading);
  if (isnan (back))
    return g_steal_pointer (&ratio);
  g_autofree char *stops = bare_stops (back);
  return g_strdup_printf (_ ("%s   back %s"), ratio, stops);
}

SqMarkLabel *
sq_mark_label_new (const SqMark *mark,
                   const SqReadings *readings,
                   const SqMarkReading *reading,
                   SqUnits units)
{
  SqMarkLabel *label = g_new0 (SqMarkLabel, 1);
  gboolean lettered = mark->label != NULL && *mark->label != '\0';
  label->letter = g_strdup (lettered ? mark->label : mark->id);
  if (reading == NULL)
    return label;
  g_autofree char *lux = sq_quantity_format (reading->lux, SQ_ILLUMINANCE, units);
  g_autofree char *stop = isnan (reading->t_stop)
                              ? g_strdup (_ ("dark"))
                              : sq_quantity_format (reading->t_stop, SQ_T_STOP, units);
  label->light = g_strdup_printf ("%s  %s", lux, stop);
  label->ratio = ratio_text (readings, reading);
  return label;
}

void
sq_mark_label_free (SqMarkLabel *label)
{
  if (label == NULL)
    return;
  g_free (label->letter);
  g_free (label->light);
  g_free (label->ratio);
  g_free (label);
}

static SqType
light_type (SqDrawing *drawing)
{
  return (SqType){.cap_mm = SQ_TYPE_HEAD, .weight = 700, .colour = sq_ink (drawing->view, SQ_INK)};
}

static SqType
ratio_type (SqDrawing *drawing)
{
  return (SqType){.cap_mm = sq_view_small_mm (drawing->view),
                  .weight = 400,
                  .colour = sq_ink (drawing->view, SQ_INK)};
}

void
sq_mark_label_shape (SqDrawing *drawing,
                     const SqMarkLabel *label,
                     gboolean left,
                     SqPaperBox *letter,
                     SqPaperBox *box)
{
  double half = sq_mark_letter_width_mm (drawing, label->letter) / 2;
  *letter = sq_paper_box_round ((SqPaperPoint){0, 0}, half, SQ_LETTER_SIDE_MM / 2);
  *box = (SqPaperBox){0};
  if (label->light == NULL)
    return;
  SqType light = light_type (drawing), ratio = ratio_type (drawing);
  double width = MAX (sq_text_width_mm (drawing, label->light, &light),
                      sq_text_width_mm (drawing, label->ratio, &ratio)) +
                 2 * BOX_INSET_MM;
  /* Letter and box share their upper edge. */
  *box = (SqPaperBox){left ? -half - width : half, letter->y_mm, width, BOX_HEIGHT_MM};
}

void
sq_draw_mark_label (SqDrawing *drawing, SqPaperPoint at, const SqMarkLabel *label, gboolean left)
{
  SqPaperBox letter, box;
  SqType light = light_type (drawing), ratio = ratio_type (drawing);

  sq_mark_label_shape (drawing, label, left, &letter, &box);
  sq_draw_enter (drawing, at, 0.0);
  if (label->light != NULL) {
    SqPaperPoint baseline = {box.x_mm + BOX_INSET_MM, box.y_mm + 0.9 + SQ_TYPE_HEAD};
    sq_draw_box_path (drawing, box, 0.8);
    sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
    sq_draw_box_path (drawing, box, 0.8);
    sq_draw_stroke (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK));
    sq_draw_text (drawing, baseline, label->light, &light);
    baseline.y_mm = box.y_mm + BOX_HEIGHT_MM - 1.2;
    sq_draw_text (drawing, baseline, label->ratio, &ratio);
  }
  sq_draw_leave (drawing);
  sq_draw_mark_letter (drawing, at, label->letter);
}
