/* tag-text.c: what a lamp's tag says */
#include "draw/tag-text.h"

#include "draw/ink.h"

#include <glib/gi18n-lib.h>

gboolean
sq_look_changes_fixture (const SqScene *scene, const char *id)
{
  if (scene->look == NULL)
    return FALSE;
  for (guint i = 0; i < scene->looks->len; i++) {
    const SqLook *look = SQ_AT (SqLook, scene->looks, i);
    if (!g_str_equal (look->id, scene->look))
      continue;
    for (guint j = 0; j < look->fixtures->len; j++)
      if (g_str_equal (((const SqPartial *)g_ptr_array_index (look->fixtures, j))->id, id))
        return TRUE;
  }
  return FALSE;
}

/* Sentence case, remarks in brackets left out: `discharge PAR 1.8 kW (open reflector)` is
 * `Discharge PAR 1.8 kW`. */
static char *
type_text (const SqClass *lamp_class)
{
  const char *name = lamp_class->name != NULL ? lamp_class->name : lamp_class->id;
  const char *remark = strstr (name, " (");
  gsize length = remark != NULL && remark > name ? (gsize)(remark - name) : strlen (name);
  g_autofree char *bare = g_strndup (name, length);
  if (*bare == '\0')
    return g_steal_pointer (&bare);

  GString *text = g_string_new (NULL);
  g_string_append_unichar (text, g_unichar_totitle (g_utf8_get_char (bare)));
  g_string_append (text, g_utf8_next_char (bare));
  return g_string_free (text, FALSE);
}

static char *
gel_names (const SqScene *scene, const SqFixture *fixture)
{
  GString *names = g_string_new (NULL);
  for (guint i = 0; i < fixture->modifiers->len; i++) {
    const SqModifier *modifier = SQ_AT (SqModifier, fixture->modifiers, i);
    if (modifier->kind != SQ_MODIFIER_GEL)
      continue;
    const SqMaterial *gel = sq_scene_material (scene, modifier->material);
    const char *name = gel != NULL && gel->name != NULL ? gel->name : modifier->material;
    g_string_append_printf (names, "%s%s", names->len > 0 ? " + " : "", name);
  }
  return g_string_free (names, FALSE);
}

static char *
colour_text (const SqScene *scene,
             const SqFixture *fixture,
             const SqClass *lamp_class,
             SqUnits units)
{
  g_autofree char *gels = gel_names (scene, fixture);
  if (*gels != '\0')
    return g_steal_pointer (&gels);
  if (!isnan (fixture->tint[0])) {
    char x[G_ASCII_DTOSTR_BUF_SIZE], y[G_ASCII_DTOSTR_BUF_SIZE];
    g_ascii_formatd (x, sizeof x, "%.3f", fixture->tint[0]);
    g_ascii_formatd (y, sizeof y, "%.3f", fixture->tint[1]);
    return g_strdup_printf ("x %s y %s", x, y);
  }
  double cct_k = isnan (fixture->cct_k) ? lamp_class->cct_k : fixture->cct_k;
  return sq_quantity_format (cct_k, SQ_TEMPERATURE, units);
}

static char *
channel_text (const SqFixture *fixture)
{
  if (fixture->channel == 0 && fixture->address == 0)
    return NULL;
  g_autofree char *channel =
    fixture->channel != 0 ? g_strdup_printf (_ ("ch %d"), fixture->channel) : g_strdup ("");
  if (fixture->address == 0)
    return g_steal_pointer (&channel);
  return g_strdup_printf ("%s%s%d.%03d", channel, *channel != '\0' ? "   " : "", fixture->universe,
                          fixture->address);
}

SqTagText *
sq_tag_text_new (const SqScene *scene, const SqFixture *fixture, SqUnits units, SqTagRows rows)
{
  const SqClass *lamp_class = sq_scene_class (scene, fixture->class_id);
  SqTagText *text = g_new0 (SqTagText, 1);

  text->number = g_strdup (sq_label_or_id (fixture->number, fixture->id));
  text->type = type_text (lamp_class);
  text->level =
    fixture->on ? sq_quantity_format (fixture->level, SQ_FRACTION, units) : g_strdup (_ ("off"));
  text->colour = fixture->on ? colour_text (scene, fixture, lamp_class, units) : g_strdup ("");
  text->height = sq_quantity_format (fixture->at.z_m, SQ_LENGTH, units);
  if (rows & SQ_TAG_ROW_CHANNEL)
    text->channel = channel_text (fixture);
  if ((rows & SQ_TAG_ROW_CIRCUIT) && fixture->circuit != NULL && *fixture->circuit != '\0')
    text->circuit = g_strdup_printf (_ ("circuit %s"), fixture->circuit);
  text->role_line = fixture->role;
  text->role_word = _ (sq_role_lines[fixture->role].word);
  text->mount = sq_mount_glyph (fixture->mount);
  text->on = fixture->on;
  text->changed = sq_look_changes_fixture (scene, fixture->id);
  return text;
}

void
sq_tag_text_free (SqTagText *text)
{
  if (text == NULL)
    return;
  g_free (text->number);
  g_free (text->type);
  g_free (text->level);
  g_free (text->colour);
  g_free (text->height);
  g_free (text->channel);
  g_free (text->circuit);
  g_free (text);
}

char *
sq_tag_level_row (const SqTagText *text, SqTagDetail detail)
{
  if (detail == SQ_TAG_FULL && *text->colour != '\0')
    return g_strdup_printf ("%s   %s", text->level, text->colour);
  return g_strdup (text->level);
}
