/* flow.c: what does not fit a column goes to the next, what does not fit a sheet to the next page
 */
#include "paper/flow.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#define HEAD_MM 7.1 /* a section head with the rule under it, down to what follows */
#define RULE_UNDER_MM 1.9
#define PARAGRAPH_GAP_MM 1.25

void
sq_flow_init (SqFlow *flow,
              SqDrawing *drawing,
              const SqSheetLayout *first,
              const SqSheetLayout *next,
              int number)
{
  *flow = (SqFlow){ .drawing = drawing, .page = -1, .squeeze = 1.0, .number = number };
  for (guint k = 0; k < first->n_columns; k++)
    flow->first[flow->n_first++] = first->columns[k];
  flow->n_next = sq_sheet_text_columns (next, flow->next, SQ_FLOW_MOST_COLUMNS);
}

int
sq_flow_page (const SqFlow *flow)
{
  return flow->column < flow->n_first ? 0
                                      : 1 + (int)((flow->column - flow->n_first) / flow->n_next);
}

gboolean
sq_flow_ends_page (const SqFlow *flow)
{
  return flow->column < flow->n_first ? flow->column + 1 == flow->n_first
                                      : (flow->column - flow->n_first + 1) % flow->n_next == 0;
}

/* The whole of the column. */
static SqPaperBox
outside (const SqFlow *flow)
{
  return flow->column < flow->n_first ? flow->first[flow->column]
                                      : flow->next[(flow->column - flow->n_first) % flow->n_next];
}

static SqPaperBox
inside (const SqFlow *flow)
{
  SqPaperBox box = sq_paper_box_grown (outside (flow), -SQ_COLUMN_PADDING_MM);
  if (flow->column + 1 == flow->n_first)
    box.height_mm -= flow->kept_mm;
  return box;
}

double
sq_flow_width_mm (const SqFlow *flow)
{
  return inside (flow).width_mm;
}

double
sq_flow_left_mm (const SqFlow *flow)
{
  return inside (flow).height_mm - flow->y_mm;
}

static SqPaperPoint
here (const SqFlow *flow)
{
  SqPaperBox box = inside (flow);
  return (SqPaperPoint){ box.x_mm, box.y_mm + flow->y_mm };
}

static gboolean
is_drawn (const SqFlow *flow)
{
  return flow->page >= 0 && sq_flow_page (flow) == flow->page;
}

SqType
sq_flow_type (const SqFlow *flow, int weight, SqInk ink, SqAlign align)
{
  return (SqType){ .cap_mm = SQ_TYPE_SMALL,
                   .weight = weight,
                   .align = align,
                   .colour = sq_ink (flow->drawing->view, ink) };
}

static double
head_mm (const SqFlow *flow)
{
  const double share_below = 0.5; /* of it, the part that may shrink */
  return HEAD_MM * (1.0 - share_below * (1.0 - flow->squeeze));
}

static void
draw_head (SqFlow *flow, const char *title)
{
  if (is_drawn (flow)) {
    SqPaperPoint at = here (flow);
    at.y_mm += SQ_TYPE_HEAD;
    double width_mm = sq_flow_width_mm (flow);
    SqColour ink = sq_ink (flow->drawing->view, SQ_INK);
    SqType type = {
      .cap_mm = SQ_TYPE_HEAD, .weight = 700, .colour = ink, .width_mm = width_mm, .one_line = TRUE
    };
    sq_draw_text (flow->drawing, at, title, &type);
    at.y_mm += RULE_UNDER_MM;
    sq_draw_line (flow->drawing, at, (SqPaperPoint){ at.x_mm + width_mm, at.y_mm }, SQ_PEN_35, ink);
  }
  flow->y_mm += head_mm (flow);
}

/* In the padding under the column's last line. */
static void
say_continued (const SqFlow *flow)
{
  const double up_mm = 1.4;
  SqPaperBox box = outside (flow);
  SqType type = sq_flow_type (flow, 400, SQ_MID, SQ_ALIGN_RIGHT);
  /* Translators: at the foot of a sheet; the number is the next sheet's */
  g_autofree char *words =
    g_strdup_printf (_ ("continued on sheet %d"), flow->number + sq_flow_page (flow) + 1);
  sq_draw_text (flow->drawing,
                (SqPaperPoint){ box.x_mm + box.width_mm - SQ_COLUMN_PADDING_MM,
                                box.y_mm + box.height_mm - up_mm },
                words, &type);
}

void
sq_flow_next_column (SqFlow *flow)
{
  if (sq_flow_ends_page (flow) && is_drawn (flow))
    say_continued (flow);
  flow->column++;
  flow->y_mm = 0.0;
}

/* Goes on in the next column, under its head, where this one has too little left. */
static void
run_on (SqFlow *flow, double height_mm)
{
  if (sq_flow_left_mm (flow) >= height_mm || flow->y_mm <= 0.0)
    return;
  sq_flow_next_column (flow);
  if (flow->title != NULL) {
    /* Translators: head of a column that a block runs on into: "Notes, continued" */
    g_autofree char *again = g_strdup_printf (_ ("%s, continued"), flow->title);
    draw_head (flow, again);
  }
}

gboolean
sq_flow_take (SqFlow *flow, double height_mm, SqPaperPoint *at)
{
  run_on (flow, height_mm);
  *at = here (flow);
  flow->y_mm += height_mm;
  return is_drawn (flow);
}

void
sq_flow_head (SqFlow *flow, const char *title, double keep_mm)
{
  flow->title = NULL;
  if (flow->y_mm > 0.0)
    flow->y_mm += SQ_FLOW_BETWEEN_MM * flow->squeeze * flow->squeeze;
  if (flow->y_mm > 0.0 && sq_flow_left_mm (flow) < head_mm (flow) + keep_mm)
    sq_flow_next_column (flow);
  draw_head (flow, title);
  flow->title = title;
}

char *
sq_flow_cut (const char *text)
{
  if (g_utf8_strlen (text, -1) <= SQ_FLOW_MOST_LETTERS)
    return g_strdup (text);
  g_autofree char *start = g_utf8_substring (text, 0, SQ_FLOW_MOST_LETTERS);
  return g_strconcat (start, "…", NULL);
}

static SqType
paragraph_type (const SqFlow *flow, double indent_mm, SqInk ink)
{
  SqType type = sq_flow_type (flow, 400, ink, SQ_ALIGN_LEFT);
  type.width_mm = sq_flow_width_mm (flow) - indent_mm;
  return type;
}

static double
paragraph_mm (const SqFlow *flow, const char *text, const SqType *type)
{
  const double descent = 0.3; /* of the cap height, in sq_text_box() */
  SqPaperBox box = sq_text_box (flow->drawing, text, type);
  return box.height_mm - descent * type->cap_mm + PARAGRAPH_GAP_MM;
}

double
sq_flow_text_height_mm (const SqFlow *flow, const char *text, double indent_mm)
{
  SqType type = paragraph_type (flow, indent_mm, SQ_INK);
  g_autofree char *cut = sq_flow_cut (text);
  return paragraph_mm (flow, cut, &type);
}

/* The next column may be wider or narrower: there the paragraph is measured anew. */
void
sq_flow_text (SqFlow *flow, const char *text, double indent_mm, SqInk ink)
{
  g_autofree char *cut = sq_flow_cut (text);
  SqPaperPoint at;
  run_on (flow, sq_flow_text_height_mm (flow, text, indent_mm));
  SqType type = paragraph_type (flow, indent_mm, ink);
  if (sq_flow_take (flow, paragraph_mm (flow, cut, &type), &at))
    sq_draw_text (flow->drawing, (SqPaperPoint){ at.x_mm + indent_mm, at.y_mm + type.cap_mm }, cut,
                  &type);
}

gboolean
sq_flow_beside (SqFlow *flow, const char *text, double indent_mm, double least_mm, SqPaperPoint *at)
{
  g_autofree char *cut = sq_flow_cut (text);
  run_on (flow, MAX (sq_flow_text_height_mm (flow, text, indent_mm), least_mm));
  double height_mm = MAX (sq_flow_text_height_mm (flow, text, indent_mm), least_mm);
  if (!sq_flow_take (flow, height_mm, at))
    return FALSE;
  SqType type = sq_flow_type (flow, 400, SQ_INK, SQ_ALIGN_LEFT);
  type.width_mm = sq_flow_width_mm (flow) - indent_mm;
  sq_draw_text (flow->drawing, (SqPaperPoint){ at->x_mm + indent_mm, at->y_mm + type.cap_mm }, cut,
                &type);
  return TRUE;
}

void
sq_flow_gap (SqFlow *flow, double height_mm)
{
  if (flow->y_mm > 0.0)
    flow->y_mm += height_mm;
}
