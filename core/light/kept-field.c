/* kept-field.c: one lamp's field on one grid, and how it is mended when something moved */
#include "light/kept-field.h"

static gsize
points_of (const SqReceiverGrid *grid)
{
  return (gsize)grid->rows * (gsize)grid->columns;
}

static const SqLamp *
lamp_of (const SqLitScene *lit, guint lamp)
{
  return &g_array_index (lit->lamps, SqLamp, lamp);
}

SqKeptField *
sq_kept_field_new (SqLitScene *lit, guint lamp, const SqReceivers *receivers, SqWay way)
{
  const SqReceiverGrid *grid = &receivers->grid;
  SqKeptField *field = g_new (SqKeptField, 1);
  *field = (SqKeptField){
    .lit = sq_lit_scene_ref (lit),
    .lamp = lamp,
    .receivers = *receivers,
    .way = way,
    .todo = g_new (SqSpan, grid->rows),
  };
  for (int row = 0; row < grid->rows; row++)
    field->todo[row] = (SqSpan){ 0, grid->columns };
  if (way == SQ_WAY_EXACT)
    field->exact = g_new (double, points_of (grid));
  else
    field->quick = g_new (float, points_of (grid));
  sq_lamp_rows_init (&field->rows, lamp_of (lit, lamp), lit->obstacles, &field->receivers, way);
  return field;
}

void
sq_kept_field_free (SqKeptField *field)
{
  if (!field)
    return;
  sq_lamp_rows_clear (&field->rows);
  g_free (field->todo);
  g_free (field->exact);
  g_free (field->quick);
  sq_lit_scene_unref (field->lit);
  g_free (field);
}

static gboolean
same_receivers (const SqReceivers *a, const SqReceivers *b)
{
  const SqReceiverGrid *x = &a->grid, *y = &b->grid;
  if (x->first.x_m != y->first.x_m || x->first.y_m != y->first.y_m || x->step_m != y->step_m ||
      x->height_m != y->height_m || x->columns != y->columns || x->rows != y->rows ||
      a->normal != b->normal)
    return FALSE;
  if (a->normal != SQ_NORMAL_CAMERA || sq_point_given (a->camera) != sq_point_given (b->camera))
    return a->normal != SQ_NORMAL_CAMERA;
  return !sq_point_given (a->camera) ||
         (a->camera.x_m == b->camera.x_m && a->camera.y_m == b->camera.y_m &&
          a->camera.z_m == b->camera.z_m);
}

gboolean
sq_kept_field_suits (const SqKeptField *field,
                     const SqLitScene *lit,
                     guint lamp,
                     const SqReceivers *receivers,
                     SqWay way)
{
  return field->way == way && same_receivers (&field->receivers, receivers) &&
         sq_lamp_sends_the_same (lamp_of (field->lit, field->lamp), field->lit->scene,
                                 lamp_of (lit, lamp), lit->scene);
}

/* Each row's columns grow to hold those of @region as well. */
static void
widen (SqKeptField *field, const SqRegion *region)
{
  const SqReceiverGrid *grid = &field->receivers.grid;
  SqSpan spans[SQ_BLOCK_ROWS];
  if (!field->todo) {
    field->todo = g_new (SqSpan, grid->rows);
    for (int row = 0; row < grid->rows; row++)
      field->todo[row] = (SqSpan){ grid->columns, 0 };
  }
  for (int first = 0; first < grid->rows; first += SQ_BLOCK_ROWS) {
    int n = MIN (SQ_BLOCK_ROWS, grid->rows - first);
    if (!sq_region_spans (region, grid, first, n, spans))
      continue;
    for (int i = 0; i < n; i++)
      if (spans[i].from < spans[i].to) {
        SqSpan *todo = &field->todo[first + i];
        todo->from = MIN (todo->from, spans[i].from);
        todo->to = MAX (todo->to, spans[i].to);
      }
  }
}

static void
hold_for (SqKeptField *field, SqLitScene *lit, guint lamp)
{
  sq_lit_scene_ref (lit);
  sq_lit_scene_unref (field->lit);
  field->lit = lit;
  field->lamp = lamp;
}

void
sq_kept_field_stay (SqKeptField *field, SqLitScene *lit, guint lamp)
{
  sq_lamp_rows_point_at (&field->rows, lamp_of (lit, lamp), lit->obstacles, field->way);
  hold_for (field, lit, lamp);
}

/* The shades of what stayed are kept; those of what went, and of what came, say where to look
 * again. */
void
sq_kept_field_move (SqKeptField *field, SqLitScene *lit, guint lamp, const int *was)
{
  SqLampRows now;
  sq_lamp_rows_init_bare (&now, lamp_of (lit, lamp), lit->obstacles, &field->receivers, field->way);
  SqLampRows *then = &field->rows;
  guint next = then->n_doors;
  for (guint i = 0; i < lit->obstacles->len; i++) {
    if (was[i] < 0) {
      const SqShade *came = sq_lamp_rows_add (&now, i);
      if (came)
        widen (field, &came->some);
      continue;
    }
    for (; next < then->shades->len; next++) {
      SqShade *shade = &g_array_index (then->shades, SqShade, next);
      if (shade->index >= (guint)was[i])
        break;
      widen (field, &shade->some);
    }
    if (next < then->shades->len &&
        g_array_index (then->shades, SqShade, next).index == (guint)was[i])
      sq_lamp_rows_take (&now, then, next++, i);
  }
  for (; next < then->shades->len; next++)
    widen (field, &g_array_index (then->shades, SqShade, next).some);
  sq_lamp_rows_clear (then);
  *then = now;
  hold_for (field, lit, lamp);
}

static gsize
points_todo (const SqKeptField *field, int first_row, int n_rows)
{
  gsize points = 0;
  for (int row = first_row; field->todo && row < first_row + n_rows; row++)
    points += (gsize)MAX (field->todo[row].to - field->todo[row].from, 0);
  return points;
}

gboolean
sq_kept_field_has_todo (const SqKeptField *field, int first_row, int n_rows)
{
  return points_todo (field, first_row, n_rows) > 0;
}

gsize
sq_kept_field_do (SqKeptField *field, int first_row, int n_rows, SqRowScratch *scratch)
{
  gsize start = (gsize)first_row * (gsize)field->receivers.grid.columns;
  const SqSpan *only = field->todo + first_row;
  if (field->way == SQ_WAY_EXACT)
    sq_lamp_rows_exact (&field->rows, first_row, n_rows, only, scratch, field->exact + start);
  else
    sq_lamp_rows_quick (&field->rows, first_row, n_rows, only, scratch, field->quick + start);
  return points_todo (field, first_row, n_rows);
}

void
sq_kept_field_done (SqKeptField *field)
{
  g_clear_pointer (&field->todo, g_free);
}

gsize
sq_kept_field_bytes (const SqKeptField *field)
{
  gsize value = field->way == SQ_WAY_EXACT ? sizeof (double) : sizeof (float);
  return points_of (&field->receivers.grid) * value;
}
