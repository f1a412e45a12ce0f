/* section-set.h: the built set on the cut: floor, walls, openings, ceiling, furniture, heights */
#pragma once

#include "draw/drawing.h"
#include "draw/section-cut.h"

G_BEGIN_DECLS

/* The floor is drawn so thick. */
#define SQ_SECTION_FLOOR_M 0.12

/* How the set is shown: the cut, how far to both sides on it, and what is near it. */
typedef struct {
  const SqScene *scene;
  const SqCutPlane *plane;
  const GArray *parts;     /* SqCutPart */
  const GArray *obstacles; /* SqObstacle of light/obstacles.h */
  SqPlace least, most;     /* the stretch of the cut that is drawn */
  double near_m;           /* what lies no further off the cut than this is shown, thin */
} SqSectionSet;

/* TRUE for what of the scene is drawn at all: @owner is not hidden. */
gboolean sq_section_is_drawn (const SqThing *owner);

/* TRUE where a wall or ceiling is cut: what stands behind it there is hidden. */
gboolean sq_section_is_in_wall (const SqSectionSet *set, SqPlace place);

/* Where the plane goes through an opening of a wall. */
typedef struct {
  const SqOpening *opening;
  double from_m, to_m; /* the wall's faces, along the cut */
  double sill_m, head_m;
} SqSideOpening;

/* Returns: (transfer full) (element-type SqSideOpening) */
GArray *sq_section_openings (const SqSectionSet *set);

/* sq_section_piece:
 * @least, @most: (out): what of it is cut, else its silhouette
 * @cut: (out): the plane goes through it; else it is beside it, and near
 *
 * Returns: FALSE where it is not shown */
gboolean sq_section_piece (
  const SqSectionSet *set, const SqPiece *piece, SqPlace *least, SqPlace *most, gboolean *cut);

/* TRUE if a ceiling that is given has a slab on the cut; else its height is only a line. */
gboolean sq_section_has_slab (const SqSectionSet *set);

/* Thin lines across at whole metres or feet, to be drawn under everything. */
void sq_draw_section_levels (SqDrawing *drawing, const SqSectionSet *set);

/* The same heights in figures: left of the stretch that is drawn, this wide. */
#define SQ_SECTION_SCALE_MM 11.0
void sq_draw_section_scale (SqDrawing *drawing, const SqSectionSet *set);

/* Furniture beside the cut, thin, then what is cut: furniture, walls, ceiling, floor. */
void sq_draw_section_built (SqDrawing *drawing, const SqSectionSet *set);

G_END_DECLS
