/* test-sheet-choice.c: sheet, turn and scale as a drawing office would choose them */
#include "base/error.h"
#include "paper/scale.h"
#include "paper/sheet-choice.h"

#include <string.h>

#define FOOT 0.3048
#define NB "\xc2\xa0" /* no-break space, which stands before units */

static SqDrawingSize
size_of (SqUnits units, double width_m, double height_m, guint n_words)
{
  return (SqDrawingSize){ .units = units,
                          .width_m = width_m,
                          .height_m = height_m,
                          .margin_mm = 14.0,
                          .n_words = n_words,
                          .parts = SQ_SHEET_BESIDE };
}

/* Nothing is asked for. Room for a drawing with 14 mm round it, frame less column, foot and
 * margins: A3 278 × 213 mm, upright 155 × 325; A2 452 × 336; A1 615 × 510; A0 963 × 757; tabloid
 * 291 × 196. */
static void
test_by_itself (void)
{
  static const struct {
    SqUnits units;
    double width_m, height_m;
    guint n_words;
    const char *sheet;
    gboolean portrait;
    double denominator;
  } rows[] = {
    { SQ_METRIC, 5, 4, 8, "A3", FALSE, 20 },
    { SQ_METRIC, 6, 5, 8, "A3", FALSE, 25 },
    { SQ_METRIC, 10, 8, 10, "A3", FALSE, 50 },
    { SQ_METRIC, 6, 16, 10, "A3", TRUE, 50 }, /* 120 × 320: upright, or twice as small */
    { SQ_METRIC, 18, 14, 10, "A2", FALSE, 50 },
    { SQ_METRIC, 26, 20, 10, "A3", FALSE, 100 }, /* a page that anybody prints */
    { SQ_METRIC, 26, 20, 60, "A1", FALSE, 50 },  /* with more words than A3 has room for */
    { SQ_METRIC, 40, 30, 10, "A2", FALSE, 100 },
    { SQ_METRIC, 58, 48, 20, "A1", FALSE, 100 },
    { SQ_METRIC, 90, 70, 20, "A0", FALSE, 100 },
    { SQ_METRIC, 100, 40, 20, "A1", FALSE, 200 }, /* a street */
    { SQ_METRIC, 5000, 5, 2, "A1", FALSE, 10000 },
    { SQ_IMPERIAL, 40 * FOOT, 30 * FOOT, 10, "tabloid", FALSE, 48 }, /* 10 × 7.5 in */
    { SQ_IMPERIAL, 70 * FOOT, 50 * FOOT, 10, "arch-c", FALSE, 48 },  /* 17.5 × 12.5 in */
    { SQ_IMPERIAL, 90 * FOOT, 60 * FOOT, 10, "tabloid", FALSE, 96 }, /* 11.25 × 7.5 in */
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (GError) error = NULL;
    SqDrawingSize size =
      size_of (rows[k].units, rows[k].width_m, rows[k].height_m, rows[k].n_words);
    SqSheetChoice choice;
    sq_sheet_choose (&size, NULL, SQ_TURN_AS_FITS, 0.0, TRUE, &choice, &error);
    g_assert_no_error (error);
    g_assert_cmpstr (choice.sheet->id, ==, rows[k].sheet);
    g_assert_cmpint (choice.portrait, ==, rows[k].portrait);
    g_assert_cmpfloat (choice.denominator, ==, rows[k].denominator);
    g_assert_cmpuint (choice.columns * choice.rows, ==, 1);
  }
}

/* What is asked for is kept; upright where that does and the other way does not. */
static void
test_as_asked (void)
{
  static const struct {
    const char *sheet;
    SqSheetTurn turn;
    double denominator, width_m, height_m;
    gboolean portrait;
    guint columns, rows;
    double scale;
  } rows[] = {
    { "A4", SQ_TURN_AS_FITS, 0, 4, 3, FALSE, 1, 1, 25 },
    { "A4", SQ_TURN_AS_FITS, 0, 3, 9, TRUE, 1, 1, 50 },
    { "A4", SQ_TURN_LANDSCAPE, 0, 3, 9, FALSE, 1, 1, 100 },
    { "A3", SQ_TURN_PORTRAIT, 0, 4, 3, TRUE, 1, 1, 50 },
    { "A3", SQ_TURN_AS_FITS, 50, 6, 16, TRUE, 1, 1, 50 },
    /* Windows of a drawing alone: A3 390 × 241, upright 267 × 353, overlapping by 30. */
    { "A3", SQ_TURN_LANDSCAPE, 50, 6, 16, FALSE, 1, 2, 50 }, /* 120 × 320 + 28 */
    { "A3", SQ_TURN_AS_FITS, 50, 30, 20, FALSE, 2, 2, 50 },  /* 628 × 428 */
    { "A3", SQ_TURN_AS_FITS, 50, 36.2, 9, FALSE, 3, 1, 50 }, /* 750 mm go on two, 752 on three */
    { "A3", SQ_TURN_AS_FITS, 50, 36.1, 9, FALSE, 2, 1, 50 },
    { "A3", SQ_TURN_PORTRAIT, 50, 30, 20, TRUE, 3, 2, 50 },
    { NULL, SQ_TURN_AS_FITS, 100, 40, 30, FALSE, 1, 1, 100 }, /* A2 */
    { NULL, SQ_TURN_AS_FITS, 20, 40, 30, FALSE, 2, 2, 20 },   /* several A0 */
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (GError) error = NULL;
    SqDrawingSize size = size_of (SQ_METRIC, rows[k].width_m, rows[k].height_m, 0);
    const SqSheet *sheet = rows[k].sheet != NULL ? sq_sheet_find (rows[k].sheet, NULL) : NULL;
    SqSheetChoice choice;
    sq_sheet_choose (&size, sheet, rows[k].turn, rows[k].denominator, TRUE, &choice, &error);
    g_assert_no_error (error);
    g_test_message ("row %u", k);
    g_assert_cmpint (choice.portrait, ==, rows[k].portrait);
    g_assert_cmpuint (choice.columns, ==, rows[k].columns);
    g_assert_cmpuint (choice.rows, ==, rows[k].rows);
    g_assert_cmpfloat (choice.denominator, ==, rows[k].scale);
    if (sheet != NULL)
      g_assert_true (choice.sheet == sheet);
  }
}

/* The scale or the sheet after @word in @text. Returns: (transfer full) (nullable) */
static char *
named (const char *text, const char *word)
{
  const char *at = text != NULL ? strstr (text, word) : NULL;
  if (at == NULL)
    return NULL;
  const char *end = strstr (at, " or ");
  at += strlen (word);
  return end != NULL ? g_strndup (at, (gsize)(end - at)) : g_strdup (at);
}

static void
assert_usable (const SqDrawingSize *size, const SqSheet *sheet, double denominator)
{
  g_autoptr (GError) error = NULL;
  SqSheetChoice choice;
  sq_sheet_choose (size, sheet, SQ_TURN_AS_FITS, denominator, FALSE, &choice, &error);
  g_assert_no_error (error);
  g_assert_true (sq_sheet_holds (size, &choice));
  g_assert_cmpfloat (sq_sheet_words_share (size, &choice), <=, SQ_MOST_WORDS);
}

/* Whatever is chosen holds the drawing; whatever is advised does too, and has room for words. */
static void
test_advice (void)
{
  guint advised = 0;
  for (double width_m = 1.0; width_m < 300.0; width_m *= 1.31)
    for (double height_m = 1.0; height_m < 200.0; height_m *= 1.47)
      for (guint n_words = 0; n_words <= 160; n_words += 40) {
        SqDrawingSize size = size_of (SQ_METRIC, width_m, height_m, n_words);
        const SqSheet *sheet = sq_sheet_find (n_words % 80 == 0 ? "A3" : "tabloid", NULL);
        SqSheetChoice choice;
        g_assert_true (sq_sheet_choose (&size, NULL, SQ_TURN_AS_FITS, 0.0, TRUE, &choice, NULL));
        g_assert_true (sq_sheet_holds (&size, &choice));
        if (!sq_sheet_choose (&size, sheet, SQ_TURN_AS_FITS, 50.0, TRUE, &choice, NULL))
          continue;
        if (choice.columns * choice.rows == 1)
          continue;
        g_autofree char *better = sq_sheet_better (&size, &choice);
        g_autofree char *scale = named (better, "scale "), *other = named (better, "sheet ");
        double denominator;
        if (scale != NULL) {
          g_assert_true (sq_scale_parse (scale, &denominator, NULL));
          assert_usable (&size, sheet, denominator);
        }
        if (other != NULL)
          assert_usable (&size, sq_sheet_find (other, NULL), 50.0);
        advised += better != NULL;
      }
  g_assert_cmpuint (advised, >, 50);
}

/* One line; the scale that it names takes no more sheets than are allowed. */
static void
test_too_many (void)
{
  g_autoptr (GError) error = NULL;
  SqDrawingSize size = size_of (SQ_METRIC, 200.0, 150.0, 10);
  const SqSheet *sheet = sq_sheet_find ("A4", NULL);
  SqSheetChoice choice;
  double denominator;
  g_assert_false (sq_sheet_choose (&size, sheet, SQ_TURN_AS_FITS, 20.0, TRUE, &choice, &error));
  g_assert_error (error, SQ_ERROR, SQ_ERROR_USAGE);
  g_assert_null (strchr (error->message, '\n'));
  g_autofree char *scale = named (error->message, "expected scale ");
  g_assert_true (sq_scale_parse (scale, &denominator, NULL));
  g_assert_true (sq_sheet_choose (&size, sheet, SQ_TURN_AS_FITS, denominator, TRUE, &choice, NULL));
  g_assert_cmpuint (choice.columns * choice.rows, <=, SQ_MOST_TILES);

  /* Where a page cannot go on several, the line names what holds it. */
  g_clear_error (&error);
  size = size_of (SQ_METRIC, 18.0, 9.0, 10);
  sheet = sq_sheet_find ("A3", NULL);
  g_assert_false (sq_sheet_choose (&size, sheet, SQ_TURN_AS_FITS, 50.0, FALSE, &choice, &error));
  g_assert_cmpstr (error->message, ==,
                   "sheet: the drawing is 18.00" NB "m × 9.00" NB "m, A3 at 1:50 has room for "
                   "13.90" NB "m × 10.65" NB "m, expected scale 1:100 or sheet A2");
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/sheet choice/by itself", test_by_itself);
  g_test_add_func ("/sheet choice/as asked", test_as_asked);
  g_test_add_func ("/sheet choice/advice is usable", test_advice);
  g_test_add_func ("/sheet choice/too many sheets", test_too_many);
  return g_test_run ();
}
