/* plan-words.h: the words of a plan before they are placed, for plan-labels.c */
#pragma once

#include "draw/mark-label.h"
#include "draw/plan-parts.h"
#include "draw/tag.h"
#include "draw/text-label.h"

G_BEGIN_DECLS

/* A cable's words are left out where they would cost more than this: half a square millimetre of
 * another label; where the run is hardly longer than they are, already for a line or two crossed.
 */
#define SQ_SHORT_CABLE 2.0 /* times its words */
#define SQ_MOST_CABLE_COST 50.0
#define SQ_MOST_SHORT_CABLE_COST 10.0

/* How far from their things labels may go, in millimetres. */
#define SQ_MOST_TAG_MM 40.0
#define SQ_MOST_MARK_MM 10.0
#define SQ_MOST_TEXT_MM 40.0
#define SQ_MOST_NEAR_MM 6.0

/* On screen: under these scales tags lose their rows, then their pill. */
#define SQ_ROWS_LEAST_PX_PER_M 32.0
#define SQ_PILL_LEAST_PX_PER_M 16.0

/* One label: what it says, by its kind, and where it stands. */
typedef struct {
  SqLabelKind kind;
  const SqThing *thing;
  SqTagText *tag;
  SqMarkLabel *mark;
  SqTextLabel text;
  SqOpeningText opening;
  int first_detail; /* of a tag at this scale; its wish counts on from here */
  int number;       /* of a note */
  gboolean placed;  /* by place-tags.c, as @wish; else it stands where it must, in @box */
  gboolean inside;  /* of a piece: its words stand in it, not beside */
  double turn_rad;  /* of those words */
  SqWish wish;
  GArray *spots; /* (nullable): owned, those of @wish */
  SqPaperBox box;
} SqPlanWord;

void sq_plan_word_clear (gpointer word);

/* Gives it places of its own choice: an empty list, SqLabelSpot. (transfer none) */
GArray *sq_plan_word_spots (SqPlanWord *word);

/* One box about its point, however much it says. */
void sq_plan_word_set_box (SqPlanWord *word, SqPaperBox box);

/* The words of lights, people, cameras and grip, the most important first. */
void sq_plan_add_light_words (const SqPlanParts *parts, GArray *words);

/* Those of supplies, cables and probes, within @field. */
void sq_plan_add_power_words (const SqPlanParts *parts, SqPaperBox field, GArray *words);

/* The numbers of notes, within @field. */
void sq_plan_add_note_words (const SqPlanParts *parts, SqPaperBox field, GArray *words);

/* Those of power and set.
 * @obstacles: what stands still on the plan; words that stand still too are added */
void sq_plan_add_set_words (const SqPlanParts *parts, SqLabelObstacles *obstacles, GArray *words);

/* sq_plan_add_text:
 * @text: its lines are taken
 * @least: with so many lines it is at its shortest
 * @about: what it names, on paper; nothing is added where that is off the field
 *
 * Returns: (nullable): what was added, until the next word is */
SqPlanWord *sq_plan_add_text (const SqPlanParts *parts,
                              GArray *words,
                              SqLabelKind kind,
                              const SqThing *thing,
                              const SqCommon *common,
                              SqTextLabel *text,
                              int least,
                              SqTurnedBox about,
                              double most_mm);

/* How much tags say at this scale at most (SqTagDetail). */
int sq_first_tag_detail (const SqView *view);

G_END_DECLS
