/* cells.h: sums over what is seen of a face whose light is not Lambertian, finely enough */
#pragma once

#include "base/geometry.h"
#include "light/face-parts.h"

G_BEGIN_DECLS

/* Places on the face, each of which stands for so much of it. */
#define SQ_MOST_SPOTS 64

typedef struct {
  double right_m[SQ_MOST_SPOTS], up_m[SQ_MOST_SPOTS];
  double weight_m2[SQ_MOST_SPOTS];
  guint n;
} SqFaceSpots;

/* What the places give, each as much as its weight. */
typedef double (*SqCellsFunc) (const SqFaceSpots *spots, gconstpointer data);

/* sq_cells_sum:
 * @parts: what is seen, each part as much as it lets through
 * @middle: the middle of the face as it lies from the point that looks: right, up, away
 * @limit: how small a cell must look from that point: its size to its distance
 * @scratch: what is in it stays, and may be @parts; the rest is overwritten
 *
 * The integral over the parts: all of them are halved together until what is in one half looks
 * small (under a third of its distance, and half of @detail_rad), and each is summed at four places
 * that have its own area, centre and second moments: right to the square for what varies smoothly,
 * and how the parts were cut does not matter. Good to a few thousandths. */
double sq_cells_sum (const SqFaceParts *parts,
                     SqVector middle,
                     double limit,
                     SqFaceParts *scratch,
                     SqCellsFunc func,
                     gconstpointer data);

G_END_DECLS
