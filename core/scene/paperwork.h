/* paperwork.h: what the scene says about its pages: title, notes, dimensions, pages, edits */
#pragma once

#include "scene/common.h"

G_BEGIN_DECLS

typedef struct {
  SqThing thing;
  char *number, *date, *what;
} SqRevision;

typedef struct {
  SqThing thing;
  char *production, *scene, *location, *set, *title, *date;
  char *drawn_by, *gaffer, *director, *dp, *owner, *document, *approved_by;
  GPtrArray *revisions; /* SqRevision, newest last */
} SqTitle;

typedef enum {
  SQ_RATIO_TOTAL, /* (key + fill) : fill */
  SQ_RATIO_PLAIN, /* key : fill */
} SqRatio;

typedef struct {
  SqThing thing;
  double flat_c, dome_c; /* exposure constants, lx·s·ISO */
  int ratio;             /* SqRatio */
} SqMeterSettings;

typedef struct {
  SqThing thing;
  double key_stops, back_stops, background_stops; /* from the set stop */
  double ratio;
} SqWanted;

typedef enum {
  SQ_OVERLAY_LUX,
  SQ_OVERLAY_STOPS,
  SQ_OVERLAY_COLOUR,
  SQ_OVERLAY_NONE, /* pages only */
} SqOverlay;

typedef enum {
  SQ_NORMAL_UP,
  SQ_NORMAL_CAMERA,
  SQ_NORMAL_SQUARE, /* every source read square-on, added */
} SqNormal;

typedef struct {
  SqThing thing;
  int quantity; /* SqOverlay without none */
  double height_m;
  int normal; /* SqNormal */
} SqMap;

typedef struct {
  SqThing thing;
  char *id;
  char *text;
  SqPlace at;
  SqPlace points_to; /* NAN: nothing */
  SqCommon common;
} SqNote;

typedef struct {
  SqThing thing;
  char *id;
  SqPlace from, to;
  double offset_m; /* to the left of from → to */
  char *text;      /* NULL: the length */
  SqCommon common;
} SqDimensionLine;

typedef struct {
  SqThing thing;
  int format;
  char *data;     /* base64 */
  double scale_m; /* width of the picture */
  SqPlace at;     /* its lower left corner */
  double turn_deg;
  double opacity;
} SqUnderlay;

typedef enum {
  SQ_PAGE_PLAN,
  SQ_PAGE_RATIO,
  SQ_PAGE_SECTION,
  SQ_PAGE_LIST,
  SQ_PAGE_POWER,
  SQ_PAGE_CONTINUITY,
} SqPageKind;

typedef struct {
  SqThing thing;
  int page; /* SqPageKind */
  char *sheet, *scale;
  gboolean portrait;
  int overlay; /* SqOverlay; -1: the map's quantity */
  char *look, *light;
  gboolean mono;
  JsonNode *blocks; /* where blocks were dragged */
} SqPage;

typedef struct {
  SqThing thing;
  char *item;
  double count; /* NAN: as computed */
  gboolean added, struck;
  char *note, *supplier;
} SqListEdit;

typedef struct {
  SqThing thing;
  char *finding, *about, *reason;
} SqWaiver;

extern const SqKind sq_revision_kind, sq_title_kind, sq_meter_settings_kind, sq_wanted_kind,
  sq_map_kind, sq_note_kind, sq_dimension_line_kind, sq_underlay_kind, sq_page_kind,
  sq_list_edit_kind, sq_waiver_kind;

G_END_DECLS
