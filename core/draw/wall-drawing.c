/* wall-drawing.c: cut walls with one outline round all walls that touch
 *
 * The pieces of the outline are chained into long lines, so that corners are mitred. */
#include "draw/wall-drawing.h"

#include "draw/wall-outline.h"

/* Ends of stretches are kept in cells of so much. */
#define CELL_M (10 * SQ_WALL_SAME_M)

/* One end of each stretch, by where it lies. */
typedef struct {
  guint *first, *next; /* numbers of stretches, by cell and by stretch; the lowest first */
  guint mask;
} Ends;

/* The stretches of an outline while they are chained. */
typedef struct {
  const GArray *stretches; /* SqWallStretch */
  gboolean *used;
  Ends starts, ends;
} Chains;

#define NONE G_MAXUINT

static gboolean
same_place (SqPlace a, SqPlace b)
{
  return fabs (a.x_m - b.x_m) < SQ_WALL_SAME_M && fabs (a.y_m - b.y_m) < SQ_WALL_SAME_M;
}

static const SqWallStretch *
stretch_at (const GArray *stretches, guint i)
{
  return &g_array_index (stretches, SqWallStretch, i);
}

/* Distant cells may share a list: who looks a place up compares places. */
static guint
cell_of (const Ends *ends, double column, double row)
{
  guint64 mixed = (guint64)(gint64)column * 0x9E3779B97F4A7C15u;
  mixed = (mixed ^ (guint64)(gint64)row) * 0xC2B2AE3D27D4EB4Fu;
  return (guint)(mixed >> 32) & ends->mask;
}

static void
ends_init (Ends *ends, const GArray *stretches, gboolean starts)
{
  guint n = 1;
  while (n < stretches->len)
    n *= 2;
  *ends = (Ends){ g_new (guint, n), g_new (guint, stretches->len + 1), n - 1 };
  for (guint i = 0; i < n; i++)
    ends->first[i] = NONE;
  for (guint i = stretches->len; i-- > 0;) {
    SqPlace at = starts ? stretch_at (stretches, i)->from : stretch_at (stretches, i)->to;
    guint cell = cell_of (ends, floor (at.x_m / CELL_M), floor (at.y_m / CELL_M));
    ends->next[i] = ends->first[cell];
    ends->first[cell] = i;
  }
}

static void
ends_clear (Ends *ends)
{
  g_free (ends->first);
  g_free (ends->next);
}

/* The first stretch, of those not used or of @all, that has its start, or its end, at @place; NONE
 * where there is none. */
static guint
find_at (const Chains *chains, gboolean starts, gboolean all, SqPlace place)
{
  const Ends *ends = starts ? &chains->starts : &chains->ends;
  guint found = NONE;
  for (double x = floor ((place.x_m - SQ_WALL_SAME_M) / CELL_M);
       x <= floor ((place.x_m + SQ_WALL_SAME_M) / CELL_M); x++)
    for (double y = floor ((place.y_m - SQ_WALL_SAME_M) / CELL_M);
         y <= floor ((place.y_m + SQ_WALL_SAME_M) / CELL_M); y++)
      for (guint i = ends->first[cell_of (ends, x, y)]; i < found; i = ends->next[i]) {
        const SqWallStretch *stretch = stretch_at (chains->stretches, i);
        if ((all || !chains->used[i]) && same_place (starts ? stretch->from : stretch->to, place))
          found = i;
      }
  return found;
}

static void
chain_path (SqDrawing *drawing, Chains *chains, guint i)
{
  SqPlace start = stretch_at (chains->stretches, i)->from;
  SqPaperPoint at = sq_view_paper (drawing->view, start);

  cairo_move_to (drawing->cairo, at.x_mm, at.y_mm);
  while (i != NONE) {
    SqPlace to = stretch_at (chains->stretches, i)->to;
    chains->used[i] = TRUE;
    if (same_place (to, start)) {
      cairo_close_path (drawing->cairo);
      return;
    }
    at = sq_view_paper (drawing->view, to);
    cairo_line_to (drawing->cairo, at.x_mm, at.y_mm);
    i = find_at (chains, TRUE, FALSE, to);
  }
}

/* Open chains are begun at their beginning; what is left are rings. */
static void
stroke_chained (SqDrawing *drawing, const GArray *stretches, double pen_mm)
{
  Chains chains = { .stretches = stretches, .used = g_new0 (gboolean, stretches->len + 1) };
  ends_init (&chains.starts, stretches, TRUE);
  ends_init (&chains.ends, stretches, FALSE);
  for (int rings = 0; rings < 2; rings++)
    for (guint i = 0; i < stretches->len; i++)
      if (!chains.used[i] &&
          (rings || find_at (&chains, FALSE, TRUE, stretch_at (stretches, i)->from) == NONE))
        chain_path (drawing, &chains, i);
  ends_clear (&chains.starts);
  ends_clear (&chains.ends);
  g_free (chains.used);
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
    if (sq_wall_block_is_cut (sq_wall_block_at (blocks, i)))
      block_path (drawing, sq_wall_block_at (blocks, i));
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_POCHE), 1.0);

  g_autoptr (GArray) stretches = sq_wall_outline (blocks);
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
