/* test-paper.c: sheets and scales are those of the standards */
#include "base/error.h"
#include "draw/mark-label.h"
#include "paper/flow.h"
#include "paper/png-size.h"
#include "paper/scale-bar.h"
#include "paper/scale.h"
#include "paper/sheet.h"
#include "paper/words.h"

#include <string.h>

static void
test_scales_read (void)
{
  static const struct {
    const char *text;
    double denominator;
  } rows[] = {
    { "1:50", 50 },
    { "1:1", 1 },
    { " 1 : 100 ", 100 },
    { "1:12.5", 12.5 },
    { "1:48", 48 },
    /* Inches to the foot: 12 / inches */
    { "1/4\"=1'", 48 },
    { "1/4\" = 1'-0\"", 48 },
    { "1/2\" = 1'-0\"", 24 },
    { "3/16\" = 1'", 64 },
    { "1/8\"=1'", 96 },
    { "3/8\"=1'", 32 },
    { "3/4\"=1'", 16 },
    { "1\"=1'", 12 },
    { "3\" = 1'", 4 },
    { "1 1/2\" = 1'", 8 },
    { "1/4 in = 1 ft", 48 },
    { "2 cm = 1 m", 50 },
    { "10 mm = 1 m", 100 },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (GError) error = NULL;
    double denominator = NAN;
    sq_scale_parse (rows[k].text, &denominator, &error);
    g_assert_no_error (error);
    g_assert_cmpfloat (denominator, ==, rows[k].denominator);
  }
}

static void
test_scales_refused (void)
{
  static const char *const rows[] = {
    "",      "50",       "1:",    ":50",   "1:0",          "1:-50",     "2:1",         "1:50000",
    "0:50",  "1/4=1",    "=1'",   "1\"=",  "1/4\"=0'",     "one:fifty", "1:50 m",      "0\" = 1'",
    "1:1e9", "1' = 1\"", "1:nan", "1:inf", "1/4\" = 1 kg", "1:50:50",   "\xff\xfe=1'",
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (GError) error = NULL;
    double denominator = 7.0;
    g_assert_false (sq_scale_parse (rows[k], &denominator, &error));
    g_assert_error (error, SQ_ERROR, SQ_ERROR_USAGE);
    g_assert_true (g_str_has_prefix (error->message, "scale: "));
    g_assert_null (strchr (error->message, '\n'));
    g_assert_true (g_utf8_validate (error->message, -1, NULL));
    g_assert_cmpfloat (denominator, ==, 7.0);
  }
}

/* What is written is read back as the same scale. */
static void
test_scales_written (void)
{
  static const struct {
    double denominator;
    SqUnits units;
    const char *text;
  } rows[] = {
    { 50, SQ_METRIC, "1:50" },
    { 48, SQ_METRIC, "1:48" },
    { 48, SQ_IMPERIAL, "1/4\" = 1'-0\"" },
    { 24, SQ_IMPERIAL, "1/2\" = 1'-0\"" },
    { 4, SQ_IMPERIAL, "3\" = 1'-0\"" },
    { 50, SQ_IMPERIAL, "1:50" },
    { 12.5, SQ_METRIC, "1:12.5" },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autofree char *text = sq_scale_format (rows[k].denominator, rows[k].units);
    g_assert_cmpstr (text, ==, rows[k].text);
  }
  for (int units = SQ_METRIC; units <= SQ_IMPERIAL; units++) {
    double usual, before = 0.0, back;
    for (guint n = 0; (usual = sq_scale_usual ((SqUnits)units, n)) > 0.0; n++) {
      g_autofree char *text = sq_scale_format (usual, (SqUnits)units);
      g_assert_true (sq_scale_parse (text, &back, NULL));
      g_assert_cmpfloat (back, ==, usual);
      g_assert_cmpfloat (usual, >, before);
      before = usual;
    }
  }
}

/* The metric series is 1, 2, 5 × 10^n (ISO 5455), 25 added as common practice. */
static void
test_series (void)
{
  double usual;
  for (guint n = 0; (usual = sq_scale_usual (SQ_METRIC, n)) > 0.0; n++) {
    double mantissa = usual / pow (10.0, floor (log10 (usual) + 1e-9));
    g_assert_true (usual == 25.0 || fabs (mantissa - 1.0) < 1e-9 || fabs (mantissa - 2.0) < 1e-9 ||
                   fabs (mantissa - 5.0) < 1e-9);
  }
}

static void
test_best_fit (void)
{
  static const struct {
    SqUnits units;
    double width_m, height_m, field_width_mm, field_height_mm, denominator;
  } rows[] = {
    { SQ_METRIC, 15.3, 12.0, 306, 241, 50 }, /* 306 × 240 mm */
    { SQ_METRIC, 15.31, 12.0, 306, 241, 100 },
    { SQ_METRIC, 15.3, 12.06, 306, 241, 100 },
    { SQ_METRIC, 7.6, 6.0, 306, 241, 25 },
    { SQ_METRIC, 1.0, 1.0, 306, 241, 5 },
    { SQ_METRIC, 1e6, 1.0, 306, 241, 0 }, /* nothing does */
    /* 20 ft at 1/2" is 10 in */
    { SQ_IMPERIAL, 20 * 0.3048, 1.0, 254, 200, 24 },
    { SQ_IMPERIAL, 20.1 * 0.3048, 1.0, 254, 200, 32 },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
    g_assert_cmpfloat (sq_scale_fit (rows[k].units, rows[k].width_m, rows[k].height_m,
                                     rows[k].field_width_mm, rows[k].field_height_mm),
                       ==, rows[k].denominator);
}

/* ISO 216 and ISO 5457 (drawing space 390 × 277 on A3, 811 × 574 on A1); ANSI/ASME Y14.1 A and B;
 * architectural sizes (common practice). Millimetres; inches where imperial. */
static void
test_sheets (void)
{
  static const struct {
    const char *id;
    double width, height;
    double space_width, space_height; /* within the frame; 0: not printed in the standard read */
  } rows[] = {
    { "A4", 297, 210 },           { "A3", 420, 297, 390, 277 }, { "A2", 594, 420 },
    { "A1", 841, 594, 811, 574 }, { "A0", 1189, 841 },          { "letter", 11, 8.5 },
    { "tabloid", 17, 11 },        { "arch-a", 12, 9 },          { "arch-b", 18, 12 },
    { "arch-c", 24, 18 },         { "arch-d", 36, 24 },         { "arch-e", 48, 36 },
  };
  g_assert_cmpuint (sq_n_sheets, ==, G_N_ELEMENTS (rows));
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (GError) error = NULL;
    const SqSheet *sheet = sq_sheet_find (rows[k].id, &error);
    g_assert_no_error (error);
    double unit = sheet->units == SQ_IMPERIAL ? 25.4 : 1.0;
    g_assert_cmpfloat_with_epsilon (sheet->width_mm, rows[k].width * unit, 1e-9);
    g_assert_cmpfloat_with_epsilon (sheet->height_mm, rows[k].height * unit, 1e-9);
    SqSheetLayout layout;
    sq_sheet_lay_out (sheet, FALSE, SQ_SHEET_BESIDE, &layout);
    if (rows[k].space_width > 0.0) {
      g_assert_cmpfloat (layout.frame.width_mm, ==, rows[k].space_width);
      g_assert_cmpfloat (layout.frame.height_mm, ==, rows[k].space_height);
    }
  }
  g_autoptr (GError) error = NULL;
  g_assert_nonnull (sq_sheet_find ("a3", NULL));
  g_assert_nonnull (sq_sheet_find ("ARCH-D", NULL));
  g_assert_null (sq_sheet_find ("A7", &error));
  g_assert_cmpstr (error->message, ==,
                   "sheet: \"A7\" is no sheet, expected one of A4, A3, A2, A1, A0, letter, arch-a, "
                   "tabloid, arch-b, arch-c, arch-d, arch-e");
}

static void
add_box (GArray *boxes, SqPaperBox box)
{
  if (box.width_mm > 0.0)
    g_array_append_val (boxes, box);
}

/* The parts of every sheet, either way up, lie in its frame, not on one another, and fill it. */
static void
test_layout (void)
{
  const double rounding_mm2 = 1e-3;
  for (guint k = 0; k < sq_n_sheets * 6; k++) {
    const SqSheet *sheet = &sq_sheets[k / 6];
    gboolean portrait = k % 2 == 1;
    SqSheetParts parts = (SqSheetParts)(k / 2 % 3);
    SqSheetLayout layout;
    sq_sheet_lay_out (sheet, portrait, parts, &layout);
    g_assert_cmpfloat (layout.width_mm, ==, portrait ? sheet->height_mm : sheet->width_mm);
    g_assert_cmpfloat (layout.height_mm, ==, portrait ? sheet->width_mm : sheet->height_mm);
    g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqPaperBox));
    add_box (boxes, layout.field);
    add_box (boxes, layout.foot);
    add_box (boxes, layout.bearings);
    add_box (boxes, layout.title_block);
    for (guint n = 0; n < layout.n_columns; n++)
      add_box (boxes, layout.columns[n]);
    double covered_mm2 = 0.0;
    for (guint a = 0; a < boxes->len; a++) {
      SqPaperBox box = g_array_index (boxes, SqPaperBox, a);
      g_assert_true (sq_paper_box_within (box, sq_paper_box_grown (layout.frame, 1e-6)));
      covered_mm2 += box.width_mm * box.height_mm;
      for (guint b = 0; b < a; b++)
        g_assert_cmpfloat (sq_paper_overlap_mm2 (box, g_array_index (boxes, SqPaperBox, b)), <,
                           rounding_mm2);
    }
    /* Beside the title of a page of words paper may stay empty. */
    if (parts != SQ_SHEET_TEXT)
      g_assert_cmpfloat_with_epsilon (covered_mm2, layout.frame.width_mm * layout.frame.height_mm,
                                      rounding_mm2);
    g_assert_cmpint (layout.foot_kind != SQ_FOOT_NONE, ==, parts != SQ_SHEET_TEXT);
    /* ISO 7200: the block is 180 mm wide; it may be wider here, and is a strip on small sheets. */
    g_assert_cmpfloat (layout.title_block.width_mm, >=, 180.0 - 1e-9);
    SqPaperBox columns[SQ_FLOW_MOST_COLUMNS];
    guint n = sq_sheet_text_columns (&layout, columns, SQ_FLOW_MOST_COLUMNS);
    g_assert_cmpuint (n, >=, 1);
    for (guint a = 0; a < n && parts == SQ_SHEET_TEXT; a++)
      g_assert_cmpfloat (columns[a].width_mm, >=, SQ_COLUMN_WIDTH_MM - 1e-9);
  }
}

/* DIN 824 form A (from memory): A3 125, 105, 190; A2 210, 192, 192 and 297, 123; A1 210, 125.5,
 * 125.5, 190, 190; A0 210, 109.5, 109.5, 190 × 4 by 297, 297, 247. */
static void
test_folds (void)
{
  static const struct {
    const char *sheet;
    gboolean portrait, across;
    guint n;
    double at_mm[6];
  } rows[] = {
    { "A4", FALSE, TRUE, 0, { 0 } },
    { "letter", FALSE, TRUE, 0, { 0 } },
    { "A3", FALSE, TRUE, 2, { 125, 230 } },
    { "A3", FALSE, FALSE, 0, { 0 } },
    { "A3", TRUE, TRUE, 1, { 107 } },
    { "A3", TRUE, FALSE, 1, { 297 } },
    { "A2", FALSE, TRUE, 2, { 210, 402 } },
    { "A2", FALSE, FALSE, 1, { 297 } },
    { "A1", FALSE, TRUE, 4, { 210, 335.5, 461, 651 } },
    { "A1", FALSE, FALSE, 1, { 297 } },
    { "A0", FALSE, TRUE, 6, { 210, 319.5, 429, 619, 809, 999 } },
    { "A0", FALSE, FALSE, 2, { 297, 594 } },
    /* Halves: to letter, to 9 × 12 in. */
    { "tabloid", FALSE, TRUE, 1, { 8.5 * 25.4 } },
    { "tabloid", FALSE, FALSE, 0, { 0 } },
    { "arch-c", FALSE, TRUE, 1, { 12 * 25.4 } },
    { "arch-c", FALSE, FALSE, 1, { 9 * 25.4 } },
    { "arch-d", FALSE, TRUE, 3, { 9 * 25.4, 18 * 25.4, 27 * 25.4 } },
    { "arch-d", FALSE, FALSE, 1, { 12 * 25.4 } },
    { "arch-e", TRUE, TRUE, 3, { 9 * 25.4, 18 * 25.4, 27 * 25.4 } },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    double at_mm[SQ_SHEET_MOST_FOLDS];
    guint n =
      sq_sheet_folds (sq_sheet_find (rows[k].sheet, NULL), rows[k].portrait, rows[k].across, at_mm);
    g_assert_cmpuint (n, ==, rows[k].n);
    for (guint i = 0; i < n; i++)
      g_assert_cmpfloat_with_epsilon (at_mm[i], rows[k].at_mm[i], 1e-9);
  }
}

/* Folded, no panel of an ISO sheet is larger than A4, upright. */
static void
test_folded (void)
{
  const double most_mm[] = { [TRUE] = 210.0, [FALSE] = 298.0 }; /* A0 upright: 4 × 297 and 298 */
  for (guint k = 0; k < sq_n_sheets * 4; k++) {
    const SqSheet *sheet = &sq_sheets[k / 4];
    gboolean portrait = k % 2 == 1, across = k / 2 % 2 == 1;
    if (sheet->units != SQ_METRIC || sheet->columns == 0)
      continue;
    double at_mm[SQ_SHEET_MOST_FOLDS], from_mm = 0.0;
    guint n = sq_sheet_folds (sheet, portrait, across, at_mm);
    double side_mm = portrait == across ? sheet->height_mm : sheet->width_mm;
    for (guint i = 0; i <= n; i++) {
      double to_mm = i < n ? at_mm[i] : side_mm;
      g_assert_cmpfloat (to_mm, >, from_mm);
      g_assert_cmpfloat (to_mm - from_mm, <=, most_mm[across]);
      from_mm = to_mm;
    }
  }
}

/* ISO 5457 leaves out I and O. */
static void
test_letters (void)
{
  static const struct {
    guint n;
    const char *text;
  } rows[] = { { 0, "A" },  { 7, "H" },   { 8, "J" },  { 13, "P" },
               { 23, "Z" }, { 24, "AA" }, { 25, "AB" } };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autofree char *text = sq_letter_text (rows[k].n);
    g_assert_cmpstr (text, ==, rows[k].text);
  }
}

/* The bar of a scale, and how long it is on paper. */
static void
test_scale_bars (void)
{
  static const struct {
    double denominator;
    SqUnits units;
    double most_mm, part_m, length_mm;
  } rows[] = {
    { 50, SQ_METRIC, 110, 1.0, 100 },          { 100, SQ_METRIC, 110, 2.0, 100 },
    { 20, SQ_METRIC, 130, 0.5, 125 },          { 200, SQ_METRIC, 110, 2.0, 50 },
    { 48, SQ_IMPERIAL, 140, 4 * 0.3048, 127 }, /* 20 ft at 1/4": 5 in */
    { 24, SQ_IMPERIAL, 140, 2 * 0.3048, 127 }, /* 10 ft at 1/2": 5 in */
    { 96, SQ_IMPERIAL, 140, 8 * 0.3048, 127 }, /* 40 ft at 1/8": 5 in */
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    SqScaleBar bar = sq_scale_bar (rows[k].denominator, rows[k].units, rows[k].most_mm);
    g_assert_cmpfloat_with_epsilon (bar.part_m, rows[k].part_m, 1e-9);
    g_assert_cmpfloat_with_epsilon (bar.parts * bar.part_mm, rows[k].length_mm, 1e-9);
  }
  SqScaleBar bar = sq_scale_bar (48, SQ_IMPERIAL, 140);
  g_autofree char *text = sq_scale_bar_text (&bar, 48, SQ_IMPERIAL);
  g_assert_cmpstr (text, ==,
                   "1/4\" = 1'-0\".  The bar is 5 in long: check it before you scale off.");
}

static void
test_words (void)
{
  static const struct {
    double stops;
    const char *plain, *with_sign;
  } rows[] = {
    { 0, "0", "0" },     { 1, "1", "+1" },  { -1.5, "−1½", "−1½" },
    { 0.34, "⅓", "+⅓" }, { NAN, "–", "–" }, { -INFINITY, "–", "–" },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autofree char *plain = sq_stops_text (rows[k].stops, FALSE);
    g_autofree char *with_sign = sq_stops_text (rows[k].stops, TRUE);
    g_assert_cmpstr (plain, ==, rows[k].plain);
    g_assert_cmpstr (with_sign, ==, rows[k].with_sign);
  }
  g_autofree char *four = sq_ratio_text (4.0), *sixteen = sq_ratio_text (16.2);
  g_autofree char *none = sq_ratio_text (NAN);
  g_assert_cmpstr (four, ==, "4.0 : 1");
  g_assert_cmpstr (sixteen, ==, "16 : 1");
  g_assert_cmpstr (none, ==, "–");
}

/* The check value of CRC-32 (ISO 3309, PNG annex D) and the CRC that every PNG ends with. */
static void
test_crc (void)
{
  g_assert_cmphex (sq_png_crc ((const guint8 *)"123456789", 9), ==, 0xCBF43926);
  g_assert_cmphex (sq_png_crc ((const guint8 *)"IEND", 4), ==, 0xAE426082);
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/paper/scale/read", test_scales_read);
  g_test_add_func ("/paper/scale/refused", test_scales_refused);
  g_test_add_func ("/paper/scale/written", test_scales_written);
  g_test_add_func ("/paper/scale/the metric series", test_series);
  g_test_add_func ("/paper/scale/best fit", test_best_fit);
  g_test_add_func ("/paper/sheet/sizes", test_sheets);
  g_test_add_func ("/paper/sheet/parts fill the frame and do not overlap", test_layout);
  g_test_add_func ("/paper/sheet/folds of DIN 824", test_folds);
  g_test_add_func ("/paper/sheet/folded sheets come to A4", test_folded);
  g_test_add_func ("/paper/sheet/letters of fields", test_letters);
  g_test_add_func ("/paper/scale bar/lengths", test_scale_bars);
  g_test_add_func ("/paper/words/stops and ratios", test_words);
  g_test_add_func ("/paper/png/check value", test_crc);
  return g_test_run ();
}
