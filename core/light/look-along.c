/* look-along.c: which surfaces a line of sight meets, for spot readings */
#include "light/look-along.h"

typedef struct {
  double distance_m;
  guint index; /* of the obstacle; ties are kept in the scene's order */
  SqVector normal;
  double passes, reflects;
} Hit;

static int
compare_hits (gconstpointer a, gconstpointer b)
{
  const Hit *x = a, *y = b;
  if (x->distance_m != y->distance_m)
    return x->distance_m < y->distance_m ? -1 : 1;
  return (x->index > y->index) - (x->index < y->index);
}

static GArray *
hits_along (const GArray *obstacles, double floor_reflectance, SqPoint from, SqVector direction)
{
  GArray *hits = g_array_new (FALSE, FALSE, sizeof (Hit));
  for (guint i = 0; i < obstacles->len; i++) {
    const SqObstacle *obstacle = &g_array_index (obstacles, SqObstacle, i);
    guint face = 0;
    double distance_m = sq_solid_hit (&obstacle->solid, from, direction, &face);
    if (isnan (distance_m))
      continue;
    const Hit hit = { distance_m, i, obstacle->solid.faces[face].normal, obstacle->passes,
                      distance_m > 0.0 ? obstacle->reflects : 0.0 };
    g_array_append_val (hits, hit);
  }
  if (direction.z < 0.0 && from.z_m > 0.0) {
    const Hit floor = { -from.z_m / direction.z, obstacles->len, sq_vector (0, 0, 1), 0.0,
                        floor_reflectance };
    g_array_append_val (hits, floor);
  }
  g_array_sort (hits, compare_hits);
  return hits;
}

GArray *
sq_look_along (const GArray *obstacles, double floor_reflectance, SqPoint from, SqVector direction)
{
  GArray *surfaces = g_array_new (FALSE, FALSE, sizeof (SqSurface));
  g_autoptr (GArray) hits = hits_along (obstacles, floor_reflectance, from, direction);
  double passed = 1.0;
  for (guint i = 0; i < hits->len && passed > 0.0; i++) {
    const Hit *hit = &g_array_index (hits, Hit, i);
    const SqSurface surface = {
      .at = sq_point_along (from, direction, hit->distance_m),
      .normal = hit->normal,
      .weight = passed * hit->reflects / G_PI,
    };
    if (surface.weight > 0.0)
      g_array_append_val (surfaces, surface);
    passed *= hit->passes;
  }
  return surfaces;
}
