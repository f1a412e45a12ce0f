/* legend-marks.h: the marks that a legend explains, each drawn by the code that draws the plan */
#pragma once

#include "draw/lamp-symbol.h"

G_BEGIN_DECLS

#define SQ_LEGEND_MM_PER_M 10.0 /* 1:100 */
#define SQ_LEGEND_MARK_MM 12.0  /* room across for a mark; its name follows */
#define SQ_LEGEND_ROW_MM 7.0    /* of lamps */

typedef struct SqLegendItem SqLegendItem;

/* Draws around @middle. */
typedef void SqLegendDraw (SqDrawing *drawing, SqPaperPoint middle, const SqLegendItem *item);

struct SqLegendItem {
  SqLegendDraw *draw;
  const char *name;          /* translated */
  double height_mm;          /* of its row */
  double least_mm;           /* of the mark itself: a row is never squeezed under it */
  int value;                 /* what the mark is of, see below */
  const SqClass *lamp_class; /* of a lamp */
};

/* A lamp too wide for its row is turned to face up the page; one longer, either way, than the room
 * for marks is drawn smaller than the others. Returns: its height in millimetres */
double sq_legend_fit_lamp (SqLamp *lamp, SqView *view);

SqLegendDraw sq_legend_draw_lamp;     /* lamp_class */
SqLegendDraw sq_legend_draw_upright;  /* value over 0: points up; under: down */
SqLegendDraw sq_legend_draw_grip;     /* SqPanelKind */
SqLegendDraw sq_legend_draw_modifier; /* SqModifierKind */
SqLegendDraw sq_legend_draw_mount;    /* SqMountGlyph */
SqLegendDraw sq_legend_draw_role;     /* role line of draw/ink.h */
SqLegendDraw sq_legend_draw_supply;   /* SqSupplyKind */
SqLegendDraw sq_legend_draw_ticks, sq_legend_draw_beams, sq_legend_draw_wedge, sq_legend_draw_off,
  sq_legend_draw_cable, sq_legend_draw_shadow;

G_END_DECLS
