/* rooms.c: indoors is what cannot be walked to from the border of the plan */
#include "draw/rooms.h"

#include "draw/wall-shape.h"

/* Points right on a face count to the ground beside it. */
#define FACE_STEPS 0.1

typedef enum {
  INDOORS, /* until somebody walks in */
  WALL,
  OUTDOORS,
} Ground;

static double
distance_to_edge_m (SqPlace p, SqPlace a, SqPlace b)
{
  double ex = b.x_m - a.x_m, ey = b.y_m - a.y_m, length2 = ex * ex + ey * ey;
  double t = 0.0;
  if (length2 > 0.0)
    t = CLAMP (((p.x_m - a.x_m) * ex + (p.y_m - a.y_m) * ey) / length2, 0.0, 1.0);
  return hypot (p.x_m - a.x_m - t * ex, p.y_m - a.y_m - t * ey);
}

static int
column_of (const SqGrid *grid, double x_m)
{
  return (int)CLAMP (floor ((x_m - grid->first.x_m) / grid->step_m), -1, grid->columns);
}

static int
row_of (const SqGrid *grid, double y_m)
{
  return (int)CLAMP (floor ((y_m - grid->first.y_m) / grid->step_m), -1, grid->rows);
}

/* A wall is at least so thick that no step from point to point leads across. */
static void
build_edge (guint8 *ground, const SqGrid *grid, SqPlace a, SqPlace b, double half_m)
{
  half_m = MAX (half_m - FACE_STEPS * grid->step_m, 0.51 * grid->step_m);
  int i0 = MAX (column_of (grid, MIN (a.x_m, b.x_m) - half_m), 0);
  int j0 = MAX (row_of (grid, MIN (a.y_m, b.y_m) - half_m), 0);
  int i1 = MIN (column_of (grid, MAX (a.x_m, b.x_m) + half_m) + 1, grid->columns - 1);
  int j1 = MIN (row_of (grid, MAX (a.y_m, b.y_m) + half_m) + 1, grid->rows - 1);
  for (int j = j0; j <= j1; j++)
    for (int i = i0; i <= i1; i++) {
      SqPlace p = { grid->first.x_m + i * grid->step_m, grid->first.y_m + j * grid->step_m };
      if (distance_to_edge_m (p, a, b) <= half_m)
        ground[(gsize)j * grid->columns + i] = WALL;
    }
}

static void
build_wall (guint8 *ground, const SqGrid *grid, const SqWall *wall)
{
  /* The body lies left or right of a measured face. */
  double aside_m = wall->side == SQ_SIDE_LEFT    ? wall->thickness_m / 2.0
                   : wall->side == SQ_SIDE_RIGHT ? -wall->thickness_m / 2.0
                                                 : 0.0;
  SqPlace a, b;
  for (guint edge = 0; sq_wall_edge (wall, edge, &a, &b); edge++) {
    double length_m = sq_place_distance_m (a, b);
    if (length_m > 0.0) {
      double dx = -(b.y_m - a.y_m) / length_m * aside_m;
      double dy = (b.x_m - a.x_m) / length_m * aside_m;
      a = (SqPlace){ a.x_m + dx, a.y_m + dy };
      b = (SqPlace){ b.x_m + dx, b.y_m + dy };
    }
    build_edge (ground, grid, a, b, wall->thickness_m / 2.0);
  }
}

/* Somebody walks onto point @at, unless a wall stands there or it was walked on before. */
static void
visit (guint8 *ground, GArray *todo, int at)
{
  if (ground[at] != INDOORS)
    return;
  ground[at] = OUTDOORS;
  g_array_append_val (todo, at);
}

/* Walks on from all of @todo: up, down, left and right. */
static void
walk_on (guint8 *ground, GArray *todo, const SqGrid *grid)
{
  int columns = grid->columns, rows = grid->rows;
  while (todo->len > 0) {
    int here = g_array_index (todo, int, todo->len - 1);
    g_array_set_size (todo, todo->len - 1);
    int i = here % columns, j = here / columns;
    if (i > 0)
      visit (ground, todo, here - 1);
    if (i + 1 < columns)
      visit (ground, todo, here + 1);
    if (j > 0)
      visit (ground, todo, here - columns);
    if (j + 1 < rows)
      visit (ground, todo, here + columns);
  }
}

static void
walk_in_from_border (guint8 *ground, const SqGrid *grid)
{
  int columns = grid->columns, rows = grid->rows;
  g_autoptr (GArray) todo = g_array_new (FALSE, FALSE, sizeof (int));
  for (int i = 0; i < columns; i++) {
    visit (ground, todo, i);
    visit (ground, todo, (rows - 1) * columns + i);
  }
  for (int j = 0; j < rows; j++) {
    visit (ground, todo, j * columns);
    visit (ground, todo, j * columns + columns - 1);
  }
  walk_on (ground, todo, grid);
}

static gboolean
all_marks_indoors (const guint8 *ground, const SqGrid *grid, const SqScene *scene)
{
  for (guint k = 0; k < scene->marks->len; k++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, k);
    int i = column_of (grid, mark->at.x_m), j = row_of (grid, mark->at.y_m);
    if (i < 0 || j < 0 || i >= grid->columns || j >= grid->rows)
      return FALSE;
    if (ground[(gsize)j * grid->columns + i] == OUTDOORS)
      return FALSE;
  }
  return TRUE;
}

static gboolean
is_in_opening (const GArray *blocks, SqPlace place, double margin_m)
{
  for (guint k = 0; k < blocks->len; k++) {
    const SqWallBlock *block = sq_wall_block_at (blocks, k);
    if (block->opening != NULL && sq_wall_block_holds (block, place, margin_m))
      return TRUE;
  }
  return FALSE;
}

/* Of the walls, which were built with round ends so as to leave no gap, only openings are indoors.
 */
static void
leave_openings (guint8 *ground, const SqGrid *grid, const SqScene *scene)
{
  g_autoptr (GArray) blocks = sq_wall_blocks (scene);
  for (int j = 0; j < grid->rows; j++)
    for (int i = 0; i < grid->columns; i++) {
      SqPlace place = { grid->first.x_m + i * grid->step_m, grid->first.y_m + j * grid->step_m };
      gsize k = (gsize)j * grid->columns + i;
      if (ground[k] == WALL && !is_in_opening (blocks, place, -FACE_STEPS * grid->step_m))
        ground[k] = OUTDOORS;
    }
}

gboolean
sq_rooms_keep (SqGrid *grid, const SqScene *scene)
{
  gsize n_points = (gsize)grid->columns * grid->rows;
  g_autofree guint8 *ground = g_new0 (guint8, n_points);
  for (guint k = 0; k < scene->walls->len; k++)
    build_wall (ground, grid, SQ_AT (SqWall, scene->walls, k));
  walk_in_from_border (ground, grid);

  gboolean any_room = FALSE;
  for (gsize k = 0; k < n_points && !any_room; k++)
    any_room = ground[k] == INDOORS;
  if (!any_room || !all_marks_indoors (ground, grid, scene))
    return FALSE;
  leave_openings (ground, grid, scene);
  gboolean any_outdoors = FALSE;
  for (gsize k = 0; k < n_points; k++)
    if (ground[k] == OUTDOORS) {
      grid->value[k] = NAN;
      any_outdoors = TRUE;
    }
  return any_outdoors;
}

/* Walks in from light; where it gets to is then called out of doors. */
static void
walk_in_from_light (guint8 *ground, const SqGrid *grid, double least)
{
  g_autoptr (GArray) todo = g_array_new (FALSE, FALSE, sizeof (int));
  for (int j = 0; j < grid->rows; j++)
    for (int i = 0; i < grid->columns; i++) {
      int here = j * grid->columns + i;
      if (!(grid->value[here] >= least))
        continue;
      if (i > 0)
        visit (ground, todo, here - 1);
      if (i + 1 < grid->columns)
        visit (ground, todo, here + 1);
      if (j > 0)
        visit (ground, todo, here - grid->columns);
      if (j + 1 < grid->rows)
        visit (ground, todo, here + grid->columns);
    }
  walk_on (ground, todo, grid);
}

void
sq_dark_keep (SqGrid *grid, double least)
{
  gsize n_points = (gsize)grid->columns * grid->rows;
  g_autofree guint8 *ground = g_new0 (guint8, n_points);
  for (gsize k = 0; k < n_points; k++)
    ground[k] = grid->value[k] < least ? INDOORS : WALL; /* walls are NAN, and no way either */
  walk_in_from_border (ground, grid);
  for (gsize k = 0; k < n_points; k++)
    if (ground[k] == OUTDOORS)
      ground[k] = WALL;
  walk_in_from_light (ground, grid, least);
  for (gsize k = 0; k < n_points; k++)
    if (ground[k] != OUTDOORS)
      grid->value[k] = NAN;
}
