/* test-placing.c: where labels stand among obstacles and among each other */
#include "draw-page.h"
#include "draw/label-index.h"
#include "draw/place-tags.h"

static void
test_cover (void)
{
  /* A label of 20 by 10 over half of a wall 4 mm wide, 10 mm of it long, a body that lies 0.5 mm
   * off it, and a line across; another line passes by. */
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 99, 99 });
  const SqPaperBox label = { 10, 10, 20, 10 };
  sq_label_obstacles_add_box (obstacles, (SqPaperBox){ 28, 0, 4, 50 }, SQ_COST_WALL, NULL);
  sq_label_obstacles_add_box (obstacles, (SqPaperBox){ 10, 20.5, 20, 5 }, SQ_COST_BODY, NULL);
  sq_label_obstacles_add_line (obstacles, (SqPaperLine){ { 15, 0 }, { 15, 50 } }, SQ_COST_AXIS);
  sq_label_obstacles_add_line (obstacles, (SqPaperLine){ { 5, 0 }, { 5, 50 } }, SQ_COST_AXIS);
  g_autoptr (SqLabelIndex) index = sq_label_index_new (obstacles);
  SqLabelCover cover = sq_label_index_cover (index, label, 1.0);
  assert_near (cover.boxes_cost, 2 * 10 * SQ_COST_WALL, EXACT);
  assert_near (cover.lines_cost, SQ_COST_AXIS, EXACT);
  assert_near (cover.solid_mm2, 0.0, EXACT);
  assert_near (cover.solid_in_air_mm2, 20 * 0.5, EXACT);
}

/* The grid finds what going through all of them finds. */
static void
test_grid (void)
{
  const SqPaperBox field = { 20, 10, 300, 200 };
  GRand *dice = g_rand_new_with_seed (12);
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new (field);
  for (int i = 0; i < 300; i++) {
    SqPaperLine line;
    line.from.x_mm = g_rand_double_range (dice, -50, 400);
    line.from.y_mm = g_rand_double_range (dice, -50, 300);
    line.to.x_mm = line.from.x_mm + g_rand_double_range (dice, -90, 90);
    line.to.y_mm = i % 5 == 0 ? line.from.y_mm : g_rand_double_range (dice, -50, 300);
    sq_label_obstacles_add_line (obstacles, line, 1.0);
    double width_mm = g_rand_double_range (dice, 0.5, 30);
    sq_label_obstacles_add_box (obstacles, (SqPaperBox){ line.to.x_mm, line.to.y_mm, width_mm, 4 },
                                SQ_COST_BODY, obstacles);
  }
  g_autoptr (SqLabelIndex) index = sq_label_index_new (obstacles);
  for (int i = 0; i < 500; i++) {
    double x_mm = g_rand_double_range (dice, -20, 330), y_mm = g_rand_double_range (dice, -20, 230);
    SqPaperBox box = { x_mm, y_mm, g_rand_double_range (dice, 1, 60), 8 };
    SqPaperLine leader = { { x_mm, y_mm }, { x_mm + box.width_mm, y_mm + 20 } };
    double covered_mm2 = 0.0, lines = 0.0, crossed = 0.0;
    for (guint j = 0; j < obstacles->boxes->len; j++) {
      SqPaperBox other = g_array_index (obstacles->boxes, SqObstacle, j).box;
      covered_mm2 += sq_paper_overlap_mm2 (box, other);
      crossed += sq_paper_line_hits (leader, other) ? SQ_COST_LEADER_BODY : 0.0;
    }
    for (guint j = 0; j < obstacles->lines->len; j++) {
      SqPaperLine line = g_array_index (obstacles->lines, SqObstacleLine, j).line;
      lines += sq_paper_line_hits (line, box);
      crossed += sq_paper_lines_cross (line.from, line.to, leader.from, leader.to);
    }
    SqLabelCover cover = sq_label_index_cover (index, box, 0.5);
    assert_near (cover.solid_mm2, covered_mm2, EXACT);
    assert_near (cover.lines_cost, lines, EXACT);
    assert_near (sq_label_index_leader_cost (index, leader, NULL), crossed, EXACT);
    /* Nothing is in the way of what belongs to it. */
    assert_near (sq_label_index_leader_cost (index, leader, obstacles),
                 fmod (crossed, SQ_COST_LEADER_BODY), EXACT);
  }
  g_rand_free (dice);
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

/* One that stands on something makes the one beside it step aside, however it came there first. */
static void
test_steps_aside (void)
{
  /* The narrow one may stand at one place only; the wide one came first and took it. */
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 300, 200 });
  g_autoptr (GArray) spots = g_array_new (FALSE, FALSE, sizeof (SqLabelSpot));
  SqWish wishes[2] = { plain_wish (100, 100), plain_wish (140, 100) };
  g_autoptr (SqLabelObstacles) none = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 300, 200 });
  sq_place_tags (wishes, 1, none);
  const SqLabelSpot only = { wishes[0].at, 0.0 };
  g_array_append_val (spots, only);
  wishes[1].spots = spots;
  sq_place_tags (wishes, 2, obstacles);
  assert_near (wishes[1].at.x_mm, only.at.x_mm, EXACT);
  assert_near (wishes[1].at.y_mm, only.at.y_mm, EXACT);
  g_assert_false (sq_paper_boxes_overlap (sq_wish_box (&wishes[0]), sq_wish_box (&wishes[1])));
}

/* Words that may go do where all their places are taken; a tag does not. */
static void
test_may_go (void)
{
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 300, 200 });
  sq_label_obstacles_add_box (obstacles, (SqPaperBox){ 50, 50, 100, 100 }, SQ_COST_BODY, NULL);
  for (int may = 0; may < 2; may++) {
    g_autoptr (GArray) spots = g_array_new (FALSE, FALSE, sizeof (SqLabelSpot));
    const SqLabelSpot taken = { { 100, 100 }, 0.0 };
    SqWish wish = plain_wish (100, 100);
    g_array_append_val (spots, taken);
    wish.spots = spots;
    wish.may_go = may;
    sq_place_tags (&wish, 1, obstacles);
    g_assert_cmpint (wish.left_out, ==, may);
  }
}

/* A tag of a lamp in a room stays in it where there is room, though outside there is more. */
static void
test_stays_in_room (void)
{
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 300, 200 });
  sq_label_obstacles_add_box (obstacles, (SqPaperBox){ 50, 90, 200, 5 }, SQ_COST_WALL, NULL);
  SqWish wish = plain_wish (100, 100);
  sq_place_tags (&wish, 1, obstacles);
  g_assert_cmpfloat (sq_paper_box_middle (sq_wish_box (&wish)).y_mm, >, 90.0);
}

/* Nearer to another lamp than to its own a tag has a leader, however near it is. */
static void
test_says_whose (void)
{
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 300, 200 });
  g_autoptr (SqLabelObstacles) crowd = sq_label_obstacles_new ((SqPaperBox){ 0, 0, 300, 200 });
  SqWish alone = plain_wish (100, 100), crowded = alone;
  sq_place_tags (&alone, 1, obstacles);
  g_assert_false (alone.has_leader);
  /* Round about it others stand closer than it can. */
  for (int side = 0; side < 4; side++) {
    double x_mm = side < 2 ? 100.0 : side == 2 ? 84.0 : 116.0;
    double y_mm = side > 1 ? 100.0 : side == 0 ? 85.0 : 115.0;
    sq_label_obstacles_add_box (
      crowd,
      sq_paper_box_round ((SqPaperPoint){ x_mm, y_mm }, side < 2 ? 60 : 1, side > 1 ? 12 : 1),
      SQ_COST_BODY, NULL);
  }
  sq_place_tags (&crowded, 1, crowd);
  g_assert_true (crowded.has_leader);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/placing/what a place covers and crosses", test_cover);
  g_test_add_func ("/draw/placing/the grid finds all of it", test_grid);
  g_test_add_func ("/draw/placing/a hand-placed tag stays", test_pinned);
  g_test_add_func ("/draw/placing/what need not be said is left out", test_leaves_out);
  g_test_add_func ("/draw/placing/labels keep to the field", test_keeps_to_field);
  g_test_add_func ("/draw/placing/crowded tags say less", test_says_less);
  g_test_add_func ("/draw/placing/who can stand elsewhere steps aside", test_steps_aside);
  g_test_add_func ("/draw/placing/words go where they would lie on something", test_may_go);
  g_test_add_func ("/draw/placing/tags stay on their side of a wall", test_stays_in_room);
  g_test_add_func ("/draw/placing/a leader says whose tag it is", test_says_whose);
  return g_test_run ();
}
