/* random-plan.h: believable sets full of lamps, people, grip, power and notes, by a dice */
#pragma once

#include "scene-text.h"

#include <math.h>

G_BEGIN_DECLS

#define RANDOM_MOST_THINGS 1024

/* A set being thrown: a room with its corner at the origin, and what stands in it already. */
typedef struct {
  GRand *dice;
  GString *text;
  double width_m, depth_m;
  struct {
    double x_m, y_m, radius_m;
  } stands[RANDOM_MOST_THINGS];
  int n_stands;
  int n_marks;
  double mark_x_m[4], mark_y_m[4];
} RandomSet;

/* One throw of the dice a statement: the order of arguments is the compiler's own. */
static inline double
thrown (RandomSet *set, double least, double most)
{
  return g_rand_double_range (set->dice, least, most);
}

static inline int
thrown_of (RandomSet *set, int n)
{
  return g_rand_int_range (set->dice, 0, n);
}

static inline gboolean
is_taken (const RandomSet *set, double x_m, double y_m, double radius_m)
{
  for (int i = 0; i < set->n_stands; i++)
    if (hypot (x_m - set->stands[i].x_m, y_m - set->stands[i].y_m) <
        radius_m + set->stands[i].radius_m)
      return TRUE;
  return FALSE;
}

static inline void
stand_at (RandomSet *set, double x_m, double y_m, double radius_m)
{
  g_assert_cmpint (set->n_stands, <, RANDOM_MOST_THINGS);
  set->stands[set->n_stands].x_m = x_m;
  set->stands[set->n_stands].y_m = y_m;
  set->stands[set->n_stands++].radius_m = radius_m;
}

/* A free place in the room, else anywhere round it. */
static inline void
free_place (RandomSet *set, double round_m, double radius_m, double *x_m, double *y_m)
{
  for (int tries = 0; tries < 200; tries++) {
    double more_m = tries < 40 ? 0.0 : 0.02 * (tries - 40);
    *x_m = thrown (set, -round_m - more_m, set->width_m + round_m + more_m);
    *y_m = thrown (set, -round_m - more_m, set->depth_m + round_m + more_m);
    if (!is_taken (set, *x_m, *y_m, radius_m))
      break;
  }
  stand_at (set, *x_m, *y_m, radius_m);
}

static inline void
open_list (RandomSet *set, const char *key)
{
  g_string_append_printf (set->text, "%s'%s': [", set->text->len > 0 ? ", " : "", key);
}

static inline void
next_of_list (RandomSet *set)
{
  if (set->text->str[set->text->len - 1] != '[')
    g_string_append (set->text, ",\n");
}

static inline void
throw_walls (RandomSet *set)
{
  double window_m = 1.6, left_m = 1.0;
  open_list (set, "walls");
  g_string_append_printf (set->text,
                          "{'id': 'w', 'closed': true, 'thickness': 0.2, 'height': 3,"
                          "'path': [[0, 0], [%.2f, 0], [%.2f, %.2f], [0, %.2f]], 'openings': ["
                          "{'id': 'd', 'kind': 'door', 'edge': 0, 'offset': 0.8, 'width': 0.9}",
                          set->width_m, set->width_m, set->depth_m, set->depth_m);
  for (int i = 0; left_m + window_m < set->width_m - 0.5 && i < 5; i++) {
    g_string_append_printf (set->text,
                            ", {'id': 'o%d', 'kind': 'window', 'edge': 2, 'offset': %.2f,"
                            " 'width': %.2f}",
                            i, left_m, window_m);
    left_m += window_m + thrown (set, 0.8, 3.0);
  }
  g_string_append (set->text, "]}");
  if (set->width_m > 9.0 && thrown_of (set, 2) == 0) {
    double x_m = thrown (set, 0.65, 0.8) * set->width_m,
           y_m = thrown (set, 0.3, 0.5) * set->depth_m;
    g_string_append_printf (set->text,
                            ", {'id': 'v', 'thickness': 0.12, 'height': 3, 'wild': true,"
                            " 'path': [[%.2f, 0], [%.2f, %.2f], [%.2f, %.2f]]}",
                            x_m, x_m, y_m, set->width_m, y_m);
  }
  g_string_append (set->text, "]");
}

static inline void
throw_pieces (RandomSet *set)
{
  static const char *const names[] = { "table", "bench", "wardrobe", "counter", "sofa", "stove" };
  open_list (set, "pieces");
  for (int i = 0, n = 1 + thrown_of (set, 6); i < n; i++) {
    double x_m = thrown (set, 0.3, set->width_m - 1.8), y_m = thrown (set, 0.3, set->depth_m - 1.2);
    double wide_m = thrown (set, 0.5, 1.8), deep_m = thrown (set, 0.4, 0.9);
    next_of_list (set);
    g_string_append_printf (set->text,
                            "{'id': 'p%d', 'label': '%s', 'base': 0, 'top': 0.8, 'outline':"
                            " [[%.2f, %.2f], [%.2f, %.2f], [%.2f, %.2f], [%.2f, %.2f]]}",
                            i, names[i % (int)G_N_ELEMENTS (names)], x_m, y_m, x_m + wide_m, y_m,
                            x_m + wide_m, y_m + deep_m, x_m, y_m + deep_m);
  }
  g_string_append (set->text, "]");
}

static inline void
throw_people (RandomSet *set, int n_lamps)
{
  static const char *const postures[] = { "stand", "sit", "lie" };
  set->n_marks = 1 + thrown_of (set, 1 + MIN (n_lamps / 15, 3));
  open_list (set, "marks");
  for (int i = 0; i < set->n_marks; i++) {
    double *x_m = &set->mark_x_m[i], *y_m = &set->mark_y_m[i];
    free_place (set, -1.0, 0.5, x_m, y_m);
    int facing = thrown_of (set, 360), posture = thrown_of (set, 8);
    next_of_list (set);
    g_string_append_printf (set->text,
                            "{'id': 'm%d', 'label': '%c', 'at': [%.2f, %.2f], 'facing': %d,"
                            " 'posture': '%s'}",
                            i, 'A' + i, *x_m, *y_m, facing, postures[posture < 3 ? posture : 0]);
  }
  g_string_append (set->text, "]");
  open_list (set, "cameras");
  for (int i = 0, n = 1 + thrown_of (set, 2); i < n; i++) {
    double x_m, y_m;
    free_place (set, -0.4, 0.5, &x_m, &y_m);
    next_of_list (set);
    g_string_append_printf (set->text,
                            "{'id': 'c%d', 'label': '%d', 'at': [%.2f, %.2f, 1.5], 'aim': 'm%d'}",
                            i, i + 1, x_m, y_m, thrown_of (set, set->n_marks));
  }
  g_string_append (set->text, "]");
}

/* Where lamps go: round somebody, over the set in rows, along the walls, outside, anywhere. */
static inline void
lamp_place (RandomSet *set, int mark, double *x_m, double *y_m)
{
  const double radius_m = 0.25, row_m = 1.5;
  int way = thrown_of (set, 10);
  for (int tries = 0; tries < 20; tries++) {
    double angle = thrown (set, 0, 2 * G_PI), away_m = thrown (set, 1.2, 4.0);
    double along = thrown (set, 0.05, 0.95);
    gboolean across = thrown_of (set, 2) == 0, far = thrown_of (set, 2) == 0;
    if (way < 4) {
      *x_m = set->mark_x_m[mark] + away_m * cos (angle);
      *y_m = set->mark_y_m[mark] + away_m * sin (angle);
    } else if (way < 6) {
      *x_m = row_m * round (along * set->width_m / row_m);
      *y_m = row_m * round (thrown (set, 0.1, 0.9) * set->depth_m / row_m);
    } else if (way < 8) {
      *x_m = across ? along * set->width_m : far ? set->width_m - 0.3 : 0.3;
      *y_m = !across ? along * set->depth_m : far ? set->depth_m - 0.3 : 0.3;
    } else {
      *x_m = along * set->width_m;
      *y_m = set->depth_m + thrown (set, 0.5, 3.0);
    }
    if (!is_taken (set, *x_m, *y_m, radius_m)) {
      stand_at (set, *x_m, *y_m, radius_m);
      return;
    }
  }
  free_place (set, 1.0, radius_m, x_m, y_m);
}

static inline void
throw_lamps (RandomSet *set, int n_lamps)
{
  static const char *const classes[] = {
    "tungsten-fresnel-650", "tungsten-fresnel-2000", "open-face-800",          "par-can-medium",
    "profile-26",           "led-panel-60x30",       "led-tube-120",           "softlight-2000",
    "paper-lantern-75",     "bulb-tungsten-60",      "discharge-fresnel-1200", "led-spot-300",
    "fluorescent-4x120"
  };
  static const char *const roles[] = { "key", "fill", "back", "side", "top", "background" };
  static const char *const mounts[] = { "stand", "stand", "pipe", "wall", "floor" };
  open_list (set, "fixtures");
  for (int i = 0; i < n_lamps; i++) {
    int mark = thrown_of (set, set->n_marks);
    double x_m, y_m, height_m = thrown (set, 1.2, 3.0), level = thrown (set, 0.1, 1.0);
    lamp_place (set, mark, &x_m, &y_m);
    const char *lamp_class = classes[thrown_of (set, G_N_ELEMENTS (classes))];
    const char *role = roles[thrown_of (set, G_N_ELEMENTS (roles))];
    const char *mount = mounts[thrown_of (set, G_N_ELEMENTS (mounts))];
    const char *on = thrown_of (set, 8) == 0 ? "false" : "true";
    next_of_list (set);
    g_string_append_printf (set->text,
                            "{'id': 'f%d', 'number': '%d', 'class': '%s', 'role': '%s', 'on': %s,"
                            " 'at': [%.2f, %.2f, %.2f], 'aim': 'm%d', 'level': %.1f,"
                            " 'mount': '%s'}",
                            i, i + 1, lamp_class, role, on, x_m, y_m, height_m, mark, level, mount);
  }
  g_string_append (set->text, "]");
}

static inline void
throw_grip (RandomSet *set, int n_lamps)
{
  static const char *const panels[] = { "'kind': 'flag'", "'kind': 'net', 'material': 'single-net'",
                                        "'kind': 'diffusion', 'material': 'half-white'",
                                        "'kind': 'bounce', 'material': 'foam-board'" };
  open_list (set, "panels");
  for (int i = 0, n = thrown_of (set, 2 + n_lamps / 6); i < n; i++) {
    double x_m, y_m, wide_m = thrown (set, 0.45, 1.8);
    free_place (set, -0.3, 0.4, &x_m, &y_m);
    const char *kind = panels[thrown_of (set, G_N_ELEMENTS (panels))];
    next_of_list (set);
    g_string_append_printf (set->text,
                            "{'id': 'g%d', %s, 'at': [%.2f, %.2f, 2], 'facing': %d,"
                            " 'width': %.1f, 'height': 1.2}",
                            i, kind, x_m, y_m, thrown_of (set, 360), wide_m);
  }
  g_string_append (set->text, "]");
  open_list (set, "probes");
  for (int i = 0, n = thrown_of (set, 4); i < n; i++) {
    double x_m, y_m;
    free_place (set, -0.5, 0.3, &x_m, &y_m);
    next_of_list (set);
    g_string_append_printf (set->text, "{'id': 'q%d', 'at': [%.2f, %.2f, 1.2]}", i, x_m, y_m);
  }
  g_string_append (set->text, "]");
}

/* Boxes at the walls; from each, cables along them and then across to some lamps. */
static inline void
throw_power (RandomSet *set, int n_lamps)
{
  static const char *const kinds[] = { "house", "distribution", "distribution" };
  int n = 1 + thrown_of (set, 2 + n_lamps / 15);
  double *x_m = g_new (double, n), *y_m = g_new (double, n);
  open_list (set, "supplies");
  for (int i = 0; i < n; i++) {
    x_m[i] = thrown (set, 0.3, set->width_m - 0.3);
    y_m[i] = thrown_of (set, 2) == 0 ? 0.25 : set->depth_m - 0.25;
    if (is_taken (set, x_m[i], y_m[i], 0.25))
      free_place (set, 0.5, 0.25, &x_m[i], &y_m[i]);
    else
      stand_at (set, x_m[i], y_m[i], 0.25);
    const char *kind = kinds[thrown_of (set, G_N_ELEMENTS (kinds))];
    next_of_list (set);
    g_string_append_printf (set->text,
                            "{'id': 's%d', 'label': 'Box %d', 'kind': '%s', 'at': [%.2f, %.2f]}", i,
                            i + 1, kind, x_m[i], y_m[i]);
  }
  g_string_append (set->text, "]");
  open_list (set, "cables");
  for (int i = 0, runs = MIN (1 + n_lamps / 3, n_lamps); i < runs; i++) {
    int from = thrown_of (set, n), to = thrown_of (set, n_lamps);
    next_of_list (set);
    g_string_append_printf (set->text,
                            "{'from': 's%d', 'to': 'f%d', 'conductor_mm2': 2.5,"
                            " 'via': [[%.2f, %.2f]]}",
                            from, to, thrown (set, 0.2, set->width_m - 0.2), y_m[from]);
  }
  g_string_append (set->text, "]");
  g_free (x_m);
  g_free (y_m);
}

/* Notes in a row outside, or beside what they point to; two measured lines. */
static inline void
throw_paperwork (RandomSet *set)
{
  open_list (set, "notes");
  for (int i = 0, n = thrown_of (set, 7); i < n; i++) {
    next_of_list (set);
    g_string_append_printf (set->text, "{'id': 'n%d', 'text': 'Keep clear.', ", i);
    if (thrown_of (set, 2) == 0) {
      g_string_append_printf (set->text, "'at': [%.2f, -0.6]}", 0.4 + 0.5 * i);
      continue;
    }
    double x_m = thrown (set, 0.5, set->width_m - 0.5), y_m = thrown (set, 0.5, set->depth_m - 0.5);
    double to_x_m = x_m + thrown (set, -1.5, 1.5), to_y_m = y_m + thrown (set, -1.5, 1.5);
    g_string_append_printf (set->text, "'at': [%.2f, %.2f], 'points_to': [%.2f, %.2f]}", x_m, y_m,
                            to_x_m, to_y_m);
  }
  g_string_append (set->text, "]");
  open_list (set, "dimensions");
  g_string_append_printf (set->text,
                          "{'id': 'd1', 'from': [0, 0], 'to': [%.2f, 0], 'offset': -1.2},"
                          " {'id': 'd2', 'from': [%.2f, 0], 'to': [%.2f, %.2f], 'offset': -1}",
                          set->width_m, set->width_m, set->width_m, set->depth_m);
  g_string_append (set->text, "]");
}

/* random_plan:
 * @n_lamps: at least 1
 *
 * As plans are: 3 to 9 square metres to a lamp, the set full of what else stands there.
 * Returns: (transfer full): the members of a scene, for right_scene() */
static inline char *
random_plan (GRand *dice, int n_lamps)
{
  RandomSet set = { .dice = dice, .text = g_string_new (NULL) };
  double area_m2 = thrown (&set, 3.0, 9.0) * n_lamps, shape = thrown (&set, 1.0, 1.8);
  set.depth_m = MAX (sqrt (area_m2 / shape), 3.6);
  set.width_m = MAX (sqrt (area_m2 * shape), 4.2);
  g_string_append (set.text, "'room': {'ceiling_height': 3.5}");
  throw_walls (&set);
  throw_pieces (&set);
  throw_people (&set, n_lamps);
  throw_lamps (&set, n_lamps);
  throw_grip (&set, n_lamps);
  throw_power (&set, n_lamps);
  throw_paperwork (&set);
  return g_string_free (set.text, FALSE);
}

G_END_DECLS
