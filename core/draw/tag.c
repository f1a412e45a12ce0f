/* tag.c: a lamp's tag, measured and drawn */
#include "draw/tag.h"

#define PILL_HEIGHT_MM 5.6
#define PILL_LEAST_MM 7.4
#define ROWS_GAP_MM 1.3
#define ROLE_GAP_MM 1.1
#define WEDGE_GAP_MM 0.7
#define ROLE_INSET_MM 0.6
#define LEADING 1.64        /* of the rows' cap height */
#define PLATE_MM 0.5        /* round the rows */
#define WORD_GAP_MM 1.6     /* between height and role */
#define NUMBER_MOST_MM 20.0 /* longer numbers and names end in an ellipsis */
#define TYPE_MOST_MM 36.0
#define NUMBER_INSET_MM 1.7 /* from the pill's end */

enum { ROW_TYPE, ROW_LEVEL, ROW_MOUNT, ROW_CHANNEL, ROW_CIRCUIT, MOST_ROWS };

/* The rows of a tag at some detail. */
typedef struct {
  int row[MOST_ROWS];
  int n;
  double width_mm;
  char *level; /* owned */
} Rows;

static SqType
row_type (SqDrawing *drawing, int weight)
{
  return (SqType){ .cap_mm = sq_view_small_mm (drawing->view),
                   .weight = weight,
                   .colour = sq_ink (drawing->view, SQ_INK) };
}

static SqType
type_name_type (SqDrawing *drawing)
{
  SqType type = row_type (drawing, 600);
  type.width_mm = TYPE_MOST_MM * type.cap_mm / SQ_TYPE_SMALL;
  type.one_line = TRUE;
  return type;
}

static SqType
role_word_type (SqDrawing *drawing)
{
  SqType type = row_type (drawing, 700);
  type.tracking_em = 0.08;
  return type;
}

static SqType
number_type (SqDrawing *drawing, gboolean on)
{
  return (SqType){ .cap_mm = SQ_TYPE_UNIT,
                   .weight = on ? 700 : 500,
                   .align = SQ_ALIGN_CENTRE,
                   .colour = sq_ink (drawing->view, SQ_INK),
                   .width_mm = NUMBER_MOST_MM,
                   .one_line = TRUE };
}

static double
mount_row_width_mm (SqDrawing *drawing, const SqTagText *text)
{
  SqType plain = row_type (drawing, 500), word = role_word_type (drawing);
  return sq_mount_glyph_width_mm (0.95 * plain.cap_mm) +
         sq_text_width_mm (drawing, text->height, &plain) + WORD_GAP_MM +
         sq_text_width_mm (drawing, text->role_word, &word);
}

static double
row_width_mm (SqDrawing *drawing, const SqTagText *text, const Rows *rows, int row)
{
  SqType plain = row_type (drawing, 400), name = type_name_type (drawing);
  switch (row) {
  case ROW_TYPE:
    return sq_text_width_mm (drawing, text->type, &name);
  case ROW_LEVEL:
    return sq_text_width_mm (drawing, rows->level, &plain);
  case ROW_MOUNT:
    return mount_row_width_mm (drawing, text);
  default:
    return sq_text_width_mm (drawing, row == ROW_CHANNEL ? text->channel : text->circuit, &plain);
  }
}

static Rows
rows_of (SqDrawing *drawing, const SqTagText *text, SqTagDetail detail)
{
  Rows rows = { .level = sq_tag_level_row (text, detail) };
  if (detail >= SQ_TAG_NUMBER)
    return rows;
  rows.row[rows.n++] = ROW_TYPE;
  if (detail != SQ_TAG_TWO_ROWS)
    rows.row[rows.n++] = ROW_LEVEL;
  rows.row[rows.n++] = ROW_MOUNT;
  if (text->channel != NULL && detail != SQ_TAG_TWO_ROWS)
    rows.row[rows.n++] = ROW_CHANNEL;
  if (text->circuit != NULL && detail != SQ_TAG_TWO_ROWS)
    rows.row[rows.n++] = ROW_CIRCUIT;
  for (int i = 0; i < rows.n; i++)
    rows.width_mm = MAX (rows.width_mm, row_width_mm (drawing, text, &rows, rows.row[i]));
  return rows;
}

static double
pill_half_mm (SqDrawing *drawing, const SqTagText *text)
{
  SqType type = number_type (drawing, text->on);
  return MAX (PILL_LEAST_MM,
              sq_text_width_mm (drawing, text->number, &type) + 2 * NUMBER_INSET_MM) /
         2;
}

/* The middle row on the pill's axis: 3 of 3; of more, the second one still. */
static double
first_baseline_mm (const Rows *rows, double cap_mm)
{
  double above = rows->n == 2 ? 0.5 : 1.0;
  return -above * LEADING * cap_mm + cap_mm / 2;
}

static SqPaperBox
plate (SqDrawing *drawing, const Rows *rows, double pill_half, gboolean left)
{
  double cap = sq_view_small_mm (drawing->view);
  double top = first_baseline_mm (rows, cap) - cap;
  double bottom = first_baseline_mm (rows, cap) + (rows->n - 1) * LEADING * cap + 0.3 * cap;
  double near = pill_half + ROWS_GAP_MM;
  return sq_paper_box_grown (
    (SqPaperBox){ left ? -near - rows->width_mm : near, top, rows->width_mm, bottom - top },
    PLATE_MM);
}

void
sq_tag_shape (SqDrawing *drawing,
              const SqTagText *text,
              SqTagDetail detail,
              gboolean left,
              SqPaperBox *pill,
              SqPaperBox *rows_box)
{
  double half = pill_half_mm (drawing, text);
  Rows rows = rows_of (drawing, text, detail);

  *pill = (SqPaperBox){ -half, -PILL_HEIGHT_MM / 2, 2 * half, PILL_HEIGHT_MM + ROLE_GAP_MM + 0.8 };
  if (detail == SQ_TAG_BARE) {
    half -= NUMBER_INSET_MM;
    *pill = sq_paper_box_round ((SqPaperPoint){ 0, 0 }, half, PILL_HEIGHT_MM / 4);
  }
  if (text->changed) { /* the wedge on the side away from the rows */
    pill->width_mm += WEDGE_GAP_MM + SQ_WEDGE_MM;
    pill->x_mm -= left ? 0.0 : WEDGE_GAP_MM + SQ_WEDGE_MM;
  }
  *rows_box = rows.n > 0 ? plate (drawing, &rows, half, left) : (SqPaperBox){ 0 };
  g_free (rows.level);
}

void
sq_draw_pill (SqDrawing *drawing, SqPaperBox pill, gboolean on)
{
  static const double off_dash[] = { 1.2, 0.8 };
  sq_draw_box_path (drawing, pill, pill.height_mm / 2);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 1.0);
  sq_draw_box_path (drawing, pill, pill.height_mm / 2);
  sq_draw_stroke_dashed (drawing, on ? SQ_PEN_50 : SQ_PEN_25, sq_ink (drawing->view, SQ_INK),
                         off_dash, on ? 0 : (int)G_N_ELEMENTS (off_dash));
}

static void
draw_number (SqDrawing *drawing, const SqTagText *text, double half)
{
  const SqRoleLine *role = &sq_role_lines[text->role_line];
  SqPaperBox pill = { -half, -PILL_HEIGHT_MM / 2, 2 * half, PILL_HEIGHT_MM };
  SqType number = number_type (drawing, text->on);
  double dash[G_N_ELEMENTS (role->dash_mm)];

  for (int i = 0; i < role->n_dashes; i++)
    dash[i] = 0.6 * role->dash_mm[i];
  /* On a strip of the ground, so that pale hues hold over an overlay. */
  SqPaperBox strip = { -half + ROLE_INSET_MM - 0.4, PILL_HEIGHT_MM / 2 + ROLE_GAP_MM - 0.8,
                       2 * (half - ROLE_INSET_MM + 0.4), 1.6 };
  sq_draw_box_path (drawing, strip, 0.4);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 0.86);
  cairo_move_to (drawing->cairo, -half + ROLE_INSET_MM, PILL_HEIGHT_MM / 2 + ROLE_GAP_MM);
  cairo_line_to (drawing->cairo, half - ROLE_INSET_MM, PILL_HEIGHT_MM / 2 + ROLE_GAP_MM);
  sq_draw_stroke_dashed (drawing, SQ_PEN_90, sq_role_colour (drawing->view, text->role_line), dash,
                         role->n_dashes);

  sq_draw_pill (drawing, pill, text->on);
  sq_draw_text (drawing, (SqPaperPoint){ 0, SQ_TYPE_UNIT / 2 }, text->number, &number);
}

static void
draw_bare_number (SqDrawing *drawing, const SqTagText *text)
{
  SqType number = number_type (drawing, text->on);
  number.cap_mm = sq_view_small_mm (drawing->view);
  number.halo = TRUE;
  sq_draw_text (drawing, (SqPaperPoint){ 0, number.cap_mm / 2 }, text->number, &number);
}

void
sq_draw_wedge (SqDrawing *drawing, SqPaperPoint tip, gboolean to_left)
{
  const double half_mm = 0.9;
  double back_mm = tip.x_mm + (to_left ? SQ_WEDGE_MM : -SQ_WEDGE_MM);
  const SqPaperPoint wedge[] = { { back_mm, tip.y_mm - half_mm },
                                 tip,
                                 { back_mm, tip.y_mm + half_mm } };
  sq_draw_polyline (drawing, wedge, G_N_ELEMENTS (wedge), TRUE);
  sq_draw_fill (drawing, sq_ink (drawing->view, SQ_INK), 1.0);
}

/* Mount glyph, height, role: drawn from its left end, wherever the rows stand. */
static void
draw_mount_row (SqDrawing *drawing, const SqTagText *text, SqPaperPoint at, gboolean left)
{
  SqType plain = row_type (drawing, 500), word = role_word_type (drawing);
  if (left)
    at.x_mm -= mount_row_width_mm (drawing, text);
  at.x_mm += sq_draw_mount_glyph (drawing, at, 0.95 * plain.cap_mm, text->mount);
  sq_draw_text (drawing, at, text->height, &plain);
  at.x_mm += sq_text_width_mm (drawing, text->height, &plain) + WORD_GAP_MM;
  sq_draw_text (drawing, at, text->role_word, &word);
}

static void
draw_row (SqDrawing *drawing,
          const SqTagText *text,
          const Rows *rows,
          int row,
          SqPaperPoint at,
          gboolean left)
{
  SqType type = row == ROW_TYPE ? type_name_type (drawing) : row_type (drawing, 400);
  type.align = left ? SQ_ALIGN_RIGHT : SQ_ALIGN_LEFT;
  switch (row) {
  case ROW_TYPE:
    sq_draw_text (drawing, at, text->type, &type);
    break;
  case ROW_LEVEL:
    sq_draw_text (drawing, at, rows->level, &type);
    break;
  case ROW_MOUNT:
    draw_mount_row (drawing, text, at, left);
    break;
  default:
    sq_draw_text (drawing, at, row == ROW_CHANNEL ? text->channel : text->circuit, &type);
    break;
  }
}

void
sq_draw_tag (
  SqDrawing *drawing, SqPaperPoint at, const SqTagText *text, SqTagDetail detail, gboolean left)
{
  double half = pill_half_mm (drawing, text) - (detail == SQ_TAG_BARE ? NUMBER_INSET_MM : 0.0);
  double cap = sq_view_small_mm (drawing->view);
  Rows rows = rows_of (drawing, text, detail);

  sq_draw_enter (drawing, at, 0.0);
  if (rows.n > 0) {
    sq_draw_box_path (drawing, plate (drawing, &rows, half, left), 0.6);
    sq_draw_fill (drawing, sq_ink (drawing->view, SQ_PAPER), 0.86);
  }
  if (detail == SQ_TAG_BARE)
    draw_bare_number (drawing, text);
  else
    draw_number (drawing, text, half);
  if (text->changed) {
    double beside_mm = half + WEDGE_GAP_MM;
    sq_draw_wedge (drawing, (SqPaperPoint){ left ? beside_mm : -beside_mm, 0 }, left);
  }
  for (int i = 0; i < rows.n; i++) {
    SqPaperPoint row = { (left ? -1.0 : 1.0) * (half + ROWS_GAP_MM),
                         first_baseline_mm (&rows, cap) + i * LEADING * cap };
    draw_row (drawing, text, &rows, rows.row[i], row, left);
  }
  sq_draw_leave (drawing);
  g_free (rows.level);
}
