/* label-measure.h: how well the labels of a plan stand, counted */
#pragma once

#include "draw/plan.h"

G_BEGIN_DECLS

/* Less than this is nothing that an eye could see. */
#define SEEN_MM2 0.05
#define SEEN_MM 0.2

/* A leader longer than this is long. */
#define LONG_LEADER_MM 12.0

typedef struct {
  guint plans, labels, tags;
  guint pairs;             /* of labels that lie on each other */
  guint on_solid;          /* labels on a lamp, a person, a camera, grip or a face */
  guint outside;           /* labels that are not whole within the field */
  guint less;              /* tags that say less than they could */
  guint long_leaders;      /* of tags */
  guint leaders_on_labels; /* leaders across another label */
  guint leaders_cross;     /* pairs */
  guint on_plates;         /* labels on a plate or in a box */
  guint plates_crossed;    /* of those: with a line under them */
  guint bare;              /* labels with nothing behind them */
  guint bare_crossed;      /* of those: with a line through them */
} LabelFaults;

static inline const SqLabel *
label_at (const SqPlanReport *report, guint i)
{
  return &g_array_index (report->labels, SqLabel, i);
}

static inline gboolean
holds_point (SqPaperBox box, SqPaperPoint at)
{
  return sq_paper_box_within ((SqPaperBox){ at.x_mm, at.y_mm, 0, 0 }, box);
}

/* A line that ends at the label, as its leader does, does not go through it. */
static inline gboolean
is_crossed (const SqPlanReport *report, SqPaperBox box)
{
  SqPaperBox inner = sq_paper_box_grown (box, -SEEN_MM), own = sq_paper_box_grown (box, SEEN_MM);
  for (guint k = 0; k < report->lines->len; k++) {
    SqPaperLine line = g_array_index (report->lines, SqPaperLine, k);
    gboolean ends = holds_point (own, line.from) || holds_point (own, line.to);
    if (!ends && sq_paper_line_hits (line, inner))
      return TRUE;
  }
  return FALSE;
}

static inline gboolean
is_on_solid (const SqPlanReport *report, SqPaperBox box)
{
  for (guint k = 0; k < report->solid->len; k++)
    if (sq_paper_overlap_mm2 (box, g_array_index (report->solid, SqPaperBox, k)) > SEEN_MM2)
      return TRUE;
  return FALSE;
}

static inline void
count_leader (const SqPlanReport *report, guint i, LabelFaults *faults)
{
  const SqLabel *label = label_at (report, i);
  double length_mm = sq_paper_distance_mm (label->leader.from, label->leader.to);
  faults->long_leaders += label->kind == SQ_LABEL_TAG && length_mm > LONG_LEADER_MM;
  for (guint j = 0; j < report->labels->len; j++) {
    const SqLabel *other = label_at (report, j);
    if (j == i)
      continue;
    faults->leaders_on_labels += sq_paper_line_hits (label->leader, other->box);
    faults->leaders_cross += j > i && other->has_leader &&
                             sq_paper_lines_cross (label->leader.from, label->leader.to,
                                                   other->leader.from, other->leader.to);
  }
}

static inline void
count_crossed (const SqPlanReport *report, const SqLabel *label, LabelFaults *faults)
{
  gboolean plate =
    label->kind == SQ_LABEL_TAG || label->kind == SQ_LABEL_MARK || label->kind == SQ_LABEL_NOTE;
  gboolean crossed = is_crossed (report, label->box);
  faults->on_plates += plate;
  faults->plates_crossed += plate && crossed;
  faults->bare += !plate;
  faults->bare_crossed += !plate && crossed;
}

/* Adds what @report shows to @faults. */
static inline void
count_faults (const SqPlanReport *report, SqPaperBox field, LabelFaults *faults)
{
  faults->plans++;
  faults->labels += report->labels->len;
  faults->less += report->crowded->len;
  for (guint i = 0; i < report->labels->len; i++) {
    const SqLabel *label = label_at (report, i);
    faults->tags += label->kind == SQ_LABEL_TAG;
    /* A dimension's figure stands where its line is. */
    faults->on_solid += label->kind != SQ_LABEL_DIMENSION && is_on_solid (report, label->box);
    faults->outside += !sq_paper_box_within (label->box, field);
    count_crossed (report, label, faults);
    for (guint j = i + 1; j < report->labels->len; j++)
      faults->pairs += sq_paper_overlap_mm2 (label->box, label_at (report, j)->box) > SEEN_MM2;
    if (label->has_leader)
      count_leader (report, i, faults);
  }
}

static inline void
say_faults (const char *what, const LabelFaults *f)
{
  g_test_message (
    "%s: %u labels (%u tags): %u overlaps, %u on solids, %u outside; %u tags say less;"
    " leaders: %u long, %u on labels, %u cross; a line crosses %u of %u plates, %u of"
    " %u bare words",
    what, f->labels, f->tags, f->pairs, f->on_solid, f->outside, f->less, f->long_leaders,
    f->leaders_on_labels, f->leaders_cross, f->plates_crossed, f->on_plates, f->bare_crossed,
    f->bare);
}

G_END_DECLS
