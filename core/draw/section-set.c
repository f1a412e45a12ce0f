/* section-set.c: the built set on the cut: floor, walls, openings, ceiling, furniture, heights */
#include "draw/section-set.h"

#include "draw/piece-symbol.h"
#include "draw/wall-shape.h"

/* Figures of the height scale stand at least so far apart. */
#define LEAST_FIGURE_STEP_MM 7.0

static const double wild_dash[] = { 3.0, 1.2 };

gboolean
sq_section_is_drawn (const SqThing *owner)
{
  if (owner->kind == &sq_wall_kind)
    return !((const SqWall *)owner)->common.hidden;
  if (owner->kind == &sq_opening_kind)
    return !((const SqOpening *)owner)->common.hidden;
  if (owner->kind == &sq_piece_kind)
    return !((const SqPiece *)owner)->common.hidden;
  if (owner->kind == &sq_panel_kind)
    return !((const SqPanel *)owner)->common.hidden;
  if (owner->kind == &sq_mark_kind)
    return !((const SqMark *)owner)->common.hidden;
  return TRUE;
}

gboolean
sq_section_is_in_wall (const SqSectionSet *set, SqPlace place)
{
  for (guint i = 0; i < set->parts->len; i++) {
    const SqCutPart *part = &g_array_index (set->parts, SqCutPart, i);
    if ((part->owner->kind == &sq_wall_kind || part->owner->kind == &sq_room_kind) &&
        sq_cut_holds (part, place))
      return TRUE;
  }
  return FALSE;
}

static SqPoint
on_floor (SqPlace place)
{
  return sq_point_above (place, 0.0);
}

GArray *
sq_section_openings (const SqSectionSet *set)
{
  GArray *openings = g_array_new (FALSE, FALSE, sizeof (SqSideOpening));
  g_autoptr (GArray) blocks = sq_wall_blocks (set->scene);
  for (guint i = 0; i < blocks->len; i++) {
    const SqWallBlock *block = sq_wall_block_at (blocks, i);
    double from = G_MAXDOUBLE, to = -G_MAXDOUBLE;
    for (int k = 0; block->opening != NULL && k < 4; k++) {
      SqPoint a = on_floor (block->corner[k]), b = on_floor (block->corner[(k + 1) % 4]);
      double before = sq_cut_off_m (set->plane, a), after = sq_cut_off_m (set->plane, b);
      if ((before >= 0.0) == (after >= 0.0))
        continue;
      double share = before / (before - after);
      double at =
        sq_cut_place (set->plane, sq_point_along (a, sq_vector_between (a, b), share)).x_m;
      from = MIN (from, at);
      to = MAX (to, at);
    }
    if (to <= from)
      continue;
    const SqSideOpening opening = { block->opening, from, to, sq_opening_sill_m (block->opening),
                                    sq_opening_head_m (block->opening, block->height_m) };
    g_array_append_val (openings, opening);
  }
  return openings;
}

gboolean
sq_section_piece (
  const SqSectionSet *set, const SqPiece *piece, SqPlace *least, SqPlace *most, gboolean *cut)
{
  double before = -G_MAXDOUBLE, behind = G_MAXDOUBLE;
  *least = (SqPlace){ G_MAXDOUBLE, piece->base_m };
  *most = (SqPlace){ -G_MAXDOUBLE, piece->top_m };
  for (guint i = 0; i < (piece->disc != NULL ? 1 : piece->outline->len); i++) {
    double round = piece->disc != NULL ? piece->disc->radius_m : 0.0;
    SqPoint at = on_floor (piece->disc != NULL ? piece->disc->at : sq_path_at (piece->outline, i));
    double along = sq_cut_place (set->plane, at).x_m, off = sq_cut_off_m (set->plane, at);
    least->x_m = MIN (least->x_m, along - round);
    most->x_m = MAX (most->x_m, along + round);
    before = MAX (before, off + round);
    behind = MIN (behind, off - round);
  }
  *cut = sq_cut_goes_through (set->parts, &piece->thing);
  if (*cut) {
    least->x_m = G_MAXDOUBLE;
    most->x_m = -G_MAXDOUBLE;
  }
  for (guint i = 0; *cut && i < set->parts->len; i++) {
    const SqCutPart *part = &g_array_index (set->parts, SqCutPart, i);
    for (guint k = 0; part->owner == &piece->thing && k < part->n; k++) {
      least->x_m = MIN (least->x_m, part->corner[k].x_m);
      most->x_m = MAX (most->x_m, part->corner[k].x_m);
    }
  }
  if (piece->common.hidden || most->x_m < set->least.x_m || least->x_m > set->most.x_m)
    return FALSE;
  return *cut || (before >= -set->near_m && behind <= set->near_m);
}

gboolean
sq_section_has_slab (const SqSectionSet *set)
{
  return sq_cut_goes_through (set->parts, &set->scene->room->thing);
}

/* Height between two lines of the scale, and how many of them go to a figure. */
static double
level_step_m (const SqView *view, int *per_figure)
{
  double step = view->units == SQ_IMPERIAL ? SQ_FOOT_M : 0.5;
  *per_figure = view->units == SQ_IMPERIAL ? 1 : 2;
  while (step * *per_figure * view->mm_per_m < LEAST_FIGURE_STEP_MM)
    *per_figure *= 2;
  return step;
}

void
sq_draw_section_levels (SqDrawing *drawing, const SqSectionSet *set)
{
  const SqView *view = drawing->view;
  int per_figure;
  double step = level_step_m (view, &per_figure) * per_figure;
  for (int i = 1; i * step < set->most.y_m; i++)
    sq_draw_line (drawing, sq_view_paper (view, (SqPlace){ set->least.x_m, i * step }),
                  sq_view_paper (view, (SqPlace){ set->most.x_m, i * step }), SQ_PEN_13,
                  sq_ink (view, SQ_HAIR));
}

static char *
level_text (double height_m, int i, const SqView *view)
{
  if (view->units == SQ_IMPERIAL)
    return g_strdup_printf ("%d'", i);
  return g_strdup_printf ("%.0f m", height_m);
}

void
sq_draw_section_scale (SqDrawing *drawing, const SqSectionSet *set)
{
  const double gap = 2.0, tick = 1.4, fine_tick = 0.8;
  const SqView *view = drawing->view;
  SqColour ink = sq_ink (view, SQ_INK);
  int per_figure;
  double step = level_step_m (view, &per_figure);
  SqType type = { .cap_mm = sq_view_small_mm (view),
                  .weight = 400,
                  .align = SQ_ALIGN_RIGHT,
                  .colour = sq_ink (view, SQ_MID) };
  SqPaperPoint foot = sq_view_paper (view, (SqPlace){ set->least.x_m, 0.0 });
  SqPaperPoint top = sq_view_paper (view, (SqPlace){ set->least.x_m, set->most.y_m });
  double x = foot.x_mm - gap;
  sq_draw_line (drawing, (SqPaperPoint){ x, foot.y_mm }, (SqPaperPoint){ x, top.y_mm }, SQ_PEN_18,
                ink);
  for (int i = 0; i * step <= set->most.y_m + 1e-9; i++) {
    gboolean whole = i % per_figure == 0;
    double y = sq_view_paper (view, (SqPlace){ 0.0, i * step }).y_mm;
    sq_draw_line (drawing, (SqPaperPoint){ x, y },
                  (SqPaperPoint){ x - (whole ? tick : fine_tick), y }, SQ_PEN_18, ink);
    if (!whole)
      continue;
    g_autofree char *text = level_text (i * step, i, view);
    sq_draw_text (drawing, (SqPaperPoint){ x - tick - 0.9, y + type.cap_mm / 2 }, text, &type);
  }
}

static void
part_path (SqDrawing *drawing, const SqCutPart *part)
{
  SqPaperPoint corner[SQ_CUT_CORNERS];
  for (guint i = 0; i < part->n; i++)
    corner[i] = sq_view_paper (drawing->view, part->corner[i]);
  sq_draw_polyline (drawing, corner, part->n, !part->sheet);
}

/* What is cut through and belongs together: one outline round all that touch, filled. */
typedef gboolean (*Belongs) (const SqThing *owner);

static void
draw_cut (SqDrawing *drawing,
          const SqSectionSet *set,
          Belongs belongs,
          SqInk fill,
          double pen_mm,
          SqColour line)
{
  for (int pass = 0; pass < 2; pass++) {
    for (guint i = 0; i < set->parts->len; i++) {
      const SqCutPart *part = &g_array_index (set->parts, SqCutPart, i);
      if (!part->sheet && belongs (part->owner) && sq_section_is_drawn (part->owner))
        part_path (drawing, part);
    }
    /* Half of the pen is under the fill, and so is all of it where two parts touch. */
    if (pass == 0)
      sq_draw_stroke (drawing, 2.0 * sq_view_pen_mm (drawing->view, pen_mm), line);
    else
      sq_draw_fill (drawing, sq_ink (drawing->view, fill), 1.0);
  }
}

static gboolean
is_shell (const SqThing *owner)
{
  if (owner->kind == &sq_wall_kind)
    return !((const SqWall *)owner)->wild;
  return owner->kind == &sq_room_kind;
}

static gboolean
is_column (const SqThing *owner)
{
  return owner->kind == &sq_piece_kind && sq_piece_is_column ((const SqPiece *)owner);
}

static gboolean
is_furniture (const SqThing *owner)
{
  return owner->kind == &sq_piece_kind && !sq_piece_is_column ((const SqPiece *)owner);
}

static void
draw_near_pieces (SqDrawing *drawing, const SqSectionSet *set)
{
  const SqView *view = drawing->view;
  for (guint i = 0; i < set->scene->pieces->len; i++) {
    SqPlace least, most;
    gboolean cut;
    if (!sq_section_piece (set, SQ_AT (SqPiece, set->scene->pieces, i), &least, &most, &cut) || cut)
      continue;
    SqPaperPoint low = sq_view_paper (view, least), high = sq_view_paper (view, most);
    sq_draw_box_path (
      drawing, (SqPaperBox){ low.x_mm, high.y_mm, high.x_mm - low.x_mm, low.y_mm - high.y_mm },
      0.0);
    sq_draw_stroke (drawing, SQ_PEN_13, sq_ink (view, SQ_MID));
  }
}

static void
draw_wild (SqDrawing *drawing, const SqSectionSet *set)
{
  for (guint i = 0; i < set->parts->len; i++) {
    const SqCutPart *part = &g_array_index (set->parts, SqCutPart, i);
    if (part->owner->kind != &sq_wall_kind || is_shell (part->owner) ||
        !sq_section_is_drawn (part->owner))
      continue;
    part_path (drawing, part);
    sq_draw_stroke_dashed (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK), wild_dash,
                           G_N_ELEMENTS (wild_dash));
  }
}

/* The jamb behind the cut, thin; glass and leaves that are cut. */
static void
draw_openings (SqDrawing *drawing, const SqSectionSet *set)
{
  const SqView *view = drawing->view;
  SqColour ink = sq_ink (view, SQ_INK);
  g_autoptr (GArray) openings = sq_section_openings (set);
  for (guint i = 0; i < openings->len; i++) {
    const SqSideOpening *opening = &g_array_index (openings, SqSideOpening, i);
    for (int side = 0; side < 2; side++) {
      double at = side == 0 ? opening->from_m : opening->to_m;
      sq_draw_line (drawing, sq_view_paper (view, (SqPlace){ at, opening->sill_m }),
                    sq_view_paper (view, (SqPlace){ at, opening->head_m }), SQ_PEN_18, ink);
    }
  }
  for (guint i = 0; i < set->parts->len; i++) {
    const SqCutPart *part = &g_array_index (set->parts, SqCutPart, i);
    if (!part->sheet || part->owner->kind != &sq_opening_kind || !sq_section_is_drawn (part->owner))
      continue;
    part_path (drawing, part);
    sq_draw_stroke (drawing, SQ_PEN_35, ink);
  }
}

static void
draw_floor (SqDrawing *drawing, const SqSectionSet *set)
{
  const SqView *view = drawing->view;
  SqPaperPoint from = sq_view_paper (view, (SqPlace){ set->least.x_m, 0.0 });
  SqPaperPoint to = sq_view_paper (view, (SqPlace){ set->most.x_m, -SQ_SECTION_FLOOR_M });
  sq_draw_box_path (
    drawing, (SqPaperBox){ from.x_mm, from.y_mm, to.x_mm - from.x_mm, to.y_mm - from.y_mm }, 0.0);
  sq_draw_fill (drawing, sq_ink (view, SQ_POCHE), 1.0);
  sq_draw_line (drawing, from, (SqPaperPoint){ to.x_mm, from.y_mm }, SQ_PEN_35,
                sq_ink (view, SQ_INK));
}

/* A ceiling that no wall carries is known by its height alone. */
static void
draw_ceiling_line (SqDrawing *drawing, const SqSectionSet *set)
{
  const SqView *view = drawing->view;
  double height = set->scene->room->ceiling_height_m;
  if (isnan (height) || sq_section_has_slab (set))
    return;
  SqPaperPoint from = sq_view_paper (view, (SqPlace){ set->least.x_m, height });
  SqPaperPoint to = sq_view_paper (view, (SqPlace){ set->most.x_m, height });
  cairo_move_to (drawing->cairo, from.x_mm, from.y_mm);
  cairo_line_to (drawing->cairo, to.x_mm, to.y_mm);
  sq_draw_stroke_dashed (drawing, SQ_PEN_35, sq_ink (view, SQ_INK), wild_dash,
                         G_N_ELEMENTS (wild_dash));
}

/* Where the drawing ends in the open, a thin broken line says that what is there goes on. */
static void
draw_ends (SqDrawing *drawing, const SqSectionSet *set)
{
  static const double dash[] = { 5.0, 1.2, 0.6, 1.2 };
  const SqView *view = drawing->view;
  double top = 0.0;
  for (guint i = 0; i < set->parts->len; i++) {
    const SqCutPart *part = &g_array_index (set->parts, SqCutPart, i);
    for (guint k = 0; is_shell (part->owner) && k < part->n; k++)
      top = MAX (top, part->corner[k].y_m);
  }
  for (int end = 0; end < 2; end++) {
    double at = end == 0 ? set->least.x_m : set->most.x_m;
    gboolean goes_on = FALSE;
    for (guint i = 0; i < set->parts->len; i++) {
      const SqCutPart *part = &g_array_index (set->parts, SqCutPart, i);
      double from = G_MAXDOUBLE, to = -G_MAXDOUBLE;
      for (guint k = 0; k < part->n; k++) {
        from = MIN (from, part->corner[k].x_m);
        to = MAX (to, part->corner[k].x_m);
      }
      goes_on = goes_on || (sq_section_is_drawn (part->owner) && from < at && to > at);
    }
    if (!goes_on)
      continue;
    double x = sq_view_paper (view, (SqPlace){ at, 0.0 }).x_mm + (end == 0 ? 0.1 : -0.1);
    cairo_move_to (drawing->cairo, x, sq_view_paper (view, set->least).y_mm);
    cairo_line_to (drawing->cairo, x, sq_view_paper (view, (SqPlace){ at, top }).y_mm);
    sq_draw_stroke_dashed (drawing, SQ_PEN_18, sq_ink (view, SQ_INK), dash, G_N_ELEMENTS (dash));
  }
}

void
sq_draw_section_built (SqDrawing *drawing, const SqSectionSet *set)
{
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  draw_near_pieces (drawing, set);
  draw_cut (drawing, set, is_furniture, SQ_FURN, SQ_PEN_25, ink);
  draw_cut (drawing, set, is_column, SQ_POCHE, SQ_PEN_35, ink);
  draw_floor (drawing, set);
  draw_cut (drawing, set, is_shell, SQ_POCHE, SQ_PEN_35, ink);
  draw_wild (drawing, set);
  draw_openings (drawing, set);
  draw_ceiling_line (drawing, set);
  draw_ends (drawing, set);
}
