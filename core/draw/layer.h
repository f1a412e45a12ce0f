/* layer.h: the layers of a drawing, from the bottom, as files that have layers name them */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum {
  SQ_LAYER_PAPER, /* the ground of the sheet */
  SQ_LAYER_OVERLAY,
  SQ_LAYER_SET,
  SQ_LAYER_THROWS,
  SQ_LAYER_SIGHT, /* what the cameras see */
  SQ_LAYER_SHADOWS,
  SQ_LAYER_GRIP,
  SQ_LAYER_PEOPLE,
  SQ_LAYER_LAMPS,
  SQ_LAYER_CAMERAS,
  SQ_LAYER_POWER,
  SQ_LAYER_DIMENSIONS, /* and the points that are metered */
  SQ_LAYER_LEADERS,
  SQ_LAYER_LABELS, /* the words of the plan: from here to READINGS in one go */
  SQ_LAYER_NOTES,
  SQ_LAYER_TAGS,
  SQ_LAYER_READINGS,
  SQ_LAYER_SHEET, /* columns, title block, frame */
  SQ_LAYERS,
} SqLayer;

/* The same in every language and release, for whoever looks for a layer by program. */
const char *sq_layer_id (SqLayer layer);

/* For people, translated. */
const char *sq_layer_title (SqLayer layer);

G_END_DECLS
