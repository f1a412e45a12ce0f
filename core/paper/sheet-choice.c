/* sheet-choice.c: sheets and scales weighed, largest drawing on the handiest paper */
#include "paper/sheet-choice.h"

#include "base/error.h"
#include "paper/scale.h"

#include <glib/gi18n-lib.h>

#define LARGEST_SCALE 10.0 /* nothing is drawn larger unless it is asked for */

/* A tag with its rows, and as much again to keep it off others; the ground round a set where tags
 * stand too. */
#define WORD_MM2 650.0
#define GROUND_MM 25.0

/* The order of sheet-choice.h: the number of the usual sheet, and of the scale from 1:50 down. */
static const struct {
  guint sheet, scale;
} order[] = {
  { 0, 0 }, { 1, 0 }, { 0, 1 }, { 2, 0 }, { 1, 1 }, { 2, 1 }, { 3, 0 }, { 3, 1 },
};

/* Scales for choosing a sheet go by halves: 1:50, 1:100, 1:200. Returns: 0 past the last */
static double
scale_step (SqUnits units, guint n)
{
  static const double metric[] = { 50, 100, 200, 500, 1000, 2000, 5000, 10000 };
  static const double imperial[] = { 48, 96, 192, 384, 768 };
  if (units == SQ_METRIC)
    return n < G_N_ELEMENTS (metric) ? metric[n] : 0.0;
  return n < G_N_ELEMENTS (imperial) ? imperial[n] : 0.0;
}

static SqPaperBox
field_of (const SqDrawingSize *size, const SqSheetChoice *choice)
{
  SqSheetLayout layout;
  /* Words do not go beside a drawing of several sheets. */
  gboolean tiled = choice->columns * choice->rows > 1;
  sq_sheet_lay_out (choice->sheet, choice->portrait, tiled ? SQ_SHEET_DRAWING : size->parts,
                    &layout);
  return layout.field;
}

gboolean
sq_sheet_holds (const SqDrawingSize *size, const SqSheetChoice *choice)
{
  SqSheetChoice one = *choice;
  one.columns = one.rows = 1;
  SqPaperBox field = field_of (size, &one);
  return sq_scale_fits (choice->denominator, size->width_m, size->height_m,
                        field.width_mm - 2.0 * size->margin_mm,
                        field.height_mm - 2.0 * size->margin_mm);
}

double
sq_sheet_words_share (const SqDrawingSize *size, const SqSheetChoice *choice)
{
  SqPaperBox field = field_of (size, choice);
  double width_mm = size->width_m * 1000.0 / choice->denominator + 2.0 * GROUND_MM;
  double height_mm = size->height_m * 1000.0 / choice->denominator + 2.0 * GROUND_MM;
  if (choice->columns * choice->rows <= 1) {
    width_mm = MIN (width_mm, field.width_mm);
    height_mm = MIN (height_mm, field.height_mm);
  }
  return size->n_words * WORD_MM2 / (width_mm * height_mm);
}

static gboolean
words_have_room (const SqDrawingSize *size, const SqSheetChoice *choice)
{
  return sq_sheet_words_share (size, choice) <= SQ_MOST_WORDS;
}

/* The largest usual scale at which one sheet holds the drawing; 0 if none. */
static double
best_scale (const SqDrawingSize *size, const SqSheet *sheet, gboolean portrait)
{
  SqSheetChoice choice = { .sheet = sheet, .portrait = portrait };
  for (guint n = 0; (choice.denominator = sq_scale_usual (size->units, n)) > 0.0; n++)
    if (choice.denominator >= LARGEST_SCALE && sq_sheet_holds (size, &choice))
      return choice.denominator;
  return 0.0;
}

/* On its side, or upright where that is asked for or holds it and the other does not. Returns:
 * whether it holds the drawing; choice->portrait is set */
static gboolean
hold_either_way (const SqDrawingSize *size, SqSheetTurn turn, SqSheetChoice *choice)
{
  choice->portrait = turn == SQ_TURN_PORTRAIT;
  if (sq_sheet_holds (size, choice))
    return TRUE;
  if (turn != SQ_TURN_AS_FITS)
    return FALSE;
  choice->portrait = TRUE;
  if (sq_sheet_holds (size, choice))
    return TRUE;
  choice->portrait = FALSE;
  return FALSE;
}

/* The largest scale on a sheet that is asked for, either way up. */
static gboolean
scale_for_sheet (const SqDrawingSize *size, SqSheetTurn turn, SqSheetChoice *choice)
{
  double landscape = best_scale (size, choice->sheet, FALSE);
  double upright = best_scale (size, choice->sheet, TRUE);
  choice->portrait = turn == SQ_TURN_PORTRAIT || (turn == SQ_TURN_AS_FITS && upright > 0.0 &&
                                                  (landscape == 0.0 || upright < landscape));
  choice->denominator = choice->portrait ? upright : landscape;
  return choice->denominator > 0.0;
}

/* Of the metric sheets or of those in inches, whatever the set is measured in. */
static gboolean
smallest_sheet (const SqDrawingSize *size,
                SqUnits sheets,
                SqSheetTurn turn,
                double denominator,
                SqSheetChoice *choice)
{
  choice->denominator = denominator;
  for (guint n = 0; (choice->sheet = sq_sheet_usual (sheets, n)) != NULL; n++)
    if (hold_either_way (size, turn, choice))
      return TRUE;
  return FALSE;
}

/* Tries one pair of the order. Keeps it if it is the first with room for words, or the roomiest. */
static gboolean
try_pair (const SqDrawingSize *size,
          SqSheetTurn turn,
          guint sheet,
          guint scale,
          SqSheetChoice *best,
          double *best_share)
{
  SqSheetChoice choice = { .sheet = sq_sheet_usual (size->units, sheet),
                           .denominator = scale_step (size->units, scale),
                           .columns = 1,
                           .rows = 1 };
  if (!hold_either_way (size, turn, &choice))
    return FALSE;
  double share = sq_sheet_words_share (size, &choice);
  if (best->sheet == NULL || share < *best_share) {
    *best = choice;
    *best_share = share;
  }
  return share <= SQ_MOST_WORDS;
}

/* Both are open: see sheet-choice.h. */
static gboolean
choose_both (const SqDrawingSize *size, SqSheetTurn turn, SqSheetChoice *choice)
{
  SqSheetChoice best = { .sheet = NULL };
  double share = INFINITY;
  gboolean found = FALSE;
  for (guint k = 0; !found && k < G_N_ELEMENTS (order); k++)
    found = try_pair (size, turn, order[k].sheet, order[k].scale, &best, &share);
  for (guint scale = 2; !found && scale_step (size->units, scale) > 0.0; scale++)
    for (guint sheet = 0; !found && sq_sheet_usual (size->units, sheet) != NULL; sheet++)
      found = try_pair (size, turn, sheet, scale, &best, &share);
  if (best.sheet == NULL)
    return FALSE;
  *choice = best;
  /* There may be a larger scale that this very sheet takes. */
  return scale_for_sheet (size, turn, choice);
}

static guint
tiles_along (double drawing_mm, double field_mm)
{
  if (drawing_mm <= field_mm)
    return 1;
  double n = ceil ((drawing_mm - SQ_TILE_OVERLAP_MM) / (field_mm - SQ_TILE_OVERLAP_MM) - 1e-9);
  return (guint)MIN (n, 1e6);
}

/* As many sheets as it takes, either way up. */
static void
count_tiles (const SqDrawingSize *size, SqSheetTurn turn, SqSheetChoice *choice)
{
  SqSheetChoice best = *choice;
  guint64 least = G_MAXUINT64;
  for (int upright = 0; upright <= 1; upright++) {
    if (turn == (upright ? SQ_TURN_LANDSCAPE : SQ_TURN_PORTRAIT))
      continue;
    SqSheetChoice tried = *choice;
    tried.portrait = upright;
    tried.columns = tried.rows = 2; /* for the field of a tile */
    SqPaperBox field = field_of (size, &tried);
    double k = 1000.0 / tried.denominator;
    tried.columns = tiles_along (size->width_m * k + 2.0 * size->margin_mm, field.width_mm);
    tried.rows = tiles_along (size->height_m * k + 2.0 * size->margin_mm, field.height_mm);
    guint64 n = (guint64)tried.columns * tried.rows;
    if (n < least) {
      least = n;
      best = tried;
    }
  }
  *choice = best;
}

static char *
size_text (double width_m, double height_m, SqUnits units)
{
  g_autofree char *width = sq_quantity_format (width_m, SQ_LENGTH, units);
  g_autofree char *height = sq_quantity_format (height_m, SQ_LENGTH, units);
  return g_strdup_printf ("%s × %s", width, height);
}

char *
sq_sheet_better (const SqDrawingSize *size, const SqSheetChoice *choice)
{
  SqSheetChoice other = *choice, larger = *choice;
  g_autofree char *scale = NULL;
  other.columns = other.rows = larger.columns = larger.rows = 1;
  other.denominator = best_scale (size, choice->sheet, choice->portrait);
  if (other.denominator > choice->denominator && words_have_room (size, &other))
    scale = sq_scale_format (other.denominator, size->units);
  gboolean has_larger =
    smallest_sheet (size, choice->sheet->units, SQ_TURN_AS_FITS, choice->denominator, &larger) &&
    larger.sheet->width_mm > choice->sheet->width_mm && words_have_room (size, &larger);
  if (scale != NULL && has_larger)
    return g_strdup_printf (_ ("scale %s or sheet %s"), scale, larger.sheet->id);
  if (scale != NULL)
    return g_strdup_printf (_ ("scale %s"), scale);
  return has_larger ? g_strdup_printf (_ ("sheet %s"), larger.sheet->id) : NULL;
}

/* The largest usual scale at which the drawing takes no more sheets than are allowed; 0 if none. */
static double
tiled_scale (const SqDrawingSize *size, SqSheetTurn turn, const SqSheetChoice *choice)
{
  SqSheetChoice tried = *choice;
  for (guint n = 0; (tried.denominator = sq_scale_usual (size->units, n)) > 0.0; n++) {
    count_tiles (size, turn, &tried);
    if (tried.denominator > choice->denominator &&
        (guint64)tried.columns * tried.rows <= SQ_MOST_TILES)
      return tried.denominator;
  }
  return 0.0;
}

/* "the plan is 18.00 m × 9.00 m, A3 at 1:20 would take 70 sheets, expected scale 1:50" */
static void
too_many (const SqDrawingSize *size, SqSheetTurn turn, const SqSheetChoice *choice, GError **error)
{
  double cure = tiled_scale (size, turn, choice);
  g_autofree char *drawing = size_text (size->width_m, size->height_m, size->units);
  g_autofree char *scale = sq_scale_format (choice->denominator, size->units);
  g_autofree char *other = cure > 0.0 ? sq_scale_format (cure, size->units) : NULL;
  g_autofree char *expected =
    other != NULL ? g_strdup_printf (_ ("scale %s"), other) : g_strdup (_ ("a smaller plan"));
  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
               _ ("scale: the plan is %s, %s at %s would take %" G_GUINT64_FORMAT
                  " sheets and %d are the most, expected %s"),
               drawing, choice->sheet->name, scale, (guint64)choice->columns * choice->rows,
               SQ_MOST_TILES, expected);
}

/* "the drawing is 18.00 m × 9.00 m, A3 at 1:50 has room for 13.90 m × 10.65 m, expected scale 1:100
 * or sheet A1" */
static void
does_not_fit (const SqDrawingSize *size, const SqSheetChoice *choice, GError **error)
{
  SqPaperBox field = field_of (size, choice);
  double m_per_mm = choice->denominator / 1000.0;
  g_autofree char *drawing = size_text (size->width_m, size->height_m, size->units);
  g_autofree char *room =
    size_text ((field.width_mm - 2.0 * size->margin_mm) * m_per_mm,
               (field.height_mm - 2.0 * size->margin_mm) * m_per_mm, size->units);
  g_autofree char *scale = sq_scale_format (choice->denominator, size->units);
  g_autofree char *better = sq_sheet_better (size, choice);
  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE,
               _ ("sheet: the drawing is %s, %s at %s has room for %s, expected %s"), drawing,
               choice->sheet->name, scale, room, better != NULL ? better : _ ("a smaller drawing"));
}

/* A scale is given that no sheet that may be used takes whole. */
static gboolean
tile (const SqDrawingSize *size,
      SqSheetTurn turn,
      gboolean may_tile,
      SqSheetChoice *choice,
      GError **error)
{
  if (!may_tile) {
    does_not_fit (size, choice, error);
    return FALSE;
  }
  count_tiles (size, turn, choice);
  if ((guint64)choice->columns * choice->rows <= SQ_MOST_TILES)
    return TRUE;
  too_many (size, turn, choice, error);
  return FALSE;
}

gboolean
sq_sheet_choose (const SqDrawingSize *size,
                 const SqSheet *sheet,
                 SqSheetTurn turn,
                 double denominator,
                 gboolean may_tile,
                 SqSheetChoice *choice,
                 GError **error)
{
  *choice = (SqSheetChoice){ .sheet = sheet, .denominator = denominator, .columns = 1, .rows = 1 };
  gboolean found = sheet != NULL && denominator > 0.0 ? hold_either_way (size, turn, choice)
                   : sheet != NULL                    ? scale_for_sheet (size, turn, choice)
                   : denominator > 0.0
                     ? smallest_sheet (size, size->units, turn, denominator, choice)
                     : choose_both (size, turn, choice);
  if (found)
    return TRUE;
  /* Even the largest is too small: say so of that one, or use several of it. */
  for (guint n = 0; choice->sheet == NULL && sq_sheet_usual (size->units, n) != NULL; n++)
    if (sq_sheet_usual (size->units, n + 1) == NULL)
      choice->sheet = sq_sheet_usual (size->units, n);
  choice->portrait = turn == SQ_TURN_PORTRAIT;
  if (denominator > 0.0)
    return tile (size, turn, may_tile, choice, error);
  for (guint n = 0; sq_scale_usual (size->units, n) > 0.0; n++)
    choice->denominator = sq_scale_usual (size->units, n);
  does_not_fit (size, choice, error);
  return FALSE;
}
