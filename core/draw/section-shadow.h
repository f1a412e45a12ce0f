/* section-shadow.h: the shadow that somebody throws on the cut: along the floor, up the wall */
#pragma once

#include "draw/section-throw.h"

G_BEGIN_DECLS

/* A stretch of floor, wall or furniture, from the figure outward. */
typedef struct {
  SqPlace from, to;
  const SqThing *on; /* (nullable): whose surface; NULL: the floor */
} SqShadowStretch;

typedef struct {
  const SqMark *mark;
  SqPlace foot, crown;
  GArray *stretches;           /* SqShadowStretch: in the dark of the lamp's middle; may be none */
  gboolean ends;               /* FALSE: no surface stops the ray over the crown */
  SqPlace end;                 /* where that ray ends */
  const SqThing *end_on;       /* (nullable): whose surface; NULL: the floor */
  gboolean has_edge[SQ_EDGES]; /* on that same surface */
  SqPlace edge[SQ_EDGES]; /* where light from the upper and lower end of what shines comes back */
} SqSectionShadow;

/* sq_section_shadow:
 * @parts: what the plane cuts (sq_cut_parts())
 *
 * Of somebody taken as an upright line as tall as the figure: by similar triangles. Furniture
 * before them and under them adds to it; where a wall or a flag keeps the light off them there is
 * none. Who lies throws none worth drawing.
 * Returns: FALSE if there is none: the lamp is above or beside them, or nothing gets there */
gboolean sq_section_shadow (const SqSectionThrow *way,
                            const GArray *parts,
                            const SqCutPlane *plane,
                            const SqMark *mark,
                            SqSectionShadow *shadow);
void sq_section_shadow_clear (SqSectionShadow *shadow);

/* How far from the foot it ends, along the floor; INFINITY where it does not. How high it climbs
 * what it ends on, 0 on the floor. */
double sq_section_shadow_length_m (const SqSectionShadow *shadow);
double sq_section_shadow_height_m (const SqSectionShadow *shadow);

G_END_DECLS
