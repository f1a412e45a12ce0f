/* section-place.h: scenes for tests of the section, and whether things lie where they should
 *
 * Lengths are held on paper, at 1:50, to a tenth of a millimetre. */
#pragma once

#include "draw-page.h"
#include "draw/section.h"

#define MM_PER_M 20.0
#define DEGREES 1e-6

/* A point of the cut on the page of these tests. */
static inline SqPaperPoint
on_page (SqPlace place)
{
  return sq_view_paper (&one_to_fifty, place);
}

/* That @place lies @along_m along the cut and @height_m high, on paper. */
static inline void
check_place (const char *what, SqPlace place, double along_m, double height_m)
{
  SqPaperPoint got = on_page (place);
  double x = one_to_fifty.origin.x_mm + along_m * MM_PER_M;
  double y = one_to_fifty.origin.y_mm - height_m * MM_PER_M;
  if (!(hypot (got.x_mm - x, got.y_mm - y) <= PAPER_MM))
    g_error ("%s: at %.3f, %.3f m, wanted %.3f, %.3f", what, place.x_m, place.y_m, along_m,
             height_m);
}

/* A class whose beam is 20 degrees across and 30 up at half of its peak, twice that at a tenth; one
 * of no size, and one that is round. */
#define CLASSES                                                                                    \
  "'classes': [{'id': 'spot', 'name': 'spot', 'optics': 'lens', 'source': 'led', 'input_w': 100,"  \
  "'face': {'shape': 'rect', 'width': 0.2, 'height': 0.4}, 'body': {'width': 0.3, 'depth': 0.4,"   \
  "'height': 0.5}, 'beams': [{'beam_deg': [20, 30], 'field_deg': [40, 60], 'peak_cd': 10000}]},"   \
  "{'id': 'point', 'name': 'point', 'optics': 'lens', 'source': 'led', 'input_w': 100,"            \
  "'body': {'width': 0.1, 'depth': 0.1, 'height': 0.1}, 'beams': [{'beam_deg': 20, 'field_deg':"   \
  "40, 'peak_cd': 10000}]}, {'id': 'disc', 'face': {'width': 0.4}, 'beams': [{'beam_deg': 20,"     \
  "'field_deg': 40, 'peak_cd': 10000}]}]"

static inline SqSection *
section_of (const SqScene *scene)
{
  g_autoptr (GError) error = NULL;
  const SqFixture *light = sq_section_light (scene, NULL, &error);
  g_assert_no_error (error);
  return sq_section_new (scene, NULL, light);
}

/* A scene of the two classes and what @rest says. */
static inline SqSection *
section (const char *rest)
{
  g_autofree char *text = g_strconcat (CLASSES, ", ", rest, NULL);
  g_autoptr (SqScene) scene = right_scene (text);
  return section_of (scene);
}
