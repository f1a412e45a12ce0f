/* window.c: a window on one scene: its sheet as it prints, and what the meter reads */
#include "window.h"

#include "base/error.h"
#include "file-chooser.h"
#include "page-turner.h"
#include "readings-panel.h"
#include "scene-job.h"
#include "sheet-view.h"

#include <glib/gi18n-lib.h>

struct _SqWindow {
  GtkApplicationWindow parent_instance;
  GtkLabel *title, *subtitle, *problem, *empty, *status, *zoom;
  GtkSpinner *spinner;
  GtkStack *stack;
  GtkDropDown *looks, *overlays;
  GtkScrolledWindow *scroller;
  SqSheetView *sheet;
  SqPageTurner *turner;
  SqReadingsPanel *readings;

  GFile *file;           /* (nullable): that is shown */
  GFile *asked;          /* (nullable): that is being read */
  guint look, overlay;   /* which of the drop-downs' rows are shown */
  SqScene *scene;        /* (nullable): that is shown */
  char *remark;          /* (nullable): on the user's own library */
  GCancellable *running; /* (nullable): the job whose result is waited for */
  gboolean filling;      /* the drop-downs change, not the user */
};

G_DEFINE_FINAL_TYPE (SqWindow, sq_window, GTK_TYPE_APPLICATION_WINDOW)

static void start (SqWindow *window, const char *path);

static void
say_problem (SqWindow *window, const char *text)
{
  gtk_label_set_text (window->problem, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (window->problem), text != NULL);
}

static void
say_busy (SqWindow *window, gboolean busy)
{
  gtk_widget_set_visible (GTK_WIDGET (window->spinner), busy);
  gtk_spinner_set_spinning (window->spinner, busy);
  gtk_label_set_text (window->empty, busy ? _ ("Reading the light…")
                                          : _ ("Nothing is open. Drop a scene file here, or"));
  if (busy)
    gtk_label_set_text (window->status, _ ("Reading the light…"));
}

static void
show_titles (SqWindow *window)
{
  const SqTitle *title = window->scene->title;
  g_autofree char *name = window->file != NULL ? g_file_get_basename (window->file) : NULL;
  const char *production = title->production != NULL ? title->production : name;
  g_autoptr (GString) second = g_string_new (title->title);
  if (title->scene != NULL)
    g_string_append_printf (second, "%s%s", second->len > 0 ? ", " : "", title->scene);
  gtk_label_set_text (window->title, production != NULL ? production : _ ("Squarelaw"));
  gtk_label_set_text (window->subtitle, second->str);
  gtk_widget_set_visible (GTK_WIDGET (window->subtitle), second->len > 0);
  gtk_window_set_title (GTK_WINDOW (window), production != NULL ? production : _ ("Squarelaw"));
}

/* The drop-downs say what is shown, whatever was asked for in between. */
static void
show_choices (SqWindow *window)
{
  window->filling = TRUE;
  gtk_drop_down_set_selected (window->looks, window->look);
  gtk_drop_down_set_selected (window->overlays, window->overlay);
  window->filling = FALSE;
}

/* The base scene first, then its looks. */
static void
fill_looks (SqWindow *window)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);
  gtk_string_list_append (names, _ ("Base"));
  for (guint i = 0; i < window->scene->looks->len; i++) {
    const SqLook *look = SQ_AT (SqLook, window->scene->looks, i);
    gtk_string_list_append (names, look->name != NULL ? look->name : look->id);
  }
  window->filling = TRUE;
  gtk_drop_down_set_model (window->looks, G_LIST_MODEL (names));
  window->filling = FALSE;
  gtk_widget_set_sensitive (GTK_WIDGET (window->looks), window->scene->looks->len > 0);
}

/* The first of what there is to say of the file and of its sheets; all of it where one asks. */
static void
show_status (SqWindow *window, const GPtrArray *warnings, const GPtrArray *remarks)
{
  g_autoptr (GString) all = g_string_new (NULL);
  g_autofree char *text = NULL;
  guint n = warnings->len + remarks->len;
  for (guint k = 0; k < n; k++) {
    const GPtrArray *from = k < warnings->len ? warnings : remarks;
    const char *line = g_ptr_array_index (from, k < warnings->len ? k : k - warnings->len);
    g_string_append_printf (all, "%s%s", k > 0 ? "\n" : "", line);
  }
  if (warnings->len > 0)
    text = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u key is unknown and kept: %s",
                                         "%u keys are unknown and kept: %s", warnings->len),
                            warnings->len, (const char *)g_ptr_array_index (warnings, 0));
  else if (remarks->len > 1)
    text = g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE, "%s (and %u more)", "%s (and %u more)", remarks->len - 1),
      (const char *)g_ptr_array_index (remarks, 0), remarks->len - 1);
  else if (remarks->len == 1)
    text = g_strdup (g_ptr_array_index (remarks, 0));
  gtk_label_set_text (window->status,
                      text != NULL ? text : _ ("Ctrl+wheel zooms, a drag moves the sheet"));
  gtk_widget_set_tooltip_text (GTK_WIDGET (window->status), n > 0 ? all->str : NULL);
}

/* The scene is shown all the same: what it needs was read. */
static void
show_remarks (SqWindow *window, const GPtrArray *remarks)
{
  if (remarks != NULL) {
    g_clear_pointer (&window->remark, g_free);
    if (remarks->len == 1)
      window->remark =
        g_strdup_printf (_ ("In your library: %s"), (const char *)g_ptr_array_index (remarks, 0));
    else if (remarks->len > 1)
      window->remark =
        g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "In your library: %s (and %u more)",
                                      "In your library: %s (and %u more)", remarks->len - 1),
                         (const char *)g_ptr_array_index (remarks, 0), remarks->len - 1);
  }
  say_problem (window, window->remark);
}

static void
show_failure (SqWindow *window, const GError *error)
{
  /* Errors of the file system name the file themselves. */
  GFile *about = window->asked != NULL ? window->asked : window->file;
  g_autofree char *name = about != NULL ? g_file_get_basename (about) : NULL;
  g_autofree char *text = g_strdup_printf ("%s: %s", name, error->message);
  gboolean named = name == NULL || g_error_matches (error, SQ_ERROR, SQ_ERROR_FILE);
  say_problem (window, named ? error->message : text);
  gtk_label_set_text (window->status,
                      window->scene != NULL ? _ ("What was shown before stays") : "");
  show_choices (window);
  g_clear_object (&window->asked);
}

static void
show_result (SqWindow *window, SqSceneResult *made)
{
  gboolean is_new = window->asked != NULL;
  show_remarks (window, made->remarks);
  g_clear_pointer (&window->scene, sq_scene_unref);
  window->scene = g_steal_pointer (&made->scene);
  if (is_new) {
    /* A file opens in its base look, with the overlay that it asks for. */
    g_set_object (&window->file, window->asked);
    g_clear_object (&window->asked);
    window->look = 0;
    window->overlay = window->scene->map->quantity == SQ_OVERLAY_STOPS ? 1 : 0;
    fill_looks (window);
  } else {
    window->look = gtk_drop_down_get_selected (window->looks);
    window->overlay = gtk_drop_down_get_selected (window->overlays);
  }
  show_choices (window);
  show_titles (window);
  show_status (window, made->warnings, sq_plot_remarks (made->plot));
  sq_readings_panel_show (window->readings, sq_plot_readings (made->plot),
                          sq_plot_remarks (made->plot));
  sq_sheet_view_take_plot (window->sheet, g_steal_pointer (&made->plot));
  if (is_new)
    sq_page_turner_begin (window->turner);
  else
    sq_page_turner_look (window->turner);
  gtk_stack_set_visible_child_name (window->stack, "sheet");
}

static void
on_ready (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SqSceneResult) made = sq_scene_job_finish (result, &error);
  /* Cancelled: the window has asked for something else since, or is gone. */
  if (g_error_matches (error, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    return;
  SqWindow *window = SQ_WINDOW (data);
  g_clear_object (&window->running);
  say_busy (window, FALSE);
  if (made != NULL)
    show_result (window, made);
  else
    show_failure (window, error);
}

static int
chosen_overlay (SqWindow *window)
{
  static const int overlays[] = { SQ_OVERLAY_LUX, SQ_OVERLAY_STOPS, SQ_OVERLAY_NONE };
  guint chosen = gtk_drop_down_get_selected (window->overlays);
  return chosen < G_N_ELEMENTS (overlays) ? overlays[chosen] : -1;
}

static const char *
chosen_look (SqWindow *window)
{
  guint chosen = gtk_drop_down_get_selected (window->looks);
  if (window->scene == NULL || chosen == 0 || chosen > window->scene->looks->len)
    return NULL;
  return SQ_AT (SqLook, window->scene->looks, chosen - 1)->id;
}

/* @path: a file to read; NULL: another page of the scene that is shown */
static void
start (SqWindow *window, const char *path)
{
  if (window->running != NULL)
    g_cancellable_cancel (window->running);
  g_clear_object (&window->running);
  window->running = g_cancellable_new ();
  say_busy (window, TRUE);
  if (path != NULL)
    sq_scene_job_start (path, NULL, NULL, -1, window->running, on_ready, window);
  else
    sq_scene_job_start (NULL, window->scene, chosen_look (window), chosen_overlay (window),
                        window->running, on_ready, window);
}

void
sq_window_load (SqWindow *window, GFile *file)
{
  g_autofree char *path = g_file_get_path (file);
  if (path == NULL) {
    say_problem (window, _ ("This place has no path here, expected a file on this computer"));
    return;
  }
  g_set_object (&window->asked, file);
  start (window, path);
}

static void
on_choice (GObject *drop_down, GParamSpec *property, SqWindow *window)
{
  if (window->filling || window->scene == NULL)
    return;
  g_clear_object (&window->asked); /* a choice of what is shown, not of what was being read */
  start (window, NULL);
}

static void
on_zoomed (SqSheetView *sheet, SqWindow *window)
{
  g_autofree char *text = g_strdup_printf ("%.0f %%", 100.0 * sq_sheet_view_get_zoom (sheet));
  gtk_label_set_text (window->zoom, text);
}

static gboolean
on_drop (GtkDropTarget *target, const GValue *value, double x, double y, SqWindow *window)
{
  sq_window_load (window, g_value_get_object (value));
  return TRUE;
}

static void
on_chosen (GFile *file, gpointer window)
{
  sq_window_load (SQ_WINDOW (window), file);
}

static void
open_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sq_choose_scene (GTK_WINDOW (widget), on_chosen, widget);
}

static void
reload_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SqWindow *window = SQ_WINDOW (widget);
  if (window->file != NULL)
    sq_window_load (window, window->file);
}

static void
zoom_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SqSheetView *sheet = SQ_WINDOW (widget)->sheet;
  double zoom = sq_sheet_view_get_zoom (sheet);
  if (g_str_equal (name, "win.zoom-in"))
    sq_sheet_view_set_zoom (sheet, zoom * 1.25);
  else if (g_str_equal (name, "win.zoom-out"))
    sq_sheet_view_set_zoom (sheet, zoom / 1.25);
  else
    sq_sheet_view_set_zoom (sheet, g_str_equal (name, "win.zoom-true") ? 1.0 : 0.0);
}

static void
page_action (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sq_page_turner_turn (SQ_WINDOW (widget)->turner, g_str_equal (name, "win.page-next") ? 1 : -1);
}

static void
sq_window_dispose (GObject *object)
{
  SqWindow *window = SQ_WINDOW (object);
  if (window->running != NULL)
    g_cancellable_cancel (window->running);
  g_clear_object (&window->running);
  g_clear_object (&window->file);
  g_clear_object (&window->asked);
  g_clear_pointer (&window->scene, sq_scene_unref);
  g_clear_pointer (&window->remark, g_free);
  G_OBJECT_CLASS (sq_window_parent_class)->dispose (object);
}

static void
sq_window_class_init (SqWindowClass *class)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (class);
  G_OBJECT_CLASS (class)->dispose = sq_window_dispose;
  g_type_ensure (SQ_TYPE_PAGE_TURNER);
  g_type_ensure (SQ_TYPE_SHEET_VIEW);
  g_type_ensure (SQ_TYPE_READINGS_PANEL);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/squarelaw/Squarelaw/window.ui");
#define CHILD(member) gtk_widget_class_bind_template_child (widget_class, SqWindow, member)
  CHILD (title);
  CHILD (subtitle);
  CHILD (problem);
  CHILD (empty);
  CHILD (status);
  CHILD (zoom);
  CHILD (spinner);
  CHILD (stack);
  CHILD (looks);
  CHILD (overlays);
  CHILD (scroller);
  CHILD (sheet);
  CHILD (turner);
  CHILD (readings);
#undef CHILD
  gtk_widget_class_install_action (widget_class, "win.open", NULL, open_action);
  gtk_widget_class_install_action (widget_class, "win.reload", NULL, reload_action);
  static const char *const zooms[] = { "win.zoom-in", "win.zoom-out", "win.zoom-fit",
                                       "win.zoom-true" };
  for (guint i = 0; i < G_N_ELEMENTS (zooms); i++)
    gtk_widget_class_install_action (widget_class, zooms[i], NULL, zoom_action);
  gtk_widget_class_install_action (widget_class, "win.page-previous", NULL, page_action);
  gtk_widget_class_install_action (widget_class, "win.page-next", NULL, page_action);
}

static void
sq_window_init (SqWindow *window)
{
  gtk_widget_init_template (GTK_WIDGET (window));
  g_signal_connect (window->looks, "notify::selected", G_CALLBACK (on_choice), window);
  g_signal_connect (window->overlays, "notify::selected", G_CALLBACK (on_choice), window);
  g_signal_connect (window->sheet, "zoomed", G_CALLBACK (on_zoomed), window);
  GtkDropTarget *drop = gtk_drop_target_new (G_TYPE_FILE, GDK_ACTION_COPY);
  g_signal_connect (drop, "drop", G_CALLBACK (on_drop), window);
  gtk_widget_add_controller (GTK_WIDGET (window), GTK_EVENT_CONTROLLER (drop));
  gtk_widget_set_sensitive (GTK_WIDGET (window->looks), FALSE);
  sq_page_turner_follow (window->turner, window->sheet, window->scroller);
}

GtkWidget *
sq_window_new (GtkApplication *application)
{
  return g_object_new (SQ_TYPE_WINDOW, "application", application, NULL);
}
