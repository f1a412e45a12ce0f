/* obstacles.c: everything in the scene that stands in the way of light, as convex solids */
#include "light/obstacles.h"
#include "light/outline.h"

#include <string.h>

/* What a round piece is drawn with. */
#define DISC_SIDES 32

static void
clear_obstacle (gpointer obstacle)
{
  sq_solid_clear (&((SqObstacle *)obstacle)->solid);
}

GArray *
sq_obstacles_new_empty (void)
{
  GArray *obstacles = g_array_new (FALSE, TRUE, sizeof (SqObstacle));
  g_array_set_clear_func (obstacles, clear_obstacle);
  return obstacles;
}

SqObstacle *
sq_obstacles_add (GArray *obstacles, const SqThing *owner, double passes, double reflects)
{
  const SqObstacle obstacle = { .passes = passes, .reflects = reflects, .owner = owner };
  g_array_append_val (obstacles, obstacle);
  return &g_array_index (obstacles, SqObstacle, obstacles->len - 1);
}

static void
add_piece (GArray *obstacles, const SqPiece *piece)
{
  if (piece->disc) {
    SqPlace outline[DISC_SIDES];
    /* Of the disc's own area. */
    double step = 2.0 * G_PI / DISC_SIDES;
    double radius_m = piece->disc->radius_m * sqrt (step / sin (step));
    for (int i = 0; i < DISC_SIDES; i++)
      outline[i] = (SqPlace){ piece->disc->at.x_m + radius_m * cos (i * step),
                              piece->disc->at.y_m + radius_m * sin (i * step) };
    SqObstacle *round = sq_obstacles_add (obstacles, &piece->thing, 0.0, piece->reflectance);
    sq_solid_init_prism (&round->solid, outline, DISC_SIDES, piece->base_m, piece->top_m);
    return;
  }
  g_autoptr (GPtrArray) parts =
    sq_outline_split ((const SqPlace *)(void *)piece->outline->data, piece->outline->len);
  for (guint i = 0; parts && i < parts->len; i++) {
    const GArray *part = g_ptr_array_index (parts, i);
    SqObstacle *block = sq_obstacles_add (obstacles, &piece->thing, 0.0, piece->reflectance);
    sq_solid_init_prism (&block->solid, (const SqPlace *)(void *)part->data, part->len,
                         piece->base_m, piece->top_m);
  }
}

/* A flag stops all, whatever it is made of. */
static void
add_panel (GArray *obstacles, const SqScene *scene, const SqPanel *panel)
{
  const SqMaterial *material = panel->material ? sq_scene_material (scene, panel->material) : NULL;
  double passes = material && panel->kind != SQ_PANEL_FLAG ? material->direct : 0.0;
  SqFrame frame = sq_panel_frame (panel);
  if (!panel->set)
    return;
  SqObstacle *sheet =
    sq_obstacles_add (obstacles, &panel->thing, passes, material ? material->reflect : 0.0);
  sq_solid_init_sheet (&sheet->solid, panel->at,
                       sq_vector_scale (frame.right, panel->width_m / 2.0),
                       sq_vector_scale (frame.up, panel->height_m / 2.0));
}

GArray *
sq_obstacles_new (const SqScene *scene)
{
  GArray *obstacles = sq_obstacles_new_empty ();
  for (guint i = 0; i < scene->walls->len; i++)
    sq_obstacles_add_wall (obstacles, scene, SQ_AT (SqWall, scene->walls, i));
  for (guint i = 0; i < scene->pieces->len; i++)
    add_piece (obstacles, SQ_AT (SqPiece, scene->pieces, i));
  for (guint i = 0; i < scene->marks->len; i++)
    sq_obstacles_add_person (obstacles, SQ_AT (SqMark, scene->marks, i));
  for (guint i = 0; i < scene->panels->len; i++)
    add_panel (obstacles, scene, SQ_AT (SqPanel, scene->panels, i));
  return obstacles;
}

static gboolean
same_things (const GPtrArray *a, const GPtrArray *b)
{
  if (a == b)
    return TRUE;
  return a->len == b->len &&
         (a->len == 0 || memcmp (a->pdata, b->pdata, a->len * sizeof *a->pdata) == 0);
}

gboolean
sq_obstacles_are_the_same (const SqScene *a, const SqScene *b)
{
  return same_things (a->walls, b->walls) && same_things (a->pieces, b->pieces) &&
         same_things (a->marks, b->marks) && same_things (a->panels, b->panels) &&
         same_things (a->materials, b->materials) && a->room == b->room && a->library == b->library;
}

gboolean
sq_obstacles_hold (const GArray *obstacles, SqPoint point)
{
  for (guint i = 0; i < obstacles->len; i++)
    if (sq_solid_holds (&g_array_index (obstacles, SqObstacle, i).solid, point))
      return TRUE;
  return FALSE;
}
