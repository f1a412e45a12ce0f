/* window.h: a window on one scene: its sheet as it prints, and what the meter reads */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

#define SQ_TYPE_WINDOW (sq_window_get_type ())
G_DECLARE_FINAL_TYPE (SqWindow, sq_window, SQ, WINDOW, GtkApplicationWindow)

GtkWidget *sq_window_new (GtkApplication *application);

/* Reads @file in the background; what is wrong with it is said in the window, and what was shown
 * before stays. */
void sq_window_load (SqWindow *window, GFile *file);

G_END_DECLS
