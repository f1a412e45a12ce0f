/* lamp-modifiers.c: what is put in a lamp's way, from the lamp outward */
#include "draw/lamp-parts.h"

/* Where the marks are being drawn: how far ahead of the face, and how wide. */
typedef struct {
  SqDrawing *drawing; /* (nullable): only measuring */
  SqColour ink;
  double x_mm, width_mm;
  gboolean bare; /* nothing is drawn yet */
} Stack;

static void
line (const Stack *stack, double x1, double y1, double x2, double y2, double pen_mm)
{
  if (stack->drawing != NULL)
    sq_draw_line (stack->drawing, (SqPaperPoint){ x1, y1 }, (SqPaperPoint){ x2, y2 }, pen_mm,
                  stack->ink);
}

/* One dashed line per half stop; a half scrim only over its half, the top to the right. */
static void
draw_scrim (Stack *stack, const SqModifier *modifier)
{
  static const double dash[] = { 0.7, 0.5 };
  int n = CLAMP ((int)round (modifier->stops * 2), 1, 8);
  double from = modifier->part == SQ_PART_TOP ? 0.0 : -stack->width_mm / 2 - 0.3;
  double to = modifier->part == SQ_PART_BOTTOM ? 0.0 : stack->width_mm / 2 + 0.3;

  for (int i = 0; i < n; i++, stack->x_mm += 0.75)
    if (stack->drawing != NULL) {
      cairo_move_to (stack->drawing->cairo, stack->x_mm, from);
      cairo_line_to (stack->drawing->cairo, stack->x_mm, to);
      sq_draw_stroke_dashed (stack->drawing, SQ_PEN_35, stack->ink, dash, G_N_ELEMENTS (dash));
    }
  stack->x_mm += 0.45;
}

static void
draw_gel (Stack *stack)
{
  double half = stack->width_mm / 2 + 0.4, x = stack->x_mm;
  const double d = 0.75;
  const SqPaperPoint diamond[] = {
    { x - d, half + d }, { x, half + 2 * d }, { x + d, half + d }, { x, half }
  };

  line (stack, x, -half, x, half, SQ_PEN_50);
  if (stack->drawing != NULL) {
    sq_draw_polyline (stack->drawing, diamond, G_N_ELEMENTS (diamond), TRUE);
    sq_draw_fill (stack->drawing, sq_ink (stack->drawing->view, SQ_PAPER), 1.0);
    sq_draw_polyline (stack->drawing, diamond, G_N_ELEMENTS (diamond), TRUE);
    sq_draw_stroke (stack->drawing, 0.3, stack->ink);
  }
  stack->x_mm += 1.2;
}

static void
draw_diffusion (Stack *stack)
{
  double half = stack->width_mm / 2 + 0.3;
  if (stack->drawing != NULL)
    sq_draw_dots (stack->drawing, (SqPaperPoint){ stack->x_mm, -half },
                  (SqPaperPoint){ stack->x_mm, half }, 1.2, 0.32, stack->ink);
  stack->x_mm += 1.2;
}

static void
draw_crate (Stack *stack)
{
  double half = stack->width_mm / 2, x = stack->x_mm;
  int n = MAX (4, (int)(stack->width_mm / 1.1));

  line (stack, x, -half, x, half, SQ_PEN_35);
  for (int i = 0; i <= n; i++) {
    double y = -half + stack->width_mm * i / n;
    line (stack, x, y, x + 1.1, y, SQ_PEN_35);
  }
  stack->x_mm += 2.2;
}

static void
draw_snoot (Stack *stack)
{
  double near = 0.34 * stack->width_mm, far = 0.24 * stack->width_mm, x = stack->x_mm;
  line (stack, x - 0.6, -near, x + 3.2, -far, SQ_PEN_50);
  line (stack, x - 0.6, near, x + 3.2, far, SQ_PEN_50);
  stack->x_mm += 4.0;
}

/* The two leaves that are seen from above, at their true angles: hinged at the ends of the face,
 * or, with something before them, clear of it and of a gel's diamond. */
static void
draw_doors (Stack *stack, const SqModifier *modifier)
{
  double length = MAX (2.2, 0.55 * stack->width_mm), hinge = stack->width_mm / 2;
  double x = stack->bare ? stack->x_mm - 1.0 : stack->x_mm, reach = 0.0;

  for (int side = -1; side <= 1; side += 2) {
    double angle = SQ_RADIANS (modifier->leaves_deg[side < 0 ? SQ_LEAF_LEFT : SQ_LEAF_RIGHT]);
    double ahead = length * cos (angle);
    line (stack, x, side * hinge, x + ahead, side * (hinge + length * sin (angle)), SQ_PEN_50);
    reach = MAX (reach, ahead);
  }
  stack->x_mm = MAX (stack->x_mm + 0.2, x + reach);
}

double
sq_draw_lamp_modifiers (SqDrawing *drawing,
                        const SqFixture *fixture,
                        double face_mm,
                        double from_mm)
{
  Stack stack = {
    .drawing = drawing, .x_mm = from_mm + 1.1, .width_mm = MAX (face_mm, 3.2), .bare = TRUE
  };

  if (drawing != NULL)
    stack.ink = sq_ink (drawing->view, SQ_INK);
  for (guint i = 0; fixture != NULL && i < fixture->modifiers->len; i++) {
    const SqModifier *modifier = SQ_AT (SqModifier, fixture->modifiers, i);
    switch (modifier->kind) {
    case SQ_MODIFIER_SCRIM:
      draw_scrim (&stack, modifier);
      break;
    case SQ_MODIFIER_GEL:
      draw_gel (&stack);
      break;
    case SQ_MODIFIER_DIFFUSION:
      draw_diffusion (&stack);
      break;
    case SQ_MODIFIER_EGG_CRATE:
      draw_crate (&stack);
      break;
    case SQ_MODIFIER_SNOOT:
      draw_snoot (&stack);
      break;
    case SQ_MODIFIER_DOORS:
      draw_doors (&stack, modifier);
      break;
    case SQ_MODIFIER_SOFTBOX: /* is the face itself: lamp-size.c */
    default:
      continue;
    }
    stack.bare = FALSE;
  }
  return stack.bare ? from_mm : stack.x_mm;
}
