/* file-chooser.h: asking for a file; all that changes between GTK 4.8 and 4.18 is behind this */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Asks for a scene file; @chosen is called unless the user thinks better of it. */
void sq_choose_scene (GtkWindow *parent,
                      void (*chosen) (GFile *file, gpointer data),
                      gpointer data);

G_END_DECLS
