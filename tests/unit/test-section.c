/* test-section.c: the upright cut: what it goes through, and where light goes on it
 *
 * All expected values are closed forms: similar triangles, tangents, the inverse square law. */
#include "section-place.h"

#include "light/obstacles.h"

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

static void
test_rolled_disc (void)
{
  /* However it is rolled, a disc of 0.4 m reaches 0.2 m up and down from its middle. */
  g_autoptr (SqSection) cut =
    section ("'fixtures': [{'id': 'f', 'class': 'disc', 'at': [0, 0, 2], 'aim': [4, 0, 2], 'roll': "
             "45}]");
  check_place ("upper end", cut->way.source[SQ_EDGE_ABOVE], 0.0, 2.2);
  check_place ("lower end", cut->way.source[SQ_EDGE_UNDER], 0.0, 1.8);
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
    assert_near (sq_mark_crown_height_m (SQ_AT (SqMark, scene->marks, 0)), top, EXACT);
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
  g_test_add_func ("/section/shadow/a round face, rolled", test_rolled_disc);
  g_test_add_func ("/section/people are as high as their bodies", test_figures_as_high_as_bodies);
  g_test_add_func ("/section/reaches into a pit", test_reaches_into_a_pit);
  g_test_add_func ("/section/handles stand at their places", test_handles);
  return g_test_run ();
}
