/* test-paper.c: sheets and scales are those of the standards */
#include "base/error.h"
#include "draw/mark-label.h"
#include "paper/flow.h"
#include "paper/png-size.h"
#include "paper/scale-bar.h"
#include "paper/scale.h"
#include "paper/sheet.h"

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
    sq_sheet_lay_out (sheet, &layout);
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
                   "sheet: A7 is no sheet, expected one of A4, A3, A2, A1, A0, letter, arch-a, "
                   "tabloid, arch-b, arch-c, arch-d, arch-e");
}

/* The parts of every sheet lie in its frame and not on one another. */
static void
test_layout (void)
{
  for (guint k = 0; k < sq_n_sheets; k++) {
    const SqSheet *sheet = &sq_sheets[k];
    SqSheetLayout layout;
    sq_sheet_lay_out (sheet, &layout);
    g_autoptr (GArray) boxes = g_array_new (FALSE, FALSE, sizeof (SqPaperBox));
    g_array_append_val (boxes, layout.field);
    g_array_append_val (boxes, layout.foot);
    g_array_append_val (boxes, layout.title_block);
    g_array_append_vals (boxes, layout.columns, (guint)sheet->columns);
    for (guint a = 0; a < boxes->len; a++) {
      SqPaperBox box = g_array_index (boxes, SqPaperBox, a);
      g_assert_true (sq_paper_box_within (box, sq_paper_box_grown (layout.frame, 1e-6)));
      for (guint b = 0; b < a; b++)
        g_assert_cmpfloat (sq_paper_overlap_mm2 (box, g_array_index (boxes, SqPaperBox, b)), <,
                           1e-3);
    }
    SqPaperBox columns[SQ_FLOW_MOST_COLUMNS];
    guint n = sq_sheet_text_columns (sheet, columns, SQ_FLOW_MOST_COLUMNS);
    g_assert_cmpuint (n, >=, 1);
    for (guint a = 0; a < n; a++)
      g_assert_cmpfloat (columns[a].width_mm, >=, SQ_COLUMN_WIDTH_MM - 1e-9);
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
  g_test_add_func ("/paper/sheet/parts do not overlap", test_layout);
  g_test_add_func ("/paper/scale bar/lengths", test_scale_bars);
  g_test_add_func ("/paper/words/stops and ratios", test_words);
  g_test_add_func ("/paper/png/check value", test_crc);
  return g_test_run ();
}
