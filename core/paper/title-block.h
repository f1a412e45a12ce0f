/* title-block.h: who, what, when and which issue, in the corner of every sheet */
#pragma once

#include "draw/drawing.h"
#include "scene/scene.h"

G_BEGIN_DECLS

typedef struct {
  const SqScene *scene;
  const char *name;  /* (nullable): of the page, in place of the title */
  const char *part;  /* (nullable): `part 2 of 6`, after it */
  const char *scale; /* as printed; may be "" */
  const char *sheet; /* A3 */
  int page, n_pages; /* 1 of 2 */
} SqTitleBlock;

/* The block of 180 × 36 mm with the fields of ISO 7200 (legal owner, title, approval, creator, date
 * of issue, document number, revision, sheet) and those of the trade. */
void sq_draw_title_block (SqDrawing *drawing, SqPaperBox box, const SqTitleBlock *block);

/* The same in one line, for sheets without room and for pages of text. */
void sq_draw_title_strip (SqDrawing *drawing, SqPaperBox box, const SqTitleBlock *block);

/* The name of the look that is applied; "as drawn" for the base scene. */
const char *sq_look_name (const SqScene *scene);

G_END_DECLS
