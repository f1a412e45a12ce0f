/* label-plots.h: scenes on their sheets, and what is told of their labels there */
#pragma once

#include "draw-page.h"
#include "light/readings.h"
#include "paper/scale.h"
#include "paper/sheet.h"

G_BEGIN_DECLS

/* Kept free round the set for its labels, as where a page chooses its scale by itself. */
#define LABEL_MARGIN_MM 14.0

/* Each sample on the sheet that it is drawn for. */
static const struct {
  const char *name, *sheet;
  double denominator;
} samples[] = {
  { "office-interview", "A3", 25 },
  { "lighthouse-kitchen", "tabloid", 48 },
  { "ferry-terminal", "A1", 50 },
};

static inline SqScene *
sample_scene (const char *name)
{
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_strdup_printf ("%s/samples/%s.squarelaw", SQ_SOURCE_DIR, name);
  g_autofree char *text = NULL;
  gsize length;
  g_file_get_contents (path, &text, &length, &error);
  g_assert_no_error (error);
  SqScene *scene = sq_scene_parse (text, length, library, NULL, &error);
  g_assert_no_error (error);
  return scene;
}

/* @scene in the middle of @sheet. */
static inline SqView
view_on_sheet (const SqScene *scene, const SqSheet *sheet, double denominator)
{
  SqPlace least, most;
  SqSheetLayout layout;
  double mm_per_m = 1000.0 / denominator;
  g_assert_true (sq_plan_extent_m (scene, &least, &most));
  sq_sheet_lay_out (sheet, FALSE, SQ_SHEET_BESIDE, &layout);
  SqPaperPoint middle = sq_paper_box_middle (layout.field);
  return (SqView){ .mm_per_m = mm_per_m,
                   .origin = { middle.x_mm - (least.x_m + most.x_m) / 2 * mm_per_m,
                               middle.y_mm + (least.y_m + most.y_m) / 2 * mm_per_m },
                   .clip = layout.field,
                   .units = (SqUnits)scene->units };
}

/* On the smallest of the usual sheets at 1:50, or at the next scale that has one. */
static inline SqView
view_on_usual_sheet (const SqScene *scene)
{
  SqPlace least, most;
  g_assert_true (sq_plan_extent_m (scene, &least, &most));
  for (double denominator = 50.0; denominator < 10000.0; denominator *= 2.0)
    for (guint n = 0; sq_sheet_usual (SQ_METRIC, n) != NULL; n++) {
      const SqSheet *sheet = sq_sheet_usual (SQ_METRIC, n);
      SqSheetLayout layout;
      sq_sheet_lay_out (sheet, FALSE, SQ_SHEET_BESIDE, &layout);
      if (sq_scale_fits (denominator, most.x_m - least.x_m, most.y_m - least.y_m,
                         layout.field.width_mm - 2 * LABEL_MARGIN_MM,
                         layout.field.height_mm - 2 * LABEL_MARGIN_MM))
        return view_on_sheet (scene, sheet, denominator);
    }
  g_error ("the set fits no sheet");
}

/* On the sheet of this id. */
static inline SqView
view_on (const SqScene *scene, const char *sheet, double denominator)
{
  g_autoptr (GError) error = NULL;
  const SqSheet *found = sq_sheet_find (sheet, &error);
  g_assert_no_error (error);
  return view_on_sheet (scene, found, denominator);
}

/* Draws the plan nowhere. @readings: (nullable) */
static inline SqPlanReport *
labels_of (const SqScene *scene, const SqReadings *readings, const SqView *view)
{
  SqPlanReport *report = sq_plan_report_new ();
  const SqPlanRequest request = { .scene = scene, .readings = readings, .report = report };
  Page page = open_page (view);
  sq_draw_plan (page.drawing, &request);
  close_page (&page);
  return report;
}

G_END_DECLS
