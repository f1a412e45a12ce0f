/* random-light.h: sets with every kind of lamp, and everything that may stand in its way */
#pragma once

#include "light-scene.h"

G_BEGIN_DECLS

static inline double
any (GRand *dice, double low, double high)
{
  return g_rand_double_range (dice, low, high);
}

static inline const char *
one_of (GRand *dice, const char *const *words, guint n)
{
  return words[g_rand_int_range (dice, 0, (gint32)n)];
}

/* Text is made one throw at a time: the arguments of a call are evaluated in no set order. */
static inline void
add_random_lamp (GRand *dice, GString *text, int number)
{
  static const char *const classes[] = { "soft", "lens", "ball", "tube", "bare", "skirt", "long" };
  static const char *const modifiers[] = { "",
                                           "",
                                           "",
                                           "{'kind': 'doors', 'leaves': [30, 60, 20, 90]}",
                                           "{'kind': 'doors', 'leaves': [-10, 90, 45, 0]}",
                                           "{'kind': 'egg-crate', 'cutoff_deg': 40}",
                                           "{'kind': 'snoot', 'cutoff_deg': 30}",
                                           "{'kind': 'scrim', 'stops': 1, 'part': 'bottom'}" };
  const char *class_id = one_of (dice, classes, G_N_ELEMENTS (classes));
  double x = any (dice, -3, 8), y = any (dice, -3, 7), z = any (dice, 0.1, 3.2);
  double to_x = any (dice, 0, 5), to_y = any (dice, 0, 4), to_z = any (dice, 0, 2);
  double roll = any (dice, -90, 90), level = any (dice, 0.05, 1);
  const char *modifier = one_of (dice, modifiers, G_N_ELEMENTS (modifiers));
  g_string_append_printf (text,
                          "%s{'id': 'f%d', 'class': '%s', 'at': [%.17g, %.17g, %.17g],"
                          "'aim': [%.17g, %.17g, %.17g], 'roll': %.17g, 'level': %.17g,"
                          "'modifiers': [%s]}",
                          number ? "," : "", number, class_id, x, y, z, to_x, to_y, to_z, roll,
                          level, modifier);
}

static inline void
add_random_panel (GRand *dice, GString *text, int number)
{
  static const char *const kinds[] = { "'flag'", "'net', 'material': 'n'",
                                       "'net', 'material': 'm'" };
  const char *kind = one_of (dice, kinds, G_N_ELEMENTS (kinds));
  double x = any (dice, -1, 6), y = any (dice, -1, 5), z = any (dice, 0.2, 3);
  double facing = any (dice, 0, 360), tilt = any (dice, -90, 90), roll = any (dice, -90, 90);
  double width = any (dice, 0.1, 1.5), height = any (dice, 0.1, 1.5);
  g_string_append_printf (text,
                          "%s{'id': 'g%d', 'kind': %s, 'at': [%.17g, %.17g, %.17g],"
                          "'facing': %.17g, 'tilt': %.17g, 'roll': %.17g, 'width': %.17g,"
                          "'height': %.17g}",
                          number ? "," : "", number, kind, x, y, z, facing, tilt, roll, width,
                          height);
}

static inline void
add_random_mark (GRand *dice, GString *text, int number)
{
  static const char *const postures[] = { "stand", "sit", "lie" };
  const char *posture = one_of (dice, postures, G_N_ELEMENTS (postures));
  double x = any (dice, 0.5, 4.5), y = any (dice, 0.5, 3.5), facing = any (dice, 0, 360);
  g_string_append_printf (text,
                          "%s{'id': 'm%d', 'at': [%.17g, %.17g], 'facing': %.17g,"
                          "'posture': '%s'}",
                          number ? "," : "", number, x, y, facing, posture);
}

static inline void
add_random_piece (GRand *dice, GString *text, int number)
{
  double x = any (dice, 0, 4), y = any (dice, 0, 3), w = any (dice, 0.2, 1.5);
  double d = any (dice, 0.2, 1), base = any (dice, 0, 1), top = base + any (dice, 0.1, 1.5);
  g_string_append_printf (text, "%s{'id': 'p%d', 'base': %.17g, 'top': %.17g, ", number ? "," : "",
                          number, base, top);
  if (number % 3 == 0)
    g_string_append_printf (text, "'disc': {'at': [%.17g, %.17g], 'radius': %.17g}}", x, y, w / 2);
  else if (number % 3 == 1) /* an L: two convex parts */
    g_string_append_printf (text,
                            "'outline': [[%.17g, %.17g], [%.17g, %.17g], [%.17g, %.17g],"
                            "[%.17g, %.17g], [%.17g, %.17g], [%.17g, %.17g]]}",
                            x, y, x + w, y, x + w, y + d / 3, x + w / 3, y + d / 3, x + w / 3,
                            y + d, x, y + d);
  else
    g_string_append_printf (text, "'outline': [[%.17g, %.17g], [%.17g, %.17g], [%.17g, %.17g]]}", x,
                            y, x + w, y + d / 4, x + w / 2, y + d);
}

typedef void (*AddRandom) (GRand *dice, GString *text, int number);

static inline void
add_several (GRand *dice, GString *text, const char *list, AddRandom add, int least, int most)
{
  int n = g_rand_int_range (dice, least, most + 1);
  g_string_append_printf (text, "'%s': [", list);
  for (int i = 0; i < n; i++)
    add (dice, text, i);
  g_string_append (text, "], ");
}

/* Five metres by four, and lamps in it and round it. Ids: f0 …, g0 …, m0 …, p0 …, the wall w. */
static inline SqScene *
random_light (GRand *dice)
{
  g_autoptr (GString) text = g_string_new (
    "'room': {'ceiling_height': 3},"
    "'materials': [{'id': 'n', 'for': 'net', 'direct': 0.6}, {'id': 'm', 'for': 'net',"
    "  'direct': 0.3}],"
    "'classes': [{'id': 'soft', 'emits': 'lambert', 'lumens': 8000, 'face': {'shape': 'rect',"
    "  'width': 1.2, 'height': 0.6}},"
    " {'id': 'lens', 'beams': [{'beam_deg': 12, 'field_deg': 20, 'peak_cd': 60000},"
    "  {'beam_deg': 50, 'field_deg': 70, 'peak_cd': 5000}], 'face': {'width': 0.2}},"
    " {'id': 'long', 'beams': [{'beam_deg': [90, 50], 'field_deg': [130, 80], 'peak_cd': 4000}],"
    "  'face': {'shape': 'rect', 'width': 1.2, 'height': 0.3}},"
    " {'id': 'bare', 'beams': [{'beam_deg': 30, 'field_deg': 50, 'peak_cd': 9000}]},"
    " {'id': 'skirt', 'emits': 'skirt', 'lumens': 9000, 'face': {'width': 0.75}},"
    " {'id': 'ball', 'emits': 'sphere', 'lumens': 3000, 'face': {'width': 0.4}},"
    " {'id': 'tube', 'emits': 'tube', 'lumens': 3000, 'face': {'shape': 'rect', 'width': 1.2,"
    "  'height': 0.03}}],"
    "'cameras': [{'id': 'cam', 'at': [2.5, -2, 1.5], 'aim': [2.5, 2, 1.4]}], ");
  double window = any (dice, 0.2, 3), door = any (dice, 0.2, 2.5), swing = any (dice, 0, 120);
  g_string_append_printf (
    text,
    "'walls': [{'id': 'w', 'path': [[0, 0], [5, 0], [5, 4], [0, 4]], 'closed': true,"
    "'openings': [{'id': 'o', 'kind': 'window', 'edge': 0, 'offset': %.17g, 'width': 1.5},"
    "  {'id': 'd', 'kind': 'door', 'edge': 2, 'offset': %.17g, 'width': 0.9,"
    "   'open_deg': %.17g}]}], ",
    window, door, swing);
  add_several (dice, text, "pieces", add_random_piece, 0, 5);
  add_several (dice, text, "marks", add_random_mark, 1, 4);
  add_several (dice, text, "panels", add_random_panel, 0, 5);
  add_several (dice, text, "fixtures", add_random_lamp, 1, 6);
  g_string_truncate (text, text->len - 2);
  return scene_of ("%s", text->str);
}

G_END_DECLS
