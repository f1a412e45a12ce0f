/* not-counted.c: what of the light is not counted, said once for all that have it in common */
#include "paper/not-counted.h"

#include "draw/label.h"

#include <string.h>

/* More names than these are left out of a line. */
#define MOST_NAMES 24

typedef struct {
  char *what;
  GPtrArray *names; /* utf8 */
} Kind;

static void
kind_free (gpointer data)
{
  Kind *kind = data;
  g_free (kind->what);
  g_ptr_array_unref (kind->names);
  g_free (kind);
}

static Kind *
kind_of (GPtrArray *kinds, const char *what)
{
  for (guint k = 0; k < kinds->len; k++) {
    Kind *kind = g_ptr_array_index (kinds, k);
    if (g_str_equal (kind->what, what))
      return kind;
  }
  Kind *kind = g_new (Kind, 1);
  *kind = (Kind){ g_strdup (what), g_ptr_array_new_with_free_func (g_free) };
  g_ptr_array_add (kinds, kind);
  return kind;
}

/* A lamp is known by its number. Returns: (transfer full) */
static char *
name_of (const SqScene *scene, const char *id)
{
  const SqThing *thing = sq_scene_find (scene, id);
  return g_strdup (thing != NULL && thing->kind == &sq_fixture_kind
                     ? sq_label_or_id (((const SqFixture *)thing)->number, id)
                     : id);
}

/* @line: `f3: soft box (…)` */
static void
sort_in (GPtrArray *kinds, const SqScene *scene, const char *line)
{
  const char *between = strstr (line, ": ");
  g_autofree char *id = between != NULL ? g_strndup (line, (gsize)(between - line)) : g_strdup ("");
  Kind *kind = kind_of (kinds, between != NULL ? between + 2 : line);
  g_autofree char *name = name_of (scene, id);
  if (*name != '\0' && !g_ptr_array_find_with_equal_func (kind->names, name, g_str_equal, NULL))
    g_ptr_array_add (kind->names, g_steal_pointer (&name));
}

static char *
line_of (const Kind *kind)
{
  g_autoptr (GString) line = g_string_new (NULL);
  for (guint k = 0; k < MIN (kind->names->len, MOST_NAMES); k++)
    g_string_append_printf (line, "%s%s", k > 0 ? ", " : "",
                            (const char *)g_ptr_array_index (kind->names, k));
  if (kind->names->len > MOST_NAMES)
    g_string_append (line, " …");
  if (line->len > 0)
    g_string_append (line, ": ");
  g_string_append (line, kind->what);
  return g_string_free (g_steal_pointer (&line), FALSE);
}

GPtrArray *
sq_not_counted_lines (const SqReadings *readings, const GPtrArray *more)
{
  g_autoptr (GPtrArray) kinds = g_ptr_array_new_with_free_func (kind_free);
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  for (guint k = 0; k < readings->not_counted->len; k++)
    sort_in (kinds, readings->scene, g_ptr_array_index (readings->not_counted, k));
  for (guint k = 0; more != NULL && k < more->len; k++)
    sort_in (kinds, readings->scene, g_ptr_array_index (more, k));
  for (guint k = 0; k < kinds->len; k++)
    g_ptr_array_add (lines, line_of (g_ptr_array_index (kinds, k)));
  return lines;
}
