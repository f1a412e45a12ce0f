/* test-section.c: the upright cut: what it goes through, where light goes on it, who throws shadows
 *
 * All expected values are closed forms: similar triangles, tangents, the inverse square law.
 * Lengths are held on paper, at 1:50, to a tenth of a millimetre. */
#include "draw-page.h"
#include "draw/section.h"
#include "light/obstacles.h"

#define MM_PER_M 20.0
#define DEGREES 1e-6

/* A point of the cut on the page of these tests. */
static SqPaperPoint
on_page (SqPlace place)
{
  return sq_view_paper (&one_to_fifty, place);
}

/* That @place lies @along_m along the cut and @height_m high, on paper. */
static void
check_place (const char *what, SqPlace place, double along_m, double height_m)
{
  SqPaperPoint got = on_page (place);
  double x = one_to_fifty.origin.x_mm + along_m * MM_PER_M;
  double y = one_to_fifty.origin.y_mm - height_m * MM_PER_M;
  if (!(hypot (got.x_mm - x, got.y_mm - y) <= PAPER_MM))
    g_error ("%s: at %.3f, %.3f m, wanted %.3f, %.3f", what, place.x_m, place.y_m, along_m,
             height_m);
}

/* A class whose beam is 20 degrees across and 30 up at half of its peak, twice that at a tenth. */
#define CLASSES                                                                                    \
  "'classes': [{'id': 'spot', 'name': 'spot', 'optics': 'lens', 'source': 'led', 'input_w': 100,"  \
  "'face': {'shape': 'rect', 'width': 0.2, 'height': 0.4}, 'body': {'width': 0.3, 'depth': 0.4,"   \
  "'height': 0.5}, 'beams': [{'beam_deg': [20, 30], 'field_deg': [40, 60], 'peak_cd': 10000}]},"   \
  "{'id': 'point', 'name': 'point', 'optics': 'lens', 'source': 'led', 'input_w': 100,"            \
  "'body': {'width': 0.1, 'depth': 0.1, 'height': 0.1}, 'beams': [{'beam_deg': 20, 'field_deg':"   \
  "40, 'peak_cd': 10000}]}]"

static SqSection *
section_of (const SqScene *scene)
{
  g_autoptr (GError) error = NULL;
  const SqFixture *light = sq_section_light (scene, NULL, &error);
  g_assert_no_error (error);
  return sq_section_new (scene, NULL, light);
}

/* A scene of the two classes and what @rest says. */
static SqSection *
section (const char *rest)
{
  g_autofree char *text = g_strconcat (CLASSES, ", ", rest, NULL);
  g_autoptr (SqScene) scene = right_scene (text);
  return section_of (scene);
}

static void
test_plane (void)
{
  static const struct {
    const char *name, *lamp, *marks;
    SqCutBy by;
    double azimuth_deg; /* of the cut, to the right */
  } rows[] = {
    { "aimed at a point", "'aim': [3, 5, 1]", "", SQ_CUT_BY_AIM, 45.0 },
    { "aimed at a mark", "'aim': 'm'", "{'id': 'm', 'at': [-4, 2]}", SQ_CUT_BY_AIM, 180.0 },
    { "steeply", "'aim': [0, 2.1, 0]", "{'id': 'm', 'at': [-4, 2]}", SQ_CUT_BY_AIM, 90.0 },
    { "straight down", "'aim': [0, 2, 0]", "{'id': 'm', 'at': [0, 9]}, {'id': 'n', 'at': [0, -1]}",
      SQ_CUT_BY_MARK, 270.0 },
    { "straight up", "'aim': [0, 2, 9]", "{'id': 'n', 'at': [3, 5]}", SQ_CUT_BY_MARK, 45.0 },
    { "no aim", "'role': 'top'", "{'id': 'n', 'at': [3, 5]}", SQ_CUT_BY_MARK, 45.0 },
    { "at the mark it is aimed at", "'aim': 'm'",
      "{'id': 'm', 'at': [0, 2]}, {'id': 'n', 'at': [0, 4]}", SQ_CUT_BY_MARK, 90.0 },
    { "nobody there", "'aim': [0, 2, 0]", "", SQ_CUT_BY_PAGE, 0.0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf (
      "'marks': [%s], 'fixtures': [{'id': 'f', 'class': 'spot', 'at': [0, 2, 3], %s}]",
      rows[i].marks, rows[i].lamp);
    g_autoptr (SqSection) cut = section (text);
    if (cut->plane.by != rows[i].by)
      g_error ("%s: by %d, expected %d", rows[i].name, (int)cut->plane.by, (int)rows[i].by);
    assert_near (sq_vector_azimuth_deg (cut->plane.along), rows[i].azimuth_deg, DEGREES);
    /* Right, up, toward the eye are right-handed: right × up is toward the eye. */
    SqVector eye = sq_vector_cross (cut->plane.along, sq_vector (0, 0, 1));
    assert_near (sq_vector_dot (eye, cut->plane.to_eye), 1.0, EXACT);
  }
}

/* What of a thing is cut, from the left and from below. */
static void
reach (const SqSection *cut, const char *id, SqPlace *least, SqPlace *most)
{
  *least = (SqPlace){ G_MAXDOUBLE, G_MAXDOUBLE };
  *most = (SqPlace){ -G_MAXDOUBLE, -G_MAXDOUBLE };
  for (guint i = 0; i < cut->parts->len; i++) {
    const SqCutPart *part = &g_array_index (cut->parts, SqCutPart, i);
    for (guint k = 0; g_strcmp0 (sq_thing_id (part->owner), id) == 0 && k < part->n; k++) {
      least->x_m = MIN (least->x_m, part->corner[k].x_m);
      least->y_m = MIN (least->y_m, part->corner[k].y_m);
      most->x_m = MAX (most->x_m, part->corner[k].x_m);
      most->y_m = MAX (most->y_m, part->corner[k].y_m);
    }
  }
}

static void
test_walls_at_their_distance (void)
{
  /* The throw meets a wall 4 m off squarely, and one that stands at 45 degrees to it. */
  g_autoptr (SqSection) cut = section (
    "'walls': [{'id': 'w', 'path': [[5, -3], [5, 3]], 'thickness': 0.2, 'height': 2.7}, {'id': "
    "'v', 'path': [[-1, -4], [-5, 4]], 'side': 'left', 'thickness': 0.3, 'height': 2.5}], 'room': "
    "{'ceiling_height': null}, 'fixtures': [{'id': 'f', 'class': 'spot', 'at': [1, 0, 2], 'aim': "
    "[4, 0, 1]}]");
  SqPlace least, most;
  reach (cut, "w", &least, &most);
  check_place ("near face, foot", least, 3.9, 0.0);
  check_place ("far face, top", most, 4.1, 2.7);
  /* v runs from (-1, -4) to (-5, 4): it crosses y = 0 at x = -3, 4 m behind the lamp; its body lies
   * to its left, and a line through it at an angle of atan (1/2) to its normal is as much longer.
   */
  reach (cut, "v", &least, &most);
  check_place ("behind, the face on the path", most, -4.0, 2.5);
  check_place ("behind, the other face", least, -4.0 - 0.3 * hypot (1.0, 0.5), 0.0);
}

static void
test_openings_by_sill_and_head (void)
{
  g_autoptr (SqSection) cut = section (
    "'walls': [{'id': 'w', 'path': [[4, -3], [4, 3]], 'thickness': 0.3, 'height': 2.7, 'openings': "
    "[{'id': 'o', 'kind': 'window', 'edge': 0, 'offset': 2, 'width': 2, 'sill': 0.85, 'head': "
    "2.15}, {'id': 'p', 'edge': 0, 'offset': 4.5, 'width': 1}]}],"
    "'fixtures': [{'id': 'f', 'class': 'spot', 'at': [0, 0, 2], 'aim': [3, 0, 1]}]");
  g_autoptr (GArray) openings = sq_section_openings (&cut->set);
  g_assert_cmpuint (openings->len, ==, 1); /* the other is not on the cut */
  const SqSideOpening *opening = &g_array_index (openings, SqSideOpening, 0);
  g_assert_cmpstr (opening->opening->id, ==, "o");
  check_place ("sill, near face", (SqPlace){ opening->from_m, opening->sill_m }, 3.85, 0.85);
  check_place ("head, far face", (SqPlace){ opening->to_m, opening->head_m }, 4.15, 2.15);
  /* Wall is cut under it and over it, nowhere between. */
  for (guint i = 0; i < cut->parts->len; i++) {
    const SqCutPart *part = &g_array_index (cut->parts, SqCutPart, i);
    for (guint k = 0; part->owner->kind == &sq_wall_kind && k < part->n; k++) {
      double z = part->corner[k].y_m;
      g_assert_true (z <= 0.85 + EXACT || z >= 2.15 - EXACT);
    }
  }
  SqPlace least, most; /* the pane, in the middle of the wall */
  reach (cut, "o", &least, &most);
  check_place ("pane, foot", least, 4.0, 0.85);
  check_place ("pane, top", most, 4.0, 2.15);
}

static void
test_tilt_and_ticks (void)
{
  static const struct {
    double height, away, aim_height;
  } rows[] = { { 3, 4, 0 }, { 2.1, 2.4, 1.2 }, { 0.3, 3, 2.3 }, { 5, 0.5, 1 }, { 1.5, 2, 1.5 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text =
      g_strdup_printf ("'room': {'ceiling_height': null}, 'fixtures': [{'id': 'f', 'class': "
                       "'spot', 'at': [0, 0, %g], 'aim': [0, %g, %g]}]",
                       rows[i].height, rows[i].away, rows[i].aim_height);
    g_autoptr (SqSection) cut = section (text);
    const SqSectionThrow *way = &cut->way;
    double drop = rows[i].aim_height - rows[i].height;
    assert_near (way->tilt_deg, SQ_DEGREES (atan (drop / rows[i].away)), DEGREES);
    assert_near (way->away_m, hypot (drop, rows[i].away), EXACT);
    g_assert_true (way->reaches);
    check_place ("aim", way->aim, rows[i].away, rows[i].aim_height);
    for (guint n = 0; n < way->n_ticks; n++) /* n stops nearer: at d · 2^(-n / 2) */
      check_place ("tick", way->tick[n], rows[i].away * exp2 (-0.5 * n),
                   rows[i].height + drop * exp2 (-0.5 * n));
  }
}

static void
test_ticks_from_a_frame (void)
{
  /* A frame half way takes over as the source: the first tick lies a stop from the aim to it. */
  g_autoptr (SqSection) cut =
    section ("'panels': [{'id': 'd', 'kind': 'diffusion', 'at': [2, 0, 1.5], 'facing': 180, "
             "'width': 1, 'height': 1, 'material': '" CLOTH "'}], 'fixtures': [{'id': 'f', 'class':"
             "'spot', 'at': [0, 0, 1.5], 'aim': [4, 0, 1.5]}]");
  g_assert_true (cut->way.reaches); /* the axis runs on through it */
  g_assert_false (cut->way.hard);   /* and no edge is left behind it */
  check_place ("source", cut->way.ticks_from, 2.0, 1.5);
  check_place ("first tick", cut->way.tick[1], 2.0 + 2.0 / G_SQRT2, 1.5);
  check_place ("its upper end", cut->way.source[SQ_EDGE_ABOVE], 2.0, 2.0);
  check_place ("its lower end", cut->way.source[SQ_EDGE_UNDER], 2.0, 1.0);
}

static void
test_beam_edges_on_the_floor (void)
{
  static const struct {
    double height, away, roll, half_deg;
  } rows[] = { { 3, 4, 0, 15 }, { 2, 3, 0, 15 }, { 3, 4, 90, 10 }, { 4, 2, 90, 10 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text =
      g_strdup_printf ("'fixtures': [{'id': 'f', 'class': 'spot', 'at': [0, 0, %g], 'aim': [%g, 0, "
                       "0], 'roll': %g}]",
                       rows[i].height, rows[i].away, rows[i].roll);
    g_autoptr (SqSection) cut = section (text);
    double h = rows[i].height, steep = SQ_DEGREES (atan (h / rows[i].away));
    g_assert_true (cut->way.hard);
    /* From the nadir an edge is 90 - (tilt ± half) degrees off: it meets the floor at h · tan. */
    for (int share = 1; share <= 2; share++) {
      const SqPlace *ends = share == 1 ? cut->way.half : cut->way.tenth;
      double under = 90 - (steep + share * rows[i].half_deg);
      double above = 90 - (steep - share * rows[i].half_deg);
      check_place ("under", ends[SQ_EDGE_UNDER], h * tan (SQ_RADIANS (under)), 0.0);
      if (above < 85)
        check_place ("above", ends[SQ_EDGE_ABOVE], h * tan (SQ_RADIANS (above)), 0.0);
    }
    double half = SQ_RADIANS (rows[i].half_deg);
    assert_near (sq_section_beam_m (&cut->way), 2 * hypot (h, rows[i].away) * tan (half), EXACT);
  }
}

static void
test_beam_is_cut (void)
{
  /* A level beam of 15 degrees up and down, 2 m high; a flag's lower edge at 2.2 m, 1 m off, takes
   * the upper edge (2.27 m there); a table's top at 1.3 m, 3 m off, the lower one (1.20 m). */
  g_autoptr (SqSection) cut =
    section ("'panels': [{'id': 'g', 'kind': 'flag', 'at': [1, 0, 2.5], 'facing': 180, 'width': 1,"
             "'height': 0.6}], 'pieces': [{'id': 't', 'outline': [[3, -1], [5, -1], [5, 1], [3, "
             "1]], 'top': 1.3}], 'room': {'ceiling_height': null}, 'fixtures': [{'id': 'f', "
             "'class': 'spot', 'at': [0, 0, 2], 'aim': [6, 0, 2]}]");
  double up = tan (SQ_RADIANS (15));
  check_place ("above, at the flag", cut->way.half[SQ_EDGE_ABOVE], 1.0, 2.0 + up);
  check_place ("under, at the table", cut->way.half[SQ_EDGE_UNDER], 3.0, 2.0 - 3.0 * up);
}

static void
test_doors (void)
{
  /* The leaf's tip lies at (h cos a, h / 2 + h sin a) from the middle of a face that is h high. */
  static const struct {
    double top, bottom;
  } rows[] = { { 90, 0 }, { 0, 90 }, { -10, -20 }, { 90, 90 } };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf (
      "'fixtures': [{'id': 'f', 'class': 'spot', 'at': [0, 0, 2], 'aim': [4, 0, 2], 'modifiers': "
      "[{'kind': 'doors', 'leaves': [%g, 90, %g, 90]}]}]",
      rows[i].top, rows[i].bottom);
    g_autoptr (SqSection) cut = section (text);
    const double leaves[] = { rows[i].top, rows[i].bottom };
    for (int edge = 0; edge < SQ_EDGES; edge++) {
      double a = SQ_RADIANS (leaves[edge]);
      double tip = SQ_DEGREES (atan2 (0.5 + sin (a), cos (a)));
      assert_near (cut->way.edge_deg[edge], MIN (tip, 15.0), DEGREES);
      g_assert_true (cut->way.by_door[edge] == (tip < 15.0));
    }
  }
}

/* A scene with a lamp of no size at @height m, somebody @away m off and what @rest says. */
static SqSection *
shadow_scene (double height, double away, const char *mark, const char *rest)
{
  g_autofree char *text = g_strdup_printf (
    "'room': {'ceiling_height': null}, 'marks': [{'id': 'm', 'at': [%g, 0], %s}], 'fixtures': "
    "[{'id': 'f', 'class': 'point', 'at': [0, 0, %g], 'aim': 'm'}]%s",
    away, mark, height, rest);
  return section (text);
}

static const SqSectionShadow *
only_shadow (const SqSection *cut)
{
  g_assert_cmpuint (cut->shadows->len, ==, 1);
  return &g_array_index (cut->shadows, SqSectionShadow, 0);
}

static void
test_shadow_on_the_floor (void)
{
  static const struct {
    const char *mark;
    double h, a, p; /* lamp, distance, figure */
  } rows[] = {
    { "'stature': 1.7", 3.0, 4.0, 1.7 },
    { "'stature': 1.85", 2.4, 1.5, 1.85 },
    { "'stature': 1.2", 5.0, 6.0, 1.2 },
    { "'stature': 1.7, 'posture': 'sit'", 3.0, 2.0, 0.79 * 1.7 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqSection) cut = shadow_scene (rows[i].h, rows[i].a, rows[i].mark, "");
    const SqSectionShadow *shadow = only_shadow (cut);
    double behind = rows[i].a * rows[i].p / (rows[i].h - rows[i].p);
    g_assert_true (shadow->ends && shadow->end_on == NULL);
    check_place ("end", shadow->end, rows[i].a + behind, 0.0);
    assert_near (sq_section_shadow_length_m (shadow) * MM_PER_M, behind * MM_PER_M, PAPER_MM);
    /* One stretch of floor, from the foot. */
    g_assert_cmpuint (shadow->stretches->len, ==, 1);
    const SqShadowStretch *stretch = &g_array_index (shadow->stretches, SqShadowStretch, 0);
    check_place ("foot", stretch->from, rows[i].a, 0.0);
    check_place ("end of the stretch", stretch->to, rows[i].a + behind, 0.0);
  }
}

static void
test_shadow_up_the_wall (void)
{
  /* Lamp 3 m, 4 m off somebody of 1.7 m; a wall's face 2 m behind: the ray over the crown is at
   * 3 - (3 - 1.7) · 6 / 4 there. */
  g_autoptr (SqSection) cut = shadow_scene (
    3.0, 4.0, "'stature': 1.7",
    ", 'walls': [{'id': 'w', 'path': [[6, -3], [6, 3]], 'side': 'right', 'height': 2.7}]");
  const SqSectionShadow *shadow = only_shadow (cut);
  double up = 3.0 - 1.3 * 6.0 / 4.0;
  check_place ("end", shadow->end, 6.0, up);
  assert_near (sq_section_shadow_height_m (shadow), up, EXACT);
  g_assert_cmpuint (shadow->stretches->len, ==, 2);
  const SqShadowStretch *floor = &g_array_index (shadow->stretches, SqShadowStretch, 0);
  const SqShadowStretch *wall = &g_array_index (shadow->stretches, SqShadowStretch, 1);
  check_place ("foot", floor->from, 4.0, 0.0);
  check_place ("the wall's foot", floor->to, 6.0, 0.0);
  check_place ("up from it", wall->from, 6.0, 0.0);
  check_place ("to there", wall->to, 6.0, up);
}

static void
test_shadow_from_a_low_lamp (void)
{
  /* Under the crown the ray over it rises, and ends where a wall is: 1.5 + 0.2 · 6 / 4. */
  const char *wall =
    ", 'walls': [{'id': 'w', 'path': [[6, -3], [6, 3]], 'side': 'right', 'height': 2.7}]";
  g_autoptr (SqSection) walled = shadow_scene (1.5, 4.0, "'stature': 1.7", wall);
  check_place ("end", only_shadow (walled)->end, 6.0, 1.5 + 0.2 * 6.0 / 4.0);
  g_autoptr (SqSection) open = shadow_scene (1.5, 4.0, "'stature': 1.7", "");
  g_assert_false (only_shadow (open)->ends);
  g_assert_true (isinf (sq_section_shadow_length_m (only_shadow (open))));
}

static void
test_shadow_over_furniture (void)
{
  /* A table 0.8 m high from 1 to 2 m behind: the ray over the crown, 1.7 m at 4 m and falling 0.325
   * a metre, is at 1.05 m over its far end: the shadow covers its top and ends on the floor. */
  g_autoptr (SqSection) cut =
    shadow_scene (3.0, 4.0, "'stature': 1.7",
                  ", 'pieces': [{'id': 't', 'outline': [[5, -1], [6, -1], [6, 1], [5, 1]], 'top': "
                  "0.8}]");
  const SqSectionShadow *shadow = only_shadow (cut);
  double end = 4.0 * 3.0 / 1.3;
  gboolean top = FALSE, behind = FALSE;
  check_place ("end", shadow->end, end, 0.0);
  for (guint i = 0; i < shadow->stretches->len; i++) {
    const SqShadowStretch *stretch = &g_array_index (shadow->stretches, SqShadowStretch, i);
    double low = MIN (stretch->from.y_m, stretch->to.y_m);
    if (stretch->on != NULL && low > 0.7) {
      check_place ("top, near end", stretch->from, 5.0, 0.8);
      check_place ("top, far end", stretch->to, 6.0, 0.8);
      top = TRUE;
    }
    if (stretch->on == NULL && stretch->from.x_m > 5.5) {
      check_place ("behind it", stretch->from, 6.0, 0.0);
      check_place ("to the end", stretch->to, end, 0.0);
      behind = TRUE;
    }
  }
  g_assert_true (top && behind);
}

/* What stands before somebody is dark behind it: nothing of that is told as their shadow. */
static void
test_shadow_begins_at_the_figure (void)
{
  g_autoptr (SqSection) cut =
    shadow_scene (3.0, 4.0, "'stature': 1.7",
                  ", 'pieces': [{'id': 't', 'outline': [[2.5, -1], [3, -1], [3, 1], [2.5, 1]], "
                  "'top': 1.0}]");
  const SqSectionShadow *shadow = only_shadow (cut);
  check_place ("end", shadow->end, 4.0 * 3.0 / 1.3, 0.0);
  g_assert_cmpuint (shadow->stretches->len, ==, 1);
  check_place ("foot", g_array_index (shadow->stretches, SqShadowStretch, 0).from, 4.0, 0.0);
}

static void
test_penumbra (void)
{
  /* The face, 0.4 m high, stands across the axis: its two ends are 0.2 m off along (-sin, cos). */
  g_autoptr (SqSection) cut =
    section ("'room': {'ceiling_height': null}, 'marks': [{'id': 'm', 'at': [4, 0], 'stature': "
             "1.7}], 'fixtures': [{'id': 'f', 'class': 'spot', 'at': [0, 0, 3], 'aim': 'm'}]");
  const SqSectionShadow *shadow = only_shadow (cut);
  double face = 0.936 * 1.7, tilt = atan ((face - 3.0) / 4.0);
  for (int edge = 0; edge < SQ_EDGES; edge++) {
    double side = edge == SQ_EDGE_ABOVE ? 0.2 : -0.2;
    double x = -side * sin (tilt), z = 3.0 + side * cos (tilt);
    check_place ("end of the face", cut->way.source[edge], x, z);
    g_assert_true (shadow->has_edge[edge]);
    check_place ("edge", shadow->edge[edge], x + (4.0 - x) * z / (z - 1.7), 0.0);
  }
  double apart = atan2 (3.0 + 0.2 * cos (tilt) - face, 4.0 + 0.2 * sin (tilt)) -
                 atan2 (3.0 - 0.2 * cos (tilt) - face, 4.0 - 0.2 * sin (tilt));
  assert_near (sq_section_source_deg (&cut->way), fabs (SQ_DEGREES (apart)), DEGREES);
}

static void
test_no_shadow (void)
{
  static const struct {
    const char *name, *mark, *rest;
  } rows[] = {
    { "lying", "'posture': 'lie'", "" },
    { "hidden", "'hidden': true", "" },
    { "behind a flag", "'stature': 1.7",
      ", 'panels': [{'id': 'g', 'kind': 'flag', 'at': [2, 0, 1.5], 'facing': 180, 'width': 3, "
      "'height': 3}]" },
    { "behind a wall", "'stature': 1.7",
      ", 'walls': [{'id': 'w', 'path': [[2, -3], [2, 3]], 'height': 4}]" },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autoptr (SqSection) cut = shadow_scene (3.0, 4.0, rows[i].mark, rows[i].rest);
    if (cut->shadows->len > 0)
      g_error ("%s: throws a shadow", rows[i].name);
  }
}

/* Who is not lit throws no shadow. The face looks straight up from 1.8 m, over a crown of 1.7 m;
 * the crate's cells let nothing through past 20 degrees, and from 3 m up and 4 m off the figure is
 * seen from 18 degrees (the crown, atan (1.3 / 4)) to 37 (the foot, atan (3 / 4)) below the level.
 */
static void
test_no_shadow_without_light (void)
{
  static const struct {
    const char *name, *at, *aim, *more;
    guint n;
  } rows[] = {
    { "up", "[0, 0, 1.8]", "[0, 0, 2.5]", "", 0 },
    { "up, from under the crown", "[0, 0, 1.2]", "[0, 0, 2.5]", "", 1 },
    { "away", "[0, 0, 3]", "[-4, 0, 3]", "", 0 },
    { "along a crate", "[0, 0, 3]", "[4, 0, 1]", "{'kind': 'egg-crate', 'cutoff_deg': 20}", 1 },
    { "past a crate", "[0, 0, 3]", "[4, 0, 5]", "{'kind': 'egg-crate', 'cutoff_deg': 20}", 0 },
    { "dark", "[0, 0, 3]", "[4, 0, 1]", "", 0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf (
      "'classes': [{'id': 'soft', 'name': 'soft', 'optics': 'panel', 'source': 'led', 'input_w': "
      "100, 'face': {'shape': 'rect', 'width': 0.2, 'height': 0.2}, 'body': {'width': 0.3, "
      "'depth': 0.1, 'height': 0.3}, 'emits': 'lambert', 'lumens': 3000}], "
      "'room': {'ceiling_height': null}, 'marks': [{'id': 'm', 'at': [4, 0], 'stature': 1.7}], "
      "'walls': [{'id': 'w', 'path': [[7, -3], [7, 3]], 'height': 4}], "
      "'fixtures': [{'id': 'f', 'class': 'soft', 'at': %s, 'aim': %s, 'level': %d, "
      "'modifiers': [%s]}]",
      rows[i].at, rows[i].aim, !g_str_equal (rows[i].name, "dark"), rows[i].more);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (SqSection) cut = section_of (scene);
    if (cut->shadows->len != rows[i].n)
      g_error ("%s: %u shadows, wanted %u", rows[i].name, cut->shadows->len, rows[i].n);
  }
}

/* The drawing reaches down to who stands in a pit, and to what lights them from there. */
static void
test_reaches_into_a_pit (void)
{
  static const struct {
    double lamp, floor, least;
  } rows[] = {
    { 2.0, 0.0, -SQ_SECTION_FLOOR_M },
    { 2.0, -1.5, -1.5 },
    { -3.0, 0.0, -3.0 },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *text = g_strdup_printf (
      "'marks': [{'id': 'm', 'at': [4, 0], 'floor': %g}], 'fixtures': [{'id': 'f', 'class': "
      "'point', 'at': [0, 0, %g], 'aim': 'm'}]",
      rows[i].floor, rows[i].lamp);
    g_autoptr (SqSection) cut = section (text);
    if (i == 0)
      assert_near (cut->set.least.y_m, rows[i].least, EXACT);
    else
      g_assert_cmpfloat (cut->set.least.y_m, <=, rows[i].least);
  }
}

/* The drawn figure is as high as the body that blocks light. */
static void
test_figures_as_high_as_bodies (void)
{
  static const char *const postures[] = { "stand", "sit", "lie" };
  for (guint i = 0; i < G_N_ELEMENTS (postures); i++) {
    g_autofree char *text = g_strdup_printf (
      "'marks': [{'id': 'm', 'at': [0, 0], 'posture': '%s', 'stature': 1.8}]", postures[i]);
    g_autoptr (SqScene) scene = right_scene (text);
    g_autoptr (GArray) bodies = sq_obstacles_new (scene);
    double top = 0.0;
    for (guint k = 0; k < bodies->len; k++) {
      const SqSolid *solid = &g_array_index (bodies, SqObstacle, k).solid;
      for (guint c = 0; c < solid->n_corners; c++)
        top = MAX (top, solid->corners[c].z_m);
    }
    assert_near (sq_figure_height_m (SQ_AT (SqMark, scene->marks, 0)), top, EXACT);
  }
}

static void
test_handles (void)
{
  g_autoptr (SqSection) cut =
    section ("'panels': [{'id': 'g', 'kind': 'net', 'at': [2, 0.1, 1.7], 'facing': 180, 'width': "
             "1, 'height': 0.6, 'material': 'single-net'}], 'cameras': [{'id': 'c', 'at': [3, 0.4, "
             "1.2], 'aim': [5, 0, 1]}], 'fixtures': [{'id': 'f', 'class': 'spot', 'at': [0, 0, 3], "
             "'aim': [4, 0, 1]}]");
  static const struct {
    SqSectionHandleKind kind;
    double along, height;
  } wanted[] = { { SQ_HANDLE_HEIGHT, 0.0, 3.0 },
                 { SQ_HANDLE_AIM, 4.0, 1.0 },
                 { SQ_HANDLE_PANEL, 2.0, 1.7 },
                 { SQ_HANDLE_CAMERA, 3.0, 1.2 } };
  g_autoptr (GArray) handles = g_array_new (FALSE, FALSE, sizeof (SqSectionHandle));
  sq_section_handles (&one_to_fifty, cut, handles);
  g_assert_cmpuint (handles->len, ==, G_N_ELEMENTS (wanted) + 2); /* and two of the beam */
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++) {
    gboolean found = FALSE;
    for (guint k = 0; k < handles->len; k++) {
      const SqSectionHandle *handle = &g_array_index (handles, SqSectionHandle, k);
      if (handle->kind != wanted[i].kind)
        continue;
      check_place ("handle", handle->place, wanted[i].along, wanted[i].height);
      SqPaperPoint at = on_page (handle->place);
      assert_near (sq_paper_distance_mm (at, handle->at), 0.0, PAPER_MM);
      found = TRUE;
    }
    g_assert_true (found);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/section/cut/through the light and what it points at", test_plane);
  g_test_add_func ("/section/cut/walls stand at their distance", test_walls_at_their_distance);
  g_test_add_func ("/section/cut/openings by sill and head", test_openings_by_sill_and_head);
  g_test_add_func ("/section/throw/tilt and stop ticks", test_tilt_and_ticks);
  g_test_add_func ("/section/throw/ticks count from a frame", test_ticks_from_a_frame);
  g_test_add_func ("/section/throw/beam edges meet the floor", test_beam_edges_on_the_floor);
  g_test_add_func ("/section/throw/beam edges end at what blocks them", test_beam_is_cut);
  g_test_add_func ("/section/throw/doors cut the beam", test_doors);
  g_test_add_func ("/section/shadow/along the floor", test_shadow_on_the_floor);
  g_test_add_func ("/section/shadow/up the wall", test_shadow_up_the_wall);
  g_test_add_func ("/section/shadow/from a lamp under the crown", test_shadow_from_a_low_lamp);
  g_test_add_func ("/section/shadow/over furniture", test_shadow_over_furniture);
  g_test_add_func ("/section/shadow/begins at the figure", test_shadow_begins_at_the_figure);
  g_test_add_func ("/section/shadow/soft edge", test_penumbra);
  g_test_add_func ("/section/shadow/none", test_no_shadow);
  g_test_add_func ("/section/shadow/none without light", test_no_shadow_without_light);
  g_test_add_func ("/section/people are as high as their bodies", test_figures_as_high_as_bodies);
  g_test_add_func ("/section/reaches into a pit", test_reaches_into_a_pit);
  g_test_add_func ("/section/handles stand at their places", test_handles);
  return g_test_run ();
}
