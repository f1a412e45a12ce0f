/* symbol-scene.h: one scene with a lamp of every source and optics, every modifier and every mount
 */
#pragma once

#include "draw/lamp-symbol.h"
#include "scene-text.h"

G_BEGIN_DECLS

static const char *const symbol_sources[] = { "tungsten", "discharge", "led", "fluorescent",
                                              "flame" };
static const char *const symbol_optics[] = { "lens", "open",     "parallel", "profile", "panel",
                                             "tube", "diffused", "round",    "bulb" };

/* Each on a lamp of its own, from the file's words; the last are a crowd. */
static const char *const symbol_modifiers[] = {
  "{'kind': 'scrim', 'stops': 0.5}",
  "{'kind': 'scrim', 'stops': 1}",
  "{'kind': 'scrim', 'stops': 2}",
  "{'kind': 'scrim', 'stops': 1, 'part': 'bottom'}",
  "{'kind': 'gel', 'material': 'half-blue'}",
  "{'kind': 'diffusion', 'material': 'half-frost'}",
  "{'kind': 'egg-crate', 'cutoff_deg': 40}",
  "{'kind': 'snoot', 'cutoff_deg': 20}",
  "{'kind': 'doors', 'leaves': [40, 40, 40, 40]}",
  "{'kind': 'doors', 'leaves': [90, 90, 90, 90]}",
  "{'kind': 'doors', 'leaves': [0, -30, 0, 10]}",
  "{'kind': 'softbox', 'material': 'half-frost', 'width': 0.9, 'height': 0.6}",
  "{'kind': 'softbox', 'material': 'half-frost', 'width': 0.9, 'height': 0.6},"
  "{'kind': 'egg-crate', 'cutoff_deg': 40}",
  "{'kind': 'scrim', 'stops': 1}, {'kind': 'gel', 'material': 'half-blue'},"
  "{'kind': 'diffusion', 'material': 'half-frost'}, {'kind': 'egg-crate', 'cutoff_deg': 40}",
  "{'kind': 'gel', 'material': 'half-blue'}, {'kind': 'doors', 'leaves': [40, 40, 40, 40]}",
  "{'kind': 'diffusion', 'material': 'half-frost'}, {'kind': 'snoot', 'cutoff_deg': 20}",
};

/* Sizes as such lamps have them (common practice). */
static inline void
symbol_class (GString *text, int source, int optics)
{
  static const double sizes[][4] = {
    /* body across, along, up; face across */
    { 0.22, 0.26, 0.24, 0.13 }, { 0.24, 0.20, 0.24, 0.20 }, { 0.22, 0.30, 0.22, 0.19 },
    { 0.24, 0.60, 0.24, 0.16 }, { 0.60, 0.12, 0.30, 0.58 }, { 1.20, 0.05, 0.05, 1.18 },
    { 0.60, 0.40, 0.60, 0.58 }, { 0.60, 0.60, 0.60, 0.60 }, { 0.06, 0.06, 0.10, 0.05 },
  };
  const double *size = sizes[optics];
  g_string_append_printf (
    text,
    "%s{'id': '%s-%s', 'source': '%s', 'optics': '%s',"
    "'body': {'width': %g, 'depth': %g, 'height': %g},"
    "'face': {'width': %g, 'height': %g}, 'emits': 'lambert', 'lumens': 1000}",
    text->len > 0 ? ", " : "", symbol_sources[source], symbol_optics[optics],
    symbol_sources[source], symbol_optics[optics], size[0], size[1], size[2], size[3],
    MIN (size[3], size[2]));
}

/* @lamp_class stands with its modifiers one to a lamp, aimed along +x: fixture i is modifier i. */
static inline SqScene *
symbol_scene (const char *lamp_class)
{
  g_autoptr (GString) classes = g_string_new (NULL), fixtures = g_string_new (NULL);
  for (guint s = 0; s < G_N_ELEMENTS (symbol_sources); s++)
    for (guint o = 0; o < G_N_ELEMENTS (symbol_optics); o++)
      symbol_class (classes, (int)s, (int)o);
  for (guint i = 0; i < G_N_ELEMENTS (symbol_modifiers); i++)
    g_string_append_printf (fixtures,
                            "%s{'id': 'm%u', 'class': '%s', 'at': [0, 0, 2], 'aim': [9, 0, 2],"
                            "'modifiers': [%s]}",
                            i > 0 ? ", " : "", i, lamp_class, symbol_modifiers[i]);
  for (guint i = 0; sq_mount_words[i] != NULL; i++)
    g_string_append_printf (fixtures,
                            ", {'id': '%s', 'class': '%s', 'at': [0, 0, 2], 'aim': [9, 0, 2],"
                            "'mount': '%s'}",
                            sq_mount_words[i], lamp_class, sq_mount_words[i]);
  g_autofree char *text =
    g_strdup_printf ("'classes': [%s], 'fixtures': [%s]", classes->str, fixtures->str);
  return right_scene (text);
}

static inline const SqClass *
symbol_class_of (const SqScene *scene, guint source, guint optics)
{
  g_autofree char *id = g_strdup_printf ("%s-%s", symbol_sources[source], symbol_optics[optics]);
  return sq_scene_class (scene, id);
}

G_END_DECLS
