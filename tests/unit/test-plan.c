/* test-plan.c: what a plan says, and what it tells of itself */
#include "draw-page.h"
#include "draw/mark-label.h"
#include "draw/plan.h"

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
    double lux, t_stop, ratio, back_lux, key_lux;
    const char *light, *line;
  } rows[] = {
    { 340, 4.0, 6.94, 500, 290, "340\u00a0lx  T4", "6.9 : 1   back +1" },
    { 340, 4.0, 16.2, 0, 320, "340\u00a0lx  T4", "16 : 1" },
    { 340, 4.0, NAN, 0, 340, "340\u00a0lx  T4", "no fill" },
    /* With fill alone the ratio is 1, which says nothing of a key. */
    { 340, 4.0, 1.0, 0, 0, "340\u00a0lx  T4", "no key" },
    { 0, NAN, NAN, 0, 0, "0\u00a0lx  dark", "no light" },
    { 1e-20, NAN, NAN, 1e-20, 0, "0\u00a0lx  dark", "no light" },
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
                              .key_lux = rows[i].key_lux,
                              .back_lux = rows[i].back_lux };
    g_autoptr (SqMarkLabel) label = sq_mark_label_new (&mark, &readings, &reading, SQ_METRIC);
    g_assert_cmpstr (label->light, ==, rows[i].light);
    g_assert_cmpstr (label->ratio, ==, rows[i].line);
  }
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

/* TRUE if words keep clear of the line between these two places. */
static gboolean
keeps_clear_of (const SqPlanReport *report, SqPlace from, SqPlace to)
{
  SqPaperPoint a = sq_view_paper (&one_to_fifty, from), b = sq_view_paper (&one_to_fifty, to);
  for (guint i = 0; i < report->lines->len; i++) {
    SqPaperLine line = g_array_index (report->lines, SqPaperLine, i);
    if (sq_paper_distance_mm (line.from, a) < PAPER_MM &&
        sq_paper_distance_mm (line.to, b) < PAPER_MM)
      return TRUE;
  }
  return FALSE;
}

/* A door 1 m wide from x = 2 on, in a wall from y = -0.1 to 0.1 whose left face is at 0.1: the leaf
 * is hinged to the face that it opens to. */
static void
test_door_leaf (void)
{
  static const struct {
    int open_deg;
    SqPlace hinge, end, latch;
  } rows[] = {
    { 90, { 2, 0.1 }, { 2, 1.1 }, { 3, 0.1 } },
    { -90, { 2, -0.1 }, { 2, -1.1 }, { 3, -0.1 } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf (
      "'walls': [{'id': 'w', 'path': [[0, 0], [6, 0]], 'thickness': 0.2, 'openings': ["
      "{'id': 'a', 'kind': 'door', 'edge': 0, 'offset': 2, 'width': 1, 'open_deg': %d}]}]",
      rows[i].open_deg);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (SqPlanReport) report = sq_plan_report_new ();
    const SqPlanRequest request = { .scene = scene, .report = report };
    Page page = open_page (&one_to_fifty);
    sq_draw_plan (page.drawing, &request);
    close_page (&page);
    g_assert_true (keeps_clear_of (report, rows[i].hinge, rows[i].end));
    g_assert_true (keeps_clear_of (report, rows[i].end, rows[i].latch));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/tags/what they say", test_tag_text);
  g_test_add_func ("/draw/tags/units are counted as people count", test_unit_order);
  g_test_add_func ("/draw/marks/back light from the set stop", test_back_stops);
  g_test_add_func ("/draw/marks/what they say", test_mark_text);
  g_test_add_func ("/draw/plan/figures of a window give way", test_window_gives_way);
  g_test_add_func ("/draw/plan/notes stand where they are", test_notes_stand);
  g_test_add_func ("/draw/plan/how far it reaches", test_extent);
  g_test_add_func ("/draw/plan/words keep clear of a door's leaf", test_door_leaf);
  g_test_add_func ("/draw/plan/it tells what it uses", test_report);
  return g_test_run ();
}
