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

static gboolean
is_ear (const GArray *outline, guint tip)
{
  guint n = outline->len;
  SqPlace a = place (outline, tip + n - 1), b = place (outline, tip), c = place (outline, tip + 1);
  if (turn (a, b, c) <= 0.0)
    return FALSE;
  for (guint i = 2; i + 1 < n; i++)
    if (within_triangle (place (outline, tip + i), a, b, c))
      return FALSE;
  return TRUE;
}

static void
add_triangle (GPtrArray *parts, const GArray *outline, guint tip)
{
  GArray *part = g_array_sized_new (FALSE, FALSE, sizeof (SqPlace), 3);
  for (guint i = 0; i < 3; i++) {
    SqPlace corner = place (outline, tip + outline->len - 1 + i);
    g_array_append_val (part, corner);
  }
  g_ptr_array_add (parts, part);
}

static gboolean
same (SqPlace a, SqPlace b)
{
  return a.x_m == b.x_m && a.y_m == b.y_m;
}

static gboolean
is_convex (const GArray *outline)
{
  for (guint i = 0; i < outline->len; i++)
    if (turn (place (outline, i), place (outline, i + 1), place (outline, i + 2)) < -FLAT_M2)
      return FALSE;
  return TRUE;
}

/* Returns: (transfer full) (nullable): both as one, if they share an edge and stay convex */
static GArray *
joined (const GArray *a, const GArray *b)
{
  for (guint i = 0; i < a->len; i++)
    for (guint k = 0; k < b->len; k++) {
      if (!same (place (a, i), place (b, k + 1)) || !same (place (a, i + 1), place (b, k)))
        continue;
      GArray *both = g_array_new (FALSE, FALSE, sizeof (SqPlace));
      for (guint m = 1; m <= a->len; m++) {
        SqPlace corner = place (a, i + m);
        g_array_append_val (both, corner);
      }
      for (guint m = 2; m < b->len; m++) {
        SqPlace corner = place (b, k + m);
        g_array_append_val (both, corner);
      }
      if (is_convex (both))
        return both;
      g_array_unref (both);
    }
  return NULL;
}

static void
join_parts (GPtrArray *parts)
{
  for (guint i = 0; i < parts->len; i++)
    for (guint k = i + 1; k < parts->len;) {
      GArray *both = joined (g_ptr_array_index (parts, i), g_ptr_array_index (parts, k));
      if (both) {
        g_array_unref (g_ptr_array_index (parts, i));
        g_ptr_array_index (parts, i) = both;
        g_ptr_array_remove_index (parts, k);
        k = i + 1; /* the larger part may now touch one that was passed over */
      } else {
        k++;
      }
    }
}

GPtrArray *
sq_outline_split (const SqPlace *corners, guint n)
{
  if (n < 3 || fabs (sq_outline_twice_area_m2 (corners, n)) < FLAT_M2 ||
      crosses_itself (corners, n))
    return NULL;
  g_autoptr (GArray) rest = cleaned (corners, n);
  GPtrArray *parts = g_ptr_array_new_with_free_func ((GDestroyNotify)g_array_unref);
  if (is_convex (rest)) {
    g_ptr_array_add (parts, g_steal_pointer (&rest));
    return parts;
  }
  while (rest->len > 3) {
    guint tip = 0;
    while (tip < rest->len && !is_ear (rest, tip))
      tip++;
    if (tip == rest->len)
      tip = 0; /* touches itself: no clean ear is left, so any corner goes */
    if (turn (place (rest, tip + rest->len - 1), place (rest, tip), place (rest, tip + 1)) >
        FLAT_M2)
      add_triangle (parts, rest, tip);
    g_array_remove_index (rest, tip);
  }
  if (turn (place (rest, 0), place (rest, 1), place (rest, 2)) > FLAT_M2)
    add_triangle (parts, rest, 1);
  join_parts (parts);
  return parts;
}
