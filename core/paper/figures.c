/* figures.c: the set stop, what it rests on, and key, fill and back at every mark */
#include "paper/side-column.h"

#include "draw/mark-label.h"
#include "light/exposure.h"
#include "paper/not-counted.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

#define ROW_MM 3.3
#define STOP_COLUMN_MM 17.0

/* Shares of the column's width where the columns of the table end. */
static const struct {
  const char *head;
  double share;
  SqAlign align;
} table[] = {
  { N_ ("mark"), 0.0, SQ_ALIGN_LEFT },   { N_ ("key"), 0.37, SQ_ALIGN_RIGHT },
  { N_ ("fill"), 0.55, SQ_ALIGN_RIGHT }, { N_ ("back"), 0.74, SQ_ALIGN_RIGHT },
  { N_ ("ratio"), 1.0, SQ_ALIGN_RIGHT },
};
#define TABLE_COLUMNS G_N_ELEMENTS (table)

static char *
exposure_line (const SqReadings *readings)
{
  const SqCamera *camera = readings->camera;
  g_autoptr (GString) line = g_string_new (NULL);
  g_autofree char *iso = sq_quantity_format (readings->iso, SQ_PLAIN, SQ_METRIC);
  g_string_append_printf (line, "ISO %s", iso);
  if (camera != NULL) {
    g_autofree char *rate = sq_quantity_format (camera->fps, SQ_FRAME_RATE, SQ_METRIC);
    g_autofree char *shutter = sq_quantity_format (camera->shutter_deg, SQ_ANGLE, SQ_METRIC);
    g_string_append_printf (line, "   %s   %s", rate, shutter);
  }
  if (readings->nd_stops > 0.0) {
    g_autofree char *nd = sq_stops_text (readings->nd_stops, FALSE);
    g_string_append_printf (line, _ ("   ND %s"), nd);
  }
  return g_string_free (g_steal_pointer (&line), FALSE);
}

static char *
light_line (const SqReadings *readings, SqUnits units)
{
  g_autofree char *lux = sq_quantity_format (readings->set_lux, SQ_ILLUMINANCE, units);
  if (readings->camera == NULL)
    return g_strdup_printf (_ ("no camera   set %s (dome)"), lux);
  g_autofree char *white =
    sq_quantity_format (readings->camera->white_k, SQ_TEMPERATURE, SQ_METRIC);
  return g_strdup_printf (_ ("white %s   set %s (dome)"), white, lux);
}

static void
set_stop (SqFlow *flow, const SqSideColumn *column)
{
  const SqReadings *readings = column->readings;
  SqPaperPoint at;
  if (!sq_flow_take (flow, 9.0, &at))
    return;
  g_autofree char *stop = sq_quantity_format (readings->set_t_stop, SQ_T_STOP, SQ_METRIC);
  SqType large = sq_flow_type (flow, 700, SQ_INK, SQ_ALIGN_LEFT);
  large.cap_mm = SQ_TYPE_TITLE;
  sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm, at.y_mm + SQ_TYPE_TITLE }, stop, &large);

  g_autofree char *exposure = exposure_line (readings);
  g_autofree char *light = light_line (readings, column->units);
  double beside_mm = MAX (STOP_COLUMN_MM, sq_text_width_mm (flow->drawing, stop, &large) + 3.0);
  SqType small = sq_flow_type (flow, 500, SQ_INK, SQ_ALIGN_LEFT);
  small.width_mm = sq_flow_width_mm (flow) - beside_mm;
  small.one_line = TRUE;
  double x_mm = at.x_mm + beside_mm;
  sq_draw_text (flow->drawing, (SqPaperPoint){ x_mm, at.y_mm + 1.8 }, exposure, &small);
  sq_draw_text (flow->drawing, (SqPaperPoint){ x_mm, at.y_mm + 5.0 }, light, &small);
}

static void
table_row (SqFlow *flow, const char *const cells[TABLE_COLUMNS], gboolean head)
{
  double width_mm = sq_flow_width_mm (flow);
  SqPaperPoint at;
  if (!sq_flow_take (flow, ROW_MM, &at))
    return;
  for (guint k = 0; k < TABLE_COLUMNS; k++) {
    gboolean strong = !head && (k == 0 || k + 1 == TABLE_COLUMNS);
    SqType type = sq_flow_type (flow,
                                head     ? 400
                                : strong ? 700
                                         : 500,
                                head ? SQ_MID : SQ_INK, table[k].align);
    if (k == 0) {
      type.width_mm = 0.22 * width_mm;
      type.one_line = TRUE;
    }
    sq_draw_text (flow->drawing,
                  (SqPaperPoint){ at.x_mm + table[k].share * width_mm, at.y_mm + type.cap_mm },
                  cells[k], &type);
  }
}

static void
table_rule (SqFlow *flow)
{
  SqPaperPoint at;
  if (sq_flow_take (flow, 1.4, &at))
    sq_draw_line (flow->drawing, (SqPaperPoint){ at.x_mm, at.y_mm - 0.3 },
                  (SqPaperPoint){ at.x_mm + sq_flow_width_mm (flow), at.y_mm - 0.3 }, SQ_PEN_18,
                  sq_ink (flow->drawing->view, SQ_INK));
}

static void
mark_row (SqFlow *flow, const SqSideColumn *column, const SqMarkReading *reading)
{
  double set_lux = sq_flat_set_lux (column->readings);
  g_autofree char *key = sq_stops_text (sq_stops_over (reading->key_lux, set_lux), TRUE);
  g_autofree char *fill = sq_stops_text (sq_stops_over (reading->fill_lux, set_lux), TRUE);
  g_autofree char *back = sq_stops_text (sq_back_from_set_stops (column->readings, reading), TRUE);
  /* Without a key, 1 : 1 would be said of the fill alone. */
  double ratio = reading->key_lux > SQ_DARK_LX ? reading->shown_ratio : NAN;
  g_autofree char *ratio_text = sq_ratio_text (ratio);
  const char *const cells[] = { sq_label_or_id (reading->mark->label, reading->mark->id), key, fill,
                                back, ratio_text };
  table_row (flow, cells, FALSE);
}

/* What each figure rests on, so that none claims more than it holds. */
static void
small_print (SqFlow *flow, const SqSideColumn *column)
{
  const SqScene *scene = column->scene;
  g_autofree char *stop = sq_quantity_format (column->readings->set_t_stop, SQ_T_STOP, SQ_METRIC);
  g_autofree char *dome = sq_quantity_format (scene->meter->dome_c, SQ_PLAIN, SQ_METRIC);
  g_autofree char *flat = sq_quantity_format (scene->meter->flat_c, SQ_PLAIN, SQ_METRIC);
  if (column->readings->marks->len > 0) {
    /* Translators: %s is a T-stop */
    g_autofree char *line = g_strdup_printf (
      _ ("Key, fill, back: stops from %s. Ratio: %s."), stop,
      scene->meter->ratio == SQ_RATIO_PLAIN ? _ ("key : fill") : _ ("(key + fill) : fill"));
    sq_flow_text (flow, line, 0.0, SQ_MID);
  }
  g_autofree char *constants = g_strdup_printf (
    _ ("Exposure constant C: %s dome (set stop), %s flat (the others)."), dome, flat);
  sq_flow_text (flow, constants, 0.0, SQ_MID);
}

static void
not_counted (SqFlow *flow, const SqSideColumn *column)
{
  const double above_mm = 1.2, row_mm = 3.1;
  g_autoptr (GPtrArray) lines =
    sq_not_counted_lines (column->readings, column->map != NULL ? column->map->not_counted : NULL);
  SqPaperPoint at;
  if (lines->len == 0)
    return;
  sq_flow_gap (flow, above_mm * flow->squeeze);
  if (sq_flow_take (flow, row_mm, &at)) {
    SqType type = sq_flow_type (flow, 600, SQ_INK, SQ_ALIGN_LEFT);
    sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm, at.y_mm + type.cap_mm },
                  _ ("Not counted yet"), &type);
  }
  for (guint k = 0; k < lines->len; k++)
    sq_flow_text (flow, g_ptr_array_index (lines, k), 0.0, SQ_INK);
}

void
sq_figures_block (SqFlow *flow, const SqSideColumn *column)
{
  sq_flow_head (flow, _ ("Figures"), 24.0);
  set_stop (flow, column);
  if (column->readings->marks->len > 0) {
    const char *heads[TABLE_COLUMNS];
    for (guint k = 0; k < TABLE_COLUMNS; k++)
      heads[k] = _ (table[k].head);
    table_row (flow, heads, TRUE);
    table_rule (flow);
    for (guint k = 0; k < column->readings->marks->len; k++)
      mark_row (flow, column, g_ptr_array_index (column->readings->marks, k));
    sq_flow_gap (flow, 0.6);
  } else {
    sq_flow_text (flow, _ ("No marks yet: place one where somebody stands."), 0.0, SQ_INK);
  }
  small_print (flow, column);
  not_counted (flow, column);
}

void
sq_light_block (SqFlow *flow, const SqSideColumn *column)
{
  static const char *const faces[] = {
    [SQ_NORMAL_UP] = N_ ("facing up"),
    [SQ_NORMAL_CAMERA] = N_ ("facing the camera"),
    [SQ_NORMAL_SQUARE] = N_ ("square to each light"),
  };
  if (column->overlay == NULL)
    return;
  const SqMapRequest *request = &column->map->request;
  g_autofree char *height = sq_quantity_format (request->height_m, SQ_LENGTH, column->units);
  const char *quantity = column->stops                  ? _ ("stops")
                         : column->units == SQ_IMPERIAL ? _ ("fc")
                                                        : _ ("lux");
  /* Translators: "Light, lux at 1.2 m, facing up" */
  g_autofree char *title = g_strdup_printf (_ ("Light, %s at %s, %s"), quantity, height,
                                            _ (faces[CLAMP (request->normal, 0, 2)]));
  sq_flow_head (flow, title, SQ_RAMP_HEIGHT_MM);
  SqPaperPoint at;
  if (sq_flow_take (flow, SQ_RAMP_HEIGHT_MM, &at))
    sq_light_overlay_draw_ramp (flow->drawing, column->overlay, column->stops, at,
                                sq_flow_width_mm (flow));

  g_autofree char *step = sq_fine_length_text (column->map->step_m, column->units);
  g_autofree char *set = sq_quantity_format (column->map->set_lux, SQ_ILLUMINANCE, column->units);
  g_autofree char *stop = sq_quantity_format (column->readings->set_t_stop, SQ_T_STOP, SQ_METRIC);
  g_autoptr (GString) line = g_string_new (NULL);
  /* Translators: how fine the map under the plan is; then which light is the set stop there */
  g_string_append_printf (line, _ ("Read every %s; a line each whole stop, %s at %s (flat)."), step,
                          stop, set);
  if (sq_light_overlay_is_rounded (column->overlay))
    g_string_append_printf (line, " %s",
                            _ ("Figures on lines are rounded, by a sixth of a stop at most."));
  /* A dome takes light from all sides: the line through a mark says something else than its box. */
  if (column->readings->marks->len > 0)
    g_string_append_printf (line, " %s",
                            _ ("Figures at marks are a dome's, at the face: not these."));
  if (column->fades)
    g_string_append_printf (line, " %s", _ ("Out of doors no tint: darker than −5 stops."));
  sq_flow_text (flow, line->str, 0.0, SQ_MID);
  flow->title = NULL;
}
