/* legend.c: the marks that this sheet uses, drawn by the same code at 1:100, with their names */
#include "paper/side-column.h"

#include "paper/legend-marks.h"

#include <glib/gi18n-lib.h>

#define PER_ROW 2
#define NAME_GAP_MM 2.0
#define GRIP_ROW_MM 5.2
#define LINE_ROW_MM 4.4

static char *
lamp_name (const SqClass *lamp_class)
{
  static const char *const sources[] = {
    [SQ_SOURCE_TUNGSTEN] = N_ ("tungsten"), [SQ_SOURCE_DISCHARGE] = N_ ("discharge"),
    [SQ_SOURCE_LED] = N_ ("LED"),           [SQ_SOURCE_FLUORESCENT] = N_ ("fluorescent"),
    [SQ_SOURCE_FLAME] = N_ ("flame"),
  };
  static const char *const optics[] = {
    [SQ_OPTICS_LENS] = N_ ("lens"),         [SQ_OPTICS_OPEN] = N_ ("open"),
    [SQ_OPTICS_PARALLEL] = N_ ("parallel"), [SQ_OPTICS_PROFILE] = N_ ("profile"),
    [SQ_OPTICS_PANEL] = N_ ("panel"),       [SQ_OPTICS_TUBE] = N_ ("tube"),
    [SQ_OPTICS_DIFFUSED] = N_ ("soft"),     [SQ_OPTICS_ROUND] = N_ ("all round"),
    [SQ_OPTICS_BULB] = N_ ("bulb"),
  };
  if (lamp_class->source == SQ_SOURCE_FLAME)
    return g_strdup (_ (sources[SQ_SOURCE_FLAME]));
  /* Translators: "discharge, lens" */
  return g_strdup_printf (_ ("%s, %s"), _ (sources[lamp_class->source]),
                          _ (optics[lamp_class->optics]));
}

static void
draw_item (SqDrawing *drawing,
           const SqFlow *flow,
           const SqLegendItem *item,
           SqPaperPoint left,
           double room_mm)
{
  SqType type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
  type.width_mm = room_mm - SQ_LEGEND_MARK_MM - NAME_GAP_MM;
  type.one_line = TRUE;
  item->draw (drawing, (SqPaperPoint){ left.x_mm + SQ_LEGEND_MARK_MM / 2.0, left.y_mm }, item);
  sq_draw_text (
    drawing,
    (SqPaperPoint){ left.x_mm + SQ_LEGEND_MARK_MM + NAME_GAP_MM, left.y_mm + type.cap_mm / 2.0 },
    item->name, &type);
}

/* Draws what is gathered, two to a row, each row as high as its higher one, and empties it. */
static void
run_items (SqFlow *flow, GArray *items)
{
  SqView view = *flow->drawing->view;
  view.mm_per_m = SQ_LEGEND_MM_PER_M;
  view.has_overlay = FALSE;
  SqDrawing drawing = *flow->drawing;
  drawing.view = &view;

  double room_mm = sq_flow_width_mm (flow) / PER_ROW;
  for (guint k = 0; k < items->len; k += PER_ROW) {
    guint n = MIN (items->len - k, PER_ROW);
    double height_mm = 0.0;
    for (guint i = 0; i < n; i++) {
      const SqLegendItem *item = &g_array_index (items, SqLegendItem, k + i);
      height_mm = MAX (height_mm, MAX (item->height_mm * flow->squeeze, item->least_mm));
    }
    SqPaperPoint at;
    if (!sq_flow_take (flow, height_mm, &at))
      continue;
    for (guint i = 0; i < n; i++)
      draw_item (&drawing, flow, &g_array_index (items, SqLegendItem, k + i),
                 (SqPaperPoint){ at.x_mm + i * room_mm, at.y_mm + height_mm / 2.0 }, room_mm);
  }
  g_array_set_size (items, 0);
}

static void
add (GArray *items, SqLegendDraw *draw, const char *name, double height_mm, int value)
{
  SqLegendItem item = { .draw = draw, .name = name, .height_mm = height_mm, .value = value };
  g_array_append_val (items, item);
}

static void
add_lamps (GArray *items, GPtrArray *names, const SqSideColumn *column)
{
  const SqPlanUse *use = &column->report->use;
  gboolean practical = FALSE;
  for (guint k = 0; k < use->lamps->len; k++) {
    const SqClass *lamp_class =
      sq_scene_class (column->scene, SQ_AT (SqFixture, use->lamps, k)->class_id);
    SqView view = { .mm_per_m = SQ_LEGEND_MM_PER_M };
    SqLamp lamp = { .lamp_class = lamp_class };
    double tall_mm = sq_legend_fit_lamp (&lamp, &view);
    /* A bulb is drawn as a practical, whatever burns in it. */
    if (lamp_class->optics == SQ_OPTICS_BULB && lamp_class->source != SQ_SOURCE_FLAME) {
      if (practical)
        continue;
      practical = TRUE;
      g_ptr_array_add (names, g_strdup (_ ("practical")));
    } else {
      g_ptr_array_add (names, lamp_name (lamp_class));
    }
    SqLegendItem item = { .draw = sq_legend_draw_lamp,
                          .name = g_ptr_array_index (names, names->len - 1),
                          .height_mm = MAX (SQ_LEGEND_ROW_MM, tall_mm + 1.6),
                          .least_mm = tall_mm + 0.8,
                          .lamp_class = lamp_class };
    g_array_append_val (items, item);
  }
  if (use->points_down)
    add (items, sq_legend_draw_upright, _ ("points down"), SQ_LEGEND_ROW_MM, -1);
  if (use->points_up)
    add (items, sq_legend_draw_upright, _ ("points up"), SQ_LEGEND_ROW_MM, 1);
}

static void
add_grip (GArray *items, const SqPlanUse *use)
{
  static const char *const panels[] = { N_ ("flag"), N_ ("net"), N_ ("frame"), N_ ("bounce") };
  static const char *const modifiers[] = {
    [SQ_MODIFIER_SCRIM] = N_ ("scrim"),         [SQ_MODIFIER_GEL] = N_ ("gel"),
    [SQ_MODIFIER_DIFFUSION] = N_ ("diffusion"), [SQ_MODIFIER_SOFTBOX] = N_ ("soft box"),
    [SQ_MODIFIER_EGG_CRATE] = N_ ("egg crate"), [SQ_MODIFIER_SNOOT] = N_ ("snoot"),
    [SQ_MODIFIER_DOORS] = N_ ("doors"),
  };
  for (guint k = 0; k < G_N_ELEMENTS (modifiers); k++)
    /* A soft box is part of the lamp's own outline. */
    if (use->modifiers & 1u << k && k != SQ_MODIFIER_SOFTBOX)
      add (items, sq_legend_draw_modifier, _ (modifiers[k]), SQ_LEGEND_ROW_MM, (int)k);
  for (guint k = 0; k < G_N_ELEMENTS (panels); k++)
    if (use->panels & 1u << k)
      add (items, sq_legend_draw_grip, _ (panels[k]), GRIP_ROW_MM, (int)k);
}

/* The tag says the mount by a glyph: they run on as words do. */
static void
mounts_rows (SqFlow *flow, const SqPlanUse *use)
{
  const double glyph_mm = 2.8, apart_mm = 3.6;
  SqType type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
  SqPaperPoint at = { 0 };
  double right_mm = INFINITY; /* of what stands in the row */
  gboolean is_drawn = FALSE;
  for (int k = 0; k < SQ_MOUNT_GLYPHS; k++) {
    if (!(use->mounts & 1u << k))
      continue;
    const SqLegendItem item = { .value = k };
    const char *word = _ (sq_mount_glyph_word ((SqMountGlyph)k));
    double width_mm = glyph_mm + sq_text_width_mm (flow->drawing, word, &type);
    if (right_mm + apart_mm + width_mm > sq_flow_width_mm (flow)) {
      is_drawn = sq_flow_take (flow, LINE_ROW_MM, &at);
      right_mm = -apart_mm;
    }
    SqPaperPoint left = { at.x_mm + right_mm + apart_mm, at.y_mm + LINE_ROW_MM / 2.0 };
    right_mm += apart_mm + width_mm;
    if (!is_drawn)
      continue;
    sq_legend_draw_mount (flow->drawing, (SqPaperPoint){ left.x_mm + 1.0, left.y_mm }, &item);
    sq_draw_text (flow->drawing,
                  (SqPaperPoint){ left.x_mm + glyph_mm, left.y_mm + type.cap_mm / 2.0 }, word,
                  &type);
  }
}

static void
add_lines (GArray *items, const SqPlanUse *use)
{
  static const char *const roles[SQ_ROLE_LINES] = {
    [SQ_ROLE_KEY] = N_ ("key"),
    [SQ_ROLE_FILL] = N_ ("fill"),
    [SQ_ROLE_BACK] = N_ ("back"),
    [SQ_ROLE_SIDE] = N_ ("side"),
    [SQ_ROLE_TOP] = N_ ("top"),
    [SQ_ROLE_UNDER] = N_ ("under"),
    [SQ_ROLE_BACKGROUND] = N_ ("background"),
    [SQ_ROLE_PRACTICAL] = N_ ("practical"),
    [SQ_ROLE_EFFECT] = N_ ("effect"),
    [SQ_LINE_DAYLIGHT] = N_ ("daylight"),
  };
  for (int k = 0; k < SQ_ROLE_LINES; k++)
    if (use->roles & 1u << k)
      add (items, sq_legend_draw_role, _ (roles[k]), LINE_ROW_MM, k);
  if (use->ticks)
    add (items, sq_legend_draw_ticks, _ ("ticks: a stop each"), LINE_ROW_MM, 0);
  if (use->beams)
    add (items, sq_legend_draw_beams, _ ("half, tenth of peak"), LINE_ROW_MM, 0);
  if (use->shadows)
    add (items, sq_legend_draw_shadow, _ ("shadow, soft edge"), GRIP_ROW_MM, 0);
  if (use->changed)
    add (items, sq_legend_draw_wedge, _ ("changed by look"), LINE_ROW_MM, 0);
  if (use->off)
    add (items, sq_legend_draw_off, _ ("off"), LINE_ROW_MM, 0);
}

static void
add_power (GArray *items, const SqPlanUse *use)
{
  static const char *const supplies[] = {
    [SQ_SUPPLY_HOUSE] = N_ ("wall outlet"),
    [SQ_SUPPLY_DISTRIBUTION] = N_ ("distribution"),
    [SQ_SUPPLY_GENERATOR] = N_ ("generator"),
  };
  for (guint k = 0; k < G_N_ELEMENTS (supplies); k++)
    if (use->supplies & 1u << k)
      add (items, sq_legend_draw_supply, _ (supplies[k]), SQ_LEGEND_ROW_MM, (int)k);
  if (use->cables)
    add (items, sq_legend_draw_cable, _ ("cable"), GRIP_ROW_MM, 0);
}

void
sq_legend_block (SqFlow *flow, const SqSideColumn *column)
{
  const SqPlanUse *use = &column->report->use;
  if (use->lamps->len == 0 && use->panels == 0 && use->supplies == 0 && !use->cables)
    return;
  sq_flow_head (flow, _ ("Legend"), SQ_LEGEND_ROW_MM);
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (SqLegendItem));
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  /* Two lists, so that at most two cells stay empty. */
  add_lamps (items, names, column);
  add_grip (items, use);
  run_items (flow, items);
  mounts_rows (flow, use);
  add_lines (items, use);
  add_power (items, use);
  run_items (flow, items);
}
