/* test-labels.c: on full plans no label lies on another, and leaders are short */
#include "draw/overlay-private.h"
#include "label-measure.h"
#include "label-plots.h"
#include "random-plan.h"

#include <time.h>

#define PLANS 200
#define MOST_LAMPS 60
#define SEED 60

/* Of all tags, on the samples' sheets and on the random plans: in a hundred. */
#define MOST_LONG 2
#define MOST_LESS 1

/* Lines that cannot be kept off: where sixty lamps are aimed at four people, or a window is lit
 * through. On a plate they pass under the words; words without one are crossed one in eight. In a
 * hundred. */
#define MOST_PLATES_CROSSED 55
#define MOST_BARE_CROSSED 15

/* Forty-eight lamps in a hall on a sheet that is too small for it: people's readings stay with them
 * whatever they cover, and leaders find no way. Labels in a hundred. */
#define MOST_CRAMPED 8

/* A lamp is moved so far, and so many of the other tags in a hundred go elsewhere. */
#define MOVE_M 0.05
#define MOVED_MM 1.0
#define MOST_MOVED 2

/* That @count is no more than @percent of @all. */
static void
assert_share (guint count, guint percent, guint all)
{
  g_assert_cmpuint (100 * count, <=, percent * all);
}

static void
add_faults (LabelFaults *sum, const LabelFaults *faults)
{
  guint *to = (guint *)(gpointer)sum;
  const guint *from = (const guint *)(gconstpointer)faults;
  for (gsize k = 0; k < sizeof *sum / sizeof *to; k++)
    to[k] += from[k];
}

/* Where all have room: nothing lies on anything. */
static void
assert_clean (const LabelFaults *faults)
{
  g_assert_cmpuint (faults->pairs, ==, 0);
  g_assert_cmpuint (faults->on_solid, ==, 0);
  g_assert_cmpuint (faults->outside, ==, 0);
  g_assert_cmpuint (faults->leaders_on_labels, ==, 0);
}

static void
count_sample (
  const char *name, const char *sheet, double denominator, gboolean cramped, LabelFaults *all)
{
  g_autoptr (SqScene) scene = sample_scene (name);
  g_autoptr (SqReadings) readings = sq_read_meter (scene, 1, NULL, NULL);
  SqView view = view_on (scene, sheet, denominator);
  g_autoptr (SqPlanReport) report = labels_of (scene, readings, &view);
  LabelFaults faults = { 0 };
  count_faults (report, view.clip, &faults);
  g_autofree char *what = g_strdup_printf ("%s on %s at 1:%g", name, sheet, denominator);
  say_faults (what, &faults);
  g_assert_cmpuint (faults.tags, ==, scene->fixtures->len);
  add_faults (all, &faults);
  if (cramped) {
    assert_share (faults.on_solid, MOST_CRAMPED, faults.labels);
    assert_share (faults.leaders_on_labels, MOST_CRAMPED, faults.labels);
    faults.on_solid = faults.leaders_on_labels = 0;
  }
  assert_clean (&faults);
}

static void
count_random (LabelFaults *all)
{
  GRand *dice = g_rand_new_with_seed (SEED);
  LabelFaults faults = { 0 };
  for (int plan = 0; plan < PLANS; plan++) {
    g_autofree char *text = random_plan (dice, 1 + plan * MOST_LAMPS / PLANS);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (SqReadings) readings = sq_read_meter (scene, 1, NULL, NULL);
    SqView view = view_on_usual_sheet (scene);
    g_autoptr (SqPlanReport) report = labels_of (scene, readings, &view);
    count_faults (report, view.clip, &faults);
  }
  g_rand_free (dice);
  say_faults ("random plans", &faults);
  assert_clean (&faults);
  assert_share (faults.less, MOST_LESS, faults.tags);
  assert_share (faults.plates_crossed, MOST_PLATES_CROSSED, faults.on_plates);
  assert_share (faults.bare_crossed, MOST_BARE_CROSSED, faults.bare);
  add_faults (all, &faults);
}

static void
test_labels (void)
{
  static const struct {
    const char *name, *sheet;
    double denominator;
    gboolean cramped;
  } others[] = {
    { "office-interview", "A4", 50, FALSE },   { "lighthouse-kitchen", "A3", 48, FALSE },
    { "lighthouse-kitchen", "A4", 96, FALSE }, { "ferry-terminal", "A3", 100, FALSE },
    { "ferry-terminal", "A3", 200, TRUE },     { "ferry-terminal", "A4", 200, TRUE },
  };
  LabelFaults all = { 0 };
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++)
    count_sample (samples[i].name, samples[i].sheet, samples[i].denominator, FALSE, &all);
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    count_sample (others[i].name, others[i].sheet, others[i].denominator, others[i].cramped, &all);
  count_random (&all);
  say_faults ("all", &all);
  g_assert_cmpuint (all.pairs, ==, 0);
  assert_share (all.long_leaders, MOST_LONG, all.tags);
}

/* Contours' figures lie on no label and on nothing solid, and hardly ever on a line. */
static void
test_figures (void)
{
  const guint most_crossed = 10;
  guint n_figures = 0, crossed = 0;
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++) {
    g_autoptr (SqScene) scene = sample_scene (samples[i].name);
    SqView view = view_on (scene, samples[i].sheet, samples[i].denominator);
    SqMapRequest request = sq_map_request (scene, 0.15);
    g_autoptr (GError) error = NULL;
    g_autoptr (SqLightMap) map = sq_light_map (scene, &request, 1, NULL, &error);
    g_assert_no_error (error);
    g_autoptr (SqLightOverlay) overlay = sq_light_overlay_new (scene, map);
    g_autoptr (SqReadings) readings = sq_read_meter (scene, 1, NULL, NULL);
    g_autoptr (SqPlanReport) report = labels_of (scene, readings, &view);
    g_autoptr (GArray) boxes = g_array_copy (report->solid);
    for (guint k = 0; k < report->labels->len; k++)
      g_array_append_val (boxes, label_at (report, k)->box);
    const SqKeepClear keep_clear = { (const SqPaperBox *)(gpointer)boxes->data, boxes->len,
                                     (const SqPaperLine *)(gpointer)report->lines->data,
                                     report->lines->len };
    Page page = open_page (&view);
    g_autoptr (GArray) figures =
      sq_overlay_place_figures (page.drawing, overlay, TRUE, &keep_clear);
    close_page (&page);
    n_figures += figures->len;
    for (guint k = 0; k < figures->len; k++) {
      SqPaperBox box = sq_overlay_figure_box (&g_array_index (figures, SqOverlayFigure, k));
      g_assert_true (sq_paper_box_within (box, view.clip));
      for (guint j = 0; j < boxes->len; j++)
        g_assert_false (sq_paper_boxes_overlap (box, g_array_index (boxes, SqPaperBox, j)));
      crossed += is_crossed (report, box);
    }
  }
  g_test_message ("%u of %u figures are crossed by a line", crossed, n_figures);
  g_assert_cmpuint (n_figures, >, 50);
  assert_share (crossed, most_crossed, n_figures);
}

static SqPaperBox
tag_box (const SqPlanReport *report, const char *id)
{
  for (guint i = 0; i < report->labels->len; i++) {
    const SqLabel *label = label_at (report, i);
    if (label->kind == SQ_LABEL_TAG && g_str_equal (((const SqFixture *)label->thing)->id, id))
      return label->box;
  }
  g_error ("no tag for %s", id);
}

/* How many tags but its own go elsewhere where a lamp is moved a little. */
static guint
tags_moved (const SqScene *scene, const SqPlanReport *before, const SqView *view, guint moved)
{
  const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, moved);
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_strdup_printf ("%s.at", fixture->id);
  g_autofree char *at = g_strdup_printf ("[%.3f, %.3f, %.3f]", fixture->at.x_m + MOVE_M,
                                         fixture->at.y_m, fixture->at.z_m);
  g_autoptr (SqScene) then = sq_scene_set (scene, path, at, &error);
  g_assert_no_error (error);
  g_autoptr (SqPlanReport) after = labels_of (then, NULL, view);
  guint n = 0;
  for (guint i = 0; i < scene->fixtures->len; i++) {
    const char *id = SQ_AT (SqFixture, scene->fixtures, i)->id;
    SqPaperBox a = tag_box (before, id), b = tag_box (after, id);
    n += i != moved && hypot (a.x_mm - b.x_mm, a.y_mm - b.y_mm) > MOVED_MM;
  }
  return n;
}

static void
test_stays (void)
{
  guint moved = 0, all = 0;
  for (guint i = 0; i < G_N_ELEMENTS (samples); i++) {
    g_autoptr (SqScene) scene = sample_scene (samples[i].name);
    SqView view = view_on (scene, samples[i].sheet, samples[i].denominator);
    g_autoptr (SqPlanReport) before = labels_of (scene, NULL, &view);
    guint n = scene->fixtures->len, here = 0, worst = 0;
    for (guint j = 0; j < n; j++) {
      guint one = tags_moved (scene, before, &view, j);
      here += one;
      worst = MAX (worst, one);
    }
    g_test_message ("%s: %u of %u tags moved, %u at most by one lamp", samples[i].name, here,
                    n * (n - 1), worst);
    moved += here;
    all += n * (n - 1);
  }
  assert_share (moved, MOST_MOVED, all);
}

static void
test_same (void)
{
  GRand *dice = g_rand_new_with_seed (7);
  g_autofree char *text = random_plan (dice, 25);
  g_autoptr (SqScene) scene = right_scene (text);
  SqView view = view_on_usual_sheet (scene);
  g_autoptr (SqPlanReport) one = labels_of (scene, NULL, &view);
  g_autoptr (SqPlanReport) other = labels_of (scene, NULL, &view);
  g_assert_cmpuint (one->labels->len, ==, other->labels->len);
  for (guint i = 0; i < one->labels->len; i++) {
    SqPaperBox a = label_at (one, i)->box, b = label_at (other, i)->box;
    g_assert_true (a.x_mm == b.x_mm && a.y_mm == b.y_mm);
  }
  g_rand_free (dice);
}

/* More than any sheet has room for. It ends, every lamp has its number, and none is off the sheet;
 * how long it took is said, not asserted. */
static void
test_hundreds (void)
{
  const guint n = 500;
  GRand *dice = g_rand_new_with_seed (n);
  g_autofree char *text = random_plan (dice, (int)n);
  g_autoptr (SqScene) scene = right_scene (text);
  SqView view = view_on_usual_sheet (scene);
  LabelFaults faults = { 0 };
  clock_t before = clock ();
  g_autoptr (SqPlanReport) report = labels_of (scene, NULL, &view);
  double seconds = (double)(clock () - before) / CLOCKS_PER_SEC;
  count_faults (report, view.clip, &faults);
  g_autofree char *what = g_strdup_printf ("%u lamps, %.1f s", n, seconds);
  say_faults (what, &faults);
  g_assert_cmpuint (faults.tags, ==, n);
  g_assert_cmpuint (faults.outside, ==, 0);
  g_rand_free (dice);
}

/* On screen rows go under 32 pixels a metre, the pill under 16; words do not lie on each other at
 * any. */
static void
test_screen (void)
{
  static const struct {
    double px_per_m;
    SqTagDetail least, most;
  } rows[] = {
    { 80, SQ_TAG_FULL, SQ_TAG_NUMBER },   { 32, SQ_TAG_FULL, SQ_TAG_NUMBER },
    { 31, SQ_TAG_NUMBER, SQ_TAG_NUMBER }, { 16, SQ_TAG_NUMBER, SQ_TAG_NUMBER },
    { 15, SQ_TAG_BARE, SQ_TAG_BARE },
  };
  g_autoptr (SqScene) scene = sample_scene ("ferry-terminal");
  SqPlace least, most;
  g_assert_true (sq_plan_extent_m (scene, &least, &most));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    for (int ground = SQ_GROUND_LIGHT; ground <= SQ_GROUND_DARK; ground++) {
      double mm_per_m = rows[i].px_per_m / SQ_SCREEN_PX_PER_MM;
      const SqView view = { .mm_per_m = mm_per_m,
                            .origin = { 20 - least.x_m * mm_per_m, 20 + most.y_m * mm_per_m },
                            .clip = { 0, 0, 40 + (most.x_m - least.x_m) * mm_per_m,
                                      40 + (most.y_m - least.y_m) * mm_per_m },
                            .ground = (SqGround)ground };
      g_autoptr (SqPlanReport) report = labels_of (scene, NULL, &view);
      LabelFaults faults = { 0 };
      count_faults (report, view.clip, &faults);
      g_autofree char *what = g_strdup_printf ("%g px/m", rows[i].px_per_m);
      say_faults (what, &faults);
      g_assert_cmpuint (faults.tags, ==, scene->fixtures->len);
      g_assert_cmpuint (faults.pairs, ==, 0);
      for (guint k = 0; k < report->labels->len; k++) {
        const SqLabel *label = label_at (report, k);
        g_assert_true (label->kind != SQ_LABEL_TAG ||
                       (label->detail >= rows[i].least && label->detail <= rows[i].most));
      }
    }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/labels/none lies on another, and leaders are short", test_labels);
  g_test_add_func ("/draw/labels/figures of contours keep clear of them", test_figures);
  g_test_add_func ("/draw/labels/most stay where they are when a lamp moves", test_stays);
  g_test_add_func ("/draw/labels/the same plan is labelled the same way", test_same);
  g_test_add_func ("/draw/labels/hundreds of lamps", test_hundreds);
  g_test_add_func ("/draw/labels/on screen they say less from afar", test_screen);
  return g_test_run ();
}
