/* sight.c: what of a lamp's face is seen from a point, past everything that stands between */
#include "light/sight.h"

#define MOST_PARTS 1000
#define CELLS 32

void
sq_sight_init (SqSight *sight)
{
  *sight = (SqSight){
    .corners = g_array_new (FALSE, FALSE, sizeof (SqPoint)),
    .seen = g_array_new (FALSE, FALSE, sizeof (SqSeen)),
    .next_corners = g_array_new (FALSE, FALSE, sizeof (SqPoint)),
    .next_seen = g_array_new (FALSE, FALSE, sizeof (SqSeen)),
    .rest = g_array_new (FALSE, FALSE, sizeof (SqPoint)),
    .inside = g_array_new (FALSE, FALSE, sizeof (SqPoint)),
    .planes = g_array_new (FALSE, FALSE, sizeof (SqPlane)),
  };
}

void
sq_sight_clear (SqSight *sight)
{
  GArray *arrays[] = { sight->corners, sight->seen,   sight->next_corners, sight->next_seen,
                       sight->rest,    sight->inside, sight->planes };
  for (gsize i = 0; i < G_N_ELEMENTS (arrays); i++)
    g_array_unref (arrays[i]);
  *sight = (SqSight){ 0 };
}

void
sq_sight_reset (SqSight *sight)
{
  g_array_set_size (sight->corners, 0);
  g_array_set_size (sight->seen, 0);
}

void
sq_polygon_cut (const SqPoint *corners, guint n, const SqPlane *plane, GArray *within, GArray *past)
{
  guint within_first = within->len, past_first = past->len;
  double height = sq_plane_height_m (plane, corners[0]);
  for (guint i = 0; i < n; i++) {
    SqPoint here = corners[i], next = corners[i + 1 < n ? i + 1 : 0];
    double next_height = sq_plane_height_m (plane, next);
    if (height <= SQ_TOUCH_M)
      g_array_append_val (within, here);
    if (height >= -SQ_TOUCH_M)
      g_array_append_val (past, here);
    if ((height > SQ_TOUCH_M && next_height < -SQ_TOUCH_M) ||
        (height < -SQ_TOUCH_M && next_height > SQ_TOUCH_M)) {
      SqPoint at =
        sq_point_along (here, sq_vector_between (here, next), height / (height - next_height));
      g_array_append_val (within, at);
      g_array_append_val (past, at);
    }
    height = next_height;
  }
  if (within->len - within_first < 3)
    g_array_set_size (within, within_first);
  if (past->len - past_first < 3)
    g_array_set_size (past, past_first);
}

/* The planes of @solid's shadow from @from, into @sight->planes. */
static int
shadow (SqSight *sight, const SqSolid *solid, SqPoint from)
{
  g_array_set_size (sight->planes, solid->n_faces + solid->n_edges);
  return sq_solid_shadow (solid, from, (SqPlane *)(void *)sight->planes->data);
}

typedef enum {
  TOUCHES_NOT,
  IN_PART,
  IN_WHOLE,
} Touch;

/* How a part lies to a shadow. A part that merely touches is not in it; a point on the shadow's
 * edge is, so that no light slips through where two solids meet. */
static Touch
touch (const SqPoint *corners, guint n, const SqPlane *planes, int n_planes)
{
  Touch found = IN_WHOLE;
  double deep = n == 1 ? SQ_TOUCH_M : -SQ_TOUCH_M;
  for (int k = 0; k < n_planes; k++) {
    gboolean within = FALSE, past = FALSE;
    for (guint i = 0; i < n && !(within && past); i++) {
      double height = sq_plane_height_m (&planes[k], corners[i]);
      within = within || height <= deep;
      past = past || height > SQ_TOUCH_M;
    }
    if (!within)
      return TOUCHES_NOT;
    if (past)
      found = IN_PART;
  }
  return found;
}

static void
add_part (GArray *all_corners, GArray *all_seen, const SqPoint *corners, guint n, double passes)
{
  const SqSeen seen = { .first = all_corners->len, .n = n, .passes = passes };
  g_array_append_vals (all_corners, corners, n);
  g_array_append_val (all_seen, seen);
}

/* Cuts one part by a shadow: what lies past each plane is kept as it is, what is within them all is
 * weighed. */
static void
cut_part (SqSight *sight, const SqPoint *corners, const SqSeen *seen, int n_planes, double passes)
{
  g_array_set_size (sight->rest, 0);
  g_array_append_vals (sight->rest, corners, seen->n);
  for (int k = 0; k < n_planes && sight->rest->len > 0; k++) {
    guint first = sight->next_corners->len;
    g_array_set_size (sight->inside, 0);
    const SqPlane *plane = &g_array_index (sight->planes, SqPlane, k);
    const SqPoint *rest = (const SqPoint *)(void *)sight->rest->data;
    Touch touches = touch (rest, sight->rest->len, plane, 1);
    if (touches == IN_WHOLE)
      continue;
    sq_polygon_cut (rest, sight->rest->len, plane, sight->inside, sight->next_corners);
    const SqSeen past = { first, sight->next_corners->len - first, seen->passes };
    if (past.n > 0)
      g_array_append_val (sight->next_seen, past);
    GArray *swap = sight->rest;
    sight->rest = sight->inside;
    sight->inside = swap;
  }
  if (passes > 0.0 && sight->rest->len > 0)
    add_part (sight->next_corners, sight->next_seen, (const SqPoint *)(void *)sight->rest->data,
              sight->rest->len, seen->passes * passes);
}

static void
hide (SqSight *sight, const SqObstacle *obstacle, SqPoint from)
{
  int n_planes = shadow (sight, &obstacle->solid, from);
  if (n_planes < 0)
    sq_sight_reset (sight);
  if (n_planes <= 0)
    return;
  const SqPlane *planes = (const SqPlane *)(void *)sight->planes->data;
  guint untouched = 0;
  while (untouched < sight->seen->len) {
    const SqSeen *seen = &g_array_index (sight->seen, SqSeen, untouched);
    if (touch (sq_sight_corners (sight, seen), seen->n, planes, n_planes) != TOUCHES_NOT)
      break;
    untouched++;
  }
  if (untouched == sight->seen->len)
    return;

  g_array_set_size (sight->next_corners, 0);
  g_array_set_size (sight->next_seen, 0);
  for (guint i = 0; i < sight->seen->len; i++) {
    const SqSeen *seen = &g_array_index (sight->seen, SqSeen, i);
    const SqPoint *corners = sq_sight_corners (sight, seen);
    Touch touches = i < untouched ? TOUCHES_NOT : touch (corners, seen->n, planes, n_planes);
    if (touches == TOUCHES_NOT)
      add_part (sight->next_corners, sight->next_seen, corners, seen->n, seen->passes);
    else if (touches == IN_PART)
      cut_part (sight, corners, seen, n_planes, obstacle->passes);
    else if (obstacle->passes > 0.0)
      add_part (sight->next_corners, sight->next_seen, corners, seen->n,
                seen->passes * obstacle->passes);
  }
  GArray *swap = sight->corners;
  sight->corners = sight->next_corners;
  sight->next_corners = swap;
  swap = sight->seen;
  sight->seen = sight->next_seen;
  sight->next_seen = swap;
}

double
sq_sight_clearness (SqSight *sight,
                    SqPoint at,
                    SqPoint from,
                    const GArray *obstacles,
                    const GArray *doors,
                    const SqThing *own)
{
  const GArray *lists[] = { doors, obstacles };
  double passes = 1.0;
  for (gsize list = 0; list < G_N_ELEMENTS (lists); list++)
    for (guint i = 0; lists[list] && i < lists[list]->len && passes > 0.0; i++) {
      const SqObstacle *obstacle = &g_array_index (lists[list], SqObstacle, i);
      if (obstacle->passes >= 1.0 || (own && obstacle->owner == own) ||
          sq_solid_is_clear (&obstacle->solid, from, at, 0.0))
        continue;
      int n_planes = shadow (sight, &obstacle->solid, from);
      if (n_planes < 0 ||
          (n_planes > 0 &&
           touch (&at, 1, (const SqPlane *)(void *)sight->planes->data, n_planes) == IN_WHOLE))
        passes *= obstacle->passes;
    }
  return passes;
}

static SqPoint
middle_of (const SqPoint *corners, guint n)
{
  SqVector sum = { 0 };
  for (guint i = 1; i < n; i++)
    sum = sq_vector_sum (sum, sq_vector_between (corners[0], corners[i]));
  return sq_point_along (corners[0], sum, 1.0 / n);
}

/* Cuts what is in @from by planes across @axis into CELLS slices each, appended to @to. */
static void
slice (
  SqSight *sight, const SqPoint *corners, guint n, SqVector axis, GArray *to_corners, GArray *to)
{
  double least = INFINITY, most = -INFINITY;
  const SqPlane across = { .normal = axis };
  for (guint i = 0; i < n; i++) {
    double height = sq_plane_height_m (&across, corners[i]);
    least = MIN (least, height);
    most = MAX (most, height);
  }
  g_array_set_size (sight->rest, 0);
  g_array_append_vals (sight->rest, corners, n);
  for (int k = 1; k <= CELLS && sight->rest->len > 0; k++) {
    SqPlane plane = { axis, least + (most - least) * k / CELLS };
    guint first = to_corners->len;
    g_array_set_size (sight->inside, 0);
    if (k == CELLS)
      g_array_append_vals (to_corners, sight->rest->data, sight->rest->len);
    else
      sq_polygon_cut ((const SqPoint *)(void *)sight->rest->data, sight->rest->len, &plane,
                      to_corners, sight->inside);
    const SqSeen cell = { first, to_corners->len - first, 1.0 };
    if (cell.n > 0)
      g_array_append_val (to, cell);
    GArray *swap = sight->rest;
    sight->rest = sight->inside;
    sight->inside = swap;
  }
}

/* The stated limit's way out: cells, each seen or not by its middle. */
static void
see_cells (SqSight *sight,
           const SqPoint *corners,
           guint n,
           SqPoint from,
           const GArray *obstacles,
           const GArray *doors,
           const SqThing *own)
{
  SqVector across = sq_vector_unit (sq_vector_between (corners[0], corners[1]));
  SqVector normal = sq_vector_cross (across, sq_vector_between (corners[0], corners[n - 1]));
  SqVector up = sq_vector_unit (sq_vector_cross (normal, across));
  sq_sight_reset (sight);
  g_array_set_size (sight->next_corners, 0);
  g_array_set_size (sight->next_seen, 0);
  slice (sight, corners, n, across, sight->next_corners, sight->next_seen);
  for (guint i = 0; i < sight->next_seen->len; i++) {
    const SqSeen *strip = &g_array_index (sight->next_seen, SqSeen, i);
    slice (sight, &g_array_index (sight->next_corners, SqPoint, strip->first), strip->n, up,
           sight->corners, sight->seen);
  }
  for (guint i = 0; i < sight->seen->len; i++) {
    SqSeen *cell = &g_array_index (sight->seen, SqSeen, i);
    SqPoint at = middle_of (sq_sight_corners (sight, cell), cell->n);
    cell->passes = sq_sight_clearness (sight, at, from, obstacles, doors, own);
  }
}

void
sq_sight_see (SqSight *sight,
              const SqPoint *corners,
              guint n,
              SqPoint from,
              const GArray *obstacles,
              const GArray *doors,
              const SqThing *own)
{
  sq_sight_reset (sight);
  if (n == 1) {
    double passes = sq_sight_clearness (sight, corners[0], from, obstacles, doors, own);
    if (passes > 0.0)
      add_part (sight->corners, sight->seen, corners, n, passes);
    return;
  }

  SqPoint middle = middle_of (corners, n);
  double radius_m = 0.0;
  for (guint i = 0; i < n; i++)
    radius_m = MAX (radius_m, sq_vector_length (sq_vector_between (middle, corners[i])));
  add_part (sight->corners, sight->seen, corners, n, 1.0);
  const GArray *lists[] = { doors, obstacles };
  for (gsize list = 0; list < G_N_ELEMENTS (lists); list++)
    for (guint i = 0; lists[list] && i < lists[list]->len && sight->seen->len > 0; i++) {
      const SqObstacle *obstacle = &g_array_index (lists[list], SqObstacle, i);
      if (obstacle->passes >= 1.0 || (own && obstacle->owner == own) ||
          sq_solid_is_clear (&obstacle->solid, from, middle, radius_m))
        continue;
      hide (sight, obstacle, from);
      if (sight->seen->len > MOST_PARTS) {
        see_cells (sight, corners, n, from, obstacles, doors, own);
        return;
      }
    }
}
