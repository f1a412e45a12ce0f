/* test-draw.c: the plan's geometry: true lengths, symbols, throws, tags and where they stand */
#include "draw/beam-angles.h"
#include "draw/camera-symbol.h"
#include "draw/mark-label.h"
#include "draw/panel-symbol.h"
#include "draw/place-tags.h"
#include "draw/plan.h"
#include "draw/ray-cut.h"
#include "draw/throw.h"
#include "draw/wall-drawing.h"

#include <string.h>

/* A length on paper is right to a tenth of a millimetre. */
#define PAPER_MM 0.1
/* Geometry that is computed in one go is right to rounding. */
#define EXACT 1e-9

#define assert_near(got, wanted, within)                                                           \
  G_STMT_START                                                                                     \
  {                                                                                                \
    double got_ = (got), wanted_ = (wanted);                                                       \
    if (!(fabs (got_ - wanted_) <= (within)))                                                      \
      g_error ("%s:%d: %s is %.9g, wanted %.9g", __FILE__, __LINE__, #got, got_, wanted_);         \
  }                                                                                                \
  G_STMT_END

static const SqView one_to_fifty = {
    .mm_per_m = 20.0, .origin = {50.0, 220.0}, .clip = {20.0, 10.0, 306.0, 241.0}};

/* @text: JSON, where ' may stand for " */
static SqScene *
scene_of (const char *json)
{
  g_autofree char *text = g_strdelimit (g_strdup (json), "'", '"');
  g_autoptr (SqLibrary) library = sq_library_new ();
  g_autoptr (GError) error = NULL;
  SqScene *scene = sq_scene_parse (text, strlen (text), library, NULL, &error);
  g_assert_no_error (error);
  return scene;
}

/* A page that keeps what is drawn on it as shapes. */
typedef struct {
  cairo_surface_t *surface;
  cairo_t *cairo;
  SqDrawing *drawing;
} Page;

static Page
open_page (const SqView *view)
{
  Page page = {.surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL)};
  page.cairo = cairo_create (page.surface);
  page.drawing = sq_drawing_new (page.cairo, view);
  return page;
}

static void
close_page (Page *page)
{
  sq_drawing_free (page->drawing);
  cairo_destroy (page->cairo);
  cairo_surface_destroy (page->surface);
}

/* --- view, pens, inks --- */

static void
test_screen_pens (void)
{
  /* Pens on screen in pixels: at least one, halves between (the page of pens and their pixels). */
  static const double rows[][2] = {{0.13, 1}, {0.18, 1},   {0.25, 1}, {0.35, 1.5},
                                   {0.50, 2}, {0.70, 2.5}, {1.00, 4}};
  SqView screen = {.ground = SQ_GROUND_LIGHT}, paper = {.ground = SQ_GROUND_PAPER};
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    assert_near (sq_view_pen_mm (&screen, rows[i][0]) * SQ_SCREEN_PX_PER_MM, rows[i][1], EXACT);
    assert_near (sq_view_pen_mm (&paper, rows[i][0]), rows[i][0], EXACT);
  }
}

static gboolean
same_dash (const SqRoleLine *a, const SqRoleLine *b)
{
  if (a->n_dashes != b->n_dashes)
    return FALSE;
  for (int i = 0; i < a->n_dashes; i++)
    if (fabs (a->dash_mm[i] - b->dash_mm[i]) > 0.05)
      return FALSE;
  return TRUE;
}

static void
test_role_dashes (void)
{
  for (int i = 0; i < SQ_ROLE_LINES; i++) {
    g_assert_nonnull (sq_role_lines[i].word);
    for (int j = i + 1; j < SQ_ROLE_LINES; j++) {
      g_assert_false (same_dash (&sq_role_lines[i], &sq_role_lines[j]));
      g_assert_cmpstr (sq_role_lines[i].word, !=, sq_role_lines[j].word);
    }
  }
}

static void
test_one_ink (void)
{
  SqView mono = {.mono = TRUE};
  SqColour ink = sq_ink (&mono, SQ_INK);
  for (int i = 0; i < SQ_ROLE_LINES; i++) {
    SqColour role = sq_role_colour (&mono, i);
    g_assert_true (role.red == ink.red && role.green == ink.green && role.blue == ink.blue);
  }
}

static void
test_clip_line (void)
{
  const SqPaperBox box = {10, 10, 20, 10};
  double enter, leave;
  g_assert_true (
      sq_paper_clip_line (box, (SqPaperPoint){0, 15}, (SqPaperPoint){40, 15}, &enter, &leave));
  assert_near (enter, 0.25, EXACT);
  assert_near (leave, 0.75, EXACT);
  g_assert_false (
      sq_paper_clip_line (box, (SqPaperPoint){0, 0}, (SqPaperPoint){40, 5}, NULL, NULL));
  g_assert_false (
      sq_paper_clip_line (box, (SqPaperPoint){0, 15}, (SqPaperPoint){9, 15}, NULL, NULL));
}

/* --- walls --- */

static void
test_true_length (void)
{
  g_autoptr (SqScene) scene = scene_of (
      "{'format': 1, 'walls': [{'id': 'w', 'path': [[0, 0], [8, 0]], 'thickness': 0.2}]}");
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
      {"centre", 4.1, -0.1, 3.9, 0.1},
      {"left", 4.0, 0.0, 3.8, 0.2},
      {"right", 4.2, -0.2, 4.0, 0.0},
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text =
        g_strdup_printf ("{\"format\": 1, \"walls\": [{\"id\": \"w\", \"side\": \"%s\", "
                         "\"thickness\": 0.2, \"path\": [[0, 0], [4, 0], [4, 3]]}]}",
                         rows[i].side);
    g_autoptr (SqScene) scene = scene_of (text);
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
      scene_of ("{'format': 1, 'walls': [{'id': 'w', 'path': [[0, 0], [6, 0]], 'thickness': 0.2, "
                "'openings': ["
                "{'id': 'b', 'kind': 'door', 'edge': 0, 'offset': 4, 'width': 0.9},"
                "{'id': 'a', 'kind': 'window', 'edge': 0, 'offset': 1, 'width': 1.5}]}]}");
  static const double from[] = {0, 1, 2.5, 4, 4.9}, to[] = {1, 2.5, 4, 4.9, 6};
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
      scene_of ("{'format': 1, 'walls': [{'id': 'w', 'path': [[0, 0], [4, 0]], 'thickness': 0.2},"
                "{'id': 'v', 'path': [[2, 0.1], [2, 3]], 'thickness': 0.2}]}");
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  const SqView view = {.mm_per_m = 20.0, .origin = {10.0, 70.0}};
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
  g_autoptr (SqScene) scene = scene_of (
      "{'format': 1, 'room': {'ceiling_height': 4}, 'walls': [{'id': 'w', 'path': [[3, -5], [3, "
      "5]],"
      "'thickness': 0.2, 'height': 3, 'openings': [{'id': 'o', 'kind': 'window', 'edge': 0,"
      "'offset': 4, 'width': 2, 'sill': 0.9, 'head': 2.1}]}],"
      "'panels': [{'id': 'g', 'kind': 'flag', 'at': [1, 3, 1.5], 'facing': 0, 'width': 1,"
      "'height': 1}]}");
  static const struct {
    SqPoint from;
    SqVector toward;
    double cut_m;
  } rows[] = {
      {{0, 0, 1.5}, {1, 0, 0}, 9.0},     /* out of the window */
      {{0, 0, 2.5}, {1, 0, 0}, 2.9},     /* over its head: the face */
      {{0, 0, 0.5}, {1, 0, 0}, 2.9},     /* under its sill */
      {{0, 2, 1.5}, {1, 0, 0}, 2.9},     /* beside it */
      {{0, 0, 3.5}, {1, 0, 0}, 9.0},     /* over the wall */
      {{0, 3, 1.5}, {1, 0, 0}, 1.0},     /* the flag */
      {{0, 3, 2.2}, {1, 0, 0}, 2.9},     /* over the flag */
      {{0, 0, 1.5}, {3, 0, -4}, 1.875},  /* the floor: 1.5 / sin */
      {{-6, 0, 1.5}, {-3, 0, 4}, 3.125}, /* the ceiling */
  };
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    assert_near (sq_ray_cut_m (scene, blocks, rows[i].from, rows[i].toward, 9.0), rows[i].cut_m,
                 EXACT);
}

/* --- symbols --- */

static void
test_least_sizes (void)
{
  static const char *const ids[] = {
      "tungsten-fresnel-150",  "led-spot-60",     "bulb-tungsten-25", "candle",
      "open-face-800",         "par-can-narrow",  "profile-19",       "softlight-2000",
      "discharge-fresnel-200", "paper-lantern-75"};
  g_autoptr (SqLibrary) library = sq_library_new ();
  for (double mm_per_m = 2.0; mm_per_m <= 50.0; mm_per_m *= 1.7) {
    SqView view = {.mm_per_m = mm_per_m};
    for (guint i = 0; i < G_N_ELEMENTS (ids); i++) {
      SqLamp lamp = {.lamp_class = sq_library_class (library, ids[i])};
      g_assert_nonnull (lamp.lamp_class);
      SqLampSize size = sq_lamp_size (&view, &lamp);
      g_assert_cmpfloat (size.width_mm, >=, 4.0 - EXACT);
      g_assert_cmpfloat (size.depth_mm, >=, 4.0 - EXACT);
      if (size.skirt_mm == 0.0 && size.form == SQ_FORM_AIMED)
        g_assert_cmpfloat (size.face_mm, <=, 0.94 * size.width_mm + EXACT);
    }
    SqLamp tube = {.lamp_class = sq_library_class (library, "led-tube-120")};
    SqLampSize size = sq_lamp_size (&view, &tube);
    g_assert_cmpfloat (size.width_mm, >=, 4.0 - EXACT);
    g_assert_cmpfloat (size.depth_mm, >=, 2.6 - EXACT);
  }
}

static void
test_true_sizes (void)
{
  /* Where the scale leaves room, width across and depth along are the class's own. */
  g_autoptr (SqLibrary) library = sq_library_new ();
  SqLamp lamp = {.lamp_class = sq_library_class (library, "discharge-fresnel-4000")};
  SqLampSize size = sq_lamp_size (&one_to_fifty, &lamp);
  assert_near (size.width_mm, 20.0 * lamp.lamp_class->body->width_m, EXACT);
  assert_near (size.depth_mm, 20.0 * lamp.lamp_class->body->depth_m, EXACT);
  assert_near (size.face_mm, 20.0 * lamp.lamp_class->face->width_m, EXACT);

  lamp.lamp_class = sq_library_class (library, "led-panel-60x30");
  lamp.roll_deg = 90.0; /* upright: as wide as it was high */
  size = sq_lamp_size (&one_to_fifty, &lamp);
  assert_near (size.width_mm, 20.0 * lamp.lamp_class->body->height_m, EXACT);

  lamp.roll_deg = 0.0; /* overhead: its whole face is seen */
  lamp.elevation_deg = -80.0;
  size = sq_lamp_size (&one_to_fifty, &lamp);
  g_assert_cmpint (size.form, ==, SQ_FORM_DOWN);
  assert_near (size.width_mm, 20.0 * lamp.lamp_class->body->width_m, EXACT);
  assert_near (size.depth_mm, 20.0 * lamp.lamp_class->body->height_m, EXACT);
}

static void
test_modifiers_in_order (void)
{
  g_autoptr (SqScene) scene = scene_of (
      "{'format': 1, 'fixtures': ["
      "{'id': 'bare', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 2], 'aim': [5, 0, 2]},"
      "{'id': 'dressed', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 2], 'aim': [5, 0, 2],"
      " 'modifiers': [{'kind': 'scrim', 'stops': 1}, {'kind': 'gel', 'material': 'half-blue'}]}]}");
  double reach[2];
  for (guint i = 0; i < 2; i++) {
    SqLamp lamp = sq_lamp_of_fixture (scene, SQ_AT (SqFixture, scene->fixtures, i), &one_to_fifty);
    reach[i] = sq_lamp_reach_mm (&one_to_fifty, &lamp);
  }
  /* 1.1 to the first; two lines of a scrim 0.75 each and 0.45 after; a gel 1.2. */
  assert_near (reach[1] - reach[0], 1.1 + 2 * 0.75 + 0.45 + 1.2, EXACT);
}

static void
test_panel_width (void)
{
  SqPanelMark mark = {.kind = SQ_PANEL_BOUNCE, .width_m = 1.2, .rise_m = 1.2};
  assert_near (sq_panel_outline (&one_to_fifty, &mark).half_width_mm, 12.0, EXACT);
  mark.width_m = 0.1;
  assert_near (sq_panel_outline (&one_to_fifty, &mark).half_width_mm, 2.0, EXACT);
}

static void
test_camera_field (void)
{
  static const struct {
    double focal, gate, squeeze;
  } rows[] = {{40, 24.9, 1}, {18, 36.7, 1}, {75, 24.9, 2}, {300, 16, 1}};
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf (
        "{\"format\": 1, \"marks\": [{\"id\": \"m\", \"at\": [4, 3]}], \"cameras\": [{\"id\": "
        "\"c\","
        "\"at\": [0, 0, 1.5], \"aim\": \"m\", \"focal_mm\": %g, \"gate_mm\": [%g, 18],"
        "\"squeeze\": %g}]}",
        rows[i].focal, rows[i].gate, rows[i].squeeze);
    g_autoptr (SqScene) scene = scene_of (text);
    g_autoptr (GArray) blocks = sq_wall_blocks (scene);
    SqCameraField field =
        sq_camera_field (&one_to_fifty, scene, blocks, SQ_AT (SqCamera, scene->cameras, 0));
    double half = atan (rows[i].gate * rows[i].squeeze / (2 * rows[i].focal));
    assert_near (field.half_rad, half, EXACT);
    assert_near (field.frame_mm, 5.0 * 20.0, 1e-6); /* 3, 4, 5 */
    for (int edge = 0; edge < 2; edge++) {
      SqPaperPoint at = sq_camera_edge_at (&field, edge, 60.0);
      double angle = atan2 (-(at.y_mm - field.pupil.y_mm), at.x_mm - field.pupil.x_mm);
      assert_near (angle, atan2 (3, 4) + (edge == 0 ? half : -half), EXACT);
    }
  }
}

/* --- throw --- */

static const char one_lamp[] =
    "{'format': 1, 'room': {'ceiling_height': null}, 'fixtures': [{'id': 'f', 'class': "
    "'tungsten-fresnel-2000', 'at': [0, 0, 3], 'aim': [6, 2, 1.5], 'beam': 0.5}]}";

static void
test_stop_ticks (void)
{
  g_autoptr (SqScene) scene = scene_of (one_lamp);
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  const SqFixture *fixture = SQ_AT (SqFixture, scene->fixtures, 0);
  SqThrow way = sq_throw (&one_to_fifty, scene, blocks, fixture, FALSE);
  SqPoint aim = {6, 2, 1.5};
  double whole = sq_vector_length (sq_vector_between (fixture->at, aim));

  g_assert_true (way.any && way.aim_tick);
  g_assert_cmpint (way.n_ticks, >=, 5);
  for (int n = 0; n < way.n_ticks; n++) {
    SqPlace at = sq_view_place (&one_to_fifty, way.tick[n]);
    /* The point of the axis above that place, and how much brighter it is there by 1 / d². */
    double share = at.x_m / 6.0;
    SqPoint point = {at.x_m, at.y_m, 3.0 + share * (1.5 - 3.0)};
    double distance = sq_vector_length (sq_vector_between (fixture->at, point));
    assert_near (at.y_m, at.x_m / 3.0, EXACT);
    assert_near (log2 (pow (whole / distance, 2)), n, 1e-9);
  }
}

static void
test_ticks_count_from_frame (void)
{
  g_autoptr (SqScene) scene = scene_of (
      "{'format': 1, 'fixtures': [{'id': 'f', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 2],"
      "'aim': [8, 0, 2]}], 'panels': [{'id': 'g', 'kind': 'diffusion', 'material': 'full-white',"
      "'at': [3, 0, 2], 'facing': 180, 'width': 1.2, 'height': 1.2}]}");
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  SqThrow way =
      sq_throw (&one_to_fifty, scene, blocks, SQ_AT (SqFixture, scene->fixtures, 0), FALSE);
  g_assert_false (way.hard); /* the frame is the source now */
  for (int n = 0; n < way.n_ticks; n++)
    assert_near (sq_view_place (&one_to_fifty, way.tick[n]).x_m, 3.0 + 5.0 * pow (2.0, -n / 2.0),
                 EXACT);
}

static void
test_axis_is_cut (void)
{
  g_autoptr (SqScene) scene = scene_of ("{'format': 1, 'walls': [{'id': 'w', 'path': [[4, -3], [4, "
                                        "3]], 'thickness': 0.2, 'height': 3}],"
                                        "'fixtures': [{'id': 'f', 'class': 'tungsten-fresnel-650', "
                                        "'at': [0, 0, 2], 'aim': [8, 0, 2]}]}");
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  SqThrow way =
      sq_throw (&one_to_fifty, scene, blocks, SQ_AT (SqFixture, scene->fixtures, 0), FALSE);
  assert_near (sq_view_place (&one_to_fifty, way.axis.to).x_m, 3.9, EXACT);
  g_assert_false (way.aim_tick);
  g_assert_cmpint (way.n_ticks, >, 0);
  for (int n = 0; n < way.n_ticks; n++)
    g_assert_cmpfloat (sq_view_place (&one_to_fifty, way.tick[n]).x_m, <=, 3.9);
}

static void
test_beam_angles (void)
{
  g_autoptr (SqScene) scene = scene_of (
      "{'format': 1, 'classes': [{'id': 'k', 'optics': 'lens', 'source': 'led', 'beams': ["
      "{'beam_deg': 10, 'field_deg': 18, 'peak_cd': 9}, {'beam_deg': 40, 'field_deg': 72,"
      "'peak_cd': 1}]}], 'fixtures': ["
      "{'id': 'spot', 'class': 'k', 'at': [0, 0, 2], 'beam': 0},"
      "{'id': 'mid', 'class': 'k', 'at': [0, 0, 2], 'beam': 0.5},"
      "{'id': 'boxed', 'class': 'k', 'at': [0, 0, 2], 'modifiers': [{'kind': 'softbox', 'width': 1,"
      " 'height': 1, 'material': 'full-white'}]},"
      "{'id': 'snoot', 'class': 'k', 'at': [0, 0, 2], 'modifiers': [{'kind': 'snoot',"
      " 'cutoff_deg': 20}]}]}");
  double half, tenth;
  g_assert_true (sq_fixture_beam_deg (scene, SQ_AT (SqFixture, scene->fixtures, 0), &half, &tenth));
  assert_near (half, 10.0, EXACT);
  g_assert_true (sq_fixture_beam_deg (scene, SQ_AT (SqFixture, scene->fixtures, 1), &half, &tenth));
  assert_near (half, 20.0, 1e-9); /* the geometric mean of 10 and 40 */
  assert_near (tenth, 36.0, 1e-9);
  g_assert_false (sq_fixture_is_hard (scene, SQ_AT (SqFixture, scene->fixtures, 2)));

  /* A snoot passes (2 / π)(acos s - s √(1 - s²)), s = tan g / tan c: overlap of two equal discs. */
  g_assert_true (sq_fixture_beam_deg (scene, SQ_AT (SqFixture, scene->fixtures, 3), &half, &tenth));
  const double angles[] = {half, tenth}, passes[] = {0.5, 0.1};
  for (int i = 0; i < 2; i++) {
    double s = tan (SQ_RADIANS (angles[i] / 2)) / tan (SQ_RADIANS (20));
    assert_near ((2 / G_PI) * (acos (s) - s * sqrt (1 - s * s)), passes[i], 0.002);
  }
}

/* --- tags --- */

static void
test_tag_text (void)
{
  static const char fixtures[] =
      "{'format': 1, 'units': 'metric', 'fixtures': ["
      "{'id': 'on', 'number': '7', 'class': 'tungsten-fresnel-650', 'at': [0, 0, 2.4]},"
      "{'id': 'dim', 'number': '12A', 'class': 'tungsten-fresnel-650', 'at': [0, 0, 2.4],"
      " 'level': 0.6, 'role': 'back', 'mount': 'pipe'},"
      "{'id': 'off', 'class': 'tungsten-fresnel-650', 'at': [0, 0, 2.4], 'on': false},"
      "{'id': 'gel', 'number': '9', 'class': 'tungsten-fresnel-650', 'at': [0, 0, 2.4], 'level': "
      "0.3,"
      " 'modifiers': [{'kind': 'gel', 'material': 'half-blue'}], 'role': 'fill'}],"
      "'looks': [{'id': 'night', 'name': 'Night', 'fixtures': {'dim': {'level': 0.6}}}]}";
  static const struct {
    int fixture;
    SqUnits units;
    const char *number, *level_row, *height, *role;
  } rows[] = {
      {0, SQ_METRIC, "7", "100\u00a0%   3200\u00a0K", "2.40\u00a0m", "KEY"},
      {0, SQ_IMPERIAL, "7", "100\u00a0%   3200\u00a0K", "7'10½\"", "KEY"},
      {1, SQ_METRIC, "12A", "60\u00a0%   3200\u00a0K", "2.40\u00a0m", "BACK"},
      {2, SQ_METRIC, "off", "off", "2.40\u00a0m", "KEY"},
      {2, SQ_IMPERIAL, "off", "off", "7'10½\"", "KEY"},
      {3, SQ_METRIC, "9", "30\u00a0%   half blue", "2.40\u00a0m", "FILL"},
  };
  g_autoptr (SqScene) base = scene_of (fixtures);
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
  static const char *const order[] = {"1", "2", "2A", "10", "10B", "x1"};
  for (guint i = 0; i < G_N_ELEMENTS (order); i++)
    for (guint j = 0; j < G_N_ELEMENTS (order); j++) {
      SqFixture a = {.number = (char *)order[i]}, b = {.number = (char *)order[j]};
      int compared = sq_unit_number_compare (&a, &b);
      g_assert_true ((compared < 0) == (i < j) && (compared > 0) == (i > j));
    }
}

static void
test_back_stops (void)
{
  /* The set stop for a flat receptor needs flat_c / dome_c of what a dome needs. */
  SqMeterSettings meter = {.flat_c = 250, .dome_c = 340};
  SqScene scene = {.meter = &meter};
  SqReadings readings = {.scene = &scene, .set_lux = 340};
  SqMarkReading reading = {.back_lux = 500};
  assert_near (sq_back_from_set_stops (&readings, &reading), 1.0, EXACT);
  reading.back_lux = 125;
  assert_near (sq_back_from_set_stops (&readings, &reading), -1.0, EXACT);
  reading.back_lux = 0;
  g_assert_true (isnan (sq_back_from_set_stops (&readings, &reading)));
}

/* --- placing --- */

static SqWish
plain_wish (double x_mm, double y_mm)
{
  SqWish wish = {.about = {{x_mm, y_mm}, 0, 3, 3}, .n_details = 1, .most_mm = 40, .may_lead = TRUE};
  for (int side = 0; side < SQ_ROWS_SIDES; side++) {
    wish.head[side] = (SqPaperBox){-4, -3, 8, 7};
    wish.rows[0][side] = (SqPaperBox){side == SQ_ROWS_RIGHT ? 5 : -35, -4, 30, 9};
  }
  return wish;
}

static void
test_pinned (void)
{
  g_autoptr (SqLabelObstacles) obstacles = sq_label_obstacles_new ((SqPaperBox){0, 0, 300, 200});
  SqWish wishes[2] = {plain_wish (100, 100), plain_wish (110, 100)};
  wishes[1].pinned = TRUE;
  wishes[1].at = (SqPaperPoint){108, 100};
  sq_place_tags (wishes, 2, obstacles);
  assert_near (wishes[1].at.x_mm, 108, 0.0);
  assert_near (wishes[1].at.y_mm, 100, 0.0);
  g_assert_false (sq_paper_boxes_overlap (sq_wish_box (&wishes[0]), sq_wish_box (&wishes[1])));
}

static void
test_keeps_to_field (void)
{
  const SqPaperBox field = {0, 0, 120, 80};
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
  const SqPaperBox field = {0, 0, 86, 60};
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

/* --- whole plans --- */

/* A believable set: a room, people, cameras, grip, and lamps no nearer to each other than half a
 * metre, in the room and round it. */
static char *
random_plan (GRand *dice, int n_lamps)
{
  static const char *const classes[] = {
      "tungsten-fresnel-650", "tungsten-fresnel-2000", "open-face-800",          "par-can-medium",
      "profile-26",           "led-panel-60x30",       "led-tube-120",           "softlight-2000",
      "paper-lantern-75",     "bulb-tungsten-60",      "discharge-fresnel-1200", "led-spot-300",
      "fluorescent-4x120"};
  static const char *const roles[] = {"key", "fill", "back", "side", "top", "background"};
  static const char *const panels[] = {"'kind': 'flag'", "'kind': 'net', 'material': 'single-net'",
                                       "'kind': 'diffusion', 'material': 'half-white'",
                                       "'kind': 'bounce', 'material': 'foam-board'"};
  double width = g_rand_double_range (dice, 6, 10), depth = g_rand_double_range (dice, 5, 7.5);
  double x[32], y[32];
  GString *text = g_string_new ("{'format': 1, 'room': {'ceiling_height': 3.5}, ");

  g_string_append_printf (
      text,
      "'walls': [{'id': 'w', 'closed': true, 'thickness': 0.2, 'height': 3, 'path': [[0, 0], "
      "[%.2f, "
      "0], [%.2f, %.2f], [0, %.2f]], 'openings': [{'id': 'o', 'kind': 'window', 'edge': 2, "
      "'offset': 1.5, 'width': 1.8}, {'id': 'd', 'kind': 'door', 'edge': 0, 'offset': 1, "
      "'width': 0.9}]}], 'marks': [{'id': 'mA', 'label': 'A', 'at': [%.2f, %.2f]}, {'id': 'mB', "
      "'label': 'B', 'at': [%.2f, %.2f], 'posture': 'sit'}], 'cameras': [{'id': 'c1', 'label': "
      "'1', "
      "'at': [%.2f, 0.8, 1.5], 'aim': 'mA'}], 'fixtures': [",
      width, width, depth, depth, 0.35 * width, 0.5 * depth, 0.65 * width, 0.55 * depth,
      g_rand_double_range (dice, 1, width - 1));
  for (int i = 0; i < n_lamps; i++) {
    for (gboolean near = TRUE; near;) {
      x[i] = g_rand_double_range (dice, -1.5, width + 1.5);
      y[i] = g_rand_double_range (dice, -1.0, depth + 1.2);
      near = FALSE;
      for (int j = 0; j < i; j++)
        near = near || hypot (x[i] - x[j], y[i] - y[j]) < 0.5;
    }
    g_string_append_printf (
        text,
        "%s{'id': 'f%d', 'number': '%d', 'class': '%s', 'at': [%.2f, %.2f, %.2f], 'aim': '%s', "
        "'level': %.1f, 'role': '%s'}",
        i > 0 ? ", " : "", i, i + 1, classes[g_rand_int_range (dice, 0, G_N_ELEMENTS (classes))],
        x[i], y[i], g_rand_double_range (dice, 1.2, 3), g_rand_boolean (dice) ? "mA" : "mB",
        g_rand_double_range (dice, 0.1, 1),
        roles[g_rand_int_range (dice, 0, G_N_ELEMENTS (roles))]);
  }
  g_string_append (text, "], 'panels': [");
  for (int i = 0, n = g_rand_int_range (dice, 0, 5); i < n; i++)
    g_string_append_printf (
        text,
        "%s{'id': 'g%d', %s, 'at': [%.2f, %.2f, 2], 'facing': %d, 'width': "
        "1.2, 'height': 1.2}",
        i > 0 ? ", " : "", i, panels[g_rand_int_range (dice, 0, G_N_ELEMENTS (panels))],
        g_rand_double_range (dice, 0.5, width - 0.5), g_rand_double_range (dice, 0.5, depth - 0.5),
        g_rand_int_range (dice, 0, 360));
  g_string_append (text, "]}");
  return g_string_free (text, FALSE);
}

static SqPlanReport *
report_of (const SqScene *scene, const SqView *view)
{
  SqPlanReport *report = sq_plan_report_new ();
  const SqPlanRequest request = {.scene = scene, .report = report};
  Page page = open_page (view);
  sq_draw_plan (page.drawing, &request);
  close_page (&page);
  return report;
}

/* Square millimetres that labels of one plan share, and how many pairs of them do. */
static double
shared_mm2 (const SqPlanReport *report, guint *pairs)
{
  double shared = 0.0;
  for (guint i = 0; i < report->labels->len; i++)
    for (guint j = i + 1; j < report->labels->len; j++) {
      double both = sq_paper_overlap_mm2 (g_array_index (report->labels, SqLabel, i).box,
                                          g_array_index (report->labels, SqLabel, j).box);
      shared += both;
      *pairs += both > 0.0;
    }
  return shared;
}

#define PLANS 60
#define MOST_LAMPS 20 /* on an A3 sheet at 1:50, lamps half a metre apart or more */

static void
test_no_overlaps (void)
{
  GRand *dice = g_rand_new_with_seed (20);
  guint labels = 0, tags = 0, less = 0, bad_plans = 0;
  double worst = 0.0;

  for (int plan = 0; plan < PLANS; plan++) {
    int n_lamps = 1 + plan * MOST_LAMPS / PLANS;
    g_autofree char *text = random_plan (dice, n_lamps);
    g_autoptr (SqScene) scene = scene_of (text);
    g_autoptr (SqPlanReport) report = report_of (scene, &one_to_fifty);
    guint pairs = 0;
    double shared = shared_mm2 (report, &pairs);
    labels += report->labels->len;
    tags += (guint)n_lamps;
    less += report->crowded->len;
    bad_plans += pairs > 0;
    worst = MAX (worst, shared);
    for (guint i = 0; i < report->labels->len; i++)
      if (g_array_index (report->labels, SqLabel, i).kind == SQ_LABEL_TAG)
        g_assert_true (sq_paper_box_within (g_array_index (report->labels, SqLabel, i).box,
                                            one_to_fifty.clip));
  }
  g_rand_free (dice);
  g_test_message (
      "%d plans, %u labels: %u plans with overlaps, worst %.2f mm²; %u of %u tags say less", PLANS,
      labels, bad_plans, worst, less, tags);
  g_assert_cmpuint (bad_plans, ==, 0);
  g_assert_cmpuint (less * 20, <=, tags); /* hardly ever at the cost of what a tag says */
}

static void
test_same_plan_same_labels (void)
{
  GRand *dice = g_rand_new_with_seed (7);
  g_autofree char *text = random_plan (dice, 14);
  g_autoptr (SqScene) scene = scene_of (text);
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
  g_autoptr (SqScene) scene = scene_of (
      "{'format': 1, 'fixtures': ["
      "{'id': 'a', 'number': '10', 'class': 'tungsten-fresnel-650', 'at': [1, 1, 2]},"
      "{'id': 'b', 'number': '2', 'class': 'tungsten-fresnel-2000', 'at': [4, 1, 2], 'role': "
      "'fill',"
      " 'aim': [6, 5, 1], 'mount': 'pipe'},"
      "{'id': 'c', 'number': '3', 'class': 'led-panel-60x30', 'at': [7, 1, 2], 'on': false},"
      "{'id': 'h', 'number': '4', 'class': 'par-can-medium', 'at': [9, 1, 2], 'hidden': true}],"
      "'notes': [{'id': 'n1', 'text': 'one', 'at': [2, 5]}, {'id': 'n2', 'text': 'two', 'at': [3, "
      "5],"
      "'hidden': true}, {'id': 'n3', 'text': 'three', 'at': [4, 5]}],"
      "'panels': [{'id': 'g', 'kind': 'flag', 'at': [5, 3, 2], 'width': 1, 'height': 1}]}");
  g_autoptr (SqPlanReport) report = sq_plan_report_new ();
  const SqPlanRequest request = {
      .scene = scene, .report = report, .underlay = count_labels, .underlay_data = report};
  Page page = open_page (&one_to_fifty);
  sq_draw_plan (page.drawing, &request);
  close_page (&page);

  g_assert_cmpuint (report->crowded->len, ==, 1); /* the overlay was drawn, once */
  g_assert_cmpuint (report->notes->len, ==, 2);
  g_assert_cmpstr (SQ_AT (SqNote, report->notes, 1)->id, ==, "n3");
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
  g_test_add_func ("/draw/pens/whole and half pixels on screen", test_screen_pens);
  g_test_add_func ("/draw/roles/no two share a dash or a word", test_role_dashes);
  g_test_add_func ("/draw/roles/one ink where only one is allowed", test_one_ink);
  g_test_add_func ("/draw/boxes/a line clipped", test_clip_line);
  g_test_add_func ("/draw/walls/eight metres are 160 mm at 1:50", test_true_length);
  g_test_add_func ("/draw/walls/corners are mitred on each side", test_corners);
  g_test_add_func ("/draw/walls/openings cut them", test_openings_cut);
  g_test_add_func ("/draw/walls/no line where two join", test_joined_walls);
  g_test_add_func ("/draw/rays/what stops them", test_ray_cut);
  g_test_add_func ("/draw/lamps/never too small to read", test_least_sizes);
  g_test_add_func ("/draw/lamps/true to scale", test_true_sizes);
  g_test_add_func ("/draw/lamps/modifiers stand in order outward", test_modifiers_in_order);
  g_test_add_func ("/draw/panels/true width", test_panel_width);
  g_test_add_func ("/draw/cameras/edges at atan (width over twice the focal length)",
                   test_camera_field);
  g_test_add_func ("/draw/throw/each tick is one stop", test_stop_ticks);
  g_test_add_func ("/draw/throw/ticks count from a frame", test_ticks_count_from_frame);
  g_test_add_func ("/draw/throw/a wall cuts the axis", test_axis_is_cut);
  g_test_add_func ("/draw/throw/beam angles", test_beam_angles);
  g_test_add_func ("/draw/tags/what they say", test_tag_text);
  g_test_add_func ("/draw/tags/units are counted as people count", test_unit_order);
  g_test_add_func ("/draw/marks/back light from the set stop", test_back_stops);
  g_test_add_func ("/draw/placing/a hand-placed tag stays", test_pinned);
  g_test_add_func ("/draw/placing/labels keep to the field", test_keeps_to_field);
  g_test_add_func ("/draw/placing/crowded tags say less", test_says_less);
  g_test_add_func ("/draw/plan/no label lies on another", test_no_overlaps);
  g_test_add_func ("/draw/plan/the same plan is labelled the same way", test_same_plan_same_labels);
  g_test_add_func ("/draw/plan/it tells what it uses", test_report);
  return g_test_run ();
}
