/* wall-drawing.c: cut walls with one outline round all walls that touch
 *
 * Every edge of every block is cut where another block's edge meets it; what has wall on its other
 * side too is left out, and the rest is chained into long lines, so that corners are mitred. */
#include "draw/wall-drawing.h"

/* Closer than this two points are one (a tenth of a millimetre in the set). */
#define SAME_M 1e-4
/* How far beyond an edge we look for another wall. */
#define BEYOND_M 5e-4

typedef struct {
  SqPlace from, to;
  gboolean used;
} Stretch;

static gboolean
same_place (SqPlace a, SqPlace b)
{
  return fabs (a.x_m - b.x_m) < SAME_M && fabs (a.y_m - b.y_m) < SAME_M;
}

static gboolean
is_cut (const SqWallBlock *block)
{
  return block->opening == NULL && !block->wall->wild;
}

static SqPaperBox
bounds (const SqWallBlock *block)
{
  double left = G_MAXDOUBLE, right = -G_MAXDOUBLE, low = G_MAXDOUBLE, high = -G_MAXDOUBLE;
  for (int i = 0; i < 4; i++) {
    left = MIN (left, block->corner[i].x_m);
    right = MAX (right, block->corner[i].x_m);
    low = MIN (low, block->corner[i].y_m);
    high = MAX (high, block->corner[i].y_m);
  }
  return (SqPaperBox){ left - 0.01, low - 0.01, right - left + 0.02, high - low + 0.02 };
}

/* Where the line a → b, as a share of it, meets c → d; NAN where it does not. */
static double
meeting (SqPlace a, SqPlace b, SqPlace c, SqPlace d)
{
  double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m, ex = d.x_m - c.x_m, ey = d.y_m - c.y_m;
  double cross = dx * ey - dy * ex;
  if (fabs (cross) < 1e-12)
    return NAN;
  double t = ((c.x_m - a.x_m) * ey - (c.y_m - a.y_m) * ex) / cross;
  double u = ((c.x_m - a.x_m) * dy - (c.y_m - a.y_m) * dx) / cross;
  return u > -1e-6 && u < 1.0 + 1e-6 ? t : NAN;
}

static int
ascending (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

/* Shares of the edge a → b at which something touches it, 0 and 1 among them, in order. */
static GArray *
cuts_of_edge (SqPlace a, SqPlace b, const GArray *near)
{
  GArray *cuts = g_array_new (FALSE, FALSE, sizeof (double));
  const double ends[] = { 0.0, 1.0 };
  double length = sq_place_distance_m (a, b);

  g_array_append_vals (cuts, ends, 2);
  for (guint i = 0; i < near->len; i++) {
    const SqWallBlock *other = g_array_index (near, const SqWallBlock *, i);
    for (int side = 0; side < 4; side++) {
      SqPlace c = other->corner[side], d = other->corner[(side + 1) % 4];
      double t = meeting (a, b, c, d);
      if (t > SAME_M / length && t < 1.0 - SAME_M / length)
        g_array_append_val (cuts, t);
    }
  }
  g_array_sort (cuts, ascending);
  return cuts;
}

static void
add_visible (GArray *stretches, SqPlace a, SqPlace b, const GArray *near)
{
  double length = sq_place_distance_m (a, b);
  if (length < SAME_M)
    return;
  g_autoptr (GArray) cuts = cuts_of_edge (a, b, near);
  double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m;

  for (guint i = 0; i + 1 < cuts->len; i++) {
    double t0 = g_array_index (cuts, double, i), t1 = g_array_index (cuts, double, i + 1);
    double middle = (t0 + t1) / 2;
    SqPlace beyond = { a.x_m + middle * dx + dy / length * BEYOND_M,
                       a.y_m + middle * dy - dx / length * BEYOND_M };
    gboolean hidden = (t1 - t0) * length < SAME_M;
    for (guint j = 0; j < near->len && !hidden; j++)
      hidden = sq_wall_block_holds (g_array_index (near, const SqWallBlock *, j), beyond, 0.0);
    if (hidden)
      continue;
    Stretch stretch = { { a.x_m + t0 * dx, a.y_m + t0 * dy },
                        { a.x_m + t1 * dx, a.y_m + t1 * dy } };
    g_array_append_val (stretches, stretch);
  }
}

static GArray *
outline (const GArray *blocks)
{
  GArray *stretches = g_array_new (FALSE, TRUE, sizeof (Stretch));
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (const SqWallBlock *));

  for (guint i = 0; i < blocks->len; i++) {
    const SqWallBlock *block = sq_wall_block_at (blocks, i);
    if (!is_cut (block))
      continue;
    SqPaperBox reach = bounds (block);
    g_array_set_size (near, 0);
    for (guint j = 0; j < blocks->len; j++) {
      const SqWallBlock *other = sq_wall_block_at (blocks, j);
      if (j != i && is_cut (other) && sq_paper_boxes_overlap (reach, bounds (other)))
        g_array_append_val (near, other);
    }
    for (int side = 0; side < 4; side++)
      add_visible (stretches, block->corner[side], block->corner[(side + 1) % 4], near);
  }
  return stretches;
}

/* The stretch that starts where another one ends. Returns: (nullable) */
static Stretch *
next_of (GArray *stretches, SqPlace end)
{
  for (guint i = 0; i < stretches->len; i++) {
    Stretch *stretch = &g_array_index (stretches, Stretch, i);
    if (!stretch->used && same_place (stretch->from, end))
      return stretch;
  }
  return NULL;
}

static gboolean
is_first (GArray *stretches, const Stretch *stretch)
{
  for (guint i = 0; i < stretches->len; i++)
    if (same_place (g_array_index (stretches, Stretch, i).to, stretch->from))
      return FALSE;
  return TRUE;
}

static void
chain_path (SqDrawing *drawing, GArray *stretches, Stretch *stretch)
{
  SqPlace start = stretch->from;
  SqPaperPoint at = sq_view_paper (drawing->view, start);

  cairo_move_to (drawing->cairo, at.x_mm, at.y_mm);
  for (; stretch != NULL; stretch = next_of (stretches, stretch->to)) {
    stretch->used = TRUE;
    if (same_place (stretch->to, start)) {
      cairo_close_path (drawing->cairo);
      return;
    }
    at = sq_view_paper (drawing->view, stretch->to);
    cairo_line_to (drawing->cairo, at.x_mm, at.y_mm);
  }
}

/* All go counter-clockwise round their wall, so each ends where the next one starts. Open chains
 * are begun at their beginning; what is left are rings. */
static void
stroke_chained (SqDrawing *drawing, GArray *stretches, double pen_mm)
{
  for (int rings = 0; rings < 2; rings++)
    for (guint i = 0; i < stretches->len; i++) {
      Stretch *stretch = &g_array_index (stretches, Stretch, i);
      if (!stretch->used && (rings || is_first (stretches, stretch)))
        chain_path (drawing, stretches, stretch);
    }
  sq_draw_stroke (drawing, pen_mm, sq_ink (drawing->view, SQ_INK));
}

static void
block_path (SqDrawing *drawing, const SqWallBlock *block)
{
  SqPaperPoint points[4];
  for (int i = 0; i < 4; i++)
    points[i] = sq_view_paper (drawing->view, block->corner[i]);
  sq_draw_polyline (drawing, points, 4, TRUE);
}

void
sq_draw_walls (SqDrawing *drawing, const GArray *blocks)
{
  static const double wild_dash[] = { 3.0, 1.2 };

  for (guint i = 0; i < blocks->len; i++)
    if (is_cut (sq_wall_block_at (blocks, i)))
      block_path (drawing, sq_wall_block_at (blocks, i));
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_POCHE), 1.0);

  g_autoptr (GArray) stretches = outline (blocks);
  stroke_chained (drawing, stretches, SQ_PEN_35);

  for (guint i = 0; i < blocks->len; i++) {
    const SqWallBlock *block = sq_wall_block_at (blocks, i);
    if (!block->wall->wild || block->opening != NULL)
      continue;
    block_path (drawing, block);
    sq_draw_stroke_dashed (drawing, SQ_PEN_35, sq_ink (drawing->view, SQ_INK), wild_dash,
                           G_N_ELEMENTS (wild_dash));
  }
}
