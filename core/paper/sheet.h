/* sheet.h: the sheets of paper: sizes, margins, and where a drawing's parts lie on them */
#pragma once

#include "draw/view.h"

G_BEGIN_DECLS

typedef struct {
  const char *id;   /* as the command line says it: A3, letter, arch-d */
  const char *name; /* as it is printed */
  SqUnits units;
  double width_mm, height_mm; /* landscape */
  int columns;                /* side columns: 0 on the smallest, 2 on the largest */
} SqSheet;

/* From the smallest to the largest; A4 to A0, then the imperial ones. ISO 216 and ISO 5457; letter
 * and tabloid are ANSI/ASME Y14.1 sizes A and B, arch-a to arch-e the architectural ones. */
extern const SqSheet sq_sheets[];
extern const guint sq_n_sheets;

/* sq_sheet_find:
 * @id: any case
 * Returns: (nullable): with an error that lists what there is */
const SqSheet *sq_sheet_find (const char *id, GError **error);

/* The sheets that are tried in turn where none is asked for: A3 … A0; tabloid, arch-c to arch-e.
 * The smallest have no room for legend and figures beside the plan: they are there to be asked for.
 * Returns: (nullable): NULL after the last */
const SqSheet *sq_sheet_usual (SqUnits units, guint n);

/* Which way up a sheet lies. */
typedef enum {
  SQ_TURN_AS_FITS,
  SQ_TURN_LANDSCAPE,
  SQ_TURN_PORTRAIT,
} SqSheetTurn;

/* What a sheet is divided up for. */
typedef enum {
  SQ_SHEET_BESIDE,  /* a drawing with columns of words beside it, on sheets that have room */
  SQ_SHEET_DRAWING, /* a drawing alone */
  SQ_SHEET_TEXT,    /* words alone: no foot */
} SqSheetParts;

/* How the foot is arranged. */
typedef enum {
  SQ_FOOT_NONE,
  SQ_FOOT_WIDE,  /* beside the title block: scale bar, north, sun in a row */
  SQ_FOOT_SPLIT, /* the scale bar in a row of its own, north and sun beside the title block */
  SQ_FOOT_LOW,   /* all in one low row over the title */
} SqFootKind;

#define SQ_SHEET_MOST_COLUMNS 2
#define SQ_COLUMN_WIDTH_MM 84.0
#define SQ_COLUMN_PADDING_MM 4.0
#define SQ_FOOT_HEIGHT_MM 36.0
#define SQ_LOW_FOOT_HEIGHT_MM 11.0    /* words beside the scale bar */
#define SQ_NARROW_FOOT_HEIGHT_MM 18.0 /* or under it, where a sheet is narrow */
#define SQ_STRIP_HEIGHT_MM 10.0
#define SQ_TITLE_BLOCK_WIDTH_MM 180.0

/* A sheet divided up. A box without width is not there. */
typedef struct {
  double width_mm, height_mm; /* of the paper, as it lies */
  gboolean portrait;
  SqPaperBox frame; /* the border line */
  SqPaperBox field; /* for the drawing, or for words where they are alone */
  SqPaperBox columns[SQ_SHEET_MOST_COLUMNS];
  guint n_columns;
  SqFootKind foot_kind;
  SqPaperBox foot;        /* scale bar, with all that goes beside it */
  SqPaperBox bearings;    /* north and sun, where the foot is split */
  SqPaperBox title_block; /* at least 180 × 36 */
  gboolean is_strip;      /* or a strip across the sheet, on the smallest */
  gboolean references;    /* a strip of grid references round the frame (ISO 5457) */
} SqSheetLayout;

/* Margins: 20 mm left, 10 elsewhere (ISO 5457); 3/4 in and 3/8 in on imperial sheets. */
void sq_sheet_lay_out (const SqSheet *sheet,
                       gboolean portrait,
                       SqSheetParts parts,
                       SqSheetLayout *layout);

/* The field of a page of text as columns, as many as fit.
 * Returns: how many; @columns holds that many, at most @most */
guint sq_sheet_text_columns (const SqSheetLayout *layout, SqPaperBox *columns, guint most);

#define SQ_SHEET_MOST_FOLDS 8

/* sq_sheet_folds:
 * @across: folds along the width, counted from the left; else along the height, from the bottom
 * @at_mm: (out): where
 *
 * Where a sheet is folded so that it comes to A4 with its title on top and a margin to punch, after
 * DIN 824 form A (from memory); imperial sheets are halved until they come to a sheet of the
 * smallest size (common practice). None on the smallest sheets. Returns: how many */
guint sq_sheet_folds (const SqSheet *sheet,
                      gboolean portrait,
                      gboolean across,
                      double at_mm[SQ_SHEET_MOST_FOLDS]);

G_END_DECLS
