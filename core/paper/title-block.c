/* title-block.c: a table of cells, each a small name over what it says */
#include "paper/title-block.h"

#include "paper/sheet.h"
#include "paper/words.h"

#include <glib/gi18n-lib.h>

#define PAD_MM 1.6
#define NAME_DOWN_MM 3.6       /* baseline of a field's name under the cell's top */
#define VALUE_DOWN_MM 9.4      /* and of what it says */
#define STRIP_NAME_DOWN_MM 3.1 /* the same in a strip, which is lower than a row */
#define STRIP_VALUE_DOWN_MM 8.1
#define ROW_MM 12.0

typedef struct {
  double x_mm, y_mm, width_mm; /* within the block; each is a row high */
  double cap_mm;
  int weight;
  const char *name;
  const char *value;
} Cell;

const char *
sq_look_name (const SqScene *scene)
{
  if (scene->look == NULL)
    return _ ("as drawn");
  for (guint k = 0; k < scene->looks->len; k++) {
    const SqLook *look = SQ_AT (SqLook, scene->looks, k);
    if (g_strcmp0 (look->id, scene->look) == 0 && look->name != NULL && *look->name != '\0')
      return look->name;
  }
  return scene->look;
}

/* The largest type in which the value fits its cell; where none will do it is cut. */
static double
fitting_cap_mm (SqDrawing *drawing, const Cell *cell)
{
  const double caps_mm[] = { cell->cap_mm, SQ_TYPE_HEAD, SQ_TYPE_SMALL };
  for (guint k = 0; k < G_N_ELEMENTS (caps_mm); k++) {
    SqType type = { .cap_mm = caps_mm[k], .weight = cell->weight };
    if (caps_mm[k] <= cell->cap_mm &&
        sq_text_width_mm (drawing, cell->value, &type) <= cell->width_mm - 2.0 * PAD_MM)
      return caps_mm[k];
  }
  return SQ_TYPE_SMALL;
}

static void
draw_cell (
  SqDrawing *drawing, SqPaperBox box, const Cell *cell, double name_down_mm, double value_down_mm)
{
  double x_mm = box.x_mm + cell->x_mm, y_mm = box.y_mm + cell->y_mm;
  SqType name = { .cap_mm = SQ_TYPE_SMALL,
                  .weight = 400,
                  .colour = sq_ink (drawing->view, SQ_MID),
                  .width_mm = cell->width_mm - 2.0 * PAD_MM,
                  .one_line = TRUE };
  SqType value = name;
  value.cap_mm = fitting_cap_mm (drawing, cell);
  value.weight = cell->weight;
  value.colour = sq_ink (drawing->view, SQ_INK);
  sq_draw_text (drawing, (SqPaperPoint){ x_mm + PAD_MM, y_mm + name_down_mm }, cell->name, &name);
  sq_draw_text (drawing, (SqPaperPoint){ x_mm + PAD_MM, y_mm + value_down_mm }, cell->value,
                &value);
}

static void
rule (SqDrawing *drawing, SqPaperBox box, double x1, double y1, double x2, double y2)
{
  sq_draw_line (drawing, (SqPaperPoint){ box.x_mm + x1, box.y_mm + y1 },
                (SqPaperPoint){ box.x_mm + x2, box.y_mm + y2 }, SQ_PEN_18,
                sq_ink (drawing->view, SQ_INK));
}

/* "a, b", or the one that is there. */
static char *
both (const char *a, const char *between, const char *b)
{
  if (*sq_said (a) == '\0' || *sq_said (b) == '\0' || g_strcmp0 (a, b) == 0)
    return g_strdup (*sq_said (a) != '\0' ? a : sq_said (b));
  return g_strconcat (a, between, b, NULL);
}

/* The page's own name or else the drawing's title, and which part of it this is. */
static char *
title_text_of (const SqTitleBlock *block)
{
  const char *title = block->scene->title->title;
  const char *said = block->name != NULL        ? block->name
                     : *sq_said (title) != '\0' ? title
                                                : _ ("Lighting plan");
  return block->part != NULL ? g_strdup_printf ("%s: %s", said, block->part) : g_strdup (said);
}

static const SqRevision *
revision_from_last (const SqTitle *title, guint n)
{
  return n < title->revisions->len
           ? SQ_AT (SqRevision, title->revisions, title->revisions->len - 1 - n)
           : NULL;
}

/* Which revision this is, and in small which one it replaces. */
static void
draw_revision (SqDrawing *drawing, SqPaperBox box, const Cell *cell, const SqTitle *title)
{
  const SqRevision *now = revision_from_last (title, 0), *before = revision_from_last (title, 1);
  Cell shown = *cell;
  shown.value = now != NULL ? sq_said (now->number) : "–";
  SqType type = { .cap_mm = cell->cap_mm, .weight = cell->weight };
  double letter_mm = MIN (sq_text_width_mm (drawing, shown.value, &type), cell->width_mm);
  draw_cell (drawing, box, &shown, NAME_DOWN_MM, VALUE_DOWN_MM);
  double left_mm = PAD_MM + letter_mm + 3.0;
  if (before == NULL || *sq_said (before->number) == '\0' || left_mm > cell->width_mm - 12.0)
    return;
  g_autofree char *replaces = g_strdup_printf (_ ("replaces %s"), before->number);
  SqType small = { .cap_mm = SQ_TYPE_SMALL,
                   .weight = 400,
                   .colour = sq_ink (drawing->view, SQ_MID),
                   .width_mm = cell->width_mm - left_mm - PAD_MM,
                   .one_line = TRUE };
  sq_draw_text (
    drawing,
    (SqPaperPoint){ box.x_mm + cell->x_mm + left_mm, box.y_mm + cell->y_mm + VALUE_DOWN_MM },
    replaces, &small);
}

void
sq_draw_title_block (SqDrawing *drawing, SqPaperBox box, const SqTitleBlock *block)
{
  const SqTitle *title = block->scene->title;
  SqColour ink = sq_ink (drawing->view, SQ_INK);
  g_autofree char *scene_set = both (title->scene, "   ", title->set);
  g_autofree char *crew = both (title->gaffer, ", ", title->drawn_by);
  g_autofree char *scale = both (block->scale, "   ", block->sheet);
  g_autofree char *sheet = g_strdup_printf ("%d / %d", block->page, block->n_pages);
  g_autofree char *owner = both (title->owner, ", ", title->location);
  g_autofree char *title_text = title_text_of (block);
  /* The first column takes what the block is wider. */
  const double x = box.width_mm - SQ_TITLE_BLOCK_WIDTH_MM;

  /* clang-format off */
  const Cell cells[] = {
    { 0,  0, x + 66, SQ_TYPE_NAME,  700, _ ("Production"), sq_said (title->production) },
    { 0, 12, x + 66, SQ_TYPE_HEAD,  600, _ ("Title"), title_text },
    { 0, 24, x + 66, SQ_TYPE_SMALL, 600, _ ("Scene, set"), scene_set },
    { x + 66,  0, 38, SQ_TYPE_SMALL, 600, _ ("Director"), sq_said (title->director) },
    { x + 66, 12, 38, SQ_TYPE_SMALL, 600, _ ("Director of photography"), sq_said (title->dp) },
    { x + 66, 24, 38, SQ_TYPE_SMALL, 600, _ ("Gaffer, drawn by"), crew },
    { x + 104,  0, 38, SQ_TYPE_HEAD,  700, _ ("Look"), sq_look_name (block->scene) },
    { x + 104, 12, 38, SQ_TYPE_SMALL, 600, title->owner != NULL ? _ ("Owner, location") : _ ("Location"), owner },
    { x + 104, 24, 19, SQ_TYPE_SMALL, 600, _ ("Date of issue"), sq_said (title->date) },
    { x + 123, 24, 19, SQ_TYPE_SMALL, 600, _ ("Approved by"), sq_said (title->approved_by) },
    { x + 142, 12, 38, SQ_TYPE_HEAD,  700, _ ("Scale, size"), scale },
    { x + 142, 24, 22, SQ_TYPE_SMALL, 600, _ ("Document"), sq_said (title->document) },
    { x + 164, 24, 16, SQ_TYPE_SMALL, 600, _ ("Sheet"), sheet },
  };
  const Cell revision = { x + 142, 0, 38, SQ_TYPE_NAME, 700, _ ("Revision"), NULL };
  /* clang-format on */

  for (guint k = 0; k < G_N_ELEMENTS (cells); k++)
    draw_cell (drawing, box, &cells[k], NAME_DOWN_MM, VALUE_DOWN_MM);
  draw_revision (drawing, box, &revision, title);

  const double columns[] = { x + 66, x + 104, x + 142 };
  for (guint k = 0; k < G_N_ELEMENTS (columns); k++)
    rule (drawing, box, columns[k], 0, columns[k], box.height_mm);
  for (int k = 1; k <= 2; k++)
    rule (drawing, box, 0, k * ROW_MM, box.width_mm, k * ROW_MM);
  rule (drawing, box, x + 123, 24, x + 123, box.height_mm);
  rule (drawing, box, x + 164, 24, x + 164, box.height_mm);
  sq_draw_box_path (drawing, box, 0.0);
  sq_draw_stroke (drawing, SQ_PEN_50, ink);
}

void
sq_draw_title_strip (SqDrawing *drawing, SqPaperBox box, const SqTitleBlock *block)
{
  const SqTitle *title = block->scene->title;
  const SqRevision *now = revision_from_last (title, 0);
  g_autofree char *scale = both (block->scale, "   ", block->sheet);
  g_autofree char *sheet = g_strdup_printf ("%d / %d", block->page, block->n_pages);
  g_autofree char *crew = both (title->gaffer, ", ", title->drawn_by);
  g_autofree char *what = title_text_of (block);
  g_autofree char *title_text = both (what, ", ", title->set);
  const char *revision = now != NULL ? sq_said (now->number) : "–";

  /* Shares of the strip. */
  /* clang-format off */
  const struct { double share; double cap_mm; int weight; const char *name, *value; } fields[] = {
    { 0.17, SQ_TYPE_HEAD,  700, _ ("Production"), sq_said (title->production) },
    { 0.22, SQ_TYPE_HEAD,  600, _ ("Title"), title_text },
    { 0.13, SQ_TYPE_SMALL, 600, _ ("Gaffer, drawn by"), crew },
    { 0.12, SQ_TYPE_SMALL, 600, _ ("Look"), sq_look_name (block->scene) },
    { 0.15, SQ_TYPE_SMALL, 700, _ ("Scale, size"), scale },
    { 0.09, SQ_TYPE_SMALL, 600, _ ("Date of issue"), sq_said (title->date) },
    { 0.06, SQ_TYPE_SMALL, 700, _ ("Revision"), revision },
    { 0.06, SQ_TYPE_SMALL, 600, _ ("Sheet"), sheet },
  };
  /* clang-format on */
  double x_mm = 0.0;
  for (guint k = 0; k < G_N_ELEMENTS (fields); k++) {
    Cell cell = { x_mm,
                  0.0,
                  fields[k].share * box.width_mm,
                  fields[k].cap_mm,
                  fields[k].weight,
                  fields[k].name,
                  fields[k].value };
    draw_cell (drawing, box, &cell, STRIP_NAME_DOWN_MM, STRIP_VALUE_DOWN_MM);
    x_mm += cell.width_mm;
    if (k + 1 < G_N_ELEMENTS (fields))
      rule (drawing, box, x_mm, 0, x_mm, box.height_mm);
  }
  sq_draw_box_path (drawing, box, 0.0);
  sq_draw_stroke (drawing, SQ_PEN_50, sq_ink (drawing->view, SQ_INK));
}
