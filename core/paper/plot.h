/* plot.h: the pages that leave: a plan true to scale with all that belongs on its sheet */
#pragma once

#include "draw/plan.h"
#include "paper/sheet.h"

G_BEGIN_DECLS

typedef struct {
  const char *sheet;  /* (nullable): the smallest from A3 (tabloid) up on which the set
                       * fits at 1:50 (1/4" = 1'-0") */
  double denominator; /* of the scale, see paper/scale.h; 0: the largest usual one that fits */
  int overlay;        /* SqOverlay; -1: what the scene's map asks for */
  gboolean mono;      /* one ink */
  SqTagRows tag_rows;
  double dpi; /* of PNG, 20 … 1200 */
} SqPlotRequest;

#define SQ_PLOT_USUAL_DPI 150.0
#define SQ_PLOT_REQUEST ((SqPlotRequest){ .overlay = -1, .dpi = SQ_PLOT_USUAL_DPI })

/* sq_plot_request_of:
 * @request: (out): what the scene's first plan page says of sheet, scale, overlay and ink, and the
 *   usual for the rest; its sheet is borrowed from @scene
 *
 * Returns: FALSE with one line: `pages[0].sheet: …` */
gboolean sq_plot_request_of (const SqScene *scene, SqPlotRequest *request, GError **error);

/* What the scene's pages ask for and this program cannot draw yet, a line each: `pages[1]: …`.
 * Returns: (transfer full) (element-type utf8) */
GPtrArray *sq_plot_left_out (const SqScene *scene);

typedef struct SqPlot SqPlot;

/* sq_plot_new:
 * @scene: in the look that is to be printed; a reference is kept
 * @threads: for the readings and the map, at least 1; the pages do not depend on it
 *
 * Reads the meter, computes the map once, chooses sheet and scale and lays out all pages.
 *
 * Returns: (transfer full): or NULL with one line: an unknown sheet, a set that is too large for
 *   the sheet at that scale (the line names what would do), an overlay that cannot be computed yet,
 *   or cancelled */
SqPlot *sq_plot_new (const SqScene *scene,
                     const SqPlotRequest *request,
                     int threads,
                     GCancellable *cancellable,
                     GError **error);
void sq_plot_free (SqPlot *plot);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqPlot, sq_plot_free)

/* Page 0 is the plan; what does not fit beside it follows. */
int sq_plot_n_pages (const SqPlot *plot);
void sq_plot_page_size_mm (const SqPlot *plot, int page, double *width_mm, double *height_mm);

/* What was chosen. */
const SqSheet *sq_plot_sheet (const SqPlot *plot);
double sq_plot_denominator (const SqPlot *plot);

/* What the pages print, for showing beside them. (transfer none) */
const SqReadings *sq_plot_readings (const SqPlot *plot);

/* Draws @page with its top left corner at the origin, one cairo unit a millimetre, without a
 * ground. */
void sq_plot_draw (const SqPlot *plot, cairo_t *cairo, int page);

typedef enum {
  SQ_PLOT_PDF, /* all pages in one file, text searchable, fonts embedded */
  SQ_PLOT_SVG, /* a file a page, text as text, layers as groups (draw/layer.h) */
  SQ_PLOT_PNG, /* a file a page, at request.dpi */
} SqPlotFormat;

/* sq_plot_export:
 * @path: `-` is standard output; where a format takes one page a file and there are several,
 *   `F.png` becomes F-1.png, F-2.png …
 *
 * The same plot gives the same bytes, each time; the date in a PDF is the title's where that is
 * YYYY-MM-DD, else 2000-01-01.
 *
 * Returns: FALSE with one line: the file cannot be written, or the picture would be too large */
gboolean sq_plot_export (const SqPlot *plot, const char *path, SqPlotFormat format, GError **error);

G_END_DECLS
