/* obstacles.h: everything in the scene that stands in the way of light, as convex solids */
#pragma once

#include "light/solid.h"
#include "scene/scene.h"

G_BEGIN_DECLS

typedef struct {
  SqSolid solid;
  double passes;        /* share of light that goes straight through; 0 for what is solid */
  double reflects;      /* share of light that its surface gives back */
  const SqThing *owner; /* the wall, opening, piece, mark, panel or room; borrowed from the scene */
} SqObstacle;

/* A list of SqObstacle that clears what it drops. */
GArray *sq_obstacles_new_empty (void);

/* Adds an obstacle, its solid still to be made. Returns: (transfer none): until the next is added
 */
SqObstacle *sq_obstacles_add (GArray *obstacles,
                              const SqThing *owner,
                              double passes,
                              double reflects);

/* Walls with openings and reveals, panes, door leaves, ceilings, pieces, people, and the panels
 * that are set. The floor is none: nothing is lit through it from below.
 * Returns: (transfer full) (element-type SqObstacle) */
GArray *sq_obstacles_new (const SqScene *scene);

/* TRUE if the two are made of the very same things, so that sq_obstacles_new() would make the same
 * of them: things that were not touched are shared. FALSE says nothing. */
gboolean sq_obstacles_are_the_same (const SqScene *a, const SqScene *b);

/* TRUE if @point is inside something solid. */
gboolean sq_obstacles_hold (const GArray *obstacles, SqPoint point);

/* Parts of the above. */
void sq_obstacles_add_wall (GArray *obstacles, const SqScene *scene, const SqWall *wall);
void sq_obstacles_add_person (GArray *obstacles, const SqMark *mark);

G_END_DECLS
