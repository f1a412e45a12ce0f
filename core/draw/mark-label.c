/* mark-label.c: a mark's letter with the reading box that belongs to it */
#include "draw/mark-label.h"

#include "draw/label.h"
#include "draw/point-symbols.h"
#include "light/exposure.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define BOX_HEIGHT_MM 7.6
#define BOX_INSET_MM 1.2
#define BOX_CORNER_MM 0.8

double
sq_flat_set_lux (const SqReadings *readings)
{
  const SqMeterSettings *meter = readings->scene->meter;
  return readings->set_lux * meter->flat_c / meter->dome_c;
}

double
sq_back_from_set_stops (const SqReadings *readings, const SqMarkReading *reading)
{
  return sq_stops_over (reading->back_lux, sq_flat_set_lux (readings));
}

/* The second line: what the light is like. */
static char *
ratio_line (const SqReadings *readings, const SqMarkReading *reading)
{
  if (isnan (reading->t_stop))
    return g_strdup (_ ("no light"));
  g_autofree char *ratio = reading->key_lux <= SQ_DARK_LX    ? g_strdup (_ ("no key"))
                           : isfinite (reading->shown_ratio) ? sq_ratio_text (reading->shown_ratio)
                                                             : g_strdup (_ ("no fill"));
  double back = sq_back_from_set_stops (readings, reading);
  if (isnan (back))
    return g_steal_pointer (&ratio);
  g_autofree char *stops = sq_stops_text (back, TRUE);
  return g_strdup_printf (_ ("%s   back %s"), ratio, stops);
}

SqMarkLabel *
sq_mark_label_new (const SqMark *mark,
                   const SqReadings *readings,
                   const SqMarkReading *reading,
                   SqUnits units)
{
  SqMarkLabel *label = g_new0 (SqMarkLabel, 1);
  label->letter = g_strdup (sq_label_or_id (mark->label, mark->id));
  if (reading == NULL)
    return label;
  g_autofree char *lux = sq_quantity_format (reading->lux, SQ_ILLUMINANCE, units);
  g_autofree char *stop = isnan (reading->t_stop)
                            ? g_strdup (_ ("dark"))
                            : sq_quantity_format (reading->t_stop, SQ_T_STOP, units);
  label->light = g_strdup_printf ("%s  %s", lux, stop);
  label->ratio = ratio_line (readings, reading);
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
  return (
    SqType){ .cap_mm = SQ_TYPE_HEAD, .weight = 700, .colour = sq_ink (drawing->view, SQ_INK) };
}

static SqType
ratio_type (SqDrawing *drawing)
{
  return (SqType){ .cap_mm = sq_view_small_mm (drawing->view),
                   .weight = 400,
                   .colour = sq_ink (drawing->view, SQ_INK) };
}

void
sq_mark_label_shape (
  SqDrawing *drawing, const SqMarkLabel *label, gboolean left, SqPaperBox *letter, SqPaperBox *box)
{
  double half = sq_mark_letter_width_mm (drawing, label->letter) / 2;
  *letter = sq_paper_box_round ((SqPaperPoint){ 0, 0 }, half, SQ_LETTER_SIDE_MM / 2);
  *box = (SqPaperBox){ 0 };
  if (label->light == NULL)
    return;
  SqType light = light_type (drawing), ratio = ratio_type (drawing);
  double width = MAX (sq_text_width_mm (drawing, label->light, &light),
                      sq_text_width_mm (drawing, label->ratio, &ratio)) +
                 2 * BOX_INSET_MM;
  /* Letter and box share their upper edge. */
  *box = (SqPaperBox){ left ? -half - width : half, letter->y_mm, width, BOX_HEIGHT_MM };
}

void
sq_draw_mark_label (SqDrawing *drawing, SqPaperPoint at, const SqMarkLabel *label, gboolean left)
{
  SqPaperBox letter, box;
  SqType light = light_type (drawing), ratio = ratio_type (drawing);

  sq_mark_label_shape (drawing, label, left, &letter, &box);
  sq_draw_enter (drawing, at, 0.0);
  if (label->light != NULL) {
    SqPaperPoint baseline = { box.x_mm + BOX_INSET_MM, box.y_mm + 0.9 + SQ_TYPE_HEAD };
    sq_draw_box_path (drawing, box, BOX_CORNER_MM);
    sq_draw_outlined (drawing, SQ_PAPER, SQ_PEN_35);
    sq_draw_text (drawing, baseline, label->light, &light);
    baseline.y_mm = box.y_mm + BOX_HEIGHT_MM - 1.2;
    sq_draw_text (drawing, baseline, label->ratio, &ratio);
  }
  sq_draw_leave (drawing);
  sq_draw_mark_letter (drawing, at, label->letter);
}
