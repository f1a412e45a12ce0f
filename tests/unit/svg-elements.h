/* svg-elements.h: an SVG file taken apart for tests, by a parser that is not the program's */
#pragma once

#include <glib.h>
#include <string.h>

G_BEGIN_DECLS

typedef struct {
  char *name, *layer; /* id of the outermost group; NULL outside */
  int clips;          /* how many groups with a clip it stands in */
  GHashTable *attributes;
  GString *words; /* of itself and of what it holds */
} Element;

typedef struct {
  GPtrArray *all;   /* Element, as they begin */
  GPtrArray *stack; /* those that are open */
} Elements;

static inline void
free_element (gpointer data)
{
  Element *element = data;
  g_free (element->name);
  g_free (element->layer);
  g_hash_table_unref (element->attributes);
  g_string_free (element->words, TRUE);
  g_free (element);
}

static inline const char *
attribute_of (const Element *element, const char *name)
{
  return g_hash_table_lookup (element->attributes, name);
}

static inline double
number_of (const Element *element, const char *name)
{
  const char *text = attribute_of (element, name);
  char *end = NULL;
  if (text == NULL)
    g_error ("<%s> has no %s", element->name, name);
  double number = g_ascii_strtod (text, &end);
  g_assert_true (end != text);
  return number;
}

static inline void
element_starts (GMarkupParseContext *context,
                const char *name,
                const char **names,
                const char **values,
                gpointer data,
                GError **error)
{
  Elements *elements = data;
  Element *element = g_new0 (Element, 1);
  const Element *parent = NULL;
  element->name = g_strdup (name);
  element->attributes = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  element->words = g_string_new (NULL);
  for (int k = 0; names[k] != NULL; k++)
    g_hash_table_insert (element->attributes, g_strdup (names[k]), g_strdup (values[k]));
  if (elements->stack->len > 0)
    parent = g_ptr_array_index (elements->stack, elements->stack->len - 1);
  if (parent != NULL) {
    element->layer = g_strdup (parent->layer);
    element->clips = parent->clips;
  }
  if (g_str_equal (name, "g") && element->layer == NULL)
    element->layer = g_strdup (attribute_of (element, "id"));
  if (attribute_of (element, "clip-path") != NULL)
    element->clips++;
  g_ptr_array_add (elements->all, element);
  g_ptr_array_add (elements->stack, element);
}

static inline void
element_ends (GMarkupParseContext *context, const char *name, gpointer data, GError **error)
{
  Elements *elements = data;
  g_ptr_array_set_size (elements->stack, (int)elements->stack->len - 1);
}

static inline void
element_says (
  GMarkupParseContext *context, const char *text, gsize length, gpointer data, GError **error)
{
  Elements *elements = data;
  for (guint k = 0; k < elements->stack->len; k++) {
    Element *element = g_ptr_array_index (elements->stack, k);
    g_string_append_len (element->words, text, (gssize)length);
  }
}

/* All elements of the file @text, which must be well-formed. (element-type Element) */
static inline GPtrArray *
elements_of (const char *text, gsize length)
{
  const GMarkupParser parser = { element_starts, element_ends, element_says, NULL, NULL };
  g_autoptr (GError) error = NULL;
  Elements elements = { g_ptr_array_new_with_free_func (free_element), g_ptr_array_new () };
  g_autoptr (GMarkupParseContext) context = g_markup_parse_context_new (
    &parser, G_MARKUP_TREAT_CDATA_AS_TEXT | G_MARKUP_PREFIX_ERROR_POSITION, &elements, NULL);
  if (!g_markup_parse_context_parse (context, text, (gssize)length, &error) ||
      !g_markup_parse_context_end_parse (context, &error))
    g_error ("not well-formed: %s", error->message);
  g_ptr_array_unref (elements.stack);
  return elements.all;
}

/* Number @n of those that are called @name; NULL where there are fewer. */
static inline const Element *
nth_element (const GPtrArray *elements, const char *name, guint n)
{
  for (guint k = 0; k < elements->len; k++) {
    const Element *element = g_ptr_array_index (elements, k);
    if (g_str_equal (element->name, name) && n-- == 0)
      return element;
  }
  return NULL;
}

static inline guint
count_elements (const GPtrArray *elements, const char *name)
{
  guint n = 0;
  while (nth_element (elements, name, n) != NULL)
    n++;
  return n;
}

G_END_DECLS
