/* label-obstacles.h: what labels keep clear of, and how dearly */
#pragma once

#include "draw/view.h"

G_BEGIN_DECLS

/* What to keep clear of, and how dearly (per mm² covered, per line crossed). */
#define SQ_COST_LABEL 100.0 /* another label, a letter, a face */
#define SQ_COST_BODY 60.0   /* lamps, cameras, people */
#define SQ_COST_PANEL 30.0
#define SQ_COST_WALL 4.0
#define SQ_COST_AXIS 6.0          /* axes of lamps, edges of a camera's field */
#define SQ_COST_EDGE 3.0          /* other lines */
#define SQ_COST_PIECE 2.0         /* the outline of a piece */
#define SQ_COST_LEADER_OVER 300.0 /* a leader across a label or a face */
#define SQ_COST_LEADER_BODY 40.0  /* across a body */
#define SQ_COST_LEADER_WALL 14.0
#define SQ_COST_LEADER_LINE 1.0
#define SQ_GAIN_OUTSIDE 3.0 /* standing outside the room */

typedef struct {
  SqPaperBox box;
  double cost;
  const void *of; /* (nullable): what it belongs to: a leader may cross its own thing */
} SqObstacle;

typedef struct {
  SqPaperLine line;
  double cost;
} SqObstacleLine;

/* TRUE where a label would stand outside the room. */
typedef gboolean (*SqIsOutside) (SqPaperPoint at, gconstpointer data);

typedef struct {
  GArray *boxes; /* SqObstacle */
  GArray *lines; /* SqObstacleLine */
  SqPaperBox field;
  SqIsOutside is_outside; /* (nullable) */
  gconstpointer outside_data;
} SqLabelObstacles;

SqLabelObstacles *sq_label_obstacles_new (SqPaperBox field);
void sq_label_obstacles_free (SqLabelObstacles *obstacles);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqLabelObstacles, sq_label_obstacles_free)

void sq_label_obstacles_add_box (SqLabelObstacles *obstacles,
                                 SqPaperBox box,
                                 double cost,
                                 const void *of);
/* A turned box is taken as a row of upright ones. */
void sq_label_obstacles_add_turned (SqLabelObstacles *obstacles,
                                    SqTurnedBox box,
                                    double cost,
                                    const void *of);
void sq_label_obstacles_add_line (SqLabelObstacles *obstacles, SqPaperLine line, double cost);

G_END_DECLS
