/* outline.c: outlines on plan cut into convex ones */
#include "light/outline.h"

/* Corners that stand out by less than this from the line through their neighbours, and outlines
 * of less than this area, count as none. */
#define FLAT_M2 1e-12

static double
turn (SqPlace a, SqPlace b, SqPlace c)
{
  return (b.x_m - a.x_m) * (c.y_m - a.y_m) - (b.y_m - a.y_m) * (c.x_m - a.x_m);
}

static SqPlace
place (const GArray *outline, guint i)
{
  return g_array_index (outline, SqPlace, i % outline->len);
}

double
sq_outline_twice_area_m2 (const SqPlace *corners, guint n)
{
  double twice = 0.0;
  for (guint i = 0; i + 2 < n; i++)
    twice += turn (corners[0], corners[i + 1], corners[i + 2]);
  return twice;
}

static gboolean
lines_cross (SqPlace a, SqPlace b, SqPlace c, SqPlace d)
{
  return turn (a, b, c) * turn (a, b, d) < 0.0 && turn (c, d, a) * turn (c, d, b) < 0.0;
}

static gboolean
crosses_itself (const SqPlace *corners, guint n)
{
  for (guint i = 0; i < n; i++)
    for (guint k = i + 2; k < n; k++)
      if (lines_cross (corners[i], corners[(i + 1) % n], corners[k], corners[(k + 1) % n]))
        return TRUE;
  return FALSE;
}

/* Without corners that do nothing, counter-clockwise. */
static GArray *
cleaned (const SqPlace *corners, guint n)
{
  GArray *outline = g_array_sized_new (FALSE, FALSE, sizeof (SqPlace), n);
  gboolean turned = sq_outline_twice_area_m2 (corners, n) < 0.0;
  for (guint i = 0; i < n; i++)
    g_array_append_val (outline, corners[turned ? n - 1 - i : i]);
  for (guint i = 0, kept = 0; outline->len > 3 && kept < outline->len;) {
    guint at = (i + 1) % outline->len;
    if (fabs (turn (place (outline, i), place (outline, at), place (outline, i + 2))) < FLAT_M2) {
      g_array_remove_index (outline, at);
      i = i % outline->len;
      kept = 0;
    } else {
      i = (i + 1) % outline->len;
      kept++;
    }
  }
  return outline;
}

static gboolean
within_triangle (SqPlace p, SqPlace a, SqPlace b, SqPlace c)
{
  return turn (a, b, p) >= 0.0 && turn (b, c, p) >= 0.0 && turn (c, a, p) >= 0.0;
}

/* From here on corners are known by their index in the cleaned outline. */
static guint
index_at (const GArray *loop, guint i)
{
  return g_array_index (loop, guint, i % loop->len);
}

static SqPlace
corner_at (const GArray *outline, const GArray *loop, guint i)
{
  return g_array_index (outline, SqPlace, index_at (loop, i));
}

static gboolean
is_ear (const GArray *outline, const GArray *loop, guint tip)
{
  guint n = loop->len;
  SqPlace a = corner_at (outline, loop, tip + n - 1), b = corner_at (outline, loop, tip);
  SqPlace c = corner_at (outline, loop, tip + 1);
  if (turn (a, b, c) <= 0.0)
    return FALSE;
  for (guint i = 2; i + 1 < n; i++)
    if (within_triangle (corner_at (outline, loop, tip + i), a, b, c))
      return FALSE;
  return TRUE;
}

/* Two corners that a cut joins. */
typedef struct {
  guint from, to;
} Cut;

/* Cuts off the corner @tip of @loop as a part of its own, unless it is flat. */
static void
clip (const GArray *outline, GArray *loop, guint tip, GPtrArray *parts, GArray *cuts)
{
  const guint corners[] = { index_at (loop, tip + loop->len - 1), index_at (loop, tip),
                            index_at (loop, tip + 1) };
  if (turn (g_array_index (outline, SqPlace, corners[0]),
            g_array_index (outline, SqPlace, corners[1]),
            g_array_index (outline, SqPlace, corners[2])) > FLAT_M2) {
    GArray *part = g_array_sized_new (FALSE, FALSE, sizeof (guint), 3);
    g_array_append_vals (part, corners, 3);
    g_ptr_array_add (parts, part);
  }
  const Cut cut = { corners[0], corners[2] };
  g_array_append_val (cuts, cut);
  g_array_remove_index (loop, tip);
}

/* @cuts: (element-type Cut): every one is added; the last joins what is joined already.
 * Returns: (transfer full) (element-type GArray): of corner indices, three each */
static GPtrArray *
triangles_of (const GArray *outline, GArray *cuts)
{
  GPtrArray *parts = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  g_autoptr (GArray) loop = g_array_sized_new (FALSE, FALSE, sizeof (guint), outline->len);
  for (guint i = 0; i < outline->len; i++)
    g_array_append_val (loop, i);
  guint tip = 0;
  while (loop->len >= 3) {
    guint tried = 0;
    while (tried < loop->len && !is_ear (outline, loop, tip)) {
      tip = (tip + 1) % loop->len;
      tried++;
    }
    /* An outline that touches itself may have no clean ear left: any corner goes. */
    clip (outline, loop, tip, parts, cuts);
    tip = loop->len > 0 ? tip % loop->len : 0;
  }
  return parts;
}

static gboolean
is_convex_at (const GArray *outline, guint before, guint at, guint after)
{
  return turn (g_array_index (outline, SqPlace, before), g_array_index (outline, SqPlace, at),
               g_array_index (outline, SqPlace, after)) >= -FLAT_M2;
}

/* The name of the edge that leads from one corner to another. */
static gint64
edge_key (guint from, guint to)
{
  return ((gint64)from << 32) | to;
}

static void
remember_edges (GHashTable *part_by_edge, GArray *part)
{
  for (guint i = 0; i < part->len; i++) {
    gint64 key = edge_key (index_at (part, i), index_at (part, i + 1));
    g_hash_table_insert (part_by_edge, g_memdup2 (&key, sizeof key), part);
  }
}

static GArray *
part_with (GHashTable *part_by_edge, guint from, guint to)
{
  const gint64 key = edge_key (from, to);
  return g_hash_table_lookup (part_by_edge, &key);
}

static void
forget_edge (GHashTable *part_by_edge, guint from, guint to)
{
  const gint64 key = edge_key (from, to);
  g_hash_table_remove (part_by_edge, &key);
}

static guint
position_of (const GArray *part, guint corner)
{
  guint i = 0;
  while (index_at (part, i) != corner)
    i++;
  return i;
}

/* Joins the parts on both sides of @cut if the whole is convex where it ends; the one goes into the
 * other and is left empty. */
static void
join_across (const GArray *outline, GHashTable *part_by_edge, const Cut *cut)
{
  GArray *a = part_with (part_by_edge, cut->from, cut->to);
  GArray *b = part_with (part_by_edge, cut->to, cut->from);
  if (!a || !b || a == b)
    return;
  guint in_a = position_of (a, cut->from), in_b = position_of (b, cut->to);
  if (!is_convex_at (outline, index_at (a, in_a + a->len - 1), cut->from, index_at (b, in_b + 2)) ||
      !is_convex_at (outline, index_at (b, in_b + b->len - 1), cut->to, index_at (a, in_a + 2)))
    return;
  /* Between @from and @to of the one go the other's corners, from behind its @from round. */
  g_autoptr (GArray) between = g_array_new (FALSE, FALSE, sizeof (guint));
  for (guint i = 2; i < b->len; i++) {
    guint corner = index_at (b, in_b + i);
    g_array_append_val (between, corner);
  }
  for (guint i = 1; i < b->len; i++) {
    gint64 key = edge_key (index_at (b, in_b + i), index_at (b, in_b + i + 1));
    g_hash_table_insert (part_by_edge, g_memdup2 (&key, sizeof key), a);
  }
  g_array_insert_vals (a, in_a + 1, between->data, between->len);
  g_array_set_size (b, 0);
  forget_edge (part_by_edge, cut->from, cut->to);
  forget_edge (part_by_edge, cut->to, cut->from);
}

/* Joining only makes angles larger: a cut that had to stay has to stay, so each is tried once. */
static void
join_parts (const GArray *outline, const GPtrArray *parts, const GArray *cuts)
{
  g_autoptr (GHashTable) part_by_edge =
    g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, NULL);
  for (guint i = 0; i < parts->len; i++)
    remember_edges (part_by_edge, g_ptr_array_index (parts, i));
  for (guint i = 0; i < cuts->len; i++)
    join_across (outline, part_by_edge, &g_array_index (cuts, Cut, i));
}

GPtrArray *
sq_outline_split (const SqPlace *corners, guint n)
{
  if (n < 3 || fabs (sq_outline_twice_area_m2 (corners, n)) < FLAT_M2 ||
      crosses_itself (corners, n))
    return NULL;
  g_autoptr (GArray) outline = cleaned (corners, n);
  g_autoptr (GArray) cuts = g_array_new (FALSE, FALSE, sizeof (Cut));
  g_autoptr (GPtrArray) loops = triangles_of (outline, cuts);
  join_parts (outline, loops, cuts);
  GPtrArray *parts = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  for (guint i = 0; i < loops->len; i++) {
    const GArray *loop = g_ptr_array_index (loops, i);
    if (loop->len < 3)
      continue;
    GArray *part = g_array_sized_new (FALSE, FALSE, sizeof (SqPlace), loop->len);
    for (guint k = 0; k < loop->len; k++) {
      SqPlace corner = corner_at (outline, loop, k);
      g_array_append_val (part, corner);
    }
    g_ptr_array_add (parts, part);
  }
  return parts;
}
