/* common.h: what every thing on the plan carries besides its own fields */
#pragma once

#include "scene/thing.h"

G_BEGIN_DECLS

typedef struct {
  char *layer, *group;
  gboolean locked, hidden; /* hidden: not drawn; it still lights, blocks and draws current */
  char *note;
  SqPlace tag_at; /* where its tag was put by hand; SQ_NO_PLACE: the program chooses */
} SqCommon;

/* The rows of these fields, for a struct with a member `common`; AT must be defined. */
#define SQ_COMMON_ROWS                                                                             \
  { "layer", N_ ("Layer"), &sq_value_text, AT (common.layer),                                      \
    .help = N_ ("The layer it is drawn, shown and locked with.") },                                \
    { "group", N_ ("Group"), &sq_value_text, AT (common.group),                                    \
      .help = N_ ("Things of one group are chosen and moved together.") },                         \
    { "locked", N_ ("Locked"), &sq_value_flag, AT (common.locked),                                 \
      .help = N_ ("Cannot be moved by hand.") },                                                   \
    { "hidden", N_ ("Hidden"), &sq_value_flag, AT (common.hidden),                                 \
      .help = N_ ("Not drawn; it still lights, blocks and draws current.") },                      \
    { "note", N_ ("Note"), &sq_value_text, AT (common.note),                                       \
      .help = N_ ("A remark for whoever reads the plan.") },                                       \
  {                                                                                                \
    "tag_at", N_ ("Tag at"), &sq_value_place, AT (common.tag_at),                                  \
      .dimension = SQ_LENGTH, .min = -SQ_FAR_M, .max = SQ_FAR_M, .flags = SQ_MAY_BE_NULL,          \
      .help = N_ ("Where its tag was put by hand; null: the program chooses.")                     \
  }

/* No set reaches further than this from the page's origin. */
#define SQ_FAR_M 10000.0

/* Shorthands for rows. */
#define SQ_COORDINATES .dimension = SQ_LENGTH, .min = -SQ_FAR_M, .max = SQ_FAR_M
#define SQ_RANGE(low, high) .min = (low), .max = (high)
#define SQ_USUAL(low, high) .usual_min = (low), .usual_max = (high)

G_END_DECLS
