/* label.h: every piece of text that was put on a plan, as a box */
#pragma once

#include "draw/view.h"
#include "scene/fixture.h"

G_BEGIN_DECLS

typedef enum {
  SQ_LABEL_TAG,    /* of a lamp: pill and rows */
  SQ_LABEL_MARK,   /* letter, and the reading beside it */
  SQ_LABEL_CAMERA, /* focal length, stop, height */
  SQ_LABEL_PANEL,  /* kind, size, material */
  SQ_LABEL_SUPPLY,
  SQ_LABEL_CABLE,
  SQ_LABEL_NOTE,  /* the numbered square */
  SQ_LABEL_PROBE, /* what was read there */
  SQ_LABEL_PIECE,
  SQ_LABEL_OPENING, /* sill and head */
  SQ_LABEL_WALL,    /* wild */
  SQ_LABEL_DIMENSION,
  SQ_LABELS,
} SqLabelKind;

/* How much of a tag is shown: where it is crowded less and less of it, the rest in a table. */
typedef enum {
  SQ_TAG_FULL,
  SQ_TAG_NO_COLOUR, /* row 2 says the level alone */
  SQ_TAG_TWO_ROWS,  /* type, height and role */
  SQ_TAG_NUMBER,    /* the pill alone */
  SQ_TAG_BARE,      /* the number without its pill: far out on screen */
  SQ_TAG_DETAILS,
} SqTagDetail;

typedef struct {
  SqLabelKind kind;
  const SqThing *thing; /* what it names; borrowed from the scene */
  SqPaperBox box;       /* upright box round all of it, leader left out */
  SqTagDetail detail;   /* of a tag */
  gboolean by_hand;     /* stands where `tag_at` put it */
  gboolean has_leader;
  SqPaperLine leader; /* from the label to its thing */
} SqLabel;

/* What people call a thing: its label, or else its id. */
static inline const char *
sq_label_or_id (const char *label, const char *id)
{
  return label != NULL && *label != '\0' ? label : id;
}

G_END_DECLS
