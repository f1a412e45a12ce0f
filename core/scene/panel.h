/* panel.h: free-standing grip: flags, nets, diffusion frames, bounces */
#pragma once

#include "scene/fixture.h"

G_BEGIN_DECLS

typedef enum {
  SQ_PANEL_FLAG,
  SQ_PANEL_NET,
  SQ_PANEL_DIFFUSION,
  SQ_PANEL_BOUNCE,
} SqPanelKind;

typedef struct {
  SqThing thing;
  char *id;
  int kind;                    /* SqPanelKind */
  SqPoint at;                  /* centre */
  double facing_deg, tilt_deg; /* azimuth and elevation of its normal */
  double roll_deg;
  double width_m, height_m;
  char *material; /* NULL only for a flag */
  int role;       /* SqRole; -1: that of the lamp that lights it */
  int mount;      /* SqMount */
  char *stand;
  gboolean set; /* in place */
  SqCommon common;
} SqPanel;

extern const SqKind sq_panel_kind;

/* @forward is the normal n; @right is u = (-sin facing, cos facing, 0), its width direction at any
 * tilt; @up is v = n × u, its height direction; roll turns u and v right-handed about n. */
SqFrame sq_panel_frame (const SqPanel *panel);

G_END_DECLS
