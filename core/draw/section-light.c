/* section-light.c: throw and shadows as they are drawn on the cut */
#include "draw/section-light.h"

#include "base/figure-text.h"
#include "draw/throw.h"

/* Ticks nearer to each other or to the lamp than this are left out. */
#define LEAST_TICK_STEP_MM 2.2

/* Figures at ticks want so much room. */
#define LEAST_FIGURE_MM 6.0

/* Shorter throws have no room for an axis. */
#define LEAST_THROW_MM 2.0

/* Of the tilt's arc, from the lens. */
#define ARC_RADIUS_MM 13.0
#define LEAST_ARC_DEG 3.0

/* Past this from a camera no edge of its view is followed. */
#define MOST_VIEW_M 12.0

static const double thin_dash[] = { 0.8, 0.8 };

static double
axis_angle_rad (const SqSectionThrow *way)
{
  return sq_view_angle_rad (way->tilt_deg);
}

static void
dashed (
  SqDrawing *drawing, SqPaperLine line, double pen_mm, SqColour colour, const double *dash, int n)
{
  cairo_move_to (drawing->cairo, line.from.x_mm, line.from.y_mm);
  cairo_line_to (drawing->cairo, line.to.x_mm, line.to.y_mm);
  sq_draw_stroke_dashed (drawing, pen_mm, colour, dash, n);
}

/* From the lamp's front to @end; FALSE where that leaves nothing. */
static gboolean
ray_line (const SqView *view, SqPlace from, SqPlace end, double start_mm, SqPaperLine *line)
{
  SqPaperPoint a = sq_view_paper (view, from), b = sq_view_paper (view, end);
  double angle = atan2 (b.y_mm - a.y_mm, b.x_mm - a.x_mm);
  if (sq_paper_distance_mm (a, b) < start_mm + LEAST_THROW_MM)
    return FALSE;
  *line = (SqPaperLine){ sq_paper_along (a, angle, start_mm), b };
  return TRUE;
}

static void
draw_ticks (SqDrawing *drawing, const SqSectionThrow *way, double clear_mm)
{
  const SqView *view = drawing->view;
  SqPaperPoint source = sq_view_paper (view, way->ticks_from);
  double last = G_MAXDOUBLE, angle = axis_angle_rad (way);
  SqType type = { .cap_mm = sq_view_small_mm (view),
                  .weight = 600,
                  .align = SQ_ALIGN_CENTRE,
                  .colour = sq_ink (view, SQ_INK),
                  .halo = TRUE };
  for (guint n = 0; n < way->n_ticks; n++) {
    if (!sq_place_given (way->tick[n]))
      continue;
    SqPaperPoint at = sq_view_paper (view, way->tick[n]);
    double along = sq_paper_distance_mm (source, at);
    if (along < clear_mm || last - along < LEAST_TICK_STEP_MM)
      break;
    last = along;
    sq_draw_tick (drawing, at, angle, n == 0);
    if (view->ground == SQ_GROUND_PAPER || n == 0 || along < clear_mm + LEAST_FIGURE_MM)
      continue;
    g_autofree char *stops = sq_stops_text (n, TRUE);
    SqPaperPoint beside = sq_paper_along (at, angle - G_PI / 2, 2.6);
    beside.y_mm += type.cap_mm / 2;
    sq_draw_text (drawing, beside, stops, &type);
  }
}

void
sq_draw_section_throw (SqDrawing *drawing, const SqSection *section, double front_mm)
{
  static const double off_dash[] = { 1.2, 1.2 };
  const SqView *view = drawing->view;
  const SqSectionThrow *way = &section->way;
  const SqRoleLine *role = &sq_role_lines[section->light->role];
  SqColour colour = sq_role_colour (view, section->light->role);
  double start = front_mm + SQ_AXIS_CLEAR_MM;
  SqPaperLine line;
  if (!way->aimed)
    return;
  if (!section->light->on) {
    if (ray_line (view, way->from, way->end, start, &line))
      dashed (drawing, line, SQ_PEN_18, sq_ink (view, SQ_SOFT), off_dash, 2);
    return;
  }
  for (int edge = 0; way->hard && edge < SQ_EDGES; edge++) {
    if (ray_line (view, way->from, way->half[edge], start, &line))
      sq_draw_beam_edge (drawing, line, FALSE, colour);
    if (!way->by_door[edge] && ray_line (view, way->from, way->tenth[edge], start, &line))
      sq_draw_beam_edge (drawing, line, TRUE, colour);
  }
  if (!ray_line (view, way->from, way->end, start, &line))
    return;
  dashed (drawing, line, SQ_PEN_35, colour, role->dash_mm, role->n_dashes);
  draw_ticks (drawing, way, way->framed_m > 0.0 ? 3.0 : start);
}

gboolean
sq_section_tilt_arc (const SqView *view,
                     const SqSection *section,
                     double front_mm,
                     SqPaperPoint *middle,
                     double *radius_mm)
{
  const SqSectionThrow *way = &section->way;
  SqPaperPoint from = sq_view_paper (view, way->from), end = sq_view_paper (view, way->end);
  *radius_mm = MAX (ARC_RADIUS_MM, front_mm + 8.0);
  *middle = sq_paper_along (from, axis_angle_rad (way) / 2, *radius_mm);
  return way->aimed && fabs (way->tilt_deg) >= LEAST_ARC_DEG &&
         sq_paper_distance_mm (from, end) > *radius_mm + 4.0;
}

void
sq_draw_section_tilt (SqDrawing *drawing, const SqSection *section, double front_mm)
{
  const SqView *view = drawing->view;
  SqColour ink = sq_ink (view, SQ_INK);
  SqPaperPoint middle, from = sq_view_paper (view, section->way.from);
  double radius, tilt = axis_angle_rad (&section->way);
  if (!sq_section_tilt_arc (view, section, front_mm, &middle, &radius))
    return;
  dashed (drawing,
          (SqPaperLine){ { from.x_mm + front_mm + 1.0, from.y_mm },
                         { from.x_mm + radius + 2.5, from.y_mm } },
          SQ_PEN_13, ink, thin_dash, 2);
  cairo_new_sub_path (drawing->cairo);
  if (tilt > 0.0)
    cairo_arc (drawing->cairo, from.x_mm, from.y_mm, radius, 0.0, tilt);
  else
    cairo_arc_negative (drawing->cairo, from.x_mm, from.y_mm, radius, 0.0, tilt);
  sq_draw_stroke (drawing, SQ_PEN_18, ink);
}

/* Unit, on paper: from the surface to the side that the light comes from. */
static SqPaperPoint
off_surface (const SqView *view, const SqShadowStretch *stretch, SqPlace source)
{
  SqPaperPoint a = sq_view_paper (view, stretch->from), b = sq_view_paper (view, stretch->to);
  SqPaperPoint s = sq_view_paper (view, source);
  double length = MAX (sq_paper_distance_mm (a, b), 1e-9);
  SqPaperPoint n = { -(b.y_mm - a.y_mm) / length, (b.x_mm - a.x_mm) / length };
  if (n.x_mm * (s.x_mm - a.x_mm) + n.y_mm * (s.y_mm - a.y_mm) < 0.0)
    n = (SqPaperPoint){ -n.x_mm, -n.y_mm };
  return n;
}

/* How far along the shadow a place is: along the floor, and up. */
static double
way_along_m (const SqSectionShadow *shadow, SqPlace place)
{
  return fabs (place.x_m - shadow->foot.x_m) + fabs (place.y_m - shadow->foot.y_m);
}

static void
draw_band (SqDrawing *drawing, const SqSection *section, const SqSectionShadow *shadow)
{
  const double dark_share = 0.42, pale_share = 0.10;
  const SqView *view = drawing->view;
  /* A thin band darker than a dark ground would not be seen. */
  SqColour dark = sq_ink (view, view->ground == SQ_GROUND_DARK ? SQ_INK : SQ_SHADE);
  double whole = 1e-6;
  for (guint i = 0; i < shadow->stretches->len; i++)
    whole =
      MAX (whole, way_along_m (shadow, g_array_index (shadow->stretches, SqShadowStretch, i).to));
  for (guint i = 0; i < shadow->stretches->len; i++) {
    const SqShadowStretch *stretch = &g_array_index (shadow->stretches, SqShadowStretch, i);
    const SqPlace ends[] = { stretch->from, stretch->to };
    SqPaperPoint a = sq_view_paper (view, stretch->from), b = sq_view_paper (view, stretch->to);
    SqPaperPoint n = off_surface (view, stretch, section->way.from);
    const SqPaperPoint band[] = {
      a,
      b,
      { b.x_mm + n.x_mm * SQ_SHADOW_BAND_MM, b.y_mm + n.y_mm * SQ_SHADOW_BAND_MM },
      { a.x_mm + n.x_mm * SQ_SHADOW_BAND_MM, a.y_mm + n.y_mm * SQ_SHADOW_BAND_MM },
    };
    double alpha[2];
    for (int end = 0; end < 2; end++) {
      double share = MIN (way_along_m (shadow, ends[end]) / whole, 1.0);
      alpha[end] = dark_share + share * (pale_share - dark_share);
    }
    sq_draw_polyline (drawing, band, G_N_ELEMENTS (band), TRUE);
    sq_draw_fade (drawing, dark, a, alpha[0], b, alpha[1]);
  }
}

/* The stretch that the shadow ends on. */
static const SqShadowStretch *
end_stretch (const SqSectionShadow *shadow)
{
  for (guint i = 0; i < shadow->stretches->len; i++) {
    const SqShadowStretch *stretch = &g_array_index (shadow->stretches, SqShadowStretch, i);
    if (stretch->on == shadow->end_on && sq_place_distance_m (stretch->to, shadow->end) < 1e-6)
      return stretch;
  }
  return NULL;
}

/* A short stroke across the surface. */
static void
draw_mark_on (SqDrawing *drawing, SqPaperPoint at, SqPaperPoint n, double long_mm, double pen_mm)
{
  sq_draw_line (drawing, at,
                (SqPaperPoint){ at.x_mm + n.x_mm * long_mm, at.y_mm + n.y_mm * long_mm }, pen_mm,
                sq_ink (drawing->view, SQ_INK));
}

void
sq_draw_section_shadow (SqDrawing *drawing, const SqSection *section, const SqSectionShadow *shadow)
{
  const SqView *view = drawing->view;
  SqColour ink = sq_ink (view, SQ_INK);
  const SqShadowStretch *last = end_stretch (shadow);
  draw_band (drawing, section, shadow);
  if (!shadow->ends || last == NULL)
    return;
  SqPaperPoint n = off_surface (view, last, section->way.from);
  SqPaperPoint end = sq_view_paper (view, shadow->end);
  dashed (drawing, (SqPaperLine){ sq_view_paper (view, shadow->crown), end }, SQ_PEN_13, ink,
          thin_dash, 2);
  draw_mark_on (drawing, end, n, 2.4, SQ_PEN_35);
  for (int edge = 0; edge < SQ_EDGES; edge++) {
    SqPaperPoint at = sq_view_paper (view, shadow->edge[edge]);
    /* Only along the same surface: round a corner a line would leave it. */
    double aside = (at.x_mm - end.x_mm) * n.x_mm + (at.y_mm - end.y_mm) * n.y_mm;
    if (!shadow->has_edge[edge] || fabs (aside) > 0.1)
      continue;
    SqPaperPoint lifted = { at.x_mm + n.x_mm * SQ_SHADOW_BAND_MM,
                            at.y_mm + n.y_mm * SQ_SHADOW_BAND_MM };
    SqPaperPoint top = { end.x_mm + n.x_mm * SQ_SHADOW_BAND_MM,
                         end.y_mm + n.y_mm * SQ_SHADOW_BAND_MM };
    dashed (drawing, (SqPaperLine){ top, lifted }, SQ_PEN_13, ink, thin_dash, 2);
    draw_mark_on (drawing, at, n, SQ_SHADOW_BAND_MM, SQ_PEN_13);
  }
}

void
sq_draw_section_view_of (SqDrawing *drawing, const SqSection *section, const SqCamera *camera)
{
  static const double dash[] = { 6.0, 1.5 };
  const double in_line = 0.85;
  SqVector sight = sq_cut_direction (&section->plane, sq_camera_direction (section->scene, camera));
  double half = sq_camera_view_up_deg (camera) / 2;
  if (hypot (sight.x, sight.y) < in_line)
    return;
  double tilt = SQ_DEGREES (atan2 (sight.y, sight.x));
  SqPlace from = sq_cut_place (&section->plane, camera->at);
  for (int side = -1; side <= 1; side += 2) {
    double angle = SQ_RADIANS (tilt + side * half);
    SqVector toward = sq_vector_scale (section->plane.along, cos (angle));
    toward.z = sin (angle);
    double reach = sq_cut_reach_m (section->obstacles, camera->at, toward, MOST_VIEW_M, NULL);
    SqPlace end = { from.x_m + reach * cos (angle), from.y_m + reach * sin (angle) };
    dashed (
      drawing,
      (SqPaperLine){ sq_view_paper (drawing->view, from), sq_view_paper (drawing->view, end) },
      SQ_PEN_18, sq_ink (drawing->view, SQ_INK), dash, 2);
  }
}
