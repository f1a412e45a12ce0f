/* view.h: how the scene lies on a page or screen: scale, place, and millimetres as a type */
#pragma once

#include "base/geometry.h"
#include "base/quantity.h"

G_BEGIN_DECLS

/* On the page: millimetres from its top left corner, y downward. */
typedef struct {
  double x_mm, y_mm;
} SqPaperPoint;

typedef struct {
  double x_mm, y_mm, width_mm, height_mm;
} SqPaperBox;

typedef struct {
  SqPaperPoint from, to;
} SqPaperLine;

typedef enum {
  SQ_GROUND_PAPER,
  SQ_GROUND_LIGHT, /* screen */
  SQ_GROUND_DARK,  /* screen */
} SqGround;

/* All that differs between screen and paper, and between one sheet and another. */
typedef struct {
  double mm_per_m;     /* 20 at 1:50 */
  SqPaperPoint origin; /* where the scene's (0, 0) lies */
  SqPaperBox clip;     /* the field that the plan may use */
  SqGround ground;
  SqUnits units;
  gboolean mono;        /* one ink: every hue as INK */
  gboolean has_overlay; /* pieces stay unfilled, text gets halos */
} SqView;

static inline SqPaperPoint
sq_view_paper (const SqView *view, SqPlace place)
{
  return (SqPaperPoint){ view->origin.x_mm + place.x_m * view->mm_per_m,
                         view->origin.y_mm - place.y_m * view->mm_per_m };
}

static inline SqPlace
sq_view_place (const SqView *view, SqPaperPoint paper)
{
  return (SqPlace){ (paper.x_mm - view->origin.x_mm) / view->mm_per_m,
                    (view->origin.y_mm - paper.y_mm) / view->mm_per_m };
}

/* A page azimuth (counter-clockwise, y up) as an angle for cairo (clockwise, y down). */
static inline double
sq_view_angle_rad (double azimuth_deg)
{
  return -SQ_RADIANS (azimuth_deg);
}

/* A box round something, turned with it. */
typedef struct {
  SqPaperPoint middle;
  double angle_rad; /* of its length, in cairo's sense */
  double half_length_mm, half_width_mm;
} SqTurnedBox;

static inline SqPaperPoint
sq_paper_along (SqPaperPoint from, double angle_rad, double distance_mm)
{
  return (SqPaperPoint){ from.x_mm + distance_mm * cos (angle_rad),
                         from.y_mm + distance_mm * sin (angle_rad) };
}

static inline double
sq_paper_distance_mm (SqPaperPoint a, SqPaperPoint b)
{
  return hypot (b.x_mm - a.x_mm, b.y_mm - a.y_mm);
}

/* Cap heights of the page's type, in millimetres. */
#define SQ_TYPE_SMALL 1.8
#define SQ_TYPE_HEAD 2.5
#define SQ_TYPE_UNIT 3.0
#define SQ_TYPE_NAME 3.5
#define SQ_TYPE_TITLE 5.0

/* Cap height of the face as a share of its em (Inter's own metrics). */
#define SQ_CAP_PER_EM 0.727

/* A paper that is measured in inches, a set that is measured in feet. */
#define SQ_INCH_MM 25.4
#define SQ_FOOT_M 0.3048

/* Millimetres of a screen count as 3.78 px of 96 to the inch. Pens get whole or half pixels there,
 * one at least; on paper a pen is what it is. */
#define SQ_SCREEN_PX_PER_MM 3.78
double sq_view_pen_mm (const SqView *view, double pen_mm);

/* Cap height of the plan's small type: 1.8 on paper, 12 px of type size on screen. */
double sq_view_small_mm (const SqView *view);

gboolean sq_paper_boxes_overlap (SqPaperBox a, SqPaperBox b);
double sq_paper_overlap_mm2 (SqPaperBox a, SqPaperBox b);
SqPaperBox sq_paper_box_union (SqPaperBox a, SqPaperBox b);
SqPaperBox sq_paper_box_grown (SqPaperBox box, double by_mm);
SqPaperBox sq_paper_box_round (SqPaperPoint middle, double half_width_mm, double half_height_mm);
SqPaperPoint sq_paper_box_middle (SqPaperBox box);

/* @box moved as little as brings it inside of @outer, which is the larger. */
SqPaperBox sq_paper_box_moved_within (SqPaperBox box, SqPaperBox outer);
gboolean sq_paper_box_within (SqPaperBox inner, SqPaperBox outer);

/* How far from its middle a turned box reaches in a direction (cairo's sense). */
double sq_turned_box_reach_mm (SqTurnedBox box, double angle_rad);

/* How far apart the middles of two boxes must be, @b in the direction of @angle_rad from @a, to
 * leave @gap_mm between them: the least over the axes that can part them. */
double sq_turned_boxes_apart_mm (SqTurnedBox a, SqTurnedBox b, double angle_rad, double gap_mm);

/* sq_paper_clip_line:
 * @box, @from, @to: the straight line from @from to @to
 * @enter, @leave: (out) (optional): how far along, 0 to 1, it is inside
 *
 * Returns: FALSE if no point of it lies in the box. After Liang and Barsky (1984). */
gboolean sq_paper_clip_line (
  SqPaperBox box, SqPaperPoint from, SqPaperPoint to, double *enter, double *leave);

gboolean sq_paper_line_hits (SqPaperLine line, SqPaperBox box);

/* TRUE if the two straight lines cross, both ends of each counting as part of it. */
gboolean sq_paper_lines_cross (SqPaperPoint a, SqPaperPoint b, SqPaperPoint c, SqPaperPoint d);

G_END_DECLS
