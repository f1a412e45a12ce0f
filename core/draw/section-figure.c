/* section-figure.c: people from the side
 *
 * Limbs are rounded bars between joints, for somebody of usual stature, in metres; all of them
 * joined have one outline. Joints stand where the engine's solids do (light/people.c). */
#include "draw/section-figure.h"

#define USUAL_STATURE_M 1.70

/* Faces that are turned out of the cut further than this are seen from before or behind. */
#define PROFILE_COSINE 0.5

typedef struct {
  double x1, y1, x2, y2, wide; /* x ahead, y up from the mark's floor */
} Limb;

#define MOST_LIMBS 9
#define ARM_LIMBS 2

typedef struct {
  Limb limbs[MOST_LIMBS];
  guint n;
  Limb arm[ARM_LIMBS];   /* over the rest, with an outline of its own; none in front views */
  double head_x, head_y; /* middle of the head */
  double nose_rad;       /* which way it points from there; up for who lies */
} Figure;

/* clang-format off */
static const Figure standing = {
  { { 0.00, 1.43,  0.00, 1.30, 0.10 },   /* neck */
    { 0.00, 1.33, -0.01, 1.10, 0.215 },  /* chest */
    { -0.01, 1.12, 0.00, 0.90, 0.185 },  /* hips */
    { 0.00, 0.88,  0.015, 0.47, 0.15 },  /* thigh */
    { 0.015, 0.47, -0.02, 0.07, 0.10 },  /* lower leg */
    { -0.03, 0.04, 0.14, 0.035, 0.07 } },
  6, { { -0.005, 1.335, -0.025, 1.08, 0.085 }, { -0.025, 1.08, 0.045, 0.84, 0.07 } }, 0.01, 1.585, 0.0
};
static const Figure sitting = {
  { { 0.00, 1.10, -0.01, 1.02, 0.10 },
    { -0.01, 1.01, -0.03, 0.78, 0.21 },
    { -0.03, 0.80, 0.00, 0.55, 0.19 },
    { 0.00, 0.525, 0.40, 0.52, 0.145 },
    { 0.405, 0.51, 0.39, 0.07, 0.10 },
    { 0.38, 0.04,  0.53, 0.035, 0.07 } },
  6, { { -0.015, 1.00, -0.045, 0.755, 0.085 }, { -0.045, 0.755, 0.19, 0.655, 0.07 } }, 0.01, 1.235, 0.0
};
static const Figure lying = { /* on the back, the head at the mark, the feet behind */
  { { -0.12, 0.09, -0.24, 0.10, 0.10 },
    { -0.28, 0.11, -0.50, 0.115, 0.21 },
    { -0.50, 0.11, -0.78, 0.105, 0.185 },
    { -0.78, 0.09, -1.18, 0.085, 0.145 },
    { -1.18, 0.075, -1.56, 0.06, 0.10 },
    { -1.60, 0.04, -1.60, 0.19, 0.07 } },
  6, { { -0.28, 0.13, -0.52, 0.10, 0.085 }, { -0.52, 0.10, -0.74, 0.13, 0.07 } }, 0.00, 0.105, G_PI / 2
};
static const Figure standing_before = { /* from before or behind */
  { { 0.00, 1.43,  0.00, 1.30, 0.10 },
    { -0.16, 1.335, 0.16, 1.335, 0.14 },
    { 0.00, 1.28,  0.00, 0.98, 0.30 },
    { -0.19, 1.31, -0.23, 0.84, 0.085 },
    { 0.19, 1.31,  0.23, 0.84, 0.085 },
    { -0.085, 0.92, -0.09, 0.05, 0.14 },
    { 0.085, 0.92, 0.09, 0.05, 0.14 } },
  7, { { 0 } }, 0.0, 1.585, NAN
};
static const Figure sitting_before = {
  { { 0.00, 1.10,  0.00, 1.00, 0.10 },
    { -0.16, 1.005, 0.16, 1.005, 0.14 },
    { 0.00, 0.95,  0.00, 0.60, 0.30 },
    { -0.19, 0.98, -0.22, 0.66, 0.085 },
    { 0.19, 0.98,  0.22, 0.66, 0.085 },
    { -0.11, 0.52, -0.11, 0.05, 0.14 },
    { 0.11, 0.52,  0.11, 0.05, 0.14 } },
  7, { { 0 } }, 0.0, 1.235, NAN
};
static const Figure lying_before = { /* along the line of sight: head or feet */
  { { -0.12, 0.12, 0.12, 0.12, 0.20 } }, 1, { { 0 } }, 0.0, 0.105, NAN
};
/* clang-format on */

#define HEAD_HALF_WIDE_M 0.086
#define HEAD_HALF_HIGH_M 0.115
#define NOSE_M 0.112 /* from the middle of the head */

static SqVector
facing (const SqCutPlane *plane, const SqMark *mark)
{
  return sq_cut_direction (plane, sq_vector_toward (mark->facing_deg, 0.0));
}

static const Figure *
figure_of (const SqCutPlane *plane, const SqMark *mark)
{
  gboolean profile = fabs (facing (plane, mark).x) >= PROFILE_COSINE;
  switch (mark->posture) {
  case SQ_POSTURE_SIT:
    return profile ? &sitting : &sitting_before;
  case SQ_POSTURE_LIE:
    return profile ? &lying : &lying_before;
  case SQ_POSTURE_STAND:
  default:
    return profile ? &standing : &standing_before;
  }
}

static double
mm_per_m (const SqView *view, const SqMark *mark)
{
  return view->mm_per_m * mark->stature_m / USUAL_STATURE_M;
}

/* One pass over all limbs: first wider for the outline, then filled. */
static void
draw_limbs (
  SqDrawing *drawing, const Limb *limbs, guint n, double k, double more_mm, SqColour colour)
{
  cairo_t *cr = drawing->cairo;
  cairo_save (cr);
  cairo_set_line_cap (cr, CAIRO_LINE_CAP_ROUND);
  for (guint i = 0; i < n; i++) {
    const Limb *limb = &limbs[i];
    double wide_mm = limb->wide * k + more_mm;
    if (wide_mm <= 0.0) /* at a small scale some are all outline */
      continue;
    cairo_move_to (cr, limb->x1 * k, -limb->y1 * k);
    cairo_line_to (cr, limb->x2 * k, -limb->y2 * k);
    sq_draw_stroke (drawing, wide_mm, colour);
  }
  cairo_restore (cr);
}

static void
head_path (SqDrawing *drawing, const Figure *figure, double k)
{
  cairo_t *cr = drawing->cairo;
  double across = HEAD_HALF_WIDE_M * k, along = HEAD_HALF_HIGH_M * k;
  cairo_save (cr);
  cairo_translate (cr, figure->head_x * k, -figure->head_y * k);
  if (isnan (figure->nose_rad)) {
    cairo_scale (cr, across, along);
    sq_draw_circle_path (drawing, (SqPaperPoint){ 0, 0 }, 1.0);
  } else {
    const double cheek = SQ_RADIANS (17), x = cos (cheek) * across, y = sin (cheek) * along;
    cairo_rotate (cr, -figure->nose_rad);
    cairo_move_to (cr, x, y);
    cairo_save (cr);
    cairo_scale (cr, across, along);
    cairo_arc (cr, 0, 0, 1.0, cheek, 2 * G_PI - 0.3 * cheek);
    cairo_restore (cr);
    cairo_line_to (cr, NOSE_M * k, 0.8 * y);
    cairo_close_path (cr);
  }
  cairo_restore (cr);
}

/* Both eyes are seen of a face that looks out of the drawing. */
static void
draw_eyes (SqDrawing *drawing, const Figure *figure, double k, SqColour ink)
{
  for (int side = -1; side <= 1; side += 2)
    sq_draw_dot (
      drawing, (SqPaperPoint){ (figure->head_x + side * 0.032) * k, -(figure->head_y + 0.012) * k },
      MAX (0.010 * k, 0.16), ink);
}

void
sq_draw_section_figure (SqDrawing *drawing,
                        const SqCutPlane *plane,
                        const SqMark *mark,
                        gboolean thin)
{
  const SqView *view = drawing->view;
  const Figure *figure = figure_of (plane, mark);
  SqVector looks = facing (plane, mark);
  double k = mm_per_m (view, mark);
  double pen = sq_view_pen_mm (view, thin ? SQ_PEN_18 : SQ_PEN_35);
  SqColour line = sq_ink (view, thin ? SQ_MID : SQ_INK);
  SqColour fill = sq_ink (view, thin ? SQ_PAPER : SQ_BODY);
  SqPaperPoint foot =
    sq_view_paper (view, sq_cut_place (plane, sq_point_above (mark->at, mark->floor_m)));

  sq_draw_enter (drawing, foot, 0.0);
  if (looks.x < 0.0 && !isnan (figure->nose_rad))
    cairo_scale (drawing->cairo, -1.0, 1.0);
  draw_limbs (drawing, figure->limbs, figure->n, k, pen, line);
  draw_limbs (drawing, figure->limbs, figure->n, k, -pen, fill);
  if (figure->arm[0].wide > 0.0) {
    draw_limbs (drawing, figure->arm, ARM_LIMBS, k, pen, line);
    draw_limbs (drawing, figure->arm, ARM_LIMBS, k, -pen, fill);
  }
  head_path (drawing, figure, k);
  sq_draw_fill (drawing, sq_ink (view, SQ_PAPER), 1.0);
  head_path (drawing, figure, k);
  sq_draw_stroke (drawing, thin ? SQ_PEN_18 : SQ_PEN_35, line);
  if (isnan (figure->nose_rad) && looks.z > 0.0 && mark->posture != SQ_POSTURE_LIE)
    draw_eyes (drawing, figure, k, line);
  sq_draw_leave (drawing);
}

guint
sq_section_figure_boxes (const SqView *view,
                         const SqCutPlane *plane,
                         const SqMark *mark,
                         SqPaperBox boxes[SQ_FIGURE_BOXES])
{
  const Figure *figure = figure_of (plane, mark);
  double k = mm_per_m (view, mark);
  double turned = facing (plane, mark).x < 0.0 && !isnan (figure->nose_rad) ? -k : k;
  SqPaperPoint foot =
    sq_view_paper (view, sq_cut_place (plane, sq_point_above (mark->at, mark->floor_m)));
  SqPaperPoint head = { foot.x_mm + figure->head_x * turned, foot.y_mm - figure->head_y * k };
  boxes[0] = sq_paper_box_round (head, 1.3 * HEAD_HALF_WIDE_M * k, HEAD_HALF_HIGH_M * k);

  /* The trunk and the legs, as a box each: who sits leaves room before the chest. */
  for (guint part = 1; part < SQ_FIGURE_BOXES; part++) {
    gboolean any = FALSE;
    for (guint i = 0; i < figure->n; i++) {
      const Limb *limb = &figure->limbs[i];
      gboolean low = (limb->y1 + limb->y2) / 2 < figure->head_y / 2;
      if (low != (part == 2))
        continue;
      double half = limb->wide / 2 * k;
      SqPaperPoint a = { foot.x_mm + limb->x1 * turned, foot.y_mm - limb->y1 * k };
      SqPaperPoint b = { foot.x_mm + limb->x2 * turned, foot.y_mm - limb->y2 * k };
      SqPaperBox box =
        sq_paper_box_union (sq_paper_box_round (a, half, half), sq_paper_box_round (b, half, half));
      boxes[part] = any ? sq_paper_box_union (boxes[part], box) : box;
      any = TRUE;
    }
    if (!any)
      return part;
  }
  return SQ_FIGURE_BOXES;
}

G_STATIC_ASSERT (SQ_FIGURE_BOXES == 3);
