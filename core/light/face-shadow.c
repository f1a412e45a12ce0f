/* face-shadow.c: what a solid hides of a lamp's face */
#include "light/face-shadow.h"

/* A face of a solid hides what is deeper than this behind it: lamps may sit on a wall. */
#define SKIN_M 1e-8

guint
sq_face_outline (const SqFacePlane *face, SqFaceSpot *corners)
{
  double right_m = face->half_right_m, up_m = face->half_up_m;
  if (!face->round) {
    corners[0] = (SqFaceSpot){ -right_m, -up_m };
    corners[1] = (SqFaceSpot){ right_m, -up_m };
    corners[2] = (SqFaceSpot){ right_m, up_m };
    corners[3] = (SqFaceSpot){ -right_m, up_m };
    return 4;
  }
  /* Sines of 0 to 90 degrees in eighths. */
  static const double sines[] = { 0.0,
                                  0x1.8f8b83c69a60bp-3,
                                  0x1.87de2a6aea963p-2,
                                  0x1.1c73b39ae68c8p-1,
                                  0x1.6a09e667f3bcdp-1,
                                  0x1.a9b66290ea1a3p-1,
                                  0x1.d906bcf328d46p-1,
                                  0x1.f6297cff75cb0p-1,
                                  1.0 };
  const guint quarter = SQ_FACE_SIDES / 4;
  for (guint i = 0; i < quarter; i++) {
    double x = right_m * sines[quarter - i], y = up_m * sines[i];
    double turned_x = right_m * sines[i], turned_y = up_m * sines[quarter - i];
    corners[i] = (SqFaceSpot){ x, y };
    corners[quarter + i] = (SqFaceSpot){ -turned_x, turned_y };
    corners[2 * quarter + i] = (SqFaceSpot){ -x, -y };
    corners[3 * quarter + i] = (SqFaceSpot){ turned_x, -turned_y };
  }
  return SQ_FACE_SIDES;
}

/* On the plane counts as before it, so that a point on a face, or in line with an edge, has an
 * outline whose planes are all well determined. */
static inline gboolean
is_before (const SqPlane *face, SqPoint from)
{
  return sq_plane_height_m (face, from) > -SQ_TOUCH_M;
}

/* The first faces' answers to is_before() are kept in bits. */
#define KEPT 64

static inline gboolean
sees (const SqSolid *solid, guint face, SqPoint from, guint64 kept)
{
  return face < KEPT ? (kept >> face & 1) != 0 : is_before (&solid->faces[face], from);
}

/* How the whole face lies to a line, by its bounds. */
static SqFaceSide
side_of (const SqFacePlane *face, const SqFaceLine *line)
{
  double x = line->right * face->half_right_m, y = line->up * face->half_up_m;
  double reach_m = face->round ? sqrt (x * x + y * y) : fabs (x) + fabs (y);
  double deep = reach_m > 0.0 ? -SQ_TOUCH_M : SQ_TOUCH_M;
  if (!(line->middle_m - reach_m <= deep))
    return SQ_FACE_PAST;
  return line->middle_m + reach_m <= SQ_TOUCH_M ? SQ_FACE_WITHIN : SQ_FACE_ACROSS;
}

typedef struct {
  const SqFacePlane *face;
  double radius_m; /* of a circle round the middle that holds the face, and a little more */
  SqFaceLine *lines;
  int n;
} Making;

/* Returns: FALSE if the face lies past the plane */
static inline gboolean
add_line (Making *making, SqVector normal, double middle_m, double per_length)
{
  const SqFaceLine line = {
    .middle_m = middle_m * per_length,
    .right = sq_vector_dot (normal, making->face->right) * per_length,
    .up = sq_vector_dot (normal, making->face->up) * per_length,
  };
  SqFaceSide side = side_of (making->face, &line);
  if (side == SQ_FACE_ACROSS)
    making->lines[making->n++] = line;
  return side != SQ_FACE_PAST;
}

/* The planes of those faces that @from sees, which are kept in @kept. */
static int
add_faces (Making *making, const SqSolid *solid, SqPoint from, guint64 *kept)
{
  guint n_before = 0;
  for (guint i = 0; i < solid->n_faces; i++) {
    const SqPlane *plane = &solid->faces[i];
    double height_m = sq_plane_height_m (plane, from);
    if (height_m <= -SQ_TOUCH_M)
      continue;
    n_before++;
    *kept |= i < KEPT ? G_GUINT64_CONSTANT (1) << i : 0;
    /* Not in the face's own plane: along the joint of two solids no light may pass. */
    double skin_m = height_m > SQ_TOUCH_M ? SKIN_M : 0.0;
    double middle_m = sq_plane_height_m (plane, making->face->middle) + skin_m;
    if (middle_m > making->radius_m)
      return SQ_HIDES_NOTHING;
    if (middle_m >= -making->radius_m && !add_line (making, plane->normal, middle_m, 1.0))
      return SQ_HIDES_NOTHING;
  }
  if (solid->flat && n_before == 2)
    return SQ_HIDES_NOTHING;
  return (int)n_before;
}

int
sq_face_shadow (const SqFacePlane *face, const SqSolid *solid, SqPoint from, SqFaceLine *lines)
{
  double right_m = face->half_right_m, up_m = face->half_up_m;
  Making making = { face, sqrt (right_m * right_m + up_m * up_m) + SQ_TOUCH_M, lines, 0 };
  guint64 kept = 0;
  int n_before = add_faces (&making, solid, from, &kept);
  if (n_before <= 0)
    return n_before == 0 ? SQ_HIDES_ALL : SQ_HIDES_NOTHING;

  double square = making.radius_m * making.radius_m;
  SqVector way = sq_vector_between (from, face->middle);
  for (guint i = 0; i < solid->n_edges; i++) {
    const SqEdge *edge = &solid->edges[i];
    gboolean left = sees (solid, edge->left, from, kept);
    if (left == sees (solid, edge->right, from, kept))
      continue;
    /* A face seen from before runs counter-clockwise, so this product points out of it. */
    SqPoint begin = solid->corners[left ? edge->from : edge->to];
    SqPoint end = solid->corners[left ? edge->to : edge->from];
    SqVector out = sq_vector_cross (sq_vector_between (from, begin), sq_vector_between (from, end));
    double middle = sq_vector_dot (out, way), length_square = sq_vector_dot (out, out);
    if (middle * middle > square * length_square) {
      if (middle > 0.0)
        return SQ_HIDES_NOTHING;
      continue;
    }
    /* An edge of no length parts nothing. */
    if (length_square > 0.0 && !add_line (&making, out, middle, 1.0 / sqrt (length_square)))
      return SQ_HIDES_NOTHING;
  }
  return making.n;
}
