/* symbol-sheet.c: every mark of the plan on one picture, to be looked at after a change to one
 *
 *   symbol-sheet 50 paper marks.png       1:50 on paper; mono, light and dark are the other grounds
 */
#include "draw/cable-run.h"
#include "draw/camera-symbol.h"
#include "draw/dimension-line.h"
#include "draw/panel-symbol.h"
#include "draw/person.h"
#include "draw/point-symbols.h"
#include "draw/supply-symbol.h"
#include "draw/throw.h"
#include "unit/symbol-scene.h"

/* At 1:50 and smaller; larger scales spread it. */
#define WIDE_MM 297.0
#define HIGH_MM 295.0
#define LEFT_MM 16.0

typedef struct {
  SqDrawing *drawing;
  double spread;
  double x_mm, y_mm;
} Sheet;

static void
word (const Sheet *sheet, double down_mm, const char *text)
{
  const SqType type = { .cap_mm = SQ_TYPE_SMALL,
                        .align = SQ_ALIGN_CENTRE,
                        .colour = sq_ink (sheet->drawing->view, SQ_INK) };
  sq_draw_text (sheet->drawing, (SqPaperPoint){ sheet->x_mm, sheet->y_mm + down_mm }, text, &type);
}

static void
next_row (Sheet *sheet, double down_mm)
{
  sheet->x_mm = LEFT_MM * sheet->spread;
  sheet->y_mm += down_mm * sheet->spread;
}

static void
lamp (Sheet *sheet, const SqLamp *drawn, double step_mm)
{
  SqLamp here = *drawn;
  here.at = (SqPaperPoint){ sheet->x_mm, sheet->y_mm };
  sq_draw_lamp (sheet->drawing, &here);
  sheet->x_mm += step_mm * sheet->spread;
}

static void
families (Sheet *sheet, const SqScene *scene)
{
  for (guint source = 0; source < G_N_ELEMENTS (symbol_sources); source++) {
    for (guint optics = 0; optics < G_N_ELEMENTS (symbol_optics); optics++) {
      SqLamp drawn = { .lamp_class = symbol_class_of (scene, source, optics) };
      if (g_str_equal (symbol_optics[optics], "tube")) /* shown upright: shorter */
        drawn.roll_deg = 75;
      if (source == 0) {
        word (sheet, -10 * sheet->spread, symbol_optics[optics]);
      }
      lamp (sheet, &drawn, 24);
      if (optics == 0 || optics == 4) {
        drawn.elevation_deg = -90;
        lamp (sheet, &drawn, 12);
        drawn.elevation_deg = 90;
        lamp (sheet, &drawn, 20);
      }
    }
    next_row (sheet, source + 1 < G_N_ELEMENTS (symbol_sources) ? 16 : 22);
  }
}

static void
modified (Sheet *sheet, const char *lamp_class, double down_mm)
{
  g_autoptr (SqScene) scene = symbol_scene (lamp_class);
  for (guint i = 0; i < G_N_ELEMENTS (symbol_modifiers); i++) {
    SqLamp drawn =
      sq_lamp_of_fixture (scene, SQ_AT (SqFixture, scene->fixtures, i), sheet->drawing->view);
    drawn.with_mount = FALSE;
    lamp (sheet, &drawn, 17.5);
  }
  next_row (sheet, down_mm);
}

/* By the thing that holds it; the second row is off. */
static void
mounts (Sheet *sheet)
{
  g_autoptr (SqScene) scene = symbol_scene ("tungsten-lens");
  for (guint off = 0; off < 2; off++) {
    for (guint i = 0; sq_mount_words[i] != NULL; i++) {
      const SqFixture *fixture =
        SQ_AT (SqFixture, scene->fixtures, G_N_ELEMENTS (symbol_modifiers) + i);
      SqLamp drawn = sq_lamp_of_fixture (scene, fixture, sheet->drawing->view);
      SqFixture other = *fixture;
      other.on = off == 0;
      drawn.fixture = &other;
      if (off == 0) {
        double down = 13 * sheet->spread;
        word (sheet, down, sq_mount_words[i]);
        sq_draw_mount_glyph (sheet->drawing, (SqPaperPoint){ sheet->x_mm - 8, sheet->y_mm + down },
                             1.7, sq_mount_glyph (fixture->mount));
      }
      lamp (sheet, &drawn, 26);
    }
    next_row (sheet, 24);
  }
}

static void
library (Sheet *sheet)
{
  static const char *const ids[] = {
    "tungsten-fresnel-150",
    "tungsten-fresnel-650",
    "tungsten-fresnel-2000",
    "open-face-800",
    "par-can-narrow",
    "profile-26",
    "profile-19",
    "softlight-2000",
    "discharge-fresnel-575",
    "discharge-fresnel-4000",
    "led-spot-60",
    "led-panel-60x30",
    "led-panel-30x30",
    "led-tube-120",
    "fluorescent-4x120",
    "paper-lantern-75",
    "candle",
    "bulb-tungsten-25",
    "lamp-bank-9",
    "led-mat-120x60",
  };
  g_autoptr (SqLibrary) shelf = sq_library_new ();
  for (guint i = 0; i < G_N_ELEMENTS (ids); i++) {
    SqLamp drawn = { .lamp_class = sq_library_class (shelf, ids[i]) };
    if (drawn.lamp_class == NULL)
      continue;
    lamp (sheet, &drawn, 15.5);
  }
  next_row (sheet, 24);
}

static void
grip_and_people (Sheet *sheet)
{
  static const double tilts[] = { 0, 30, 75 };
  for (int kind = 0; kind < 4; kind++)
    for (guint i = 0; i < G_N_ELEMENTS (tilts); i++) {
      SqPanelMark mark = { .kind = kind,
                           .at = { sheet->x_mm, sheet->y_mm },
                           .tilt_deg = tilts[i],
                           .width_m = 0.9,
                           .rise_m = 0.6 };
      sq_draw_panel (sheet->drawing, &mark);
      sheet->x_mm += (i == 0 ? 8 : 15) * sheet->spread;
    }
  for (int posture = 0; posture < 3; posture++) {
    sheet->x_mm += (posture == 2 ? 26 : 10) * sheet->spread;
    sq_draw_person (sheet->drawing, (SqPaperPoint){ sheet->x_mm, sheet->y_mm }, 30.0 * posture,
                    posture);
    sq_draw_mark_letter (sheet->drawing,
                         (SqPaperPoint){ sheet->x_mm, sheet->y_mm + 10 * sheet->spread }, "A");
  }
  sheet->x_mm += 22 * sheet->spread;
  sq_draw_camera (sheet->drawing, (SqPaperPoint){ sheet->x_mm, sheet->y_mm }, 20, "1");
  next_row (sheet, 26);
}

static void
points (Sheet *sheet)
{
  for (int kind = 0; kind < 3; kind++, sheet->x_mm += 14)
    sq_draw_supply (sheet->drawing, (SqPaperPoint){ sheet->x_mm, sheet->y_mm }, kind, -G_PI / 2);
  SqPaperPoint way[] = { { sheet->x_mm, sheet->y_mm }, { sheet->x_mm + 26, sheet->y_mm } };
  SqCableRun run = { .points = way, .n_points = 2, .leaves = TRUE };
  sq_draw_cable (sheet->drawing, &run);
  sheet->x_mm += 36;
  sq_draw_probe (sheet->drawing, (SqPaperPoint){ sheet->x_mm, sheet->y_mm }, 30);
  sheet->x_mm += 14;
  sq_draw_note_mark (sheet->drawing, (SqPaperPoint){ sheet->x_mm, sheet->y_mm }, 1);
  sheet->x_mm += 10;
  sq_draw_caution_mark (sheet->drawing, (SqPaperPoint){ sheet->x_mm, sheet->y_mm });
  sheet->x_mm += 12;
  const SqView *view = sheet->drawing->view;
  SqPlace from = sq_view_place (view, (SqPaperPoint){ sheet->x_mm, sheet->y_mm + 6 });
  SqPlace to = sq_view_place (view, (SqPaperPoint){ sheet->x_mm + 30, sheet->y_mm + 6 });
  const SqDimensionLine line = { .from = from, .to = to, .offset_m = 6.0 / view->mm_per_m };
  sq_draw_dimension (sheet->drawing, &line);
  next_row (sheet, 18);
}

static void
roles (Sheet *sheet)
{
  for (int role = 0; role < SQ_ROLE_LINES; role++) {
    const SqRoleLine *line = &sq_role_lines[role];
    double x = LEFT_MM + (role % 5) * 52.0, y = sheet->y_mm + (role / 5) * 10.0;
    cairo_move_to (sheet->drawing->cairo, x, y);
    cairo_line_to (sheet->drawing->cairo, x + 30, y);
    sq_draw_stroke_dashed (sheet->drawing, SQ_PEN_70, sq_role_colour (sheet->drawing->view, role),
                           line->dash_mm, line->n_dashes);
    sheet->x_mm = x + 38;
    word (sheet, role / 5 * 10.0 + 0.9, line->word);
  }
}

int
main (int argc, char **argv)
{
  static const char *const grounds[] = { "paper", "light", "dark", "mono" };
  const double px_per_mm = 8.0;
  SqView view = { .mm_per_m = 0.0 };
  int ground = 0;
  while (argc == 4 && ground < 4 && !g_str_equal (argv[2], grounds[ground]))
    ground++;
  double denominator = argc == 4 ? g_ascii_strtod (argv[1], NULL) : 0.0;
  if (!(denominator >= 1.0) || ground == 4) {
    g_printerr ("symbol-sheet: expected SCALE paper|light|dark|mono FILE.png, for instance 50\n");
    return 2;
  }
  view.mm_per_m = 1000.0 / denominator;
  double spread = MAX (1.0, view.mm_per_m / 20.0);
  view.clip = (SqPaperBox){ 0, 0, WIDE_MM * spread, HIGH_MM * spread };
  view.ground = ground == 3 ? SQ_GROUND_PAPER : (SqGround)ground;
  view.mono = ground == 3;

  cairo_surface_t *surface =
    cairo_image_surface_create (CAIRO_FORMAT_RGB24, (int)(view.clip.width_mm * px_per_mm),
                                (int)(view.clip.height_mm * px_per_mm));
  cairo_t *cairo = cairo_create (surface);
  cairo_scale (cairo, px_per_mm, px_per_mm);
  Sheet sheet = { sq_drawing_new (cairo, &view), spread, LEFT_MM * spread, 24.0 * spread };
  SqColour paper = sq_ink (&view, SQ_PAPER);
  cairo_set_source_rgb (cairo, paper.red, paper.green, paper.blue);
  cairo_paint (cairo);

  g_autoptr (SqScene) scene = symbol_scene ("tungsten-lens");
  families (&sheet, scene);
  modified (&sheet, "tungsten-lens", 20);
  modified (&sheet, "led-panel", 24);
  mounts (&sheet);
  library (&sheet);
  grip_and_people (&sheet);
  points (&sheet);
  roles (&sheet);

  cairo_status_t status = cairo_surface_write_to_png (surface, argv[3]);
  sq_drawing_free (sheet.drawing);
  cairo_destroy (cairo);
  cairo_surface_destroy (surface);
  if (status != CAIRO_STATUS_SUCCESS)
    g_printerr ("symbol-sheet: %s: %s\n", argv[3], cairo_status_to_string (status));
  return status != CAIRO_STATUS_SUCCESS;
}
