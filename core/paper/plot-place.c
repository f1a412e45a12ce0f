/* plot-place.c: which sheet, at which scale, and where on it the set lies */
#include "paper/plot-private.h"

#include "base/error.h"
#include "paper/scale.h"

#include <glib/gi18n-lib.h>

#define LABEL_MARGIN_MM 14.0 /* kept free round the set, where we choose */
#define LEAST_MARGIN_MM 5.0  /* and where sheet and scale are asked for */
#define LEAST_SIDE_M 1.0     /* a set of one lamp is drawn as if it were so large */
#define LARGEST_SCALE 10.0   /* nothing is drawn larger unless it is asked for */

static double
usual_denominator (SqUnits units)
{
  return units == SQ_IMPERIAL ? 48.0 : 50.0; /* 1/4" = 1'-0" */
}

/* What must lie on the paper, and what the paper has. */
typedef struct {
  SqUnits units;
  double width_m, height_m; /* of the set */
  double margin_mm;         /* on each side */
} Wanted;

static void
free_field (const Wanted *wanted, const SqSheet *sheet, double *width_mm, double *height_mm)
{
  SqSheetLayout layout;
  sq_sheet_lay_out (sheet, &layout);
  *width_mm = layout.field.width_mm - 2.0 * wanted->margin_mm;
  *height_mm = layout.field.height_mm - 2.0 * wanted->margin_mm;
}

static gboolean
fits (const Wanted *wanted, const SqSheet *sheet, double denominator)
{
  double width_mm, height_mm;
  free_field (wanted, sheet, &width_mm, &height_mm);
  return sq_scale_fits (denominator, wanted->width_m, wanted->height_m, width_mm, height_mm);
}

/* The largest usual scale on @sheet; 0 if none. */
static double
best_scale (const Wanted *wanted, const SqSheet *sheet)
{
  double denominator;
  for (guint n = 0; (denominator = sq_scale_usual (wanted->units, n)) > 0.0; n++)
    if (denominator >= LARGEST_SCALE && fits (wanted, sheet, denominator))
      return denominator;
  return 0.0;
}

/* Of the metric sheets or of those in inches, whatever the set is measured in. */
static const SqSheet *
smallest_sheet (const Wanted *wanted, SqUnits sheets, double denominator)
{
  const SqSheet *sheet;
  for (guint n = 0; (sheet = sq_sheet_usual (sheets, n)) != NULL; n++)
    if (fits (wanted, sheet, denominator))
      return sheet;
  return NULL;
}

/* The smallest sheet at 1:50, or at the next smaller scale that has one. */
static const SqSheet *
usual_sheet (const Wanted *wanted)
{
  double denominator;
  for (guint n = 0; (denominator = sq_scale_usual (wanted->units, n)) > 0.0; n++) {
    if (denominator < usual_denominator (wanted->units))
      continue;
    const SqSheet *sheet = smallest_sheet (wanted, wanted->units, denominator);
    if (sheet != NULL)
      return sheet;
  }
  return NULL;
}

static char *
size_text (double width_m, double height_m, SqUnits units)
{
  g_autofree char *width = sq_quantity_format (width_m, SQ_LENGTH, units);
  g_autofree char *height = sq_quantity_format (height_m, SQ_LENGTH, units);
  return g_strdup_printf ("%s × %s", width, height);
}

/* "the plan is 18.00 m × 9.00 m, A3 at 1:50 has room for 13.90 m × 10.65 m, expected scale 1:100 or
 * sheet A1" */
static void
does_not_fit (const Wanted *wanted, const SqSheet *sheet, double denominator, GError **error)
{
  double width_mm, height_mm;
  free_field (wanted, sheet, &width_mm, &height_mm);
  g_autofree char *plan = size_text (wanted->width_m, wanted->height_m, wanted->units);
  g_autofree char *room =
    size_text (width_mm / 1000.0 * denominator, height_mm / 1000.0 * denominator, wanted->units);
  g_autofree char *scale = sq_scale_format (denominator, wanted->units);
  double other = best_scale (wanted, sheet);
  const SqSheet *larger = smallest_sheet (wanted, sheet->units, denominator);
  g_autofree char *other_text = other > 0.0 ? sq_scale_format (other, wanted->units) : NULL;
  g_autofree char *cure = NULL;
  if (other_text != NULL && larger != NULL)
    cure = g_strdup_printf (_ ("scale %s or sheet %s"), other_text, larger->id);
  else if (other_text != NULL)
    cure = g_strdup_printf (_ ("scale %s"), other_text);
  else if (larger != NULL)
    cure = g_strdup_printf (_ ("sheet %s"), larger->id);
  else
    cure = g_strdup (_ ("a smaller plan"));
  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
               _ ("sheet: the plan is %s, %s at %s has room for %s, expected %s"), plan,
               sheet->name, scale, room, cure);
}

static gboolean
choose (SqPlot *plot, const SqPlotRequest *request, const Wanted *wanted, GError **error)
{
  plot->denominator = request->denominator;
  if (request->sheet != NULL) {
    plot->sheet = sq_sheet_find (request->sheet, error);
    if (plot->sheet == NULL)
      return FALSE;
  } else if (request->denominator > 0.0) {
    plot->sheet = smallest_sheet (wanted, wanted->units, request->denominator);
  } else {
    plot->sheet = usual_sheet (wanted);
  }
  if (plot->sheet == NULL) {
    /* Even the largest is too small: say so of that one. */
    for (guint n = 0; sq_sheet_usual (wanted->units, n) != NULL; n++)
      plot->sheet = sq_sheet_usual (wanted->units, n);
    if (plot->denominator == 0.0)
      plot->denominator = usual_denominator (wanted->units);
  }
  if (plot->denominator == 0.0)
    plot->denominator = best_scale (wanted, plot->sheet);
  if (plot->denominator == 0.0)
    plot->denominator = usual_denominator (wanted->units);
  if (!fits (wanted, plot->sheet, plot->denominator)) {
    does_not_fit (wanted, plot->sheet, plot->denominator, error);
    return FALSE;
  }
  return TRUE;
}

gboolean
sq_plot_place (SqPlot *plot, const SqPlotRequest *request, GError **error)
{
  SqPlace least = { 0 }, most = { 0 };
  if (!sq_plan_extent_m (plot->scene, &least, &most))
    least = most = (SqPlace){ 0.0, 0.0 };
  const Wanted wanted = { plot->units, MAX (most.x_m - least.x_m, LEAST_SIDE_M),
                          MAX (most.y_m - least.y_m, LEAST_SIDE_M),
                          request->denominator > 0.0 ? LEAST_MARGIN_MM : LABEL_MARGIN_MM };
  if (!choose (plot, request, &wanted, error))
    return FALSE;
  sq_sheet_lay_out (plot->sheet, &plot->layout);

  SqPaperBox field = plot->layout.field;
  double mm_per_m = 1000.0 / plot->denominator;
  double middle_x_m = (least.x_m + most.x_m) / 2.0, middle_y_m = (least.y_m + most.y_m) / 2.0;
  plot->view = (SqView){
    .mm_per_m = mm_per_m,
    .origin = { field.x_mm + field.width_mm / 2.0 - middle_x_m * mm_per_m,
                field.y_mm + field.height_mm / 2.0 + middle_y_m * mm_per_m },
    .clip = field,
    .ground = SQ_GROUND_PAPER,
    .units = plot->units,
    .mono = plot->mono,
  };
  return TRUE;
}

char *
sq_plot_scale_text (const SqPlot *plot)
{
  return sq_scale_format (plot->denominator, plot->units);
}
