/* legend.c: the marks that this sheet uses, drawn by the same code at 1:100, with their names */
#include "paper/side-column.h"

#include "draw/lamp-parts.h"
#include "draw/panel-symbol.h"
#include "draw/supply-symbol.h"

#include <glib/gi18n-lib.h>

#define SYMBOL_MM 12.0 /* room for the mark; its name follows */
#define SYMBOL_TIGHT_MM 9.5
#define NAME_GAP_MM 2.0
#define MM_PER_M 10.0
#define LAMP_ROW_MM 7.0
#define GRIP_ROW_MM 5.2
#define LINE_ROW_MM 4.4

typedef struct Item Item;
struct Item {
  void (*draw) (SqDrawing *drawing, SqPaperPoint middle, const Item *item); /* of the symbol */
  const char *name;                                                         /* translated */
  double height_mm;
  double least_mm;           /* of the mark itself: a row is never squeezed under it */
  double symbol_mm;          /* room across, set when it is laid out */
  int value;                 /* role line, mount, panel or modifier kind … */
  const SqClass *lamp_class; /* of a lamp */
};

/* A lamp too wide for its row is turned to face up the page; one longer than the room for marks is
 * drawn smaller than the others. Returns: its height in millimetres */
static double
lie_down (SqLamp *lamp, SqView *view)
{
  SqTurnedBox box = sq_lamp_outline (view, lamp);
  if (2.0 * box.half_width_mm <= LAMP_ROW_MM)
    return 2.0 * box.half_width_mm;
  lamp->azimuth_deg = 90.0;
  view->mm_per_m *= MIN (1.0, SYMBOL_MM / (2.0 * box.half_width_mm));
  box = sq_lamp_outline (view, lamp);
  return 2.0 * box.half_length_mm;
}

static void
draw_lamp (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  SqLamp lamp = {.lamp_class = item->lamp_class, .at = middle};
  SqView view = *drawing->view;
  SqDrawing smaller = *drawing;
  smaller.view = &view;
  lie_down (&lamp, &view);
  /* The lamp's point is its face: move it so that the whole of it stands in the middle. */
  SqTurnedBox box = sq_lamp_outline (&view, &lamp);
  lamp.at.x_mm -= box.middle.x_mm - middle.x_mm;
  lamp.at.y_mm -= box.middle.y_mm - middle.y_mm;
  sq_draw_lamp (&smaller, &lamp);
}

static void
draw_upright (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  const double ring_mm = 1.15;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  sq_draw_circle_path (drawing, middle, ring_mm);
  sq_draw_stroke (drawing, SQ_PEN_35, ink);
  if (item->value > 0) {
    sq_draw_dot (drawing, middle, 0.4, ink);
    return;
  }
  double d = ring_mm * G_SQRT2 / 2.0;
  for (int side = -1; side <= 1; side += 2)
    sq_draw_line (drawing, (SqPaperPoint){middle.x_mm - d, middle.y_mm - side * d},
                  (SqPaperPoint){middle.x_mm + d, middle.y_mm + side * d}, SQ_PEN_35, ink);
}

static void
draw_grip (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  SqPanelMark mark = {
      .kind = item->value, .at = middle, .facing_deg = 90.0, .width_m = 1.0, .rise_m = 1.0};
  sq_draw_panel (drawing, &mark);
}

static void
draw_modifier (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  const double face_mm = 3.2, gel_up_mm = 0.8; /* its diamond hangs on one side */
  SqModifier modifier = {.kind = item->value,
                         .stops = 1.0,
                         .part = SQ_PART_FULL,
                         .cutoff_deg = 30.0,
                         .leaves_deg = {40.0, 40.0, 40.0, 40.0},
                         .width_m = 0.4,
                         .height_m = 0.4,
                         .depth_m = 0.2};
  g_autoptr (GPtrArray) modifiers = g_ptr_array_new ();
  g_ptr_array_add (modifiers, &modifier);
  SqFixture bare = {.modifiers = modifiers, .on = TRUE, .level = 1.0};
  double up_mm = item->value == SQ_MODIFIER_GEL ? gel_up_mm : 0.0;
  sq_draw_enter (drawing, (SqPaperPoint){middle.x_mm - 2.4, middle.y_mm - up_mm}, 0.0);
  sq_draw_line (drawing, (SqPaperPoint){0.0, -face_mm / 2.0}, (SqPaperPoint){0.0, face_mm / 2.0},
                SQ_PEN_70, sq_ink (drawing->view, SQ_INK));
  sq_draw_lamp_modifiers (drawing, &bare, face_mm, 0.0);
  sq_draw_leave (drawing);
}

static void
draw_mount (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  sq_draw_mount_glyph (drawing, (SqPaperPoint){middle.x_mm - 0.85, middle.y_mm + 0.85}, 1.7,
                       (SqMountGlyph)item->value);
}

static void
draw_role (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  const SqRoleLine *line = &sq_role_lines[item->value];
  cairo_move_to (drawing->cairo, middle.x_mm - item->symbol_mm / 2.0, middle.y_mm);
  cairo_line_to (drawing->cairo, middle.x_mm + item->symbol_mm / 2.0, middle.y_mm);
  sq_draw_stroke_dashed (drawing, SQ_PEN_70, sq_role_colour (drawing->view, item->value),
                         line->dash_mm, line->n_dashes);
}

/* Closer and closer to the lamp the light gains a stop over less way. */
static void
draw_ticks (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  const double at_mm[] = {-3.6, -1.4, 1.6, 5.4};
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  sq_draw_line (drawing, (SqPaperPoint){middle.x_mm - item->symbol_mm / 2.0, middle.y_mm},
                (SqPaperPoint){middle.x_mm + 4.4, middle.y_mm}, SQ_PEN_35,
                sq_role_colour (drawing->view, SQ_ROLE_KEY));
  for (guint k = 0; k < G_N_ELEMENTS (at_mm); k++) {
    gboolean aim = k + 1 == G_N_ELEMENTS (at_mm);
    double half_mm = aim ? 1.7 : 0.85;
    sq_draw_line (drawing, (SqPaperPoint){middle.x_mm + at_mm[k], middle.y_mm - half_mm},
                  (SqPaperPoint){middle.x_mm + at_mm[k], middle.y_mm + half_mm},
                  aim ? SQ_PEN_50 : SQ_PEN_35, ink);
  }
}

static void
draw_beams (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  const double tenth_dash[] = {1.6, 1.0};
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  double left = middle.x_mm - item->symbol_mm / 2.0, right = middle.x_mm + item->symbol_mm / 2.0;
  sq_draw_line (drawing, (SqPaperPoint){left, middle.y_mm - 0.7},
                (SqPaperPoint){right, middle.y_mm - 0.7}, SQ_PEN_18, ink);
  cairo_move_to (drawing->cairo, left, middle.y_mm + 0.7);
  cairo_line_to (drawing->cairo, right, middle.y_mm + 0.7);
  sq_draw_stroke_dashed (drawing, SQ_PEN_18, ink, tenth_dash, G_N_ELEMENTS (tenth_dash));
}

static void
draw_wedge (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  const SqPaperPoint wedge[] = {{middle.x_mm - 0.6, middle.y_mm - 0.9},
                                {middle.x_mm + 0.6, middle.y_mm},
                                {middle.x_mm - 0.6, middle.y_mm + 0.9}};
  sq_draw_polyline (drawing, wedge, G_N_ELEMENTS (wedge), TRUE);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_INK), 1.0);
}

static void
draw_off (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  const double dash_mm[] = {1.2, 0.8};
  sq_draw_box_path (drawing, sq_paper_box_round (middle, 3.7, 1.9), 1.9);
  sq_draw_stroke_dashed (drawing, SQ_PEN_25, sq_ink (drawing->view, SQ_INK), dash_mm,
                         G_N_ELEMENTS (dash_mm));
}

static void
draw_supply (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  sq_draw_supply (drawing, middle, item->value, -G_PI_2);
}

static void
draw_cable (SqDrawing *drawing, SqPaperPoint middle, const Item *item)
{
  SqColour mid = sq_ink (drawing->view, SQ_MID);
  sq_draw_line (drawing, (SqPaperPoint){middle.x_mm - item->symbol_mm / 2.0, middle.y_mm},
                (SqPaperPoint){middle.x_mm + item->symbol_mm / 2.0, middle.y_mm}, SQ_PEN_25, mid);
  for (int k = -1; k <= 1; k += 2)
    sq_draw_dot (drawing, (SqPaperPoint){middle.x_mm + k * 0.3 * item->symbol_mm, middle.y_mm},
                 0.42, mid);
}

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

/* Where all would not fit, three short names to a row instead of two. */
static guint
items_per_row (const SqFlow *flow, const GArray *items)
{
  const guint usual = 2, tight = 3;
  if (flow->squeeze >= 1.0)
    return usual;
  SqType type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
  double room_mm = sq_flow_width_mm (flow) / tight - SYMBOL_TIGHT_MM - NAME_GAP_MM - 0.5;
  for (guint k = 0; k < items->len; k++) {
    const Item *item = &g_array_index (items, Item, k);
    if (item->lamp_class != NULL || sq_text_width_mm (flow->drawing, item->name, &type) > room_mm)
      return usual;
  }
  return tight;
}

static void
draw_item (
    SqDrawing *drawing, const SqFlow *flow, const Item *item, SqPaperPoint left, double room_mm)
{
  SqType type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
  type.width_mm = room_mm - item->symbol_mm - NAME_GAP_MM;
  type.one_line = TRUE;
  item->draw (drawing, (SqPaperPoint){left.x_mm + item->symbol_mm / 2.0, left.y_mm}, item);
  sq_draw_text (
      drawing,
      (SqPaperPoint){left.x_mm + item->symbol_mm + NAME_GAP_MM, left.y_mm + type.cap_mm / 2.0},
      item->name, &type);
}

/* Some to a row, as high as the highest. */
static void
run_items (SqFlow *flow, const GArray *items)
{
  SqView view = *flow->drawing->view;
  view.mm_per_m = MM_PER_M;
  view.has_overlay = FALSE;
  SqDrawing drawing = *flow->drawing;
  drawing.view = &view;

  guint per_row = items_per_row (flow, items);
  for (guint k = 0; k < items->len; k += per_row) {
    guint n = MIN (items->len - k, per_row);
    double height_mm = 0.0, room_mm = sq_flow_width_mm (flow) / per_row;
    for (guint i = 0; i < n; i++) {
      const Item *item = &g_array_index (items, Item, k + i);
      height_mm = MAX (height_mm, MAX (item->height_mm * flow->squeeze, item->least_mm));
    }
    SqPaperPoint at;
    if (!sq_flow_take (flow, height_mm, &at))
      continue;
    for (guint i = 0; i < n; i++) {
      Item item = g_array_index (items, Item, k + i);
      item.symbol_mm = per_row > 2 ? SYMBOL_TIGHT_MM : SYMBOL_MM;
      SqPaperPoint left = {at.x_mm + i * room_mm, at.y_mm + height_mm / 2.0};
      draw_item (&drawing, flow, &item, left, room_mm);
    }
  }
}

/* Draws what is gathered and empties it. */
static void
run_group (SqFlow *flow, GArray *items)
{
  if (items->len > 0) {
    run_items (flow, items);
    sq_flow_gap (flow, 1.0);
  }
  g_array_set_size (items, 0);
}

static void
add (GArray *items,
     void (*draw) (SqDrawing *, SqPaperPoint, const Item *),
     const char *name,
     double height_mm,
     int value)
{
  Item item = {.draw = draw, .name = name, .height_mm = height_mm, .value = value};
  g_array_append_val (items, item);
}

static void
lamps_group (SqFlow *flow, GArray *items, const SqSideColumn *column)
{
  const SqPlanUse *use = &column->report->use;

  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  gboolean practical = FALSE;
  for (guint k = 0; k < use->lamps->len; k++) {
    const SqClass *lamp_class =
        sq_scene_class (column->scene, SQ_AT (SqFixture, use->lamps, k)->class_id);
    SqView view = {.mm_per_m = MM_PER_M};
    SqLamp lamp = {.lamp_class = lamp_class};
    double tall_mm = lie_down (&lamp, &view);
    /* A bulb is drawn as a practical, whatever burns in it. */
    if (lamp_class->optics == SQ_OPTICS_BULB && lamp_class->source != SQ_SOURCE_FLAME) {
      if (practical)
        continue;
      practical = TRUE;
      g_ptr_array_add (names, g_strdup (_ ("practical")));
    } else {
      g_ptr_array_add (names, lamp_name (lamp_class));
    }
    Item item = {.draw = draw_lamp,
                 .name = g_ptr_array_index (names, names->len - 1),
                 .height_mm = MAX (LAMP_ROW_MM, tall_mm + 1.6),
                 .least_mm = tall_mm + 0.8,
                 .lamp_class = lamp_class};
    g_array_append_val (items, item);
  }
  if (use->points_down)
    add (items, draw_upright, _ ("points down"), LAMP_ROW_MM, -1);
  if (use->points_up)
    add (items, draw_upright, _ ("points up"), LAMP_ROW_MM, 1);
  run_group (flow, items);
}

static void
grip_group (SqFlow *flow, GArray *items, const SqPlanUse *use)
{
  static const char *const panels[] = {N_ ("flag"), N_ ("net"), N_ ("frame"), N_ ("bounce")};
  static const char *const modifiers[] = {
      [SQ_MODIFIER_SCRIM] = N_ ("scrim"),         [SQ_MODIFIER_GEL] = N_ ("gel"),
      [SQ_MODIFIER_DIFFUSION] = N_ ("diffusion"), [SQ_MODIFIER_SOFTBOX] = N_ ("soft box"),
      [SQ_MODIFIER_EGG_CRATE] = N_ ("egg crate"), [SQ_MODIFIER_SNOOT] = N_ ("snoot"),
      [SQ_MODIFIER_DOORS] = N_ ("doors"),
  };
  for (guint k = 0; k < G_N_ELEMENTS (modifiers); k++)
    /* A soft box is part of the lamp's own outline. */
    if (use->modifiers & 1u << k && k != SQ_MODIFIER_SOFTBOX)
      add (items, draw_modifier, _ (modifiers[k]), LAMP_ROW_MM, (int)k);
  run_group (flow, items);
  for (guint k = 0; k < G_N_ELEMENTS (panels); k++)
    if (use->panels & 1u << k)
      add (items, draw_grip, _ (panels[k]), GRIP_ROW_MM, (int)k);
  run_group (flow, items);
}

/* The tag says the mount by a glyph: all on one line. */
static void
mounts_row (SqFlow *flow, const SqPlanUse *use)
{
  SqPaperPoint at;
  if (use->mounts == 0 || !sq_flow_take (flow, LINE_ROW_MM, &at))
    return;
  SqType type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
  double x_mm = at.x_mm, y_mm = at.y_mm + LINE_ROW_MM / 2.0;
  for (int k = 0; k < SQ_MOUNT_GLYPHS; k++) {
    if (!(use->mounts & 1u << k))
      continue;
    const Item item = {.value = k};
    const char *word = _ (sq_mount_glyph_word ((SqMountGlyph)k));
    draw_mount (flow->drawing, (SqPaperPoint){x_mm + 1.0, y_mm}, &item);
    sq_draw_text (flow->drawing, (SqPaperPoint){x_mm + 2.8, y_mm + type.cap_mm / 2.0}, word, &type);
    x_mm += 2.8 + sq_text_width_mm (flow->drawing, word, &type) + 3.6;
  }
}

static void
lines_group (SqFlow *flow, GArray *items, const SqPlanUse *use)
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
      add (items, draw_role, _ (roles[k]), LINE_ROW_MM, k);
  run_group (flow, items);
  if (use->ticks)
    add (items, draw_ticks, _ ("ticks: a stop each"), LINE_ROW_MM, 0);
  if (use->beams)
    add (items, draw_beams, _ ("half, tenth of peak"), LINE_ROW_MM, 0);
  if (use->changed)
    add (items, draw_wedge, _ ("changed by look"), LINE_ROW_MM, 0);
  if (use->off)
    add (items, draw_off, _ ("off"), LINE_ROW_MM, 0);
  run_group (flow, items);
}

static void
power_group (SqFlow *flow, GArray *items, const SqPlanUse *use)
{
  static const char *const supplies[] = {
      [SQ_SUPPLY_HOUSE] = N_ ("wall outlet"),
      [SQ_SUPPLY_DISTRIBUTION] = N_ ("distribution"),
      [SQ_SUPPLY_GENERATOR] = N_ ("generator"),
  };
  for (guint k = 0; k < G_N_ELEMENTS (supplies); k++)
    if (use->supplies & 1u << k)
      add (items, draw_supply, _ (supplies[k]), LAMP_ROW_MM, (int)k);
  if (use->cables)
    add (items, draw_cable, _ ("cable"), GRIP_ROW_MM, 0);
  run_group (flow, items);
}

void
sq_legend_block (SqFlow *flow, const SqSideColumn *column)
{
  const SqPlanUse *use = &column->report->use;
  if (use->lamps->len == 0 && use->panels == 0 && use->supplies == 0 && !use->cables)
    return;
  sq_flow_head (flow, _ ("Legend"), LAMP_ROW_MM);
  g_autoptr (GArray) items = g_array_new (FALSE, FALSE, sizeof (Item));
  lamps_group (flow, items, column);
  grip_group (flow, items, use);
  mounts_row (flow, use);
  lines_group (flow, items, use);
  power_group (flow, items, use);
}
