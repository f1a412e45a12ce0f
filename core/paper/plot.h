/* plot.h: the pages that leave: a plan true to scale with all that belongs on its sheet */
#pragma once

#include "draw/plan.h"
#include "paper/sheet.h"

G_BEGIN_DECLS

/* What is asked for of one page. */
typedef struct {
  int kind;           /* SqPageKind */
  const char *sheet;  /* (nullable): as the request says */
  SqSheetTurn turn;   /* as fits: as the request says */
  double denominator; /* 0: as the request says */
  int overlay;        /* SqOverlay; -1: as the request says */
  gboolean mono;      /* or the request's */
  const char *light;  /* (nullable): id of the lamp that a section goes through; as the request */
} SqPageWish;

#define SQ_PLOT_MOST_WISHES 16

/* What is asked for of a plot; what pages do not say themselves holds for each. */
typedef struct {
  const char *sheet;  /* (nullable): chosen, see paper/sheet-choice.h */
  SqSheetTurn turn;   /* as fits: upright only where that draws the set larger */
  double denominator; /* of the scale, see paper/scale.h; 0: the largest usual one that fits. Where
                       * it is given and one sheet is too small, the plan goes on several */
  int overlay;        /* SqOverlay; -1: what the scene's map asks for */
  gboolean mono;      /* one ink */
  const char *light;  /* (nullable) */
  SqTagRows tag_rows;
  double dpi; /* of PNG, 20 … 1200 */
  SqPageWish pages[SQ_PLOT_MOST_WISHES];
  guint n_pages; /* 0: a plan */
} SqPlotRequest;

#define SQ_PLOT_USUAL_DPI 150.0
#define SQ_PLOT_REQUEST ((SqPlotRequest){ .overlay = -1, .dpi = SQ_PLOT_USUAL_DPI })
#define SQ_PAGE_WISH ((SqPageWish){ .overlay = -1 })

/* sq_plot_request_of:
 * @request: (out): a page for each that the scene asks for and that can be drawn, with what it says
 *   of sheet, scale, overlay and ink, and the usual for the rest; texts are borrowed from @scene
 *
 * Returns: FALSE with one line: `pages[0].sheet: …` */
gboolean sq_plot_request_of (const SqScene *scene, SqPlotRequest *request, GError **error);

/* What the scene's pages ask for and this program cannot draw yet, a line each: `pages[1]: …`.
 * Returns: (transfer full) (element-type utf8) */
GPtrArray *sq_plot_left_out (const SqScene *scene);

/* sq_plot_request_pages:
 * @list: kinds with commas between: `plan,section`, in the order in which they are to come
 *
 * Puts these into @request; a kind that it already has keeps what it says. Returns: FALSE with one
 * line: a kind that is unknown, cannot be drawn yet, or is named twice */
gboolean sq_plot_request_pages (SqPlotRequest *request, const char *list, GError **error);

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

/* The pages, in the order asked for; what does not fit beside a plan follows it. */
int sq_plot_n_pages (const SqPlot *plot);
void sq_plot_page_size_mm (const SqPlot *plot, int page, double *width_mm, double *height_mm);

/* `Plan`, `Section through 5`. (transfer none) */
const char *sq_plot_page_name (const SqPlot *plot, int page);

/* What was chosen for the first page. */
const SqSheet *sq_plot_sheet (const SqPlot *plot);
gboolean sq_plot_is_portrait (const SqPlot *plot);
double sq_plot_denominator (const SqPlot *plot);

/* What the user had better know of these pages, a line each: that the plan goes over several
 * sheets, that tags are cut short. (transfer none) (element-type utf8) */
const GPtrArray *sq_plot_remarks (const SqPlot *plot);

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
