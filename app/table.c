/* table.c: tables for people: columns as wide as what stands in them */
#include "table.h"

#include <string.h>

struct SqTable {
  guint n_columns;
  gboolean *to_right;
  GPtrArray *cells; /* titles first */
};

SqTable *
sq_table_new (const char *const *titles, guint n_columns)
{
  SqTable *table = g_new0 (SqTable, 1);
  table->n_columns = n_columns;
  table->to_right = g_new0 (gboolean, n_columns);
  table->cells = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < n_columns; i++) {
    table->to_right[i] = titles[i][0] == '>';
    g_ptr_array_add (table->cells, g_strdup (titles[i] + (table->to_right[i] ? 1 : 0)));
  }
  return table;
}

void
sq_table_free (SqTable *table)
{
  g_free (table->to_right);
  g_ptr_array_unref (table->cells);
  g_free (table);
}

void
sq_table_take (SqTable *table, char *cell)
{
  g_ptr_array_add (table->cells, cell);
}

static guint
cell_width (const char *cell)
{
  guint width = 0;
  for (const char *c = cell; *c != '\0'; c = g_utf8_next_char (c)) {
    gunichar letter = g_utf8_get_char (c);
    if (!g_unichar_iszerowidth (letter))
      width += g_unichar_iswide (letter) ? 2 : 1;
  }
  return width;
}

static void
append_blanks (GString *text, guint count)
{
  for (guint i = 0; i < count; i++)
    g_string_append_c (text, ' ');
}

void
sq_table_append (const SqTable *table, GString *text, guint indent)
{
  guint rows = table->cells->len / table->n_columns;
  g_autofree guint *widths = g_new0 (guint, table->n_columns);
  for (guint i = 0; i < rows * table->n_columns; i++) {
    guint width = cell_width (g_ptr_array_index (table->cells, i));
    widths[i % table->n_columns] = MAX (widths[i % table->n_columns], width);
  }
  for (guint row = 0; row < rows; row++) {
    gsize start = text->len;
    append_blanks (text, indent);
    for (guint column = 0; column < table->n_columns; column++) {
      const char *cell = g_ptr_array_index (table->cells, row * table->n_columns + column);
      guint fill = widths[column] - cell_width (cell);
      if (column > 0)
        append_blanks (text, 2);
      append_blanks (text, table->to_right[column] ? fill : 0);
      g_string_append (text, cell);
      append_blanks (text, table->to_right[column] ? 0 : fill);
    }
    while (text->len > start && text->str[text->len - 1] == ' ')
      g_string_truncate (text, text->len - 1);
    g_string_append_c (text, '\n');
  }
}
