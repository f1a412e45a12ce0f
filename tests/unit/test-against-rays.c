/* test-against-rays.c: readings against rays cast at random, in random scenes
 *
 * Nothing here knows of shadows, silhouettes or contours: a lamp is a cloud of places, each place
 * is seen or not along a straight ray, and what a ray meets is found in the frame of each thing. */
#include "light-scene.h"
#include "light/obstacles.h"

#define SCENES 300
#define PROBES 16
#define ROUNDS 3       /* independent sums, for their spread */
#define SHADED 20      /* the same where something is in the way */
#define STRATA 32      /* a side of the face */
#define TOLERANCE 0.01 /* of the reference */
#define SIGMAS 3.0
#define LEAST                                                                                      \
  0.01 /* of the lamp's peak there, and of what is read with nothing between; below                \
        * that nothing is compared */

/* What may stand in the way, each in a frame of its own: x and y on plan, or across and up. */
typedef struct {
  SqPoint at;
  SqVector x, y, z;
  double half[3]; /* of a box; a sheet has none along z */
  double hole[4]; /* of a wall: from, to along x; sill, head */
  double passes;  /* of a sheet, or of the pane in a wall's hole */
  gboolean wall;
} Thing;

typedef struct {
  GRand *rand;
  GString *walls, *pieces, *panels, *marks;
  GArray *things;  /* Thing */
  GArray *persons; /* SqObstacle: bodies are what the scene says they are, as sets of planes */
  const char *shape;
  SqPoint lamp, aim;
  double width_m, height_m, lumens;
} World;

static double
between (World *world, double low, double high)
{
  return g_rand_double_range (world->rand, low, high);
}

/* One after the other: the arguments of a call are evaluated in no set order, and the scenes shall
 * be the same with every compiler. */
static SqPoint
point_between (World *world, SqPoint low, SqPoint high)
{
  double x = between (world, low.x_m, high.x_m), y = between (world, low.y_m, high.y_m);
  double z = between (world, low.z_m, high.z_m);
  return sq_point (x, y, z);
}

static void
add_panel (World *world)
{
  gboolean net = g_rand_boolean (world->rand);
  SqPoint at = point_between (world, sq_point (-2, -2, 0.8), sq_point (2, 2, 2.5));
  double facing = between (world, 0, 360), tilt = between (world, -80, 80);
  double roll = between (world, -40, 40), w = between (world, 0.3, 1.2),
         h = between (world, 0.3, 1.2);
  g_string_append_printf (world->panels,
                          "%s{'kind': '%s', 'material': 'half', 'at': [%.17g, %.17g, %.17g],"
                          "'id': 'g%u', 'facing': %.17g, 'tilt': %.17g, 'roll': %.17g,"
                          "'width': %.17g, 'height': %.17g}",
                          world->panels->len ? "," : "", net ? "net" : "flag", at.x_m, at.y_m,
                          at.z_m, world->things->len, facing, tilt, roll, w, h);
  /* u = (-sin facing, cos facing, 0), v = n × u, turned right-handed about n. */
  double f = SQ_RADIANS (facing), c = cos (SQ_RADIANS (roll)), s = sin (SQ_RADIANS (roll));
  SqVector n = sq_vector_toward (facing, tilt), u = sq_vector (-sin (f), cos (f), 0);
  SqVector v = sq_vector_cross (n, u);
  Thing sheet = { .at = at, .z = n, .passes = net ? 0.6 : 0.0, .half = { w / 2, h / 2, 0 } };
  sheet.x = sq_vector_sum (sq_vector_scale (u, c), sq_vector_scale (v, s));
  sheet.y = sq_vector_sum (sq_vector_scale (v, c), sq_vector_scale (u, -s));
  g_array_append_val (world->things, sheet);
}

static void
add_piece (World *world)
{
  double turn = between (world, 0, 2 * G_PI), base = between (world, 0, 1);
  double top = base + between (world, 0.2, 1.2);
  SqPoint at = point_between (world, sq_point (-2, -2, 0), sq_point (2, 2, 0));
  SqPoint half = point_between (world, sq_point (0.1, 0.1, 0), sq_point (0.6, 0.6, 0));
  Thing box = {
    .at = sq_point (at.x_m, at.y_m, (base + top) / 2),
    .x = sq_vector (cos (turn), sin (turn), 0),
    .y = sq_vector (-sin (turn), cos (turn), 0),
    .z = sq_vector (0, 0, 1),
    .half = { half.x_m, half.y_m, (top - base) / 2 },
  };
  g_string_append_printf (world->pieces, "%s{'base': %.17g, 'top': %.17g, 'outline': [",
                          world->pieces->len ? "," : "", base, top);
  static const int signs[4][2] = { { -1, -1 }, { 1, -1 }, { 1, 1 }, { -1, 1 } };
  gboolean backwards = g_rand_boolean (world->rand); /* either way round is allowed */
  for (int i = 0; i < 4; i++) {
    const int *sign = signs[backwards ? 3 - i : i];
    SqPoint p = sq_point_along (box.at, box.x, sign[0] * box.half[0]);
    p = sq_point_along (p, box.y, sign[1] * box.half[1]);
    g_string_append_printf (world->pieces, "%s[%.17g, %.17g]", i ? "," : "", p.x_m, p.y_m);
  }
  g_string_append (world->pieces, "]}");
  g_array_append_val (world->things, box);
}

/* A straight wall with one window that may have a pane. */
static void
add_wall (World *world)
{
  double turn = between (world, 0, 2 * G_PI), length = between (world, 2, 4);
  double thick = between (world, 0.05, 0.4), height = between (world, 1.5, 3);
  double from = between (world, 0.2, 0.8), to = from + between (world, 0.3, 1);
  double sill = between (world, 0.3, 1.0), tall = between (world, 0.3, 1.2);
  double head = MIN (sill + tall, height);
  double passes = g_rand_boolean (world->rand) ? 1.0 : 0.7;
  SqPoint a = point_between (world, sq_point (-2, -2, 0), sq_point (2, 2, 0));
  SqVector along = sq_vector (cos (turn), sin (turn), 0);
  Thing wall = {
    .at = sq_point (a.x_m + along.x * length / 2, a.y_m + along.y * length / 2, height / 2),
    .x = along,
    .y = sq_vector (-along.y, along.x, 0),
    .z = sq_vector (0, 0, 1),
    .half = { length / 2, thick / 2, height / 2 },
    .hole = { from - length / 2, to - length / 2, sill - height / 2, head - height / 2 },
    .passes = passes,
    .wall = TRUE,
  };
  g_string_append_printf (
    world->walls,
    "%s{'path': [[%.17g, %.17g], [%.17g, %.17g]], 'thickness': %.17g, 'height': %.17g,"
    "'openings': [{'kind': 'window', 'offset': %.17g, 'width': %.17g, 'sill': %.17g,"
    "'head': %.17g, 'transmittance': %g}]}",
    world->walls->len ? "," : "", a.x_m, a.y_m, a.x_m + along.x * length, a.y_m + along.y * length,
    thick, height, from, to - from, sill, head, passes);
  g_array_append_val (world->things, wall);
}

static void
add_mark (World *world)
{
  static const char *const postures[] = { "stand", "sit", "lie" };
  SqPoint at = point_between (world, sq_point (-2, -2, 0), sq_point (2, 2, 360));
  const char *posture = postures[g_rand_int_range (world->rand, 0, 3)];
  g_string_append_printf (
    world->marks, "%s{'id': 'm%u', 'at': [%.17g, %.17g], 'facing': %.17g, 'posture': '%s'}",
    world->marks->len ? "," : "", (guint)world->marks->len, at.x_m, at.y_m, at.z_m, posture);
}

/* How a ray from @from to @to runs in a box: FALSE if it misses. */
static gboolean
stretch_in (const double start[3],
            const double way[3],
            const double low[3],
            const double high[3],
            double *enter,
            double *leave)
{
  *enter = 0.0;
  *leave = 1.0;
  for (int axis = 0; axis < 3; axis++) {
    if (way[axis] == 0.0) {
      if (start[axis] < low[axis] || start[axis] > high[axis])
        return FALSE;
      continue;
    }
    double a = (low[axis] - start[axis]) / way[axis], b = (high[axis] - start[axis]) / way[axis];
    *enter = MAX (*enter, MIN (a, b));
    *leave = MIN (*leave, MAX (a, b));
  }
  return *enter < *leave;
}

static double
through_thing (const Thing *thing, SqPoint from, SqPoint to)
{
  SqVector s = sq_vector_between (thing->at, from), w = sq_vector_between (from, to);
  const double start[] = { sq_vector_dot (s, thing->x), sq_vector_dot (s, thing->y),
                           sq_vector_dot (s, thing->z) };
  const double way[] = { sq_vector_dot (w, thing->x), sq_vector_dot (w, thing->y),
                         sq_vector_dot (w, thing->z) };
  if (thing->half[2] == 0.0) {
    double t = -start[2] / way[2];
    double x = start[0] + t * way[0], y = start[1] + t * way[1];
    gboolean hit = t > 0.0 && t < 1.0 && fabs (x) < thing->half[0] && fabs (y) < thing->half[1];
    return hit ? thing->passes : 1.0;
  }
  const double low[] = { -thing->half[0], -thing->half[1], -thing->half[2] };
  double enter, leave, in, out;
  if (!stretch_in (start, way, low, thing->half, &enter, &leave))
    return 1.0;
  if (!thing->wall)
    return 0.0;
  /* All of the way through the wall must be within its hole. */
  const double hole_low[] = { thing->hole[0], -thing->half[1], thing->hole[2] };
  const double hole_high[] = { thing->hole[1], thing->half[1], thing->hole[3] };
  if (!stretch_in (start, way, hole_low, hole_high, &in, &out) || in > enter + 1e-9 ||
      out < leave - 1e-9)
    return 0.0;
  double middle = -start[1] / way[1];
  return middle > in && middle < out ? thing->passes : 1.0;
}

static double
through_planes (const SqSolid *solid, SqPoint from, SqPoint to)
{
  double enter = 0.0, leave = 1.0;
  for (guint i = 0; i < solid->n_faces; i++) {
    double a = sq_vector_dot (solid->faces[i].normal, sq_vector (from.x_m, from.y_m, from.z_m)) -
               solid->faces[i].offset_m;
    double b = sq_vector_dot (solid->faces[i].normal, sq_vector (to.x_m, to.y_m, to.z_m)) -
               solid->faces[i].offset_m;
    if (a > 0.0 && b > 0.0)
      return 1.0;
    if (a > 0.0 || b > 0.0) {
      double t = a / (a - b);
      if (a > 0.0)
        enter = MAX (enter, t);
      else
        leave = MIN (leave, t);
    }
  }
  return enter < leave ? 0.0 : 1.0;
}

static double
through_all (const World *world, SqPoint from, SqPoint to)
{
  double passes = 1.0;
  for (guint i = 0; i < world->things->len && passes > 0.0; i++)
    passes *= through_thing (&g_array_index (world->things, Thing, i), from, to);
  for (guint i = 0; i < world->persons->len && passes > 0.0; i++)
    passes *= through_planes (&g_array_index (world->persons, SqObstacle, i).solid, from, to);
  return passes;
}

static double
response (const SqProbe *probe, SqVector toward)
{
  double cosine = sq_vector_dot (sq_vector_unit (probe->normal), toward);
  return probe->receptor == SQ_RECEPTOR_DOME ? (1.0 + cosine) / 2.0 : MAX (cosine, 0.0);
}

/* One place of the lamp by two numbers in 0 … 1, and what it sends to @to, candela times the number
 * of places. */
static double
place_on_lamp (const World *world, double a, double b, SqPoint to, SqPoint *place)
{
  SqVector f = sq_vector_unit (sq_vector_between (world->lamp, world->aim));
  SqVector r = sq_vector_unit (sq_vector_cross (f, sq_vector (0, 0, 1)));
  SqVector t = sq_vector_cross (r, f);
  double w = world->width_m, h = world->height_m;
  if (g_str_equal (world->shape, "sphere")) {
    /* The whole skin, evenly; half of it is turned away. */
    double z = 2 * a - 1, ring = sqrt (1 - z * z);
    SqVector n = sq_vector (ring * cos (2 * G_PI * b), ring * sin (2 * G_PI * b), z);
    *place = sq_point_along (world->lamp, n, w / 2);
    double cosine = sq_vector_dot (n, sq_vector_unit (sq_vector_between (*place, to)));
    /* L = lumens / 4π² R², times 4π R². */
    return MAX (cosine, 0.0) * world->lumens / G_PI;
  }
  if (g_str_equal (world->shape, "tube")) {
    SqVector way = sq_vector_between (world->lamp, to);
    SqVector aside = sq_vector_sum (way, sq_vector_scale (r, -sq_vector_dot (way, r)));
    SqVector across = sq_vector_cross (r, sq_vector_unit (aside));
    *place = sq_point_along (sq_point_along (world->lamp, r, (a - 0.5) * w), across, (b - 0.5) * h);
    double along = sq_vector_dot (sq_vector_unit (sq_vector_between (*place, to)), r);
    return world->lumens / (G_PI * G_PI) * sqrt (1 - along * along);
  }
  double x = (a - 0.5) * w, y = (b - 0.5) * h;
  if (g_str_equal (world->shape, "disc")) {
    x = w / 2 * sqrt (a) * cos (2 * G_PI * b);
    y = w / 2 * sqrt (a) * sin (2 * G_PI * b);
  }
  *place = sq_point_along (sq_point_along (world->lamp, r, x), t, y);
  double cosine = sq_vector_dot (sq_vector_unit (sq_vector_between (*place, to)), f);
  if (cosine <= 0.0)
    return 0.0;
  if (g_str_equal (world->shape, "beam")) {
    double gb = SQ_RADIANS (20.0), p = log (log2 (10.0)) / log (1.5); /* 40 and 60 degrees */
    return 1000.0 * exp2 (-pow (acos (MIN (cosine, 1.0)) / gb, p));
  }
  return world->lumens / G_PI * cosine;
}

/* One sum over jittered strata; @clear: as if nothing stood between. */
static double
sampled_lux (World *world, const SqProbe *probe, gboolean clear)
{
  double sum = 0.0;
  for (int i = 0; i < STRATA; i++)
    for (int k = 0; k < STRATA; k++) {
      SqPoint place;
      double a = (i + g_rand_double (world->rand)) / STRATA;
      double b = (k + g_rand_double (world->rand)) / STRATA;
      double candela = place_on_lamp (world, a, b, probe->at, &place);
      SqVector way = sq_vector_between (probe->at, place);
      double square = sq_vector_dot (way, way);
      double light = candela * response (probe, sq_vector_unit (way)) / square;
      if (light > 0.0 && !clear)
        light *= through_all (world, probe->at, place);
      sum += light;
    }
  return sum / (STRATA * STRATA);
}

static char *
lamp_text (World *world)
{
  static const char *const shapes[] = { "rect", "disc", "beam", "sphere", "tube" };
  world->shape = shapes[g_rand_int_range (world->rand, 0, G_N_ELEMENTS (shapes))];
  world->lumens = 5000.0;
  world->width_m = between (world, 0.1, 1.0);
  world->height_m = between (world, 0.1, 1.0);
  world->lamp = point_between (world, sq_point (-3, -3, 1.5), sq_point (3, 3, 3));
  world->aim = point_between (world, sq_point (-1, -1, 0), sq_point (1, 1, 1.4));
  const char *emits = "'emits': 'lambert', 'lumens': 5000";
  if (g_str_equal (world->shape, "beam"))
    emits = "'beams': [{'beam_deg': 40, 'field_deg': 60, 'peak_cd': 1000}]";
  else if (g_str_equal (world->shape, "sphere"))
    emits = "'emits': 'sphere', 'lumens': 5000";
  else if (g_str_equal (world->shape, "tube")) {
    emits = "'emits': 'tube', 'lumens': 5000";
    world->height_m = 0.04;
  }
  gboolean round = g_str_equal (world->shape, "disc") || g_str_equal (world->shape, "sphere");
  if (round)
    world->height_m = world->width_m;
  return g_strdup_printf (
    "'classes': [{'id': 'c', %s, 'face': {'shape': '%s', 'width': %.17g, 'height': %.17g}}],"
    "'fixtures': [{'id': 'f', 'class': 'c', 'at': [%.17g, %.17g, %.17g],"
    "'aim': [%.17g, %.17g, %.17g]}]",
    emits, g_str_equal (world->shape, "disc") ? "disc" : "rect", world->width_m, world->height_m,
    world->lamp.x_m, world->lamp.y_m, world->lamp.z_m, world->aim.x_m, world->aim.y_m,
    world->aim.z_m);
}

static SqScene *
random_scene (World *world)
{
  g_autofree char *lamp = lamp_text (world);
  g_autoptr (GString) probes = g_string_new (NULL);
  static void (*const adders[]) (World *) = { add_panel, add_piece, add_wall, add_mark };
  for (int n = g_rand_int_range (world->rand, 2, 13); n > 0; n--)
    adders[g_rand_int_range (world->rand, 0, G_N_ELEMENTS (adders))](world);
  for (int i = 0; i < PROBES; i++) {
    SqPoint at = point_between (world, sq_point (-3, -3, 0), sq_point (3, 3, 2));
    SqPoint normal = point_between (world, sq_point (-1, -1, -0.2), sq_point (1, 1, 1));
    g_string_append_printf (
      probes,
      "%s{'id': 'p%d', 'receptor': '%s', 'at': [%.17g, %.17g, %.17g], 'normal': [%g, %g, %g]}",
      i ? "," : "", i, i % 4 ? "flat" : "dome", at.x_m, at.y_m, at.z_m, normal.x_m, normal.y_m,
      normal.z_m);
  }
  return scene_of ("%s, 'materials': [{'id': 'half', 'for': 'net', 'direct': 0.6}],"
                   "'walls': [%s], 'pieces': [%s], 'panels': [%s], 'marks': [%s], 'probes': [%s]",
                   lamp, world->walls->str, world->pieces->str, world->panels->str,
                   world->marks->str, probes->str);
}

/* Rays that start within something, and a ball or tube that something touches, are another
 * question: the engine takes those lamps for what they look like from afar. */
static gboolean
is_awkward (const GArray *obstacles, const World *world, SqPoint at)
{
  gboolean turns = g_str_equal (world->shape, "sphere") || g_str_equal (world->shape, "tube");
  for (guint i = 0; i < obstacles->len; i++) {
    const SqSolid *solid = &g_array_index (obstacles, SqObstacle, i).solid;
    gboolean at_inside = TRUE, lamp_near = turns;
    for (guint k = 0; k < solid->n_faces; k++) {
      at_inside = at_inside && sq_plane_height_m (&solid->faces[k], at) < 1e-6;
      lamp_near = lamp_near && sq_plane_height_m (&solid->faces[k], world->lamp) < 0.51;
    }
    if (at_inside || lamp_near)
      return TRUE;
  }
  return FALSE;
}

static void
compare (World *world, const SqScene *scene, guint *n_compared, guint *n_shaded)
{
  g_autoptr (SqReadings) readings = readings_of (scene);
  g_autoptr (GArray) obstacles = sq_obstacles_new (scene);
  for (guint i = 0; i < readings->probes->len; i++) {
    const SqProbeReading *reading = g_ptr_array_index (readings->probes, i);
    double clear = sampled_lux (world, reading->probe, TRUE), sum = 0.0, squares = 0.0;
    SqVector way = sq_vector_between (world->lamp, reading->probe->at);
    double peak_cd = g_str_equal (world->shape, "beam") ? 1000.0 : world->lumens / G_PI;
    if (is_awkward (obstacles, world, reading->probe->at) || sq_vector_length (way) < 1.2 ||
        clear * sq_vector_dot (way, way) < LEAST * peak_cd)
      continue;
    int rounds = ROUNDS;
    for (int round = 0; round < rounds; round++) {
      double lux = sampled_lux (world, reading->probe, FALSE);
      if (fabs (lux - clear) > TOLERANCE * clear)
        rounds = SHADED;
      sum += lux;
      squares += lux * lux;
    }
    double mean = sum / rounds;
    double variance = MAX (squares / rounds - mean * mean, 0.0) / (rounds - 1);
    if (mean <= LEAST * clear) {
      g_assert_cmpfloat (reading->lux, <=, 3.0 * LEAST * clear + 1e-9);
      continue;
    }
    (*n_compared)++;
    *n_shaded += mean < 0.95 * clear;
    double allowed = TOLERANCE * mean + SIGMAS * sqrt (variance);
    if (fabs (reading->lux - mean) > allowed)
      g_error ("%s at probe %s: %g lx, rays say %g ± %g (%g unshaded)", world->shape,
               reading->probe->id, reading->lux, mean, sqrt (variance), clear);
  }
}

static void
test_scenes (void)
{
  guint n_compared = 0, n_shaded = 0;
  for (guint seed = 1; seed <= SCENES; seed++) {
    World world = { .rand = g_rand_new_with_seed (seed) };
    world.walls = g_string_new (NULL);
    world.pieces = g_string_new (NULL);
    world.panels = g_string_new (NULL);
    world.marks = g_string_new (NULL);
    world.things = g_array_new (FALSE, FALSE, sizeof (Thing));
    world.persons = sq_obstacles_new_empty ();
    g_autoptr (SqScene) scene = random_scene (&world);
    for (guint i = 0; i < scene->marks->len; i++)
      sq_obstacles_add_person (world.persons, SQ_AT (SqMark, scene->marks, i));
    g_test_message ("seed %u, %s", seed, world.shape);
    compare (&world, scene, &n_compared, &n_shaded);
    g_rand_free (world.rand);
    g_string_free (world.walls, TRUE);
    g_string_free (world.pieces, TRUE);
    g_string_free (world.panels, TRUE);
    g_string_free (world.marks, TRUE);
    g_array_unref (world.things);
    g_array_unref (world.persons);
  }
  /* The scenes must be worth it. */
  g_assert_cmpuint (n_compared, >, 3 * SCENES);
  g_assert_cmpuint (n_shaded, >, 100);
  g_test_message ("%u readings compared, %u of them shaded", n_compared, n_shaded);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/against rays/random scenes", test_scenes);
  return g_test_run ();
}
