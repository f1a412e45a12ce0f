/* section-cut.c: the upright plane through a lamp, and what of the set it cuts */
#include "draw/section-cut.h"

#include "draw/ray-cut.h"
#include "light/obstacles.h"

/* A lamp may touch a wall or hang in a shade: what it stands in does not stop its light. */
#define CLEAR_M 0.02

static const SqMark *
nearest_mark (const SqScene *scene, SqPlace from)
{
  const SqMark *nearest = NULL;
  double least = G_MAXDOUBLE;
  for (guint i = 0; i < scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
    double distance = sq_place_distance_m (mark->at, from);
    if (!mark->common.hidden && distance > SQ_CUT_LEAST_M && distance < least) {
      least = distance;
      nearest = mark;
    }
  }
  return nearest;
}

static SqVector
level_between (SqPlace from, SqPlace to)
{
  return sq_vector_unit (sq_vector (to.x_m - from.x_m, to.y_m - from.y_m, 0.0));
}

SqCutPlane
sq_cut_plane (const SqScene *scene, const SqFixture *fixture)
{
  SqCutPlane plane = { .origin = { fixture->at.x_m, fixture->at.y_m },
                       .along = { 1.0, 0.0, 0.0 },
                       .by = SQ_CUT_BY_PAGE };
  SqPoint aim;
  const SqMark *mark;
  if (sq_scene_aim_point (scene, &fixture->aim, &aim) &&
      sq_place_distance_m (plane.origin, (SqPlace){ aim.x_m, aim.y_m }) > SQ_CUT_LEAST_M) {
    plane.by = SQ_CUT_BY_AIM;
    plane.along = level_between (plane.origin, (SqPlace){ aim.x_m, aim.y_m });
    plane.to = fixture->aim.id != NULL ? sq_scene_find (scene, fixture->aim.id) : NULL;
  } else if ((mark = nearest_mark (scene, plane.origin)) != NULL) {
    plane.by = SQ_CUT_BY_MARK;
    plane.along = level_between (plane.origin, mark->at);
    plane.to = &mark->thing;
  }
  plane.to_eye = sq_vector (plane.along.y, -plane.along.x, 0.0);
  return plane;
}

SqPlace
sq_cut_place (const SqCutPlane *plane, SqPoint point)
{
  return (SqPlace){ (point.x_m - plane->origin.x_m) * plane->along.x +
                      (point.y_m - plane->origin.y_m) * plane->along.y,
                    point.z_m };
}

double
sq_cut_off_m (const SqCutPlane *plane, SqPoint point)
{
  return (point.x_m - plane->origin.x_m) * plane->to_eye.x +
         (point.y_m - plane->origin.y_m) * plane->to_eye.y;
}

SqPoint
sq_cut_point (const SqCutPlane *plane, SqPlace place)
{
  return sq_point (plane->origin.x_m + place.x_m * plane->along.x,
                   plane->origin.y_m + place.x_m * plane->along.y, place.y_m);
}

SqVector
sq_cut_direction (const SqCutPlane *plane, SqVector direction)
{
  return sq_vector (sq_vector_dot (direction, plane->along), direction.z,
                    sq_vector_dot (direction, plane->to_eye));
}

static int
from_left (gconstpointer a, gconstpointer b)
{
  const SqPlace *p = a, *q = b;
  if (p->x_m != q->x_m)
    return p->x_m < q->x_m ? -1 : 1;
  return (p->y_m > q->y_m) - (p->y_m < q->y_m);
}

/* Twice the area of a triangle: over 0 where @c lies left of the way from @a to @b. */
static double
turns_left (SqPlace a, SqPlace b, SqPlace c)
{
  return (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
}

guint
sq_cut_outline (SqPlace *points, guint n, SqPlace *corners)
{
  const double least = 1e-12;
  guint count = 0;
  qsort (points, n, sizeof *points, from_left);
  for (guint i = 0; i < n; i++) { /* the lower side */
    while (count >= 2 && turns_left (corners[count - 2], corners[count - 1], points[i]) <= least)
      count--;
    corners[count++] = points[i];
  }
  guint lower = count + 1;
  for (guint i = n - 1; i > 0; i--) { /* back along the upper one */
    while (count >= lower &&
           turns_left (corners[count - 2], corners[count - 1], points[i - 1]) <= least)
      count--;
    corners[count++] = points[i - 1];
  }
  return count > 1 ? count - 1 : count;
}

/* The plane goes through an edge where its ends lie on both sides. */
static gboolean
cut_solid (const SqCutPlane *plane, const SqObstacle *obstacle, SqCutPart *part)
{
  const SqSolid *solid = &obstacle->solid;
  g_autofree SqPlace *points = g_new (SqPlace, solid->n_edges + 1);
  g_autofree SqPlace *outline = g_new (SqPlace, solid->n_edges + 2);
  guint n = 0;
  if (fabs (sq_cut_off_m (plane, solid->centre)) > solid->radius_m + SQ_TOUCH_M)
    return FALSE;
  for (guint i = 0; i < solid->n_edges; i++) {
    SqPoint a = solid->corners[solid->edges[i].from], b = solid->corners[solid->edges[i].to];
    double before = sq_cut_off_m (plane, a), after = sq_cut_off_m (plane, b);
    if ((before >= 0.0) == (after >= 0.0))
      continue;
    points[n++] =
      sq_cut_place (plane, sq_point_along (a, sq_vector_between (a, b), before / (before - after)));
  }
  if (n < 2)
    return FALSE;
  *part = (SqCutPart){ .owner = obstacle->owner, .passes = obstacle->passes, .sheet = solid->flat };
  if (solid->flat) {
    part->n = 2;
    memcpy (part->corner, points, 2 * sizeof *points);
    return sq_place_distance_m (points[0], points[1]) > SQ_TOUCH_M;
  }
  part->n = sq_cut_outline (points, n, outline);
  g_return_val_if_fail (part->n <= SQ_CUT_CORNERS, FALSE);
  memcpy (part->corner, outline, part->n * sizeof *outline);
  return part->n >= 3;
}

GArray *
sq_cut_parts (const SqCutPlane *plane, const GArray *obstacles)
{
  GArray *parts = g_array_new (FALSE, FALSE, sizeof (SqCutPart));
  for (guint i = 0; i < obstacles->len; i++) {
    SqCutPart part;
    if (cut_solid (plane, &g_array_index (obstacles, SqObstacle, i), &part))
      g_array_append_val (parts, part);
  }
  return parts;
}

gboolean
sq_cut_holds (const SqCutPart *part, SqPlace place)
{
  for (guint i = 0; i < part->n; i++)
    if (turns_left (part->corner[i], part->corner[(i + 1) % part->n], place) < 0.0)
      return FALSE;
  return !part->sheet;
}

gboolean
sq_cut_goes_through (const GArray *parts, const SqThing *owner)
{
  for (guint i = 0; i < parts->len; i++)
    if (g_array_index (parts, SqCutPart, i).owner == owner)
      return TRUE;
  return FALSE;
}

gboolean
sq_cut_stops (const SqThing *owner, double passes)
{
  if (owner->kind == &sq_panel_kind)
    return sq_panel_ends_light ((const SqPanel *)owner);
  return passes < SQ_SHUT_TRANSMITTANCE;
}

double
sq_cut_reach_m (
  const GArray *obstacles, SqPoint from, SqVector toward, double most_m, const SqThing *not_of)
{
  double reach = most_m;
  if (toward.z < 0.0 && from.z_m > 0.0)
    reach = MIN (reach, from.z_m / -toward.z);
  for (guint i = 0; i < obstacles->len; i++) {
    const SqObstacle *obstacle = &g_array_index (obstacles, SqObstacle, i);
    guint face;
    if (!sq_cut_stops (obstacle->owner, obstacle->passes) ||
        (not_of != NULL && obstacle->owner == not_of))
      continue;
    double hit = sq_solid_hit (&obstacle->solid, from, toward, &face);
    if (hit > CLEAR_M && hit < reach) /* not where NAN */
      reach = hit;
  }
  return reach;
}
