/* face-parts.h: convex parts of a lamp's face, and the lines that cut them */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* On the plane of a face, from its middle. */
typedef struct {
  double right_m, up_m;
} SqFaceSpot;

/* A line across that plane. What is within it has a height of 0 or less; what is past it, more. */
typedef struct {
  double middle_m; /* the height of the face's middle */
  double right, up;
} SqFaceLine;

static inline double
sq_face_line_height_m (const SqFaceLine *line, SqFaceSpot spot)
{
  return line->middle_m + line->right * spot.right_m + line->up * spot.up_m;
}

/* Convex, counter-clockwise as right and up have it. */
typedef struct {
  guint first, n; /* its corners in SqFaceParts.corners */
  double passes;  /* share of its light that comes through: 1, or less behind nets and panes */
} SqFacePart;

/* A part of more corners is not cut any more. */
#define SQ_MOST_PART_CORNERS 128

typedef struct {
  SqFacePart *parts;
  SqFaceSpot *corners;
  guint n_parts, n_corners;
  guint most_parts, most_corners; /* there is room for */
} SqFaceParts;

void sq_face_parts_init (SqFaceParts *parts, guint most_parts, guint most_corners);
void sq_face_parts_clear (SqFaceParts *parts);

static inline void
sq_face_parts_empty (SqFaceParts *parts)
{
  parts->n_parts = parts->n_corners = 0;
}

/* Adds a part; one of less than 3 corners is none. Returns: FALSE if there is no room for it */
gboolean sq_face_parts_add (SqFaceParts *parts, const SqFaceSpot *corners, guint n, double passes);

/* The part whose @n corners have just been written behind the others. */
static inline void
sq_face_parts_end (SqFaceParts *parts, guint n, double passes)
{
  parts->parts[parts->n_parts++] = (SqFacePart){ parts->n_corners, n, passes };
  parts->n_corners += n;
}

/* TRUE if sq_face_cut() can write one part more. */
static inline gboolean
sq_face_parts_have_room (const SqFaceParts *parts)
{
  return parts->n_parts < parts->most_parts &&
         parts->n_corners + 2 * SQ_MOST_PART_CORNERS <= parts->most_corners;
}

static inline const SqFaceSpot *
sq_face_part_corners (const SqFaceParts *parts, const SqFacePart *part)
{
  return parts->corners + part->first;
}

/* How a part lies to a line. */
typedef enum {
  SQ_FACE_WITHIN,
  SQ_FACE_PAST,
  SQ_FACE_ACROSS,
} SqFaceSide;

/* sq_face_cut:
 * @corners, @n: a convex part, at most SQ_MOST_PART_CORNERS
 * @touch_m: what is nearer to the line belongs to both sides, and does not make a part cross it
 * @within, @past: (out): room for 2 n each; filled only where the part lies across. They get n + 1
 *   at most if the part is convex to the last bit. */
SqFaceSide sq_face_cut (const SqFaceSpot *corners,
                        guint n,
                        const SqFaceLine *line,
                        double touch_m,
                        SqFaceSpot *within,
                        guint *n_within,
                        SqFaceSpot *past,
                        guint *n_past);

G_END_DECLS
