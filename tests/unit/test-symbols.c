/* test-symbols.c: marks of lamps, grip and people: true to scale, and no two alike */
#include "draw-page.h"
#include "draw/opening-symbol.h"
#include "draw/panel-symbol.h"
#include "draw/person.h"
#include "draw/point-symbols.h"
#include "symbol-scene.h"

static void
test_least_sizes (void)
{
  static const char *const ids[] = {
    "tungsten-fresnel-150",  "led-spot-60",     "bulb-tungsten-25", "candle",
    "open-face-800",         "par-can-narrow",  "profile-19",       "softlight-2000",
    "discharge-fresnel-200", "paper-lantern-75"
  };
  g_autoptr (SqLibrary) library = sq_library_new ();
  for (double mm_per_m = 2.0; mm_per_m <= 50.0; mm_per_m *= 1.7) {
    SqView view = { .mm_per_m = mm_per_m };
    for (guint i = 0; i < G_N_ELEMENTS (ids); i++) {
      SqLamp lamp = { .lamp_class = sq_library_class (library, ids[i]) };
      g_assert_nonnull (lamp.lamp_class);
      SqLampSize size = sq_lamp_size (&view, &lamp);
      g_assert_cmpfloat (size.width_mm, >=, 4.0 - EXACT);
      g_assert_cmpfloat (size.depth_mm, >=, 4.0 - EXACT);
      if (size.skirt_mm == 0.0 && size.form == SQ_FORM_AIMED)
        g_assert_cmpfloat (size.face_mm, <=, 0.94 * size.width_mm + EXACT);
    }
    SqLamp tube = { .lamp_class = sq_library_class (library, "led-tube-120") };
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
  SqLamp lamp = { .lamp_class = sq_library_class (library, "discharge-fresnel-4000") };
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
  g_autoptr (SqScene) scene = right_scene (
    "'fixtures': ["
    "{'id': 'bare', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 2], 'aim': [5, 0, 2]},"
    "{'id': 'dressed', 'class': 'tungsten-fresnel-2000', 'at': [0, 0, 2], 'aim': [5, 0, 2],"
    " 'modifiers': [{'kind': 'scrim', 'stops': 1}, {'kind': 'gel', 'material': 'half-blue'}]}]");
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
  SqPanelMark mark = { .kind = SQ_PANEL_BOUNCE, .width_m = 1.2, .rise_m = 1.2 };
  assert_near (sq_panel_outline (&one_to_fifty, &mark).half_width_mm, 12.0, EXACT);
  mark.width_m = 0.1;
  assert_near (sq_panel_outline (&one_to_fifty, &mark).half_width_mm, 2.0, EXACT);
}

/* A small picture of one mark, its own origin 30 mm from the left and 20 mm from the top. */
#define PX_PER_MM 10
#define PICTURE_WIDE_MM 60
#define PICTURE_HIGH_MM 40
#define ORIGIN_X_MM 30.0
#define ORIGIN_Y_MM 20.0

typedef struct {
  cairo_surface_t *surface;
  cairo_t *cairo;
  SqDrawing *drawing;
} Picture;

static Picture
picture_new (const SqView *view)
{
  Picture picture;
  picture.surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, PICTURE_WIDE_MM * PX_PER_MM,
                                                PICTURE_HIGH_MM * PX_PER_MM);
  picture.cairo = cairo_create (picture.surface);
  cairo_set_source_rgb (picture.cairo, 1, 1, 1);
  cairo_paint (picture.cairo);
  cairo_scale (picture.cairo, PX_PER_MM, PX_PER_MM);
  cairo_translate (picture.cairo, ORIGIN_X_MM, ORIGIN_Y_MM);
  picture.drawing = sq_drawing_new (picture.cairo, view);
  return picture;
}

static void
picture_clear (Picture *picture)
{
  sq_drawing_free (picture->drawing);
  cairo_destroy (picture->cairo);
  cairo_surface_destroy (picture->surface);
}

/* Pixels that differ between two pictures, from @from_mm to the right end. */
static guint
different (const Picture *a, const Picture *b, double from_mm)
{
  cairo_surface_flush (a->surface);
  cairo_surface_flush (b->surface);
  int stride = cairo_image_surface_get_stride (a->surface);
  const guint8 *one = cairo_image_surface_get_data (a->surface);
  const guint8 *other = cairo_image_surface_get_data (b->surface);
  guint found = 0;
  for (int y = 0; y < PICTURE_HIGH_MM * PX_PER_MM; y++)
    for (int x = (int)((from_mm + ORIGIN_X_MM) * PX_PER_MM); x < PICTURE_WIDE_MM * PX_PER_MM; x++)
      found += memcmp (one + y * stride + 4 * x, other + y * stride + 4 * x, 3) != 0;
  return found;
}

#define WHOLE_MM (-ORIGIN_X_MM)
/* Fewer pixels than this, a tenth of a square millimetre, nobody sees. */
#define NOTICED_PX (PX_PER_MM * PX_PER_MM / 10)

static Picture
picture_of_lamp (const SqLamp *lamp)
{
  Picture picture = picture_new (&one_to_fifty);
  SqLamp here = *lamp;
  here.at = (SqPaperPoint){ 0, 0 };
  sq_draw_lamp (picture.drawing, &here);
  return picture;
}

/* Every source with every optics is a picture of its own, but for round ones and bulbs, which have
 * no front; so is each pointing down and up. */
static void
test_families_differ (void)
{
  g_autoptr (SqScene) scene = symbol_scene ("tungsten-lens");
  GArray *pictures = g_array_new (FALSE, FALSE, sizeof (Picture));
  for (guint s = 0; s < G_N_ELEMENTS (symbol_sources); s++)
    for (guint o = 0; o < G_N_ELEMENTS (symbol_optics); o++) {
      SqLamp lamp = { .lamp_class = symbol_class_of (scene, s, o) };
      /* What glows all round looks alike whatever burns in it, but for a flame. */
      if (lamp.lamp_class->optics == SQ_OPTICS_ROUND && s > 0 &&
          lamp.lamp_class->source != SQ_SOURCE_FLAME)
        continue;
      for (int way = -1; way <= 1; way++) {
        lamp.elevation_deg = 90.0 * way;
        gboolean without_front =
          lamp.lamp_class->optics == SQ_OPTICS_ROUND || lamp.lamp_class->optics == SQ_OPTICS_BULB;
        /* Seen from above, only size and back are left of the front; no flame is turned over. */
        if (way != 0 && (without_front || o > 0 || lamp.lamp_class->source == SQ_SOURCE_FLAME))
          continue;
        Picture picture = picture_of_lamp (&lamp);
        for (guint k = 0; k < pictures->len; k++)
          if (different (&picture, &g_array_index (pictures, Picture, k), WHOLE_MM) < NOTICED_PX)
            g_error ("%s %s, way %d, looks like picture %u", symbol_sources[s], symbol_optics[o],
                     way, k);
        g_array_append_val (pictures, picture);
      }
    }
  for (guint k = 0; k < pictures->len; k++)
    picture_clear (&g_array_index (pictures, Picture, k));
  g_array_unref (pictures);
}

/* Modifiers differ from each other; none touches the lamp behind its face, and what is measured is
 * what is drawn. */
static void
test_modifiers_clear (void)
{
  static const char *const lamps[] = { "tungsten-lens", "led-panel", "tungsten-open",
                                       "discharge-parallel", "tungsten-profile" };
  for (guint l = 0; l < G_N_ELEMENTS (lamps); l++) {
    g_autoptr (SqScene) scene = symbol_scene (lamps[l]);
    SqLamp bare = { .lamp_class = sq_scene_class (scene, lamps[l]) };
    Picture without = picture_of_lamp (&bare);
    SqLampSize size = sq_lamp_size (&one_to_fifty, &bare);
    GArray *pictures = g_array_new (FALSE, FALSE, sizeof (Picture));
    for (guint i = 0; i < G_N_ELEMENTS (symbol_modifiers); i++) {
      SqLamp lamp =
        sq_lamp_of_fixture (scene, SQ_AT (SqFixture, scene->fixtures, i), &one_to_fifty);
      lamp.with_mount = FALSE;
      Picture with = picture_of_lamp (&lamp);
      gboolean boxed = strstr (symbol_modifiers[i], "softbox") != NULL;
      guint all = different (&with, &without, WHOLE_MM);
      g_assert_cmpuint (all, >, NOTICED_PX);
      if (!boxed) {
        /* Half a pen of the doors' hinge is all that may lie behind the face's own mark. */
        double face_mm = size.front_mm - SQ_PEN_50 / 2 - 0.5;
        g_assert_cmpuint (different (&with, &without, face_mm), ==, all);
        double reach_mm = sq_lamp_reach_mm (&one_to_fifty, &lamp);
        g_assert_cmpfloat (reach_mm, >, size.front_mm);
        g_assert_cmpuint (different (&with, &without, reach_mm + 0.5), ==, 0);
      }
      for (guint k = 0; k < pictures->len; k++)
        g_assert_cmpuint (different (&with, &g_array_index (pictures, Picture, k), WHOLE_MM), >,
                          NOTICED_PX);
      g_array_append_val (pictures, with);
    }
    picture_clear (&without);
    for (guint k = 0; k < pictures->len; k++)
      picture_clear (&g_array_index (pictures, Picture, k));
    g_array_unref (pictures);
  }
}

/* What holds a lamp shows on its body and in its tag; a lamp that is off is another picture, in
 * shape, not in colour. */
static void
test_mounts_differ (void)
{
  SqView mono = one_to_fifty;
  mono.mono = TRUE;
  g_autoptr (SqScene) scene = symbol_scene ("tungsten-lens");
  Picture bodies[SQ_MOUNT_GLYPHS], glyphs[SQ_MOUNT_GLYPHS];
  gboolean drawn[SQ_MOUNT_GLYPHS] = { FALSE };
  for (int m = 0; sq_mount_words[m] != NULL; m++) {
    SqMountGlyph glyph = sq_mount_glyph (m);
    if (drawn[glyph])
      continue;
    drawn[glyph] = TRUE;
    const SqFixture *fixture =
      SQ_AT (SqFixture, scene->fixtures, G_N_ELEMENTS (symbol_modifiers) + (guint)m);
    SqLamp lamp = sq_lamp_of_fixture (scene, fixture, &mono);
    bodies[glyph] = picture_of_lamp (&lamp);
    glyphs[glyph] = picture_new (&mono);
    sq_draw_mount_glyph (glyphs[glyph].drawing, (SqPaperPoint){ 0, 0 }, 1.7, glyph);

    SqFixture off = *fixture;
    off.on = FALSE;
    lamp.fixture = &off;
    Picture dashed = picture_of_lamp (&lamp);
    g_assert_cmpuint (different (&dashed, &bodies[glyph], WHOLE_MM), >, NOTICED_PX);
    picture_clear (&dashed);
  }
  for (int i = 0; i < SQ_MOUNT_GLYPHS; i++) {
    g_assert_true (drawn[i]);
    g_assert_nonnull (sq_mount_glyph_word ((SqMountGlyph)i));
    for (int j = 0; j < i; j++) {
      g_assert_cmpuint (different (&bodies[i], &bodies[j], WHOLE_MM), >, NOTICED_PX);
      g_assert_cmpuint (different (&glyphs[i], &glyphs[j], WHOLE_MM), >, NOTICED_PX);
    }
  }
  for (int i = 0; i < SQ_MOUNT_GLYPHS; i++) {
    picture_clear (&bodies[i]);
    picture_clear (&glyphs[i]);
  }
}

/* Shoulders 0.48 by 0.27 m, to scale; the three postures, all grip, and an upright panel from a
 * leaning one can be told apart. */
static void
test_people_and_grip (void)
{
  Picture all[3 + 2 * 4];
  guint n = 0;
  for (int posture = 0; posture < 3; posture++) {
    all[n] = picture_new (&one_to_fifty);
    sq_draw_person (all[n++].drawing, (SqPaperPoint){ 0, 0 }, 0.0, posture);
  }
  for (int kind = 0; kind < 4; kind++)
    for (int lean = 0; lean < 2; lean++) {
      const SqPanelMark mark = {
        .kind = kind, .tilt_deg = 30.0 * lean, .width_m = 0.9, .rise_m = 0.2
      };
      all[n] = picture_new (&one_to_fifty);
      sq_draw_panel (all[n++].drawing, &mark);
    }
  for (guint i = 0; i < n; i++)
    for (guint j = 0; j < i; j++)
      g_assert_cmpuint (different (&all[i], &all[j], WHOLE_MM), >, NOTICED_PX);
  for (guint i = 0; i < n; i++)
    picture_clear (&all[i]);

  SqTurnedBox parts[SQ_PERSON_PARTS];
  g_assert_cmpuint (
    sq_person_outline (&one_to_fifty, (SqPaperPoint){ 0, 0 }, 0.0, SQ_POSTURE_STAND, parts), ==, 1);
  assert_near (parts[0].half_width_mm, 20.0 * 0.48 / 2, EXACT);
  assert_near (parts[0].half_length_mm, 20.0 * 0.27 / 2, EXACT);
}

/* How far the ink of a walk reaches to the right of its origin at (0, 0). */
static void
test_walk_ahead (void)
{
  static const struct {
    const char *at;
    gboolean left, right; /* goes from x = 0 there */
  } rows[] = {
    { "[0, 0]", FALSE, TRUE },  /* to 1 and 2 */
    { "[1, 0]", FALSE, TRUE },  /* a look put it on the way: on to 2 */
    { "[2, 0]", FALSE, FALSE }, /* it has arrived */
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text =
      g_strdup_printf ("'marks': [{'id': 'm', 'at': %s, 'path': [[1, 0], [2, 0]]}]", rows[i].at);
    g_autoptr (SqScene) scene = right_scene (text);
    const SqMark *mark = SQ_AT (SqMark, scene->marks, 0);
    Page page = open_page (&one_to_fifty);
    double x, width;
    sq_draw_walk (page.drawing, mark);
    cairo_recording_surface_ink_extents (page.surface, &x, NULL, &width, NULL);
    g_assert_cmpint (width > 0.0, ==, rows[i].right);
    if (width > 0.0) {
      g_assert_cmpfloat (x, >=, 50.0 + 20.0 * mark->at.x_m);
      assert_near (x + width, 50.0 + 20.0 * 2.0, 1.0);
    }
    close_page (&page);
  }
}

/* A leaf opens to the left of the wall's path, or to the right where its angle is negative. */
static void
test_doors_swing (void)
{
  for (int side = -1; side <= 1; side += 2) {
    g_autofree char *text = g_strdup_printf (
      "'walls': [{'id': 'w', 'path': [[0, 0], [4, 0]], 'thickness': 0.2, 'openings': ["
      "{'id': 'd', 'kind': 'door', 'edge': 0, 'offset': 1, 'width': 1, 'open_deg': %d}]}]",
      90 * side);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (GArray) blocks = sq_wall_blocks (scene);
    Page page = open_page (&one_to_fifty);
    double y, height;
    for (guint i = 0; i < blocks->len; i++)
      if (sq_wall_block_at (blocks, i)->opening != NULL)
        sq_draw_opening (page.drawing, sq_wall_block_at (blocks, i));
    cairo_recording_surface_ink_extents (page.surface, NULL, &y, NULL, &height);
    /* Left of a path along +x is up the page; the leaf is 20 mm, half of the wall 2. */
    double far = side > 0 ? 220.0 - y : y + height - 220.0;
    assert_near (far, 2.0 + 20.0, 1.5);
    close_page (&page);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/draw/lamps/never too small to read", test_least_sizes);
  g_test_add_func ("/draw/lamps/true to scale", test_true_sizes);
  g_test_add_func ("/draw/lamps/modifiers stand in order outward", test_modifiers_in_order);
  g_test_add_func ("/draw/lamps/no two families look alike", test_families_differ);
  g_test_add_func ("/draw/lamps/modifiers stand clear of the lamp", test_modifiers_clear);
  g_test_add_func ("/draw/lamps/mounts and off differ in shape", test_mounts_differ);
  g_test_add_func ("/draw/panels/true width", test_panel_width);
  g_test_add_func ("/draw/people/postures and grip", test_people_and_grip);
  g_test_add_func ("/draw/people/a walk goes on from where somebody is", test_walk_ahead);
  g_test_add_func ("/draw/walls/doors swing to their side", test_doors_swing);
  return g_test_run ();
}
