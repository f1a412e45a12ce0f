/* plot-map.c: the one map of light that all plans of a plot print: how far it goes and how fine */
#include "draw/ramp.h"
#include "draw/rooms.h"
#include "paper/plot-private.h"
#include "paper/tiles.h"

#define STEP_M 0.05
#define COARSEN_M 0.01
#define MOST_POINTS 300000.0
#define ROUND_M 0.3  /* always read round the set */
#define MOST_M 6.0   /* light is followed no farther from it than this */
#define PROBE_M 0.25 /* steps in which its end is looked for */
#define MOST_PROBED 40000.0

typedef struct {
  SqPlace from, to;
} Field;

static Field
field_grown (Field field, double x_m, double y_m)
{
  return (Field){ { field.from.x_m - x_m, field.from.y_m - y_m },
                  { field.to.x_m + x_m, field.to.y_m + y_m } };
}

static void
field_take_in (Field *field, SqPlace place)
{
  field->from.x_m = MIN (field->from.x_m, place.x_m);
  field->from.y_m = MIN (field->from.y_m, place.y_m);
  field->to.x_m = MAX (field->to.x_m, place.x_m);
  field->to.y_m = MAX (field->to.y_m, place.y_m);
}

/* Widens @widest to what the paper of a plan shows round the set, as far as light is followed. */
static void
take_in_paper (const SqPlot *plot, const SqPageWish *wish, Field set, Field *widest)
{
  SqSheetChoice choice;
  SqSheetLayout layout;
  if (!sq_plan_choose_sheet (plot, wish, &choice, NULL))
    return;
  gboolean is_tiled = choice.columns * choice.rows > 1;
  sq_sheet_lay_out (choice.sheet, choice.portrait, is_tiled ? SQ_SHEET_DRAWING : SQ_SHEET_BESIDE,
                    &layout);
  const SqTiling tiling = { .columns = choice.columns,
                            .rows = choice.rows,
                            .width_mm = layout.field.width_mm,
                            .height_mm = layout.field.height_mm };
  SqPaperBox paper = sq_tiling_whole (&tiling);
  double m_per_mm = choice.denominator / 1000.0;
  double beside_m = (paper.width_mm * m_per_mm - (set.to.x_m - set.from.x_m)) / 2.0;
  double over_m = (paper.height_mm * m_per_mm - (set.to.y_m - set.from.y_m)) / 2.0;
  Field shown =
    field_grown (set, CLAMP (beside_m, ROUND_M, MOST_M), CLAMP (over_m, ROUND_M, MOST_M));
  field_take_in (widest, shown.from);
  field_take_in (widest, shown.to);
}

/* The darkest band has no end of its own: out of doors the tint ends where the next one does. */
static gboolean
shows (const SqLightMap *map, double lux)
{
  return lux > map->set_lux * exp2 (SQ_FIRST_BAND + 1);
}

static SqMapRequest
request_of (const SqPlot *plot, Field field, double step_m)
{
  SqMapRequest request = sq_map_request (plot->scene, step_m);
  request.quantity = SQ_OVERLAY_LUX;
  request.from = field.from;
  request.to = field.to;
  return request;
}

/* The finest step that keeps within @most points, in whole centimetres above @finest_m. */
static double
step_for (Field field, double finest_m, double most)
{
  double width_m = field.to.x_m - field.from.x_m, height_m = field.to.y_m - field.from.y_m;
  double step_m = finest_m;
  while ((width_m / step_m + 2.0) * (height_m / step_m + 2.0) > most)
    step_m += COARSEN_M;
  return step_m;
}

/* Light is looked for in coarse steps over all of @widest; @field is grown to where it ends. */
static gboolean
grow_to_light (const SqPlot *plot,
               Field widest,
               Field *field,
               int threads,
               GCancellable *cancellable,
               GError **error)
{
  SqMapRequest request = request_of (plot, widest, step_for (widest, PROBE_M, MOST_PROBED));
  request.way = SQ_WAY_QUICK;
  g_autoptr (SqLightMap) map = sq_light_map (plot->scene, &request, threads, cancellable, error);
  if (map == NULL)
    return FALSE;
  Field lit = *field;
  for (int row = 0; row < map->rows; row++)
    for (int column = 0; column < map->columns; column++)
      if (shows (map, map->lux[(gsize)row * (gsize)map->columns + (gsize)column]))
        field_take_in (&lit, (SqPlace){ map->first.x_m + column * map->step_m,
                                        map->first.y_m + row * map->step_m });
  /* It ends before the next point; one step more for what lies between rows of them. */
  lit = field_grown (lit, 2.0 * map->step_m, 2.0 * map->step_m);
  field->from.x_m = MAX (lit.from.x_m, widest.from.x_m);
  field->from.y_m = MAX (lit.from.y_m, widest.from.y_m);
  field->to.x_m = MIN (lit.to.x_m, widest.to.x_m);
  field->to.y_m = MIN (lit.to.y_m, widest.to.y_m);
  return TRUE;
}

/* Light out of doors that gets too dark for a tint; indoors all is tinted. */
static gboolean
fades_out (const SqScene *scene, const SqLightMap *map)
{
  g_autoptr (SqGrid) rooms = sq_grid_new (map->columns, map->rows, map->first, map->step_m);
  gsize n = (gsize)map->columns * (gsize)map->rows;
  for (gsize k = 0; k < n; k++)
    rooms->value[k] = map->lux[k];
  gboolean any_room = sq_rooms_keep (rooms, scene), any_light = FALSE, any_dark = FALSE;
  for (gsize k = 0; k < n; k++) {
    if (isnan (map->lux[k]) || (any_room && !isnan (rooms->value[k])))
      continue;
    any_light = any_light || shows (map, map->lux[k]);
    any_dark = any_dark || !shows (map, map->lux[k]);
  }
  return any_light && any_dark;
}

gboolean
sq_plot_map_light (SqPlot *plot,
                   const SqPageWish *wishes,
                   guint n_wishes,
                   int threads,
                   GCancellable *cancellable,
                   GError **error)
{
  Field set;
  if (!sq_plan_extent_m (plot->scene, &set.from, &set.to))
    return TRUE;
  Field field = field_grown (set, ROUND_M, ROUND_M), widest = field;
  for (guint k = 0; k < n_wishes; k++)
    take_in_paper (plot, &wishes[k], set, &widest);
  if (!grow_to_light (plot, widest, &field, threads, cancellable, error))
    return FALSE;
  SqMapRequest request = request_of (plot, field, step_for (field, STEP_M, MOST_POINTS));
  plot->map = sq_light_map (plot->scene, &request, threads, cancellable, error);
  plot->fades = plot->map != NULL && fades_out (plot->scene, plot->map);
  return plot->map != NULL;
}
