/* test-plan.c: what a plan says, where its tags stand, what it tells of itself */
#include "draw-page.h"
#include "draw/mark-label.h"
#include "draw/place-tags.h"
#include "draw/plan.h"
#include "random-plan.h"

static void
test_tag_text (void)
{
  static const char fixtures[] =
    "'units': 'metric', 'fixtures': ["
    "{'id': 'on', 'number': '7', 'class': 'tungsten-fresnel-650', 'at': [0, 0, 2.4]},"
    "{'id': 'dim', 'number': '12A', 'class': 'tungsten-fresnel-650', 'at': [0, 0, 2.4],"
    " 'level': 0.6, 'role': 'back', 'mount': 'pipe'},"
    "{'id': 'off', 'class': 'tungsten-fresnel-650', 'at': [0, 0, 2.4], 'on': false},"
    "{'id': 'gel', 'number': '9', 'class': 'tungsten-fresnel-650', 'at': [0, 0, 2.4], 'level': "
    "0.3,"
    " 'modifiers': [{'kind': 'gel', 'material': 'half-blue'}], 'role': 'fill'}],"
    "'looks': [{'id': 'night', 'name': 'Night', 'fixtures': {'dim': {'level': 0.6}}}]";
  static const struct {
    int fixture;
    SqUnits units;
    const char *number, *level_row, *height, *role;
  } rows[] = {
    { 0, SQ_METRIC, "7", "100\u00a0%   3200\u00a0K", "2.40\u00a0m", "KEY" },
    { 0, SQ_IMPERIAL, "7", "100\u00a0%   3200\u00a0K", "7'10½\"", "KEY" },
    { 1, SQ_METRIC, "12A", "60\u00a0%   3200\u00a0K", "2.40\u00a0m", "BACK" },
    { 2, SQ_METRIC, "off", "off", "2.40\u00a0m", "KEY" },
    { 2, SQ_IMPERIAL, "off", "off", "7'10½\"", "KEY" },
    { 3, SQ_METRIC, "9", "30\u00a0%   half blue", "2.40\u00a0m", "FILL" },
  };
  g_autoptr (SqScene) base = right_scene (fixtures);
  g_autoptr (GError) error = NULL;
  g_autoptr (SqScene) scene = sq_scene_in_look (base, "night", &error);
  g_assert_no_error (error);

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, (guint)rows[i].fixture);
    g_autoptr (SqTagText) text = sq_tag_text_new (scene, fixture, rows[i].units, 0);
    g_autofree char *level = sq_tag_level_row (text, SQ_TAG_FULL);
    g_assert_cmpstr (text->number, ==, rows[i].number);
    g_assert_cmpstr (text->type, ==, "Fresnel 650 W");
    g_assert_cmpstr (level, ==, rows[i].level_row);
    g_assert_cmpstr (text->height, ==, rows[i].height);
    g_assert_cmpstr (text->role_word, ==, rows[i].role);
    g_assert_true (text->on == (rows[i].fixture != 2));
    g_assert_true (text->changed == (rows[i].fixture == 1));
    g_assert_cmpint (text->mount, ==, rows[i].fixture == 1 ? SQ_GLYPH_HUNG : SQ_GLYPH_STAND);
  }
  /* Where it is crowded the colour goes first. */
  g_autoptr (SqTagText) text =
    sq_tag_text_new (base, SQ_AT (SqFixture, base->fixtures, 3), SQ_METRIC, 0);
  g_autofree char *level = sq_tag_level_row (text, SQ_TAG_NO_COLOUR);
  g_assert_cmpstr (level, ==, "30\u00a0%");
  g_assert_false (text->changed);
}

static void
test_unit_order (void)
{
  static const char *const order[] = { "1", "2", "2A", "10", "10B", "x1" };
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    for (guint j = 0; j < G_N_ELEMENTS (order); j++) {
      SqFixture a = { .number = (char *)order[i] }, b = { .number = (char *)order[j] };
      int compared = sq_unit_number_compare (&a, &b);
      g_assert_true ((compared < 0) == (i < j) && (compared > 0) == (i > j));
    }
}

static void
test_back_stops (void)
{
  /* The set stop for a flat receptor needs flat_c / dome_c of what a dome needs. */
  SqMeterSettings meter = { .flat_c = 250, .dome_c = 340 };
  SqScene scene = { .meter = &meter };
  SqReadings readings = { .scene = &scene, .set_lux = 340 };
  SqMarkReading reading = { .back_lux = 500 };
  assert_near (sq_back_from_set_stops (&readings, &reading), 1.0, EXACT);
  reading.back_lux = 125;
  assert_near (sq_back_from_set_stops (&readings, &reading), -1.0, EXACT);
  /* Nothing, and the far tail of a beam. */
  reading.back_lux = 0;
  g_assert_true (isnan (sq_back_from_set_stops (&readings, &reading)));
  reading.back_lux = 1e-20;
  g_assert_true (isnan (sq_back_from_set_stops (&readings, &reading)));
}

static void
test_mark_text (void)
{
  static const struct {
    double lux, t_stop, ratio, back_lux;
    const char *light, *line;
  } rows[] = {
    { 340, 4.0, 6.94, 500, "340\u00a0lx  T4", "6.9 : 1   back +1" },
    { 340, 4.0, 16.2, 0, "340\u00a0lx  T4", "16 : 1" },
    { 340, 4.0, NAN, 0, "340\u00a0lx  T4", "no fill" },
    { 0, NAN, NAN, 0, "0\u00a0lx  dark", "no light" },
    { 1e-20, NAN, NAN, 1e-20, "0\u00a0lx  dark", "no light" },
  };
  SqMeterSettings meter = { .flat_c = 250, .dome_c = 340 };
  SqScene scene = { .meter = &meter };
  SqReadings readings = { .scene = &scene, .set_lux = 340 };
  SqMark mark = { .label = (char *)"A" };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    /* The plain ratio, which is not shown here, is another one. */
    SqMarkReading reading = { .mark = &mark,
                              .lux = rows[i].lux,
                              .t_stop = rows[i].t_stop,
                              .ratio = 99,
                              .shown_ratio = rows[i].ratio,
                              .back_lux = rows[i].back_lux };
    g_autoptr (SqMarkLabel) label = sq_mark_label_new (&mark, &readings, &reading, SQ_METRIC);
    g_assert_cmpstr (label->light, ==, rows[i].light);
    g_assert_cmpstr (label->ratio, ==, rows[i].line);
  }
}

static void
test_obstacles (void)
{
  /* Half of a wall 4 mm wide, 10 mm of it long, and a line across: 2 · 10 · 4 + 6. */
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 99, 99 });
  const SqPaperBox label = { 10, 10, 20, 10 };
  sq_label_obstacles_add_box (obstacles, (SqPaperBox){ 28, 0, 4, 50 }, SQ_COST_WALL, NULL);
  sq_label_obstacles_add_line (obstacles, (SqPaperLine){ { 15, 0 }, { 15, 50 } }, SQ_COST_AXIS);
  sq_label_obstacles_add_line (obstacles, (SqPaperLine){ { 5, 0 }, { 5, 50 } }, SQ_COST_AXIS);
  assert_near (sq_label_obstacles_cost (obstacles, label), 2 * 10 * 4.0 + 6.0, EXACT);
}

static SqWish
plain_wish (double x_mm, double y_mm)
{
  SqWish wish = {
    .about = { { x_mm, y_mm }, 0, 3, 3 }, .n_details = 1, .most_mm = 40, .may_lead = TRUE
  };
  for (int side = 0; side < SQ_ROWS_SIDES; side++) {
    wish.head[side] = (SqPaperBox){ -4, -3, 8, 7 };
    wish.rows[0][side] = (SqPaperBox){ side == SQ_ROWS_RIGHT ? 5 : -35, -4, 30, 9 };
  }
  return wish;
}

static void
test_pinned (void)
{
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 300, 200 });
  SqWish wishes[2] = { plain_wish (100, 100), plain_wish (110, 100) };
  wishes[1].pinned = TRUE;
  wishes[1].at = (SqPaperPoint){ 108, 100 };
  sq_place_tags (wishes, 2, obstacles);
  assert_near (wishes[1].at.x_mm, 108, 0.0);
  assert_near (wishes[1].at.y_mm, 100, 0.0);
  g_assert_false (sq_paper_boxes_overlap (sq_wish_box (&wishes[0]), sq_wish_box (&wishes[1])));
}

/* What need not be said goes where it would cover something, and stays where there is room. */
static void
test_leaves_out (void)
{
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 300, 200 });
  SqWish wishes[2] = { plain_wish (60, 100), plain_wish (240, 100) };
  for (int i = 0; i < 2; i++) {
    wishes[i].most_mm = 6;
    wishes[i].most_cost = 10;
  }
  sq_label_obstacles_add_box (obstacles, (SqPaperBox){ 0, 0, 140, 200 }, SQ_COST_BODY, NULL);
  sq_place_tags (wishes, 2, obstacles);
  g_assert_true (wishes[0].left_out);
  g_assert_false (wishes[1].left_out);
}

static void
test_keeps_to_field (void)
{
  const SqPaperBox field = { 0, 0, 120, 80 };
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new (field);
  for (int corner = 0; corner < 4; corner++) {
    SqWish wish = plain_wish (corner % 2 ? 117 : 3, corner / 2 ? 77 : 3);
    sq_place_tags (&wish, 1, obstacles);
    g_assert_true (sq_paper_box_within (sq_wish_box (&wish), field));
  }
}

static void
test_says_less (void)
{
  /* Nine labels in a field that holds few of them whole: they shrink rather than cover. */
  const SqPaperBox field = { 0, 0, 86, 60 };
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new (field);
  SqWish wishes[9];
  guint less = 0;
  for (int i = 0; i < 9; i++) {
    wishes[i] = plain_wish (20 + 23 * (i % 3), 12 + 18 * (i / 3));
    wishes[i].n_details = 2; /* the second one: the pill alone */
  }
  sq_place_tags (wishes, 9, obstacles);
  for (int i = 0; i < 9; i++) {
    less += wishes[i].detail > 0;
    for (int j = i + 1; j < 9; j++)
      g_assert_false (sq_paper_boxes_overlap (sq_wish_box (&wishes[i]), sq_wish_box (&wishes[j])));
  }
  g_assert_cmpuint (less, >, 0);
}

static SqPlanReport *
report_of (const SqScene *scene, const SqView *view)
{
  SqPlanReport *report = sq_plan_report_new ();
  const SqPlanRequest request = { .scene = scene, .report = report };
  Page page = open_page (view);
  sq_draw_plan (page.drawing, &request);
  close_page (&page);
  return report;
}

#define PLANS 60
#define MOST_LAMPS 20 /* on an A3 sheet at 1:50, lamps half a metre apart or more */

static void
test_no_overlaps (void)
{
  GRand *dice = g_rand_new_with_seed (20);
  guint labels = 0, tags = 0, less = 0, bad_plans = 0, covered = 0;
  double worst = 0.0;

  for (int plan = 0; plan < PLANS; plan++) {
    int n_lamps = 1 + plan * MOST_LAMPS / PLANS;
    g_autofree char *text = random_plan (dice, n_lamps);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (SqPlanReport) report = report_of (scene, &one_to_fifty);
    guint pairs = 0;
    double shared = shared_mm2 (report, &pairs);
    labels += report->labels->len;
    tags += (guint)n_lamps;
    less += report->crowded->len;
    bad_plans += pairs > 0;
    worst = MAX (worst, shared);
    covered += covered_things (scene, report, &one_to_fifty);
    for (guint i = 0; i < report->labels->len; i++)
      if (g_array_index (report->labels, SqLabel, i).kind == SQ_LABEL_TAG)
        g_assert_true (
          sq_paper_box_within (g_array_index (report->labels, SqLabel, i).box, one_to_fifty.clip));
  }
  g_rand_free (dice);
  g_test_message (
    "%d plans, %u labels: %u plans with overlaps, worst %.2f mm2; %u of %u tags say less", PLANS,
    labels, bad_plans, worst, less, tags);
  g_assert_cmpuint (bad_plans, ==, 0);
  g_assert_cmpuint (covered, ==, 0);
  g_assert_cmpuint (less * 20, <=, tags); /* hardly ever at the cost of what a tag says */
}

static void
test_same_plan_same_labels (void)
{
  GRand *dice = g_rand_new_with_seed (7);
  g_autofree char *text = random_plan (dice, 14);
  g_autoptr (SqScene) scene = right_scene (text);
  g_autoptr (SqPlanReport) one = report_of (scene, &one_to_fifty);
  g_autoptr (SqPlanReport) other = report_of (scene, &one_to_fifty);
  g_assert_cmpuint (one->labels->len, ==, other->labels->len);
  for (guint i = 0; i < one->labels->len; i++) {
    SqPaperBox a = g_array_index (one->labels, SqLabel, i).box;
    SqPaperBox b = g_array_index (other->labels, SqLabel, i).box;
    g_assert_true (a.x_mm == b.x_mm && a.y_mm == b.y_mm);
  }
  g_rand_free (dice);
}

static SqPaperBox
label_box (const SqPlanReport *report, gconstpointer thing)
{
  for (guint i = 0; i < report->labels->len; i++) {
    const SqLabel *label = &g_array_index (report->labels, SqLabel, i);
    if (label->thing == thing)
      return label->box;
  }
  g_error ("that thing has no label");
}

/* Sill and head of a window stand in the room; behind the wall where a flag stands in the way. */
static void
test_window_gives_way (void)
{
  static const char room[] =
    "'walls': [{'id': 'w', 'path': [[0, 0], [5, 0], [5, 4], [0, 4]], 'closed': true,"
    " 'thickness': 0.2, 'openings': [{'id': 'o', 'edge': 2, 'offset': 1.5, 'width': 2}]}],"
    "'marks': [{'id': 'm', 'label': 'A', 'at': [2.5, 1.5]}]";
  const double wall_y_mm = sq_view_paper (&one_to_fifty, (SqPlace){ 0, 4 }).y_mm;
  for (int blocked = 0; blocked < 2; blocked++) {
    g_autofree char *text = g_strconcat (
      room,
      blocked ? ", 'panels': [{'id': 'g', 'kind': 'flag', 'at': [2.5, 3.78, 2], 'facing': 270,"
                " 'width': 3.4, 'height': 1}]"
              : "",
      NULL);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (SqPlanReport) report = report_of (scene, &one_to_fifty);
    const SqWall *wall = SQ_AT (SqWall, scene->walls, 0);
    SqPaperBox box = label_box (report, g_ptr_array_index (wall->openings, 0));
    g_assert_cmpint (sq_paper_box_middle (box).y_mm < wall_y_mm, ==, blocked);
  }
}

/* A note by the border is drawn whole; words of a piece give way to it. */
static void
test_notes_stand (void)
{
  g_autoptr (SqScene) scene = right_scene (
    "'pieces': [{'id': 'p', 'label': 'cabinet', 'outline': [[3, 3], [5, 3], [5, 5], [3, 5]],"
    " 'base': 0, 'top': 1}],"
    "'notes': [{'id': 'edge', 'text': 'x', 'at': [-1.48, 5]},"
    " {'id': 'inside', 'text': 'x', 'at': [4, 4]}]");
  g_autoptr (SqPlanReport) report = report_of (scene, &one_to_fifty);
  SqPaperBox edge = label_box (report, g_ptr_array_index (scene->notes, 0));
  SqPaperBox inside = label_box (report, g_ptr_array_index (scene->notes, 1));
  SqPaperBox piece = label_box (report, g_ptr_array_index (scene->pieces, 0));
  g_assert_true (sq_paper_box_within (edge, one_to_fifty.clip));
  g_assert_false (sq_paper_boxes_overlap (inside, piece));
}

/* A dimension lies its offset to the left of its way: 4 m up, 1 m to the west. Where there are no
 * walls what a lamp is aimed at is part of the plan too. */
static void
test_extent (void)
{
  static const struct {
    const char *scene;
    SqPlace least, most;
  } rows[] = {
    { "'dimensions': [{'id': 'd', 'from': [2, 1], 'to': [2, 5], 'offset': 1}]",
      { 1, 1 },
      { 2, 5 } },
    { "'fixtures': [{'id': 'f', 'class': 'open-face-800', 'at': [0, 0, 2], 'aim': [3, 0, 1]}]",
      { -0.5, -0.5 },
      { 3.3, 0.5 } },
    { "'fixtures': [{'id': 'f', 'class': 'open-face-800', 'at': [0, 0, 2], 'aim': [3, 0, 1]}],"
      "'walls': [{'id': 'w', 'path': [[0, 0], [1, 0]], 'thickness': 0.1}]",
      { -0.5, -0.5 },
      { 1, 0.5 } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqScene) scene = right_scene (rows[i].scene);
    SqPlace least, most;
    g_assert_true (sq_plan_extent_m (scene, &least, &most));
    assert_near (least.x_m, rows[i].least.x_m, EXACT);
    assert_near (least.y_m, rows[i].least.y_m, EXACT);
    assert_near (most.x_m, rows[i].most.x_m, EXACT);
    assert_near (most.y_m, rows[i].most.y_m, EXACT);
  }
}

/* The overlay is asked for below everything, when all labels are known already. */
static void
count_labels (SqDrawing *drawing, gpointer data)
{
  SqPlanReport *report = data;
  g_assert_cmpuint (report->labels->len, >, 0);
  g_ptr_array_add (report->crowded, NULL);
}

static void
test_report (void)
{
  g_autoptr (SqScene) scene = right_scene (
    "'fixtures': ["
    "{'id': 'a', 'number': '10', 'class': 'tungsten-fresnel-650', 'at': [1, 1, 2]},"
    "{'id': 'b', 'number': '2', 'class': 'tungsten-fresnel-2000', 'at': [4, 1, 2], 'role': "
    "'fill',"
    " 'aim': [6, 5, 1], 'mount': 'pipe'},"
    "{'id': 'c', 'number': '3', 'class': 'led-panel-60x30', 'at': [7, 1, 2], 'on': false,"
    " 'tag_at': [8, 6]},"
    "{'id': 'h', 'number': '4', 'class': 'par-can-medium', 'at': [9, 1, 2], 'hidden': true}],"
    "'notes': [{'id': 'n1', 'text': 'one', 'at': [2, 5]}, {'id': 'n2', 'text': 'two', 'at': [3, "
    "5],"
    "'hidden': true}, {'id': 'n3', 'text': 'three', 'at': [4, 5]}],"
    "'panels': [{'id': 'g', 'kind': 'flag', 'at': [5, 3, 2], 'width': 1, 'height': 1}]");
  g_autoptr (SqPlanReport) report = sq_plan_report_new ();
  const SqPlanRequest request = {
    .scene = scene, .report = report, .underlay = count_labels, .underlay_data = report
  };
  Page page = open_page (&one_to_fifty);
  sq_draw_plan (page.drawing, &request);
  close_page (&page);

  g_assert_cmpuint (report->crowded->len, ==, 1); /* the overlay was drawn, once */
  g_assert_cmpuint (report->notes->len, ==, 2);
  g_assert_cmpstr (SQ_AT (SqNote, report->notes, 1)->id, ==, "n3");
  for (guint i = 0; i < report->labels->len; i++) {
    const SqLabel *label = &g_array_index (report->labels, SqLabel, i);
    const SqPaperPoint by_hand = sq_view_paper (&one_to_fifty, (SqPlace){ 8, 6 });
    if (label->thing != g_ptr_array_index (scene->fixtures, 2))
      continue;
    g_assert_true (label->by_hand);
    g_assert_true (
      sq_paper_box_within ((SqPaperBox){ by_hand.x_mm, by_hand.y_mm, 0, 0 }, label->box));
  }
  /* One fresnel stands for both; units in the order they are counted. */
  g_assert_cmpuint (report->use.lamps->len, ==, 2);
  g_assert_cmpstr (SQ_AT (SqFixture, report->use.lamps, 0)->id, ==, "b");
  g_assert_cmpstr (SQ_AT (SqFixture, report->use.lamps, 1)->id, ==, "c");
  g_assert_cmphex (report->use.mounts, ==, 1u << SQ_GLYPH_STAND | 1u << SQ_GLYPH_HUNG);
  g_assert_cmphex (report->use.roles, ==, 1u << SQ_ROLE_KEY | 1u << SQ_ROLE_FILL);
  g_assert_cmphex (report->use.panels, ==, 1u << SQ_PANEL_FLAG);
  g_assert_true (report->use.points_down && report->use.off && report->use.ticks);
  g_assert_false (report->use.changed || report->use.cameras || report->use.people);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/tags/what they say", test_tag_text);
  g_test_add_func ("/draw/tags/units are counted as people count", test_unit_order);
  g_test_add_func ("/draw/marks/back light from the set stop", test_back_stops);
  g_test_add_func ("/draw/placing/a hand-placed tag stays", test_pinned);
  g_test_add_func ("/draw/marks/what they say", test_mark_text);
  g_test_add_func ("/draw/placing/what need not be said is left out", test_leaves_out);
  g_test_add_func ("/draw/plan/figures of a window give way", test_window_gives_way);
  g_test_add_func ("/draw/plan/notes stand where they are", test_notes_stand);
  g_test_add_func ("/draw/plan/how far it reaches", test_extent);
  g_test_add_func ("/draw/placing/labels keep to the field", test_keeps_to_field);
  g_test_add_func ("/draw/placing/crowded tags say less", test_says_less);
  g_test_add_func ("/draw/plan/no label lies on another", test_no_overlaps);
  g_test_add_func ("/draw/plan/the same plan is labelled the same way", test_same_plan_same_labels);
  g_test_add_func ("/draw/plan/it tells what it uses", test_report);
  g_test_add_func ("/draw/placing/what a place costs", test_obstacles);
  return g_test_run ();
}
