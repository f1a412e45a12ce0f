/* place-tags.h: where tags and labels stand, so that none lies on another
 *
 * Each label tries 16 directions from what it names, at several distances, to both sides; the
 * cheapest place wins, in order; then the worst ones are tried again with all others standing, and
 * once more with those in the way asked to step aside. What still lies on something says less, and
 * what need not be said goes. No chance is in it: the same plan is labelled the same way. */
#pragma once

#include "draw/label-obstacles.h"
#include "draw/label.h"

G_BEGIN_DECLS

enum { SQ_ROWS_RIGHT, SQ_ROWS_LEFT, SQ_ROWS_SIDES };

/* A place of a label's own choice: of its point. */
typedef struct {
  SqPaperPoint at;
  double cost;
} SqLabelSpot;

/* One label: what it is like, and, once placed, where it stands. */
typedef struct {
  const void *of;                 /* identity of what it names */
  SqTurnedBox about;              /* its body on paper */
  SqPaperBox head[SQ_ROWS_SIDES]; /* pill, letter or all of the text, relative to its point */
  SqPaperBox rows[SQ_TAG_DETAILS][SQ_ROWS_SIDES]; /* beside the head; no width: none */
  SqPaperBox lesser_head[SQ_TAG_DETAILS];         /* where a label without rows shrinks by itself */
  int n_details;                                  /* how often it may say less; 1: never */
  double most_mm;                                 /* no farther from the body's edge than this */
  gboolean bare;       /* no plate behind it: lines through it are hard to read over */
  gboolean may_lead;   /* a leader ties it to its thing where it stands off */
  gboolean pinned;     /* stands at @at, whatever it lies on */
  double most_cost;    /* left out where its place would cost more; 0: it always stands */
  gboolean may_go;     /* left out where it would lie on something */
  const GArray *spots; /* (nullable) SqLabelSpot: it stands at one of these, and tries no others */

  gboolean left_out;
  SqPaperPoint at;
  int side;
  SqTagDetail detail;
  gboolean has_leader;
  SqPaperLine leader;
} SqWish;

/* Places @wishes, the most important first. */
void sq_place_tags (SqWish *wishes, guint n, const SqLabelObstacles *obstacles);

/* Where a placed label lies. */
SqPaperBox sq_wish_box (const SqWish *wish);

G_END_DECLS
