/* sheet.c: a table of sheets, and the one way they are divided up */
#include "paper/sheet.h"

#include "base/error.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define INCH SQ_INCH_MM

/* clang-format off */
const SqSheet sq_sheets[] = {
  { "A4",      "A4",      SQ_METRIC,     297,         210,        0 },
  { "A3",      "A3",      SQ_METRIC,     420,         297,        1 },
  { "A2",      "A2",      SQ_METRIC,     594,         420,        1 },
  { "A1",      "A1",      SQ_METRIC,     841,         594,        2 },
  { "A0",      "A0",      SQ_METRIC,     1189,        841,        2 },
  { "letter",  "Letter",  SQ_IMPERIAL,   11 * INCH,   8.5 * INCH, 0 },
  { "arch-a",  "Arch A",  SQ_IMPERIAL,   12 * INCH,   9 * INCH,   0 },
  { "tabloid", "Tabloid", SQ_IMPERIAL,   17 * INCH,   11 * INCH,  1 },
  { "arch-b",  "Arch B",  SQ_IMPERIAL,   18 * INCH,   12 * INCH,  1 },
  { "arch-c",  "Arch C",  SQ_IMPERIAL,   24 * INCH,   18 * INCH,  1 },
  { "arch-d",  "Arch D",  SQ_IMPERIAL,   36 * INCH,   24 * INCH,  2 },
  { "arch-e",  "Arch E",  SQ_IMPERIAL,   48 * INCH,   36 * INCH,  2 },
};
const guint sq_n_sheets = G_N_ELEMENTS (sq_sheets);

static const char *const usual[][4] = {
  [SQ_METRIC]   = { "A3",      "A2",     "A1",     "A0" },
  [SQ_IMPERIAL] = { "tabloid", "arch-c", "arch-d", "arch-e" },
};
/* clang-format on */

static const SqSheet *
find (const char *id)
{
  for (guint k = 0; k < sq_n_sheets; k++)
    if (g_ascii_strcasecmp (sq_sheets[k].id, id) == 0)
      return &sq_sheets[k];
  return NULL;
}

const SqSheet *
sq_sheet_find (const char *id, GError **error)
{
  const SqSheet *sheet = find (id);
  if (sheet != NULL)
    return sheet;
  g_autoptr (GString) all = g_string_new (NULL);
  for (guint k = 0; k < sq_n_sheets; k++)
    g_string_append_printf (all, "%s%s", k > 0 ? ", " : "", sq_sheets[k].id);
  g_autofree char *shown = g_utf8_make_valid (id, MIN (strlen (id), 40));
  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("sheet: \"%s\" is no sheet, expected one of %s"),
               shown, all->str);
  return NULL;
}

const SqSheet *
sq_sheet_usual (SqUnits units, guint n)
{
  return n < G_N_ELEMENTS (usual[0]) ? find (usual[units][n]) : NULL;
}

static SqPaperBox
frame_of (const SqSheet *sheet, double width_mm, double height_mm)
{
  double left = sheet->units == SQ_METRIC ? 20.0 : 0.75 * INCH;
  double other = sheet->units == SQ_METRIC ? 10.0 : 0.375 * INCH;
  return (SqPaperBox){ left, other, width_mm - left - other, height_mm - 2.0 * other };
}

/* Cuts @height_mm off the foot of @box. Returns: what was cut off */
static SqPaperBox
cut_foot (SqPaperBox *box, double height_mm)
{
  box->height_mm -= height_mm;
  return (SqPaperBox){ box->x_mm, box->y_mm + box->height_mm, box->width_mm, height_mm };
}

/* The title's place in the bottom right corner; what is left beside it is returned. */
static SqPaperBox
cut_title (SqSheetLayout *layout)
{
  const double least_beside_mm = 40.0; /* less is no use beside it: the block takes it */
  if (layout->is_strip) {
    layout->title_block = cut_foot (&layout->field, SQ_STRIP_HEIGHT_MM);
    return (SqPaperBox){ 0 };
  }
  SqPaperBox row = cut_foot (&layout->field, SQ_FOOT_HEIGHT_MM);
  double beside_mm = row.width_mm - SQ_TITLE_BLOCK_WIDTH_MM;
  if (beside_mm < least_beside_mm)
    beside_mm = 0.0;
  layout->title_block =
    (SqPaperBox){ row.x_mm + beside_mm, row.y_mm, row.width_mm - beside_mm, row.height_mm };
  row.width_mm = beside_mm;
  return row;
}

/* A drawing that is true to scale says its scale and north on its own page. */
static void
cut_drawing_foot (SqSheetLayout *layout, SqPaperBox beside)
{
  const double least_wide_mm = 180.0; /* for bar, north and sun in a row */
  const double least_low_mm = 210.0;  /* for words beside them too */
  if (beside.width_mm >= least_wide_mm) {
    layout->foot_kind = SQ_FOOT_WIDE;
    layout->foot = beside;
    return;
  }
  layout->foot_kind = beside.width_mm > 0.0 ? SQ_FOOT_SPLIT : SQ_FOOT_LOW;
  layout->bearings = beside;
  gboolean is_narrow = layout->foot_kind == SQ_FOOT_LOW && layout->frame.width_mm < least_low_mm;
  layout->foot =
    cut_foot (&layout->field, is_narrow ? SQ_NARROW_FOOT_HEIGHT_MM : SQ_LOW_FOOT_HEIGHT_MM);
}

void
sq_sheet_lay_out (const SqSheet *sheet,
                  gboolean portrait,
                  SqSheetParts parts,
                  SqSheetLayout *layout)
{
  double width_mm = portrait ? sheet->height_mm : sheet->width_mm;
  double height_mm = portrait ? sheet->width_mm : sheet->height_mm;
  SqPaperBox frame = frame_of (sheet, width_mm, height_mm);
  *layout = (SqSheetLayout){ .width_mm = width_mm,
                             .height_mm = height_mm,
                             .portrait = portrait,
                             .frame = frame,
                             .field = frame,
                             .is_strip = sheet->columns == 0 && !portrait,
                             .references = sheet->columns > 0 };
  SqPaperBox beside = cut_title (layout);
  if (parts == SQ_SHEET_TEXT)
    return;
  cut_drawing_foot (layout, beside);
  if (parts == SQ_SHEET_DRAWING)
    return;
  layout->n_columns = (guint)sheet->columns;
  layout->field.width_mm -= layout->n_columns * SQ_COLUMN_WIDTH_MM;
  double right = layout->field.x_mm + layout->field.width_mm;
  for (guint k = 0; k < layout->n_columns; k++)
    layout->columns[k] = (SqPaperBox){ right + k * SQ_COLUMN_WIDTH_MM, frame.y_mm,
                                       SQ_COLUMN_WIDTH_MM, layout->field.height_mm };
}

guint
sq_sheet_text_columns (const SqSheetLayout *layout, SqPaperBox *columns, guint most)
{
  SqPaperBox field = layout->field;
  guint n = CLAMP ((guint)(field.width_mm / SQ_COLUMN_WIDTH_MM), 1, most);
  double width_mm = field.width_mm / n;
  for (guint k = 0; k < n; k++)
    columns[k] = (SqPaperBox){ field.x_mm + k * width_mm, field.y_mm, width_mm, field.height_mm };
  return n;
}

/* clang-format off */
/* Widths from the left, heights from the bottom. The last panel is what is left. */
static const struct { double side_mm, panels_mm[SQ_SHEET_MOST_FOLDS]; } folded_across[] = {
  {  297, { 107 } },
  {  420, { 125, 105 } },
  {  594, { 210, 192 } },
  {  841, { 210, 125.5, 125.5, 190 } },
  { 1189, { 210, 109.5, 109.5, 190, 190, 190 } },
}, folded_up[] = {
  {  297, { 0 } },
  {  420, { 297 } },
  {  594, { 297 } },
  {  841, { 297, 297 } },
  { 1189, { 297, 297, 297 } },
};
/* clang-format on */

/* Panels of the smallest sheet's size, whichever way round they come out even. */
static guint
even_folds (const SqSheet *smallest, double side_mm, double other_mm, double *at_mm)
{
  const double even = 1e-6;
  double panels = side_mm / smallest->height_mm, others = other_mm / smallest->width_mm;
  if (fabs (panels - round (panels)) > even || fabs (others - round (others)) > even)
    panels = side_mm / smallest->width_mm;
  guint n = (guint)round (panels);
  for (guint k = 1; k < n; k++)
    at_mm[k - 1] = side_mm * k / n;
  return n - 1;
}

guint
sq_sheet_folds (const SqSheet *sheet,
                gboolean portrait,
                gboolean across,
                double at_mm[SQ_SHEET_MOST_FOLDS])
{
  double side_mm = portrait == across ? sheet->height_mm : sheet->width_mm;
  double other_mm = portrait == across ? sheet->width_mm : sheet->height_mm;
  guint n = 0;
  if (sheet->columns == 0)
    return 0;
  if (sheet->units == SQ_METRIC) {
    for (guint k = 0; k < G_N_ELEMENTS (folded_across); k++) {
      const double *panels_mm = across ? folded_across[k].panels_mm : folded_up[k].panels_mm;
      if (folded_across[k].side_mm != side_mm)
        continue;
      for (double sum_mm = 0.0; n < SQ_SHEET_MOST_FOLDS && panels_mm[n] > 0.0; n++)
        at_mm[n] = sum_mm += panels_mm[n];
    }
    return n;
  }
  gboolean is_arch = g_str_has_prefix (sheet->id, "arch");
  return even_folds (find (is_arch ? "arch-a" : "letter"), side_mm, other_mm, at_mm);
}
