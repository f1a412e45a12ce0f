/* plot-frame.c: the border with its grid references, and the foot with scale bar, north and sun */
#include "paper/compass.h"
#include "paper/plot-private.h"
#include "paper/scale-bar.h"

#include <glib/gi18n-lib.h>

#define REFERENCE_STRIP_MM 5.0
#define REFERENCE_FIELD_MM 50.0
#define CENTRING_IN_MM 5.0

/* A, B, … Z, AA … ; ISO 5457 leaves out I and O. */
static char *
letter_text (int n)
{
  static const char letters[] = "ABCDEFGHJKLMNPQRSTUVWXYZ";
  const int count = (int)sizeof letters - 1;
  char text[3] = { letters[n % count], '\0', '\0' };
  if (n >= count) {
    text[0] = letters[n / count - 1];
    text[1] = letters[n % count];
  }
  return g_strdup (text);
}

/* Fields run from the middle of the sheet outwards; the outermost take what is left. */
static void
references_along (const SqPlot *plot, SqDrawing *drawing, SqPaperBox outer, gboolean across)
{
  SqColour mid = sq_ink (drawing->view, SQ_MID);
  double sheet_mm = across ? plot->sheet->width_mm : plot->sheet->height_mm;
  double start = across ? outer.x_mm : outer.y_mm;
  double end = start + (across ? outer.width_mm : outer.height_mm);
  double near = across ? outer.y_mm : outer.x_mm;
  double far = near + (across ? outer.height_mm : outer.width_mm);
  int half = MAX ((int)round (sheet_mm / 2.0 / REFERENCE_FIELD_MM), 1), n = 2 * half;
  SqType type = { .cap_mm = SQ_TYPE_SMALL, .weight = 400, .align = SQ_ALIGN_CENTRE, .colour = mid };
  for (int k = 0; k < n; k++) {
    double from = k == 0 ? start : sheet_mm / 2.0 + (k - half) * REFERENCE_FIELD_MM;
    double to = k + 1 == n ? end : sheet_mm / 2.0 + (k + 1 - half) * REFERENCE_FIELD_MM;
    g_autofree char *text = across ? g_strdup_printf ("%d", k + 1) : letter_text (k);
    for (int side = 0; side < 2; side++) {
      double edge = side == 0 ? near : far - REFERENCE_STRIP_MM;
      double along = (from + to) / 2.0, middle = edge + REFERENCE_STRIP_MM / 2.0;
      SqPaperPoint at = across ? (SqPaperPoint){ along, middle } : (SqPaperPoint){ middle, along };
      at.y_mm += type.cap_mm / 2.0;
      sq_draw_text (drawing, at, text, &type);
      if (k > 0)
        sq_draw_line (drawing, across ? (SqPaperPoint){ from, edge } : (SqPaperPoint){ edge, from },
                      across ? (SqPaperPoint){ from, edge + REFERENCE_STRIP_MM }
                             : (SqPaperPoint){ edge + REFERENCE_STRIP_MM, from },
                      SQ_PEN_13, mid);
    }
  }
}

/* At the ends of the sheet's two axes, for filming and folding. They reach into the drawing, but
 * not into words beside it. */
static void
centring_marks (const SqPlot *plot, SqDrawing *drawing, SqPaperBox outer, int page)
{
  const double by_words_mm = SQ_COLUMN_PADDING_MM - 1.0;
  double in_mm = page == 0 ? CENTRING_IN_MM : by_words_mm;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  SqPaperBox frame = plot->layout.frame;
  double x = plot->sheet->width_mm / 2.0, y = plot->sheet->height_mm / 2.0;
  double right = frame.x_mm + frame.width_mm, bottom = frame.y_mm + frame.height_mm;
  double outer_right = outer.x_mm + outer.width_mm, outer_bottom = outer.y_mm + outer.height_mm;
  const SqPaperPoint marks[][2] = {
    { { x, outer.y_mm }, { x, frame.y_mm + in_mm } },
    { { x, outer_bottom }, { x, bottom - in_mm } },
    { { outer.x_mm, y }, { frame.x_mm + in_mm, y } },
    { { outer_right, y }, { right - by_words_mm, y } },
  };
  for (guint k = 0; k < G_N_ELEMENTS (marks); k++)
    sq_draw_line (drawing, marks[k][0], marks[k][1], SQ_PEN_70, ink);
}

void
sq_plot_draw_frame (const SqPlot *plot, SqDrawing *drawing, int page)
{
  SqPaperBox frame = plot->layout.frame;
  if (plot->layout.references) {
    SqPaperBox outer = sq_paper_box_grown (frame, REFERENCE_STRIP_MM);
    sq_draw_box_path (drawing, outer, 0.0);
    sq_draw_stroke (drawing, SQ_PEN_13, sq_ink (drawing->view, SQ_MID));
    references_along (plot, drawing, outer, TRUE);
    references_along (plot, drawing, outer, FALSE);
    centring_marks (plot, drawing, outer, page);
  }
  sq_draw_box_path (drawing, frame, 0.0);
  sq_draw_stroke (drawing, SQ_PEN_70, sq_ink (drawing->view, SQ_INK));
}

/* The sun as the meter found it; NULL where it does not shine or is not counted. */
static const SqReadingRow *
sun_row (const SqReadings *readings)
{
  for (guint k = 0; k < readings->marks->len; k++) {
    const SqMarkReading *mark = g_ptr_array_index (readings->marks, k);
    for (guint n = 0; n < mark->rows->len; n++) {
      const SqReadingRow *row = &g_array_index (mark->rows, SqReadingRow, n);
      if (g_strcmp0 (row->id, "sun") == 0)
        return row;
    }
  }
  return NULL;
}

static void
draw_sun (const SqPlot *plot, SqDrawing *drawing, SqPaperPoint middle)
{
  const SqReadingRow *sun = sun_row (plot->readings);
  if (sun == NULL || plot->scene->daylight == NULL)
    return;
  sq_draw_sun (drawing, middle, sun->azimuth_deg);
  double bearing_deg = plot->scene->north_deg - sun->azimuth_deg;
  bearing_deg -= 360.0 * floor (bearing_deg / 360.0);
  /* Translators: time of day, the sun's azimuth from true north and its elevation, in degrees */
  g_autofree char *words =
    g_strdup_printf (_ ("%s   az %.0f°   el %.0f°"), plot->scene->daylight->time,
                     round (bearing_deg), round (sun->elevation_deg));
  SqType type = { .cap_mm = SQ_TYPE_SMALL,
                  .weight = 500,
                  .align = SQ_ALIGN_CENTRE,
                  .colour = sq_ink (drawing->view, SQ_INK) };
  sq_draw_text (drawing, (SqPaperPoint){ middle.x_mm, middle.y_mm + 12.6 }, words, &type);
}

static const char *
heights_text (SqUnits units)
{
  return units == SQ_IMPERIAL ? _ ("Heights in feet and inches to the lens centre, from the floor.")
                              : _ ("Heights in metres to the lens centre, from the floor.");
}

/* Without side columns the foot is a low band: bar, words, north in one row. */
static void
draw_low_foot (const SqPlot *plot, SqDrawing *drawing, const SqType *type)
{
  SqPaperBox foot = plot->layout.foot;
  SqScaleBar bar = sq_scale_bar (plot->denominator, plot->units, 0.36 * foot.width_mm);
  double bar_mm = bar.parts * bar.part_mm, x_mm = foot.x_mm + 6.0;
  g_autofree char *check = sq_scale_bar_text (&bar, plot->denominator, plot->units);
  sq_draw_scale_bar (drawing, (SqPaperPoint){ x_mm, foot.y_mm + 5.6 }, &bar, plot->units);
  SqType words = *type;
  words.width_mm = foot.width_mm - bar_mm - 46.0;
  words.one_line = TRUE;
  x_mm += bar_mm + 12.0;
  g_autofree char *rest = g_strdup_printf ("%s %s", heights_text (plot->units),
                                           _ ("Cautions, figures and legend: sheet 2."));
  sq_draw_text (drawing, (SqPaperPoint){ x_mm, foot.y_mm + 5.2 }, check, &words);
  sq_draw_text (drawing, (SqPaperPoint){ x_mm, foot.y_mm + 8.5 }, rest, &words);
  sq_draw_compass (
    drawing,
    (SqPaperPoint){ foot.x_mm + foot.width_mm - 12.0, foot.y_mm + foot.height_mm / 2.0 + 0.6 },
    SQ_COMPASS_SMALL_MM, plot->scene->north_deg);
}

void
sq_plot_draw_foot (const SqPlot *plot, SqDrawing *drawing)
{
  const double compass_from_right_mm = 66.0, sun_from_right_mm = 27.0, bar_in_mm = 10.0;
  SqPaperBox foot = plot->layout.foot;
  SqType type = { .cap_mm = SQ_TYPE_SMALL,
                  .weight = 400,
                  .colour = sq_ink (drawing->view, SQ_MID) };
  if (plot->sheet->columns == 0) {
    draw_low_foot (plot, drawing, &type);
    return;
  }
  sq_draw_box_path (drawing, foot, 0.0);
  sq_draw_stroke (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK));

  double most_mm = foot.width_mm - compass_from_right_mm - bar_in_mm - 24.0;
  SqScaleBar bar = sq_scale_bar (plot->denominator, plot->units, MIN (most_mm, 150.0));
  g_autofree char *check = sq_scale_bar_text (&bar, plot->denominator, plot->units);
  SqPaperPoint at = { foot.x_mm + bar_in_mm, foot.y_mm + 13.0 };
  sq_draw_scale_bar (drawing, at, &bar, plot->units);
  sq_draw_text (drawing, (SqPaperPoint){ at.x_mm, foot.y_mm + 23.5 }, check, &type);
  sq_draw_text (drawing, (SqPaperPoint){ at.x_mm, foot.y_mm + 27.0 }, heights_text (plot->units),
                &type);

  double right_mm = foot.x_mm + foot.width_mm;
  sq_draw_compass (
    drawing,
    (SqPaperPoint){ right_mm - compass_from_right_mm, foot.y_mm + foot.height_mm / 2.0 + 1.0 },
    SQ_COMPASS_RADIUS_MM, plot->scene->north_deg);
  draw_sun (plot, drawing,
            (SqPaperPoint){ right_mm - sun_from_right_mm, foot.y_mm + foot.height_mm / 2.0 - 1.0 });
}
