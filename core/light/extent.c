/* extent.c: how far the set reaches on plan */
#include "light/map.h"

typedef struct {
  SqPlace from, to;
} Box;

static void
hold (Box *box, SqPlace place, double around_m)
{
  if (!sq_place_given (place))
    return;
  box->from.x_m = MIN (box->from.x_m, place.x_m - around_m);
  box->from.y_m = MIN (box->from.y_m, place.y_m - around_m);
  box->to.x_m = MAX (box->to.x_m, place.x_m + around_m);
  box->to.y_m = MAX (box->to.y_m, place.y_m + around_m);
}

static void
hold_point (Box *box, SqPoint point)
{
  hold (box, (SqPlace){ point.x_m, point.y_m }, 0.0);
}

static void
hold_path (Box *box, const GArray *path, double around_m)
{
  for (guint i = 0; i < path->len; i++)
    hold (box, sq_path_at (path, i), around_m);
}

static void
hold_panel (Box *box, const SqPanel *panel)
{
  SqFrame frame = sq_panel_frame (panel);
  for (int corner = 0; corner < 4; corner++) {
    double across = (corner & 1 ? 0.5 : -0.5) * panel->width_m;
    double up = (corner & 2 ? 0.5 : -0.5) * panel->height_m;
    hold_point (box,
                sq_point_along (sq_point_along (panel->at, frame.right, across), frame.up, up));
  }
}

static void
hold_set (Box *box, const SqScene *scene)
{
  for (guint i = 0; i < scene->walls->len; i++) {
    const SqWall *wall = SQ_AT (SqWall, scene->walls, i);
    hold_path (box, wall->path,
               wall->side == SQ_SIDE_CENTRE ? wall->thickness_m / 2.0 : wall->thickness_m);
  }
  for (guint i = 0; i < scene->pieces->len; i++) {
    const SqPiece *piece = SQ_AT (SqPiece, scene->pieces, i);
    hold_path (box, piece->outline, 0.0);
    if (piece->disc)
      hold (box, piece->disc->at, piece->disc->radius_m);
  }
}

gboolean
sq_scene_extent (const SqScene *scene, double margin_m, SqPlace *from, SqPlace *to)
{
  Box box = { { INFINITY, INFINITY }, { -INFINITY, -INFINITY } };
  hold_set (&box, scene);
  for (guint i = 0; i < scene->marks->len; i++) {
    const SqMark *mark = SQ_AT (SqMark, scene->marks, i);
    hold (&box, mark->at, 0.0);
    hold_path (&box, mark->path, 0.0);
  }
  for (guint i = 0; i < scene->cameras->len; i++)
    hold_point (&box, SQ_AT (SqCamera, scene->cameras, i)->at);
  for (guint i = 0; i < scene->fixtures->len; i++)
    hold_point (&box, SQ_AT (SqFixture, scene->fixtures, i)->at);
  for (guint i = 0; i < scene->panels->len; i++)
    hold_panel (&box, SQ_AT (SqPanel, scene->panels, i));
  for (guint i = 0; i < scene->probes->len; i++)
    hold_point (&box, SQ_AT (SqProbe, scene->probes, i)->at);
  for (guint i = 0; i < scene->supplies->len; i++)
    hold (&box, SQ_AT (SqSupply, scene->supplies, i)->at, 0.0);
  if (!isfinite (box.from.x_m))
    return FALSE;
  *from = (SqPlace){ box.from.x_m - margin_m, box.from.y_m - margin_m };
  *to = (SqPlace){ box.to.x_m + margin_m, box.to.y_m + margin_m };
  return TRUE;
}
