/* section-obstacles.h: what the words of a section keep clear of */
#pragma once

#include "draw/label-obstacles.h"
#include "draw/section.h"

G_BEGIN_DECLS

/* Set, people, lamps, grip, cameras and light; measures are added to them. */
SqLabelObstacles *sq_section_obstacles (const SqView *view, const SqSection *section);

/* A camera's box on the cut. */
SqTurnedBox sq_section_camera_outline (const SqView *view,
                                       const SqSection *section,
                                       const SqCamera *camera);

/* Where it looks on the cut, as sq_draw_camera() takes it; level, to the side it leans to, where it
 * looks out of the cut. */
double sq_section_camera_deg (const SqSection *section, const SqCamera *camera);

G_END_DECLS
