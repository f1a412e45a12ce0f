/* application.c: one process, its windows, its keys */
#include "application.h"

#include "window.h"

#include <glib/gi18n-lib.h>
#include <gtk/gtk.h>

#define NO_DISPLAY 2

static void
load_style (GtkApplication *application, gpointer data)
{
  g_autoptr (GtkCssProvider) style = gtk_css_provider_new ();
  gtk_css_provider_load_from_resource (style, "/org/squarelaw/Squarelaw/style.css");
  gtk_style_context_add_provider_for_display (gdk_display_get_default (),
                                              GTK_STYLE_PROVIDER (style),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION);
}

static void
activate (GtkApplication *application, gpointer data)
{
  GtkWidget *window = sq_window_new (application);
  gtk_window_present (GTK_WINDOW (window));
}

static void
open_files (
  GtkApplication *application, GFile **files, int n_files, const char *hint, gpointer data)
{
  for (int i = 0; i < n_files; i++) {
    GtkWidget *window = sq_window_new (application);
    sq_window_load (SQ_WINDOW (window), files[i]);
    gtk_window_present (GTK_WINDOW (window));
  }
}

static void
quit (GSimpleAction *action, GVariant *parameter, gpointer application)
{
  g_application_quit (application);
}

static void
set_keys (GtkApplication *application)
{
  static const struct {
    const char *action;
    const char *keys[3];
  } rows[] = {
    { "win.open", { "<Control>o" } },
    { "win.reload", { "<Control>r", "F5" } },
    { "win.zoom-in", { "<Control>plus", "<Control>equal" } },
    { "win.zoom-out", { "<Control>minus" } },
    { "win.zoom-fit", { "Home" } },
    { "win.zoom-true", { "<Control>0" } },
    { "win.page-previous", { "Page_Up" } },
    { "win.page-next", { "Page_Down" } },
    { "window.close", { "<Control>w" } },
    { "app.quit", { "<Control>q" } },
  };
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    gtk_application_set_accels_for_action (application, rows[i].action, rows[i].keys);
}

int
sq_application_run (int argc, char **argv)
{
  if (!gtk_init_check ()) {
    g_printerr (
      _ ("squarelaw: no display can be opened; the verbs need none, see squarelaw --help\n"));
    return NO_DISPLAY;
  }
  g_autoptr (GtkApplication) application = gtk_application_new (
    "org.squarelaw.Squarelaw", G_APPLICATION_HANDLES_OPEN | G_APPLICATION_NON_UNIQUE);
  static const GActionEntry actions[] = { { "quit", quit, NULL, NULL, NULL, { 0 } } };
  g_action_map_add_action_entries (G_ACTION_MAP (application), actions, G_N_ELEMENTS (actions),
                                   application);
  set_keys (application);
  g_signal_connect (application, "startup", G_CALLBACK (load_style), NULL);
  g_signal_connect (application, "activate", G_CALLBACK (activate), NULL);
  g_signal_connect (application, "open", G_CALLBACK (open_files), NULL);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
