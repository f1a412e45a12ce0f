/* wall-shape.c: walls cut into blocks at their corners and openings */
#include "draw/wall-shape.h"

/* Corners sharper than this stay square: their mitre would run far out. */
#define LEAST_MITRE 0.3

typedef struct {
  double x, y;
} Direction;

static Direction
edge_direction (SqPlace from, SqPlace to)
{
  double length = sq_place_distance_m (from, to);
  if (length <= 0.0)
    return (Direction){ 1.0, 0.0 };
  return (Direction){ (to.x_m - from.x_m) / length, (to.y_m - from.y_m) / length };
}

static SqPlace
offset (SqPlace place, Direction along, double along_m, double left_m)
{
  return (SqPlace){ place.x_m + along.x * along_m - along.y * left_m,
                    place.y_m + along.y * along_m + along.x * left_m };
}

/* The point @left_m to the left of both edges that meet at @corner. */
static SqPlace
mitre (SqPlace corner, Direction before, Direction after, double left_m, Direction own)
{
  double share = 1.0 + before.x * after.x + before.y * after.y;
  if (share < LEAST_MITRE)
    return offset (corner, own, 0.0, left_m);
  return (SqPlace){ corner.x_m - (before.y + after.y) / share * left_m,
                    corner.y_m + (before.x + after.x) / share * left_m };
}

static int
by_offset (gconstpointer a, gconstpointer b)
{
  const SqOpening *one = *(const SqOpening *const *)a, *other = *(const SqOpening *const *)b;
  return (one->offset_m > other->offset_m) - (one->offset_m < other->offset_m);
}

static GPtrArray *
openings_of_edge (const SqWall *wall, guint edge)
{
  GPtrArray *found = g_ptr_array_new ();
  for (guint i = 0; i < wall->openings->len; i++)
    if (SQ_AT (SqOpening, wall->openings, i)->edge == (int)edge)
      g_ptr_array_add (found, g_ptr_array_index (wall->openings, i));
  g_ptr_array_sort (found, by_offset);
  return found;
}

static void
add_edge (GArray *blocks, const SqWall *wall, const SqRoom *room, guint edge)
{
  guint n = sq_wall_n_edges (wall);
  double right = wall->side == SQ_SIDE_CENTRE ? -wall->thickness_m / 2
                 : wall->side == SQ_SIDE_LEFT ? 0.0
                                              : -wall->thickness_m;
  double left = right + wall->thickness_m;
  SqPlace from, to, other;
  sq_wall_edge (wall, edge, &from, &to);
  Direction along = edge_direction (from, to), before = along, after = along;

  if (edge > 0 || wall->closed) {
    sq_wall_edge (wall, (edge + n - 1) % n, &other, &from);
    before = edge_direction (other, from);
  }
  if (edge + 1 < n || wall->closed) {
    sq_wall_edge (wall, (edge + 1) % n, &to, &other);
    after = edge_direction (to, other);
  }

  SqWallBlock block = { .wall = wall, .height_m = sq_wall_height_m (wall, room) };
  block.corner[0] = mitre (from, before, along, right, along);
  block.corner[3] = mitre (from, before, along, left, along);

  g_autoptr (GPtrArray) openings = openings_of_edge (wall, edge);
  for (guint i = 0; i < openings->len; i++) {
    const SqOpening *opening = g_ptr_array_index (openings, i);
    SqWallBlock gap = block;
    block.corner[1] = offset (from, along, opening->offset_m, right);
    block.corner[2] = offset (from, along, opening->offset_m, left);
    g_array_append_val (blocks, block);
    gap.opening = opening;
    gap.corner[0] = block.corner[1];
    gap.corner[3] = block.corner[2];
    gap.corner[1] = offset (from, along, opening->offset_m + opening->width_m, right);
    gap.corner[2] = offset (from, along, opening->offset_m + opening->width_m, left);
    g_array_append_val (blocks, gap);
    block.corner[0] = gap.corner[1];
    block.corner[3] = gap.corner[2];
  }
  block.corner[1] = mitre (to, along, after, right, along);
  block.corner[2] = mitre (to, along, after, left, along);
  g_array_append_val (blocks, block);
}

GArray *
sq_wall_blocks (const SqScene *scene)
{
  GArray *blocks = g_array_new (FALSE, FALSE, sizeof (SqWallBlock));
  for (guint i = 0; i < scene->walls->len; i++) {
    const SqWall *wall = SQ_AT (SqWall, scene->walls, i);
    if (wall->common.hidden)
      continue;
    for (guint edge = 0; edge < sq_wall_n_edges (wall); edge++)
      add_edge (blocks, wall, scene->room, edge);
  }
  return blocks;
}

gboolean
sq_wall_block_holds (const SqWallBlock *block, SqPlace place, double margin_m)
{
  for (int i = 0; i < 4; i++) {
    SqPlace a = block->corner[i], b = block->corner[(i + 1) % 4];
    double left = (b.x_m - a.x_m) * (place.y_m - a.y_m) - (b.y_m - a.y_m) * (place.x_m - a.x_m);
    double length = margin_m == 0.0 ? 1.0 : sq_place_distance_m (a, b); /* dear, by the million */
    if (length > 0.0 && left / length < -margin_m)
      return FALSE;
  }
  return TRUE;
}
