/* table.h: tables for people: columns as wide as what stands in them */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct SqTable SqTable;

/* @titles: one a column; those that begin with `>` are set to the right, without it */
SqTable *sq_table_new (const char *const *titles, guint n_columns);
void sq_table_free (SqTable *table);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SqTable, sq_table_free)

/* The next cell, row after row. (transfer full) */
void sq_table_take (SqTable *table, char *cell);

/* Lines with @indent blanks before, a blank or two between columns, none at the end. */
void sq_table_append (const SqTable *table, GString *text, guint indent);

G_END_DECLS
