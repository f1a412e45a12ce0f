/* test-solids.c: walls, openings, pieces, people and panels as what they let through */
#include "light-scene.h"
#include "light/obstacles.h"
#include "light/outline.h"

/* Of what would be read with nothing between. */
#define DARK 1e-6
#define EXACT 1e-9

/* A point lamp of 1000 cd all round, and one of the same candela with a face. */
#define POINT_LAMP "'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172}]"
#define BALL_LAMP                                                                                  \
  "'classes': [{'id': 'c', 'emits': 'sphere', 'lumens': 12566.370614359172, 'face': {'width': "    \
  "0.5}}]"

/* What a probe at @to, turned to the lamp at @from, reads against nothing between. */
static double
share_between (const char *lamp, const char *set, SqPoint from, SqPoint to)
{
  g_autoptr (SqScene) scene =
    scene_of ("%s, 'fixtures': [{'id': 'f', 'class': 'c', 'at': [%.17g, %.17g, %.17g]}],"
              "'probes': [{'id': 'p', 'at': [%.17g, %.17g, %.17g], 'toward': 'f'}] %s%s",
              lamp, from.x_m, from.y_m, from.z_m, to.x_m, to.y_m, to.z_m, *set ? "," : "", set);
  SqVector way = sq_vector_between (from, to);
  return lux_of (scene) / (1000.0 / sq_vector_dot (way, way));
}

/* Paths that turn left, right, sharply, hardly, or close up; every body side. */
static const struct {
  const char *name, *path;
  gboolean closed;
} corners[] = {
  { "square", "[[0, 0], [4, 0], [4, 3], [0, 3]]", TRUE },
  { "square, other way round", "[[0, 0], [0, 3], [4, 3], [4, 0]]", TRUE },
  { "triangle", "[[0, 0], [4, 0.5], [1, 3]]", TRUE },
  { "needle", "[[0, 0], [4, 0.2], [0, 0.7]]", TRUE },
  { "concave", "[[0, 0], [4, 0], [4, 3], [2, 0.6], [0, 3]]", TRUE },
  { "short edges", "[[0, 0], [4, 0], [4.05, 0.05], [4.05, 3], [0, 3]]", TRUE },
};

static SqPoint
inside_of (gsize i)
{
  static const SqPlace places[] = { { 1, 1 },      { 1, 1 },     { 1.5, 1 },
                                    { 0.8, 0.36 }, { 0.7, 0.7 }, { 1, 1 } };
  return sq_point_above (places[i], 1.0);
}

/* No light comes into a room that is shut, at its corners or where walls and ceiling meet, from
 * lamps all round it and above. */
static void
test_no_leaks (void)
{
  static const char *const sides[] = { "centre", "left", "right" };
  static const char *const lamps[] = { POINT_LAMP, BALL_LAMP };
  for (gsize i = 0; i < G_N_ELEMENTS (corners); i++)
    for (gsize side = 0; side < G_N_ELEMENTS (sides); side++)
      for (gsize lamp = 0; lamp < G_N_ELEMENTS (lamps); lamp++)
        for (int k = 0; k < 60; k++) {
          g_autofree char *room = g_strdup_printf (
            "'room': {'ceiling_height': 2.5}, 'walls': [{'path': %s, 'closed': true,"
            "'thickness': 0.1, 'side': '%s'}]",
            corners[i].path, sides[side]);
          double a = 2.0 * G_PI * k / 60.0, z = 0.3 + 7.0 * (k % 7) / 6.0;
          SqPoint from = sq_point (2 + 9 * cos (a), 1.5 + 9 * sin (a), z);
          double share = share_between (lamps[lamp], room, from, inside_of (i));
          if (share > DARK)
            g_error ("%s, %s, lamp at %g, %g, %g: %g comes in", corners[i].name, sides[side],
                     from.x_m, from.y_m, from.z_m, share);
        }
}

/* Straight through a corner's mitre, where two solids touch. */
static void
test_through_mitres (void)
{
  static const char room[] = "'room': {'ceiling_height': 2.5}, 'walls': [{'closed': true,"
                             "'path': [[0, 0], [4, 0], [4, 4], [0, 4]]}]";
  g_assert_cmpfloat (share_between (POINT_LAMP, room, sq_point (-2, -2, 1), sq_point (2, 2, 1)), <,
                     DARK);
  g_assert_cmpfloat (share_between (BALL_LAMP, room, sq_point (-2, -2, 1), sq_point (2, 2, 1)), <,
                     DARK);
  /* Along the joint of wall and ceiling. */
  g_assert_cmpfloat (share_between (POINT_LAMP, room, sq_point (-1, 2, 2.5), sq_point (2, 2, 2.4)),
                     <, DARK);
  g_assert_cmpfloat (share_between (BALL_LAMP, room, sq_point (-2, 2, 4), sq_point (2, 2, 1)), <,
                     DARK);
}

/* Inside, the walls take nothing away. */
static void
test_inside_is_clear (void)
{
  static const char room[] = "'room': {'ceiling_height': 2.5}, 'walls': [{'closed': true,"
                             "'path': [[0, 0], [4, 0], [4, 4], [0, 4]]}]";
  assert_near (share_between (POINT_LAMP, room, sq_point (0.2, 0.2, 2.4), sq_point (3.8, 3.8, 0)),
               1.0, EXACT);
  /* A lamp flush on the ceiling, and a point flush on a wall's face. */
  assert_near (share_between (POINT_LAMP, room, sq_point (2, 2, 2.5), sq_point (1, 1, 1)), 1.0,
               EXACT);
  assert_near (share_between (POINT_LAMP, room, sq_point (2, 2, 1), sq_point (0.06, 1, 1)), 1.0,
               EXACT);
  /* That point sees nothing through its own wall. */
  g_assert_cmpfloat (share_between (POINT_LAMP, room, sq_point (-2, 1.1, 1), sq_point (0.06, 1, 1)),
                     ==, 0.0);
}

typedef struct {
  const char *name, *opening;
  SqPoint from, to;
  double share;
} Way;

/* A wall along x, 0.2 thick, its opening from x = 1 to 2; straight through its middle, or beside.
 */
static const Way ways[] = {
  { "a window passes what glazing passes",
    "'kind': 'window'",
    { 1.5, -2, 1.5 },
    { 1.5, 2, 1.5 },
    0.8 },
  { "glazing and a gel on it",
    "'kind': 'window', 'material': 'half'",
    { 1.5, -2, 1.5 },
    { 1.5, 2, 1.5 },
    0.4 },
  { "a hole passes all",
    "'kind': 'opening', 'sill': 1, 'head': 2",
    { 1.5, -2, 1.5 },
    { 1.5, 2, 1.5 },
    1.0 },
  { "under the sill",
    "'kind': 'window', 'sill': 1, 'head': 2",
    { 1.5, -2, 0.9 },
    { 1.5, 2, 0.9 },
    0.0 },
  { "over the head",
    "'kind': 'window', 'sill': 1, 'head': 2",
    { 1.5, -2, 2.1 },
    { 1.5, 2, 2.1 },
    0.0 },
  { "before the near jamb", "'kind': 'opening'", { 0.9, -2, 1 }, { 0.9, 2, 1 }, 0.0 },
  { "past the far jamb", "'kind': 'opening'", { 2.1, -2, 1 }, { 2.1, 2, 1 }, 0.0 },
  { "a slanting ray", "'kind': 'opening'", { 3.5, -2, 1 }, { -0.5, 2, 1 }, 1.0 },
  /* In at x = 1.9, within the hole; at the far face it would be at 0.7. */
  { "a steep ray ends on the reveal", "'kind': 'opening'", { 7.9, -1.1, 1 }, { -4.7, 1, 1 }, 0.0 },
  { "a door open at a right angle", "'kind': 'door'", { 1.5, -2, 1 }, { 1.5, 2, 1 }, 1.0 },
  { "a door shut", "'kind': 'door', 'open_deg': 0", { 1.5, -2, 1 }, { 1.5, 2, 1 }, 0.0 },
  { "a door shut, under the leaf's upper corner",
    "'kind': 'door', 'open_deg': 0",
    { 1.99, -2, 2.09 },
    { 1.99, 2, 2.09 },
    0.0 },
  /* The leaf stands from (1, 0) to (1, 1): positive is to the path's left. */
  { "an open leaf stands to the left", "'kind': 'door'", { 0.5, 0.5, 1 }, { 1.5, 0.5, 1 }, 0.0 },
  { "no leaf stands to the right", "'kind': 'door'", { 0.5, -0.5, 1 }, { 1.5, -0.5, 1 }, 1.0 },
  { "a leaf opened the other way",
    "'kind': 'door', 'open_deg': -90",
    { 0.5, -0.5, 1 },
    { 1.5, -0.5, 1 },
    0.0 },
  { "a door of frosted glass",
    "'kind': 'door', 'transmittance': 0.3",
    { 1.5, -2, 1 },
    { 1.5, 2, 1 },
    0.3 },
};

static void
test_way (gconstpointer data)
{
  const Way *way = data;
  g_autofree char *set =
    g_strdup_printf ("'materials': [{'id': 'half', 'for': 'gel', 'direct': 0.5}],"
                     "'walls': [{'path': [[0, 0], [4, 0]], 'thickness': 0.2, 'height': 3,"
                     "  'openings': [{'offset': 1, 'width': 1, %s}]}]",
                     way->opening);
  double share = share_between (POINT_LAMP, set, way->from, way->to);
  g_assert_cmpfloat_with_epsilon (share, way->share, EXACT);
}

/* The reveal's depth: through a hole 1 wide in a wall 0.2 deep a ray at 45 degrees has 0.8 of it.
 */
static void
test_reveal (void)
{
  static const char hole[] =
    "'walls': [{'path': [[0, 0], [4, 0]], 'thickness': 0.2, 'height': 3,"
    "'openings': [{'kind': 'opening', 'offset': 1, 'width': 1, 'sill': 0, 'head': 2.5}]}]";
  int passed = 0;
  const int rays = 2000;
  for (int i = 0; i < rays; i++) {
    double x = 0.8 + 1.4 * (i + 0.5) / rays; /* where it crosses the middle of the wall */
    passed +=
      share_between (POINT_LAMP, hole, sq_point (x - 1, -1, 1), sq_point (x + 1, 1, 1)) > 0.5;
  }
  g_assert_cmpfloat_with_epsilon (passed * 1.4 / rays, 0.8, 0.002);
}

/* A net passes its direct share, to the last digit; two of them the product. */
static void
test_nets (void)
{
  static const char one[] =
    "'materials': [{'id': 'n', 'for': 'net', 'direct': 0.707}], 'panels': ["
    "{'id': 'a', 'kind': 'net', 'material': 'n', 'at': [0, 0, 2], 'tilt': 90, 'width': 4,"
    " 'height': 4}]";
  static const char two[] =
    "'materials': [{'id': 'n', 'for': 'net', 'direct': 0.707}], 'panels': ["
    "{'id': 'a', 'kind': 'net', 'material': 'n', 'at': [0, 0, 2], 'tilt': 90, 'width': 4,"
    " 'height': 4},"
    "{'id': 'b', 'kind': 'net', 'material': 'n', 'at': [0, 0, 1], 'tilt': 80, 'width': 4,"
    " 'height': 4}]";
  SqPoint from = sq_point (0.3, 0, 3), to = sq_point (0, 0, 0);
  assert_near (share_between (POINT_LAMP, one, from, to), 0.707, EXACT);
  assert_near (share_between (POINT_LAMP, two, from, to), 0.707 * 0.707, EXACT);
  double clear = share_between (BALL_LAMP, "", from, to);
  assert_near (share_between (BALL_LAMP, one, from, to) / clear, 0.707, EXACT);
  assert_near (share_between (BALL_LAMP, two, from, to) / clear, 0.707 * 0.707, EXACT);
}

/* A struck panel is gone; a hidden one is not. A flag stops all, whatever it is made of. */
static void
test_panels (void)
{
  static const struct {
    const char *panel;
    double share;
  } rows[] = {
    { "'kind': 'flag'", 0.0 },
    { "'kind': 'flag', 'hidden': true", 0.0 },
    { "'kind': 'flag', 'set': false", 1.0 },
    { "'kind': 'flag', 'material': 'm'", 0.0 },
    { "'kind': 'diffusion', 'material': 'm'", 0.25 },
    { "'kind': 'bounce', 'material': 'm'", 0.25 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *set = g_strdup_printf (
      "'materials': [{'id': 'm', 'for': 'diffusion', 'direct': 0.25, 'scatter': 0.5}],"
      "'panels': [{'id': 'g', 'at': [0, 0, 1], 'tilt': 90, 'width': 1, 'height': 1, %s}]",
      rows[i].panel);
    g_assert_cmpfloat_with_epsilon (
      share_between (POINT_LAMP, set, sq_point (0.1, 0, 2), sq_point (0, 0, 0)), rows[i].share,
      EXACT);
  }
}

/* A U of 3 by 3 with a slot 1 wide from y = 1 up: light passes in the slot, not through the arms.
 */
static void
test_concave_piece (void)
{
  static const char *const outlines[] = {
    "[[0,0], [3,0], [3,3], [2,3], [2,1], [1,1], [1,3], [0,3]]",
    "[[0,3], [1,3], [1,1], [2,1], [2,3], [3,3], [3,0], [0,0]]",
  };
  static const struct {
    SqPoint from, to;
    double share;
  } rows[] = {
    { { 1.5, 5, 0.5 }, { 1.5, 1.2, 0.5 }, 1.0 },  { { 1.5, 5, 0.5 }, { 1.5, -1, 0.5 }, 0.0 },
    { { -1, 2, 0.5 }, { 1.5, 2, 0.5 }, 0.0 },     { { -1, 2, 0.5 }, { 4, 2, 0.5 }, 0.0 },
    { { -1, 2, 2 }, { 4, 2, 2 }, 1.0 },           { { 0.5, 5, 0.5 }, { 0.5, 3.1, 0.5 }, 1.0 },
    { { 0.5, 5, 0.5 }, { 0.5, -0.1, 0.5 }, 0.0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (outlines); i++)
    for (gsize k = 0; k < G_N_ELEMENTS (rows); k++) {
      g_autofree char *set = g_strdup_printf ("'pieces': [{'outline': %s, 'top': 1}]", outlines[i]);
      g_assert_cmpfloat_with_epsilon (share_between (POINT_LAMP, set, rows[k].from, rows[k].to),
                                      rows[k].share, EXACT);
    }
}

/* Random stars about a point: parts are convex, counter-clockwise, and as large together. */
static void
test_outlines (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  for (int round = 0; round < 300; round++) {
    SqPlace star[40];
    guint n = (guint)g_rand_int_range (rand, 3, 41);
    for (guint i = 0; i < n; i++) {
      double r = g_rand_double_range (rand, 0.2, 2.0), a = 2.0 * G_PI * i / n;
      star[round % 2 ? n - 1 - i : i] = (SqPlace){ r * cos (a), r * sin (a) };
    }
    g_autoptr (GPtrArray) parts = sq_outline_split (star, n);
    double twice = 0.0;
    for (guint i = 0; i < parts->len; i++) {
      const GArray *part = g_ptr_array_index (parts, i);
      for (guint k = 0; k < part->len; k++) {
        SqPlace corner[3];
        for (guint m = 0; m < 3; m++)
          corner[m] = g_array_index (part, SqPlace, (k + m) % part->len);
        g_assert_cmpfloat (sq_outline_twice_area_m2 (corner, 3), >, -1e-9);
      }
      twice += sq_outline_twice_area_m2 ((const SqPlace *)(void *)part->data, part->len);
    }
    assert_near (twice, fabs (sq_outline_twice_area_m2 (star, n)), EXACT);
    g_assert_cmpuint (parts->len, <, n - 1);
  }
  static const SqPlace bow[] = { { 0, 0 }, { 1, 1 }, { 1, 0 }, { 0, 1.5 } };
  g_assert_null (sq_outline_split (bow, G_N_ELEMENTS (bow)));
}

/* Somebody of 1.70 m stands in the way at head, waist and feet, and above the crown does not;
 * sitting, the crown is at 0.79 of stature; lying, the body lies behind the face. */
static void
test_people (void)
{
  static const struct {
    const char *posture;
    SqPoint from, to;
    double share;
  } rows[] = {
    { "stand", { -2, 0, 1.6 }, { 2, 0, 1.6 }, 0.0 },
    { "stand", { -2, 0, 1.0 }, { 2, 0, 1.0 }, 0.0 },
    { "stand", { -2, 0, 0.2 }, { 2, 0, 0.2 }, 0.0 },
    { "stand", { -2, 0, 1.72 }, { 2, 0, 1.72 }, 1.0 },
    { "stand", { -2, 0.2, 1.6 }, { 2, 0.2, 1.6 }, 1.0 }, /* beside the head */
    { "stand", { -2, 0.2, 1.2 }, { 2, 0.2, 1.2 }, 0.0 }, /* the shoulder: facing is +x */
    { "sit", { 0, -2, 1.3 }, { 0, 2, 1.3 }, 0.0 },
    { "sit", { 0, -2, 1.4 }, { 0, 2, 1.4 }, 1.0 },
    { "sit", { 0.3, -2, 0.42 }, { 0.3, 2, 0.42 }, 0.0 }, /* thighs, ahead */
    { "sit", { -0.3, -2, 0.42 }, { -0.3, 2, 0.42 }, 1.0 },
    { "lie", { -1, -2, 0.1 }, { -1, 2, 0.1 }, 0.0 },
    { "lie", { 0.5, -2, 0.1 }, { 0.5, 2, 0.1 }, 1.0 },
    { "lie", { -1, -2, 0.4 }, { -1, 2, 0.4 }, 1.0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *set = g_strdup_printf (
      "'marks': [{'id': 'm', 'at': [0, 0], 'facing': 0, 'posture': '%s'}]", rows[i].posture);
    double share = share_between (POINT_LAMP, set, rows[i].from, rows[i].to);
    if (fabs (share - rows[i].share) > EXACT)
      g_error ("%s, row %u: %g", rows[i].posture, (guint)i, share);
  }
}

/* Half of a ball that somebody's shoulder covers is dark behind it: penumbra width w = D b / a
 * (source D, source to edge a, edge to screen b), the closed form of a straight edge: 0.5, 3, 1. */
static void
test_penumbra (void)
{
  double dark_m = NAN, bright_m = NAN;
  for (double x = -0.2; x < 0.2; x += 0.0005) {
    g_autoptr (SqScene) scene =
      scene_of ("'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': 1000,"
                "  'face': {'shape': 'rect', 'width': 0.5}}],"
                "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 4]}],"
                "'panels': [{'id': 'g', 'kind': 'flag', 'at': [5, 0, 1], 'tilt': 90, 'width': 10,"
                "  'height': 10}], 'probes': [{'id': 'p', 'at': [%.17g, 0, 0]}, {'id': 'q', "
                "'at': [-3, 0, 0]}]",
                x);
    /* Scanning toward the shade: the first that is not whole, the last that is not dark. */
    double lux = lux_of (scene), whole;
    g_autoptr (SqScene) clear =
      scene_of ("'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': 1000,"
                "  'face': {'shape': 'rect', 'width': 0.5}}],"
                "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 4]}],"
                "'probes': [{'id': 'p', 'at': [%.17g, 0, 0]}]",
                x);
    whole = lux_of (clear);
    if (isnan (bright_m) && lux < whole * (1.0 - 1e-9))
      bright_m = x;
    if (lux > 0.0)
      dark_m = x;
  }
  g_assert_cmpfloat_with_epsilon (dark_m - bright_m, 0.166667, 0.0011);
}

/* Leaves shadow only their own lamp: the top one straight ahead hides the upper half of the face
 * from above its hinge. */
static void
test_doors (void)
{
  static const char lamps[] =
    "'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': 1000,"
    "  'face': {'shape': 'rect', 'width': 0.4, 'height': 0.2}}],"
    "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 1], 'aim': [0, 5, 1], 'modifiers': ["
    "   {'kind': 'doors', 'leaves': [%s]}]},"
    "  {'id': 'g', 'class': 'c', 'at': [0, 0, 1], 'aim': [0, 5, 1]}],"
    "'probes': [{'id': 'p', 'at': [%s], 'normal': [0, -1, 0]}]";
  static const struct {
    const char *leaves, *at;
    double share;
  } rows[] = {
    { "90, 90, 90, 90", "0, 3, 2", 1.0 },
    { "0, 90, 90, 90", "0, 3, 5", 0.0 }, /* over the top leaf, which is 0.2 long */
    { "0, 90, 90, 90", "0, 3, 1", 1.0 },
    { "90, 90, 0, 90", "0, 3, -3", 0.0 }, /* under the bottom leaf */
    { "90, 90, 0, 90", "0, 3, 5", 1.0 },
    { "90, 0, 90, 90", "4, 3, 1", 0.0 }, /* right of the right leaf, which is 0.4 long */
    { "90, 0, 90, 90", "-4, 3, 1", 1.0 },
    { "90, 90, 90, 0", "-4, 3, 1", 0.0 },
    { "-60, 90, 90, 90", "0, 3, 1.9", 0.0 }, /* folded in, its tip is under the middle */
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *format = g_strdup (lamps);
    g_autofree char *text = NULL;
    g_auto (GStrv) parts = g_strsplit (format, "%s", 3);
    text = g_strconcat (parts[0], rows[i].leaves, parts[1], rows[i].at, parts[2], NULL);
    g_autoptr (SqScene) scene = scene_of ("%s", text);
    g_autoptr (SqReadings) readings = readings_of (scene);
    const GArray *by = first_probe (readings)->rows;
    double with = g_array_index (by, SqReadingRow, 0).lux;
    double without = g_array_index (by, SqReadingRow, 1).lux;
    g_assert_cmpfloat (without, >, 0.0);
    if (fabs (with / without - rows[i].share) > DARK)
      g_error ("leaves %s, at %s: %g", rows[i].leaves, rows[i].at, with / without);
  }
}

/* More parts than are kept: a lattice of flags, then cells; within a few hundredths of the share of
 * the face that is open. */
static void
test_many_parts (void)
{
  g_autoptr (GString) panels = g_string_new (NULL);
  for (int i = 0; i < 40; i++)
    for (int k = 0; k < 40; k++)
      g_string_append_printf (panels,
                              "%s{'id': 'g%d-%d', 'kind': 'flag', 'at': [%g, %g, 1], 'tilt': 90,"
                              "'width': 0.0125, 'height': 0.0125}",
                              panels->len ? "," : "", i, k, -0.5 + 0.025 * (i + 0.5),
                              -0.5 + 0.025 * (k + 0.5));
  static const char format[] = "'classes': [{'id': 'c', 'emits': 'lambert', 'lumens': 1000,"
                               "'face': {'shape': 'rect', 'width': 2}}],"
                               "'fixtures': [{'id': 'f', 'class': 'c', 'at': [0, 0, 2]}],"
                               "'probes': [{'id': 'p', 'at': [0, 0, 0]}], 'panels': [%s]";
  g_autoptr (SqScene) shaded = scene_of (format, panels->str);
  g_autoptr (SqScene) clear = scene_of (format, "");
  g_assert_cmpfloat_with_epsilon (lux_of (shaded) / lux_of (clear), 0.75, 0.05);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/solids/no light leaks into a shut room", test_no_leaks);
  g_test_add_func ("/solids/no light passes where solids touch", test_through_mitres);
  g_test_add_func ("/solids/walls take nothing away inside", test_inside_is_clear);
  for (gsize i = 0; i < G_N_ELEMENTS (ways); i++) {
    g_autofree char *path = g_strdup_printf ("/solids/openings/%s", ways[i].name);
    g_test_add_data_func (path, &ways[i], test_way);
  }
  g_test_add_func ("/solids/openings/reveals have depth", test_reveal);
  g_test_add_func ("/solids/nets multiply", test_nets);
  g_test_add_func ("/solids/panels", test_panels);
  g_test_add_func ("/solids/a concave piece", test_concave_piece);
  g_test_add_func ("/solids/outlines are cut into convex ones", test_outlines);
  g_test_add_func ("/solids/people", test_people);
  g_test_add_func ("/solids/penumbra", test_penumbra);
  g_test_add_func ("/solids/doors of a lamp", test_doors);
  g_test_add_func ("/solids/more parts than are kept", test_many_parts);
  return g_test_run ();
}
