/* inside.c: which points of a receiver grid are inside something solid */
#include "light/inside.h"

typedef struct {
  guint index;
  SqRegion region; /* holds all points that are inside, and some beside */
} Section;

/* Of the step: how far a section reaches too far. */
#define SAFE 0.01

static void
clear_section (gpointer section)
{
  sq_region_clear (&((Section *)section)->region);
}

static guint
blocks_of (const SqReceiverGrid *grid)
{
  return ((guint)grid->rows + SQ_BLOCK_ROWS - 1) / SQ_BLOCK_ROWS;
}

void
sq_inside_init (SqInside *inside, GArray *obstacles, const SqReceiverGrid *grid)
{
  *inside = (SqInside){
    .obstacles = g_array_ref (obstacles),
    .grid = *grid,
    .sections = g_array_new (FALSE, FALSE, sizeof (Section)),
    .found = g_new0 (GArray *, blocks_of (grid)),
  };
  g_array_set_clear_func (inside->sections, clear_section);
  for (guint i = 0; i < obstacles->len; i++) {
    const SqSolid *solid = &g_array_index (obstacles, SqObstacle, i).solid;
    Section section = { .index = i };
    SqRegionCut cut;
    sq_region_cut_begin (&cut, grid);
    for (guint k = 0; k < solid->n_faces; k++) {
      const SqPlane *face = &solid->faces[k];
      SqPoint on = sq_plane_point (face);
      sq_region_cut_by (&cut, sq_half_plane (grid, on, face->normal, SAFE * grid->step_m));
    }
    if (solid->flat)
      cut.n_corners = 0;
    section.region = sq_region_cut_end (&cut, grid);
    if (!sq_region_is_empty (&section.region))
      g_array_append_val (inside->sections, section);
  }
}

void
sq_inside_clear (SqInside *inside)
{
  for (guint i = 0; inside->found && i < blocks_of (&inside->grid); i++)
    g_clear_pointer (&inside->found[i], g_array_unref);
  g_clear_pointer (&inside->found, g_free);
  g_clear_pointer (&inside->sections, g_array_unref);
  g_clear_pointer (&inside->obstacles, g_array_unref);
}

gboolean
sq_inside_is_of_others (const SqInside *inside, const GArray *obstacles, const SqReceiverGrid *grid)
{
  const SqReceiverGrid *of = &inside->grid;
  return inside->obstacles != obstacles || of->first.x_m != grid->first.x_m ||
         of->first.y_m != grid->first.y_m || of->step_m != grid->step_m ||
         of->height_m != grid->height_m || of->columns != grid->columns || of->rows != grid->rows;
}

/* Places in the block, counted row by row. */
static GArray *
find_points (const SqInside *inside, int first_row, int n_rows)
{
  SqSpan spans[SQ_BLOCK_ROWS];
  const SqReceiverGrid *grid = &inside->grid;
  GArray *points = g_array_new (FALSE, FALSE, sizeof (gsize));
  for (guint k = 0; k < inside->sections->len; k++) {
    const Section *section = &g_array_index (inside->sections, Section, k);
    const SqSolid *solid = &g_array_index (inside->obstacles, SqObstacle, section->index).solid;
    if (!sq_region_spans (&section->region, grid, first_row, n_rows, spans))
      continue;
    for (int i = 0; i < n_rows; i++)
      for (int column = spans[i].from; column < spans[i].to; column++) {
        gsize point = (gsize)i * (gsize)grid->columns + (gsize)column;
        if (sq_solid_holds (solid, sq_receiver_point (grid, column, first_row + i)))
          g_array_append_val (points, point);
      }
  }
  return points;
}

void
sq_inside_mark (SqInside *inside, int first_row, int n_rows, double *lux)
{
  GArray **found = &inside->found[first_row / SQ_BLOCK_ROWS];
  if (!*found)
    *found = find_points (inside, first_row, n_rows);
  for (guint i = 0; i < (*found)->len; i++)
    lux[g_array_index (*found, gsize, i)] = NAN;
}
