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

void
sq_inside_init (SqInside *inside, const GArray *obstacles, const SqReceiverGrid *grid)
{
  *inside = (SqInside){ obstacles, *grid, g_array_new (FALSE, FALSE, sizeof (Section)) };
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
  g_clear_pointer (&inside->sections, g_array_unref);
}

void
sq_inside_mark (const SqInside *inside, int first_row, int n_rows, double *lux)
{
  SqSpan spans[SQ_BLOCK_ROWS];
  const SqReceiverGrid *grid = &inside->grid;
  for (guint k = 0; k < inside->sections->len; k++) {
    const Section *section = &g_array_index (inside->sections, Section, k);
    const SqSolid *solid = &g_array_index (inside->obstacles, SqObstacle, section->index).solid;
    if (!sq_region_spans (&section->region, grid, first_row, n_rows, spans))
      continue;
    for (int i = 0; i < n_rows; i++)
      for (int column = spans[i].from; column < spans[i].to; column++)
        if (sq_solid_holds (solid, sq_receiver_point (grid, column, first_row + i)))
          lux[(gsize)i * (gsize)grid->columns + (gsize)column] = NAN;
  }
}
