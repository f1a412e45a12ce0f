/* overlay-figures.c: where on a contour its figure stands
 *
 * Along the line, upright, where the line is nearly straight, clear of all other words. */
#include "draw/overlay-private.h"
#include "draw/ramp.h"

#define PATCH_HEIGHT_MM 2.7
#define PATCH_SIDE_MM 0.7
#define PATCH_CORNER_MM 0.8
#define APART_MM 13.0      /* between two figures */
#define LEAST_LINE_MM 24.0 /* a shorter line has none */
#define ONE_EACH_MM 150.0  /* a long line has several */
#define TRY_EACH_MM 2.0
#define MOST_BEND_RAD 0.7 /* of the line under the figure */
#define LINE_AIR_MM 0.7   /* from other lines */
#define COST_CROSSED 1.0  /* a line across it is as bad as so much of a bend */

typedef struct {
  SqPaperPoint at;
  double turn_rad;
} Spot;

typedef struct {
  SqDrawing *drawing;
  const SqLightOverlay *overlay;
  const SqKeepClear *keep_clear; /* (nullable) */
  gboolean stops;
  GArray *figures; /* SqOverlayFigure */
} Placing;

/* A line on paper, measured along. */
typedef struct {
  GArray *points;   /* SqPaperPoint */
  GArray *along_mm; /* double, of each point */
  gboolean closed;
  double length_mm;
} PaperLine;

static void
paper_line_init (PaperLine *line, const SqView *view, const SqContour *contour)
{
  line->points = g_array_new (FALSE, FALSE, sizeof (SqPaperPoint));
  line->along_mm = g_array_new (FALSE, FALSE, sizeof (double));
  line->closed = contour->closed;
  line->length_mm = 0.0;
  guint n = contour->points->len;
  for (guint k = 0; k < n + (contour->closed ? 1 : 0); k++) {
    SqPaperPoint p = sq_view_paper (view, g_array_index (contour->points, SqPlace, k % n));
    if (k > 0) {
      SqPaperPoint last = g_array_index (line->points, SqPaperPoint, k - 1);
      line->length_mm += hypot (p.x_mm - last.x_mm, p.y_mm - last.y_mm);
    }
    g_array_append_val (line->points, p);
    g_array_append_val (line->along_mm, line->length_mm);
  }
}

static void
paper_line_clear (PaperLine *line)
{
  g_array_unref (line->points);
  g_array_unref (line->along_mm);
}

/* The point @along_mm from the start, by bisection. */
static SqPaperPoint
paper_line_at (const PaperLine *line, double along_mm)
{
  const double *along = (const double *)(gpointer)line->along_mm->data;
  const SqPaperPoint *points = (const SqPaperPoint *)(gpointer)line->points->data;
  if (line->closed)
    along_mm -= line->length_mm * floor (along_mm / line->length_mm);
  guint low = 0, high = line->points->len - 1;
  while (high - low > 1) {
    guint middle = (low + high) / 2;
    if (along[middle] <= along_mm)
      low = middle;
    else
      high = middle;
  }
  double span = along[high] - along[low];
  double t = span > 0.0 ? CLAMP ((along_mm - along[low]) / span, 0.0, 1.0) : 0.0;
  return (SqPaperPoint){ points[low].x_mm + t * (points[high].x_mm - points[low].x_mm),
                         points[low].y_mm + t * (points[high].y_mm - points[low].y_mm) };
}

static double
direction_rad (SqPaperPoint a, SqPaperPoint b)
{
  return atan2 (b.y_mm - a.y_mm, b.x_mm - a.x_mm);
}

/* How far the line turns over @width_mm about @along_mm: 0 for a straight one. */
static double
bend_rad (const PaperLine *line, double along_mm, double width_mm)
{
  SqPaperPoint a = paper_line_at (line, along_mm - width_mm / 2.0);
  SqPaperPoint m = paper_line_at (line, along_mm);
  SqPaperPoint b = paper_line_at (line, along_mm + width_mm / 2.0);
  return fabs (remainder (direction_rad (m, b) - direction_rad (a, m), 2.0 * G_PI));
}

/* A patch has light under it from end to end. */
static gboolean
is_lit (const Placing *placing, SqPaperPoint at)
{
  const SqGrid *grid = placing->overlay->grid;
  SqPlace place = sq_view_place (placing->drawing->view, at);
  double i = round ((place.x_m - grid->first.x_m) / grid->step_m);
  double j = round ((place.y_m - grid->first.y_m) / grid->step_m);
  if (!(i >= 0 && j >= 0 && i < grid->columns && j < grid->rows))
    return FALSE;
  return !isnan (*sq_grid_at (grid, (int)i, (int)j));
}

/* Close enough to find a thin wall across it. */
static gboolean
is_all_lit (const Placing *placing, Spot spot, double width_mm)
{
  const double step_mm = 0.9;
  double c = cos (spot.turn_rad), s = sin (spot.turn_rad);
  int across = (int)ceil (width_mm / step_mm), up = (int)ceil (PATCH_HEIGHT_MM / step_mm);
  for (int i = 0; i <= across; i++)
    for (int j = 0; j <= up; j++) {
      double u = ((double)i / across - 0.5) * width_mm,
             v = ((double)j / up - 0.5) * PATCH_HEIGHT_MM;
      SqPaperPoint at = { spot.at.x_mm + u * c - v * s, spot.at.y_mm + u * s + v * c };
      if (!is_lit (placing, at))
        return FALSE;
    }
  return TRUE;
}

static gboolean
is_free (const Placing *placing, Spot spot, double width_mm)
{
  const SqOverlayFigure figure = { spot.at, spot.turn_rad, width_mm, 0 };
  SqPaperBox box = sq_overlay_figure_box (&figure);
  if (!is_all_lit (placing, spot, width_mm) ||
      !sq_paper_box_within (box, placing->drawing->view->clip))
    return FALSE;
  for (guint k = 0; placing->keep_clear != NULL && k < placing->keep_clear->n_boxes; k++)
    if (sq_paper_boxes_overlap (box, placing->keep_clear->boxes[k]))
      return FALSE;
  for (guint k = 0; k < placing->figures->len; k++) {
    SqPaperPoint other = g_array_index (placing->figures, SqOverlayFigure, k).at;
    if (sq_paper_distance_mm (other, spot.at) < APART_MM)
      return FALSE;
  }
  return TRUE;
}

/* @point as it lies in the frame of a figure that stands at @spot. */
static SqPaperPoint
seen_from (Spot spot, SqPaperPoint point)
{
  double dx = point.x_mm - spot.at.x_mm, dy = point.y_mm - spot.at.y_mm;
  double c = cos (spot.turn_rad), s = sin (spot.turn_rad);
  return (SqPaperPoint){ dx * c + dy * s, -dx * s + dy * c };
}

static guint
lines_crossed (const Placing *placing, Spot spot, double width_mm)
{
  SqPaperBox box = sq_paper_box_round ((SqPaperPoint){ 0, 0 }, width_mm / 2 + LINE_AIR_MM,
                                       PATCH_HEIGHT_MM / 2 + LINE_AIR_MM);
  guint crossed = 0;
  for (guint k = 0; placing->keep_clear != NULL && k < placing->keep_clear->n_lines; k++) {
    SqPaperLine line = placing->keep_clear->lines[k];
    crossed +=
      sq_paper_clip_line (box, seen_from (spot, line.from), seen_from (spot, line.to), NULL, NULL);
  }
  return crossed;
}

/* The best free spot within [from, to] along the line: not crossed, straight, central. */
static gboolean
find_spot (const Placing *placing,
           const PaperLine *line,
           double from_mm,
           double to_mm,
           double width_mm,
           Spot *best)
{
  const double off_centre_weight = 0.3;
  double least = G_MAXDOUBLE, middle = (from_mm + to_mm) / 2.0;
  for (double along = from_mm; along <= to_mm; along += TRY_EACH_MM) {
    double bend = bend_rad (line, along, width_mm);
    double cost = bend + off_centre_weight * fabs (along - middle) / (to_mm - from_mm);
    if (bend > MOST_BEND_RAD || cost >= least)
      continue;
    Spot spot = { paper_line_at (line, along), 0.0 };
    SqPaperPoint a = paper_line_at (line, along - width_mm / 2.0);
    SqPaperPoint b = paper_line_at (line, along + width_mm / 2.0);
    spot.turn_rad = direction_rad (a, b);
    if (spot.turn_rad > G_PI_2 || spot.turn_rad <= -G_PI_2)
      spot.turn_rad = remainder (spot.turn_rad + G_PI, 2.0 * G_PI);
    if (!is_free (placing, spot, width_mm))
      continue;
    cost += COST_CROSSED * lines_crossed (placing, spot, width_mm);
    if (cost >= least)
      continue;
    least = cost;
    *best = spot;
  }
  return least < G_MAXDOUBLE;
}

/* Bold on the set exposure. */
static SqType
figure_type (int level)
{
  return (
    SqType){ .cap_mm = SQ_TYPE_SMALL, .weight = level == 0 ? 700 : 500, .align = SQ_ALIGN_CENTRE };
}

static void
draw_figure (SqDrawing *drawing,
             const SqLightOverlay *overlay,
             gboolean stops,
             const SqOverlayFigure *figure)
{
  g_autofree char *text = sq_overlay_figure (overlay, stops, figure->level);
  SqColour patch = sq_overlay_colour (drawing->view, stops, figure->level);
  SqType type = figure_type (figure->level);
  type.colour = sq_ramp_ink_on (patch);
  sq_draw_enter (drawing, figure->at, figure->turn_rad);
  SqPaperBox box = { -figure->width_mm / 2.0, -PATCH_HEIGHT_MM / 2.0, figure->width_mm,
                     PATCH_HEIGHT_MM };
  sq_draw_box_path (drawing, box, PATCH_CORNER_MM);
  sq_draw_fill (drawing, patch, 1.0);
  sq_draw_text (drawing, (SqPaperPoint){ 0.0, SQ_TYPE_SMALL / 2.0 }, text, &type);
  sq_draw_leave (drawing);
}

static void
figures_on_line (Placing *placing, const SqContour *contour, int level)
{
  const SqView *view = placing->drawing->view;
  if (sq_contour_length_m (contour) * view->mm_per_m < LEAST_LINE_MM)
    return;
  g_autofree char *text = sq_overlay_figure (placing->overlay, placing->stops, level);
  SqType type = figure_type (level);
  double width_mm = sq_text_width_mm (placing->drawing, text, &type) + 2.0 * PATCH_SIDE_MM;

  PaperLine line;
  paper_line_init (&line, view, contour);
  int n_figures = 1 + (int)(line.length_mm / ONE_EACH_MM);
  for (int k = 0; k < n_figures; k++) {
    Spot spot = { 0 };
    double from_mm = line.length_mm * k / n_figures;
    double to_mm = line.length_mm * (k + 1) / n_figures;
    if (!find_spot (placing, &line, from_mm, to_mm, width_mm, &spot))
      continue;
    const SqOverlayFigure figure = { spot.at, spot.turn_rad, width_mm, level };
    g_array_append_val (placing->figures, figure);
  }
  paper_line_clear (&line);
}

static int
longer_first (gconstpointer a, gconstpointer b)
{
  double la = sq_contour_length_m (*(SqContour *const *)a);
  double lb = sq_contour_length_m (*(SqContour *const *)b);
  return (la < lb) - (la > lb);
}

SqPaperBox
sq_overlay_figure_box (const SqOverlayFigure *figure)
{
  double c = fabs (cos (figure->turn_rad)), s = fabs (sin (figure->turn_rad));
  return sq_paper_box_round (figure->at, (figure->width_mm * c + PATCH_HEIGHT_MM * s) / 2.0,
                             (figure->width_mm * s + PATCH_HEIGHT_MM * c) / 2.0);
}

GArray *
sq_overlay_place_figures (SqDrawing *drawing,
                          const SqLightOverlay *overlay,
                          gboolean stops,
                          const SqKeepClear *keep_clear)
{
  /* The set exposure chooses first. */
  static const int order[SQ_CONTOURS] = { 0, 1, -1, 2, -2, 3, -3, -4, -5 };
  GArray *figures = g_array_new (FALSE, FALSE, sizeof (SqOverlayFigure));
  Placing placing = { drawing, overlay, keep_clear, stops, figures };
  for (int k = 0; k < SQ_CONTOURS; k++) {
    g_autoptr (GPtrArray) lines = g_ptr_array_new ();
    const GPtrArray *all = overlay->lines[order[k] - SQ_FIRST_CONTOUR];
    for (guint n = 0; n < all->len; n++)
      g_ptr_array_add (lines, g_ptr_array_index (all, n));
    g_ptr_array_sort (lines, longer_first);
    for (guint n = 0; n < lines->len; n++)
      figures_on_line (&placing, g_ptr_array_index (lines, n), order[k]);
  }
  return figures;
}

void
sq_overlay_draw_figures (SqDrawing *drawing,
                         const SqLightOverlay *overlay,
                         gboolean stops,
                         const SqKeepClear *keep_clear)
{
  g_autoptr (GArray) figures = sq_overlay_place_figures (drawing, overlay, stops, keep_clear);
  for (guint k = 0; k < figures->len; k++)
    draw_figure (drawing, overlay, stops, &g_array_index (figures, SqOverlayFigure, k));
}
