/* lit-scene.c: a scene made ready for light: its lamps, and what stands in their way */
#include "light/lit-scene.h"
#include "light/obstacles.h"

#include <string.h>

SqLitScene *
sq_lit_scene_new (const SqScene *scene, const SqLitScene *like)
{
  SqLitScene *lit = g_new (SqLitScene, 1);
  gboolean stands = like && sq_obstacles_are_the_same (scene, like->scene);
  *lit = (SqLitScene){
    .scene = sq_scene_ref ((SqScene *)scene),
    .lamps = sq_lamps_new (scene, like ? like->lamps : NULL),
    .obstacles = stands ? g_array_ref (like->obstacles) : sq_obstacles_new (scene),
  };
  g_atomic_ref_count_init (&lit->references);
  return lit;
}

SqLitScene *
sq_lit_scene_ref (SqLitScene *lit)
{
  g_atomic_ref_count_inc (&lit->references);
  return lit;
}

void
sq_lit_scene_unref (SqLitScene *lit)
{
  if (!lit || !g_atomic_ref_count_dec (&lit->references))
    return;
  g_array_unref (lit->lamps);
  g_array_unref (lit->obstacles);
  sq_scene_unref (lit->scene);
  g_free (lit);
}

static gboolean
same_point (SqPoint a, SqPoint b)
{
  return a.x_m == b.x_m && a.y_m == b.y_m && a.z_m == b.z_m;
}

static gboolean
same_vector (SqVector a, SqVector b)
{
  return a.x == b.x && a.y == b.y && a.z == b.z;
}

/* What is hung on the two, told by identity: things that were not touched are shared. */
static gboolean
same_modifiers (const SqFixture *a,
                const SqScene *a_scene,
                const SqFixture *b,
                const SqScene *b_scene)
{
  if (a->modifiers->len != b->modifiers->len)
    return FALSE;
  for (guint i = 0; i < a->modifiers->len; i++) {
    const SqModifier *one = SQ_AT (SqModifier, a->modifiers, i);
    if (one != SQ_AT (SqModifier, b->modifiers, i))
      return FALSE;
    if (one->material &&
        sq_scene_material (a_scene, one->material) != sq_scene_material (b_scene, one->material))
      return FALSE;
  }
  return TRUE;
}

gboolean
sq_lamp_sends_the_same (const SqLamp *a,
                        const SqScene *a_scene,
                        const SqLamp *b,
                        const SqScene *b_scene)
{
  const SqFixture *x = a->fixture, *y = b->fixture;
  if (x == y && a_scene == b_scene)
    return TRUE;
  return a->shaped == b->shaped && x->beam == y->beam && same_point (x->at, y->at) &&
         same_vector (a->frame.forward, b->frame.forward) &&
         same_vector (a->frame.up, b->frame.up) && same_vector (a->frame.right, b->frame.right) &&
         sq_scene_class (a_scene, x->class_id) == sq_scene_class (b_scene, y->class_id) &&
         same_modifiers (x, a_scene, y, b_scene);
}

static gboolean
same_obstacle (const SqObstacle *a, const SqObstacle *b)
{
  return a->passes == b->passes && a->solid.n_corners == b->solid.n_corners &&
         a->solid.n_edges == b->solid.n_edges &&
         memcmp (a->solid.corners, b->solid.corners, a->solid.n_corners * sizeof (SqPoint)) == 0;
}

static guint
hash_of (gconstpointer obstacle)
{
  const SqSolid *solid = &((const SqObstacle *)obstacle)->solid;
  guint hash = solid->n_corners;
  for (guint i = 0; i < solid->n_corners; i++) {
    const double parts[] = { solid->corners[i].x_m, solid->corners[i].y_m, solid->corners[i].z_m };
    for (gsize k = 0; k < G_N_ELEMENTS (parts); k++)
      hash = hash * 31 + g_double_hash (&parts[k]);
  }
  return hash;
}

static gboolean
equal (gconstpointer a, gconstpointer b)
{
  return same_obstacle (a, b);
}

guint
sq_obstacles_match (const GArray *then, const GArray *now, int *was)
{
  const SqObstacle *old = (const SqObstacle *)(void *)then->data;
  const SqObstacle *new = (const SqObstacle *)(void *)now->data;
  g_autoptr (GHashTable) places = NULL; /* made at the first that does not just follow */
  guint found = 0;
  int next = 0;
  for (guint i = 0; then == now && i < now->len; i++)
    was[i] = (int)i;
  if (then == now)
    return now->len;
  for (guint i = 0; i < now->len; i++) {
    was[i] = -1;
    if ((guint)next < then->len && same_obstacle (&old[next], &new[i])) {
      was[i] = next;
    } else {
      if (places == NULL) {
        places = g_hash_table_new (hash_of, equal);
        for (guint k = then->len; k > 0; k--)
          g_hash_table_insert (places, (gpointer)&old[k - 1], GUINT_TO_POINTER (k));
      }
      int place = (int)GPOINTER_TO_UINT (g_hash_table_lookup (places, &new[i])) - 1;
      was[i] = place >= next ? place : -1;
    }
    if (was[i] < 0)
      continue;
    found++;
    next = was[i] + 1;
  }
  return found;
}
