/* plot-foot.c: the foot of a page to scale: scale bar, key of a plan on several sheets, north, sun
 */
#include "light/sun.h"
#include "paper/compass.h"
#include "paper/plan-pages.h"
#include "paper/scale-bar.h"

#include <glib/gi18n-lib.h>

#define MOST_BAR_MM 150.0
#define LEAST_BAR_MM 50.0
#define BAR_END_MM 14.0 /* right of the bar, for half its last figure and the unit */
#define COMPASS_ROOM_MM 30.0
#define SUN_ROOM_MM 42.0
#define KEY_HEIGHT_MM 26.0
#define KEY_ROOM_MM 10.0 /* beside the key itself */

/* What there is to show besides the bar. */
typedef struct {
  const SqPlot *plot;
  const SqPlotPage *page;
  const SqPlanPages *tiled; /* (nullable): the page is one of several of a plan */
  gboolean north, sun;
  double sun_toward_deg, sun_bearing_deg, sun_elevation_deg;
} Foot;

static Foot
foot_of (const SqPlot *plot, const SqPlotPage *page, SqFootParts parts)
{
  Foot foot = { .plot = plot, .page = page, .north = (parts & SQ_FOOT_NORTH) != 0 };
  const SqDaylight *day = plot->scene->daylight;
  foot.sun = foot.north && day != NULL && day->on &&
             sq_sun_position (day, &foot.sun_bearing_deg, &foot.sun_elevation_deg);
  foot.sun_toward_deg = plot->scene->north_deg - foot.sun_bearing_deg;
  if (page->kind == SQ_PAGE_PLAN && sq_plan_is_tiled (page->data))
    foot.tiled = page->data;
  return foot;
}

static SqType
foot_type (const Foot *foot)
{
  return (
    SqType){ .cap_mm = SQ_TYPE_SMALL, .weight = 400, .colour = sq_ink (&foot->page->view, SQ_MID) };
}

/* `06:12   az 78°   el 4°`; below the horizon it lights nothing. */
static char *
sun_text (const Foot *foot)
{
  const char *time = foot->plot->scene->daylight->time;
  if (foot->sun_elevation_deg < 0.0)
    /* Translators: %s is a time of day */
    return g_strdup_printf (_ ("%s   sun down"), time);
  /* Translators: time of day, the sun's azimuth from true north and its elevation, in degrees */
  return g_strdup_printf (_ ("%s   az %.0f°   el %.0f°"), time,
                          fmod (round (foot->sun_bearing_deg), 360.0),
                          round (foot->sun_elevation_deg));
}

static void
draw_sun (const Foot *foot, SqDrawing *drawing, SqPaperPoint middle, double reach_mm)
{
  if (foot->sun_elevation_deg >= 0.0)
    sq_draw_sun (drawing, middle, reach_mm, foot->sun_toward_deg);
}

static const char *
heights_text (SqUnits units)
{
  return units == SQ_IMPERIAL ? _ ("Heights in feet and inches to the lens centre, from the floor.")
                              : _ ("Heights in metres to the lens centre, from the floor.");
}

/* Where words do not stand beside the drawing itself, it says where they are. */
static char *
words_text (const Foot *foot)
{
  const SqPlanPages *plan = foot->page->data;
  if (foot->page->kind != SQ_PAGE_PLAN || foot->page->layout.n_columns > 0)
    return g_strdup (heights_text (foot->plot->units));
  const SqPlotPage *last = sq_plot_page (foot->plot, (int)(plan->first + plan->n_sheets) - 1);
  g_autofree char *where =
    g_strdup_printf (_ ("Cautions, figures and legend: sheet %d."), last->number + 1);
  return g_strdup_printf ("%s %s", heights_text (foot->plot->units), where);
}

static SqScaleBar
bar_within (const Foot *foot, double room_mm)
{
  return sq_scale_bar (foot->page->denominator, foot->plot->units,
                       CLAMP (room_mm - BAR_END_MM, LEAST_BAR_MM, MOST_BAR_MM));
}

/* The bar with two or three lines of words under it, within @box. */
static void
draw_bar_block (const Foot *foot, SqDrawing *drawing, SqPaperBox box)
{
  const double in_mm = 10.0, down_mm = 12.0, words_down_mm = 10.0, leading_mm = 1.2;
  SqScaleBar bar = bar_within (foot, box.width_mm - in_mm);
  g_autofree char *check = sq_scale_bar_text (&bar, foot->page->denominator, foot->plot->units);
  g_autofree char *words = words_text (foot);
  SqPaperPoint at = { box.x_mm + in_mm, box.y_mm + down_mm };
  SqType type = foot_type (foot);
  type.width_mm = box.width_mm - in_mm;
  sq_draw_scale_bar (drawing, at, &bar, foot->plot->units);
  at.y_mm += words_down_mm;
  at.y_mm += sq_draw_text (drawing, at, check, &type) + leading_mm + SQ_TYPE_SMALL;
  sq_draw_text (drawing, at, words, &type);
}

/* Key, north and sun as large as they are meant to be, each in the middle of its room. */
static void
draw_bearings (const Foot *foot, SqDrawing *drawing, SqPaperBox box, double key_room_mm)
{
  const double compass_down_mm = 1.0, sun_up_mm = 2.0, sun_text_mm = 4.6;
  const double reach_mm = 13.0;
  double y_mm = box.y_mm + box.height_mm / 2.0, x_mm = box.x_mm;
  if (foot->tiled != NULL) {
    double width_mm =
      MIN (sq_plan_key_width_mm (foot->tiled, KEY_HEIGHT_MM), key_room_mm - KEY_ROOM_MM / 2.0);
    SqPaperBox key = { x_mm + (key_room_mm - width_mm) / 2.0, y_mm - KEY_HEIGHT_MM / 2.0, width_mm,
                       KEY_HEIGHT_MM };
    sq_plan_draw_key (foot->plot, foot->tiled, drawing, foot->page, key);
    x_mm += key_room_mm;
  }
  if (foot->north) {
    sq_draw_compass (drawing,
                     (SqPaperPoint){ x_mm + COMPASS_ROOM_MM / 2.0, y_mm + compass_down_mm },
                     SQ_COMPASS_RADIUS_MM, foot->plot->scene->north_deg);
    x_mm += COMPASS_ROOM_MM;
  }
  if (foot->sun) {
    SqPaperPoint middle = { x_mm + SUN_ROOM_MM / 2.0, y_mm - sun_up_mm };
    g_autofree char *words = sun_text (foot);
    SqType type = foot_type (foot);
    type.weight = 500;
    type.align = SQ_ALIGN_CENTRE;
    type.colour = sq_ink (drawing->view, SQ_INK);
    draw_sun (foot, drawing, middle, reach_mm);
    sq_draw_text (drawing, (SqPaperPoint){ middle.x_mm, box.y_mm + box.height_mm - sun_text_mm },
                  words, &type);
  }
}

static double
key_room_mm (const Foot *foot)
{
  return foot->tiled != NULL ? sq_plan_key_width_mm (foot->tiled, KEY_HEIGHT_MM) + KEY_ROOM_MM
                             : 0.0;
}

static double
bearings_mm (const Foot *foot)
{
  return key_room_mm (foot) + (foot->north ? COMPASS_ROOM_MM : 0.0) +
         (foot->sun ? SUN_ROOM_MM : 0.0);
}

static void
outline (SqDrawing *drawing, SqPaperBox box)
{
  sq_draw_box_path (drawing, box, 0.0);
  sq_draw_stroke (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK));
}

static void
draw_wide (const Foot *foot, SqDrawing *drawing)
{
  SqPaperBox box = foot->page->layout.foot, right = box;
  double wide_mm = bearings_mm (foot);
  outline (drawing, box);
  box.width_mm -= wide_mm;
  right.x_mm += box.width_mm;
  right.width_mm = wide_mm;
  draw_bar_block (foot, drawing, box);
  draw_bearings (foot, drawing, right, key_room_mm (foot));
}

/* The bar; words right of it, up to @right_mm, or under it where the foot is higher than low. */
static void
draw_low_bar (const Foot *foot, SqDrawing *drawing, SqPaperBox box, double right_mm)
{
  const double in_mm = 6.0, bar_share = 0.36, bar_down_mm = 5.6, after_mm = 12.0;
  const double beside_down_mm = 5.0, under_down_mm = 12.6, leading_mm = 3.4;
  SqScaleBar bar = bar_within (foot, bar_share * box.width_mm);
  g_autofree char *check = sq_scale_bar_text (&bar, foot->page->denominator, foot->plot->units);
  g_autofree char *rest = words_text (foot);
  gboolean under = box.height_mm > SQ_LOW_FOOT_HEIGHT_MM;
  SqPaperPoint at = { box.x_mm + in_mm, box.y_mm + bar_down_mm };
  SqType type = foot_type (foot);
  sq_draw_scale_bar (drawing, at, &bar, foot->plot->units);
  at.y_mm = box.y_mm + (under ? under_down_mm : beside_down_mm);
  at.x_mm += under ? 0.0 : bar.parts * bar.part_mm + after_mm;
  type.width_mm = right_mm - at.x_mm;
  type.one_line = TRUE;
  sq_draw_text (drawing, at, check, &type);
  at.y_mm += leading_mm;
  sq_draw_text (drawing, at, rest, &type);
}

/* Bar, words, then small: key, north, sun. */
static void
draw_low (const Foot *foot, SqDrawing *drawing)
{
  const double compass_room_mm = 15.0, sun_room_mm = 13.0, air_mm = 1.2, most_key_mm = 14.0;
  SqPaperBox box = foot->page->layout.foot;
  double right_mm = box.x_mm + box.width_mm - 3.0, y_mm = box.y_mm + box.height_mm / 2.0;
  SqType type = foot_type (foot);
  outline (drawing, box);
  if (foot->sun) {
    g_autofree char *words = sun_text (foot);
    double text_mm = sq_text_width_mm (drawing, words, &type);
    sq_draw_text (drawing, (SqPaperPoint){ right_mm - text_mm, y_mm + SQ_TYPE_SMALL / 2.0 }, words,
                  &type);
    right_mm -= text_mm + 2.0;
    if (foot->sun_elevation_deg >= 0.0) {
      draw_sun (foot, drawing, (SqPaperPoint){ right_mm - sun_room_mm / 2.0, y_mm }, 0.0);
      right_mm -= sun_room_mm;
    }
  }
  if (foot->north) {
    sq_draw_compass (drawing, (SqPaperPoint){ right_mm - compass_room_mm / 2.0, y_mm },
                     SQ_COMPASS_SMALL_MM, foot->plot->scene->north_deg);
    right_mm -= compass_room_mm;
  }
  if (foot->tiled != NULL) {
    double high_mm = MIN (box.height_mm - 2.0 * air_mm, most_key_mm);
    double wide_mm = sq_plan_key_width_mm (foot->tiled, high_mm);
    SqPaperBox key = { right_mm - wide_mm, y_mm - high_mm / 2.0, wide_mm, high_mm };
    sq_plan_draw_key (foot->plot, foot->tiled, drawing, foot->page, key);
    right_mm -= wide_mm + 4.0;
  }
  draw_low_bar (foot, drawing, box, right_mm);
}

/* The bar in its row; what there is room for beside the title, the rest small beside the bar. */
static void
draw_split (const Foot *foot, SqDrawing *drawing)
{
  SqPaperBox box = foot->page->layout.bearings;
  Foot large = *foot, small = *foot;
  large.sun = foot->sun && bearings_mm (foot) <= box.width_mm;
  small.sun = foot->sun && !large.sun;
  small.north = FALSE;
  small.tiled = NULL;
  draw_low (&small, drawing);
  outline (drawing, box);
  double key_mm = MIN (key_room_mm (&large), box.width_mm - COMPASS_ROOM_MM);
  double spare_mm = box.width_mm - bearings_mm (&large) + key_room_mm (&large) - key_mm;
  box.x_mm += spare_mm / 2.0;
  draw_bearings (&large, drawing, box, key_mm);
}

void
sq_page_draw_foot (const SqPlot *plot,
                   const SqPlotPage *page,
                   SqDrawing *drawing,
                   SqFootParts parts)
{
  Foot foot = foot_of (plot, page, parts);
  if (page->layout.foot_kind == SQ_FOOT_WIDE)
    draw_wide (&foot, drawing);
  else if (page->layout.foot_kind == SQ_FOOT_LOW)
    draw_low (&foot, drawing);
  else if (page->layout.foot_kind == SQ_FOOT_SPLIT)
    draw_split (&foot, drawing);
}
