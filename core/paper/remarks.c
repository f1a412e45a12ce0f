/* remarks.c: notes by number, revisions, and lines for the pencil */
#include "paper/side-column.h"

#include "draw/point-symbols.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

#define INDENT_MM 6.4
#define NOTES_APART_MM 0.9
/* A page is no archive: past these the rest is counted. */
#define MOST_NOTES 1000
#define MOST_REVISIONS 200
#define PENCIL_ROW_MM 7.0

/* Of a mark @side_mm wide, on the axis of the first line beside it. */
static SqPaperPoint
beside_middle (SqPaperPoint at, double side_mm)
{
  return (SqPaperPoint){ at.x_mm + side_mm / 2.0, at.y_mm + SQ_TYPE_SMALL / 2.0 };
}

void
sq_notes_block (SqFlow *flow, const SqSideColumn *column)
{
  const GPtrArray *notes = column->report->notes;
  if (notes->len == 0)
    return;
  guint n = MIN (notes->len, MOST_NOTES);
  double widest_mm = sq_note_mark_width_mm (flow->drawing, (int)n);
  double indent_mm = INDENT_MM + widest_mm - SQ_NOTE_SIDE_MM;
  const char *first = sq_said (SQ_AT (SqNote, notes, 0)->text);
  sq_flow_head (flow, _ ("Notes"),
                sq_flow_text_height_mm (flow, first, indent_mm) + NOTES_APART_MM);
  for (guint k = 0; k < n; k++) {
    const char *text = sq_said (SQ_AT (SqNote, notes, k)->text);
    SqPaperPoint at;
    sq_flow_gap (flow, NOTES_APART_MM * flow->squeeze);
    if (sq_flow_beside (flow, text, indent_mm, SQ_NOTE_SIDE_MM + 0.6, &at))
      sq_draw_note_mark (flow->drawing, beside_middle (at, widest_mm), (int)k + 1);
  }
  if (notes->len > n) {
    g_autofree char *more = g_strdup_printf (_ ("and %u more in the scene file"), notes->len - n);
    sq_flow_text (flow, more, indent_mm, SQ_MID);
  }
}

/* Where the columns of the revisions begin. */
typedef struct {
  double date_mm, what_mm;
} RevisionColumns;

/* As wide as what stands in them, within reason. */
static RevisionColumns
revision_columns (const SqFlow *flow, const GPtrArray *revisions, guint from)
{
  const double least_number_mm = 4.0, most_number_mm = 14.0, most_date_mm = 24.0, gap_mm = 3.0;
  SqType number = sq_flow_type (flow, 700, SQ_INK, SQ_ALIGN_LEFT);
  SqType date = sq_flow_type (flow, 400, SQ_MID, SQ_ALIGN_LEFT);
  double number_mm = least_number_mm, wide_mm = 0.0;
  for (guint k = from; k < revisions->len; k++) {
    const SqRevision *revision = SQ_AT (SqRevision, revisions, k);
    number_mm =
      MAX (number_mm, sq_text_width_mm (flow->drawing, sq_said (revision->number), &number));
    wide_mm = MAX (wide_mm, sq_text_width_mm (flow->drawing, sq_said (revision->date), &date));
  }
  double date_mm = MIN (number_mm, most_number_mm) + gap_mm;
  return (RevisionColumns){ date_mm, date_mm + MIN (wide_mm, most_date_mm) + gap_mm };
}

static void
draw_revision (SqFlow *flow,
               const SqRevision *revision,
               SqPaperPoint at,
               const RevisionColumns *columns)
{
  const double apart_mm = 1.0;
  const struct {
    const char *text;
    double x_mm, width_mm;
    int weight;
    SqInk ink;
    gboolean one_line;
  } cells[] = {
    { sq_said (revision->number), 0.0, columns->date_mm - apart_mm, 700, SQ_INK, TRUE },
    { sq_said (revision->date), columns->date_mm, columns->what_mm - columns->date_mm - apart_mm,
      400, SQ_MID, TRUE },
    { sq_said (revision->what), columns->what_mm, sq_flow_width_mm (flow) - columns->what_mm, 400,
      SQ_INK, FALSE },
  };
  for (guint k = 0; k < G_N_ELEMENTS (cells); k++) {
    g_autofree char *text = sq_flow_cut (cells[k].text);
    SqType type = sq_flow_type (flow, cells[k].weight, cells[k].ink, SQ_ALIGN_LEFT);
    type.width_mm = cells[k].width_mm;
    type.one_line = cells[k].one_line;
    sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm + cells[k].x_mm, at.y_mm + type.cap_mm },
                  text, &type);
  }
}

void
sq_revisions_block (SqFlow *flow, const SqSideColumn *column)
{
  const double least_row_mm = 3.1;
  const GPtrArray *revisions = column->scene->title->revisions;
  if (revisions->len == 0)
    return;
  guint from = revisions->len > MOST_REVISIONS ? revisions->len - MOST_REVISIONS : 0;
  RevisionColumns columns = revision_columns (flow, revisions, from);
  const char *newest = sq_said (SQ_AT (SqRevision, revisions, revisions->len - 1)->what);
  sq_flow_head (flow, _ ("Revisions"), sq_flow_text_height_mm (flow, newest, columns.what_mm));
  for (guint k = revisions->len; k-- > from;) {
    const SqRevision *revision = SQ_AT (SqRevision, revisions, k);
    double height_mm = sq_flow_text_height_mm (flow, sq_said (revision->what), columns.what_mm);
    SqPaperPoint at;
    if (sq_flow_take (flow, MAX (height_mm, least_row_mm), &at))
      draw_revision (flow, revision, at, &columns);
  }
  if (from > 0) {
    g_autofree char *more = g_strdup_printf (_ ("and %u older in the scene file"), from);
    sq_flow_text (flow, more, columns.what_mm, SQ_MID);
  }
}

static void
pencil_lines (SqFlow *flow)
{
  const double line_up_mm = 3.0;
  /* On a page of words lines of neighbouring columns stand on one height. */
  if (sq_flow_page (flow) > 0)
    sq_flow_gap (flow, PENCIL_ROW_MM * ceil (flow->y_mm / PENCIL_ROW_MM) - flow->y_mm);
  while (sq_flow_left_mm (flow) >= PENCIL_ROW_MM) {
    SqPaperPoint at;
    if (!sq_flow_take (flow, PENCIL_ROW_MM, &at))
      continue;
    at.y_mm += PENCIL_ROW_MM - line_up_mm;
    sq_draw_line (flow->drawing, at, (SqPaperPoint){ at.x_mm + sq_flow_width_mm (flow), at.y_mm },
                  SQ_PEN_13, sq_ink (flow->drawing->view, SQ_HAIR));
  }
}

void
sq_on_the_day_block (SqFlow *flow)
{
  const double least_mm = PENCIL_ROW_MM, head_mm = 12.0;
  gboolean begun = sq_flow_left_mm (flow) >= head_mm + least_mm;
  if (begun) {
    sq_flow_head (flow, _ ("On the day"), least_mm);
    flow->title = NULL;
    pencil_lines (flow);
  }
  /* A page of words is the pencil's to its end; beside a plan the column is enough. */
  while (sq_flow_page (flow) > 0 && !sq_flow_ends_page (flow)) {
    sq_flow_next_column (flow);
    if (!begun)
      sq_flow_head (flow, _ ("On the day"), least_mm);
    begun = TRUE;
    flow->title = NULL;
    pencil_lines (flow);
  }
}
