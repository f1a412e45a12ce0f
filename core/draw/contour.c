/* contour.c: marching squares: lines of equal value over a grid
 *
 * Every grid edge that a line crosses is a station; each cell links stations in pairs. A station
 * has at most two links, so the lines are read off by walking from link to link. */
#include "draw/contour.h"

#define NONE (-1)

typedef struct {
  const SqGrid *grid;
  double level;
  gboolean fill;     /* NAN is below everything, and so is a frame of points round the grid */
  int columns, rows; /* of points, with that frame */
  int (*links)[2];   /* of each station: horizontal edges first, then vertical */
} March;

/* The value at a point. In a fill nothing is NAN. */
static double
value_at (const March *march, int i, int j)
{
  if (!march->fill)
    return *sq_grid_at (march->grid, i, j);
  if (i == 0 || j == 0 || i == march->columns - 1 || j == march->rows - 1)
    return -INFINITY;
  double value = *sq_grid_at (march->grid, i - 1, j - 1);
  return isnan (value) ? -INFINITY : value;
}

/* Points of a fill's frame lie on the border of the grid, so that areas close along it. */
static SqPlace
place_at (const March *march, int i, int j)
{
  const SqGrid *grid = march->grid;
  if (march->fill) {
    i = CLAMP (i - 1, 0, grid->columns - 1);
    j = CLAMP (j - 1, 0, grid->rows - 1);
  }
  return (SqPlace){ grid->first.x_m + i * grid->step_m, grid->first.y_m + j * grid->step_m };
}

static int
across (const March *march, int i, int j)
{
  return j * march->columns + i;
}

static int
upward (const March *march, int i, int j)
{
  return march->columns * march->rows + j * march->columns + i;
}

static void
link_stations (March *march, int a, int b)
{
  march->links[a][march->links[a][0] == NONE ? 0 : 1] = b;
  march->links[b][march->links[b][0] == NONE ? 0 : 1] = a;
}

static void
march_cell (March *march, int i, int j)
{
  double corner[4] = { value_at (march, i, j), value_at (march, i + 1, j),
                       value_at (march, i + 1, j + 1), value_at (march, i, j + 1) };
  int above = 0;
  for (int k = 0; k < 4; k++) {
    if (isnan (corner[k]))
      return;
    above |= (corner[k] >= march->level) << k;
  }
  int bottom = across (march, i, j), top = across (march, i, j + 1);
  int left = upward (march, i, j), right = upward (march, i + 1, j);
  gboolean middle_above = (corner[0] + corner[1] + corner[2] + corner[3]) / 4.0 >= march->level;

  switch (above) {
  case 1:
  case 14:
    link_stations (march, left, bottom);
    break;
  case 2:
  case 13:
    link_stations (march, bottom, right);
    break;
  case 4:
  case 11:
    link_stations (march, right, top);
    break;
  case 8:
  case 7:
    link_stations (march, top, left);
    break;
  case 3:
  case 12:
    link_stations (march, left, right);
    break;
  case 6:
  case 9:
    link_stations (march, bottom, top);
    break;
  case 5:
  case 10:
    /* A saddle: the corners that the middle agrees with hold together. */
    if ((above == 5) == middle_above) {
      link_stations (march, bottom, right);
      link_stations (march, top, left);
    } else {
      link_stations (march, left, bottom);
      link_stations (march, right, top);
    }
    break;
  default:
    break; /* all above or all below */
  }
}

/* Where the line crosses the edge of @station. */
static SqPlace
crossing (const March *march, int station)
{
  int points = march->columns * march->rows;
  gboolean up = station >= points;
  int i = station % points % march->columns, j = station % points / march->columns;
  int i2 = up ? i : i + 1, j2 = up ? j + 1 : j;
  double a = value_at (march, i, j), b = value_at (march, i2, j2);
  SqPlace from = place_at (march, i, j), to = place_at (march, i2, j2);
  if (isinf (a) && a < 0)
    return to;
  if (isinf (b) && b < 0)
    return from;
  double t = b != a ? CLAMP ((march->level - a) / (b - a), 0.0, 1.0) : 0.5;
  return (SqPlace){ from.x_m + t * (to.x_m - from.x_m), from.y_m + t * (to.y_m - from.y_m) };
}

/* Walks from @station until the links end, taking them out on the way. */
static SqContour *
walk (March *march, int station)
{
  SqContour *contour = g_new0 (SqContour, 1);
  contour->points = g_array_new (FALSE, FALSE, sizeof (SqPlace));
  int start = station, before = NONE;
  while (station != NONE) {
    SqPlace place = crossing (march, station);
    g_array_append_val (contour->points, place);
    int *links = march->links[station];
    int next = links[0] != NONE && links[0] != before ? links[0] : links[1];
    /* Two cells may link the same two stations: a loop of two. */
    if (links[0] == links[1])
      next = links[0];
    links[0] = links[1] = NONE;
    contour->closed = next == start;
    before = station;
    station = next != NONE && march->links[next][0] != NONE ? next : NONE;
  }
  return contour;
}

static GPtrArray *
march_all (March *march)
{
  GPtrArray *found = g_ptr_array_new_with_free_func ((GDestroyNotify)sq_contour_free);
  if (march->columns < 2 || march->rows < 2)
    return found;
  gsize n_stations = (gsize)2 * march->columns * march->rows;
  march->links = g_malloc (n_stations * sizeof *march->links);
  for (gsize k = 0; k < n_stations; k++)
    march->links[k][0] = march->links[k][1] = NONE;
  for (int j = 0; j + 1 < march->rows; j++)
    for (int i = 0; i + 1 < march->columns; i++)
      march_cell (march, i, j);

  /* Ends of open lines first: what is left then are loops. */
  for (int round = 0; round < 2; round++)
    for (gsize k = 0; k < n_stations; k++) {
      gboolean linked = march->links[k][0] != NONE;
      gboolean end = linked && march->links[k][1] == NONE;
      if (round == 0 ? end : linked)
        g_ptr_array_add (found, walk (march, (int)k));
    }
  g_free (march->links);
  return found;
}

GPtrArray *
sq_contours (const SqGrid *grid, double level)
{
  March march = { .grid = grid, .level = level, .columns = grid->columns, .rows = grid->rows };
  return march_all (&march);
}

GPtrArray *
sq_contour_areas (const SqGrid *grid, double level)
{
  March march = {
    .grid = grid, .level = level, .fill = TRUE, .columns = grid->columns + 2, .rows = grid->rows + 2
  };
  return march_all (&march);
}

GPtrArray *
sq_contour_cells (const SqGrid *grid)
{
  /* On a grid of ones and zeroes a level just over zero runs along the outer points. */
  const double hardly = 1e-6;
  g_autoptr (SqGrid) mask = sq_grid_copy (grid);
  for (gsize k = 0; k < (gsize)grid->columns * grid->rows; k++)
    mask->value[k] = isnan (grid->value[k]) ? 0.0 : 1.0;
  return sq_contour_areas (mask, hardly);
}

void
sq_contour_free (SqContour *contour)
{
  g_array_unref (contour->points);
  g_free (contour);
}

double
sq_contour_length_m (const SqContour *contour)
{
  const GArray *points = contour->points;
  double length_m = 0.0;
  for (guint k = 1; k < points->len; k++)
    length_m += sq_place_distance_m (g_array_index (points, SqPlace, k - 1),
                                     g_array_index (points, SqPlace, k));
  if (contour->closed && points->len > 1)
    length_m += sq_place_distance_m (g_array_index (points, SqPlace, points->len - 1),
                                     g_array_index (points, SqPlace, 0));
  return length_m;
}
