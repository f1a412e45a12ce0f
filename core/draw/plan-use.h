/* plan-use.h: which marks a plan uses, so that its legend explains those and no others */
#pragma once

#include "draw/lamp-mount.h"
#include "draw/view.h"
#include "scene/scene.h"

G_BEGIN_DECLS

/* All members are borrowed from the scene, which outlives this. */
typedef struct {
  GPtrArray *lamps; /* SqFixture: the first of each pair of source and optics, by unit number */
  guint mounts;     /* bit per SqMountGlyph */
  guint roles;      /* bit per role line (draw/ink.h), daylight too */
  guint modifiers;  /* bit per SqModifierKind */
  guint panels;     /* bit per SqPanelKind */
  guint supplies;   /* bit per SqSupplyKind, of those placed on the plan */
  gboolean points_down, points_up;
  gboolean off;     /* a lamp stands there switched off */
  gboolean changed; /* the look changes a lamp that is drawn: wedge */
  gboolean ticks;   /* stop ticks */
  gboolean beams;   /* edges at half and tenth */
  gboolean shadows; /* set by who draws the plan: which are drawn depends on its view */
  gboolean people, cameras, walks, probes, cables, wild_walls;
} SqPlanUse;

/* What of @scene is drawn: all that is not hidden. */
void sq_plan_use_init (SqPlanUse *use, const SqScene *scene);
void sq_plan_use_clear (SqPlanUse *use);

/* The order in which people count units: 2 before 10 before 10A. For sorting fixtures.
 * Returns: under 0, 0, over 0 */
int sq_unit_number_compare (const SqFixture *a, const SqFixture *b);

G_END_DECLS
