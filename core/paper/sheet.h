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

#define SQ_SHEET_MOST_COLUMNS 2
#define SQ_COLUMN_WIDTH_MM 84.0
#define SQ_COLUMN_PADDING_MM 4.0
#define SQ_FOOT_HEIGHT_MM 36.0
#define SQ_LOW_FOOT_HEIGHT_MM 11.0
#define SQ_STRIP_HEIGHT_MM 10.0
#define SQ_TITLE_BLOCK_WIDTH_MM 180.0

/* A sheet divided up. A box without width is not there. */
typedef struct {
  SqPaperBox frame; /* the border line */
  SqPaperBox field; /* for the plan */
  SqPaperBox columns[SQ_SHEET_MOST_COLUMNS];
  SqPaperBox foot;        /* scale bar, north, sun; without side columns a low band */
  SqPaperBox title_block; /* or, on the smallest sheets, a strip */
  gboolean references;    /* a strip of grid references round the frame (ISO 5457) */
} SqSheetLayout;

/* Margins: 20 mm left, 10 elsewhere (ISO 5457); 3/4 in and 3/8 in on imperial sheets. */
void sq_sheet_lay_out (const SqSheet *sheet, SqSheetLayout *layout);

/* The same sheet as a page of text: as many columns as fit, the foot's title kept.
 * Returns: how many; @columns holds that many, at most @most */
guint sq_sheet_text_columns (const SqSheet *sheet, SqPaperBox *columns, guint most);

G_END_DECLS
