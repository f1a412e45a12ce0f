/* face-parts.c: convex parts of a lamp's face, and the lines that cut them */
#include "light/face-parts.h"

#include <string.h>

void
sq_face_parts_init (SqFaceParts *parts, guint most_parts, guint most_corners)
{
  *parts = (SqFaceParts){
    .parts = g_new (SqFacePart, most_parts),
    .corners = g_new (SqFaceSpot, most_corners),
    .most_parts = most_parts,
    .most_corners = most_corners,
  };
}

void
sq_face_parts_clear (SqFaceParts *parts)
{
  g_free (parts->parts);
  g_free (parts->corners);
  *parts = (SqFaceParts){ 0 };
}

gboolean
sq_face_parts_add (SqFaceParts *parts, const SqFaceSpot *corners, guint n, double passes)
{
  if (n < 3)
    return TRUE;
  if (parts->n_parts >= parts->most_parts || parts->n_corners + n > parts->most_corners)
    return FALSE;
  memcpy (parts->corners + parts->n_corners, corners, n * sizeof *corners);
  sq_face_parts_end (parts, n, passes);
  return TRUE;
}

/* Where the line crosses the edge between two corners on either side of it. */
static inline SqFaceSpot
crossing (SqFaceSpot a, double a_height, SqFaceSpot b, double b_height)
{
  double t = a_height / (a_height - b_height);
  return (SqFaceSpot){ a.right_m + (b.right_m - a.right_m) * t, a.up_m + (b.up_m - a.up_m) * t };
}

SqFaceSide
sq_face_cut (const SqFaceSpot *corners,
             guint n,
             const SqFaceLine *line,
             double touch_m,
             SqFaceSpot *within,
             guint *n_within,
             SqFaceSpot *past,
             guint *n_past)
{
  double heights[SQ_MOST_PART_CORNERS];
  double least = sq_face_line_height_m (line, corners[0]), most = least;
  heights[0] = least;
  for (guint i = 1; i < n; i++) {
    double height = sq_face_line_height_m (line, corners[i]);
    heights[i] = height;
    least = MIN (least, height);
    most = MAX (most, height);
  }
  if (!(least < -touch_m))
    return SQ_FACE_PAST;
  if (!(most > touch_m))
    return SQ_FACE_WITHIN;

  guint in = 0, out = 0;
  for (guint i = 0; i < n; i++) {
    guint next = i + 1 < n ? i + 1 : 0;
    double here = heights[i], there = heights[next];
    if (here <= touch_m)
      within[in++] = corners[i];
    if (here >= -touch_m)
      past[out++] = corners[i];
    if ((here > touch_m && there < -touch_m) || (here < -touch_m && there > touch_m))
      within[in++] = past[out++] = crossing (corners[i], here, corners[next], there);
  }
  *n_within = in;
  *n_past = out;
  return SQ_FACE_ACROSS;
}
