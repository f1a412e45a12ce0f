/* random-plan.h: believable sets full of lamps, and how well the labels of a plan stand on them */
#pragma once

#include "draw-page.h"
#include "draw/lamp-symbol.h"
#include "draw/plan.h"

G_BEGIN_DECLS

/* A believable set: a room, people, cameras, grip, and lamps no nearer to each other than half a
 * metre, in the room and round it. */
static inline char *
random_plan (GRand *dice, int n_lamps)
{
  static const char *const classes[] = {
    "tungsten-fresnel-650", "tungsten-fresnel-2000", "open-face-800",          "par-can-medium",
    "profile-26",           "led-panel-60x30",       "led-tube-120",           "softlight-2000",
    "paper-lantern-75",     "bulb-tungsten-60",      "discharge-fresnel-1200", "led-spot-300",
    "fluorescent-4x120"
  };
  static const char *const roles[] = { "key", "fill", "back", "side", "top", "background" };
  static const char *const panels[] = { "'kind': 'flag'", "'kind': 'net', 'material': 'single-net'",
                                        "'kind': 'diffusion', 'material': 'half-white'",
                                        "'kind': 'bounce', 'material': 'foam-board'" };
  double width = g_rand_double_range (dice, 6, 10), depth = g_rand_double_range (dice, 5, 7.5);
  double camera = g_rand_double_range (dice, 1, width - 1);
  double x[32], y[32];
  GString *text = g_string_new ("'room': {'ceiling_height': 3.5}, ");

  g_string_append_printf (text,
                          "'walls': [{'id': 'w', 'closed': true, 'thickness': 0.2, 'height': 3,"
                          "'path': [[0, 0], [%.2f, 0], [%.2f, %.2f], [0, %.2f]], 'openings': ["
                          "{'id': 'o', 'kind': 'window', 'edge': 2, 'offset': 1.5, 'width': 1.8},"
                          "{'id': 'd', 'kind': 'door', 'edge': 0, 'offset': 1, 'width': 0.9}]}], ",
                          width, width, depth, depth);
  g_string_append_printf (text,
                          "'marks': [{'id': 'mA', 'label': 'A', 'at': [%.2f, %.2f]}, {'id': 'mB',"
                          "'label': 'B', 'at': [%.2f, %.2f], 'posture': 'sit'}], 'cameras': ["
                          "{'id': 'c1', 'label': '1', 'at': [%.2f, 0.8, 1.5], 'aim': 'mA'}], ",
                          0.35 * width, 0.5 * depth, 0.65 * width, 0.55 * depth, camera);
  g_string_append (text, "'fixtures': [");
  for (int i = 0; i < n_lamps; i++) {
    for (gboolean near = TRUE; near;) {
      x[i] = g_rand_double_range (dice, -1.5, width + 1.5);
      y[i] = g_rand_double_range (dice, -1.0, depth + 1.2);
      near = FALSE;
      for (int j = 0; j < i; j++)
        near = near || hypot (x[i] - x[j], y[i] - y[j]) < 0.5;
    }
    /* One throw of the dice a statement: the order of arguments is the compiler's own. */
    const char *lamp_class = classes[g_rand_int_range (dice, 0, G_N_ELEMENTS (classes))];
    const char *role = roles[g_rand_int_range (dice, 0, G_N_ELEMENTS (roles))];
    const char *aim = g_rand_boolean (dice) ? "mA" : "mB";
    double height = g_rand_double_range (dice, 1.2, 3), level = g_rand_double_range (dice, 0.1, 1);
    g_string_append_printf (text,
                            "%s{'id': 'f%d', 'number': '%d', 'class': '%s', 'role': '%s',"
                            "'at': [%.2f, %.2f, %.2f], 'aim': '%s', 'level': %.1f}",
                            i > 0 ? ", " : "", i, i + 1, lamp_class, role, x[i], y[i], height, aim,
                            level);
  }
  g_string_append (text, "], 'panels': [");
  for (int i = 0, n = g_rand_int_range (dice, 0, 5); i < n; i++) {
    const char *kind = panels[g_rand_int_range (dice, 0, G_N_ELEMENTS (panels))];
    double at_x = g_rand_double_range (dice, 0.5, width - 0.5);
    double at_y = g_rand_double_range (dice, 0.5, depth - 0.5);
    int facing = g_rand_int_range (dice, 0, 360);
    g_string_append_printf (text,
                            "%s{'id': 'g%d', %s, 'at': [%.2f, %.2f, 2], 'facing': %d,"
                            "'width': 1.2, 'height': 1.2}",
                            i > 0 ? ", " : "", i, kind, at_x, at_y, facing);
  }
  g_string_append (text, "]");
  return g_string_free (text, FALSE);
}

/* Square millimetres that labels of one plan share, and how many pairs of them do. */
static inline double
shared_mm2 (const SqPlanReport *report, guint *pairs)
{
  double shared = 0.0;
  for (guint i = 0; i < report->labels->len; i++)
    for (guint j = i + 1; j < report->labels->len; j++) {
      double both = sq_paper_overlap_mm2 (g_array_index (report->labels, SqLabel, i).box,
                                          g_array_index (report->labels, SqLabel, j).box);
      shared += both;
      *pairs += both > 0.0;
    }
  return shared;
}

/* How many labels cover the middle of a lamp, or somebody's face. */
static inline guint
covered_things (const SqScene *scene, const SqPlanReport *report, const SqView *view)
{
  g_autoptr (GArray) middles = g_array_new (FALSE, FALSE, sizeof (SqPaperBox));
  guint covered = 0;
  for (guint i = 0; i < scene->fixtures->len; i++) {
    SqLamp lamp = sq_lamp_of_fixture (scene, SQ_AT (SqFixture, scene->fixtures, i), view);
    SqPaperBox box = sq_paper_box_round (sq_lamp_body (view, &lamp).middle, 0.5, 0.5);
    g_array_append_val (middles, box);
  }
  for (guint i = 0; i < scene->marks->len; i++) {
    SqPaperBox box =
      sq_paper_box_round (sq_view_paper (view, SQ_AT (SqMark, scene->marks, i)->at), 1.9, 1.9);
    g_array_append_val (middles, box);
  }
  for (guint i = 0; i < report->labels->len; i++)
    for (guint j = 0; j < middles->len; j++)
      covered += sq_paper_boxes_overlap (g_array_index (report->labels, SqLabel, i).box,
                                         g_array_index (middles, SqPaperBox, j));
  return covered;
}

G_END_DECLS
