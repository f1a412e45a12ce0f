/* page-turner.c: which of several pages is in view, and buttons that turn to another */
#include "page-turner.h"

#include <glib/gi18n-lib.h>

/* Over a page that is turned to, in pixels. */
#define ABOVE 16

struct _SqPageTurner {
  GtkWidget parent_instance;
  GtkWidget *box;
  GtkLabel *label;
  SqSheetView *sheet;  /* borrowed: both stand in one window */
  GtkAdjustment *down; /* owned */
  int page;            /* that is in view, or was turned to where all are */
  gboolean turning;    /* we scroll, not the user */
};

G_DEFINE_FINAL_TYPE (SqPageTurner, sq_page_turner, GTK_TYPE_WIDGET)

static void
show (SqPageTurner *turner)
{
  GtkWidget *window = gtk_widget_get_ancestor (GTK_WIDGET (turner), GTK_TYPE_WINDOW);
  int n_pages = sq_sheet_view_n_pages (turner->sheet);
  /* Translators: which of how many sheets is in view */
  g_autofree char *text = g_strdup_printf (_ ("Sheet %d of %d"), turner->page + 1, n_pages);
  gtk_label_set_text (turner->label, text);
  gtk_widget_set_visible (GTK_WIDGET (turner), n_pages > 1);
  if (window == NULL)
    return;
  gtk_widget_action_set_enabled (window, "win.page-previous", turner->page > 0);
  gtk_widget_action_set_enabled (window, "win.page-next", turner->page + 1 < n_pages);
}

/* That in which the middle of what is seen lies. */
static int
page_in_view (SqPageTurner *turner)
{
  double middle =
    gtk_adjustment_get_value (turner->down) + gtk_adjustment_get_page_size (turner->down) / 2.0;
  int page = 0;
  while (page + 1 < sq_sheet_view_n_pages (turner->sheet) &&
         sq_sheet_view_page_top (turner->sheet, page + 1) <= middle)
    page++;
  return page;
}

void
sq_page_turner_look (SqPageTurner *turner)
{
  turner->page = page_in_view (turner);
  show (turner);
}

static void
on_scrolled (GtkAdjustment *down, SqPageTurner *turner)
{
  if (!turner->turning)
    sq_page_turner_look (turner);
}

static void
go_to (SqPageTurner *turner, int page)
{
  turner->page = CLAMP (page, 0, MAX (sq_sheet_view_n_pages (turner->sheet) - 1, 0));
  turner->turning = TRUE;
  gtk_adjustment_set_value (turner->down,
                            sq_sheet_view_page_top (turner->sheet, turner->page) - ABOVE);
  turner->turning = FALSE;
  show (turner);
}

void
sq_page_turner_begin (SqPageTurner *turner)
{
  go_to (turner, 0);
}

void
sq_page_turner_turn (SqPageTurner *turner, int by)
{
  go_to (turner, turner->page + by);
}

int
sq_page_turner_get_page (SqPageTurner *turner)
{
  return turner->page;
}

void
sq_page_turner_follow (SqPageTurner *turner, SqSheetView *sheet, GtkScrolledWindow *room)
{
  turner->sheet = sheet;
  turner->down = g_object_ref (gtk_scrolled_window_get_vadjustment (room));
  g_signal_connect_object (turner->down, "value-changed", G_CALLBACK (on_scrolled), turner, 0);
  show (turner);
}

static void
page_turner_dispose (GObject *object)
{
  SqPageTurner *turner = SQ_PAGE_TURNER (object);
  g_clear_object (&turner->down);
  g_clear_pointer (&turner->box, gtk_widget_unparent);
  G_OBJECT_CLASS (sq_page_turner_parent_class)->dispose (object);
}

static void
sq_page_turner_class_init (SqPageTurnerClass *class)
{
  G_OBJECT_CLASS (class)->dispose = page_turner_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (class), GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_accessible_role (GTK_WIDGET_CLASS (class), GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
add_button (
  SqPageTurner *turner, const char *icon, const char *action, const char *name, const char *hint)
{
  GtkWidget *button = gtk_button_new_from_icon_name (icon);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_widget_set_tooltip_text (button, hint);
  gtk_widget_add_css_class (button, "flat");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  gtk_box_append (GTK_BOX (turner->box), button);
}

static void
sq_page_turner_init (SqPageTurner *turner)
{
  GtkWidget *label = gtk_label_new (NULL);
  turner->label = GTK_LABEL (label);
  turner->box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 0);
  gtk_widget_set_parent (turner->box, GTK_WIDGET (turner));
  gtk_widget_add_css_class (GTK_WIDGET (turner), "turner");
  gtk_widget_add_css_class (label, "num");
  add_button (turner, "go-previous-symbolic", "win.page-previous", _ ("Sheet before"),
              _ ("Sheet before (Page Up)"));
  gtk_box_append (GTK_BOX (turner->box), label);
  add_button (turner, "go-next-symbolic", "win.page-next", _ ("Next sheet"),
              _ ("Next sheet (Page Down)"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (turner), GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Sheets"), -1);
}
