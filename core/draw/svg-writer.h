/* svg-writer.h: a page as SVG: paths, text as text, layers as groups, all in millimetres
 *
 * A picture in the making has a cairo context that paints nothing: it holds the path, the matrix
 * and the pen's manners. A SqDrawing over that context (draw/drawing.h) writes here what it would
 * paint elsewhere; whoever draws need not know. Scalable Vector Graphics (SVG) 1.1, 2nd edition,
 * and `paint-order` of SVG 2. */
#pragma once

#include "draw/ink.h"
#include "draw/layer.h"

#include <pango/pango.h>

G_BEGIN_DECLS

typedef struct SqSvg SqSvg;

/* An empty page. */
SqSvg *sq_svg_new (double width_mm, double height_mm);
void sq_svg_free (SqSvg *svg);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqSvg, sq_svg_free)

/* What to draw with; one unit is a millimetre. (transfer none) */
cairo_t *sq_svg_cairo (SqSvg *svg);

/* The page that @cairo belongs to, or NULL. */
SqSvg *sq_svg_of (cairo_t *cairo);

/* sq_svg_end:
 * @title, @about: of the page, for people; any characters
 *
 * Returns: (transfer full): the file, UTF-8; the same drawing gives the same bytes. @svg can only
 * be freed then */
char *sq_svg_end (SqSvg *svg, const char *title, const char *about, gsize *length);

/* What is painted from here on belongs to @layer, a group with the layer's id. A layer that comes
 * again is a second group (`tags-2`), so that nothing changes places; one that stays empty is not
 * written. */
void sq_svg_layer (SqSvg *svg, SqLayer layer);

/* Like their namesakes of cairo, with the current path, matrix, line cap, line join and fill rule.
 * Each clears the path; a pen of no width leaves nothing. */
void sq_svg_stroke (
  SqSvg *svg, double width_mm, SqColour colour, const double *dash_mm, int n_dashes);
void sq_svg_fill (SqSvg *svg, SqColour colour, double alpha);

/* Fills in one colour that is @from_alpha at @from and @to_alpha at @to, straight between. */
void sq_svg_fade (SqSvg *svg,
                  SqColour colour,
                  SqPaperPoint from,
                  double from_alpha,
                  SqPaperPoint to,
                  double to_alpha);

/* Nothing is painted outside the current path any more; all that is painted keeps @alpha of itself,
 * as one picture. Each until it is left; they nest. */
void sq_svg_clip (SqSvg *svg);
void sq_svg_pale (SqSvg *svg, double alpha);
void sq_svg_leave (SqSvg *svg);

/* How the letters of a text look. */
typedef struct {
  double size_mm; /* of the em */
  int weight;
  double tracking_mm;
  SqColour colour;
  double halo_mm; /* the pen of the outline under the letters; 0: none */
  SqColour halo_colour;
  double halo_alpha;
} SqSvgType;

typedef enum {
  SQ_SVG_LEFT,
  SQ_SVG_MIDDLE,
  SQ_SVG_RIGHT,
} SqSvgAnchor;

/* sq_svg_text:
 * @corner: the top left corner of @layout, in the current frame
 * @anchor: of each line; what is set in another face stays in its place there
 *
 * The lines of @layout as texts that can be marked and searched; each ends where Pango ends it,
 * with the ellipsis or hyphen that Pango puts there. What XML cannot hold becomes U+FFFD. */
void sq_svg_text (
  SqSvg *svg, SqPaperPoint corner, SqSvgAnchor anchor, PangoLayout *layout, const SqSvgType *type);

G_END_DECLS
