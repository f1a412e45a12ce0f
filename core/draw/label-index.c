/* label-index.c: the obstacles of a plan in a grid of cells */
#include "draw/label-index.h"

#define CELL_MM 12.0
#define MOST_CELLS 128 /* across and down; cells get larger instead */

/* A line made ready for quick tests: its box, and the distance of a point from it. */
typedef struct {
  SqPaperLine line;
  double left_mm, top_mm, right_mm, bottom_mm;
  double across_x, across_y, off_mm; /* across_x · x + across_y · y - off_mm */
  double cost;
} IndexLine;

/* What reaches into one cell, by number. */
typedef struct {
  GArray *boxes, *lines; /* guint; NULL: none */
} Cell;

typedef struct {
  int left, top, right, bottom;
} Span;

struct SqLabelIndex {
  const SqLabelObstacles *all;
  const SqObstacle *boxes;
  IndexLine *lines;
  SqPaperPoint corner;
  double cell_mm;
  int columns, rows;
  Cell *cells;
  guint *box_seen, *line_seen; /* by which look */
  guint look;
};

/* What lies outside of the grid belongs to the cells at its edge. */
static Span
span_of (const SqLabelIndex *index, SqPaperBox box)
{
  double x_mm = box.x_mm - index->corner.x_mm, y_mm = box.y_mm - index->corner.y_mm;
  double most_column = index->columns - 1, most_row = index->rows - 1;
  return (Span){ (int)CLAMP (x_mm / index->cell_mm, 0.0, most_column),
                 (int)CLAMP (y_mm / index->cell_mm, 0.0, most_row),
                 (int)CLAMP ((x_mm + box.width_mm) / index->cell_mm, 0.0, most_column),
                 (int)CLAMP ((y_mm + box.height_mm) / index->cell_mm, 0.0, most_row) };
}

static Cell *
cell_at (const SqLabelIndex *index, int column, int row)
{
  return &index->cells[row * index->columns + column];
}

static void
add_number (GArray **numbers, guint number)
{
  if (*numbers == NULL)
    *numbers = g_array_new (FALSE, FALSE, sizeof (guint));
  g_array_append_val (*numbers, number);
}

static void
add_box (SqLabelIndex *index, guint number)
{
  Span span = span_of (index, index->boxes[number].box);
  for (int row = span.top; row <= span.bottom; row++)
    for (int column = span.left; column <= span.right; column++)
      add_number (&cell_at (index, column, row)->boxes, number);
}

static IndexLine
index_line (const SqObstacleLine *obstacle)
{
  SqPaperPoint a = obstacle->line.from, b = obstacle->line.to;
  double length_mm = sq_paper_distance_mm (a, b);
  IndexLine line = { .line = obstacle->line,
                     .left_mm = MIN (a.x_mm, b.x_mm),
                     .top_mm = MIN (a.y_mm, b.y_mm),
                     .right_mm = MAX (a.x_mm, b.x_mm),
                     .bottom_mm = MAX (a.y_mm, b.y_mm),
                     .cost = obstacle->cost };
  if (length_mm > 0.0) {
    line.across_x = (b.y_mm - a.y_mm) / length_mm;
    line.across_y = (a.x_mm - b.x_mm) / length_mm;
    line.off_mm = line.across_x * a.x_mm + line.across_y * a.y_mm;
  }
  return line;
}

/* Two convex shapes are apart if one of their axes parts them: those of the box, or the line's. */
static gboolean
line_hits (const IndexLine *line, SqPaperBox box)
{
  double half_width = box.width_mm / 2, half_height = box.height_mm / 2;
  double x_mm = box.x_mm + half_width, y_mm = box.y_mm + half_height;
  if (line->left_mm > x_mm + half_width || line->right_mm < x_mm - half_width ||
      line->top_mm > y_mm + half_height || line->bottom_mm < y_mm - half_height)
    return FALSE;
  return fabs (line->across_x * x_mm + line->across_y * y_mm - line->off_mm) <=
         fabs (line->across_x) * half_width + fabs (line->across_y) * half_height;
}

/* At the edge of the grid cells go on for ever: all that comes near counts. */
static void
add_line (SqLabelIndex *index, guint number)
{
  const IndexLine *line = &index->lines[number];
  SqPaperBox around = { line->left_mm, line->top_mm, line->right_mm - line->left_mm,
                        line->bottom_mm - line->top_mm };
  Span span = span_of (index, around);
  for (int row = span.top; row <= span.bottom; row++)
    for (int column = span.left; column <= span.right; column++) {
      SqPaperBox cell = { index->corner.x_mm + column * index->cell_mm,
                          index->corner.y_mm + row * index->cell_mm, index->cell_mm,
                          index->cell_mm };
      gboolean at_edge =
        row == 0 || column == 0 || row == index->rows - 1 || column == index->columns - 1;
      if (at_edge || line_hits (line, cell))
        add_number (&cell_at (index, column, row)->lines, number);
    }
}

SqLabelIndex *
sq_label_index_new (const SqLabelObstacles *obstacles)
{
  SqLabelIndex *index = g_new0 (SqLabelIndex, 1);
  SqPaperBox field = obstacles->field;
  index->all = obstacles;
  index->boxes = (const SqObstacle *)(gpointer)obstacles->boxes->data;
  index->lines = g_new (IndexLine, obstacles->lines->len + 1);
  index->corner = (SqPaperPoint){ field.x_mm, field.y_mm };
  index->cell_mm = MAX (CELL_MM, MAX (field.width_mm, field.height_mm) / MOST_CELLS);
  index->columns = 1 + (int)(MAX (field.width_mm, 0.0) / index->cell_mm);
  index->rows = 1 + (int)(MAX (field.height_mm, 0.0) / index->cell_mm);
  index->cells = g_new0 (Cell, (gsize)index->columns * (gsize)index->rows);
  index->box_seen = g_new0 (guint, obstacles->boxes->len + 1);
  index->line_seen = g_new0 (guint, obstacles->lines->len + 1);
  for (guint i = 0; i < obstacles->boxes->len; i++)
    add_box (index, i);
  for (guint i = 0; i < obstacles->lines->len; i++) {
    index->lines[i] = index_line (&g_array_index (obstacles->lines, SqObstacleLine, i));
    add_line (index, i);
  }
  return index;
}

void
sq_label_index_free (SqLabelIndex *index)
{
  if (index == NULL)
    return;
  for (int i = 0; i < index->columns * index->rows; i++) {
    g_clear_pointer (&index->cells[i].boxes, g_array_unref);
    g_clear_pointer (&index->cells[i].lines, g_array_unref);
  }
  g_free (index->cells);
  g_free (index->lines);
  g_free (index->box_seen);
  g_free (index->line_seen);
  g_free (index);
}

/* TRUE the first time that a look comes to it. */
static gboolean
is_new (const SqLabelIndex *index, guint *seen)
{
  gboolean first = *seen != index->look;
  *seen = index->look;
  return first;
}

/* The next of the numbers in @numbers, from @i on, that this look has not seen; FALSE at the end */
static gboolean
next_new (const SqLabelIndex *index, const GArray *numbers, guint *seen, guint *i, guint *number)
{
  for (; numbers != NULL && *i < numbers->len; (*i)++) {
    *number = g_array_index (numbers, guint, *i);
    if (!is_new (index, &seen[*number]))
      continue;
    (*i)++;
    return TRUE;
  }
  return FALSE;
}

static void
add_cover (
  SqLabelIndex *index, const Cell *cell, SqPaperBox box, SqPaperBox air, SqLabelCover *cover)
{
  guint number;
  for (guint i = 0; next_new (index, cell->boxes, index->box_seen, &i, &number);) {
    const SqObstacle *obstacle = &index->boxes[number];
    double in_air_mm2 = sq_paper_overlap_mm2 (air, obstacle->box);
    if (in_air_mm2 <= 0.0)
      continue;
    double covered_mm2 = sq_paper_overlap_mm2 (box, obstacle->box);
    cover->boxes_cost += obstacle->cost * covered_mm2;
    if (obstacle->cost < SQ_COST_PANEL)
      continue;
    cover->solid_mm2 += covered_mm2;
    cover->solid_in_air_mm2 += in_air_mm2;
  }
  for (guint i = 0; next_new (index, cell->lines, index->line_seen, &i, &number);)
    if (line_hits (&index->lines[number], box))
      cover->lines_cost += index->lines[number].cost;
}

SqLabelCover
sq_label_index_cover (SqLabelIndex *index, SqPaperBox box, double air_mm)
{
  SqPaperBox air = sq_paper_box_grown (box, air_mm);
  SqLabelCover cover = { 0 };
  Span span = span_of (index, air);
  index->look++;
  for (int row = span.top; row <= span.bottom; row++)
    for (int column = span.left; column <= span.right; column++)
      add_cover (index, cell_at (index, column, row), box, air, &cover);
  return cover;
}

static double
crossing_cost (SqLabelIndex *index, const Cell *cell, const IndexLine *leader, const void *of)
{
  double cost = 0.0;
  guint number;
  for (guint i = 0; next_new (index, cell->boxes, index->box_seen, &i, &number);) {
    const SqObstacle *obstacle = &index->boxes[number];
    if ((of != NULL && obstacle->of == of) || !line_hits (leader, obstacle->box))
      continue;
    cost += obstacle->cost >= SQ_COST_LABEL   ? SQ_COST_LEADER_OVER
            : obstacle->cost >= SQ_COST_PANEL ? SQ_COST_LEADER_BODY
                                              : SQ_COST_LEADER_WALL;
  }
  for (guint i = 0; next_new (index, cell->lines, index->line_seen, &i, &number);) {
    SqPaperLine line = index->lines[number].line;
    if (sq_paper_lines_cross (leader->line.from, leader->line.to, line.from, line.to))
      cost += SQ_COST_LEADER_LINE;
  }
  return cost;
}

double
sq_label_index_leader_cost (SqLabelIndex *index, SqPaperLine leader, const void *of)
{
  const SqObstacleLine plain = { leader, 0.0 };
  const IndexLine line = index_line (&plain);
  SqPaperBox around = { line.left_mm, line.top_mm, line.right_mm - line.left_mm,
                        line.bottom_mm - line.top_mm };
  Span span = span_of (index, around);
  double cost = 0.0;
  index->look++;
  for (int row = span.top; row <= span.bottom; row++)
    for (int column = span.left; column <= span.right; column++)
      cost += crossing_cost (index, cell_at (index, column, row), &line, of);
  return cost;
}

gboolean
sq_label_index_any_solid (SqLabelIndex *index, SqPaperBox box, const void *of)
{
  Span span = span_of (index, box);
  for (int row = span.top; row <= span.bottom; row++)
    for (int column = span.left; column <= span.right; column++) {
      const GArray *boxes = cell_at (index, column, row)->boxes;
      for (guint i = 0; boxes != NULL && i < boxes->len; i++) {
        const SqObstacle *obstacle = &index->boxes[g_array_index (boxes, guint, i)];
        if (obstacle->cost >= SQ_COST_PANEL && obstacle->of != of &&
            sq_paper_boxes_overlap (box, obstacle->box))
          return TRUE;
      }
    }
  return FALSE;
}

gboolean
sq_label_index_is_outside (const SqLabelIndex *index, SqPaperPoint at)
{
  return index->all->is_outside != NULL && index->all->is_outside (at, index->all->outside_data);
}

SqPaperBox
sq_label_index_field (const SqLabelIndex *index)
{
  return index->all->field;
}
