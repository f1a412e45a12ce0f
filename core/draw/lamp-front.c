/* lamp-front.c: the emitting face of a lamp, by how the light leaves it */
#include "draw/lamp-parts.h"

static SqColour
paper (SqDrawing *drawing)
{
  return sq_ink (drawing->view, SQ_PAPER);
}

static SqColour
ink (SqDrawing *drawing)
{
  return sq_ink (drawing->view, SQ_INK);
}

static void
across (SqDrawing *drawing, double x_mm, double width_mm, double pen_mm)
{
  sq_draw_line (drawing, (SqPaperPoint){ x_mm, -width_mm / 2 },
                (SqPaperPoint){ x_mm, width_mm / 2 }, pen_mm, ink (drawing));
}

static void
draw_lens (SqDrawing *drawing, const SqLampPens *pens, double face_mm)
{
  double sagitta = MAX (1.15, 0.26 * face_mm);
  double radius = (face_mm * face_mm / 4 + sagitta * sagitta) / (2 * sagitta);
  /* The arc turns past a half circle where the sagitta is more than half the face. */
  double half = atan2 (face_mm / 2, radius - sagitta);

  for (int pass = 0; pass < 2; pass++) {
    cairo_new_sub_path (drawing->cairo);
    cairo_arc (drawing->cairo, sagitta - radius, 0, radius, -half, half);
    cairo_close_path (drawing->cairo);
    if (pass == 0)
      sq_draw_fill (drawing, paper (drawing), 1.0);
    else
      sq_draw_stroke (drawing, pens->lens_mm, ink (drawing));
  }
}

static void
draw_lips (SqDrawing *drawing, const SqLampPens *pens, double width_mm)
{
  const double lip = 1.9;
  cairo_save (drawing->cairo);
  cairo_set_line_join (drawing->cairo, CAIRO_LINE_JOIN_ROUND);
  for (int side = -1; side <= 1; side += 2) {
    SqPaperPoint from = { -0.3, side * width_mm / 2 };
    SqPaperPoint to = { 0.8 * lip, side * (width_mm / 2 + 0.6 * lip) };
    sq_draw_line (drawing, from, to, pens->face_mm, ink (drawing));
  }
  cairo_restore (drawing->cairo);
  sq_draw_dot (drawing, (SqPaperPoint){ -0.5, 0 }, 0.65, ink (drawing));
}

static void
draw_parallel (SqDrawing *drawing, const SqLampPens *pens, double face_mm)
{
  across (drawing, 0, face_mm, pens->face_mm);
  for (int i = -1; i <= 1; i++)
    sq_draw_line (drawing, (SqPaperPoint){ 0, i * 0.34 * face_mm },
                  (SqPaperPoint){ 2.0, i * 0.34 * face_mm }, 0.28, ink (drawing));
}

static void
fill_and_stroke (SqDrawing *drawing, const SqLampPens *pens, gboolean closed)
{
  cairo_path_t *path = cairo_copy_path (drawing->cairo);
  sq_draw_fill (drawing, paper (drawing), 1.0);
  cairo_append_path (drawing->cairo, path);
  if (closed)
    cairo_close_path (drawing->cairo);
  cairo_path_destroy (path);
  sq_draw_stroke_dashed (drawing, pens->body_mm, ink (drawing), pens->dash_mm, pens->n_dashes);
}

/* A housing with a narrower nose; the nose starts just behind the middle. */
static void
draw_profile (SqDrawing *drawing,
              const SqLamp *lamp,
              const SqLampSize *size,
              const SqLampPens *pens)
{
  double nose = 0.30 * size->width_mm, step = -0.54 * size->depth_mm;
  double half = size->width_mm / 2;

  sq_lamp_back_path (drawing, lamp->lamp_class->source, size->width_mm, -size->depth_mm, step);
  /* The back's path ends at the front right of the housing: on round the nose. */
  cairo_line_to (drawing->cairo, step, nose);
  cairo_line_to (drawing->cairo, 0, nose);
  cairo_line_to (drawing->cairo, 0, -nose);
  cairo_line_to (drawing->cairo, step, -nose);
  cairo_line_to (drawing->cairo, step, -half);
  fill_and_stroke (drawing, pens, TRUE);
  double face = MAX (size->face_mm, 2 * nose);
  across (drawing, 0, face, pens->face_mm);
  across (drawing, 1.1, face, pens->face_mm);
}

static void
draw_skirt (SqDrawing *drawing, const SqLampSize *size)
{
  const SqPaperPoint skirt[] = { { -size->skirt_mm, -size->width_mm / 2 },
                                 { 0, -size->face_mm / 2 },
                                 { 0, size->face_mm / 2 },
                                 { -size->skirt_mm, size->width_mm / 2 } };
  sq_draw_polyline (drawing, skirt, G_N_ELEMENTS (skirt), TRUE);
  sq_draw_fill (drawing, paper (drawing), 1.0);
  sq_draw_polyline (drawing, skirt, G_N_ELEMENTS (skirt), TRUE);
  sq_draw_stroke (drawing, SQ_PEN_18, ink (drawing));
}

static void
draw_bar (SqDrawing *drawing, const SqLampPens *pens, double face_mm)
{
  cairo_rectangle (drawing->cairo, -0.1, -face_mm / 2, 1.0, face_mm);
  if (pens->n_dashes == 0)
    sq_draw_fill (drawing, ink (drawing), 1.0);
  else
    sq_draw_stroke (drawing, SQ_PEN_25, ink (drawing));
}

static void
draw_pins (SqDrawing *drawing, const SqLampSize *size, const SqLampPens *pens, double back_mm)
{
  double y = MIN (0.12 * size->width_mm, 1.2);
  for (int side = -1; side <= 1; side += 2)
    sq_draw_line (drawing, (SqPaperPoint){ back_mm - SQ_LAMP_PINS_MM, side * y },
                  (SqPaperPoint){ back_mm, side * y }, pens->body_mm, ink (drawing));
}

void
sq_draw_lamp_aimed (SqDrawing *drawing, const SqLamp *lamp, const SqLampSize *size)
{
  SqLampPens pens = sq_lamp_pens (lamp->fixture == NULL || lamp->fixture->on);
  int optics = lamp->lamp_class->optics, source = lamp->lamp_class->source;
  double front = -size->skirt_mm, back = front - size->depth_mm;

  if (size->skirt_mm > 0.0)
    draw_skirt (drawing, size);
  if (optics == SQ_OPTICS_PROFILE && size->skirt_mm == 0.0) {
    draw_profile (drawing, lamp, size, &pens);
  } else {
    sq_lamp_back_path (drawing, source, size->width_mm, back, front);
    fill_and_stroke (drawing, &pens, optics != SQ_OPTICS_OPEN || size->skirt_mm > 0.0);
  }
  if (source == SQ_SOURCE_FLUORESCENT)
    draw_pins (drawing, size, &pens, back);
  if (source == SQ_SOURCE_FLAME) /* clear of an open face's dot */
    sq_draw_lamp_flame_within (drawing,
                               (back + front) / 2 - (optics == SQ_OPTICS_OPEN ? 0.9 : 0.0));

  if (size->skirt_mm > 0.0)
    sq_draw_dots (drawing, (SqPaperPoint){ 0, -size->face_mm / 2 },
                  (SqPaperPoint){ 0, size->face_mm / 2 }, 1.3, 0.42, ink (drawing));
  else if (optics == SQ_OPTICS_LENS)
    draw_lens (drawing, &pens, size->face_mm);
  else if (optics == SQ_OPTICS_OPEN)
    draw_lips (drawing, &pens, size->width_mm);
  else if (optics == SQ_OPTICS_PARALLEL)
    draw_parallel (drawing, &pens, size->face_mm);
  else if (optics == SQ_OPTICS_PANEL || optics == SQ_OPTICS_TUBE)
    draw_bar (drawing, &pens, size->face_mm);
}

/* Straight up or down: the body from above, the face dashed in it, and a sign in the middle. */
void
sq_draw_lamp_upright (SqDrawing *drawing, const SqLamp *lamp, const SqLampSize *size)
{
  static const double dash[] = { 0.9, 0.6 };
  SqLampPens pens = sq_lamp_pens (lamp->fixture == NULL || lamp->fixture->on);
  const SqPaperPoint middle = { 0, 0 };
  double half = size->depth_mm / 2;
  const SqFace *face = lamp->lamp_class->face;

  sq_lamp_back_path (drawing, lamp->lamp_class->source, size->width_mm, -half, half);
  fill_and_stroke (drawing, &pens, TRUE);
  if (lamp->lamp_class->source == SQ_SOURCE_FLUORESCENT)
    draw_pins (drawing, size, &pens, -half);
  if (face != NULL && face->shape == SQ_SHAPE_DISC)
    sq_draw_circle_path (drawing, middle, MIN (size->face_mm, size->face_up_mm) / 2);
  else
    sq_draw_box_path (drawing, sq_paper_box_round (middle, size->face_up_mm / 2, size->face_mm / 2),
                      0.0);
  sq_draw_stroke_dashed (drawing, SQ_PEN_25, ink (drawing), dash, G_N_ELEMENTS (dash));

  const double r = 1.15, q = r * G_SQRT2 / 2;
  sq_draw_circle_path (drawing, middle, r);
  sq_draw_fill (drawing, paper (drawing), 1.0);
  sq_draw_circle_path (drawing, middle, r);
  sq_draw_stroke (drawing, SQ_PEN_35, ink (drawing));
  if (size->form == SQ_FORM_UP) {
    sq_draw_dot (drawing, middle, 0.4, ink (drawing));
    return;
  }
  sq_draw_line (drawing, (SqPaperPoint){ -q, -q }, (SqPaperPoint){ q, q }, SQ_PEN_35,
                ink (drawing));
  sq_draw_line (drawing, (SqPaperPoint){ -q, q }, (SqPaperPoint){ q, -q }, SQ_PEN_35,
                ink (drawing));
}
