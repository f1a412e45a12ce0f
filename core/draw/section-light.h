/* section-light.h: throw and shadows as they are drawn on the cut */
#pragma once

#include "draw/section.h"

G_BEGIN_DECLS

/* Axis, beam edges and ticks of the light; of one that is off only where it points. On screen the
 * ticks are numbered. @front_mm: how far the lamp's outermost mark reaches ahead */
void sq_draw_section_throw (SqDrawing *drawing, const SqSection *section, double front_mm);

/* The angle of the axis under the level, as an arc at the lamp: where its figure belongs.
 * Returns: FALSE where there is none to draw */
gboolean sq_section_tilt_arc (const SqView *view,
                              const SqSection *section,
                              double front_mm,
                              SqPaperPoint *middle,
                              double *radius_mm);
void sq_draw_section_tilt (SqDrawing *drawing, const SqSection *section, double front_mm);

/* A band along what it falls on, dark at the foot, pale at its end, its half-shadow dashed; and the
 * ray over the crown. */
#define SQ_SHADOW_BAND_MM 1.5
void sq_draw_section_shadow (SqDrawing *drawing,
                             const SqSection *section,
                             const SqSectionShadow *shadow);

/* What a camera sees, above and below, if it looks along the cut. */
void sq_draw_section_view_of (SqDrawing *drawing, const SqSection *section, const SqCamera *camera);

G_END_DECLS
