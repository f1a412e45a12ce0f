/* wall-outline.c: what is seen of the edges of walls that touch and cross
 *
 * Every edge of every block is cut where another block's edge meets it; what has wall on its other
 * side too is left out. */
#include "draw/wall-outline.h"

/* How far beyond an edge we look for another wall. */
#define BEYOND_M 5e-4
/* A block is tried so far outside of it too, as its own test has the last word. */
#define SLACK_M 1e-6
/* A block is aside of a line if it is so much of its own width off it; more than what counts as
 * meeting its end. */
#define ASIDE_SHARE 1e-5

/* Where the line just beyond an edge lies in another block, as shares of that edge. */
typedef struct {
  double from, to;
  const SqWallBlock *block;
} Cover;

gboolean
sq_wall_block_is_cut (const SqWallBlock *block)
{
  return block->opening == NULL && !block->wall->wild;
}

static SqPaperBox
bounds (const SqPlace *places, int n)
{
  double left = G_MAXDOUBLE, right = -G_MAXDOUBLE, low = G_MAXDOUBLE, high = -G_MAXDOUBLE;
  for (int i = 0; i < n; i++) {
    left = MIN (left, places[i].x_m);
    right = MAX (right, places[i].x_m);
    low = MIN (low, places[i].y_m);
    high = MAX (high, places[i].y_m);
  }
  return (SqPaperBox){ left - 0.01, low - 0.01, right - left + 0.02, high - low + 0.02 };
}

/* TRUE if all of @block is clearly on one side of the line a → b: nothing of it meets the line. */
static gboolean
is_aside (const SqWallBlock *block, SqPlace a, SqPlace b)
{
  double low = G_MAXDOUBLE, high = -G_MAXDOUBLE;
  for (int i = 0; i < 4; i++) {
    double left = (b.x_m - a.x_m) * (block->corner[i].y_m - a.y_m) -
                  (b.y_m - a.y_m) * (block->corner[i].x_m - a.x_m);
    low = MIN (low, left);
    high = MAX (high, left);
  }
  double least = ASIDE_SHARE * (high - low);
  return low > least || high < -least;
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
    if (is_aside (other, a, b))
      continue;
    for (int side = 0; side < 4; side++) {
      SqPlace c = other->corner[side], d = other->corner[(side + 1) % 4];
      double t = meeting (a, b, c, d);
      if (t > SQ_WALL_SAME_M / length && t < 1.0 - SQ_WALL_SAME_M / length)
        g_array_append_val (cuts, t);
    }
  }
  g_array_sort (cuts, ascending);
  return cuts;
}

/* FALSE where the block lies nowhere on the line just beyond the edge, which begins at @start. */
static gboolean
cover_of (const SqWallBlock *block, SqPlace start, double dx, double dy, Cover *cover)
{
  *cover = (Cover){ 0.0, 1.0, block };
  for (int side = 0; side < 4; side++) {
    SqPlace c = block->corner[side], d = block->corner[(side + 1) % 4];
    double ex = d.x_m - c.x_m, ey = d.y_m - c.y_m;
    double left = ex * (start.y_m - c.y_m) - ey * (start.x_m - c.x_m);
    double gain = ex * dy - ey * dx; /* of left, along the whole edge */
    double least = -SLACK_M * (fabs (ex) + fabs (ey));
    if (MAX (left, left + gain) < least)
      return FALSE;
    if (gain > 0.0)
      cover->from = MAX (cover->from, (least - left) / gain);
    else if (gain < 0.0)
      cover->to = MIN (cover->to, (least - left) / gain);
  }
  return cover->from <= cover->to;
}

static int
by_from (gconstpointer a, gconstpointer b)
{
  return ascending (&((const Cover *)a)->from, &((const Cover *)b)->from);
}

static GArray *
covers_of_edge (SqPlace start, double dx, double dy, const GArray *near)
{
  GArray *covers = g_array_new (FALSE, FALSE, sizeof (Cover));
  for (guint i = 0; i < near->len; i++) {
    Cover cover;
    if (cover_of (g_array_index (near, const SqWallBlock *, i), start, dx, dy, &cover))
      g_array_append_val (covers, cover);
  }
  g_array_sort (covers, by_from);
  return covers;
}

/* The covers that a walk along an edge has come to and not yet left: the first @n,
 * in no order; those from @next on are still ahead. */
typedef struct {
  GArray *covers; /* Cover */
  guint n, next;
} Walk;

/* TRUE if a block lies at @beyond, at the share @at of the edge; shares never fall. */
static gboolean
is_covered (Walk *walk, double at, SqPlace beyond)
{
  Cover *covers = (Cover *)(gpointer)walk->covers->data;
  for (; walk->next < walk->covers->len && covers[walk->next].from <= at; walk->next++)
    covers[walk->n++] = covers[walk->next];
  /* The latest first: it is the likeliest to go on. What has ended gives its place to the last. */
  for (guint i = walk->n; i-- > 0;) {
    if (covers[i].to < at)
      covers[i] = covers[--walk->n];
    else if (sq_wall_block_holds (covers[i].block, beyond, 0.0))
      return TRUE;
  }
  return FALSE;
}

static void
add_visible (GArray *stretches, SqPlace a, SqPlace b, const GArray *near)
{
  double length = sq_place_distance_m (a, b);
  if (length < SQ_WALL_SAME_M)
    return;
  double dx = b.x_m - a.x_m, dy = b.y_m - a.y_m;
  SqPlace start = { a.x_m + dy / length * BEYOND_M, a.y_m - dx / length * BEYOND_M };
  g_autoptr (GArray) cuts = cuts_of_edge (a, b, near);
  g_autoptr (GArray) covers = covers_of_edge (start, dx, dy, near);
  Walk walk = { .covers = covers };

  for (guint i = 0; i + 1 < cuts->len; i++) {
    double t0 = g_array_index (cuts, double, i), t1 = g_array_index (cuts, double, i + 1);
    double middle = (t0 + t1) / 2;
    SqPlace beyond = { a.x_m + middle * dx + dy / length * BEYOND_M,
                       a.y_m + middle * dy - dx / length * BEYOND_M };
    if ((t1 - t0) * length < SQ_WALL_SAME_M || is_covered (&walk, middle, beyond))
      continue;
    SqWallStretch stretch = { { a.x_m + t0 * dx, a.y_m + t0 * dy },
                              { a.x_m + t1 * dx, a.y_m + t1 * dy } };
    g_array_append_val (stretches, stretch);
  }
}

/* All cut blocks but one that may meet what is in @box, by how far each of @blocks reaches. */
static void
find_near (const GArray *blocks, const SqPaperBox *reach, SqPaperBox box, guint but, GArray *near)
{
  g_array_set_size (near, 0);
  for (guint i = 0; i < blocks->len; i++) {
    const SqWallBlock *other = sq_wall_block_at (blocks, i);
    if (i != but && sq_wall_block_is_cut (other) && sq_paper_boxes_overlap (box, reach[i]))
      g_array_append_val (near, other);
  }
}

GArray *
sq_wall_outline (const GArray *blocks)
{
  GArray *stretches = g_array_new (FALSE, FALSE, sizeof (SqWallStretch));
  g_autoptr (GArray) near = g_array_new (FALSE, FALSE, sizeof (const SqWallBlock *));
  g_autofree SqPaperBox *reach = g_new (SqPaperBox, blocks->len + 1);

  for (guint i = 0; i < blocks->len; i++)
    reach[i] = bounds (sq_wall_block_at (blocks, i)->corner, 4);
  for (guint i = 0; i < blocks->len; i++) {
    const SqWallBlock *block = sq_wall_block_at (blocks, i);
    for (int side = 0; side < 4 && sq_wall_block_is_cut (block); side++) {
      const SqPlace edge[] = { block->corner[side], block->corner[(side + 1) % 4] };
      find_near (blocks, reach, bounds (edge, 2), i, near);
      add_visible (stretches, edge[0], edge[1], near);
    }
  }
  return stretches;
}
