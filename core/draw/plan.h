/* plan.h: the plan: the set from above, to scale, with all its marks and words
 *
 * The one entry for page and screen: the view says which. Nothing is drawn outside view->clip. */
#pragma once

#include "draw/drawing.h"
#include "draw/label.h"
#include "draw/plan-use.h"
#include "draw/tag-text.h"
#include "light/readings.h"

G_BEGIN_DECLS

typedef struct SqPlanLabels SqPlanLabels; /* where all words stand */

/* What the plan tells of itself. */
typedef struct {
  GArray *labels;     /* SqLabel: every text on the plan, the placed ones first */
  GArray *solid;      /* SqPaperBox: lamps, people, cameras, grip: no word should cover them */
  GArray *lines;      /* SqPaperLine: axes, edges, cables, leaders: none should be crossed */
  SqPlanUse use;      /* for the legend */
  GPtrArray *notes;   /* SqNote: number n on the plan is member n - 1; their text goes beside it */
  GPtrArray *crowded; /* SqFixture whose tag says less than it could: list them */
  SqPlanLabels *placed; /* for drawing the same plan again, see SqPlanRequest */
} SqPlanReport;

SqPlanReport *sq_plan_report_new (void);
void sq_plan_report_free (SqPlanReport *report);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqPlanReport, sq_plan_report_free)

/* Half the width of the stripe along a seam that words keep off. */
#define SQ_PLAN_SEAM_HALF_MM 0.5

/* Draws what lies under the plan; @drawing is clipped to the view's field. */
typedef void (*SqUnderlayDraw) (SqDrawing *drawing, gpointer data);

typedef struct {
  const SqScene *scene;       /* with its look applied; what that changes gets a wedge */
  const SqReadings *readings; /* (nullable): no reading boxes */
  SqUnderlayDraw underlay;    /* (nullable): the overlay, below everything; set
                               * view->has_overlay with it */
  gpointer underlay_data;
  SqTagRows tag_rows;
  gboolean without_throws; /* leave out axes, beam edges and ticks */
  gboolean without_tags;   /* symbols only: no text that would have to be placed */
  const char *light_id;    /* (nullable): show edges and throw of this light alone */
  const GArray *seams;     /* (nullable): SqPaperLine: where sheets meet: words keep off them */
  const SqPlanReport *as_before; /* (nullable): of this very request and view, drawn before: words
                                  * stand where they stood, which saves placing them anew */
  SqPlanReport *report;          /* (nullable): emptied, then filled before @underlay is called, so
                                  * that contour labels can keep clear of report->labels */
} SqPlanRequest;

/* sq_draw_plan:
 * @drawing: a page in millimetres (draw/drawing.h)
 *
 * Layers from the bottom: overlay, pieces, walls, throws, cameras' view, shadows, panels,
 * people, bodies, cables and power, leaders, labels, tags, marks with readings, notes. The same
 * request gives the same drawing. */
void sq_draw_plan (SqDrawing *drawing, const SqPlanRequest *request);

/* The stretch of the set, in metres, that holds all of @scene that is drawn, for choosing a scale
 * and an origin. Dimensions count; supplies and notes are left out; labels come on top of it (40 mm
 * at each side is plenty). Returns: FALSE for an empty scene */
gboolean sq_plan_extent_m (const SqScene *scene, SqPlace *least, SqPlace *most);

G_END_DECLS
