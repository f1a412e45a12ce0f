/* section-handles.c: what a section tells of itself: where a hand can take hold */
#include "draw/section-grip.h"
#include "draw/section.h"

/* The handles of a beam stand so far along it, in throws. */
#define BEAM_HANDLE 0.6

SqSectionReport *
sq_section_report_new (void)
{
  SqSectionReport *report = g_new0 (SqSectionReport, 1);
  report->labels = g_array_new (FALSE, FALSE, sizeof (SqLabel));
  report->handles = g_array_new (FALSE, FALSE, sizeof (SqSectionHandle));
  return report;
}

void
sq_section_report_free (SqSectionReport *report)
{
  if (report == NULL)
    return;
  g_array_unref (report->labels);
  g_array_unref (report->handles);
  g_free (report);
}

static void
add_handle (const SqView *view,
            GArray *handles,
            SqSectionHandleKind kind,
            const SqThing *thing,
            SqPlace place)
{
  const SqSectionHandle handle = { kind, thing, place, sq_view_paper (view, place) };
  g_array_append_val (handles, handle);
}

void
sq_section_handles (const SqView *view, const SqSection *section, GArray *handles)
{
  const SqSectionThrow *way = &section->way;
  const SqThing *light = &section->light->thing;
  add_handle (view, handles, SQ_HANDLE_HEIGHT, light, way->from);
  if (way->aimed)
    add_handle (view, handles, SQ_HANDLE_AIM, light, way->aim);
  for (int edge = 0; way->hard && edge < SQ_EDGES; edge++) {
    double length = sq_place_distance_m (way->from, way->half[edge]);
    double share = length > 0.0 ? MIN (BEAM_HANDLE * way->away_m / length, 1.0) : 0.0;
    SqPlace place = { way->from.x_m + share * (way->half[edge].x_m - way->from.x_m),
                      way->from.y_m + share * (way->half[edge].y_m - way->from.y_m) };
    add_handle (view, handles, edge == SQ_EDGE_ABOVE ? SQ_HANDLE_BEAM_ABOVE : SQ_HANDLE_BEAM_UNDER,
                light, place);
  }
  for (guint i = 0; i < section->scene->panels->len; i++) {
    const SqPanel *panel = SQ_AT (SqPanel, section->scene->panels, i);
    SqSidePanel side;
    if (sq_side_panel (&section->set, panel, &side) && side.cut)
      add_handle (
        view, handles, SQ_HANDLE_PANEL, &panel->thing,
        (SqPlace){ (side.from.x_m + side.to.x_m) / 2, (side.from.y_m + side.to.y_m) / 2 });
  }
  for (guint i = 0; i < section->scene->cameras->len; i++) {
    const SqCamera *camera = SQ_AT (SqCamera, section->scene->cameras, i);
    if (sq_section_shows_camera (section, camera))
      add_handle (view, handles, SQ_HANDLE_CAMERA, &camera->thing,
                  sq_cut_place (&section->plane, camera->at));
  }
}
