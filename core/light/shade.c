/* shade.c: where on a receiver grid a solid hides some of a lamp, and where all of it
 *
 * From a point q the solid S hides what is within the planes through q and the outline that q sees,
 * and behind the faces that q sees. What all corners of the lamp's hull have hidden is hidden
 * altogether; of the planes about one edge two are enough, for they all go through it. What any
 * part of the lamp has hidden is S and the cone of all directions from the lamp to S: a convex
 * body, whose planes touch both, with the lamp on one side and S on the other. They are found among
 * the planes through an edge of the one and a corner of the other, and each is tried against all
 * corners before it is believed: a plane that is missed costs time, not truth. */
#include "light/shade.h"

/* Corners may be off their plane by so much. */
#define TRUE_M 1e-9
/* The square of the product of two sides, where they have no plane to speak of. */
#define FLAT_M4 1e-20

static void
hull_of_box (SqLampHull *hull, SqPoint middle, SqVector x, SqVector y, SqVector z)
{
  for (guint i = 0; i < 8; i++) {
    SqPoint p = sq_point_along (middle, x, i & 1 ? 1.0 : -1.0);
    p = sq_point_along (p, y, i & 2 ? 1.0 : -1.0);
    hull->corners[i] = sq_point_along (p, z, i & 4 ? 1.0 : -1.0);
    for (guint bit = 1; bit < 8; bit *= 2)
      if (!(i & bit)) {
        hull->edges[hull->n_edges][0] = (guint8)i;
        hull->edges[hull->n_edges++][1] = (guint8)(i | bit);
      }
  }
  hull->n_corners = 8;
}

void
sq_lamp_hull_init (SqLampHull *hull, const SqLamp *lamp)
{
  const SqFrame *frame = &lamp->frame;
  SqPoint at = lamp->fixture->at;
  *hull = (SqLampHull){ .corners = { at }, .n_corners = 1 };
  /* What stands for a disc reaches a little past it. */
  double round = sqrt (2.0 * G_PI / SQ_DISC_SIDES / sin (2.0 * G_PI / SQ_DISC_SIDES));
  double across_m = lamp->width_m / 2.0, up_m = lamp->height_m / 2.0;
  if (lamp->shaped == SQ_SHAPED_FLAT) {
    hull->forward = frame->forward;
    if (lamp->n_face == SQ_DISC_SIDES) {
      across_m *= round;
      up_m *= round;
    }
    sq_rect_corners (at, sq_vector_scale (frame->right, across_m),
                     sq_vector_scale (frame->up, up_m), hull->corners);
    hull->n_corners = hull->n_edges = 4;
    for (guint8 i = 0; i < 4; i++) {
      hull->edges[i][0] = i;
      hull->edges[i][1] = (i + 1) % 4;
    }
  } else if (lamp->shaped == SQ_SHAPED_TUBE) {
    hull_of_box (hull, at, sq_vector_scale (frame->right, across_m),
                 sq_vector_scale (frame->up, up_m), sq_vector_scale (frame->forward, up_m));
  } else if (lamp->shaped == SQ_SHAPED_BALL) {
    double r = across_m * round;
    hull_of_box (hull, at, sq_vector (r, 0, 0), sq_vector (0, r, 0), sq_vector (0, 0, r));
  }
}

typedef struct {
  const SqLampHull *hull;
  const SqSolid *solid;
  const SqReceiverGrid *grid;
  double slack_m;
  SqRegionCut *some, *all;
} Making;

/* TRUE if @way leads past the plane through its start by more than corners may be off. */
static inline gboolean
is_past (SqVector normal, double square, SqVector way)
{
  double height = sq_vector_dot (normal, way);
  return height > 0.0 && height * height > TRUE_M * TRUE_M * square;
}

/* TRUE if the plane has the lamp before it and the solid behind it. */
static gboolean
parts_them (const Making *making, SqPoint through, SqVector normal)
{
  const SqSolid *solid = making->solid;
  const SqLampHull *hull = making->hull;
  double square = sq_vector_dot (normal, normal);
  for (guint i = 0; i < hull->n_corners; i++)
    if (is_past (normal, square, sq_vector_between (hull->corners[i], through)))
      return FALSE;
  for (guint i = 0; i < solid->n_corners; i++)
    if (is_past (normal, square, sq_vector_between (through, solid->corners[i])))
      return FALSE;
  return TRUE;
}

/* A plane for which there is no room is left out. */
static void
add_to_some (Making *making, SqPoint through, SqVector normal)
{
  if (making->some->n_corners > 0)
    sq_region_cut_by (making->some, sq_half_plane (making->grid, through, normal, making->slack_m));
}

/* One for which there is no room leaves nothing. */
static void
add_to_all (Making *making, SqPoint through, SqVector normal)
{
  if (making->all->n_corners > 0 &&
      !sq_region_cut_by (making->all,
                         sq_half_plane (making->grid, through, normal, -making->slack_m)))
    making->all->n_corners = 0;
}

/* Which corners of the lamp see each face, as bits; on the plane counts as before it, as in
 * solid.c. */
static void
look_at_faces (Making *making, guint8 *seen)
{
  const SqSolid *solid = making->solid;
  const SqLampHull *hull = making->hull;
  guint everybody = (1u << hull->n_corners) - 1;
  for (guint i = 0; i < solid->n_faces; i++) {
    const SqPlane *face = &solid->faces[i];
    SqPoint on = sq_plane_point (face);
    seen[i] = 0;
    for (guint q = 0; q < hull->n_corners; q++)
      if (sq_plane_height_m (face, hull->corners[q]) > -SQ_TOUCH_M)
        seen[i] |= (guint8)(1u << q);
    if (seen[i] == everybody)
      add_to_some (making, on, face->normal);
    if (seen[i])
      add_to_all (making, on, face->normal);
  }
  /* In a sheet's own plane one sees past it. */
  if (solid->flat && (seen[0] & seen[1]))
    making->all->n_corners = 0;
}

/* An edge that is on the outline for some corner of the lamp: of all planes through it and a
 * corner, solid within, the one that has the most of the lamp before it, and the one that has the
 * least. */
static void
cut_along_edge (Making *making, const SqEdge *edge, gboolean left_seen)
{
  const SqLampHull *hull = making->hull;
  SqPoint a = making->solid->corners[edge->from], b = making->solid->corners[edge->to];
  SqVector most = { 0 }, least = { 0 };
  for (guint i = 0; i < hull->n_corners; i++) {
    SqVector way = sq_vector_between (a, hull->corners[i]);
    SqVector out = sq_vector_cross (way, sq_vector_between (a, b));
    if (left_seen)
      out = sq_vector_scale (out, -1.0);
    if (sq_vector_dot (out, out) < FLAT_M4) {
      making->all->n_corners = 0; /* the lamp touches the edge: nothing is said of it */
      return;
    }
    if (i == 0 || sq_vector_dot (most, way) < 0.0)
      most = out;
    if (i == 0 || sq_vector_dot (least, way) > 0.0)
      least = out;
  }
  add_to_all (making, a, most);
  add_to_all (making, a, least);
  if (parts_them (making, a, most))
    add_to_some (making, a, most);
}

/* The planes through an edge of the lamp that the solid touches: of all planes about that edge,
 * those past which no corner of the solid lies, two at most. */
static void
touch_from_edge (Making *making, SqPoint a, SqPoint b)
{
  SqVector along = sq_vector_between (a, b);
  const SqSolid *solid = making->solid;
  SqVector most[2] = { { 0 } };
  for (guint i = 0; i < solid->n_corners; i++) {
    SqVector way = sq_vector_between (a, solid->corners[i]);
    SqVector normal = sq_vector_cross (along, way);
    for (int side = 0; side < 2; side++)
      if (i == 0 || sq_vector_dot (most[side], way) > 0.0) /* past what is held */
        most[side] = side == 0 ? normal : sq_vector_scale (normal, -1.0);
  }
  for (int side = 0; side < 2; side++)
    if (sq_vector_dot (most[side], most[side]) > FLAT_M4 && parts_them (making, a, most[side]))
      add_to_some (making, a, most[side]);
}

/* How high a set of corners reaches. */
static void
heights_of (const SqPoint *corners, guint n, double *least_m, double *most_m)
{
  *least_m = *most_m = corners[0].z_m;
  for (guint i = 1; i < n; i++) {
    *least_m = MIN (*least_m, corners[i].z_m);
    *most_m = MAX (*most_m, corners[i].z_m);
  }
}

/* TRUE if the solid is all behind the lamp, or not at all between its height and the grid's. */
static gboolean
is_out_of_the_way (const SqLampHull *hull, const SqSolid *solid, const SqReceiverGrid *grid)
{
  double low_m, high_m, bottom_m, top_m;
  SqVector way = sq_vector_between (hull->corners[0], solid->centre);
  if (sq_vector_dot (hull->forward, way) < -solid->radius_m)
    return TRUE;
  heights_of (hull->corners, hull->n_corners, &low_m, &high_m);
  heights_of (solid->corners, solid->n_corners, &bottom_m, &top_m);
  return top_m < MIN (low_m, grid->height_m) || bottom_m > MAX (high_m, grid->height_m);
}

gboolean
sq_shade_init (SqShade *shade,
               const SqLampHull *hull,
               const SqSolid *solid,
               const SqReceiverGrid *grid,
               const SqRegionCut *within,
               double safe_m)
{
  *shade = (SqShade){ 0 };
  if (is_out_of_the_way (hull, solid, grid))
    return FALSE;
  SqRegionCut some, all;
  Making making = { hull, solid, grid, safe_m, &some, &all };
  sq_region_cut_begin_within (&some, within);
  sq_region_cut_begin_within (&all, within);
  g_autofree guint8 *seen = g_new (guint8, solid->n_faces);
  look_at_faces (&making, seen);
  for (guint i = 0; i < hull->n_edges && some.n_corners > 0; i++)
    touch_from_edge (&making, hull->corners[hull->edges[i][0]], hull->corners[hull->edges[i][1]]);
  for (guint i = 0; i < solid->n_edges && some.n_corners > 0; i++) {
    const SqEdge *edge = &solid->edges[i];
    guint left = seen[edge->left] & ~seen[edge->right];
    guint right = seen[edge->right] & ~seen[edge->left];
    if (left && right)
      all.n_corners = 0; /* the lamp is on both sides: rare enough to say nothing */
    if (left || right)
      cut_along_edge (&making, edge, left != 0);
  }
  shade->some = sq_region_cut_end (&some, grid);
  if (sq_region_is_empty (&shade->some))
    return FALSE;
  shade->all = sq_region_cut_end (&all, grid);
  return TRUE;
}

void
sq_shade_clear (SqShade *shade)
{
  sq_region_clear (&shade->some);
  sq_region_clear (&shade->all);
}
