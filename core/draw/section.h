/* section.h: the section: an upright cut through one lamp and what it points at, to scale
 *
 * The one entry for page and screen, as plan.h is for the plan. */
#pragma once

#include "draw/drawing.h"
#include "draw/label.h"
#include "draw/section-set.h"
#include "draw/section-shadow.h"
#include "draw/tag-text.h"
#include "light/readings.h"

G_BEGIN_DECLS

/* Lamps, people, cameras, grip and furniture that stand no further off the cut than this are shown
 * too, thin. */
#define SQ_SECTION_NEAR_M 1.0

/* Worked out once, then drawn at any scale. */
typedef struct {
  SqScene *scene;             /* a reference, with its look applied */
  const SqReadings *readings; /* (nullable): borrowed */
  const SqFixture *light;
  const SqMark *subject; /* (nullable): whom it is aimed at, else who is nearest on the cut */
  SqCutPlane plane;
  GArray *obstacles; /* SqObstacle of light/obstacles.h */
  GArray *parts;     /* SqCutPart */
  SqSectionThrow way;
  GArray *shadows; /* SqSectionShadow: of those on the cut; the subject's first */
  SqSectionSet set;
} SqSection;

/* sq_section_light:
 * @id: (nullable): of a lamp, or its number on the plan
 *
 * With no id, of what burns: the key that is aimed at the first mark; a key that shines on a mark
 * its cut goes through, else the strongest lamp that does. Then the first mark's first key, what
 * burns before what does not; then the first lamp that burns, then the first.
 * Returns: (nullable): NULL with one line that lists what there is */
const SqFixture *sq_section_light (const SqScene *scene, const char *id, GError **error);

SqSection *sq_section_new (const SqScene *scene,
                           const SqReadings *readings,
                           const SqFixture *light);
void sq_section_free (SqSection *section);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqSection, sq_section_free)

/* What this light alone reads at the mark, turned straight at it; NAN without readings. */
double sq_section_lux (const SqSection *section, const SqMark *mark);

/* TRUE if it is on the cut, within what is drawn; else it may be near. */
gboolean sq_section_on_cut (const SqSection *section, const SqMark *mark);
gboolean sq_section_shows_mark (const SqSection *section, const SqMark *mark);
gboolean sq_section_shows_lamp (const SqSection *section, const SqFixture *fixture);
gboolean sq_section_shows_camera (const SqSection *section, const SqCamera *camera);

/* `Section through 1 and A`, `Section through 1, along its throw`. Returns: (transfer full) */
char *sq_section_title (const SqSection *section);

/* Where a hand can take hold. */
typedef enum {
  SQ_HANDLE_HEIGHT,     /* of the lens: up and down */
  SQ_HANDLE_AIM,        /* the tilt */
  SQ_HANDLE_BEAM_ABOVE, /* spot and flood, on the upper edge; only where it has edges */
  SQ_HANDLE_BEAM_UNDER,
  SQ_HANDLE_PANEL,  /* the height of a panel on the cut */
  SQ_HANDLE_CAMERA, /* the height of a lens */
} SqSectionHandleKind;

typedef struct {
  SqSectionHandleKind kind;
  const SqThing *thing; /* whose; borrowed from the scene */
  SqPlace place;        /* on the cut */
  SqPaperPoint at;      /* on the page or screen */
} SqSectionHandle;

typedef struct {
  GArray *labels;  /* SqLabel: every text, the placed ones first */
  GArray *handles; /* SqSectionHandle */
} SqSectionReport;

SqSectionReport *sq_section_report_new (void);
void sq_section_report_free (SqSectionReport *report);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqSectionReport, sq_section_report_free)

/* The handles alone, added to @handles, for dragging without drawing. */
void sq_section_handles (const SqView *view, const SqSection *section, GArray *handles);

typedef struct {
  const SqSection *section;
  SqTagRows tag_rows;
  SqPaperBox keep_clear;   /* no word stands on it; no width: nothing */
  SqSectionReport *report; /* (nullable): emptied, then filled */
} SqSectionRequest;

/* A view that puts the stretch of the cut in the middle of @field, with the scale to its left. */
SqView sq_section_view (const SqSection *section, SqPaperBox field, double mm_per_m);

/* sq_draw_section:
 * @drawing: its view from sq_section_view(), or one like it
 *
 * Layers from the bottom: heights, furniture, walls, shadows, throw, cameras' view, grip, people,
 * lamps, cameras, dimensions, leaders, labels. The same request gives the same drawing. */
void sq_draw_section (SqDrawing *drawing, const SqSectionRequest *request);

G_END_DECLS
