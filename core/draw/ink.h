/* ink.h: the inks, pens and role lines of every drawing, from one table each */
#pragma once

#include "draw/view.h"
#include "scene/fixture.h"

#include <cairo.h>

G_BEGIN_DECLS

typedef struct {
  double red, green, blue; /* sRGB, 0 … 1 */
} SqColour;

typedef enum {
  SQ_INK,   /* what is read or built */
  SQ_MID,   /* field names, secondary words, cables */
  SQ_SOFT,  /* stand legs, grid; never text */
  SQ_HAIR,  /* table rules, pencil lines */
  SQ_POCHE, /* cut walls */
  SQ_BODY,  /* people */
  SQ_FURN,  /* pieces */
  SQ_SHADE, /* cast shadows, thinned: darker than any ground */
  SQ_PAPER, /* the ground itself */
  SQ_INKS,
} SqInk;

/* Line widths of the ISO 128 series, in millimetres. */
#define SQ_PEN_13 0.13
#define SQ_PEN_18 0.18
#define SQ_PEN_25 0.25
#define SQ_PEN_35 0.35
#define SQ_PEN_50 0.50
#define SQ_PEN_70 0.70
#define SQ_PEN_90 0.90
#define SQ_PEN_100 1.00

/* Roles as drawn; daylight has a line of its own whatever its role. */
#define SQ_LINE_DAYLIGHT SQ_ROLES
#define SQ_ROLE_LINES (SQ_ROLES + 1)

typedef struct {
  const char *word; /* N_(): KEY, FILL … */
  SqColour on_light, on_dark;
  double dash_mm[8]; /* at pen 0.7 */
  int n_dashes;      /* 0: solid */
} SqRoleLine;

extern const SqRoleLine sq_role_lines[SQ_ROLE_LINES];

SqColour sq_colour_hex (guint rgb);
SqColour sq_ink (const SqView *view, SqInk ink);
SqColour sq_role_colour (const SqView *view, int role_line); /* INK where the view is mono */

G_END_DECLS
