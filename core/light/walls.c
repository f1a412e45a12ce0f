/* walls.c: walls as convex solids, cut at their openings so that the reveals have true depth */
#include "light/obstacles.h"
#include "light/outline.h"

/* A mitre longer than this many thicknesses is not drawn out to its tip. */
#define LONGEST_MITRE 4.0
#define CEILING_THICKNESS_M 0.1

/* A convex quad, cut twice across. */
#define MOST_CORNERS 8

typedef struct {
  SqPlace corners[MOST_CORNERS];
  guint n;
} Plan;

typedef struct {
  double from, to;
} Span;

/* How far the body's faces lie to the left of the path. */
static Span
body_span (const SqWall *wall)
{
  double t = wall->thickness_m;
  if (wall->side == SQ_SIDE_LEFT)
    return (Span){ 0.0, t };
  return wall->side == SQ_SIDE_RIGHT ? (Span){ -t, 0.0 } : (Span){ -t / 2.0, t / 2.0 };
}

static SqVector
along_edge (const SqWall *wall, guint edge)
{
  SqPlace a = { 0 }, b = { 0 };
  sq_wall_edge (wall, edge, &a, &b);
  return sq_vector_unit (sq_vector (b.x_m - a.x_m, b.y_m - a.y_m, 0.0));
}

static SqPlace
beside (SqPlace at, SqVector along, double ahead_m, double left_m)
{
  return (SqPlace){ at.x_m + along.x * ahead_m - along.y * left_m,
                    at.y_m + along.y * ahead_m + along.x * left_m };
}

/* Where the faces that lie @left_m beside two edges meet, from the path's point between them.
 * Returns: FALSE if that is too far out */
static gboolean
mitre (SqVector before, SqVector after, double left_m, double longest_m, SqVector *to)
{
  SqVector sum = sq_vector (-before.y - after.y, before.x + after.x, 0.0); /* of left normals */
  double times = left_m / (1.0 + sq_vector_dot (before, after));
  *to = sq_vector_scale (sum, times);
  return isfinite (times) && sq_vector_length (*to) <= longest_m;
}

/* The two body corners at one end of an edge: mitred where another edge goes on, else square;
 * square and longer by a thickness where the mitre would be too long, so that the two overlap. */
static void
edge_end (const SqWall *wall, guint edge, gboolean far_end, gboolean square, SqPlace ends[2])
{
  guint n = sq_wall_n_edges (wall);
  SqPlace points[2] = { { 0 } };
  sq_wall_edge (wall, edge, &points[0], &points[1]);
  SqVector along = along_edge (wall, edge);
  Span body = body_span (wall);
  gboolean joins = wall->closed || (far_end ? edge + 1 < n : edge > 0);
  guint other = far_end ? (edge + 1) % n : (edge + n - 1) % n;
  SqVector next = along_edge (wall, other);
  double longest_m = LONGEST_MITRE * wall->thickness_m;
  double sides[2] = { body.from, body.to };
  SqVector to[2];
  if (joins && !square && mitre (along, next, sides[0], longest_m, &to[0]) &&
      mitre (along, next, sides[1], longest_m, &to[1])) {
    for (int side = 0; side < 2; side++)
      ends[side] = (SqPlace){ points[far_end].x_m + to[side].x, points[far_end].y_m + to[side].y };
    return;
  }
  double ahead_m = joins ? (far_end ? wall->thickness_m : -wall->thickness_m) : 0.0;
  for (int side = 0; side < 2; side++)
    ends[side] = beside (points[far_end], along, ahead_m, sides[side]);
}

static gboolean
edge_is_sound (const Plan *plan, SqVector along)
{
  for (guint side = 0; side < 2; side++) {
    SqPlace a = plan->corners[side == 0 ? 0 : 3], b = plan->corners[side == 0 ? 1 : 2];
    if ((b.x_m - a.x_m) * along.x + (b.y_m - a.y_m) * along.y <= 0.0)
      return FALSE;
  }
  return TRUE;
}

/* The body of one edge on plan, counter-clockwise. */
static Plan
edge_plan (const SqWall *wall, guint edge)
{
  Plan plan = { .n = 4 };
  SqVector along = along_edge (wall, edge);
  /* An edge shorter than its mitres would be turned inside out: square then. */
  for (int square = 0; square < 2; square++) {
    SqPlace near[2], far[2];
    edge_end (wall, edge, FALSE, square != 0, near);
    edge_end (wall, edge, TRUE, square != 0, far);
    const SqPlace corners[] = { near[0], far[0], far[1], near[1] };
    memcpy (plan.corners, corners, sizeof corners);
    if (edge_is_sound (&plan, along))
      break;
  }
  return plan;
}

/* Keeps what lies before @limit_m along the edge from @origin, or past it with @side -1. */
static Plan
cut (const Plan *plan, SqPlace origin, SqVector along, double limit_m, double side)
{
  Plan kept = { .n = 0 };
  for (guint i = 0; i < plan->n; i++) {
    SqPlace a = plan->corners[i], b = plan->corners[(i + 1) % plan->n];
    double past_a = (a.x_m - origin.x_m) * along.x + (a.y_m - origin.y_m) * along.y - limit_m;
    double past_b = (b.x_m - origin.x_m) * along.x + (b.y_m - origin.y_m) * along.y - limit_m;
    past_a *= side;
    past_b *= side;
    if (past_a <= 0.0 && kept.n < MOST_CORNERS)
      kept.corners[kept.n++] = a;
    if (((past_a < 0.0 && past_b > 0.0) || (past_a > 0.0 && past_b < 0.0)) &&
        kept.n < MOST_CORNERS) {
      double t = past_a / (past_a - past_b);
      kept.corners[kept.n++] =
        (SqPlace){ a.x_m + t * (b.x_m - a.x_m), a.y_m + t * (b.y_m - a.y_m) };
    }
  }
  return kept;
}

static void
add_block (GArray *obstacles, const SqWall *wall, const Plan *plan, double base_m, double top_m)
{
  if (plan->n < 3 || top_m - base_m < SQ_TOUCH_M ||
      sq_outline_twice_area_m2 (plan->corners, plan->n) < SQ_TOUCH_M * wall->thickness_m)
    return;
  SqObstacle *block = sq_obstacles_add (obstacles, &wall->thing, 0.0, wall->reflectance);
  sq_solid_init_prism (&block->solid, plan->corners, plan->n, base_m, top_m);
}

/* What stands below, between and above the openings over the stretch of an edge that has
 * @middle_m, measured along it, between its ends. */
static void
add_stretch (GArray *obstacles,
             const SqScene *scene,
             const SqWall *wall,
             guint edge,
             const Plan *plan,
             double middle_m)
{
  double height_m = sq_wall_height_m (wall, scene->room), base_m = 0.0;
  while (base_m < height_m) {
    double top_m = height_m, next_m = height_m; /* the lowest opening from here up */
    for (guint i = 0; i < wall->openings->len; i++) {
      const SqOpening *opening = SQ_AT (SqOpening, wall->openings, i);
      double head_m = sq_opening_head_m (opening, height_m);
      double sill_m = sq_opening_sill_m (opening);
      if ((guint)opening->edge == edge && opening->offset_m < middle_m &&
          middle_m < opening->offset_m + opening->width_m && head_m > base_m && sill_m < top_m) {
        top_m = sill_m;
        next_m = head_m;
      }
    }
    add_block (obstacles, wall, plan, base_m, top_m);
    base_m = next_m;
  }
}

static int
compare_doubles (gconstpointer a, gconstpointer b)
{
  double x = *(const double *)a, y = *(const double *)b;
  return (x > y) - (x < y);
}

static void
add_edge (GArray *obstacles, const SqScene *scene, const SqWall *wall, guint edge)
{
  g_autoptr (GArray) jambs = g_array_new (FALSE, FALSE, sizeof (double));
  for (guint i = 0; i < wall->openings->len; i++) {
    const SqOpening *opening = SQ_AT (SqOpening, wall->openings, i);
    double ends[] = { opening->offset_m, opening->offset_m + opening->width_m };
    if ((guint)opening->edge == edge)
      g_array_append_vals (jambs, ends, 2);
  }
  g_array_sort (jambs, compare_doubles);

  SqPlace from, to;
  sq_wall_edge (wall, edge, &from, &to);
  SqVector along = along_edge (wall, edge);
  Plan rest = edge_plan (wall, edge);
  double done_m = -INFINITY;
  for (guint i = 0; i <= jambs->len; i++) {
    double end_m = i < jambs->len ? g_array_index (jambs, double, i) : INFINITY;
    if (end_m <= done_m)
      continue;
    Plan stretch = isinf (end_m) ? rest : cut (&rest, from, along, end_m, 1.0);
    /* Before the first jamb and past the last there is no opening: any middle outside will do. */
    double middle_m = isinf (done_m)  ? end_m - 1.0
                      : isinf (end_m) ? done_m + 1.0
                                      : (done_m + end_m) / 2.0;
    add_stretch (obstacles, scene, wall, edge, &stretch, middle_m);
    if (!isinf (end_m))
      rest = cut (&rest, from, along, end_m, -1.0);
    done_m = end_m;
  }
}

static void
add_upright_sheet (GArray *obstacles,
                   const SqOpening *opening,
                   SqPlace from,
                   SqVector along,
                   Span heights,
                   double passes)
{
  SqPlace middle = beside (from, along, opening->width_m / 2.0, 0.0);
  double half_height_m = (heights.to - heights.from) / 2.0;
  SqObstacle *sheet = sq_obstacles_add (obstacles, &opening->thing, passes, 0.0);
  sq_solid_init_sheet (&sheet->solid, sq_point_above (middle, heights.from + half_height_m),
                       sq_vector_scale (along, opening->width_m / 2.0),
                       sq_vector (0.0, 0.0, half_height_m));
}

/* Panes and leaves stand in the middle of the wall's thickness. */
static void
add_filling (GArray *obstacles, const SqScene *scene, const SqWall *wall, const SqOpening *opening)
{
  guint edge = (guint)opening->edge;
  SqPlace from, to;
  if (!sq_wall_edge (wall, edge, &from, &to))
    return;
  SqVector along = along_edge (wall, edge);
  Span body = body_span (wall);
  SqPlace jamb = beside (from, along, opening->offset_m, (body.from + body.to) / 2.0);
  Span heights = { sq_opening_sill_m (opening),
                   sq_opening_head_m (opening, sq_wall_height_m (wall, scene->room)) };
  double passes = sq_opening_transmittance (opening);
  if (opening->material)
    passes *= sq_scene_material (scene, opening->material)->direct;
  if (passes < 1.0)
    add_upright_sheet (obstacles, opening, jamb, along, heights, passes);
  if (opening->kind == SQ_OPENING_DOOR) {
    double c = cos (SQ_RADIANS (opening->open_deg)), s = sin (SQ_RADIANS (opening->open_deg));
    SqVector leaf = sq_vector (along.x * c - along.y * s, along.x * s + along.y * c, 0.0);
    add_upright_sheet (obstacles, opening, jamb, leaf, heights, 0.0);
  }
}

/* The path's corners moved to the outer face, so that the slab lies on top of the walls. */
static GArray *
ceiling_outline (const SqWall *wall)
{
  const SqPlace *path = (const SqPlace *)(void *)wall->path->data;
  guint n = wall->path->len;
  gboolean left_is_inside = sq_outline_twice_area_m2 (path, n) > 0.0;
  Span body = body_span (wall);
  double out_m = left_is_inside ? body.from : body.to;
  GArray *outline = g_array_sized_new (FALSE, FALSE, sizeof (SqPlace), n);
  for (guint i = 0; i < n; i++) {
    SqPlace corner = path[i];
    gboolean between = wall->closed || (i > 0 && i + 1 < n);
    guint before = i > 0 ? i - 1 : sq_wall_n_edges (wall) - 1, after = i;
    SqVector to;
    if (!between)
      corner = beside (corner, along_edge (wall, i > 0 ? before : after), 0.0, out_m);
    else if (mitre (along_edge (wall, before), along_edge (wall, after), out_m,
                    LONGEST_MITRE * wall->thickness_m, &to))
      corner = (SqPlace){ corner.x_m + to.x, corner.y_m + to.y };
    g_array_append_val (outline, corner);
  }
  return outline;
}

static void
add_ceiling (GArray *obstacles, const SqScene *scene, const SqWall *wall)
{
  double height_m = scene->room->ceiling_height_m;
  if (isnan (height_m) || wall->path->len < 3)
    return;
  g_autoptr (GArray) outline = ceiling_outline (wall);
  g_autoptr (GPtrArray) parts =
    sq_outline_split ((const SqPlace *)(void *)outline->data, outline->len);
  if (!parts)
    parts = sq_outline_split ((const SqPlace *)(void *)wall->path->data, wall->path->len);
  for (guint i = 0; parts && i < parts->len; i++) {
    const GArray *part = g_ptr_array_index (parts, i);
    SqObstacle *slab =
      sq_obstacles_add (obstacles, &scene->room->thing, 0.0, scene->room->ceiling_reflectance);
    sq_solid_init_prism (&slab->solid, (const SqPlace *)(void *)part->data, part->len, height_m,
                         height_m + CEILING_THICKNESS_M);
  }
}

void
sq_obstacles_add_wall (GArray *obstacles, const SqScene *scene, const SqWall *wall)
{
  for (guint edge = 0; edge < sq_wall_n_edges (wall); edge++)
    add_edge (obstacles, scene, wall, edge);
  for (guint i = 0; i < wall->openings->len; i++)
    add_filling (obstacles, scene, wall, SQ_AT (SqOpening, wall->openings, i));
  add_ceiling (obstacles, scene, wall);
}
