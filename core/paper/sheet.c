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
  g_set_error (error, SQ_ERROR, SQ_ERROR_USAGE, _ ("sheet: %s is no sheet, expected one of %s"),
               shown, all->str);
  return NULL;
}

const SqSheet *
sq_sheet_usual (SqUnits units, guint n)
{
  return n < G_N_ELEMENTS (usual[0]) ? find (usual[units][n]) : NULL;
}

static SqPaperBox
frame_of (const SqSheet *sheet)
{
  double left = sheet->units == SQ_METRIC ? 20.0 : 0.75 * INCH;
  double other = sheet->units == SQ_METRIC ? 10.0 : 0.375 * INCH;
  return (SqPaperBox){ left, other, sheet->width_mm - left - other,
                       sheet->height_mm - 2.0 * other };
}

void
sq_sheet_lay_out (const SqSheet *sheet, SqSheetLayout *layout)
{
  SqPaperBox frame = frame_of (sheet);
  double bottom = frame.y_mm + frame.height_mm, right = frame.x_mm + frame.width_mm;
  *layout = (SqSheetLayout){ .frame = frame, .field = frame, .references = sheet->columns > 0 };
  if (sheet->columns == 0) {
    /* A plan that is true to scale says its scale and north on its own page. */
    layout->field.height_mm -= SQ_STRIP_HEIGHT_MM + SQ_LOW_FOOT_HEIGHT_MM;
    layout->foot = (SqPaperBox){ frame.x_mm, layout->field.y_mm + layout->field.height_mm,
                                 frame.width_mm, SQ_LOW_FOOT_HEIGHT_MM };
    layout->title_block =
      (SqPaperBox){ frame.x_mm, bottom - SQ_STRIP_HEIGHT_MM, frame.width_mm, SQ_STRIP_HEIGHT_MM };
    return;
  }
  double columns_mm = sheet->columns * SQ_COLUMN_WIDTH_MM;
  layout->field.width_mm -= columns_mm;
  layout->field.height_mm -= SQ_FOOT_HEIGHT_MM;
  for (int k = 0; k < sheet->columns; k++)
    layout->columns[k] = (SqPaperBox){ right - columns_mm + k * SQ_COLUMN_WIDTH_MM, frame.y_mm,
                                       SQ_COLUMN_WIDTH_MM, layout->field.height_mm };
  layout->title_block = (SqPaperBox){ right - SQ_TITLE_BLOCK_WIDTH_MM, bottom - SQ_FOOT_HEIGHT_MM,
                                      SQ_TITLE_BLOCK_WIDTH_MM, SQ_FOOT_HEIGHT_MM };
  layout->foot = (SqPaperBox){ frame.x_mm, bottom - SQ_FOOT_HEIGHT_MM,
                               frame.width_mm - SQ_TITLE_BLOCK_WIDTH_MM, SQ_FOOT_HEIGHT_MM };
}

guint
sq_sheet_text_columns (const SqSheet *sheet, SqPaperBox *columns, guint most)
{
  SqSheetLayout layout;
  sq_sheet_lay_out (sheet, &layout);
  double height_mm = layout.title_block.y_mm - layout.frame.y_mm;
  guint n = CLAMP ((guint)(layout.frame.width_mm / SQ_COLUMN_WIDTH_MM), 1, most);
  double width_mm = layout.frame.width_mm / n;
  for (guint k = 0; k < n; k++)
    columns[k] =
      (SqPaperBox){ layout.frame.x_mm + k * width_mm, layout.frame.y_mm, width_mm, height_mm };
  return n;
}
