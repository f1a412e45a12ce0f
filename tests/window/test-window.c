/* test-window.c: the window as a user meets it: a scene opened, looked at, another that is wrong */
#include "page-turner.h"
#include "window.h"

#include <string.h>

#define LONGEST_WAIT_US (30 * G_USEC_PER_SEC)

typedef struct {
  GtkApplication *application;
  SqWindow *window;
} Shown;

static gpointer
part (Shown *shown, const char *id)
{
  GObject *object = gtk_widget_get_template_child (GTK_WIDGET (shown->window), SQ_TYPE_WINDOW, id);
  g_assert_nonnull (object);
  return object;
}

static void
setup (Shown *shown, gconstpointer data)
{
  shown->application = gtk_application_new ("org.squarelaw.Test", G_APPLICATION_NON_UNIQUE);
  g_assert_true (g_application_register (G_APPLICATION (shown->application), NULL, NULL));
  shown->window = SQ_WINDOW (sq_window_new (shown->application));
  gtk_window_present (GTK_WINDOW (shown->window));
}

static void
teardown (Shown *shown, gconstpointer data)
{
  gtk_window_destroy (GTK_WINDOW (shown->window));
  while (g_main_context_iteration (NULL, FALSE))
    ;
  g_object_unref (shown->application);
}

/* Turns the main loop until nothing is being computed. */
static void
wait_until_done (Shown *shown)
{
  GtkSpinner *spinner = part (shown, "spinner");
  gint64 until = g_get_monotonic_time () + LONGEST_WAIT_US;
  while (gtk_spinner_get_spinning (spinner)) {
    g_assert_cmpint (g_get_monotonic_time (), <, until);
    g_main_context_iteration (NULL, TRUE);
  }
}

static void
open_scene (Shown *shown, const char *path)
{
  g_autoptr (GFile) file = g_file_new_for_path (path);
  sq_window_load (shown->window, file);
  wait_until_done (shown);
}

static void
open_sample (Shown *shown, const char *name)
{
  g_autofree char *path = g_build_filename (SQ_SOURCE_DIR, "samples", name, NULL);
  open_scene (shown, path);
}

static gboolean
says (GtkWidget *widget, const char *text)
{
  if (GTK_IS_LABEL (widget) && strstr (gtk_label_get_text (GTK_LABEL (widget)), text) != NULL)
    return TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    if (says (child, text))
      return TRUE;
  }
  return FALSE;
}

static const char *
stack_shows (Shown *shown)
{
  return gtk_stack_get_visible_child_name (part (shown, "stack"));
}

static void
test_empty (Shown *shown, gconstpointer data)
{
  g_assert_cmpstr (stack_shows (shown), ==, "empty");
  g_assert_false (gtk_widget_get_visible (part (shown, "problem")));
  g_assert_false (gtk_widget_get_sensitive (part (shown, "looks")));
}

/* Title and figures come from the file: T4 is what its camera is set to, and what its note says
 * that the face reads. */
static void
test_sample (Shown *shown, gconstpointer data)
{
  open_sample (shown, "office-interview.squarelaw");
  g_assert_cmpstr (stack_shows (shown), ==, "sheet");
  g_assert_cmpstr (gtk_label_get_text (part (shown, "title")), ==, "What the Harbour Kept");
  g_assert_true (says (part (shown, "readings"), "T4"));
  g_assert_true (says (part (shown, "readings"), "(key + fill) : fill"));
  /* What is not computed is said. */
  g_assert_true (says (part (shown, "readings"), "room"));
}

static char *
all_figures (GtkWidget *widget)
{
  g_autoptr (GString) text = g_string_new (NULL);
  if (GTK_IS_LABEL (widget))
    g_string_append (text, gtk_label_get_text (GTK_LABEL (widget)));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    g_autofree char *inner = all_figures (child);
    g_string_append_printf (text, " %s", inner);
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static void
test_look (Shown *shown, gconstpointer data)
{
  open_sample (shown, "lighthouse-kitchen.squarelaw");
  GtkDropDown *looks = part (shown, "looks");
  g_assert_cmpuint (g_list_model_get_n_items (gtk_drop_down_get_model (looks)), >, 1);
  /* The overlay is the one that the file asks for: stops. */
  g_assert_cmpuint (gtk_drop_down_get_selected (part (shown, "overlays")), ==, 1);
  g_autofree char *base = all_figures (part (shown, "readings"));
  gtk_drop_down_set_selected (looks, 1);
  wait_until_done (shown);
  g_autofree char *look = all_figures (part (shown, "readings"));
  g_assert_cmpstr (base, !=, look);
  g_assert_cmpuint (gtk_drop_down_get_selected (looks), ==, 1);
  gtk_drop_down_set_selected (looks, 0);
  wait_until_done (shown);
  g_autofree char *again = all_figures (part (shown, "readings"));
  g_assert_cmpstr (base, ==, again);
}

/* One line that names file and place; what was shown stays. */
static void
test_bad_file (Shown *shown, gconstpointer data)
{
  g_autofree char *folder = g_dir_make_tmp ("squarelaw-window-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "wrong.squarelaw", NULL);
  g_assert_true (g_file_set_contents (
    path, "{\"format\": 1, \"probes\": [{\"id\": \"p1\", \"at\": [0, 0]}]}", -1, NULL));
  GtkDropDown *looks = part (shown, "looks");
  open_sample (shown, "office-interview.squarelaw");
  gtk_drop_down_set_selected (looks, 1);
  wait_until_done (shown);
  open_scene (shown, path);
  g_assert_cmpuint (gtk_drop_down_get_selected (looks), ==, 1);
  GtkLabel *problem = part (shown, "problem");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (problem)));
  g_assert_nonnull (strstr (gtk_label_get_text (problem), "wrong.squarelaw"));
  g_assert_nonnull (strstr (gtk_label_get_text (problem), "probes[0].at"));
  g_assert_cmpstr (stack_shows (shown), ==, "sheet");
  gtk_drop_down_set_selected (looks, 0);
  wait_until_done (shown);
  g_assert_cmpstr (gtk_label_get_text (part (shown, "title")), ==, "What the Harbour Kept");
  open_sample (shown, "office-interview.squarelaw");
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (problem)));
  remove (path);
  remove (folder);
}

/* The user's own library, of one file; NULL: none. */
static void
put_library (const char *text)
{
  g_autofree char *program = g_build_filename (g_get_user_data_dir (), "squarelaw", NULL);
  g_autofree char *folder = g_build_filename (program, "library", NULL);
  g_autofree char *path = g_build_filename (folder, "mine.json", NULL);
  if (text != NULL) {
    g_assert_cmpint (g_mkdir_with_parents (folder, 0755), ==, 0);
    g_assert_true (g_file_set_contents (path, text, -1, NULL));
  } else {
    g_assert_cmpint (remove (path), ==, 0);
    g_assert_cmpint (remove (folder), ==, 0);
    g_assert_cmpint (remove (program), ==, 0);
  }
}

/* What is wrong in the user's own library is said above the plan for as long as the scene that was
 * read with it is shown, and hinders nothing that does not need it. */
static void
test_library (Shown *shown, gconstpointer data)
{
  GtkLabel *problem = part (shown, "problem");
  put_library ("{\"classes\": [{\"id\": \"my-lamp\", \"emits\": \"sphere\"}, 7]}");
  open_sample (shown, "office-interview.squarelaw");
  g_assert_cmpstr (stack_shows (shown), ==, "sheet");
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (problem)));
  g_assert_nonnull (strstr (gtk_label_get_text (problem), "library/mine.json: classes[0]: "));
  g_assert_nonnull (strstr (gtk_label_get_text (problem), "1 more"));
  gtk_drop_down_set_selected (part (shown, "looks"), 1);
  wait_until_done (shown);
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (problem)));
  put_library (NULL);
  gtk_widget_activate_action (GTK_WIDGET (shown->window), "win.reload", NULL);
  wait_until_done (shown);
  g_assert_false (gtk_widget_get_visible (GTK_WIDGET (problem)));
}

static void
test_zoom (Shown *shown, gconstpointer data)
{
  open_sample (shown, "office-interview.squarelaw");
  GtkLabel *zoom = part (shown, "zoom");
  gtk_widget_activate_action (GTK_WIDGET (shown->window), "win.zoom-true", NULL);
  g_assert_cmpstr (gtk_label_get_text (zoom), ==, "100 %");
  gtk_widget_activate_action (GTK_WIDGET (shown->window), "win.zoom-in", NULL);
  g_assert_cmpstr (gtk_label_get_text (zoom), ==, "125 %");
  gtk_widget_activate_action (GTK_WIDGET (shown->window), "win.zoom-out", NULL);
  g_assert_cmpstr (gtk_label_get_text (zoom), ==, "100 %");
}

/* On A4 at 1:20 the office takes several sheets: the window turns to each, and says what the plot
 * has to say of them. */
static void
test_sheets (Shown *shown, gconstpointer data)
{
  g_autofree char *folder = g_dir_make_tmp ("squarelaw-window-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "sheets.squarelaw", NULL);
  g_autofree char *sample =
    g_build_filename (SQ_SOURCE_DIR, "samples", "office-interview.squarelaw", NULL);
  g_autofree char *text = NULL;
  g_assert_true (g_file_get_contents (sample, &text, NULL, NULL));
  g_auto (GStrv) parts = g_strsplit (text, "\"A3\", \"scale\": \"1:25\"", 2);
  g_assert_cmpuint (g_strv_length (parts), ==, 2);
  g_autofree char *small = g_strconcat (parts[0], "\"A4\", \"scale\": \"1:20\"", parts[1], NULL);
  g_assert_true (g_file_set_contents (path, small, -1, NULL));
  GtkWidget *turner = part (shown, "turner"), *window = GTK_WIDGET (shown->window);

  open_sample (shown, "office-interview.squarelaw");
  g_assert_false (gtk_widget_get_visible (turner)); /* on its own A3 it is one */
  open_scene (shown, path);
  g_assert_true (gtk_widget_get_visible (turner));
  g_assert_true (says (turner, "Sheet 1 of "));
  g_assert_true (says (part (shown, "readings"), "to be joined at their match lines"));
  g_assert_nonnull (strstr (gtk_label_get_text (part (shown, "status")), "A4 at 1:20"));
  gtk_widget_activate_action (window, "win.page-next", NULL);
  g_assert_true (says (turner, "Sheet 2 of "));
  g_assert_cmpint (sq_page_turner_get_page (SQ_PAGE_TURNER (turner)), ==, 1);
  for (int k = 0; k < 20; k++)
    gtk_widget_activate_action (window, "win.page-next", NULL);
  int last = sq_page_turner_get_page (SQ_PAGE_TURNER (turner));
  g_assert_cmpint (last, >, 1);
  g_assert_cmpint (last, <, 20);
  gtk_widget_activate_action (window, "win.page-previous", NULL);
  g_assert_cmpint (sq_page_turner_get_page (SQ_PAGE_TURNER (turner)), ==, last - 1);
  open_sample (shown, "office-interview.squarelaw");
  g_assert_false (gtk_widget_get_visible (turner));
  remove (path);
  remove (folder);
}

/* Closed while it computes: nothing is called back that is gone. */
static void
test_closed_early (Shown *shown, gconstpointer data)
{
  g_autofree char *path =
    g_build_filename (SQ_SOURCE_DIR, "samples", "lighthouse-kitchen.squarelaw", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  GtkWidget *second = sq_window_new (shown->application);
  sq_window_load (SQ_WINDOW (second), file);
  sq_window_load (SQ_WINDOW (second), file);
  gtk_window_destroy (GTK_WINDOW (second));
  open_sample (shown, "office-interview.squarelaw");
  g_assert_cmpstr (stack_shows (shown), ==, "sheet");
}

/* Whatever can be focused says what it is: by its text, or by a name of its own. */
static void
assert_named (GtkWidget *widget)
{
  gboolean has_text = GTK_IS_BUTTON (widget) && gtk_button_get_label (GTK_BUTTON (widget)) != NULL;
  gboolean asks = GTK_IS_DROP_DOWN (widget) || (GTK_IS_BUTTON (widget) && !has_text);
  /* The window's own buttons and those inside a drop-down are GTK's. */
  gboolean ours =
    gtk_widget_get_ancestor (widget, GTK_TYPE_WINDOW_CONTROLS) == NULL &&
    (GTK_IS_DROP_DOWN (widget) || gtk_widget_get_ancestor (widget, GTK_TYPE_DROP_DOWN) == NULL);
  if (asks && ours &&
      !gtk_test_accessible_has_property (GTK_ACCESSIBLE (widget), GTK_ACCESSIBLE_PROPERTY_LABEL))
    g_error ("a %s has no accessible name", G_OBJECT_TYPE_NAME (widget));
  for (GtkWidget *child = gtk_widget_get_first_child (widget); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    assert_named (child);
}

static void
test_names (Shown *shown, gconstpointer data)
{
  open_sample (shown, "office-interview.squarelaw");
  assert_named (GTK_WIDGET (shown->window));
  gtk_test_accessible_assert_role (part (shown, "sheet"), GTK_ACCESSIBLE_ROLE_IMG);
  g_assert_true (
    gtk_test_accessible_has_property (part (shown, "sheet"), GTK_ACCESSIBLE_PROPERTY_LABEL));
}

int
main (int argc, char **argv)
{
  /* The library of whoever tests must not matter. */
  g_autofree char *data_dir = g_dir_make_tmp ("squarelaw-window-XXXXXX", NULL);
  g_setenv ("XDG_DATA_HOME", data_dir, TRUE);
  gtk_test_init (&argc, &argv, NULL);
#define CASE(name, function) g_test_add (name, Shown, NULL, setup, function, teardown)
  CASE ("/window/empty", test_empty);
  CASE ("/window/a sample is opened", test_sample);
  CASE ("/window/another look reads otherwise", test_look);
  CASE ("/window/a wrong file is told and changes nothing", test_bad_file);
  CASE ("/window/a wrong library is told and hinders nothing", test_library);
  CASE ("/window/zoom", test_zoom);
  CASE ("/window/sheets are turned", test_sheets);
  CASE ("/window/closed while it computes", test_closed_early);
  CASE ("/window/everything has a name", test_names);
  int code = g_test_run ();
  remove (data_dir);
  return code;
}
