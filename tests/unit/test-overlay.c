/* test-overlay.c: the overlay shows rooms, and its figures stand on the contours they name */
#include "draw/overlay.h"
#include "draw/ramp.h"
#include "draw/rooms.h"
#include "light-scene.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>

#define STEP_M 0.05

static void
test_figures (void)
{
  /* On the series 1 2 4 8 … within a sixth of a stop (a factor of 1.122), else two figures. */
  static const struct {
    double lux;
    SqUnits units;
    const char *text;
  } rows[] = {
    { 256, SQ_METRIC, "256" },
    { 250, SQ_METRIC, "256" },
    { 286, SQ_METRIC, "256" },
    { 290, SQ_METRIC, "290" },
    { 226, SQ_METRIC, "230" },
    { 8, SQ_METRIC, "8" },
    { 7.8125, SQ_METRIC, "8" },
    { 1000, SQ_METRIC, "1024" },
    { 181.02, SQ_METRIC, "180" },
    { 5.6569, SQ_METRIC, "5.7" },
    { 0.5, SQ_METRIC, "0.5" },
    { 0.7, SQ_METRIC, "0.7" },
    { 0.35355, SQ_METRIC, "0.35" },
    { 0.125, SQ_METRIC, "0.125" },
    { 0.0101, SQ_METRIC, "0.01" },
    { 0.00034, SQ_METRIC, "0.00034" },
    { 0.0, SQ_METRIC, "0" },
    { 2896, SQ_METRIC, "2900" },
    /* 1 fc = 10.7639 lx */
    { 10.7639, SQ_IMPERIAL, "1" },
    { 172.2, SQ_IMPERIAL, "16" },
    { 243.5, SQ_IMPERIAL, "23" },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autofree char *text = sq_level_text (rows[k].lux, rows[k].units);
    g_assert_cmpstr (text, ==, rows[k].text);
  }
}

/* A room of 4 × 3 m with a door in its east wall, and what may stand round it. */
#define ROOM                                                                                       \
  "'walls': [{'id': 'w', 'path': [[0, 0], [4, 0], [4, 3], [0, 3]], 'closed': true,"                \
  " 'thickness': 0.1, 'openings': [{'id': 'd', 'kind': 'door', 'edge': 1, 'offset': 1,"            \
  " 'width': 1}]}]"
#define THREE_WALLS                                                                                \
  "'walls': [{'id': 'w', 'path': [[0, 0], [4, 0], [4, 3], [0, 3]], 'thickness': 0.1}]"

static SqGrid *
lit_grid (void)
{
  SqGrid *grid = sq_grid_new (161, 121, (SqPlace){ -2.0, -1.5 }, STEP_M);
  for (int k = 0; k < 161 * 121; k++)
    grid->value[k] = 1.0;
  return grid;
}

static gboolean
is_kept (const SqGrid *grid, double x_m, double y_m)
{
  int i = (int)round ((x_m - grid->first.x_m) / grid->step_m);
  int j = (int)round ((y_m - grid->first.y_m) / grid->step_m);
  return !isnan (*sq_grid_at (grid, i, j));
}

static void
test_rooms (void)
{
  static const struct {
    const char *scene;
    gboolean outside; /* kept too */
  } rows[] = {
    { ROOM, FALSE },
    { ROOM ", 'marks': [{'id': 'm', 'at': [2, 2]}]", FALSE },
    { ROOM ", 'marks': [{'id': 'm', 'at': [2, 2]}, {'id': 'n', 'at': [5, 1]}]", TRUE },
    { ROOM ", 'marks': [{'id': 'm', 'at': [900, 900]}]", TRUE },
    { THREE_WALLS, TRUE },
    { "'marks': []", TRUE },
  };
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SqScene) scene = scene_of ("%s", rows[k].scene);
    g_autoptr (SqGrid) grid = lit_grid ();
    sq_rooms_keep (grid, scene);
    g_assert_true (is_kept (grid, 2.0, 1.5));
    g_assert_true (is_kept (grid, 0.1, 0.1));
    g_assert_cmpint (is_kept (grid, 4.5, 1.5), ==, rows[k].outside);
    g_assert_cmpint (is_kept (grid, -1.0, -1.0), ==, rows[k].outside);
  }
}

/* A bright ring: the dark within belongs to what is lit, the dark without is nobody's, and so is a
 * pocket within a wall. */
static void
test_dark_ground (void)
{
  g_autoptr (SqGrid) grid = sq_grid_new (101, 101, (SqPlace){ -2.5, -2.5 }, STEP_M);
  for (int j = 0; j < 101; j++)
    for (int i = 0; i < 101; i++) {
      double r = hypot (-2.5 + i * STEP_M, -2.5 + j * STEP_M);
      double pocket = hypot (-4.5 + i * STEP_M, -4.5 + j * STEP_M); /* round (2, 2) */
      *sq_grid_at (grid, i, j) = r > 1.0 && r < 2.0              ? 3.0
                                 : pocket > 0.15 && pocket < 0.3 ? NAN
                                                                 : -3.0;
    }
  sq_dark_keep (grid, 0.0);
  g_assert_true (is_kept (grid, 0.0, 0.0));
  g_assert_true (is_kept (grid, 0.6, 0.6));
  g_assert_false (is_kept (grid, 1.5, 0.0)); /* not dark */
  g_assert_false (is_kept (grid, 2.4, 2.4));
  g_assert_false (is_kept (grid, 2.2, 0.0));
  g_assert_false (is_kept (grid, 2.0, 2.0));
}

/* A map of a point lamp over the middle of an empty floor: E = I h / (h² + r²)^1.5. */
static SqLightMap *
lamp_map (double intensity_cd, double height_m)
{
  const int n = 161;
  SqLightMap *map = g_new0 (SqLightMap, 1);
  map->columns = map->rows = n;
  map->step_m = STEP_M;
  map->first = (SqPlace){ -4.0, -4.0 };
  map->set_lux = 256.0;
  map->request.height_m = 1.2;
  map->lux = g_new (double, n *n);
  map->not_counted = g_ptr_array_new_with_free_func (g_free);
  for (int j = 0; j < n; j++)
    for (int i = 0; i < n; i++) {
      double x = -4.0 + i * STEP_M, y = -4.0 + j * STEP_M;
      double r2 = x * x + y * y + height_m * height_m;
      map->lux[j * n + i] = intensity_cd * height_m / pow (r2, 1.5);
    }
  return map;
}

/* Where @word stands on the page, by its box in points; only its first. */
static gboolean
find_word (const char *boxes, const char *word, double *x_pt, double *y_pt)
{
  g_autofree char *pattern = g_strdup_printf (
    "<word xMin=\"([0-9.]+)\" yMin=\"([0-9.]+)\" xMax=\"([0-9.]+)\" yMax=\"([0-9.]+)\">%s<", word);
  g_autoptr (GRegex) regex = g_regex_new (pattern, 0, 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  if (!g_regex_match (regex, boxes, 0, &match))
    return FALSE;
  double side[4];
  for (int k = 0; k < 4; k++) {
    g_autofree char *text = g_match_info_fetch (match, k + 1);
    side[k] = g_ascii_strtod (text, NULL);
  }
  *x_pt = (side[0] + side[2]) / 2.0;
  *y_pt = (side[1] + side[3]) / 2.0;
  return TRUE;
}

/* Each figure stands on the circle where the light is what it says. */
static void
test_figures_on_lines (void)
{
  g_autofree char *program = g_find_program_in_path ("pdftotext");
  if (program == NULL) {
    g_test_skip ("pdftotext is not there");
    return;
  }
  const double intensity_cd = 4000, height_m = 2.0, mm_per_m = 20.0, points_per_mm = 72.0 / 25.4;
  const double tolerance_mm = 1.0;
  g_autoptr (SqScene) scene =
    scene_of ("'cameras': [{'id': 'c', 'at': [0, -3, 1.5], 't_stop': 4}]");
  g_autoptr (SqLightMap) map = lamp_map (intensity_cd, height_m);
  g_autoptr (SqLightOverlay) overlay = sq_light_overlay_new (scene, map);
  const SqView view = {
    .mm_per_m = mm_per_m, .origin = { 100, 100 }, .clip = { 0, 0, 200, 200 }, .has_overlay = TRUE
  };

  g_autofree char *path = NULL;
  int file = g_file_open_tmp ("squarelaw-test-XXXXXX.pdf", &path, NULL);
  g_close (file, NULL);
  cairo_surface_t *pdf = cairo_pdf_surface_create (path, 200 * points_per_mm, 200 * points_per_mm);
  cairo_t *cairo = cairo_create (pdf);
  cairo_scale (cairo, points_per_mm, points_per_mm);
  SqDrawing *drawing = sq_drawing_new (cairo, &view);
  /* The box hides the right half: figures keep clear of it. */
  const SqPaperBox right_half = { 100, 0, 100, 200 };
  const SqKeepClear keep_clear = { .boxes = &right_half, .n_boxes = 1 };
  sq_light_overlay_draw (drawing, overlay, FALSE, &keep_clear);
  sq_drawing_free (drawing);
  cairo_destroy (cairo);
  cairo_surface_destroy (pdf);

  g_autofree char *boxes = NULL;
  g_autoptr (GError) error = NULL;
  char *const command[] = { program, (char *)"-bbox", path, (char *)"-", NULL };
  g_spawn_sync (NULL, (char **)command, NULL, 0, NULL, NULL, &boxes, NULL, NULL, &error);
  g_assert_no_error (error);
  g_remove (path);
  const int levels[] = { 64, 128, 256, 512 };
  for (guint k = 0; k < G_N_ELEMENTS (levels); k++) {
    g_autofree char *word = g_strdup_printf ("%d", levels[k]);
    double x_pt = NAN, y_pt = NAN;
    g_assert_true (find_word (boxes, word, &x_pt, &y_pt));
    double x_mm = x_pt / points_per_mm - 100.0, y_mm = y_pt / points_per_mm - 100.0;
    double r_m = sqrt (pow (intensity_cd * height_m / levels[k], 2.0 / 3.0) - height_m * height_m);
    g_assert_cmpfloat_with_epsilon (hypot (x_mm, y_mm), r_m * mm_per_m, tolerance_mm);
    g_assert_cmpfloat (x_mm, <, 0.0);
  }
}

static cairo_surface_t *
picture_of (const SqLightOverlay *overlay, const SqView *view, const SqKeepClear *keep_clear)
{
  const int pixels_per_mm = 4;
  int side = (int)view->clip.width_mm * pixels_per_mm;
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, side, side);
  cairo_t *cairo = cairo_create (image);
  cairo_scale (cairo, pixels_per_mm, pixels_per_mm);
  SqDrawing *drawing = sq_drawing_new (cairo, view);
  sq_light_overlay_draw (drawing, overlay, FALSE, keep_clear);
  sq_drawing_free (drawing);
  cairo_destroy (cairo);
  cairo_surface_flush (image);
  return image;
}

/* Rows of pixels in which two pictures differ, in the upper and in the lower half. */
static void
different_rows (cairo_surface_t *a, cairo_surface_t *b, guint halves[2])
{
  int stride = cairo_image_surface_get_stride (a), rows = cairo_image_surface_get_height (a);
  halves[0] = halves[1] = 0;
  for (int y = 0; y < rows; y++)
    halves[y >= rows / 2] +=
      memcmp (cairo_image_surface_get_data (a) + y * stride,
              cairo_image_surface_get_data (b) + y * stride, (gsize)stride) != 0;
}

/* One half of the contours' circles lies under a fan of lines: all figures go to the other. */
static void
test_figures_off_lines (void)
{
  /* So small that each circle has one figure. */
  const SqView view = {
    .mm_per_m = 6.0, .origin = { 50, 50 }, .clip = { 0, 0, 100, 100 }, .has_overlay = TRUE
  };
  g_autoptr (SqScene) scene = scene_of ("'marks': []");
  g_autoptr (SqLightMap) map = lamp_map (4000, 2.0);
  g_autoptr (SqLightOverlay) overlay = sq_light_overlay_new (scene, map);
  const SqKeepClear everywhere = { .boxes = &view.clip, .n_boxes = 1 };
  cairo_surface_t *bare = picture_of (overlay, &view, &everywhere);
  for (int below = 0; below < 2; below++) {
    SqPaperLine fan[90];
    for (guint k = 0; k < G_N_ELEMENTS (fan); k++) {
      double angle = G_PI * (k + 0.5) / G_N_ELEMENTS (fan) * (below ? 1 : -1);
      fan[k] = (SqPaperLine){ view.origin, sq_paper_along (view.origin, angle, 100) };
    }
    const SqKeepClear keep_clear = { .lines = fan, .n_lines = G_N_ELEMENTS (fan) };
    cairo_surface_t *image = picture_of (overlay, &view, &keep_clear);
    guint figures[2];
    different_rows (image, bare, figures);
    g_assert_cmpuint (figures[!below], >, 0);
    g_assert_cmpuint (figures[below], ==, 0);
    cairo_surface_destroy (image);
  }
  cairo_surface_destroy (bare);
}

static guint32
pixel_at (cairo_surface_t *image, const SqView *view, double x_m, double y_m)
{
  double px_per_mm = cairo_image_surface_get_width (image) / view->clip.width_mm;
  SqPaperPoint at = sq_view_paper (view, (SqPlace){ x_m, y_m });
  guint32 pixel;
  memcpy (&pixel,
          cairo_image_surface_get_data (image) +
            (int)(at.y_mm * px_per_mm) * cairo_image_surface_get_stride (image) +
            4 * (int)(at.x_mm * px_per_mm),
          4);
  return pixel & 0xffffff;
}

static guint32
band_pixel (int band)
{
  SqColour colour = sq_ramp_colour (SQ_GROUND_PAPER, FALSE, band);
  return (guint32)lround (colour.red * 255) << 16 | (guint32)lround (colour.green * 255) << 8 |
         (guint32)lround (colour.blue * 255);
}

/* A room and a lamp over its corner, 8 lx, the first contour, at 2.5 m: the darkest band shows in
 * the room alone, lit ground on both sides of the wall. */
static void
test_outdoors (void)
{
  const double r_m = 2.5, height_m = 2.0, first_lux = 256.0 / 32.0;
  const double intensity_cd = first_lux * pow (r_m * r_m + height_m * height_m, 1.5) / height_m;
  const SqView view = {
    .mm_per_m = 10.0, .origin = { 50, 50 }, .clip = { 0, 0, 100, 100 }, .has_overlay = TRUE
  };
  static const struct {
    double x_m, y_m;
    int band; /* 99: paper */
  } rows[] = {
    { 3.5, 2.6, SQ_FIRST_BAND },       /* r 4.4, in the room */
    { 1.6, 1.6, SQ_FIRST_BAND + 1 },   /* r 2.3, in the room */
    { -1.6, -1.6, SQ_FIRST_BAND + 1 }, /* r 2.3, outside */
    { -2.0, -2.0, 99 },                /* r 2.8, outside */
    { 3.0, -2.0, 99 },
  };
  g_autoptr (SqScene) scene = scene_of ("%s", ROOM);
  g_autoptr (SqLightMap) map = lamp_map (intensity_cd, height_m);
  g_autoptr (SqLightOverlay) overlay = sq_light_overlay_new (scene, map);
  const SqKeepClear everywhere = { .boxes = &view.clip, .n_boxes = 1 };
  cairo_surface_t *image = picture_of (overlay, &view, &everywhere);
  for (guint k = 0; k < G_N_ELEMENTS (rows); k++)
    g_assert_cmphex (pixel_at (image, &view, rows[k].x_m, rows[k].y_m), ==,
                     rows[k].band == 99 ? 0 : band_pixel (rows[k].band));
  cairo_surface_destroy (image);
}

/* No light at all, and no lux at all, are drawn without harm. */
static void
test_dark (void)
{
  g_autoptr (SqScene) scene = scene_of ("'marks': []");
  const SqView view = { .mm_per_m = 20, .clip = { 0, 0, 100, 100 }, .has_overlay = TRUE };
  for (int round = 0; round < 2; round++) {
    g_autoptr (SqLightMap) map = lamp_map (0.0, 2.0);
    for (int k = 0; round == 1 && k < map->columns * map->rows; k++)
      map->lux[k] = NAN;
    g_autoptr (SqLightOverlay) overlay = sq_light_overlay_new (scene, map);
    cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 50, 50);
    cairo_t *cairo = cairo_create (surface);
    SqDrawing *drawing = sq_drawing_new (cairo, &view);
    sq_light_overlay_draw (drawing, overlay, TRUE, NULL);
    sq_light_overlay_draw_ramp (drawing, overlay, TRUE, (SqPaperPoint){ 0, 0 }, 50);
    g_assert_cmpint (cairo_status (cairo), ==, CAIRO_STATUS_SUCCESS);
    sq_drawing_free (drawing);
    cairo_destroy (cairo);
    cairo_surface_destroy (surface);
  }
}

int
main (int argc, char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/overlay/figures of the levels", test_figures);
  g_test_add_func ("/overlay/rooms where the marks are", test_rooms);
  g_test_add_func ("/overlay/figures stand on their contours", test_figures_on_lines);
  g_test_add_func ("/overlay/figures keep off lines", test_figures_off_lines);
  g_test_add_func ("/overlay/dark ground in the open", test_dark_ground);
  g_test_add_func ("/overlay/lit ground outside a room", test_outdoors);
  g_test_add_func ("/overlay/darkness", test_dark);
  return g_test_run ();
}
