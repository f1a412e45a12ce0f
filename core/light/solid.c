/* solid.c: convex solids */
#include "light/solid.h"

static SqPlane
plane_through (SqPoint point, SqVector normal)
{
  SqPlane plane = { .normal = sq_vector_unit (normal) };
  plane.offset_m = sq_plane_height_m (&plane, point);
  return plane;
}

static void
bound (SqSolid *solid)
{
  SqPoint least = solid->corners[0], most = least;
  for (guint i = 1; i < solid->n_corners; i++) {
    SqPoint p = solid->corners[i];
    least = sq_point (MIN (least.x_m, p.x_m), MIN (least.y_m, p.y_m), MIN (least.z_m, p.z_m));
    most = sq_point (MAX (most.x_m, p.x_m), MAX (most.y_m, p.y_m), MAX (most.z_m, p.z_m));
  }
  solid->centre = sq_point_along (least, sq_vector_between (least, most), 0.5);
  solid->radius_m = 0.0;
  for (guint i = 0; i < solid->n_corners; i++) {
    double r = sq_vector_length (sq_vector_between (solid->centre, solid->corners[i]));
    solid->radius_m = MAX (solid->radius_m, r);
  }
}

static void
allocate (SqSolid *solid, guint n_corners, guint n_faces, guint n_edges)
{
  *solid = (SqSolid){
    .corners = g_new (SqPoint, n_corners),
    .faces = g_new (SqPlane, n_faces),
    .edges = g_new (SqEdge, n_edges),
    .n_corners = n_corners,
    .n_faces = n_faces,
    .n_edges = n_edges,
  };
}

void
sq_solid_init_prism (SqSolid *solid, const SqPlace *outline, guint n, double base_m, double top_m)
{
  allocate (solid, 2 * n, n + 2, 3 * n);
  guint floor = n, roof = n + 1; /* the two faces after the n sides */
  for (guint i = 0; i < n; i++) {
    guint next = (i + 1) % n, last = (i + n - 1) % n;
    SqPlace a = outline[i], b = outline[next];
    solid->corners[i] = sq_point_above (a, base_m);
    solid->corners[n + i] = sq_point_above (a, top_m);
    solid->faces[i] =
      plane_through (solid->corners[i], sq_vector (b.y_m - a.y_m, a.x_m - b.x_m, 0.0));
    solid->edges[3 * i] = (SqEdge){ i, next, i, floor };
    solid->edges[3 * i + 1] = (SqEdge){ n + i, n + next, roof, i };
    solid->edges[3 * i + 2] = (SqEdge){ i, n + i, last, i };
  }
  solid->faces[floor] = (SqPlane){ sq_vector (0, 0, -1), -base_m };
  solid->faces[roof] = (SqPlane){ sq_vector (0, 0, 1), top_m };
  bound (solid);
}

void
sq_solid_init_sheet (SqSolid *solid, SqPoint middle, SqVector half_across, SqVector half_up)
{
  static const int signs[4][2] = { { -1, -1 }, { 1, -1 }, { 1, 1 }, { -1, 1 } };
  allocate (solid, 4, 2, 4);
  solid->flat = TRUE;
  for (guint i = 0; i < 4; i++) {
    SqPoint p = sq_point_along (middle, half_across, signs[i][0]);
    solid->corners[i] = sq_point_along (p, half_up, signs[i][1]);
    solid->edges[i] = (SqEdge){ i, (i + 1) % 4, 0, 1 };
  }
  SqVector normal = sq_vector_cross (half_across, half_up);
  solid->faces[0] = plane_through (middle, normal);
  solid->faces[1] = plane_through (middle, sq_vector_scale (normal, -1.0));
  bound (solid);
}

void
sq_solid_clear (SqSolid *solid)
{
  g_clear_pointer (&solid->corners, g_free);
  g_clear_pointer (&solid->faces, g_free);
  g_clear_pointer (&solid->edges, g_free);
}

/* On the plane counts as before it, so that a point on a face, or in line with an edge, has an
 * outline whose planes are all well determined. */
static inline gboolean
faces (const SqPlane *face, SqPoint from)
{
  return sq_plane_height_m (face, from) > -SQ_TOUCH_M;
}

gboolean
sq_solid_is_clear (const SqSolid *solid, SqPoint from, SqPoint ball_centre, double ball_radius_m)
{
  /* By the distance of the solid's ball from the line between the two. */
  SqVector way = sq_vector_between (from, ball_centre);
  SqVector aside = sq_vector_between (from, solid->centre);
  double along = sq_vector_dot (way, way);
  double t = along > 0.0 ? CLAMP (sq_vector_dot (way, aside) / along, 0.0, 1.0) : 0.0;
  SqVector gap = sq_vector_sum (aside, sq_vector_scale (way, -t));
  double reach = solid->radius_m + ball_radius_m;
  if (sq_vector_dot (gap, gap) > reach * reach)
    return TRUE;
  /* Else by a face that has both before it. */
  for (guint i = 0; i < solid->n_faces; i++) {
    const SqPlane *face = &solid->faces[i];
    if (sq_plane_height_m (face, ball_centre) > ball_radius_m + SQ_TOUCH_M &&
        sq_plane_height_m (face, from) > SQ_TOUCH_M)
      return TRUE;
  }
  return FALSE;
}

gboolean
sq_solid_holds (const SqSolid *solid, SqPoint point)
{
  if (solid->flat)
    return FALSE;
  for (guint i = 0; i < solid->n_faces; i++)
    if (faces (&solid->faces[i], point))
      return FALSE;
  return TRUE;
}

static double
hit_sheet (const SqSolid *solid, SqPoint from, SqVector direction, guint *face)
{
  double height = sq_plane_height_m (&solid->faces[0], from);
  double sinks = -sq_vector_dot (solid->faces[0].normal, direction);
  if (sinks == 0.0 || height / sinks < 0.0)
    return NAN;
  double t = height / sinks;
  SqPoint at = sq_point_along (from, direction, t);
  for (guint i = 0; i < solid->n_edges; i++) {
    SqPoint a = solid->corners[solid->edges[i].from], b = solid->corners[solid->edges[i].to];
    SqVector inward = sq_vector_cross (solid->faces[0].normal, sq_vector_between (a, b));
    if (sq_vector_dot (inward, sq_vector_between (a, at)) < 0.0)
      return NAN;
  }
  *face = height > 0.0 ? 0 : 1;
  return t;
}

double
sq_solid_hit (const SqSolid *solid, SqPoint from, SqVector direction, guint *face)
{
  if (solid->flat)
    return hit_sheet (solid, from, direction, face);
  double enter = -INFINITY, leave = INFINITY;
  for (guint i = 0; i < solid->n_faces; i++) {
    double height = sq_plane_height_m (&solid->faces[i], from);
    double climbs = sq_vector_dot (solid->faces[i].normal, direction);
    if (climbs < 0.0 && -height / climbs > enter) {
      enter = -height / climbs;
      *face = i;
    } else if (climbs > 0.0) {
      leave = MIN (leave, -height / climbs);
    } else if (climbs == 0.0 && height >= 0.0) {
      return NAN;
    }
  }
  if (leave <= SQ_TOUCH_M || enter > leave)
    return NAN;
  return MAX (enter, 0.0);
}
