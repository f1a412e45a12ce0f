/* test-draw.c: true lengths on paper: pens, boxes, walls, rays */
#include "draw-page.h"
#include "draw/point-symbols.h"
#include "draw/ray-cut.h"
#include "draw/wall-drawing.h"

static void
test_screen_pens (void)
{
  /* Pens on screen in pixels: at least one, halves between (the page of pens and their pixels). */
  static const double rows[][2] = { { 0.13, 1 }, { 0.18, 1 },   { 0.25, 1 }, { 0.35, 1.5 },
                                    { 0.50, 2 }, { 0.70, 2.5 }, { 1.00, 4 } };
  SqView screen = { .ground = SQ_GROUND_LIGHT }, paper = { .ground = SQ_GROUND_PAPER };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    assert_near (sq_view_pen_mm (&screen, rows[i][0]) * SQ_SCREEN_PX_PER_MM, rows[i][1], EXACT);
    assert_near (sq_view_pen_mm (&paper, rows[i][0]), rows[i][0], EXACT);
  }
}

/* A number of three digits is wider than its square; a name of 300 letters is no bar across the
 * plan. */
static void
test_long_marks (void)
{
  Page page = open_page (&one_to_fifty);
  g_autofree char *name = g_strnfill (300, 'M');
  const double short_name_mm = 20.0;
  assert_near (sq_note_mark_width_mm (page.drawing, 99), SQ_NOTE_SIDE_MM, EXACT);
  g_assert_cmpfloat (sq_note_mark_width_mm (page.drawing, 100), >, SQ_NOTE_SIDE_MM);
  assert_near (sq_mark_letter_width_mm (page.drawing, "A"), SQ_LETTER_SIDE_MM, EXACT);
  g_assert_cmpfloat (sq_mark_letter_width_mm (page.drawing, name), <, short_name_mm);
  close_page (&page);
}

/* Text in a line stands where it is put, whichever way its script runs. */
static void
test_both_ways (void)
{
  static const char *const words[] = { "ledger", "תאורה" };
  const double ink_mm = 1.0; /* letters do not start quite at their box */
  for (guint i = 0; i < G_N_ELEMENTS (words); i++)
    for (int right = 0; right < 2; right++) {
      const SqType type = { .cap_mm = 2,
                            .width_mm = 50,
                            .one_line = TRUE,
                            .align = right ? SQ_ALIGN_RIGHT : SQ_ALIGN_LEFT };
      double x_mm, width_mm;
      Page page = open_page (&one_to_fifty);
      sq_draw_text (page.drawing, (SqPaperPoint){ 0, 0 }, words[i], &type);
      cairo_recording_surface_ink_extents (page.surface, &x_mm, NULL, &width_mm, NULL);
      assert_near (right ? x_mm + width_mm : x_mm, 0.0, ink_mm);
      close_page (&page);
    }
}

static void
test_moved_within (void)
{
  const SqPaperBox outer = { 10, 10, 100, 50 };
  static const struct {
    SqPaperBox box, moved;
  } rows[] = {
    { { 20, 20, 5, 5 }, { 20, 20, 5, 5 } },
    { { 8, 20, 5, 5 }, { 10, 20, 5, 5 } },
    { { 108, 58, 5, 5 }, { 105, 55, 5, 5 } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    SqPaperBox moved = sq_paper_box_moved_within (rows[i].box, outer);
    assert_near (moved.x_mm, rows[i].moved.x_mm, EXACT);
    assert_near (moved.y_mm, rows[i].moved.y_mm, EXACT);
  }
}

static void
test_clip_line (void)
{
  const SqPaperBox box = { 10, 10, 20, 10 };
  double enter, leave;
  g_assert_true (
    sq_paper_clip_line (box, (SqPaperPoint){ 0, 15 }, (SqPaperPoint){ 40, 15 }, &enter, &leave));
  assert_near (enter, 0.25, EXACT);
  assert_near (leave, 0.75, EXACT);
  g_assert_false (
    sq_paper_clip_line (box, (SqPaperPoint){ 0, 0 }, (SqPaperPoint){ 40, 5 }, NULL, NULL));
  g_assert_false (
    sq_paper_clip_line (box, (SqPaperPoint){ 0, 15 }, (SqPaperPoint){ 9, 15 }, NULL, NULL));
}

static void
test_true_length (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'walls': [{'id': 'w', 'path': [[0, 0], [8, 0]], 'thickness': 0.2}]");
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  Page page = open_page (&one_to_fifty);
  double x, y, width, height;

  /* Extents come in whole units: make them hundredths of a millimetre. */
  cairo_scale (page.cairo, 100.0, 100.0);
  sq_draw_walls (page.drawing, blocks);
  cairo_recording_surface_ink_extents (page.surface, &x, &y, &width, &height);
  /* Ink reaches half a pen past the faces on every side. */
  assert_near (width / 100.0, 8.0 * 20.0 + SQ_PEN_35, PAPER_MM);
  assert_near (height / 100.0, 0.2 * 20.0 + SQ_PEN_35, PAPER_MM);
  assert_near (x / 100.0, 50.0 - SQ_PEN_35 / 2, PAPER_MM);
  close_page (&page);
}

static void
test_corners (void)
{
  /* sides: centre, left, right; the outer or inner corner of a right turn to the left at (4, 0) */
  static const struct {
    const char *side;
    double right_x, right_y, left_x, left_y;
  } rows[] = {
    { "centre", 4.1, -0.1, 3.9, 0.1 },
    { "left", 4.0, 0.0, 3.8, 0.2 },
    { "right", 4.2, -0.2, 4.0, 0.0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf ("'walls': [{'id': 'w', 'side': '%s', "
                                             "'thickness': 0.2, 'path': [[0, 0], [4, 0], [4, 3]]}]",
                                             rows[i].side);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (GArray) blocks = sq_wall_blocks (scene);
    g_assert_cmpuint (blocks->len, ==, 2);
    const SqWallBlock *first = sq_wall_block_at (blocks, 0), *second = sq_wall_block_at (blocks, 1);
    assert_near (first->corner[1].x_m, rows[i].right_x, EXACT);
    assert_near (first->corner[1].y_m, rows[i].right_y, EXACT);
    assert_near (first->corner[2].x_m, rows[i].left_x, EXACT);
    assert_near (first->corner[2].y_m, rows[i].left_y, EXACT);
    assert_near (second->corner[0].x_m, rows[i].right_x, EXACT);
    assert_near (second->corner[0].y_m, rows[i].right_y, EXACT);
  }
}

static void
test_openings_cut (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'walls': [{'id': 'w', 'path': [[0, 0], [6, 0]], 'thickness': 0.2, "
                 "'openings': ["
                 "{'id': 'b', 'kind': 'door', 'edge': 0, 'offset': 4, 'width': 0.9},"
                 "{'id': 'a', 'kind': 'window', 'edge': 0, 'offset': 1, 'width': 1.5}]}]");
  static const double from[] = { 0, 1, 2.5, 4, 4.9 }, to[] = { 1, 2.5, 4, 4.9, 6 };
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  g_assert_cmpuint (blocks->len, ==, G_N_ELEMENTS (from));
  for (guint i = 0; i < blocks->len; i++) {
    assert_near (sq_wall_block_at (blocks, i)->corner[0].x_m, from[i], EXACT);
    assert_near (sq_wall_block_at (blocks, i)->corner[1].x_m, to[i], EXACT);
    g_assert_true ((sq_wall_block_at (blocks, i)->opening != NULL) == (i % 2 == 1));
  }
}

/* Two walls that meet in a T are one grey shape: no line across where they join. */
static void
test_joined_walls (void)
{
  g_autoptr (SqScene) scene =
    right_scene ("'walls': [{'id': 'w', 'path': [[0, 0], [4, 0]], 'thickness': 0.2},"
                 "{'id': 'v', 'path': [[2, 0.1], [2, 3]], 'thickness': 0.2}]");
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  const SqView view = { .mm_per_m = 20.0, .origin = { 10.0, 70.0 } };
  const double px = 10.0; /* to the millimetre */
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 1000, 800);
  cairo_t *cairo = cairo_create (surface);
  cairo_scale (cairo, px, px);
  SqDrawing *drawing = sq_drawing_new (cairo, &view);

  sq_draw_walls (drawing, blocks);
  cairo_surface_flush (surface);
  const guint8 *data = cairo_image_surface_get_data (surface);
  int stride = cairo_image_surface_get_stride (surface);
  for (double y_mm = 67.2; y_mm < 70.8; y_mm += 0.1) {
    guint32 pixel;
    memcpy (&pixel, data + (int)(y_mm * px) * stride + 4 * (int)(50.0 * px), 4);
    g_assert_cmphex (pixel & 0xffffff, ==, 0xCDD1D6);
  }
  sq_drawing_free (drawing);
  cairo_destroy (cairo);
  cairo_surface_destroy (surface);
}

static void
test_ray_cut (void)
{
  g_autoptr (SqScene) scene = right_scene (
    "'room': {'ceiling_height': 4}, 'walls': [{'id': 'w', 'path': [[3, -5], [3, "
    "5]],"
    "'thickness': 0.2, 'height': 3, 'openings': [{'id': 'o', 'kind': 'window', 'edge': 0,"
    "'offset': 4, 'width': 2, 'sill': 0.9, 'head': 2.1}]}],"
    "'panels': [{'id': 'g', 'kind': 'flag', 'at': [1, 3, 1.5], 'facing': 0, 'width': 1,"
    "'height': 1}]");
  static const struct {
    SqPoint from;
    SqVector toward;
    double cut_m;
  } rows[] = {
    { { 0, 0, 1.5 }, { 1, 0, 0 }, 9.0 },     /* out of the window */
    { { 0, 0, 2.5 }, { 1, 0, 0 }, 2.9 },     /* over its head: the face */
    { { 0, 0, 0.5 }, { 1, 0, 0 }, 2.9 },     /* under its sill */
    { { 0, 2, 1.5 }, { 1, 0, 0 }, 2.9 },     /* beside it */
    { { 0, 0, 3.5 }, { 1, 0, 0 }, 9.0 },     /* over the wall */
    { { 0, 3, 1.5 }, { 1, 0, 0 }, 1.0 },     /* the flag */
    { { 0, 3, 2.2 }, { 1, 0, 0 }, 2.9 },     /* over the flag */
    { { 0, 0, 1.5 }, { 3, 0, -4 }, 1.875 },  /* the floor: 1.5 / sin */
    { { -6, 0, 1.5 }, { -3, 0, 4 }, 3.125 }, /* the ceiling */
  };
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_near (sq_ray_cut_m (scene, blocks, rows[i].from, rows[i].toward, 9.0), rows[i].cut_m,
                 EXACT);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/pens/whole and half pixels on screen", test_screen_pens);
  g_test_add_func ("/draw/words/long ones are cut", test_long_marks);
  g_test_add_func ("/draw/words/scripts run both ways", test_both_ways);
  g_test_add_func ("/draw/boxes/moved inside", test_moved_within);
  g_test_add_func ("/draw/boxes/a line clipped", test_clip_line);
  g_test_add_func ("/draw/walls/eight metres are 160 mm at 1:50", test_true_length);
  g_test_add_func ("/draw/walls/corners are mitred on each side", test_corners);
  g_test_add_func ("/draw/walls/openings cut them", test_openings_cut);
  g_test_add_func ("/draw/walls/no line where two join", test_joined_walls);
  g_test_add_func ("/draw/rays/what stops them", test_ray_cut);
  return g_test_run ();
}
