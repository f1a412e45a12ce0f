/* format-reference.c: the page that says what may stand in a scene file, from the field tables */
#include "scene/format-reference.h"

#include "base/json-check.h"
#include "base/json-write.h"
#include "scene/check.h"
#include "scene/value.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* What holds for the whole file. */
static const char *const conventions[] = {
  N_ ("A scene is one JSON object (RFC 8259, UTF-8) in a file that ends in `.squarelaw`."),
  N_ ("**Units** are metres, degrees, lux, candela, kelvin, watts, volts, amperes and hours as "
      "HH:MM, always. `units` changes only what is shown."),
  N_ ("**Axes**: x to the right of the page, y up the page, z up from the floor. **Azimuth**: "
      "degrees counter-clockwise from +x. **Elevation**: degrees above the horizontal. A "
      "compass bearing b stands at page azimuth `north` - b."),
  N_ ("**Places** are `[x, y]` on the plan, **points** `[x, y, z]` in the room."),
  N_ ("**Ids** are 1 to 64 of `A-Z a-z 0-9 _ -`, one namespace for things, classes, materials "
      "and looks, made once and never used again. Reserved are `sun`, `sky`, `room`, `base` "
      "and the keys of the whole file. A reference to nothing is an error."),
  N_ ("**Defaults** are left out of what the program writes; empty text, null and no text are "
      "the same. A file that the program wrote is written back byte for byte; of any other "
      "file, everything it said survives."),
  N_ ("**Unknown keys** are kept where they stand, written back and warned of. Unknown words "
      "where a fixed set is expected are errors."),
  N_ ("**The library** has what `class`, `material` and `stand` name and the scene does not bring "
      "along: first the `.json` files in the user's own folder, `squarelaw/library` in "
      "`$XDG_DATA_HOME` (`~/.local/share`), then what is compiled in. Such a file is an object of "
      "`classes`, `materials` and `stands`, lists with the fields given here."),
  N_ ("**A newer `format`** than the program knows is refused by the command line and opened "
      "read-only by the window."),
};

static const char *const columns[] = {
  N_ ("key"),   N_ ("what"),  N_ ("value"),   N_ ("unit"),
  N_ ("range"), N_ ("usual"), N_ ("default"), N_ ("marks"),
};

static void
append_intro (GString *page)
{
  g_string_append_printf (page, "# %s\n\n", _ ("The scene file"));
  g_string_append_printf (
    page, _ ("Written from the tables of fields; not by hand. After a change to a table:\n\n%s"),
    "    ninja -C _build tests/write-format && _build/tests/write-format "
    "> core/scene/FORMAT.md\n\n");
  for (guint i = 0; i < G_N_ELEMENTS (conventions); i++)
    g_string_append_printf (page, "- %s\n", _ (conventions[i]));
  g_string_append_printf (
    page,
    _ ("- **Limits**: a file of %u MiB, %d arrays and objects inside one another, %d members of "
       "a list, path or map, %d MiB of one text, whole numbers of 64 bits with sign, finite "
       "numbers; no key twice in an object, no NUL.\n\n"),
    (guint)(SQ_JSON_BYTES_MAX >> 20), SQ_JSON_DEPTH_MAX, SQ_MOST_MEMBERS, SQ_MOST_TEXT >> 20);
  g_string_append (
    page, _ ("Marks: *look*: a look may change it; *null*: null is a value of its own. "
             "The usual range is what a slider spans, where it is not the whole range.\n"));
}

/* `a`, `b` */
static void
append_words (GString *cell, const char *const *words, guint chosen)
{
  const char *between = "";
  for (guint i = 0; words[i] != NULL; i++) {
    if (!(chosen & (1u << i)))
      continue;
    g_string_append_printf (cell, "%s`%s`", between, words[i]);
    between = ", ";
  }
}

/* A link to the section of @kind; anchors have hyphens for blanks. */
static void
append_link (GString *cell, const SqKind *kind)
{
  g_autofree char *anchor = g_strdelimit (g_strdup (_ (kind->name)), " ", '-');
  g_string_append_printf (cell, "[%s](#%s)", _ (kind->name), anchor);
}

static const SqField *
field_of_variants (const SqKind *kind)
{
  SQ_EACH_FIELD (field, kind) {
    if (field->flags & SQ_SAYS_VARIANT)
      return field;
  }
  return NULL;
}

static void
append_value (GString *cell, const SqKind *kind, const SqField *field)
{
  if (field->type == &sq_value_word)
    g_string_append (cell, _ ("one of "));
  else if (field->type == &sq_value_numbers)
    g_string_append_printf (cell, _ ("a list of %u numbers"), field->count);
  else
    g_string_append (cell, _ (field->type->name));

  if (field->type == &sq_value_role_at)
    g_string_append (cell, ": ");
  if (field->words != NULL)
    append_words (cell, field->words, ~0u);
  if (field->of != NULL) {
    g_string_append (cell, ": ");
    append_link (cell, field->of);
  }
  if (field->names != 0 && field->type != &sq_value_role_at) {
    g_autofree char *names = sq_names_text (field->names);
    g_string_append_printf (cell, ": %s", names);
  }
  if (field->flags & SQ_WITHOUT_Z)
    g_string_append (cell, _ ("; z may be left out"));
  if (field->least > 0)
    g_string_append_printf (cell, _ ("; at least %u"), field->least);
  if (field->variants != 0) {
    g_string_append (cell, _ ("; only for "));
    append_words (cell, field_of_variants (kind)->words, field->variants);
  }
}

/* What a new thing has. */
static void
append_default (GString *cell, const SqThing *fresh, const SqField *field)
{
  gconstpointer value = sq_thing_value (fresh, field);
  if (field->flags & SQ_REQUIRED) {
    g_string_append (cell, _ ("required"));
  } else if (field->type == &sq_value_id || field->type == &sq_value_partial) {
    g_string_append (cell, _ ("none"));
  } else if (field->type == &sq_value_text && *(char *const *)value == NULL) {
    g_string_append (cell, "`\"\"`");
  } else {
    g_autoptr (JsonNode) node = field->type->write (field, value);
    g_autofree char *text = g_strchomp (sq_json_write (node));
    g_string_append_printf (cell, "`%s`", text);
  }
}

static void
append_usual (GString *cell, const SqField *field)
{
  if (field->usual_min == 0.0 && field->usual_max == 0.0)
    return;
  g_autofree char *low = sq_number_text (field->usual_min);
  g_autofree char *high = sq_number_text (field->usual_max);
  g_string_append_printf (cell, _ ("%s to %s"), low, high);
}

static void
append_marks (GString *cell, const SqField *field)
{
  if (field->flags & SQ_PER_LOOK)
    g_string_append (cell, _ ("look"));
  if (field->flags & SQ_MAY_BE_NULL)
    g_string_append_printf (cell, "%s%s", cell->len > 0 ? ", " : "", _ ("null"));
}

/* A bar would end the cell. */
static void
append_cell (GString *page, const char *text)
{
  g_autoptr (GString) cell = g_string_new (text);
  g_string_replace (cell, "|", "\\|", 0);
  g_string_append_printf (page, " %s |", cell->str);
}

static void
append_row (GString *page, const SqThing *fresh, const SqField *field)
{
  g_autoptr (GString) value = g_string_new (NULL), usual = g_string_new (NULL);
  g_autoptr (GString) initial = g_string_new (NULL), marks = g_string_new (NULL);
  g_autofree char *key = g_strdup_printf ("`%s`", field->key);
  g_autofree char *range = sq_field_range (field);
  append_value (value, fresh->kind, field);
  append_usual (usual, field);
  append_default (initial, fresh, field);
  append_marks (marks, field);
  const char *cells[G_N_ELEMENTS (columns)] = {
    key,   _ (field->help), value->str,   sq_dimension_unit (field->dimension),
    range, usual->str,      initial->str, marks->str,
  };
  g_string_append_c (page, '|');
  for (guint i = 0; i < G_N_ELEMENTS (cells); i++)
    append_cell (page, cells[i]);
  g_string_append_c (page, '\n');
}

static void
append_kind (GString *page, const SqKind *kind)
{
  g_autoptr (SqThing) fresh = sq_thing_new (kind);
  g_string_append_printf (page, "\n## %s\n%s\n\n|", _ (kind->name), _ (kind->help));
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    append_cell (page, _ (columns[i]));
  g_string_append (page, "\n|");
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    append_cell (page, "---");
  g_string_append_c (page, '\n');
  SQ_EACH_FIELD (field, kind)
    append_row (page, fresh, field);
}

/* @kind and all kinds in it, each once, in the order in which they are met. */
static void
collect (GPtrArray *kinds, const SqKind *kind)
{
  if (g_ptr_array_find (kinds, kind, NULL))
    return;
  g_ptr_array_add (kinds, (gpointer)kind);
  SQ_EACH_FIELD (field, kind) {
    if (field->of != NULL)
      collect (kinds, field->of);
  }
}

char *
sq_format_reference (void)
{
  g_autoptr (GPtrArray) kinds = g_ptr_array_new ();
  GString *page = g_string_new (NULL);
  collect (kinds, &sq_scene_kind);
  collect (kinds, &sq_stand_kind);
  append_intro (page);
  for (guint i = 0; i < kinds->len; i++)
    append_kind (page, g_ptr_array_index (kinds, i));
  return g_string_free (page, FALSE);
}
